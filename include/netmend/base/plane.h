#pragma once

#include <algorithm>
#include <cmath>
#include <span>

#include "netmend/base/geometry.h"

/// Plane geometry in double. Coordinates are in whatever unit the caller uses; nanometres are held exactly up
/// to 9 m. What must not be rounded is in jumper/exact.h.
namespace netmend {

struct Vec {
  double x = 0.0;
  double y = 0.0;

  friend constexpr Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec operator*(Vec a, double f) { return {a.x * f, a.y * f}; }
  friend constexpr bool operator==(Vec, Vec) = default;
};

/// In nanometres.
[[nodiscard]] inline Vec vecOf(Point p) {
  return {static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)};
}
[[nodiscard]] constexpr double dot(Vec a, Vec b) {
  return a.x * b.x + a.y * b.y;
}
/// Twice the area between them; positive when b lies left of a.
[[nodiscard]] constexpr double cross(Vec a, Vec b) {
  return a.x * b.y - a.y * b.x;
}
[[nodiscard]] inline double length(Vec v) {
  return std::sqrt(dot(v, v));
}

/// The place of the segment a-b that is nearest to p.
[[nodiscard]] inline Vec footOnSegment(Vec p, Vec a, Vec b) {
  const Vec d = b - a;
  const double squared = dot(d, d);
  if (squared == 0.0) return a;
  return a + d * std::clamp(dot(p - a, d) / squared, 0.0, 1.0);
}
[[nodiscard]] inline double distanceToSegment(Vec p, Vec a, Vec b) {
  return length(footOnSegment(p, a, b) - p);
}
/// In nanometres.
[[nodiscard]] inline double distanceToSegment(Point p, Point a, Point b) {
  return distanceToSegment({}, vecOf(a - p), vecOf(b - p));
}

/// Whether the edge a-b crosses the ray from p to the right: odd often for the points inside a ring.
[[nodiscard]] constexpr bool crossesRay(Vec a, Vec b, Vec p) {
  if ((a.y > p.y) == (b.y > p.y)) return false;
  const double side = cross(b - a, p - a);
  return b.y > a.y ? side > 0.0 : side < 0.0;
}
/// Even-odd rule; what is on the edge may be either.
[[nodiscard]] inline bool insideRing(std::span<const Vec> ring, Vec p) {
  bool odd = false;
  for (std::size_t i = 0; i < ring.size(); ++i)
    odd ^= crossesRay(ring[i], ring[(i + 1) % ring.size()], p);
  return odd;
}
[[nodiscard]] inline bool insideRing(const Ring& ring, Vec p) {
  bool odd = false;
  for (std::size_t i = 0; i < ring.size(); ++i)
    odd ^= crossesRay(vecOf(ring[i]), vecOf(ring[(i + 1) % ring.size()]), p);
  return odd;
}

} // namespace netmend
