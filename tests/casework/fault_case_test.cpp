#include <catch2/catch.hpp>

#include "demo_device.h"

using namespace netmend;
using namespace netmend::test;

namespace {

std::size_t placeCalled(const Isolation& isolation, const std::string& label) {
  for (std::size_t i = 0; i < isolation.places.size(); ++i)
    if (isolation.places[i].label == label) return i;
  FAIL("no place is called " << label);
  return 0;
}

bool asksFor(const FaultCase& fault, const std::string& label) {
  return std::any_of(fault.next.ranked.begin(), fault.next.ranked.end(), [&](const ProbeProposal& probe) {
    return fault.isolation.places[probe.place].label == label ||
           (probe.other && fault.isolation.places[*probe.other].label == label);
  });
}

/// Whether the meter that was taken can test diodes: then a reading in that mode is asked for.
bool asksInDiodeMode(const FaultQuestion& question, const RepairData& data) {
  const auto solved = demoDevice().solve(question, data);
  REQUIRE(solved);
  REQUIRE_FALSE(solved->next.ranked.empty());
  return std::any_of(solved->next.ranked.begin(), solved->next.ranked.end(),
                     [](const ProbeProposal& probe) { return probe.mode == ReadingMode::diode; });
}

} // namespace

TEST_CASE("a question has to name a net or a pin", "[casework]") {
  FaultQuestion question = demoDevice().question();
  question.net = {};
  CHECK_FALSE(demoDevice().solve(question));
  question.pin = demoDevice().pin("J4.9");
  CHECK(demoDevice().solve(question));
}

TEST_CASE("the line begins with the net that was asked for, or the pin's", "[casework]") {
  const DemoDevice& device = demoDevice();
  const NetId beyond = netNamed(device.lookup, "KEY_COL3_U").value(); // through R28
  FaultQuestion question{device.column, {}, {}, {}, {}, {}};
  CHECK(device.solve(question)->line.nets == std::vector<NetId>{device.column, beyond});
  question.net = {};
  question.pin = device.pin("U1.12");
  CHECK(device.solve(question)->line.nets == std::vector<NetId>{beyond, device.column});
  // The net, where both are named.
  question.net = device.column;
  CHECK(device.solve(question)->line.nets.front() == device.column);
}

TEST_CASE("readings on other lines are left out, those at places that are no pins stay", "[casework]") {
  const FaultCase& fault = demoFault();
  REQUIRE(demoDevice().faulty.readings.size() == 14);
  REQUIRE(fault.readings.size() == 3);
  CHECK(fault.readings[0].point.pin == demoDevice().pin("J4.9"));
  CHECK(fault.readings[1].point.pin == demoDevice().pin("C28.1"));
  CHECK(fault.readings[2].point.label == "pad of J4.9");
  CHECK(fault.isolation.observations.size() == 3);
  CHECK(fault.isolation.setAside.empty());
}

TEST_CASE("the walk, the capacitor and the connector's pad leave the stretch between the vias",
          "[casework]") {
  const FaultCase& fault = demoFault();
  const Suspect* leading = leadingBreak(fault);
  REQUIRE(leading != nullptr);
  CHECK(leading == &fault.suspects.ranked.front());
  REQUIRE(leading->places.size() == 3);
  // The demo's board as it is drawn: 2.0, 27.9 and 7.0 mm of inner track.
  std::vector<CopperObject> tracks;
  Length length;
  for (const FaultPlace& place : leading->places) {
    CHECK(place.edgeKind == EdgeKind::track);
    tracks.push_back(place.object);
    length += place.length.value_or(Length(0));
  }
  std::sort(tracks.begin(), tracks.end());
  CHECK(tracks == std::vector<CopperObject>{TrackId{965}, TrackId{966}, TrackId{967}});
  CHECK(length == Length::fromMm(36.9));
  // One wire from via to capacitor mends these and both vias, more than 90 % together.
  REQUIRE(fault.suspects.setSize == 3);
  REQUIRE(fault.jumpers.size() == 1);
  const OneJumper& jumper = fault.jumpers.front();
  CHECK(jumper.classes == std::vector<std::size_t>{fault.suspects.ranked[0].faultClass,
                                                   fault.suspects.ranked[1].faultClass,
                                                   fault.suspects.ranked[2].faultClass});
  CHECK(jumper.probability == Approx(fault.suspects.setMass));
}

TEST_CASE("what is asked next takes for one what one wire mends", "[casework]") {
  const FaultCase& fault = demoFault();
  CHECK_FALSE(fault.next.stop);
  const NextProbe grouped = nextProbe(fault.isolation, repairView(fault.isolation, fault.jumpers));
  const NextProbe apart = nextProbe(fault.isolation);
  REQUIRE_FALSE(fault.next.ranked.empty());
  CHECK(fault.next.ranked.front().bits == grouped.ranked.front().bits);
  CHECK(fault.next.ranked.front().bits != apart.ranked.front().bits);
}

