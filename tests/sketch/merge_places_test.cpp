// A board from a file brought into a drawn one: places, pads, layers and copper.
#include "merging.h"

using namespace netmend;
using namespace netmend::test;

using Right = MergeDifference::Right;
using Texts = std::vector<std::string>;

namespace {

/// From the file's places to the drawing's: a quarter turn counter-clockwise, then by (10, 20) mm.
Point carried(Point p) {
  return {Length(10'000'000) - p.y, Length(20'000'000) + p.x};
}
Ring carried(Ring ring) {
  for (Point& p : ring)
    p = carried(p);
  return ring;
}

struct PinTold {
  const char* label;
  const char* net;
  Point at;
};
const std::vector<PinTold>& crossPins() {
  static const std::vector<PinTold> pins = {{"J1.1", "A", mm(10, 0)},
                                            {"J1.2", "A", mm(0, 10)},
                                            {"J1.3", "B", mm(-10, 0)},
                                            {"J1.4", "B", mm(0, -10)}};
  return pins;
}

/// J1's four pins at the ends of a cross of 20 mm, in the file; and in the drawing carried, J1.1 farther out
/// by `slip`. That turns nothing: of least squares the whole moves by a quarter of it.
struct Cross {
  Told drawn = drawnBoard();
  Told file = fileBoard();
  explicit Cross(Length slip = {}, bool turned = true) {
    for (const auto& [label, net, at] : crossPins()) {
      file.pin(label, net, at);
      drawn.pin(label, net, turned ? carried(at) : at);
    }
    const PadId pad = drawn.board.pads[0].id;
    drawn.with(drawn.board.pads, pad,
               [&](Pad& one) { (turned ? one.position.value.y : one.position.value.x) += slip; });
  }
};

Pad padAt(const Board& board, const std::string& label) {
  const auto pads = Lookup(board).padsOf(pinCalled(board, label).id);
  INFO(label);
  REQUIRE(pads.size() == 1);
  return *board.pads.find(pads.front());
}

template <class T> std::vector<T> all(const Table<T>& table) {
  return {table.begin(), table.end()};
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

TEST_CASE("the file's layers come in between the drawn ones, with what is known of them") {
  Cross two;
  const LayerId top = two.drawn.layer("top");
  const LayerId bottom = two.drawn.layer("bottom");
  two.drawn.with(two.drawn.board.layers, bottom,
                 [](Layer& layer) { layer.copperThickness = fromUser(Length(70'000)); });
  std::vector<LayerId> theirs;
  for (const char* name : {"F.Cu", "In1", "In2", "B.Cu"}) {
    theirs.push_back(two.file.layer(name));
    two.file.with(two.file.board.layers, theirs.back(), [](Layer& layer) {
      layer.copperThickness = fromFile(Length(35'000));
      layer.dielectricBelow = fromFile(Length(200'000));
    });
  }
  for (const LayerId layer : theirs)
    two.file.track(mm(0, 0), mm(1, 1), layer, "A");
  const Board board = mergedBy(two.drawn.board, two.file.board);
  const auto& order = board.info.layerOrder;
  REQUIRE(order.size() == 4);
  CHECK(order.front() == top);
  CHECK(order.back() == bottom);
  CHECK(board.layers.find(order[1])->name == "In1");
  CHECK(board.layers.find(order[2])->name == "In2");
  CHECK(board.layers.find(top)->name == "top");
  CHECK(board.layers.find(top)->copperThickness == fromFile(Length(35'000)));
  CHECK(board.layers.find(top)->dielectricBelow == fromFile(Length(200'000)));
  CHECK(board.layers.find(bottom)->copperThickness == fromUser(Length(70'000)));
  CHECK(board.layers.size() == 4);
  REQUIRE(board.tracks.size() == 4);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(board.tracks[i].layer == fromFile(order[i]));
}

TEST_CASE("a drawing without layers gets the file's, one with inner ones keeps those that the file has not") {
  Cross two;
  two.file.layer("F.Cu");
  two.file.layer("In2");
  two.file.layer("B.Cu");
  const auto names = [](const Board& board) {
    Texts out;
    for (const LayerId layer : board.info.layerOrder)
      out.push_back(board.layers.find(layer)->name);
    return out;
  };
  CHECK(names(mergedBy(two.drawn.board, two.file.board)) == Texts{"F.Cu", "In2", "B.Cu"});
  two.drawn.layer("top");
  CHECK(names(mergedBy(two.drawn.board, two.file.board)) == Texts{"top", "In2", "B.Cu"});
  two.drawn.layer("In1");
  two.drawn.layer("In2");
  two.drawn.layer("bottom");
  const Board board = mergedBy(two.drawn.board, two.file.board);
  CHECK(names(board) == Texts{"top", "In2", "In1", "bottom"});
  CHECK(board.layers.size() == 4);
}

TEST_CASE("a file that tells no layers leaves those of the drawing") {
  Cross two;
  two.drawn.layer("top");
  two.drawn.layer("bottom");
  const LayerId only = two.file.layer("copper");
  two.file.track(mm(0, 0), mm(1, 0), only, "A");
  two.file.via(mm(1, 0), "A");
  two.file.board.info.outline = fromFile(std::vector<Polygon>{{box(0, 0, 4, 4), {box(1, 1, 2, 2)}}});
  const Board board = mergedBy(two.drawn.board, two.file.board);
  CHECK(board.info.layerOrder == two.drawn.board.info.layerOrder);
  CHECK_FALSE(board.tracks[0].layer.known());
  CHECK(board.info.outline ==
        fromFile(std::vector<Polygon>{{carried(box(0, 0, 4, 4)), {carried(box(1, 1, 2, 2))}}}));
}

TEST_CASE("an outline that is drawn stays") {
  Cross two;
  two.drawn.board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 40, 40), {}}});
  two.file.board.info.outline = fromFile(std::vector<Polygon>{{box(0, 0, 4, 4), {}}});
  CHECK(mergedBy(two.drawn.board, two.file.board).info.outline == two.drawn.board.info.outline);
}

TEST_CASE("the file's copper comes in and replaces what was drawn of the same nets") {
  Cross two;
  const LayerId top = two.drawn.layer("top");
  two.drawn.layer("bottom");
  two.drawn.track(mm(0, 0), mm(9, 9), top, "A");
  two.drawn.via(mm(1, 1), "A");
  two.drawn.area(box(0, 0, 1, 1), top, "A");
  const TrackId other = two.drawn.track(mm(0, 0), mm(9, 9), top, "B");
  const TrackId unnamed = two.drawn.track(mm(0, 0), mm(9, 8), top, "");
  const ViaId otherVia = two.drawn.via(mm(2, 2), "B");
  const AreaId otherArea = two.drawn.area(box(0, 0, 1, 2), top, "B");
  const LayerId f = two.file.layer("F");
  two.file.layer("In1");
  const LayerId b = two.file.layer("B");
  const TrackId arc = two.file.track(mm(0, 0), mm(2, 0), f, "A", TrackWay::arc);
  two.file.with(two.file.board.tracks, arc, [](Track& track) { track.mid = mm(1, 1); });
  const ViaId via = two.file.via(mm(2, 0), "A");
  two.file.with(two.file.board.vias, via, [&](Via& one) {
    one.from = fromFile(f);
    one.to = fromFile(b);
  });
  const AreaId area = two.file.area(box(0, 0, 3, 4), b, "A");
  two.file.with(two.file.board.areas, area, [](Area& one) { one.polygon.holes = {box(1, 1, 2, 2)}; });
  two.file.track(mm(5, 5), mm(6, 6), f, "");
  two.file.track(mm(5, 5), mm(6, 7), f, "-");

  const Board board = mergedBy(two.drawn.board, two.file.board);
  REQUIRE(board.tracks.size() == 5);
  CHECK(*board.tracks.find(other) == *two.drawn.board.tracks.find(other));
  CHECK(*board.tracks.find(unnamed) == *two.drawn.board.tracks.find(unnamed));
  Track expected = *two.file.board.tracks.find(arc);
  expected.id = board.tracks[2].id;
  expected.start = carried(mm(0, 0));
  expected.mid = carried(mm(1, 1));
  expected.end = carried(mm(2, 0));
  expected.layer.value = top;
  expected.net.value = two.drawn.net("A");
  CHECK(board.tracks[2] == expected);
  CHECK_FALSE(board.tracks[3].net.known());
  CHECK(board.tracks[4].net == fromFile(NetId()));
  REQUIRE(board.vias.size() == 2);
  CHECK(*board.vias.find(otherVia) == *two.drawn.board.vias.find(otherVia));
  CHECK(board.vias[1].position == carried(mm(2, 0)));
  CHECK(board.vias[1].from == fromFile(board.info.layerOrder.front()));
  CHECK(board.vias[1].to == fromFile(board.info.layerOrder.back()));
  CHECK(board.vias[1].net == fromFile(two.drawn.net("A")));
  REQUIRE(board.areas.size() == 2);
  CHECK(*board.areas.find(otherArea) == *two.drawn.board.areas.find(otherArea));
  CHECK(board.areas[1].polygon == Polygon{carried(box(0, 0, 3, 4)), {carried(box(1, 1, 2, 2))}});
  CHECK(board.areas[1].layer == fromFile(board.info.layerOrder.back()));
}

TEST_CASE("copper that is drawn twice in the file comes in twice, once") {
  Cross two;
  const LayerId f = two.file.layer("F");
  two.file.layer("B");
  for (int i = 0; i < 2; ++i)
    two.file.track(mm(0, 0), mm(1, 0), f, "A");
  two.file.track(mm(0, 0), mm(1, 0), f, "B");
  two.file.track(mm(1, 0), mm(1, 0), f, "");
  CHECK(mergedBy(two.drawn.board, two.file.board).tracks.size() == 4);
}

TEST_CASE("copper of a net that has become another one goes with it") {
  // C is drawn as a net of its own; the file has J1.1 J1.2 and it on one.
  for (const bool placed : {true, false})
    for (const bool theirs : {true, false}) {
      Cross two{placed ? Length() : Length(5'000'000)};
      const LayerId top = two.drawn.layer("top");
      two.drawn.layer("bottom");
      two.drawn.pin("R1.1", "*c");
      const TrackId track = two.drawn.track(mm(0, 0), mm(1, 1), top, "*c");
      const ViaId via = two.drawn.via(mm(1, 1), "*c");
      const AreaId area = two.drawn.area(box(0, 0, 1, 1), top, "*c");
      two.file.pin("R1.1", "A");
      if (theirs) two.file.track(mm(0, 0), mm(1, 1), {}, "A");
      const Board board = mergedBy(two.drawn.board, two.file.board);
      CHECK(board.nets.find(two.drawn.net("*c")) == nullptr);
      CHECK(netOfPin(board, "R1.1") == "A");
      if (placed && theirs) { // it has come in in their place
        CHECK(board.tracks.size() == 1);
        CHECK(board.vias.empty());
        CHECK(board.areas.empty());
        CHECK(board.tracks[0].origin == Origin::file);
      } else {
        for (const Fact<NetId>& net :
             {board.tracks.find(track)->net, board.vias.find(via)->net, board.areas.find(area)->net})
          CHECK(net == fromUser(two.drawn.net("A")));
        CHECK(board.tracks.size() == 1);
      }
    }
}

TEST_CASE("a net whose pins have gone to several others stays with its copper, or goes without any") {
  for (const bool copper : {true, false}) {
    Cross two;
    const LayerId top = two.drawn.layer("top");
    two.drawn.layer("bottom");
    two.drawn.pins({{"R1.1", "*c"}, {"R2.1", "*c"}});
    if (copper) two.drawn.track(mm(0, 0), mm(1, 1), top, "*c");
    two.file.pins({{"R1.1", "A"}, {"R2.1", "B"}});
    const Board board = mergedBy(two.drawn.board, two.file.board, Right::file);
    CHECK(netsIn(board) == Texts{"A: J1.1 J1.2 R1.1", "B: J1.3 J1.4 R2.1"});
    CHECK((board.nets.find(two.drawn.net("*c")) != nullptr) == copper);
    CHECK(board.tracks.size() == (copper ? 1 : 0));
  }
}

TEST_CASE("a net that nothing was drawn of is left alone") {
  Cross two;
  const NetId net = two.drawn.net("LATER");
  CHECK(mergedBy(two.drawn.board, two.file.board).nets.find(net) != nullptr);
}

TEST_CASE("where all pins of a file's net stay in a drawn one, its copper is of that one") {
  Cross two;
  two.drawn.pins({{"R1.1", "A"}, {"R1.2", "A"}});
  two.file.pins({{"R1.1", "X"}, {"R1.2", "X"}});
  two.file.track(mm(0, 0), mm(1, 1), {}, "X");
  const Board kept = mergedBy(two.drawn.board, two.file.board, Right::drawing);
  CHECK(kept.tracks[0].net == fromFile(two.drawn.net("A")));
  CHECK(kept.nets.size() == 2);
  const Board board = mergedBy(two.drawn.board, two.file.board, Right::file);
  CHECK(board.tracks[0].net.value == pinCalled(board, "R1.2").net.value);
  CHECK(board.nets.size() == 3);
}

TEST_CASE("how much copper is drawn is told by the file, unless the drawing joins what the file does not") {
  using Copper = DrawnCopper;
  const auto after = [](const Told& drawn, const Told& file) {
    return mergedBy(drawn.board, file.board).info.copper;
  };
  Cross two;
  two.file.layer("F");
  two.file.layer("B");
  two.drawn.board.info.copper = fromUser(Copper::points);
  // The file has no copper, either.
  CHECK(after(two.drawn, two.file) == fromUser(Copper::points));
  two.file.track(mm(0, 0), mm(1, 1), {}, "A");
  CHECK(after(two.drawn, two.file) == fromFile(Copper::everything));
  two.file.board.info.copper = fromFile(Copper::tracks);
  CHECK(after(two.drawn, two.file) == fromFile(Copper::tracks));
  two.file.board.info.copper = fromFile(Copper::points);
  CHECK(after(two.drawn, two.file) == fromUser(Copper::points));
  two.file.board.info.copper = {};
  two.drawn.board.info.copper = {};
  CHECK(after(two.drawn, two.file) == fromFile(Copper::everything));
  // A pin of its own net is no join; one more on the file's net is.
  two.drawn.pin("TP1", "*t");
  CHECK(after(two.drawn, two.file) == fromFile(Copper::everything));
  two.drawn.pin("TP2", "A");
  CHECK(after(two.drawn, two.file) == guessed(Copper::points));
  two.drawn.board.info.copper = fromUser(Copper::points);
  CHECK(after(two.drawn, two.file) == fromUser(Copper::points));
  two.drawn.board.info.copper = fromUser(Copper::everything);
  CHECK(after(two.drawn, two.file) == fromFile(Copper::everything));
}

TEST_CASE("a pin that stays as it is drawn is a join of the drawing, too") {
  for (const auto& [right, copper] : {std::pair{Right::open, fromUser(DrawnCopper::points)},
                                      {Right::file, fromFile(DrawnCopper::everything)}}) {
    Cross two;
    two.drawn.board.info.copper = fromUser(DrawnCopper::points);
    two.drawn.pin("R1.1", "A");
    two.file.pin("R1.1", "B");
    two.file.track(mm(0, 0), mm(1, 1), {}, "A");
    CHECK(mergedBy(two.drawn.board, two.file.board, right).info.copper == copper);
  }
}

TEST_CASE("zones of the file come in, but for parts that have one") {
  Cross two;
  const auto zone = [](Told& told, const Ring& outline, PartId part) {
    Zone made;
    made.kind = ZoneKind::battery;
    made.name = "z";
    made.polygon = {outline, {box(1, 1, 2, 2)}};
    made.part = part;
    return told.put(told.board.zones, made);
  };
  two.file.part("BT1");
  zone(two.file, box(0, 0, 3, 3), PartId());
  zone(two.file, box(0, 0, 3, 4), two.file.part("J1"));
  zone(two.file, box(0, 0, 3, 5), two.file.part("BT1"));
  const ZoneId mine = zone(two.drawn, box(0, 0, 3, 6), two.drawn.part("J1"));
  const Board board = mergedBy(two.drawn.board, two.file.board);
  REQUIRE(board.zones.size() == 3);
  CHECK(*board.zones.find(mine) == *two.drawn.board.zones.find(mine));
  CHECK(board.zones[1].polygon == Polygon{carried(box(0, 0, 3, 3)), {carried(box(1, 1, 2, 2))}});
  CHECK(board.zones[2].part == partCalled(board, "BT1").id);
  CHECK(board.zones[2].kind == ZoneKind::battery);
}
