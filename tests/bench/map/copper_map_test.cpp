#include "bench/map/copper_map.h"

#include <catch2/catch.hpp>

#include <QTest>

#include "bench/map/map_tools.h"
#include "shown_map.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("a click tells the pin and lights what the caller says its net continues into") {
  ShownMap shown;
  PinId told;
  shown.map->onPin = [&](PinId pin) { told = pin; };
  shown.map->lineOfNet = [&](NetId net) { return std::vector<NetId>{net, shown.small.ground}; };
  QTest::mouseClick(shown.map.get(), Qt::LeftButton, {}, shown.pixelOf(at(12, 20)));
  CHECK(told == shown.small.keyPin);
  CHECK(shown.map->overlay().litNets == std::vector<NetId>{shown.small.key, shown.small.ground});
  QTest::mouseClick(shown.map.get(), Qt::LeftButton, {}, shown.pixelOf(at(95, 3)));
  CHECK(shown.map->overlay().litNets.empty());
}

TEST_CASE("hovering tells pin, net, part and last verdict; over copper the net alone") {
  ShownMap shown;
  MapPlace place;
  shown.map->onPlace = [&](const MapPlace& p) { place = p; };
  shown.map->verdictOf = [&](PinId pin) {
    return pin == shown.small.keyPin ? QStringLiteral("open") : QString();
  };
  QTest::mouseMove(shown.map.get(), shown.pixelOf(at(12, 20)));
  CHECK(place.pin == shown.small.keyPin);
  CHECK(place.net == shown.small.key);
  CHECK(place.part == shown.small.board.parts.begin()->id);
  CHECK(place.text.startsWith(QStringLiteral("J4.3, net KEY_COL3, open")));
  QTest::mouseMove(shown.map.get(), shown.pixelOf(at(30, 20)));
  CHECK_FALSE(place.pin);
  CHECK(place.net == shown.small.key);
  // On the inner layer, which is not seen from here.
  QTest::mouseMove(shown.map.get(), shown.pixelOf(at(50, 20)));
  CHECK_FALSE(place.net);
  shown.map->seeThrough(true);
  QTest::mouseMove(shown.map.get(), shown.pixelOf(at(51, 20)));
  CHECK(place.net == shown.small.key);
}

TEST_CASE("two clicks measure a distance, whatever way the board lies") {
  ShownMap shown;
  shown.map->setTurn(Degrees(33));
  std::optional<MapMeasure> told;
  shown.map->onMeasured = [&](const MapMeasure& m) { told = m; };
  QTest::keyClick(shown.map.get(), Qt::Key_M);
  QTest::mouseClick(shown.map.get(), Qt::LeftButton, {}, shown.pixelOf(at(20, 20)));
  CHECK_FALSE(told);
  QTest::mouseClick(shown.map.get(), Qt::LeftButton, {}, shown.pixelOf(at(50, 40)));
  REQUIRE(told);
  const double pixel = 1.5 / shown.map->view().scale.value;
  CHECK(distance(told->from, told->to).mm() == Approx(std::hypot(30, 20)).margin(pixel));
  CHECK((told->to.x - told->from.x).mm() == Approx(30).margin(pixel));
  CHECK((told->to.y - told->from.y).mm() == Approx(20).margin(pixel));
  CHECK(shown.map->overlay().litNets.empty()); // measuring lights nothing
  QTest::keyClick(shown.map.get(), Qt::Key_Escape);
  CHECK_FALSE(shown.map->measuring());
}

