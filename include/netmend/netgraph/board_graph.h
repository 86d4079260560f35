#pragma once

#include <vector>

#include "netmend/base/progress.h"
#include "netmend/netgraph/copper_graph.h"

namespace netmend {

/// One piece of copper that hangs together, found from geometry alone.
struct Island {
  CopperGraph graph;
  std::vector<NetId>
      names; ///< the nets its members are said to belong to, without repeats: more than one is a short
};

/// Where geometry and names disagree.
struct Disagreement {
  enum class Kind { shorted, disconnected } kind;
  std::vector<NetId> nets; ///< shorted: the nets joined; disconnected: the one in pieces
  Point at; ///< shorted: where foreign copper touches; disconnected: the gap's middle (nearest points)
  std::vector<CopperObject> objects; ///< the two objects at that place
};

/// The copper of a net as far as it is known: its islands, joined by an `unknownWay` hub where names
/// say that they belong together and copper does not show how.
struct NetGraph {
  NetId net;
  CopperGraph graph;
  std::size_t islandCount = 0;
};

struct BoardGraph {
  std::vector<Island> islands;
  std::vector<NetGraph> nets; ///< parallel to board.nets
};

/// Builds all islands; net names are not looked at. Then sorts them into nets by name.
/// Time O(n log n + contacts); memory linear.
[[nodiscard]] BoardGraph buildBoardGraph(const Board& board, const Progress& progress = {});

/// Compares the partition by copper with the one by names, both ways.
[[nodiscard]] std::vector<Disagreement> compareWithNames(const Board& board, const BoardGraph& graph);

} // namespace netmend
