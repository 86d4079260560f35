// Footswitch and mouse buttons: what somebody does who looks into a microscope.
#include <QApplication>
#include <QKeyEvent>

#include "bench/stations/walk_page.h"
#include "bench/widgets/reading_field.h"
#include "bench_window.h"
#include "netmend/drawing/shown.h"
#include "pedal_prompt.h"
#include "sounds.h"
#include "walk_ear.h"

namespace netmend {

void BenchWindow::addEar() {
  ear_ = std::make_unique<WalkEar>(*walk_, *sounds_);
  pedals_ = std::make_unique<Pedals>();
  connect(walk_.get(), &BenchWalk::taken, this, [this] {
    if (!walk_->good()) job_->reached(JobState::probing);
  });
}

void BenchWindow::sayAgain() {
  if (const auto said = ear_->repeat(); !said) tell(shown(said.error()), true);
}

void BenchWindow::askPedals() {
  if (auto* open = findChild<PedalPrompt*>()) {
    open->activateWindow();
    return;
  }
  (new PedalPrompt(*pedals_, this))->show();
}

bool BenchWindow::footPressed(const QObject* watched, QEvent* event) {
  const FootPress press = pressOf(*event);
  if (!press.any()) return false;
  const auto act = pedals_->actOf(press);
  const bool probing = station_ == Station::walk || station_ == Station::find || station_ == Station::prove;
  if (!act || !probing || !watched->isWidgetType() || !isActiveWindow()) return false;
  const auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  if (prints(press) && field != nullptr && !field->text().isEmpty()) return false;
  event->accept();
  // Of a shortcut the key itself follows. A pedal held down is one touch.
  if (event->type() == QEvent::ShortcutOverride) return true;
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->isAutoRepeat()) return true;
  doByFoot(*act);
  return true;
}

void BenchWindow::doByFoot(FootAct act) {
  if (message_->text().startsWith(QStringLiteral("⚠"))) tell({}, false);
  if (act != FootAct::take) {
    page(station_).take(act == FootAct::skip ? ReadingEvent(PointSkipped{}) : ReadingEvent(StepBack{}));
    return;
  }
  // What has been typed is what there is to take; a good board that has been walked is kept.
  if (auto* field = dynamic_cast<ReadingField*>(QApplication::focusWidget());
      field != nullptr && !field->text().isEmpty())
    Q_EMIT field->returnPressed();
  else if (station_ == Station::walk && walk_->good() && !walk_->due())
    static_cast<WalkPage&>(page(station_)).keep();
  else
    takeNow();
}

} // namespace netmend
