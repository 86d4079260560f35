#include "bench/map/map_follow.h"

#include <catch2/catch.hpp>

#include <QTest>
#include <QWheelEvent>

#include "shown_map.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

Overlay dueAt(Point place) {
  Overlay overlay;
  overlay.marks.push_back({place, MarkShape::probe, asItIs("C28.1")});
  return overlay;
}

BoardView followed(const SmallBoard& small, const Overlay& overlay, QSizeF frame, Side side = Side::top,
                   double turn = 0) {
  const BoardScene scene(small.board);
  const BoardView now = viewOf(scene.extent(), QRectF(QPointF(), frame), side, 0.04, Degrees(turn));
  return viewFollowing(followedIn(overlay), scene, now, overlay);
}

void turnWheel(CopperMap& map) {
  const QPoint where(100, 100);
  QWheelEvent event(where, map.mapToGlobal(where), {}, {0, 120}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&map, &event);
}

} // namespace

TEST_CASE("the due place with its nearest part fills a third of the map's width, half its height at most") {
  SmallBoard small;
  small.part("R1", Side::top, box(40, 40, 44, 42));
  // The place itself, 1 mm left of a part of 4 by 2 mm: a box of 5 by 2 mm, made 3 mm high.
  const BoardView wide = followed(small, dueAt(at(39, 41)), {900, 900});
  CHECK(wide.scale.value * 5 == Approx(300));
  CHECK(wide.middle.x.mm() == Approx(41.5));
  CHECK(wide.middle.y.mm() == Approx(41));
  // 5 mm over 300 pixels would make 3 mm 180 pixels high, more than half of 300.
  const BoardView low = followed(small, dueAt(at(39, 41)), {900, 300});
  CHECK(low.scale.value * 3 == Approx(150));
  // Lying on its side it is 3 mm wide and 5 high.
  const BoardView turned = followed(small, dueAt(at(39, 41)), {900, 1200}, Side::top, 90);
  CHECK(turned.scale.value * 3 == Approx(300));
}

TEST_CASE("of a large part that part counts which is within 5 mm of the due place") {
  SmallBoard small; // J4's body from x 8 to 16, pad 3 at 12, 20
  const BoardView view = followed(small, dueAt(at(12, 20)), {900, 900});
  CHECK(view.scale.value * 10 == Approx(450)); // 8 by 10 mm: here the height is what limits
  CHECK(view.middle.x.mm() == Approx(12));
  CHECK(view.middle.y.mm() == Approx(20));
}

TEST_CASE("a place with nothing near is shown with 3 mm of board over a third") {
  SmallBoard small;
  CHECK(followed(small, dueAt(at(70, 40)), {900, 900}).scale.value * 3 == Approx(300));
}

TEST_CASE(
    "a jumper with the parts at its ends fills a third; none is shown further away than all of the board") {
  SmallBoard small;
  small.part("R1", Side::top, box(30, 39, 32, 41));
  small.part("R2", Side::top, box(42, 39, 44, 41));
  Overlay overlay;
  overlay.lines.push_back({{at(31, 40), at(38, 44), at(43, 40)}, LineStyle::wire, {}});
  // From 30 to 44 mm: 14 mm; from 39 to 44 mm high.
  CHECK(followed(small, overlay, {900, 900}).scale.value * 14 == Approx(300));
  overlay.lines[0].style = LineStyle::laid;
  CHECK(followed(small, overlay, {900, 900}).scale.value * 14 == Approx(300));
  overlay.lines[0].points = {at(1, 40), at(99, 40)};
  const BoardScene scene(small.board);
  const QRectF frame(0, 0, 900, 900);
  CHECK(followed(small, overlay, frame.size()).scale == viewOf(scene.extent(), frame).scale);
  // What is due comes before it.
  overlay.marks.push_back({at(70, 40), MarkShape::probe, {}});
  CHECK(followedIn(overlay).places == std::vector<Point>{at(70, 40)});
}

