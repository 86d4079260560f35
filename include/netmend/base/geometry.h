#pragma once

#include <algorithm>
#include <cmath>
#include <compare>
#include <vector>

#include "netmend/base/length.h"

namespace netmend {

/// A place on the board as seen from the top side: x to the right, y up.
struct Point {
  Length x;
  Length y;

  friend constexpr auto operator<=>(const Point&, const Point&) = default;
  friend constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
};

struct Size {
  Length width;
  Length height;
  friend constexpr auto operator<=>(const Size&, const Size&) = default;
};

/// A closed ring of corners; the first is not repeated at the end.
using Ring = std::vector<Point>;

/// A filled outline with holes. Either winding is accepted.
struct Polygon {
  Ring outer;
  std::vector<Ring> holes;
  friend bool operator==(const Polygon&, const Polygon&) = default;
};

/// An axis-parallel box; default-constructed it is empty and takes the first point.
struct Box {
  Point min{Length(INT64_MAX), Length(INT64_MAX)};
  Point max{Length(INT64_MIN), Length(INT64_MIN)};

  [[nodiscard]] bool empty() const { return min.x > max.x; }
  void include(Point p) {
    min = {std::min(min.x, p.x), std::min(min.y, p.y)};
    max = {std::max(max.x, p.x), std::max(max.y, p.y)};
  }
  [[nodiscard]] Size size() const { return empty() ? Size{} : Size{max.x - min.x, max.y - min.y}; }
};

[[nodiscard]] inline Length distance(Point a, Point b) {
  return Length(
      std::llround(std::hypot(static_cast<double>(a.x.nm - b.x.nm), static_cast<double>(a.y.nm - b.y.nm))));
}

} // namespace netmend
