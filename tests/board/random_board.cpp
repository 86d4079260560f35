#include "random_board.h"

namespace netmend::test {

Origin RandomBoard::origin() {
  return any(Origin::measured);
}

Length RandomBoard::length() {
  if (oneIn(50)) return largestLength;
  return Length(std::uniform_int_distribution<std::int64_t>(-500'000'000, 500'000'000)(random_));
}

Point RandomBoard::point() {
  return {length(), length()};
}

Size RandomBoard::size() {
  return {length(), length()};
}

Ring RandomBoard::ring() {
  Ring out(below(9));
  for (Point& p : out)
    p = point();
  return out;
}

Polygon RandomBoard::polygon() {
  Polygon out{ring(), {}};
  for (std::size_t holes = below(3); holes > 0; --holes)
    out.holes.push_back(ring());
  return out;
}

std::string RandomBoard::text() {
  static const std::vector<std::string> pieces = {"J",  "4", ".", "\"", "\\", "/",    "~", "\n",   "\t",
                                                  "kΩ", "µ", "{", "}",  "日", "\x01", " ", "\x7f", "value"};
  std::string out;
  for (std::size_t n = below(6); n > 0; --n)
    out += pieces[below(pieces.size())];
  return out;
}

double RandomBoard::number() {
  if (oneIn(4)) return static_cast<double>(below(400));
  return std::uniform_real_distribution<double>(-1, 1)(random_) *
         std::pow(10.0, static_cast<double>(below(40)) - 20.0);
}

void RandomBoard::object(const Board&, Layer& layer) {
  layer.name = text();
  layer.copperThickness = fact(length());
  layer.dielectricBelow = fact(length());
  layer.origin = origin();
}

void RandomBoard::object(const Board& board, Part& part) {
  part.reference = text();
  part.kind = fact(any(PartKind::other));
  part.value = fact(text());
  part.package = fact(text());
  part.side = fact(any(Side::bottom));
  part.position = fact(point());
  part.body = fact(ring());
  part.height = fact(length());
  part.fitted = fact(oneIn(2));
  part.lid = fact(anyOrNone(board.parts));
  std::vector<Through> through;
  for (std::size_t n = board.pins.empty() ? 0 : below(4); n > 0; --n)
    through.push_back({anyOf(board.pins), anyOf(board.pins), fact(Ohms(number()))});
  part.through = fact(through);
  part.origin = origin();
}

void RandomBoard::object(const Board&, Net& net) {
  net.name = text();
  net.role = fact(any(NetRole::radio));
  net.ratedVoltage = fact(Volts(number()));
  net.ratedCurrent = fact(Amperes(number()));
  net.origin = origin();
}

void RandomBoard::object(const Board& board, Pin& pin) {
  pin.part = anyOrNone(board.parts);
  pin.name = text();
  pin.net = fact(anyOrNone(board.nets));
  pin.termination = fact(any(Termination::resistive));
  pin.origin = origin();
}

void RandomBoard::object(const Board& board, Pad& pad) {
  pad.pin = anyOf(board.pins);
  pad.position = fact(point());
  pad.shape = fact(any(PadShape::polygon));
  pad.size = fact(size());
  pad.cornerRadius = oneIn(2) ? Length(0) : length();
  pad.polygon = oneIn(2) ? Ring{} : ring();
  pad.rotation = Degrees(oneIn(2) ? 0.0 : number());
  pad.reach = fact(any(PadReach::allLayers));
  pad.drill = fact(size());
  pad.drillOffset = oneIn(2) ? Point{} : point();
  pad.plated = fact(oneIn(2));
  pad.maskOpening = fact(any(MaskOpening::both));
  pad.access = fact(any(Access::underPart));
  pad.gone = fact(oneIn(2));
  pad.origin = origin();
}

void RandomBoard::object(const Board& board, Track& track) {
  track.way = any(TrackWay::unknownWay);
  track.start = point();
  track.end = point();
  track.mid = track.way == TrackWay::arc ? point() : Point{};
  track.layer = fact(anyOrNone(board.layers));
  track.width = fact(length());
  track.net = fact(anyOrNone(board.nets));
  track.origin = origin();
}

void RandomBoard::object(const Board& board, Via& via) {
  via.position = point();
  via.diameter = fact(length());
  via.drill = fact(length());
  via.from = fact(anyOrNone(board.layers));
  via.to = fact(anyOrNone(board.layers));
  via.maskOpening = fact(any(MaskOpening::both));
  via.net = fact(anyOrNone(board.nets));
  via.origin = origin();
}

void RandomBoard::object(const Board& board, Area& area) {
  area.polygon = polygon();
  area.layer = fact(anyOrNone(board.layers));
  area.net = fact(anyOrNone(board.nets));
  area.origin = origin();
}

void RandomBoard::object(const Board& board, Zone& zone) {
  zone.kind = any(ZoneKind::tallPart);
  zone.name = text();
  zone.polygon = polygon();
  zone.side = fact(any(Side::bottom));
  zone.margin = fact(length());
  zone.part = anyOrNone(board.parts);
  zone.origin = origin();
}

void RandomBoard::object(const Board&, Underlay& underlay) {
  underlay.name = text();
  underlay.file = text();
  underlay.width = Pixels(number());
  underlay.height = Pixels(number());
  underlay.side = any(Side::bottom);
  underlay.closeUp = oneIn(2);
  PhotoLie lie;
  for (double& figure : lie.plane)
    figure = number();
  lie.radial = number();
  underlay.lie = fact(lie);
  for (std::size_t n = below(4); n > 0; --n)
    underlay.pairs.push_back({{Pixels(number()), Pixels(number())}, point()});
  underlay.faded = Share(oneIn(2) ? 0.0 : number());
  underlay.lightened = Share(oneIn(2) ? 0.0 : number());
  underlay.origin = origin();
}

BoardInfo RandomBoard::info(const Board& board) {
  BoardInfo out;
  out.uuid = text();
  out.name = fact(text());
  out.revision = fact(text());
  out.outline = fact(std::vector<Polygon>{polygon(), polygon()});
  out.copper = fact(any(DrawnCopper::everything));
  for (const Layer& layer : board.layers)
    out.layerOrder.insert(
        out.layerOrder.begin() + static_cast<std::ptrdiff_t>(below(out.layerOrder.size() + 1)), layer.id);
  return out;
}

Board RandomBoard::board(std::size_t parts) {
  Board out;
  const auto fill = [&]<class T>(Table<T>& table, std::size_t n) {
    for (; n > 0; --n) {
      T object;
      object.id = out.newId<decltype(T::id)>();
      this->object(out, object);
      table.put(object);
      if (oneIn(5)) out.lastId += below(10);
    }
  };
  fill(out.layers, below(5));
  fill(out.nets, parts);
  for (std::size_t i = 0; i < parts; ++i) {
    fill(out.parts, 1);
    fill(out.pins, below(5) + 1);
  }
  fill(out.pins, below(5) + 1);
  fill(out.pads, parts * 3);
  fill(out.tracks, parts * 3);
  fill(out.vias, parts);
  fill(out.areas, parts / 4);
  fill(out.zones, parts / 4);
  fill(out.underlays, parts / 8);
  out.info = info(out);
  return out;
}

} // namespace netmend::test
