// Parts, outlines and copies by typing and clicks.
#include "hand.h"

using namespace netmend;
using namespace netmend::test;

using What = SketchDue::What;

TEST_CASE("a connector is typed, clicked at two pins, looked at and taken") {
  Hand hand;
  CHECK(hand.due() == SketchDue{What::type, {}, {}, 0});
  hand.type("J4 20 2 rows pitch 0.5");
  CHECK(hand.due() == SketchDue{What::firstPin, "J4", "1", 20});
  CHECK_FALSE(hand.sketch.proposes());
  CHECK(hand.click(0, 0).act == SketchAct::nothing);
  CHECK(hand.due() == SketchDue{What::oppositePin, "J4", "20", 20});
  hand.click(4.5, -1.2);
  CHECK(hand.due() == SketchDue{What::takeArray, "J4", {}, 20});
  REQUIRE(hand.sketch.proposes());
  CHECK(hand.sketch.clicks() == std::vector{mm(0, 0), mm(4.5, -1.2)});
  CHECK(hand.sketch.proposal()->pads[2].at == mm(0.5, 0));
  hand.key(SketchKey::otherWay);
  CHECK(hand.sketch.proposal()->pads[1].at == mm(4.5, 0));
  hand.key(SketchKey::otherWay);
  CHECK(hand.sketch.proposal()->pads[1].at == mm(0, -1.2));
  CHECK(hand.board.parts.empty());
  const SketchAnswer taken = hand.key(SketchKey::take);
  CHECK(taken.act == SketchAct::partPut);
  CHECK(hand.sketch.part() == partCalled(hand.board, "J4").id);
  CHECK(placeOf(hand.board, "J4.20") == mm(4.5, -1.2));
  CHECK_FALSE(hand.sketch.proposes());
  CHECK(hand.sketch.clicks().empty());
  CHECK(hand.sketch.line() == TypedLine{});
  CHECK(hand.due() == SketchDue{What::part, "J4", {}, 0});
  CHECK(hand.key(SketchKey::take).act == SketchAct::nothing);
}

TEST_CASE("a third click turns the rows, and is clicked again") {
  Hand hand;
  hand.type("J4 6 2 rows");
  hand.click(0, 0, Side::bottom);
  hand.click(2, -1, Side::bottom);
  hand.click(2.2, 0.3, Side::bottom);
  REQUIRE(hand.sketch.clicks().size() == 3);
  CHECK(distance(hand.sketch.proposal()->pads[4].at, mm(2.2, 0.3)).nm <= 1);
  hand.click(2.2, 0.1, Side::bottom);
  CHECK(hand.sketch.clicks() == std::vector{mm(0, 0), mm(2, -1), mm(2.2, 0.1)});
  CHECK(distance(hand.sketch.proposal()->pads[4].at, mm(2.2, 0.1)).nm <= 1);
  // On the first pin it is refused, and what was proposed stays without it.
  CHECK(hand.refusal(0, 0, Side::bottom) == "both clicks are at the same place");
  CHECK(hand.sketch.clicks().size() == 2);
  CHECK(hand.sketch.proposes());
  hand.key(SketchKey::take);
  CHECK(partCalled(hand.board, "J4").side == fromUser(Side::bottom));
}

TEST_CASE("what is proposed is refused, then what was typed stays for other clicks") {
  Hand hand;
  hand.type("J4 4 pitch 1");
  hand.click(0, 0);
  CHECK(hand.refusal(0.005, 0) == "both clicks are at the same place");
  CHECK(hand.sketch.clicks().size() == 1);
  hand.click(0, -3);
  hand.key(SketchKey::refuse);
  CHECK_FALSE(hand.sketch.proposes());
  CHECK(hand.due() == SketchDue{What::firstPin, "J4", "1", 4});
  hand.click(10, 0);
  hand.click(10, -3);
  hand.key(SketchKey::take);
  CHECK(placeOf(hand.board, "J4.1") == mm(10, 0));
  // The same name again is refused where it is taken, and the proposal stays.
  hand.type("J4 4 pitch 1");
  hand.click(20, 0);
  hand.click(20, -3);
  const auto again = hand.sketch.key(Lookup(hand.board), SketchKey::take, {});
  REQUIRE_FALSE(again);
  CHECK(hand.sketch.proposes());
}

