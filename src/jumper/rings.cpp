#include "rings.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "exact.h"
#include "netmend/base/plane.h"

namespace netmend {

Ring cleaned(const Ring& ring) {
  Ring result;
  for (const Point p : ring)
    if (result.empty() || result.back() != p) result.push_back(p);
  while (result.size() > 1 && result.front() == result.back())
    result.pop_back();
  for (std::size_t i = 0; result.size() > 3 && i < result.size();) {
    const Point before = result[(i + result.size() - 1) % result.size()];
    const Point after = result[(i + 1) % result.size()];
    if (before != after && onSegment(before, after, result[i]))
      result.erase(result.begin() + static_cast<std::ptrdiff_t>(i));
    else
      ++i;
  }
  return result;
}

bool isSimple(const Ring& ring) {
  const std::size_t n = ring.size();
  if (n < 3) return false;
  // Edges by their lowest x: only those that overlap in x are held against each other.
  const auto low = [&](std::size_t i) { return std::min(ring[i].x, ring[(i + 1) % n].x); };
  const auto high = [&](std::size_t i) { return std::max(ring[i].x, ring[(i + 1) % n].x); };
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), 0u);
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return low(a) < low(b); });
  for (std::size_t k = 0; k < n; ++k)
    for (std::size_t m = k + 1; m < n && low(order[m]) <= high(order[k]); ++m) {
      const std::size_t i = order[k], j = order[m];
      const Point a = ring[i], b = ring[(i + 1) % n], c = ring[j], d = ring[(j + 1) % n];
      if ((i + 1) % n == j) {
        if (onSegment(a, b, d) || onSegment(c, d, a)) return false;
      } else if ((j + 1) % n == i) {
        if (onSegment(c, d, b) || onSegment(a, b, c)) return false;
      } else if (segmentsTouch(a, b, c, d)) {
        return false;
      }
    }
  return true;
}

Ring turned(const Ring& ring, bool counterClockwise) {
  Int128 area = 0;
  for (std::size_t i = 1; i + 1 < ring.size(); ++i)
    area += cross(ring[0], ring[i], ring[i + 1]);
  Ring result = ring;
  if ((area > 0) != counterClockwise) std::reverse(result.begin(), result.end());
  return result;
}

double segmentDistance(Point a, Point b, Point c, Point d) {
  if (segmentsTouch(a, b, c, d)) return 0.0;
  return std::min({distanceToSegment(c, a, b), distanceToSegment(d, a, b), distanceToSegment(a, c, d),
                   distanceToSegment(b, c, d)});
}

} // namespace netmend
