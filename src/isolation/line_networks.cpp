#include "line_networks.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace netmend {

namespace {

constexpr double leastShort = 0.05; ///< Ω of a short to ground …
constexpr double mostShort = 30.0;  ///< … at most
constexpr std::size_t fewPins = 24; ///< with more, one chip lost moves nothing that its technology would tell

bool isLoad(const LinePin& pin) {
  return pin.termination.shares.resistive >= 0.5;
}

LineUnknown dropOf(const std::vector<DropDensity>& byTechnology) {
  LineUnknown result;
  std::vector<double> sum(byTechnology.size(), 0.0);
  result.below.assign(byTechnology.size(), 0.0F);
  for (std::size_t bin = 0; bin < DropDensity::bins; ++bin)
    for (std::size_t t = 0; t < sum.size(); ++t) {
      sum[t] += static_cast<double>(byTechnology[t].mass[bin]);
      result.below.push_back(static_cast<float>(sum[t]));
    }
  for (const auto& density : byTechnology) {
    result.high.push_back(density.high);
    result.none.push_back(density.none);
  }
  return result;
}

class Networks {
public:
  explicit Networks(const NetworkRequest& request)
      : request_(request), resistive_(resistiveDensity(request.priors, request.bench.source.testCurrent,
                                                       request.bench.source.displayLimit)) {
    result_.technologies = technologies(request.priors);
    if (request.pins.size() > fewPins) {
      result_.technologies.erase(result_.technologies.begin(), result_.technologies.end() - 1);
      result_.technologies.front().weight = 1.0;
    }
    for (const auto& technology : result_.technologies)
      clamps_.push_back(clampDensity(request.priors, technology, request.bench.source.testCurrent));
  }

  LineNetworks all() {
    for (const auto& effect : request_.effects)
      result_.ofClass.push_back(effect.kind == FaultKind::noneOfThese ? ClassNetwork{} : networkOf(effect));
    return std::move(result_);
  }

private:
  struct Building {
    ClassNetwork network;
    std::map<std::vector<std::size_t>, std::size_t> position; ///< of sets of pins among the unknowns
  };

  /// Of pins that hang on one node: its unknown, if any can hold a junction.
  std::size_t unknownOf(Building& building, const std::vector<std::size_t>& pins) {
    std::vector<std::size_t> junctions;
    for (const std::size_t pin : pins)
      if (!isLoad(request_.pins[pin])) junctions.push_back(pin);
    if (junctions.empty()) return noUnknown;
    const auto [at, fresh] = building.position.try_emplace(junctions, building.network.unknowns.size());
    if (fresh) building.network.unknowns.push_back(shared(junctions));
    return at->second;
  }

  std::size_t shared(const std::vector<std::size_t>& pins) {
    const auto [at, fresh] = known_.try_emplace(pins, result_.unknowns.size());
    if (fresh) {
      std::vector<DropDensity> densities;
      for (std::size_t technology = 0; technology < clamps_.size(); ++technology)
        densities.push_back(densityOf(pins, technology));
      result_.unknowns.push_back(dropOf(densities));
    }
    return at->second;
  }

  /// Pins of one part are alike.
  [[nodiscard]] DropDensity densityOf(const std::vector<std::size_t>& pins, std::size_t technology) const {
    std::map<std::uint64_t, std::vector<std::size_t>> parts;
    std::uint64_t lonely = std::uint64_t{1} << 60;
    for (const std::size_t pin : pins) {
      const PartId part = request_.pins[pin].part;
      parts[part ? part.value : ++lonely].push_back(pin);
    }
    DropDensity all;
    for (const auto& [part, own] : parts)
      all = composed(all, ofPart(own, technology), request_.bench.softMinimum);
    return all;
  }

  [[nodiscard]] DropDensity ofPart(const std::vector<std::size_t>& pins, std::size_t technology) const {
    const LinePin& first = request_.pins[pins.front()];
    const auto& shares = first.termination.shares;
    const std::size_t from = first.chip ? technology : clamps_.size() - 1;
    const DropDensity one = mixed(shares.junction, clamps_[from], shares.resistive, resistive_);
    return pins.size() > 1 ? lowered(one, request_.bench.softMinimum.belowOne(pins.size())) : one;
  }

