#include "simulation/repair.h"

#include <algorithm>
#include <limits>
#include <numeric>

#include <fmt/format.h>

#include "netmend/jumper/proposal.h"

namespace netmend::simulation {

namespace {

PinId pinAt(const CopperNode& node, const Board& board) {
  if (const auto* pin = std::get_if<PinId>(&node.object)) return *pin;
  if (const auto* pad = std::get_if<PadId>(&node.object))
    if (const Pad* found = board.pads.find(*pad)) return found->pin;
  return {};
}

/// Solder at a node: at a pin or its pad it joins both.
WireEnd endAt(const CopperGraph& graph, const Board& board, NodeIndex node) {
  WireEnd out{graph[node].object, graph[node].at, graph[node].layer, {node}};
  const PinId pin = pinAt(graph[node], board);
  for (NodeIndex other = 0; pin && other < num_vertices(graph); ++other)
    if (other != node && pinAt(graph[other], board) == pin) out.nodes.push_back(other);
  return out;
}

double apart(const std::optional<Point>& a, const std::optional<Point>& b) {
  return a && b ? distance(*a, *b).mm() : 1e6;
}

/// The nearest pair of nodes that a wire can be soldered to, one of each list.
std::optional<std::pair<NodeIndex, NodeIndex>> nearestPair(const CopperGraph& graph,
                                                           const std::vector<NodeIndex>& some,
                                                           const std::vector<NodeIndex>& others) {
  std::optional<std::pair<NodeIndex, NodeIndex>> best;
  double shortest = std::numeric_limits<double>::infinity();
  for (const NodeIndex a : some)
    for (const NodeIndex b : others)
      if (const double mm = apart(graph[a].at, graph[b].at); mm < shortest) {
        shortest = mm;
        best = {a, b};
      }
  return best;
}

bool solderable(const CopperNode& node) {
  return node.kind != NodeKind::unknownWay && node.kind != NodeKind::area;
}

/// Where a wire goes on one side of a break: the cut edges' own ends there, or, where these are no place, all
/// of that side.
std::vector<NodeIndex> landings(const CopperGraph& graph, const std::vector<std::size_t>& cut,
                                const Fragments& parts, std::size_t side) {
  std::vector<NodeIndex> ends, all;
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge)
    if (std::find(cut.begin(), cut.end(), graph[*edge].index) != cut.end())
      for (const NodeIndex node : {source(*edge, graph), target(*edge, graph)})
        if (parts.ofNode[node] == side && solderable(graph[node])) ends.push_back(node);
  if (!ends.empty()) return ends;
  for (NodeIndex node = 0; node < num_vertices(graph); ++node)
    if (parts.ofNode[node] == side && solderable(graph[node])) all.push_back(node);
  return all;
}

std::optional<Repair> wireOver(const CopperGraph& graph, const Board& board,
                               const std::vector<std::size_t>& cut) {
  const auto ends = breakEnds(graph, cut);
  if (!ends) return std::nullopt;
  const auto pair = nearestPair(graph, landings(graph, cut, ends->fragments, ends->a),
                                landings(graph, cut, ends->fragments, ends->b));
  if (!pair) return std::nullopt;
  return Repair{Repair::Kind::wire, {endAt(graph, board, pair->first), endAt(graph, board, pair->second)}};
}

/// From end to end of one edge, where nobody knows what hangs on it: a via whose other side was not seen.
std::optional<Repair> wireAlong(const CopperGraph& graph, const Board& board, std::size_t index) {
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge)
    if (graph[*edge].index == index)
      return Repair{Repair::Kind::wire,
                    {endAt(graph, board, source(*edge, graph)), endAt(graph, board, target(*edge, graph))}};
  return std::nullopt;
}

std::vector<NodeIndex> legsOf(const CopperGraph& graph, const std::vector<PinId>& pins) {
  std::vector<NodeIndex> out;
  for (NodeIndex node = 0; node < num_vertices(graph); ++node)
    if (const auto* pin = std::get_if<PinId>(&graph[node].object))
      if (std::find(pins.begin(), pins.end(), *pin) != pins.end()) out.push_back(node);
  return out;
}

