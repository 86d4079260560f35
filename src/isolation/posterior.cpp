#include "posterior.h"

#include <algorithm>
#include <cmath>

#include "statistics.h"

namespace netmend {

namespace {

constexpr double leastEffective = 100.0; ///< samples (Kish: 1/Σw²) behind a share …
constexpr double leastShare = 0.02;      ///< … from here on
constexpr double negligibleShare = 1e-4; ///< moves no error

/// Classes share their samples, so that what an unusual one brings, it brings to several: with a(c, s) what
/// class c has of sample s, and t(s) what all have, the variance of the share p(c) = Σ a / Σ t is
/// Σ (a(c, s) − p(c)·t(s))² (delta method for a ratio of means).
double samplingErrorOf(const Isolation& isolation) {
  const std::size_t samples = isolation.model->samples.samples;
  std::vector<std::size_t> counting;
  std::vector<double> all(samples, 0.0);
  for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
    const double p = isolation.probability[c];
    if (p < negligibleShare) continue;
    counting.push_back(c);
    for (std::size_t s = 0; s < samples; ++s)
      all[s] += p * isolation.weight[c * samples + s];
  }
  double most = 0.0;
  for (const std::size_t c : counting) {
    const double p = isolation.probability[c];
    double variance = 0.0;
    for (std::size_t s = 0; s < samples; ++s) {
      const double off = p * (isolation.weight[c * samples + s] - all[s]);
      variance += off * off;
    }
    most = std::max(most, variance);
  }
  return std::sqrt(most);
}

} // namespace

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
  if (!isolation.model->diode) return result;
  const double limit = isolation.model->diode->displayLimit.value;
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
  isolation.samplingError = samplingErrorOf(isolation);
}

bool wantsMoreSamples(const Isolation& isolation) {
  if (isolation.samplingError > mostSamplingError) return true;
  const std::size_t samples = isolation.model->samples.samples;
  for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
    if (isolation.probability[c] < leastShare) continue;
    double squares = 0.0;
    for (std::size_t s = 0; s < samples; ++s)
      squares += isolation.weight[c * samples + s] * isolation.weight[c * samples + s];
    if (squares * leastEffective > 1.0) return true;
  }
  return false;
}

} // namespace netmend
