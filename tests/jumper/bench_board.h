#pragma once

#include "netmend/board/lookup.h"
#include "netmend/netgraph/copper_graph.h"
#include "shapes.h"

/// A small board of our own, put together by hand for tests of landings and proposals.
namespace netmend::test {

struct BenchBoard {
  Board board;
  CopperGraph graph;
  LayerId top, bottom;

  BenchBoard() {
    top = board.newId<LayerId>();
    bottom = board.newId<LayerId>();
    board.layers.put({top, "top", {}, {}, Origin::user});
    board.layers.put({bottom, "bottom", {}, {}, Origin::user});
    board.info.layerOrder = {top, bottom};
    board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 40, 30), {}}});
  }

  NetId net(const std::string& name, NetRole role = NetRole::signal) {
    Net n;
    n.id = board.newId<NetId>();
    n.name = name;
    n.role = fromUser(role);
    n.origin = Origin::user;
    board.nets.put(n);
    return n.id;
  }

  PartId part(const std::string& reference, PartKind kind, const Ring& body, Side side = Side::top,
              double height = 1.5) {
    Part p;
    p.id = board.newId<PartId>();
    p.reference = reference;
    p.kind = fromUser(kind);
    p.side = fromUser(side);
    if (!body.empty()) p.body = fromUser(body);
    p.height = fromUser(Length::fromMm(height));
    p.fitted = fromUser(true);
    p.lid = fromUser(PartId{});
    p.origin = Origin::user;
    board.parts.put(p);
    return p.id;
  }

  struct PinPad {
    PinId pin;
    PadId pad;
  };
  PinPad pin(PartId part, const std::string& name, NetId net, Point at, PadReach reach = PadReach::top,
             double size = 0.6) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part;
    pin.name = name;
    pin.net = fromUser(net);
    pin.origin = Origin::user;
    board.pins.put(pin);
    Pad pad;
    pad.id = board.newId<PadId>();
    pad.pin = pin.id;
    pad.position = fromUser(at);
    pad.shape = fromUser(PadShape::rectangle);
    pad.size = fromUser(Size{Length::fromMm(size), Length::fromMm(size)});
    pad.reach = fromUser(reach);
    pad.drill = fromUser(Size{});
    pad.access = fromUser(Access::open);
    pad.maskOpening = fromUser(MaskOpening::both);
    pad.origin = Origin::user;
    board.pads.put(pad);
    return {pin.id, pad.id};
  }

  ZoneId zone(ZoneKind kind, const std::string& name, const Ring& ring, double margin) {
    Zone z;
    z.id = board.newId<ZoneId>();
    z.kind = kind;
    z.name = name;
    z.polygon.outer = ring;
    z.margin = fromUser(Length::fromMm(margin));
    z.origin = Origin::user;
    board.zones.put(z);
    return z.id;
  }

  /// Nodes of a pin's leg and pad, and the joint between them; gives the pad's node and the joint's edge.
  std::pair<NodeIndex, std::size_t> joint(const PinPad& p) {
    const Point at = board.pads.find(p.pad)->position.value;
    const auto leg = boost::add_vertex({NodeKind::terminal, p.pin, at, -1}, graph);
    const auto pad = boost::add_vertex({NodeKind::pad, p.pad, at, -1}, graph);
    return {pad, edge(leg, pad, EdgeKind::solderJoint, p.pin, -1)};
  }

  std::size_t edge(NodeIndex a, NodeIndex b, EdgeKind kind, CopperObject object, int layer) {
    CopperEdge e;
    e.kind = kind;
    e.object = object;
    e.index = boost::num_edges(graph);
    e.from = graph[a].at;
    e.to = graph[b].at;
    e.layer = layer;
    e.width = fromUser(Length::fromMm(0.2));
    boost::add_edge(a, b, e, graph);
    return e.index;
  }

  /// A straight track between two nodes; gives its edge.
  std::size_t track(NodeIndex a, NodeIndex b, NetId net, LayerId layer) {
    Track t;
    t.id = board.newId<TrackId>();
    t.start = *graph[a].at;
    t.end = *graph[b].at;
    t.layer = fromUser(layer);
    t.width = fromUser(Length::fromMm(0.2));
    t.net = fromUser(net);
    t.origin = Origin::user;
    board.tracks.put(t);
    return edge(a, b, EdgeKind::track, t.id, layer == top ? 0 : 1);
  }
};

} // namespace netmend::test
