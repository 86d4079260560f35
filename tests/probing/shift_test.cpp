#include <cmath>
#include <random>

#include "netmend/probing/shift.h"
#include "netmend/probing/walk_file.h"
#include "support.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

using Values = std::vector<std::optional<double>>;

Walk walkReading(const Values& values) {
  Walk walk;
  for (std::size_t i = 0; i < values.size(); ++i) {
    walk.readings.push_back(test::at(static_cast<int>(i) + 1, values[i]));
    walk.points.push_back(walk.readings.back().point);
  }
  return walk;
}

/// What boards reading these values, give or take 2 mV, make of good ones.
ExpectedTable expectedOf(const Values& values) {
  std::vector<Walk> good;
  for (const double off : {-0.002, 0.0, 0.001, 0.001}) {
    Values board;
    for (const auto& value : values)
      board.push_back(value ? std::optional(*value + off) : value);
    good.push_back(walkReading(board));
    good.back().specimen = Specimen::good;
  }
  return test::expectedFrom(good);
}

std::optional<Shift> shiftOf(const Walk& walk, const Values& good,
                             const std::vector<ProbePoint>& passedOver = {}) {
  return shiftIn(walk, passedOver, expectedOf(good), test::data());
}

/// The good board's values from `from` on (counted from 0), one pin beside: of the pin behind, or before.
Walk shifted(const Values& good, std::size_t from, int by, std::size_t until) {
  Values values(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(until));
  for (std::size_t i = from; i < until; ++i)
    values[i] = good[static_cast<std::size_t>(static_cast<int>(i) + by)];
  Walk walk = walkReading(values);
  walk.points = walkReading(good).points;
  return walk;
}

std::vector<std::string> labels(const std::vector<ProbePoint>& points) {
  std::vector<std::string> out;
  for (const ProbePoint& point : points)
    out.push_back(point.label);
  return out;
}

const Values distinct{0.40, 0.45, 0.50, 0.55, 0.60, 0.65, 0.70, 0.75, 0.80, 0.35};

} // namespace

TEST_CASE("three readings that tell show that a pin was left out, two do not") {
  CHECK_FALSE(shiftOf(shifted(distinct, 4, 1, 6), distinct));
  const auto shift = shiftOf(shifted(distinct, 4, 1, 7), distinct);
  REQUIRE(shift);
  CHECK(shift->kind == ShiftKind::pinLeftOut);
  CHECK(shift->firstReading == 4);
  CHECK(shift->telling == 3);
  CHECK(labels(shiftedBack(shifted(distinct, 4, 1, 7), {}, *shift)) ==
        std::vector<std::string>{"J1.6", "J1.7", "J1.8"});
}

TEST_CASE("three readings that tell show that a pin was read twice, two do not") {
  CHECK_FALSE(shiftOf(shifted(distinct, 4, -1, 6), distinct));
  const auto shift = shiftOf(shifted(distinct, 4, -1, 7), distinct);
  REQUIRE(shift);
  CHECK(shift->kind == ShiftKind::pinReadTwice);
  CHECK(shift->firstReading == 4);
  CHECK(shift->telling == 3);
  CHECK(labels(shiftedBack(shifted(distinct, 4, -1, 7), {}, *shift)) ==
        std::vector<std::string>{"J1.4", "J1.5", "J1.6"});
}

TEST_CASE("nothing is said where neighbours read the same, or too few differ") {
  const Values same(12, 0.45);
  CHECK_FALSE(shiftOf(shifted(same, 4, 1, 11), same));
  CHECK_FALSE(shiftOf(shifted(same, 4, -1, 12), same));
  // Of these pins three differ from the one behind: from 5 to 6, 6 to 7, and 9 to 10.
  Values few = same;
  few[5] = 0.60;
  few[9] = 0.70;
  CHECK_FALSE(shiftOf(shifted(few, 4, 1, 8), few)); // two have been read
  const auto shift = shiftOf(shifted(few, 4, 1, 9), few);
  REQUIRE(shift);
  CHECK(shift->telling == 3);
}

TEST_CASE("no shift is seen where there is nothing to compare with, nor in a walk of good values") {
  CHECK_FALSE(shiftIn(shifted(distinct, 4, 1, 9), {}, ExpectedTable{}, test::data()));
  CHECK_FALSE(shiftOf(walkReading(distinct), distinct));
  CHECK_FALSE(shiftOf(Walk{}, distinct));
}

TEST_CASE("behind the last pin there is none to have been touched") {
  Values values = distinct;
  for (std::size_t i = 4; i + 1 < values.size(); ++i)
    values[i] = distinct[i + 1];
  values.back() = 0.9;
  CHECK_FALSE(shiftOf(walkReading(values), distinct));
  values.pop_back();
  Walk walk = walkReading(values);
  walk.points = walkReading(distinct).points;
  CHECK(shiftOf(walk, distinct));
}