TEST_CASE("by keys alone a pin is found, told, lit and measured from") {
  ShownMap shown;
  CopperMap& map = *shown.map;
  MapPlace place;
  map.onPlace = [&](const MapPlace& p) { place = p; };
  REQUIRE(map.zoomTo(shown.small.keyPin));
  QTest::keyClick(&map, Qt::Key_Plus);
  CHECK(place.pin == shown.small.keyPin);
  CHECK(map.accessibleDescription().contains(QStringLiteral("J4.3")));
  QTest::keyClick(&map, Qt::Key_Return);
  CHECK(map.overlay().litNets == std::vector<NetId>{shown.small.key});
  QTest::keyClick(&map, Qt::Key_M);
  QTest::keyClick(&map, Qt::Key_Return);
  QTest::keyClick(&map, Qt::Key_Right);
  QTest::keyClick(&map, Qt::Key_Return);
  REQUIRE(map.measured());
  CHECK(map.measured()->to.x > map.measured()->from.x);
}

TEST_CASE("keys turn the board as it lies and Tab leads on to the next widget") {
  ShownMap shown;
  CopperMap& map = *shown.map;
  QTest::keyClick(&map, Qt::Key_R);
  CHECK(map.view().turn.value == 270);
  QTest::keyClick(&map, Qt::Key_L);
  QTest::keyClick(&map, Qt::Key_Comma);
  CHECK(map.view().turn.value == 5);
  // All of the board stays in sight.
  for (const Point corner : {at(0, 0), at(100, 0), at(100, 50), at(0, 50)})
    CHECK(map.view().frame.contains(map.view().toPicture(corner)));
  QTest::keyClick(&map, Qt::Key_0);
  CHECK(map.view().turn.value == 0);
  QTest::keyClick(&map, Qt::Key_X);
  CHECK(map.seesThrough());

  QWidget window;
  auto* inside = new CopperMap(&window);
  auto* other = new QLineEdit(&window);
  QWidget::setTabOrder(inside, other);
  window.show();
  window.activateWindow();
  inside->setFocus();
  QCoreApplication::processEvents();
  QTest::keyClick(inside, Qt::Key_Tab);
  CHECK(window.focusWidget() == other);
}

TEST_CASE("parts, pins and nets are zoomed to, from the side that they are on") {
  ShownMap shown;
  CopperMap& map = *shown.map;
  const PartId below = shown.small.part("U9", Side::bottom, box(80, 10, 86, 16));
  map.setBoard(shown.small.board);
  REQUIRE(map.settle());
  REQUIRE(map.zoomTo(below));
  CHECK(map.view().side == Side::bottom);
  CHECK(map.view().frame.contains(map.view().toPicture(at(83, 13))));
  REQUIRE(map.zoomTo(shown.small.key));
  for (const Point p : {at(12, 20), at(90, 20)})
    CHECK(map.view().frame.contains(map.view().toPicture(p)));
  CHECK_FALSE(map.zoomTo(PartId(999'999)));
  CHECK_FALSE(map.zoomTo(NetId()));
}

TEST_CASE("Space in the list of layers dims a layer, hides it and shows it again") {
  ShownMap shown;
  MapLayers layers(*shown.map);
  shown.map->onLayersChanged = [&] { layers.refresh(); };
  REQUIRE(layers.count() == 3);
  layers.setCurrentRow(0);
  QTest::keyClick(&layers, Qt::Key_Space);
  CHECK(shown.map->layerShow(shown.small.top) == LayerShow::dimmed);
  CHECK(layers.item(0)->text() == QStringLiteral("top: dimmed"));
  QTest::keyClick(&layers, Qt::Key_Space);
  CHECK(shown.map->overlay().hidden == std::vector<LayerId>{shown.small.top});
  QTest::keyClick(&layers, Qt::Key_Space);
  CHECK(shown.map->layerShow(shown.small.top) == LayerShow::whole);
}

TEST_CASE("the caller's overlay leaves the reader's own choices alone") {
  ShownMap shown;
  shown.map->seeThrough(true);
  shown.map->setLayerShow(shown.small.inner, LayerShow::hidden);
  Overlay overlay;
  overlay.litNets = {shown.small.ground};
  shown.map->setOverlay(overlay);
  CHECK(shown.map->overlay().litNets == overlay.litNets);
  CHECK(shown.map->seesThrough());
  CHECK(shown.map->layerShow(shown.small.inner) == LayerShow::hidden);
}