TEST_CASE("a new line drops what was clicked for the line before") {
  Hand hand;
  hand.row("J1", 2, 0);
  for (const char* line : {"track 0.3", "ground", "NAME", "net A", "not understood", ""}) {
    INFO(line);
    hand.type("J4 4 2 rows");
    hand.click(20, 0);
    hand.click(21, -1);
    REQUIRE(hand.sketch.proposes());
    hand.stroke({mm(0, 0), mm(5, 0)}); // a net in hand beside it
    hand.type(line);
    CHECK_FALSE(hand.sketch.proposes());
    CHECK(hand.sketch.clicks().empty());
    CHECK(hand.key(SketchKey::take).act == SketchAct::nothing);
    hand.key(SketchKey::otherWay);
    hand.sketch.letGo();
  }
  CHECK(hand.board.parts.size() == 1);
}

TEST_CASE("a part of one pin needs one click, and another moves nothing") {
  Hand hand;
  hand.type("J9 1");
  hand.click(3, 4);
  REQUIRE(hand.sketch.proposes());
  CHECK(hand.sketch.proposal()->pads.front().at == mm(3, 4));
  hand.click(8, 8);
  hand.click(9, 8);
  CHECK(hand.sketch.clicks().size() == 3);
  hand.key(SketchKey::take);
  CHECK(placeOf(hand.board, "J9.1") == mm(3, 4));
}

TEST_CASE("the place of a left-out first pin is asked for by its name") {
  Hand hand;
  hand.type("J4 10 2 rows ohne 1");
  CHECK(hand.due().pin == "1");
  hand.type("J4 10 2 rows ohne 10");
  hand.click(0, 0);
  CHECK(hand.due().pin == "10");
}

TEST_CASE("a typed list of pins is given its places") {
  Hand hand;
  Edit list;
  Part part;
  part.id = hand.board.newId<PartId>();
  part.reference = "J4";
  list.put(part);
  for (const char* name : {"1", "2", "3"}) {
    Pin pin;
    pin.id = hand.board.newId<PinId>();
    pin.part = part.id;
    pin.name = name;
    list.put(pin);
  }
  REQUIRE(apply(hand.board, list));
  hand.type("J4 3");
  hand.click(0, 0);
  hand.click(0, -4);
  CHECK(hand.key(SketchKey::take).act == SketchAct::partPut);
  CHECK(hand.board.parts.size() == 1);
  CHECK(hand.sketch.part() == part.id);
  CHECK(placeOf(hand.board, "J4.2") == mm(0, -2));
}

TEST_CASE("parts of two terminals are clicked one after the other and count up") {
  Hand hand;
  hand.type("R28 4k7 0402");
  CHECK(hand.due() == SketchDue{What::firstEnd, "R28", {}, 1});
  hand.click(0, 0);
  CHECK(hand.due() == SketchDue{What::secondEnd, "R28", {}, 1});
  SketchAnswer put = hand.click(1, 0);
  CHECK(put.act == SketchAct::partPut);
  CHECK(hand.sketch.part() == partCalled(hand.board, "R28").id);
  CHECK(partCalled(hand.board, "R28").package == fromUser(std::string("0402")));
  CHECK(hand.due() == SketchDue{What::firstEnd, "R29", {}, 1});
  hand.click(5, 0, Side::bottom);
  put = hand.click(5, 1, Side::bottom);
  CHECK(partCalled(hand.board, "R29").side == fromUser(Side::bottom));
  CHECK(placeOf(hand.board, "R29.2") == mm(5, 1));
  // Half of it is refused; then it begins anew.
  hand.click(8, 0);
  hand.key(SketchKey::refuse);
  CHECK(hand.due() == SketchDue{What::firstEnd, "R30", {}, 1});
  hand.click(9, 0);
  CHECK(hand.refusal(9, 0.005) == "both clicks are at the same place");
  // Without a size it is guessed from the ends.
  hand.type("C 100n");
  hand.click(20, 0);
  hand.click(21.6, 0);
  CHECK(partCalled(hand.board, "C1").package == guessed(std::string("0603")));
  CHECK(partCalled(hand.board, "C1").value == fromUser(std::string("100n")));
  hand.click(30, 0);
  hand.click(31, 0);
  CHECK(partCalled(hand.board, "C2").package == guessed(std::string("0402")));
}