TEST_CASE("pins that are passed over have no part in it") {
  // Pins 3 and 7 are passed over: 2's neighbour is 4.
  Values values = distinct;
  values[2] = values[6] = std::nullopt;
  Walk walk = walkReading(values);
  const std::vector<ProbePoint> passed{walk.points[2], walk.points[6]};
  std::erase_if(walk.readings,
                [&](const Reading& r) { return r.point == passed[0] || r.point == passed[1]; });
  // 2, 4, 5, 6 read as 4, 5, 6, 8 should.
  for (std::size_t i = 1; i < 5; ++i)
    walk.readings[i].value = *walk.readings[i + 1].value;
  walk.readings.resize(5);
  const auto shift = shiftOf(walk, values, passed);
  REQUIRE(shift);
  CHECK(shift->firstReading == 1);
  CHECK(labels(shiftedBack(walk, passed, *shift)) ==
        std::vector<std::string>{"J1.4", "J1.5", "J1.6", "J1.8"});
}

TEST_CASE("only the readings since somebody went back, or read in another way, are one run") {
  Walk walk = shifted(distinct, 4, 1, 8);
  walk.readings.push_back(test::at(2, 0.45)); // gone back to pin 2, which reads as it should
  CHECK_FALSE(shiftOf(walk, distinct));
  walk.readings.pop_back();
  walk.readings.push_back(test::at(9, 700.0, ReadingMode::ohms));
  CHECK_FALSE(shiftOf(walk, distinct));
  walk.readings.pop_back();
  CHECK(shiftOf(walk, distinct)->firstReading == 4);
  // A pin touched twice in the run goes with it.
  walk.readings.push_back(walk.readings.back());
  const auto shift = shiftOf(walk, distinct);
  REQUIRE(shift);
  CHECK(labels(shiftedBack(walk, {}, *shift)) ==
        std::vector<std::string>{"J1.6", "J1.7", "J1.8", "J1.9", "J1.9"});
}

TEST_CASE("a real fault among the shifted readings does not hide the shift, nor do faults look like one") {
  Walk walk = shifted(distinct, 3, 1, 9);
  walk.readings[6].value = std::nullopt;
  REQUIRE(shiftOf(walk, distinct));
  CHECK(shiftOf(walk, distinct)->firstReading == 3);
  // Two pins bridged read the lower one's value, three times over.
  Values bridged = distinct;
  bridged[1] = bridged[0];
  bridged[4] = bridged[3];
  bridged[7] = bridged[6];
  CHECK_FALSE(shiftOf(walkReading(bridged), distinct));
}

namespace {

using Random = std::mt19937;

double even(Random& random, double from, double to) {
  return std::uniform_real_distribution<double>(from, to)(random);
}

/// What an invented connector's good boards read: ground pins, buses whose lines read alike, other signals,
/// and pins that read OL.
Values drawConnector(Random& random) {
  const std::size_t pins = std::array<std::size_t, 4>{8, 14, 24, 40}.at(random() % 4);
  Values out;
  while (out.size() < pins) {
    const double what = even(random, 0.0, 1.0);
    if (what < 0.2)
      out.emplace_back(0.001);
    else if (what < 0.28)
      out.emplace_back(std::nullopt);
    else if (what < 0.4)
      for (std::size_t n = 2 + random() % 6; n > 0; --n)
        out.emplace_back(0.45);
    else
      out.emplace_back(even(random, 0.3, 0.8));
  }
  out.resize(pins);
  return out;
}

/// One board of the kind: 4 mV from board to board.
Values drawBoard(Random& random, const Values& kind) {
  std::normal_distribution<double> spread(0.0, 0.004);
  Values out;
  for (const auto& value : kind)
    out.push_back(!value          ? value
                  : *value < 0.01 ? std::optional(*value + std::abs(spread(random)) / 10.0)
                                  : std::optional(std::round((*value + spread(random)) * 1e5) * 1e-5));
  return out;
}

void addFault(Random& random, Values& board) {
  const std::size_t at = random() % board.size();
  switch (random() % 4) {
  case 0:
    board[at] = std::nullopt;
    break;
  case 1:
    board[at] = even(random, 0.0, 0.004);
    break;
  case 2: // something draws current, or no longer does
    board[at] = std::max(0.0, board[at].value_or(0.9) + even(random, -0.2, 0.2));
    break;
  default: // bridged with the next one
    if (at + 1 < board.size()) {
      const double both = std::min(board[at].value_or(2.0), board[at + 1].value_or(2.0));
      board[at] = board[at + 1] = both < 2.0 ? std::optional(both) : std::nullopt;
    }
  }
}

/// Walks of one kind of connector share what good boards read: that takes its time to work out.
constexpr int walksOfOne = 100;

ExpectedTable drawExpected(Random& random, const Values& kind) {
  std::vector<Walk> good;
  for (std::size_t boards = 2 + random() % 5; boards > 0; --boards) {
    good.push_back(walkReading(drawBoard(random, kind)));
    good.back().specimen = Specimen::good;
  }
  return test::expectedFrom(good);
}

bool tellApart(const std::optional<double>& a, const std::optional<double>& b) {
  return a.has_value() != b.has_value() || (a && std::abs(*a - *b) > 0.03);
}

/// After its first `readings` readings, as the window asks after each.
bool shiftedAfter(const Walk& whole, std::size_t readings, const ExpectedTable& expected) {
  Walk walk = whole;
  walk.readings.resize(readings);
  return shiftIn(walk, {}, expected, test::data()).has_value();
}

bool everShifted(const Walk& walk, const ExpectedTable& expected) {
  for (std::size_t n = 1; n <= walk.readings.size(); ++n)
    if (shiftedAfter(walk, n, expected)) return true;
  return false;
}

enum class Asked { afterEach, atTheEnd };

/// False alarms in so many walks of boards with none to three real faults.
void checkAlarms(int walks, Asked asked) {
  const auto seed = netmend::testSeed();
  Random random(seed);
  int alarms = 0;
  Values kind;
  ExpectedTable expected;
  for (int i = 0; i < walks; ++i) {
    if (i % walksOfOne == 0) {
      kind = drawConnector(random);
      expected = drawExpected(random, kind);
    }
    Values board = drawBoard(random, kind);
    for (int faults = i % 4; faults > 0; --faults)
      addFault(random, board);
    const Walk walk = walkReading(board);
    const bool alarm =
        asked == Asked::afterEach ? everShifted(walk, expected) : shiftedAfter(walk, board.size(), expected);
    alarms += alarm ? 1 : 0;
  }
  WARN("false alarms: " << alarms << " of " << walks << " walks, seed " << seed);
  CHECK(alarms == 0);
}

} // namespace

