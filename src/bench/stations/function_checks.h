#pragma once

#include <vector>

#include <QWidget>

#include "bench/session/bench_job.h"

class QLineEdit;
class QListWidget;

namespace netmend {

/// What the device is for, line by line, ticked when it was seen to work. Kept as check steps of the repair.
class FunctionChecks : public QWidget {
  Q_OBJECT

public:
  explicit FunctionChecks(BenchJob& job, QWidget* parent = nullptr);
  void focusEntry();

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  /// Where in the job a line of the list is kept.
  struct Line {
    RepairActionId action;
    std::size_t step = 0;
  };
  void refresh();
  void add();
  void setDone(std::size_t line, bool done);
  void remove();

  BenchJob& job_;
  QListWidget* list_;
  QLineEdit* function_;
  std::vector<Line> lines_;
  bool filling_ = false;
};

} // namespace netmend
