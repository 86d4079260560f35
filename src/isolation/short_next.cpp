#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "entropy.h"
#include "short_measured.h"
#include "statistics.h"

namespace netmend {

namespace {

/// A Gaussian of a mixture: what one place says of a point.
struct Voice {
  std::size_t suspect;
  double weight;
  double mean;
  double sigma;
};

/// Nodes and weights of the Gauss-Hermite rule of five points for a standard normal distribution (Abramowitz
/// and Stegun 25.10, scaled by √2).
constexpr std::array<double, 5> nodes{-2.856970013872806, -1.355626179974266, 0.0, 1.355626179974266,
                                      2.856970013872806};
constexpr std::array<double, 5> weights{0.01125741132772069, 0.2220759220056126, 0.5333333333333333,
                                        0.2220759220056126, 0.01125741132772069};

struct Told {
  double bits = 0.0;
  double bestGuess = 0.0;
};

/// Information about which suspect it is, I(G; Y) = E[log p(G | Y)/p(G)], and the chance to be right then.
Told toldBy(const std::vector<Voice>& voices, const std::vector<double>& probability) {
  Told out;
  std::vector<double> mass(probability.size());
  for (const Voice& voice : voices)
    for (std::size_t k = 0; k < nodes.size(); ++k) {
      const double read = voice.mean + nodes[k] * voice.sigma;
      std::fill(mass.begin(), mass.end(), 0.0);
      double all = 0.0;
      for (const Voice& other : voices) {
        const double density = other.weight * normalDensity(read, other.mean, other.sigma);
        mass[other.suspect] += density;
        all += density;
      }
      if (!(all > 0.0) || !(mass[voice.suspect] > 0.0)) continue;
      const double share = voice.weight * weights[k];
      out.bits += share * std::log2(mass[voice.suspect] / all / probability[voice.suspect]);
      out.bestGuess += share * *std::max_element(mass.begin(), mass.end()) / all;
    }
  out.bits = std::max(0.0, out.bits);
  return out;
}

/// The likeliest places, enough to choose a point by.
std::vector<std::size_t> likeliest(const ShortSearch& search) {
  constexpr std::size_t most = 60;
  constexpr double enough = 0.995;
  std::vector<std::size_t> order(search.places.size());
  for (std::size_t i = 0; i < order.size(); ++i)
    order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return search.places[a].probability > search.places[b].probability;
  });
  double sum = 0.0;
  std::size_t count = 0;
  while (count < order.size() && count < most && sum < enough)
    sum += search.places[order[count++]].probability;
  order.resize(count);
  return order;
}

/// Reachable points without a reading; of several on one node the cheapest. A pad reads what its leg does.
std::vector<std::size_t> openPoints(const ShortSearch& search, const std::vector<std::string>& unreachable) {
  std::set<std::size_t> taken;
  for (const ShortObservation& one : search.observations)
    taken.insert(search.model->pointNode[one.point]);
  std::map<std::size_t, std::size_t> best;
  for (std::size_t i = 0; i < search.points.size(); ++i) {
    const ProbePlace& point = search.points[i];
    const std::size_t node = search.model->pointNode[i];
    if (!point.effort || std::holds_alternative<PadId>(point.object) || taken.contains(node) ||
        std::find(unreachable.begin(), unreachable.end(), point.label) != unreachable.end())
      continue;
    const auto [found, isNew] = best.try_emplace(node, i);
    if (!isNew && *point.effort < *search.points[found->second].effort) found->second = i;
  }
  std::vector<std::size_t> out;
  out.reserve(best.size());
  for (const auto& [node, point] : best)
    out.push_back(point);
  return out;
}

} // namespace

