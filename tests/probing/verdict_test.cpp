#include "netmend/probing/verdict.h"

#include <cmath>

#include "netmend/probing/comparison.h"
#include "support.h"

using namespace netmend;
using test::at;
using test::boardsReading;
using test::verdictOn;

namespace {

const std::vector<std::optional<double>> eightBoards{0.451, 0.455, 0.447, 0.453, 0.449, 0.456, 0.452, 0.450};

VerdictKind kindOf(const std::vector<std::optional<double>>& boards, std::optional<double> value,
                   ReadingMode mode = ReadingMode::diode) {
  return verdictOn(boardsReading(boards, mode), at(1, value, mode)).kind;
}

} // namespace

TEST_CASE("a pin that reads OL where boards read 0.45 V is open, and the verdict keeps why") {
  const auto verdict = verdictOn(boardsReading(eightBoards), at(1, std::nullopt));
  CHECK(verdict.kind == VerdictKind::open);
  CHECK(verdict.odds > 10.0);
  CHECK(verdict.nothing == NothingBecause::judged);
  REQUIRE(verdict.expected);
  CHECK(verdict.expected->boards == 8);
  CHECK(verdict.expected->boardsOverLimit == 0);
  CHECK(verdict.expected->seen == ValueInterval{0.447, 0.456});
  REQUIRE(verdict.rarity);
  CHECK(*verdict.rarity < verdict.falseAlarmRate);
  CHECK(verdict.falseAlarmRate == Approx(0.05 / 40.0)); // data/verdict.json over 40 points
  CHECK(verdict.offInSpreads == 0.0);                   // OL is off by no number
}

TEST_CASE("the rate of false flags is shared by all points at which good boards were read in the same way") {
  CHECK(ratePerPoint(1, test::data().rules) == Approx(0.05));
  // 1 − 0.95^(1/40), by hand.
  CHECK(ratePerPoint(40, test::data().rules) == Approx(0.00128151).epsilon(1e-5));
  CHECK(ratePerPoint(0, test::data().rules) == ratePerPoint(1, test::data().rules));

  Walk good = test::walkOf({}, Specimen::good);
  for (int pin = 1; pin <= 40; ++pin)
    good.readings.push_back(at(pin, 0.45));
  for (int pin = 1; pin <= 3; ++pin)
    good.readings.push_back(at(pin, 4700.0, ReadingMode::ohms));
  const ExpectedTable table = test::expectedFrom({good});
  CHECK(table.points().count({}) == 40);
  const auto ratesOf = [&](const std::vector<Reading>& readings) {
    std::vector<double> out;
    for (const Verdict& verdict :
         judgeWalk(test::walkOf(readings, Specimen::faulty), table, nullptr, test::data()).verdicts)
      out.push_back(verdict.falseAlarmRate);
    return out;
  };
  const double ofForty = ratePerPoint(40, test::data().rules), ofThree = ratePerPoint(3, test::data().rules);
  CHECK(ratesOf({at(7, 0.45)}) == std::vector<double>{ofForty});
  CHECK(ratesOf({at(7, 0.45), at(8, 0.45), at(1, 4700.0, ReadingMode::ohms), at(7, 0.45)}) ==
        std::vector<double>{ofForty, ofForty, ofThree, ofForty});
  // In another condition nobody has read anything.
  Reading plugged = at(7, 0.45);
  plugged.condition.plugged = {"battery"};
  CHECK(ratesOf({plugged}) == std::vector<double>{0.0});
}

TEST_CASE("a pin that reads what boards read is in range") {
  const auto verdict = verdictOn(boardsReading(eightBoards), at(1, 0.457));
  CHECK(verdict.kind == VerdictKind::inRange);
  CHECK(verdict.odds < 0.02);
  CHECK_FALSE(verdict.rarity);
  CHECK(verdict.offInSpreads > 0.0); // 0.457 of 0.452
}

TEST_CASE("a pin that reads zero where boards read 0.45 V is short, and far off pins are low or high") {
  CHECK(kindOf(eightBoards, 0.001) == VerdictKind::shorted);
  CHECK(kindOf(eightBoards, 0.300) == VerdictKind::low);
  CHECK(kindOf(eightBoards, 0.600) == VerdictKind::high);
  CHECK(verdictOn(boardsReading(eightBoards), at(1, 0.300)).offInSpreads < -5.0);
}

TEST_CASE("an 18 mV shift shows where boards agree within 2 mV, and not where they scatter by 10 mV") {
  const std::vector<std::optional<double>> alike{0.451, 0.452, 0.453, 0.450, 0.452, 0.451, 0.453, 0.452};
  const std::vector<std::optional<double>> scattered{0.441, 0.462, 0.453, 0.440, 0.452, 0.461, 0.443, 0.458};
  CHECK(kindOf(alike, 0.452 - 0.018) == VerdictKind::low);
  CHECK(kindOf(alike, 0.452 + 0.018) == VerdictKind::high);
  CHECK(kindOf(scattered, 0.452 - 0.018) == VerdictKind::inRange);
}

