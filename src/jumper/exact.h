#pragma once

#include <cstdint>

#include "netmend/base/geometry.h"

/// Predicates without rounding: coordinates are whole nanometres.
namespace netmend {

__extension__ using Int128 = __int128;

[[nodiscard]] inline int signOf(Int128 v) {
  return v > 0 ? 1 : v < 0 ? -1 : 0;
}

/// Twice the signed area of the triangle a, b, c; positive when c lies left of a-b.
[[nodiscard]] inline Int128 cross(Point a, Point b, Point c) {
  return static_cast<Int128>(b.x.nm - a.x.nm) * (c.y.nm - a.y.nm) -
         static_cast<Int128>(b.y.nm - a.y.nm) * (c.x.nm - a.x.nm);
}

[[nodiscard]] inline Int128 dot(Point a, Point b, Point c) {
  return static_cast<Int128>(b.x.nm - a.x.nm) * (c.x.nm - a.x.nm) +
         static_cast<Int128>(b.y.nm - a.y.nm) * (c.y.nm - a.y.nm);
}

/// 1 when c lies left of the line a-b, -1 right, 0 on it.
[[nodiscard]] inline int side(Point a, Point b, Point c) {
  return signOf(cross(a, b, c));
}

[[nodiscard]] inline bool inBox(Point a, Point b, Point p) {
  return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

[[nodiscard]] inline bool onSegment(Point a, Point b, Point p) {
  return inBox(a, b, p) && side(a, b, p) == 0;
}

/// The inner points of both segments have exactly one point in common.
[[nodiscard]] inline bool crossProperly(Point a, Point b, Point c, Point d) {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

[[nodiscard]] inline bool segmentsTouch(Point a, Point b, Point c, Point d) {
  return crossProperly(a, b, c, d) || onSegment(a, b, c) || onSegment(a, b, d) || onSegment(c, d, a) ||
         onSegment(c, d, b);
}

/// Positive when d lies inside the circle through the counter-clockwise triangle a, b, c. Exact while the
/// points are less than 2^30 nm apart in x and in y.
[[nodiscard]] inline int inCircle(Point a, Point b, Point c, Point d) {
  const std::int64_t ax = a.x.nm - d.x.nm, ay = a.y.nm - d.y.nm;
  const std::int64_t bx = b.x.nm - d.x.nm, by = b.y.nm - d.y.nm;
  const std::int64_t cx = c.x.nm - d.x.nm, cy = c.y.nm - d.y.nm;
  const Int128 sum = static_cast<Int128>(ax * ax + ay * ay) * (bx * cy - by * cx) +
                     static_cast<Int128>(bx * bx + by * by) * (cx * ay - cy * ax) +
                     static_cast<Int128>(cx * cx + cy * cy) * (ax * by - ay * bx);
  return signOf(sum);
}

} // namespace netmend
