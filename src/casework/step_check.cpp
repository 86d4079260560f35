#include "netmend/casework/step_check.h"

namespace netmend {

StepOutcome compareWith(const StepMeasure& wanted, std::optional<double> value) {
  if (!wanted.comparable()) return StepOutcome::notCompared;
  if (!value) return wanted.overLimit ? StepOutcome::agrees : StepOutcome::disagrees;
  const bool within =
      wanted.interval && *value >= wanted.interval->lowest && *value <= wanted.interval->highest;
  return within ? StepOutcome::agrees : StepOutcome::disagrees;
}

std::optional<std::size_t> stoppedAt(const RepairAction& action) {
  for (std::size_t i = 0; i < action.steps.size(); ++i) {
    const WorkStep& step = action.steps[i];
    if (!step.done && step.read && step.read->outcome == StepOutcome::disagrees) return i;
  }
  return std::nullopt;
}

bool isOpenToWork(const RepairAction& action, std::size_t step) {
  const auto stopped = stoppedAt(action);
  return !stopped || step <= *stopped;
}

void overrule(WorkStep& step, const std::string& reason) {
  step.done = true;
  step.note = reason;
}

} // namespace netmend