TEST_CASE("a row of eight parts takes three clicks") {
  Hand hand;
  hand.type("R 10k 0402 x8");
  CHECK(hand.due() == SketchDue{What::firstEnd, "R1", {}, 8});
  hand.click(0, 0);
  hand.click(1, 0);
  CHECK(hand.due() == SketchDue{What::lastFirstEnd, "R1", {}, 8});
  CHECK(hand.board.parts.empty());
  const SketchAnswer put = hand.click(0.7, -7);
  CHECK(put.act == SketchAct::partsPut);
  REQUIRE(hand.board.parts.size() == 8);
  for (int i = 1; i <= 8; ++i) {
    const std::string pin = "R" + std::to_string(i) + ".1";
    CHECK(placeOf(hand.board, pin) == mm(0.1 * (i - 1), -1.0 * (i - 1)));
  }
  CHECK(hand.sketch.part() == partCalled(hand.board, "R8").id);
  CHECK(hand.due() == SketchDue{What::firstEnd, "R9", {}, 8});
  hand.undo(); // one thing that a person did
  CHECK(hand.board.parts.empty());
  CHECK(hand.due() == SketchDue{What::firstEnd, "R1", {}, 8});
}

TEST_CASE("numbers that were asked for go on, and jump over those in use") {
  Hand hand;
  hand.type("R3 0402");
  hand.click(0, 0);
  hand.click(1, 0);
  hand.type("R2 0402 x3");
  hand.click(0, 5);
  hand.click(1, 5);
  hand.click(0, 9);
  CHECK(placeOf(hand.board, "R2.1") == mm(0, 5));
  CHECK(placeOf(hand.board, "R4.1") == mm(0, 7));
  CHECK(placeOf(hand.board, "R5.1") == mm(0, 9));
}

TEST_CASE("parts are drawn over areas and zones, not over tracks, pins and other parts") {
  Hand hand;
  hand.row("J1", 2, 0);
  hand.type("area");
  for (const auto& [x, y] : {std::pair{10, 10}, {30, 10}, {30, 30}, {10, 30}, {10, 10}})
    hand.click(x, y);
  hand.type("zone heat");
  for (const auto& [x, y] : {std::pair{10, 10}, {30, 10}, {30, 30}, {10, 30}, {10, 10}})
    hand.click(x, y);
  hand.stroke({mm(0, 0), mm(-10, 0)});
  hand.key(SketchKey::next);
  hand.type("R 0402");
  hand.click(-5, 0.1);
  CHECK(hand.sketch.clicks().empty()); // the track
  CHECK(hand.sketch.netInHand());
  hand.key(SketchKey::next);
  hand.click(0, -1);
  CHECK(hand.sketch.clicks().empty()); // the pin
  hand.key(SketchKey::next);
  hand.click(2, -0.5);
  CHECK(hand.sketch.clicks().empty()); // the connector's body
  CHECK(hand.sketch.part() == partCalled(hand.board, "J1").id);
  hand.click(20, 20);
  CHECK(hand.sketch.clicks().size() == 1);
  CHECK(hand.click(21, 20).act == SketchAct::partPut);
}

