#include "netmend/board/shape.h"

#include <catch2/catch.hpp>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include <numbers>
#include <random>

#include "support/seed.h"

using namespace netmend;

namespace {

constexpr double pi = std::numbers::pi;

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

Pad padOf(PadShape shape, double w, double h, double turn = 0.0) {
  Pad pad;
  pad.position = fromFile(mm(10, 20));
  pad.shape = fromFile(shape);
  pad.size = fromFile(Size{Length::fromMm(w), Length::fromMm(h)});
  pad.rotation = Degrees(turn);
  return pad;
}

/// Area in mm² by Boost.Geometry, which also tells whether the ring is simple. Positive: counter-clockwise.
double areaOf(const Ring& ring) {
  namespace bg = boost::geometry;
  using BoostPoint = bg::model::d2::point_xy<double>;
  bg::model::ring<BoostPoint, false, false> out;
  for (const Point& p : ring)
    bg::append(out, BoostPoint(p.x.mm(), p.y.mm()));
  CHECK(bg::is_valid(out));
  return bg::area(out);
}

Box boxOf(const Ring& ring) {
  Box box;
  for (const Point& p : ring)
    box.include(p);
  return box;
}

double distanceMm(Point p, double x, double y) {
  return std::hypot(p.x.mm() - x, p.y.mm() - y);
}

} // namespace

TEST_CASE("pads have the area that geometry books give") {
  // Circle πr², stadium πr² + 2rL, rounded rectangle w·h − (4 − π)·r².
  const auto area = [](const Pad& pad) { return areaOf(outlineOf(padShape(pad).value(), Length(10))); };
  CHECK(area(padOf(PadShape::circle, 2, 2)) == Approx(pi).epsilon(1e-4));
  CHECK(area(padOf(PadShape::oval, 3, 1, 30)) == Approx(pi / 4 + 2).epsilon(1e-4));
  CHECK(area(padOf(PadShape::oval, 1, 1, 30)) == Approx(pi / 4).epsilon(1e-4));
  CHECK(area(padOf(PadShape::rectangle, 3, 1, 77)) == Approx(3).epsilon(1e-5));
  Pad rounded = padOf(PadShape::roundedRectangle, 3, 2, -12);
  rounded.cornerRadius = Length::fromMm(0.25);
  CHECK(area(rounded) == Approx(6 - (4 - pi) * 0.0625).epsilon(1e-4));
  rounded.cornerRadius = Length::fromMm(9); // more than fits: a stadium
  CHECK(area(rounded) == Approx(pi + 2).epsilon(1e-4));
}

TEST_CASE("a pad's rotation is counter-clockwise seen from the top") {
  CHECK(placed(mm(1, 1), Degrees(90), mm(2, 0)) == mm(1, 3));
  CHECK(placed(mm(1, 1), Degrees(-90), mm(2, 0)) == mm(1, -1));
  CHECK(placed(mm(1, 1), Degrees(540), mm(2, 0)) == mm(-1, 1));
  const Point p = placed({}, Degrees(30), mm(2, 0));
  CHECK(p == mm(2 * std::cos(pi / 6), 1));
  const Box box = boxOf(outlineOf(padShape(padOf(PadShape::oval, 3, 1, 90)).value()));
  CHECK(box.min.y == Length::fromMm(18.5));
  CHECK(box.max.y == Length::fromMm(21.5));
}

TEST_CASE("a polygon pad keeps its corners and comes out counter-clockwise") {
  Pad pad = padOf(PadShape::polygon, 1, 1, 90);
  pad.polygon = {mm(0, 0), mm(0, 1), mm(2, 0)}; // clockwise
  const Ring ring = outlineOf(padShape(pad).value());
  CHECK(ring.size() == 3);
  CHECK(areaOf(ring) == Approx(1));
  CHECK(std::find(ring.begin(), ring.end(), mm(10, 22)) != ring.end());
}

TEST_CASE("a pad of which too little is known has no shape") {
  Pad pad = padOf(PadShape::rectangle, 1, 1);
  pad.position = {};
  CHECK_FALSE(padShape(pad));
  pad = padOf(PadShape::rectangle, 1, 1);
  pad.shape = {};
  CHECK_FALSE(padShape(pad));
  pad = padOf(PadShape::rectangle, 1, 1);
  pad.size = {};
  CHECK_FALSE(padShape(pad));
  CHECK_FALSE(padShape(padOf(PadShape::rectangle, 0, 1)));
  CHECK_FALSE(padShape(padOf(PadShape::polygon, 1, 1)));
}

