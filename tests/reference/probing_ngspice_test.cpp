#include <cmath>
#include <random>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "netmend/probing/meter_model.h"
#include "support/ngspice.h"
#include "support/one_node.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using test::shownAcross;

namespace {

/// The meter as a circuit. A source behind a resistor would not hold its current, so the lesser of the two is
/// written as a behavioural source.
std::string meterNetlist(const MeterSource& s) {
  return fmt::format("Bmeter 0 n i=min({:.12g},({:.12g}-v(n))/{:.12g})\nRin n 0 {:.12g}\n",
                     s.testCurrent.value, s.openCircuit.value, s.outputResistance.value,
                     s.inputResistance.value);
}

} // namespace

TEST_CASE("what the meter reads across junctions and resistors is what ngspice finds, within 0.1 mV") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  const auto between = [&](double a, double b) {
    return std::uniform_real_distribution<double>(a, b)(random);
  };
  double worst = 0.0;
  for (int i = 0; i < netmend::rounds(100); ++i) {
    const MeterSource source;
    const double temperature = between(0.0, 60.0);
    std::string netlist = meterNetlist(source) + fmt::format(".options temp={:.10g} tnom=27\n", temperature);
    std::vector<Junction> junctions;
    for (auto k = random() % 4; k > 0; --k) {
      junctions.push_back({Amperes(std::pow(10.0, between(-16.0, -11.0))), between(1.0, 2.0),
                           Ohms(random() % 2 == 0 ? 0.0 : between(0.1, 50.0))});
      const auto& j = junctions.back();
      netlist += fmt::format("D{0} n 0 m{0}\n.model m{0} d(is={1:.12g} n={2:.12g} rs={3:.12g})\n", k,
                             j.saturation.value, j.ideality, j.series.value);
    }
    std::vector<Ohms> resistors;
    for (auto k = random() % 3; k > 0; --k) {
      resistors.emplace_back(std::pow(10.0, between(1.0, 6.0)));
      netlist += fmt::format("R{} n 0 {:.12g}\n", k, resistors.back().value);
    }
    const double reference = test::ngspiceOperatingPoint(netlist).at("n");
    const auto shown = shownAcross(source, junctions, resistors, Celsius(temperature));
    CAPTURE(netlist, reference);
    if (std::abs(reference - source.displayLimit.value) < 1e-3) continue; // on the edge of OL
    CHECK(shown.has_value() == (reference <= source.displayLimit.value));
    if (!shown) continue;
    worst = std::max(worst, std::abs(shown->value - reference));
    CHECK(shown->value == Approx(reference).margin(1e-4));
  }
  WARN("largest difference from ngspice: " << worst * 1e6 << " µV");
}
