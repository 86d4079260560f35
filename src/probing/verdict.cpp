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

JudgedWalk judgeWalk(const Walk& walk, const ExpectedTable& expected, const Lookup* lookup,
                     const ProbingData& data) {
  const bool sameBoard = walk.boardUuid == expected.boardUuid;
  const auto findExpected = [&](const Reading& reading) -> const Expected* {
    if (sameBoard) return expected.find(reading);
    Reading byLabel = reading; // its pin ids are another board description's
    byLabel.point.pin = PinId{};
    byLabel.other.pin = PinId{};
    return expected.find(byLabel);
  };
  // First pass: what there is to compare with, because the rate for one point depends on how many there are.
  const bool lookupFits = lookup != nullptr && walk.boardUuid == lookup->board().info.uuid;
  std::vector<const Expected*> found(walk.readings.size(), nullptr);
  std::vector<std::optional<Expected>> byKind(lookupFits ? walk.readings.size() : 0);
  JudgedWalk judged;
  for (std::size_t i = 0; i < walk.readings.size(); ++i) {
    const Reading& reading = walk.readings[i];
    found[i] = findExpected(reading);
    if (found[i] == nullptr && lookupFits && reading.point.pin) {
      byKind[i] = expectedFromKind(pinKind(*lookup, reading.point.pin), reading.mode, data.kinds);
      if (byKind[i]) found[i] = &*byKind[i];
    }
    if (found[i] != nullptr) ++judged.points;
  }
  // One flag in a good walk at the stated rate: 1 − (1 − a)^points.
  if (judged.points > 0) {
    judged.ratePerPoint =
        -std::expm1(std::log1p(-data.rules.falseFlagsPerGoodWalk) / static_cast<double>(judged.points));
  }
  const MeterProfile* meter = nullptr;
  const std::string* meterId = nullptr;
  judged.verdicts.reserve(walk.readings.size());
  for (std::size_t i = 0; i < walk.readings.size(); ++i) {
    const Reading& reading = walk.readings[i];
    if (meterId == nullptr || *meterId != reading.meter) {
      meterId = &reading.meter;
      meter = findMeter(data.meters, reading.meter);
    }
    judged.verdicts.push_back(judgeReading(reading, found[i], meter, data.rules, judged.ratePerPoint));
  }
  return judged;
}

} // namespace netmend
