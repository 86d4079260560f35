#include <catch2/catch.hpp>

#include "netmend/jobbook/record.h"
#include "repaired_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

LandingPlace viaLanding(const char* handle, Point at) {
  LandingPlace place;
  place.kind = LandingKind::via;
  place.at = at;
  place.point.label = handle;
  return place;
}

/// Connector J1 with eight pins 1 mm apart.
struct Connector : RepairedBoard {
  PartId j1 = part("J1", Side::top, {});
  std::vector<PinId> row;
  Connector() {
    for (int i = 1; i <= 8; ++i)
      row.push_back(placed(j1, std::to_string(i), mm(i, 5)));
  }
};

const ProofPoint& wireOf(const std::vector<ProofPoint>& points) {
  for (const ProofPoint& point : points)
    if (point.why == ProofWhy::endToEnd) return point;
  FAIL("no wire is to be proved");
  return points.front();
}

} // namespace

TEST_CASE("nothing is proved without a repair, nor where the only one is that it does not pay",
          "[casework]") {
  RepairedBoard b;
  b.read(b.lone("X1"), std::nullopt, foundOpen);
  CHECK(b.told().empty());
  b.act(RepairKind::notEconomic);
  CHECK(b.told().empty());
  b.act(RepairKind::resolder);
  b.act(RepairKind::clean);
  b.act(RepairKind::notEconomic);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd X1.1"});
  CHECK(points[0].action == RepairActionId{102}); // the last that was done
}

TEST_CASE("what was odd is measured again as it was measured, in the order of the readings", "[casework]") {
  RepairedBoard b;
  const ProbePoint ground{PinId{}, "shell"};
  b.read(b.lone("X1"), 0.65, foundGood);
  b.read(b.lone("X2"), std::nullopt, foundOpen);
  JobReading& reversed = b.read(b.lone("X3"), 0.9, VerdictKind::high);
  reversed.reading.mode = ReadingMode::diodeReverse;
  reversed.reading.other = ground;
  reversed.reading.condition.lifted = {"R3"};
  b.read(b.lone("X4"), 0.4, VerdictKind::nothingToCompare);
  b.read(b.lone("X5"), 0.4, foundOpen).judged.reset(); // not judged
  b.read(b.lone("X6"), 0.001, VerdictKind::shorted);
  b.act(RepairKind::resolder);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd X2.1", "odd X3.1", "odd X6.1"});
  CHECK(points[0].mode == ReadingMode::diode);
  CHECK(points[0].other == ProbePoint{PinId{}, "GND"});
  CHECK(points[0].condition == Condition{});
  CHECK(points[1].mode == ReadingMode::diodeReverse);
  CHECK(points[1].other == ground);
  CHECK(points[1].condition.lifted == std::vector<std::string>{"R3"});
  REQUIRE(points[1].before);
  CHECK(points[1].before->id == JobReadingId{3});
  CHECK_FALSE(points[1].now);
  CHECK_FALSE(points[1].expected);
  CHECK_FALSE(points[1].limits);
  for (const ProofPoint& point : points)
    CHECK(point.action == RepairActionId{100});
}

TEST_CASE("of several readings of one place in one mode the latest says whether it was odd", "[casework]") {
  RepairedBoard b;
  const PinId healed = b.lone("X1"), broken = b.lone("X2");
  b.read(healed, std::nullopt, foundOpen);
  b.read(broken, 0.65, foundGood);
  b.read(healed, 0.65, foundGood);
  b.read(broken, std::nullopt, foundOpen);
  b.act(RepairKind::resolder);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd X2.1"});
  CHECK(points[0].before->id == JobReadingId{4});
}

TEST_CASE("of a place read in two conditions the latest says whether it was odd", "[casework]") {
  RepairedBoard b;
  const PinId healed = b.lone("X1"), broken = b.lone("X2");
  b.read(healed, std::nullopt, foundOpen).reading.condition.plugged = {"battery"};
  b.read(broken, 0.65, foundGood).reading.condition.plugged = {"battery"};
  b.read(healed, 0.65, foundGood);
  b.read(broken, std::nullopt, foundOpen);
  b.act(RepairKind::resolder);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd X2.1"});
  CHECK(points[0].before->id == JobReadingId{4});
  CHECK(points[0].condition == Condition{});
}

