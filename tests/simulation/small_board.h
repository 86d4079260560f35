#pragma once

#include <string>

#include "netmend/board/board.h"

namespace netmend::test {

inline Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

/// J1 - track on top - via - track on the bottom - U1, and a test pad where the top track bends.
struct Small {
  Board board;
  NetId net;
  PinId connector, chip, testPad;
  ViaId via;
  TrackId first, second, third;

  Small() {
    for (const char* name : {"top", "bottom"}) {
      Layer layer;
      layer.id = board.newId<LayerId>();
      layer.name = name;
      board.info.layerOrder.push_back(layer.id);
      board.layers.put(layer);
    }
    net = addNet("SIGNAL");
    connector = addPin(addPart("J1", PartKind::connector), "1", mm(0, 0), net);
    chip = addPin(addPart("U1", PartKind::chip), "7", mm(20, 10), net);
    testPad = addPin({}, "TP1", mm(10, 0), net);
    first = addTrack(mm(0, 0), mm(10, 0), 0, net);
    second = addTrack(mm(10, 0), mm(10, 10), 0, net);
    Via added;
    added.id = via = board.newId<ViaId>();
    added.position = mm(10, 10);
    added.diameter = fromFile(Length::fromMm(0.6));
    added.net = fromFile(net);
    board.vias.put(added);
    third = addTrack(mm(10, 10), mm(20, 10), 1, net);
  }

  NetId addNet(const std::string& name) {
    Net added;
    added.id = board.newId<NetId>();
    added.name = name;
    board.nets.put(added);
    return added.id;
  }
  PartId addPart(const std::string& reference, PartKind kind, const std::string& value = "") {
    Part added;
    added.id = board.newId<PartId>();
    added.reference = reference;
    added.kind = fromFile(kind);
    if (!value.empty()) added.value = fromFile(value);
    board.parts.put(added);
    return added.id;
  }
  PinId addPin(PartId part, const std::string& name, Point at, NetId on) {
    Pin added;
    added.id = board.newId<PinId>();
    added.part = part;
    added.name = name;
    added.net = fromFile(on);
    board.pins.put(added);
    Pad pad;
    pad.id = board.newId<PadId>();
    pad.pin = added.id;
    pad.position = fromFile(at);
    pad.shape = fromFile(PadShape::circle);
    pad.size = fromFile(Size{Length::fromMm(1), Length::fromMm(1)});
    pad.reach = fromFile(PadReach::topAndBottom);
    board.pads.put(pad);
    return added.id;
  }
  TrackId addTrack(Point from, Point to, std::size_t layer, NetId on) {
    Track added;
    added.id = board.newId<TrackId>();
    added.start = from;
    added.end = to;
    added.layer = fromFile(board.info.layerOrder[layer]);
    added.width = fromFile(Length::fromMm(0.2));
    added.net = fromFile(on);
    board.tracks.put(added);
    return added.id;
  }
};

} // namespace netmend::test
