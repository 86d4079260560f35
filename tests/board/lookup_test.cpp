#include "netmend/board/lookup.h"

#include <catch2/catch.hpp>

using namespace netmend;

namespace {

PartId addPart(Board& board, std::string reference) {
  Part part;
  part.id = board.newId<PartId>();
  part.reference = std::move(reference);
  board.parts.put(part);
  return part.id;
}

NetId addNet(Board& board, std::string name) {
  Net net;
  net.id = board.newId<NetId>();
  net.name = std::move(name);
  board.nets.put(net);
  return net.id;
}

PinId addPin(Board& board, PartId part, std::string name, Fact<NetId> net = {}) {
  Pin pin;
  pin.id = board.newId<PinId>();
  pin.part = part;
  pin.name = std::move(name);
  pin.net = net;
  board.pins.put(pin);
  return pin.id;
}

PadId addPad(Board& board, PinId pin, Fact<Point> position = {}) {
  Pad pad;
  pad.id = board.newId<PadId>();
  pad.pin = pin;
  pad.position = position;
  board.pads.put(pad);
  return pad.id;
}

} // namespace

TEST_CASE("pins are found by part, by net and by label, also where labels repeat") {
  Board board;
  const NetId ground = addNet(board, "GND");
  const NetId otherGround = addNet(board, "GND");
  const PartId j4 = addPart(board, "J4");
  const PartId twin = addPart(board, "J4");
  const PinId a = addPin(board, j4, "11", fromFile(ground));
  const PinId b = addPin(board, twin, "11", fromFile(NetId{}));
  const PinId c = addPin(board, j4, "12");
  const PinId point = addPin(board, {}, "TP7", fromFile(ground));
  const Lookup lookup(board);

  CHECK(lookup.pinsOf(j4) == std::vector{a, c});
  CHECK(lookup.pinsOf(twin) == std::vector{b});
  CHECK(lookup.pinsOf(ground) == std::vector{a, point});
  CHECK(lookup.pinsOf(otherGround).empty());
  CHECK(lookup.netsNamed("GND") == std::vector{ground, otherGround});
  CHECK(lookup.netsNamed("VCC").empty());
  CHECK(lookup.pinsLabelled("J4.11") == std::vector{a, b});
  CHECK(lookup.pinsLabelled("TP7") == std::vector{point});
  CHECK(lookup.pinsLabelled("J4").empty());
  CHECK(lookup.pinsLabelled("").empty());
  CHECK(pinLabel(board, a) == "J4.11");
  CHECK(pinLabel(board, point) == "TP7");
  CHECK(pinLabel(board, PinId(999)).empty());
}

TEST_CASE("a label may have points in the reference and in the pin name") {
  Board board;
  const PinId inner = addPin(board, addPart(board, "SUB.J1"), "2");
  const PinId outer = addPin(board, addPart(board, "SUB"), "J1.2");
  const PinId nameless = addPin(board, addPart(board, ""), "5");
  const Lookup lookup(board);
  CHECK(lookup.pinsLabelled("SUB.J1.2") == std::vector{inner, outer});
  CHECK(lookup.pinsLabelled(".5") == std::vector{nameless});
}

TEST_CASE("an id that is not on the board has nothing") {
  Board board;
  addPin(board, {}, "x");
  const Lookup lookup(board);
  CHECK(lookup.pinsOf(PartId(77)).empty());
  CHECK(lookup.pinsOf(NetId{}).empty());
  CHECK(lookup.padsOf(PinId(77)).empty());
}

TEST_CASE("a pin stands where its first pad with a known position is") {
  Board board;
  const PinId pin = addPin(board, {}, "x");
  const PadId blank = addPad(board, pin);
  const PadId placedPad = addPad(board, pin, guessed(Point{Length(5), Length(7)}));
  addPad(board, pin, fromFile(Point{Length(50), Length(70)}));
  const PinId bare = addPin(board, {}, "y");
  const Lookup lookup(board);
  CHECK(lookup.padsOf(pin).size() == 3);
  CHECK(lookup.padsOf(pin)[0] == blank);
  CHECK(lookup.padsOf(pin)[1] == placedPad);
  CHECK(positionOf(lookup, pin) == guessed(Point{Length(5), Length(7)}));
  CHECK_FALSE(positionOf(lookup, bare).known());
}

TEST_CASE("a net that is not known to be a pin's does not have it") {
  Board board;
  const NetId net = addNet(board, "A");
  addPin(board, {}, "x", Fact<NetId>{net, Origin::unknown});
  const PinId known = addPin(board, {}, "y", guessed(net));
  CHECK(Lookup(board).pinsOf(net) == std::vector{known});
}
