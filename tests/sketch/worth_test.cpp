// What a drawing is good for, in figures; and when a series can go on.
#include "merging.h"
#include "netmend/jumper/zone_rules.h"
#include "netmend/sketch/worth.h"
#include "rows.h"

using namespace netmend;
using namespace netmend::test;

namespace {

DrawingWorth worth(const Board& board, NetId inHand = {}) {
  return worthOf(Lookup(board), inHand);
}

Part partOf(PartKind kind) {
  Part part;
  part.kind = fromUser(kind);
  return part;
}

} // namespace

TEST_CASE("an empty board is good for nothing") {
  CHECK(worth(Board()) == DrawingWorth());
}

TEST_CASE("of connectors the one with most pins counts, by its places and nets") {
  auto drawn = drawnBoard();
  drawn.part("U1", partOf(PartKind::chip));
  for (int i = 1; i < 9; ++i)
    drawn.pin("U1." + std::to_string(i), "A", mm(i, 0));
  const PartId first = drawn.part("J1", partOf(PartKind::connector));
  drawn.pin("J1.1", "A", mm(0, 1));
  DrawingWorth found = worth(drawn.board);
  CHECK(found.connector == "J1");
  CHECK(found.connectorPart == first);
  CHECK(found.pins == 1);
  const PartId second = drawn.part("J2", partOf(PartKind::connector));
  drawn.pin("J2.1", "A");
  CHECK(worth(drawn.board).connector == "J1"); // no more pins
  drawn.pin("J2.2", "-");
  drawn.pin("J2.3", "", mm(0, 2));
  drawn.pin("J2.4", "", mm(0, 3));
  drawn.pin("J2.5", "B", mm(0, 4));
  drawn.part("J3", partOf(PartKind::connector));
  found = worth(drawn.board);
  CHECK(found.connector == "J2");
  CHECK(found.connectorPart == second);
  CHECK(found.pins == 5);
  CHECK(found.placedPins == 3);
  CHECK(found.pinsWithNet == 3); // of one it is known that it has none
}

TEST_CASE("lines are nets of two pins or more, with copper of which the way is known") {
  auto drawn = drawnBoard();
  const LayerId top = drawn.layer("top");
  drawn.pins({{"R1.1", "A"},
              {"R2.1", "A"},
              {"R1.2", "B"},
              {"R2.2", "B"},
              {"R3.1", "C"},
              {"R3.2", "D"},
              {"R4.2", "D"},
              {"R5.1", "D"}});
  CHECK(worth(drawn.board).lines == 3);
  CHECK(worth(drawn.board).linesWithCopper == 0);
  drawn.track(mm(0, 0), mm(1, 1), {}, "A", TrackWay::unknownWay);
  drawn.track(mm(0, 0), mm(1, 1), top, "C");
  drawn.track(mm(0, 0), mm(1, 1), top, "");
  drawn.track(mm(0, 0), mm(1, 1), top, "-");
  CHECK(worth(drawn.board).linesWithCopper == 0);
  drawn.track(mm(0, 0), mm(1, 1), top, "A");
  CHECK(worth(drawn.board).linesWithCopper == 1);
  drawn.area(box(0, 0, 1, 1), top, "B");
  CHECK(worth(drawn.board).linesWithCopper == 2);
  drawn.track(mm(0, 0), mm(1, 1), top, "D", TrackWay::arc);
  const DrawingWorth found = worth(drawn.board);
  CHECK(found.lines == 3);
  CHECK(found.linesWithCopper == 3);
  CHECK(found.net.empty());
  CHECK(found.netPins + found.netTracks + found.netUnknownWays == 0);
}

TEST_CASE("of the net in hand its pins and pieces of copper count") {
  auto drawn = drawnBoard();
  const LayerId top = drawn.layer("top");
  drawn.pins({{"R1.1", "A"}, {"R2.1", "A"}, {"R2.2", "*b"}, {"R3.1", "*b"}, {"R3.2", "*b"}});
  drawn.track(mm(0, 0), mm(1, 1), top, "A");
  drawn.track(mm(0, 0), mm(1, 1), top, "A", TrackWay::arc);
  drawn.track(mm(0, 0), mm(1, 1), {}, "A", TrackWay::unknownWay);
  drawn.track(mm(0, 0), mm(1, 1), top, "*b");
  drawn.track(mm(0, 0), mm(1, 1), top, "");
  drawn.area(box(0, 0, 1, 1), top, "A");
  drawn.area(box(0, 0, 1, 1), top, "*b");
  drawn.via(mm(0, 0), "A");
  const DrawingWorth a = worth(drawn.board, drawn.net("A"));
  CHECK(a.net == "A");
  CHECK(a.netPins == 2);
  CHECK(a.netTracks == 3);
  CHECK(a.netUnknownWays == 1);
  const DrawingWorth b = worth(drawn.board, drawn.net("*b"));
  CHECK(b.net == "R2.2"); // one of its pins
  CHECK(b.netPins == 3);
  CHECK(b.netTracks == 2);
  CHECK(b.netUnknownWays == 0);
  CHECK(worth(drawn.board, drawn.net("*nothing")).net.empty());
  CHECK(worth(drawn.board, NetId(999)).net.empty());
}

