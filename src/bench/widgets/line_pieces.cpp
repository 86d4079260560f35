#include "line_pieces.h"

#include <algorithm>
#include <map>
#include <unordered_map>

namespace netmend {

namespace {

constexpr double loudSuspicion = 0.01;

/// How good a place to start from: where the line comes from is a connector more often than anything else.
int sourceRank(const Board& board, PinId id) {
  const Pin* pin = board.pins.find(id);
  const Part* part = pin != nullptr ? board.parts.find(pin->part) : nullptr;
  if (part == nullptr || !part->kind.known()) return 3;
  if (part->kind.value == PartKind::connector) return 0;
  return part->kind.value == PartKind::chip ? 1 : 2;
}

class PieceMaker {
public:
  PieceMaker(const Board& board, const FaultCase& fault, const TreeWishes& wishes)
      : board_(board), fault_(fault), graph_(fault.line.graph), wishes_(wishes) {}

  LinePieces make() {
    out_.board = &board_;
    if (num_vertices(graph_) == 0) return std::move(out_);
    cut();
    addPins();
    addPlaces();
    addSuspicion();
    hang();
    sumUp();
    return std::move(out_);
  }

private:
  struct Join {
    std::size_t a;
    std::size_t b;
    const CopperEdge* edge;
  };

  /// Where copper merely overlaps nothing breaks, so that it is no place to part.
  void cut() {
    out_.edges.assign(num_edges(graph_), nullptr);
    for (const auto e : boost::make_iterator_range(edges(graph_)))
      out_.edges[graph_[e].index] = &graph_[e];
    auto cutting = bridges(graph_);
    std::erase_if(cutting, [&](std::size_t e) { return out_.edges[e]->kind == EdgeKind::contact; });
    const Fragments found = fragments(graph_, cutting);
    ofNode_ = found.ofNode;
    out_.pieces.resize(found.count);
    std::vector<char> isCut(out_.edges.size(), 0);
    for (const std::size_t e : cutting)
      isCut[e] = 1;
    pieceOfEdge_.assign(out_.edges.size(), 0);
    for (const auto e : boost::make_iterator_range(edges(graph_))) {
      const std::size_t a = ofNode_[source(e, graph_)];
      pieceOfEdge_[graph_[e].index] = a;
      if (isCut[graph_[e].index] != 0) joins_.push_back({a, ofNode_[target(e, graph_)], &graph_[e]});
    }
    for (NodeIndex node = 0; node < num_vertices(graph_); ++node) {
      CopperPiece& piece = out_.pieces[ofNode_[node]];
      if (graph_[node].kind == NodeKind::unknownWay) piece.hub = true;
      if (!piece.at) piece.at = graph_[node].at;
    }
  }

  void addPins() {
    for (NodeIndex node = 0; node < num_vertices(graph_); ++node) {
      const auto* pin = std::get_if<PinId>(&graph_[node].object);
      if (graph_[node].kind != NodeKind::terminal || pin == nullptr) continue;
      CopperPiece& piece = out_.pieces[ofNode_[node]];
      pinPlace_.emplace(pin->value, std::pair(ofNode_[node], piece.pins.size()));
      piece.pins.push_back({*pin, node, pinLabel(board_, *pin), graph_[node].at, 0.0, nullptr, false});
    }
  }

  [[nodiscard]] CopperPiece::OnePin* pinOf(PinId pin) {
    const auto found = pinPlace_.find(pin.value);
    if (found == pinPlace_.end()) return nullptr;
    return &out_.pieces[found->second.first].pins[found->second.second];
  }

  [[nodiscard]] CopperPiece* pieceOf(const ProbePlace& place) {
    return place.node ? &out_.pieces[ofNode_[*place.node]] : nullptr;
  }

  void addPlaces() {
    const auto& places = fault_.isolation.places;
    for (const PlaceReading& reading : wishes_.readings) {
      if (CopperPiece::OnePin* pin = pinOf(reading.pin)) {
        pin->reading = &reading;
        continue;
      }
      const auto place = probePlaceOf(fault_.isolation, {reading.pin, reading.label});
      CopperPiece* piece = place && !places[*place].pin ? pieceOf(places[*place]) : nullptr;
      if (piece == nullptr) continue;
      piece->reading = &reading;
      piece->placeName = fault_.names.probe(*place);
      piece->at = places[*place].at;
    }
    for (const auto& index : {wishes_.probe, wishes_.probeOther}) {
      if (!index || *index >= places.size()) continue;
      const ProbePlace& place = places[*index];
      if (CopperPiece::OnePin* pin = pinOf(place.pin)) {
        pin->probe = true;
      } else if (CopperPiece* piece = pieceOf(place)) {
        piece->probe = true;
        piece->placeName = fault_.names.probe(*index);
        piece->at = place.at;
      }
    }
  }

