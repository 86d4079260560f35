#pragma once

#include <string>

#include "netmend/jobbook/job.h"

/// What the device is for is tried once the work is done; it stands among the steps of the repair that it
/// proves.
namespace netmend {

/// Whether the step tries what the device is for, after the work, rather than being part of the work.
[[nodiscard]] bool isFunctionCheck(const WorkStep& step);
[[nodiscard]] WorkStep functionCheck(const std::string& what);

/// The repair that a proof is about: the last one that was not "not economic". Null: none.
[[nodiscard]] const RepairAction* actionToProve(const Job& job);

} // namespace netmend
