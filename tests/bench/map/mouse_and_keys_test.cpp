#include "bench/map/copper_map.h"

#include <catch2/catch.hpp>

#include <QTest>
#include <QWheelEvent>

#include "netmend/drawing/picture_colors.h"
#include "shown_map.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

void turnWheel(CopperMap& canvas, QPoint where, int notches) {
  QWheelEvent event(where, canvas.mapToGlobal(where), {}, {0, notches * 120}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&canvas, &event);
}

} // namespace

TEST_CASE("the board follows the mouse that drags it") {
  const ShownMap shown;
  const QPoint start = shown.pixelOf(at(50, 40));
  QTest::mousePress(shown.map.get(), Qt::LeftButton, {}, start);
  QTest::mouseMove(shown.map.get(), start + QPoint(30, 20));
  QTest::mouseMove(shown.map.get(), start + QPoint(80, 60));
  QTest::mouseRelease(shown.map.get(), Qt::LeftButton, {}, start + QPoint(80, 60));
  CHECK((shown.pixelOf(at(50, 40)) - start - QPoint(80, 60)).manhattanLength() <= 1); // of rounding
  CHECK(shown.map->overlay().litNets.empty());                                        // a drag is no click
}

TEST_CASE("the wheel zooms at the pointer") {
  const ShownMap shown;
  const QPoint where = shown.pixelOf(at(12, 20));
  const double before = shown.map->view().scale.value;
  turnWheel((*shown.map), where, 4);
  CHECK(shown.map->view().scale.value == Approx(before * std::pow(1.25, 4)));
  CHECK((shown.pixelOf(at(12, 20)) - where).manhattanLength() <= 2);
}

TEST_CASE("keys move, zoom, fit and turn the board over") {
  const ShownMap shown;
  CopperMap& canvas = (*shown.map);
  const BoardView fitted = canvas.view();
  QTest::keyClick(&canvas, Qt::Key_Right);
  CHECK(canvas.view().middle.x > fitted.middle.x);
  QTest::keyClick(&canvas, Qt::Key_Up);
  CHECK(canvas.view().middle.y > fitted.middle.y);
  QTest::keyClick(&canvas, Qt::Key_Plus);
  CHECK(canvas.view().scale > fitted.scale);
  QTest::keyClick(&canvas, Qt::Key_T);
  CHECK(canvas.view().side == Side::bottom);
  QTest::keyClick(&canvas, Qt::Key_F);
  CHECK(canvas.view().scale == fitted.scale);
  CHECK(canvas.view().middle == fitted.middle);
  CHECK(canvas.view().side == Side::bottom);
  QTest::keyClick(&canvas, Qt::Key_Minus);
  CHECK(canvas.view().scale < fitted.scale);
}

TEST_CASE("a click on a pad lights its net, and the picture shows it") {
  const ShownMap shown;
  QTest::mouseClick(shown.map.get(), Qt::LeftButton, {}, shown.pixelOf(at(12, 20)));
  CHECK(shown.map->overlay().litNets == std::vector<NetId>{shown.small.key});
  REQUIRE(shown.map->settle());
  const QImage image = shown.map->grab().toImage();
  CHECK(image.pixelColor(shown.pixelOf(at(30, 20))) == pictureColors(PictureTheme::light).lit);
  QTest::mouseClick(shown.map.get(), Qt::LeftButton, {}, shown.pixelOf(at(70, 45)));
  CHECK(shown.map->overlay().litNets.empty());
}

TEST_CASE("all of the board stays in sight when the window is resized, until somebody zooms") {
  const ShownMap shown;
  shown.map->resize(600, 500);
  QApplication::processEvents();
  const double small = shown.map->view().scale.value;
  shown.map->resize(1200, 900);
  QApplication::processEvents();
  CHECK(shown.map->view().scale.value > small);
  turnWheel((*shown.map), {100, 100}, 1);
  const double zoomed = shown.map->view().scale.value;
  shown.map->resize(800, 600);
  QApplication::processEvents();
  CHECK(shown.map->view().scale.value == zoomed);
}
