#pragma once

#include <optional>
#include <vector>

#include "netmend/isolation/short_priors.h"
#include "netmend/netgraph/board_graph.h"
#include "short_network.h"

namespace netmend {

/// A place where copper of the line lies beside copper of ground.
struct NearGround {
  CopperObject object; ///< the line's copper there
  std::optional<NodeIndex> node;
  AlongEdge along; ///< where it is no node
  Point at;
  int layer = -1;
  Length gap;
  double mm = 0.0; ///< copper that it stands for
  PinId pin;       ///< of the line, and …
  PinId neighbour; ///< … of ground: pads of two parts' pins side by side; none: other copper
};

/// Tracks every 2 mm, vias, pads, and areas by their mesh. Distances are between outlines on one layer; arcs
/// count as their chords. O(n log n) in the ground copper near the line.
[[nodiscard]] std::vector<NearGround> nearGround(const Board& board, const BoardGraph& boardGraph,
                                                 const CopperGraph& line, Length within);

} // namespace netmend
