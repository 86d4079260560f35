#include "netmend/casework/one_jumper.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace netmend {

namespace {

constexpr std::size_t mostSuspects = 16; ///< with more in the set no repair is in sight
constexpr int mostSearches = 6;          ///< for landings and a way
constexpr double dearest = 2.0; ///< a wire that mends more may cost this many times the leading break's

struct Break {
  std::size_t faultClass;
  std::vector<std::size_t> cut;
};

/// The breaks of the reported set that a wire can mend: those whose copper is known, and none inside a part.
std::vector<Break> breaksOf(const Isolation& isolation, const Suspects& suspects) {
  std::vector<Break> out;
  for (std::size_t i = 0; i < suspects.setSize; ++i) {
    Break one{suspects.ranked[i].faultClass, {}};
    const FaultClass& faultClass = isolation.classes[one.faultClass];
    const bool bridgeable =
        std::all_of(faultClass.places.begin(), faultClass.places.end(),
                    [](const FaultPlace& p) { return p.edge && p.edgeKind != EdgeKind::part; });
    if (faultClass.kind != FaultKind::open || faultClass.places.empty() || !bridgeable) continue;
    for (const FaultPlace& place : faultClass.places)
      one.cut.push_back(*place.edge);
    out.push_back(std::move(one));
  }
  return out;
}

/// The pieces of a parted line that a wire soldered here touches. At a pin the solder joins leg and pad, so
/// that both count; on a piece of track that is broken itself nobody knows.
std::vector<std::size_t> touched(const CopperGraph& graph, const std::vector<std::size_t>& cut,
                                 const Fragments& pieces, const Landing& landing) {
  const bool track = std::holds_alternative<TrackId>(landing.copper);
  if (track && std::find(cut.begin(), cut.end(), landing.edge) != cut.end()) return {};
  std::vector<std::size_t> out = fragmentsAt(graph, pieces, landing);
  if (!std::holds_alternative<PinId>(landing.object)) return out;
  for (auto [edge, end] = boost::edges(graph); edge != end; ++edge)
    for (const auto& [leg, pad] : {std::pair{boost::source(*edge, graph), boost::target(*edge, graph)},
                                   {boost::target(*edge, graph), boost::source(*edge, graph)}})
      if (graph[*edge].kind == EdgeKind::solderJoint && graph[leg].object == landing.object &&
          graph[leg].kind == NodeKind::terminal) {
        out.push_back(pieces.ofNode[leg]);
        if (graph[pad].object == landing.copper || landing.copper == landing.object)
          out.push_back(pieces.ofNode[pad]);
      }
  return out;
}

bool mends(const JumperProposal& jumper, const CopperGraph& graph, const std::vector<std::size_t>& cut) {
  const auto ends = breakEnds(graph, cut);
  if (!ends) return false;
  const auto from = touched(graph, cut, ends->fragments, jumper.from);
  const auto to = touched(graph, cut, ends->fragments, jumper.to);
  const auto on = [](const std::vector<std::size_t>& pieces, std::size_t piece) {
    return std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
  };
  return (on(from, ends->a) && on(to, ends->b)) || (on(from, ends->b) && on(to, ends->a));
}

/// Searches for wires across some edges of one line, as long as there are searches left.
class Searches {
public:
  Searches(const Lookup& lookup, const Line& line, const JumperData& data)
      : lookup_(lookup), line_(line), data_(data) {}

  [[nodiscard]] bool left() const { return left_ > 0; }
  std::optional<JumperProposal> across(const std::vector<std::size_t>& cut) {
    if (left_-- <= 0) return std::nullopt;
    JumperRequest request;
    request.graph = &line_.graph;
    request.cut = cut;
    request.net = line_.nets.empty() ? NetId{} : line_.nets.front();
    request.most = 1;
    auto found = proposeJumpers(lookup_, request, data_);
    if (!found || found->proposals.empty()) return std::nullopt;
    return std::move(found->proposals.front());
  }

private:
  const Lookup& lookup_;
  const Line& line_;
  const JumperData& data_;
  int left_ = mostSearches;
};

/// The best wire for the first of these breaks, made longer by one break after the other as far as it pays.
std::optional<JumperProposal> widestJumper(const std::vector<Break>& open, const CopperGraph& graph,
                                           Searches& searches) {
  std::vector<std::size_t> cut = open.front().cut;
  auto best = searches.across(cut);
  if (!best) return std::nullopt;
  const double most = dearest * best->total.value;
  for (std::size_t i = 1; i < open.size() && searches.left(); ++i) {
    if (mends(*best, graph, open[i].cut)) continue;
    auto wider = cut;
    wider.insert(wider.end(), open[i].cut.begin(), open[i].cut.end());
    if (!breakEnds(graph, wider)) continue;
    auto jumper = searches.across(wider);
    const auto stillMended = [&](const Break& one) {
      return mends(*jumper, graph, one.cut) || !mends(*best, graph, one.cut);
    };
    const bool better = jumper && jumper->total.value <= most && mends(*jumper, graph, open[i].cut) &&
                        std::all_of(open.begin(), open.end(), stillMended);
    if (!better) continue;
    cut = std::move(wider);
    best = std::move(jumper);
  }
  return best;
}

} // namespace

std::vector<OneJumper> sharedJumpers(const Lookup& lookup, const Line& line, const Isolation& isolation,
                                     const Suspects& suspects, const JumperData& data) {
  if (suspects.setSize > mostSuspects) return {};
  std::vector<Break> open = breaksOf(isolation, suspects);
  std::vector<OneJumper> out;
  for (Searches searches(lookup, line, data); open.size() > 1 && searches.left();) {
    const auto jumper = widestJumper(open, line.graph, searches);
    OneJumper shared{{}, {}, {open.front().faultClass}, isolation.probability[open.front().faultClass]};
    open.erase(open.begin());
    if (!jumper) continue;
    std::erase_if(open, [&](const Break& one) {
      if (!mends(*jumper, line.graph, one.cut)) return false;
      shared.classes.push_back(one.faultClass);
      shared.probability += isolation.probability[one.faultClass];
      return true;
    });
    if (shared.classes.size() < 2) continue;
    shared.from = jumper->from;
    shared.to = jumper->to;
    out.push_back(std::move(shared));
  }
  return out;
}

RepairView repairView(const Isolation& isolation, const std::vector<OneJumper>& jumpers) {
  RepairView view;
  view.groupOf.resize(isolation.classes.size());
  std::iota(view.groupOf.begin(), view.groupOf.end(), std::size_t{0});
  for (const OneJumper& jumper : jumpers)
    for (const std::size_t c : jumper.classes)
      view.groupOf[c] = jumper.classes.front();
  return view;
}

} // namespace netmend
