#include <catch2/catch.hpp>

#include <QApplication>
#include <QPushButton>
#include <QSplitter>
#include <QTest>

#include "room.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("a wider window gives its room to the station and to the map") {
  BenchRig rig;
  rig.window->go(Station::find);
  rig.window->resize(1920, 1080);
  BenchRig::wait([] { return false; }, 50);
  const QList<int> sizes = rig.window->findChild<QSplitter*>()->sizes();
  REQUIRE(sizes.size() == 2);
  CHECK(sizes[0] > sizes[1]);
  CHECK(sizes[1] > 500);
}

TEST_CASE("with letters at 200 % every station fits 1280 by 800 pixels") {
  BenchRig rig;
  checkRoom(rig);
}

TEST_CASE("the key for why shows reasons at every station, also at those that are opened later") {
  BenchRig rig;
  rig.window->go(Station::walk);
  const auto pressed = [&](Station station) {
    rig.window->go(station);
    for (const QPushButton* button : rig.window->findChildren<QPushButton*>(QStringLiteral("why")))
      if (button->isVisible()) return button->isChecked();
    FAIL("no such button");
    return false;
  };
  CHECK_FALSE(pressed(Station::find));
  QTest::keyClick(QApplication::focusWidget(), whyKey);
  CHECK(pressed(Station::find));
  CHECK(pressed(Station::bridge));
  QTest::keyClick(QApplication::focusWidget(), whyKey);
  CHECK_FALSE(pressed(Station::bridge));
  CHECK_FALSE(pressed(Station::find));
}
