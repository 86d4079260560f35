#pragma once

#include <QScrollArea>

#include "bench_rig.h"

namespace netmend::testing {

inline bool scrolls(const QWidget* widget) {
  for (; widget != nullptr; widget = widget->parentWidget())
    if (qobject_cast<const QScrollArea*>(widget) != nullptr) return true;
  return false;
}

/// With letters at 200 % the window fits a small screen, and nothing on it is cut off.
inline void checkRoom(const BenchRig& rig) {
  rig.window->setScale(200);
  for (const Station station : stations) {
    rig.window->go(station);
    rig.window->resize(1280, 800);
    BenchRig::wait([] { return false; }, 50);
    INFO(stationName(station).toStdString());
    CHECK(rig.window->width() <= 1280);
    CHECK(rig.window->height() <= 800);
    for (const QLabel* label : rig.window->findChildren<QLabel*>()) {
      if (!label->isVisible() || label->text().isEmpty() || scrolls(label)) continue;
      const int needed =
          label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
      INFO(label->objectName().toStdString() << ": " << label->text().toStdString());
      CHECK(label->height() >= needed);
    }
  }
  rig.window->setScale(100);
}

} // namespace netmend::testing
