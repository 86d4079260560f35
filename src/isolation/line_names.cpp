#include "netmend/isolation/line_names.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "netmend/netgraph/handle.h"
#include "netmend/netgraph/track_runs.h"

namespace netmend {

namespace {

/// The handle is said only where nothing else tells two places apart.
enum class Handle { unsaid, said };

int tenths(double mm) {
  return static_cast<int>(std::lround(10.0 * mm));
}

class Namer {
public:
  Namer(const PlaceNames& names, const Line& line)
      : names_(names), board_(names.board()), runs_(trackRuns(names, line)),
        edges_(boost::num_edges(line.graph), nullptr) {
    for (auto [e, end] = boost::edges(line.graph); e != end; ++e)
      edges_[line.graph[*e].index] = &line.graph[*e];
  }

  [[nodiscard]] PlaceName probe(const ProbePlace& place, Handle handle) const {
    PlaceName name = names_.of(place.object, place.at.value_or(Point{}), place.layer);
    if (handle == Handle::said) name.handle = place.label;
    return name;
  }

  [[nodiscard]] PlaceName fault(const FaultPlace& place, Handle handle) const {
    PlaceName name = place.kind == FaultKind::deadPin ? deadPin(place) : open(place);
    if (handle == Handle::said && place.at) {
      const auto* via = std::get_if<ViaId>(&place.object);
      name.handle =
          via != nullptr ? viaHandle(board_, *via, -1) : pointHandle(board_, *place.at, place.layer);
    }
    return name;
  }

private:
  [[nodiscard]] PlaceName deadPin(const FaultPlace& place) const {
    PlaceName name;
    name.sort = PlaceName::Sort::deadPin;
    name.label = pinLabel(board_, place.pin);
    return name;
  }

  [[nodiscard]] PlaceName open(const FaultPlace& place) const {
    PlaceName name;
    switch (place.edgeKind.value_or(EdgeKind::unknownWay)) {
    case EdgeKind::solderJoint:
      name.sort = PlaceName::Sort::joint;
      if (place.pin) name.label = pinLabel(board_, place.pin);
      break;
    case EdgeKind::track:
      return track(place);
    case EdgeKind::via:
      if (place.at) return names_.of(place.object, *place.at, -1);
      break;
    case EdgeKind::part:
      name.sort = PlaceName::Sort::part;
      if (const auto* id = std::get_if<PartId>(&place.object))
        if (const Part* part = board_.parts.find(*id)) name.label = part->reference;
      break;
    case EdgeKind::unknownWay:
      name.sort = PlaceName::Sort::unknownWay;
      name.beyond = labels(place.beyond);
      name.before = labels(place.before);
      break;
    case EdgeKind::contact:
      break;
    }
    return name;
  }

  [[nodiscard]] std::vector<std::string> labels(const std::vector<PinId>& pins) const {
    std::vector<std::string> out;
    out.reserve(pins.size());
    for (const PinId pin : pins)
      out.push_back(pinLabel(board_, pin));
    return out;
  }

  [[nodiscard]] PlaceName track(const FaultPlace& place) const {
    PlaceName name;
    name.sort = PlaceName::Sort::track;
    name.layer = names_.layerOf(place.layer);
    if (!place.edge || !runs_.ofEdge[*place.edge]) return name;
    const OnRun& on = *runs_.ofEdge[*place.edge];
    name.from = runs_.runs[on.run].from;
    name.to = runs_.runs[on.run].to;
    addStretch(name, runs_.runs[on.run], on, place);
    return name;
  }

