#pragma once

#include "netmend/board/lookup.h"
#include "netmend/netgraph/copper_graph.h"
#include "shapes.h"
#include "support/drawn_board.h"

/// A small board of our own, put together by hand for tests of landings and proposals.
namespace netmend::test {

struct BenchBoard : DrawnBoard {
  CopperGraph graph;
  LayerId top, bottom;

  BenchBoard() {
    top = layer("top");
    bottom = layer("bottom");
    board.info.layerOrder = {top, bottom};
    board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 40, 30), {}}});
  }

  NetId net(const std::string& name, NetRole role = NetRole::signal) {
    Net more;
    more.role = fromUser(role);
    return DrawnBoard::net(name, more);
  }

  PartId part(const std::string& reference, PartKind kind, const Ring& body, Side side = Side::top,
              double height = 1.5) {
    Part more;
    more.kind = fromUser(kind);
    more.height = fromUser(Length::fromMm(height));
    more.fitted = fromUser(true);
    more.lid = fromUser(PartId{});
    return DrawnBoard::part(reference, side, body, more);
  }

  struct PinPad {
    PinId pin;
    PadId pad;
  };
  PinPad pin(PartId part, const std::string& name, NetId net, Point at, PadReach reach = PadReach::top,
             double size = 0.6) {
    Pad more;
    more.drill = fromUser(Size{});
    more.access = fromUser(Access::open);
    more.maskOpening = fromUser(MaskOpening::both);
    const PinId id = DrawnBoard::pin(part, name, net);
    return {id, pad(id, at, reach, size, more)};
  }

  ZoneId zone(ZoneKind kind, const std::string& name, const Ring& ring, double margin) {
    Zone more;
    more.margin = fromUser(Length::fromMm(margin));
    return DrawnBoard::zone(kind, name, ring, more);
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
    const TrackId id = DrawnBoard::track(*graph[a].at, *graph[b].at, layer, net, 0.2);
    return edge(a, b, EdgeKind::track, id, layer == top ? 0 : 1);
  }
};

} // namespace netmend::test
