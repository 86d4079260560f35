// Nets by clicks and keys.
#include "rows.h"

using namespace netmend;
using namespace netmend::test;

using What = SketchDue::What;

TEST_CASE("pins that are clicked one after the other are of one net, which is then named") {
  Rows hand;
  CHECK(hand.click(0, 0).act == SketchAct::nothing);
  CHECK(hand.sketch.netInHand());
  CHECK_FALSE(hand.sketch.net(hand.board));
  CHECK(hand.due() == SketchDue{What::joinPin, {}, "J1.1", 1});
  CHECK(hand.click(20, -1).act == SketchAct::joined);
  CHECK(hand.click(20, -2).act == SketchAct::joined);
  CHECK(hand.click(0, 0).act == SketchAct::nothing); // it is of the net already
  CHECK(labels(hand.board, hand.sketch.group()) == Labels{"J1.1", "J2.2", "J2.3"});
  CHECK(hand.due() == SketchDue{What::joinPin, {}, "J2.3", 3});
  CHECK(hand.sketch.from() == mm(0, 0)); // from where it was clicked last
  const NetId net = hand.sketch.net(hand.board);
  CHECK(pinCalled(hand.board, "J2.3").net == fromUser(net));
  CHECK(hand.board.nets.size() == 1);
  CHECK(hand.type("KEY_COL3").act == SketchAct::named);
  CHECK(netOfPin(hand.board, "J2.2") == "KEY_COL3");
  CHECK_FALSE(hand.sketch.netInHand()); // it is done
  CHECK(hand.sketch.line() == TypedLine{});
  CHECK(hand.board.tracks.empty());
}

TEST_CASE("refusing with nothing clicked lets go of net and part, what was typed stays") {
  Rows hand;
  hand.type("R 10k");
  hand.click(0, 0);
  REQUIRE(hand.sketch.netInHand());
  hand.key(SketchKey::refuse);
  CHECK_FALSE(hand.sketch.netInHand());
  CHECK(hand.due() == SketchDue{What::firstEnd, "R1", {}, 1});
  hand.click(2, -1);
  REQUIRE(hand.sketch.part());
  hand.key(SketchKey::refuse);
  CHECK_FALSE(hand.sketch.part());
  hand.click(2, -1);
  hand.key(SketchKey::next);
  CHECK_FALSE(hand.sketch.part());
}

TEST_CASE("a name is typed first and clicked onto a pin") {
  Rows hand;
  hand.type("net GND");
  CHECK(hand.click(0, 0).act == SketchAct::named);
  CHECK(netOfPin(hand.board, "J1.1") == "GND");
  CHECK(hand.sketch.line() == TypedLine{});
  hand.click(20, 0);
  CHECK(netOfPin(hand.board, "J2.1") == "GND");
  hand.key(SketchKey::next);
  CHECK_FALSE(hand.sketch.netInHand());
  hand.type("net GND");
  hand.click(0, -1);
  CHECK(pinCalled(hand.board, "J1.2").net.value == pinCalled(hand.board, "J1.1").net.value);
}

TEST_CASE("a single pin in hand is named, and a net's role is said") {
  Rows hand;
  hand.click(0, 0);
  CHECK(hand.type("supply").act == SketchAct::nothing); // it has no net yet
  CHECK(hand.sketch.netInHand());
  CHECK(hand.type("RAIL").act == SketchAct::named);
  CHECK(netOfPin(hand.board, "J1.1") == "RAIL");
  hand.click(0, 0);
  CHECK(hand.due().name == "RAIL");
  CHECK(hand.type("supply").act == SketchAct::roleSet);
  CHECK(hand.board.nets[0].role == fromUser(NetRole::supply));
  CHECK_FALSE(hand.sketch.netInHand());
}

TEST_CASE("nets that become one are told, and ground that meets a supply") {
  Rows hand;
  for (const auto& [y, name] : {std::pair{0, "GND"}, {-1, "VCC"}, {-2, "OUT"}}) {
    hand.type(std::string("net ") + name);
    hand.click(0, y);
    hand.key(SketchKey::next);
  }
  hand.click(0, -2);
  SketchAnswer joined = hand.click(0, 0);
  CHECK(joined.swallowed == std::vector<std::string>{"GND"});
  CHECK_FALSE(joined.groundToSupply);
  hand.undo();
  hand.key(SketchKey::next);
  hand.click(0, 0);
  joined = hand.click(0, -1);
  CHECK(joined.swallowed == std::vector<std::string>{"VCC"});
  CHECK(joined.groundToSupply);
}

