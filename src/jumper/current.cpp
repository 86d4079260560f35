#include "current.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <numbers>

#include "netmend/netgraph/net_role.h"
#include "netmend/netgraph/resistance.h"

namespace netmend {
namespace {

using Edge = boost::graph_traits<CopperGraph>::edge_descriptor;

double ipc2221(double squareMillimetres, Kelvins rise, double k) {
  constexpr double squareMil = 0.0254 * 0.0254; // mm²
  return k * std::pow(rise.value, 0.44) * std::pow(squareMillimetres / squareMil, 0.725);
}

Length thicknessOf(const Board& board, int layer) {
  const auto& order = board.info.layerOrder;
  const auto at = static_cast<std::size_t>(layer);
  const Layer* found = layer >= 0 && at < order.size() ? board.layers.find(order[at]) : nullptr;
  const Fact<Length> thickness = found ? found->copperThickness : Fact<Length>{};
  return thickness.known() && thickness.value.nm > 0 ? thickness.value : usualCopperThickness;
}

std::optional<CopperLimit> limitOfTrack(const Board& board, const CopperEdge& edge, Kelvins rise) {
  if (!edge.width.known() || edge.width.value.nm <= 0) return std::nullopt;
  // On a layer that nobody knows as outside, where it carries more.
  const bool inner = edge.layer > 0 && edge.layer + 1 < static_cast<int>(board.info.layerOrder.size());
  return CopperLimit{trackCurrent(edge.width.value, thicknessOf(board, edge.layer), rise, inner),
                     inner ? CopperLimit::Piece::innerTrack : CopperLimit::Piece::track, edge.width.value};
}

std::optional<CopperLimit> limitOfVia(const Board& board, const CopperEdge& edge, Kelvins rise) {
  const auto* id = std::get_if<ViaId>(&edge.object);
  const Via* via = id ? board.vias.find(*id) : nullptr;
  if (!via || !via->drill.known() || via->drill.value.nm <= 0) return std::nullopt;
  return CopperLimit{barrelCurrent(via->drill.value, usualPlating, rise), CopperLimit::Piece::via,
                     via->drill.value};
}

/// Of the pad along its own axes. Those of a polygon's box: it carries no more than copper that fills it, and
/// a wire for that is never too thin.
Fact<Size> sidesOf(const Pad& pad) {
  if (pad.shape.valueOr(PadShape::circle) != PadShape::polygon) return pad.size;
  Box box;
  for (const Point corner : pad.polygon)
    box.include(corner);
  return pad.polygon.empty() ? Fact<Size>{} : Fact<Size>{box.size(), pad.shape.origin};
}

/// What the pad at a pin's joint carries: its barrel, or as a piece of track of its narrower side.
std::optional<CopperLimit> limitOfPad(const Board& board, const CopperNode& node, Kelvins rise) {
  const auto* id = std::get_if<PadId>(&node.object);
  const Pad* pad = id ? board.pads.find(*id) : nullptr;
  if (!pad) return std::nullopt;
  const Size hole = pad->drill.valueOr({});
  if (const Length drill = std::min(hole.width, hole.height); drill.nm > 0) {
    if (!pad->plated.valueOr(true)) return std::nullopt;
    return CopperLimit{barrelCurrent(drill, usualPlating, rise), CopperLimit::Piece::platedHole, drill,
                       pinLabel(board, pad->pin)};
  }
  const Fact<Size> size = sidesOf(*pad);
  if (!size.known()) return std::nullopt;
  const Length width = std::min(size.value.width, size.value.height);
  if (width.nm <= 0) return std::nullopt;
  return CopperLimit{trackCurrent(width, thicknessOf(board, node.layer), rise, false),
                     CopperLimit::Piece::pad, width, pinLabel(board, pad->pin)};
}

std::optional<CopperLimit> limitOf(const Board& board, const CopperGraph& graph, Edge e, Kelvins rise) {
  const CopperEdge& edge = graph[e];
  if (edge.kind == EdgeKind::track || edge.kind == EdgeKind::unknownWay)
    return limitOfTrack(board, edge, rise);
  if (edge.kind == EdgeKind::via) return limitOfVia(board, edge, rise);
  if (edge.kind == EdgeKind::part) return std::nullopt;
  const CopperNode &a = graph[boost::source(e, graph)], &b = graph[boost::target(e, graph)];
  if ((a.kind == NodeKind::terminal) == (b.kind == NodeKind::terminal)) return std::nullopt;
  return limitOfPad(board, a.kind == NodeKind::terminal ? b : a, rise);
}

bool isCut(const std::vector<std::size_t>& cut, const CopperEdge& edge) {
  return std::find(cut.begin(), cut.end(), edge.index) != cut.end();
}

/// The terminals on both sides of a break, and the ways between them over copper.
class SeriesWay {
public:
  SeriesWay(const CopperGraph& graph, const BreakEnds& ends, const std::vector<std::size_t>& cut)
      : graph_(graph), cut_(cut), side_(boost::num_vertices(graph), Side::none) {
    for (NodeIndex n = 0; n < side_.size(); ++n)
      if (graph[n].kind == NodeKind::terminal)
        side_[n] = ends.fragments.ofNode[n] == ends.a   ? Side::a
                   : ends.fragments.ofNode[n] == ends.b ? Side::b
                                                        : Side::none;
    // What flows through a broken part has come through its pins; it does not end there.
    for (auto [e, end] = boost::edges(graph); e != end; ++e)
      if (graph[*e].kind == EdgeKind::part && isCut(cut, graph[*e]))
        side_[boost::source(*e, graph)] = side_[boost::target(*e, graph)] = Side::none;
  }

