#include <catch2/catch.hpp>

#include "repaired_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// A part whose pins all have been read, one of them odd.
struct Neighbourhood : RepairedBoard {
  PartId u = part("U8", Side::top, {});
  PinId centre;
  explicit Neighbourhood(Point at = mm(0.5, 10)) : centre(placed(u, "C", at)) {
    read(centre, std::nullopt, foundOpen);
    act(RepairKind::resolder);
  }
  void good(PinId pin) { read(pin, 0.6, foundGood); }
  void good(const ProbePoint& point) { read(point, 0.6, foundGood); }
};

} // namespace

TEST_CASE("neighbours are as far off as the nearest pin of the part, or a tenth more", "[casework]") {
  // Neither the first nor the last that is looked at is the nearest, and one has no place: not even the
  // board's corner, which is nearer.
  Neighbourhood b(mm(0.5, 0));
  b.good(b.placed(b.u, "far", mm(8, 0)));
  b.good(b.unplaced(b.u, "nowhere"));
  b.good(b.placed(b.u, "just", mm(0.5, -1.1)));
  b.good(b.placed(b.u, "nearest", mm(1.5, 0)));
  b.good(b.placed(b.u, "beyond", mm(0.5, 1.100001)));
  b.good(b.placed(b.part("U7", Side::top, {}), "foreign", mm(0.7, 0)));
  CHECK(b.told() == Told{"odd U8.C", "neighbour U8.just", "neighbour U8.nearest"});
}

TEST_CASE("a pin in the same place is beside, and not what the others are measured by", "[casework]") {
  Neighbourhood b;
  b.good(b.placed(b.u, "same", mm(0.5, 10)));
  b.good(b.placed(b.u, "next", mm(1.5, 10)));
  b.good(b.placed(b.u, "far", mm(3.5, 10)));
  CHECK(b.told() == Told{"odd U8.C", "neighbour U8.same", "neighbour U8.next"});
}

TEST_CASE("where no other pin of the part has a place, what lies elsewhere is not beside", "[casework]") {
  Neighbourhood b;
  b.good(b.placed(b.u, "same", mm(0.5, 10)));
  CHECK(b.told() == Told{"odd U8.C", "neighbour U8.same"});
}

TEST_CASE("a place is not its own neighbour, and what was not read is none", "[casework]") {
  Neighbourhood b;
  b.read(b.centre, 47.0, foundGood).reading.mode = ReadingMode::ohms;
  static_cast<void>(b.placed(b.u, "unread", mm(1.5, 10)));
  CHECK(b.told() == Told{"odd U8.C"});
}

TEST_CASE("a neighbour is measured again as it was, for the same repair", "[casework]") {
  Neighbourhood b;
  JobReading& before = b.read(b.placed(b.u, "next", mm(1.5, 10)), 0.9, foundGood);
  before.reading.mode = ReadingMode::diodeReverse;
  before.reading.other = {PinId{}, "shell"};
  before.reading.condition.lifted = {"R3"};
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd U8.C", "neighbour U8.next"});
  CHECK(points[1].mode == ReadingMode::diodeReverse);
  CHECK(points[1].other.label == "shell");
  CHECK(points[1].condition.lifted == std::vector<std::string>{"R3"});
  CHECK(points[1].action == points[0].action);
  REQUIRE(points[1].before);
  CHECK(points[1].before->id == JobReadingId{2});
}

TEST_CASE("one place has four neighbours at most, the first that were read", "[casework]") {
  Neighbourhood b;
  const PinId east = b.placed(b.u, "E", mm(1.5, 10));
  b.good(east);
  b.good(b.placed(b.u, "N", mm(0.5, 11)));
  b.good(b.placed(b.u, "W", mm(-0.5, 10)));
  b.good(b.placed(b.u, "S", mm(0.5, 9)));
  const Told four{"odd U8.C", "neighbour U8.E", "neighbour U8.N", "neighbour U8.W", "neighbour U8.S"};
  CHECK(b.told() == four);
  b.read(east, 47.0, foundGood).reading.mode = ReadingMode::ohms; // a fifth
  CHECK(b.told() == four);
}

TEST_CASE("what is proved for another reason takes no neighbour's place", "[casework]") {
  Neighbourhood b;
  const PinId east = b.placed(b.u, "E", mm(1.5, 10));
  b.read(east, std::nullopt, foundOpen);
  for (const double y : {11.0, 9.0})
    b.good(b.placed(b.u, "y" + std::to_string(static_cast<int>(y)), mm(0.5, y)));
  for (const char* name : {"W", "V"}) // one on the other
    b.good(b.placed(b.u, name, mm(-0.5, 10)));
  CHECK(b.told() == Told{"odd U8.C", "odd U8.E", "neighbour U8.y11", "neighbour U8.y9", "neighbour U8.W",
                         "neighbour U8.V"});
}

