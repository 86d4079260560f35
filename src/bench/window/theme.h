#pragma once

#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// Style and palette of all widgets. Set before there are any it costs nothing; afterwards each is looked at
/// again.
void setFace(PictureTheme theme);

} // namespace netmend