TEST_CASE("the board is turned to the side that is touched, and left as it lies where both would do") {
  SmallBoard small;
  CHECK(followed(small, dueAt(at(75, 20)), {900, 900}).side == Side::bottom); // the track below
  CHECK(followed(small, dueAt(at(12, 20)), {900, 900}, Side::bottom).side == Side::top);
  CHECK(followed(small, dueAt(at(70, 45)), {900, 900}, Side::bottom).side == Side::bottom); // nothing there
}

TEST_CASE("the view moves where a suspect would be under something") {
  SmallBoard small;
  Overlay overlay = dueAt(at(70, 40));
  const BoardView plain = followed(small, overlay, {900, 900});
  // 3 mm right of the middle, that is 300 pixels.
  overlay.marks.push_back({at(73, 40), MarkShape::suspect, asItIs("A")});
  overlay.covered = {QRectF(700, 400, 200, 100)};
  const BoardView moved = followed(small, overlay, {900, 900});
  CHECK(moved.scale == plain.scale);
  CHECK_FALSE(overlay.covered[0].contains(moved.toPicture(at(73, 40))));
  CHECK(moved.frame.contains(moved.toPicture(at(70, 40))));
}

TEST_CASE("a view that somebody moved stays until something else is due") {
  const ShownMap shown;
  CopperMap& map = *shown.map;
  const double whole = map.view().scale.value;
  map.setOverlay(dueAt(at(12, 20)));
  const double near = map.view().scale.value;
  CHECK(near > 3 * whole);
  turnWheel(map);
  const BoardView mine = map.view();
  map.setOverlay(dueAt(at(12, 20)));
  CHECK(map.view() == mine);
  map.resize(800, 500);
  QApplication::processEvents();
  CHECK(map.view().scale == mine.scale);
  map.setOverlay(dueAt(at(70, 40)));
  CHECK(map.view().middle == at(70, 40));
  // Nothing due any more: all of the board.
  map.setOverlay({});
  CHECK(map.view().scale.value < near);
  CHECK(map.view().frame.contains(map.view().toPicture(at(99, 1))));
}

TEST_CASE("the key for the whole board holds until something else is due, whatever the window's size") {
  const ShownMap shown;
  CopperMap& map = *shown.map;
  map.setOverlay(dueAt(at(12, 20)));
  const double near = map.view().scale.value;
  map.resize(1000, 800);
  QApplication::processEvents();
  CHECK(map.view().scale.value > near); // it follows the size as well
  QTest::keyClick(&map, Qt::Key_0);
  map.setOverlay(dueAt(at(12, 20)));
  CHECK(map.view().frame.contains(map.view().toPicture(at(99, 1))));
}

TEST_CASE("the inset is there where not all of the board is in sight: from 1.25 times its size on") {
  const ShownMap shown;
  CopperMap& map = *shown.map;
  const BoardView whole = map.view();
  CHECK(map.inset().isEmpty());
  BoardView view = whole;
  view.scale = whole.scale * 1.249;
  map.setView(view);
  CHECK(map.inset().isEmpty());
  view.scale = whole.scale * 1.251;
  map.setView(view);
  REQUIRE_FALSE(map.inset().isEmpty());
  CHECK(QRectF(map.rect()).contains(map.inset()));
  CHECK(map.inset().width() <= map.width() * 0.25);
  // In the lower right corner, in the board's proportions of 2 to 1.
  CHECK(map.inset().center().x() > map.width() / 2.0);
  CHECK(map.inset().center().y() > map.height() / 2.0);
  CHECK(map.inset().width() / map.inset().height() == Approx(2).epsilon(0.03));
  map.fit();
  CHECK(map.inset().isEmpty());
}

TEST_CASE("on the way from one view to the next the scale goes by ratios and ends where it should") {
  const BoardView from{QRectF(0, 0, 100, 100), at(0, 0), PictureScale(4), Side::top, {}};
  const BoardView to{QRectF(0, 0, 100, 100), at(10, 20), PictureScale(16), Side::top, {}};
  CHECK(between(from, to, 0.5).scale.value == Approx(8));
  CHECK(between(from, to, 0.5).middle == at(5, 10));
  CHECK(between(from, to, 0).scale.value == Approx(4));
  CHECK(between(from, to, 1) == to);
}
