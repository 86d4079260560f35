#include <catch2/catch.hpp>

#include <QSplitter>

#include "bench_rig.h"
#include "netmend/bench/language/language.h"

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

TEST_CASE("with letters at 200 % every station fits 1280 by 800 pixels, in every language") {
  for (const QString& language : languages()) {
    speak(language);
    BenchRig rig;
    rig.window->setScale(200);
    for (const Station station : stations) {
      rig.window->go(station);
      BenchRig::wait([] { return false; }, 50);
      const QSize least = rig.window->minimumSizeHint();
      INFO(language.toStdString() << ", " << stationName(station).toStdString() << ": " << least.width()
                                  << " x " << least.height());
      CHECK(least.width() <= 1280);
      CHECK(least.height() <= 800);
    }
    rig.window->setScale(100);
  }
  speak(QStringLiteral("en"));
}
