// What a click finds.
#include <random>

#include "merging.h"
#include "netmend/sketch/sketch.h"
#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::test;

namespace {

constexpr Length reach{100'000};

SketchClick at(const Board& board, Point p, Side side = Side::top, Length within = reach) {
  return sketchClickAt(Lookup(board), p, side, within);
}
std::string pinAt(const Board& board, Point p, Side side = Side::top) {
  return pinLabel(board, at(board, p, side).pin);
}
Point nm(std::int64_t x, std::int64_t y) {
  return {Length(x), Length(y)};
}

/// A pad of 0.6 mm by 0.3 mm.
struct Pads : Told {
  Pads() : Told(Origin::user) {}
  PadId padOf(const std::string& label, Point where) {
    pin(label, "", where);
    return board.pads[board.pads.size() - 1].id;
  }
  template <class Change> void change(PadId id, Change how) { with(board.pads, id, how); }
};

} // namespace

TEST_CASE("a click says where it was, and how far it may slip") {
  const SketchClick click = at(Board(), mm(3, 4), Side::bottom, Length(7));
  CHECK(click.at == mm(3, 4));
  CHECK(click.side == Side::bottom);
  CHECK(click.reach == Length(7));
  CHECK_FALSE(click.pin);
  CHECK_FALSE(click.part);
}

TEST_CASE("a click finds the pad in it and around it, up to its reach") {
  Pads drawn;
  drawn.padOf("J1.1", mm(0, 0));
  for (const Point p : {nm(0, 0), nm(299'999, 149'999), nm(400'000, 0), nm(-400'000, 0), nm(0, 250'000),
                        nm(0, -250'000), nm(360'000, 230'000)}) // the last off a corner: 60, 80, 100
    CHECK(pinAt(drawn.board, p) == "J1.1");
  for (const Point p : {nm(400'001, 0), nm(-400'001, 0), nm(0, 250'001), nm(0, -250'001),
                        nm(360'001, 230'000), nm(360'000, 230'001), mm(50, 50)})
    CHECK(pinAt(drawn.board, p).empty());
  CHECK(at(drawn.board, mm(0, 0)).part == partCalled(drawn.board, "J1").id);
  drawn.padOf("TP1", mm(5, 0));
  CHECK(at(drawn.board, mm(5, 0)).pin == pinCalled(drawn.board, "TP1").id);
  CHECK_FALSE(at(drawn.board, mm(5, 0)).part);
}

TEST_CASE("of several pads the nearest is found, of those that are hit the one whose middle is nearer") {
  Pads drawn;
  drawn.padOf("J1.1", mm(0, 0));
  drawn.padOf("J1.2", mm(0.7, 0)); // 0.1 mm between them
  CHECK(pinAt(drawn.board, nm(349'999, 0)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(350'001, 0)) == "J1.2");
  drawn.padOf("J1.3", mm(0, 0.1)); // over the first one
  CHECK(pinAt(drawn.board, nm(0, 49'999)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(0, 50'001)) == "J1.3");
}

TEST_CASE("pads are found on the sides that they are on") {
  for (const auto& [padReach, top, bottom] : {std::tuple{PadReach::top, true, false},
                                              {PadReach::bottom, false, true},
                                              {PadReach::topAndBottom, true, true},
                                              {PadReach::allLayers, true, true}}) {
    Pads drawn;
    drawn.change(drawn.padOf("J1.1", mm(0, 0)), [of = padReach](Pad& pad) { pad.reach = fromUser(of); });
    CHECK(bool(at(drawn.board, mm(0, 0), Side::top).pin) == top);
    CHECK(bool(at(drawn.board, mm(0, 0), Side::bottom).pin) == bottom);
  }
  Pads drawn;
  drawn.change(drawn.padOf("J1.1", mm(0, 0)), [](Pad& pad) { pad.reach = {}; });
  CHECK(at(drawn.board, mm(0, 0), Side::top).pin);
  CHECK(at(drawn.board, mm(0, 0), Side::bottom).pin);
}

TEST_CASE("a pad of unknown shape or size is a point, one without a place is nowhere") {
  Pads drawn;
  const PadId pad = drawn.padOf("J1.1", mm(0, 0));
  drawn.change(pad, [](Pad& one) { one.shape = {}; });
  CHECK(pinAt(drawn.board, nm(0, 100'000)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(0, 100'001)).empty());
  drawn.change(pad, [](Pad& one) { one.size = {}; });
  CHECK(pinAt(drawn.board, nm(60'000, 80'000)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(60'000, 80'001)).empty());
  drawn.change(pad, [](Pad& one) { one.position = {}; });
  CHECK(pinAt(drawn.board, mm(0, 0)).empty());
}

TEST_CASE("round, oval, rounded and polygonal pads are found where their copper is") {
  Pads drawn;
  const PadId pad = drawn.padOf("J1.1", mm(0, 0));
  const auto shape = [&](PadShape of) { drawn.change(pad, [&](Pad& one) { one.shape = fromUser(of); }); };
  shape(PadShape::circle); // 0.6 mm across
  CHECK(pinAt(drawn.board, nm(0, 400'000)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(0, 400'001)).empty());
  CHECK(pinAt(drawn.board, nm(240'000, 320'000)) == "J1.1"); // 400 away
  CHECK(pinAt(drawn.board, nm(240'001, 320'000)).empty());
  shape(PadShape::oval); // two round ends of 0.15 mm at 0.15 mm from the middle
  CHECK(pinAt(drawn.board, nm(400'000, 0)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(400'001, 0)).empty());
  CHECK(pinAt(drawn.board, nm(300'000, 200'000)) == "J1.1"); // 150, 200, 250
  CHECK(pinAt(drawn.board, nm(300'001, 200'000)).empty());
  shape(PadShape::roundedRectangle);
  drawn.change(pad, [](Pad& one) { one.cornerRadius = Length(50'000); });
  CHECK(pinAt(drawn.board, nm(340'000, 220'000)) == "J1.1"); // 90, 120, 150
  CHECK(pinAt(drawn.board, nm(340'001, 220'000)).empty());
  shape(PadShape::polygon);
  drawn.change(pad, [](Pad& one) { one.polygon = {mm(-3, 0), mm(3, 0), mm(0, 9)}; });
  CHECK(pinAt(drawn.board, mm(0, 8)) == "J1.1");
  CHECK(pinAt(drawn.board, mm(0, 9.1)) == "J1.1");
  CHECK(pinAt(drawn.board, nm(0, 9'100'001)).empty());
  CHECK(pinAt(drawn.board, mm(2, 4)).empty());
}

TEST_CASE("anywhere around a turned pad a click finds it as near as it is") {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> place(-2, 2), turn(0, 360), side(0.2, 2);
  for (int i = 0; i < rounds(2'000, 200); ++i) {
    Pads drawn;
    const double w = side(random), h = side(random), angle = turn(random) * 0.017453292519943295;
    drawn.change(drawn.padOf("J1.1", mm(7, -3)), [&](Pad& pad) {
      pad.size = fromUser(Size{Length::fromMm(w), Length::fromMm(h)});
      pad.rotation = Degrees(angle / 0.017453292519943295);
    });
    const double x = place(random), y = place(random);
    // Turned back the pad lies straight.
    const double u = std::cos(angle) * x + std::sin(angle) * y, v = std::cos(angle) * y - std::sin(angle) * x;
    const double away = std::hypot(std::max(0.0, std::abs(u) - w / 2), std::max(0.0, std::abs(v) - h / 2));
    if (std::abs(away - 0.1) < 1e-5) continue;
    CHECK(bool(at(drawn.board, mm(7 + x, -3 + y)).pin) == (away < 0.1));
  }
}

TEST_CASE("a pin goes before a part's body, and of bodies the smallest is found") {
  Pads drawn;
  const auto body = [&](const std::string& reference, const Ring& ring, Fact<Side> side) {
    Part part;
    part.body = fromUser(ring);
    part.side = side;
    return drawn.part(reference, part);
  };
  const PartId shield = body("SH1", box(-10, -10, 10, 10), fromUser(Side::top));
  const PartId chip = body("U1", box(-2, -2, 2, 2), fromUser(Side::top));
  const PartId below = body("C1", box(-1, -1, 1, 1), fromUser(Side::bottom));
  const PartId either = body("X1", box(5, 5, 6, 6), {});
  drawn.part("R9");
  drawn.padOf("J1.1", mm(0, 0));
  CHECK(at(drawn.board, mm(0, 0)).part == partCalled(drawn.board, "J1").id);
  CHECK(at(drawn.board, mm(0.9, 0)).part == chip);
  CHECK_FALSE(at(drawn.board, mm(0.9, 0)).pin);
  CHECK(at(drawn.board, mm(1.999, 1.999)).part == chip);
  CHECK(at(drawn.board, mm(2.001, 0)).part == shield);
  CHECK(at(drawn.board, mm(9.999, 0)).part == shield);
  CHECK_FALSE(at(drawn.board, mm(10.001, 0)).part); // a body is not reached for
  CHECK(at(drawn.board, mm(0.9, 0), Side::bottom).part == below);
  CHECK(at(drawn.board, mm(5.5, 5.5)).part == either);
  CHECK(at(drawn.board, mm(5.5, 5.5), Side::bottom).part == either);
  CHECK_FALSE(at(drawn.board, mm(8, 8), Side::bottom).part);
}
