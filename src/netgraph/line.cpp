#include "netmend/netgraph/line.h"

#include <compare>
#include <deque>
#include <limits>
#include <set>
#include <unordered_map>

#include "netmend/netgraph/net_role.h"
#include "through.h"

namespace netmend {
namespace {

/// What hangs together without going through a part: a net of the board, an island without a net, or a pin of
/// which no copper is known.
struct Piece {
  enum class Kind { net, island, barePin } kind;
  std::uint64_t which; ///< index of the net or island, or the pin's id
  friend auto operator<=>(const Piece&, const Piece&) = default;
};

class LineSearch {
public:
  LineSearch(const Lookup& lookup, const BoardGraph& graph, const LineOptions& options)
      : lookup_(lookup), board_(lookup.board()), graph_(graph), options_(options) {}

  Line from(Piece start) {
    enter(start);
    while (!waiting_.empty()) {
      const auto piece = waiting_.front();
      waiting_.pop_front();
      goOnFrom(piece);
    }
    return std::move(line_);
  }

  Piece pieceOf(PinId pin) {
    const auto* found = board_.pins.find(pin);
    if (found != nullptr && found->net.known() && board_.nets.find(found->net.value) != nullptr)
      return {Piece::Kind::net, board_.nets.indexOf(found->net.value)};
    const auto island = islandsByPin().find(pin);
    if (island == islandsByPin().end()) return {Piece::Kind::barePin, pin.value};
    const auto& names = graph_.islands[island->second].names;
    if (!names.empty()) return {Piece::Kind::net, board_.nets.indexOf(names.front())};
    return {Piece::Kind::island, island->second};
  }

private:
  struct Entered {
    Piece piece;
    std::vector<PinId> pins;
  };

  void enter(Piece piece) {
    if (!entered_.insert(piece).second) return;
    Entered entered{piece, {}};
    switch (piece.kind) {
    case Piece::Kind::net:
      line_.nets.push_back(board_.nets[piece.which].id);
      if (piece.which < graph_.nets.size()) entered.pins = copy(graph_.nets[piece.which].graph);
      break;
    case Piece::Kind::island:
      entered.pins = copy(graph_.islands[piece.which].graph);
      break;
    case Piece::Kind::barePin:
      entered.pins = {PinId(piece.which)};
      nodeOf(entered.pins.front());
      break;
    }
    waiting_.push_back(std::move(entered));
  }

  /// Gives the pins whose terminals are new to the line.
  std::vector<PinId> copy(const CopperGraph& graph) {
    const auto offset = boost::num_vertices(line_.graph);
    std::vector<PinId> pins;
    for (const auto node : boost::make_iterator_range(boost::vertices(graph))) {
      const auto copied = boost::add_vertex(graph[node], line_.graph);
      if (graph[node].kind != NodeKind::terminal) continue;
      const auto* pin = std::get_if<PinId>(&graph[node].object);
      if (pin != nullptr && nodes_.emplace(*pin, copied).second) pins.push_back(*pin);
    }
    for (const auto edge : boost::make_iterator_range(boost::edges(graph)))
      addEdge(offset + boost::source(edge, graph), offset + boost::target(edge, graph), graph[edge]);
    return pins;
  }

  void addEdge(NodeIndex a, NodeIndex b, CopperEdge edge) {
    edge.index = boost::num_edges(line_.graph);
    boost::add_edge(a, b, std::move(edge), line_.graph);
  }

  NodeIndex nodeOf(PinId pin) {
    const auto found = nodes_.find(pin);
    if (found != nodes_.end()) return found->second;
    CopperNode terminal;
    terminal.kind = NodeKind::terminal;
    terminal.object = pin;
    const auto at = positionOf(lookup_, pin);
    if (at.known()) terminal.at = at.value;
    return nodes_[pin] = boost::add_vertex(terminal, line_.graph);
  }

  void goOnFrom(const Entered& entered) {
    const auto role = roleOf(entered.piece);
    if (role == NetRole::ground) return;
    for (const auto pin : entered.pins) {
      const auto* found = board_.pins.find(pin);
      const auto* part = found != nullptr ? board_.parts.find(found->part) : nullptr;
      if (part == nullptr) continue;
      const auto& paths = pathsOf(*part);
      for (std::size_t i = 0; i < paths.size(); ++i)
        if ((paths[i].from == pin) != (paths[i].to == pin)) pass(pin, *part, i, paths[i], role);
    }
  }

