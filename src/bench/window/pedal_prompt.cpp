#include "pedal_prompt.h"

#include <QApplication>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>

#include "bench/widgets/letters.h"
#include "netmend/drawing/shown.h"

namespace netmend {

PedalPrompt::PedalPrompt(Pedals& pedals, QWidget* parent)
    : QDialog(parent), pedals_(pedals),
      said_(makeLabel(Letters::reading, QStringLiteral("pedalSaid"), this)) {
  setObjectName(QStringLiteral("pedals"));
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Footswitch"));
  setModal(false);
  auto* grid = new QGridLayout(this);
  for (const FootAct act : footActs) {
    const int row = static_cast<int>(act);
    grid->addWidget(new QLabel(nameOf(act), this), row, 0);
    auto* button = new QPushButton(this);
    button->setObjectName(QStringLiteral("pedal%1").arg(row + 1));
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, [this, act] { ask(act); });
    grid->addWidget(button, row, 1);
    buttons_.at(static_cast<std::size_t>(act)) = button;
  }
  grid->addWidget(said_, static_cast<int>(footActs.size()), 0, 1, 2);
  said_->setText(
      tr("Choose what, then press the pedal, key or mouse button that shall do it. Escape: leave it "
         "as it is. Delete: none."));
  qApp->installEventFilter(this);
  showPresses();
}

PedalPrompt::~PedalPrompt() {
  qApp->removeEventFilter(this);
}

void PedalPrompt::ask(FootAct act) {
  asked_ = act;
  showPresses();
}

void PedalPrompt::showPresses() {
  for (const FootAct act : footActs) {
    QPushButton* button = buttons_.at(static_cast<std::size_t>(act));
    const QString name = nameOf(pedals_.of(act));
    button->setText(asked_ == act ? tr("Press the pedal now") : name.isEmpty() ? tr("none") : name);
    button->setAccessibleName(QStringLiteral("%1: %2").arg(nameOf(act), button->text()));
  }
}

bool PedalPrompt::eventFilter(QObject* watched, QEvent* event) {
  if (!asked_ || !isActiveWindow()) return QDialog::eventFilter(watched, event);
  const FootPress press = pressOf(*event);
  // With the left button another act is chosen.
  if (!press.any() || press.button == Qt::LeftButton || !watched->isWidgetType())
    return QDialog::eventFilter(watched, event);
  event->accept();
  if (event->type() == QEvent::ShortcutOverride) return true; // the key itself follows
  const FootAct act = *std::exchange(asked_, std::nullopt);
  if (press.key == Qt::Key_Delete) {
    static_cast<void>(pedals_.assign(act, {}));
  } else if (press.key != Qt::Key_Escape) {
    const auto assigned = pedals_.assign(act, press);
    said_->setText(assigned ? tr("%1: %2").arg(nameOf(act), nameOf(press)) : shown(assigned.error()));
  }
  showPresses();
  return true;
}

} // namespace netmend
