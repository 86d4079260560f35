#pragma once

#include <cmath>
#include <random>

#include "drawn_line.h"
#include "isolation/circuit.h"
#include "isolation/operating_point.h"

/// Circuits as a line makes them, thrown by dice, for tests of what a meter reads on them.
namespace netmend::test {

struct RandomCircuit {
  Circuit circuit;
  UnknownValues values;

  [[nodiscard]] double siemens(const Circuit::Node& node) const {
    return node.siemens + (node.leak == noUnknown ? 0.0 : std::exp(-values[node.leak]));
  }
  [[nodiscard]] double ohms(const Circuit::Link& link) const {
    return link.ohms + (link.unknown == noUnknown ? 0.0 : std::exp(values[link.unknown]));
  }
};

/// A line's circuits in diode mode, or in ohms.
inline LineBench lineBench(ReadingMode mode) {
  const auto meter = handheld();
  const auto priors = priorsFromData();
  const auto diode = *meterSource(meter, ReadingMode::diode);
  return {*meterSource(meter, mode), diode.testCurrent,
          priors.emission * thermalVoltage(benchTemperature).value, priors.junctionSeries,
          SoftMinimum(priors.emission, priors.junctionSeries, diode.testCurrent, benchTemperature)};
}

class CircuitDice {
public:
  explicit CircuitDice(std::uint64_t seed) : random_(seed) {}

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  std::size_t below(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }

  /// 1 to 6 nodes, at most so many junctions on each.
  RandomCircuit circuit(std::size_t mostDrops) {
    RandomCircuit result;
    Circuit& circuit = result.circuit;
    UnknownValues& values = result.values;
    const auto unknown = [&](double value) {
      values.push_back(value);
      return values.size() - 1;
    };
    circuit.nodes.assign(1 + below(6), {});
    for (auto& node : circuit.nodes) {
      for (std::size_t i = below(mostDrops + 1); i > 0; --i)
        node.drops.push_back(unknown(below(8) == 0 ? noDrop : between(0.15, 1.25)));
      if (below(4) == 0) node.siemens = std::pow(10.0, between(-5, 0));
      if (below(4) == 0) node.leak = unknown(std::log(10.0) * between(-1, 5));
    }
    for (std::size_t node = 1; node < circuit.nodes.size(); ++node) {
      Circuit::Link link{below(node), node, std::pow(10.0, between(-2, 5))};
      if (below(2) == 0) std::swap(link.a, link.b);
      if (below(4) == 0) link.unknown = unknown(std::log(10.0) * between(-1, 3));
      circuit.links.push_back(link);
    }
    return result;
  }

private:
  std::mt19937_64 random_;
};

/// Saturation current at the bench temperature of a junction that drops `drop` at the reference current.
inline Amperes saturationOf(double drop, const LineBench& bench) {
  const double inner = drop - bench.reference.value * bench.series.value;
  return Amperes(bench.reference.value / std::expm1(inner / bench.slope));
}

} // namespace netmend::test
