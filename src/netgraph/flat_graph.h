#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "joints.h"
#include "netmend/netgraph/board_graph.h"

namespace netmend::copper {

struct FlatEdge {
  std::size_t a = 0;
  std::size_t b = 0;
  CopperEdge edge;
};

/// The copper of the whole board as one graph. Nodes 0 to pins - 1 are the terminals.
struct FlatGraph {
  std::vector<CopperNode> nodes;
  std::vector<FlatEdge> edges;
  /// Objects that may have neither a node nor an edge of their own, and a node of their island.
  std::vector<std::pair<std::size_t, CopperObject>> members;
};

[[nodiscard]] FlatGraph flatGraphOf(const Board& board, const Items& items,
                                    const std::vector<Contact>& contacts, const Joints& joints);

/// Cuts the graph into its islands and sorts these into nets.
[[nodiscard]] BoardGraph partition(const Board& board, FlatGraph graph);

} // namespace netmend::copper
