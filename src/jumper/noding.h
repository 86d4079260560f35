#pragma once

#include <optional>
#include <vector>

#include "netmend/base/geometry.h"

namespace netmend {

/// A directed edge a-b with a < b: the winding number on its left is `weight` more than on its right.
struct WeightedEdge {
  Point a;
  Point b;
  int weight = 0;
};

/// Cuts all edges of the loops where they meet, so that two edges have at most an end in common, and adds up
/// equal ones. Crossings are rounded to whole nanometres, which bends the edges through them; that is
/// repeated until nothing crosses any more. Edges without weight are left out. Nothing when edges that lie
/// all but on each other would take more than some hundreds of rounds, each bending them a nanometre further
/// on.
[[nodiscard]] std::optional<std::vector<WeightedEdge>> nodedEdges(const std::vector<Ring>& loops);

} // namespace netmend