TEST_CASE("two readings are of one place when mode and other lead agree too", "[casework]") {
  RepairedBoard b;
  const PinId pin = b.lone("X1"), other = b.lone("X2");
  b.read(pin, std::nullopt, foundOpen);
  b.read(pin, 0.9, foundGood).reading.mode = ReadingMode::diodeReverse;
  b.read(pin, 0.4, foundGood).reading.other = b.at(other);
  b.read(other, 0.4, foundGood);
  b.act(RepairKind::resolder);
  CHECK(b.told() == Told{"odd X1.1"});
}

TEST_CASE("places are told apart by their pins, and by labels where one has no pin", "[casework]") {
  RepairedBoard b;
  const PinId first = b.lone("X1"), second = b.lone("X2"), third = b.lone("X3"), fourth = b.lone("X4");
  b.act(RepairKind::resolder);
  SECTION("one pin under two labels is one place") {
    b.read(ProbePoint{first, "X1.1"}, std::nullopt, foundOpen);
    b.read(ProbePoint{first, "key row"}, 0.65, foundGood);
    CHECK(b.told().empty());
  }
  SECTION("two pins of one label are two") {
    b.read(ProbePoint{first, "pad"}, std::nullopt, foundOpen);
    b.read(ProbePoint{second, "pad"}, 0.65, foundGood);
    CHECK(b.told() == Told{"odd X1.1"});
  }
  SECTION("what has no pin is known by its label") {
    b.read(ProbePoint{PinId{}, "pad"}, std::nullopt, foundOpen);
    b.read(ProbePoint{third, "pad"}, 0.65, foundGood);
    CHECK(b.told().empty());
  }
  SECTION("another label without a pin is another place") {
    b.read(ProbePoint{PinId{}, "pad"}, std::nullopt, foundOpen);
    b.read(ProbePoint{PinId{}, "via"}, 0.65, foundGood);
    b.read(ProbePoint{fourth, "X4.1"}, 0.65, foundGood);
    CHECK(b.told() == Told{"odd pad"});
  }
}

TEST_CASE("a proof, or what was read while the repair was under way, says nothing of the time before",
          "[casework]") {
  RepairedBoard b;
  const PinId odd = b.lone("X1"), later = b.lone("X2");
  b.read(odd, std::nullopt, foundOpen);
  b.read(odd, 0.65, foundGood).purpose = ReadingPurpose::proof;
  b.read(odd, 0.65, foundGood).reading.condition.handling = repairUnderWay;
  b.read(later, std::nullopt, foundOpen);
  b.act(RepairKind::resolder);
  CHECK(b.told() == Told{"odd X1.1", "odd X2.1"});
}

TEST_CASE("the proof of a place is the latest one measured in the same way", "[casework]") {
  RepairedBoard b;
  const PinId pin = b.lone("X1"), other = b.lone("X2");
  b.read(pin, std::nullopt, foundOpen);
  b.act(RepairKind::resolder);
  const auto prove = [&](double value) -> JobReading& {
    JobReading& entry = b.read(pin, value, foundGood);
    entry.purpose = ReadingPurpose::proof;
    return entry;
  };
  prove(0.9).reading.mode = ReadingMode::diodeReverse;
  prove(0.8).reading.other = b.at(other);
  prove(0.7).reading.point = b.at(other);
  CHECK_FALSE(b.points().at(0).now);
  prove(0.6);
  prove(0.651);
  prove(0.9).reading.mode = ReadingMode::ohms;
  REQUIRE(b.points().at(0).now);
  CHECK(b.points().at(0).now->reading.value == 0.651);
}

