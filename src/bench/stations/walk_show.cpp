#include <algorithm>

#include <QComboBox>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "connector_lie.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/reading.h"
#include "netmend/words/verdict.h"
#include "walk_page.h"

/// What the Walk station shows of the desk; what is done there is in walk_page.cpp.
namespace netmend {

namespace {

/// Ground and supplies are everywhere: lit up, they would hide the board rather than show a way.
NetId lineWorthLighting(const Board& board, PinId id) {
  const Pin* pin = board.pins.find(id);
  if (pin == nullptr || !pin->net.known()) return {};
  const Net* net = board.nets.find(pin->net.value);
  const NetRole role = net != nullptr ? net->role.valueOr(NetRole::signal) : NetRole::signal;
  return role == NetRole::ground || role == NetRole::supply ? NetId{} : pin->net.value;
}

} // namespace

void WalkPage::refresh() {
  if (filling_) return;
  const bool good = desk_.walk.good();
  const Job* job = desk_.job.job();
  band_->setText(good             ? tr("GOOD BOARD")
                 : job != nullptr ? tr("JOB'S BOARD  %1").arg(QString::fromStdString(job->number))
                                  : tr("JOB'S BOARD"));
  other_->setText(good ? tr("Walk the job's board") : tr("Walk a good board"));
  keep_->setVisible(good && !desk_.walk.walk(true).readings.empty());
  conditionBox_->setVisible((conditionWanted_ || !desk_.walk.conditionKnown()) &&
                            desk_.job.board() != nullptr);
  part_->setCurrentIndex(part_->findData(QVariant::fromValue<qulonglong>(desk_.walk.part().value)));
  mode_->setCurrentIndex(mode_->findData(static_cast<int>(desk_.walk.mode())));
  showDue();
  showVerdict();
  showConnector();
  strip_->setStrip(desk_.walk.strip());
  Q_EMIT overlayChanged();
}

void WalkPage::showDue() {
  const auto due = desk_.walk.due();
  const BoardUnderWork* board = desk_.job.board();
  field_->setEnabled(board != nullptr);
  if (board == nullptr || desk_.walk.walk().points.empty()) {
    point_->setText(tr("No board yet"));
    lead_->setText(tr("Open one, or type its connector, at the station before"));
    expected_->clear();
    return;
  }
  if (!due) {
    const std::size_t odd = desk_.walk.good() ? 0 : desk_.walk.oddOnes().size();
    point_->setText(desk_.walk.good() ? tr("Good board walked")
                    : odd == 0        ? tr("Walked, nothing odd")
                                      : tr("Walked, %n odd", nullptr, static_cast<int>(odd)));
    QStringList names;
    for (const std::size_t i : desk_.walk.oddOnes())
      names << QString::fromStdString(desk_.walk.walk(false).readings[i].point.label);
    lead_->setText(desk_.walk.good() ? tr("K keeps it for all jobs on this board")
                                     : names.join(QStringLiteral(", ")));
    expected_->clear();
    return;
  }
  QString text = spokenPoint(*due);
  if (const Pin* pin = board->board->pins.find(due->pin); pin != nullptr && pin->net.known())
    if (const Net* net = board->board->nets.find(pin->net.value); net != nullptr && !net->name.empty())
      text += QStringLiteral(" · ") + QString::fromStdString(net->name);
  if (!desk_.walk.dueHasNet()) text += QStringLiteral(" · ") + tr("no net");
  point_->setText(text);
  const QString other = QString::fromStdString(desk_.walk.walk().other.label);
  switch (desk_.walk.mode()) {
  case ReadingMode::diode:
    lead_->setText(tr("black lead on the pin, red lead on %1").arg(other));
    break;
  case ReadingMode::diodeReverse:
    lead_->setText(tr("red lead on the pin, black lead on %1").arg(other));
    break;
  default:
    lead_->setText(
        tr("%1: one lead on the pin, the other on %2").arg(shown(nameOf(desk_.walk.mode())), other));
  }
  const Expected* expected = desk_.walk.expectedAtDue();
  expected_->setText(expected != nullptr ? tr("good boards read %1").arg(shown(whatIsExpected(*expected)))
                                         : tr("nothing to compare with yet"));
}

void WalkPage::showVerdict() {
  const auto verdict = desk_.walk.lastVerdict();
  const Walk& walk = desk_.walk.walk();
  result_->setVisible(verdict && !walk.readings.empty());
  const bool otherwise = desk_.walk.readOtherwise() != nullptr;
  again_->setVisible(otherwise);
  shift_->setVisible(desk_.walk.shift().has_value());
  if (!verdict || walk.readings.empty()) return;
  const Reading& reading = walk.readings.back();
  mark_->setShape(markForVerdict(verdict->kind));
  verdict_->setText(QStringLiteral("%1   %2   %3")
                        .arg(QString::fromStdString(reading.point.label),
                             QString::fromStdString(readingText(reading.value, reading.mode)),
                             shown(nameOf(verdict->kind))));
  QStringList lines{shown(why_ ? verdictReasons(reading, *verdict) : besideValueSaid(reading, *verdict))};
  if (otherwise) lines.prepend(otherwiseWords());
  lines.prepend(desk_.walk.shiftWords());
  lines.removeAll(QString());
  explanation_->setText(lines.join(QLatin1Char('\n')));
}

void WalkPage::showWhy() {
  showVerdict();
}

std::vector<ConnectorPin> WalkPage::connectorPins() const {
  std::vector<ConnectorPin> out;
  const auto points = desk_.walk.points();
  const BoardUnderWork* board = desk_.job.board();
  const auto places =
      connectorPlaces(board != nullptr ? board->lookup.get() : nullptr, desk_.walk.walk().points);
  for (std::size_t i = 0; i < points.size(); ++i) {
    ConnectorPin pin;
    const std::string& label = points[i].point.label;
    const auto dot = label.find('.');
    pin.label = QString::fromStdString(dot == std::string::npos ? label : label.substr(dot + 1));
    pin.place = places[i];
    pin.due = points[i].due;
    pin.skipped = points[i].skipped;
    if (points[i].reading) {
      pin.read = true;
      pin.shape = markForVerdict(desk_.walk.judged().verdicts[*points[i].reading].kind);
    }
    out.push_back(std::move(pin));
  }
  return out;
}

void WalkPage::showConnector() {
  connector_->setPins(connectorPins());
  arrangeNow();
}

Overlay WalkPage::overlay() const {
  Overlay overlay;
  const BoardUnderWork* board = desk_.job.board();
  if (board == nullptr) return overlay;
  const Walk& walk = desk_.walk.walk();
  for (const PointState& state : desk_.walk.points()) {
    const auto at = positionOf(*board->lookup, state.point.pin);
    if (!at.known()) continue;
    if (state.due) {
      overlay.marks.push_back({at.value, MarkShape::probe, state.point.label});
      if (const NetId net = lineWorthLighting(*board->board, state.point.pin)) overlay.litNets.push_back(net);
    } else if (state.reading) {
      const Verdict& verdict = desk_.walk.judged().verdicts[*state.reading];
      if (!isFlag(verdict.kind)) continue;
      overlay.marks.push_back(
          {at.value, markForVerdict(verdict.kind), walk.readings[*state.reading].point.label});
    }
  }
  return overlay;
}

} // namespace netmend
