#pragma once

#include <QDialog>

#include "pedals.h"

class QLabel;
class QPushButton;

namespace netmend {

/// Which pedal does what: choose what, then press the pedal. Beside the window, not in its way.
class PedalPrompt : public QDialog {
  Q_OBJECT

public:
  PedalPrompt(Pedals& pedals, QWidget* parent);
  ~PedalPrompt() override;

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void ask(FootAct act);
  void showPresses();

  Pedals& pedals_;
  std::array<QPushButton*, footActs.size()> buttons_{};
  QLabel* said_;
  std::optional<FootAct> asked_;
};

} // namespace netmend
