#pragma once

#include <memory>

#include "map_board.h"
#include "netmend/drawing/board_photo.h"
#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// All that decides what a place of the picture looks like, apart from where one looks. Values that never
/// change once made: shared between the event loop and the painting thread.
struct MapStyle {
  std::shared_ptr<const MapBoard> board;
  std::vector<ShownPhoto> photos; ///< in this order, of both sides
  Overlay overlay;
  PictureColors colors;
  PictureTheme theme = PictureTheme::light;
  PictureType type;
  double pixelRatio = 1.0; ///< of the screen: device pixels per picture unit
  bool photoOnly = false;  ///< nothing of the drawing
};

/// Whether both give the same copper; words and marks may differ.
[[nodiscard]] bool sameCopper(const MapStyle& a, const MapStyle& b);
/// Whether copper painted in one may stand in for the other's until that is ready.
[[nodiscard]] bool standsIn(const MapStyle& a, const MapStyle& b);

} // namespace netmend
