#include "netmend/probing/walk_file.h"
#include "netmend/probing/walk_session.h"
#include "support.h"

using namespace netmend;

namespace {

constexpr Time noon{std::chrono::milliseconds(1772366400123)};

/// J4 with pins 1 …: each on a net of this name; "-": known to be on none; "?": nobody knows.
Board boardWith(const std::vector<std::string>& nets) {
  Board board;
  board.info.uuid = "board-a";
  Part connector;
  connector.id = board.newId<PartId>();
  connector.reference = "J4";
  board.parts.put(connector);
  for (std::size_t i = 0; i < nets.size(); ++i) {
    Pin pin;
    pin.part = connector.id;
    pin.name = std::to_string(i + 1);
    if (nets[i] == "-") pin.net = fromFile(NetId{});
    if (nets[i] != "-" && nets[i] != "?") {
      Net net;
      net.id = board.newId<NetId>();
      net.name = nets[i];
      board.nets.put(net);
      pin.net = fromFile(net.id);
    }
    pin.id = board.newId<PinId>();
    board.pins.put(pin);
  }
  return board;
}

std::vector<std::string> withoutNet(const std::vector<std::string>& nets) {
  const Board board = boardWith(nets);
  const Lookup lookup(board);
  std::vector<std::string> out;
  for (const ProbePoint& point : pointsWithoutNet(lookup, pointsOf(lookup, board.parts[0].id)))
    out.push_back(point.label);
  return out;
}

/// Seven pins, of which 1, 3, 4 and 7 are passed over.
WalkSession session() {
  WalkSession out;
  for (int i = 1; i <= 7; ++i)
    out.walk.points.push_back({PinId{}, "J4." + std::to_string(i)});
  for (const std::size_t i : {0u, 2u, 3u, 6u})
    out.passedOver.push_back(out.walk.points[i]);
  out.turn = dueFrom(out, 0);
  return out;
}

std::string due(const WalkSession& session) {
  return session.finished() ? "none" : session.walk.points[session.turn].label;
}

void read(WalkSession& session, const std::string& label = {}) {
  REQUIRE(take(session, ValueTaken{.label = label, .value = 0.45}, noon));
}

} // namespace

TEST_CASE("pins known to be on no net are passed over; where nobody knows, the pin is walked") {
  using Labels = std::vector<std::string>;
  CHECK(withoutNet({"CLK", "-", "?", ""}) == Labels{"J4.2"});
  // KiCad's own name for the net of a pin marked as not connected, since version 6.
  CHECK(withoutNet({"CLK", "unconnected-(J4-Pad2)", "unconnected", "-"}) == Labels{"J4.2", "J4.4"});
}

TEST_CASE("a part of which no pin has a net is walked whole, one of which one has is not") {
  CHECK(withoutNet({"-", "-", "-"}).empty());
  CHECK(withoutNet({"?", "?"}).empty());
  CHECK(withoutNet({"-", "-", "CLK"}).size() == 2);
  CHECK(withoutNet({"-", "?"}).size() == 1);
}

TEST_CASE("a walk goes past what is passed over, onwards and back, and ends with it") {
  WalkSession walk = session();
  CHECK(due(walk) == "J4.2");
  CHECK_FALSE(take(walk, StepBack{}, noon)); // before it there is nothing that is walked
  CHECK(due(walk) == "J4.2");
  read(walk);
  CHECK(due(walk) == "J4.5");
  REQUIRE(take(walk, StepBack{}, noon));
  CHECK(due(walk) == "J4.2");
  REQUIRE(take(walk, PointSkipped{}, noon));
  CHECK(due(walk) == "J4.5");
  REQUIRE(take(walk, UndoLast{}, noon));
  CHECK(due(walk) == "J4.2");
  REQUIRE(take(walk, PointSkipped{}, noon));
  read(walk);
  CHECK(due(walk) == "J4.6");
  read(walk);
  CHECK(due(walk) == "none");
  CHECK(walk.turn == 7);
  REQUIRE(take(walk, StepBack{}, noon));
  CHECK(due(walk) == "J4.6");
}

TEST_CASE("who goes to a pin that is passed over reads it, and goes on after it") {
  WalkSession walk = session();
  read(walk, "J4.3");
  CHECK(walk.walk.readings.back().point.label == "J4.3");
  CHECK(due(walk) == "J4.5");
  walk.turn = 3;
  read(walk);
  CHECK(walk.walk.readings.back().point.label == "J4.4");
  CHECK(due(walk) == "J4.5");
}

TEST_CASE("a gap that was filled leads to the next gap, a point read again to the one behind it") {
  WalkSession walk = session();
  walk.passedOver.clear();
  for (const char* label : {"J4.1", "J4.2", "J4.4", "J4.5"})
    read(walk, label);
  CHECK(due(walk) == "J4.6");
  read(walk, "J4.3");
  CHECK(due(walk) == "J4.6");
  read(walk, "J4.3");
  CHECK(due(walk) == "J4.4");
  read(walk);
  CHECK(due(walk) == "J4.5");
}

TEST_CASE("behind the last point what was left out is due, but not what was skipped") {
  WalkSession walk = session();
  walk.passedOver.clear();
  walk.turn = 1;
  REQUIRE(take(walk, PointSkipped{}, noon));
  walk.turn = 6;
  read(walk);
  CHECK(due(walk) == "J4.1");
  read(walk);
  CHECK(due(walk) == "J4.2"); // the one behind it, as ever
  walk.turn = 3;
  for (const char* label : {"J4.4", "J4.5", "J4.6"}) {
    CHECK(due(walk) == label);
    read(walk);
  }
  CHECK(due(walk) == "J4.3");
  REQUIRE(take(walk, PointSkipped{}, noon));
  CHECK(due(walk) == "J4.4");
  walk.turn = 6;
  REQUIRE(take(walk, PointSkipped{}, noon));
  CHECK(due(walk) == "none");
}
