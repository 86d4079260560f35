#include <algorithm>
#include <cmath>
#include <numbers>

#include "exact.h"
#include "netmend/jumper/keep_out.h"
#include "rings.h"

namespace netmend {
namespace {

/// A convex polygon in whole nanometres round a disc about the origin, counter-clockwise.
Ring discAround(Length radius, int segmentsPerCorner) {
  // Rounding away from both axes keeps the disc covered: with each corner its three mirror images are there.
  const int quarter = std::max(1, segmentsPerCorner);
  const double step = std::numbers::pi / 2 / quarter;
  const double far = static_cast<double>(radius.nm) / std::cos(step / 2);
  Ring corners;
  for (int i = 0; i < quarter; ++i) {
    const double angle = step * (i + 0.5);
    const Length x(static_cast<std::int64_t>(std::ceil(far * std::cos(angle))));
    const Length y(static_cast<std::int64_t>(std::ceil(far * std::sin(angle))));
    for (const Point p : {Point{x, y}, Point{-x, y}, Point{x, -y}, Point{-x, -y}})
      corners.push_back(p);
  }
  return hullOf(std::move(corners));
}

/// Sum of a convex ring or a segment with the disc: the hull of the disc at each corner.
Ring convexGrown(const Ring& ring, const Ring& disc) {
  std::vector<Point> all;
  all.reserve(ring.size() * disc.size());
  for (const Point p : ring)
    for (const Point q : disc)
      all.push_back(p + q);
  return hullOf(std::move(all));
}

/// Index of the disc's corner farthest to the right of the direction, the later one of two equals.
std::size_t extremeRight(const Ring& disc, Point direction) {
  const Point zero{};
  std::size_t best = 0;
  for (std::size_t i = 1; i < disc.size(); ++i) {
    const Int128 a = cross(zero, direction, disc[i]), b = cross(zero, direction, disc[best]);
    if (a < b || (a == b && dot(zero, direction, disc[i]) > dot(zero, direction, disc[best]))) best = i;
  }
  return best;
}

/// The convolution of a simple ring with a convex one: its winding number is positive just where their
/// Minkowski sum is (R. Wein, "Exact and efficient construction of planar Minkowski sums using the
/// convolution method", ESA 2006). A clockwise ring is a hole that shrinks.
Ring convolution(const Ring& ring, const Ring& disc) {
  const std::size_t n = ring.size(), k = disc.size();
  Ring loop;
  std::size_t j = extremeRight(disc, ring[0] - ring[n - 1]);
  for (std::size_t i = 0; i < n; ++i) {
    const Point from = ring[i], to = ring[(i + 1) % n], before = ring[(i + n - 1) % n];
    const std::size_t wanted = extremeRight(disc, to - from);
    loop.push_back(from + disc[j]);
    const bool leftTurn = side(before, from, to) > 0;
    while (j != wanted) {
      j = leftTurn ? (j + 1) % k : (j + k - 1) % k;
      loop.push_back(from + disc[j]);
    }
  }
  return loop;
}

bool isConvex(const Ring& ring) {
  return hullOf(ring).size() == ring.size();
}

void addWalls(std::vector<Ring>& loops, const Ring& ring, const Ring& disc) {
  if (ring.size() == 1) loops.push_back(convexGrown(ring, disc));
  for (std::size_t i = 0; i < ring.size() && ring.size() > 1; ++i)
    loops.push_back(convexGrown({ring[i], ring[(i + 1) % ring.size()]}, disc));
}

} // namespace

Ring hullOf(std::vector<Point> points) {
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return points;
  Ring hull;
  for (int pass = 0; pass < 2; ++pass) { // lower chain, then upper
    const std::size_t floor = hull.size() + 1;
    for (const Point p : points) {
      while (hull.size() > floor && side(hull[hull.size() - 2], hull.back(), p) <= 0)
        hull.pop_back();
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

std::vector<Ring> grownLoops(const KeepOut& keepOut, Length by, int segmentsPerCorner) {
  // 5 nm more, so that rounding of crossings later on never lets the wire nearer than asked.
  const Ring disc = discAround(by + Length(5), segmentsPerCorner);
  std::vector<Ring> loops;
  const Ring outer = cleaned(keepOut.core.outer);
  const bool simple = outer.size() >= 3 && isSimple(outer);
  if (keepOut.wallOnly || !simple || !keepOut.core.holes.empty()) {
    addWalls(loops, outer, disc);
    for (const Ring& hole : keepOut.core.holes)
      addWalls(loops, cleaned(hole), disc);
    if (keepOut.wallOnly || outer.size() < 3) return loops;
    if (!simple) { // nobody knows which side is meant: all of it, out to the hull
      loops.push_back(hullOf(outer));
      return loops;
    }
    loops.push_back(turned(outer, true));
    for (const Ring& hole : keepOut.core.holes)
      if (const Ring ring = cleaned(hole); ring.size() >= 3 && isSimple(ring))
        loops.push_back(turned(ring, false));
    return loops;
  }
  if (isConvex(outer))
    loops.push_back(convexGrown(outer, disc));
  else
    loops.push_back(convolution(turned(outer, true), disc));
  return loops;
}

Ring shrunkOutline(const Ring& outline, Length by, int segmentsPerCorner) {
  return convolution(turned(outline, false), discAround(by + Length(5), segmentsPerCorner));
}

} // namespace netmend
