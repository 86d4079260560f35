#pragma once

#include <optional>

#include "netmend/drawing/board_scene.h"
#include "sections.h"

namespace netmend {

/// A map to print: what lies on the board, and the part of it worth a closer look.
struct SheetMap {
  Side side = Side::top;
  Overlay overlay;
  Box region;
  QString caption;
};

/// One map a jumper, or one for the suspects; none for a board without places.
[[nodiscard]] std::vector<SheetMap> mapsOf(const Sheet& sheet, const BoardScene& scene);

/// The repair as the customer sees it: the wires on the first one's side, and where the line was open. None
/// where nothing has a place.
[[nodiscard]] std::optional<SheetMap> repairMap(const Sheet& sheet, const BoardScene& scene);
void paintRepairMap(QPainter& painter, const SheetMap& map, const BoardScene& scene, const QRectF& frame,
                    const SheetStyle& style);

/// The map's region, beside it the whole board with the region marked, and what the lines mean.
void paintSheetMap(QPainter& painter, const SheetMap& map, const BoardScene& scene, const QRectF& frame,
                   const SheetStyle& style);

} // namespace netmend
