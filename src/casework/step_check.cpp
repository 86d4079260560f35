#include "netmend/casework/step_check.h"

namespace netmend {

StepOutcome compareWith(const StepMeasure& wanted, std::optional<double> value) {
  if (!wanted.comparable()) return StepOutcome::notCompared;
  if (!value) return wanted.overLimit ? StepOutcome::agrees : StepOutcome::disagrees;
  const bool within =
      wanted.interval && *value >= wanted.interval->lowest && *value <= wanted.interval->highest;
  return within ? StepOutcome::agrees : StepOutcome::disagrees;
}

} // namespace netmend
