#include "netmend/sketch/put_parts.h"

#include <catch2/catch.hpp>

#include "after.h"
#include "netmend/sketch/put_copper.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

PinArray twoRows(std::size_t pins) {
  PinArray array;
  array.pins = pins;
  array.rows = 2;
  return array;
}
PlacedArray placedAt(const PinArray& array, Point first, Point opposite, Side side = Side::top) {
  const auto placed = placeArray(array, {first, opposite, {}, side, false});
  REQUIRE(placed);
  return *placed;
}

} // namespace

TEST_CASE("letters of a reference say what the part is") {
  CHECK(kindOfPrefix("R") == PartKind::resistor);
  CHECK(kindOfPrefix("rn") == PartKind::resistorArray);
  CHECK(kindOfPrefix("FB") == PartKind::ferrite);
  CHECK(kindOfPrefix("Led") == PartKind::led);
  CHECK(kindOfPrefix("CN") == PartKind::connector);
  CHECK(kindOfPrefix("TP") == PartKind::testPoint);
  CHECK(kindOfPrefix("SH") == PartKind::shield);
  CHECK_FALSE(kindOfPrefix("W"));
  CHECK_FALSE(kindOfPrefix(""));
  CHECK_FALSE(kindOfPrefix("R2"));
}

TEST_CASE("a reference is letters, and the number at its end") {
  const auto parts = [](const char* text) {
    const auto found = partsOfReference(text);
    return found.letters + "|" + (found.number ? std::to_string(*found.number) : "-");
  };
  CHECK(parts("R28") == "R|28");
  CHECK(parts("R") == "R|-");
  CHECK(parts("7") == "|7");
  CHECK(parts("") == "|-");
  CHECK(parts("R12A") == "R12A|-");
  CHECK(parts("J4_3") == "J4_|3");
  CHECK(parts("R007") == "R|7");
  CHECK(parts("R999999999") == "R|999999999");
  CHECK(parts("R1000000000") == "R1000000000|-");
}

TEST_CASE("the next reference is beyond the highest, or the next that is free") {
  DrawnBoard drawn;
  for (const char* reference : {"R1", "R2", "R5", "C9", "RN40", "R12A", "R"})
    drawn.part(reference, Side::top, {});
  CHECK(nextReference(drawn.board, "R") == "R6");
  CHECK(nextReference(drawn.board, "C") == "C10");
  CHECK(nextReference(drawn.board, "L") == "L1");
  CHECK(nextReference(drawn.board, "R", 1) == "R3");
  CHECK(nextReference(drawn.board, "R", 3) == "R3");
  CHECK(nextReference(drawn.board, "R", 5) == "R6");
  CHECK(nextReference(drawn.board, "R", 100) == "R100");
}

TEST_CASE("an array becomes a part with pins and pads") {
  DrawnBoard drawn;
  drawn.net("GND");
  const std::uint64_t last = drawn.board.lastId;
  const PinArray array = twoRows(4);
  const auto placed = placedAt(array, mm(0, 0), mm(1, -2));
  const Lookup lookup(drawn.board);
  const auto put = putArray(lookup, {"J4", PartKind::connector, "board to board"}, array, placed, Side::top);
  REQUIRE(put);
  CHECK(put->part == PartId(last + 1));
  const Board board = after(drawn.board, put->edit);
  const Part& part = partCalled(board, "J4");
  CHECK(part.id == put->part);
  CHECK(part.kind == fromUser(PartKind::connector));
  CHECK(part.value == fromUser(std::string("board to board")));
  CHECK(part.side == fromUser(Side::top));
  CHECK(part.fitted == fromUser(true));
  CHECK(part.position == fromUser(mm(0.5, -1)));
  CHECK(part.body == guessed(placed.body));
  CHECK_FALSE(part.package.known());
  CHECK(part.origin == Origin::user);
  REQUIRE(board.pins.size() == 4);
  REQUIRE(board.pads.size() == 4);
  for (std::size_t i = 0; i < 4; ++i) {
    const Pin& pin = board.pins[i];
    CHECK(pin.part == part.id);
    CHECK(pin.name == std::to_string(i + 1));
    CHECK_FALSE(pin.net.known());
    CHECK(pin.origin == Origin::user);
    const Pad& pad = board.pads[i];
    CHECK(pad.pin == pin.id);
    CHECK(pad.position == fromUser(placed.pads[i].at));
    CHECK(pad.size == guessed(placed.pads[i].size));
    CHECK(pad.shape == guessed(PadShape::rectangle));
    CHECK(pad.rotation == placed.pads[i].turn);
    CHECK(pad.reach == fromUser(PadReach::top));
    CHECK_FALSE(pad.drill.known());
    CHECK_FALSE(pad.gone.known());
    CHECK(pad.origin == Origin::user);
  }
  CHECK(placeOf(board, "J4.4") == mm(1, -2));
}