TEST_CASE("chords stay within the error asked for and have their corners on the arc") {
  const Length error(2000);
  const Ring ring = outlineOf(RoundedShape{{mm(3, 4)}, Length::fromMm(5)}, error);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    CHECK(distanceMm(a, 3, 4) == Approx(5).margin(2e-6));
    const double middle = std::hypot((a.x.mm() + b.x.mm()) / 2 - 3, (a.y.mm() + b.y.mm()) / 2 - 4);
    CHECK(5 - middle <= error.mm() + 2e-6);
  }
  CHECK(ring.size() < 120); // no more corners than the error needs: 2π / (2·acos(1 − 0.002/5)) = 111.1
  CHECK(outlineOf(RoundedShape{{mm(0, 0)}, Length(INT64_C(4000000000000))}, Length(1)).size() == 4096);
}

TEST_CASE("a hole is turned with its pad") {
  Pad pad = padOf(PadShape::oval, 3, 1, 90);
  CHECK_FALSE(drillCentre(pad));
  pad.drill = fromFile(Size{});
  CHECK_FALSE(drillCentre(pad));
  pad.drill = fromFile(Size{Length::fromMm(0.5), Length::fromMm(0.5)});
  pad.drillOffset = mm(1, 0);
  CHECK(drillCentre(pad) == mm(10, 21));
}

TEST_CASE("an arc through three points of a known circle is that circle") {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> place(-200, 200);
  std::uniform_real_distribution<double> angle(-pi, pi);
  std::uniform_real_distribution<double> size(0.3, 80);
  std::uniform_real_distribution<double> share(0.2, 0.8);
  for (int i = 0; i < 500; ++i) {
    const double x = place(random), y = place(random), r = size(random);
    const double from = angle(random);
    double sweep = angle(random) * 1.9;
    if (std::abs(sweep) < 0.2) sweep = 0.2;
    const auto at = [&](double a) { return mm(x + r * std::cos(a), y + r * std::sin(a)); };
    Track track;
    track.way = TrackWay::arc;
    track.start = at(from);
    track.mid = at(from + sweep * share(random));
    track.end = at(from + sweep);
    const auto arc = arcGeometry(track.start, track.mid, track.end);
    REQUIRE(arc);
    // Rounding the points to whole nanometres moves a flat arc's centre by far more than a nanometre.
    CHECK(arc->centreX * 1e-6 == Approx(x).margin(0.003));
    CHECK(arc->centreY * 1e-6 == Approx(y).margin(0.003));
    CHECK(arc->radius * 1e-6 == Approx(r).margin(0.003));
    CHECK(arc->sweep == Approx(sweep).margin(1e-4));
    CHECK(trackLength(track).value().mm() == Approx(r * std::abs(sweep)).epsilon(1e-4));
    const Ring line = centreLine(track, Length(1000));
    CHECK(line.front() == track.start);
    CHECK(line.back() == track.end);
    double length = 0;
    for (std::size_t k = 1; k < line.size(); ++k) {
      CHECK(distanceMm(line[k], x, y) == Approx(r).margin(1e-5));
      length += distance(line[k - 1], line[k]).mm();
    }
    CHECK(length <= r * std::abs(sweep) + 1e-5);
    CHECK(length == Approx(r * std::abs(sweep)).epsilon(0.01));
  }
}

TEST_CASE("an arc on a line is straight, an arc that ends where it starts is a circle") {
  CHECK_FALSE(arcGeometry(mm(0, 0), mm(1, 1), mm(2, 2)));
  CHECK_FALSE(arcGeometry(mm(0, 0), mm(0, 0), mm(0, 0)));
  const auto circle = arcGeometry(mm(0, 0), mm(4, 0), mm(0, 0));
  REQUIRE(circle);
  CHECK(circle->radius == Approx(2e6));
  Track track;
  track.way = TrackWay::arc;
  track.end = mm(2, 2);
  track.mid = mm(1, 1);
  CHECK(centreLine(track) == Ring{mm(0, 0), mm(2, 2)});
  CHECK(trackLength(track).value().mm() == Approx(std::sqrt(8.0)));
}

TEST_CASE("an unknown way has no length") {
  Track track;
  track.end = mm(3, 4);
  CHECK(trackLength(track) == Length::fromMm(5));
  track.way = TrackWay::unknownWay;
  CHECK_FALSE(trackLength(track));
  CHECK(centreLine(track).size() == 2);
}

