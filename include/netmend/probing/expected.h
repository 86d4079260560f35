#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "netmend/probing/meter.h"
#include "netmend/probing/pin_kind.h"
#include "netmend/probing/point_index.h"
#include "netmend/probing/tolerance.h"
#include "netmend/probing/walk.h"

namespace netmend {

enum class ExpectedFrom { boards, entered, pinKind };
[[nodiscard]] std::string_view word(ExpectedFrom from);
[[nodiscard]] std::optional<ExpectedFrom> expectedSourceFrom(std::string_view word);

struct ValueInterval {
  double lowest = 0.0;
  double highest = 0.0;
  friend bool operator==(const ValueInterval&, const ValueInterval&) = default;
};

/// What a good board reads at a point: OL, values, or a mixture of both and of variants.
/// Values are in the mode's unit at 25 °C.
struct Expected {
  ReadingMode mode = ReadingMode::diode;
  ExpectedFrom from = ExpectedFrom::boards;
  PinKind kind = PinKind::unknown;
  double overLimitShare = 0.0;       ///< chance that a good board reads OL, never quite 0 or 1
  std::vector<ExpectedHump> humps;   ///< weights add up to 1 − overLimitShare; none: nothing seen but OL
  std::vector<ValueInterval> shown;  ///< one tolerance interval per hump, for people; it does not judge
  std::size_t boards = 0;            ///< measured here
  std::size_t boardsOverLimit = 0;   ///< of them read OL
  std::optional<ValueInterval> seen; ///< lowest and highest value of those boards

  [[nodiscard]] bool onlyOverLimit() const { return humps.empty(); }
  /// OL counts as one of the things expected: boards read it, somebody entered it, or the kind often does.
  [[nodiscard]] bool expectsOverLimit() const { return overLimitShare > 0.01; }
  friend bool operator==(const Expected&, const Expected&) = default;
};

/// How often boards differ in what is fitted; part of data/verdict.json.
struct VariantRules {
  double share = 0.0;   ///< of points at which good boards differ between OL and a value
  double weight = 0.0;  ///< how many points that share is worth when walks say something about it
  double splitAt = 8.0; ///< boards further apart than this many spreads are variants
};

struct ExpectedOptions {
  VariantRules variants;
  ToleranceAim aim;
};

/// Expected values of many points, matched as PointIndex does.
class ExpectedTable {
public:
  /// What this reading should be, or nullptr: nothing to compare.
  [[nodiscard]] const Expected* find(const Reading& reading) const;
  [[nodiscard]] const Expected* find(const ProbePoint& point, const ReadingSetting& setting) const;
  void put(const ProbePoint& point, const ReadingSetting& setting, Expected expected);

  /// Points and settings by number; `at` gives what is expected there.
  [[nodiscard]] const PointIndex& points() const { return points_; }
  [[nodiscard]] const Expected& at(std::size_t index) const { return expected_[index]; }
  [[nodiscard]] std::size_t size() const { return expected_.size(); }

  /// The board description that its pin ids belong to.
  std::string boardUuid;

private:
  PointIndex points_;
  std::vector<Expected> expected_; ///< parallel to points_
};

/// Expected values from known-good walks: at each point the boards' mean with a spread that points of the
/// same kind lend each other (docs/methods/probing.md), and what was entered by hand, which wins. Rising
/// readings and walks not marked good do not count. `lookup` (may be null) tells kinds; walks must have been
/// matched to its board (`matchToBoard`) for pins to be matched by id.
[[nodiscard]] ExpectedTable expectedFromWalks(std::span<const Walk> walks, const Lookup* lookup,
                                              const PinKindData& kinds,
                                              const std::vector<MeterProfile>& meters,
                                              const ExpectedOptions& options);

/// What a point of this kind reads when no board has been measured; nothing where the data has no default.
[[nodiscard]] std::optional<Expected> expectedFromKind(PinKind kind, ReadingMode mode,
                                                       const PinKindData& kinds);

/// What somebody entered, as a normal distribution with 99 % between its ends.
[[nodiscard]] Expected expectedFromEntry(const EnteredExpectation& entry, PinKind kind);

} // namespace netmend