TEST_CASE("a wire is proved at both landings and from end to end, jumper by jumper, after what was odd",
          "[casework]") {
  RepairedBoard b;
  const PinId a = b.lone("X1"), z = b.lone("X2"), c = b.lone("X3"), d = b.lone("X4"), odd = b.lone("X5");
  b.read(odd, std::nullopt, foundOpen).reading.condition.lifted = {"R3"};
  b.read(b.lone("X6"), 0.4, foundGood);
  b.bridge(a, z);
  b.act(RepairKind::clean);
  b.bridge(c, d);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd X5.1", "landing X1.1", "landing X2.1", "wire X1.1", "landing X3.1",
                                 "landing X4.1", "wire X3.1"});
  CHECK(points[0].action == RepairActionId{102}); // the last repair
  CHECK(points[1].action == RepairActionId{100});
  CHECK(points[3].action == RepairActionId{100});
  CHECK(points[4].action == RepairActionId{102});
  CHECK(points[6].action == RepairActionId{102});
  for (const std::size_t i : {1u, 2u, 4u, 5u}) {
    CHECK(points[i].mode == ReadingMode::diode);
    CHECK(points[i].other == ProbePoint{PinId{}, "GND"});
    CHECK_FALSE(points[i].before);
    CHECK_FALSE(points[i].limits);
  }
  for (const std::size_t i : {3u, 6u}) {
    CHECK(points[i].mode == ReadingMode::continuity);
    CHECK(points[i].limits);
    CHECK(points[i].expectedBy == ExpectedBy::wire);
  }
  CHECK(points[3].other.pin == z);
  CHECK(points[6].other.pin == d);
  // As the first of the readings before was made.
  for (std::size_t i = 1; i < points.size(); ++i)
    CHECK(points[i].condition.lifted == std::vector<std::string>{"R3"});
}

TEST_CASE("a landing that was read before is measured again as it was then", "[casework]") {
  RepairedBoard b;
  const PinId a = b.lone("X1"), z = b.lone("X2");
  b.read(b.lone("X3"), 0.4, foundGood);
  b.read(a, 0.9, foundGood).reading.mode = ReadingMode::diodeReverse;
  JobReading& before = b.read(a, 0.65, foundGood);
  before.reading.condition.lifted = {"R3"};
  b.bridge(a, z);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"landing X1.1", "landing X2.1", "wire X1.1"});
  REQUIRE(points[0].before);
  CHECK(points[0].before->id == JobReadingId{3});
  CHECK(points[0].condition.lifted == std::vector<std::string>{"R3"});
  CHECK(points[0].action == RepairActionId{100});
  CHECK_FALSE(points[1].before);
  CHECK(points[1].condition == Condition{});
}

TEST_CASE("a place is proved once, by the first reason for it", "[casework]") {
  Connector b;
  const PinId far = b.lone("X1");
  b.read(b.row[2], std::nullopt, foundOpen);
  b.read(b.row[3], std::nullopt, foundOpen);
  b.bridge(b.row[2], far);
  b.bridge(far, b.row[3]);
  CHECK(b.told() == Told{"odd J1.3", "odd J1.4", "landing X1.1", "wire J1.3", "wire X1.1"});
}