TEST_CASE("a shield is drawn round parts, which lie under it and can be drawn under it") {
  Hand hand;
  hand.row("J1", 2, 5, 5);
  hand.row("J2", 2, 50, 5);
  hand.type("SH1 lid 1.8");
  CHECK(hand.due() == SketchDue{What::corner, {}, {}, 0});
  hand.click(0, 0);
  hand.click(20, 0);
  CHECK(hand.due() == SketchDue{What::corner, {}, {}, 2});
  hand.click(20, 20);
  CHECK(hand.due() == SketchDue{What::closeCorner, {}, {}, 3});
  hand.click(0, 20);
  CHECK(hand.board.parts.size() == 2);
  CHECK(hand.click(0.15, 0.1).act == SketchAct::partPut); // the first one again
  const Part& shield = partCalled(hand.board, "SH1");
  CHECK(shield.body == fromUser(box(0, 0, 20, 20)));
  CHECK(shield.height == fromUser(Length(1'800'000)));
  CHECK(partCalled(hand.board, "J1").lid == guessed(shield.id));
  CHECK_FALSE(partCalled(hand.board, "J2").lid.known());
  CHECK(hand.sketch.part() == shield.id);
  CHECK(hand.due() == SketchDue{What::part, "SH1", {}, 0});
  hand.type("R 0402");
  hand.click(15, 15);
  CHECK(hand.sketch.clicks().size() == 1);
}

TEST_CASE("an outline closes within twice the reach of its first corner, with three corners or more") {
  Hand hand;
  hand.type("BT1");
  hand.click(0, 0);
  hand.click(5, 0);
  hand.click(0, 0.1); // a third corner, however near
  CHECK(hand.sketch.clicks().size() == 3);
  hand.click(0.201, 0);
  CHECK(hand.sketch.clicks().size() == 4);
  CHECK(hand.click(0.2, 0).act == SketchAct::partPut);
  CHECK(partCalled(hand.board, "BT1").body.value.size() == 4);
}

TEST_CASE("test pads count up over names that are there") {
  Hand hand;
  hand.type("TP 0.8");
  CHECK(hand.due() == SketchDue{What::testPad, "TP", {}, 0});
  CHECK(hand.click(0, 0).act == SketchAct::testPadPut);
  hand.click(5, 0, Side::bottom);
  CHECK(placeOf(hand.board, "TP1") == mm(0, 0));
  CHECK(placeOf(hand.board, "TP2") == mm(5, 0));
  CHECK(hand.board.pads[1].reach == fromUser(PadReach::bottom));
  CHECK(hand.board.pads[1].size == guessed(Size{Length(800'000), Length(800'000)}));
  hand.type("TP2");
  hand.click(9, 0);
  CHECK(placeOf(hand.board, "TP3") == mm(9, 0));
}

TEST_CASE("areas and zones are drawn by their corners, a zone also by a part") {
  Hand hand;
  hand.row("J1", 4, 50);
  hand.type("area");
  hand.click(0, 0, Side::bottom);
  hand.click(4, 0, Side::bottom);
  hand.click(4, 4, Side::bottom);
  CHECK(hand.click(0, 0, Side::bottom).act == SketchAct::areaDrawn);
  REQUIRE(hand.board.areas.size() == 1);
  CHECK(hand.board.areas[0].layer.value == hand.board.info.layerOrder.back());
  CHECK_FALSE(hand.board.areas[0].net.known());
  hand.type("zone screw M2");
  CHECK(hand.due() == SketchDue{What::zonePlace, {}, {}, 0});
  hand.click(10, 0);
  CHECK(hand.due() == SketchDue{What::corner, {}, {}, 1});
  hand.click(14, 0);
  hand.click(14, 4);
  CHECK(hand.click(10, 0).act == SketchAct::zonePut);
  CHECK(hand.board.zones[0].kind == ZoneKind::fastener);
  CHECK(hand.board.zones[0].name == "M2");
  CHECK(hand.click(52, -1.5).act == SketchAct::zonePut); // on the body of J1
  CHECK(hand.board.zones[1].part == partCalled(hand.board, "J1").id);
  CHECK(hand.board.zones[1].kind == ZoneKind::fastener);
  CHECK(hand.sketch.part() == partCalled(hand.board, "J1").id);
}

