#include <random>

#include "support.h"

using namespace netmend;
using test::at;

// Boards that are said to be good and are not: docs/methods/probing.md.

namespace {

/// Forty points of a good board, a few millivolts apart from the next one by dice that are the same
/// everywhere.
Walk goodBoard(int board) {
  std::vector<Reading> readings;
  std::mt19937 random(static_cast<unsigned>(board) + 1); // the same everywhere
  for (int point = 0; point < 40; ++point)
    readings.push_back(at(point, 0.35 + 0.01 * point + 0.001 * static_cast<double>(random() % 9) - 0.004));
  Walk walk = test::walkOf(std::move(readings), Specimen::good);
  walk.title = "J1";
  walk.serial = "S-" + std::to_string(board);
  return walk;
}

std::vector<Walk> goodBoards(int boards) {
  std::vector<Walk> walks;
  for (int board = 0; board < boards; ++board)
    walks.push_back(goodBoard(board));
  return walks;
}

Reading& readingOf(Walk& walk, int point) {
  return walk.readings[static_cast<std::size_t>(point)];
}

const Expected& expectedAt(const ExpectedTable& table, int point) {
  return *table.find(at(point, 0.5));
}

} // namespace

TEST_CASE("one of four good boards that reads OL is set aside with what it read and what the others did") {
  auto walks = goodBoards(4);
  readingOf(walks[2], 9).value.reset();
  readingOf(walks[2], 30).value.reset();
  const auto table = test::expectedFrom(walks);
  REQUIRE(table.setAside.size() == 1);
  const DonorSetAside& donor = table.setAside.front();
  CHECK(donor.walk == 2);
  CHECK(donor.serial == "S-2");
  CHECK(donor.title == "J1");
  CHECK(donor.points == 40);
  REQUIRE(donor.odd.size() == 2);
  CHECK(donor.odd[0].reading == readingOf(walks[2], 9));
  CHECK(donor.odd[1].reading == readingOf(walks[2], 30));
  for (const OddAtDonor& odd : donor.odd) {
    CHECK(odd.others.boards == 3);
    CHECK(odd.others.boardsOverLimit == 0);
  }
  // At no point does it count any more, and the others vouch for each other.
  for (std::size_t i = 0; i < table.size(); ++i) {
    CHECK(table.at(i).boards == 3);
    CHECK(table.at(i).boardsSetAside == 1);
    CHECK(table.at(i).boardsOverLimit == 0);
    CHECK_FALSE(table.at(i).disagree);
  }
  CHECK(table.disagreements().empty());
  walks.erase(walks.begin() + 2);
  auto without = test::expectedFrom(walks);
  CHECK(without.setAside.empty());
  Expected same = expectedAt(table, 9);
  same.boardsSetAside = 0;
  CHECK(same == expectedAt(without, 9));
  // The same fault on the board under work is found.
  const auto judged =
      judgeReading(at(9, std::nullopt), &expectedAt(table, 9), nullptr, test::data().rules, 0.05 / 40);
  CHECK(judged.kind == VerdictKind::open);
}

TEST_CASE("three good boards set none aside: they disagree where one of them reads otherwise") {
  for (const int boards : {2, 3}) {
    auto walks = goodBoards(boards);
    readingOf(walks[1], 9).value.reset();
    *readingOf(walks[1], 20).value += 0.08;
    const auto table = test::expectedFrom(walks);
    CHECK(table.setAside.empty());
    REQUIRE(table.disagreements().size() == 2);
    CHECK(table.points()[table.disagreements()[0]].point.label == "J1.9");
    CHECK(table.points()[table.disagreements()[1]].point.label == "J1.20");
    const Expected& open = expectedAt(table, 9);
    CHECK(open.disagree);
    CHECK(open.boards == static_cast<std::size_t>(boards));
    CHECK(open.boardsOverLimit == 1);
    CHECK(open.overLimitShare == Approx(2.0 / (boards + 2)));
    // Neither side is believed alone: each has its hump.
    const Expected& shifted = expectedAt(table, 20);
    CHECK(shifted.disagree);
    REQUIRE(shifted.humps.size() == 2);
    CHECK(shifted.humps[0].boards == boards - 1);
    CHECK(shifted.humps[1].boards == 1);
    CHECK(shifted.humps[1].centre == Approx(*readingOf(walks[1], 20).value).epsilon(1e-9));
    CHECK_FALSE(expectedAt(table, 21).disagree);
  }
}

TEST_CASE("values that disagree part at the widest gap, however small it is beside those of variants") {
  auto walks = goodBoards(3);
  *readingOf(walks[2], 20).value += 0.028; // under eight spreads of the kind
  const auto table = test::expectedFrom(walks);
  const Expected& e = expectedAt(table, 20);
  REQUIRE(e.disagree);
  REQUIRE(e.humps.size() == 2);
  CHECK(e.humps[0].boards == 2);
  CHECK(e.humps[1].boards == 1);
}

TEST_CASE("good boards that are alike disagree nowhere, and none is set aside") {
  for (const int boards : {1, 2, 3, 4, 5, 8}) {
    const auto table = test::expectedFrom(goodBoards(boards));
    CHECK(table.setAside.empty());
    CHECK(table.disagreements().empty());
    CHECK(table.at(0).boards == static_cast<std::size_t>(boards));
  }
}