TEST_CASE("a place that cannot be reached is not asked for", "[casework]") {
  FaultQuestion question = demoDevice().question();
  SECTION("where wires are in sight") {
    CHECK_FALSE(demoDevice().solve(question)->jumpers.empty());
    CHECK(asksFor(*demoDevice().solve(question), "C28.1"));
    question.unreachable = {"C28.1"};
    CHECK_FALSE(asksFor(*demoDevice().solve(question), "C28.1"));
  }
  SECTION("where none is") {
    question.net = netNamed(demoDevice().lookup, "KEY_COL2").value();
    CHECK(demoDevice().solve(question)->jumpers.empty());
    CHECK(asksFor(*demoDevice().solve(question), "C27.1"));
    question.unreachable = {"C27.1"};
    CHECK_FALSE(asksFor(*demoDevice().solve(question), "C27.1"));
  }
}

TEST_CASE("no wires are looked for once there is nothing more to probe", "[casework]") {
  FaultQuestion question = demoDevice().question({"C28.1 0.649", "pad of J4.9 OL"});
  for (const ProbePlace& place : demoFault().isolation.places)
    question.unreachable.push_back(place.label);
  const auto solved = demoDevice().solve(question);
  REQUIRE(solved);
  CHECK(solved->next.stop);
  CHECK(solved->next.ranked.empty());
  CHECK(solved->jumpers.empty());
  CHECK(solved->suspects.setSize == 3);
}

TEST_CASE("the meter is the one asked for, else that of the line's first reading, else the first of all",
          "[casework]") {
  RepairData data = repairData();
  MeterProfile ohmmeter = data.probing.meters.front();
  ohmmeter.id = "ohmmeter";
  std::erase_if(ohmmeter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::diode; });
  data.probing.meters.push_back(ohmmeter);
  const std::string usual = data.probing.meters.front().id;
  FaultQuestion question{demoDevice().column, {}, {}, {}, {}, {}};
  const auto taken = [&](const std::string& point, const std::string& meter) {
    Reading reading = parseReading(point + " 0.649", demoDevice().faulty, &demoDevice().lookup).value();
    reading.meter = meter;
    return reading;
  };
  SECTION("the one asked for, whatever the readings say") {
    question.meter = "ohmmeter";
    CHECK_FALSE(asksInDiodeMode(question, data));
    question.readings = {taken("C28.1", usual)};
    CHECK_FALSE(asksInDiodeMode(question, data));
  }
  SECTION("of the first reading on the line") {
    question.readings = {taken("J4.3", usual), taken("C28.1", "ohmmeter"), taken("R28.1", usual)};
    CHECK_FALSE(asksInDiodeMode(question, data));
    question.readings = {taken("C28.1", usual), taken("R28.1", "ohmmeter")};
    CHECK(asksInDiodeMode(question, data));
  }
  SECTION("the first of all where nobody says") {
    CHECK(asksInDiodeMode(question, data));
    question.readings = {taken("C28.1", "")};
    CHECK(asksInDiodeMode(question, data));
    std::swap(data.probing.meters.front(), data.probing.meters.back());
    CHECK_FALSE(asksInDiodeMode(question, data));
  }
  SECTION("one that nobody knows is refused by its name") {
    question.meter = "sold";
    CHECK(demoDevice().solve(question, data).error().found == "sold");
    question.meter.clear();
    question.readings = {taken("C28.1", "lent")};
    CHECK(demoDevice().solve(question, data).error().found == "lent");
  }
}

TEST_CASE("the latest reading's condition is that of the line: what was read in another is set aside",
          "[casework]") {
  FaultQuestion question = demoDevice().question({"C28.1 0.649"});
  question.readings.back().condition.lifted = {"R25"};
  const auto lifted = demoDevice().solve(question);
  REQUIRE(lifted);
  REQUIRE(lifted->isolation.setAside.size() == 1);
  CHECK(lifted->isolation.setAside.front().reading.point.label == "J4.9");
  REQUIRE(lifted->isolation.observations.size() == 1);
  CHECK(lifted->isolation.observations.front().reading.point.label == "C28.1");
  // What good boards read was read with nothing lifted, so that less is known beforehand.
  const auto spread = [](const FaultCase& fault) {
    return predictDiode(fault.isolation, placeCalled(fault.isolation, "J4.9"), 0).spread.value;
  };
  question.readings = {question.readings.back()};
  const auto alone = demoDevice().solve(question);
  question.readings.back().condition.lifted.clear();
  const auto plain = demoDevice().solve(question);
  REQUIRE((alone && plain));
  CHECK(spread(*alone) > 1.5 * spread(*plain));
}

TEST_CASE("a break leads when the first of the suspects is one", "[casework]") {
  FaultCase fault;
  CHECK(leadingBreak(fault) == nullptr);
  fault.isolation.classes.resize(3);
  fault.isolation.classes[0].kind = FaultKind::sound;
  fault.isolation.classes[1].kind = FaultKind::deadPin;
  fault.isolation.classes[2].kind = FaultKind::open;
  fault.suspects.ranked.resize(2);
  fault.suspects.ranked[0].faultClass = 1;
  fault.suspects.ranked[1].faultClass = 2;
  CHECK(leadingBreak(fault) == nullptr);
  fault.suspects.ranked[0].faultClass = 2;
  fault.suspects.ranked[1].faultClass = 1;
  CHECK(leadingBreak(fault) == &fault.suspects.ranked[0]);
}

TEST_CASE("a line is called by the first of its nets", "[casework]") {
  CHECK(lineName(demoDevice().board, demoFault().line) == "KEY_COL3");
  CHECK_FALSE(lineName(demoDevice().board, Line{}).empty());
}
