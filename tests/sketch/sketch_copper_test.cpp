// Copper by clicks and keys.
#include "netmend/netgraph/board_graph.h"
#include "rows.h"

using namespace netmend;
using namespace netmend::test;

using What = SketchDue::What;

namespace {

/// What of the drawn copper hangs together, as islands with more than a pin's own copper.
bool hangTogether(const Board& board, const std::string& a, const std::string& b) {
  for (const Island& island : buildBoardGraph(board).islands) {
    const auto has = [&](const std::string& label) {
      const CopperObject pin = pinCalled(board, label).id;
      return std::find(island.members.begin(), island.members.end(), pin) != island.members.end();
    };
    if (has(a)) return has(b);
  }
  return false;
}

} // namespace

TEST_CASE("a track is pressed on a pin, drawn along corners and ends on a pin") {
  Rows hand;
  const SketchAnswer drawn = hand.stroke({mm(0.1, 0.2), mm(10, 0), mm(10, -1), mm(20.1, -1)});
  CHECK(drawn.act == SketchAct::trackDrawn);
  REQUIRE(hand.board.tracks.size() == 3);
  CHECK(hand.board.tracks[0].start == mm(0, 0)); // the pins' own places
  CHECK(hand.board.tracks[2].end == mm(20, -1));
  CHECK(hand.board.tracks[0].width == fromUser(Length(200'000)));
  CHECK(pinCalled(hand.board, "J2.2").net == pinCalled(hand.board, "J1.1").net);
  CHECK(hand.board.tracks[1].net.value == pinCalled(hand.board, "J1.1").net.value);
  CHECK(labels(hand.board, hand.sketch.group()) == Labels{"J1.1", "J2.2"});
  CHECK(hand.sketch.from() == mm(20, -1));
  CHECK(hangTogether(hand.board, "J1.1", "J2.2"));
  // Only from a pin.
  CHECK(hand.stroke({mm(5, 5), mm(10, 5)}).act == SketchAct::nothing);
  CHECK(
      hand.sketch.stroke(Lookup(hand.board), hand.found(mm(0, 0)), {mm(0, 0)}, hand.found(mm(0, 0)))->edit ==
      Edit{});
}

TEST_CASE("a track goes on from its end by clicks, to a pin in the end") {
  Rows hand;
  hand.stroke({mm(0, 0), mm(5, 0)});
  CHECK(hand.sketch.from() == mm(5, 0));
  CHECK(pinCalled(hand.board, "J1.1").net.known()); // the copper is of a net
  CHECK(hand.click(5, 5).act == SketchAct::trackDrawn);
  CHECK(hand.click(15, 5).act == SketchAct::trackDrawn);
  CHECK(hand.click(20, -2).act == SketchAct::trackDrawn);
  CHECK(hand.board.tracks.size() == 4);
  CHECK(hand.board.tracks[3].start == mm(15, 5));
  CHECK(hand.board.tracks[3].end == mm(20, -2));
  CHECK(labels(hand.board, hand.sketch.group()) == Labels{"J1.1", "J2.3"});
  CHECK(hangTogether(hand.board, "J1.1", "J2.3"));
  CHECK(hand.board.nets.size() == 1);
  // The next pin is joined by name alone.
  CHECK(hand.click(0, -3).act == SketchAct::joined);
  CHECK(hand.board.tracks.size() == 4);
  // From a pin to a bare place it is drawn.
  CHECK(hand.click(-5, -3).act == SketchAct::trackDrawn);
  CHECK(hand.board.tracks[4].start == mm(0, -3));
}

TEST_CASE("a click at the place where copper ended draws nothing") {
  Rows hand;
  hand.stroke({mm(0, 0), mm(-5, 0)});
  const auto count = hand.board.tracks.size();
  CHECK(hand.click(-5, 0).act == SketchAct::nothing);
  CHECK(hand.board.tracks.size() == count);
}

TEST_CASE("a track to another track makes one net of two, and meets its middle line") {
  Rows hand;
  hand.type("net A");
  hand.click(0, 0);
  hand.stroke({mm(0, 0), mm(-10, 0)});
  hand.key(SketchKey::next);
  hand.type("net B");
  hand.click(0, -3);
  hand.stroke({mm(0, -3), mm(-5, -3)});
  const SketchAnswer joined = hand.click(-5, -0.15); // beside the track, within reach
  CHECK(joined.act == SketchAct::trackDrawn);
  CHECK(joined.swallowed == std::vector<std::string>{"A"});
  CHECK(hand.board.nets.size() == 1);
  CHECK(hand.board.tracks[2].end == mm(-5, 0));
  CHECK(hangTogether(hand.board, "J1.1", "J1.4"));
  CHECK(hand.sketch.from() == mm(-5, 0));
  // The same by a stroke.
  hand.undo();
  hand.key(SketchKey::next);
  CHECK(hand.stroke({mm(0, -3), mm(-4, -3), mm(-4, -0.15)}).swallowed == std::vector<std::string>{"A"});
  CHECK(hangTogether(hand.board, "J1.1", "J1.4"));
}

TEST_CASE("copper of no net is of the net that meets it") {
  Rows hand;
  hand.key(SketchKey::via, -5, 0);
  REQUIRE(hand.board.vias.size() == 1);
  CHECK_FALSE(hand.board.vias[0].net.known());
  hand.type("area");
  for (const auto& [x, y] : {std::pair{-10, -6}, {-6, -6}, {-6, -2}, {-10, -6}})
    hand.click(x, y);
  hand.type("");
  hand.click(0, 0);
  hand.click(-5.1, 0.1);
  const NetId net = hand.sketch.net(hand.board);
  CHECK(hand.board.vias[0].net == fromUser(net));
  CHECK(hand.board.tracks[0].end == mm(-5, 0));
  hand.click(-7, -5);
  CHECK(hand.board.areas[0].net == fromUser(net));
}

TEST_CASE("a net is taken up at its track or via, and drawn on from there") {
  Rows hand;
  hand.type("net A");
  hand.click(0, 0);
  hand.stroke({mm(0, 0), mm(-10, 0)});
  hand.key(SketchKey::via, -12, 0);
  hand.key(SketchKey::next);
  hand.click(-5, 0.1);
  CHECK(hand.sketch.net(hand.board) == pinCalled(hand.board, "J1.1").net.value);
  CHECK(hand.sketch.from() == mm(-5, 0));
  CHECK(hand.due() == SketchDue{What::joinPin, "A", {}, 0});
  CHECK(hand.click(0, -1).act == SketchAct::trackDrawn);
  CHECK(netOfPin(hand.board, "J1.2") == "A");
  CHECK(hangTogether(hand.board, "J1.1", "J1.2"));
  hand.key(SketchKey::next);
  hand.click(-12.1, 0.1, Side::bottom);
  CHECK(hand.sketch.from() == mm(-12, 0));
  hand.click(-12, -9, Side::bottom);
  CHECK(hand.board.tracks[hand.board.tracks.size() - 1].layer.value == hand.board.info.layerOrder.back());
  // Without a pin it can be named.
  hand.key(SketchKey::next);
  hand.click(-5, 0);
  CHECK(hand.type("CLK").act == SketchAct::named);
  CHECK(netOfPin(hand.board, "J1.1") == "CLK");
}

TEST_CASE("a via ends a piece of track and leads on") {
  Rows hand;
  hand.click(0, 0);
  const SketchAnswer put = hand.key(SketchKey::via, -5, 0);
  CHECK(put.act == SketchAct::viaPut);
  REQUIRE(hand.board.vias.size() == 1);
  CHECK(hand.board.vias[0].position == mm(-5, 0));
  CHECK(hand.board.vias[0].diameter == guessed(Length(500'000)));
  CHECK(hand.board.vias[0].net == pinCalled(hand.board, "J1.1").net);
  REQUIRE(hand.board.tracks.size() == 1);
  CHECK(hand.board.tracks[0].layer.value == hand.board.info.layerOrder.front());
  CHECK(hand.sketch.from() == mm(-5, 0));
  hand.click(-5, -5, Side::bottom);
  CHECK(hand.board.tracks[1].layer.value == hand.board.info.layerOrder.back());
  CHECK(hand.board.tracks[1].start == mm(-5, 0));
  // A pin is drawn to from a via, not joined by name alone.
  hand.key(SketchKey::next);
  hand.click(0, -3);
  hand.key(SketchKey::via, -8, -3);
  CHECK(hand.click(20, -3).act == SketchAct::trackDrawn);
  CHECK(hand.board.tracks[3].start == mm(-8, -3));
  for (int i = 0; i < 2; ++i)
    hand.undo();
  // Where there is one, no second is put.
  hand.key(SketchKey::next);
  hand.click(0, -1);
  CHECK(hand.key(SketchKey::via, -5.1, 0.1).act == SketchAct::viaPut);
  CHECK(hand.board.vias.size() == 1);
  CHECK(hand.board.tracks[2].end == mm(-5, 0));
  CHECK(pinCalled(hand.board, "J1.2").net.value == pinCalled(hand.board, "J1.1").net.value);
  CHECK(hand.key(SketchKey::via, -5, 0).act == SketchAct::nothing);
}

TEST_CASE("inside it goes from via to via, nobody knows how") {
  Rows hand;
  CHECK(hand.key(SketchKey::inside).act == SketchAct::nothing);
  CHECK_FALSE(hand.sketch.goesInside());
  hand.click(0, 0);
  hand.key(SketchKey::via, -5, 0);
  hand.key(SketchKey::inside);
  CHECK(hand.sketch.goesInside());
  CHECK(hand.due() == SketchDue{What::insideEnd, {}, "J1.1", 1});
  hand.key(SketchKey::inside);
  CHECK_FALSE(hand.sketch.goesInside());
  hand.key(SketchKey::inside);
  const SketchAnswer run = hand.click(-5, 20);
  CHECK(run.act == SketchAct::insideRun);
  CHECK(hand.board.vias.size() == 2);
  CHECK(hand.board.vias[1].position == mm(-5, 20));
  CHECK(hand.board.vias[1].diameter == guessed(Length(500'000)));
  const Track& inside = hand.board.tracks[1];
  CHECK(inside.way == TrackWay::unknownWay);
  CHECK(inside.start == mm(-5, 0));
  CHECK(inside.end == mm(-5, 20));
  CHECK(inside.net == hand.board.vias[1].net);
  CHECK_FALSE(hand.sketch.goesInside());
  hand.click(20, 20);
  hand.click(20, 0);
  CHECK(hangTogether(hand.board, "J1.1", "J2.1"));
  // To a pin, and by the key for a via: one via where it ends.
  hand.key(SketchKey::next);
  hand.click(0, -2);
  hand.key(SketchKey::inside);
  CHECK(hand.click(20, -2).act == SketchAct::insideRun);
  CHECK(hand.board.vias.size() == 2);
  CHECK(netOfPin(hand.board, "J2.3").empty());
  hand.key(SketchKey::inside);
  CHECK(hand.key(SketchKey::via, 30, -20).act == SketchAct::viaPut);
  CHECK(hand.board.vias.size() == 3);
  CHECK_FALSE(hand.sketch.goesInside());
  CHECK(hand.board.tracks[hand.board.tracks.size() - 1].way == TrackWay::unknownWay);
  // Nowhere to go: nothing.
  hand.key(SketchKey::inside);
  CHECK(hand.click(30, -20).act == SketchAct::nothing);
}

TEST_CASE("an inner run ends with a via also in a zone and in an area") {
  Rows hand;
  hand.type("zone heat");
  for (const auto& [x, y] : {std::pair{-20, 10}, {-10, 10}, {-10, 20}, {-20, 10}})
    hand.click(x, y);
  hand.type("");
  hand.click(0, 0);
  hand.key(SketchKey::inside);
  hand.click(-12, 12);
  CHECK(hand.board.vias.size() == 1);
}

TEST_CASE("copper that is seen between the last two pins, straight and by its other ways") {
  Rows hand;
  hand.click(0, 0);
  CHECK(hand.key(SketchKey::copper).act == SketchAct::nothing); // one pin
  hand.click(20, -3);
  CHECK(hand.key(SketchKey::copper).act == SketchAct::trackDrawn);
  const auto ways = [&] {
    Ring out{hand.board.tracks[0].start};
    for (const Track& track : hand.board.tracks)
      out.push_back(track.end);
    return out;
  };
  CHECK(ways() == Ring{mm(0, 0), mm(20, -3)});
  CHECK(hand.board.tracks[0].net.value == hand.sketch.net(hand.board));
  CHECK(hand.board.tracks[0].layer.value == hand.board.info.layerOrder.front());
  CHECK(hand.key(SketchKey::copper).act == SketchAct::nothing); // it is there
  hand.key(SketchKey::otherWay);
  CHECK(ways() == Ring{mm(0, 0), mm(17, 0), mm(20, -3)});
  hand.key(SketchKey::otherWay);
  CHECK(ways() == Ring{mm(0, 0), mm(3, -3), mm(20, -3)});
  hand.key(SketchKey::otherWay);
  CHECK(ways() == Ring{mm(0, 0), mm(20, -3)});
  // When it is undone, the key draws it anew.
  for (int i = 0; i < 4; ++i)
    hand.undo();
  CHECK(hand.board.tracks.empty());
  hand.key(SketchKey::otherWay);
  CHECK(ways() == Ring{mm(0, 0), mm(20, -3)});
  // The next pin has copper of its own.
  hand.click(20, -2);
  hand.key(SketchKey::copper);
  CHECK(hand.board.tracks.size() == 2);
  CHECK(hand.board.tracks[1].start == mm(20, -3));
  CHECK(hand.board.tracks[1].end == mm(20, -2));
  // Where copper leads on from a corner, there is nothing between two pins.
  hand.click(25, -5);
  CHECK(hand.key(SketchKey::copper).act == SketchAct::nothing);
}

TEST_CASE("copper between pins of the bottom is drawn there, as wide as was typed") {
  Hand hand;
  hand.type("J1 2");
  hand.click(0, 0, Side::bottom);
  hand.click(0, -5, Side::bottom);
  hand.key(SketchKey::take);
  hand.type("track 0.35");
  CHECK(hand.sketch.trackWidth() == Length(350'000));
  hand.click(0, 0, Side::bottom);
  hand.click(0, -5, Side::bottom);
  hand.key(SketchKey::copper);
  CHECK(hand.board.tracks[0].layer.value == hand.board.info.layerOrder.back());
  CHECK(hand.board.tracks[0].width == fromUser(Length(350'000)));
  // The width may be changed with a net in hand.
  hand.type("track 0.5");
  CHECK(hand.sketch.netInHand());
  hand.sketch.setTrackWidth(Length(1));
  CHECK(hand.sketch.trackWidth() == Length(20'000));
  hand.sketch.setTrackWidth(Length(50'000'000));
  CHECK(hand.sketch.trackWidth() == Length(20'000'000));
}

TEST_CASE("copper is removed where the pointer is") {
  Rows hand;
  hand.stroke({mm(0, 0), mm(-10, 0)});
  hand.key(SketchKey::via, -12, 0);
  hand.key(SketchKey::next);
  CHECK(hand.key(SketchKey::remove, -5, 5).act == SketchAct::nothing);
  CHECK(hand.key(SketchKey::remove, -5, 0.2).act == SketchAct::removed);
  CHECK(hand.board.tracks.size() == 1);
  CHECK(hand.key(SketchKey::remove, -12, 0.2).act == SketchAct::removed);
  CHECK(hand.board.vias.empty());
  // With copper in hand, too; then the net is done.
  hand.click(-11, 0);
  CHECK(hand.sketch.netInHand());
  CHECK(hand.key(SketchKey::remove, -11, 0).act == SketchAct::removed);
  CHECK(hand.board.tracks.empty());
  CHECK_FALSE(hand.sketch.netInHand());
}

TEST_CASE("copper that was undone is not gone on from") {
  Rows hand;
  hand.stroke({mm(0, 0), mm(-10, 0)});
  hand.click(-10, 5);
  CHECK(hand.sketch.from() == mm(-10, 5));
  hand.undo();
  hand.key(SketchKey::skip); // anything that looks at the board
  CHECK(hand.sketch.from() == mm(0, 0));
  hand.undo();
  CHECK(hand.click(5, 5).act == SketchAct::trackDrawn);
  CHECK(hand.board.tracks[0].start == mm(0, 0));
  // What is there on the bottom stays.
  hand.click(5, 9, Side::bottom);
  hand.key(SketchKey::skip);
  CHECK(hand.sketch.from() == mm(5, 9));
  hand.undo();
  // Copper in hand that goes takes the net with it.
  hand.key(SketchKey::next);
  hand.click(2, 2);
  CHECK(hand.sketch.netInHand());
  hand.undo();
  CHECK(hand.click(8, 8).act == SketchAct::nothing);
  CHECK_FALSE(hand.sketch.netInHand());
  CHECK(hand.board.tracks.empty());
}
