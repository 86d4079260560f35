#include <algorithm>

#include <QComboBox>
#include <QFrame>
#include <QLabel>
#include <QLocale>
#include <QPushButton>

#include "bench/widgets/meter_figure.h"
#include "bench/widgets/pad_picture.h"
#include "bench/widgets/reading_field.h"
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
  const bool complete = good && !desk_.walk.due();
  const bool begun = good && !desk_.walk.walk(true).readings.empty();
  keep_->setVisible(begun && !complete);
  keepMain_->setVisible(begun && complete);
  mode_->setCurrentIndex(mode_->findData(static_cast<int>(desk_.walk.mode())));
  showBand();
  showDue();
  showMeter();
  showVerdict();
  showOdd();
  showPads();
  arrange();
  Q_EMIT overlayChanged();
}

FootMode WalkPage::footMode() const {
  return desk_.walk.good() ? FootMode{BandLook::good, tr("GOOD BOARD")}
                           : FootMode{BandLook::job, tr("JOB'S BOARD")};
}

QWidget* WalkPage::messageAnchor() {
  return field_;
}

void WalkPage::showBand() {
  const bool good = desk_.walk.good();
  const bool room = roomy();
  const Job* job = desk_.job.job();
  QString words;
  if (good) {
    const int before = static_cast<int>(desk_.job.goodWalks().size());
    words = tr("Its readings set the range for every later job");
    if (before > 0) words += QStringLiteral("; ") + tr("%n kept before", nullptr, before);
  } else if (job != nullptr) {
    words = QString::fromStdString(job->number);
    if (!job->device.empty()) words += QStringLiteral(", ") + QString::fromStdString(job->device);
  }
  band_->set(good ? BandLook::good : BandLook::job, footMode().text, room || !good ? words : QString());
  const BoardUnderWork* board = desk_.job.board();
  const Part* part = board != nullptr ? board->board->parts.find(desk_.walk.part()) : nullptr;
  partButton_->setVisible(part != nullptr);
  if (part != nullptr) {
    const QString name = QString::fromStdString(part->reference);
    const int pins = static_cast<int>(desk_.walk.walk().points.size());
    partButton_->setText(room ? tr("%1, %n pin(s)", nullptr, pins).arg(name) : name);
  }
  QStringList condition;
  if (desk_.walk.conditionKnown()) {
    const Condition& known = desk_.walk.walk().condition;
    for (const std::string& name : known.plugged)
      condition << QString::fromStdString(name);
    if (condition.empty()) condition << tr("Nothing plugged in");
    if (known.temperature) condition << tr("%1 °C").arg(QLocale().toString(known.temperature->value));
  }
  conditionButton_->setText(condition.empty() ? tr("Condition, meter")
                                              : condition.join(QStringLiteral(", ")));
  other_->setText(!room ? (good ? tr("Job's board") : tr("Good board"))
                        : (good ? tr("Walk the job's board") : tr("Walk a good board")));
}

void WalkPage::showDue() {
  const auto due = desk_.walk.due();
  const BoardUnderWork* board = desk_.job.board();
  const bool good = desk_.walk.good();
  const bool room = roomy();
  field_->setEnabled(board != nullptr);
  net_->setWords({});
  if (board == nullptr || desk_.walk.walk().points.empty()) {
    point_->setWords(tr("No board yet"));
    lead_->setText(tr("Open one, or type its connector, at the station before"));
    return;
  }
  if (!due) {
    const std::size_t odd = good ? 0 : desk_.walk.oddOnes().size();
    point_->setWords(good       ? tr("Good board walked")
                     : odd == 0 ? tr("Walked, nothing odd")
                                : tr("Walked, %n odd", nullptr, static_cast<int>(odd)));
    lead_->setText(good ? tr("K keeps it for all jobs on this board") : QString());
    return;
  }
  point_->setWords(spokenPoint(*due));
  if (const Pin* pin = board->board->pins.find(due->pin); pin != nullptr && pin->net.known())
    if (const Net* net = board->board->nets.find(pin->net.value); net != nullptr && !net->name.empty())
      net_->setWords(QString::fromStdString(net->name));
  if (!desk_.walk.dueHasNet()) net_->setWords(tr("no net"));
  const QString other = QString::fromStdString(desk_.walk.walk().other.label);
  switch (desk_.walk.mode()) {
  case ReadingMode::diode:
    lead_->setText((room ? tr("Black lead on the pin, red on %1") : tr("Black on it, red on %1")).arg(other));
    break;
  case ReadingMode::diodeReverse:
    lead_->setText((room ? tr("Red lead on the pin, black on %1") : tr("Red on it, black on %1")).arg(other));
    break;
  default:
    lead_->setText((room ? tr("%1: one lead on the pin, the other on %2") : tr("%1, to %2"))
                       .arg(shown(nameOf(desk_.walk.mode())), other));
  }
}

