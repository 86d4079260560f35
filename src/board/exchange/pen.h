#pragma once

#include <optional>

#include "netmend/base/geometry.h"

namespace netmend {

// What a round pen covers, to within 1 µm, in time O(n log n) for the short edges of real fills and drawings.
// Nothing where the rings do not come out closed, which takes corners that no small shift takes apart, or
// where they are none; callers then take a union that is slower by a factor of tens.

/// The polygon with its edge drawn by a pen of twice `reach`. Its rings may not cross themselves or each
/// other.
[[nodiscard]] std::optional<Polygon> penDrawn(const Polygon& polygon, Length reach);

/// What a pen of twice `reach` covers along the path.
[[nodiscard]] std::optional<Polygon> penStroke(const Ring& path, bool closed, Length reach);

/// Whether edges of the polygon cross.
[[nodiscard]] bool crossesItself(const Polygon& polygon);

} // namespace netmend
