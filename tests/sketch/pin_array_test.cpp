#include "netmend/sketch/pin_array.h"

#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include <catch2/catch.hpp>

#include "support/millimetres.h"

using namespace netmend;
using namespace netmend::test;

namespace {

using Names = std::vector<std::string>;

PinArray inRows(std::size_t pins, std::size_t rows, PinOrder order = PinOrder::alternating) {
  PinArray array;
  array.pins = pins;
  array.rows = rows;
  array.order = order;
  return array;
}
PinArray onFourSides(std::size_t pins) {
  PinArray array;
  array.form = PinForm::fourSides;
  array.pins = pins;
  return array;
}
PinArray inGrid(std::size_t rows, std::size_t columns) {
  PinArray array;
  array.form = PinForm::grid;
  array.pins = rows * columns;
  array.rows = rows;
  return array;
}

PlacedArray placedBy(const PinArray& array, const PinClicks& clicks) {
  const auto placed = placeArray(array, clicks);
  REQUIRE(placed);
  return *placed;
}

/// Where each pin lies, in millimetres; to the nanometre by itself, to ten where it was turned.
void checkPlaces(const PlacedArray& placed, const std::vector<std::pair<std::string, Point>>& expected,
                 std::int64_t within = 0) {
  REQUIRE(placed.pads.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    INFO(i << ": " << placed.pads[i].name << " at " << placed.pads[i].at.x.mm() << ", "
           << placed.pads[i].at.y.mm());
    CHECK(placed.pads[i].name == expected[i].first);
    CHECK(distance(placed.pads[i].at, expected[i].second).nm <= within);
  }
}
void checkRing(const Ring& ring, const Ring& expected, std::int64_t within = 0) {
  REQUIRE(ring.size() == expected.size());
  for (std::size_t i = 0; i < ring.size(); ++i) {
    INFO(i << ": " << ring[i].x.mm() << ", " << ring[i].y.mm());
    CHECK(distance(ring[i], expected[i]).nm <= within);
  }
}

Point turned(Point p, double degrees) {
  const double a = degrees * std::numbers::pi / 180.0;
  return mm(p.x.mm() * std::cos(a) - p.y.mm() * std::sin(a), p.x.mm() * std::sin(a) + p.y.mm() * std::cos(a));
}
Point mirrored(Point p) {
  return {-p.x, p.y};
}

const std::vector<std::pair<std::string, Point>> soic8{
    {"1", mm(-2.7, 1.905)}, {"2", mm(-2.7, 0.635)}, {"3", mm(-2.7, -0.635)}, {"4", mm(-2.7, -1.905)},
    {"5", mm(2.7, -1.905)}, {"6", mm(2.7, -0.635)}, {"7", mm(2.7, 0.635)},   {"8", mm(2.7, 1.905)}};
const std::vector<std::pair<std::string, Point>> quad16{
    {"1", mm(-1.9, 0.75)},  {"2", mm(-1.9, 0.25)},  {"3", mm(-1.9, -0.25)}, {"4", mm(-1.9, -0.75)},
    {"5", mm(-0.75, -1.9)}, {"6", mm(-0.25, -1.9)}, {"7", mm(0.25, -1.9)},  {"8", mm(0.75, -1.9)},
    {"9", mm(1.9, -0.75)},  {"10", mm(1.9, -0.25)}, {"11", mm(1.9, 0.25)},  {"12", mm(1.9, 0.75)},
    {"13", mm(0.75, 1.9)},  {"14", mm(0.25, 1.9)},  {"15", mm(-0.25, 1.9)}, {"16", mm(-0.75, 1.9)}};
const std::vector<std::pair<std::string, Point>> grid2x3{{"A1", mm(-0.8, 0.4)}, {"A2", mm(0, 0.4)},
                                                         {"A3", mm(0.8, 0.4)},  {"B1", mm(-0.8, -0.4)},
                                                         {"B2", mm(0, -0.4)},   {"B3", mm(0.8, -0.4)}};

} // namespace