TEST_CASE("a wire may read twice its resistance, and what leads and meter may add", "[casework]") {
  RepairedBoard b;
  const PinId a = b.placed({}, "A", mm(0, 0)), z = b.placed({}, "Z", mm(30, 40));
  b.bridge(a, z);
  // IEC 60028: 1 m of 1 mm² reads 1/58 Ω. 50 mm of 0.1 mm wire.
  const double wire = 0.05 / (58.0 * 3.14159265358979 / 4.0 * 0.01);
  CHECK(wire == Approx(0.1098).margin(1e-4));
  const auto limits = [&] { return *wireOf(b.points()).limits; };

  SECTION("the first meter's where nobody read anything: 0.2 Ω of leads, 5 counts of 0.1 Ω and 1 %") {
    CHECK(limits().lowest == 0.0);
    CHECK(limits().highest == Approx((2 * wire + 2 * 0.2) * 1.01 + 0.5).epsilon(1e-9));
  }
  SECTION("that of the first reading before") {
    b.read(b.lone("X1"), 0.4, foundGood).reading.meter = "handheld-20000";
    b.read(b.lone("X2"), 0.4, foundGood).reading.meter = "bench-200000";
    CHECK(limits().highest == Approx((2 * wire + 2 * 0.1) * 1.005 + 10 * 0.01).epsilon(1e-9));
  }
  SECTION("the first where nobody knows that of the readings") {
    b.read(b.lone("X1"), 0.4, foundGood).reading.meter = "sold long ago";
    CHECK(limits().highest == Approx((2 * wire + 2 * 0.2) * 1.01 + 0.5).epsilon(1e-9));
  }
  SECTION("the finest range counts, and a meter that cannot try continuity adds its leads") {
    MeterProfile& meter = b.data.probing.meters.front();
    for (MeterMode& mode : meter.modes)
      if (mode.mode == ReadingMode::continuity)
        mode.ranges = {{10.0, 0.01, 2.0, 3.0}, {100.0, 0.1, 4.0, 9.0}};
    CHECK(limits().highest == Approx((2 * wire + 2 * 0.2) * 1.02 + 0.03).epsilon(1e-9));
    std::erase_if(meter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::continuity; });
    CHECK(limits().highest == Approx(2 * wire + 2 * 0.2).epsilon(1e-9));
  }
  SECTION("along the way that it was laid, and by its own thickness") {
    b.job.actions[0].jumper->way = {mm(0, 0), mm(30, 0), mm(30, 40)};
    CHECK(limits().highest == Approx((2 * wire * 70 / 50 + 2 * 0.2) * 1.01 + 0.5).epsilon(1e-9));
    b.job.actions[0].jumper->wire = "enamelled copper 0.2 mm";
    CHECK(limits().highest == Approx((2 * wire * 70 / 50 / 4 + 2 * 0.2) * 1.01 + 0.5).epsilon(1e-9));
  }
  SECTION("a wire that is in no table and one without a way add nothing") {
    b.job.actions[0].jumper->wire = "from the drawer";
    CHECK(limits().highest == Approx(2 * 0.2 * 1.01 + 0.5).epsilon(1e-9));
    b.job.actions[0].jumper->wire = "enamelled copper 0.1 mm";
    b.job.actions[0].jumper->way.clear();
    CHECK(limits().highest == Approx(2 * 0.2 * 1.01 + 0.5).epsilon(1e-9));
  }
}

TEST_CASE("what good boards read is expected of every place that has it", "[casework]") {
  Connector b;
  const PinId far = b.lone("X1");
  b.read(b.row[2], std::nullopt, foundOpen);
  b.read(b.row[3], 0.44, foundGood);
  b.expected.put(b.at(b.row[2]), {}, reads(0.3));
  b.expected.put(b.at(b.row[3]), {}, reads(0.4));
  b.expected.put(b.at(far), {}, reads(0.5));
  b.bridge(b.row[2], far);
  const auto points = b.points();
  REQUIRE(b.told(points) == Told{"odd J1.3", "landing X1.1", "wire J1.3", "neighbour J1.4"});
  CHECK(points[0].expected == reads(0.3));
  CHECK(points[1].expected == reads(0.5));
  CHECK_FALSE(points[2].expected); // the wire is judged by its limits
  CHECK(points[3].expected == reads(0.4));
  // It is the very place, so nothing more has to be said.
  CHECK(points[1].expectedBy == ExpectedBy::goodBoards);
}

TEST_CASE("what good boards read counts in the same condition only, but at any temperature", "[casework]") {
  RepairedBoard b;
  const PinId warm = b.lone("X1"), lifted = b.lone("X2");
  b.read(warm, std::nullopt, foundOpen).reading.condition.temperature = Celsius(31);
  b.read(lifted, std::nullopt, foundOpen).reading.condition.lifted = {"R3"};
  b.expected.put(b.at(warm), {}, reads(0.3));
  b.expected.put(b.at(lifted), {}, reads(0.4));
  b.act(RepairKind::resolder);
  const auto points = b.points();
  REQUIRE(points.size() == 2);
  CHECK(points[0].expected == reads(0.3));
  CHECK(points[0].condition.temperature == Celsius(31));
  CHECK_FALSE(points[1].expected);
}