TEST_CASE("neighbours of every landing follow, each for its own repair, and none of the wire between",
          "[casework]") {
  RepairedBoard b;
  const auto five = [&](const std::string& reference) {
    const PartId u = b.part(reference, Side::top, {});
    const PinId middle = b.placed(u, "M", mm(20, 20));
    for (int i = 1; i <= 5; ++i) // all in one place, and so all beside
      b.read(b.placed(u, std::to_string(i), mm(20, 20)), 0.6, foundGood);
    return middle;
  };
  const PinId first = five("U1"), second = five("U2");
  b.bridge(first, b.lone("X1"));
  b.bridge(second, b.lone("X2"));
  const auto points = b.points();
  CHECK(b.told(points) == Told{"landing U1.M", "landing X1.1", "wire U1.M", "landing U2.M", "landing X2.1",
                               "wire U2.M", "neighbour U1.1", "neighbour U1.2", "neighbour U1.3",
                               "neighbour U1.4", "neighbour U2.1", "neighbour U2.2", "neighbour U2.3",
                               "neighbour U2.4"});
  CHECK(points[6].action == RepairActionId{100});
  CHECK(points[10].action == RepairActionId{101});
}

TEST_CASE("a neighbour's neighbours are not asked for", "[casework]") {
  RepairedBoard b;
  const PartId j = b.part("J1", Side::top, {});
  std::vector<PinId> row;
  for (int i = 1; i <= 6; ++i)
    row.push_back(b.placed(j, std::to_string(i), mm(i, 5)));
  for (const PinId pin : row)
    b.read(pin, pin == row[2] ? std::nullopt : std::optional(0.6), pin == row[2] ? foundOpen : foundGood);
  b.act(RepairKind::resolder);
  CHECK(b.told() == Told{"odd J1.3", "neighbour J1.2", "neighbour J1.4"});
}

TEST_CASE("where a place is not known, the number before and after is beside", "[casework]") {
  RepairedBoard b;
  const PartId u = b.part("U8", Side::top, {});
  const PinId three = b.placed(u, "3", mm(30, 30));
  b.placed(u, "20", mm(31, 30)); // 1 mm away: that far its neighbours reach
  b.read(three, std::nullopt, foundOpen);
  for (const char* name : {"4", "2", "5", "1", "3A", "A4", "-4"})
    b.read(b.unplaced(u, name), 0.6, foundGood);
  b.read(b.unplaced(b.part("U9", Side::top, {}), "4"), 0.6, foundGood);
  b.act(RepairKind::resolder);
  CHECK(b.told() == Told{"odd U8.3", "neighbour U8.4", "neighbour U8.2"});
}

TEST_CASE("labels alone are beside by their last number and all that stands before it", "[casework]") {
  const auto beside = [](const std::string& a, const std::string& b) {
    RepairedBoard board;
    board.read(ProbePoint{PinId{}, a}, std::nullopt, foundOpen);
    board.read(ProbePoint{PinId{}, b}, 0.6, foundGood);
    board.act(RepairKind::resolder);
    return board.points().size() == 2;
  };
  CHECK(beside("J9.9", "J9.10"));
  CHECK(beside("J9.10", "J9.9"));
  CHECK(beside("J9.0", "J9.1"));
  CHECK(beside("CARD.J9.3", "CARD.J9.4"));
  CHECK_FALSE(beside("J9.3", "J9.5"));
  CHECK_FALSE(beside("J9.3", "J8.4"));
  CHECK_FALSE(beside("J9.3", "J10.4"));
  CHECK_FALSE(beside("CARD.J9.3", "CARD.J8.4"));
  CHECK_FALSE(beside("3", "4"));
  CHECK_FALSE(beside("J9.3", "4"));
  CHECK_FALSE(beside("J9.A", "J9.B"));
  CHECK_FALSE(beside("J9.3", "J9.4A"));
  CHECK_FALSE(beside("J9.3A", "J9.4"));
  CHECK_FALSE(beside("J9.", "J9.1"));
}

