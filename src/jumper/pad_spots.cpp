#include "pad_spots.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "netmend/board/shape.h"
#include "netmend/jumper/keep_out.h"
#include "rings.h"

namespace netmend {
namespace {

/// nm to the nearest edge.
double toEdge(const Ring& ring, Point p) {
  double least = std::numeric_limits<double>::max();
  for (std::size_t i = 0, before = ring.size() - 1; i < ring.size(); before = i++)
    least = std::min(least, segmentDistance(p, p, ring[before], ring[i]));
  return least;
}

/// The middle of the longest stretch of the line y = `y` inside the ring; nothing when there is none to speak
/// of.
std::optional<Point> middleOnLine(const Ring& ring, Length y) {
  std::vector<double> crossings;
  for (std::size_t i = 0, before = ring.size() - 1; i < ring.size(); before = i++) {
    const Point a = ring[before], b = ring[i];
    if ((a.y > y) == (b.y > y)) continue;
    const double share = static_cast<double>((y - a.y).nm) / static_cast<double>((b.y - a.y).nm);
    crossings.push_back(static_cast<double>(a.x.nm) + share * static_cast<double>((b.x - a.x).nm));
  }
  std::sort(crossings.begin(), crossings.end());
  double longest = 4.0; // nm: rounding must not take the middle out
  std::optional<Point> middle;
  for (std::size_t i = 1; i < crossings.size(); i += 2) {
    const double from = crossings[i - 1], to = crossings[i];
    if (to - from <= longest) continue;
    longest = to - from;
    middle = Point{Length(std::llround((from + to) / 2)), y};
  }
  return middle;
}

/// Middles of the copper along lines across it, both ways: copper in one piece has some on each line.
Ring middlesOf(const Ring& ring) {
  constexpr std::int64_t lines = 8;
  Ring turned, out;
  Box box;
  for (const Point p : ring) {
    box.include(p);
    turned.push_back({p.y, p.x});
  }
  for (std::int64_t i = 0; i < lines; ++i) {
    const auto along = [&](Length from, Length to) { return from + (to - from) * (2 * i + 1) / (2 * lines); };
    if (const auto p = middleOnLine(ring, along(box.min.y, box.max.y))) out.push_back(*p);
    if (const auto p = middleOnLine(turned, along(box.min.x, box.max.x))) out.push_back({p->y, p->x});
  }
  return out;
}

std::vector<Point> spotsOnPolygon(const Pad& pad, const Ring& ring) {
  std::vector<std::pair<double, Point>> deepest;
  for (const Point p : middlesOf(ring))
    deepest.emplace_back(toEdge(ring, p), p);
  std::stable_sort(deepest.begin(), deepest.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  const auto hole = drillCentre(pad);
  const Point middle = hole.value_or(pad.position.value);
  const double enough = hole || deepest.empty() ? 0.0 : deepest.front().first / 2;
  std::vector<Point> spots;
  if (covers({ring, {}}, middle) && toEdge(ring, middle) >= enough) spots.push_back(middle);
  for (const auto& [depth, p] : deepest)
    spots.push_back(p);
  if (spots.empty()) spots.push_back(pad.position.value);
  return spots;
}

} // namespace

std::vector<Point> spotsOn(const Pad& pad) {
  const auto shape = padShape(pad);
  if (shape && pad.shape.value == PadShape::polygon) return spotsOnPolygon(pad, shape->core);
  std::vector<Point> spots{pad.position.value};
  if (!pad.size.known() || pad.drill.valueOr({}).width.nm > 0) return spots;
  const Length x = pad.size.value.width * 3 / 8, y = pad.size.value.height * 3 / 8;
  for (const Point offset : {Point{x, {}}, Point{-x, {}}, Point{{}, y}, Point{{}, -y}})
    spots.push_back(placed(pad.position.value, pad.rotation, offset));
  return spots;
}

} // namespace netmend
