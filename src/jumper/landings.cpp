#include <algorithm>
#include <map>
#include <set>

#include "netmend/base/plane.h"
#include "netmend/board/access.h"
#include "netmend/board/shape.h"
#include "netmend/jumper/landing.h"
#include "netmend/netgraph/handle.h"
#include "netmend/netgraph/net_role.h"
#include "pad_spots.h"

namespace netmend {
namespace {

/// What a fragment has that a wire could be soldered to.
struct Candidates {
  struct PinCopper {
    std::vector<PadId> pads;
    bool legOnly = false; ///< the leg belongs to the fragment, its pad does not
  };
  std::map<PinId, PinCopper> pins;
  std::set<ViaId> vias;
  std::vector<const CopperEdge*> tracks;
};

bool onLayer(const CopperNode& node, int layer) {
  return node.layer < 0 || node.layer == layer;
}

Candidates candidatesOf(const Lookup& lookup, const CopperGraph& graph, const Fragments& fragments,
                        std::size_t fragment, int layer, const LandingOptions& options) {
  Candidates found;
  std::set<PinId> legs, withPad;
  const auto inside = [&](NodeIndex n) {
    return fragments.ofNode[n] == fragment && (options.on.empty() || options.on[n]);
  };
  for (const NodeIndex n : boost::make_iterator_range(boost::vertices(graph))) {
    if (!inside(n)) continue;
    const CopperNode& node = graph[n];
    if (const auto* pin = std::get_if<PinId>(&node.object)) legs.insert(*pin);
    if (const auto* pad = std::get_if<PadId>(&node.object))
      if (const Pad* p = lookup.board().pads.find(*pad)) {
        withPad.insert(p->pin);
        if (onLayer(node, layer)) found.pins[p->pin].pads.push_back(*pad);
      }
    if (const auto* via = std::get_if<ViaId>(&node.object); via && onLayer(node, layer))
      found.vias.insert(*via);
  }
  for (const PinId pin : legs)
    if (!withPad.contains(pin)) found.pins[pin] = {lookup.padsOf(pin), true};
  for (auto [e, end] = boost::edges(graph); e != end; ++e) {
    const bool broken =
        std::find(options.cut.begin(), options.cut.end(), graph[*e].index) != options.cut.end();
    if (broken || !inside(boost::source(*e, graph)) || !inside(boost::target(*e, graph))) continue;
    if (graph[*e].kind == EdgeKind::track) found.tracks.push_back(&graph[*e]);
  }
  for (auto& [pin, copper] : found.pins) {
    std::sort(copper.pads.begin(), copper.pads.end());
    copper.pads.erase(std::unique(copper.pads.begin(), copper.pads.end()), copper.pads.end());
  }
  return found;
}

/// Whether a capacitor's other side makes its terminal a safe place.
enum class FarSide { notACapacitor, bypass, coupling, unknown };

FarSide farSideOf(const Lookup& lookup, const Part& part, PinId pin) {
  if (!part.kind.known() || part.kind.value != PartKind::capacitor) return FarSide::notACapacitor;
  for (const PinId other : lookup.pinsOf(part.id)) {
    if (other == pin) continue;
    const Pin* p = lookup.board().pins.find(other);
    const Net* net = p && p->net.known() ? lookup.board().nets.find(p->net.value) : nullptr;
    if (!net) return FarSide::unknown;
    const auto role = roleOf(*net);
    if (!role.known()) return FarSide::coupling;
    if (role.value == NetRole::ground || role.value == NetRole::supply) continue;
    return FarSide::coupling;
  }
  return FarSide::bypass;
}

class Collector {
public:
  Collector(const Lookup& lookup, const FreeArea& area, const LandingPrices& prices,
            const LandingOptions& options)
      : lookup_(lookup), board_(lookup.board()), area_(area), prices_(prices), options_(options) {
    findCovers();
  }

  void addPin(PinId id, const Candidates::PinCopper& copper) {
    const Pin* pin = board_.pins.find(id);
    if (!pin) return;
    const Part* part = board_.parts.find(pin->part);
    const std::string label = pinLabel(board_, id);
    if (part && part->fitted.known() && !part->fitted.value && copper.legOnly) return;
    const FarSide far = part ? farSideOf(lookup_, *part, id) : FarSide::notACapacitor;
    const bool allowed =
        part && std::count(options_.couplingAllowed.begin(), options_.couplingAllowed.end(), part->id);
    if (far == FarSide::coupling && !allowed) {
      exclude(label, id, ExcludedLanding::Why::couplingCapacitor);
      return;
    }
    bool hasPlace = false;
    for (const PadId padId : copper.pads) {
      const Pad* pad = board_.pads.find(padId);
      if (!pad || !pad->position.known()) continue;
      hasPlace = true;
      if (reachesSide(*pad, part, area_.side)) addPad(*pin, *pad, part, label, far, copper.legOnly);
    }
    if (!hasPlace) exclude(label, id, ExcludedLanding::Why::placeUnknown);
  }

