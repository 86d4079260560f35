#pragma once

#include <algorithm>

#include "netmend/probing/walk_session.h"

namespace netmend {

/// Number of the point in the walk; that of all points where it is none.
[[nodiscard]] inline std::size_t indexOf(const Walk& walk, const ProbePoint& point) {
  return static_cast<std::size_t>(std::find(walk.points.begin(), walk.points.end(), point) -
                                  walk.points.begin());
}

[[nodiscard]] inline std::size_t after(const Walk& walk, const ProbePoint& point) {
  return std::min(indexOf(walk, point) + 1, walk.points.size());
}

/// A walk taken up where it was left: after its last reading.
[[nodiscard]] inline WalkSession resumed(Walk walk) {
  const std::size_t turn = walk.readings.empty() ? 0 : after(walk, walk.readings.back().point);
  return {std::move(walk), turn, {}};
}

} // namespace netmend