TEST_CASE("one good board is enough for open, short and gross shifts but not for small ones") {
  CHECK(kindOf({0.452}, std::nullopt) == VerdictKind::open);
  CHECK(kindOf({0.452}, 0.001) == VerdictKind::shorted);
  CHECK(kindOf({0.452}, 0.700) == VerdictKind::high);
  CHECK(kindOf({0.452}, 0.445) == VerdictKind::inRange);
}

TEST_CASE("a good rail that reads 3 mV is no short") {
  const std::vector<std::optional<double>> rail{0.003, 0.004, 0.003, 0.003};
  CHECK(kindOf(rail, 0.003) == VerdictKind::inRange);
  CHECK(kindOf(rail, 0.002) == VerdictKind::inRange);
  CHECK(kindOf(rail, 0.060) == VerdictKind::high);
  CHECK(kindOf(rail, std::nullopt) == VerdictKind::open);
  // Below the meter's limit but above what boards read: high, not short.
  CHECK(kindOf({0.0003, 0.0003, 0.0003, 0.0003, 0.0003, 0.0003}, 0.0019) != VerdictKind::shorted);
}

TEST_CASE("a pin that reads where boards read OL is named so, unless it reads nothing at all") {
  const std::vector<std::optional<double>> open{std::nullopt, std::nullopt, std::nullopt};
  CHECK(kindOf(open, std::nullopt) == VerdictKind::inRange);
  CHECK(kindOf(open, 0.520) == VerdictKind::readsWhereOverLimitExpected);
  CHECK(kindOf(open, 0.0005) == VerdictKind::shorted);
  CHECK(word(kindOf(open, 0.520)) == "reads where OL is expected");
}

TEST_CASE("where some good boards read OL both OL and their value are in range, and little else") {
  const std::vector<std::optional<double>> mixed{std::nullopt, 0.610, 0.612, std::nullopt, 0.609};
  CHECK(kindOf(mixed, std::nullopt) == VerdictKind::inRange);
  CHECK(kindOf(mixed, 0.611) == VerdictKind::inRange);
  CHECK(kindOf(mixed, 0.400) == VerdictKind::low);
  CHECK(kindOf(mixed, 0.0005) == VerdictKind::shorted);
  const auto expected = verdictOn(boardsReading(mixed), at(1, 0.4)).expected;
  REQUIRE(expected);
  CHECK(expected->boardsOverLimit == 2);
  CHECK(expected->seen == ValueInterval{0.609, 0.612});
}

TEST_CASE("boards of two variants make two intervals, and a value between them is in neither") {
  const std::vector<std::optional<double>> variants{0.450, 0.452, 0.620, 0.451, 0.622, 0.621};
  const auto table = test::expectedFrom(boardsReading(variants));
  REQUIRE(table.size() == 1);
  CHECK(table.at(0).humps.size() == 2);
  CHECK(kindOf(variants, 0.451) == VerdictKind::inRange);
  CHECK(kindOf(variants, 0.621) == VerdictKind::inRange);
  const auto between = kindOf(variants, 0.535);
  CHECK((between == VerdictKind::low || between == VerdictKind::high));
}

TEST_CASE("without anything to compare there is no flag") {
  const auto verdict = verdictOn({}, at(1, std::nullopt));
  CHECK(verdict.kind == VerdictKind::nothingToCompare);
  CHECK_FALSE(isFlag(verdict.kind));
  CHECK(verdict.nothing == NothingBecause::noExpectedValue);
  VerdictRules none = test::data().rules;
  none.faults.clear();
  const auto table = test::expectedFrom(boardsReading({0.452}));
  const Reading reading = at(1, 0.452);
  const auto unruled = judgeReading(reading, table.find(reading), nullptr, none, 0.001);
  CHECK(unruled.kind == VerdictKind::nothingToCompare);
  CHECK(unruled.nothing == NothingBecause::noRule);
}

TEST_CASE("only like is compared with like") {
  const auto good = boardsReading({0.452, 0.450, 0.451});
  CHECK(verdictOn(good, at(1, 4700.0, ReadingMode::ohms)).kind == VerdictKind::nothingToCompare);
  auto reading = at(1, 0.452, ReadingMode::diodeReverse);
  CHECK(verdictOn(good, reading).kind == VerdictKind::nothingToCompare);
  reading = at(1, 0.452);
  reading.other.label = "VBAT";
  CHECK(verdictOn(good, reading).kind == VerdictKind::nothingToCompare);
  reading = at(1, 0.452);
  reading.condition.plugged = {"display"};
  CHECK(verdictOn(good, reading).kind == VerdictKind::nothingToCompare);
  reading = at(1, 0.452);
  reading.condition.lifted = {"FB2"};
  CHECK(verdictOn(good, reading).kind == VerdictKind::nothingToCompare);
  reading = at(1, 0.452);
  reading.condition.temperature = Celsius(24);
  CHECK(verdictOn(good, reading).kind == VerdictKind::inRange);
}