NextShortProbe nextShortProbe(const ShortSearch& search, const std::vector<std::string>& unreachable) {
  const ShortModel& model = *search.model;
  const bool drop = model.meter.mode(ReadingMode::milliohms) == nullptr && model.intoNode.has_value();
  const auto current = drop ? std::optional(Amperes(1.0)) : std::nullopt;
  const auto places = likeliest(search);
  const auto points = openPoints(search, unreachable);
  const ShortReadings readings(model, search.observations);

  std::map<std::size_t, std::size_t> numbers;
  std::vector<double> probability;
  double mass = 0.0;
  for (const std::size_t place : places) {
    const auto [found, isNew] = numbers.try_emplace(model.suspectOf[place], numbers.size());
    if (isNew) probability.push_back(0.0);
    probability[found->second] += search.places[place].probability;
    mass += search.places[place].probability;
  }
  for (double& one : probability)
    one /= mass;
  std::vector<std::vector<ShortReadings::Expected>> foretold;
  foretold.reserve(places.size());
  for (const std::size_t place : places)
    foretold.push_back(readings.foretell(place, points, drop));

  NextShortProbe out;
  out.openBits = entropyBits(probability);
  const double bestNow =
      probability.empty() ? 0.0 : *std::max_element(probability.begin(), probability.end());
  out.stop = true;
  for (std::size_t p = 0; p < points.size(); ++p) {
    std::vector<Voice> voices;
    for (std::size_t i = 0; i < places.size(); ++i) {
      const auto& says = foretold[i][p];
      const double sigma = std::sqrt(says.variance + std::pow(repeatOf(model, says.mean, current), 2));
      voices.push_back({numbers[model.suspectOf[places[i]]], search.places[places[i]].probability / mass,
                        says.mean, sigma});
    }
    const Told told = toldBy(voices, probability);
    ShortProbe probe{points[p], drop ? ReadingMode::dropUnderCurrent : ReadingMode::milliohms,
                     *search.points[points[p]].effort, told.bits, told.bestGuess};
    const Seconds gained = model.efforts.wrongRepair * (told.bestGuess - bestNow);
    if (gained > probe.effort) out.stop = false;
    out.ranked.push_back(probe);
  }
  std::stable_sort(out.ranked.begin(), out.ranked.end(), [](const ShortProbe& a, const ShortProbe& b) {
    return a.bits / a.effort.value > b.bits / b.effort.value;
  });
  // One point may tell little where two tell much: it is the difference that says where.
  constexpr double worthBits = 0.02;
  constexpr std::size_t fewest = 2;
  const bool early = search.observations.size() < fewest;
  if (!out.ranked.empty() && out.openBits > 1.0 && (early || out.ranked.front().bits > worthBits))
    out.stop = false;
  return out;
}

DropPattern dropPattern(const ShortSearch& search, std::size_t place, std::size_t intoPoint,
                        Amperes current) {
  const ShortModel& model = *search.model;
  DropPattern out;
  if (place >= model.placeNode.size()) return out;
  const auto perAmpere = model.network.pattern(model.pointNode[intoPoint], model.placeNode[place]);
  const auto volts = [&](NodeIndex node) {
    const double ohms = perAmpere[static_cast<Eigen::Index>(model.network.nodeOf(node))];
    return current * (search.resistance + Ohms(ohms));
  };
  for (const auto edge : boost::make_iterator_range(boost::edges(model.graph))) {
    const CopperEdge& copper = model.graph[edge];
    if (copper.kind == EdgeKind::track && copper.from && copper.to)
      out.pieces.push_back({{*copper.from, *copper.to},
                            copper.layer,
                            volts(boost::source(edge, model.graph)),
                            volts(boost::target(edge, model.graph))});
  }
  for (const auto node : boost::make_iterator_range(boost::vertices(model.graph))) {
    const CopperNode& copper = model.graph[node];
    if (copper.kind != NodeKind::joint && copper.kind != NodeKind::unknownWay && copper.at)
      out.pieces.push_back({{*copper.at}, copper.layer, volts(node), volts(node)});
  }
  out.into = search.points[intoPoint].at;
  out.out = search.places[place].at;
  out.most =
      current * (search.resistance + Ohms(perAmpere[static_cast<Eigen::Index>(model.pointNode[intoPoint])]));
  return out;
}

} // namespace netmend