TEST_CASE("a landing that no good board was read at reads what another pin of its net does", "[casework]") {
  RepairedBoard b;
  const NetId key = b.net("KEY"), unwalked = b.net("ROW");
  const auto on = [&](const std::string& reference, NetId net) {
    const PinId id = b.pin(b.part(reference, Side::top, {}), "1", net);
    // Apart, so that none is beside another.
    b.pad(id, mm(50, 50 + 10 * static_cast<double>(b.board.parts.size())), PadReach::top, 0.4);
    return id;
  };
  const PinId landing = on("C1", key), silent = on("C2", key), walked = on("C3", key), last = on("C4", key);
  const PinId alone = on("C5", unwalked);
  b.expected.put(b.at(walked), {}, reads(0.3));
  b.expected.put(b.at(last), {}, reads(0.4));
  b.expected.put(b.at(silent), {ReadingMode::ohms, {PinId{}, "GND"}, {}, {}}, reads(47.0));

  SECTION("the first that was walked") {
    b.bridge(landing, alone);
    const auto points = b.points();
    REQUIRE(b.told(points) == Told{"landing C1.1", "landing C5.1", "wire C1.1"});
    CHECK(points[0].expected == reads(0.3));
    CHECK(points[0].expectedBy == ExpectedBy::sameNet);
    CHECK(points[0].asAt == "C3.1");
    CHECK_FALSE(points[1].expected);
    CHECK(points[1].expectedBy == ExpectedBy::goodBoards);
  }
  SECTION("but its own value where it has one") {
    b.bridge(last, alone);
    CHECK(b.points().at(0).expected == reads(0.4));
    CHECK(b.points().at(0).expectedBy == ExpectedBy::goodBoards);
  }
  SECTION("what only was odd is not judged by its net") {
    b.read(landing, std::nullopt, foundOpen);
    b.act(RepairKind::resolder);
    CHECK_FALSE(b.points().at(0).expected);
  }
  SECTION("nor is a pin of no known net, or a place that is no pin") {
    Pin loose = *b.board.pins.find(landing);
    loose.net = {};
    b.board.pins.put(loose);
    b.bridge(b.landing(landing), viaLanding("via 3 top", mm(3, 4)));
    const auto points = b.points();
    REQUIRE(points.size() == 3);
    CHECK_FALSE(points[0].expected);
    CHECK_FALSE(points[1].point.pin);
    CHECK_FALSE(points[1].expected);
  }
}

TEST_CASE("without a board a job's places are known by their labels", "[casework]") {
  RepairedBoard b;
  b.read(ProbePoint{PinId{}, "J9.3"}, std::nullopt, foundOpen);
  b.read(ProbePoint{PinId{}, "J9.4"}, 0.4, foundGood);
  b.bridge(viaLanding("via 3 top", mm(3, 4)), viaLanding("via 9 top", mm(9, 4)));
  const auto points = proofPoints({b.job, nullptr, b.expected, b.data});
  CHECK(b.told(points) ==
        Told{"odd J9.3", "landing via 3 top", "landing via 9 top", "wire via 3 top", "neighbour J9.4"});
}

TEST_CASE("the same measurement is mode, place and other lead", "[casework]") {
  ProofPoint point;
  point.point = {PinId{3}, "J1.3"};
  point.other = {PinId{7}, "J1.7"};
  point.mode = ReadingMode::ohms;
  Reading reading;
  reading.point = {PinId{3}, "pin 3"};
  reading.other = {PinId{7}, "pin 7"};
  reading.mode = ReadingMode::ohms;
  reading.value = 12.0;
  CHECK(isAt(point, reading));
  Reading different = reading;
  different.mode = ReadingMode::milliohms;
  CHECK_FALSE(isAt(point, different));
  different = reading;
  different.point.pin = PinId{4};
  CHECK_FALSE(isAt(point, different));
  different = reading;
  different.other.pin = PinId{8};
  CHECK_FALSE(isAt(point, different));
}
