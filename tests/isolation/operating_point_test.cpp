#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "isolation/operating_point.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

constexpr Celsius bench{25.0};

/// Current that Kirchhoff's law misses at each node, as a share of the test current.
double imbalance(const TestNetwork& network, std::size_t probe, const MeterSource& meter,
                 const std::vector<Volts>& v) {
  std::vector<double> current(network.nodes, 0.0);
  for (const auto& load : network.loads)
    current[load.node] += v[load.node].value / load.resistance.value;
  for (const auto& clamp : network.clamps)
    current[clamp.node] += junctionCurrent(clamp.junction, v[clamp.node], bench).current.value;
  for (const auto& series : network.series) {
    const double i = (v[series.a] - v[series.b]).value / series.resistance.value;
    current[series.a] += i;
    current[series.b] -= i;
  }
  current[probe] -= sourceCurrent(meter, v[probe]).value;
  double worst = 0.0;
  for (const double i : current)
    worst = std::max(worst, std::abs(i));
  return worst / meter.testCurrent.value;
}

TestNetwork randomNetwork(std::mt19937_64& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const auto index = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  TestNetwork network;
  network.nodes = 1 + index(8);
  for (std::size_t node = 1; node < network.nodes; ++node)
    network.series.push_back({index(node), node, Ohms(std::pow(10.0, between(-1, 5)))});
  for (std::size_t i = index(6); i > 0; --i)
    network.loads.push_back({index(network.nodes), Ohms(std::pow(10.0, between(-1, 6)))});
  for (std::size_t i = index(8); i > 0; --i)
    network.clamps.push_back({index(network.nodes),
                              {Amperes(std::pow(10.0, between(-20, -6))), between(1.0, 2.0),
                               Ohms(index(3) == 0 ? 0.0 : std::pow(10.0, between(-2, 3)))}});
  return network;
}

} // namespace

TEST_CASE("the operating point of any network is found: currents at every node balance") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  double worst = 0.0;
  for (int i = 0; i < netmend::rounds(3000); ++i) {
    const auto network = randomNetwork(random);
    const auto probe = std::uniform_int_distribution<std::size_t>(0, network.nodes - 1)(random);
    worst = std::max(worst, imbalance(network, probe, {}, operatingPoint(network, probe, {}, bench)));
  }
  // The leak of 1e12 Ω takes up to 3e-9 of the test current a node.
  CHECK(worst < 1e-7);
}

TEST_CASE("parallel junctions of one kind and a load read the same as one node and as a network") {
  const Junction unit{Amperes(2e-13), 1.2, Ohms(15)};
  const MeterSource meter;
  for (const double area : {0.0, 0.3, 1.0, 3.7}) {
    for (const double ohms : {5.0, 470.0, 10e3, 1e9}) {
      TestNetwork network;
      network.nodes = 1;
      network.loads.push_back({0, Ohms(ohms)});
      if (area > 0.0) network.clamps.push_back({0, scaled(unit, area)});
      const double asNetwork = operatingPoint(network, 0, meter, bench).front().value;
      const double asNode = operatingPoint(junctionAt(unit, bench), {area, Siemens(1.0 / ohms)}, meter).value;
      INFO("area " << area << ", " << ohms << " ohms");
      CHECK(asNode == Approx(asNetwork).margin(2e-8));
    }
  }
}

TEST_CASE("losing one of two equal junctions lifts the reading by n·Vt·ln 2") {
  const MeterSource meter;
  for (const double n : {1.0, 1.5}) {
    const auto at = junctionAt({Amperes(1e-13), n, Ohms(0)}, bench);
    const double lift = (operatingPoint(at, {1.0, {}}, meter) - operatingPoint(at, {2.0, {}}, meter)).value;
    // Closed form at a constant current; kT/q at 298.15 K is 25.693 mV (CODATA 2018).
    CHECK(lift == Approx(n * 0.025693 * std::log(2.0)).epsilon(1e-4));
  }
}

TEST_CASE("an open node reads near the meter's open-circuit voltage, a short reads nothing") {
  const MeterSource meter;
  CHECK(operatingPoint(JunctionAt{}, {}, meter) > meter.displayLimit);
  CHECK(operatingPoint(JunctionAt{}, {0.0, Siemens(1.0)}, meter).value == Approx(1e-3).epsilon(0.01));
}
