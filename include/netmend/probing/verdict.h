#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/probing/expected.h"

namespace netmend {

enum class VerdictKind { inRange, open, shorted, low, high, readsWhereOverLimitExpected, nothingToCompare };
/// `in range`, `open`, `short`, `low`, `high`, `reads where OL is expected`, `nothing to compare`.
[[nodiscard]] std::string_view word(VerdictKind kind);
[[nodiscard]] std::optional<VerdictKind> verdictKindFrom(std::string_view word);
/// Anything but `in range` and `nothing to compare`.
[[nodiscard]] bool isFlag(VerdictKind kind);

/// What a fault makes of a reading, as shares that add up to 1, by mode.
struct FaultReadings {
  ReadingMode mode = ReadingMode::diode;
  double open = 0.0;       ///< reads OL
  double shorted = 0.0;    ///< reads near zero: exponential with the scale below
  double shift = 0.0;      ///< off the expected value to either side: Laplace with the scale below
  double anywhere = 0.0;   ///< even over the range below
  double shortScale = 0.0; ///< in the mode's unit
  double shiftScale = 0.0; ///< on the comparison scale
  double lowest = 0.0;     ///< of `anywhere`, mode's unit
  double highest = 0.0;
  std::string source;
};

/// `data/verdict.json`.
struct VerdictRules {
  double falseFlagsPerGoodWalk = 0.05; ///< one good board in twenty gets one flag, read at all known points
  double faultPrior = 0.02;            ///< of a point before its reading
  double decisiveOdds = 100.0;         ///< odds at which a point is flagged whatever the rate
  VariantRules variants;
  std::vector<FaultReadings> faults;
  [[nodiscard]] const FaultReadings* find(ReadingMode mode) const;
};
[[nodiscard]] Result<VerdictRules> loadVerdictRules(const std::filesystem::path& path);

/// All data that probing needs, from the data folder.
struct ProbingData {
  std::vector<MeterProfile> meters;
  PinKindData kinds;
  VerdictRules rules;
};
[[nodiscard]] Result<ProbingData> loadProbingData(const std::filesystem::path& folder);

/// Why a reading was not held against anything.
enum class NothingBecause { judged, noExpectedValue, noRule };

/// What a reading says about its point, and what that rests on.
struct Verdict {
  VerdictKind kind = VerdictKind::nothingToCompare;
  NothingBecause nothing = NothingBecause::noExpectedValue;
  double odds = 0.0; ///< of faulty against good, after the reading; 0 when nothing to compare
  /// Share of good boards that would read something at least as telling of a fault; empty where the reading
  /// is so close to the expected value that nobody asks.
  std::optional<double> rarity;
  std::optional<Expected> expected;
  double offInSpreads = 0.0;   ///< from the nearest expected value, in its spreads; below it is negative
  double falseAlarmRate = 0.0; ///< that the point was judged at
  friend bool operator==(const Verdict&, const Verdict&) = default;
};

/// A walk's verdicts, parallel to its readings.
struct JudgedWalk {
  std::vector<Verdict> verdicts;
  std::size_t points = 0; ///< readings that were judged, i.e. with something to compare
  [[nodiscard]] std::size_t flags() const;
};

/// How often a good point may be flagged so that a walk of so many points is at the rules' rate:
/// 1 − (1 − a)^(1/points).
[[nodiscard]] double ratePerPoint(std::size_t points, const VerdictRules& rules);

/// The verdict on one reading at a given false-alarm rate for it. `meter` may be null: no calibration error.
[[nodiscard]] Verdict judgeReading(const Reading& reading, const Expected* expected,
                                   const MeterProfile* meter, const VerdictRules& rules,
                                   double falseAlarmRate);

/// Judges all readings of a walk. The rate is shared by all points at which good boards were read in the same
/// way, and by those of the walk of which only the kind is known: so a reading says the same whether it is
/// the walk's first or last, or stands alone. Points without an expected value get the default of their kind
/// where `lookup` (may be null) tells it and the data has one.
[[nodiscard]] JudgedWalk judgeWalk(const Walk& walk, const ExpectedTable& expected, const Lookup* lookup,
                                   const ProbingData& data);

} // namespace netmend
