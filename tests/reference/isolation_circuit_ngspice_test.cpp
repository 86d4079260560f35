#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "isolation/random_circuit.h"
#include "support/effort.h"
#include "support/ngspice.h"
#include "support/seed.h"

// Against ngspice (the Debian package libngspice0): what a meter reads on a line's circuits, within 0.1 mV.

using namespace netmend;

namespace {

/// Every junction by itself, all at 25 °C; nodes without a path get a teraohm.
std::string netlist(const test::RandomCircuit& random, const LineBench& bench) {
  const double emission = bench.slope / thermalVoltage(benchTemperature).value;
  std::string text = ".options temp=25 tnom=25\n";
  for (std::size_t k = 0; k < random.circuit.links.size(); ++k) {
    const auto& link = random.circuit.links[k];
    text += fmt::format("RS{} n{} n{} {:.17g}\n", k, link.a, link.b, random.ohms(link));
  }
  std::size_t diodes = 0;
  for (std::size_t i = 0; i < random.circuit.nodes.size(); ++i) {
    const auto& node = random.circuit.nodes[i];
    text += fmt::format("RL{} n{} 0 1e12\n", i, i);
    if (const double siemens = random.siemens(node); siemens > 0.0)
      text += fmt::format("RG{} n{} 0 {:.17g}\n", i, i, 1.0 / siemens);
    for (const std::size_t unknown : node.drops) {
      if (!std::isfinite(random.values[unknown])) continue;
      ++diodes;
      text += fmt::format("D{} n{} 0 J{}\n.model J{} D(IS={:.17g} N={:.17g} RS={:.17g})\n", diodes, i, diodes,
                          diodes, test::saturationOf(random.values[unknown], bench).value, emission,
                          bench.series.value);
    }
  }
  const auto& meter = bench.source;
  text += fmt::format("BM 0 n0 I = min({:.17g}, ({:.17g} - V(n0))/{:.17g})\n", meter.testCurrent.value,
                      meter.openCircuit.value, meter.outputResistance.value);
  return text + fmt::format("RM n0 0 {:.17g}\n", meter.inputResistance.value);
}

/// The worst difference over circuits with so many junctions a node.
double worstOf(int circuits, std::size_t mostDrops, std::uint64_t seed) {
  test::CircuitDice dice(seed);
  double worst = 0.0;
  for (int i = 0; i < circuits; ++i) {
    const auto bench = test::lineBench(i % 2 == 0 ? ReadingMode::diode : ReadingMode::ohms);
    const auto random = dice.circuit(mostDrops);
    const double ours = voltsAt(random.circuit, random.values, bench);
    const double theirs = test::ngspiceOperatingPoint(netlist(random, bench)).at("n0");
    if (ours == noDrop)
      CHECK(theirs > 0.99 * bench.source.openCircuit.value);
    else
      worst = std::max(worst, std::abs(ours - theirs));
  }
  return worst;
}

} // namespace

TEST_CASE("what a meter reads on a line's circuits agrees with ngspice within 0.1 mV") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  const double worst = worstOf(netmend::rounds(500), 1, seed);
  WARN("worst difference: " << 1e6 * worst << " µV");
  CHECK(worst < 1e-4);
}

TEST_CASE(
    "several junctions on one node, taken as one of their soft minimum, agree with ngspice within 5 mV") {
  // Exact where they carry the whole test current; beside loads and resistors two of them have half the
  // series resistance that one is taken to have.
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  const double worst = worstOf(netmend::rounds(300), 3, seed);
  WARN("worst difference: " << 1e6 * worst << " µV");
  CHECK(worst < 5e-3);
  const auto bench = test::lineBench(ReadingMode::diode);
  test::CircuitDice dice(seed);
  for (int i = 0; i < netmend::rounds(50); ++i) {
    test::RandomCircuit alone;
    alone.circuit.nodes[0].drops = {0, 1};
    alone.values = {dice.between(0.35, 0.8), 0.0};
    alone.values[1] = alone.values[0] + dice.between(-0.2, 0.2);
    const double ours = voltsAt(alone.circuit, alone.values, bench);
    CHECK(ours == Approx(test::ngspiceOperatingPoint(netlist(alone, bench)).at("n0")).margin(1e-4));
  }
}