  /// Which part of the run, in millimetres from its start.
  void addStretch(PlaceName& name, const TrackRun& run, const OnRun& on, const FaultPlace& place) const {
    const CopperEdge& edge = *edges_[*place.edge];
    if (run.mm <= 0.0 || place.way.size() < 2 || !edge.from || !edge.to) return;
    const Point start = on.forwards ? *edge.from : *edge.to;
    const double straight = distance(*edge.from, *edge.to).mm();
    const double scale = edge.length.known() && straight > 0.0 ? edge.length.value.mm() / straight : 1.0;
    const double a = distance(start, place.way.front()).mm() * scale;
    const double b = distance(start, place.way.back()).mm() * scale;
    const double from = on.startMm + std::min(a, b), to = on.startMm + std::max(a, b);
    constexpr double same = 0.05; // mm: less is not said
    const bool first = from<same, last = to> run.mm - same;
    if (first && last) return;
    name.stretch = first  ? PlaceName::Stretch::first
                   : last ? PlaceName::Stretch::last
                          : PlaceName::Stretch::between;
    if (name.stretch == PlaceName::Stretch::between) name.fromTenths = tenths(from);
    name.toTenths = tenths(last ? run.mm - from : to);
  }

  const PlaceNames& names_;
  const Board& board_;
  TrackRuns runs_;
  std::vector<const CopperEdge*> edges_; ///< by index
};

PlaceName wholeTrack(PlaceName stretch) {
  stretch.stretch = PlaceName::Stretch::whole;
  stretch.fromTenths = stretch.toTenths = 0;
  stretch.handle.clear();
  return stretch;
}

/// A name for each, no two alike: `make(i, handle)` names the i-th.
template <class Make> std::vector<PlaceName> distinct(std::size_t count, Make&& make) {
  std::vector<PlaceName> names(count);
  std::vector<std::size_t> open(count);
  std::iota(open.begin(), open.end(), std::size_t{0});
  for (const Handle handle : {Handle::unsaid, Handle::said}) {
    std::map<PlaceName, int> called;
    for (const std::size_t i : open)
      ++called[(names[i] = make(i, handle)).asSaid()];
    std::erase_if(open, [&](std::size_t i) { return called[names[i].asSaid()] == 1; });
  }
  return names;
}

} // namespace

LineNames::Key LineNames::keyOf(const FaultPlace& place) {
  return {place.kind, place.edge.value_or(SIZE_MAX), place.pin, place.way, place.beyond};
}

LineNames::LineNames(const PlaceNames& names, const Line& line, const Isolation& isolation) {
  const Namer namer(names, line);
  probes_ = distinct(isolation.places.size(),
                     [&](std::size_t i, Handle handle) { return namer.probe(isolation.places[i], handle); });
  std::map<Key, const FaultPlace*> places;
  for (const FaultClass& faultClass : isolation.classes)
    for (const FaultPlace& place : faultClass.places)
      places.emplace(keyOf(place), &place);
  std::vector<const FaultPlace*> all;
  all.reserve(places.size());
  for (const auto& [key, place] : places)
    all.push_back(place);
  auto named =
      distinct(all.size(), [&](std::size_t i, Handle handle) { return namer.fault(*all[i], handle); });
  for (std::size_t i = 0; i < all.size(); ++i)
    faults_.emplace(keyOf(*all[i]), std::move(named[i]));
  for (const auto& [key, name] : faults_)
    if (name.sort == PlaceName::Sort::track) ++stretches_[wholeTrack(name)];
}

const PlaceName& LineNames::fault(const FaultPlace& place) const {
  static const PlaceName somewhere;
  const auto found = faults_.find(keyOf(place));
  return found != faults_.end() ? found->second : somewhere;
}

LineNames::ClassName LineNames::nameOf(const FaultClass& faultClass) const {
  ClassName out{{}, faultClass.places.size()};
  if (faultClass.places.empty()) return out;
  out.place = fault(faultClass.places.front());
  if (out.place.sort != PlaceName::Sort::track || out.place.stretch == PlaceName::Stretch::whole) return out;
  const PlaceName whole = wholeTrack(out.place);
  const auto here = static_cast<std::size_t>(
      std::count_if(faultClass.places.begin(), faultClass.places.end(), [&](const FaultPlace& place) {
        const PlaceName& name = fault(place);
        return name.sort == PlaceName::Sort::track && wholeTrack(name) == whole;
      }));
  if (stretches_.at(whole) != here) return out;
  out.place = whole;
  out.places -= here - 1;
  return out;
}

} // namespace netmend
