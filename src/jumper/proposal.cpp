#include "netmend/jumper/proposal.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "current.h"
#include "scoring.h"

namespace netmend {
namespace {

/// Landings of both fragments on one side.
struct SideView {
  FreeArea area;
  LandingList a;
  LandingList b;
};

struct Pair {
  const SideView* view;
  const Landing* from;
  const Landing* to;
  double atLeast; ///< no way between them is cheaper
};

std::vector<Point> withEnds(const Landing& from, const Landing& to, const std::vector<Point>& free) {
  std::vector<Point> points = free;
  if (points.front() != from.at) points.insert(points.begin(), from.at);
  if (points.back() != to.at) points.push_back(to.at);
  if (points.size() == 1) points.push_back(to.at);
  return points;
}

/// Landings whose copper meets, or the leg and pad of one joint, want solder and no wire.
bool touching(const Landing& a, const Landing& b) {
  if (std::holds_alternative<PinId>(a.object) && a.object == b.object) return true;
  const Length reach = (a.width.valueOr({}) + b.width.valueOr({})) / 2;
  return distance(a.at, b.at) <= reach;
}

bool sameLanding(const Landing& a, const Landing& b) {
  // Two places on one track, or on neighbouring pieces of it, are one choice.
  const bool bothTracks = a.kind == LandingKind::outerTrack && b.kind == LandingKind::outerTrack;
  return a.side == b.side &&
         (a.object == b.object || (bothTracks && distance(a.at, b.at) < Length(2'000'000)));
}

/// What sets `candidate` apart from one already chosen.
Difference differenceFrom(const Candidate& chosen, const Candidate& candidate) {
  Difference out;
  if (chosen.area->side != candidate.area->side) {
    out.side = candidate.area->side;
    return out;
  }
  out.from = !sameLanding(*chosen.from, *candidate.from);
  out.to = !sameLanding(*chosen.to, *candidate.to);
  out.wayRound = !out.from && !out.to && chosen.from == candidate.from && chosen.to == candidate.to &&
                 chosen.points != candidate.points;
  return out;
}

OwnCopper ownCopper(const CopperGraph& graph, const BreakEnds& ends) {
  OwnCopper own;
  for (const NodeIndex n : boost::make_iterator_range(boost::vertices(graph))) {
    if (!ends.onBrokenCopper(n)) continue;
    if (const auto* pad = std::get_if<PadId>(&graph[n].object)) own.pads.push_back(*pad);
    if (const auto* via = std::get_if<ViaId>(&graph[n].object)) own.vias.push_back(*via);
  }
  std::sort(own.pads.begin(), own.pads.end());
  std::sort(own.vias.begin(), own.vias.end());
  return own;
}

class Finder {
public:
  Finder(const Lookup& lookup, const JumperRequest& request, const JumperData& data, const BreakEnds& ends,
         const OwnCopper& own)
      : lookup_(lookup), request_(request), data_(data), ends_(ends), own_(own) {}

  /// With `overHoles` a way may lead over holes and joints of other nets.
  Result<void> prepare(Length wire, bool overHoles) {
    const LandingOptions landing = landingOptions();
    views_.reserve(2);
    for (const Side side : {Side::top, Side::bottom}) {
      FreeAreaOptions options;
      options.wire = wire;
      options.overrides = request_.overrides;
      options.own = own_.pads;
      options.overHoles = overHoles;
      auto area = buildFreeArea(lookup_, side, data_.zones, options);
      if (!area) return failure(area.error());
      views_.push_back({std::move(*area), {}, {}});
      SideView& view = views_.back();
      view.a =
          landingsOf(lookup_, *request_.graph, ends_.fragments, ends_.a, view.area, data_.landings, landing);
      view.b =
          landingsOf(lookup_, *request_.graph, ends_.fragments, ends_.b, view.area, data_.landings, landing);
    }
    return {};
  }

  /// Candidates that differ, best first.
  std::vector<Candidate> find() {
    for (const Pair& pair : pairs()) {
      if (candidates_.size() >= request_.most && pair.atLeast > worstOf(chosen())) break;
      route(pair);
    }
    addOtherWays();
    return chosen();
  }

  [[nodiscard]] WhyFewer whyFewer(std::size_t found) const {
    if (found >= request_.most) return WhyFewer::asManyAsWanted;
    if (found > 0) return WhyFewer::nothingDiffersEnough;
    std::size_t a = 0, b = 0;
    for (const SideView& view : views_) {
      a += view.a.landings.size();
      b += view.b.landings.size();
    }
    if (a == 0 && b == 0) return WhyFewer::noLanding;
    if (a == 0 || b == 0) return WhyFewer::oneSideWithout;
    return closedBy_.empty() ? WhyFewer::notOnOneSide : WhyFewer::closed;
  }
  [[nodiscard]] std::vector<KeepOutName> closedBy() const { return {closedBy_.begin(), closedBy_.end()}; }