/// A break inside an unknown way: from a pin that it cuts off to one that it does not.
std::optional<Repair> wireInside(const CopperGraph& graph, const Board& board, const FaultPlace& place) {
  std::vector<NodeIndex> rest;
  const auto beyond = legsOf(graph, place.beyond);
  if (place.before.empty()) {
    for (NodeIndex node = 0; node < num_vertices(graph); ++node)
      if (graph[node].kind == NodeKind::terminal &&
          std::find(beyond.begin(), beyond.end(), node) == beyond.end())
        rest.push_back(node);
  } else {
    rest = legsOf(graph, place.before);
  }
  const auto pair = nearestPair(graph, beyond, rest);
  if (!pair) return std::nullopt;
  return Repair{Repair::Kind::wire, {endAt(graph, board, pair->first), endAt(graph, board, pair->second)}};
}

PartId partOf(const CopperObject& object, PinId pin, const Board& board) {
  if (const auto* part = std::get_if<PartId>(&object)) return *part;
  const Pin* found = board.pins.find(pin);
  return found ? found->part : PartId{};
}

bool isDead(FaultKind kind) {
  return kind == FaultKind::deadPin;
}

} // namespace

std::optional<Repair> repairOf(const Line& line, const Lookup& lookup, const FaultClass& suspect,
                               const FaultPlace& place) {
  if (place.kind == FaultKind::noneOfThese) return std::nullopt;
  if (place.kind == FaultKind::sound) return Repair{};
  if (place.kind == FaultKind::shortToGround) {
    Repair out;
    const auto* part = std::get_if<PartId>(&place.object);
    out.kind = part ? Repair::Kind::newPart : Repair::Kind::clearShort;
    if (part) out.part = *part;
    return out;
  }
  if (isDead(place.kind) || place.edgeKind == EdgeKind::part)
    return Repair{Repair::Kind::newPart, {}, partOf(place.object, place.pin, lookup.board())};
  if (!place.edge) return wireInside(line.graph, lookup.board(), place);
  std::vector<std::size_t> cut;
  for (const FaultPlace& other : suspect.places)
    if (other.edge && other.edgeKind != EdgeKind::part) cut.push_back(*other.edge);
  if (const auto whole = wireOver(line.graph, lookup.board(), cut)) return whole;
  if (const auto one = wireOver(line.graph, lookup.board(), {*place.edge})) return one;
  return wireAlong(line.graph, lookup.board(), *place.edge);
}

bool mends(const Line& line, const Lookup& lookup, const Repair& repair, const FaultPlace& place) {
  if (place.kind == FaultKind::noneOfThese) return false;
  const bool shorted = place.kind == FaultKind::shortToGround;
  const Board& board = lookup.board();
  switch (repair.kind) {
  case Repair::Kind::nothing:
    return place.kind == FaultKind::sound;
  case Repair::Kind::clearShort:
    return shorted;
  case Repair::Kind::newPart: {
    const bool inPart = std::holds_alternative<PartId>(place.object) || place.pin;
    const bool onIt = place.kind != FaultKind::open || place.edgeKind == EdgeKind::part ||
                      place.edgeKind == EdgeKind::solderJoint;
    return place.kind != FaultKind::sound && inPart && onIt &&
           partOf(place.object, place.pin, board) == repair.part;
  }
  case Repair::Kind::wire:
    break;
  }
  if (place.kind != FaultKind::open || place.edgeKind == EdgeKind::part) return false;
  const auto& from = repair.ends[0].nodes;
  const auto& to = repair.ends[1].nodes;
  if (!place.edge) {
    const auto beyond = legsOf(line.graph, place.beyond);
    const auto holds = [&](const std::vector<NodeIndex>& ends) {
      return std::any_of(ends.begin(), ends.end(), [&](NodeIndex n) {
        return std::find(beyond.begin(), beyond.end(), n) != beyond.end();
      });
    };
    return holds(from) != holds(to);
  }
  const Fragments parts = fragments(line.graph, {*place.edge});
  const auto first = parts.ofNode[from.front()];
  const auto crosses = [&](NodeIndex n) { return parts.ofNode[n] != first; };
  return std::any_of(from.begin(), from.end(), crosses) || std::any_of(to.begin(), to.end(), crosses);
}

Mending mendingOf(const BoardLine& line, const Lookup& lookup, const Repair& repair,
                  const std::optional<Crack>& crack) {
  if (repair.kind == Repair::Kind::newPart) return newPart(line, lookup, repair.part);
  if (repair.kind == Repair::Kind::clearShort) return {Mending::Kind::clearShort, {}, {}};
  if (repair.kind == Repair::Kind::nothing) return {};
  std::vector<std::size_t> ends;
  for (const WireEnd& end : repair.ends)
    if (const auto spot = spotAt(line, lookup, end.object, end.at, end.layer, crack)) ends.push_back(*spot);
  if (ends.size() != 2) return {Mending::Kind::wire, {}, {}};
  return wireBetween(line, ends[0], ends[1]);
}

