#pragma once

#include <memory>
#include <set>

#include "bench/widgets/line_tree.h"
#include "bench/widgets/suspect_list.h"
#include "station.h"

class QStandardItemModel;
class QCompleter;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace netmend {

class ReadingField;

/// Where on its line the odd pin's break is: suspects, line tree, next probe. The keyboard is at the value's
/// field, where letters are commands while it is empty: O is OL, N "can't reach it", U takes back; arrows go
/// along the tree, page keys through the suspects. The field beside it takes `[MODE] POINT VALUE`.
class FindPage : public StationPage {
  Q_OBJECT

public:
  explicit FindPage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  [[nodiscard]] ReadingMode wantedMode() const override;
  [[nodiscard]] Overlay overlay() const override;
  void pinChosen(PinId pin) override;
  void setTheme(PictureTheme theme) override;
  void pictureTurned() override;

protected:
  void showWhy() override;
  void accept(const ReadingEvent& event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  QLayout* head();
  QLayout* probe();
  QLayout* entry();
  QLayout* suspectsBox();
  bool command(int key, Qt::KeyboardModifiers modifiers);
  bool enter();
  void typed(QLineEdit& field);
  void run(const Result<void>& done);
  void chooseLine();
  void refresh();
  void nameLine();
  void showProbe();
  void showSuspects();
  void showTree();
  void suspectChosen();
  void treeSelected();
  void selectPlace(const Suspect& suspect);
  void listLines();
  void listPlaces();
  [[nodiscard]] PinId sourcePin() const;
  [[nodiscard]] std::vector<PlaceReading> placeReadings() const;
  [[nodiscard]] QString emptyWords() const;
  void addSelection(Overlay& overlay) const;

  QLineEdit* line_;
  QCompleter* lines_ = nullptr;
  QLabel* name_;
  QLabel* state_;
  QLabel* due_;
  QLabel* place_;
  QLabel* lead_;
  QLabel* effort_;
  QLabel* reason_;
  QLabel* again_;
  QLabel* unknown_;
  ReadingField* field_;
  QLineEdit* other_;
  QPushButton* overLimit_ = nullptr;
  QPushButton* cannotReach_ = nullptr;
  QPushButton* reachAll_ = nullptr;
  QPushButton* comesAndGoes_ = nullptr;
  QStandardItemModel* places_ = nullptr; ///< of the line, for the reading elsewhere
  SuspectList* suspects_;
  QPlainTextEdit* explanation_;
  QLabel* selected_;
  LineTreeView* tree_;
  std::shared_ptr<const FaultCase> shown_; ///< whose suspects and tree are to be seen
  NetId net_;                              ///< the line that `unfolded_` is about
  PinId pin_;
  std::set<std::size_t> unfolded_;
  bool selecting_ = false; ///< list and tree follow each other, once
};

} // namespace netmend