  [[nodiscard]] double loadOf(const std::vector<std::size_t>& pins) const {
    double siemens = 0.0;
    for (const std::size_t pin : pins)
      if (isLoad(request_.pins[pin]))
        siemens += 1.0 / std::max(request_.pins[pin].termination.resistance.value, 0.1);
    return siemens;
  }

  std::size_t resistance(Building& building, double low, double high) {
    building.network.unknowns.push_back(result_.unknowns.size());
    LineUnknown unknown;
    unknown.least = std::log(low);
    unknown.most = std::log(high);
    result_.unknowns.push_back(std::move(unknown));
    return building.network.unknowns.size() - 1;
  }

  /// Tables are shared: what they depend on is the load, or the resistance between two nodes.
  Circuit withTable(Circuit circuit) {
    const bool loads = std::any_of(circuit.nodes.begin(), circuit.nodes.end(),
                                   [](const Circuit::Node& node) { return node.siemens > 0.0; });
    const double number = circuit.links.empty() ? circuit.nodes.front().siemens : circuit.links.front().ohms;
    const auto [at, fresh] = tables_.try_emplace({circuit.nodes.size(), loads, number}, nullptr);
    if (fresh) at->second = circuitTable(circuit, request_.bench);
    circuit.table = at->second;
    return circuit;
  }

  Circuit circuitOf(Building& building, const Fragment& fragment) {
    Circuit circuit;
    circuit.nodes.assign(fragment.pins.size(), {});
    for (std::size_t node = 0; node < fragment.pins.size(); ++node) {
      const std::size_t unknown = unknownOf(building, fragment.pins[node]);
      if (unknown != noUnknown) circuit.nodes[node].drops.push_back(unknown);
      circuit.nodes[node].siemens = loadOf(fragment.pins[node]);
    }
    for (const auto& series : fragment.series)
      circuit.links.push_back({series.a, series.b, series.resistance.value});
    return withTable(std::move(circuit));
  }

  /// Of the board before the fault: a node holds the junctions of all unknowns whose pins hang there.
  Circuit goodCircuit(const Building& building, std::size_t super) {
    const Fragment fragment = fragmentOf(request_.cells, request_.pins, {}, false, super);
    Circuit circuit;
    circuit.nodes.assign(fragment.pins.size(), {});
    for (std::size_t node = 0; node < fragment.pins.size(); ++node) {
      const auto& here = fragment.pins[node];
      for (const auto& [pins, unknown] : building.position)
        if (std::find(here.begin(), here.end(), pins.front()) != here.end())
          circuit.nodes[node].drops.push_back(unknown);
      circuit.nodes[node].siemens = loadOf(here);
    }
    for (const auto& series : fragment.series)
      circuit.links.push_back({series.a, series.b, series.resistance.value});
    return withTable(std::move(circuit));
  }

  ClassNetwork networkOf(const FaultEffect& effect) {
    Building building;
    ClassNetwork& network = building.network;
    const std::size_t supers = request_.cells.supers;
    if (effect.kind == FaultKind::shortToGround) {
      Circuit shorted;
      shorted.nodes.front().leak = resistance(building, leastShort, mostShort);
      network.circuits.push_back(std::move(shorted));
      network.circuitAt.assign(2 * supers, 0);
      return std::move(network);
    }
    for (const bool below : {false, true})
      for (std::size_t super = 0; super < supers; ++super) {
        network.circuitAt.push_back(network.circuits.size());
        if (below && effect.below.empty()) {
          network.circuitAt.back() = super;
          continue;
        }
        network.circuits.push_back(
            circuitOf(building, fragmentOf(request_.cells, request_.pins, effect, below, super)));
      }
    if (effect.kind == FaultKind::deadPin) unknownOf(building, {effect.deadPin});
    for (const std::size_t super : request_.goodSupers)
      network.good.push_back(goodCircuit(building, super));
    return std::move(network);
  }

  const NetworkRequest& request_;
  DropDensity resistive_;
  std::vector<DropDensity> clamps_; ///< by technology
  std::map<std::vector<std::size_t>, std::size_t> known_;
  std::map<std::tuple<std::size_t, bool, double>, std::shared_ptr<const std::vector<double>>> tables_;
  LineNetworks result_;
};

} // namespace

LineNetworks lineNetworks(const NetworkRequest& request) {
  return Networks(request).all();
}

} // namespace netmend
