#include "netmend/casework/function_check.h"

#include <algorithm>

namespace netmend {

bool isFunctionCheck(const WorkStep& step) {
  return step.function;
}

WorkStep functionCheck(const std::string& what) {
  WorkStep out;
  out.text = what;
  out.check = true;
  out.function = true;
  return out;
}

const RepairAction* actionToProve(const Job& job) {
  const auto last = std::find_if(job.actions.rbegin(), job.actions.rend(),
                                 [](const RepairAction& a) { return a.kind != RepairKind::notEconomic; });
  return last == job.actions.rend() ? nullptr : &*last;
}

} // namespace netmend
