#pragma once

#include <functional>
#include <vector>

#include <QWidget>

#include "bench/session/bench_job.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace netmend {

class WrapLayout;

/// What the device is for, one toggle a function, ticked when it was seen to work. Kept as check steps of the
/// repair. As long as nobody has written any down, those that the symptom names are offered; ticking one, or
/// adding another, writes them down.
class FunctionChecks : public QWidget {
  Q_OBJECT

public:
  explicit FunctionChecks(BenchJob& job, QWidget* parent = nullptr);
  /// Opens the field for another function.
  void focusEntry();
  [[nodiscard]] int count() const { return static_cast<int>(lines_.size()); }
  /// Not seen to work yet.
  [[nodiscard]] int left() const;
  std::function<void()> onLeave; ///< the keyboard is free again

Q_SIGNALS:
  void changed();

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  /// Where in the job a toggle is kept; none: the symptom's.
  struct Line {
    RepairActionId action;
    std::size_t step = 0;
    std::string text;
    bool done = false;
    friend bool operator==(const Line&, const Line&) = default;
  };
  [[nodiscard]] std::vector<Line> linesOf(const Job* job) const;
  void refresh();
  void add();
  void setDone(std::size_t line, bool done);
  void remove(std::size_t line);
  /// The repair with what is only offered so far written down.
  [[nodiscard]] RepairAction writtenDown(const RepairAction& action) const;

  BenchJob& job_;
  WrapLayout* row_;
  QLabel* none_;
  QLineEdit* function_;
  QPushButton* more_;
  std::vector<QCheckBox*> toggles_;
  std::vector<Line> lines_;
};

} // namespace netmend
