#pragma once

#include <vector>

#include "netmend/board/board.h"

namespace netmend {

/// Places on a pad's copper where a wire can be soldered, best first: its middle, then places towards its
/// ends for where a body reaches over the middle. A drilled pad is soldered at its hole. A polygon's position
/// may be anywhere, also beside its copper: it counts as the middle when it lies at least half as deep in the
/// copper as the deepest of the places found. The position alone when the shape is not known; it must be
/// known.
[[nodiscard]] std::vector<Point> spotsOn(const Pad& pad);

} // namespace netmend
