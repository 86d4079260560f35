#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "netmend/base/geometry.h"

namespace netmend {

/// A stretch of a line that lies inside an area, in nm.
struct Span {
  double from;
  double to;
};

/// Parallel lines at `first`, `first + step` …
struct SliceGrid {
  double first = 0.0;
  double step = 1.0;
  std::size_t count = 0;
  [[nodiscard]] double at(std::size_t index) const { return first + static_cast<double>(index) * step; }
};

/// For each line the stretches inside the area, in order.
using Slices = std::vector<std::vector<Span>>;

/// Inside is what an odd number of crossings leads to, so that rings with holes cut open by a keyhole come
/// out right; stretches that touch are one.
[[nodiscard]] Slices slicesAlongX(const Polygon& area, const SliceGrid& atY);
[[nodiscard]] Slices slicesAlongY(const Polygon& area, const SliceGrid& atX);

/// The number of the span that holds `at`.
[[nodiscard]] std::optional<std::size_t> spanAt(const std::vector<Span>& spans, double at);

} // namespace netmend
