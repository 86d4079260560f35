#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "netmend/jobbook/job.h"

/// What the device is for is tried once the work is done; it stands among the steps of the repair that it
/// proves.
namespace netmend {

/// Whether the step tries what the device is for, after the work, rather than being part of the work.
[[nodiscard]] bool isFunctionCheck(const WorkStep& step);
/// Work that is still to be done. Whether the device does what it is for is seen when the repair is proved.
[[nodiscard]] inline bool isOpenWork(const WorkStep& step) {
  return !step.done && !isFunctionCheck(step);
}
[[nodiscard]] inline bool isWorkDone(const RepairAction& action) {
  return std::none_of(action.steps.begin(), action.steps.end(), isOpenWork);
}
[[nodiscard]] WorkStep functionCheck(const std::string& what);

/// The functions that a symptom names, as they are to be tried: "3, 6, 9 and Enter do nothing" gives "3",
/// "6", "9" and "Enter"; "Keys 3 and 6" gives "Key 3" and "Key 6". A list stands before what is said of it,
/// its names are numbers, single capitals or words with a capital; a lone one counts only after "key" or
/// "button".
[[nodiscard]] std::vector<std::string> functionsIn(const std::string& symptom);

/// The repair that a proof is about: the last one that was not "not economic". Null: none.
[[nodiscard]] const RepairAction* actionToProve(const Job& job);

} // namespace netmend
