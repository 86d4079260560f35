#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "line_cells.h"
#include "near_ground.h"
#include "netmend/netgraph/net_role.h"
#include "probe_places.h"
#include "short_model.h"

namespace netmend {

namespace {

/// A place and where in the copper it is.
struct Candidate {
  ShortPlace place;
  std::optional<NodeIndex> node;
  AlongEdge along;
};

class CandidateSearch {
public:
  CandidateSearch(const ShortInput& input, const CopperGraph& graph)
      : lookup_(input.lookup), board_(input.lookup.board()), input_(input), graph_(graph),
        nets_(input.line.nets.begin(), input.line.nets.end()) {}

  std::vector<Candidate> search() {
    addParts();
    addGaps();
    return std::move(out_);
  }

private:
  [[nodiscard]] bool isOnLine(const Pin& pin) const {
    return terminals_.contains(pin.id) || (pin.net.known() && nets_.contains(pin.net.value));
  }

  [[nodiscard]] std::optional<NetRole> roleOfPin(const Pin& pin) const {
    const Net* net = pin.net.known() ? board_.nets.find(pin.net.value) : nullptr;
    if (net == nullptr) return std::nullopt;
    const auto role = roleOf(*net);
    return role.known() ? std::optional(role.value) : std::nullopt;
  }

  /// How a part may short the line: to ground, to a supply, or not at all.
  [[nodiscard]] double reach(PartId part) const {
    double best = 0.0;
    for (const PinId id : lookup_.pinsOf(part)) {
      const Pin& pin = *board_.pins.find(id);
      if (isOnLine(pin)) continue;
      const auto role = roleOfPin(pin);
      if (role == NetRole::ground) return 1.0;
      if (role == NetRole::supply) best = input_.priors.partToSupply;
    }
    return best;
  }

  void addParts() {
    std::map<PartId, std::vector<NodeIndex>> nodesOf;
    for (const auto node : boost::make_iterator_range(boost::vertices(graph_))) {
      if (graph_[node].kind != NodeKind::terminal) continue;
      const auto* id = std::get_if<PinId>(&graph_[node].object);
      const Pin* pin = id != nullptr ? board_.pins.find(*id) : nullptr;
      if (pin == nullptr || !terminals_.insert(pin->id).second || !pin->part) continue;
      nodesOf[pin->part].push_back(node);
    }
    for (const auto& [id, nodes] : nodesOf) {
      const Part& part = *board_.parts.find(id);
      const double weight = part.fitted.valueOr(true) ? input_.priors.weightOf(part.kind) * reach(id) : 0.0;
      if (weight <= 0.0) continue;
      for (const NodeIndex node : nodes) {
        Candidate one;
        one.place.kind = ShortKind::part;
        one.place.part = id;
        one.place.pin = std::get<PinId>(graph_[node].object);
        one.place.at = graph_[node].at;
        one.place.layer = graph_[node].layer;
        one.place.prior = weight / static_cast<double>(nodes.size());
        one.node = node;
        out_.push_back(std::move(one));
      }
    }
  }

  /// Two pads of one part of two pins are that part.
  [[nodiscard]] bool isBridge(const NearGround& near) const {
    if (!near.pin || !near.neighbour || near.gap > input_.priors.mostBridgeGap) return false;
    const Pin* pin = board_.pins.find(near.pin);
    if (pin == nullptr || !pin->part) return false;
    return board_.pins.find(near.neighbour)->part != pin->part || lookup_.pinsOf(pin->part).size() > 2;
  }

  void addGaps() {
    const ShortPriors& priors = input_.priors;
    const Length within = std::max(priors.mostGap, priors.mostBridgeGap);
    // What lies side by side on one object within some millimetres is one place.
    constexpr std::int64_t bin = 3'000'000;
    std::map<std::tuple<CopperObject, int, std::int64_t, std::int64_t>, std::size_t> merged;
    for (const NearGround& near : nearGround(board_, input_.graph, graph_, within)) {
      const bool bridge = isBridge(near);
      const Length usual = bridge ? priors.usualBridgeGap : priors.usualGap;
      if (!bridge && near.gap > priors.mostGap) continue;
      const double wider = static_cast<double>(usual.nm) / static_cast<double>(std::max(usual, near.gap).nm);
      Candidate one;
      one.place.kind = bridge ? ShortKind::bridge : ShortKind::nearGround;
      one.place.pin = bridge ? near.pin : PinId{};
      one.place.neighbour = bridge ? near.neighbour : PinId{};
      one.place.object = near.object;
      one.place.at = near.at;
      one.place.layer = near.layer;
      one.place.gap = near.gap;
      one.place.prior = wider * (bridge ? priors.bridge : priors.nearGroundPerMm * near.mm);
      one.node = near.node;
      one.along = near.along;
      const auto [found, isNew] = merged.try_emplace(
          std::tuple(near.object, bridge ? -2 : near.layer, near.at.x.nm / bin, near.at.y.nm / bin),
          out_.size());
      if (isNew)
        out_.push_back(std::move(one));
      else
        out_[found->second].place.prior += one.place.prior;
    }
  }

