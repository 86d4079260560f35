#pragma once

#include <vector>

#include "netmend/base/geometry.h"

namespace netmend {

/// The copper that a round pen of this width leaves along the path. Empty for a pen without width.
[[nodiscard]] std::vector<Polygon> strokeOf(const Ring& path, bool closed, Length width);

/// What the polygons cover together.
[[nodiscard]] std::vector<Polygon> united(const std::vector<Polygon>& polygons);

/// The polygon as one ring: each hole is joined to the outline by a slit without width.
[[nodiscard]] Ring asOneRing(const Polygon& polygon);

/// What a closed shape covers that is filled and whose edge is drawn by a round pen of this width.
[[nodiscard]] std::vector<Polygon> filledShape(const Ring& ring, Length width);

/// The polygon, whose rings do not cross, grown by `margin` on every side.
[[nodiscard]] std::vector<Polygon> grown(const Polygon& polygon, Length margin);

/// Undoes the slits: edges that are walked in both directions are left out, and what remains falls into
/// an outline and its holes. A ring without slits comes back as it is.
[[nodiscard]] Polygon withoutSlits(const Ring& ring);

/// Area in nm², positive when counter-clockwise.
[[nodiscard]] double signedArea(const Ring& ring);

} // namespace netmend
