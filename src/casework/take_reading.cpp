#include "netmend/casework/take_reading.h"

#include <cmath>

#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

tl::unexpected<Error> notAReading(const std::string& text) {
  return failure(
      {pattern("core", "not a reading"), "", "", asItIs("\"" + text + "\""),
       pattern(
           "core",
           "[MODE] POINT [to POINT] VALUE, for example \"J4.7 OL\" or \"continuity J4.7 to C23.1 0.4\"")});
}

/// Splits off the mode at the front where there is one.
ReadingMode takeMode(std::string& text, ReadingMode otherwise) {
  for (const auto mode : {ReadingMode::diodeReverse, ReadingMode::diode, ReadingMode::ohms,
                          ReadingMode::milliohms, ReadingMode::continuity, ReadingMode::volts,
                          ReadingMode::dropUnderCurrent, ReadingMode::temperature}) {
    const std::string front = std::string(word(mode)) + " ";
    if (!text.starts_with(front)) continue;
    text.erase(0, front.size());
    return mode;
  }
  return otherwise;
}

/// Splits off the value at the end: the longest tail of at most two words that reads as one (`452 mV`).
Result<EnteredValue> takeValue(std::string& text, ReadingMode mode) {
  const auto last = text.find_last_of(' ');
  if (last == std::string::npos || last == 0) return notAReading(text);
  const auto before = text.find_last_of(' ', last - 1);
  if (before != std::string::npos && before > 0) {
    if (auto value = parseReadingValue(text.substr(before + 1), mode)) {
      text.erase(before);
      return value;
    }
  }
  auto value = parseReadingValue(text.substr(last + 1), mode);
  if (value) text.erase(last);
  return value;
}

/// The reading among the pins of its part, whose kinds share its rate.
Walk walkAround(const Reading& reading, const JudgeBasis& basis) {
  Walk out;
  out.readings = {reading};
  if (basis.lookup == nullptr) { // ids of no board at hand
    out.boardUuid = basis.expected.boardUuid;
    out.readings.front().point.pin = out.readings.front().other.pin = PinId{};
    return out;
  }
  out.boardUuid = basis.lookup->board().info.uuid;
  if (const Pin* pin = basis.lookup->board().pins.find(reading.point.pin); pin != nullptr && pin->part)
    out.points = pointsOf(*basis.lookup, pin->part);
  return out;
}

/// How far apart one point reads from time to time, as one standard deviation, in the mode's unit.
double repeatability(ReadingMode mode, double value, const RepairData& data) {
  switch (mode) {
  case ReadingMode::diode:
  case ReadingMode::diodeReverse:
  case ReadingMode::dropUnderCurrent:
    return data.priors.readingSpread.value;
  case ReadingMode::milliohms:
    return std::hypot(0.01 * value, 0.003);
  case ReadingMode::ohms:
  case ReadingMode::continuity:
    return std::hypot(0.01 * value, 0.3);
  case ReadingMode::volts:
    return std::hypot(0.005 * value, 0.005);
  case ReadingMode::temperature:
    break;
  }
  return 1.0;
}

/// The meter's own errors are the same both times; what it rounds is not.
bool agree(const Reading& a, const Reading& b, const RepairData& data) {
  if (!a.value || !b.value) return !a.value && !b.value;
  constexpr double least = 4.0; ///< standard deviations: one pair of readings in sixteen thousand by chance
  const MeterProfile* meter = findMeter(data.probing.meters, b.meter);
  const auto uncertainty = meter != nullptr ? uncertaintyOf(*meter, b.mode, *b.value) : std::nullopt;
  const double one =
      std::hypot(repeatability(b.mode, *b.value, data), uncertainty ? uncertainty->resolution : 0.0);
  return std::abs(*a.value - *b.value) <= least * std::sqrt(2.0) * one;
}

} // namespace

ProbePoint withPin(ProbePoint point, const Lookup* lookup) {
  if (point.pin || lookup == nullptr) return point;
  if (const auto pins = lookup->pinsLabelled(point.label); pins.size() == 1) point.pin = pins.front();
  return point;
}

Reading readingNow(const Walk& walk, ProbePoint point, std::optional<double> value) {
  Reading out;
  out.point = std::move(point);
  out.other = walk.other;
  out.mode = walk.mode;
  out.value = value;
  out.meter = walk.meter;
  out.by = walk.by;
  out.condition = walk.condition;
  out.time = timeNow();
  return out;
}

Result<Reading> parseReading(const std::string& text, const Walk& walk, const Lookup* lookup) {
  std::string rest = text;
  const ReadingMode mode = takeMode(rest, walk.mode);
  const auto value = takeValue(rest, mode);
  if (!value) return failure(value.error());
  if (rest.ends_with(" to")) return notAReading(text); // the second point was forgotten
  const auto to = rest.find(" to ");
  Reading out = readingNow(walk, withPin({PinId{}, rest.substr(0, to)}, lookup), value->value);
  out.mode = mode;
  if (to != std::string::npos) out.other = withPin({PinId{}, rest.substr(to + 4)}, lookup);
  if (out.point.label.empty() || out.other.label.empty()) return notAReading(text);
  return out;
}

JobReading judged(const Reading& reading, ReadingPurpose purpose, const JudgeBasis& basis,
                  const std::vector<JobReading>& already) {
  const JudgedWalk walk =
      judgeWalk(walkAround(reading, basis), basis.expected, basis.lookup, basis.data.probing);
  JobReading out;
  out.purpose = purpose;
  out.reading = reading;
  out.judged = Judged{walk.verdicts.front()};
  for (const JobReading& before : already)
    if (sameMeasurement(before.reading, reading)) out.comesAndGoes = before.comesAndGoes;
  return out;
}

const JobReading* readOtherwiseBefore(const std::vector<JobReading>& readings, const JobReading& reading,
                                      const RepairData& data) {
  const JobReading* before = nullptr;
  for (const JobReading& other : readings) {
    if (other.id == reading.id) break;
    const bool proofs =
        (other.purpose == ReadingPurpose::proof) == (reading.purpose == ReadingPurpose::proof);
    // What still climbed is on its way to what is read now.
    const bool settled = other.reading.settling != Settling::rising;
    if (proofs && settled && sameMeasurement(other.reading, reading.reading)) before = &other;
  }
  return before == nullptr || agree(before->reading, reading.reading, data) ? nullptr : before;
}

} // namespace netmend
