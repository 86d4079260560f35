#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "fault_classes.h"

namespace netmend {

namespace {

constexpr int trees = 24; ///< ways that the unknown copper may go, each as likely
constexpr double lengthSpread =
    0.5;                       ///< how far a way's length is from straight: copper goes round other copper
constexpr double detour = 1.3; ///< tracks seldom go straight
constexpr double stubShare = 0.25; ///< of the unknown copper's chances: where it parts for a single piece

/// Where the unknown copper may leave a piece of known copper.
struct Port {
  std::size_t cell = 0;
  std::optional<Point> at;
};
using Piece = std::vector<Port>;

/// A way between two pieces, as one of the trees has it.
struct Link {
  std::size_t a = 0; ///< cells
  std::size_t b = 0;
  std::optional<Point> from;
  std::optional<Point> to;
  double mm = 0.0;
};

class LooseEnds {
public:
  explicit LooseEnds(const LineView& view) : view_(view), graph_(view.line.graph) {}

  /// Of the copper that hangs together with a node, without going through parts: vias that come from one
  /// layer only, ends of tracks, pads without a track; where there are none, any pad, via or terminal.
  [[nodiscard]] Piece of(NodeIndex start) const {
    std::vector<NodeIndex> nodes{start};
    std::vector<char> seen(num_vertices(graph_), 0);
    seen[start] = 1;
    Piece loose;
    Piece all;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const NodeIndex node = nodes[i];
      for (const auto edge : boost::make_iterator_range(boost::out_edges(node, graph_))) {
        const NodeIndex next = boost::target(edge, graph_);
        if (seen[next] || graph_[edge].kind == EdgeKind::part || graph_[next].kind == NodeKind::unknownWay)
          continue;
        seen[next] = 1;
        nodes.push_back(next);
      }
      if (graph_[node].kind == NodeKind::area) continue;
      if (graph_[node].kind != NodeKind::joint) all.push_back(portAt(node));
      if (isLoose(node)) loose.push_back(portAt(node));
    }
    return loose.empty() ? all : loose;
  }

private:
  [[nodiscard]] Port portAt(NodeIndex node) const {
    Port port{view_.cells.cellOfNode[node], graph_[node].at};
    if (const auto* pin = std::get_if<PinId>(&graph_[node].object); pin && !port.at)
      if (const auto at = positionOf(view_.lookup, *pin); at.known()) port.at = at.value;
    return port;
  }

  /// Edges of copper, the barrels of vias and the hub's left out.
  [[nodiscard]] int copperEdges(NodeIndex node) const {
    int count = 0;
    for (const auto edge : boost::make_iterator_range(boost::out_edges(node, graph_))) {
      const EdgeKind kind = graph_[edge].kind;
      const bool hub = graph_[boost::target(edge, graph_)].kind == NodeKind::unknownWay;
      if (!hub && (kind == EdgeKind::track || kind == EdgeKind::contact || kind == EdgeKind::unknownWay))
        ++count;
    }
    return count;
  }

  [[nodiscard]] bool isLoose(NodeIndex node) const {
    switch (graph_[node].kind) {
    case NodeKind::joint:
      return copperEdges(node) <= 1;
    case NodeKind::pad:
      return copperEdges(node) == 0;
    case NodeKind::viaLayer:
      return copperEdges(node) == 0 && otherRings(node) <= 1;
    case NodeKind::terminal:
      return boost::out_degree(node, graph_) == hubEdges(node);
    case NodeKind::area:
    case NodeKind::unknownWay:
      break;
    }
    return false;
  }

  [[nodiscard]] std::size_t hubEdges(NodeIndex node) const {
    std::size_t count = 0;
    for (const auto edge : boost::make_iterator_range(boost::out_edges(node, graph_)))
      if (graph_[boost::target(edge, graph_)].kind == NodeKind::unknownWay ||
          graph_[edge].kind == EdgeKind::part)
        ++count;
    return count;
  }

  /// Layers of the same via that copper leads to.
  [[nodiscard]] int otherRings(NodeIndex ring) const {
    std::vector<NodeIndex> rings{ring};
    int used = 0;
    for (std::size_t i = 0; i < rings.size(); ++i)
      for (const auto edge : boost::make_iterator_range(boost::out_edges(rings[i], graph_))) {
        if (graph_[edge].kind != EdgeKind::via) continue;
        const NodeIndex next = boost::target(edge, graph_);
        if (std::find(rings.begin(), rings.end(), next) != rings.end()) continue;
        rings.push_back(next);
        if (copperEdges(next) > 0) ++used;
      }
    return used;
  }

