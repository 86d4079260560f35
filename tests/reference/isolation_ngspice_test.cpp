#include <cmath>
#include <random>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "isolation/operating_point.h"
#include "support/ngspice.h"

#include "support/effort.h"
#include "support/seed.h"

// Against ngspice (the Debian package libngspice0): the same circuit, operating points within 0.1 mV.

using namespace netmend;

namespace {

std::string netlist(const TestNetwork& network, std::size_t probe, const MeterSource& meter,
                    Celsius temperature, double leak) {
  std::string text = fmt::format(".options temp={} tnom=27\n", temperature.value);
  for (std::size_t i = 0; i < network.nodes; ++i)
    text += fmt::format("RL{} n{} 0 {:.17g}\n", i, i, leak);
  for (std::size_t i = 0; i < network.series.size(); ++i)
    text += fmt::format("RS{} n{} n{} {:.17g}\n", i, network.series[i].a, network.series[i].b,
                        network.series[i].resistance.value);
  for (std::size_t i = 0; i < network.loads.size(); ++i)
    text += fmt::format("RG{} n{} 0 {:.17g}\n", i, network.loads[i].node, network.loads[i].resistance.value);
  for (std::size_t i = 0; i < network.clamps.size(); ++i) {
    const auto& junction = network.clamps[i].junction;
    text += fmt::format("D{} n{} 0 J{}\n.model J{} D(IS={:.17g} N={:.17g} RS={:.17g} EG={} XTI={})\n", i,
                        network.clamps[i].node, i, i, junction.saturation.value, junction.ideality,
                        junction.series.value, junction.bandGap.value, junction.xti);
  }
  // The meter: a source that gives the lesser of its test current and what its output resistance lets
  // through.
  text += fmt::format("BM 0 n{} I = min({:.17g}, ({:.17g} - V(n{}))/{:.17g})\n", probe,
                      meter.testCurrent.value, meter.openCircuit.value, probe, meter.outputResistance.value);
  text += fmt::format("RM n{} 0 {:.17g}\n", probe, meter.inputResistance.value);
  return text;
}

} // namespace

TEST_CASE("operating points of random networks agree with ngspice within 0.1 mV") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const auto index = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  constexpr double leak = 1e9;
  double worst = 0.0;
  for (int round = 0; round < netmend::rounds(300); ++round) {
    TestNetwork network;
    network.nodes = 1 + index(10);
    for (std::size_t node = 1; node < network.nodes; ++node)
      network.series.push_back({index(node), node, Ohms(std::pow(10.0, between(-1, 4)))});
    for (std::size_t i = index(5); i > 0; --i)
      network.loads.push_back({index(network.nodes), Ohms(std::pow(10.0, between(0, 5)))});
    for (std::size_t i = index(8); i > 0; --i)
      network.clamps.push_back({index(network.nodes),
                                {Amperes(std::pow(10.0, between(-16, -8))), between(1.0, 1.8),
                                 Ohms(std::pow(10.0, between(-1, 2)))}});
    const std::size_t probe = index(network.nodes);
    const Celsius temperature{between(5, 45)};
    const MeterSource meter;
    const auto ours = operatingPoint(network, probe, meter, temperature, Ohms(leak));
    const auto theirs = test::ngspiceOperatingPoint(netlist(network, probe, meter, temperature, leak));
    for (std::size_t node = 0; node < network.nodes; ++node)
      worst = std::max(worst, std::abs(ours[node].value - theirs.at(fmt::format("n{}", node))));
  }
  WARN("worst difference: " << 1e6 * worst << " µV");
  CHECK(worst < 1e-4);
}

TEST_CASE("parallel junctions and a load on one node agree with ngspice within 0.1 mV") {
  const Junction unit{Amperes(3e-13), 1.3, Ohms(12)};
  const MeterSource meter;
  for (const double area : {0.4, 1.0, 2.0, 6.0})
    for (const double ohms : {330.0, 10e3}) {
      TestNetwork network;
      network.nodes = 1;
      network.loads.push_back({0, Ohms(ohms)});
      network.clamps.push_back({0, scaled(unit, area)});
      const auto ours =
          operatingPoint(junctionAt(unit, Celsius(25)), {area, Siemens(1.0 / ohms)}, meter).value;
      const auto theirs = test::ngspiceOperatingPoint(netlist(network, 0, meter, Celsius(25), 1e12)).at("n0");
      CHECK(ours == Approx(theirs).margin(1e-4));
    }
}