  const Lookup& lookup_;
  const Board& board_;
  const ShortInput& input_;
  const CopperGraph& graph_;
  std::set<NetId> nets_;
  std::set<PinId> terminals_;
  std::vector<Candidate> out_;
};

/// Mended alike.
auto repairOf(const ShortPlace& place) {
  return std::tuple(place.kind, place.part, place.kind == ShortKind::bridge ? place.pin : PinId{},
                    place.neighbour, place.kind == ShortKind::nearGround ? place.object : CopperObject{});
}

/// Copper that nobody has seen may lie beside ground as well; a short there is none of the places.
double unseenWeight(const CopperGraph& graph, const ShortPriors& priors) {
  double mm = 0.0;
  for (const auto edge : boost::make_iterator_range(boost::edges(graph)))
    if (const CopperEdge& copper = graph[edge]; copper.kind == EdgeKind::unknownWay)
      mm += wayMm(copper, priors.unknownWayLength);
  return mm * priors.nearGroundPerMm;
}

/// Shares of 1 from weights; `unseen` goes to none of these.
void shareOut(std::vector<ShortPlace>& places, double noneOfThese, double unseen) {
  double sum = unseen;
  for (const ShortPlace& place : places)
    sum += place.prior;
  for (ShortPlace& place : places)
    place.prior *= (1.0 - noneOfThese) / sum;
  ShortPlace none;
  none.kind = ShortKind::noneOfThese;
  none.prior = places.empty() ? 1.0 : noneOfThese + (1.0 - noneOfThese) * unseen / sum;
  places.push_back(none);
}

/// What of the line can be read: of places along a track only those that are nodes anyway.
std::vector<ProbePlace> pointsOf(const ShortInput& input) {
  const LineCells cells = lineCells(input.lookup, input.line, input.efforts.scrapeEvery);
  auto points = probePlaces(input.lookup, input.line, cells, input.efforts).places;
  std::erase_if(points, [](const ProbePlace& point) { return !point.node; });
  return points;
}

} // namespace

ShortSearch shortHypotheses(const ShortInput& input) {
  ShortSearch out;
  out.points = pointsOf(input);
  CopperGraph graph = withAreasResolved(input.lookup.board(), input.line.graph);
  const auto candidates = CandidateSearch(input, graph).search();
  std::vector<AlongEdge> spots;
  std::vector<NodeIndex> wanted;
  for (const Candidate& one : candidates) {
    out.places.push_back(one.place);
    if (one.node)
      wanted.push_back(*one.node);
    else
      spots.push_back(one.along);
  }
  shareOut(out.places, input.priors.noneOfTheseShare, unseenWeight(graph, input.priors));
  for (const ProbePlace& point : out.points)
    wanted.push_back(*point.node);
  ShortNetwork network(graph, input.priors, spots, wanted);

  std::vector<std::size_t> placeNode;
  placeNode.reserve(candidates.size());
  std::size_t spot = 0;
  for (const Candidate& one : candidates)
    placeNode.push_back(one.node ? network.nodeOf(*one.node) : network.nodeOfSpot(spot++));
  std::vector<std::size_t> pointNode;
  std::optional<std::size_t> into;
  for (const ProbePlace& point : out.points) {
    pointNode.push_back(network.nodeOf(*point.node));
    if (input.injectedAt && point.pin == input.injectedAt) into = pointNode.back();
  }
  std::map<decltype(repairOf({})), std::size_t> numbers;
  std::vector<std::size_t> suspectOf;
  for (const ShortPlace& place : out.places)
    suspectOf.push_back(numbers.try_emplace(repairOf(place), numbers.size()).first->second);
  out.model = std::make_shared<ShortModel>(ShortModel{input.priors, input.efforts, input.meter, graph,
                                                      std::move(placeNode), std::move(pointNode), into,
                                                      std::move(suspectOf), std::move(network)});
  return out;
}

} // namespace netmend