TEST_CASE("no shift is seen in walks of boards with up to three real faults") {
  checkAlarms(netmend::rounds(1000), Asked::atTheEnd);
}

TEST_CASE("no shift is seen after any reading of walks of boards with up to three real faults", "[.full]") {
  checkAlarms(4000, Asked::afterEach);
}

TEST_CASE("a shift is seen in nine walks of ten with four readings that could tell, and put right") {
  const auto seed = netmend::testSeed();
  Random random(seed);
  const int walks = netmend::rounds(1000);
  int asked = 0, found = 0, right = 0, pins = 0, pinsRight = 0;
  Values kind;
  ExpectedTable expected;
  for (int drawn = 0; asked < walks; ++drawn) {
    if (drawn % walksOfOne == 0) {
      kind = drawConnector(random);
      expected = drawExpected(random, kind);
    }
    const bool leftOut = random() % 2 == 0;
    const std::size_t last = kind.size() - 1;
    const std::size_t from = 1 + random() % (kind.size() - 4);
    const std::size_t until = leftOut ? last : kind.size();
    const auto neighbour = [&](std::size_t i) { return leftOut ? i + 1 : i - 1; };
    int telling = 0;
    for (std::size_t i = from; i < until; ++i)
      telling += tellApart(kind[i], kind[neighbour(i)]) ? 1 : 0;
    if (telling < 4) continue;
    ++asked;
    Values board = drawBoard(random, kind);
    if (asked % 2 == 0) addFault(random, board);
    const Walk walk = shifted(board, from, leftOut ? 1 : -1, until);
    const auto shift = shiftIn(walk, {}, expected, test::data());
    if (!shift) continue;
    ++found;
    right += (shift->kind == ShiftKind::pinLeftOut) == leftOut ? 1 : 0;
    const auto to = shiftedBack(walk, {}, *shift);
    for (std::size_t i = shift->firstReading; i < walk.readings.size(); ++i) {
      const std::size_t truth = i >= from ? neighbour(i) : i;
      ++pins;
      // Which of neighbours that read alike it was nobody can tell.
      const auto& put = to[i - shift->firstReading];
      pinsRight += put == walk.points[truth] || !tellApart(kind[truth], kind[neighbour(truth)]) ? 1 : 0;
    }
  }
  WARN("shifts found: " << found << " of " << asked << ", this way or that right " << right
                        << ", readings put "
                        << "right " << pinsRight << " of " << pins << ", seed " << seed);
  CHECK(found >= asked * 9 / 10);
  CHECK(right >= found * 99 / 100);
  CHECK(pinsRight >= pins * 97 / 100);
}

TEST_CASE("no shift is seen in the demo's walks, good or bad") {
  const std::filesystem::path device = std::filesystem::path(NETMEND_SOURCE_DIR) / "demo/device";
  std::vector<Walk> good;
  for (int i = 1; i <= 8; ++i)
    good.push_back(*readWalkFile(device / ("good-" + std::to_string(i) + ".netmend-walk.json")));
  for (std::size_t i = 0; i < good.size(); ++i) {
    auto others = good;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    CHECK_FALSE(everShifted(good[i], test::expectedFrom(others)));
  }
  CHECK_FALSE(everShifted(*readWalkFile(device / "faulty.netmend-walk.json"), test::expectedFrom(good)));
}
