#include <catch2/catch.hpp>

#include <fstream>

#include "netmend/jumper/wire.h"
#include "netmend/netgraph/resistance.h"
#include "netmend/words/jumper.h"

using namespace netmend;

namespace {

/// Diameter of bare wire by American Wire Gauge, -3 (0000) to 56: 0.127 mm * 92^((36 - n) / 39) (ASTM B258).
Length awgDiameter(int gauge) {
  return Length::fromMm(0.127 * std::pow(92.0, (36.0 - gauge) / 39.0));
}

WireTable table() {
  auto loaded = loadWireTable(std::filesystem::path(NETMEND_SOURCE_DIR) / "data" / "wires.json");
  REQUIRE(loaded);
  return *loaded;
}

Length mmLength(double mm) {
  return Length::fromMm(mm);
}

} // namespace

TEST_CASE("gauges and resistances agree with the Copper Wire Tables") {
  // NBS Handbook 100 (Copper Wire Tables, 1966), ohm per km at 20 °C; from memory, agreed with ASTM B258's
  // formula and IEC 60028 here to the digits given.
  struct Row {
    int gauge;
    double mm, ohmPerKm;
  };
  for (const Row& row : {Row{30, 0.2546, 338.6}, Row{36, 0.1270, 1361}, Row{40, 0.0799, 3441}}) {
    INFO("AWG " << row.gauge);
    CHECK(awgDiameter(row.gauge).mm() == Approx(row.mm).margin(0.00006));
    CHECK(wireResistance(awgDiameter(row.gauge), Length(1'000'000'000'000)).value ==
          Approx(row.ohmPerKm).epsilon(0.001));
  }
  CHECK(wireResistance(mmLength(0.02), mmLength(1000)).value == Approx(55).epsilon(0.005));
  CHECK(wireResistance(mmLength(0.1), mmLength(10), Celsius(45)).value ==
        Approx(wireResistance(mmLength(0.1), mmLength(10)).value * 1.09825).epsilon(1e-9));
}

TEST_CASE("the table's gauges are those of the formula, and it reaches down to 0.01 mm") {
  const WireTable t = table();
  CHECK(t.wires.front().copper == mmLength(0.01));
  int gauges = 0;
  for (const Wire& wire : t.wires) {
    CHECK_FALSE(wire.source.empty());
    CHECK_FALSE(wire.stripping.empty());
    if (!wire.name.starts_with("AWG ")) continue;
    ++gauges;
    CHECK(wire.copper.mm() == Approx(awgDiameter(std::stoi(wire.name.substr(4))).mm()).margin(0.00006));
  }
  CHECK(gauges >= 4);
}

TEST_CASE("fusing currents are Preece's") {
  CHECK(fusingCurrent(mmLength(1)).value == Approx(80));
  CHECK(fusingCurrent(mmLength(0.1)).value == Approx(80 * std::pow(0.1, 1.5)));
}

TEST_CASE("the heating limit lies below fusing and grows with rise and thickness") {
  Amperes before;
  for (const double d : {0.02, 0.05, 0.1, 0.2, 0.5}) {
    const Amperes limit = heatingCurrent(mmLength(d), mmLength(d * 1.2), Celsius(20), Celsius(40));
    CHECK(limit > before);
    CHECK(limit < fusingCurrent(mmLength(d)));
    CHECK(limit < heatingCurrent(mmLength(d), mmLength(d * 1.2), Celsius(60), Celsius(40)));
    before = limit;
  }
}

TEST_CASE("the heating limit of a very thin wire follows from the least Nusselt number of a cylinder") {
  // Churchill and Chu's formula tends to Nu = 0.36 as the Rayleigh number goes to nought; then
  // I^2 = 0.36 * k * pi * rise / (ohms per metre), whatever the outer diameter.
  const double k = 0.0278, rise = 20;
  const double ohms = wireResistance(mmLength(0.001), mmLength(1000), Celsius(60)).value;
  const double limit = std::sqrt(0.36 * k * std::numbers::pi * rise / ohms);
  CHECK(heatingCurrent(mmLength(0.001), mmLength(0.001), Celsius(rise), Celsius(40)).value ==
        Approx(limit).epsilon(0.12));
}