TEST_CASE("pins of rows are named in each order, and sorted by their numbers") {
  CHECK(pinNames(inRows(4, 1)) == Names{"1", "2", "3", "4"});
  CHECK(oppositePin(inRows(4, 1)) == "4");
  // A single row knows one order only.
  CHECK(pinNames(inRows(3, 1, PinOrder::lettered)) == Names{"1", "2", "3"});
  CHECK(pinNames(inRows(3, 1, PinOrder::round)) == Names{"1", "2", "3"});
  CHECK(pinNames(inRows(12, 2)) == Names{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"});
  CHECK(oppositePin(inRows(12, 2)) == "12");
  CHECK(oppositePin(inRows(12, 2, PinOrder::along)) == "12");
  CHECK(oppositePin(inRows(12, 2, PinOrder::round)) == "7");
  CHECK(pinNames(inRows(6, 2, PinOrder::lettered)) == Names{"A1", "A2", "A3", "B1", "B2", "B3"});
  CHECK(oppositePin(inRows(6, 2, PinOrder::lettered)) == "B3");
  CHECK(oppositePin(inRows(9, 3, PinOrder::along)) == "9");
  CHECK(firstPin(inRows(6, 2, PinOrder::lettered)) == "A1");
  CHECK(firstPin(inRows(6, 2, PinOrder::round)) == "1");
}

TEST_CASE("pins on four sides are counted on from side to side") {
  CHECK(pinNames(onFourSides(8)) == Names{"1", "2", "3", "4", "5", "6", "7", "8"});
  CHECK(oppositePin(onFourSides(8)) == "5");
  CHECK(oppositePin(onFourSides(100)) == "51");
}

TEST_CASE("rows of a grid have JEDEC's letters") {
  // JEP95: rows are lettered without I, O, Q, S, X and Z; after Y comes AA.
  const Names rows{"A",  "B",  "C",  "D",  "E",  "F",  "G",  "H",  "J",  "K",  "L",  "M",  "N",  "P",
                   "R",  "T",  "U",  "V",  "W",  "Y",  "AA", "AB", "AC", "AD", "AE", "AF", "AG", "AH",
                   "AJ", "AK", "AL", "AM", "AN", "AP", "AR", "AT", "AU", "AV", "AW", "AY", "BA", "BB"};
  Names expected;
  for (const auto& row : rows)
    for (const char* column : {"1", "2"})
      expected.push_back(row + column);
  CHECK(pinNames(inGrid(rows.size(), 2)) == expected);
  CHECK(pinNames(inRows(84, 42, PinOrder::lettered)) == expected);
  CHECK(oppositePin(inGrid(20, 20)) == "Y20");
  CHECK(oppositePin(inGrid(21, 20)) == "AA20");
}

TEST_CASE("a key has no pin, and keeps its place and number") {
  PinArray array = inRows(10, 2);
  array.left = {"4", "77"};
  CHECK(pinNames(array) == Names{"1", "2", "3", "5", "6", "7", "8", "9", "10"});
  const auto placed = placedBy(array, {mm(0, 0), mm(8, -2), {}, Side::top, false});
  REQUIRE(placed.pads.size() == 9);
  CHECK(placed.pads[2].name == "3");
  CHECK(placed.pads[2].at == mm(2, 0));
  CHECK(placed.pads[3].name == "5");
  CHECK(placed.pads[3].at == mm(4, 0));
  // The clicked corners are asked for by name, also where there is no pin.
  array.left = {"1", "10"};
  CHECK(pinNames(array).front() == "2");
  CHECK(firstPin(array) == "1");
  CHECK(oppositePin(array) == "10");
}

TEST_CASE("a single row lies as it is clicked, with its body behind it") {
  PinClicks clicks{mm(0, 0), mm(4, 0), {}, Side::top, false};
  auto placed = placedBy(inRows(5, 1), clicks);
  checkPlaces(placed, {{"1", mm(0, 0)}, {"2", mm(1, 0)}, {"3", mm(2, 0)}, {"4", mm(3, 0)}, {"5", mm(4, 0)}});
  CHECK(placed.pitch == Length(1'000'000));
  CHECK_FALSE(placed.across);
  CHECK(placed.middle == mm(2, 0));
  for (const auto& pad : placed.pads) {
    CHECK(pad.size == Size{Length(600'000), Length(1'600'000)}); // 0.6 and 1.6 of the pitch
    CHECK(pad.turn == Degrees(0));
  }
  checkRing(placed.body, {mm(-1, 0.8), mm(5, 0.8), mm(5, 4), mm(-1, 4)});
  clicks.otherWay = true;
  checkRing(placedBy(inRows(5, 1), clicks).body, {mm(-1, -0.8), mm(5, -0.8), mm(5, -4), mm(-1, -4)});
  // From below it is turned over: what is left of the row lies on the other side.
  clicks.otherWay = false;
  clicks.side = Side::bottom;
  placed = placedBy(inRows(5, 1), clicks);
  checkPlaces(placed, {{"1", mm(0, 0)}, {"2", mm(1, 0)}, {"3", mm(2, 0)}, {"4", mm(3, 0)}, {"5", mm(4, 0)}});
  checkRing(placed.body, {mm(-1, -0.8), mm(5, -0.8), mm(5, -4), mm(-1, -4)});
}

TEST_CASE("pads of a single row are turned with it, the same copper within half a turn") {
  const auto turnOf = [](Point end) {
    return placedBy(inRows(2, 1), {mm(0, 0), end, {}, Side::top, false}).pads[0].turn.value;
  };
  CHECK(turnOf(mm(0, 4)) == 90.0);
  CHECK(turnOf(mm(-4, 0)) == 0.0);
  CHECK(turnOf(mm(0, -4)) == 90.0);
  CHECK(turnOf(mm(3, 3)) == 45.0);
  CHECK(turnOf(mm(-3, 3)) == 135.0);
  CHECK(turnOf(turned(mm(4, 0), 30.25)) == Approx(30.25).epsilon(1e-6));
  const auto below = placedBy(inRows(2, 1), {mm(0, 0), mm(3, 3), {}, Side::bottom, false});
  CHECK(below.pads[0].turn.value == 45.0);
}

TEST_CASE("pads are guessed from the pitch unless they are given") {
  const auto padOf = [](PinArray array, double pitch) {
    return placedBy(array, {mm(0, 0), mm(pitch, 0), {}, Side::top, false}).pads[0].size;
  };
  const auto size = [](double w, double h) { return Size{Length::fromMm(w), Length::fromMm(h)}; };
  CHECK(padOf(inRows(2, 1), 0.3) == size(0.18, 0.6)); // across at least 0.6 mm
  CHECK(padOf(inRows(2, 1), 0.4) == size(0.24, 0.64));
  CHECK(padOf(inRows(2, 1), 2.54) == size(1.52, 2.0)); // and at most 2 mm
  CHECK(padOf(inGrid(1, 2), 0.8) == size(0.48, 0.48));
  PinArray array = inRows(2, 1);
  array.drill = size(1.0, 1.0);
  CHECK(padOf(array, 2.54) == size(1.52, 1.52));
  array.drill = size(1.2, 1.2); // a ring of 0.2 mm around the hole
  CHECK(padOf(array, 2.54) == size(1.6, 1.6));
  array.pad = size(1.7, 1.8);
  CHECK(padOf(array, 2.54) == size(1.7, 1.8));
}

TEST_CASE("two rows: the usual pitch, or a given one, tells which way they run") {
  PinClicks clicks{mm(0, 0), mm(2, -1), {}, Side::top, false};
  const std::vector<std::pair<std::string, Point>> across{{"1", mm(0, 0)}, {"2", mm(0, -1)},
                                                          {"3", mm(1, 0)}, {"4", mm(1, -1)},
                                                          {"5", mm(2, 0)}, {"6", mm(2, -1)}};
  const std::vector<std::pair<std::string, Point>> down{{"1", mm(0, 0)},    {"2", mm(2, 0)},
                                                        {"3", mm(0, -0.5)}, {"4", mm(2, -0.5)},
                                                        {"5", mm(0, -1)},   {"6", mm(2, -1)}};
  // Both 1.0 and 0.5 mm are usual: along the picture's rows first.
  auto placed = placedBy(inRows(6, 2), clicks);
  checkPlaces(placed, across);
  CHECK(placed.pitch == Length(1'000'000));
  CHECK(placed.across == Length(1'000'000));
  CHECK(placed.middle == mm(1, -0.5));
  clicks.otherWay = true;
  placed = placedBy(inRows(6, 2), clicks);
  checkPlaces(placed, down);
  CHECK(placed.pitch == Length(500'000));
  CHECK(placed.across == Length(2'000'000));
  for (const auto& pad : placed.pads)
    CHECK(pad.turn == Degrees(90));
  // The pitch that was given says so at once, and moves no clicked pin.
  clicks.otherWay = false;
  PinArray array = inRows(6, 2);
  array.pitch = Length(520'000);
  checkPlaces(placedBy(array, clicks), down);
  array.pitch = Length(900'000);
  checkPlaces(placedBy(array, clicks), across);
  // 1.27 mm is usual, 0.45 is not.
  checkPlaces(placedBy(inRows(6, 2), {mm(0, 0), mm(0.9, 2.54), {}, Side::top, false}),
              {{"1", mm(0, 0)},
               {"2", mm(0.9, 0)},
               {"3", mm(0, 1.27)},
               {"4", mm(0.9, 1.27)},
               {"5", mm(0, 2.54)},
               {"6", mm(0.9, 2.54)}});
}

TEST_CASE("two rows one after the other, and by letters") {
  const PinClicks clicks{mm(0, 0), mm(2, -1), {}, Side::top, false};
  checkPlaces(placedBy(inRows(6, 2, PinOrder::along), clicks), {{"1", mm(0, 0)},
                                                                {"2", mm(1, 0)},
                                                                {"3", mm(2, 0)},
                                                                {"4", mm(0, -1)},
                                                                {"5", mm(1, -1)},
                                                                {"6", mm(2, -1)}});
  checkPlaces(placedBy(inRows(6, 2, PinOrder::lettered), clicks), {{"A1", mm(0, 0)},
                                                                   {"A2", mm(1, 0)},
                                                                   {"A3", mm(2, 0)},
                                                                   {"B1", mm(0, -1)},
                                                                   {"B2", mm(1, -1)},
                                                                   {"B3", mm(2, -1)}});
  checkPlaces(
      placedBy(inRows(6, 3), {mm(0, 0), mm(1, 2), {}, Side::top, false}),
      {{"1", mm(0, 0)}, {"2", mm(0, 1)}, {"3", mm(0, 2)}, {"4", mm(1, 0)}, {"5", mm(1, 1)}, {"6", mm(1, 2)}});
}

// IPC-7351, zero component orientation: pin 1 at the upper left, counted counter-clockwise as seen from the
// part's side; grid arrays have A1 at the upper left (JEP95). The same turned, and from below mirrored.
TEST_CASE("packages are counted counter-clockwise at each turn and on both sides") {
  struct Package {
    PinArray array;
    const std::vector<std::pair<std::string, Point>>* places;
    std::size_t opposite; ///< place of the pin that is clicked second
  };
  for (const auto& [array, places, opposite] :
       {Package{inRows(8, 2, PinOrder::round), &soic8, 4}, Package{onFourSides(16), &quad16, 8},
        Package{inGrid(2, 3), &grid2x3, 5}})
    for (const double turn : {0.0, 90.0, 180.0, 270.0})
      for (const Side side : {Side::top, Side::bottom}) {
        INFO("pins " << array.pins << ", turn " << turn << ", bottom " << (side == Side::bottom));
        CHECK(oppositePin(array) == (*places)[opposite].first);
        auto expected = *places;
        for (auto& [name, at] : expected) {
          at = turned(at, turn);
          if (side == Side::bottom) at = mirrored(at);
        }
        const auto placed =
            placedBy(array, {expected.front().second, expected[opposite].second, {}, side, false});
        checkPlaces(placed, expected, 2);
        CHECK(distance(placed.middle, {}).nm <= 2);
      }
}

TEST_CASE("what is known of packages besides places: pitch, breadth, turns and body") {
  auto placed =
      placedBy(inRows(8, 2, PinOrder::round), {soic8[0].second, soic8[4].second, {}, Side::top, false});
  CHECK(placed.pitch == Length(1'270'000));
  CHECK(placed.across == Length(5'400'000));
  CHECK(placed.pads[0].turn == Degrees(90));
  CHECK(placed.pads[0].size == Size{Length(760'000), Length(2'000'000)});
  // Between the rows' pads, and a pitch beyond the last pins.
  checkRing(placed.body, {mm(-1.7, 3.175), mm(-1.7, -3.175), mm(1.7, -3.175), mm(1.7, 3.175)}, 1);
  placed = placedBy(onFourSides(16), {quad16[0].second, quad16[8].second, {}, Side::top, false});
  CHECK(placed.pitch == Length(500'000));
  CHECK(placed.across == Length(3'800'000));
  for (std::size_t i = 0; i < 16; ++i)
    CHECK(placed.pads[i].turn == Degrees(i / 4 % 2 == 0 ? 90 : 0));
  CHECK(placed.pads[0].size == Size{Length(300'000), Length(800'000)});
  checkRing(placed.body, {mm(-1.5, 1.5), mm(-1.5, -1.5), mm(1.5, -1.5), mm(1.5, 1.5)}, 1);
  placed = placedBy(inGrid(2, 3), {grid2x3[0].second, grid2x3[5].second, {}, Side::top, false});
  checkRing(placed.body, {mm(-1.6, 1.2), mm(1.6, 1.2), mm(1.6, -1.2), mm(-1.6, -1.2)}, 1);
  CHECK(placed.pads[0].turn == Degrees(0));
}

TEST_CASE("the other way of a package is counted clockwise") {
  const auto placed = placedBy(inRows(4, 2, PinOrder::round), {mm(0, 0), mm(3, -2), {}, Side::top, true});
  checkPlaces(placed, {{"1", mm(0, 0)}, {"2", mm(3, 0)}, {"3", mm(3, -2)}, {"4", mm(0, -2)}});
}

TEST_CASE("rows too near each other have their body over the pads") {
  // 1.27 mm apart with pads of 2 mm
  const auto placed =
      placedBy(inRows(4, 2, PinOrder::along), {mm(0, 0), mm(2.54, 1.27), {}, Side::top, false});
  checkRing(placed.body, {mm(-2.54, -1), mm(5.08, -1), mm(5.08, 2.27), mm(-2.54, 2.27)});
}

TEST_CASE("pins in holes have their body all round") {
  PinArray array = inRows(4, 2);
  array.drill = Size{Length(1'000'000), Length(1'000'000)};
  const auto placed = placedBy(array, {mm(0, 0), mm(2.54, 2.54), {}, Side::top, false});
  checkRing(placed.body, {mm(-2.54, -2.54), mm(5.08, -2.54), mm(5.08, 5.08), mm(-2.54, 5.08)});
}

TEST_CASE("rows at an angle lie by the end of the first row") {
  const auto grid = [](double angle, Side side) {
    const std::vector<std::pair<std::string, Point>> straight{{"1", mm(0, 0)}, {"2", mm(0, -1.5)},
                                                              {"3", mm(1, 0)}, {"4", mm(1, -1.5)},
                                                              {"5", mm(2, 0)}, {"6", mm(2, -1.5)}};
    auto out = straight;
    for (auto& [name, at] : out) {
      at = turned(at, angle);
      if (side == Side::bottom) at = mirrored(at);
    }
    return out;
  };
  for (const double angle : {17.0, 100.0, -63.5, 181.0})
    for (const Side side : {Side::top, Side::bottom}) {
      INFO(angle);
      const auto expected = grid(angle, side);
      const auto placed =
          placedBy(inRows(6, 2), {expected[0].second, expected[5].second, expected[4].second, side, false});
      checkPlaces(placed, expected, 3);
      const double turn = std::fmod((side == Side::top ? angle : -angle) + 540.0, 180.0);
      CHECK(placed.pads[0].turn.value == Approx(turn).margin(1e-4));
      CHECK(placed.pitch.nm == Approx(1'000'000).margin(2));
      REQUIRE(placed.across);
      CHECK(placed.across->nm == Approx(1'500'000).margin(2));
    }
}

TEST_CASE("three rows at an angle lie at even steps") {
  std::vector<std::pair<std::string, Point>> expected;
  for (const int row : {0, 1, 2})
    for (const int column : {0, 1})
      expected.emplace_back(std::to_string(2 * row + column + 1), turned(mm(column, 1.5 * row), 25));
  const PinClicks clicks{expected[0].second, expected[5].second, expected[1].second, Side::top, false};
  const auto placed = placedBy(inRows(6, 3, PinOrder::along), clicks);
  checkPlaces(placed, expected, 3);
  REQUIRE(placed.across);
  CHECK(placed.across->nm == Approx(3'000'000).margin(2));
}

TEST_CASE("a lone pin in each row, or on each side, lies where it is clicked") {
  const Point a = mm(0, 0), b = mm(3, 0.5), middle = mm(1.5, 0.25);
  for (const bool otherWay : {false, true})
    for (const PinArray& array :
         {inRows(2, 2), inRows(2, 2, PinOrder::round), inRows(2, 2, PinOrder::along)}) {
      const auto placed = placedBy(array, {a, b, {}, Side::top, otherWay});
      checkPlaces(placed, {{"1", a}, {"2", b}}, 1);
      CHECK(distance(placed.middle, middle).nm <= 1);
    }
  checkPlaces(placedBy(inGrid(1, 3), {mm(0, 0), mm(4, 0.02), {}, Side::top, false}),
              {{"A1", mm(0, 0)}, {"A2", mm(2, 0.01)}, {"A3", mm(4, 0.02)}}, 1);
  checkPlaces(placedBy(inGrid(3, 1), {mm(0, 0), mm(4, 0.02), {}, Side::top, false}),
              {{"A1", mm(0, 0)}, {"B1", mm(2, 0.01)}, {"C1", mm(4, 0.02)}}, 1);
  const std::vector<std::pair<std::string, Point>> four{
      {"1", mm(-1, 0)}, {"2", mm(0, -1)}, {"3", mm(1, 0)}, {"4", mm(0, 1)}};
  checkPlaces(placedBy(onFourSides(4), {mm(-1, 0), mm(1, 0), {}, Side::top, false}), four, 1);
  auto below = four;
  for (auto& [name, at] : below)
    at = mirrored(at);
  checkPlaces(placedBy(onFourSides(4), {mm(1, 0), mm(-1, 0), {}, Side::bottom, false}), below, 1);
  PinArray given = onFourSides(4);
  given.pitch = Length(400'000);
  CHECK(placedBy(given, {mm(-1, 0), mm(1, 0), {}, Side::top, false}).pitch == Length(400'000));
}

TEST_CASE("tabs are soldered at both ends of the body") {
  PinArray array = inRows(5, 1);
  array.tabs = true;
  const auto placed = placedBy(array, {mm(0, 0), mm(4, 0), {}, Side::top, false});
  REQUIRE(placed.pads.size() == 7);
  CHECK(pinNames(array).size() == 5);
  // The body reaches from -1 to 5 mm along and from 0.8 to 4 mm across.
  CHECK(placed.pads[5].name == "MP1");
  CHECK(placed.pads[5].at == mm(-1.5, 2.4));
  CHECK(placed.pads[5].size == Size{Length(1'000'000), Length(1'600'000)});
  CHECK(placed.pads[6].name == "MP2");
  CHECK(placed.pads[6].at == mm(5.5, 2.4));
  CHECK(placed.pads[6].turn == Degrees(0));
}

TEST_CASE("arrays that there are not are refused, and clicks on one place") {
  CHECK_FALSE(check(inRows(0, 1)));
  CHECK(check(inRows(1, 1)));
  CHECK(check(inRows(10'000, 1)));
  const auto tooMany = check(inRows(10'001, 1));
  REQUIRE_FALSE(tooMany);
  CHECK(tooMany.error().text() == "a part has from 1 to 10000 pins (found 10001)");
  CHECK(check(onFourSides(8)));
  CHECK_FALSE(check(onFourSides(6)));
  CHECK_FALSE(check(inRows(7, 2)));
  CHECK_FALSE(check(inRows(7, 0)));
  CHECK_FALSE(check(inRows(2, 4)));
  CHECK(check(inRows(6, 2, PinOrder::round)));
  CHECK_FALSE(check(inRows(6, 3, PinOrder::round)));
  PinArray grid = inGrid(3, 2); // a grid has letters, whatever order it is given
  grid.order = PinOrder::round;
  CHECK(check(grid));
  PinArray none = inRows(2, 1);
  none.left = {"2", "1"};
  CHECK_FALSE(check(none));
  CHECK_FALSE(placeArray(none, {mm(0, 0), mm(1, 0), {}, Side::top, false}));
  none.left = {"2"};
  CHECK(check(none));

  const PinClicks at{mm(1, 1), mm(1.01, 1), {}, Side::top, false};
  const auto same = placeArray(inRows(2, 1), at);
  REQUIRE_FALSE(same);
  CHECK(same.error().text() == "both clicks are at the same place");
  CHECK(placeArray(inRows(2, 1), {mm(1, 1), mm(1.010001, 1), {}, Side::top, false}));
  CHECK_FALSE(placeArray(inRows(4, 2), {mm(1, 1), mm(2, 2), mm(1.01, 1), Side::top, false}));
  CHECK(placeArray(inRows(4, 2), {mm(1, 1), mm(2, 2), mm(1.02, 1), Side::top, false}));
}
