#pragma once

#include <optional>

#include "netmend/base/geometry.h"

namespace netmend::kicad {

/// The polygon with its edge drawn by a round pen of twice `reach`, to within 1 µm; its rings may not cross
/// themselves or each other. Time O(n log n) for the short edges of real fills. Nothing where it cannot tell,
/// which takes corners that meet in a way no small shift takes apart.
[[nodiscard]] std::optional<Polygon> penDrawn(const Polygon& polygon, Length reach);

} // namespace netmend::kicad
