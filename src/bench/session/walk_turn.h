#pragma once

#include <algorithm>

#include "netmend/probing/walk_session.h"

namespace netmend {

/// Number of the point in the walk; that of all points where it is none.
[[nodiscard]] inline std::size_t indexOf(const Walk& walk, const ProbePoint& point) {
  return static_cast<std::size_t>(std::find(walk.points.begin(), walk.points.end(), point) -
                                  walk.points.begin());
}

/// What is due after the last reading, which is at this point.
[[nodiscard]] inline std::size_t after(const WalkSession& session, const ProbePoint& point) {
  return dueAfterReading(session, indexOf(session.walk, point));
}

/// A walk taken up where it was left: after its last reading.
[[nodiscard]] inline WalkSession resumed(Walk walk, std::vector<ProbePoint> passedOver) {
  WalkSession out{std::move(walk), 0, {}, std::move(passedOver)};
  out.turn = out.walk.readings.empty() ? dueFrom(out, 0) : after(out, out.walk.readings.back().point);
  return out;
}

} // namespace netmend
