#pragma once

#include "bench_rig.h"

namespace netmend::testing {

/// With letters at 200 % the least that the window asks for is a small screen.
inline void checkRoom(const BenchRig& rig) {
  rig.window->setScale(200);
  for (const Station station : stations) {
    rig.window->go(station);
    BenchRig::wait([] { return false; }, 50);
    const QSize least = rig.window->minimumSizeHint();
    INFO(stationName(station).toStdString() << ": " << least.width() << " x " << least.height());
    CHECK(least.width() <= 1280);
    CHECK(least.height() <= 800);
  }
  rig.window->setScale(100);
}

} // namespace netmend::testing
