#pragma once

#include <memory>
#include <set>

#include "bench/widgets/answers_view.h"
#include "bench/widgets/line_tree.h"
#include "bench/widgets/odd_strip.h"
#include "bench/widgets/suspect_letters.h"
#include "bench/widgets/suspect_list.h"
#include "station.h"

class QStandardItemModel;
class QCompleter;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace netmend {

class OthersRow;
class ReadingField;

/// Where on its line the odd pin's break is: next probe, what each answer would leave, suspects, line tree.
/// The keyboard is at the value's field, where letters are commands while it is empty: O is OL, N "can't
/// reach it", U takes back, V lists all suspects; arrows go along the tree, page keys through the suspects.
/// Tab opens the field for a reading elsewhere, which takes `[MODE] POINT VALUE`.
class FindPage : public StationPage {
  Q_OBJECT

public:
  explicit FindPage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  [[nodiscard]] ReadingMode wantedMode() const override;
  [[nodiscard]] Overlay overlay() const override;
  void pinChosen(PinId pin) override;
  void pictureTurned() override;
  [[nodiscard]] FootMode footMode() const override;
  [[nodiscard]] QWidget* footKeys() override { return keys_; }
  [[nodiscard]] MeterFigure* meterFigure() override { return figure_; }
  [[nodiscard]] QWidget* messageAnchor() override;

protected:
  void showWhy() override;
  void accept(const ReadingEvent& event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void makeStrip();
  void makeKeys();
  QLayout* probe();
  QLayout* meter();
  QWidget* lower();
  void connectDesk();
  bool command(int key, Qt::KeyboardModifiers modifiers);
  bool enter();
  void typed(QLineEdit& field);
  void run(const Result<void>& done);
  void openLine();
  void openOther();
  void closeFields();
  void chooseLine();
  void refresh();
  void nameLine();
  void showProbe();
  void showDue(const ProbeProposal& next);
  void showAnswers();
  void showSuspects();
  void showTree();
  void explain(std::size_t suspect);
  void setAll(bool all);
  void share();
  void suspectChosen();
  void treeSelected();
  void saySelected();
  void selectPlace(const Suspect& suspect);
  void listLines();
  void listPlaces();
  [[nodiscard]] PinId sourcePin() const;
  [[nodiscard]] std::vector<PlaceReading> placeReadings() const;
  [[nodiscard]] QString emptyWords() const;
  [[nodiscard]] QString readBefore(const ProbeProposal& next) const;
  void addSelection(Overlay& overlay) const;

  OddStrip* strip_;
  QPushButton* anotherLine_;
  QLineEdit* line_;
  QCompleter* lines_ = nullptr;
  QLabel* name_;
  QLabel* due_;
  QLabel* place_;
  QLabel* lead_;
  QLabel* reason_;
  QLabel* again_;
  QLabel* unknown_;
  ReadingField* field_;
  MeterFigure* figure_;
  AnswersView* answers_;
  QLineEdit* other_;
  QWidget* keys_;
  QPushButton* overLimit_ = nullptr;
  QPushButton* cannotReach_ = nullptr;
  QPushButton* reachAll_ = nullptr;
  QPushButton* comesAndGoes_ = nullptr;
  QPushButton* all_ = nullptr;
  QStandardItemModel* places_ = nullptr; ///< of the line, for the reading elsewhere
  SuspectList* suspects_;
  OthersRow* others_ = nullptr;
  QPlainTextEdit* explanation_;
  QLabel* selected_;
  LineTreeView* tree_;
  QWidget* lower_ = nullptr;               ///< suspects and tree, where there are any
  QWidget* below_ = nullptr;               ///< the tree, with what belongs to it
  std::shared_ptr<const FaultCase> shown_; ///< whose suspects and tree are to be seen
  SuspectLetters letters_;
  NetId net_; ///< the line that `unfolded_` is about
  PinId pin_;
  std::set<std::size_t> unfolded_;
  bool listAll_ = false;
  bool selecting_ = false; ///< list and tree follow each other, once
};

} // namespace netmend
