#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "entropy.h"
#include "likelihood.h"
#include "netmend/isolation/isolation.h"
#include "posterior.h"
#include "prediction.h"
#include "statistics.h"

namespace netmend {

namespace {

Foretold foretold(const Isolation& isolation, const Observation& observation, std::size_t faultClass) {
  const auto& model = *isolation.model;
  if (model.effects[faultClass].kind == FaultKind::noneOfThese) return {Foretold::What::anything};
  if (observation.other) {
    const std::size_t a = model.cellOfPlace[observation.place];
    const std::size_t b = model.cellOfPlace[*observation.other];
    if (!together(model, faultClass, a, b)) return {Foretold::What::overLimit};
    const auto path = pathBetween(model, a, b, observation.reading.mode);
    return {Foretold::What::ohms, {}, Ohms(path.ohms), Ohms(path.sigma)};
  }
  if (observation.reading.mode != ReadingMode::diode) return {Foretold::What::notSaid};
  return {Foretold::What::volts,
          predictWith(isolation, observation.place, faultClass, model.samples.weight.data())};
}

/// log2 of the likelihood under each class over that under all others, reading by reading.
class EvidenceTable {
public:
  explicit EvidenceTable(const Isolation& isolation) : isolation_(isolation) {
    std::vector<double> logProbability;
    for (const auto& faultClass : isolation.classes)
      logProbability.push_back(std::log(std::max(faultClass.prior, 1e-300)));
    for (const auto& observation : isolation.observations) {
      before_.push_back(logProbability);
      for (std::size_t c = 0; c < logProbability.size(); ++c)
        logProbability[c] += observation.logLikelihood[c];
      const double all = logSum(logProbability);
      for (auto& value : logProbability)
        value -= all;
    }
    for (std::size_t i = 0; i < before_.size(); ++i)
      sums_.push_back(sumsOf(i));
  }

  [[nodiscard]] double bits(std::size_t observation, std::size_t faultClass) const {
    const auto& likelihood = isolation_.observations[observation].logLikelihood;
    const auto& [greatest, mass, weighted] = sums_[observation];
    const double own = std::exp(before_[observation][faultClass]);
    const double othersMass = std::max(mass - own, 1e-300);
    const double others =
        std::max(weighted - own * std::exp(likelihood[faultClass] - greatest), 1e-300) / othersMass;
    return std::clamp((likelihood[faultClass] - greatest - std::log(others)) / std::numbers::ln2, -999.0,
                      999.0);
  }

private:
  struct Sums {
    double greatest = 0.0; ///< of the log likelihoods
    double mass = 0.0;
    double weighted = 0.0;
  };
  [[nodiscard]] Sums sumsOf(std::size_t i) const {
    const auto& likelihood = isolation_.observations[i].logLikelihood;
    Sums sums{*std::max_element(likelihood.begin(), likelihood.end()), 0.0, 0.0};
    for (std::size_t c = 0; c < likelihood.size(); ++c) {
      const double p = std::exp(before_[i][c]);
      sums.mass += p;
      sums.weighted += p * std::exp(likelihood[c] - sums.greatest);
    }
    return sums;
  }

  const Isolation& isolation_;
  std::vector<std::vector<double>> before_;
  std::vector<Sums> sums_;
};

void explain(const Isolation& isolation, const EvidenceTable& table, Suspect& suspect) {
  for (std::size_t i = 0; i < isolation.observations.size(); ++i)
    suspect.evidence.push_back({i, table.bits(i, suspect.faultClass),
                                foretold(isolation, isolation.observations[i], suspect.faultClass)});
  std::stable_sort(suspect.evidence.begin(), suspect.evidence.end(),
                   [](const Evidence& a, const Evidence& b) { return std::abs(a.bits) > std::abs(b.bits); });
}

std::vector<Contradiction> contradictions(const Isolation& isolation, std::size_t leading) {
  std::vector<Contradiction> result;
  const auto& model = *isolation.model;
  if (isolation.classes[leading].kind == FaultKind::noneOfThese) return result;
  for (std::size_t i = 0; i < isolation.observations.size(); ++i) {
    const auto& observation = isolation.observations[i];
    if (observation.reading.mode != ReadingMode::diode) continue;
    const double slip = 0.5 * model.priors.slippedShare *
                        (observation.reading.value ? 1.0 / model.diode->displayLimit.value : 1.0);
    const double chance = slip / std::exp(observation.logLikelihood[leading]);
    if (chance < 0.5) continue;
    result.push_back({i, foretold(isolation, observation, leading), std::min(chance, 0.999)});
  }
  return result;
}

void measureSet(Suspects& result, double setMass) {
  while (result.setSize < result.ranked.size() && result.setMass < setMass) {
    const auto& suspect = result.ranked[result.setSize++];
    result.setMass += suspect.probability;
    result.setPlaces += std::max<std::size_t>(1, suspect.places.size());
    for (const auto& place : suspect.places) {
      if (place.length) result.setLength += *place.length;
      const bool hasLength = place.edgeKind == EdgeKind::track || place.edgeKind == EdgeKind::unknownWay;
      if (hasLength && !place.length) result.setHasUnknownLength = true;
    }
  }
}

} // namespace

Suspects suspects(const Isolation& isolation, double setMass) {
  Suspects result;
  std::vector<std::size_t> order(isolation.classes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return isolation.probability[a] > isolation.probability[b];
  });
  const EvidenceTable table(isolation);
  for (const std::size_t c : order) {
    Suspect suspect;
    suspect.faultClass = c;
    suspect.probability = isolation.probability[c];
    suspect.prior = isolation.classes[c].prior;
    suspect.places = isolation.classes[c].places;
    result.ranked.push_back(std::move(suspect));
  }
  measureSet(result, setMass);
  // Nobody reads why the hundredth is unlikely, and on a large line each costs as much as the first.
  constexpr std::size_t mostExplained = 12;
  const std::size_t explained =
      std::min(result.ranked.size(), std::max(mostExplained, std::min<std::size_t>(result.setSize, 40)));
  for (std::size_t i = 0; i < explained; ++i)
    explain(isolation, table, result.ranked[i]);
  result.entropyBits = entropyBits(isolation.probability);
  if (!order.empty()) result.contradictions = contradictions(isolation, order.front());
  result.againstSound = againstSound(isolation);
  return result;
}

} // namespace netmend
