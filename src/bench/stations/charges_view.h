#pragma once

#include <QWidget>

#include "bench/session/bench_job.h"

class QLabel;
class QLineEdit;
class QTreeWidget;

namespace netmend {

/// What the repair costs, in exact decimals.
class ChargesView : public QWidget {
  Q_OBJECT

public:
  explicit ChargesView(BenchJob& job, QWidget* parent = nullptr);
  /// "154.00 EUR", or why there is no sum.
  [[nodiscard]] QString total() const;
  void focusEntry();

Q_SIGNALS:
  void told(const QString& text, bool isError);

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void refresh();
  void add();
  void remove();

  BenchJob& job_;
  QTreeWidget* list_;
  QLineEdit* what_;
  QLineEdit* quantity_;
  QLineEdit* price_;
};

} // namespace netmend
