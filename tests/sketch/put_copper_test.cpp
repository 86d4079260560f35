#include "netmend/sketch/put_copper.h"

#include <set>

#include <catch2/catch.hpp>

#include "after.h"
#include "netmend/board/summary.h"
#include "netmend/netgraph/board_graph.h"
#include "netmend/netgraph/line.h"
#include "netmend/sketch/put_parts.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

constexpr Length width{200'000};

/// A board with two layers, of which everything is drawn.
struct Layered : DrawnBoard {
  LayerId top = layer("F.Cu");
  LayerId bottom = layer("B.Cu");
  Layered() { board.info.layerOrder = {top, bottom}; }
};

/// How many parts of the copper a line falls into.
std::size_t piecesOf(const Line& line) {
  return fragments(line.graph, {}).count;
}
std::size_t islandsWithPins(const Board& board) {
  std::size_t count = 0;
  for (const Island& island : buildBoardGraph(board).islands)
    count += std::any_of(island.members.begin(), island.members.end(),
                         [](const CopperObject& member) { return std::holds_alternative<PinId>(member); });
  return count;
}

} // namespace

TEST_CASE("a bend goes at 45 degrees first or last") {
  CHECK(bentWay(mm(0, 0), mm(3, 1), Bend::straight) == Ring{mm(0, 0), mm(3, 1)});
  CHECK(bentWay(mm(0, 0), mm(3, 1), Bend::slantFirst) == Ring{mm(0, 0), mm(1, 1), mm(3, 1)});
  CHECK(bentWay(mm(0, 0), mm(3, 1), Bend::slantLast) == Ring{mm(0, 0), mm(2, 0), mm(3, 1)});
  CHECK(bentWay(mm(0, 0), mm(-1, -4), Bend::slantFirst) == Ring{mm(0, 0), mm(-1, -1), mm(-1, -4)});
  CHECK(bentWay(mm(0, 0), mm(-1, -4), Bend::slantLast) == Ring{mm(0, 0), mm(0, -3), mm(-1, -4)});
  CHECK(bentWay(mm(2, 5), mm(1, 9), Bend::slantFirst) == Ring{mm(2, 5), mm(1, 6), mm(1, 9)});
  for (const Bend bend : {Bend::slantFirst, Bend::slantLast}) { // nothing to bend
    CHECK(bentWay(mm(0, 0), mm(3, 0), bend) == Ring{mm(0, 0), mm(3, 0)});
    CHECK(bentWay(mm(0, 0), mm(0, -3), bend) == Ring{mm(0, 0), mm(0, -3)});
    CHECK(bentWay(mm(0, 0), mm(2, -2), bend) == Ring{mm(0, 0), mm(2, -2)});
  }
}

TEST_CASE("a track is put in pieces, on the outer layer of its side") {
  Layered drawn;
  const NetId net = drawn.net("A");
  const Ring way{mm(0, 0), mm(1, 0), mm(1, 0), mm(2, 1)};
  const Board board = after(drawn.board, putTrack(drawn.board, {way, width, Side::bottom, net}));
  REQUIRE(board.tracks.size() == 2);
  CHECK(board.tracks[0].start == mm(0, 0));
  CHECK(board.tracks[0].end == mm(1, 0));
  CHECK(board.tracks[1].start == mm(1, 0));
  CHECK(board.tracks[1].end == mm(2, 1));
  for (const Track& track : board.tracks) {
    CHECK(track.way == TrackWay::straight);
    CHECK(track.layer == fromUser(drawn.bottom));
    CHECK(track.width == fromUser(width));
    CHECK(track.net == fromUser(net));
    CHECK(track.origin == Origin::user);
  }
  CHECK(board.layers == drawn.board.layers);
  CHECK(board.info == drawn.board.info);
  const Board bare = after(drawn.board, putTrack(drawn.board, {way, width, Side::top, {}}));
  CHECK(bare.tracks[0].layer == fromUser(drawn.top));
  CHECK_FALSE(bare.tracks[0].net.known());
  // With a layer in between, the outer ones.
  const LayerId inner = drawn.layer("In1");
  drawn.board.info.layerOrder = {drawn.top, inner, drawn.bottom};
  CHECK(putBy<Track>(putTrack(drawn.board, {way, width, Side::bottom, net}))[0].layer ==
        fromUser(drawn.bottom));
}

