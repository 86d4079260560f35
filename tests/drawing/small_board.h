#pragma once

#include "support/drawn_board.h"

namespace netmend::testing {

using test::box;

inline Point at(double x, double y) {
  return test::mm(x, y);
}

/// A board of 100 by 50 mm with two copper layers and one inner one, for pictures.
struct SmallBoard : test::DrawnBoard {
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

  PinId pad(PartId part, const std::string& name, NetId net, Point where, PadReach reach) {
    const PinId id = pin(part, name, net);
    static_cast<void>(DrawnBoard::pad(id, where, reach, 4));
    return id;
  }
  void track(Point start, Point end, LayerId layer, NetId net) {
    static_cast<void>(DrawnBoard::track(start, end, layer, net, 2));
  }
  void zone(ZoneKind kind, const std::string& name, const Ring& ring) {
    Zone more;
    more.side = fromUser(Side::top);
    static_cast<void>(DrawnBoard::zone(kind, name, ring, more));
  }
};

} // namespace netmend::testing
