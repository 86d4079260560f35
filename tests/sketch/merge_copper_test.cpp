// A board from a file brought into a drawn one: copper and zones.
#include "cross.h"

using namespace netmend;
using namespace netmend::test;

using Right = MergeDifference::Right;
using Texts = std::vector<std::string>;

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