void WalkPage::showMeter() {
  const MeterProfile* profile = findMeter(desk_.job.data().probing.meters, desk_.walk.meter());
  const QString name = profile != nullptr ? shown(dataPattern(profile->name)) : tr("Meter");
  const QString mode = shown(nameOf(desk_.walk.mode()));
  meter_->setCaption(meter_->linked() ? tr("%1, %2, linked").arg(name, mode)
                                      : tr("%1, %2, typed").arg(name, mode));
  const Expected* expected = desk_.walk.expectedAtDue();
  std::vector<RangeGauge::Range> ranges;
  if (expected != nullptr && roomy())
    for (const ValueInterval& interval : expected->shown)
      ranges.push_back({interval.lowest, interval.highest});
  gauge_->setRanges(std::move(ranges));
  if (!desk_.walk.due()) {
    expectedCaption_->clear();
    expected_->setWords({});
    return;
  }
  expectedCaption_->setText(expected == nullptr ? tr("Nothing to compare with yet")
                            : desk_.walk.good() ? tr("Other good boards")
                                                : tr("Good boards"));
  expected_->setWords(expected != nullptr ? shown(whatIsExpected(*expected)) : QString());
}

namespace {

QString pinOf(const std::string& label) {
  const auto dot = label.find('.');
  return QString::fromStdString(dot == std::string::npos ? label : label.substr(dot + 1));
}

TakenPin takenPin(const Reading& reading, VerdictKind kind) {
  return {pinOf(reading.point.label), QString::fromStdString(readingText(reading.value, reading.mode)),
          shown(nameOf(kind)), markForVerdict(kind)};
}

/// The value alone where the unit goes without saying; of a multiple the multiple's letter stays.
QString shortValue(std::optional<double> value, ReadingMode mode) {
  QString text = QString::fromStdString(readingText(value, mode));
  const auto unit = unitOf(mode);
  const QString ending = QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()));
  if (text.endsWith(ending)) text.chop(ending.size());
  return text.trimmed();
}

} // namespace

void WalkPage::showVerdict() {
  const auto verdict = desk_.walk.lastVerdict();
  const Walk& walk = desk_.walk.walk();
  const bool otherwise = desk_.walk.readOtherwise() != nullptr;
  again_->setVisible(otherwise);
  shift_->setVisible(desk_.walk.shift().has_value());
  reasons_->setVisible(why_ && verdict && !walk.readings.empty() && roomy());
  if (!verdict || walk.readings.empty()) {
    taken_->setTaken({}, {});
    explanation_->clear();
    reasons_->clear();
    return;
  }
  const Reading& reading = walk.readings.back();
  taken_->setTaken(takenPin(reading, verdict->kind), QString::fromStdString(reading.point.label));
  reasons_->setText(shown(verdictReasons(reading, *verdict)));
  QStringList lines{desk_.walk.shiftWords()};
  if (otherwise) lines << otherwiseWords();
  lines << shown(besideValueSaid(reading, *verdict));
  lines.removeAll(QString());
  explanation_->setText(lines.join(QLatin1Char('\n')));
}

void WalkPage::showWhy() {
  showVerdict();
  arrange();
}

std::vector<OddList::Odd> WalkPage::oddPins() const {
  const Walk& walk = desk_.walk.walk();
  const std::vector<Verdict>& verdicts = desk_.walk.judged().verdicts;
  const auto points = desk_.walk.points();
  std::vector<OddList::Odd> odd;
  const auto add = [&](std::size_t reading, std::size_t point) {
    odd.push_back({takenPin(walk.readings[reading], verdicts[reading].kind), point});
  };
  if (desk_.walk.good()) {
    for (std::size_t i = 0; i < points.size(); ++i)
      if (points[i].reading && isFlag(verdicts[*points[i].reading].kind)) add(*points[i].reading, i);
    return odd;
  }
  for (const std::size_t reading : desk_.walk.oddOnes())
    for (std::size_t i = 0; i < points.size(); ++i)
      if (points[i].point == walk.readings[reading].point) add(reading, i);
  return odd;
}