  void addVia(ViaId id) {
    const Via* via = board_.vias.find(id);
    if (!via) return;
    const MaskOpening here = area_.side == Side::top ? MaskOpening::top : MaskOpening::bottom;
    const bool known = via->maskOpening.known();
    const bool open = !known || via->maskOpening.value == here || via->maskOpening.value == MaskOpening::both;
    Landing landing = landingOf(open ? LandingKind::via : LandingKind::tentedVia,
                                viaHandle(board_, id, layer()), via->position);
    landing.object = landing.copper = id;
    landing.width = via->diameter;
    if (!known) landing.notes.push_back(LandingNote::viaMaskUnknown);
    place(std::move(landing), {via->position});
  }

  void addTrack(const CopperEdge& edge) {
    const auto* id = std::get_if<TrackId>(&edge.object);
    const Track* track = id ? board_.tracks.find(*id) : nullptr;
    if (!track || !edge.from || !edge.to || track->way == TrackWay::unknownWay) return;
    if (edge.layer != layer()) return;
    std::vector<Point> places;
    if (track->way == TrackWay::arc) {
      const Ring line = centreLine(*track);
      places.push_back(line[line.size() / 2]);
    } else {
      if (options_.near) places.push_back(nearestOn(*edge.from, *edge.to, *options_.near));
      places.push_back({(edge.from->x + edge.to->x) / 2, (edge.from->y + edge.to->y) / 2});
    }
    Landing landing = landingOf(LandingKind::outerTrack, "", places.front());
    landing.object = landing.copper = *id;
    landing.edge = edge.index;
    landing.width = edge.width;
    landing.notes.push_back(LandingNote::scrapeTrack);
    place(std::move(landing), places);
  }

  /// The side's copper, dense.
  [[nodiscard]] int layer() const {
    if (area_.side == Side::top) return 0;
    return std::max(2, static_cast<int>(board_.info.layerOrder.size())) - 1;
  }

  LandingList finish() {
    std::stable_sort(list_.landings.begin(), list_.landings.end(), [](const Landing& a, const Landing& b) {
      const double pa = a.price().value, pb = b.price().value;
      if (pa != pb) return pa < pb;
      return a.point != b.point ? a.point < b.point : a.at < b.at;
    });
    return std::move(list_);
  }

private:
  void exclude(const std::string& point, const CopperObject& object, ExcludedLanding::Why why) {
    list_.excluded.push_back({point, object, {}, layer(), why});
  }

  Landing landingOf(LandingKind kind, std::string point, Point at) const {
    Landing landing;
    landing.kind = kind;
    landing.point = std::move(point);
    landing.at = at;
    landing.side = area_.side;
    landing.layer = layer();
    landing.terms.push_back({TermKind::landing, prices_.of(kind), {}, 0, kind, landing.point});
    return landing;
  }

  static Point nearestOn(Point a, Point b, Point p) {
    const Vec foot = footOnSegment(vecOf(p), vecOf(a), vecOf(b));
    return {Length(std::llround(foot.x)), Length(std::llround(foot.y))};
  }

  void addPad(const Pin& pin, const Pad& pad, const Part* part, const std::string& label, FarSide far,
              bool legOnly) {
    const auto access = accessOf(board_, pad);
    if (access.known() && (access.value == Access::underLid || access.value == Access::underPart)) {
      exclude(label, pin.id,
              access.value == Access::underLid ? ExcludedLanding::Why::underLid
                                               : ExcludedLanding::Why::underPart);
      return;
    }
    const PartKind partKind = part ? part->kind.valueOr(PartKind::other) : PartKind::testPoint;
    const LandingKind kind = partKind == PartKind::testPoint   ? LandingKind::testPad
                             : partKind == PartKind::connector ? LandingKind::connectorPin
                                                               : LandingKind::partTerminal;
    Landing landing = landingOf(kind, label, pad.position.value);
    landing.object = pin.id;
    landing.copper = legOnly ? CopperObject(pin.id) : CopperObject(pad.id);
    if (part) landing.part = part->id;
    if (pad.size.known())
      landing.width = {std::min(pad.size.value.width, pad.size.value.height), pad.size.origin};
    if (access.known() && access.value == Access::underMask)
      landing.terms.push_back({TermKind::underMask, prices_.underMask});
    if (part && landing.width.known() && landing.width.value < prices_.smallWidth &&
        !pad.drill.valueOr({}).width.nm) {
      landing.terms.push_back({TermKind::smallPart, prices_.smallPart, landing.width.value});
      landing.notes.push_back(LandingNote::smallPart);
    }
    if (far == FarSide::unknown) {
      landing.terms.push_back({TermKind::farSideUnknown, prices_.unknownFarSide});
      landing.notes.push_back(LandingNote::farSideUnknown);
    }
    if (far == FarSide::bypass) landing.notes.push_back(LandingNote::bypass);
    if (far == FarSide::coupling) landing.notes.push_back(LandingNote::couplingAllowed);
    if (legOnly) landing.notes.push_back(LandingNote::legOnly);
    place(std::move(landing), spotsOn(pad));
  }

