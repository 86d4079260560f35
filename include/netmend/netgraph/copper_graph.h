#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include <boost/graph/adjacency_list.hpp>

#include "netmend/base/fact.h"
#include "netmend/board/board.h"
#include "netmend/netgraph/copper_object.h"

/// Copper as a graph. Nodes are places where something meets; edges are what can break.
namespace netmend {

enum class NodeKind {
  terminal,  ///< the part's own leg or ball at a pin, or the bare point of a test pad
  pad,       ///< a pad's copper on the board
  joint,     ///< a place on a track: an end, a T, a crossing
  viaLayer,  ///< a via's ring on one layer
  area,      ///< a copper area as one node
  unknownWay ///< hub: these belong together, nobody knows how
};

struct CopperNode {
  NodeKind kind = NodeKind::joint;
  CopperObject object; ///< PinId for a terminal, otherwise what the copper is of
  std::optional<Point> at;
  int layer = -1; ///< dense, 0 is the top; -1: all, or unknown
};

enum class EdgeKind {
  solderJoint, ///< between a terminal and its pad
  track,
  via,        ///< barrel between two layers
  contact,    ///< overlapping copper: pad to track end, area to via and so on; does not break by itself
  unknownWay, ///< to a hub; length, width and layer unknown
  part        ///< through a part (lines only)
};

struct CopperEdge {
  EdgeKind kind = EdgeKind::contact;
  CopperObject object;
  std::size_t index = 0;     ///< dense over the graph's edges
  std::optional<Point> from; ///< on the source's side
  std::optional<Point> to;   ///< on the target's side
  Fact<Length> length;
  Fact<Length> width;
  int layer = -1;        ///< dense; -1 where it does not apply or is unknown
  Fact<Ohms> resistance; ///< at 20 °C
};

using CopperGraph =
    boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, CopperNode, CopperEdge>;
using NodeIndex = boost::graph_traits<CopperGraph>::vertex_descriptor;

/// Label of every node (0, 1, …): which nodes still hang together when the edges whose `index` is in `cut`
/// are out.
struct Fragments {
  std::vector<std::size_t> ofNode;
  std::size_t count = 0;
};
[[nodiscard]] Fragments fragments(const CopperGraph& graph, const std::vector<std::size_t>& cut);

/// Indices of edges whose loss splits the graph (Tarjan's bridges, by boost::biconnected_components;
/// a parallel edge is none).
[[nodiscard]] std::vector<std::size_t> bridges(const CopperGraph& graph);

} // namespace netmend
