#include "netmend/board/access.h"

#include <catch2/catch.hpp>

using namespace netmend;

namespace {

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

Ring square(double half) {
  return {mm(-half, -half), mm(half, -half), mm(half, half), mm(-half, half)};
}

/// One chip, 10 mm square, on the top, with one pad of 0.5 mm.
struct Scene {
  Board board;
  Part part;
  Pin pin;
  Pad pad;

  Scene() {
    part.id = board.newId<PartId>();
    part.kind = fromFile(PartKind::chip);
    part.side = fromFile(Side::top);
    part.body = fromFile(square(5));
    pin.id = board.newId<PinId>();
    pin.part = part.id;
    pin.name = "1";
    pad.id = board.newId<PadId>();
    pad.pin = pin.id;
    pad.shape = fromFile(PadShape::circle);
    pad.size = fromFile(Size{Length::fromMm(0.5), Length::fromMm(0.5)});
    pad.position = fromFile(mm(7, 0));
    pad.reach = fromFile(PadReach::top);
    pad.maskOpening = fromFile(MaskOpening::top);
  }
  Fact<Access> access() {
    board.parts.put(part);
    board.pins.put(pin);
    board.pads.put(pad);
    return accessOf(board, pad);
  }
};

} // namespace

TEST_CASE("a pad beside its part's body is open, and that is a guess") {
  CHECK(Scene().access() == guessed(Access::open));
}

TEST_CASE("what the board says about access counts before anything derived") {
  Scene scene;
  scene.pad.access = fromUser(Access::underLid);
  CHECK(scene.access() == fromUser(Access::underLid));
}

TEST_CASE("a pad that the mask covers on its side is under mask") {
  Scene scene;
  scene.pad.maskOpening = fromFile(MaskOpening::bottom);
  CHECK(scene.access() == guessed(Access::underMask));
  scene.pad.maskOpening = {};
  CHECK(scene.access() == guessed(Access::open));
}

TEST_CASE("a pad deep under its body is under part, one near the edge is not, nor one of a part not fitted") {
  Scene scene;
  scene.pad.position = fromFile(mm(0, 0));
  CHECK(scene.access().value == Access::underPart);
  // Its copper is 0.74 mm from the body's edge, then 0.76 mm.
  scene.pad.position = fromFile(mm(4.01, 0));
  CHECK(scene.access().value == Access::open);
  scene.pad.position = fromFile(mm(3.99, 0));
  CHECK(scene.access().value == Access::underPart);
  scene.part.fitted = fromUser(false);
  CHECK(scene.access().value == Access::open);
}

TEST_CASE("the outer balls of a grid array are under part, the pins of a connector with such names are not") {
  Scene scene;
  scene.pin.name = "A1";
  CHECK(scene.access().value == Access::underPart);
  scene.pin.name = "AB12";
  CHECK(scene.access().value == Access::underPart);
  scene.pin.name = "VCC";
  CHECK(scene.access().value == Access::open);
  scene.pin.name = "A1";
  scene.part.kind = fromFile(PartKind::connector);
  CHECK(scene.access().value == Access::open);
}

TEST_CASE("a fitted lid covers its parts' pads, and is taken off to make them open") {
  Scene scene;
  Part lid;
  lid.id = scene.board.newId<PartId>();
  lid.kind = fromFile(PartKind::shield);
  scene.board.parts.put(lid);
  scene.part.lid = fromUser(lid.id);
  CHECK(scene.access().value == Access::underLid);
  lid.fitted = fromUser(false);
  scene.board.parts.put(lid);
  CHECK(scene.access().value == Access::open);
}

TEST_CASE("a pin through the board is reached from the far side") {
  Scene scene;
  scene.pad.position = fromFile(mm(0, 0));
  scene.pad.reach = fromFile(PadReach::allLayers);
  scene.pad.maskOpening = fromFile(MaskOpening::both);
  CHECK(scene.access().value == Access::open);
  scene.pad.maskOpening = fromFile(MaskOpening::top);
  CHECK(scene.access().value == Access::underMask);
}

TEST_CASE("test pads and vias are covered by the bodies of others on their side only") {
  Scene scene;
  scene.pad.pin = scene.pin.id;
  scene.pin.part = {};
  scene.pad.position = fromFile(mm(0, 0));
  CHECK(scene.access().value == Access::underPart);
  scene.part.kind = fromFile(PartKind::shield);
  CHECK(scene.access().value == Access::underLid);
  scene.part.side = fromFile(Side::bottom);
  CHECK(scene.access().value == Access::open);

  Via via;
  via.diameter = fromFile(Length::fromMm(0.5));
  via.maskOpening = fromFile(MaskOpening::bottom);
  CHECK(accessOf(scene.board, via).value == Access::underMask);
  via.maskOpening = fromFile(MaskOpening::both);
  CHECK(accessOf(scene.board, via).value == Access::open);
  via.position = mm(20, 0);
  via.maskOpening = {};
  CHECK(accessOf(scene.board, via) == guessed(Access::underMask));
}

