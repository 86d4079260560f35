#include <catch2/catch.hpp>

#include "after.h"
#include "netmend/sketch/put_copper.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// R1 and C4 that are joined by a net of their own with a track and a via, C4 at ground, R1 at a signal that
/// leaves them.
struct Pair : DrawnBoard {
  NetId own = net("MID", {.ratedVoltage = fromUser(Volts(5))});
  NetId ground = net("GND");
  NetId supply = net("RAIL", {.role = fromUser(NetRole::supply)});
  NetId signal = net("OUT");
  NetId lone = net("LONE");
  LayerId top = layer("top");
  PartId r1 = part("R1", Side::top, box(-1, -0.5, 1, 0.5),
                   {.value = fromUser(std::string("4k7")), .position = fromUser(mm(0, 0))});
  PartId c4 = part("C4", Side::top, box(4, -0.5, 6, 0.5), {.position = fromUser(mm(5, 0))});
  PartId u1 = part("U1", Side::top, {});

  Pair() {
    pad(pin(r1, "1", signal), mm(-1, 0), PadReach::top, 0.5, {.rotation = Degrees(30)});
    pad(pin(r1, "2", own), mm(1, 0), PadReach::top, 0.5);
    pad(pin(c4, "1", own), mm(4, 0), PadReach::top, 0.5);
    pad(pin(c4, "2", ground), mm(6, 0), PadReach::top, 0.5);
    pad(pin(c4, "3", supply), mm(6, 1), PadReach::top, 0.5);
    pad(pin(c4, "4", {}), mm(6, 2), PadReach::top, 0.5);
    pad(pin(c4, "5", lone), mm(6, 3), PadReach::top, 0.5);
    pin(u1, "1", signal);
    pin(u1, "2", ground);
    pin(u1, "3", supply);
    track(mm(1, 0), mm(4, 0), top, own, 0.2);
    track(mm(-1, 0), mm(-5, 0), top, signal, 0.2);
    board.vias.put({.id = board.newId<ViaId>(), .position = mm(2, 1), .net = fromUser(own)});
    board.vias.put({.id = board.newId<ViaId>(), .position = mm(-2, 1), .net = fromUser(signal)});
    Pin nowhere;
    nowhere.part = r1;
    nowhere.name = "3";
    put(board.pins, nowhere);
  }

  Board copied(PartsCopy copy) const {
    const auto edit = copyParts(Lookup(board), copy);
    REQUIRE(edit);
    return after(board, *edit);
  }
};

} // namespace

TEST_CASE("parts are copied with new numbers, their pins and pads, moved") {
  const Pair drawn;
  const Board board = drawn.copied({{drawn.r1, drawn.c4}, mm(0, 10), false});
  CHECK(board.parts.size() == 5);
  const Part& r2 = partCalled(board, "R2");
  CHECK(r2.value == fromUser(std::string("4k7")));
  CHECK(r2.position == fromUser(mm(0, 10)));
  CHECK(r2.body == fromUser(box(-1, 9.5, 1, 10.5)));
  CHECK(r2.origin == Origin::user);
  CHECK(placeOf(board, "R2.1") == mm(-1, 10));
  CHECK(placeOf(board, "C5.5") == mm(6, 13));
  CHECK(pinCalled(board, "R2.3").part == r2.id);
  // What was there is as it was.
  CHECK(*board.parts.find(drawn.r1) == *drawn.board.parts.find(drawn.r1));
  CHECK(board.pads.size() == 2 * drawn.board.pads.size());
}

TEST_CASE("a copy has nets of its own for what joins its parts, and shares ground and supplies") {
  const Pair drawn;
  const Board board = drawn.copied({{drawn.r1, drawn.c4}, mm(0, 10), false});
  const NetId fresh = pinCalled(board, "R2.2").net.value;
  CHECK(pinCalled(board, "R2.2").net == guessed(fresh));
  CHECK(pinCalled(board, "C5.1").net == guessed(fresh));
  CHECK(fresh != drawn.own);
  CHECK(board.nets.find(fresh)->name.empty());
  CHECK(board.nets.find(fresh)->ratedVoltage == fromUser(Volts(5)));
  CHECK(board.nets.find(fresh)->origin == Origin::user);
  CHECK(pinCalled(board, "C5.2").net == guessed(drawn.ground));
  CHECK(pinCalled(board, "C5.3").net == guessed(drawn.supply));
  CHECK(netOfPin(board, "C5.4") == "-");
  CHECK(netOfPin(board, "C5.5") == "?"); // a net of one pin joins nothing
  CHECK(netOfPin(board, "R2.1") == "?"); // it leads elsewhere
  CHECK(netOfPin(board, "R2.3") == "?");
  CHECK(board.nets.size() == drawn.board.nets.size() + 1);
  // Tracks and vias of the own net only.
  REQUIRE(board.tracks.size() == 3);
  CHECK(board.tracks[2].start == mm(1, 10));
  CHECK(board.tracks[2].end == mm(4, 10));
  CHECK(board.tracks[2].net == fromUser(fresh));
  CHECK(board.tracks[2].layer == fromUser(drawn.top));
  REQUIRE(board.vias.size() == 3);
  CHECK(board.vias[2].position == mm(2, 11));
  CHECK(board.vias[2].net == fromUser(fresh));
  // Of one part alone its net leads elsewhere.
  const Board one = drawn.copied({{drawn.r1}, mm(0, 10), false});
  CHECK(netOfPin(one, "R2.2") == "?");
  CHECK(one.tracks.size() == 2);
}

