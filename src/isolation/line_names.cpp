#include "netmend/isolation/line_names.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "netmend/netgraph/handle.h"
#include "netmend/netgraph/track_runs.h"

namespace netmend {

namespace {

/// In this order, until no two places are called the same.
enum class Exactness { asOneSays, tenths, withHandle };

PlaceNames::Distance distanceOf(Exactness exactness) {
  return exactness == Exactness::asOneSays ? PlaceNames::Distance::rounded : PlaceNames::Distance::exact;
}

int tenths(double mm) {
  return static_cast<int>(std::lround(10.0 * mm));
}

class Namer {
public:
  Namer(const PlaceNames& names, const Line& line)
      : names_(names), board_(names.board()), line_(line),
        rounded_(trackRuns(names, line, PlaceNames::Distance::rounded)),
        edges_(boost::num_edges(line.graph), nullptr) {
    for (auto [e, end] = boost::edges(line.graph); e != end; ++e)
      edges_[line.graph[*e].index] = &line.graph[*e];
  }

  PlaceName probe(const ProbePlace& place, Exactness exactness) {
    PlaceName name = names_.of(place.object, place.at.value_or(Point{}), place.layer, distanceOf(exactness));
    if (exactness == Exactness::withHandle) name.handle = place.label;
    return name;
  }

  PlaceName fault(const FaultPlace& place, Exactness exactness) {
    PlaceName name = place.kind == FaultKind::deadPin ? deadPin(place) : open(place, exactness);
    if (exactness == Exactness::withHandle && place.at) {
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

  PlaceName open(const FaultPlace& place, Exactness exactness) {
    PlaceName name;
    switch (place.edgeKind.value_or(EdgeKind::unknownWay)) {
    case EdgeKind::solderJoint:
      name.sort = PlaceName::Sort::joint;
      if (place.pin) name.label = pinLabel(board_, place.pin);
      break;
    case EdgeKind::track:
      return track(place, exactness);
    case EdgeKind::via:
      if (place.at) return names_.of(place.object, *place.at, -1, distanceOf(exactness));
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

  PlaceName track(const FaultPlace& place, Exactness exactness) {
    if (exactness != Exactness::asOneSays && !exact_)
      exact_ = trackRuns(names_, line_, PlaceNames::Distance::exact);
    const TrackRuns& runs = exactness == Exactness::asOneSays ? rounded_ : *exact_;
    PlaceName name;
    name.sort = PlaceName::Sort::track;
    name.layer = names_.layerOf(place.layer);
    if (!place.edge || !runs.ofEdge[*place.edge]) return name;
    const OnRun& on = *runs.ofEdge[*place.edge];
    name.from = runs.runs[on.run].from;
    name.to = runs.runs[on.run].to;
    addStretch(name, runs.runs[on.run], on, place);
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
  const Line& line_;
  TrackRuns rounded_;
  std::optional<TrackRuns> exact_;
  std::vector<const CopperEdge*> edges_; ///< by index
};

PlaceName wholeTrack(PlaceName stretch) {
  stretch.stretch = PlaceName::Stretch::whole;
  stretch.fromTenths = stretch.toTenths = 0;
  stretch.handle.clear();
  return stretch;
}

/// A name for each, no two alike as far as exactness goes: `make(i, exactness)` names the i-th.
template <class Make> std::vector<PlaceName> distinct(std::size_t count, Make&& make) {
  std::vector<PlaceName> names(count);
  std::vector<std::size_t> open(count);
  std::iota(open.begin(), open.end(), std::size_t{0});
  for (const Exactness exactness : {Exactness::asOneSays, Exactness::tenths, Exactness::withHandle}) {
    std::map<PlaceName, int> called;
    for (const std::size_t i : open)
      ++called[(names[i] = make(i, exactness)).asSaid()];
    std::erase_if(open, [&](std::size_t i) { return called[names[i].asSaid()] == 1; });
  }
  return names;
}

} // namespace

LineNames::Key LineNames::keyOf(const FaultPlace& place) {
  return {place.kind, place.edge.value_or(SIZE_MAX), place.pin, place.way, place.beyond};
}

LineNames::LineNames(const PlaceNames& names, const Line& line, const Isolation& isolation) {
  Namer namer(names, line);
  probes_ = distinct(isolation.places.size(), [&](std::size_t i, Exactness exactness) {
    return namer.probe(isolation.places[i], exactness);
  });
  std::map<Key, const FaultPlace*> places;
  for (const FaultClass& faultClass : isolation.classes)
    for (const FaultPlace& place : faultClass.places)
      places.emplace(keyOf(place), &place);
  std::vector<const FaultPlace*> all;
  all.reserve(places.size());
  for (const auto& [key, place] : places)
    all.push_back(place);
  auto named = distinct(all.size(),
                        [&](std::size_t i, Exactness exactness) { return namer.fault(*all[i], exactness); });
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