  const LineView& view_;
  const CopperGraph& graph_;
};

/// The shortest way between two pieces.
Link linkOf(const Piece& a, const Piece& b, const FaultPriors& priors) {
  Link best;
  best.mm = 1e300;
  for (const Port& from : a)
    for (const Port& to : b) {
      const double mm = from.at && to.at ? std::max(0.5, detour * distance(*from.at, *to.at).mm())
                                         : priors.unknownWayLength.mm();
      if (mm < best.mm) best = {from.cell, to.cell, from.at, to.at, mm};
    }
  return best;
}

/// One way that the copper between the pieces of a hub may go: the shortest tree, of lengths that are not
/// quite known (Kruskal).
std::vector<Link> drawnTree(const std::vector<std::vector<Link>>& links, std::mt19937_64& random) {
  struct Candidate {
    double length;
    std::size_t a;
    std::size_t b;
  };
  // Boost's and the library's dice differ between machines; a sum of twelve even ones is as good here.
  const auto bell = [&] {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i)
      sum += static_cast<double>(random() >> 11) * 0x1.0p-53;
    return sum;
  };
  std::vector<Candidate> candidates;
  for (std::size_t a = 0; a < links.size(); ++a)
    for (std::size_t b = a + 1; b < links.size(); ++b)
      candidates.push_back({links[a][b].mm * std::exp(lengthSpread * bell()), a, b});
  std::sort(candidates.begin(), candidates.end(),
            [](const Candidate& x, const Candidate& y) { return x.length < y.length; });
  std::vector<std::size_t> set(links.size());
  for (std::size_t i = 0; i < set.size(); ++i)
    set[i] = i;
  std::vector<Link> tree;
  for (const auto& [length, a, b] : candidates) {
    const std::size_t from = set[a];
    const std::size_t into = set[b];
    if (from == into) continue;
    std::replace(set.begin(), set.end(), from, into);
    tree.push_back(links[a][b]);
  }
  return tree;
}

/// The line's cells with one tree's ways instead of the hubs: what each edge's loss cuts off.
class DrawnLine {
public:
  DrawnLine(const LineView& view, const std::vector<char>& isHub, const std::vector<Link>& links)
      : cells_(view.cells), neighbours_(view.cells.size()) {
    for (std::size_t cell = 0; cell < cells_.size(); ++cell)
      if (!cells_.isRoot(cell) && !isHub[cell] && !isHub[cells_.parent[cell]])
        join(cell, cells_.parent[cell], cell);
    for (std::size_t i = 0; i < links.size(); ++i)
      join(links[i].a, links[i].b, cells_.size() + i);
    number();
  }

  /// Of the edge above a cell, or (cells and more) of a link: cells that its loss cuts off, as intervals.
  [[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>> beyond(std::size_t edge) const {
    std::vector<std::pair<std::size_t, std::size_t>> result;
    const auto at = below_.find(edge);
    if (at == below_.end()) return result;
    const std::size_t first = position_[at->second];
    const std::size_t last = end_[at->second];
    for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
      if (position_[cell] < first || position_[cell] >= last) continue;
      if (!result.empty() && result.back().second == cell)
        ++result.back().second;
      else
        result.emplace_back(cell, cell + 1);
    }
    return result;
  }

private:
  void join(std::size_t a, std::size_t b, std::size_t edge) {
    neighbours_[a].emplace_back(b, edge);
    neighbours_[b].emplace_back(a, edge);
  }

  /// In preorder, so that what hangs below a cell is an interval.
  void number() {
    position_.assign(cells_.size(), noCell);
    end_.assign(cells_.size(), 0);
    std::size_t next = 0;
    struct Step {
      std::size_t cell;
      std::size_t child = 0;
    };
    for (std::size_t start = 0; start < cells_.size(); ++start) {
      if (position_[start] != noCell) continue;
      std::vector<Step> stack{{start}};
      position_[start] = next++;
      while (!stack.empty()) {
        auto& [cell, child] = stack.back();
        if (child == neighbours_[cell].size()) {
          end_[cell] = next;
          stack.pop_back();
          continue;
        }
        const auto [other, edge] = neighbours_[cell][child++];
        if (position_[other] != noCell) continue;
        position_[other] = next++;
        below_[edge] = other;
        stack.push_back({other});
      }
    }
  }

  const LineCells& cells_;
  std::vector<std::vector<std::pair<std::size_t, std::size_t>>> neighbours_;
  std::vector<std::size_t> position_;
  std::vector<std::size_t> end_;
  std::map<std::size_t, std::size_t> below_; ///< by edge: the cell that it leads down to
};

struct Hub {
  std::size_t cell = 0;
  std::vector<Piece> pieces;
};

std::vector<Hub> hubsOf(const LineView& view) {
  const LooseEnds ends(view);
  const CopperGraph& graph = view.line.graph;
  std::vector<Hub> hubs;
  for (NodeIndex node = 0; node < num_vertices(graph); ++node) {
    if (graph[node].kind != NodeKind::unknownWay) continue;
    Hub hub;
    hub.cell = view.cells.cellOfNode[node];
    for (const auto edge : boost::make_iterator_range(boost::out_edges(node, graph)))
      hub.pieces.push_back(ends.of(boost::target(edge, graph)));
    hubs.push_back(std::move(hub));
  }
  return hubs;
}

/// Gathers what the trees say alike.
class Gathering {
public:
  explicit Gathering(const LineView& view) : view_(view) {}

