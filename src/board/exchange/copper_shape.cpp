#include "copper_shape.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

#include "pen.h"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

namespace netmend {

namespace {

namespace bg = boost::geometry;
using GeoPoint = bg::model::d2::point_xy<double>;
using GeoPolygon = bg::model::polygon<GeoPoint, false, true>;
using GeoMulti = bg::model::multi_polygon<GeoPolygon>;
using GeoLine = bg::model::linestring<GeoPoint>;

GeoPoint geo(Point p) {
  return {static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)};
}

template <class GeoRing> GeoRing geoRing(const Ring& ring) {
  GeoRing result;
  for (const Point p : ring)
    result.push_back(geo(p));
  if (!ring.empty()) result.push_back(geo(ring.front()));
  return result;
}

GeoPolygon geo(const Polygon& polygon) {
  GeoPolygon result;
  result.outer() = geoRing<GeoPolygon::ring_type>(polygon.outer);
  for (const Ring& hole : polygon.holes)
    result.inners().push_back(geoRing<GeoPolygon::ring_type>(hole));
  bg::correct(result);
  return result;
}

template <class GeoRing> Ring ring(const GeoRing& points) {
  Ring result;
  for (const GeoPoint& p : points) {
    const Point rounded{Length(std::llround(p.x())), Length(std::llround(p.y()))};
    if (result.empty() || result.back() != rounded) result.push_back(rounded);
  }
  while (result.size() > 1 && result.front() == result.back())
    result.pop_back();
  return result;
}

std::vector<Polygon> polygons(const GeoMulti& multi) {
  std::vector<Polygon> result;
  for (const GeoPolygon& polygon : multi) {
    Polygon one{ring(polygon.outer()), {}};
    if (one.outer.size() < 3) continue;
    for (const auto& hole : polygon.inners()) {
      Ring inner = ring(hole);
      if (inner.size() >= 3) one.holes.push_back(std::move(inner));
    }
    result.push_back(std::move(one));
  }
  return result;
}

/// Points on a full circle so that the chords stay within 1 µm of it.
std::size_t pointsOnCircle(double radius) {
  if (radius <= 2000) return 16;
  const double step = 2 * std::acos(1 - 1000 / radius);
  return static_cast<std::size_t>(std::clamp(std::ceil(2 * std::numbers::pi / step), 16.0, 360.0));
}

/// Grows a line or polygon by `radius` with round corners.
template <class Geometry> std::vector<Polygon> buffered(const Geometry& geometry, double radius) {
  namespace sb = bg::strategy::buffer; // NOLINT(misc-unused-alias-decls): uses in templates are not seen
  const std::size_t corners = pointsOnCircle(radius);
  GeoMulti result;
  try {
    bg::buffer(geometry, result, sb::distance_symmetric<double>(radius), sb::side_straight(),
               sb::join_round(corners), sb::end_round(corners), sb::point_circle(corners));
  } catch (const bg::exception&) {
    return {}; // callers treat "no shape" as not representable
  }
  return polygons(result);
}

/// Marks edges that have a partner in the other direction; both sides of a slit.
std::vector<bool> slitEdges(const Ring& corners) {
  struct Edge {
    Point low, high;
    bool upwards;
    std::size_t index;
  };
  const std::size_t n = corners.size();
  std::vector<Edge> edges(n);
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = corners[i];
    const Point b = corners[(i + 1) % n];
    edges[i] = a < b ? Edge{a, b, true, i} : Edge{b, a, false, i};
  }
  const auto key = [](const Edge& e) { return std::tie(e.low, e.high, e.upwards, e.index); };
  std::sort(edges.begin(), edges.end(), [&](const Edge& a, const Edge& b) { return key(a) < key(b); });
  std::vector<bool> slit(n, false);
  for (std::size_t first = 0, end = 0; first < n; first = end) {
    std::size_t up = first; // edges downwards come first
    for (end = first; end < n && edges[end].low == edges[first].low && edges[end].high == edges[first].high;
         ++end)
      if (!edges[end].upwards) ++up;
    for (std::size_t k = 0; first + k < up && up + k < end; ++k)
      slit[edges[first + k].index] = slit[edges[up + k].index] = true;
  }
  return slit;
}

} // namespace