TEST_CASE("pads on the bottom, in holes, round ones and given sizes") {
  DrawnBoard drawn;
  const Lookup lookup(drawn.board);
  PinArray array = twoRows(4);
  array.pad = Size{Length(700'000), Length(900'000)};
  auto put = putArray(lookup, {"J1", PartKind::connector, {}}, array,
                      placedAt(array, mm(0, 0), mm(1, -2), Side::bottom), Side::bottom);
  REQUIRE(put);
  Board board = after(drawn.board, put->edit);
  CHECK_FALSE(partCalled(board, "J1").value.known());
  CHECK(partCalled(board, "J1").side == fromUser(Side::bottom));
  CHECK(board.pads[0].reach == fromUser(PadReach::bottom));
  CHECK(board.pads[0].size == fromUser(*array.pad));
  array.drill = Size{Length(800'000), Length(800'000)};
  put = putArray(lookup, {"J2", PartKind::connector, {}}, array, placedAt(array, mm(0, 0), mm(1, -2)),
                 Side::top);
  REQUIRE(put);
  board = after(drawn.board, put->edit);
  CHECK(board.pads[0].reach == fromUser(PadReach::allLayers));
  CHECK(board.pads[0].drill == fromUser(*array.drill));
  CHECK(board.pads[0].plated == guessed(true));
  CHECK(board.pads[0].shape == guessed(PadShape::circle));
  PinArray grid;
  grid.form = PinForm::grid;
  grid.pins = 4;
  grid.rows = 2;
  put = putArray(lookup, {"U1", PartKind::chip, {}}, grid, placedAt(grid, mm(0, 0), mm(1, -1)), Side::top);
  REQUIRE(put);
  board = after(drawn.board, put->edit);
  CHECK(board.pads[0].shape == guessed(PadShape::circle));
  CHECK(pinCalled(board, "U1.B2").part == put->part);
}

TEST_CASE("a typed list of pins gets its places and keeps its nets") {
  DrawnBoard drawn;
  const NetId sda = drawn.net("SDA");
  const PartId j4 = drawn.part("J4", Side::top, {});
  for (const char* name : {"3", "1", "2", "4"}) // in no order
    drawn.pin(j4, name, sda);
  PinArray array = twoRows(4);
  array.tabs = true;
  const auto placed = placedAt(array, mm(0, 0), mm(1, -2), Side::bottom);
  const Lookup lookup(drawn.board);
  auto put = putArray(lookup, {"J4", PartKind::connector, {}}, array, placed, Side::bottom);
  REQUIRE(put);
  CHECK(put->part == j4);
  Board board = after(drawn.board, put->edit);
  CHECK(board.parts.size() == 1);
  REQUIRE(board.pins.size() == 6);
  CHECK(netOfPin(board, "J4.3") == "SDA");
  CHECK(placeOf(board, "J4.1") == mm(0, 0));
  CHECK(placeOf(board, "J4.4") == mm(1, -2));
  CHECK(netOfPin(board, "J4.MP1") == "?");
  const Part& part = partCalled(board, "J4");
  CHECK(part.side == fromUser(Side::bottom));
  CHECK(part.position == fromUser(placed.middle));
  CHECK(part.body == guessed(placed.body));
  CHECK(part.fitted == fromUser(true));
  // Once more it is refused: it has places.
  const Lookup now(board);
  put = putArray(now, {"J4", PartKind::connector, {}}, array, placed, Side::top);
  REQUIRE_FALSE(put);
  CHECK(put.error().text() ==
        "is on this board already (found J4; expected a reference that no part has yet)");
}

