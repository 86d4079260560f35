#pragma once

#include <functional>
#include <vector>

#include <QWidget>

#include "bench/session/bench_job.h"
#include "netmend/jobbook/charge_presets.h"

class QLabel;
class QLineEdit;
class QTreeWidget;

namespace netmend {

class WrapLayout;

/// What the repair costs, in exact decimals. As long as nothing is typed, the keys 1 to 4 put on the bill
/// what the shop charges most.
class ChargesView : public QWidget {
  Q_OBJECT

public:
  explicit ChargesView(BenchJob& job, QWidget* parent = nullptr);
  /// "154.00", or why there is no sum.
  [[nodiscard]] QString total() const;
  void focusEntry();
  /// Reads anew what the keys put on: not while they are in use, or a key would change under the finger.
  void readPresets();
  std::function<void()> onTab; ///< while nothing is typed

Q_SIGNALS:
  void told(const QString& text, bool isError);

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void refresh();
  void add();
  void addPreset(std::size_t which);
  void remove();
  bool command(int key);

  BenchJob& job_;
  WrapLayout* keys_;
  std::vector<ChargePreset> defaults_;
  std::vector<ChargePreset> presets_;
  QTreeWidget* list_;
  QLineEdit* what_;
  QLineEdit* quantity_;
  QLineEdit* price_;
};

} // namespace netmend