TEST_CASE("a signal gets the thinnest handy wire, a supply a thicker one, and each says why") {
  const WireTable t = table();
  const auto signal = chooseWire(t, {mmLength(20), {}, NetRole::signal, {}});
  REQUIRE(signal);
  CHECK(signal->wire.copper == t.thinnestByChoice);
  CHECK_FALSE(signal->current.certain());
  CHECK(signal->drop.value == Approx(signal->current.value.value * signal->resistance.value));
  const auto supply = chooseWire(t, {mmLength(20), fromUser(Amperes(1.0)), NetRole::supply, {}});
  REQUIRE(supply);
  CHECK(supply->wire.copper > signal->wire.copper);
  CHECK(supply->drop <= supply->mostDrop);
  CHECK(supply->heating.value >= 1.0);
  CHECK(supply->fusing.value * t.fusingShare >= 1.0);
  REQUIRE(supply->thinner);
  // The next thinner wire of the table fails at least one of the limits.
  const auto at = std::find_if(t.wires.begin(), t.wires.end(),
                               [&](const Wire& w) { return w.name == supply->wire.name; });
  REQUIRE(at != t.wires.begin());
  const Wire& thinner = *std::prev(at);
  CHECK(supply->thinner->wire.name == thinner.name);
  CHECK((1.0 * wireResistance(thinner.copper, mmLength(20)).value > supply->mostDrop.value ||
         heatingCurrent(thinner.copper, thinner.outer, t.mostRise, t.ambient).value < 1.0 ||
         fusingCurrent(thinner.copper).value * t.fusingShare < 1.0));
}

TEST_CASE("a longer way needs a thicker wire for the same current") {
  const WireTable t = table();
  const auto near = chooseWire(t, {mmLength(5), fromUser(Amperes(0.3)), NetRole::supply, {}});
  const auto far = chooseWire(t, {mmLength(150), fromUser(Amperes(0.3)), NetRole::supply, {}});
  REQUIRE(near);
  REQUIRE(far);
  CHECK(far->wire.copper > near->wire.copper);
  CHECK(far->cutLength > mmLength(150));
}

TEST_CASE("a narrow landing gets thinner wire, one too narrow for any a warning") {
  const WireTable t = table();
  const auto narrow = chooseWire(t, {mmLength(10), {}, NetRole::signal, fromUser(mmLength(0.03))});
  REQUIRE(narrow);
  CHECK(narrow->wire.copper <= mmLength(0.03));
  CHECK_FALSE(narrow->warned());
  CHECK(narrow->thinForLanding);
  const auto tooNarrow =
      chooseWire(t, {mmLength(10), fromUser(Amperes(1)), NetRole::supply, fromUser(mmLength(0.02))});
  REQUIRE(tooNarrow);
  CHECK(tooNarrow->wideForLanding);
  CHECK(tooNarrow->warned());
}

TEST_CASE("fast pairs and radio lines are warned of") {
  const WireTable t = table();
  for (const NetRole role : {NetRole::fastPair, NetRole::radio})
    CHECK_FALSE(chooseWire(t, {mmLength(10), {}, role, {}})->roleWarning.empty());
  CHECK_FALSE(chooseWire(t, {mmLength(10), {}, NetRole::signal, {}})->warned());
}

TEST_CASE("where no wire of the table carries the current the thickest is named, and that it does not do") {
  const WireTable t = table();
  const auto much = chooseWire(t, {mmLength(100), fromUser(Amperes(200)), NetRole::supply, {}});
  REQUIRE(much);
  CHECK_FALSE(much->suffices());
  CHECK(much->wire.name == t.wires.back().name);
  REQUIRE(much->tooThin);
  CHECK(much->tooThin->why == WireLimit::Why::fusing);
  CHECK(wordsOf(wireWarnings(*much).front()).starts_with("no wire of the table carries 200 A over 100.0 mm"));
  // Both sides of what the thickest carries over a short way.
  const Amperes most = heatingCurrent(t.wires.back().copper, t.wires.back().outer, t.mostRise, t.ambient);
  for (const auto& [share, suffices] : {std::pair{0.999, true}, {1.001, false}}) {
    const auto near = chooseWire(t, {mmLength(5), fromUser(most * share), NetRole::supply, {}});
    REQUIRE(near);
    CHECK(near->suffices() == suffices);
    CHECK(near->warned() != suffices);
    CHECK(near->wire.name == t.wires.back().name);
  }
}

TEST_CASE("a current that is none is refused in words") {
  const WireTable t = table();
  CHECK_FALSE(chooseWire(t, {mmLength(100), fromUser(Amperes(std::nan(""))), NetRole::supply, {}}));
  CHECK_FALSE(chooseWire(t, {mmLength(100), fromUser(Amperes(-1)), NetRole::supply, {}}));
}