  /// The edges whose loss alone parts the two sides.
  [[nodiscard]] std::vector<Edge> edges() const {
    std::vector<Edge> series;
    for (const Edge e : wayWithout(nullptr))
      if (wayWithout(&e).empty()) series.push_back(e);
    return series;
  }

private:
  enum class Side { none, a, b };

  /// The edges of one way with the fewest of them; empty: there is none.
  [[nodiscard]] std::vector<Edge> wayWithout(const Edge* lost) const {
    std::vector<std::optional<Edge>> by(side_.size());
    std::vector<bool> seen(side_.size(), false);
    std::deque<NodeIndex> open;
    for (NodeIndex n = 0; n < side_.size(); ++n)
      if (side_[n] == Side::a) {
        seen[n] = true;
        open.push_back(n);
      }
    while (!open.empty()) {
      const NodeIndex here = open.front();
      open.pop_front();
      if (side_[here] == Side::b) return back(by, here);
      for (auto [e, end] = boost::out_edges(here, graph_); e != end; ++e) {
        const NodeIndex next = boost::target(*e, graph_);
        const CopperEdge& edge = graph_[*e];
        const bool soundPart = edge.kind == EdgeKind::part && !isCut(cut_, edge);
        if (seen[next] || soundPart || (lost && edge.index == graph_[*lost].index)) continue;
        seen[next] = true;
        by[next] = *e;
        open.push_back(next);
      }
    }
    return {};
  }

  [[nodiscard]] std::vector<Edge> back(const std::vector<std::optional<Edge>>& by, NodeIndex here) const {
    std::vector<Edge> way;
    while (by[here]) {
      way.push_back(*by[here]);
      const NodeIndex a = boost::source(*by[here], graph_), b = boost::target(*by[here], graph_);
      here = a == here ? b : a;
    }
    return way;
  }

  const CopperGraph& graph_;
  const std::vector<std::size_t>& cut_;
  std::vector<Side> side_;
};

/// All copper that hangs together with the break without passing a sound part is narrow.
bool allNarrow(const CopperGraph& graph, const BreakEnds& ends, Length upTo) {
  for (auto [e, end] = boost::edges(graph); e != end; ++e)
    if (ends.onBrokenCopper(boost::source(*e, graph)) && graph[*e].width.known() &&
        graph[*e].kind == EdgeKind::track && graph[*e].width.value > upTo)
      return false;
  for (const NodeIndex n : boost::make_iterator_range(boost::vertices(graph)))
    if (graph[n].kind == NodeKind::area && ends.onBrokenCopper(n)) return false;
  return true;
}

} // namespace

Amperes trackCurrent(Length width, Length thickness, Kelvins rise, bool inner) {
  return Amperes(ipc2221(width.mm() * thickness.mm(), rise, inner ? 0.024 : 0.048));
}

Amperes barrelCurrent(Length drill, Length plating, Kelvins rise) {
  return Amperes(ipc2221(std::numbers::pi * plating.mm() * (drill + plating).mm(), rise, 0.048));
}

std::optional<CopperLimit> seriesLimit(const Board& board, const CopperGraph& graph, const BreakEnds& ends,
                                       const std::vector<std::size_t>& cut, Kelvins rise) {
  std::optional<CopperLimit> least;
  for (const Edge e : SeriesWay(graph, ends, cut).edges())
    if (auto limit = limitOf(board, graph, e, rise); limit && (!least || limit->current < least->current))
      least = std::move(limit);
  if (least || cut.size() < 2) return least;
  CopperLimit together;
  for (auto [e, end] = boost::edges(graph); e != end; ++e) {
    if (!isCut(cut, graph[*e])) continue;
    if (const auto limit = limitOf(board, graph, *e, rise)) together.current += limit->current;
  }
  together.piece = CopperLimit::Piece::together;
  return together.current.value > 0 ? std::optional(together) : std::nullopt;
}

WireRequest currentFor(const Board& board, const JumperRequest& request, const BreakEnds& ends,
                       const WireTable& table) {
  const Net* net = board.nets.find(request.net);
  const Fact<NetRole> role = net ? roleOf(*net) : Fact<NetRole>{};
  WireRequest out;
  out.role = role.valueOr(NetRole::signal);
  if (request.current.known()) {
    out.current = request.current;
    out.basis = CurrentBasis{CurrentBasis::Why::asked};
    return out;
  }
  if (net && net->ratedCurrent.known()) {
    out.current = net->ratedCurrent;
    out.basis = CurrentBasis{CurrentBasis::Why::rated};
    return out;
  }
  const auto limit = seriesLimit(board, *request.graph, ends, request.cut, table.copperRise);
  if (!limit) return out;
  const bool capped = role.known() || allNarrow(*request.graph, ends, table.signalUpTo);
  const std::optional<Amperes> most = capped ? table.of(out.role).most : std::nullopt;
  if (!most || limit->current <= *most) {
    out.current = guessed(limit->current);
    out.basis = CurrentBasis{CurrentBasis::Why::copper, limit, table.copperRise};
    return out;
  }
  out.current = guessed(*most);
  out.basis = CurrentBasis{role.known() ? CurrentBasis::Why::cappedByRole : CurrentBasis::Why::cappedAsSignal,
                           limit, table.copperRise};
  return out;
}

} // namespace netmend
