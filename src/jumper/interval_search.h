#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "netmend/jumper/shortest_way.h"

namespace netmend {

/// The row of mesh edges that a shortest way crosses, each with its left and right vertex as seen on the way;
/// empty optional: there is none. `starts` and `ends` are the free triangles that hold the two points.
[[nodiscard]] std::optional<std::vector<std::pair<std::int32_t, std::int32_t>>>
doorsOfShortestWay(const NavigationMesh& mesh, Point from, Point to, const std::vector<std::int32_t>& starts,
                   const std::vector<std::int32_t>& ends, const std::vector<MeshEdge>& closed);

} // namespace netmend
