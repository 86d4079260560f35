// A board from a file brought into a drawn one: places and pads.
#include "cross.h"

using namespace netmend;
using namespace netmend::test;

namespace {

Pad padAt(const Board& board, const std::string& label) {
  const auto pads = Lookup(board).padsOf(pinCalled(board, label).id);
  INFO(label);
  REQUIRE(pads.size() == 1);
  return *board.pads.find(pads.front());
}

} // namespace

TEST_CASE("parts of the file come in where they lie, turned and moved as the drawing is") {
  Cross two;
  Part resistor;
  resistor.position = fromFile(mm(3, 4));
  resistor.body = fromFile(box(2, 3, 4, 5));
  resistor.side = fromFile(Side::bottom);
  two.file.part("R1", resistor);
  const PadId pad = two.file.pad(two.file.pin("R1.1", "A"), mm(3, 4));
  two.file.with(two.file.board.pads, pad, [](Pad& one) {
    one.rotation = Degrees(300);
    one.shape = fromFile(PadShape::polygon);
    one.polygon = box(-1, -1, 1, 2);
    one.drillOffset = mm(0.5, 0);
  });
  two.file.pad(two.file.pin("TP1", "B"), mm(-2, 7));
  const MergePlan plan = planOf(two.drawn.board, two.file.board);
  CHECK(plan.placesFit);
  CHECK(plan.worstPlace == Length());
  const Board board = mergedBy(two.drawn.board, two.file.board, plan);
  const Part& part = partCalled(board, "R1");
  CHECK(part.position == fromFile(mm(6, 23)));
  CHECK(part.body == fromFile(Ring{mm(7, 22), mm(7, 24), mm(5, 24), mm(5, 22)}));
  CHECK(part.side == fromFile(Side::bottom));
  Pad expected = *two.file.board.pads.find(pad);
  expected.id = padAt(board, "R1.1").id;
  expected.pin = pinCalled(board, "R1.1").id;
  expected.position = fromFile(mm(6, 23));
  expected.rotation = Degrees(30); // once round
  CHECK(padAt(board, "R1.1") == expected);
  CHECK(placeOf(board, "TP1") == mm(3, 18));
  CHECK(padAt(board, "TP1").rotation == Degrees(90));
  // The drawing's own pads stay as they were.
  for (const Pad& mine : two.drawn.board.pads)
    CHECK(*board.pads.find(mine.id) == mine);
  CHECK(board.pads.size() == 6);
}

TEST_CASE("half a millimetre is how far places may be off, and not a nanometre more") {
  // J1.1 then lies off by three quarters of its slip: 500,000.25 nm, or 500,001.
  for (const bool turned : {true, false}) {
    for (const auto& [slip, fits] : {std::pair{666'667, true}, {666'668, false}}) {
      Cross two{Length(slip), turned};
      two.file.part("R1", [] {
        Part part;
        part.position = fromFile(mm(3, 4));
        part.body = fromFile(box(2, 3, 4, 5));
        return part;
      }());
      two.file.pin("R1.1", "A", mm(3, 4));
      const LayerId top = two.file.layer("F");
      two.file.layer("B");
      two.file.track(mm(0, 0), mm(3, 4), top, "A");
      two.file.board.info.outline = fromFile(std::vector<Polygon>{{box(0, 0, 50, 50), {}}});
      const MergePlan plan = planOf(two.drawn.board, two.file.board);
      CHECK(plan.placesFit == fits);
      CHECK(plan.worstPlace == Length(fits ? 500'000 : 500'001));
      const Board board = mergedBy(two.drawn.board, two.file.board, plan);
      CHECK(netOfPin(board, "R1.1") == "A");
      CHECK(partCalled(board, "R1").position.known() == fits);
      CHECK(partCalled(board, "R1").body.known() == fits);
      CHECK(Lookup(board).padsOf(pinCalled(board, "R1.1").id).size() == (fits ? 1 : 0));
      CHECK(board.tracks.size() == (fits ? 1 : 0));
      CHECK(board.layers.size() == (fits ? 2 : 0));
      CHECK(board.info.outline.known() == fits);
    }
  }
}