std::vector<Polygon> strokeOf(const Ring& path, bool closed, Length width) {
  if (width.nm <= 0 || path.empty()) return {};
  if (auto drawn = penStroke(path, closed, width / 2)) return {std::move(*drawn)};
  GeoLine line;
  for (const Point p : path)
    line.push_back(geo(p));
  if (closed) line.push_back(geo(path.front()));
  return buffered(line, static_cast<double>(width.nm) / 2);
}

std::vector<Polygon> united(const std::vector<Polygon>& parts) {
  GeoMulti sum;
  for (const Polygon& part : parts) {
    GeoMulti next;
    try {
      bg::union_(sum, geo(part), next);
    } catch (const bg::exception&) {
      continue;
    }
    sum = std::move(next);
  }
  return polygons(sum);
}

std::vector<Polygon> grown(const Polygon& polygon, Length margin) {
  if (auto drawn = penDrawn(polygon, margin)) return {std::move(*drawn)};
  return buffered(geo(polygon), static_cast<double>(margin.nm));
}

std::vector<Polygon> filledShape(const Ring& ring, Length width) {
  if (width.nm <= 0) return {{ring, {}}};
  const Polygon polygon = withoutSlits(ring);
  if (ring.size() >= 3 && !crossesItself(polygon)) return grown(polygon, width / 2);
  std::vector<Polygon> parts = strokeOf(ring, true, width);
  parts.push_back({ring, {}});
  return united(parts);
}

Ring asOneRing(const Polygon& polygon) {
  Ring result = polygon.outer;
  for (const Ring& hole : polygon.holes) {
    if (hole.empty() || result.empty()) continue;
    // From the hole's rightmost corner to the nearest corner seen; a slit has no width, so that crossing
    // another hole would still leave the area as it is.
    const auto from = std::max_element(hole.begin(), hole.end());
    const auto to = std::min_element(result.begin(), result.end(), [&](Point a, Point b) {
      return distance(a, *from) < distance(b, *from);
    });
    Ring way{from, hole.end()};
    way.insert(way.end(), hole.begin(), from + 1);
    way.push_back(*to);
    result.insert(to + 1, way.begin(), way.end());
  }
  return result;
}

double signedArea(const Ring& corners) {
  double sum = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point a = corners[i] - corners.front();
    const Point b = corners[(i + 1) % corners.size()] - corners.front();
    sum += static_cast<double>(a.x.nm) * static_cast<double>(b.y.nm) -
           static_cast<double>(b.x.nm) * static_cast<double>(a.y.nm);
  }
  return sum / 2;
}

Polygon withoutSlits(const Ring& corners) {
  const std::vector<bool> slit = slitEdges(corners);
  if (std::find(slit.begin(), slit.end(), true) == slit.end()) return {corners, {}};
  // What is left are runs of edges; each run's end is some run's start.
  const std::size_t n = corners.size();
  std::multimap<Point, std::size_t> runs;
  for (std::size_t i = 0; i < n; ++i)
    if (!slit[i] && slit[(i + n - 1) % n]) runs.emplace(corners[i], i);
  std::vector<Ring> rings;
  while (!runs.empty()) {
    Ring one;
    Point at = runs.begin()->first;
    for (auto run = runs.begin(); run != runs.end(); run = runs.find(at)) {
      std::size_t edge = run->second;
      runs.erase(run);
      for (; !slit[edge]; edge = (edge + 1) % n)
        one.push_back(corners[edge]);
      at = corners[edge];
    }
    if (one.size() >= 3) rings.push_back(std::move(one));
  }
  if (rings.empty()) return {corners, {}};
  const auto outer = std::max_element(rings.begin(), rings.end(), [](const Ring& a, const Ring& b) {
    return std::abs(signedArea(a)) < std::abs(signedArea(b));
  });
  Polygon result{std::move(*outer), {}};
  rings.erase(outer);
  result.holes = std::move(rings);
  return result;
}

} // namespace netmend