TEST_CASE("pins of other names get places in their order, another number of pins is refused") {
  DrawnBoard drawn;
  const PartId u7 = drawn.part("U7", Side::top, {});
  for (const char* name : {"VIN", "GND", "EN", "OUT"})
    drawn.pin(u7, name, {});
  const Lookup lookup(drawn.board);
  PinArray array = twoRows(4);
  auto put =
      putArray(lookup, {"U7", PartKind::chip, {}}, array, placedAt(array, mm(0, 0), mm(1, -2)), Side::top);
  REQUIRE(put);
  const Board board = after(drawn.board, put->edit);
  CHECK(placeOf(board, "U7.VIN") == mm(0, 0));
  CHECK(placeOf(board, "U7.GND") == mm(0, -2));
  CHECK(placeOf(board, "U7.OUT") == mm(1, -2));
  array = twoRows(6);
  put = putArray(lookup, {"U7", PartKind::chip, {}}, array, placedAt(array, mm(0, 0), mm(1, -2)), Side::top);
  REQUIRE_FALSE(put);
  CHECK(put.error().text() == "U7 has another number of pins (found 6; expected 4)");
}

TEST_CASE("a part of two terminals lies between its ends, at the distance of its size") {
  DrawnBoard drawn;
  const ChipSize size = *chipSizes().find("0603"); // 1.6 x 0.8 mm, pads 1.6 mm apart
  const auto put = putTwoTerminal(drawn.board, {"R28", PartKind::resistor, "4k7"}, size, false,
                                  {mm(10, 5), mm(12, 5), Side::bottom});
  REQUIRE(put);
  const Board board = after(drawn.board, put->edit);
  const Part& part = partCalled(board, "R28");
  CHECK(part.kind == fromUser(PartKind::resistor));
  CHECK(part.value == fromUser(std::string("4k7")));
  CHECK(part.package == fromUser(std::string("0603")));
  CHECK(part.side == fromUser(Side::bottom));
  CHECK(part.position == fromUser(mm(11, 5)));
  CHECK(part.body == fromUser(box(10.2, 4.6, 11.8, 5.4)));
  CHECK(placeOf(board, "R28.1") == mm(10.2, 5));
  CHECK(placeOf(board, "R28.2") == mm(11.8, 5));
  REQUIRE(board.pads.size() == 2);
  for (const Pad& pad : board.pads) {
    CHECK(pad.shape == guessed(PadShape::rectangle));
    CHECK(pad.size == guessed(size.pad));
    CHECK(pad.rotation == Degrees(0));
    CHECK(pad.reach == fromUser(PadReach::bottom));
  }
}

TEST_CASE("a guessed size is marked so, and a slip of the hand is straightened up to six degrees") {
  DrawnBoard drawn;
  const ChipSize size = *chipSizes().find("0402"); // pads 1 mm apart
  const auto placeOfTwo = [&](Point second) {
    const auto put = putTwoTerminal(drawn.board, {"C1", PartKind::capacitor, {}}, size, true,
                                    {mm(0, 0), second, Side::top});
    REQUIRE(put);
    const Board board = after(drawn.board, put->edit);
    CHECK(partCalled(board, "C1").package == guessed(std::string("0402")));
    CHECK(partCalled(board, "C1").body.origin == Origin::guessed);
    return std::pair(placeOf(board, "C1.2") - placeOf(board, "C1.1"), board.pads[0].rotation.value);
  };
  CHECK(placeOfTwo(mm(1, 0.104)) == std::pair(mm(1, 0), 0.0)); // 5.94°
  const auto slanted = placeOfTwo(mm(1, 0.106));               // 6.05°
  CHECK(slanted.second == Approx(6.0507).margin(1e-3));
  CHECK(slanted.first.y.mm() == Approx(0.1054).margin(1e-4));
  CHECK(placeOfTwo(mm(0.05, 1)) == std::pair(mm(0, 1), 90.0));
  CHECK(placeOfTwo(mm(-1, 0.05)) == std::pair(mm(-1, 0), 0.0));
  CHECK(placeOfTwo(mm(0.05, -1)) == std::pair(mm(0, -1), 90.0));
  CHECK(placeOfTwo(mm(1, -0.05)) == std::pair(mm(1, 0), 0.0)); // nearly once round
  CHECK(placeOfTwo(mm(-1, -1)).second == Approx(45.0));
}

TEST_CASE("two ends on one place, and a reference that is there, are refused") {
  DrawnBoard drawn;
  drawn.part("R1", Side::top, {});
  const ChipSize size = *chipSizes().find("0402");
  const auto put = [&](const char* reference, Point second) {
    return putTwoTerminal(drawn.board, {reference, PartKind::resistor, {}}, size, true,
                          {mm(1, 1), second, Side::top});
  };
  CHECK(put("R2", mm(1.0101, 1)));
  REQUIRE_FALSE(put("R2", mm(1.0099, 1)));
  CHECK(put("R2", mm(1.0099, 1)).error().text() == "both clicks are at the same place");
  REQUIRE_FALSE(put("R1", mm(2, 1)));
  CHECK(put("R1", mm(2, 1)).error().text() ==
        "is on this board already (found R1; expected a reference that no part has yet)");
}

