#include "drawing_board.h"

#include <cmath>
#include <cstdlib>
#include <iostream>
#include <numbers>

#include "netmend/board/shape.h"

namespace netmend::demo {

Point at(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

Polygon box(double left, double bottom, double right, double top) {
  return {{at(left, bottom), at(right, bottom), at(right, top), at(left, top)}, {}};
}

Polygon disc(double x, double y, double radius) {
  Polygon out;
  constexpr int corners = 48;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / corners;
    out.outer.push_back(at(x + radius * std::cos(angle), y + radius * std::sin(angle)));
  }
  return out;
}

Footprint chipSize(const std::string& name) {
  if (name == "0402") return {name, 1.0, 0.5, 0.5, {{"1", -0.48, 0, 0.5, 0.55}, {"2", 0.48, 0, 0.5, 0.55}}};
  if (name == "0603") return {name, 1.6, 0.8, 0.6, {{"1", -0.8, 0, 0.7, 0.9}, {"2", 0.8, 0, 0.7, 0.9}}};
  return {name, 3.2, 1.6, 1.2, {{"1", -1.5, 0, 1.0, 1.7}, {"2", 1.5, 0, 1.0, 1.7}}};
}

Footprint twoRows(const std::string& name, int pins, double pitch, double span, double padLength,
                  double padWidth, double bodyWidth, double bodyHeight, double tall) {
  Footprint out{name, bodyWidth, bodyHeight, tall, {}};
  const int side = pins / 2;
  for (int i = 0; i < pins; ++i) {
    const bool left = i < side;
    const double y = (left ? (side - 1) / 2.0 - i : i - side - (side - 1) / 2.0) * pitch;
    out.pads.push_back({std::to_string(i + 1), (left ? -0.5 : 0.5) * span, y, padLength, padWidth});
  }
  return out;
}

Footprint quad(int pins, double pitch, double span, double padLength, double padWidth, double body) {
  Footprint out{"quad " + std::to_string(pins), body, body, 1.4, {}};
  const int side = pins / 4;
  for (int i = 0; i < pins; ++i) {
    const double along = (i % side - (side - 1) / 2.0) * pitch;
    const std::string name = std::to_string(i + 1);
    switch (i / side) { // counter-clockwise from the left end of the lower row
    case 0:
      out.pads.push_back({name, along, -span / 2, padWidth, padLength});
      break;
    case 1:
      out.pads.push_back({name, span / 2, along, padLength, padWidth});
      break;
    case 2:
      out.pads.push_back({name, -along, span / 2, padWidth, padLength});
      break;
    default:
      out.pads.push_back({name, -span / 2, -along, padLength, padWidth});
      break;
    }
  }
  return out;
}

Footprint row(const std::string& name, int pins, double pitch, double padWidth, double padHeight,
              double bodyWidth, double bodyHeight, double bodyY, double tall) {
  Footprint out{name, bodyWidth, bodyHeight, tall, {}};
  for (int i = 0; i < pins; ++i)
    out.pads.push_back({std::to_string(i + 1), (i - (pins - 1) / 2.0) * pitch, -bodyY, padWidth, padHeight});
  return out;
}

DrawingBoard::DrawingBoard(std::string uuid, std::string name, std::string revision, double width,
                           double height) {
  BoardInfo info;
  info.uuid = std::move(uuid);
  info.name = fromUser(std::move(name));
  info.revision = fromUser(std::move(revision));
  info.outline = fromUser(std::vector<Polygon>{box(0, 0, width, height)});
  info.outline.value.front().holes.push_back(disc(52.0, 50.5, 2.0).outer); // for the sensor's cable
  Edit edit;
  for (const char* layer : {"top", "inner 1", "inner 2", "bottom"}) {
    Layer copper;
    copper.id = board_.newId<LayerId>();
    copper.name = layer;
    copper.copperThickness = guessed(Length(35'000));
    copper.dielectricBelow = guessed(Length(info.layerOrder.size() == 1 ? 1'000'000 : 200'000));
    copper.origin = Origin::user;
    info.layerOrder.push_back(copper.id);
    edit.put(copper);
  }
  edit.changes.emplace_back(InfoChange{std::move(info)});
  draw(edit);
}

void DrawingBoard::draw(const Edit& edit) {
  if (const auto done = apply(board_, edit); !done) {
    std::cerr << "the drawing is wrong: " << done.error().text() << "\n";
    std::exit(1);
  }
}

NetId DrawingBoard::netNamed(const std::string& name) {
  for (const Net& net : board_.nets)
    if (net.name == name) return net.id;
  Net net;
  net.id = board_.newId<NetId>();
  net.name = name;
  net.origin = Origin::user;
  Edit edit;
  edit.put(net);
  draw(edit);
  return net.id;
}

PartId DrawingBoard::place(const Placement& placement, const Footprint& footprint) {
  Part part;
  part.id = board_.newId<PartId>();
  part.reference = placement.reference;
  part.kind = fromUser(placement.kind);
  if (!placement.value.empty()) part.value = fromUser(placement.value);
  part.package = fromUser(footprint.name);
  part.side = fromUser(placement.side);
  part.position = fromUser(at(placement.x, placement.y));
  part.fitted = fromUser(true);
  part.height = guessed(Length::fromMm(footprint.tall));
  part.origin = Origin::user;
  const Degrees turn(placement.turn);
  // Seen from the top, a part on the far side is mirrored.
  const double mirror = placement.side == Side::top ? 1.0 : -1.0;
  Ring body;
  for (const auto& [sx, sy] : {std::pair{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}})
    body.push_back(
        placed(part.position.value, turn, at(sx * footprint.bodyWidth, sy * footprint.bodyHeight)));
  part.body = fromUser(body);
  Edit edit;
  edit.put(part);
  for (std::size_t i = 0; i < footprint.pads.size(); ++i) {
    const FootprintPad& from = footprint.pads[i];
    Pin pin;
    pin.id = board_.newId<PinId>();
    pin.part = part.id;
    pin.name = from.pin;
    pin.origin = Origin::user;
    const std::string net = i < placement.nets.size() ? placement.nets[i] : "";
    if (net == "-")
      pin.net = fromUser(NetId{});
    else if (!net.empty())
      pin.net = fromUser(netNamed(net));
    Pad pad;
    pad.id = board_.newId<PadId>();
    pad.pin = pin.id;
    pad.position = fromUser(placed(part.position.value, turn, at(mirror * from.x, from.y)));
    pad.shape = fromUser(PadShape::rectangle);
    pad.size = fromUser(Size{Length::fromMm(from.width), Length::fromMm(from.height)});
    pad.rotation = turn;
    pad.reach = fromUser(placement.side == Side::top ? PadReach::top : PadReach::bottom);
    pad.maskOpening = fromUser(placement.side == Side::top ? MaskOpening::top : MaskOpening::bottom);
    pad.origin = Origin::user;
    edit.put(pin).put(pad);
  }
  draw(edit);
  return part.id;
}

void DrawingBoard::testPad(const std::string& name, double x, double y, Side side, const std::string& net) {
  Pin pin;
  pin.id = board_.newId<PinId>();
  pin.name = name;
  pin.net = fromUser(netNamed(net));
  pin.origin = Origin::user;
  Pad pad;
  pad.id = board_.newId<PadId>();
  pad.pin = pin.id;
  pad.position = fromUser(at(x, y));
  pad.shape = fromUser(PadShape::circle);
  pad.size = fromUser(Size{Length::fromMm(1.0), Length::fromMm(1.0)});
  pad.reach = fromUser(side == Side::top ? PadReach::top : PadReach::bottom);
  pad.maskOpening = fromUser(side == Side::top ? MaskOpening::top : MaskOpening::bottom);
  pad.origin = Origin::user;
  Edit edit;
  draw(edit.put(pin).put(pad));
}

void DrawingBoard::track(const std::string& layer, const std::string& net, double width,
                         const std::vector<Point>& way) {
  LayerId on;
  for (const Layer& l : board_.layers)
    if (l.name == layer) on = l.id;
  const NetId id = netNamed(net);
  Edit edit;
  for (std::size_t i = 1; i < way.size(); ++i) {
    Track track;
    track.id = board_.newId<TrackId>();
    track.start = way[i - 1];
    track.end = way[i];
    track.layer = fromUser(on);
    track.width = fromUser(Length::fromMm(width));
    track.net = fromUser(id);
    track.origin = Origin::user;
    edit.put(track);
  }
  draw(edit);
}

void DrawingBoard::unknownRun(const std::string& net, Point from, Point to) {
  Track track;
  track.id = board_.newId<TrackId>();
  track.way = TrackWay::unknownWay;
  track.start = from;
  track.end = to;
  track.net = fromUser(netNamed(net));
  track.origin = Origin::user;
  Edit edit;
  draw(edit.put(track));
}

void DrawingBoard::via(const std::string& net, double x, double y, MaskOpening opening) {
  Via via;
  via.position = at(x, y);
  via.diameter = fromUser(Length::fromMm(0.5));
  via.drill = guessed(Length::fromMm(0.25));
  via.maskOpening = fromUser(opening);
  via.net = fromUser(netNamed(net));
  via.origin = Origin::user;
  via.id = board_.newId<ViaId>();
  Edit edit;
  draw(edit.put(via));
}

void DrawingBoard::area(const std::string& layer, const std::string& net, Polygon polygon) {
  Area area;
  for (const Layer& l : board_.layers)
    if (l.name == layer) area.layer = fromUser(l.id);
  area.net = fromUser(netNamed(net));
  area.polygon = std::move(polygon);
  area.origin = Origin::user;
  area.id = board_.newId<AreaId>();
  Edit edit;
  draw(edit.put(area));
}

void DrawingBoard::zone(ZoneKind kind, const std::string& name, Polygon polygon, Fact<Side> side,
                        PartId part) {
  Zone zone;
  zone.id = board_.newId<ZoneId>();
  zone.kind = kind;
  zone.name = name;
  zone.polygon = std::move(polygon);
  zone.side = side;
  zone.part = part;
  zone.origin = Origin::user;
  Edit edit;
  draw(edit.put(zone));
}

void DrawingBoard::role(const std::string& net, NetRole role, double volts) {
  Net changed = *board_.nets.find(netNamed(net));
  changed.role = fromUser(role);
  if (volts > 0.0) changed.ratedVoltage = fromUser(Volts(volts));
  Edit edit;
  draw(edit.put(changed));
}

void DrawingBoard::lidOver(PartId part, PartId lid) {
  Part changed = *board_.parts.find(part);
  changed.lid = fromUser(lid);
  Edit edit;
  draw(edit.put(changed));
}

} // namespace netmend::demo
