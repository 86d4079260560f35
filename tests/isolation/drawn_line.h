#pragma once

#include <string>
#include <vector>

#include "netmend/isolation/isolation.h"
#include "netmend/netgraph/resistance.h"
#include "support/millimetres.h"

/// Lines put together by hand: what the graph builder would make of such copper.
namespace netmend::test {

inline MeterProfile handheld() {
  const auto meters = loadMeters(NETMEND_SOURCE_DIR "/data/meters.json").value();
  return *findMeter(meters, "handheld-4000");
}

inline FaultPriors priorsFromData() {
  return readFaultPriors(NETMEND_SOURCE_DIR "/data/fault_priors.json").value();
}

inline ProbeEfforts effortsFromData() {
  return readProbeEfforts(NETMEND_SOURCE_DIR "/data/efforts.json").value();
}

class DrawnLine {
public:
  Board board;
  Line line;
  NetId net;

  DrawnLine() {
    for (const char* name : {"top", "inner", "bottom"}) {
      Layer layer;
      layer.id = board.newId<LayerId>();
      layer.name = name;
      board.info.layerOrder.push_back(layer.id);
      board.layers.put(layer);
    }
    net = addNet("KEY", NetRole::signal);
    line.nets = {net};
  }

  NetId addNet(const std::string& name, NetRole role) {
    Net added;
    added.id = board.newId<NetId>();
    added.name = name;
    added.role = fromUser(role);
    board.nets.put(added);
    return added.id;
  }

  PartId part(const std::string& reference, PartKind kind, const std::string& value = "") {
    Part added;
    added.id = board.newId<PartId>();
    added.reference = reference;
    added.kind = fromUser(kind);
    if (!value.empty()) added.value = fromUser(value);
    board.parts.put(added);
    return added.id;
  }

  PinId pin(PartId owner, const std::string& name, NetId on) {
    Pin added;
    added.id = board.newId<PinId>();
    added.part = owner;
    added.name = name;
    added.net = fromUser(on);
    board.pins.put(added);
    return added.id;
  }

  /// Terminal and pad with the joint between them; gives back the pad's node.
  NodeIndex pinOnLine(PartId owner, const std::string& name, Point at, Access access = Access::open) {
    const PinId id = pin(owner, name, net);
    Pad pad;
    pad.id = board.newId<PadId>();
    pad.pin = id;
    pad.position = fromUser(at);
    pad.access = fromUser(access);
    board.pads.put(pad);
    const auto terminal = add_vertex(CopperNode{NodeKind::terminal, id, at, 0}, line.graph);
    const auto copper = add_vertex(CopperNode{NodeKind::pad, pad.id, at, 0}, line.graph);
    edge(terminal, copper, {EdgeKind::solderJoint, id, 0, at, at, {}, {}, -1, fromUser(Ohms(0))});
    pins.push_back(id);
    return copper;
  }

  /// A pin without any copper known.
  NodeIndex barePin(PartId owner, const std::string& name) {
    const PinId id = pin(owner, name, net);
    pins.push_back(id);
    return add_vertex(CopperNode{NodeKind::terminal, id, std::nullopt, -1}, line.graph);
  }

  /// A test pad: reachable, nothing behind it.
  NodeIndex testPad(const std::string& name, Point at) {
    Pin added;
    added.id = board.newId<PinId>();
    added.name = name;
    added.net = fromUser(net);
    board.pins.put(added);
    pins.push_back(added.id);
    Pad pad;
    pad.id = board.newId<PadId>();
    pad.pin = added.id;
    pad.position = fromUser(at);
    pad.access = fromUser(Access::open);
    board.pads.put(pad);
    return add_vertex(CopperNode{NodeKind::terminal, added.id, at, 0}, line.graph);
  }

  NodeIndex joint(Point at, int layer = 1) {
    return add_vertex(CopperNode{NodeKind::joint, {}, at, layer}, line.graph);
  }

