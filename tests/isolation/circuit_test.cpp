#include <catch2/catch.hpp>

#include "random_circuit.h"
#include "support/effort.h"
#include "support/seed.h"

// What a meter reads on a line's circuits: closed forms, and the solver that always converges
// (operating_point_test.cpp). Against ngspice: tests/reference/isolation_circuit_ngspice_test.cpp.

using namespace netmend;
using test::lineBench;

namespace {

/// The same circuit for the other solver; junctions each by itself.
TestNetwork networkOf(const test::RandomCircuit& random, const LineBench& bench) {
  TestNetwork network;
  network.nodes = random.circuit.nodes.size();
  for (const auto& link : random.circuit.links)
    network.series.push_back({link.a, link.b, Ohms(random.ohms(link))});
  for (std::size_t i = 0; i < network.nodes; ++i) {
    const auto& node = random.circuit.nodes[i];
    if (const double siemens = random.siemens(node); siemens > 0.0)
      network.loads.push_back({i, Ohms(1.0 / siemens)});
    for (const std::size_t unknown : node.drops) {
      if (!std::isfinite(random.values[unknown])) continue;
      Junction junction;
      junction.ideality = bench.slope / thermalVoltage(benchTemperature).value;
      junction.series = bench.series;
      junction.saturation = Amperes(1.0);
      const double atBench = saturationCurrent(junction, benchTemperature).value;
      junction.saturation = test::saturationOf(random.values[unknown], bench) * (1.0 / atBench);
      network.clamps.push_back({i, junction});
    }
  }
  return network;
}

void checkAgainstOperatingPoint(int circuits) {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  test::CircuitDice dice(seed);
  double worst = 0.0;
  int open = 0;
  for (int i = 0; i < circuits; ++i) {
    const auto bench = lineBench(i % 2 == 0 ? ReadingMode::diode : ReadingMode::ohms);
    const auto random = dice.circuit(1);
    const auto network = networkOf(random, bench);
    const double ours = voltsAt(random.circuit, random.values, bench);
    if (network.clamps.empty() && network.loads.empty()) {
      ++open;
      CHECK(ours == noDrop);
      continue;
    }
    const double theirs = operatingPoint(network, 0, bench.source, benchTemperature).front().value;
    if (std::abs(ours - theirs) > 2e-5)
      FAIL_CHECK("circuit " << i << " of " << network.nodes << " nodes: " << ours << " V, should be "
                            << theirs);
    worst = std::max(worst, std::abs(ours - theirs));
  }
  WARN("worst difference: " << 1e6 * worst << " µV");
  CHECK(open > circuits / 1000);
  CHECK(open < circuits / 4);
}

} // namespace

TEST_CASE("on any circuit a reading is found, and it is the operating point") {
  checkAgainstOperatingPoint(netmend::rounds(2000));
}