TEST_CASE("two boards of a variant vouch for each other, one alone is set aside") {
  auto walks = goodBoards(6);
  for (const int board : {1, 4})
    for (const int point : {3, 9, 15, 21})
      *readingOf(walks[static_cast<std::size_t>(board)], point).value += 0.1;
  const auto both = test::expectedFrom(walks);
  CHECK(both.setAside.empty());
  REQUIRE(expectedAt(both, 9).humps.size() == 2);
  CHECK(expectedAt(both, 9).humps[1].boards == 2);
  walks.erase(walks.begin() + 4);
  const auto one = test::expectedFrom(walks);
  REQUIRE(one.setAside.size() == 1);
  CHECK(one.setAside[0].walk == 1);
  CHECK(one.setAside[0].odd.size() == 4);
  CHECK(expectedAt(one, 9).humps.size() == 1);
}

TEST_CASE("the worst is set aside first, and four boards it takes to set the next one aside") {
  auto walks = goodBoards(5);
  for (const int point : {3, 9, 15})
    readingOf(walks[0], point).value = 0.0005;
  for (const int point : {4, 12})
    readingOf(walks[3], point).value.reset();
  const auto five = test::expectedFrom(walks);
  REQUIRE(five.setAside.size() == 2);
  CHECK(five.setAside[0].logOdds > five.setAside[1].logOdds);
  CHECK(five.setAside[0].walk == 0);
  CHECK(five.setAside[1].walk == 3);
  walks.pop_back();
  const auto four = test::expectedFrom(walks);
  REQUIRE(four.setAside.size() == 1);
  CHECK(four.setAside[0].walk == 0);
  CHECK(four.disagreements().size() == 2); // of the three that are left
}

TEST_CASE(
    "points where fewer than three others were read set no board aside, and one that is counts nowhere") {
  auto walks = goodBoards(4);
  // Two others at J1.0 to J1.9 and J1.15, three at the other points.
  walks[0].readings.erase(walks[0].readings.begin(), walks[0].readings.begin() + 10);
  walks[0].readings.erase(walks[0].readings.begin() + 5); // J1.15
  for (const int point : {1, 2, 3})
    readingOf(walks[3], point).value.reset();
  const auto table = test::expectedFrom(walks);
  CHECK(table.setAside.empty());
  CHECK(table.disagreements().size() == 3);
  // Alone at one more point, and odd where enough others were read.
  walks[3].readings.push_back(at(77, 0.5));
  for (const int point : {20, 30})
    readingOf(walks[3], point).value.reset();
  const auto odd = test::expectedFrom(walks);
  REQUIRE(odd.setAside.size() == 1);
  CHECK(odd.setAside[0].points == 29); // J1.10 to J1.39 less J1.15
  CHECK(odd.find(at(77, 0.5)) == nullptr);
  CHECK(odd.disagreements().empty());
}

TEST_CASE("meters that differ are no spread of the boards, and each one's error is added once") {
  // Two meters whose error is 3 mV and 1 mV (rectangles), two boards each, 2 mV apart from meter to meter.
  MeterProfile a, b;
  a.id = "a";
  b.id = "b";
  a.modes = {{ReadingMode::diode, {{2.0, 1e-9, 0.0, 3e-3 * std::sqrt(3.0) / 1e-9}}, {}, {}, {}}};
  b.modes = {{ReadingMode::diode, {{2.0, 1e-9, 0.0, 1e-3 * std::sqrt(3.0) / 1e-9}}, {}, {}, {}}};
  ProbingData data{{a, b}, {}, test::data().rules};
  data.kinds.byKind.resize(pinKindCount);
  PinKindDefault unknown;
  unknown.boardSpread = 0.004;
  unknown.boardSpreadDof = 1e6;
  data.kinds.byKind[0] = {unknown};
  auto walks = test::boardsReading({0.450, 0.458, 0.452, 0.460});
  for (std::size_t i = 0; i < 4; ++i)
    walks[i].readings[0].meter = i < 2 ? "a" : "b";
  const auto table = expectedFromWalks(walks, nullptr, data);
  REQUIRE(table.size() == 1);
  const ExpectedHump& hump = table.at(0).humps.at(0);
  CHECK(hump.centre == Approx(0.455));
  REQUIRE(hump.meters.size() == 2);
  CHECK(hump.meters[0].meter == "a");
  CHECK(hump.meters[0].uncertainty == Approx(0.5 * 3e-3).epsilon(1e-6));
  CHECK(hump.meters[1].uncertainty == Approx(0.5 * 1e-3).epsilon(1e-6));
  // Read with a: a's error in full, b's by its share. Odds say how wide the hump is: by hand, a normal.
  const auto oddsWith = [&](const char* meter) {
    Reading reading = at(1, 0.475);
    reading.meter = meter;
    return judgeReading(reading, &table.at(0), findMeter(data.meters, meter), data.rules, 1e-3).offInSpreads;
  };
  const double boards = hump.scale * hump.scale;
  CHECK(oddsWith("a") == Approx(0.020 / std::sqrt(boards + 9e-6 + 0.25e-6)).epsilon(1e-6));
  CHECK(oddsWith("b") == Approx(0.020 / std::sqrt(boards + 1e-6 + 2.25e-6)).epsilon(1e-6));
  CHECK(oddsWith("c") == Approx(0.020 / std::sqrt(boards + 2.5e-6)).epsilon(1e-6));
}