TEST_CASE("a cold board is not low: temperature corrects") {
  // 25 K at about −2.2 mV/K (the model at 0.45 V) is 54 mV: far outside without correction.
  auto good = boardsReading(eightBoards);
  for (auto& walk : good)
    walk.readings[0].condition.temperature = Celsius(25);
  auto cold = at(1, 0.452 + 0.0545);
  CHECK(verdictOn(good, cold).kind == VerdictKind::high);
  cold.condition.temperature = Celsius(0);
  CHECK(verdictOn(good, cold).kind == VerdictKind::inRange);
}

TEST_CASE("what still rises is not called low or short") {
  auto reading = at(1, 0.100);
  reading.settling = Settling::rising;
  const auto verdict = verdictOn(boardsReading(eightBoards), reading);
  CHECK(verdict.kind == VerdictKind::nothingToCompare);
  reading.value = 0.9;
  CHECK(verdictOn(boardsReading(eightBoards), reading).kind == VerdictKind::high);
}

TEST_CASE("a coarse meter widens what is in range, once") {
  auto reading = at(1, 0.452 - 0.014);
  const std::vector<std::optional<double>> alike{0.451, 0.452, 0.453, 0.450, 0.452, 0.451, 0.453, 0.452};
  CHECK(verdictOn(boardsReading(alike), reading).kind == VerdictKind::low);
  reading.meter = "handheld-4000"; // ±(1 % + 3 counts): ±7.5 mV here
  CHECK(verdictOn(boardsReading(alike), reading).kind == VerdictKind::inRange);
}

TEST_CASE("resistances compare by ratio") {
  const std::vector<std::optional<double>> boards{4690.0, 4710.0, 4705.0, 4700.0, 4695.0, 4698.0};
  CHECK(kindOf(boards, 4720.0, ReadingMode::ohms) == VerdictKind::inRange);
  CHECK(kindOf(boards, 9400.0, ReadingMode::ohms) == VerdictKind::high);
  CHECK(kindOf(boards, 2300.0, ReadingMode::ohms) == VerdictKind::low);
  CHECK(kindOf(boards, 0.2, ReadingMode::ohms) == VerdictKind::shorted);
  CHECK(kindOf(boards, std::nullopt, ReadingMode::ohms) == VerdictKind::open);
}

TEST_CASE("a missing voltage is low: only a fed current makes a short") {
  const std::vector<std::optional<double>> boards{3.30, 3.31, 3.29, 3.30};
  CHECK(kindOf(boards, 3.28, ReadingMode::volts) == VerdictKind::inRange);
  CHECK(kindOf(boards, 0.001, ReadingMode::volts) == VerdictKind::low);
}

TEST_CASE("what was entered by hand is judged by and wins over boards") {
  Walk byHand;
  EnteredExpectation entry;
  entry.point.label = "J1.1";
  entry.lowest = 0.60;
  entry.highest = 0.70;
  byHand.entered = {entry};
  auto walks = boardsReading({0.452, 0.450});
  walks.push_back(byHand);
  CHECK(verdictOn(walks, at(1, 0.650)).kind == VerdictKind::inRange);
  const auto verdict = verdictOn(walks, at(1, 0.452));
  CHECK(verdict.kind == VerdictKind::low);
  REQUIRE(verdict.expected);
  CHECK(verdict.expected->from == ExpectedFrom::entered);
  walks.back().entered[0].overLimit = true;
  CHECK(verdictOn(walks, at(1, std::nullopt)).kind == VerdictKind::inRange);
  CHECK(verdictOn(walks, at(1, 0.452)).kind == VerdictKind::readsWhereOverLimitExpected);
}