TEST_CASE("three places tell how the file lies, two do not") {
  for (const std::size_t count : {2u, 3u}) {
    auto drawn = drawnBoard();
    auto file = fileBoard();
    for (std::size_t i = 0; i < 4; ++i) {
      const auto& [label, net, at] = crossPins()[i];
      file.pin(label, net, at);
      if (i < count)
        drawn.pin(label, net, carried(at));
      else
        drawn.pin(label, net);
    }
    const MergePlan plan = planOf(drawn.board, file.board);
    CHECK(plan.placesFit == (count == 3));
    CHECK(plan.worstPlace == Length());
    // What was drawn as a list of pins gets its places.
    const Board board = mergedBy(drawn.board, file.board, plan);
    CHECK(board.pads.size() == (count == 3 ? 4 : 2));
    if (count == 3) CHECK(placeOf(board, "J1.4") == carried(crossPins()[3].at));
  }
}

TEST_CASE("a list of pins gets places, body and side of the file's part, one that is placed keeps its own") {
  Cross two;
  two.drawn.pins({{"J2.1", ""}, {"J2.2", ""}});
  Part connector;
  connector.position = fromFile(mm(5, 5));
  connector.body = fromFile(box(4, 4, 6, 6));
  connector.side = fromFile(Side::top);
  two.file.part("J2", connector);
  two.file.pin("J2.1", "A", mm(4.5, 5));
  two.file.pin("J2.2", "B", mm(5.5, 5));
  two.file.with(two.file.board.parts, two.file.part("J1"), [](Part& part) {
    part.position = fromFile(mm(0, 0));
    part.body = fromFile(box(-11, -11, 11, 11));
  });
  two.drawn.with(two.drawn.board.parts, two.drawn.part("J1"), [](Part& part) {
    part.position = fromUser(mm(1, 1));
    part.body = guessed(box(0, 0, 1, 1));
  });
  const Board board = mergedBy(two.drawn.board, two.file.board);
  CHECK(partCalled(board, "J2").position == fromFile(mm(5, 25)));
  CHECK(partCalled(board, "J2").body == fromFile(carried(box(4, 4, 6, 6))));
  CHECK(partCalled(board, "J2").side == fromFile(Side::top));
  CHECK(placeOf(board, "J2.1") == mm(5, 24.5));
  CHECK(placeOf(board, "J2.2") == mm(5, 25.5));
  CHECK(partCalled(board, "J1").position == fromUser(mm(1, 1)));
  CHECK(partCalled(board, "J1").body == guessed(box(0, 0, 1, 1)));
}

TEST_CASE("a drawing that lies askew takes what comes in askew, where straight does not fit") {
  // By 1°, over 100 mm: 0.87 mm off at the ends if it were laid straight.
  const double c = std::cos(0.017453292519943295), s = std::sin(0.017453292519943295);
  const auto askew = [&](double x, double y) { return mm(c * x - s * y, s * x + c * y); };
  auto drawn = drawnBoard();
  auto file = fileBoard();
  for (const auto& [label, x, y] : {std::tuple{"J1.1", -50, 0}, {"J1.2", 50, 0}, {"J1.3", 0, 20}}) {
    drawn.pin(label, "A", askew(x, y));
    file.pin(label, "A", mm(x, y));
  }
  file.pin("R1.1", "A", mm(40, 30));
  const MergePlan plan = planOf(drawn.board, file.board);
  CHECK(plan.placesFit);
  CHECK(plan.worstPlace <= Length(1));
  const Board board = mergedBy(drawn.board, file.board, plan);
  CHECK(distance(placeOf(board, "R1.1"), askew(40, 30)) <= Length(1));
  CHECK(padAt(board, "R1.1").rotation.value == Approx(1.0).margin(1e-6));
  // By a tenth of that it is the hand's: 0.087 mm.
  for (std::size_t i = 0; i < 3; ++i)
    drawn.with(drawn.board.pads, drawn.board.pads[i].id, [&](Pad& pad) {
      pad.position.value = file.board.pads[i].position.value;
      pad.position.value.y += Length(pad.position.value.x.nm / 573);
    });
  const Board straight = mergedBy(drawn.board, file.board);
  CHECK(placeOf(straight, "R1.1") == mm(40, 30));
  CHECK(padAt(straight, "R1.1").rotation == Degrees(0));
}

