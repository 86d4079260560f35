#pragma once

#include <vector>

#include "netmend/jobbook/job.h"
#include "netmend/probing/expected.h"

namespace netmend {

/// What the checks of a repair by hand must read, from what good boards read at the same place: those that
/// name no figure get it, so that the work stops where the repair did not help. `readings` are the job's: a
/// place is held against boards in the condition that it was read in before.
void addKnownValues(RepairAction& action, const ExpectedTable& expected,
                    const std::vector<JobReading>& readings);

} // namespace netmend