TEST_CASE("a buried via has no access at all, a blind one from its own face") {
  Board board;
  for (int i = 0; i < 4; ++i) {
    Layer layer;
    layer.id = board.newId<LayerId>();
    board.layers.put(layer);
    board.info.layerOrder.push_back(layer.id);
  }
  Via via;
  via.maskOpening = fromFile(MaskOpening::top);
  via.from = fromFile(board.info.layerOrder[1]);
  via.to = fromFile(board.info.layerOrder[2]);
  CHECK_FALSE(accessOf(board, via).known());
  via.to = fromFile(board.info.layerOrder[3]);
  CHECK(accessOf(board, via).value == Access::underMask);
  via.from = fromFile(board.info.layerOrder[0]);
  CHECK(accessOf(board, via).value == Access::open);
}

TEST_CASE("a pin is as easy to reach as its easiest pad, and unknown without pads") {
  Scene scene;
  CHECK_FALSE(accessOf(scene.board, scene.pin.id).known());
  scene.pad.access = fromFile(Access::underPart);
  scene.access();
  scene.pad.id = scene.board.newId<PadId>();
  scene.pad.access = {};
  scene.access();
  CHECK(accessOf(scene.board, scene.pin.id) == guessed(Access::open));
}

TEST_CASE("grid names are one or two capitals and one or two digits") {
  Scene scene;
  const auto isGrid = [&](const char* name) {
    scene.pin.name = name;
    return scene.access().value == Access::underPart;
  };
  for (const char* name : {"A1", "Z9", "A12", "AB1", "AB12"}) {
    INFO(name);
    CHECK(isGrid(name));
  }
  for (const char* name : {"", "1", "12", "A", "AB", "ABC1", "A123", "AB123", "a1", "A1B", "A1x"}) {
    INFO(name);
    CHECK_FALSE(isGrid(name));
  }
  scene.part.kind = {};
  CHECK_FALSE(isGrid("A1"));
}

TEST_CASE("a pad is looked at from the side that it reaches, else from that of its part, else from the top") {
  Scene scene;
  scene.pad.maskOpening = fromFile(MaskOpening::bottom);
  scene.pad.reach = fromFile(PadReach::bottom);
  CHECK(scene.access().value == Access::open);
  scene.pad.reach = {};
  CHECK(scene.access().value == Access::underMask);
  scene.part.side = fromFile(Side::bottom);
  CHECK(scene.access().value == Access::open);
  scene.part.side = {};
  CHECK(scene.access().value == Access::underMask);
  scene.pin.part = {};
  CHECK(scene.access().value == Access::underMask);
  // On both faces the easier one counts.
  for (const PadReach reach : {PadReach::topAndBottom, PadReach::allLayers}) {
    scene.pad.reach = fromFile(reach);
    scene.pad.maskOpening = fromFile(MaskOpening::bottom);
    CHECK(scene.access().value == Access::open);
    scene.pad.maskOpening = fromFile(MaskOpening::top);
    CHECK(scene.access().value == Access::open);
    scene.pad.maskOpening = fromFile(MaskOpening::none);
    CHECK(scene.access().value == Access::underMask);
  }
}

TEST_CASE("the harder of mask, lid and part counts, and parts not fitted or elsewhere cover nothing") {
  Scene scene;
  scene.pad.maskOpening = fromFile(MaskOpening::none);
  scene.pin.part = {};
  scene.pad.position = fromFile(mm(0, 0));
  CHECK(scene.access().value == Access::underPart);
  scene.part.kind = fromFile(PartKind::shield);
  CHECK(scene.access().value == Access::underLid);
  Part chip = scene.part;
  chip.id = scene.board.newId<PartId>();
  chip.kind = {};
  scene.board.parts.put(chip);
  CHECK(scene.access().value == Access::underPart); // under both: the part is harder
  chip.fitted = fromUser(false);
  scene.board.parts.put(chip);
  CHECK(scene.access().value == Access::underLid);
  scene.part.fitted = fromUser(false);
  CHECK(scene.access().value == Access::underMask);
  scene.part.fitted = {};
  scene.part.side = {};
  CHECK(scene.access().value == Access::underMask);
  scene.part.side = fromFile(Side::top);
  scene.part.body = {};
  CHECK(scene.access().value == Access::underMask);
  scene.part.body = fromFile(Ring{mm(-5, -5), mm(5, 5)}); // no area
  CHECK(scene.access().value == Access::underMask);
}
