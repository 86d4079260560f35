#pragma once

#include <string>
#include <vector>

#include "netmend/netgraph/board_graph.h"

namespace netmend {

struct LineOptions {
  bool throughSupplies = false; ///< a line goes on through supply nets only on request; through ground never
  Ohms mostSeriesResistance{1000.0}; ///< parts above this end a line
};

/// A net and what it continues into through parts. `EdgeKind::part` edges join terminals.
struct Line {
  std::vector<NetId> nets; ///< the first is the one asked for
  CopperGraph graph;
  [[nodiscard]] std::vector<NodeIndex> terminals() const;
};

/// The current paths of a part: as the board says, or else by kind and pin count: a two-terminal
/// resistor, zero-ohm link, inductor, ferrite or fuse passes from pin to pin; a four-pin choke pairs 1-4, 2-3
/// or as the board says; everything else passes nothing. Marked guessed when derived.
[[nodiscard]] Fact<std::vector<Through>> throughPaths(const Board& board, PartId part);

[[nodiscard]] Line lineOf(const Board& board, const BoardGraph& graph, NetId net,
                          const LineOptions& options = {});

} // namespace netmend
