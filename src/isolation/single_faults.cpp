#include <cmath>
#include <map>

#include "fault_classes.h"

namespace netmend {

namespace {

constexpr double leastDeadPinShare =
    0.02; ///< below this chance of a junction there is nothing that could die

Length straightLength(const CutEdge& cut) {
  return cut.from && cut.to ? distance(*cut.from, *cut.to) : Length();
}

/// Barrels of one via share its chance to crack.
std::map<CopperObject, double> barrelsPerVia(const LineCells& cells) {
  std::map<CopperObject, double> count;
  for (const auto& edge : cells.edges)
    if (edge.kind == EdgeKind::via) count[edge.object] += 1.0;
  return count;
}

class Breaks {
public:
  explicit Breaks(const LineView& view)
      : view_(view), board_(view.lookup.board()), barrels_(barrelsPerVia(view.cells)) {
    for (NodeIndex node = 0; node < num_vertices(view.line.graph); ++node)
      if (const auto* pin = std::get_if<PinId>(&view.line.graph[node].object))
        terminalsOfCell_[view.cells.cellOfNode[node]].push_back(*pin);
  }

  FaultCandidate above(std::size_t cell) const {
    const CutEdge& cut = view_.cells.above[cell];
    const CopperEdge& edge = view_.cells.edges[cut.copperEdge];
    FaultCandidate result;
    result.effect = {FaultKind::open, {{cell, view_.cells.end[cell]}}, noCell};
    FaultPlace& place = result.place;
    place.edgeKind = edge.kind;
    place.edge = edge.index;
    place.object = edge.object;
    place.layer = edge.layer;
    if (cut.from) place.way.push_back(*cut.from);
    if (cut.to && (!cut.from || *cut.to != *cut.from)) place.way.push_back(*cut.to);
    if (!place.way.empty()) place.at = middle(place.way.front(), place.way.back());
    switch (edge.kind) {
    case EdgeKind::solderJoint:
      joint(cell, result);
      break;
    case EdgeKind::track:
      track(cut, edge, result);
      break;
    case EdgeKind::via:
      barrel(edge, result);
      break;
    case EdgeKind::part:
      part(edge, result);
      break;
    case EdgeKind::unknownWay:
      unknownWay(cell, cut, edge, result);
      break;
    case EdgeKind::contact:
      break;
    }
    return result;
  }

private:
  static Point middle(Point a, Point b) { return {(a.x + b.x) / 2, (a.y + b.y) / 2}; }

  /// The pin of the joint: the terminal on one of its two sides that the edge names, or that is there.
  [[nodiscard]] PinId pinOfJoint(std::size_t cell, const CopperEdge& edge) const {
    if (const auto* pin = std::get_if<PinId>(&edge.object)) return *pin;
    if (const auto* padId = std::get_if<PadId>(&edge.object))
      if (const Pad* pad = board_.pads.find(*padId)) return pad->pin;
    for (const std::size_t side : {cell, view_.cells.parent[cell]})
      if (const auto it = terminalsOfCell_.find(side); it != terminalsOfCell_.end() && it->second.size() == 1)
        return it->second.front();
    return {};
  }

  void joint(std::size_t cell, FaultCandidate& result) const {
    FaultPlace& place = result.place;
    place.pin = pinOfJoint(cell, view_.cells.edgeAbove(cell));
    if (!place.at && place.pin)
      if (const auto at = positionOf(view_.lookup, place.pin); at.known()) place.at = at.value;
    if (place.way.empty() && place.at) place.way.push_back(*place.at);
    if (place.way.size() > 1) place.way = {*place.at};
    const Pin* pin = board_.pins.find(place.pin);
    const Part* owner = pin ? board_.parts.find(pin->part) : nullptr;
    const bool connector = owner && owner->kind.known() && owner->kind.value == PartKind::connector;
    result.weight = connector ? view_.priors.connectorJoint : view_.priors.solderJoint;
  }

  void track(const CutEdge& cut, const CopperEdge& edge, FaultCandidate& result) const {
    FaultPlace& place = result.place;
    double mm = 0.0;
    if (edge.length.known()) {
      mm = edge.length.value.mm() * cut.share;
      place.length = Length::fromMm(mm);
    } else {
      mm = std::max(1.0, straightLength(cut).mm());
    }
    result.weight = view_.priors.trackPerMm * std::max(mm, 0.01);
  }

  void barrel(const CopperEdge& edge, FaultCandidate& result) const {
    FaultPlace& place = result.place;
    if (!place.at)
      if (const auto* id = std::get_if<ViaId>(&edge.object))
        if (const Via* via = board_.vias.find(*id)) place.at = via->position;
    if (place.at) place.way = {*place.at};
    const auto count = barrels_.find(edge.object);
    result.weight = view_.priors.via / (count == barrels_.end() ? 1.0 : count->second);
  }

  void part(const CopperEdge& edge, FaultCandidate& result) const {
    const auto* id = std::get_if<PartId>(&edge.object);
    const Part* owner = id ? board_.parts.find(*id) : nullptr;
    if (!result.place.at && owner && owner->position.known()) result.place.at = owner->position.value;
    result.weight = view_.priors.part;
  }

  void unknownWay(std::size_t cell, const CutEdge& cut, const CopperEdge& edge,
                  FaultCandidate& result) const {
    const double straight = straightLength(cut).mm();
    const double mm = edge.length.known() ? edge.length.value.mm()
                      : straight > 0.0    ? 1.3 * straight // tracks seldom go straight
                                          : view_.priors.unknownWayLength.mm();
    if (edge.length.known()) result.place.length = edge.length.value;
    result.place.beyond = pinsOf(view_, result.effect, true, view_.cells.root[cell]);
    result.weight = view_.priors.unknownWayPerMm * std::max(mm, 0.1);
  }

  const LineView& view_;
  const Board& board_;
  std::map<CopperObject, double> barrels_;
  std::map<std::size_t, std::vector<PinId>> terminalsOfCell_;
};

} // namespace

std::vector<FaultCandidate> singlePlaceFaults(const LineView& view) {
  std::vector<FaultCandidate> result;
  const Breaks breaks(view);
  for (std::size_t cell = 0; cell < view.cells.size(); ++cell)
    if (!view.cells.isRoot(cell)) result.push_back(breaks.above(cell));
  for (std::size_t i = 0; i < view.pins.size(); ++i) {
    const LinePin& pin = view.pins[i];
    if (pin.termination.shares.junction < leastDeadPinShare) continue;
    FaultCandidate dead;
    dead.place.kind = FaultKind::deadPin;
    dead.place.pin = pin.pin;
    dead.place.object = pin.pin;
    if (const auto at = positionOf(view.lookup, pin.pin); at.known()) {
      dead.place.at = at.value;
      dead.place.way = {at.value};
    }
    dead.effect = {FaultKind::deadPin, {}, i};
    dead.weight = view.priors.deadPin * pin.termination.shares.junction;
    result.push_back(std::move(dead));
  }
  return result;
}

} // namespace netmend
