#include <algorithm>

#include "one_resistor.h"

// Which readings and which known values count.

using namespace netmend;
using namespace netmend::test;

TEST_CASE("what of a reading decides whether it is used: its leads, its mode and its meter") {
  OneResistor line;
  const auto ground = line.drawn.addNet("chassis", NetRole::ground);
  const auto earth = line.drawn.pin(line.drawn.part("H1", PartKind::connector), "1", ground);
  const auto elsewhere =
      line.drawn.pin(line.drawn.part("U8", PartKind::chip), "1", line.drawn.addNet("OTHER", NetRole::signal));
  const auto start = line.isolation();
  const auto& d = line.drawn;
  const auto why = [&](const Reading& reading) -> std::optional<SetAsideWhy> {
    const auto now = update(start, reading);
    if (now.setAside.empty()) return std::nullopt;
    CHECK(now.setAside.front().reading == reading);
    CHECK(now.observations.empty());
    return now.setAside.front().why;
  };
  using Why = SetAsideWhy;
  CHECK(why(d.diode("J1.1", 0.5)) == std::nullopt);
  for (const auto& other :
       {ProbePoint{PinId{}, ""}, ProbePoint{PinId{}, "AGND"}, ProbePoint{earth, "H1.1"}}) {
    auto reading = d.diode("J1.1", 0.5);
    reading.other = other;
    CHECK(why(reading) == std::nullopt);
  }
  for (const auto& other :
       {ProbePoint{elsewhere, "GND"}, ProbePoint{PinId{}, "U8.1"}, ProbePoint{PinId{}, "+3V3"}}) {
    auto reading = d.continuity("J1.1", "U1.1", 0.5);
    reading.other = other;
    CHECK(why(reading) == Why::otherLeadElsewhere);
  }
  auto between = d.continuity("J1.1", "U1.1", 0.5);
  CHECK(why(between) == std::nullopt);
  CHECK(why(inMode(between, ReadingMode::diode)) == Why::diodeFromPointToPoint);
  CHECK(why(inMode(between, ReadingMode::ohms)) == std::nullopt);
  CHECK(why(inMode(between, ReadingMode::milliohms)) == std::nullopt);
  between.value = 0.0;
  CHECK(why(between) == std::nullopt);
  between.value = -0.001;
  CHECK(why(between) == Why::negativeResistance);
  const auto toGround = d.diode("J1.1", 470.0);
  CHECK(why(inMode(toGround, ReadingMode::ohms)) == std::nullopt);
  for (const auto mode : {ReadingMode::milliohms, ReadingMode::continuity})
    CHECK(why(inMode(toGround, mode)) == Why::modeToGround);
  for (const auto mode : {ReadingMode::diodeReverse, ReadingMode::volts, ReadingMode::dropUnderCurrent,
                          ReadingMode::temperature})
    CHECK(why(inMode(toGround, mode)) == Why::mode);
  auto byPin = d.diode("as it was called once", 0.5);
  CHECK(why(byPin) == Why::notOnLine);
  byPin.point.pin = d.pins[0];
  CHECK(why(byPin) == std::nullopt);
  CHECK(update(start, byPin).observations.front().place == placeCalled(start, "J1.1"));
  auto nameless = d.diode("", 0.5);
  CHECK(why(nameless) == Why::notOnLine);

  // A cold board reads more: by (V − 1.11 V − 3·kT/q)/T a kelvin, about −2.15 mV/K here (meter_model.h).
  auto cold = d.diode("U1.1", across470 + 0.0215);
  cold.condition.temperature = Celsius(15);
  const double slope = (across470 + 0.0215 - 1.11 - 3 * 8.617333e-5 * 288.15) / 288.15;
  checkShares(update(start, cold), after(prior, {diodeAt("U1.1", across470 + 0.0215 + 10 * slope)}));

  const Lookup lookup(d.board);
  IsolationInput input{lookup, d.line, line.priors, test::effortsFromData(), test::handheld()};
  std::erase_if(input.meter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::diode; });
  const auto blind = makeIsolation(input);
  CHECK(update(blind, d.diode("J1.1", 0.5)).setAside.front().why == Why::noDiodeMode);
  CHECK(blind.notices.back().kind == LineNotice::Kind::noDiodeMode);
  CHECK(predictDiode(blind, 0, sound).overLimit == 0.35);
  for (const auto& probe : nextProbe(blind).ranked)
    CHECK(probe.other.has_value());
  std::erase_if(input.meter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::ohms; });
  CHECK(update(makeIsolation(input), inMode(toGround, ReadingMode::ohms)).setAside.front().why ==
        Why::modeToGround);
}

TEST_CASE(
    "values known of a line's pins come from boards and by hand, the heaviest part, and not from kinds") {
  DrawnLine drawn;
  const auto connector = drawn.part("J1", PartKind::connector);
  std::vector<NodeIndex> pads;
  for (int i = 1; i <= 7; ++i)
    pads.push_back(drawn.pinOnLine(connector, std::to_string(i), mm(2.0 * i, 0)));
  const Lookup lookup(drawn.board);
  ExpectedTable table;
  const auto put = [&](std::size_t pin, ExpectedFrom from, double overLimit, std::vector<ExpectedHump> humps,
                       std::size_t boardsOverLimit, ReadingSetting setting = {}) {
    Expected expected;
    expected.from = from;
    expected.overLimitShare = overLimit;
    expected.humps = std::move(humps);
    expected.boardsOverLimit = boardsOverLimit;
    table.put({drawn.pins[pin], "J1." + std::to_string(pin + 1)}, setting, expected);
  };
  put(0, ExpectedFrom::boards, 0.001, {{0.999, 0.52, 0.004, 6, 3}}, 0);
  put(1, ExpectedFrom::entered, 0.2, {{0.3, 0.41, 0.003, 6, 2}, {0.5, 0.61, 0.005, 6, 3}}, 1);
  put(2, ExpectedFrom::pinKind, 0.001, {{0.999, 0.52, 0.1, 6, 0}}, 0);
  put(3, ExpectedFrom::boards, 0.6, {{0.4, 0.52, 0.004, 6, 2}}, 3);
  put(4, ExpectedFrom::boards, 1.0, {}, 4);
  ReadingSetting plugged;
  plugged.condition.plugged = {"display"};
  put(5, ExpectedFrom::boards, 0.001, {{0.999, 0.55, 0.004, 6, 3}}, 0, plugged);
  put(6, ExpectedFrom::boards, 0.5, {{0.5, 0.53, 0.004, 6, 3}}, 3); // as heavy: the value counts
  CHECK(knownGoodOf(lookup, drawn.line, table) ==
        std::vector<KnownGood>{{drawn.pins[0], Volts(0.52), Volts(0.004), false},
                               {drawn.pins[1], Volts(0.61), Volts(0.005), true},
                               {drawn.pins[3], std::nullopt, Volts(), false},
                               {drawn.pins[4], std::nullopt, Volts(), false},
                               {drawn.pins[6], Volts(0.53), Volts(0.004), true}});
  CHECK(knownGoodOf(lookup, drawn.line, table, plugged.condition) ==
        std::vector<KnownGood>{{drawn.pins[5], Volts(0.55), Volts(0.004), false}});
}
