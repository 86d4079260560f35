#pragma once

#include <vector>

#include "netmend/isolation/isolation.h"
#include "netmend/jobbook/job.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/probing/verdict.h"

/// What the stations found, as a job keeps it.
namespace netmend {

/// The suspects of the reported set and always "none of these", likeliest first.
[[nodiscard]] std::vector<JobSuspect> toJobSuspects(const Isolation& isolation, const Suspects& suspects);

/// A reading with the verdict on it, if there is one.
[[nodiscard]] JobReading toJobReading(const Reading& reading, ReadingPurpose purpose, const Verdict* verdict);

[[nodiscard]] std::vector<WorkStep> toWorkSteps(const std::vector<Step>& steps);

/// A jumper proposal that was chosen, with its steps.
[[nodiscard]] RepairAction toJumperAction(const JumperProposal& proposal, const std::vector<Step>& steps,
                                          const std::string& net, const std::string& reason);

} // namespace netmend
