#include "area_slices.h"

#include <algorithm>
#include <cmath>

namespace netmend {
namespace {

struct Corner {
  double along;
  double across;
};

using Crossings = std::vector<std::vector<double>>;

void addEdge(Corner a, Corner b, const SliceGrid& grid, Crossings& crossings) {
  if (a.across == b.across) return;
  // The same end first whichever way an edge runs: both sides of a keyhole then cross at the very same place.
  if (a.across > b.across) std::swap(a, b);
  const double low = std::ceil((a.across - grid.first) / grid.step);
  for (auto k = static_cast<std::size_t>(std::max(0.0, low)); k < grid.count; ++k) {
    const double across = grid.at(k);
    if (across >= b.across) break;
    if (across < a.across) continue;
    crossings[k].push_back(a.along + (across - a.across) / (b.across - a.across) * (b.along - a.along));
  }
}

std::vector<Span> spansBetween(std::vector<double>& crossings) {
  // Coordinates are whole nanometres: nothing narrower is a gap.
  constexpr double noGap = 0.5;
  std::sort(crossings.begin(), crossings.end());
  std::vector<Span> spans;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    if (!spans.empty() && crossings[i] - spans.back().to < noGap)
      spans.back().to = crossings[i + 1];
    else
      spans.push_back({crossings[i], crossings[i + 1]});
  }
  return spans;
}

template <class Turn> Slices slices(const Polygon& area, const SliceGrid& grid, Turn turn) {
  Crossings crossings(grid.count);
  const auto addRing = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      addEdge(turn(ring[i]), turn(ring[(i + 1) % ring.size()]), grid, crossings);
  };
  addRing(area.outer);
  for (const auto& hole : area.holes)
    addRing(hole);
  Slices result;
  result.reserve(grid.count);
  for (auto& line : crossings)
    result.push_back(spansBetween(line));
  return result;
}

} // namespace

Slices slicesAlongX(const Polygon& area, const SliceGrid& atY) {
  return slices(area, atY, [](Point p) {
    return Corner{static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)};
  });
}

Slices slicesAlongY(const Polygon& area, const SliceGrid& atX) {
  return slices(area, atX, [](Point p) {
    return Corner{static_cast<double>(p.y.nm), static_cast<double>(p.x.nm)};
  });
}

std::optional<std::size_t> spanAt(const std::vector<Span>& spans, double at) {
  const auto after =
      std::upper_bound(spans.begin(), spans.end(), at, [](double x, const Span& s) { return x < s.from; });
  if (after == spans.begin() || at > (after - 1)->to) return std::nullopt;
  return static_cast<std::size_t>(after - spans.begin() - 1);
}

} // namespace netmend
