#include <cmath>
#include <random>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "simulation/circuit.h"
#include "support/effort.h"
#include "support/ngspice.h"
#include "support/seed.h"

// The simulator's circuits against ngspice (the Debian package libngspice0): the same circuit, operating
// points within 0.1 mV.

using namespace netmend;
using namespace netmend::simulation;

namespace {

std::string node(std::size_t n) {
  return n == 0 ? "0" : fmt::format("n{}", n);
}

struct Drawn {
  Circuit circuit;
  std::vector<Junction> junctions; ///< parallel to its diodes
};

Drawn drawn(std::mt19937_64& random, double celsius) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Drawn out;
  out.circuit.nodes = 2 + random() % 9;
  const auto any = [&] { return random() % out.circuit.nodes; };
  // Series parts and raised resistance from node to node, loads and shorts to ground, pull-ups through a
  // rail.
  for (std::size_t n = 2; n < out.circuit.nodes; ++n)
    out.circuit.resistors.push_back({1 + random() % (n - 1), n, std::pow(10.0, between(-1, 4))});
  for (std::size_t i = random() % 5; i > 0; --i)
    out.circuit.resistors.push_back({any(), 0, std::pow(10.0, between(-1, 5))});
  for (std::size_t i = random() % 8; i > 0; --i) {
    // Schottky-like up to silicon; now and then between two nodes, or the other way round.
    out.junctions.push_back({between(0.2, 0.8), between(1.0, 1.8), between(0.1, 30.0), between(0.69, 1.15)});
    const std::size_t cathode = random() % 4 == 0 ? any() : 0;
    out.circuit.diodes.push_back({any(), cathode, lawAt(out.junctions.back(), celsius)});
  }
  if (random() % 3 == 0)
    out.circuit.cells.push_back({any(), 0, between(-0.3, 0.3), std::pow(10.0, between(2, 4))});
  return out;
}

/// Parameters at 25 °C, that ngspice takes to the circuit's temperature itself.
std::string netlist(const Drawn& drawn, const Source& meter, std::size_t red, double celsius) {
  std::string text = fmt::format(".options temp={} tnom=25\n", celsius);
  const Circuit& circuit = drawn.circuit;
  for (std::size_t n = 1; n < circuit.nodes; ++n)
    text += fmt::format("RL{} {} 0 {:.17g}\n", n, node(n), nodeLeakOhms);
  for (std::size_t i = 0; i < circuit.resistors.size(); ++i)
    if (circuit.resistors[i].a != circuit.resistors[i].b)
      text += fmt::format("RS{} {} {} {:.17g}\n", i, node(circuit.resistors[i].a),
                          node(circuit.resistors[i].b), circuit.resistors[i].ohms);
  for (std::size_t i = 0; i < circuit.diodes.size(); ++i) {
    if (circuit.diodes[i].anode == circuit.diodes[i].cathode) continue;
    const Junction& junction = drawn.junctions[i];
    text += fmt::format(
        "D{0} {1} {2} J{0}\n.model J{0} D(IS={3:.17g} N={4:.17g} RS={5:.17g} EG={6:.17g} XTI=3)\n", i,
        node(circuit.diodes[i].anode), node(circuit.diodes[i].cathode), lawAt(junction, 25.0).saturation,
        junction.emission, junction.series, junction.gap);
  }
  for (std::size_t i = 0; i < circuit.cells.size(); ++i)
    if (circuit.cells[i].a != 0)
      text += fmt::format("VC{0} c{0} 0 {1:.17g}\nRC{0} c{0} {2} {3:.17g}\n", i, circuit.cells[i].volts,
                          node(circuit.cells[i].a), circuit.cells[i].ohms);
  text += fmt::format("BM 0 {0} I = min({1:.17g}, ({2:.17g} - V({0}))/{3:.17g})\nRM {0} 0 {4:.17g}\n",
                      node(red), meter.testCurrent, meter.openVolts, meter.outputOhms, meter.inputOhms);
  return text;
}

} // namespace

TEST_CASE("the simulator's operating points of random circuits agree with ngspice within 0.1 mV") {
  const auto seed = testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  double worst = 0.0;
  for (int round = 0; round < rounds(300, 30); ++round) {
    const double celsius = std::uniform_real_distribution<double>(5, 45)(random);
    const Drawn circuit = drawn(random, celsius);
    const std::size_t red = 1 + random() % (circuit.circuit.nodes - 1);
    const Source meter = round % 2 == 0 ? Source{} : Source{5e-4, 0.5, 333.0, 10e6};
    const auto ours = operatingPoint(circuit.circuit, meter, red);
    const auto theirs = test::ngspiceOperatingPoint(netlist(circuit, meter, red, celsius));
    for (std::size_t n = 1; n < circuit.circuit.nodes; ++n)
      worst = std::max(worst, std::abs(ours[n] - theirs.at(node(n))));
  }
  WARN("worst difference: " << 1e6 * worst << " µV");
  CHECK(worst < 1e-4);
}
