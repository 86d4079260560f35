#include <algorithm>
#include <deque>

#include <boost/graph/connected_components.hpp>

#include "dealt.h"
#include "flat_graph.h"
#include "item_names.h"
#include "union_find.h"

namespace netmend::copper {

namespace {

constexpr std::size_t none = SIZE_MAX;

/// Which island a node is in, and its place there.
struct Placing {
  std::vector<std::size_t> island;
  std::vector<std::size_t> local;
  std::vector<std::size_t> sizes;
};

Placing placeNodes(const FlatGraph& flat) {
  const std::size_t n = flat.nodes.size();
  UnionFind sets(n);
  for (const FlatEdge& e : flat.edges)
    sets.unite(e.a, e.b);
  Placing out;
  out.island.assign(n, none);
  out.local.assign(n, 0);
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t root = sets.find(i); // the smallest: comes first
    if (root == i) {
      out.island[i] = out.sizes.size();
      out.sizes.push_back(0);
    } else {
      out.island[i] = out.island[root];
    }
    out.local[i] = out.sizes[out.island[i]]++;
  }
  return out;
}

void addEdgeTo(CopperGraph& graph, std::size_t a, std::size_t b, CopperEdge edge) {
  edge.index = boost::num_edges(graph);
  boost::add_edge(a, b, std::move(edge), graph);
}

void tidyMembers(Island& island) {
  auto& members = island.members;
  std::sort(members.begin(), members.end());
  members.erase(std::unique(members.begin(), members.end()), members.end());
  members.erase(std::remove(members.begin(), members.end(), CopperObject{}), members.end());
}

/// One island after the other, so that what belongs together lies together in memory: a large board is no
/// slower to walk through than a small one.
void fillIslands(const Board& board, FlatGraph& flat, std::vector<Island>& islands) {
  const Placing placing = placeNodes(flat);
  const auto islandOf = [&](std::size_t node) { return placing.island[node]; };
  const std::size_t count = placing.sizes.size();
  const Dealt nodes(count, flat.nodes.size(), islandOf);
  const Dealt members(count, flat.members.size(),
                      [&](std::size_t i) { return islandOf(flat.members[i].first); });
  const Dealt edges(count, flat.edges.size(), [&](std::size_t i) { return islandOf(flat.edges[i].a); });
  islands.resize(count);
  for (std::size_t i = 0; i < count; ++i) {
    Island& island = islands[i];
    island.graph = CopperGraph(placing.sizes[i]);
    island.members.reserve(nodes.of(i).size() + members.of(i).size() + edges.of(i).size());
    for (const std::size_t node : nodes.of(i)) {
      island.members.push_back(flat.nodes[node].object);
      island.graph[placing.local[node]] = std::move(flat.nodes[node]);
    }
    for (const std::size_t member : members.of(i))
      island.members.push_back(flat.members[member].second);
    for (const std::size_t edge : edges.of(i)) {
      FlatEdge& e = flat.edges[edge];
      island.members.push_back(e.edge.object);
      addEdgeTo(island.graph, placing.local[e.a], placing.local[e.b], std::move(e.edge));
    }
    tidyMembers(island);
    for (const CopperObject& object : island.members)
      if (const NetId net = netOf(board, object)) island.names.push_back(net);
    std::sort(island.names.begin(), island.names.end());
    island.names.erase(std::unique(island.names.begin(), island.names.end()), island.names.end());
  }
}

/// For each node the net that it is nearest to, counted in edges; copper that has a name keeps it.
std::vector<NetId> nearestNames(const Board& board, const CopperGraph& graph) {
  std::vector<NetId> out(boost::num_vertices(graph));
  std::deque<NodeIndex> open;
  for (NodeIndex v = 0; v < out.size(); ++v) {
    out[v] = netOf(board, graph[v].object);
    if (out[v]) open.push_back(v);
  }
  for (; !open.empty(); open.pop_front()) {
    for (const auto& edge : boost::make_iterator_range(boost::out_edges(open.front(), graph))) {
      const NodeIndex next = boost::target(edge, graph);
      if (out[next]) continue;
      out[next] = out[open.front()];
      open.push_back(next);
    }
  }
  return out;
}

/// Deals the nodes of an island out to the nets; edges between nets are left out.
template <class NetOf> void dealOut(const CopperGraph& from, std::vector<NetGraph>& nets, NetOf indexOfNet) {
  std::vector<std::size_t> newIndex(boost::num_vertices(from), none);
  std::vector<std::size_t> net(newIndex.size(), none);
  for (NodeIndex v = 0; v < newIndex.size(); ++v) {
    net[v] = indexOfNet(v);
    if (net[v] < nets.size()) newIndex[v] = boost::add_vertex(from[v], nets[net[v]].graph);
  }
  for (const auto& edge : boost::make_iterator_range(boost::edges(from))) {
    const NodeIndex a = boost::source(edge, from);
    const NodeIndex b = boost::target(edge, from);
    if (net[a] == net[b] && net[a] < nets.size())
      addEdgeTo(nets[net[a]].graph, newIndex[a], newIndex[b], from[edge]);
  }
}

/// Where the unknown way most likely leaves a piece: one of its pads, else any of its nodes.
std::vector<NodeIndex> waysOut(const CopperGraph& graph) {
  std::vector<std::size_t> piece(boost::num_vertices(graph));
  const std::size_t count = boost::connected_components(graph, piece.data());
  std::vector<NodeIndex> out(count, none);
  for (NodeIndex v = 0; v < piece.size(); ++v) {
    NodeIndex& chosen = out[piece[v]];
    const bool better =
        chosen != none && graph[v].kind == NodeKind::pad && graph[chosen].kind != NodeKind::pad;
    if (chosen == none || better) chosen = v;
  }
  return out;
}

void joinByHub(NetGraph& net) {
  const auto pieces = waysOut(net.graph);
  net.islandCount = pieces.size();
  if (pieces.size() < 2) return;
  const NodeIndex hub = boost::add_vertex(CopperNode{NodeKind::unknownWay, {}, std::nullopt, -1}, net.graph);
  for (const NodeIndex piece : pieces) {
    CopperEdge edge;
    edge.kind = EdgeKind::unknownWay;
    edge.from = net.graph[piece].at;
    addEdgeTo(net.graph, piece, hub, std::move(edge));
  }
}

void fillNets(const Board& board, const std::vector<Island>& islands, std::vector<NetGraph>& nets) {
  nets.resize(board.nets.size());
  for (std::size_t i = 0; i < nets.size(); ++i)
    nets[i].net = board.nets[i].id;
  for (const Island& island : islands) {
    if (island.names.size() == 1) {
      const std::size_t net = board.nets.indexOf(island.names.front());
      dealOut(island.graph, nets, [&](NodeIndex) { return net; });
    } else if (island.names.size() > 1) {
      const auto names = nearestNames(board, island.graph);
      dealOut(island.graph, nets, [&](NodeIndex v) { return board.nets.indexOf(names[v]); });
    }
  }
  for (NetGraph& net : nets)
    joinByHub(net);
}

} // namespace

BoardGraph partition(const Board& board, FlatGraph graph) {
  BoardGraph out;
  fillIslands(board, graph, out.islands);
  fillNets(board, out.islands, out.nets);
  return out;
}

} // namespace netmend::copper