TEST_CASE("a circle has no fewer chords than the error needs, and a corner at each quarter") {
  // n chords keep within r·(1 − cos(π/n)); the least n with four in it.
  const auto corners = [](double radiusMm, std::int64_t error) {
    return outlineOf(RoundedShape{{mm(0, 0)}, Length::fromMm(radiusMm)}, Length(error)).size();
  };
  CHECK(corners(1, 1000) == 72);     // π / acos(1 − 0.001) = 70.2
  CHECK(corners(1, 100'000) == 8);   // 6.97
  CHECK(corners(1, 292'000) == 8);   // 4.003
  CHECK(corners(1, 293'000) == 4);   // 3.995
  CHECK(corners(1, 1'000'000) == 4); // as large as the radius
  CHECK(corners(1, 5'000'000) == 4);
  CHECK(corners(1, 0) == corners(1, 1));
  const Ring ring = outlineOf(RoundedShape{{mm(1, 2)}, Length::fromMm(1)}, Length(100'000));
  CHECK(ring[0] == mm(2, 2)); // from +x, counter-clockwise
  CHECK(ring[2] == mm(1, 3));
  CHECK(ring[4] == mm(0, 2));
  CHECK(ring[6] == mm(1, 1));
  // Half a millimetre of a stadium: three corners a quarter at 0.1 mm, both ends of each round end.
  const Ring stadium = outlineOf(RoundedShape{{mm(0, 0), mm(4, 0)}, Length::fromMm(1)}, Length(293'000));
  CHECK(stadium == Ring{mm(0, 1), mm(-1, 0), mm(0, -1), mm(4, -1), mm(5, 0), mm(4, 1)});
  CHECK(outlineOf(RoundedShape{{}, Length(5)}).empty());
  CHECK(outlineOf(RoundedShape{{mm(0, 0), mm(1, 0)}, Length(0)}) == Ring{mm(0, 0), mm(1, 0)});
  CHECK(outlineOf(RoundedShape{{mm(0, 0), mm(0, 0), mm(1, 0), mm(1, 1), mm(0, 0)}, Length(0)}) ==
        Ring{mm(0, 0), mm(1, 0), mm(1, 1)});
  CHECK(outlineOf(RoundedShape{{mm(0, 0), mm(1, 1), mm(1, 0)}, Length(0)}) ==
        Ring{mm(1, 0), mm(1, 1), mm(0, 0)});
}

TEST_CASE("rounded cores have their corners where the pad's corners are, less the radius") {
  const auto core = [](PadShape shape, double w, double h, double radius = 0) {
    Pad pad = padOf(shape, w, h);
    pad.position = fromFile(Point{});
    pad.cornerRadius = Length::fromMm(radius);
    return padShape(pad).value();
  };
  CHECK(core(PadShape::circle, 2, 3).core == Ring{{}});
  CHECK(core(PadShape::circle, 2, 3).radius == Length::fromMm(1));
  CHECK(core(PadShape::oval, 3, 1).core == Ring{mm(-1, 0), mm(1, 0)});
  CHECK(core(PadShape::oval, 1, 3).core == Ring{mm(0, -1), mm(0, 1)});
  CHECK(core(PadShape::oval, 1, 3).radius == Length::fromMm(0.5));
  CHECK(core(PadShape::oval, 2, 2).core == Ring{{}});
  CHECK(core(PadShape::rectangle, 4, 2).core == Ring{mm(-2, -1), mm(2, -1), mm(2, 1), mm(-2, 1)});
  CHECK(core(PadShape::rectangle, 4, 2).radius == Length(0));
  CHECK(core(PadShape::roundedRectangle, 4, 2, 0.5).core ==
        Ring{mm(-1.5, -0.5), mm(1.5, -0.5), mm(1.5, 0.5), mm(-1.5, 0.5)});
  CHECK(core(PadShape::roundedRectangle, 4, 2, 0.5).radius == Length::fromMm(0.5));
  CHECK(core(PadShape::roundedRectangle, 4, 2, -0.5).radius == Length(0));
  CHECK(core(PadShape::roundedRectangle, 4, 2, 1).core == Ring{mm(-1, 0), mm(1, 0)});
  const auto isShape = [](PadShape shape, double w, double h) {
    return padShape(padOf(shape, w, h)).has_value();
  };
  CHECK(isShape(PadShape::circle, 1e-6, 0)); // a circle has its width alone
  CHECK_FALSE(isShape(PadShape::circle, 0, 1));
  CHECK_FALSE(isShape(PadShape::circle, -1, 1));
  CHECK(isShape(PadShape::rectangle, 1e-6, 1e-6));
  CHECK_FALSE(isShape(PadShape::rectangle, 1, 0));
  CHECK_FALSE(isShape(PadShape::oval, 1, -1));
  Pad polygon = padOf(PadShape::polygon, 1, 1);
  polygon.polygon = {mm(0, 0), mm(1, 0)};
  CHECK_FALSE(padShape(polygon));
  polygon.polygon.push_back(mm(0, 1));
  polygon.size = {}; // its corners say it all
  CHECK(padShape(polygon));
}

TEST_CASE("whole quarters turn to the last nanometre, either way and more than once round") {
  const Point origin{Length(100), Length(1000)}, offset{Length(3), Length(7)};
  const auto turned = [&](double degrees) { return placed(origin, Degrees(degrees), offset) - origin; };
  const auto nm = [](std::int64_t x, std::int64_t y) { return Point{Length(x), Length(y)}; };
  for (const double round : {-720.0, -360.0, 0.0, 360.0, 720.0}) {
    CHECK(turned(round) == nm(3, 7));
    CHECK(turned(round + 90) == nm(-7, 3));
    CHECK(turned(round + 180) == nm(-3, -7));
    CHECK(turned(round + 270) == nm(7, -3));
  }
  // 45 degrees: (3 − 7)/√2 = −2.83, (3 + 7)/√2 = 7.07.
  CHECK(turned(45) == nm(-3, 7));
  CHECK(turned(-45) == nm(7, 3));
  CHECK(turned(405) == nm(-3, 7));
}

TEST_CASE("an arc's sweep is positive counter-clockwise, and its middle says which way round") {
  const auto half = arcGeometry(mm(1, 0), mm(0, 1), mm(-1, 0));
  REQUIRE(half);
  CHECK(half->centreX == Approx(0).margin(1e-3));
  CHECK(half->centreY == Approx(0).margin(1e-3));
  CHECK(half->radius == Approx(1e6));
  CHECK(half->startAngle == Approx(0).margin(1e-9));
  CHECK(half->sweep == Approx(pi));
  CHECK(arcGeometry(mm(1, 0), mm(0, -1), mm(-1, 0))->sweep == Approx(-pi));
  CHECK(arcGeometry(mm(1, 0), mm(-1, 0), mm(0, -1))->sweep == Approx(1.5 * pi));
  CHECK(arcGeometry(mm(0, -1), mm(-1, 0), mm(1, 0))->sweep == Approx(-1.5 * pi));
  const auto full = arcGeometry(mm(1, 1), mm(1, 5), mm(1, 1));
  REQUIRE(full);
  CHECK(full->centreX == Approx(1e6));
  CHECK(full->centreY == Approx(3e6));
  CHECK(full->startAngle == Approx(-pi / 2));
  CHECK(full->sweep == Approx(2 * pi));
  // Half a nanometre off the chord is none: rounding alone makes that.
  const Point end{Length(1'000'000), Length(0)};
  CHECK_FALSE(arcGeometry({}, {Length(500'000), Length(0)}, end));
  CHECK(arcGeometry({}, {Length(500'000), Length(1)}, end));
  Track arc;
  arc.way = TrackWay::arc;
  arc.start = mm(1, 0);
  arc.mid = mm(0, 1);
  arc.end = mm(-1, 0);
  CHECK(centreLine(arc, Length(292'900)) == Ring{mm(1, 0), mm(0, 1), mm(-1, 0)});
  CHECK(trackLength(arc) == Length(3'141'593));
}

TEST_CASE("every whole degree turns to within half a nanometre of where it should") {
  const Point offset{Length(1'000'000), Length(250'000)};
  for (int degrees = -360; degrees <= 720; ++degrees) {
    INFO(degrees);
    const double a = degrees * pi / 180;
    const Point p = placed({}, Degrees(degrees), offset);
    CHECK(static_cast<double>(p.x.nm) ==
          Approx(1e6 * std::cos(a) - 250e3 * std::sin(a)).margin(0.51).epsilon(0));
    CHECK(static_cast<double>(p.y.nm) ==
          Approx(1e6 * std::sin(a) + 250e3 * std::cos(a)).margin(0.51).epsilon(0));
  }
}
