#pragma once

#include <memory>

#include <QApplication>

#include "bench/map/copper_map.h"
#include "drawing/gui.h"
#include "drawing/small_board.h"

namespace netmend::testing {

/// A map of the small board, shown offscreen and ready.
struct ShownMap {
  SmallBoard small;
  std::unique_ptr<CopperMap> map;

  explicit ShownMap(QSize size = QSize(900, 600)) {
    needApplication<QApplication>();
    small.zone(ZoneKind::battery, "BT1", box(55, 30, 85, 48));
    map = std::make_unique<CopperMap>();
    map->resize(size);
    map->QWidget::show();
    map->activateWindow();
    map->setFocus();
    map->setBoard(small.board);
    QCoreApplication::processEvents();
    map->settle();
  }
  [[nodiscard]] QPoint pixelOf(Point p) const { return map->view().toPicture(p).toPoint(); }
};

} // namespace netmend::testing
