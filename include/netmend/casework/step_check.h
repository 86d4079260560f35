#pragma once

#include <optional>

#include "netmend/board/lookup.h"
#include "netmend/jobbook/job.h"

/// A check between two work steps, held against what it must read.
namespace netmend {

/// `value` empty: OL.
[[nodiscard]] StepOutcome compareWith(const StepMeasure& wanted, std::optional<double> value);

/// The point with its pin where only its label is known and one pin of the board is called so. `lookup` may
/// be null.
[[nodiscard]] ProbePoint withPin(ProbePoint point, const Lookup* lookup);

} // namespace netmend
