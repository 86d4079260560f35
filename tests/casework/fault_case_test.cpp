#include <catch2/catch.hpp>

#include "demo_device.h"
#include "support/effort.h"

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

/// Connector J1, a resistor and chip U1 in a row, and a connector X1 of another net. What is behind its pins
/// is as good as known.
struct ShortLine : RepairedBoard {
  NetId key = net("KEY"), beyond = net("KEY_U");
  PinId near = on("J1", PartKind::connector, "1", key, 0), far = on("U1", PartKind::chip, "7", beyond, 40),
        elsewhere = on("X1", PartKind::connector, "1", net("ROW"), 60);

  ShortLine() {
    FaultPriors& priors = data.priors;
    priors.terminations[PartKind::chip] = {1.0, 0.0, 0.0};
    priors.terminations[PartKind::connector] = {0.0, 0.0, 1.0};
    priors.drops = {{Volts(0.6), Volts(0.7), 1.0}};
    priors.alike.clear();
    Part more;
    more.kind = fromUser(PartKind::resistor);
    more.value = fromUser(std::string("100"));
    const PartId r = part("R1", Side::top, {}, more);
    const LayerId top = layer("top");
    board.info.layerOrder = {top};
    add(r, "1", key, 20);
    add(r, "2", beyond, 22);
    track(mm(0, 0), mm(20, 0), top, key, 0.2);
    track(mm(22, 0), mm(40, 0), top, beyond, 0.2);
  }
  PinId on(const std::string& reference, PartKind kind, const std::string& name, NetId net, double mmAlong) {
    Part more;
    more.kind = fromUser(kind);
    return add(part(reference, Side::top, {}, more), name, net, mmAlong);
  }
  PinId add(PartId part, const std::string& name, NetId net, double mmAlong) {
    const PinId id = pin(part, name, net);
    Pad more;
    more.access = fromUser(Access::open);
    pad(id, mm(mmAlong, 0), PadReach::top, 0.6, more);
    return id;
  }
  [[nodiscard]] Reading taken(PinId pin, std::optional<double> volts, const std::string& meter = {}) const {
    Reading reading;
    reading.point = at(pin);
    reading.value = volts;
    reading.meter = meter;
    return reading;
  }
  [[nodiscard]] FaultQuestion question() const { return {key, {}, {}, expected, {}, {}}; }
  [[nodiscard]] Result<FaultCase> solve(const FaultQuestion& asked) const {
    return solveFault(underWork(board), asked, data);
  }
  /// Whether the meter that was taken can test diodes: then a reading in that mode is asked for.
  [[nodiscard]] bool asksInDiodeMode(const FaultQuestion& question) const {
    const auto solved = solve(question);
    REQUIRE(solved);
    REQUIRE_FALSE(solved->next.ranked.empty());
    return std::any_of(solved->next.ranked.begin(), solved->next.ranked.end(),
                       [](const ProbeProposal& probe) { return probe.mode == ReadingMode::diode; });
  }
};

} // namespace

TEST_CASE("a question has to name a net or a pin", "[casework]") {
  const ShortLine line;
  FaultQuestion question = line.question();
  question.net = {};
  CHECK_FALSE(line.solve(question));
  question.pin = line.far;
  CHECK(line.solve(question));
}

