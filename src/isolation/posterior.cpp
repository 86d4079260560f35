#include "posterior.h"

#include <algorithm>
#include <cmath>

#include "statistics.h"

namespace netmend {

std::vector<double> posteriorOf(const Isolation& isolation) {
  const double all = logSum(isolation.logMass);
  std::vector<double> result;
  result.reserve(isolation.logMass.size());
  for (const double mass : isolation.logMass)
    result.push_back(std::exp(mass - all));
  return result;
}

std::vector<StandingOverLimit> standingOverLimits(const Isolation& isolation) {
  std::vector<StandingOverLimit> result;
  if (!isolation.model->bench) return result;
  const double limit = isolation.model->displayLimit().value;
  for (const auto& known : isolation.model->knownGood) {
    if (!known.value || known.sometimesOverLimit || known.value->value >= limit) continue;
    std::optional<StandingOverLimit> standing;
    for (std::size_t i = 0; i < isolation.observations.size(); ++i) {
      const auto& observation = isolation.observations[i];
      if (observation.other || observation.reading.mode != ReadingMode::diode) continue;
      if (isolation.places[observation.place].pin != known.pin) continue;
      if (observation.reading.value)
        standing.reset();
      else if (standing)
        standing->repeated = true;
      else
        standing = StandingOverLimit{i, *known.value, false};
    }
    if (standing) result.push_back(*standing);
  }
  return result;
}

std::optional<StandingOverLimit> againstSound(const Isolation& isolation) {
  const auto standing = standingOverLimits(isolation);
  if (standing.empty()) return std::nullopt;
  if (std::max_element(isolation.logMass.begin(), isolation.logMass.end()) != isolation.logMass.begin())
    return std::nullopt;
  const auto once = std::find_if(standing.begin(), standing.end(),
                                 [](const StandingOverLimit& one) { return !one.repeated; });
  return once != standing.end() ? *once : standing.front();
}

void normalise(Isolation& isolation) {
  isolation.probability = posteriorOf(isolation);
  if (!standingOverLimits(isolation).empty()) {
    const double others = logSum(isolation.logMass.data() + 1, isolation.logMass.size() - 1);
    isolation.probability.front() = 0.0;
    for (std::size_t c = 1; c < isolation.probability.size(); ++c)
      isolation.probability[c] = std::exp(isolation.logMass[c] - others);
  }
}

} // namespace netmend
