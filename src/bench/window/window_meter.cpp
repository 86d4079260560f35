// The linked meter in the window: its values, its state, and what it takes.
#include <utility>

#include <QInputDialog>
#include <QLabel>
#include <QSettings>

#include "bench_window.h"
#include "netmend/base/data_folder.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "sounds.h"

namespace netmend {

void BenchWindow::linkMeter(const QString& address) {
  meter_.reset();
  setFigure({});
  if (address.trimmed().isEmpty()) return;
  const auto parsed = parseMeterAddress(address.trimmed().toStdString());
  if (!parsed) {
    tell(shown(parsed.error()), true);
    return;
  }
  const auto patterns = loadLinePatterns(dataFile("meter_lines.json"));
  if (!patterns) {
    tell(shown(patterns.error()), true);
    return;
  }
  askedMode_ = page(station_).wantedMode();
  auto source = LinkedMeterSource::make(*parsed, askedMode_, *patterns);
  if (!source) {
    tell(shown(source.error()), true);
    return;
  }
  meter_ = std::move(*source);
  meter_->whenReady([this] { meterEvents(); });
  meter_->whenMissed([this] {
    tell(tr("Values from the meter were lost, and perhaps a touch: is the probe at the pin that is due?"),
         true);
  });
  meter_->whenLive([this](const LiveValue& value) { showLive(value); });
  meter_->whenStatus([this](const LinkStatus& status) { showMeter(status); });
  meter_->start();
  showMeter(meter_->status());
}

void BenchWindow::meterEvents() {
  while (meter_) {
    auto event = meter_->next();
    if (!event) return;
    if (!*event) {
      tell(shown(event->error()), true);
      continue;
    }
    page(station_).take(**event);
    askWantedMode();
  }
}

void BenchWindow::showMeter(const LinkStatus& status) {
  const QString text = shown(status.text);
  if (status.state == LinkState::ready) {
    setFigure(LiveFigure{QStringLiteral("– – –"), tr("touch"), 0.0, false});
    // Nobody who probes hands-free presses a key to put the warning away.
    if (std::exchange(meterWarned_, false)) {
      tell({}, false);
      sounds_->say(tr("meter ready"));
    }
    return;
  }
  setFigure(LiveFigure{status.state == LinkState::connecting ? QStringLiteral("…") : QStringLiteral("⚠"),
                       status.state == LinkState::connecting ? tr("connecting") : tr("no meter"), 0.0,
                       false});
  // Told at once, in words, where the eyes are: nothing is being taken now.
  if (status.state == LinkState::connecting) return;
  tell(text, true);
  meterWarned_ = true;
}

void BenchWindow::showLive(const LiveValue& value) {
  LiveFigure live{QString::fromStdString(readingText(value.reading.value, value.mode)),
                  {},
                  value.settled,
                  false,
                  value.phase == SettlePhase::open ? std::nullopt : value.reading.value};
  switch (value.phase) {
  case SettlePhase::open:
    live.state = tr("touch");
    break;
  case SettlePhase::moving:
    live.state = tr("settling");
    break;
  case SettlePhase::rising:
    live.state = tr("rising");
    break;
  case SettlePhase::settled:
    live.state = tr("hold");
    break;
  case SettlePhase::held:
    live.state = tr("taken, lift");
    live.taken = true;
    break;
  }
  setFigure(live);
}

void BenchWindow::setFigure(const std::optional<LiveFigure>& live) {
  figure_ = live;
  if (MeterFigure* figure = page(station_).meterFigure()) figure->setLive(live);
}

void BenchWindow::takeNow() {
  if (!meter_)
    tell(tr("No meter is linked: type the value, or link one (Ctrl+M)"), true);
  else if (const auto taken = meter_->takeNow(); !taken)
    tell(shown(taken.error()), true);
}

void BenchWindow::askMeter() {
  auto* dialog = new QInputDialog(this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(tr("Linked meter"));
  dialog->setLabelText(
      tr("Address: tcp:HOST, tcp:HOST:PORT, serial:/dev/NAME or serial:/dev/NAME:PATTERN. Empty: no meter."));
  dialog->setTextValue(QSettings().value(QStringLiteral("meter/address")).toString());
  connect(dialog, &QInputDialog::textValueSelected, this, [this](const QString& address) {
    QSettings().setValue(QStringLiteral("meter/address"), address);
    linkMeter(address);
  });
  // Beside the window, not in its way.
  dialog->setModal(false);
  dialog->show();
}

} // namespace netmend