TEST_CASE("a mirrored drawing does not fit") {
  Cross two;
  for (std::size_t i = 0; i < 4; ++i)
    two.drawn.with(two.drawn.board.pads, two.drawn.board.pads[i].id, [&](Pad& pad) {
      pad.position.value = crossPins()[i].at;
      pad.position.value.x = -pad.position.value.x;
    });
  two.drawn.with(two.drawn.board.pads, two.drawn.board.pads[0].id,
                 [](Pad& pad) { pad.position.value.y += Length(3'000'000); });
  two.file.with(two.file.board.pads, two.file.board.pads[0].id,
                [](Pad& pad) { pad.position.value.y += Length(3'000'000); });
  CHECK_FALSE(planOf(two.drawn.board, two.file.board).placesFit);
}

TEST_CASE("pins whose label stands twice are told by their places") {
  Cross two;
  const PinId left = two.drawn.pin("TP", "", carried(mm(1, 1)) + mm(0.1, 0));
  const PinId right = two.drawn.pin("TP", "", carried(mm(5, 5)));
  two.file.pin("TP", "A", mm(5, 5));
  two.file.pin("TP", "B", mm(1, 1));
  two.file.pin("TP", "C", mm(9, 9));
  const MergePlan plan = planOf(two.drawn.board, two.file.board);
  CHECK(plan.learnt == 2);
  CHECK(plan.onlyInFile == 1);
  const Board board = mergedBy(two.drawn.board, two.file.board, plan);
  CHECK(board.nets.find(board.pins.find(left)->net.value)->name == "B");
  CHECK(board.nets.find(board.pins.find(right)->net.value)->name == "A");
  CHECK(board.pins.size() == 7);
}

TEST_CASE("of parts without pins whose reference stands twice the places tell") {
  Cross two;
  for (const double x : {1.0, 8.0})
    for (Told* told : {&two.file, &two.drawn}) {
      Part part;
      part.reference = "LOGO";
      part.position = told->fact(told == &two.file ? mm(x, 0) : carried(mm(x, 0)));
      told->put(told->board.parts, part);
    }
  Part third;
  third.reference = "LOGO";
  third.position = fromFile(mm(1, 6));
  two.file.put(two.file.board.parts, third);
  const Board board = mergedBy(two.drawn.board, two.file.board);
  CHECK(board.parts.size() == 4);
  CHECK(board.parts[3].position == fromFile(mm(4, 21)));
}

TEST_CASE("a place tells pins and parts apart up to half a millimetre, and where both sides know one") {
  for (const auto& [off, matched] : {std::pair{500'000, true}, {500'001, false}}) {
    Cross two;
    for (Told* told : {&two.file, &two.drawn}) {
      const Point move = told == &two.drawn ? Point{Length(off), {}} : Point{};
      for (const double y : {2.0, 8.0}) {
        told->pin("TP", "", (told == &two.drawn ? carried(mm(1, y)) : mm(1, y)) + move);
        Part part;
        part.reference = "LOGO";
        part.position = told->fact((told == &two.drawn ? carried(mm(2, y)) : mm(2, y)) + move);
        told->put(told->board.parts, part);
      }
    }
    const MergePlan plan = planOf(two.drawn.board, two.file.board);
    CHECK(plan.onlyInFile == (matched ? 0 : 2));
    CHECK(mergedBy(two.drawn.board, two.file.board, plan).parts.size() == (matched ? 3 : 5));
  }
  // At the origin lies what has no place, if anybody asked.
  Cross two;
  two.drawn.pin("TP", "", carried(mm(0, 0)));
  two.file.pin("TP", "");
  two.file.pin("TP", "");
  CHECK(planOf(two.drawn.board, two.file.board).onlyInFile == 2);
  Part logo;
  logo.reference = "LOGO";
  for (int i = 0; i < 2; ++i)
    two.file.put(two.file.board.parts, logo);
  logo.position = fromUser(carried(mm(0, 0)));
  two.drawn.put(two.drawn.board.parts, logo);
  const Board board = after(two.drawn.board, mergeEdit(Lookup(two.drawn.board), Lookup(two.file.board),
                                                       planOf(two.drawn.board, two.file.board)));
  CHECK(board.parts.size() == 4);
}