TEST_CASE("a board without layers gets two, and says that only points are known") {
  DrawnBoard drawn;
  const Edit first = putTrack(drawn.board, {{mm(0, 0), mm(1, 0)}, width, Side::bottom, {}});
  // Continued: no second pair of layers, and other ids.
  const Edit both = putTrack(drawn.board, {{mm(0, 0), mm(0, 1)}, width, Side::top, {}}, first);
  const Board board = after(drawn.board, both);
  REQUIRE(board.layers.size() == 2);
  CHECK(board.layers[0].name == "top");
  CHECK(board.layers[1].name == "bottom");
  CHECK(board.layers[0].origin == Origin::user);
  CHECK(board.info.layerOrder == std::vector{board.layers[0].id, board.layers[1].id});
  CHECK(board.info.copper == fromUser(DrawnCopper::points));
  CHECK(drawnCopper(board) == DrawnCopper::points);
  REQUIRE(board.tracks.size() == 2);
  CHECK(board.tracks[0].layer == fromUser(board.layers[1].id));
  CHECK(board.tracks[1].layer == fromUser(board.layers[0].id));
  // What the board says of its copper stays.
  drawn.board.info.copper = fromFile(DrawnCopper::tracks);
  CHECK(after(drawn.board, putVia(drawn.board, mm(0, 0), width, {})).info.copper ==
        fromFile(DrawnCopper::tracks));
}

TEST_CASE("a run inside has no layer, no width and no way") {
  DrawnBoard drawn;
  const NetId net = drawn.net("A");
  const Board board = after(drawn.board, putUnknownRun(drawn.board, mm(0, 0), mm(5, 5), net));
  REQUIRE(board.tracks.size() == 1);
  const Track& track = board.tracks[0];
  CHECK(track.way == TrackWay::unknownWay);
  CHECK(track.start == mm(0, 0));
  CHECK(track.end == mm(5, 5));
  CHECK_FALSE(track.layer.known());
  CHECK_FALSE(track.width.known());
  CHECK(track.net == fromUser(net));
  CHECK(track.origin == Origin::user);
  CHECK(board.layers.size() == 2);
}