namespace {

/// A class's places; one that names none still is one.
std::vector<FaultPlace> placesOf(const FaultClass& suspect) {
  if (!suspect.places.empty()) return suspect.places;
  FaultPlace bare;
  bare.kind = suspect.kind;
  return {bare};
}

/// Where a landing is on the line.
WireEnd endAt(const CopperGraph& graph, const Board& board, const Landing& landing) {
  NodeIndex best = 0;
  double nearest = std::numeric_limits<double>::infinity();
  for (NodeIndex node = 0; node < num_vertices(graph); ++node) {
    const CopperNode& there = graph[node];
    const bool same = there.object == landing.copper || there.object == landing.object;
    const double off = apart(there.at, landing.at) + (there.layer == landing.layer ? 0.0 : 1e3);
    if (!same || off >= nearest) continue;
    nearest = off;
    best = node;
  }
  WireEnd out = endAt(graph, board, best);
  out.object = landing.object;
  out.at = landing.at;
  out.layer = landing.layer;
  return out;
}

double saidOf(const FaultCase& fault, const Lookup& lookup, const Repair& repair) {
  double said = 0.0;
  for (std::size_t c = 0; c < fault.isolation.classes.size(); ++c) {
    if (fault.isolation.probability[c] < 1e-5) continue;
    for (const FaultPlace& place : placesOf(fault.isolation.classes[c]))
      if (mends(fault.line, lookup, repair, place)) said += fault.isolation.probability[c] * place.share;
  }
  return said;
}

} // namespace

Claim topClaim(const FaultCase& fault, const Lookup& lookup, const std::vector<OneJumper>& jumpers) {
  const Isolation& isolation = fault.isolation;
  std::vector<std::size_t> order(isolation.classes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return isolation.probability[a] > isolation.probability[b];
  });
  constexpr std::size_t tried = 8; ///< classes whose repairs are compared
  order.resize(std::min(order.size(), tried));
  std::vector<Repair> repairs;
  for (const OneJumper& jumper : jumpers)
    repairs.push_back({Repair::Kind::wire,
                       {endAt(fault.line.graph, lookup.board(), jumper.from),
                        endAt(fault.line.graph, lookup.board(), jumper.to)}});
  for (const std::size_t c : order)
    if (auto repair =
            repairOf(fault.line, lookup, isolation.classes[c], placesOf(isolation.classes[c]).front()))
      repairs.push_back(std::move(*repair));
  Claim best;
  best.weighed = repairs;
  for (const Repair& repair : repairs) {
    // A part is not thrown away for the little that its own death adds to that of its joint.
    const double least = best.repair && repair.kind == Repair::Kind::newPart ? best.said + 0.02 : best.said;
    if (const double said = saidOf(fault, lookup, repair); said > least) {
      best.repair = repair;
      best.said = said;
    }
  }
  return best;
}

std::string wordsFor(const Repair& repair, const Board& board) {
  const auto end = [&](const WireEnd& there) {
    const PinId pin = pinAt(CopperNode{NodeKind::joint, there.object, {}, -1}, board);
    std::string out = pin ? pinLabel(board, pin) : std::string("copper");
    if (there.at) out += fmt::format(" at {:.2f},{:.2f}", there.at->x.mm(), there.at->y.mm());
    return out;
  };
  switch (repair.kind) {
  case Repair::Kind::nothing:
    return "nothing";
  case Repair::Kind::clearShort:
    return "clear the short";
  case Repair::Kind::newPart: {
    const Part* part = board.parts.find(repair.part);
    return "new part " + (part ? part->reference : std::string());
  }
  case Repair::Kind::wire:
    return "wire from " + end(repair.ends[0]) + " to " + end(repair.ends[1]);
  }
  return {};
}

double massOnTruth(const BenchJob& job, const Lookup& lookup, const Line& line, const Isolation& isolation) {
  double mass = 0.0;
  for (std::size_t c = 0; c < isolation.classes.size(); ++c) {
    if (isolation.probability[c] < 1e-6) continue;
    const FaultClass& suspect = isolation.classes[c];
    for (const FaultPlace& place : placesOf(suspect)) {
      const auto repair = repairOf(line, lookup, suspect, place);
      if (repair && restores(*job.line, job.fault, mendingOf(*job.line, lookup, *repair, job.fault.crack)))
        mass += isolation.probability[c] * place.share;
    }
  }
  return mass;
}

} // namespace netmend::simulation
