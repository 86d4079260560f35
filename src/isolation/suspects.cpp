#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include <fmt/format.h>

#include "likelihood.h"
#include "netmend/isolation/entropy.h"
#include "netmend/isolation/isolation.h"
#include "netmend/probing/comparison.h"
#include "posterior.h"
#include "prediction.h"
#include "statistics.h"

namespace netmend {

namespace {

std::string whereText(const Isolation& isolation, const Observation& observation) {
  const auto& place = isolation.places[observation.place].label;
  return observation.other ? place + " to " + isolation.places[*observation.other].label : place;
}

/// What the suspect says of a reading before any reading was taken.
std::string expectedHere(const Isolation& isolation, const Observation& observation, std::size_t faultClass) {
  const auto& model = *isolation.model;
  if (model.effects[faultClass].kind == FaultKind::noneOfThese) return "anything is possible";
  if (observation.other) {
    const std::size_t a = model.cellOfPlace[observation.place];
    const std::size_t b = model.cellOfPlace[*observation.other];
    if (!together(model, faultClass, a, b)) return "OL is expected";
    const auto path = pathBetween(model, a, b, observation.reading.mode);
    return fmt::format("{:.2g} ± {:.2g} Ω is expected", path.ohms, path.sigma);
  }
  if (observation.reading.mode != ReadingMode::diode) return "as computed from what is behind the pins";
  const auto expected = predictWith(isolation, observation.place, faultClass, model.samples.weight.data());
  if (expected.overLimit > 0.9) return "OL is expected";
  auto text = fmt::format("{:.3f} ± {:.3f} V is expected", expected.mean.value, expected.spread.value);
  if (expected.overLimit > 0.1) text += fmt::format(", or OL ({:.0f} %)", 100.0 * expected.overLimit);
  return text;
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

std::string percent(double probability) {
  if (probability > 0.9995) return "> 99.9 %";
  return probability < 0.0005 ? "< 0.1 %" : fmt::format("{:.3g} %", 100.0 * probability);
}

/// How much likelier a reading makes a suspect than the others, for people.
std::string weightText(double bits) {
  constexpr double mostTimes = 1000.0;
  const double times = std::exp2(std::abs(bits));
  if (times < 1.05) return "as likely as before";
  const char* direction = bits >= 0.0 ? "likelier" : "less likely";
  if (times > mostTimes) return fmt::format("more than {:.0f} times {}", mostTimes, direction);
  return fmt::format("{:.{}f} times {}", times, times < 10.0 ? 1 : 0, direction);
}

void explain(const Isolation& isolation, const EvidenceTable& table, Suspect& suspect) {
  for (std::size_t i = 0; i < isolation.observations.size(); ++i) {
    const auto& observation = isolation.observations[i];
    Evidence evidence{i, table.bits(i, suspect.faultClass), {}};
    evidence.text = fmt::format(
        "{} read {}; here {}: {}", whereText(isolation, observation), comparedText(observation.reading),
        expectedHere(isolation, observation, suspect.faultClass), weightText(evidence.bits));
    suspect.evidence.push_back(std::move(evidence));
  }
  std::stable_sort(suspect.evidence.begin(), suspect.evidence.end(),
                   [](const Evidence& a, const Evidence& b) { return std::abs(a.bits) > std::abs(b.bits); });
  suspect.explanation = fmt::format("{}: {}. Before any reading {}.", percent(suspect.probability),
                                    suspect.text, percent(isolation.classes[suspect.faultClass].prior));
  constexpr std::size_t shown = 6;
  for (std::size_t i = 0; i < std::min(shown, suspect.evidence.size()); ++i)
    suspect.explanation += " " + suspect.evidence[i].text + ".";
  if (suspect.evidence.size() > shown)
    suspect.explanation += fmt::format(" {} more readings tell less.", suspect.evidence.size() - shown);
}

/// Readings that the leading suspect can only explain by a slipped probe.
std::vector<std::string> contradictions(const Isolation& isolation, std::size_t leading) {
  std::vector<std::string> result;
  const auto& model = *isolation.model;
  if (isolation.classes[leading].kind == FaultKind::noneOfThese) return result;
  for (const auto& observation : isolation.observations) {
    if (observation.reading.mode != ReadingMode::diode) continue;
    const double slip = 0.5 * model.priors.slippedShare *
                        (observation.reading.value ? 1.0 / model.diode->displayLimit.value : 1.0);
    const double chance = slip / std::exp(observation.logLikelihood[leading]);
    if (chance < 0.5) continue;
    result.push_back(fmt::format("{} read {}, but {} if it is \"{}\": the probe may have slipped ({:.0f} %); "
                                 "take this reading again",
                                 whereText(isolation, observation), comparedText(observation.reading),
                                 expectedHere(isolation, observation, leading),
                                 isolation.classes[leading].text, 100.0 * std::min(chance, 0.999)));
  }
  return result;
}

/// Where only a slip would leave the line sound.
std::string takeAgainText(const Isolation& isolation, const StandingOverLimit& standing) {
  const auto& observation = isolation.observations[standing.observation];
  return fmt::format(
      "{} read OL, but good boards read {:.3f} V there: if the probe had slipped, the line may "
      "be sound; take this reading again",
      whereText(isolation, observation), standing.good.value);
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
    suspect.text = isolation.classes[c].text;
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
  constexpr double worthSaying = 0.03;
  if (isolation.samplingError > worthSaying)
    result.ranked.front().explanation +=
        fmt::format(" Shares on a line of this size are worked out to about {:.0f} % only.",
                    100.0 * isolation.samplingError);
  if (const auto standing = againstSound(isolation)) {
    result.contradictions.push_back(takeAgainText(isolation, *standing));
    result.ranked.front().explanation += " " + result.contradictions.back() + ".";
  }
  return result;
}

} // namespace netmend
