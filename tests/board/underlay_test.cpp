#include "netmend/board/underlay.h"

#include <catch2/catch.hpp>

using namespace netmend;

namespace {

Point inMm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

Underlay photoFrom(Side side) {
  Underlay out;
  out.width = Pixels(800);
  out.height = Pixels(600);
  out.side = side;
  return out;
}

} // namespace

TEST_CASE("an upright photo lies with its lower left corner at its place, from below with its lower right") {
  Underlay top = photoFrom(Side::top);
  top.lie = guessed(uprightLie(top, inMm(3, 4), 20.0));
  CHECK(outlineOf(top) == Ring{inMm(3, 34), inMm(43, 34), inMm(43, 4), inMm(3, 4)});
  const PhotoMapping mapping(top);
  CHECK(mapping.pixelsPerMm() == Approx(20.0));
  CHECK(mapping.toPhoto(inMm(4, 5)) == PhotoPoint{Pixels(20), Pixels(580)});
  CHECK(mapping.toBoard({Pixels(20), Pixels(580)}) == inMm(4, 5));

  // Seen from below x runs to the left in the photo.
  Underlay below = photoFrom(Side::bottom);
  below.lie = guessed(uprightLie(below, inMm(43, 4), 20.0));
  CHECK(outlineOf(below) == Ring{inMm(43, 34), inMm(3, 34), inMm(3, 4), inMm(43, 4)});
}

TEST_CASE("a photo in perspective has a horizon, behind which nothing is seen") {
  Underlay tilted = photoFrom(Side::top);
  // w falls with y: at y = 100 mm it is zero.
  tilted.lie = guessed(PhotoLie{{20, 0, 0, 0, -20, 600, 0, -0.01, 1}, 0.0});
  const PhotoMapping mapping(tilted);
  CHECK(mapping.toPhoto(inMm(0, 99)));
  CHECK_FALSE(mapping.toPhoto(inMm(0, 101)));
  const auto there = mapping.toPhoto(inMm(10, 20));
  REQUIRE(there);
  // By hand: u = 200, v = -400 + 600 = 200, w = 0.8.
  CHECK(there->x.value == Approx(250.0));
  CHECK(there->y.value == Approx(250.0));
  const auto back = mapping.toBoard(*there);
  REQUIRE(back);
  CHECK(distance(*back, inMm(10, 20)) <= Length(1));
}

TEST_CASE("the lens's term moves a place outwards by its share at the corner, and is undone exactly") {
  for (const double radial : {-0.05, 0.005, 0.1}) {
    Underlay bent = photoFrom(Side::top);
    bent.lie = guessed(uprightLie(bent, {}, 20.0));
    const auto ideal = PhotoMapping(bent).toPhoto(inMm(40, 30)); // the upper right corner
    bent.lie.value.radial = radial;
    const PhotoMapping mapping(bent);
    const auto real = mapping.toPhoto(inMm(40, 30));
    REQUIRE((ideal && real));
    CHECK(real->x.value - 400.0 == Approx((ideal->x.value - 400.0) * (1.0 + radial)));
    CHECK(real->y.value - 300.0 == Approx((ideal->y.value - 300.0) * (1.0 + radial)));
    for (const Point p : {inMm(40, 30), inMm(1, 2), inMm(20, 15), inMm(33, 7)}) {
      const auto back = mapping.toBoard(*mapping.toPhoto(p));
      REQUIRE(back);
      CHECK(distance(*back, p) <= Length(2));
    }
  }
}

TEST_CASE("photos are kept in a folder that has the board's name") {
  CHECK(photosFolder("/a/b/logger-12.netmend-board.json") == "/a/b/logger-12.photos");
  CHECK(photosFolder("/a/b/logger.kicad_pcb") == "/a/b/logger.kicad_pcb.photos");
}