TEST_CASE("on a hundred thousand circuits a reading is found, and it is the operating point", "[.full]") {
  checkAgainstOperatingPoint(netmend::rounds(100'000));
}

TEST_CASE("one junction reads its drop, a resistor I·R beside the meter's own, nothing carries nothing") {
  const auto bench = lineBench(ReadingMode::diode);
  Circuit one;
  CHECK(voltsAt(one, {}, bench) == noDrop);
  one.nodes[0].drops = {0};
  CHECK(voltsAt(one, {0.52}, bench) == 0.52);
  CHECK(voltsAt(one, {noDrop}, bench) == noDrop);
  Circuit resistor;
  resistor.nodes[0].siemens = 1.0 / 470.0;
  CHECK(voltsAt(resistor, {}, bench) == Approx(1e-3 / (1.0 / 470.0 + 1e-7)).epsilon(1e-6));
  // Above 2 V the source's own 1 kΩ (1 V over 1 mA) leaves it less than a milliampere: 3 V·3/(3 + 1).
  resistor.nodes[0].siemens = 1.0 / 3000.0;
  CHECK(voltsAt(resistor, {}, bench) == Approx(3.0 / (1.0 + 1000.0 / 3000.0 + 1000.0 * 1e-7)).epsilon(1e-6));
  Circuit leak;
  leak.nodes[0].leak = 0;
  CHECK(voltsAt(leak, {std::log(12.0)}, bench) == Approx(0.012).epsilon(1e-5));
  // In ohms, half a volt behind a kiloohm: at 0.4 V less than a tenth of a milliampere is left.
  const auto ohms = lineBench(ReadingMode::ohms);
  const double volts = voltsAt(one, {0.4}, ohms);
  const double amperes = (0.5 - volts) / 1000.0 - volts * 1e-7;
  CHECK(volts < 0.4);
  CHECK(volts == Approx(0.4 + ohms.slope * std::log(amperes / 1e-3) + (amperes - 1e-3) * 8.0).margin(2e-6));
}

TEST_CASE("junctions on one node read the soft minimum of their drops, beside a load less") {
  const auto bench = lineBench(ReadingMode::diode);
  Circuit circuit;
  circuit.nodes[0].drops = {0, 1, 2};
  CHECK(voltsAt(circuit, {0.5, 0.5, noDrop}, bench) == Approx(0.5 - bench.softMinimum.below(0.0)));
  CHECK(voltsAt(circuit, {noDrop, 0.5, 0.51}, bench) == Approx(0.5 - bench.softMinimum.below(0.01)));
  CHECK(voltsAt(circuit, {0.5, 0.5, 0.5}, bench) == Approx(0.5 - bench.softMinimum.belowOne(3)).margin(1e-3));
  Circuit loaded;
  loaded.nodes[0].drops = {0};
  loaded.nodes[0].siemens = 1.0 / 1000.0;
  const double volts = voltsAt(loaded, {0.5}, bench);
  const double through = 1e-3 - volts / 1000.0 - volts * 1e-7; // what the junction is left with
  CHECK(volts == Approx(0.5 + bench.slope * std::log(through / 1e-3) + (through - 1e-3) * 8.0).margin(1e-6));
}

TEST_CASE("series parts add their drop, and what hangs beyond them counts in parallel") {
  const auto bench = lineBench(ReadingMode::diode);
  Circuit circuit;
  circuit.nodes.resize(2);
  circuit.nodes[1].drops = {0};
  circuit.links = {{0, 1, 100.0}};
  // The meter's own 10 MΩ take some tens of microvolts.
  CHECK(voltsAt(circuit, {0.5}, bench) == Approx(0.6).margin(2e-5));
  circuit.links[0].unknown = 1;
  CHECK(voltsAt(circuit, {0.5, std::log(200.0)}, bench) == Approx(0.8).margin(5e-5));
  // A tenth of an ohm between two equal junctions is no more than a wire.
  circuit.nodes[0].drops = {0};
  circuit.links = {{1, 0, 0.1}};
  CHECK(voltsAt(circuit, {0.5}, bench) == Approx(0.5 - bench.softMinimum.below(0.0)).margin(5e-5));
  // A megohm parts them.
  circuit.links = {{1, 0, 1e6}};
  CHECK(voltsAt(circuit, {0.5}, bench) == Approx(0.5).margin(2e-5));
}

TEST_CASE("a reading grows with every drop and every leak, as the cells' bounds need it") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  test::CircuitDice dice(seed);
  const auto bench = lineBench(ReadingMode::diode);
  for (int i = 0; i < netmend::rounds(1000); ++i) {
    auto random = dice.circuit(2);
    if (random.values.empty()) continue;
    const double before = voltsAt(random.circuit, random.values, bench);
    random.values[dice.below(random.values.size())] += dice.between(0.001, 0.1);
    const double after = voltsAt(random.circuit, random.values, bench);
    INFO("circuit " << i);
    CHECK((after >= before - 1e-6 || after == before));
  }
}

TEST_CASE("a circuit that one number decides has a table, which reads what the circuit does") {
  const auto bench = lineBench(ReadingMode::diode);
  Circuit loaded;
  loaded.nodes[0] = {{0}, 1.0 / 2200.0, noUnknown};
  Circuit two;
  two.nodes.resize(2);
  two.nodes[0].drops = {0};
  two.nodes[1].drops = {1};
  two.links = {{0, 1, 47.0}};
  test::CircuitDice dice(netmend::testSeed());
  for (const auto& bare : {loaded, two}) {
    Circuit tabled = bare;
    tabled.table = circuitTable(bare, bench);
    REQUIRE(tabled.table);
    for (int i = 0; i < netmend::rounds(2000, 200); ++i) {
      const UnknownValues values{dice.below(20) == 0 ? noDrop : dice.between(0.3, 1.25),
                                 dice.below(20) == 0 ? noDrop : dice.between(0.3, 1.25)};
      INFO(values[0] << " and " << values[1] << " V");
      const double wanted = voltsAt(bare, values, bench), found = voltsAt(tabled, values, bench);
      CHECK((found == wanted || found == Approx(wanted).margin(2e-5)));
      const auto ohms = lineBench(ReadingMode::ohms); // another source
      CHECK((voltsAt(tabled, values, ohms) == voltsAt(bare, values, ohms)));
    }
  }
  // Drops of Schottky-like pins, whose leakage the table leaves out.
  Circuit tabled = two;
  tabled.table = circuitTable(two, bench);
  for (const double drop : {0.15, 0.2, 0.25})
    CHECK(voltsAt(tabled, {drop, 0.2}, bench) == Approx(voltsAt(two, {drop, 0.2}, bench)).margin(5e-4));
  Circuit third = two;
  third.nodes.emplace_back();
  third.links.push_back({1, 2, 10.0});
  CHECK(circuitTable(third, bench) == nullptr);
  two.nodes[1].siemens = 1e-3;
  CHECK(circuitTable(two, bench) == nullptr);
  two.nodes[1].siemens = 0.0;
  two.links[0].unknown = 2;
  CHECK(circuitTable(two, bench) == nullptr);
  loaded.nodes[0].leak = 1;
  CHECK(circuitTable(loaded, bench) == nullptr);
  CHECK(circuitTable(Circuit{}, bench) == nullptr);
}