TEST_CASE("a shield lies over the parts within, on its side") {
  DrawnBoard drawn;
  const PartId within = drawn.part("U1", Side::top, {}, {.position = fromUser(mm(5, 5))});
  const PartId byPad = drawn.part("U2", Side::top, {});
  drawn.pad(drawn.pin(byPad, "1", {}), mm(9, 9), PadReach::top, 1);
  const PartId below = drawn.part("U3", Side::bottom, {}, {.position = fromUser(mm(5, 5))});
  const PartId outside = drawn.part("U4", Side::top, {}, {.position = fromUser(mm(11, 5))});
  const PartId nowhere = drawn.part("U5", Side::top, {});
  const auto put = putShield(drawn.board, "SH1", {box(0, 0, 10, 10), Length(1'800'000), Side::top});
  REQUIRE(put);
  const Board board = after(drawn.board, put->edit);
  const Part& shield = partCalled(board, "SH1");
  CHECK(shield.id == put->part);
  CHECK(shield.kind == fromUser(PartKind::shield));
  CHECK(shield.body == fromUser(box(0, 0, 10, 10)));
  CHECK(shield.position == fromUser(mm(5, 5)));
  CHECK(shield.height == fromUser(Length(1'800'000)));
  CHECK_FALSE(shield.lid.known());
  CHECK(board.parts.find(within)->lid == guessed(put->part));
  CHECK(board.parts.find(byPad)->lid == guessed(put->part));
  for (const PartId free : {below, outside, nowhere})
    CHECK_FALSE(board.parts.find(free)->lid.known());
  // Taken off, it lies over nothing.
  const Board again = after(board, removePart(Lookup(board), put->part));
  CHECK(again == drawn.board);
  CHECK_FALSE(putShield(drawn.board, "SH1", {{mm(0, 0), mm(1, 0)}, {}, Side::top}));
  const auto flat = putShield(drawn.board, "SH1", {box(0, 0, 10, 10), {}, Side::bottom});
  REQUIRE(flat);
  const Board under = after(drawn.board, flat->edit);
  CHECK_FALSE(partCalled(under, "SH1").height.known());
  CHECK(under.parts.find(below)->lid.known());
  CHECK_FALSE(under.parts.find(within)->lid.known());
}

TEST_CASE("any other part is drawn by its outline") {
  DrawnBoard drawn;
  const Ring triangle{mm(0, 0), mm(4, 0), mm(0, 2)};
  const auto put = putBody(drawn.board, {"BT1", PartKind::battery, "CR2032"}, triangle, Side::bottom);
  REQUIRE(put);
  const Board board = after(drawn.board, put->edit);
  const Part& part = partCalled(board, "BT1");
  CHECK(part.kind == fromUser(PartKind::battery));
  CHECK(part.value == fromUser(std::string("CR2032")));
  CHECK(part.body == fromUser(triangle));
  CHECK(part.position == fromUser(mm(2, 1)));
  CHECK(part.side == fromUser(Side::bottom));
  CHECK_FALSE(putBody(board, {"BT1", PartKind::battery, {}}, triangle, Side::top));
  const auto few = putBody(board, {"BT2", PartKind::battery, {}}, {mm(0, 0), mm(4, 0)}, Side::top);
  REQUIRE_FALSE(few);
  CHECK(few.error().text() == "an outline has three corners or more");
}

