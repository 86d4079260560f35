#pragma once

#include "netmend/casework/short_case.h"
#include "netmend/drawing/overlay.h"

namespace netmend {

/// The line's copper with the drop that is predicted along it, the lettered suspects, where the current goes
/// in with what is read there, and the next point.
[[nodiscard]] Overlay shortOverlay(const ShortCase& found, const DropPattern& pattern,
                                   const PlaceNames& places);

} // namespace netmend
