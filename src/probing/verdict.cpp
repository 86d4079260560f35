#include "netmend/probing/verdict.h"

#include <algorithm>
#include <cmath>

#include "densities.h"
#include "netmend/base/words.h"
#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"

namespace netmend {

using probing::Densities;

namespace {

constexpr std::array<Word<VerdictKind>, 7> verdictWords{{
    {VerdictKind::inRange, "in range"},
    {VerdictKind::open, "open"},
    {VerdictKind::shorted, "short"},
    {VerdictKind::low, "low"},
    {VerdictKind::high, "high"},
    {VerdictKind::readsWhereOverLimitExpected, "reads where OL is expected"},
    {VerdictKind::nothingToCompare, "nothing to compare"},
}};

/// Below this the meter cannot tell a short from a reading.
double shortLimit(const MeterProfile* meter, const FaultReadings& faults) {
  const auto* mode = meter != nullptr ? meter->mode(faults.mode) : nullptr;
  return mode != nullptr && mode->shortBelow ? *mode->shortBelow : 3.0 * faults.shortScale;
}

/// OL means no current path, and next to nothing a short, only where the meter feeds a current.
bool feedsCurrent(ReadingMode mode) {
  return unitOf(mode) == "Ω" || mode == ReadingMode::diode || mode == ReadingMode::diodeReverse;
}

/// The word for a reading that is not what good boards read.
VerdictKind flagFor(const Reading& reading, double y, const Densities& densities, double shortBelow) {
  if (!reading.value) return feedsCurrent(reading.mode) ? VerdictKind::open : VerdictKind::high;
  const bool nearZero = feedsCurrent(reading.mode) && *reading.value < shortBelow;
  const auto* nearest = densities.nearest(y);
  if (nearest == nullptr) // OL expected: anything is below that
    return nearZero ? VerdictKind::shorted : VerdictKind::readsWhereOverLimitExpected;
  if (y > nearest->centre) return VerdictKind::high;
  const auto lowest = std::min_element(densities.humps().begin(), densities.humps().end(),
                                       [](const auto& a, const auto& b) { return a.centre < b.centre; });
  return nearZero && y < lowest->centre ? VerdictKind::shorted : VerdictKind::low;
}

} // namespace

std::string_view word(VerdictKind kind) {
  return wordFor(verdictWords, kind);
}

std::optional<VerdictKind> verdictKindFrom(std::string_view word) {
  return fromWord(verdictWords, word);
}

bool isFlag(VerdictKind kind) {
  return kind != VerdictKind::inRange && kind != VerdictKind::nothingToCompare;
}

std::size_t JudgedWalk::flags() const {
  return static_cast<std::size_t>(
      std::count_if(verdicts.begin(), verdicts.end(), [](const Verdict& v) { return isFlag(v.kind); }));
}

Verdict judgeReading(const Reading& reading, const Expected* expected, const MeterProfile* meter,
                     const VerdictRules& rules, double falseAlarmRate) {
  Verdict verdict;
  if (expected == nullptr) return verdict;
  const FaultReadings* faults = rules.find(reading.mode);
  if (faults == nullptr) {
    verdict.nothing = NothingBecause::noRule;
    return verdict;
  }
  const Densities densities(*expected, meter, *faults);
  verdict.nothing = NothingBecause::judged;
  verdict.falseAlarmRate = falseAlarmRate;
  verdict.expected = *expected;
  verdict.kind = VerdictKind::inRange;
  double y = 0.0;
  double ratio = 1.0;
  bool plain = false;
  if (!reading.value) {
    ratio = densities.ratioOverLimit();
    plain = densities.goodOverLimit() > falseAlarmRate && ratio <= 1.0;
  } else {
    y = toComparison(reading.mode, *valueAtBenchTemperature(reading));
    ratio = densities.ratio(y);
    plain = densities.plainlyGood(y, falseAlarmRate);
    if (const auto* nearest = densities.nearest(y))
      verdict.offInSpreads = (y - nearest->centre) / nearest->scale;
  }
  verdict.odds = rules.faultPrior / (1.0 - rules.faultPrior) * ratio;
  if (!plain) {
    verdict.rarity = densities.shareAtLeast(ratio, y);
    if (*verdict.rarity <= falseAlarmRate || verdict.odds >= rules.decisiveOdds)
      verdict.kind = flagFor(reading, y, densities, shortLimit(meter, *faults));
  }
  // What still climbs says nothing yet about being too low.
  const bool tooLow = verdict.kind == VerdictKind::low || verdict.kind == VerdictKind::shorted;
  if (reading.settling == Settling::rising && tooLow) verdict.kind = VerdictKind::nothingToCompare;
  return verdict;
}

double ratePerPoint(std::size_t points, const VerdictRules& rules) {
  return -std::expm1(std::log1p(-rules.falseFlagsPerGoodWalk) /
                     static_cast<double>(std::max<std::size_t>(1, points)));
}

namespace {

/// What a walk's readings are held against.
class WalkExpectations {
public:
  WalkExpectations(const Walk& walk, const ExpectedTable& table, const Lookup* lookup,
                   const ProbingData& data)
      : walk_(walk), table_(table),
        lookup_(lookup != nullptr && walk.boardUuid == lookup->board().info.uuid ? lookup : nullptr),
        data_(data), sameBoard_(walk.boardUuid == table.boardUuid) {}