TEST_CASE("where one of two places has no pin, or nobody has the board, labels say what is beside",
          "[casework]") {
  RepairedBoard b;
  const PartId u = b.part("U8", Side::top, {});
  const PinId three = b.placed(u, "3", mm(30, 30));
  b.placed(u, "20", mm(31, 30));
  const ProbePoint label{PinId{}, "U8.4"};
  b.act(RepairKind::resolder);
  SECTION("the neighbour") {
    b.read(three, std::nullopt, foundOpen);
    b.read(label, 0.6, foundGood);
    CHECK(b.told() == Told{"odd U8.3", "neighbour U8.4"});
  }
  SECTION("what was odd") {
    b.read(label, std::nullopt, foundOpen);
    b.read(three, 0.6, foundGood);
    CHECK(b.told() == Told{"odd U8.4", "neighbour U8.3"});
  }
  SECTION("without the board both pins") {
    b.read(three, std::nullopt, foundOpen);
    b.read(b.placed(u, "4", mm(40, 40)), 0.6, foundGood); // far away, as only the board knows
    CHECK(b.told() == Told{"odd U8.3"});
    CHECK(b.told(proofPoints({b.job, nullptr, b.expected, b.data})) == Told{"odd U8.3", "neighbour U8.4"});
  }
}

TEST_CASE("a pin that is not on the board is beside nothing", "[casework]") {
  RepairedBoard b;
  const PartId u = b.part("U8", Side::top, {});
  const PinId known = b.placed(u, "3", mm(30, 30));
  const ProbePoint gone{PinId{4711}, "U8.4"};
  b.act(RepairKind::resolder);
  SECTION("not as the neighbour") {
    b.read(known, std::nullopt, foundOpen);
    b.read(gone, 0.6, foundGood);
    CHECK(b.told().size() == 1);
  }
  SECTION("nor as what was odd") {
    b.read(gone, std::nullopt, foundOpen);
    b.read(known, 0.6, foundGood);
    CHECK(b.told().size() == 1);
  }
}

TEST_CASE(
    "beside a soldered end the next pads of other parts are proved, where something says what they read",
    "[casework]") {
  RepairedBoard b;
  const PartId c = b.part("C28", Side::top, {}), other = b.part("R5", Side::top, {});
  const PinId end = b.placed(c, "1", mm(20, 20));
  const PinId near = b.placed(other, "1", mm(21, 20));
  const PinId reach = b.placed(other, "2", mm(23, 20));
  const PinId beyond = b.placed(other, "3", mm(23.001, 20));
  const PinId unknown = b.placed(other, "4", mm(20.5, 20)); // nothing says what it reads
  static_cast<void>(unknown);
  const PinId ground = b.pin(other, "5", b.net("GND")); // a bridge to it is read at the end itself
  b.pad(ground, mm(20.2, 20), PadReach::top, 0.4);
  b.expected.put(b.at(ground), {}, reads(0.0));
  for (const PinId pin : {near, reach, beyond})
    b.expected.put(b.at(pin), {}, reads(0.6));
  SECTION("of a wire") {
    b.bridge(end, b.lone("X1"));
    CHECK(b.told() ==
          Told{"landing C28.1", "landing X1.1", "wire C28.1", "neighbour R5.1", "neighbour R5.2"});
  }
  SECTION("of a part that was soldered again, called by its reference or by its pin") {
    RepairAction& action = b.act(RepairKind::resolder);
    for (const char* target : {"C28", "C28.1"}) {
      b.job.actions.front().target = target;
      CHECK(b.told() == Told{"neighbour R5.1", "neighbour R5.2"});
    }
    action.target = "nowhere";
    CHECK(b.told().empty());
  }
  SECTION("not of one that was only cleaned") {
    b.act(RepairKind::clean).target = "C28";
    CHECK(b.told().empty());
  }
}

TEST_CASE("copper of the soldered net is not beside its end, and four pads are enough", "[casework]") {
  RepairedBoard b;
  const PartId u = b.part("U8", Side::top, {});
  const PinId end = b.placed(u, "C", mm(20, 20));
  std::vector<PinId> pins;
  for (int i = 1; i <= 5; ++i)
    pins.push_back(b.placed(u, std::to_string(i), mm(20 + 0.4 * i, 20)));
  for (const PinId pin : pins)
    b.expected.put(b.at(pin), {}, reads(0.6));
  b.bridge(end, b.lone("X1"));
  CHECK(b.told() == Told{"landing U8.C", "landing X1.1", "wire U8.C", "neighbour U8.1", "neighbour U8.2",
                         "neighbour U8.3", "neighbour U8.4"});
  Pin same = *b.board.pins.find(pins.front());
  same.net = b.board.pins.find(end)->net;
  b.board.pins.put(same);
  CHECK(b.told() == Told{"landing U8.C", "landing X1.1", "wire U8.C", "neighbour U8.2", "neighbour U8.3",
                         "neighbour U8.4", "neighbour U8.5"});
}
