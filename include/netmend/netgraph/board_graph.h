#pragma once

#include <vector>

#include "netmend/base/progress.h"
#include "netmend/netgraph/copper_graph.h"

namespace netmend {

/// One piece of copper that hangs together, found from geometry alone, with the part pins on it. A pin
/// whose place is unknown is an island by itself.
struct Island {
  CopperGraph graph;
  /// Everything that it is made of: pins, pads, tracks, vias, areas; each once.
  std::vector<CopperObject> members;
  /// The nets its members are said to belong to, ascending, without repeats: more than one is a short.
  std::vector<NetId> names;
};

/// Where geometry and names disagree.
struct Disagreement {
  enum class Kind { shorted, disconnected } kind;
  std::vector<NetId> nets; ///< shorted: the nets joined; disconnected: the one in pieces
  Point at; ///< shorted: where foreign copper touches; disconnected: the gap's middle (nearest points)
  std::vector<CopperObject> objects; ///< the two objects at that place
};

/// Nets that a part's own copper joins on purpose: a solder jumper drawn closed, a net tie. Of such a part
/// the pads are said to be of different nets, and touch each other or copper that is drawn over them without
/// a net.
struct DrawnJoin {
  PartId part;
  std::vector<NetId> nets; ///< ascending
  Point at;                ///< on that copper
};

/// The copper of a net as far as it is known: its islands, joined by an `unknownWay` hub where names
/// say that they belong together and copper does not show how. Of an island shorted to other nets it has
/// what lies nearer (in steps along the graph) to copper of its own name.
struct NetGraph {
  NetId net;
  CopperGraph graph;
  std::size_t islandCount = 0; ///< pieces before the hub joins them; a pin without a place is one
};

struct BoardGraph {
  std::vector<Island> islands; ///< ordered by their first pin, then copper without pins
  std::vector<NetGraph> nets;  ///< parallel to board.nets
};

/// Builds all islands; net names are not looked at. Then sorts them into nets by name.
/// Time O(n log n + contacts); memory linear. What is copper and what touches: docs/methods/netgraph.md.
/// When stopped by `progress` it gives an empty graph.
[[nodiscard]] BoardGraph buildBoardGraph(const Board& board, const Progress& progress = {});

/// Compares the partition by copper with the one by names, both ways. A net with k pieces that have a place
/// gives k - 1 gaps, the shortest ones that would join it; a short is given at each pair of touching
/// objects. Pins without a place are not missed, and on a board without any track, via or area nothing is.
/// What `drawnJoins` gives is no disagreement.
[[nodiscard]] std::vector<Disagreement> compareWithNames(const Board& board, const BoardGraph& graph);

/// Every part that joins nets by its own copper.
[[nodiscard]] std::vector<DrawnJoin> drawnJoins(const Board& board, const BoardGraph& graph);

} // namespace netmend