TEST_CASE("without boards the kind of pin is judged by and said to be a default") {
  Board board;
  board.info.uuid = "b";
  const auto addNet = [&](const char* name, NetRole role) {
    Net net;
    net.id = board.newId<NetId>();
    net.name = name;
    net.role = fromUser(role);
    board.nets.put(net);
    return net.id;
  };
  const auto addPin = [&](Fact<NetId> net, Fact<Termination> termination) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.name = "TP" + std::to_string(pin.id.value);
    pin.net = net;
    pin.termination = termination;
    board.pins.put(pin);
    return pin.id;
  };
  const auto ground = addPin(fromUser(addNet("earth", NetRole::ground)), {});
  const auto column = addNet("COL3", NetRole::signal);
  const auto signal = addPin(fromUser(column), {});
  const auto clamped = addPin(fromUser(addNet("COL4", NetRole::signal)), measured(Termination::junction));
  const auto nothing = addPin(fromUser(NetId{}), {});
  const auto unknown = addPin({}, {});
  const Lookup lookup(board);
  CHECK(pinKind(lookup, ground) == PinKind::ground);
  CHECK(pinKind(lookup, signal) == PinKind::signal);
  CHECK(pinKind(lookup, clamped) == PinKind::junction);
  CHECK(pinKind(lookup, nothing) == PinKind::unconnected);
  CHECK(pinKind(lookup, unknown) == PinKind::unknown);

  const auto judge = [&](PinId pin, std::optional<double> value) {
    Walk walk;
    walk.boardUuid = "b";
    auto reading = at(1, value);
    reading.point = {pin, pinLabel(board, pin)};
    walk.readings = {reading};
    return judgeWalk(walk, ExpectedTable{}, &lookup, test::data()).verdicts.at(0);
  };
  CHECK(judge(ground, 0.0004).kind == VerdictKind::inRange);
  CHECK(judge(ground, std::nullopt).kind == VerdictKind::open);
  CHECK(judge(ground, 0.600).kind == VerdictKind::high);
  CHECK(judge(clamped, 0.500).kind == VerdictKind::inRange);
  CHECK(judge(clamped, std::nullopt).kind == VerdictKind::open);
  CHECK(judge(signal, 0.0005).kind == VerdictKind::shorted);
  CHECK(judge(nothing, std::nullopt).kind == VerdictKind::inRange);
  CHECK(judge(nothing, 0.0005).kind == VerdictKind::shorted);
  CHECK(judge(unknown, std::nullopt).kind == VerdictKind::nothingToCompare);
  CHECK(judge(ground, std::nullopt).expected->from == ExpectedFrom::pinKind);
  CHECK(judge(ground, std::nullopt).expected->kind == PinKind::ground);
}

TEST_CASE("points match by pin where both know it, else by label") {
  auto walks = boardsReading({0.452, 0.451});
  for (auto& walk : walks) {
    walk.boardUuid = "b";
    walk.readings[0].point = {PinId(5), "J1.1"};
  }
  const auto table = test::expectedFrom(walks);
  auto reading = at(1, 0.452);
  CHECK(table.find(reading) != nullptr); // by label
  reading.point = {PinId(5), "renamed"};
  CHECK(table.find(reading) != nullptr); // by pin
  reading.point = {PinId(6), "J1.1"};
  CHECK(table.find(reading) == nullptr); // another pin of that label
  // Ids of another board description mean nothing.
  Walk other;
  other.boardUuid = "c";
  reading.point = {PinId(5), "J1.9"};
  other.readings = {reading};
  CHECK(judgeWalk(other, table, nullptr, test::data()).verdicts[0].kind == VerdictKind::nothingToCompare);
}

TEST_CASE("rising readings and boards not known to be good do not make an expectation") {
  auto walks = boardsReading({0.452, 0.451});
  walks[0].readings[0].settling = Settling::rising;
  walks[1].specimen = Specimen::unknown;
  const auto table = test::expectedFrom(walks);
  CHECK(table.size() == 0);
  // Measured twice on one board: it is still one board, and the later value holds.
  auto twice = boardsReading({0.100});
  twice[0].readings.push_back(at(1, 0.452));
  const auto again = test::expectedFrom(twice);
  REQUIRE(again.size() == 1);
  CHECK(again.at(0).boards == 1);
  CHECK(again.at(0).humps.at(0).centre == Approx(0.452));
}

TEST_CASE("bad rules are refused with the place of the fault") {
  const test::TemporaryFile file("verdict.json", R"({"format":"netmend-verdict","version":1,
    "false_flags_per_good_walk":{"value":2,"source":"x"}})");
  const auto rules = loadVerdictRules(file.path());
  REQUIRE_FALSE(rules);
  CHECK(wordsOf(rules.error().place) == "/false_flags_per_good_walk/value");
  const test::TemporaryFile kinds("kinds.json", R"({"format":"netmend-pin-kinds","version":1,"kinds":[
    {"kind":"signal","modes":[{"mode":"diode","source":"x","board_spread":{"spread":0.01,"dof":4},
     "default":{"over_limit_share":0.5,"humps":[]}}]}]})");
  const auto read = loadPinKinds(kinds.path());
  REQUIRE_FALSE(read);
  CHECK(wordsOf(read.error().place) == "/kinds/0/modes/0/default");
}
