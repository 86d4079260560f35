#include "netmend/isolation/short_places.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "netmend/netgraph/net_role.h"
#include "short_measured.h"
#include "short_model.h"
#include "statistics.h"

namespace netmend {

namespace {

/// The reason why a reading says nothing, or else its point.
struct ShortUse {
  std::optional<ShortAsideWhy> why;
  std::size_t point = 0;
};

bool isGround(const ProbePoint& point, const Lookup& lookup) {
  if (point.pin) {
    const Pin* pin = lookup.board().pins.find(point.pin);
    const Net* net = pin != nullptr && pin->net.known() ? lookup.board().nets.find(pin->net.value) : nullptr;
    return net != nullptr && roleOf(*net).valueOr(NetRole::signal) == NetRole::ground;
  }
  return roleFromName(point.label).valueOr(NetRole::signal) == NetRole::ground;
}

ShortUse useOf(const ShortSearch& search, const Lookup& lookup, const Reading& reading) {
  const ShortModel& model = *search.model;
  const bool drop = reading.mode == ReadingMode::dropUnderCurrent;
  if (!drop && reading.mode != ReadingMode::milliohms) return {ShortAsideWhy::mode};
  if (reading.overLimit()) return {ShortAsideWhy::overLimit};
  if (!(*reading.value > 0.0)) return {ShortAsideWhy::negative};
  if (reading.settling == Settling::rising) return {ShortAsideWhy::rising};
  if (drop && (!reading.injected || !(reading.injected->value > 0.0) || !model.intoNode))
    return {ShortAsideWhy::currentUnknown};
  if (!isGround(reading.other, lookup)) return {ShortAsideWhy::notToGround};
  if (*reading.value > model.priors.mostShort.value * (drop ? reading.injected->value : 1.0))
    return {ShortAsideWhy::tooMuch};
  const auto at = std::find_if(search.points.begin(), search.points.end(), [&](const ProbePlace& point) {
    return reading.point.pin ? point.pin == reading.point.pin : point.label == reading.point.label;
  });
  if (at == search.points.end()) return {ShortAsideWhy::notOnLine};
  return {std::nullopt, static_cast<std::size_t>(at - search.points.begin())};
}

/// How much likelier a sign makes a place.
double factorOf(const ShortSign& sign, const ShortPlace& place, const ShortPriors& priors) {
  const bool warm = sign.kind == ShortSign::Kind::warm;
  const double most = warm ? priors.warmFactor : priors.damageFactor;
  if (sign.part && place.part == sign.part) return most;
  if (!sign.at || !place.at) return 1.0;
  const double far = distance(*sign.at, *place.at).mm() / priors.warmReach.mm();
  return 1.0 + (most - 1.0) * std::exp(-0.5 * far * far);
}

void normalise(std::vector<ShortPlace>& places, std::vector<double> logMass) {
  const double all = logSum(logMass);
  for (std::size_t i = 0; i < places.size(); ++i)
    places[i].probability = std::exp(logMass[i] - all);
}

std::vector<ShortSuspect> rankedOf(const ShortSearch& search) {
  std::map<std::size_t, ShortSuspect> byRepair;
  for (std::size_t i = 0; i < search.places.size(); ++i) {
    const ShortPlace& place = search.places[i];
    ShortSuspect& suspect = byRepair[search.model->suspectOf[i]];
    suspect.kind = place.kind;
    suspect.places.push_back(i);
    suspect.prior += place.prior;
    suspect.probability += place.probability;
  }
  std::vector<ShortSuspect> out;
  for (auto& [number, suspect] : byRepair) {
    std::stable_sort(suspect.places.begin(), suspect.places.end(), [&](std::size_t a, std::size_t b) {
      return search.places[a].probability > search.places[b].probability;
    });
    out.push_back(std::move(suspect));
  }
  std::stable_sort(out.begin(), out.end(), [](const ShortSuspect& a, const ShortSuspect& b) {
    return a.probability > b.probability;
  });
  return out;
}

} // namespace

ShortSearch findShort(const ShortInput& input, const std::vector<Reading>& readings,
                      const std::vector<ShortSign>& signs) {
  return weighShort(shortHypotheses(input), input.lookup, readings, signs);
}

ShortSearch weighShort(ShortSearch out, const Lookup& lookup, const std::vector<Reading>& readings,
                       const std::vector<ShortSign>& signs) {
  out.signs = signs;
  for (const Reading& reading : readings) {
    const ShortUse use = useOf(out, lookup, reading);
    if (use.why)
      out.setAside.push_back({reading, *use.why});
    else
      out.observations.push_back({reading, use.point});
  }
  const ShortModel& model = *out.model;
  const ShortReadings measured(model, out.observations);
  const auto weigh = [&](std::size_t place, int depth) {
    double factor = out.places[place].prior;
    for (const ShortSign& sign : signs)
      factor *= factorOf(sign, out.places[place], model.priors);
    if (out.observations.empty()) return std::log(factor);
    return std::log(factor) +
           evidenceWithSlip(measured.equations(place), measured.measured(), model.priors.slippedShare, depth);
  };
  std::vector<double> logMass;
  for (std::size_t i = 0; i < out.places.size(); ++i)
    logMass.push_back(weigh(i, 0));
  // Only what may still matter is worth an exact sum.
  constexpr double farBehind = 9.0;
  constexpr int directions = 2;
  const double best = *std::max_element(logMass.begin(), logMass.end());
  for (std::size_t i = 0; i < out.places.size() && !out.observations.empty(); ++i)
    if (logMass[i] > best - farBehind) logMass[i] = weigh(i, directions);
  normalise(out.places, std::move(logMass));
  out.suspects = rankedOf(out);
  out.resistance = model.priors.shortResistance;
  if (!out.observations.empty()) {
    const std::size_t first = out.suspects.front().places.front();
    out.resistance = Ohms(fitShort(measured.equations(first), measured.measured()).unknowns[0]);
  }
  return out;
}

bool ShortSearch::saysShort() const {
  return std::any_of(observations.begin(), observations.end(),
                     [](const ShortObservation& one) { return one.reading.mode == ReadingMode::milliohms; });
}

std::optional<ShortSign> warmestOf(const Lookup& lookup, const std::vector<Reading>& readings,
                                   const ShortPriors& priors) {
  const Reading* warmest = nullptr;
  std::optional<double> coolest;
  for (const Reading& reading : readings) {
    if (reading.mode != ReadingMode::temperature || !reading.value) continue;
    if (warmest == nullptr || *reading.value > *warmest->value) warmest = &reading;
    const double board =
        reading.condition.temperature ? reading.condition.temperature->value : *reading.value;
    coolest = std::min(coolest.value_or(board), std::min(board, *reading.value));
  }
  if (warmest == nullptr || *warmest->value - *coolest < priors.leastRise.value) return std::nullopt;
  ShortSign out;
  const Pin* pin = lookup.board().pins.find(warmest->point.pin);
  if (pin == nullptr) return std::nullopt;
  out.part = pin->part;
  const auto at = positionOf(lookup, pin->id);
  if (at.known()) out.at = at.value;
  return out;
}

} // namespace netmend
