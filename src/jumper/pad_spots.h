#pragma once

#include <vector>

#include "netmend/board/board.h"

namespace netmend {

/// Places on a pad's copper where a wire can be soldered, best first: its middle, then others for where a
/// body reaches over the middle. A polygon's position may be anywhere, also beside its copper: it counts as
/// the middle when it lies at least half as deep in the copper as the deepest of the other places, and with a
/// hole that counts, wherever in the copper it is. The position, which must be known, is the only place when
/// the shape is not known.
[[nodiscard]] std::vector<Point> spotsOn(const Pad& pad);

} // namespace netmend
