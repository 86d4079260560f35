#pragma once

#include <string>

#include "netmend/board/board.h"

namespace netmend::testing {

inline Point at(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

inline Ring box(double x0, double y0, double x1, double y1) {
  return {at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)};
}

/// A board of 100 by 50 mm with two copper layers and one inner one, for pictures.
struct SmallBoard {
  Board board;
  LayerId top, inner, bottom;
  NetId ground, key;
  PinId keyPin;

  SmallBoard() {
    top = layer("top");
    inner = layer("inner 1");
    bottom = layer("bottom");
    board.info.layerOrder = {top, inner, bottom};
    board.info.name = fromUser<std::string>("Key unit");
    board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 100, 50), {}}});
    ground = net("GND");
    key = net("KEY_COL3");
    const PartId connector = part("J4", Side::top, box(8, 5, 16, 45));
    keyPin = pad(connector, "3", key, at(12, 20), PadReach::top);
    pad(connector, "4", ground, at(12, 30), PadReach::top);
    track(at(12, 20), at(40, 20), top, key);
    track(at(40, 20), at(60, 20), inner, key);
    track(at(60, 20), at(90, 20), bottom, key);
    track(at(12, 30), at(90, 30), top, ground);
  }

  LayerId layer(const std::string& name) {
    Layer out;
    out.id = board.newId<LayerId>();
    out.name = name;
    out.origin = Origin::user;
    board.layers.put(out);
    return out.id;
  }
  NetId net(const std::string& name) {
    Net out;
    out.id = board.newId<NetId>();
    out.name = name;
    out.origin = Origin::user;
    board.nets.put(out);
    return out.id;
  }
  PartId part(const std::string& reference, Side side, const Ring& body) {
    Part out;
    out.id = board.newId<PartId>();
    out.reference = reference;
    out.side = fromUser(side);
    out.body = fromUser(body);
    out.origin = Origin::user;
    board.parts.put(out);
    return out.id;
  }
  PinId pad(PartId part, const std::string& name, NetId net, Point where, PadReach reach) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part;
    pin.name = name;
    pin.net = fromUser(net);
    pin.origin = Origin::user;
    board.pins.put(pin);
    Pad out;
    out.id = board.newId<PadId>();
    out.pin = pin.id;
    out.position = fromUser(where);
    out.shape = fromUser(PadShape::rectangle);
    out.size = fromUser(Size{Length::fromMm(4), Length::fromMm(4)});
    out.reach = fromUser(reach);
    out.origin = Origin::user;
    board.pads.put(out);
    return pin.id;
  }
  void track(Point start, Point end, LayerId layer, NetId net) {
    Track out;
    out.id = board.newId<TrackId>();
    out.start = start;
    out.end = end;
    out.layer = fromUser(layer);
    out.width = fromUser(Length::fromMm(2));
    out.net = fromUser(net);
    out.origin = Origin::user;
    board.tracks.put(out);
  }
  void zone(ZoneKind kind, const std::string& name, const Ring& ring) {
    Zone out;
    out.id = board.newId<ZoneId>();
    out.kind = kind;
    out.name = name;
    out.polygon = {ring, {}};
    out.side = fromUser(Side::top);
    out.origin = Origin::user;
    board.zones.put(out);
  }
};

} // namespace netmend::testing
