#pragma once

#include <QPalette>

#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// The palette of widgets that goes with a theme of the pictures.
[[nodiscard]] QPalette widgetPalette(PictureTheme theme);

} // namespace netmend
