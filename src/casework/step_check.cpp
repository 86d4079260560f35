#include "netmend/casework/step_check.h"

namespace netmend {

StepOutcome compareWith(const StepMeasure& wanted, std::optional<double> value) {
  if (!wanted.comparable()) return StepOutcome::notCompared;
  if (!value) return wanted.overLimit ? StepOutcome::agrees : StepOutcome::disagrees;
  const bool within =
      wanted.interval && *value >= wanted.interval->lowest && *value <= wanted.interval->highest;
  return within ? StepOutcome::agrees : StepOutcome::disagrees;
}

ProbePoint withPin(ProbePoint point, const Lookup* lookup) {
  if (point.pin || lookup == nullptr) return point;
  if (const auto pins = lookup->pinsLabelled(point.label); pins.size() == 1) point.pin = pins.front();
  return point;
}

} // namespace netmend