TEST_CASE("the key for a zone makes one of the part in hand, of its kind") {
  Hand hand;
  CHECK(hand.key(SketchKey::zone).act == SketchAct::nothing);
  hand.row("J1", 4, 0);
  hand.click(2, -1);
  CHECK(hand.key(SketchKey::zone).act == SketchAct::zonePut);
  CHECK(hand.board.zones[0].kind == ZoneKind::connector);
  CHECK(hand.board.zones[0].name == "J1");
  CHECK(hand.board.zones[0].part == hand.sketch.part());
  hand.type("U1 8");
  hand.click(20, 0);
  hand.click(25, -4);
  hand.key(SketchKey::take);
  hand.key(SketchKey::zone);
  CHECK(hand.board.zones[1].kind == ZoneKind::tallPart); // a kind that makes none by itself
}

TEST_CASE("parts are copied to where the first one's first pad is clicked") {
  Hand hand;
  hand.type("R 0402 x2");
  hand.click(0, 0);
  hand.click(1, 0);
  hand.click(0, -2);
  hand.type("copy R1-R2");
  CHECK(hand.due() == SketchDue{What::copyPlace, {}, {}, 0});
  CHECK(hand.click(10, 5).act == SketchAct::partsCopied);
  CHECK(placeOf(hand.board, "R3.1") == mm(10, 5));
  CHECK(placeOf(hand.board, "R4.2") == mm(11, 3));
  hand.click(20, 5);
  CHECK(placeOf(hand.board, "R5.1") == mm(20, 5));
  hand.type("copy R1 mirrored");
  hand.click(30, 5);
  CHECK(placeOf(hand.board, "R7.2") == mm(29, 5));
  // A part without pads goes by its own place.
  hand.type("BT1");
  for (const auto& [x, y] : {std::pair{0, 10}, {4, 10}, {4, 12}, {0, 10}})
    hand.click(x, y);
  hand.type("copy BT1");
  hand.click(40, 40);
  CHECK(partCalled(hand.board, "BT2").position == fromUser(mm(40, 40)));
  // When the part is gone meanwhile, it is refused.
  hand.type("copy R7");
  hand.undo();
  hand.undo();
  hand.undo();
  CHECK(hand.refusal(50, 50) == "has no place that could be copied");
}

TEST_CASE("a part is missing and there again, and removed") {
  Hand hand;
  CHECK(hand.key(SketchKey::gone).act == SketchAct::nothing);
  CHECK(hand.key(SketchKey::remove).act == SketchAct::nothing);
  hand.row("J1", 4, 0);
  hand.click(2, -1);
  CHECK(hand.key(SketchKey::gone).act == SketchAct::goneSet);
  CHECK(partCalled(hand.board, "J1").fitted == fromUser(false));
  hand.key(SketchKey::gone);
  CHECK(partCalled(hand.board, "J1").fitted == fromUser(true));
  CHECK(hand.key(SketchKey::remove).act == SketchAct::removed);
  CHECK(hand.board.parts.empty());
  CHECK(hand.board.pads.empty());
  CHECK_FALSE(hand.sketch.part());
  CHECK(hand.due().what == What::type);
}

TEST_CASE("what was in hand and is undone is let go of") {
  Hand hand;
  hand.type("R 0402");
  hand.click(0, 0);
  hand.click(1, 0);
  REQUIRE(hand.sketch.part());
  hand.undo();
  CHECK(hand.key(SketchKey::zone).act == SketchAct::nothing);
  CHECK_FALSE(hand.sketch.part());
  CHECK(hand.key(SketchKey::gone).act == SketchAct::nothing);
  CHECK(hand.board == Board{});
}
