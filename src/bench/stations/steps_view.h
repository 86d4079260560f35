#pragma once

#include <functional>
#include <optional>

#include "station.h"
#include "step_ticks.h"

class QFrame;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace netmend {

class ReadingField;

/// The work steps of one repair: the due one large with what it must read, a tick for each, those just before
/// and after. A check that reads wrong stops the work until it reads right or is overruled with a reason.
class StepsView : public QWidget {
  Q_OBJECT

public:
  explicit StepsView(Desk desk, QWidget* parent = nullptr);
  /// Null: the job has none.
  [[nodiscard]] const RepairAction* action() const;
  [[nodiscard]] const WorkStep* step() const;
  /// The job's last action, from its first open step on.
  void showLast();
  /// The last action on this net, or on this pin; false: there is none.
  bool showActionOn(const std::string& net, const std::string& pin);
  void refresh();
  void pictureTurned() { showSteps(); }
  void focusEntry();
  /// True when the key means something here.
  bool command(int key, Qt::KeyboardModifiers modifiers = {});
  void reading(std::optional<double> value);
  /// The step that was read last is another than the one due.
  [[nodiscard]] bool movedOn() const { return read_ && *read_ != step_; }
  [[nodiscard]] QWidget* keys() const { return keys_; }
  [[nodiscard]] MeterFigure* figure() const { return figure_; }
  [[nodiscard]] QWidget* field() const;
  /// The repair in a few words: "jumper, KEY_COL3, 33 mm".
  [[nodiscard]] QString title() const;

Q_SIGNALS:
  void dueChanged();
  void otherWanted();
  void told(const QString& text, bool isError);

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  /// Whether it is worked on there, or anywhere on this net.
  [[nodiscard]] bool isOn(const RepairAction& action, const std::string& net, const std::string& pin) const;
  void makeKeys();
  QLayout* head();
  QLayout* meter();
  QWidget* rows();
  void showSteps();
  void showRows();
  void showDue();
  void showMust(const WorkStep& now, const RepairAction& chosen);
  void share();
  void tick();
  void typed();
  void askReason();
  void overruled();
  void change(const QString& what, const std::function<void(WorkStep&)>& to);
  void goToOpenStep(std::size_t from);
  [[nodiscard]] bool refused();

  Desk desk_;
  StepTicks* ticks_;
  QLabel* number_;
  QLabel* due_;
  QLabel* must_; ///< the figure
  QLabel* unit_;
  QLabel* mustWord_; ///< in words
  QLabel* note_;
  QLabel* stopped_;
  QLabel* otherwise_;
  ReadingField* field_;
  MeterFigure* figure_;
  QLineEdit* reason_;
  QWidget* keys_;
  QPushButton* tick_ = nullptr;
  QPushButton* overLimit_ = nullptr;
  QPushButton* overrule_ = nullptr;
  QListWidget* steps_;
  QLabel* cautions_;
  RepairActionId action_; ///< whose steps are shown
  std::size_t step_ = 0;
  std::optional<std::size_t> read_; ///< the step of the last reading
  bool filling_ = false;
};

} // namespace netmend