  void addSuspicion() {
    ofEdge_.assign(out_.edges.size(), 0.0);
    const Isolation& isolation = fault_.isolation;
    std::vector<CopperPiece*> hubs;
    for (CopperPiece& piece : out_.pieces)
      if (piece.hub) hubs.push_back(&piece);
    for (std::size_t c = 0; c < isolation.classes.size() && c < isolation.probability.size(); ++c) {
      const double probability = isolation.probability[c];
      if (isolation.classes[c].places.empty()) out_.elsewhere += probability;
      for (const FaultPlace& place : isolation.classes[c].places) {
        const double share = probability * place.share;
        CopperPiece::OnePin* pin = place.kind == FaultKind::deadPin ? pinOf(place.pin) : nullptr;
        if (pin != nullptr)
          pin->suspicion += share;
        else if (place.edge && *place.edge < ofEdge_.size())
          ofEdge_[*place.edge] += share;
        else if (hubs.size() == 1) // inside the only way that nobody has seen
          hubs.front()->suspicion += share;
        else
          out_.elsewhere += share;
      }
    }
  }

  [[nodiscard]] std::size_t sourcePiece() const {
    if (const auto found = pinPlace_.find(wishes_.source.value); found != pinPlace_.end())
      return found->second.first;
    std::optional<std::size_t> best;
    int bestRank = 0;
    for (std::size_t i = 0; i < out_.pieces.size(); ++i)
      for (const CopperPiece::OnePin& pin : out_.pieces[i].pins)
        if (const int rank = sourceRank(board_, pin.pin); !best || rank < bestRank) {
          best = i;
          bestRank = rank;
        }
    return best.value_or(0);
  }

  /// Breadth first from the source. What no way leads to hangs below it all the same: it has the same name.
  void hang() {
    std::vector<std::vector<std::size_t>> joinsOf(out_.pieces.size());
    std::vector<char> used(out_.edges.size(), 0);
    for (std::size_t i = 0; i < joins_.size(); ++i) {
      joinsOf[joins_[i].a].push_back(i);
      joinsOf[joins_[i].b].push_back(i);
    }
    out_.source = sourcePiece();
    std::vector<char> seen(out_.pieces.size(), 0);
    const auto reach = [&](std::size_t piece) {
      seen[piece] = 1;
      order_.push_back(piece);
    };
    const auto spread = [&](std::size_t from) {
      for (std::size_t i = from; i < order_.size(); ++i)
        for (const std::size_t j : joinsOf[order_[i]]) {
          const std::size_t other = joins_[j].a == order_[i] ? joins_[j].b : joins_[j].a;
          if (seen[other] != 0) continue;
          out_.pieces[other].parent = order_[i];
          out_.pieces[other].above = joins_[j].edge;
          out_.pieces[other].aboveSuspicion = ofEdge_[joins_[j].edge->index];
          used[joins_[j].edge->index] = 1;
          out_.pieces[order_[i]].children.push_back(other);
          reach(other);
        }
    };
    reach(out_.source);
    spread(0);
    for (std::size_t piece = 0; piece < out_.pieces.size(); ++piece) {
      if (seen[piece] != 0 || out_.pieces[piece].pins.empty()) continue;
      out_.pieces[piece].parent = out_.source;
      out_.pieces[out_.source].children.push_back(piece);
      const std::size_t from = order_.size();
      reach(piece);
      spread(from);
    }
    for (std::size_t e = 0; e < ofEdge_.size(); ++e)
      if (used[e] == 0) out_.pieces[pieceOfEdge_[e]].suspicion += ofEdge_[e];
  }

  void sumUp() {
    for (auto it = order_.rbegin(); it != order_.rend(); ++it) {
      CopperPiece& piece = out_.pieces[*it];
      piece.leadsToPins = piece.leadsToPins || !piece.pins.empty();
      piece.loud = piece.loud || piece.reading != nullptr || piece.probe ||
                   piece.suspicion + piece.aboveSuspicion >= loudSuspicion;
      for (const CopperPiece::OnePin& pin : piece.pins)
        piece.loud = piece.loud || pin.reading != nullptr || pin.probe || pin.suspicion >= loudSuspicion;
      if (!piece.parent) continue;
      CopperPiece& parent = out_.pieces[*piece.parent];
      parent.leadsToPins = parent.leadsToPins || piece.leadsToPins;
      parent.loud = parent.loud || piece.loud;
    }
  }

  const Board& board_;
  const FaultCase& fault_;
  const CopperGraph& graph_;
  const TreeWishes& wishes_;
  LinePieces out_;
  std::vector<std::size_t> ofNode_;
  std::vector<std::size_t> pieceOfEdge_;
  std::vector<double> ofEdge_;
  std::vector<Join> joins_;
  std::vector<std::size_t> order_; ///< pieces, parents first
  std::unordered_map<std::uint64_t, std::pair<std::size_t, std::size_t>> pinPlace_;
};

} // namespace

LinePieces linePieces(const Board& board, const FaultCase& fault, const TreeWishes& wishes) {
  return PieceMaker(board, fault, wishes).make();
}

} // namespace netmend
