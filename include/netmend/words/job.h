#pragma once

#include "netmend/base/said.h"
#include "netmend/jobbook/job_book.h"

namespace netmend {

[[nodiscard]] Said nameOf(JobState state);
[[nodiscard]] Said nameOf(RepairKind kind);
[[nodiscard]] Said eventSaid(const JobEvent& event);
/// How the board was handled while a reading was taken; empty: not in a way that counts.
[[nodiscard]] Said handlingSaid(const Condition& condition);

} // namespace netmend