  [[nodiscard]] const Expected* measured(const Reading& reading) const {
    return sameBoard_ ? table_.find(reading) : table_.find(byLabel(reading));
  }
  [[nodiscard]] std::optional<Expected> ofKind(const ProbePoint& point, ReadingMode mode) const {
    if (lookup_ == nullptr || !point.pin) return std::nullopt;
    return expectedFromKind(pinKind(*lookup_, point.pin), mode, data_.kinds);
  }

  /// At which a reading taken like this one shares the rate.
  [[nodiscard]] double rate(const Reading& reading) {
    for (const auto& [known, rate] : rates_)
      if (sameSetting(known, reading)) return rate;
    Reading asked = sameBoard_ ? reading : byLabel(reading);
    std::size_t points = table_.points().count(settingOf(asked));
    std::vector<ProbePoint> here = walk_.points;
    for (const Reading& other : walk_.readings)
      if (std::find(here.begin(), here.end(), other.point) == here.end()) here.push_back(other.point);
    for (const ProbePoint& point : here) {
      asked.point = sameBoard_ ? point : ProbePoint{PinId{}, point.label};
      if (table_.find(asked) == nullptr && ofKind(point, reading.mode)) ++points;
    }
    const double rate = ratePerPoint(points, data_.rules);
    rates_.emplace_back(settingOf(reading), rate);
    return rate;
  }

private:
  /// The walk's pin ids are another board description's.
  static Reading byLabel(Reading reading) {
    reading.point.pin = PinId{};
    reading.other.pin = PinId{};
    return reading;
  }

  const Walk& walk_;
  const ExpectedTable& table_;
  const Lookup* lookup_; ///< null: not this board's
  const ProbingData& data_;
  bool sameBoard_;
  std::vector<std::pair<ReadingSetting, double>> rates_;
};

} // namespace

JudgedWalk judgeWalk(const Walk& walk, const ExpectedTable& expected, const Lookup* lookup,
                     const ProbingData& data) {
  WalkExpectations expectations(walk, expected, lookup, data);
  JudgedWalk judged;
  judged.verdicts.reserve(walk.readings.size());
  const MeterProfile* meter = nullptr;
  const std::string* meterId = nullptr;
  for (const Reading& reading : walk.readings) {
    if (meterId == nullptr || *meterId != reading.meter) {
      meterId = &reading.meter;
      meter = findMeter(data.meters, reading.meter);
    }
    const Expected* found = expectations.measured(reading);
    std::optional<Expected> ofKind;
    if (found == nullptr) ofKind = expectations.ofKind(reading.point, reading.mode);
    if (ofKind) found = &*ofKind;
    if (found != nullptr) ++judged.points;
    judged.verdicts.push_back(
        judgeReading(reading, found, meter, data.rules, found != nullptr ? expectations.rate(reading) : 0.0));
  }
  return judged;
}

} // namespace netmend
