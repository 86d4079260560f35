#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "netmend/board/lookup.h"
#include "netmend/jobbook/job.h"
#include "netmend/probing/expected.h"

/// What a check between two work steps wants measured, read from its words, so that a value can be held
/// against it.
namespace netmend {

/// Where, how and what a check should read.
struct StepReading {
  ProbePoint point;
  ProbePoint other{PinId{}, "GND"};
  ReadingMode mode = ReadingMode::diode;
  std::optional<ValueInterval> interval; ///< in the mode's unit; none, and no OL: nothing to compare with
  bool overLimit = false;                ///< OL is what it should read
  [[nodiscard]] bool comparable() const { return interval || overLimit; }
};

/// Reads `0.649 V ± 12 mV in diode mode: go on. …`, `OL in diode mode: …`, `About 0.05 ohm …` (up to twice
/// that, as the step itself says) and `0 V across …` (what would be written so). The place is that of the
/// action's landings which the step names, else the action's target. `lookup` may be null.
[[nodiscard]] StepReading wantedReading(const WorkStep& step, const RepairAction& action,
                                        const Lookup* lookup);

enum class StepOutcome { agrees, disagrees, notCompared };
/// `value` empty: OL.
[[nodiscard]] StepOutcome compareWith(const StepReading& wanted, std::optional<double> value);

/// A place as a landing's label names it: `C12.1 (part terminal)` is the pin C12.1, a via or a track is a
/// label alone.
[[nodiscard]] ProbePoint landingPoint(const LandingPlace& landing, const Lookup* lookup);

} // namespace netmend