TEST_CASE("landings are pads that have a place and are there, and vias") {
  auto drawn = drawnBoard();
  const PinId pin = drawn.pin("R1.1", "A", mm(0, 0));
  drawn.pad(pin, mm(1, 1));
  CHECK(worth(drawn.board).landings == 2);
  drawn.with(drawn.board.pads, drawn.board.pads[0].id, [](Pad& pad) { pad.position = {}; });
  CHECK(worth(drawn.board).landings == 1);
  drawn.with(drawn.board.pads, drawn.board.pads[1].id, [](Pad& pad) { pad.gone = fromUser(false); });
  CHECK(worth(drawn.board).landings == 1);
  drawn.with(drawn.board.pads, drawn.board.pads[1].id, [](Pad& pad) { pad.gone = fromUser(true); });
  CHECK(worth(drawn.board).landings == 0);
  drawn.via(mm(0, 0), "A");
  drawn.via(mm(0, 1), "A");
  CHECK(worth(drawn.board).landings == 2);
}

TEST_CASE("zones are drawn, or made by a body of a kind that data/zones.json has") {
  const auto rules = loadZoneRules(NETMEND_SOURCE_DIR "/data/zones.json");
  REQUIRE(rules);
  std::size_t makers = 0;
  for (int i = 0; i <= static_cast<int>(PartKind::other); ++i) {
    auto drawn = drawnBoard();
    Part part = partOf(static_cast<PartKind>(i));
    const PartId id = drawn.part("X1", part);
    CHECK(worth(drawn.board).zones == 0); // nobody knows where it is
    drawn.with(drawn.board.parts, id, [](Part& one) { one.body = guessed(box(0, 0, 1, 1)); });
    const bool makes = rules->of(static_cast<PartKind>(i)) != nullptr;
    makers += makes ? 1 : 0;
    CHECK(worth(drawn.board).zones == (makes ? 1 : 0));
    drawn.with(drawn.board.parts, id, [](Part& one) { one.fitted = fromUser(true); });
    CHECK(worth(drawn.board).zones == (makes ? 1 : 0));
    Zone zone;
    zone.part = id;
    drawn.put(drawn.board.zones, zone);
    CHECK(worth(drawn.board).zones == 1); // in place of its own
    zone.part = {};
    drawn.put(drawn.board.zones, zone);
    CHECK(worth(drawn.board).zones == 2);
    drawn.board.zones = {};
    drawn.with(drawn.board.parts, id, [](Part& one) { one.fitted = fromUser(false); });
    CHECK(worth(drawn.board).zones == 0);
    drawn.with(drawn.board.parts, id, [](Part& one) {
      one.fitted = {};
      one.kind = {};
    });
    CHECK(worth(drawn.board).zones == 0);
  }
  CHECK(makers == 5);
}

TEST_CASE("a series can go on once two nets have been clicked") {
  Rows hand;
  const auto net = [&](int row) {
    hand.click(0, -row);
    hand.click(20, -row);
    hand.key(SketchKey::next);
  };
  CHECK_FALSE(hand.sketch.seriesPossible());
  net(0);
  CHECK_FALSE(hand.sketch.seriesPossible());
  hand.click(0, -1); // one pin is no net
  hand.key(SketchKey::next);
  CHECK_FALSE(hand.sketch.seriesPossible());
  hand.click(0, -1);
  hand.click(20, -1);
  CHECK_FALSE(hand.sketch.seriesPossible()); // not before it is done
  hand.key(SketchKey::next);
  CHECK(hand.sketch.seriesPossible());
  hand.key(SketchKey::series);
  CHECK(hand.sketch.series().size() == 2);
  CHECK(hand.sketch.proposes());
  CHECK(hand.key(SketchKey::take).act == SketchAct::seriesJoined);
  CHECK(hand.sketch.seriesPossible());
}

TEST_CASE("a series cannot go on from pins that are gone") {
  Rows hand;
  for (const int row : {0, 1}) {
    hand.click(0, -row);
    hand.click(20, -row);
    hand.key(SketchKey::next);
  }
  REQUIRE(hand.sketch.seriesPossible());
  const Edit gone = removePart(Lookup(hand.board), partCalled(hand.board, "J2").id);
  REQUIRE(apply(hand.board, gone));
  hand.key(SketchKey::series);
  CHECK_FALSE(hand.sketch.seriesPossible());
  CHECK(hand.sketch.series().empty());
}
