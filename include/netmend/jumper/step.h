#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "netmend/base/length.h"
#include "netmend/probing/expected.h"

namespace netmend {

/// `jumper` is a wire that was routed, `wire` one between two places that somebody named; `other` is said in
/// somebody's own words.
enum class WorkKind {
  jumper,
  wire,
  resolder,
  removeBridge,
  removePart,
  replacePart,
  clean,
  cutTrack,
  other,
  notEconomic
};

/// What a check wants measured, and what it must read.
struct StepMeasure {
  /// Of a point that is no place of the board: where the battery goes.
  static constexpr const char* batteryContacts = "battery contacts";

  ReadingMode mode = ReadingMode::diode;
  ProbePoint point;
  ProbePoint other{PinId{}, "GND"};
  std::optional<ValueInterval> interval{}; ///< in the mode's unit; none, and no OL: nothing to compare with
  bool overLimit = false;                  ///< OL is what it should read
  [[nodiscard]] bool comparable() const { return interval || overLimit; }
  friend bool operator==(const StepMeasure&, const StepMeasure&) = default;
};

/// What is done, as data/work_steps.json says it: `{name}` stands for a value of the repair.
struct Step {
  std::string text;                     ///< one line
  bool check = false;                   ///< a check between steps rather than work
  std::string expected;                 ///< check only: what must be found
  std::optional<StepMeasure> measure{}; ///< check only; none: by eye
  std::string otherwise{};              ///< check only: what to do if it is not
  std::string detail{};                 ///< how, and what to mind
  friend bool operator==(const Step&, const Step&) = default;
};

/// What a place should read in diode mode: OL, or a value give or take.
struct ExpectedReading {
  bool overLimit = false;
  Volts value{};
  Volts giveOrTake{};
  friend bool operator==(const ExpectedReading&, const ExpectedReading&) = default;
};
/// What the readings at a jumper's places are expected to be. None: unknown.
struct WorkPrediction {
  std::optional<ExpectedReading> atFrom{};  ///< bare copper at the first landing, before the wire
  std::optional<ExpectedReading> atTo{};    ///< the same at the second
  std::optional<ExpectedReading> bridged{}; ///< either landing once the wire is in
  friend bool operator==(const WorkPrediction&, const WorkPrediction&) = default;
};

/// What the texts of a jumper's steps leave open, beside its landings.
struct WireFigures {
  Length length{};
  Length cutLength{};
  std::string stripping{}; ///< of the wire table; empty: it does not say
  std::size_t tacks = 0;   ///< spots of mask
  Amperes current{};
  Volts drop{};
  Ohms resistance{};
  WorkPrediction prediction{};
  friend bool operator==(const WireFigures&, const WireFigures&) = default;
};

/// The names that the steps' texts may hold: of a jumper's, and of those of all other repairs.
inline constexpr std::array<std::string_view, 14> jumperGaps{
    "from",  "to",      "side", "wire",       "length",        "cut_length",  "stripping",
    "tacks", "current", "drop", "resistance", "expected_from", "expected_to", "expected_bridged"};
inline constexpr std::array<std::string_view, 6> repairGaps{"target",   "reason", "points",
                                                            "expected", "from",   "to"};

} // namespace netmend
