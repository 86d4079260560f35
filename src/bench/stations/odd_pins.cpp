#include "odd_pins.h"

#include <algorithm>

#include "netmend/drawing/pin_strip.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"

namespace netmend {

namespace {

/// `0.212 V` without its unit: the word before it says enough.
QString figure(const Reading& reading) {
  const QString text = QString::fromStdString(readingText(reading.value, reading.mode));
  return reading.mode == ReadingMode::diode || reading.mode == ReadingMode::diodeReverse
             ? text.section(QLatin1Char(' '), 0, 0)
             : text;
}

QString wordFor(const JobReading& reading) {
  if (reading.comesAndGoes) return OddStrip::tr("comes and goes");
  switch (reading.kind()) {
  case VerdictKind::open:
    return OddStrip::tr("open");
  case VerdictKind::shorted:
    return OddStrip::tr("short");
  case VerdictKind::low:
    return OddStrip::tr("low %1").arg(figure(reading.reading));
  case VerdictKind::high:
    return OddStrip::tr("high %1").arg(figure(reading.reading));
  case VerdictKind::readsWhereOverLimitExpected:
    return OddStrip::tr("reads %1").arg(figure(reading.reading));
  case VerdictKind::inRange:
  case VerdictKind::nothingToCompare:
    return figure(reading.reading);
  }
  return {};
}

/// What the proof read here last, after the reading that was odd; null: nothing.
const JobReading* proofAt(const Job& job, const JobReading& odd) {
  const auto same = [&](const JobReading& each) {
    return each.purpose == ReadingPurpose::proof && each.reading.mode == odd.reading.mode &&
           samePoint(each.reading.point, odd.reading.point) &&
           samePoint(each.reading.other, odd.reading.other);
  };
  const auto last = std::find_if(job.readings.rbegin(), job.readings.rend(), same);
  const auto before = std::find_if(job.readings.rbegin(), job.readings.rend(),
                                   [&](const JobReading& each) { return each.id == odd.id; });
  return last != job.readings.rend() && last < before ? &*last : nullptr;
}

} // namespace

std::vector<OddPin> oddPins(const Desk& desk) {
  std::vector<OddPin> out;
  const Job* job = desk.job.job();
  if (job == nullptr) return out;
  const BoardUnderWork* board = desk.job.board();
  const auto counting = inForce(job->readings);
  std::vector<ProbePoint> seen;
  for (const JobReading& walked : job->readings) {
    // A pin read again at Find, by whatever way, is the same pin.
    if (walked.purpose != ReadingPurpose::fault) continue;
    const ProbePoint& point = walked.reading.point;
    if (std::any_of(seen.begin(), seen.end(), [&](const ProbePoint& p) { return samePoint(p, point); }))
      continue;
    const auto odd = std::find_if(counting.begin(), counting.end(), [&](const JobReading* each) {
      return isEvidence(*each) && each->odd() && sameMeasurement(each->reading, walked.reading);
    });
    if (odd == counting.end()) continue;
    seen.push_back(point);
    const JobReading* proof = proofAt(*job, **odd);
    const JobReading& now = proof != nullptr ? *proof : **odd;
    OddPin pin;
    pin.pin = point.pin;
    pin.label = QString::fromStdString(point.label);
    pin.word = wordFor(now);
    pin.shape = markForVerdict(now.kind());
    pin.mended = proof != nullptr && !now.odd();
    if (board != nullptr)
      if (const Pin* found = board->board->pins.find(point.pin); found != nullptr && found->net.known())
        if (const Net* net = board->board->nets.find(found->net.value))
          pin.net = QString::fromStdString(net->name);
    out.push_back(std::move(pin));
  }
  return out;
}

std::optional<std::size_t> chosenOddPin(const Desk& desk, const std::vector<OddPin>& pins) {
  const auto indexOf = [&](const auto& fits) -> std::optional<std::size_t> {
    const auto found = std::find_if(pins.begin(), pins.end(), fits);
    if (found == pins.end()) return std::nullopt;
    return static_cast<std::size_t>(found - pins.begin());
  };
  if (const PinId pin = desk.fault.pin())
    if (const auto itself = indexOf([&](const OddPin& each) { return each.pin == pin; })) return itself;
  // Chosen by its net, or by another pin of it.
  const BoardUnderWork* board = desk.job.board();
  const NetId net = desk.fault.net();
  if (board == nullptr || !net) return std::nullopt;
  return indexOf([&](const OddPin& each) {
    const Pin* pin = board->board->pins.find(each.pin);
    return pin != nullptr && pin->net.known() && pin->net.value == net;
  });
}

void fillOddStrip(OddStrip& strip, const Desk& desk) {
  strip.setPins(oddPins(desk));
  strip.setChosen(chosenOddPin(desk, strip.pins()));
}

void chooseOddPin(const Desk& desk, const OddPin& pin) {
  if (pin.pin) desk.fault.choose(pin.pin);
}

} // namespace netmend