TEST_CASE("a via goes through all layers, its hole half as wide") {
  Layered drawn;
  const NetId net = drawn.net("A");
  const Board board = after(drawn.board, putVia(drawn.board, mm(1, 2), Length(500'000), net));
  REQUIRE(board.vias.size() == 1);
  CHECK(board.vias[0].position == mm(1, 2));
  CHECK(board.vias[0].diameter == guessed(Length(500'000)));
  CHECK(board.vias[0].drill == guessed(Length(250'000)));
  CHECK_FALSE(board.vias[0].from.known());
  CHECK_FALSE(board.vias[0].to.known());
  CHECK(board.vias[0].net == fromUser(net));
  CHECK(board.vias[0].origin == Origin::user);
}

TEST_CASE("areas and zones are outlines of three corners or more") {
  Layered drawn;
  const NetId net = drawn.net("GND");
  const auto area = putArea(drawn.board, box(0, 0, 2, 2), Side::bottom, net);
  REQUIRE(area);
  Board board = after(drawn.board, *area);
  CHECK(board.areas[0].polygon.outer == box(0, 0, 2, 2));
  CHECK(board.areas[0].layer == fromUser(drawn.bottom));
  CHECK(board.areas[0].net == fromUser(net));
  CHECK(board.areas[0].origin == Origin::user);
  const auto zone = putZone(drawn.board, ZoneKind::antenna, "ANT1", box(0, 0, 2, 2), Side::bottom);
  REQUIRE(zone);
  board = after(drawn.board, *zone);
  CHECK(board.zones[0].kind == ZoneKind::antenna);
  CHECK(board.zones[0].name == "ANT1");
  CHECK(board.zones[0].polygon.outer == box(0, 0, 2, 2));
  CHECK(board.zones[0].side == fromUser(Side::bottom));
  CHECK_FALSE(board.zones[0].part);
  CHECK_FALSE(board.zones[0].margin.known());
  CHECK(board.zones[0].origin == Origin::user);
  const Ring two{mm(0, 0), mm(1, 0)}, three{mm(0, 0), mm(1, 0), mm(1, 1)};
  CHECK(putArea(drawn.board, three, Side::top, {}));
  CHECK_FALSE(putArea(drawn.board, two, Side::top, {}));
  CHECK(putZone(drawn.board, ZoneKind::flex, "", three, Side::top));
  const auto few = putZone(drawn.board, ZoneKind::flex, "", two, Side::top);
  REQUIRE_FALSE(few);
  CHECK(few.error().text() == "an outline has three corners or more");
}

TEST_CASE("a zone over a part is its body, or spans its pads") {
  DrawnBoard drawn;
  const PartId bodied = drawn.part("J1", Side::bottom, box(0, 0, 4, 1));
  const PartId padded = drawn.part("J2", Side::top, {});
  const PinId pin = drawn.pin(padded, "1", {});
  drawn.pad(pin, mm(10, 0), PadReach::top, 2);
  drawn.pad(pin, mm(14, 0), PadReach::top, 2);
  const PartId bare = drawn.part("J3", Side::top, {});
  const Lookup lookup(drawn.board);
  auto zone = zoneFromPart(lookup, bodied, ZoneKind::connector);
  REQUIRE(zone);
  Zone put = putBy<Zone>(*zone).front();
  CHECK(put.kind == ZoneKind::connector);
  CHECK(put.name == "J1");
  CHECK(put.part == bodied);
  CHECK(put.side == fromUser(Side::bottom));
  CHECK(put.polygon.outer == box(0, 0, 4, 1));
  zone = zoneFromPart(lookup, padded, ZoneKind::tallPart);
  REQUIRE(zone);
  put = putBy<Zone>(*zone).front();
  Box span;
  for (const Point p : put.polygon.outer)
    span.include(p);
  CHECK(span.min == mm(9, -1));
  CHECK(span.max == mm(15, 1));
  CHECK(put.polygon.outer.size() == 4);
  zone = zoneFromPart(lookup, bare, ZoneKind::tallPart);
  REQUIRE_FALSE(zone);
  CHECK(zone.error().text() == "has no outline to make a zone of (found J3)");
  CHECK_FALSE(zoneFromPart(lookup, PartId(999), ZoneKind::tallPart));
}

TEST_CASE("copper is found within reach, on its side and inside") {
  Layered drawn;
  const TrackId above = drawn.track(mm(0, 0), mm(10, 0), drawn.top, {}, 0.2);
  const TrackId below = drawn.track(mm(0, 0.05), mm(10, 0.05), drawn.bottom, {}, 0.2);
  Track inner;
  inner.way = TrackWay::unknownWay;
  inner.start = mm(0, 20);
  inner.end = mm(10, 20);
  const TrackId inside = drawn.put(drawn.board.tracks, inner);
  const auto at = [&](double x, double y, Side side, double reach = 0.1) {
    return copperAt(drawn.board, mm(x, y), side, Length::fromMm(reach));
  };
  CHECK(at(5, 0, Side::top).track == above);
  CHECK(at(5, 0, Side::bottom).track == below);
  // From the edge of the copper, half the width from the middle.
  CHECK(at(5, -0.2, Side::top).any());
  CHECK_FALSE(at(5, -0.200001, Side::top).any());
  CHECK(at(10.2, 0, Side::top).any());
  CHECK_FALSE(at(10.21, 0, Side::top).any());
  CHECK(at(5, 20, Side::top).track == inside);
  CHECK(at(5, 20.1, Side::bottom).track == inside);
  CHECK_FALSE(at(5, 20.11, Side::bottom).any());
  CHECK_FALSE(at(5, 10, Side::top).any());
  // A via is found on both sides; the nearest is taken.
  Via via;
  via.position = mm(5, -1);
  via.diameter = guessed(Length(600'000));
  const ViaId viaId = drawn.put(drawn.board.vias, via);
  CHECK(at(5, -1.3, Side::top, 0).via == viaId);
  CHECK_FALSE(at(5, -1.300001, Side::top, 0).any());
  CHECK(at(5, -1.4, Side::bottom).via == viaId);
  CHECK(at(5, -0.6, Side::top, 1).via == viaId);   // 0.1 mm to its ring, 0.5 mm to the track
  CHECK(at(5, -0.3, Side::top, 1).track == above); // 0.2 and 0.4 mm
  CHECK(at(5, -0.3, Side::top, 1).isLine());
  // Where a track ends on it, the via is found; of two tracks the one drawn last.
  drawn.track(mm(5, -1), mm(5, -5), drawn.top, {}, 0.2);
  CHECK(at(5, -1.2, Side::top).via == viaId);
  const TrackId last = drawn.track(mm(5, 0), mm(9, 0), drawn.top, {}, 0.2);
  CHECK(at(7, 0, Side::top).track == last);
}

TEST_CASE("of areas and zones the smallest is found, where there is no line") {
  Layered drawn;
  const auto area = [&](const Ring& ring, LayerId layer) {
    Area made;
    made.polygon.outer = ring;
    if (layer) made.layer = fromUser(layer);
    return drawn.put(drawn.board.areas, made);
  };
  const AreaId large = area(box(0, 0, 10, 10), drawn.top);
  const AreaId small = area(box(4, 4, 6, 6), drawn.top);
  const AreaId below = area(box(3, 3, 7, 7), drawn.bottom);
  const ZoneId zone = drawn.zone(ZoneKind::flex, "", box(0, 0, 2, 2), {.side = fromUser(Side::top)});
  const ZoneId anywhere = drawn.zone(ZoneKind::flex, "", box(8, 8, 9, 9));
  const auto at = [&](double x, double y, Side side) { return copperAt(drawn.board, mm(x, y), side, width); };
  CHECK(at(5, 5, Side::top) == CopperAt{{}, {}, small, {}});
  CHECK(at(5, 5, Side::bottom) == CopperAt{{}, {}, below, {}});
  CHECK(at(3.5, 3.5, Side::top).area == large);
  CHECK(at(1, 1, Side::top).zone == zone);
  CHECK_FALSE(at(1, 1, Side::bottom).any());
  CHECK(at(8.5, 8.5, Side::bottom).zone == anywhere);
  CHECK_FALSE(at(1, 1, Side::top).isLine());
  CHECK_FALSE(at(11, 5, Side::top).any());
  const TrackId track = drawn.track(mm(0, 5), mm(10, 5), drawn.top, {}, 0.2);
  CHECK(at(5, 5, Side::top) == CopperAt{track, {}, {}, {}});
}

TEST_CASE("copper is taken off, known by its net, given one and met in its middle") {
  Layered drawn;
  const NetId net = drawn.net("A");
  const TrackId track = drawn.track(mm(0, 0), mm(10, 0), drawn.top, net, 0.2);
  Via via;
  via.position = mm(3, 3);
  const ViaId viaId = drawn.put(drawn.board.vias, via);
  Area area;
  area.polygon.outer = box(0, 0, 1, 1);
  const AreaId areaId = drawn.put(drawn.board.areas, area);
  const ZoneId zone = drawn.zone(ZoneKind::flex, "", box(0, 0, 2, 2));
  CHECK(netOf(drawn.board, {track, {}, {}, {}}) == net);
  CHECK_FALSE(netOf(drawn.board, {{}, viaId, {}, {}}));
  CHECK_FALSE(netOf(drawn.board, {{}, {}, areaId, {}}));
  CHECK_FALSE(netOf(drawn.board, {{}, {}, {}, zone}));
  Board board = after(drawn.board, giveNet(drawn.board, {{}, viaId, {}, {}}, net));
  CHECK(board.vias[0].net == fromUser(net));
  CHECK(netOf(board, {{}, viaId, {}, {}}) == net);
  board = after(drawn.board, giveNet(drawn.board, {{}, {}, areaId, {}}, net));
  CHECK(netOf(board, {{}, {}, areaId, {}}) == net);
  const NetId other = drawn.net("B");
  board = after(drawn.board, giveNet(drawn.board, {track, {}, {}, {}}, other));
  CHECK(board.tracks[0].net == fromUser(other));
  CHECK(giveNet(drawn.board, {{}, {}, {}, zone}, net).changes.empty());
  CHECK(placeOn(drawn.board, {track, {}, {}, {}}, mm(4, 0.1)) == mm(4, 0));
  CHECK(placeOn(drawn.board, {track, {}, {}, {}}, mm(10.1, 0.1)) == mm(10, 0));
  Track arc; // half a circle of 2 mm about (20, 0)
  arc.way = TrackWay::arc;
  arc.start = mm(22, 0);
  arc.mid = mm(20, 2);
  arc.end = mm(18, 0);
  const TrackId arcId = drawn.put(drawn.board.tracks, arc);
  const Point onArc = placeOn(drawn.board, {arcId, {}, {}, {}}, mm(20, 2.1));
  CHECK(distance(onArc, mm(20, 2)).nm <= 1'000); // chords of up to a micrometre
  drawn.board.tracks.erase(arcId);
  CHECK(placeOn(drawn.board, {{}, viaId, {}, {}}, mm(3.1, 3.1)) == mm(3, 3));
  CHECK(placeOn(drawn.board, {{}, {}, areaId, {}}, mm(0.3, 0.4)) == mm(0.3, 0.4));
  CHECK(placeOn(drawn.board, {}, mm(7, 7)) == mm(7, 7));
  for (const CopperAt what :
       {CopperAt{track, {}, {}, {}}, {{}, viaId, {}, {}}, {{}, {}, areaId, {}}, {{}, {}, {}, zone}}) {
    const Edit edit = removeCopper(what);
    CHECK(edit.changes.size() == 1);
    board = after(drawn.board, edit);
    CHECK(board.tracks.size() + board.vias.size() + board.areas.size() + board.zones.size() == 3);
  }
  CHECK(removeCopper({}).changes.empty());
}

TEST_CASE("what runs inside joins by copper, and a pad that is gone does not") {
  // A pad, a track to a via, inside to another via, a track to another pad.
  DrawnBoard drawn;
  const PartId j1 = drawn.part("J1", Side::top, {});
  Pin first{.id = {}, .part = j1, .name = "1", .net = {}};
  Pin second{.id = {}, .part = j1, .name = "2", .net = {}};
  const PinId a = drawn.put(drawn.board.pins, first);
  const PinId b = drawn.put(drawn.board.pins, second);
  const PadId padA = drawn.pad(a, mm(0, 0), PadReach::top, 0.5);
  drawn.pad(b, mm(20, 0), PadReach::top, 0.5);
  Board board = drawn.board;
  const auto put = [&](const Edit& edit) { board = after(board, edit); };
  put(putTrack(board, {{mm(0, 0), mm(5, 0)}, width, Side::top, {}}));
  put(putVia(board, mm(5, 0), Length(500'000), {}));
  put(putVia(board, mm(15, 0), Length(500'000), {}));
  put(putTrack(board, {{mm(15, 0), mm(20, 0)}, width, Side::top, {}}));
  CHECK(islandsWithPins(board) == 2);
  const Board apart = board;
  put(putUnknownRun(board, mm(5, 0), mm(15, 0), {}));
  CHECK(islandsWithPins(board) == 1);
  const BoardGraph graph = buildBoardGraph(board);
  const Lookup lookup(board);
  const Line line = lineOf(lookup, graph, a);
  CHECK(line.terminals().size() == 2);
  CHECK(piecesOf(line) == 1);
  const Lookup lookupApart(apart);
  CHECK(lineOf(lookupApart, buildBoardGraph(apart), a).terminals().size() == 1);
  // The pad is torn off: its pin hangs on nothing any more, and comes back.
  const Board torn = after(board, setGone(Lookup(board), a, true));
  CHECK(islandsWithPins(torn) == 2);
  CHECK(torn.pads.find(padA)->gone == fromUser(true));
  CHECK(islandsWithPins(after(torn, setGone(Lookup(torn), a, false))) == 1);
}