  void add(std::size_t edge, const FaultCandidate& place,
           const std::vector<std::pair<std::size_t, std::size_t>>& below, double weight) {
    if (below.empty() || !(weight > 0.0)) return;
    const auto [at, fresh] = known_.try_emplace({edge, below}, place);
    FaultCandidate& candidate = at->second;
    if (fresh) {
      candidate.effect = {FaultKind::open, below, noCell};
      candidate.weight = 0.0;
      if (place.place.edgeKind == EdgeKind::unknownWay) {
        const std::size_t root = view_.cells.root[below.front().first];
        auto& beyond = candidate.place.beyond = pinsOf(view_, candidate.effect, true, root);
        auto& before = candidate.place.before = pinsOf(view_, candidate.effect, false, root);
        if (beyond.size() != 1 && before.size() == 1) std::swap(beyond, before);
        if (beyond.size() == 1) before.clear(); // one pin cut off says all
      }
    }
    candidate.weight += weight;
  }

  void into(std::vector<FaultCandidate>& candidates) {
    for (auto& [key, candidate] : known_)
      candidates.push_back(std::move(candidate));
  }

private:
  const LineView& view_;
  std::map<std::pair<std::size_t, std::vector<std::pair<std::size_t, std::size_t>>>, FaultCandidate> known_;
};

FaultCandidate unknownPlace() {
  FaultCandidate result;
  result.place.edgeKind = EdgeKind::unknownWay;
  return result;
}

constexpr std::size_t anyLink = noCell; ///< ways that cut off the same are one place, wherever they go

/// Where the unknown copper parts for a single piece, its loss cuts off that piece and nothing else.
void addStubs(const LineView& view, const Hub& hub, double weight, Gathering& gathering) {
  const auto& cells = view.cells;
  std::vector<std::vector<std::pair<std::size_t, std::size_t>>> alone;
  for (std::size_t child = hub.cell + 1; child < cells.end[hub.cell]; child = cells.end[child])
    alone.push_back({{child, cells.end[child]}});
  if (!cells.isRoot(hub.cell)) alone.push_back({{hub.cell, cells.end[hub.cell]}});
  for (const auto& below : alone)
    gathering.add(anyLink, unknownPlace(), below, weight / static_cast<double>(alone.size()));
}

} // namespace

void addUnknownWays(const LineView& view, std::vector<FaultCandidate>& candidates) {
  const auto hubs = hubsOf(view);
  if (hubs.empty()) return;
  std::vector<char> isHub(view.cells.size(), 0);
  std::vector<std::vector<std::vector<Link>>> links;
  for (const Hub& hub : hubs) {
    isHub[hub.cell] = 1;
    std::vector<std::vector<Link>> ofHub(hub.pieces.size(), std::vector<Link>(hub.pieces.size()));
    for (std::size_t a = 0; a < hub.pieces.size(); ++a)
      for (std::size_t b = a + 1; b < hub.pieces.size(); ++b)
        ofHub[a][b] = linkOf(hub.pieces[a], hub.pieces[b], view.priors);
    links.push_back(std::move(ofHub));
  }
  std::vector<FaultCandidate> known;
  std::vector<FaultCandidate> result;
  for (auto& candidate : candidates) {
    const bool open = candidate.effect.kind == FaultKind::open;
    const std::size_t cell = open ? candidate.effect.below.front().first : 0;
    if (open && (isHub[cell] || (!view.cells.isRoot(cell) && isHub[view.cells.parent[cell]]))) continue;
    (open ? known : result).push_back(std::move(candidate));
  }
  Gathering gathering(view);
  std::mt19937_64 random(0x7ee5);
  for (int round = 0; round < trees; ++round) {
    std::vector<Link> drawn;
    for (std::size_t h = 0; h < hubs.size(); ++h) {
      const auto tree = drawnTree(links[h], random);
      double mm = 0.0;
      for (const Link& link : tree)
        mm += link.mm;
      addStubs(view, hubs[h], stubShare * mm * view.priors.unknownWayPerMm / trees, gathering);
      drawn.insert(drawn.end(), tree.begin(), tree.end());
    }
    const DrawnLine line(view, isHub, drawn);
    for (const auto& candidate : known)
      gathering.add(candidate.effect.below.front().first, candidate,
                    line.beyond(candidate.effect.below.front().first), candidate.weight / trees);
    for (std::size_t i = 0; i < drawn.size(); ++i)
      gathering.add(anyLink, unknownPlace(), line.beyond(view.cells.size() + i),
                    (1.0 - stubShare) * drawn[i].mm * view.priors.unknownWayPerMm / trees);
  }
  gathering.into(result);
  candidates = std::move(result);
}

} // namespace netmend
