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
#include "weighing.h"

namespace netmend {

namespace {

/// Readings left out one at a time: what a suspect says of each, and for or against what, given all the
/// others.
class EvidenceTable {
public:
  explicit EvidenceTable(const Isolation& isolation)
      : isolation_(isolation), model_(*isolation.model), readings_(placedReadings(isolation)),
        weighing_(model_, readings_) {}

  /// Evidence of all readings for the first of these classes against the rest of them.
  void explain(const std::vector<std::size_t>& classes, std::vector<Suspect>& suspects) {
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      std::vector<double> without;
      std::vector<double> all;
      std::vector<Foretold> said;
      for (const std::size_t c : classes) {
        const double prior = std::log(std::max(isolation_.classes[c].prior, 1e-300));
        const Weighed rest = weighing_.of(c, i);
        without.push_back(prior + rest.log);
        all.push_back(isolation_.logMass[c]);
        said.push_back(foretold(rest, c, i));
      }
      for (std::size_t k = 0; k < classes.size(); ++k)
        suspects[k].evidence.push_back({i, bits(k, without, all), said[k]});
    }
    for (std::size_t k = 0; k < classes.size(); ++k)
      std::stable_sort(
          suspects[k].evidence.begin(), suspects[k].evidence.end(),
          [](const Evidence& a, const Evidence& b) { return std::abs(a.bits) > std::abs(b.bits); });
  }

  /// How likely the class's likelihood of a reading is a slip's.
  [[nodiscard]] double slipped(std::size_t c, std::size_t reading) {
    const Weighed rest = weighing_.of(c, reading);
    const double prior = std::log(std::max(isolation_.classes[c].prior, 1e-300));
    const double log = isolation_.logMass[c] - prior - rest.log;
    const double slip = 0.5 * model_.priors.slippedShare *
                        (readings_[reading].value ? 1.0 / model_.displayLimit().value : 1.0);
    return slip / std::exp(log);
  }
  [[nodiscard]] Foretold foretold(std::size_t c, std::size_t reading) {
    return foretold(weighing_.of(c, reading), c, reading);
  }

private:
  [[nodiscard]] Foretold foretold(const Weighed& rest, std::size_t c, std::size_t reading) const {
    if (model_.effects[c].kind == FaultKind::noneOfThese) return {Foretold::What::anything};
    const PlacedReading& placed = readings_[reading];
    const std::size_t here = model_.cellOfPlace[placed.place];
    if (placed.other) {
      const std::size_t there = model_.cellOfPlace[*placed.other];
      if (!together(model_, c, here, there)) return {Foretold::What::overLimit};
      const auto path = pathBetween(model_, here, there, placed.mode);
      return {Foretold::What::ohms, {}, Ohms(path.ohms), Ohms(path.sigma)};
    }
    if (placed.sort != ReadingSort::voltsToGround || rest.foreseen.empty()) return {Foretold::What::notSaid};
    return {Foretold::What::volts, predictionOf(model_, rest.foreseen[model_.circuitAt(c, here)])};
  }

  static double bits(std::size_t k, const std::vector<double>& without, const std::vector<double>& all) {
    std::vector<double> othersWithout;
    std::vector<double> othersAll;
    for (std::size_t i = 0; i < all.size(); ++i)
      if (i != k) {
        othersWithout.push_back(without[i]);
        othersAll.push_back(all[i]);
      }
    const double own = all[k] - without[k];
    const double others = logSum(othersAll) - logSum(othersWithout);
    return std::clamp((own - others) / std::numbers::ln2, -999.0, 999.0);
  }

  const Isolation& isolation_;
  const IsolationModel& model_;
  std::vector<PlacedReading> readings_;
  Weighing weighing_;
};

std::vector<Contradiction> contradictions(const Isolation& isolation, EvidenceTable& table,
                                          std::size_t leading) {
  std::vector<Contradiction> result;
  if (isolation.classes[leading].kind == FaultKind::noneOfThese) return result;
  for (std::size_t i = 0; i < isolation.observations.size(); ++i) {
    if (isolation.observations[i].reading.mode != ReadingMode::diode) continue;
    const double chance = table.slipped(leading, i);
    if (chance < 0.5) continue;
    result.push_back({i, table.foretold(leading, i), std::min(chance, 0.999)});
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
  constexpr std::size_t fewest = 6;
  constexpr std::size_t mostExplained = 16;
  constexpr double leastExplained = 1e-3;
  const auto likely = static_cast<std::size_t>(
      std::count_if(result.ranked.begin(), result.ranked.end(),
                    [](const Suspect& s) { return s.probability >= leastExplained; }));
  const std::size_t explained = std::min(result.ranked.size(), std::clamp(likely, fewest, mostExplained));
  EvidenceTable table(isolation);
  table.explain({order.begin(), order.begin() + static_cast<std::ptrdiff_t>(explained)}, result.ranked);
  result.entropyBits = entropyBits(isolation.probability);
  if (!order.empty()) result.contradictions = contradictions(isolation, table, order.front());
  result.againstSound = againstSound(isolation);
  return result;
}

} // namespace netmend
