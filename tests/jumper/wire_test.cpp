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
    const Amperes limit = heatingCurrent(mmLength(d), mmLength(d * 1.2), Kelvins(20), Celsius(40));
    CHECK(limit > before);
    CHECK(limit < fusingCurrent(mmLength(d)));
    CHECK(limit < heatingCurrent(mmLength(d), mmLength(d * 1.2), Kelvins(60), Celsius(40)));
    before = limit;
  }
}

TEST_CASE("the heating limit of a very thin wire follows from the least Nusselt number of a cylinder") {
  // Churchill and Chu's formula tends to Nu = 0.36 as the Rayleigh number goes to nought; then
  // I^2 = 0.36 * k * pi * rise / (ohms per metre), whatever the outer diameter.
  const double k = 0.0278, rise = 20;
  const double ohms = wireResistance(mmLength(0.001), mmLength(1000), Celsius(60)).value;
  const double limit = std::sqrt(0.36 * k * std::numbers::pi * rise / ohms);
  CHECK(heatingCurrent(mmLength(0.001), mmLength(0.001), Kelvins(rise), Celsius(40)).value ==
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

TEST_CASE("a wire may carry just what warms it by the allowed rise, and no more") {
  WireTable t = table();
  t.fusingShare = 1.0;
  const Wire& thickest = t.wires.back();
  const double most = heatingCurrent(thickest.copper, thickest.outer, t.mostRise, t.ambient).value;
  const auto suffices = [&](double amperes) {
    return chooseWire(t, {mmLength(1), fromUser(Amperes(amperes)), NetRole::supply, {}})->suffices();
  };
  CHECK(suffices(most));
  CHECK_FALSE(suffices(std::nextafter(most, 2 * most)));
}

TEST_CASE("a current that is none is refused in words") {
  const WireTable t = table();
  CHECK_FALSE(chooseWire(t, {mmLength(100), fromUser(Amperes(std::nan(""))), NetRole::supply, {}}));
  CHECK_FALSE(chooseWire(t, {mmLength(100), fromUser(Amperes(-1)), NetRole::supply, {}}));
}

TEST_CASE("the heating current is that of Churchill and Chu's formula to six digits") {
  // Worked out apart from the program (Python), with the air's figures of the source: conductivity 0.0278
  // W/mK, viscosity 1.82e-5 and diffusivity 2.57e-5 m2/s, Prandtl 0.71; g 9.80665 m/s2; copper 1/58 and
  // 0.00393/K.
  const auto amperes = [](double copper, double outer, double rise, double ambient) {
    return heatingCurrent(mmLength(copper), mmLength(outer), Kelvins(rise), Celsius(ambient)).value;
  };
  CHECK(amperes(0.1, 0.117, 20, 40) == Approx(0.5926982183).epsilon(1e-6));
  CHECK(amperes(0.4049, 0.7, 20, 40) == Approx(2.9570367956).epsilon(1e-6));
  CHECK(amperes(1, 2, 60, 25) == Approx(16.1111679020).epsilon(1e-6));
  CHECK(amperes(0.05, 0.06, 10, 0) == Approx(0.2172122846).epsilon(1e-6));
  CHECK(fusingCurrent(mmLength(1)).value == Approx(80).epsilon(1e-12));
  CHECK(fusingCurrent(mmLength(0.25)).value == Approx(10).epsilon(1e-12));
}

namespace {

/// Four wires; 50 µm and more are handy.
WireTable fewWires() {
  WireTable t;
  t.wires = {{"20", mmLength(0.02), mmLength(0.024), "a", "b", "c"},
             {"40", mmLength(0.04), mmLength(0.049), "", "", ""},
             {"50", mmLength(0.05), mmLength(0.06), "", "", ""},
             {"100", mmLength(0.1), mmLength(0.117), "", "", ""}};
  t.roles = {{NetRole::signal, Amperes(0.02), {}, Volts(0.1), "", ""},
             {NetRole::radio, Amperes(0.03), {}, Volts(0.2), "mind the impedance", ""}};
  t.mostRise = Kelvins(20);
  t.ambient = Celsius(40);
  t.fusingShare = 0.5;
  t.thinnestByChoice = mmLength(0.05);
  t.slack = 0.1;
  t.endAllowance = mmLength(3);
  t.landingShare = 1.0;
  return t;
}

WireChoice chosen(const WireTable& t, const WireRequest& request) {
  const auto found = chooseWire(t, request);
  REQUIRE(found);
  return *found;
}

} // namespace

TEST_CASE("a wire is cut a share longer than its way, and an allowance at either end") {
  const auto cut = [](double way, double slack, double allowance) {
    WireTable t = fewWires();
    t.slack = slack;
    t.endAllowance = mmLength(allowance);
    const WireChoice c = chosen(t, {mmLength(way), {}, NetRole::signal, {}});
    CHECK(c.length == mmLength(way));
    return c.cutLength;
  };
  CHECK(cut(20, 0.1, 3) == mmLength(28));
  CHECK(cut(20, 0.25, 3) == mmLength(31));
  CHECK(cut(20, 0, 0) == mmLength(20));
  CHECK(cut(0, 0.1, 2.5) == mmLength(5));
  CHECK(cut(0.000003, 0.5, 0) == Length(5)); // to the nanometre, halves away from nought
}

TEST_CASE("a choice says all that it was made by") {
  const WireTable t = fewWires();
  const WireChoice c = chosen(t, {mmLength(20), {}, NetRole::radio, fromUser(mmLength(0.2))});
  CHECK(c.wire.name == "50");
  CHECK(c.current == guessed(Amperes(0.03)));
  CHECK(c.basis.why == CurrentBasis::Why::roleDefault);
  CHECK(c.landingWidth == fromUser(mmLength(0.2)));
  CHECK_FALSE(c.thinForLanding);
  CHECK_FALSE(c.wideForLanding);
  CHECK(c.thinnestByChoice == mmLength(0.05));
  CHECK(c.fusingShare == 0.5);
  CHECK(c.mostRise == Kelvins(20));
  CHECK(c.roleWarning == "mind the impedance");
  CHECK(c.warned());
  CHECK(c.suffices());
  CHECK_FALSE(c.thinner);
  CHECK(c.mostDrop == Volts(0.2));
  // 1/58 over pi/4 * 0.05 mm squared, 20 mm of it.
  const double ohms = 0.02 / 58 / (3.14159265358979 / 4 * 0.0025);
  CHECK(c.resistance.value == Approx(ohms).epsilon(1e-9));
  CHECK(c.drop.value == Approx(ohms * 0.03).epsilon(1e-9));
  CHECK(c.fusing.value == Approx(80 * std::pow(0.05, 1.5)).epsilon(1e-9));
  CHECK(c.heating.value == heatingCurrent(mmLength(0.05), mmLength(0.06), Kelvins(20), Celsius(40)).value);
  const WireChoice rated = chosen(t, {mmLength(20), fromFile(Amperes(0.01)), NetRole::signal, {}});
  CHECK(rated.basis.why == CurrentBasis::Why::rated);
  CHECK(rated.current == fromFile(Amperes(0.01)));
  CHECK_FALSE(rated.warned());
  const WireChoice guess = chosen(t, {mmLength(20), guessed(Amperes(0.01)), NetRole::signal, {}});
  CHECK(guess.basis.why == CurrentBasis::Why::roleDefault);
  const WireChoice told = chosen(t, {mmLength(20),
                                     guessed(Amperes(0.01)),
                                     NetRole::signal,
                                     {},
                                     CurrentBasis{CurrentBasis::Why::copper, {}, Kelvins(7)}});
  CHECK(told.basis.why == CurrentBasis::Why::copper);
  CHECK(told.basis.rise == Kelvins(7));
}

TEST_CASE("each limit of a wire refuses it a little above and not at it, and the next thicker is taken") {
  using Why = WireLimit::Why;
  struct Case {
    Why why;
    double amperes; ///< the limit of 50 µm
    WireTable table;
  };
  WireTable byFusing = fewWires(), byHeating = fewWires(), byDrop = fewWires();
  byFusing.mostRise = Kelvins(200);
  byFusing.fusingShare = 0.05;
  byFusing.roles[0].mostDrop = byHeating.roles[0].mostDrop = Volts(100);
  byHeating.fusingShare = 1.0;
  byDrop.fusingShare = 1.0;
  const double ohms = wireResistance(mmLength(0.05), mmLength(20)).value;
  for (const Case& c :
       {Case{Why::fusing, 0.05 * fusingCurrent(mmLength(0.05)).value, byFusing},
        {Why::heating, heatingCurrent(mmLength(0.05), mmLength(0.06), Kelvins(20), Celsius(40)).value,
         byHeating},
        {Why::drop, 0.1 / 10 / ohms, [&] {
           WireTable t = byDrop;
           t.roles[0].mostDrop = Volts(0.01);
           return t;
         }()}}) {
    const auto with = [&](double share) {
      return chosen(c.table, {mmLength(20), fromUser(Amperes(c.amperes * share)), NetRole::signal, {}});
    };
    CHECK(with(1 - 1e-9).wire.name == "50");
    CHECK_FALSE(with(1 - 1e-9).thinner);
    const WireChoice over = with(1 + 1e-9);
    CHECK(over.wire.name == "100");
    REQUIRE(over.thinner);
    CHECK(over.thinner->wire.name == "50");
    CHECK(over.thinner->limit.why == c.why);
    CHECK(over.thinner->limit.drop.value == Approx(c.amperes * ohms).epsilon(1e-6));
    CHECK(over.thinner->limit.most.value == Approx(c.why == Why::fusing ? fusingCurrent(mmLength(0.05)).value
                                                   : c.why == Why::heating ? c.amperes
                                                                           : 0.0));
  }
}

TEST_CASE(
    "a landing takes a wire as wide as its share of it; narrower ones the thickest that fits, or a warning") {
  const auto named = [](double width, double share = 1.0) {
    WireTable t = fewWires();
    t.landingShare = share;
    return chosen(t, {mmLength(5), fromUser(Amperes(0.001)), NetRole::signal, fromUser(mmLength(width))});
  };
  CHECK(named(0.05).wire.name == "50");
  CHECK_FALSE(named(0.05).wideForLanding);
  CHECK_FALSE(named(0.05).thinForLanding);
  CHECK(named(0.049999).wire.name == "40");
  CHECK(named(0.049999).thinForLanding);
  CHECK_FALSE(named(0.049999).warned());
  CHECK(named(0.04).wire.name == "40");
  CHECK(named(0.039999).wire.name == "20");
  CHECK(named(0.02).wire.name == "20");
  const WireChoice none = named(0.019999);
  CHECK(none.wire.name == "50"); // the thinnest of the handy ones
  CHECK(none.wideForLanding);
  CHECK(none.warned());
  CHECK(none.suffices());
  CHECK(named(0.1, 0.5).wire.name == "50");
  CHECK(named(0.099999, 0.5).wire.name == "40");
}

TEST_CASE("where nothing suffices the thickest says by which limit it fails") {
  for (const double width : {0.2, 0.05}) {
    const WireChoice c =
        chosen(fewWires(), {mmLength(20), fromUser(Amperes(50)), NetRole::signal, fromUser(mmLength(width))});
    CHECK(c.wire.name == "100");
    REQUIRE(c.tooThin);
    CHECK(c.tooThin->why == WireLimit::Why::fusing);
    CHECK(c.tooThin->most.value == Approx(80 * std::pow(0.1, 1.5)));
    CHECK_FALSE(c.thinner);
    CHECK(c.wideForLanding == (width < 0.1));
    CHECK(c.warned());
    CHECK_FALSE(c.suffices());
  }
  CHECK_FALSE(chooseWire({}, {mmLength(20), {}, NetRole::signal, {}}));
  CHECK(chooseWire(fewWires(), {mmLength(20), fromUser(Amperes(0)), NetRole::signal, {}}));
  CHECK_FALSE(chooseWire(fewWires(), {mmLength(20), fromUser(Amperes(-1e-9)), NetRole::signal, {}}));
  CHECK_FALSE(chooseWire(fewWires(), {mmLength(20), fromUser(Amperes(HUGE_VAL)), NetRole::signal, {}}));
  // A role that the table does not know: none of its figures.
  const WireChoice unknown = chosen(fewWires(), {mmLength(20), fromUser(Amperes(0)), NetRole::ground, {}});
  CHECK(unknown.mostDrop == Volts(0));
  CHECK(unknown.roleWarning.empty());
}
