#include <cmath>
#include <numbers>
#include <random>

#include <catch2/catch.hpp>

#include "board/exchange/copper_shape.h"
#include "board/exchange/pen.h"
#include "measure.h"
#include "netmend/base/plane.h"
#include "support/seed.h"

using namespace netmend;

namespace {

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

double areaOf(const Polygon& polygon) {
  double area = std::abs(squareMillimetres(polygon.outer));
  for (const Ring& hole : polygon.holes)
    area -= std::abs(squareMillimetres(hole));
  return area;
}

constexpr double pi = std::numbers::pi;

} // namespace

TEST_CASE(
    "a pen along a square adds its sides and a disc, and takes as much off a hole but for the corners") {
  const Ring square{mm(0, 0), mm(10, 0), mm(10, 10), mm(0, 10)};
  const Ring hole{mm(4, 4), mm(6, 4), mm(6, 6), mm(4, 6)};
  const auto drawn = penDrawn({square, {hole}}, Length(250'000));
  REQUIRE(drawn);
  REQUIRE(drawn->holes.size() == 1);
  CHECK(areaOf(*drawn) == Approx(100 + 4 * 10 * 0.25 + pi * 0.0625 - 1.5 * 1.5).margin(0.001));
  CHECK(boxOf(drawn->outer).size().width.mm() == Approx(10.5).margin(0.0001));
  CHECK(boxOf(drawn->holes[0]).size().width.mm() == Approx(1.5).margin(0.0001));
}

TEST_CASE("a pen closes what is narrower than it, and leaves what is wider") {
  // Two squares of 4 mm joined by a bar along their upper edge; between them a gap open to below.
  const auto shape = [](double gap) {
    return Polygon{{mm(0, 0), mm(4, 0), mm(4, 3), mm(4 + gap, 3), mm(4 + gap, 0), mm(8 + gap, 0),
                    mm(8 + gap, 4), mm(0, 4)},
                   {}};
  };
  const auto open = penDrawn(shape(0.6), Length(250'000));
  REQUIRE(open);
  CHECK_FALSE(insideRing(open->outer, vecOf(mm(4.3, 1))));
  const auto closed = penDrawn(shape(0.4), Length(250'000));
  REQUIRE(closed);
  CHECK(insideRing(closed->outer, vecOf(mm(4.2, 1))));
  CHECK(areaOf(*closed) < areaOf(*open));
  // A hole no wider than the pen is gone.
  const Ring square{mm(0, 0), mm(10, 0), mm(10, 10), mm(0, 10)};
  const Ring slot{mm(4, 4), mm(4.4, 4), mm(4.4, 6), mm(4, 6)};
  CHECK(penDrawn({square, {slot}}, Length(250'000))->holes.empty());
  CHECK(penDrawn({square, {slot}}, Length(150'000))->holes.size() == 1);
}

TEST_CASE("a pen along a line, an angle and a closed way covers what it should") {
  const auto line = penStroke({mm(0, 0), mm(10, 0)}, false, Length(500'000));
  REQUIRE(line);
  CHECK(areaOf(*line) == Approx(10 + pi * 0.25).margin(0.002));
  const auto angle = penStroke({mm(0, 0), mm(10, 0), mm(10, 10)}, false, Length(500'000));
  REQUIRE(angle);
  CHECK(areaOf(*angle) == Approx(2 * 10 + pi * 0.25 - 0.25 + pi / 16).margin(0.002));
  const auto frame = penStroke({mm(0, 0), mm(10, 0), mm(10, 10), mm(0, 10)}, true, Length(500'000));
  REQUIRE(frame);
  CHECK(frame->holes.size() == 1);
  CHECK(areaOf(*frame) == Approx(100 + 4 * 10 * 0.5 + pi * 0.25 - 81).margin(0.002));
}

TEST_CASE(
    "a point is covered by the pen exactly if it is in the polygon or no farther than the pen reaches") {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  std::mt19937_64 dice(seed);
  std::uniform_real_distribution<double> radius(1.0, 6.0), place(-7.5, 7.5);
  for (int round = 0; round < 200; ++round) {
    Ring star; // spikes and notches of all kinds, and no crossing
    const int corners = 5 + static_cast<int>(dice() % 30);
    for (int i = 0; i < corners; ++i) {
      const double r = radius(dice), a = 2 * pi * i / corners;
      star.push_back(mm(r * std::cos(a), r * std::sin(a)));
    }
    const double reach = 0.05 + 0.1 * static_cast<double>(dice() % 10);
    const auto drawn = penDrawn({star, {}}, Length::fromMm(reach));
    REQUIRE(drawn);
    for (int k = 0; k < 100; ++k) {
      const Point p = mm(place(dice), place(dice));
      double nearest = 1e9;
      for (std::size_t i = 0; i < star.size(); ++i) {
        const Point a = star[i], b = star[(i + 1) % star.size()];
        const double ux = (b - a).x.mm(), uy = (b - a).y.mm(), vx = (p - a).x.mm(), vy = (p - a).y.mm();
        const double t = std::clamp((ux * vx + uy * vy) / (ux * ux + uy * uy), 0.0, 1.0);
        nearest = std::min(nearest, std::hypot(vx - t * ux, vy - t * uy));
      }
      const bool inside = insideRing(star, vecOf(p));
      if (std::abs(nearest - reach) < 0.002) continue; // chords and shifts
      bool covered = insideRing(drawn->outer, vecOf(p));
      for (const Ring& hole : drawn->holes)
        covered = covered && !insideRing(hole, vecOf(p));
      CHECK(covered == (inside || nearest < reach));
    }
  }
}

TEST_CASE("slits are undone: a ring with a hole on a slit is an outline and a hole") {
  const Ring slit{mm(0, 0), mm(10, 0), mm(10, 10), mm(0, 10), mm(0, 5), mm(4, 5),
                  mm(4, 6), mm(6, 6),  mm(6, 4),   mm(4, 4),  mm(4, 5), mm(0, 5)};
  const Polygon whole = withoutSlits(slit);
  CHECK(signedArea(whole.outer) == Approx(100e12));
  REQUIRE(whole.holes.size() == 1);
  CHECK(signedArea(whole.holes[0]) == Approx(-4e12));
  CHECK(whole.outer.size() == 5);
  CHECK(whole.holes[0].size() == 5);
  const Ring plain{mm(0, 0), mm(10, 0), mm(10, 10)};
  CHECK(withoutSlits(plain).outer == plain);
  CHECK(withoutSlits(plain).holes.empty());
  const Ring flat{mm(0, 0), mm(10, 0)}; // nothing but a slit stays what it is
  CHECK(withoutSlits(flat).outer == flat);
  // And back: the same area as one ring, by a slit from the hole's rightmost corner.
  const Ring one =
      asOneRing({{mm(0, 0), mm(10, 0), mm(10, 10), mm(0, 10)}, {{mm(4, 4), mm(4, 6), mm(7, 6), mm(7, 4)}}});
  CHECK(signedArea(one) == Approx(94e12));
  CHECK(one == Ring{mm(0, 0), mm(10, 0), mm(10, 10), mm(7, 6), mm(7, 4), mm(4, 4), mm(4, 6), mm(7, 6),
                    mm(10, 10), mm(0, 10)});
  CHECK(asOneRing({plain, {{}}}) == plain);
}

TEST_CASE("what a pen covers has no more corners than a micrometre needs, and lies to one around it") {
  // A pen of 1 mm: chords within 0.7 µm of the circle have 2·acos(1 − 0.0007/0.5) each, 29.7 a half: 30, and
  // 31 corners.
  const auto line = penStroke({mm(0, 0), mm(10, 0)}, false, Length(500'000));
  REQUIRE(line);
  CHECK(line->outer.size() == 2 * 31);
  for (const Point p : line->outer) {
    const double x = std::clamp(p.x.mm(), 0.0, 10.0);
    CHECK(std::hypot(p.x.mm() - x, p.y.mm()) == Approx(0.5).margin(0.0002));
  }
  CHECK(boxOf(line->outer).min.x.mm() == Approx(-0.5).margin(0.0002));
  // A corner that is hardly seen, at 0.1 µm beyond the round one, is left sharp: one point a side.
  const auto bent = penStroke({mm(0, 0), mm(10, 0), mm(20, 0.1)}, false, Length(500'000));
  REQUIRE(bent);
  CHECK(bent->outer.size() <= line->outer.size() + 4);
  CHECK_FALSE(penStroke({mm(1, 1)}, false, Length(500'000)));
  CHECK_FALSE(penStroke({mm(1, 1), mm(1, 1)}, false, Length(500'000)));
  CHECK_FALSE(penStroke({mm(1, 1), mm(2, 1), mm(1, 1)}, true, Length(500'000)));
  CHECK_FALSE(penDrawn({{mm(1, 1), mm(2, 1)}, {}}, Length(500'000)));
  CHECK(strokeOf({mm(0, 0), mm(1, 0)}, false, Length(0)).empty());
  CHECK(strokeOf({}, false, Length(100)).empty());
  // A point drawn with a pen is a disc.
  const auto disc = strokeOf({mm(3, 4)}, false, Length::fromMm(2));
  REQUIRE(disc.size() == 1);
  CHECK(areaOf(disc[0]) == Approx(pi).epsilon(0.003));
}

TEST_CASE("ways that cross themselves are seen as such") {
  CHECK(crossesItself({{mm(0, 0), mm(9, 9), mm(9, 0), mm(0, 9)}, {}}));
  CHECK_FALSE(crossesItself({{mm(0, 0), mm(9, 0), mm(9, 9), mm(0, 9)}, {}}));
  CHECK(crossesItself({{mm(0, 0), mm(9, 0), mm(9, 9), mm(0, 9)}, {{mm(5, 5), mm(12, 5), mm(5, 6)}}}));
  CHECK_FALSE(crossesItself({{mm(0, 0), mm(9, 0), mm(9, 9), mm(0, 9)}, {{mm(5, 5), mm(6, 5), mm(5, 6)}}}));
}

TEST_CASE("filled shapes grow by half their pen, those that cross themselves too") {
  const auto area = [](const std::vector<Polygon>& polygons) {
    double sum = 0;
    for (const Polygon& p : polygons)
      sum += areaOf(p);
    return sum;
  };
  const Ring square{mm(0, 0), mm(10, 0), mm(10, 10), mm(0, 10)};
  CHECK(filledShape(square, Length(0)).front().outer == square);
  CHECK(area(filledShape(square, Length::fromMm(0.5))) ==
        Approx(100 + 40 * 0.25 + pi * 0.0625).margin(0.001));
  // A bow tie of two triangles of 25 mm² and its edge: more than the pen alone, and all in one.
  const auto tie = filledShape({mm(0, 0), mm(10, 10), mm(10, 0), mm(0, 10)}, Length::fromMm(0.5));
  CHECK(area(tie) > 50);
  CHECK(area(tie) < 50 + 0.25 * (2 * 10 + 2 * std::sqrt(200.0)) + 1);
  CHECK(area(united({{square, {}}, {{mm(5, 5), mm(15, 5), mm(15, 15), mm(5, 15)}, {}}})) == Approx(175));
  CHECK(area(grown({square, {}}, Length::fromMm(1))) == Approx(100 + 40 + pi).margin(0.004));
}
