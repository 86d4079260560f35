#include "netmend/drawing/board_view.h"

#include <catch2/catch.hpp>

#include <random>

#include "small_board.h"

#include "support/seed.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

const QRectF frame(10, 20, 800, 400);

void checkNear(QPointF a, QPointF b) {
  CHECK(a.x() == Approx(b.x()).margin(1e-3));
  CHECK(a.y() == Approx(b.y()).margin(1e-3));
}

} // namespace

TEST_CASE("all of a board is in its view, with y up and nothing distorted") {
  Box all;
  all.include(at(0, 0));
  all.include(at(100, 50));
  const BoardView view = viewOf(all, frame);
  CHECK(frame.contains(view.toPicture(at(0, 0))));
  CHECK(frame.contains(view.toPicture(at(100, 50))));
  CHECK(view.toPicture(at(0, 50)).y() < view.toPicture(at(0, 0)).y());
  const QPointF d = view.toPicture(at(30, 10)) - view.toPicture(at(20, 20));
  CHECK(d.x() == Approx(d.y()));
}

TEST_CASE("from the bottom the board is turned over like a page: left is right, up stays up") {
  BoardView view = viewOf({at(0, 0), at(100, 50)}, frame, Side::top);
  const QPointF before = view.toPicture(at(10, 40));
  view.flip();
  const QPointF after = view.toPicture(at(10, 40));
  CHECK(after.x() - frame.center().x() == Approx(frame.center().x() - before.x()));
  CHECK(after.y() == Approx(before.y()));
}

TEST_CASE(
    "zooming leaves the place under the pointer where it is, on either side, through 500 random steps") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(frame.left(), frame.right());
  std::uniform_real_distribution<double> y(frame.top(), frame.bottom());
  std::uniform_real_distribution<double> steps(-2, 2);
  BoardView view = viewOf({at(0, 0), at(100, 50)}, frame);
  for (int i = 0; i < 500; ++i) {
    if (i % 7 == 0) view.flip();
    if (i % 11 == 0) view.turn = Degrees(i * 13.0);
    const QPointF pointer(x(random), y(random));
    const Point place = view.toBoard(pointer);
    view.zoom(steps(random), pointer);
    // A nanometre of rounding is this many picture units.
    const double margin = 2e-6 * view.scale.value + 1e-6;
    const QPointF now = view.toPicture(place);
    REQUIRE(now.x() == Approx(pointer.x()).margin(margin));
    REQUIRE(now.y() == Approx(pointer.y()).margin(margin));
  }
}

TEST_CASE("a board turned by any angle is drawn turned, counter-clockwise, from either side") {
  for (const Side side : {Side::top, Side::bottom})
    for (const double degrees : {0.0, 90.0, 180.0, 270.0, 33.0, -7.5, 725.0}) {
      INFO("side " << static_cast<int>(side) << ", turned by " << degrees);
      const BoardView upright = viewOf({at(0, 0), at(100, 50)}, frame, side);
      BoardView turned = upright;
      turned.turn = Degrees(degrees);
      const QPointF before = upright.toPicture(at(90, 40)) - frame.center();
      // Qt's matrix turns clockwise on a picture with y down.
      const QPointF after = QTransform().rotate(-degrees).map(before);
      checkNear(turned.toPicture(at(90, 40)), frame.center() + after);
      checkNear(turned.transform().map(QPointF(90, 40)), turned.toPicture(at(90, 40)));
      const Point back = turned.toBoard(turned.toPicture(at(90, 40)));
      CHECK(back.x.mm() == Approx(90).margin(1e-5));
      CHECK(back.y.mm() == Approx(40).margin(1e-5));
    }
}