void WalkPage::showOdd() {
  const bool good = desk_.walk.good();
  std::vector<OddList::Odd> odd = oddPins();
  oddCaption_->setText(odd.empty() ? QString()
                       : good      ? tr("Unlike the other good boards")
                                   : tr("Odd so far"));
  oddCaption_->setVisible(!odd.empty() && explanation_->text().count(QLatin1Char('\n')) == 0);
  odd_->setVisible(!odd.empty());
  // On a good board an odd pin is more likely a slip than a fault.
  reread_->setVisible(good && !odd.empty());
  if (!odd.empty()) reread_->setText(tr("Read %1 again").arg(odd.front().pin.pin));
  odd_->setOdd(std::move(odd));
}

namespace {

/// Copper on the bottom alone: an edge connector's other side.
bool isBelow(const Lookup& lookup, PinId pin) {
  const auto& pads = lookup.padsOf(pin);
  return !pads.empty() && std::all_of(pads.begin(), pads.end(), [&](PadId id) {
    const Pad* pad = lookup.board().pads.find(id);
    return pad != nullptr && pad->reach.known() && pad->reach.value == PadReach::bottom;
  });
}

/// On no net, as the board knows, or on one of which it says that nothing is connected (KiCad's
/// `unconnected-(J1-Pad3)`).
QString lies(const BoardUnderWork* board, PartId id) {
  const Part* part = board != nullptr ? board->board->parts.find(id) : nullptr;
  if (part == nullptr || !part->side.known()) return WalkPage::tr("pins in the order of their names");
  return part->side.value == Side::bottom ? WalkPage::tr("seen from the bottom")
                                          : WalkPage::tr("seen from the top");
}

} // namespace

void WalkPage::showPads() {
  const auto points = desk_.walk.points();
  const BoardUnderWork* board = desk_.job.board();
  const auto places =
      connectorPlaces(board != nullptr ? board->lookup.get() : nullptr, desk_.walk.walk().points);
  const PinStrip strip = desk_.walk.strip();
  std::vector<PadState> pads;
  int read = 0, without = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    PadState pad;
    const StripPin& pin = strip.pins[i];
    pad.name = QString::fromStdString(pin.label);
    pad.place = {places[i], board != nullptr && isBelow(*board->lookup, points[i].point.pin)};
    pad.due = points[i].due;
    pad.noNet = !points[i].hasNet;
    pad.skipped = points[i].skipped && points[i].hasNet;
    if (pin.reading) {
      pad.value = shortValue(pin.reading->value, strip.mode);
      pad.read = pin.reading->value;
      pad.odd = pin.reading->odd();
      pad.shape = markForVerdict(pin.reading->verdict.value_or(VerdictKind::nothingToCompare));
    }
    if (!pin.expected.empty()) {
      pad.good = PadState::Range{pin.expected.front().low, pin.expected.front().high};
      for (const StripInterval& interval : pin.expected) {
        pad.good->low = std::min(pad.good->low, interval.low);
        pad.good->high = std::max(pad.good->high, interval.high);
      }
    }
    pad.goodOl = pin.expectedOl;
    read += pad.isRead();
    without += pad.noNet && !pad.isRead();
    pads.push_back(std::move(pad));
  }
  const int all = static_cast<int>(pads.size()) - without;
  PadWords words;
  words.name = QString::fromStdString(desk_.walk.walk().title);
  words.seen = lies(board, desk_.walk.part());
  words.count = without == 0 ? tr("%1 of %2 read").arg(read).arg(all)
                             : tr("%1 of %2 read, %3 without net").arg(read).arg(all).arg(without);
  const auto unit = unitOf(strip.mode);
  words.zero = QStringLiteral("0 ") + QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size()));
  pads_->setGood(desk_.walk.good());
  pads_->setPads(std::move(pads), std::move(words));
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
