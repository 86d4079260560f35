#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/netgraph/line.h"

namespace netmend {

inline constexpr std::size_t noCell = std::numeric_limits<std::size_t>::max();

/// Something whose loss splits the line: a bridge of its graph, or a piece of one.
struct CutEdge {
  std::size_t copperEdge = 0; ///< position among the graph's edges
  double share = 1.0;         ///< of the copper edge: pieces of a track
  std::optional<Point> from;
  std::optional<Point> to;
};

/// A place between the pieces of an outer track.
struct TrackPlace {
  std::size_t cell;
  CopperObject object;
  Point at;
  int layer;
};

/// The line as a tree: a cell is copper that no single break can part, an edge of the tree is what can break.
/// Cells are numbered in preorder, so that what hangs below cell c is the interval [c, end[c]).
struct LineCells {
  std::vector<CopperEdge> edges;       ///< of the graph, as iterated
  std::vector<std::size_t> cellOfNode; ///< by node of the line's graph
  std::vector<std::size_t> parent;     ///< noCell for the root of each tree
  std::vector<std::size_t> end;
  std::vector<std::size_t> root;
  std::vector<CutEdge> above;             ///< the edge to the parent; meaningless for roots
  std::vector<double> ohmsToRoot;         ///< known resistances on the way
  std::vector<std::size_t> unknownToRoot; ///< edges of unknown resistance on the way
  std::vector<std::size_t> super;         ///< cells of one number are joined without a series resistance
  std::size_t supers = 0;
  std::vector<TrackPlace> trackPlaces;

  [[nodiscard]] std::size_t size() const { return parent.size(); }
  [[nodiscard]] bool isRoot(std::size_t cell) const { return parent[cell] == noCell; }
  [[nodiscard]] const CopperEdge& edgeAbove(std::size_t cell) const { return edges[above[cell].copperEdge]; }
};

/// Layers 0 and `layerCount` − 1 are outer: their tracks are divided about every `scrapeEvery`.
[[nodiscard]] LineCells lineCells(const Lookup& lookup, const Line& line, Length scrapeEvery);

/// A series resistance above this parts two supers: at a milliampere half a millivolt.
inline constexpr double leastSeriesOhms = 0.5;

} // namespace netmend