TEST_CASE("the line begins with the net that was asked for, or the pin's", "[casework]") {
  const ShortLine line;
  FaultQuestion question = line.question();
  CHECK(line.solve(question)->line.nets == std::vector<NetId>{line.key, line.beyond});
  question.net = {};
  question.pin = line.far;
  CHECK(line.solve(question)->line.nets == std::vector<NetId>{line.beyond, line.key});
  if (sanitized) return; // a question takes seconds there
  // The net, where both are named.
  question.net = line.key;
  CHECK(line.solve(question)->line.nets.front() == line.key);
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

TEST_CASE("a place that cannot be reached is not asked for, and no wires are looked for where none is left",
          "[casework]") {
  const ShortLine line;
  FaultQuestion question = line.question();
  question.readings = {line.taken(line.near, std::nullopt)};
  const auto all = line.solve(question);
  REQUIRE(all);
  REQUIRE_FALSE(all->next.stop);
  REQUIRE_FALSE(all->jumpers.empty());
  REQUIRE(asksFor(*all, "R1.1"));
  question.unreachable = {"R1.1"};
  const auto others = line.solve(question);
  CHECK_FALSE(others->jumpers.empty());
  CHECK_FALSE(others->next.ranked.empty());
  CHECK_FALSE(asksFor(*others, "R1.1"));
  for (const ProbePlace& place : all->isolation.places)
    question.unreachable.push_back(place.label);
  const auto none = line.solve(question);
  CHECK(none->next.stop);
  CHECK(none->next.ranked.empty());
  CHECK(none->jumpers.empty());
  CHECK(none->suspects.setSize == all->suspects.setSize);
}

TEST_CASE("the meter is the one asked for, else that of the line's first reading, else the first of all",
          "[casework]") {
  ShortLine line;
  auto& meters = line.data.probing.meters;
  MeterProfile ohmmeter = meters.front();
  ohmmeter.id = "ohmmeter";
  std::erase_if(ohmmeter.modes, [](const MeterMode& mode) { return mode.mode == ReadingMode::diode; });
  meters.push_back(ohmmeter);
  const std::string usual = meters.front().id;
  FaultQuestion question = line.question();
  SECTION("the one asked for, whatever the readings say") {
    question.meter = "ohmmeter";
    CHECK_FALSE(line.asksInDiodeMode(question));
    question.readings = {line.taken(line.near, 0.65, usual)};
    CHECK_FALSE(line.asksInDiodeMode(question));
  }
  SECTION("of the first reading on the line") {
    question.readings = {line.taken(line.elsewhere, 0.65, usual), line.taken(line.near, 0.65, "ohmmeter"),
                         line.taken(line.far, 0.65, usual)};
    CHECK_FALSE(line.asksInDiodeMode(question));
    if (sanitized) return; // a question takes seconds there
    question.readings = {line.taken(line.near, 0.65, usual), line.taken(line.far, 0.65, "ohmmeter")};
    CHECK(line.asksInDiodeMode(question));
  }
  SECTION("the first of all where nobody says") {
    CHECK(line.asksInDiodeMode(question));
    if (sanitized) return;
    question.readings = {line.taken(line.near, 0.65)};
    CHECK(line.asksInDiodeMode(question));
    std::swap(meters.front(), meters.back());
    CHECK_FALSE(line.asksInDiodeMode(question));
  }
  SECTION("one that nobody knows is refused by its name") {
    question.meter = "sold";
    CHECK(wordsOf(line.solve(question).error().found) == "sold");
    question.meter.clear();
    question.readings = {line.taken(line.near, 0.65, "lent")};
    CHECK(wordsOf(line.solve(question).error().found) == "lent");
  }
}

TEST_CASE("the latest reading's condition is that of the line: what was read in another is set aside",
          "[casework]") {
  ShortLine line;
  line.expected.put(line.at(line.near), {}, reads(0.65));
  FaultQuestion question = line.question();
  question.readings = {line.taken(line.near, 0.65), line.taken(line.far, 0.65)};
  question.readings.back().condition.lifted = {"C3"};
  const auto lifted = line.solve(question);
  REQUIRE(lifted);
  REQUIRE(lifted->isolation.setAside.size() == 1);
  CHECK(lifted->isolation.setAside.front().reading.point.pin == line.near);
  REQUIRE(lifted->isolation.observations.size() == 1);
  CHECK(lifted->isolation.observations.front().reading.point.pin == line.far);
  if (sanitized) return; // a question takes seconds there
  // What good boards read was read with nothing lifted, so that it says nothing of this line.
  const auto spread = [&](const FaultCase& fault) {
    return predictDiode(fault.isolation, placeCalled(fault.isolation, "J1.1"), 0).spread.value;
  };
  question.readings.clear();
  const double known = spread(*line.solve(question));
  question.readings = {line.taken(line.elsewhere, 0.65)}; // on another line, and so no matter
  question.readings.back().condition.lifted = {"C3"};
  CHECK(spread(*line.solve(question)) == known);
  question.readings.back().point = {PinId{}, "somewhere"}; // tells nothing, but may be on this line
  CHECK(spread(*line.solve(question)) > 1.5 * known);
}

TEST_CASE("with one more reading the question goes on from what was found, to the very same figures",
          "[casework]") {
  const DemoDevice& device = demoDevice();
  const FaultQuestion first = device.question({"C28.1 0.649"});
  const FaultQuestion more = device.question({"C28.1 0.649", "pad of J4.9 OL"});
  FaultCase before = device.solve(first).value();
  const FaultCase& anew = demoFault();
  const auto goneOn = [&](const FaultQuestion& asked) {
    return solveFault(device.loaded, asked, repairData(), &before).value();
  };
  const FaultCase on = goneOn(more);
  CHECK(on.isolation.probability == anew.isolation.probability);
  CHECK(on.isolation.logMass == anew.isolation.logMass);
  CHECK(on.next.ranked.front().bits == anew.next.ranked.front().bits);
  CHECK(on.isolation.model == before.isolation.model); // nothing was drawn again
  // Anything else begins anew: a reading less, another in the middle, other good boards, another meter or
  // line.
  CHECK(goneOn(device.question()).isolation.model != before.isolation.model);
  CHECK(goneOn(device.question({"C28.1 0.648", "pad of J4.9 OL"})).isolation.model != before.isolation.model);
  FaultQuestion other = more;
  other.expected = {};
  CHECK(goneOn(other).isolation.model != before.isolation.model);
  other = more;
  other.meter = "bench-200000";
  REQUIRE(before.basis.meter != other.meter);
  CHECK(goneOn(other).isolation.model != before.isolation.model);
  other = more;
  other.net = {};
  other.pin = device.pin("J4.9");
  CHECK(goneOn(other).isolation.model != before.isolation.model);
  other = more;
  other.readings.back().condition.lifted = {"C3"};
  CHECK(goneOn(other).isolation.model != before.isolation.model);
}

TEST_CASE("solving that was told to stop stops", "[casework]") {
  std::stop_source stop;
  stop.request_stop();
  const auto stopped =
      solveFault(demoDevice().loaded, demoDevice().question(), repairData(), nullptr, stop.get_token());
  REQUIRE_FALSE(stopped);
  CHECK(wordsOf(stopped.error().message) == "was stopped");
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

TEST_CASE("a line is called by the first of its nets, or else by a pin on it", "[casework]") {
  CHECK(lineName(demoDevice().board, demoFault().line) == "KEY_COL3");
  Line nameless = demoFault().line;
  nameless.nets.clear();
  CHECK(demoDevice().lookup.pinsLabelled(lineName(demoDevice().board, nameless)).size() == 1);
  CHECK(lineName(demoDevice().board, Line{}).empty());
}
