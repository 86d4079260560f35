#include "line_cells.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace netmend {

namespace {

class Joined {
public:
  explicit Joined(std::size_t n) : parent_(n) { std::iota(parent_.begin(), parent_.end(), std::size_t{0}); }
  std::size_t find(std::size_t x) {
    while (parent_[x] != x)
      x = parent_[x] = parent_[parent_[x]];
    return x;
  }
  void join(std::size_t a, std::size_t b) { parent_[find(a)] = find(b); }

private:
  std::vector<std::size_t> parent_;
};

struct Link {
  std::size_t a;
  std::size_t b;
  CutEdge cut;
};

/// The tree before its cells are put in order.
struct Tree {
  std::size_t cells = 0;
  std::vector<Link> links;
  std::vector<TrackPlace> places;
};

/// A test pad's bare point is its pad: nothing between them can break.
bool breakable(const Board& board, const CopperGraph& graph, const CopperEdge& edge, NodeIndex a,
               NodeIndex b) {
  if (edge.kind == EdgeKind::contact) return false;
  if (edge.kind != EdgeKind::solderJoint) return true;
  for (const NodeIndex node : {a, b}) {
    if (graph[node].kind != NodeKind::terminal) continue;
    const auto* id = std::get_if<PinId>(&graph[node].object);
    const Pin* pin = id ? board.pins.find(*id) : nullptr;
    if (pin && !pin->part) return false;
  }
  return true;
}

bool isOuter(const Board& board, int layer) {
  return layer == 0 || (layer > 0 && static_cast<std::size_t>(layer) + 1 == board.info.layerOrder.size());
}

Point between(Point a, Point b, double share) {
  const auto mix = [&](Length from, Length to) {
    return Length(from.nm + std::llround(share * static_cast<double>(to.nm - from.nm)));
  };
  return {mix(a.x, b.x), mix(a.y, b.y)};
}

/// How many pieces a track is divided into; arcs and inner tracks stay whole.
std::size_t pieces(const Board& board, const CopperEdge& edge, Length every) {
  if (edge.kind != EdgeKind::track || !edge.from || !edge.to || !isOuter(board, edge.layer)) return 1;
  const Length straight = distance(*edge.from, *edge.to);
  if (edge.length.known() && edge.length.value.nm > straight.nm + straight.nm / 100 + 1000) return 1;
  if (every.nm <= 0) return 1;
  return static_cast<std::size_t>(std::clamp<std::int64_t>((straight.nm + every.nm - 1) / every.nm, 1, 50));
}

void addLink(const Board& board, Tree& tree, std::size_t a, std::size_t b, std::size_t index,
             const CopperEdge& edge, Length every) {
  const std::size_t n = pieces(board, edge, every);
  std::size_t last = a;
  for (std::size_t i = 0; i < n; ++i) {
    const auto share = [&](std::size_t k) { return static_cast<double>(k) / static_cast<double>(n); };
    const std::size_t next = i + 1 == n ? b : tree.cells++;
    CutEdge cut{index, 1.0 / static_cast<double>(n), edge.from, edge.to};
    if (n > 1) {
      cut.from = between(*edge.from, *edge.to, share(i));
      cut.to = between(*edge.from, *edge.to, share(i + 1));
      if (i + 1 < n) tree.places.push_back({next, edge.object, *cut.to, edge.layer});
    }
    tree.links.push_back({last, next, cut});
    last = next;
  }
}

/// Preorder numbers; fills everything that runs along it.
class Numbering {
public:
  Numbering(const Tree& tree, LineCells& cells) : tree_(tree), cells_(cells), number_(tree.cells, noCell) {
    neighbours_.resize(tree.cells);
    for (std::size_t i = 0; i < tree.links.size(); ++i) {
      neighbours_[tree.links[i].a].push_back(i);
      neighbours_[tree.links[i].b].push_back(i);
    }
    for (std::size_t start = 0; start < tree.cells; ++start)
      if (number_[start] == noCell) walk(start);
  }
  [[nodiscard]] std::size_t numberOf(std::size_t cell) const { return number_[cell]; }

private:
  void enter(std::size_t cell, std::size_t parent, const CutEdge& above) {
    const std::size_t c = number_[cell] = cells_.parent.size();
    const bool isRoot = parent == noCell;
    cells_.parent.push_back(parent);
    cells_.end.push_back(c + 1);
    cells_.root.push_back(isRoot ? c : cells_.root[parent]);
    cells_.above.push_back(above);
    double ohms = 0.0;
    std::size_t unknown = 0;
    bool series = false;
    if (!isRoot) {
      const CopperEdge& edge = cells_.edges[above.copperEdge];
      const double known = edge.resistance.valueOr(Ohms(0)).value * above.share;
      ohms = cells_.ohmsToRoot[parent] + known;
      unknown = cells_.unknownToRoot[parent] + (edge.resistance.known() ? 0 : 1);
      series = edge.kind == EdgeKind::part && known >= leastSeriesOhms;
    }
    cells_.ohmsToRoot.push_back(ohms);
    cells_.unknownToRoot.push_back(unknown);
    cells_.super.push_back(isRoot || series ? cells_.supers++ : cells_.super[parent]);
  }

