#pragma once

#include "netmend/base/geometry.h"

namespace netmend {

/// Without repeated and straight corners (a corner where the ring turns back on itself stays).
[[nodiscard]] Ring cleaned(const Ring& ring);
/// No two edges have more in common than neighbours share.
[[nodiscard]] bool isSimple(const Ring& ring);
/// The same ring counter-clockwise, or clockwise.
[[nodiscard]] Ring turned(const Ring& ring, bool counterClockwise);
/// A clockwise loop round the inside of an outline where a disc of radius `by` fits; together with a
/// counter-clockwise loop far outside, its winding number is positive elsewhere. The ring must be simple.
[[nodiscard]] Ring shrunkOutline(const Ring& outline, Length by, int segmentsPerCorner);
/// Distance in nm from the segment a-b to c-d.
[[nodiscard]] double segmentDistance(Point a, Point b, Point c, Point d);

} // namespace netmend
