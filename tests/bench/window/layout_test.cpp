#include <catch2/catch.hpp>

#include <QSplitter>

#include "room.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("a wider window gives its room to the station and to the map") {
  BenchRig rig;
  rig.window->go(Station::walk);
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