TEST_CASE("a mirrored copy lies about an upright axis through the first pad") {
  Pair drawn;
  Pad polygon;
  polygon.pin = drawn.board.pins[0].id;
  polygon.position = fromUser(mm(-1, 2));
  polygon.polygon = {mm(0, 0), mm(2, 0), mm(0, 1)};
  polygon.rotation = Degrees(90);
  polygon.drillOffset = mm(0.3, 0.2);
  polygon.gone = fromUser(true);
  drawn.put(drawn.board.pads, polygon);
  Track arc;
  arc.way = TrackWay::arc;
  arc.start = mm(1, 0);
  arc.mid = mm(2, 1);
  arc.end = mm(3, 0);
  arc.net = fromUser(drawn.own);
  drawn.put(drawn.board.tracks, arc);
  const Board board = drawn.copied({{drawn.r1, drawn.c4}, mm(0, 10), true});
  // The axis is x = -1 mm.
  CHECK(placeOf(board, "R2.1") == mm(-1, 10));
  CHECK(placeOf(board, "R2.2") == mm(-3, 10));
  CHECK(placeOf(board, "C5.5") == mm(-8, 13));
  CHECK(partCalled(board, "C5").position == fromUser(mm(-7, 10)));
  CHECK(partCalled(board, "R2").body.value[0] == mm(-1, 9.5));
  CHECK(partCalled(board, "R2").body.value[2] == mm(-3, 10.5));
  const Lookup lookup(board);
  const auto& pads = lookup.padsOf(pinCalled(board, "R2.1").id);
  REQUIRE(pads.size() == 2);
  CHECK(board.pads.find(pads[0])->rotation == Degrees(330));
  const Pad& made = *board.pads.find(pads[1]);
  CHECK(made.rotation == Degrees(270));
  CHECK(made.polygon == Ring{mm(0, 0), mm(-2, 0), mm(0, 1)});
  CHECK(made.drillOffset == mm(-0.3, 0.2));
  CHECK_FALSE(made.gone.known());
  CHECK(board.pads.find(lookup.padsOf(pinCalled(board, "R2.2").id).front())->rotation == Degrees(0));
  const Track& arced = board.tracks[board.tracks.size() - 1];
  CHECK(arced.start == mm(-3, 10));
  CHECK(arced.mid == mm(-4, 11));
  CHECK(arced.end == mm(-5, 10));
}

TEST_CASE("numbers of copies go on, also where letters stand behind them") {
  DrawnBoard drawn;
  const auto put = [&](const char* reference) {
    return drawn.part(reference, Side::top, {}, {.position = fromUser(mm(0, 0)), .lid = fromUser(PartId())});
  };
  const PartId r3 = put("R3"), r4 = put("R4"), odd = put("R12A"), nameless = put("");
  put("R7");
  const auto edit = copyParts(Lookup(drawn.board), {{r3, r4, odd, odd, nameless}, mm(1, 0), false});
  REQUIRE(edit);
  std::vector<std::string> made;
  for (const Part& part : putBy<Part>(*edit)) {
    made.push_back(part.reference);
    CHECK_FALSE(part.lid.known());
    CHECK_FALSE(part.through.known());
  }
  CHECK(made == std::vector<std::string>{"R8", "R9", "R12A1", "R12A2", "1"});
}

TEST_CASE("a part without a place, one that is not there, and none at all are refused") {
  DrawnBoard drawn;
  const PartId placed = drawn.part("R1", Side::top, {}, {.position = fromUser(mm(0, 0))});
  const PartId listed = drawn.part("J1", Side::top, {});
  const Lookup lookup(drawn.board);
  CHECK(copyParts(lookup, {{placed}, mm(1, 0), false}));
  const auto refused = copyParts(lookup, {{placed, listed}, mm(1, 0), false});
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() == "has no place that could be copied (found J1)");
  CHECK_FALSE(copyParts(lookup, {{PartId(999)}, mm(1, 0), false}));
  const auto none = copyParts(lookup, {{}, mm(1, 0), false});
  REQUIRE_FALSE(none);
  CHECK(none.error().text() == "no part to copy");
}
