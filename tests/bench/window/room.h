#pragma once

#include <algorithm>

#include <QScrollArea>

#include "bench_rig.h"

namespace netmend::testing {

inline bool scrolls(const QWidget* widget) {
  for (; widget != nullptr; widget = widget->parentWidget())
    if (qobject_cast<const QScrollArea*>(widget) != nullptr) return true;
  return false;
}

inline bool hasRoom(const QLabel& label) {
  if (!label.isVisible() || label.text().isEmpty() || scrolls(&label)) return true;
  const int needed = label.wordWrap() ? label.heightForWidth(label.width()) : label.sizeHint().height();
  return label.height() >= needed;
}

/// With letters at 200 % the window fits a small screen, and nothing on it is cut off.
inline void checkRoom(const BenchRig& rig) {
  rig.window->setScale(200);
  for (const Station station : stations) {
    rig.window->go(station);
    rig.window->resize(1280, 800);
    BenchRig::wait([] { return false; }, 50);
    // A busy machine may not have laid all of it out by then.
    BenchRig::wait(
        [&] {
          const auto labels = rig.window->findChildren<QLabel*>();
          return std::all_of(labels.begin(), labels.end(),
                             [](const QLabel* label) { return hasRoom(*label); });
        },
        10'000);
    INFO(stationName(station).toStdString());
    CHECK(rig.window->width() <= 1280);
    CHECK(rig.window->height() <= 800);
    for (const QLabel* label : rig.window->findChildren<QLabel*>()) {
      INFO(label->objectName().toStdString() << ": " << label->text().toStdString());
      CHECK(hasRoom(*label));
    }
  }
  rig.window->setScale(100);
}

} // namespace netmend::testing
