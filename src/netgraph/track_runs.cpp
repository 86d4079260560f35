#include "netmend/netgraph/track_runs.h"

#include <algorithm>
#include <deque>

namespace netmend {

namespace {

using Edge = boost::graph_traits<CopperGraph>::edge_descriptor;

double lengthOf(const CopperEdge& edge) {
  if (edge.length.known()) return edge.length.value.mm();
  return edge.from && edge.to ? distance(*edge.from, *edge.to).mm() : 0.0;
}

class Maker {
public:
  Maker(const PlaceNames& names, const Line& line)
      : names_(names), board_(names.board()), graph_(line.graph) {
    out_.ofEdge.resize(boost::num_edges(graph_));
  }

  TrackRuns make() {
    for (auto [e, end] = boost::edges(graph_); e != end; ++e)
      if (graph_[*e].kind == EdgeKind::track && !out_.ofEdge[graph_[*e].index]) add(*e);
    return std::move(out_);
  }

private:
  struct Piece {
    Edge edge;
    NodeIndex entered; ///< the end where the run comes in
  };

  /// The only other track that goes on from here, on the same layer; none: the run ends.
  [[nodiscard]] std::optional<Edge> onward(NodeIndex node, Edge came) const {
    if (graph_[node].kind != NodeKind::joint || boost::degree(node, graph_) != 2) return std::nullopt;
    for (auto [e, end] = boost::out_edges(node, graph_); e != end; ++e)
      if (graph_[*e].index != graph_[came].index && graph_[*e].kind == EdgeKind::track &&
          graph_[*e].layer == graph_[came].layer)
        return *e;
    return std::nullopt;
  }

  [[nodiscard]] NodeIndex otherEnd(Edge e, NodeIndex node) const {
    return boost::source(e, graph_) == node ? boost::target(e, graph_) : boost::source(e, graph_);
  }

  /// Follows the track from `first` over `node` until it ends; a loop ends where it began.
  NodeIndex follow(Edge first, NodeIndex node, std::deque<Piece>& pieces, bool front) const {
    Edge last = first;
    while (const auto next = onward(node, last)) {
      if (graph_[*next].index == graph_[first].index) break;
      const NodeIndex far = otherEnd(*next, node);
      if (front)
        pieces.push_front({*next, far});
      else
        pieces.push_back({*next, node});
      node = far;
      last = *next;
    }
    return node;
  }

  void add(Edge first) {
    const NodeIndex a = boost::source(first, graph_), b = boost::target(first, graph_);
    std::deque<Piece> pieces{{first, a}};
    const NodeIndex start = follow(first, a, pieces, true);
    const bool loop = start == b && pieces.size() > 1;
    const NodeIndex stop = loop ? start : follow(first, b, pieces, false);
    TrackEnd from = endAt(start, pieces.front().edge), to = endAt(stop, pieces.back().edge);
    if (to < from) {
      std::swap(from, to);
      std::reverse(pieces.begin(), pieces.end());
      for (Piece& piece : pieces)
        piece.entered = otherEnd(piece.edge, piece.entered);
    }
    TrackRun run{std::move(from), std::move(to), 0.0};
    bool known = true;
    for (const Piece& piece : pieces) {
      const CopperEdge& edge = graph_[piece.edge];
      out_.ofEdge[edge.index] =
          OnRun{out_.runs.size(), run.mm, boost::source(piece.edge, graph_) == piece.entered};
      run.mm += lengthOf(edge);
      known = known && lengthOf(edge) > 0.0;
    }
    if (!known) run.mm = 0.0;
    out_.runs.push_back(std::move(run));
  }

  [[nodiscard]] std::optional<TrackEnd> named(const CopperNode& node) const {
    if (const auto* pin = std::get_if<PinId>(&node.object))
      return TrackEnd{TrackEnd::Sort::pin, pinLabel(board_, *pin), {}};
    if (const auto* id = std::get_if<PadId>(&node.object))
      if (const Pad* pad = board_.pads.find(*id))
        return TrackEnd{TrackEnd::Sort::pin, pinLabel(board_, pad->pin), {}};
    if (const auto* via = std::get_if<ViaId>(&node.object))
      if (const Via* found = board_.vias.find(*via))
        return placed(TrackEnd::Sort::via, found->position, node.layer);
    return std::nullopt;
  }

  [[nodiscard]] TrackEnd endAt(NodeIndex node, Edge last) const {
    if (auto here = named(graph_[node])) return std::move(*here);
    std::optional<TrackEnd> best;
    bool area = false;
    for (auto [e, end] = boost::out_edges(node, graph_); e != end; ++e) {
      const CopperNode& other = graph_[otherEnd(*e, node)];
      area = area || other.kind == NodeKind::area;
      if (graph_[*e].kind == EdgeKind::track) continue;
      auto there = named(other);
      if (there && (!best || *there < *best)) best = std::move(there);
    }
    if (best) return std::move(*best);
    const CopperEdge& edge = graph_[last];
    std::optional<Point> at = graph_[node].at;
    if (!at) at = boost::source(last, graph_) == node ? edge.from : edge.to;
    if (!at) return {};
    const auto sort = area                              ? TrackEnd::Sort::area
                      : boost::degree(node, graph_) > 2 ? TrackEnd::Sort::fork
                                                        : TrackEnd::Sort::end;
    return placed(sort, *at, edge.layer);
  }

  [[nodiscard]] TrackEnd placed(TrackEnd::Sort sort, Point at, int layer) const {
    return {sort, "", names_.beside(at, names_.sideOf(layer))};
  }

  const PlaceNames& names_;
  const Board& board_;
  const CopperGraph& graph_;
  TrackRuns out_;
};

} // namespace

TrackRuns trackRuns(const PlaceNames& names, const Line& line) {
  return Maker(names, line).make();
}

} // namespace netmend
