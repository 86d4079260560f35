#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "netmend/jobbook/job.h"

/// A check between two work steps, held against what it must read.
namespace netmend {

/// `value` empty: OL.
[[nodiscard]] StepOutcome compareWith(const StepMeasure& wanted, std::optional<double> value);

/// The first check that read what it must not, and that nobody has overruled: the work stops there until it
/// reads what it must.
[[nodiscard]] std::optional<std::size_t> stoppedAt(const RepairAction& action);
/// Whether this step may be ticked, or measured: nothing before it has stopped the work.
[[nodiscard]] bool isOpenToWork(const RepairAction& action, std::size_t step);
/// Goes on all the same: the step is done, and its note says why.
void overrule(WorkStep& step, const std::string& reason);

} // namespace netmend
