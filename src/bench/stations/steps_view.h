#pragma once

#include <functional>
#include <optional>

#include "station.h"

class QLabel;
class QListWidget;

namespace netmend {

class ReadingField;

/// The work steps of one repair: the one that is due in letters for a metre, all of them beside it, ticked
/// off by one key, a check's reading held against what it must be.
class StepsView : public QWidget {
  Q_OBJECT

public:
  explicit StepsView(Desk desk, QWidget* parent = nullptr);
  /// Null: the job has none.
  [[nodiscard]] const RepairAction* action() const;
  [[nodiscard]] const WorkStep* step() const;
  /// The job's last action, from its first open step on.
  void showLast();
  void refresh();
  void pictureTurned() { showSteps(); }
  void focusEntry();
  /// True when the key means something here.
  bool command(int key);
  void reading(std::optional<double> value);
  /// The step that was read last is another than the one due.
  [[nodiscard]] bool movedOn() const { return read_ && *read_ != step_; }

Q_SIGNALS:
  void dueChanged();
  void otherWanted();
  void told(const QString& text, bool isError);

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  QLayout* entry();
  QLayout* lists();
  void chooseAction(int row);
  void showActions();
  void showSteps();
  void showDue();
  void tick();
  void typed();
  void change(const QString& what, const std::function<void(WorkStep&)>& to);
  void goToOpenStep(std::size_t from);

  Desk desk_;
  QLabel* number_;
  QLabel* due_;
  QLabel* must_;
  QLabel* note_;
  ReadingField* field_;
  QListWidget* actions_;
  QListWidget* steps_;
  RepairActionId action_; ///< whose steps are shown
  std::size_t step_ = 0;
  std::optional<std::size_t> read_; ///< the step of the last reading
  bool filling_ = false;
};

} // namespace netmend
