#pragma once

#include "netmend/base/said.h"
#include "netmend/jobbook/job.h"

namespace netmend {

[[nodiscard]] Said nameOf(JobState state);
[[nodiscard]] Said nameOf(RepairKind kind);
/// How the board was handled while a reading was taken; empty: not in a way that counts.
[[nodiscard]] Said handlingSaid(const Condition& condition);

} // namespace netmend
