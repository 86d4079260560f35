#pragma once

#include <string>
#include <vector>

#include "netmend/netgraph/board_graph.h"

namespace netmend::test {

[[nodiscard]] inline Point at(double xMm, double yMm) {
  return {Length::fromMm(xMm), Length::fromMm(yMm)};
}

/// A board put together piece by piece, in millimetres.
struct CopperBoard {
  Board board;
  std::vector<LayerId> layers;

  explicit CopperBoard(int layerCount = 2) {
    for (int i = 0; i < layerCount; ++i) {
      Layer layer;
      layer.id = board.newId<LayerId>();
      layer.copperThickness = fromFile(Length(35'000));
      layer.origin = Origin::file;
      board.layers.put(layer);
      layers.push_back(layer.id);
    }
    board.info.layerOrder = layers;
  }

  NetId net(const std::string& name) {
    for (const Net& known : board.nets)
      if (known.name == name) return known.id;
    Net object;
    object.id = board.newId<NetId>();
    object.name = name;
    board.nets.put(object);
    return object.id;
  }

  PinId pin(const std::string& netName = {}) {
    Part part;
    part.id = board.newId<PartId>();
    board.parts.put(part);
    Pin object;
    object.id = board.newId<PinId>();
    object.part = part.id;
    if (!netName.empty()) object.net = fromFile(net(netName));
    board.pins.put(object);
    return object.id;
  }

  /// A round pad on the top.
  Pad& change(PadId id) { return edited_ = *board.pads.find(id); }
  PadId pad(PinId pin, Point position, double diameterMm = 1.0, PadReach reach = PadReach::top) {
    Pad object;
    object.id = board.newId<PadId>();
    object.pin = pin;
    object.position = fromFile(position);
    object.shape = fromFile(PadShape::circle);
    object.size = fromFile(Size{Length::fromMm(diameterMm), Length::fromMm(diameterMm)});
    object.reach = fromFile(reach);
    board.pads.put(object);
    return object.id;
  }
  PadId hole(PinId pin, Point position, double diameterMm, double drillMm, bool plated,
             PadReach reach = PadReach::allLayers) {
    const PadId id = pad(pin, position, diameterMm, reach);
    Pad& object = change(id);
    object.drill = fromFile(Size{Length::fromMm(drillMm), Length::fromMm(drillMm)});
    object.plated = fromFile(plated);
    board.pads.put(object);
    return id;
  }

  TrackId track(Point start, Point end, const std::string& netName = {}, std::size_t layer = 0,
                double widthMm = 0.2) {
    Track object;
    object.id = board.newId<TrackId>();
    object.start = start;
    object.end = end;
    object.layer = fromFile(layers[layer]);
    object.width = fromFile(Length::fromMm(widthMm));
    if (!netName.empty()) object.net = fromFile(net(netName));
    object.origin = Origin::file;
    board.tracks.put(object);
    return object.id;
  }
  TrackId arc(Point start, Point mid, Point end, double widthMm = 0.2) {
    const TrackId id = track(start, end, {}, 0, widthMm);
    Track object = *board.tracks.find(id);
    object.way = TrackWay::arc;
    object.mid = mid;
    board.tracks.put(object);
    return id;
  }
  TrackId unknownWay(Point start, Point end, const std::string& netName = {}) {
    const TrackId id = track(start, end, netName);
    Track object = *board.tracks.find(id);
    object.way = TrackWay::unknownWay;
    object.layer = {};
    object.width = {};
    board.tracks.put(object);
    return id;
  }

  ViaId via(Point position, std::size_t from, std::size_t to, const std::string& netName = {}) {
    Via object;
    object.id = board.newId<ViaId>();
    object.position = position;
    object.diameter = fromFile(Length::fromMm(0.6));
    object.drill = fromFile(Length::fromMm(0.3));
    object.from = fromFile(layers[from]);
    object.to = fromFile(layers[to]);
    if (!netName.empty()) object.net = fromFile(net(netName));
    board.vias.put(object);
    return object.id;
  }

  AreaId area(Polygon polygon, const std::string& netName = {}, std::size_t layer = 0) {
    Area object;
    object.id = board.newId<AreaId>();
    object.polygon = std::move(polygon);
    object.layer = fromFile(layers[layer]);
    if (!netName.empty()) object.net = fromFile(net(netName));
    board.areas.put(object);
    return object.id;
  }

private:
  Pad edited_;
};

/// The island that an object is in; SIZE_MAX if in none.
[[nodiscard]] inline std::size_t islandOf(const BoardGraph& graph, const CopperObject& object) {
  for (std::size_t i = 0; i < graph.islands.size(); ++i)
    for (const CopperObject& member : graph.islands[i].members)
      if (member == object) return i;
  return SIZE_MAX;
}

[[nodiscard]] inline bool joined(const BoardGraph& graph, const CopperObject& a, const CopperObject& b) {
  return islandOf(graph, a) == islandOf(graph, b) && islandOf(graph, a) != SIZE_MAX;
}

/// Edges of one kind in the island of an object.
[[nodiscard]] inline std::vector<CopperEdge> edgesOf(const CopperGraph& graph, EdgeKind kind) {
  std::vector<CopperEdge> out;
  for (const auto& edge : boost::make_iterator_range(boost::edges(graph)))
    if (graph[edge].kind == kind) out.push_back(graph[edge]);
  return out;
}

} // namespace netmend::test