  [[nodiscard]] std::vector<ExcludedLanding> excluded() const {
    std::vector<ExcludedLanding> all;
    for (const SideView& view : views_)
      for (const LandingList* list : {&view.a, &view.b})
        for (const ExcludedLanding& e : list->excluded)
          if (std::find(all.begin(), all.end(), e) == all.end()) all.push_back(e);
    return all;
  }

  [[nodiscard]] bool outlineGuessed() const {
    return std::any_of(views_.begin(), views_.end(), [](const SideView& v) { return v.area.outlineGuessed; });
  }

private:
  [[nodiscard]] LandingOptions landingOptions() const {
    LandingOptions options{request_.couplingAllowed, ends_.at, request_.cut, {}};
    for (const NodeIndex n : boost::make_iterator_range(boost::vertices(*request_.graph)))
      options.on.push_back(ends_.onBrokenCopper(n));
    return options;
  }

  [[nodiscard]] std::vector<Pair> pairs() const {
    std::vector<Pair> pairs;
    for (const SideView& view : views_)
      for (const Landing& from : view.a.landings)
        for (const Landing& to : view.b.landings)
          if (!touching(from, to)) pairs.push_back({&view, &from, &to, leastPossible(from, to).value});
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const Pair& x, const Pair& y) { return x.atLeast < y.atLeast; });
    return pairs;
  }

  void route(const Pair& pair) {
    const NavigationMesh& mesh = pair.view->area.mesh;
    const auto way = shortestWay(mesh, pair.from->opening.exit, pair.to->opening.exit,
                                 {.closedEdges = {}, .explain = closedBy_.empty()});
    if (way) {
      add(pair.view->area, *pair.from, *pair.to, *way);
      return;
    }
    for (const std::int32_t t : way.error().through) {
      const MeshTriangle& triangle = mesh.triangles[static_cast<std::size_t>(t)];
      if (triangle.free) continue;
      Point middle;
      for (const std::int32_t v : triangle.corner)
        middle = middle + mesh.vertices[static_cast<std::size_t>(v)];
      middle = {middle.x / 3, middle.y / 3};
      for (const std::size_t i : keepOutsAt(pair.view->area, middle))
        closedBy_.insert(pair.view->area.obstacles.keepOuts[i].name);
    }
  }

  /// Whatever made the way: one that joins nothing new is none.
  void add(const FreeArea& area, const Landing& from, const Landing& to, const Way& way) {
    if (!joinsBreak(*request_.graph, ends_, from, to)) return;
    Candidate candidate;
    candidate.area = &area;
    candidate.from = &from;
    candidate.to = &to;
    candidate.free = way;
    candidate.points = withEnds(from, to, way.points);
    score(candidate, data_.landings);
    candidates_.push_back(std::move(candidate));
  }

  /// Round the other side of what the best way bends at: closes, one at a time, the passages that it takes
  /// past its bends.
  void addOtherWays() {
    const auto best = chosen();
    if (best.empty() || request_.most < 2) return;
    const Candidate& first = best.front();
    if (first.free.points.size() < 3) return; // nothing to go round
    const NavigationMesh& mesh = first.area->mesh;
    constexpr std::size_t mostPassages = 24; // bounds the time on a way with very many bends
    std::size_t tried = 0;
    std::vector<std::vector<Point>> seen{first.free.points};
    for (const MeshEdge& edge : first.free.crossed) {
      const Point u = mesh.vertices[static_cast<std::size_t>(edge.first)];
      const Point v = mesh.vertices[static_cast<std::size_t>(edge.second)];
      const auto bendsAt = [&](Point p) {
        return std::find(first.free.points.begin() + 1, first.free.points.end() - 1, p) !=
               first.free.points.end() - 1;
      };
      if (!bendsAt(u) && !bendsAt(v)) continue;
      if (++tried > mostPassages) break;
      const auto other = shortestWay(mesh, first.from->opening.exit, first.to->opening.exit,
                                     {.closedEdges = {edge}, .explain = false});
      // More than twice as long is no repair that anyone would choose.
      if (!other || other->length > first.free.length * 2) continue;
      if (std::find(seen.begin(), seen.end(), other->points) != seen.end()) continue;
      seen.push_back(other->points);
      add(*first.area, *first.from, *first.to, *other);
    }
  }

