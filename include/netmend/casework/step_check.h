#pragma once

#include <optional>

#include "netmend/jobbook/job.h"

/// A check between two work steps, held against what it must read.
namespace netmend {

/// `value` empty: OL.
[[nodiscard]] StepOutcome compareWith(const StepMeasure& wanted, std::optional<double> value);

} // namespace netmend
