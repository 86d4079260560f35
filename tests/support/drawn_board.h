#pragma once

#include <string>

#include "millimetres.h"
#include "netmend/board/board.h"

namespace netmend::test {

/// A board put together piece by piece, as a user draws one. What a piece has besides is given as `more`.
struct DrawnBoard {
  Board board;

  /// With an id of its own.
  template <class T> decltype(T::id) put(Table<T>& table, T& object) {
    object.id = board.newId<decltype(object.id)>();
    object.origin = Origin::user;
    table.put(object);
    return object.id;
  }

  LayerId layer(const std::string& name) {
    Layer layer;
    layer.name = name;
    return put(board.layers, layer);
  }
  NetId net(const std::string& name, Net more = {}) {
    more.name = name;
    return put(board.nets, more);
  }
  PartId part(const std::string& reference, Side side, const Ring& body, Part more = {}) {
    more.reference = reference;
    more.side = fromUser(side);
    if (!body.empty()) more.body = fromUser(body);
    return put(board.parts, more);
  }
  PinId pin(PartId part, const std::string& name, NetId net) {
    Pin pin;
    pin.part = part;
    pin.name = name;
    pin.net = fromUser(net);
    return put(board.pins, pin);
  }
  /// A square one.
  PadId pad(PinId pin, Point position, PadReach reach, double sizeMm, Pad more = {}) {
    more.pin = pin;
    more.position = fromUser(position);
    more.shape = fromUser(PadShape::rectangle);
    more.size = fromUser(Size{Length::fromMm(sizeMm), Length::fromMm(sizeMm)});
    more.reach = fromUser(reach);
    return put(board.pads, more);
  }
  TrackId track(Point start, Point end, LayerId layer, NetId net, double widthMm) {
    Track track;
    track.start = start;
    track.end = end;
    track.layer = fromUser(layer);
    track.width = fromUser(Length::fromMm(widthMm));
    track.net = fromUser(net);
    return put(board.tracks, track);
  }
  ZoneId zone(ZoneKind kind, const std::string& name, const Ring& ring, Zone more = {}) {
    more.kind = kind;
    more.name = name;
    more.polygon.outer = ring;
    return put(board.zones, more);
  }
};

} // namespace netmend::test