  void pass(PinId pin, const Part& part, std::size_t path, const Through& through,
            std::optional<NetRole> roleHere) {
    const auto other = through.from == pin ? through.to : through.from;
    const auto piece = pieceOf(other);
    if (const auto reason = whyNot(part, through, roleHere, roleOf(piece))) {
      line_.ends.push_back({pin, part.id, *reason});
      return;
    }
    enter(piece);
    if (!passed_.emplace(part.id, path).second) return;
    CopperEdge edge;
    edge.kind = EdgeKind::part;
    edge.object = part.id;
    edge.resistance = through.resistance;
    const auto a = nodeOf(pin);
    const auto b = nodeOf(other);
    edge.from = line_.graph[a].at;
    edge.to = line_.graph[b].at;
    addEdge(a, b, std::move(edge));
  }

  [[nodiscard]] std::optional<LineEndReason> whyNot(const Part& part, const Through& through,
                                                    std::optional<NetRole> here,
                                                    std::optional<NetRole> there) const {
    if (there == NetRole::ground) return LineEndReason::ground;
    if (part.fitted.known() && !part.fitted.value) return LineEndReason::notFitted;
    if (through.resistance.known()) {
      // Written so that a resistance that is not a number does not pass.
      if (!(through.resistance.value <= options_.mostSeriesResistance))
        return LineEndReason::resistanceTooHigh;
    } else if (part.kind.known() &&
               (part.kind.value == PartKind::resistor || part.kind.value == PartKind::resistorArray)) {
      return LineEndReason::resistanceUnknown;
    }
    if (!options_.throughSupplies && (here == NetRole::supply || there == NetRole::supply))
      return LineEndReason::supply;
    return std::nullopt;
  }

  [[nodiscard]] std::optional<NetRole> roleOf(const Piece& piece) const {
    if (piece.kind != Piece::Kind::net) return std::nullopt;
    const auto role = netmend::roleOf(board_.nets[piece.which]);
    return role.known() ? std::optional(role.value) : std::nullopt;
  }

  const std::vector<Through>& pathsOf(const Part& part) {
    const auto found = paths_.find(part.id);
    if (found != paths_.end()) return found->second;
    return paths_[part.id] = pathsIfFitted(board_, part, lookup_.pinsOf(part.id)).valueOr({});
  }

  /// Only for pins without a net, so made only when the first is met.
  const std::unordered_map<PinId, std::size_t>& islandsByPin() {
    if (islandsByPin_) return *islandsByPin_;
    islandsByPin_.emplace();
    for (std::size_t i = 0; i < graph_.islands.size(); ++i) {
      const auto& graph = graph_.islands[i].graph;
      for (const auto node : boost::make_iterator_range(boost::vertices(graph)))
        if (graph[node].kind == NodeKind::terminal)
          if (const auto* pin = std::get_if<PinId>(&graph[node].object)) islandsByPin_->emplace(*pin, i);
    }
    return *islandsByPin_;
  }

  const Lookup& lookup_;
  const Board& board_;
  const BoardGraph& graph_;
  const LineOptions& options_;
  Line line_;
  std::set<Piece> entered_;
  std::deque<Entered> waiting_;
  std::unordered_map<PinId, NodeIndex> nodes_;
  std::unordered_map<PartId, std::vector<Through>> paths_;
  std::set<std::pair<PartId, std::size_t>> passed_;
  std::optional<std::unordered_map<PinId, std::size_t>> islandsByPin_;
};

} // namespace

std::vector<NodeIndex> Line::terminals() const {
  std::vector<NodeIndex> result;
  for (const auto node : boost::make_iterator_range(boost::vertices(graph)))
    if (graph[node].kind == NodeKind::terminal) result.push_back(node);
  return result;
}

Line lineOf(const Lookup& lookup, const BoardGraph& graph, NetId net, const LineOptions& options) {
  const auto index = lookup.board().nets.indexOf(net);
  if (index == lookup.board().nets.size()) return {};
  return LineSearch(lookup, graph, options).from({Piece::Kind::net, index});
}

Line lineOf(const Board& board, const BoardGraph& graph, NetId net, const LineOptions& options) {
  return lineOf(Lookup(board), graph, net, options);
}

Line lineOf(const Lookup& lookup, const BoardGraph& graph, PinId pin, const LineOptions& options) {
  if (lookup.board().pins.find(pin) == nullptr) return {};
  LineSearch search(lookup, graph, options);
  return search.from(search.pieceOf(pin));
}

} // namespace netmend
