#pragma once

#include <cmath>
#include <numbers>
#include <random>

#include "netmend/jumper/keep_out.h"
#include "support/millimetres.h"

/// Shapes and scenes that several tests of ways use.
namespace netmend::test {

inline Ring reversed(Ring ring) {
  return {ring.rbegin(), ring.rend()};
}

/// Corners on the circle.
inline Ring disc(Point centre, double radius, int corners) {
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    const double a = 2 * std::numbers::pi * i / corners;
    ring.push_back(centre + mm(radius * std::cos(a), radius * std::sin(a)));
  }
  return ring;
}

inline double lengthMm(const std::vector<Point>& way) {
  long double sum = 0;
  for (std::size_t i = 1; i < way.size(); ++i)
    sum += std::hypot(static_cast<long double>(way[i].x.nm - way[i - 1].x.nm),
                      static_cast<long double>(way[i].y.nm - way[i - 1].y.nm));
  return static_cast<double>(sum * 1e-6L);
}

struct Scene {
  double width, height;
  std::vector<Ring> blocks; ///< convex, counter-clockwise, may overlap
  [[nodiscard]] Box bounds() const { return {mm(0, 0), mm(width, height)}; }
  /// With the outside of the area blocked too.
  [[nodiscard]] std::vector<Ring> loops() const {
    std::vector<Ring> result = blocks;
    result.push_back(box(-1, -1, width + 1, height + 1));
    result.push_back(reversed(box(0, 0, width, height)));
    return result;
  }
};

inline Scene randomScene(std::mt19937& random, int count, double width, double height, double largest) {
  std::uniform_real_distribution<double> unit(0, 1);
  Scene scene{width, height, {}};
  for (int i = 0; i < count; ++i) {
    const double angle = unit(random) < 0.5 ? 0 : 2 * std::numbers::pi * unit(random);
    const double a = (0.2 + unit(random)) * largest / 2, b = (0.2 + unit(random)) * largest / 2;
    const Point at = mm(width * unit(random), height * unit(random));
    std::vector<Point> corners;
    for (const auto& [x, y] : {std::pair{-a, -b}, {a, -b}, {a, b}, {-a, b}})
      corners.push_back(
          at + mm(x * std::cos(angle) - y * std::sin(angle), x * std::sin(angle) + y * std::cos(angle)));
    scene.blocks.push_back(hullOf(corners));
  }
  return scene;
}

/// Exact, and written apart from the code under test: does the segment enter the inside of a convex ring?
inline bool enters(const Ring& ring, Point a, Point b) {
  // A segment misses the inside of a convex ring just when a line keeps them apart: the line of one of the
  // ring's edges, or the segment's own. Products stay below 2^63, where a long double is exact.
  const auto area = [](Point p, Point q, Point r) {
    return static_cast<long double>(q.x.nm - p.x.nm) * static_cast<long double>(r.y.nm - p.y.nm) -
           static_cast<long double>(q.y.nm - p.y.nm) * static_cast<long double>(r.x.nm - p.x.nm);
  };
  bool allLeft = true, allRight = true;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point p = ring[i], q = ring[(i + 1) % ring.size()];
    if (area(p, q, a) <= 0 && area(p, q, b) <= 0) return false;
    allLeft = allLeft && area(a, b, p) >= 0;
    allRight = allRight && area(a, b, p) <= 0;
  }
  return !allLeft && !allRight;
}

} // namespace netmend::test