  std::size_t track(NodeIndex a, NodeIndex b, double lengthMm, int layer = 1) {
    Track added;
    added.id = board.newId<TrackId>();
    added.start = line.graph[a].at.value_or(Point{});
    added.end = line.graph[b].at.value_or(Point{});
    added.net = fromUser(net);
    board.tracks.put(added);
    CopperEdge copper{EdgeKind::track, added.id, 0, line.graph[a].at, line.graph[b].at, {}, {}, layer, {}};
    copper.length = fromUser(Length::fromMm(lengthMm));
    copper.resistance = fromUser(Ohms(copperResistivity * lengthMm * 1e-3 / (0.15e-3 * 35e-6)));
    return edge(a, b, copper);
  }

  std::size_t through(NodeIndex a, NodeIndex b, PartId owner, Ohms resistance) {
    return edge(a, b, {EdgeKind::part, owner, 0, {}, {}, {}, {}, -1, fromUser(resistance)});
  }

  std::size_t unknownWay(NodeIndex a, NodeIndex b) {
    return edge(a, b, {EdgeKind::unknownWay, {}, 0, {}, {}, {}, {}, -1, {}});
  }
  std::size_t contact(NodeIndex a, NodeIndex b) {
    return edge(a, b, {EdgeKind::contact, {}, 0, {}, {}, {}, {}, -1, {}});
  }
  NodeIndex hub() { return add_vertex(CopperNode{NodeKind::unknownWay, {}, std::nullopt, -1}, line.graph); }

  std::size_t edge(NodeIndex a, NodeIndex b, CopperEdge copper) {
    copper.index = num_edges(line.graph);
    add_edge(a, b, copper, line.graph);
    return copper.index;
  }

  [[nodiscard]] Isolation isolation(std::vector<KnownGood> knownGood = {}) const {
    return isolation(std::move(knownGood), priorsFromData(), effortsFromData());
  }
  [[nodiscard]] Isolation isolation(std::vector<KnownGood> knownGood, FaultPriors priors,
                                    ProbeEfforts efforts,
                                    std::vector<PinTermination> terminations = {}) const {
    const Lookup lookup(board);
    IsolationInput input{lookup, line, std::move(priors), std::move(efforts), handheld()};
    input.knownGood = std::move(knownGood);
    input.terminations = std::move(terminations);
    return makeIsolation(input);
  }

  [[nodiscard]] Reading diode(const std::string& label, std::optional<double> volts) const {
    Reading reading;
    reading.point.label = label;
    reading.other.label = "GND";
    reading.mode = ReadingMode::diode;
    reading.value = volts;
    return reading;
  }

  [[nodiscard]] Reading continuity(const std::string& a, const std::string& b,
                                   std::optional<double> ohms) const {
    Reading reading = diode(a, ohms);
    reading.other.label = b;
    reading.mode = ReadingMode::continuity;
    return reading;
  }

  std::vector<PinId> pins; ///< in the order they were put on the line
};

/// Probability of all places that this is said of.
template <class Is> double probabilityWhere(const Isolation& isolation, const Is& is) {
  double sum = 0.0;
  for (std::size_t c = 0; c < isolation.classes.size(); ++c)
    for (const FaultPlace& place : isolation.classes[c].places)
      if (is(place)) sum += isolation.probability[c] * place.share;
  return sum;
}
inline double probabilityOf(const Isolation& isolation, FaultKind kind) {
  return probabilityWhere(isolation, [&](const FaultPlace& place) { return place.kind == kind; });
}
inline double probabilityOf(const Isolation& isolation, FaultKind kind, PinId pin) {
  return probabilityWhere(isolation,
                          [&](const FaultPlace& place) { return place.kind == kind && place.pin == pin; });
}
inline double breakProbability(const Isolation& isolation, const std::vector<Point>& way) {
  return probabilityWhere(
      isolation, [&](const FaultPlace& place) { return place.kind == FaultKind::open && place.way == way; });
}

/// Of breaks in tracks.
inline double trackProbability(const Isolation& isolation) {
  return probabilityWhere(isolation,
                          [](const FaultPlace& place) { return place.edgeKind == EdgeKind::track; });
}

} // namespace netmend::test