  void findCovers() {
    for (const Part& part : board_.parts) {
      if (!part.body.known() || (part.fitted.known() && !part.fitted.value)) continue;
      if (part.side.known() && part.side.value != area_.side) continue;
      if (part.kind.known() && part.kind.value == PartKind::testPoint) continue;
      Box box;
      for (const Point p : part.body.value)
        box.include(p);
      covers_.push_back({box, &part});
    }
  }

  /// The part whose body lies over the landing on this side; nullptr: none known.
  [[nodiscard]] const Part* coverOf(const Landing& landing, Point p) const {
    const bool isPad = std::holds_alternative<PinId>(landing.object);
    for (const auto& [box, part] : covers_) {
      if (p.x < box.min.x || p.x > box.max.x || p.y < box.min.y || p.y > box.max.y ||
          part->id == landing.part)
        continue;
      // A guessed body may reach over its neighbours' pads; what has no pad there is taken as covered.
      const bool isShield = part->kind.known() && part->kind.value == PartKind::shield;
      if (isPad && !part->body.certain() && !isShield) continue;
      if (covers({part->body.value, {}}, p)) return part;
    }
    return nullptr;
  }

  /// Takes the first spot that needs no opening, or else the first that can be opened.
  void place(Landing landing, const std::vector<Point>& spots) {
    const Part* covered = nullptr;
    std::optional<Opening> best;
    for (const Point spot : spots) {
      if (const Part* cover = coverOf(landing, spot)) {
        covered = cover;
        continue;
      }
      const auto opening = openingAt(area_, spot, landing.part);
      if (!opening || (best && !opening->keepOuts.empty())) continue;
      best = opening;
      landing.at = spot;
      if (opening->keepOuts.empty()) break;
    }
    if (landing.kind == LandingKind::outerTrack) {
      landing.point = pointHandle(board_, landing.at, layer());
      landing.terms.front().point = landing.point;
    }
    if (!best) {
      excludeWhere(landing, covered);
      return;
    }
    landing.opening = *best;
    if (!best->keepOuts.empty()) {
      ScoreTerm term{TermKind::marginOpened, prices_.opened, distance(landing.at, best->exit)};
      term.keepOuts = namesOf(best->keepOuts);
      landing.terms.push_back(std::move(term));
      landing.notes.push_back(LandingNote::marginOpened);
    }
    list_.landings.push_back(std::move(landing));
  }

  /// No spot of it can be soldered to.
  void excludeWhere(const Landing& landing, const Part* cover) {
    ExcludedLanding out{landing.point, landing.object, landing.at, landing.layer,
                        ExcludedLanding::Why::keptOut};
    if (cover != nullptr) {
      const bool lid = cover->kind.known() && cover->kind.value == PartKind::shield;
      out.why = lid ? ExcludedLanding::Why::coveredByLid : ExcludedLanding::Why::coveredByPart;
      out.cover = cover->reference;
    } else {
      out.keepOuts = namesOf(keepOutsAt(area_, landing.at));
    }
    list_.excluded.push_back(std::move(out));
  }

  [[nodiscard]] std::vector<KeepOutName> namesOf(const std::vector<std::size_t>& keepOuts) const {
    std::vector<KeepOutName> names;
    names.reserve(keepOuts.size());
    for (const std::size_t i : keepOuts)
      names.push_back(area_.obstacles.keepOuts[i].name);
    return names;
  }

  const Lookup& lookup_;
  const Board& board_;
  const FreeArea& area_;
  const LandingPrices& prices_;
  const LandingOptions& options_;
  std::vector<std::pair<Box, const Part*>> covers_; ///< fitted bodies on this side
  LandingList list_;
};

} // namespace

LandingList landingsOf(const Lookup& lookup, const CopperGraph& graph, const Fragments& fragments,
                       std::size_t fragment, const FreeArea& area, const LandingPrices& prices,
                       const LandingOptions& options) {
  Collector collector(lookup, area, prices, options);
  const Candidates candidates = candidatesOf(lookup, graph, fragments, fragment, collector.layer(), options);
  for (const auto& [pin, copper] : candidates.pins)
    collector.addPin(pin, copper);
  for (const ViaId via : candidates.vias)
    collector.addVia(via);
  for (const CopperEdge* track : candidates.tracks)
    collector.addTrack(*track);
  return collector.finish();
}

std::vector<std::size_t> fragmentsAt(const CopperGraph& graph, const Fragments& fragments,
                                     const Landing& landing) {
  std::set<std::size_t> found;
  if (std::holds_alternative<TrackId>(landing.copper)) {
    for (auto [e, end] = boost::edges(graph); e != end; ++e)
      if (graph[*e].index == landing.edge)
        found = {fragments.ofNode[boost::source(*e, graph)], fragments.ofNode[boost::target(*e, graph)]};
  } else {
    for (const NodeIndex n : boost::make_iterator_range(boost::vertices(graph)))
      if (graph[n].object == landing.copper && onLayer(graph[n], landing.layer))
        found.insert(fragments.ofNode[n]);
  }
  return {found.begin(), found.end()};
}

} // namespace netmend