  void walk(std::size_t start) {
    struct Step {
      std::size_t cell;
      std::size_t next = 0;
    };
    std::vector<Step> stack{{start}};
    enter(start, noCell, {});
    while (!stack.empty()) {
      auto& [cell, next] = stack.back();
      if (next == neighbours_[cell].size()) {
        cells_.end[number_[cell]] = cells_.parent.size();
        stack.pop_back();
        continue;
      }
      const Link& link = tree_.links[neighbours_[cell][next++]];
      const std::size_t other = link.a == cell ? link.b : link.a;
      if (number_[other] != noCell) continue;
      enter(other, number_[cell], link.cut);
      stack.push_back({other});
    }
  }

  const Tree& tree_;
  LineCells& cells_;
  std::vector<std::size_t> number_;
  std::vector<std::vector<std::size_t>> neighbours_;
};

} // namespace

LineCells lineCells(const Lookup& lookup, const Line& line, Length scrapeEvery) {
  const Board& board = lookup.board();
  const CopperGraph& graph = line.graph;
  LineCells cells;
  const auto bridgeList = bridges(graph);
  const auto isBridge = [&](std::size_t index) {
    return std::binary_search(bridgeList.begin(), bridgeList.end(), index);
  };
  Joined joined(num_vertices(graph));
  std::vector<std::size_t> splitting; ///< positions among the edges
  std::vector<std::pair<NodeIndex, NodeIndex>> ends;
  for (const auto e : boost::make_iterator_range(boost::edges(graph))) {
    const NodeIndex a = source(e, graph);
    const NodeIndex b = target(e, graph);
    if (isBridge(graph[e].index) && breakable(board, graph, graph[e], a, b))
      splitting.push_back(cells.edges.size());
    else
      joined.join(a, b);
    cells.edges.push_back(graph[e]);
    ends.emplace_back(a, b);
  }
  Tree tree;
  std::vector<std::size_t> cellOfSet(num_vertices(graph), noCell);
  const auto cellOf = [&](NodeIndex node) {
    auto& cell = cellOfSet[joined.find(node)];
    if (cell == noCell) cell = tree.cells++;
    return cell;
  };
  for (NodeIndex node = 0; node < num_vertices(graph); ++node)
    cells.cellOfNode.push_back(cellOf(node));
  for (const std::size_t i : splitting)
    addLink(board, tree, cellOf(ends[i].first), cellOf(ends[i].second), i, cells.edges[i], scrapeEvery);
  const Numbering numbering(tree, cells);
  for (auto& cell : cells.cellOfNode)
    cell = numbering.numberOf(cell);
  for (auto place : tree.places) {
    place.cell = numbering.numberOf(place.cell);
    cells.trackPlaces.push_back(place);
  }
  return cells;
}

} // namespace netmend