TEST_CASE("a test pad is a free point with a round pad") {
  DrawnBoard drawn;
  const auto edit = putTestPad(Lookup(drawn.board), "TP3", mm(1, 2), Length(800'000), Side::bottom);
  REQUIRE(edit);
  const Board board = after(drawn.board, *edit);
  CHECK(board.parts.empty());
  CHECK_FALSE(pinCalled(board, "TP3").part);
  CHECK(placeOf(board, "TP3") == mm(1, 2));
  CHECK(board.pads[0].shape == guessed(PadShape::circle));
  CHECK(board.pads[0].size == guessed(Size{Length(800'000), Length(800'000)}));
  CHECK(board.pads[0].reach == fromUser(PadReach::bottom));
  CHECK_FALSE(putTestPad(Lookup(board), "TP3", mm(5, 5), Length(800'000), Side::top));
}

TEST_CASE("a part goes with its pins, pads and zones") {
  DrawnBoard drawn;
  const NetId net = drawn.net("A");
  const PartId stays = drawn.part("U1", Side::top, box(0, 0, 1, 1));
  const PinId pin = drawn.pin(stays, "1", net);
  drawn.pad(pin, mm(0, 0), PadReach::top, 1);
  const Board before = drawn.board;
  const PartId goes = drawn.part("U2", Side::top, box(0, 0, 1, 1));
  const PinId going = drawn.pin(goes, "1", net);
  drawn.pad(going, mm(5, 0), PadReach::top, 1);
  drawn.pad(going, mm(6, 0), PadReach::top, 1);
  drawn.pin(goes, "2", {});
  drawn.zone(ZoneKind::tallPart, "U2", box(0, 0, 1, 1), {.part = goes});
  const Edit edit = removePart(Lookup(drawn.board), goes);
  CHECK(edit.changes.size() == 6);
  CHECK(after(drawn.board, edit) == before);
  CHECK(removePart(Lookup(before), goes).changes.empty());
  CHECK(removePart(Lookup(before), PartId()).changes.empty());
}

TEST_CASE("a part moves with its pads, body and zones, and tracks stay") {
  DrawnBoard drawn;
  const PartId part = drawn.part("U2", Side::top, box(0, 0, 1, 1), {.position = guessed(mm(0.5, 0.5))});
  const PinId pin = drawn.pin(part, "1", {});
  drawn.pad(pin, mm(0, 0), PadReach::top, 1);
  Pad nowhere;
  nowhere.pin = pin;
  drawn.put(drawn.board.pads, nowhere);
  Zone zone{.part = part};
  zone.polygon.holes = {box(0.2, 0.2, 0.4, 0.4)};
  const ZoneId own = drawn.zone(ZoneKind::tallPart, "U2", box(0, 0, 1, 1), zone);
  const ZoneId other = drawn.zone(ZoneKind::tallPart, "U3", box(0, 0, 1, 1));
  drawn.track(mm(0, 0), mm(3, 0), drawn.layer("top"), {}, 0.2);
  const Board board = after(drawn.board, movePart(Lookup(drawn.board), part, mm(2, -1)));
  CHECK(board.parts.find(part)->position == guessed(mm(2.5, -0.5)));
  CHECK(board.parts.find(part)->body == fromUser(box(2, -1, 3, 0)));
  CHECK(board.pads[0].position == fromUser(mm(2, -1)));
  CHECK_FALSE(board.pads[1].position.known());
  CHECK(board.zones.find(own)->polygon.outer == box(2, -1, 3, 0));
  CHECK(board.zones.find(own)->polygon.holes.front() == box(2.2, -0.8, 2.4, -0.6));
  CHECK(board.zones.find(other)->polygon.outer == box(0, 0, 1, 1));
  CHECK(board.tracks == drawn.board.tracks);
  CHECK(movePart(Lookup(board), PartId(999), mm(1, 1)).changes.empty());
}

TEST_CASE("parts are missing or fitted, pads torn off or not") {
  DrawnBoard drawn;
  const PartId part = drawn.part("U2", Side::top, {});
  const PinId pin = drawn.pin(part, "1", {});
  drawn.pad(pin, mm(0, 0), PadReach::top, 1);
  drawn.pad(pin, mm(2, 0), PadReach::top, 1);
  const PinId other = drawn.pin(part, "2", {});
  drawn.pad(other, mm(4, 0), PadReach::top, 1);
  Board board = after(drawn.board, setFitted(drawn.board, part, false));
  CHECK(board.parts.find(part)->fitted == fromUser(false));
  board = after(board, setFitted(board, part, true));
  CHECK(board.parts.find(part)->fitted == fromUser(true));
  CHECK(setFitted(board, PartId(999), true).changes.empty());
  board = after(board, setGone(Lookup(board), pin, true));
  CHECK(board.pads[0].gone == fromUser(true));
  CHECK(board.pads[1].gone == fromUser(true));
  CHECK_FALSE(board.pads[2].gone.known());
  board = after(board, setGone(Lookup(board), pin, false));
  CHECK(board.pads[0].gone == fromUser(false));
  CHECK(setGone(Lookup(board), PinId(999), true).changes.empty());
}
