#include "netmend/netgraph/copper_graph.h"

#include <algorithm>
#include <unordered_set>

#include <boost/graph/biconnected_components.hpp>
#include <boost/graph/connected_components.hpp>
#include <boost/graph/filtered_graph.hpp>

namespace netmend {
namespace {

using EdgeOfGraph = boost::graph_traits<CopperGraph>::edge_descriptor;

struct NotCut {
  const CopperGraph* graph = nullptr;
  const std::unordered_set<std::size_t>* cut = nullptr;
  bool operator()(const EdgeOfGraph& edge) const { return !cut->contains((*graph)[edge].index); }
};

/// One edge of the graph per pair of nodes; `index` says which, `alone` that it is the only one of its pair.
struct PairOfNodes {
  std::size_t index = 0;
  bool alone = true;
};
using SimpleGraph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property,
                                          boost::property<boost::edge_index_t, std::size_t>>;

/// Without loops and parallel edges: Boost's biconnected_components drops parallel edges from its components
/// and counts a loop to a component that it does not belong to.
struct Simplified {
  SimpleGraph graph;
  std::vector<PairOfNodes> pairs; ///< by edge index of `graph`
};

Simplified simplified(const CopperGraph& graph) {
  struct Seen {
    NodeIndex low, high;
    std::size_t index;
  };
  std::vector<Seen> seen;
  seen.reserve(boost::num_edges(graph));
  for (const auto edge : boost::make_iterator_range(boost::edges(graph))) {
    const auto [low, high] = std::minmax({boost::source(edge, graph), boost::target(edge, graph)});
    if (low != high) seen.push_back({low, high, graph[edge].index});
  }
  std::sort(seen.begin(), seen.end(), [](const Seen& a, const Seen& b) {
    return std::tie(a.low, a.high, a.index) < std::tie(b.low, b.high, b.index);
  });
  Simplified result{SimpleGraph(boost::num_vertices(graph)), {}};
  for (std::size_t i = 0; i < seen.size(); ++i) {
    if (i > 0 && seen[i].low == seen[i - 1].low && seen[i].high == seen[i - 1].high) {
      result.pairs.back().alone = false;
      continue;
    }
    boost::add_edge(seen[i].low, seen[i].high, result.pairs.size(), result.graph);
    result.pairs.push_back({seen[i].index, true});
  }
  return result;
}

} // namespace

Fragments fragments(const CopperGraph& graph, const std::vector<std::size_t>& cut) {
  const std::unordered_set<std::size_t> cutEdges(cut.begin(), cut.end());
  const boost::filtered_graph<CopperGraph, NotCut> rest(graph, NotCut{&graph, &cutEdges});
  Fragments result;
  result.ofNode.resize(boost::num_vertices(graph));
  if (!result.ofNode.empty()) result.count = boost::connected_components(rest, result.ofNode.data());
  return result;
}

std::vector<std::size_t> bridges(const CopperGraph& graph) {
  const auto simple = simplified(graph);
  std::vector<std::size_t> component(simple.pairs.size());
  const auto byIndex = boost::get(boost::edge_index, simple.graph);
  const auto count = boost::biconnected_components(
      simple.graph, boost::make_iterator_property_map(component.begin(), byIndex));
  std::vector<std::size_t> members(count, 0);
  for (const auto c : component)
    ++members[c];
  std::vector<std::size_t> result;
  for (std::size_t i = 0; i < component.size(); ++i)
    if (members[component[i]] == 1 && simple.pairs[i].alone) result.push_back(simple.pairs[i].index);
  std::sort(result.begin(), result.end());
  return result;
}

} // namespace netmend
