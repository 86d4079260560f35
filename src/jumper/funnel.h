#pragma once

#include <utility>
#include <vector>

#include "netmend/base/geometry.h"

namespace netmend {

/// The shortest way from start to end through a row of doors, each crossed once between its left and right
/// post as seen from the start. Decided exactly; straight points are left out.
[[nodiscard]] std::vector<Point> pulledTight(Point start, const std::vector<std::pair<Point, Point>>& doors,
                                             Point end);

} // namespace netmend