TEST_CASE("and so on: a series of nets is proposed after two, and taken") {
  Hand hand;
  hand.row("J1", 6, 0);
  hand.row("J2", 6, 20);
  CHECK(hand.key(SketchKey::series).act == SketchAct::nothing);
  CHECK_FALSE(hand.sketch.proposes());
  hand.clickPin("J1.1");
  hand.clickPin("J2.6");
  hand.key(SketchKey::next);
  hand.clickPin("J1.2");
  hand.clickPin("J2.5");
  hand.key(SketchKey::series);
  CHECK(hand.sketch.proposes());
  REQUIRE(hand.sketch.series().size() == 4);
  CHECK(labels(hand.board, hand.sketch.series()[3]) == Labels{"J1.6", "J2.1"});
  CHECK(hand.due() == SketchDue{What::takeSeries, {}, {}, 4});
  hand.key(SketchKey::refuse);
  CHECK_FALSE(hand.sketch.proposes());
  hand.key(SketchKey::series);
  const SketchAnswer taken = hand.key(SketchKey::take);
  CHECK(taken.act == SketchAct::seriesJoined);
  CHECK(hand.board.nets.size() == 6);
  CHECK(pinCalled(hand.board, "J1.6").net == pinCalled(hand.board, "J2.1").net);
  CHECK_FALSE(hand.sketch.proposes());
  CHECK(hand.key(SketchKey::take).act == SketchAct::nothing);
  hand.undo(); // in one
  CHECK(hand.board.nets.size() == 2);
  // A click instead of taking it refuses it.
  hand.clickPin("J1.1");
  hand.clickPin("J2.6");
  hand.key(SketchKey::next);
  hand.clickPin("J1.2");
  hand.clickPin("J2.5");
  hand.key(SketchKey::series);
  CHECK(hand.sketch.proposes());
  hand.click(50, 50);
  CHECK_FALSE(hand.sketch.proposes());
}

TEST_CASE("the meter's beep joins the ringed pin as measured, from the nearest on") {
  Rows hand;
  CHECK(hand.ringed().empty());
  CHECK(hand.beep().act == SketchAct::nothing);
  hand.clickPin("J1.2");
  CHECK(hand.ringed() == "J1.1"); // as near as J1.3, and before it
  hand.key(SketchKey::skip);
  CHECK(hand.ringed() == "J1.3");
  CHECK(hand.beep().act == SketchAct::joined);
  CHECK(pinCalled(hand.board, "J1.3").net.origin == Origin::measured);
  CHECK(pinCalled(hand.board, "J1.2").net == pinCalled(hand.board, "J1.3").net);
  CHECK(labels(hand.board, hand.sketch.group()) == Labels{"J1.2", "J1.3"});
  CHECK(hand.sketch.from() == mm(0, -1)); // the held lead's pin
  CHECK(hand.ringed() == "J1.4");         // on from the pin that was touched
  hand.key(SketchKey::skip);
  CHECK(hand.ringed() == "J2.3");
  hand.beep();
  CHECK(hand.ringed() == "J2.2");
  for (int i = 0; i < 3; ++i)
    hand.key(SketchKey::skip);
  CHECK(hand.ringed().empty());
  CHECK(hand.beep().act == SketchAct::nothing);
  // What is skipped is asked again of the next net; what has a net is not.
  hand.key(SketchKey::next);
  hand.clickPin("J1.1");
  CHECK(hand.ringed() == "J1.4");
}

TEST_CASE("a pad in hand is torn off and back") {
  Rows hand;
  hand.clickPin("J1.1");
  hand.clickPin("J1.2");
  CHECK(hand.key(SketchKey::gone).act == SketchAct::goneSet);
  const Lookup lookup(hand.board);
  const auto gone = [&](const char* label) {
    const Lookup now(hand.board);
    return hand.board.pads.find(now.padsOf(pinCalled(hand.board, label).id).front())->gone;
  };
  CHECK(gone("J1.2") == fromUser(true));
  CHECK_FALSE(gone("J1.1").known());
  hand.key(SketchKey::gone);
  CHECK(gone("J1.2") == fromUser(false));
  // A pin that is of no net is separated from nothing.
  hand.key(SketchKey::next);
  hand.clickPin("J1.3");
  CHECK(hand.key(SketchKey::remove).act == SketchAct::nothing);
}

TEST_CASE("the last pin is separated, and copper goes on from the one before") {
  Rows hand;
  hand.clickPin("J1.1");
  hand.clickPin("J1.2");
  hand.clickPin("J1.3");
  CHECK(hand.key(SketchKey::remove).act == SketchAct::separated);
  CHECK_FALSE(pinCalled(hand.board, "J1.3").net.known());
  CHECK(labels(hand.board, hand.sketch.group()) == Labels{"J1.1", "J1.2"});
  CHECK(hand.sketch.from() == mm(0, -1));
  hand.key(SketchKey::remove);
  CHECK(hand.key(SketchKey::remove).act == SketchAct::separated);
  CHECK(hand.board.nets.empty());
  CHECK_FALSE(hand.sketch.netInHand());
  CHECK_FALSE(hand.sketch.from());
}

TEST_CASE("pins that were undone are let go of") {
  Hand hand;
  hand.row("J1", 3, 0);
  hand.clickPin("J1.1");
  hand.clickPin("J1.2");
  hand.undo();
  CHECK_FALSE(hand.sketch.net(hand.board));
  CHECK(hand.sketch.group().size() == 2);
  hand.undo();
  CHECK(hand.board == Board{});
  CHECK(hand.ringed().empty());
  CHECK(hand.click(5, 5).act == SketchAct::nothing);
  CHECK_FALSE(hand.sketch.netInHand());
  CHECK(hand.due().what == What::type);
}

TEST_CASE("a stroke lets go of the part in hand") {
  Rows hand;
  hand.click(2, -1);
  REQUIRE(hand.sketch.part());
  hand.stroke({mm(0, 0), mm(-10, 0)});
  CHECK_FALSE(hand.sketch.part());
  hand.key(SketchKey::remove, -5, 0);
  CHECK(hand.board.parts.size() == 2);
}
