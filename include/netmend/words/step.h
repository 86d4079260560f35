#pragma once

#include "netmend/base/said.h"
#include "netmend/jobbook/job.h"

namespace netmend {

/// A step of the repair, its gaps filled. What a person typed, and what an older book holds, is as it was
/// written.
[[nodiscard]] Said stepSaid(const WorkStep& step, const RepairAction& action);
/// How it is done, and what to mind; empty: the step says it all.
[[nodiscard]] Said detailSaid(const WorkStep& step, const RepairAction& action);
/// What a check must find, and what to do otherwise; empty for other steps.
[[nodiscard]] Said expectedSaid(const WorkStep& step, const RepairAction& action);
[[nodiscard]] Said otherwiseSaid(const WorkStep& step, const RepairAction& action);
/// What its check read, and whatever somebody noted at it.
[[nodiscard]] Said noteSaid(const WorkStep& step);
/// What a check read: "0.462 V, as it must be".
[[nodiscard]] Said readSaid(const CheckRead& read, ReadingMode mode);
/// Why the repair is made; empty: nobody said.
[[nodiscard]] Said reasonSaid(const RepairAction& action);

} // namespace netmend