  [[nodiscard]] std::vector<Candidate> chosen() const {
    std::vector<std::size_t> order(candidates_.size());
    for (std::size_t i = 0; i < order.size(); ++i)
      order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t x, std::size_t y) {
      return candidates_[x].total < candidates_[y].total;
    });
    std::vector<Candidate> result;
    for (const std::size_t i : order) {
      if (result.size() >= request_.most) break;
      const Candidate& candidate = candidates_[i];
      if (std::all_of(result.begin(), result.end(),
                      [&](const Candidate& c) { return differenceFrom(c, candidate).any(); }))
        result.push_back(candidate);
    }
    return result;
  }

  [[nodiscard]] double worstOf(const std::vector<Candidate>& best) const {
    return best.size() < request_.most ? HUGE_VAL : best.back().total.value;
  }

  const Lookup& lookup_;
  const JumperRequest& request_;
  const JumperData& data_;
  const BreakEnds& ends_;
  const OwnCopper& own_;
  std::vector<SideView> views_;
  std::vector<Candidate> candidates_;
  std::set<KeepOutName> closedBy_;
};

bool onlyJoints(const JumperRequest& request) {
  for (auto [e, end] = boost::edges(*request.graph); e != end; ++e) {
    const CopperEdge& edge = (*request.graph)[*e];
    const bool broken = std::find(request.cut.begin(), request.cut.end(), edge.index) != request.cut.end();
    if (broken && edge.kind != EdgeKind::solderJoint) return false;
  }
  return true;
}

Result<std::vector<JumperProposal>> writtenUp(const Lookup& lookup, const std::vector<Candidate>& best,
                                              const JumperRequest& request, const WireRequest& load,
                                              const OwnCopper& own, const JumperData& data) {
  std::vector<JumperProposal> proposals;
  for (std::size_t i = 0; i < best.size(); ++i) {
    auto proposal = writtenUp(lookup, best[i], request, load, own, data);
    if (!proposal) return failure(proposal.error());
    proposal->difference = i == 0 ? Difference{.best = true} : differenceFrom(best[0], best[i]);
    proposals.push_back(std::move(*proposal));
  }
  return proposals;
}

/// The wire's thickness is needed for the ways, and their length for the wire: starts from a short way, and
/// does it again with the thicker wire where one turns out to be needed.
Result<JumperProposals> proposalsFor(const Lookup& lookup, const JumperRequest& request,
                                     const JumperData& data, const BreakEnds& ends, const WireRequest& load,
                                     bool overHoles) {
  const OwnCopper own = ownCopper(*request.graph, ends);
  WireRequest shortWay = load;
  shortWay.length = Length(20'000'000);
  const auto wire = chooseWire(data.wires, shortWay);
  if (!wire) return failure(wire.error());
  Length outer = wire->wire.outer;
  for (;;) {
    Finder finder(lookup, request, data, ends, own);
    if (auto ready = finder.prepare(outer, overHoles); !ready) return failure(ready.error());
    auto proposals = writtenUp(lookup, finder.find(), request, load, own, data);
    if (!proposals) return failure(proposals.error());
    Length thickest = outer;
    for (const JumperProposal& p : *proposals)
      thickest = std::max(thickest, p.wire.wire.outer);
    if (thickest > outer) {
      outer = thickest;
      continue;
    }
    JumperProposals result;
    result.whyFewer = finder.whyFewer(proposals->size());
    if (result.whyFewer == WhyFewer::closed) result.closedBy = finder.closedBy();
    result.proposals = std::move(*proposals);
    result.excluded = finder.excluded();
    result.onlyJoints = onlyJoints(request);
    result.outlineGuessed = finder.outlineGuessed();
    return result;
  }
}

} // namespace

Result<JumperData> loadJumperData(const std::filesystem::path& folder) {
  auto zones = loadZoneRules(folder / "zones.json");
  if (!zones) return failure(zones.error());
  auto landings = loadLandingPrices(folder / "landings.json");
  if (!landings) return failure(landings.error());
  auto wires = loadWireTable(folder / "wires.json");
  if (!wires) return failure(wires.error());
  return JumperData{std::move(*zones), std::move(*landings), std::move(*wires)};
}

Result<JumperProposals> proposeJumpers(const Lookup& lookup, const JumperRequest& request,
                                       const JumperData& data) {
  if (!request.graph) return failure({pattern("core", "there is no line to bridge a break of")});
  const auto ends = breakEnds(*request.graph, request.cut);
  if (!ends) return failure(ends.error());

  const WireRequest load = currentFor(lookup.board(), request, *ends, data.wires);
  auto kept = proposalsFor(lookup, request, data, *ends, load, false);
  if (kept && !kept->proposals.empty()) return kept;
  auto over = proposalsFor(lookup, request, data, *ends, load, true);
  return over && !over->proposals.empty() ? over : kept;
}

} // namespace netmend