TEST_CASE("a turned board is all in its view, and all that the frame shows is found") {
  for (const double degrees : {0.0, 33.0, 90.0, 135.0}) {
    INFO("turned by " << degrees);
    const BoardView view = viewOf({at(0, 0), at(100, 50)}, frame, Side::bottom, 0.04, Degrees(degrees));
    for (const Point corner : {at(0, 0), at(100, 0), at(100, 50), at(0, 50)})
      CHECK(frame.contains(view.toPicture(corner)));
    const Box shown = view.shown();
    for (const QPointF corner :
         {frame.topLeft(), frame.topRight(), frame.bottomLeft(), frame.bottomRight()}) {
      const Point p = view.toBoard(corner);
      CHECK(shown.min.x <= p.x);
      CHECK(p.x <= shown.max.x);
      CHECK(shown.min.y <= p.y);
      CHECK(p.y <= shown.max.y);
    }
  }
}

TEST_CASE("panning moves the picture with the hand") {
  BoardView view = viewOf({at(0, 0), at(100, 50)}, frame, Side::bottom);
  const QPointF before = view.toPicture(at(30, 30));
  view.pan({25, -40});
  checkNear(view.toPicture(at(30, 30)), before + QPointF(25, -40));
  view.turn = Degrees(120);
  const QPointF turned = view.toPicture(at(30, 30));
  view.pan({25, -40});
  checkNear(view.toPicture(at(30, 30)), turned + QPointF(25, -40));
}

TEST_CASE("a view without extent and one panned beyond all coordinates still has numbers") {
  CHECK(viewOf(Box{}, frame).scale.value > 0);
  CHECK(viewOf({at(5, 5), at(5, 5)}, frame).scale.value > 0);
  BoardView view = viewOf({at(0, 0), at(100, 50)}, frame);
  for (int i = 0; i < 200; ++i)
    view.pan({1e18, 1e18});
  view.zoom(-1000, {0, 0});
  view.zoom(1000, {0, 0});
  CHECK(std::isfinite(view.toPicture(at(0, 0)).x()));
}

TEST_CASE("the extent takes in the outline and everything that has a place") {
  SmallBoard small;
  CHECK(pictureExtent(small.board).max == at(100, 50));
  small.part("X1", Side::top, box(90, 40, 120, 60));
  CHECK(pictureExtent(small.board).max == at(120, 60));
  CHECK(pictureExtent(Board{}).empty());
}

TEST_CASE("what is said to lie right, left, above or below does so in the picture, however it is turned") {
  // Against where the two places come to lie in the picture.
  const auto seen = [](const BoardView& view, Point from, Point to) {
    const QPointF way = view.toPicture(to) - view.toPicture(from);
    if (std::abs(way.x()) > std::abs(way.y())) return way.x() > 0 ? Heading::right : Heading::left;
    return way.y() < 0 ? Heading::above : Heading::below;
  };
  const Point pin = at(10, 10);
  for (const Side side : {Side::top, Side::bottom})
    for (int turn = 0; turn < 360; turn += 5) {
      if (turn % 90 == 45) continue; // neither is nearer
      BoardView view = viewOf({at(0, 0), at(20, 20)}, {0, 0, 800, 600}, side, 0.04, Degrees(turn));
      INFO(turn << (side == Side::top ? " top" : " bottom"));
      // Told from above the top.
      CHECK(SaidHeading{Heading::right, false, {}}.seenIn(view.lie()) == seen(view, pin, at(12, 10)));
      CHECK(SaidHeading{Heading::above, false, {}}.seenIn(view.lie()) == seen(view, pin, at(10, 12)));
      CHECK(SaidHeading{Heading::left, false, {}}.seenIn(view.lie()) == seen(view, pin, at(8, 10)));
      CHECK(SaidHeading{Heading::below, false, {}}.seenIn(view.lie()) == seen(view, pin, at(10, 8)));
      // Told of the bottom: what has the greater x is left there.
      CHECK(SaidHeading{Heading::left, true, {}}.seenIn(view.lie()) == seen(view, pin, at(12, 10)));
      CHECK(SaidHeading{Heading::above, true, {}}.seenIn(view.lie()) == seen(view, pin, at(10, 12)));
    }
}
