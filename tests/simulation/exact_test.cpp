#include <cmath>

#include <catch2/catch.hpp>

#include "simulation/exact.h"
#include "simulation/small_board.h"

// What the exact posterior says where it can be worked out on paper.

using namespace netmend;
using namespace netmend::simulation;
using netmend::test::mm;
using netmend::test::Small;

namespace {

/// Chips have a clamp for certain; no slips, so that a reading rules out or does not.
FaultShares certainChips() {
  FaultShares out;
  out.sound = 0.1;
  out.solderJoint = 1.0;
  out.connectorJoint = 3.0;
  out.trackPerMm = 0.04;
  out.via = 0.5;
  out.deadPin = 0.25;
  out.shortToGround = 0.75;
  out.behind["chip"] = {1.0, 0.0};
  return out;
}

MeterProfile handheld() {
  const auto meters = loadMeters(NETMEND_SOURCE_DIR "/data/meters.json").value();
  return *findMeter(meters, "handheld-4000");
}

struct Bench {
  explicit Bench(const Small& small) : lookup(small.board) {
    const auto line = boardLine(lookup, small.net);
    // A population of chips that are alike is soon found again.
    for (std::uint64_t seed = 1; !job || job->fault.family != FaultFamily::open; ++seed)
      job = drawJob(lookup, std::make_shared<const BoardLine>(*line), shares, meter, seed);
  }

  Taken reading(PinId pin, std::optional<double> volts) const {
    Taken out;
    out.shown.red.object = out.shown.red.pin = pin;
    out.shown.reading.mode = ReadingMode::diode;
    out.shown.reading.value = volts;
    return out;
  }
  double chance(const ExactAnswer& answer, const std::string& kind) const {
    double out = 0.0;
    for (std::size_t f = 0; f < answer.faults.size(); ++f)
      if (kindOf(*job->line, answer.faults[f]) == kind) out += answer.probability[f];
    return out;
  }

  Lookup lookup;
  FaultShares shares = certainChips();
  MeterProfile meter = handheld();
  std::optional<BenchJob> job;
};

} // namespace

TEST_CASE("one node by its own search is the circuit's operating point") {
  const std::vector<JunctionLaw> laws{lawAt({0.45, 1.2, 5.0, 1.11}, 31.0),
                                      lawAt({0.62, 1.5, 12.0, 1.11}, 31.0)};
  Circuit circuit;
  circuit.nodes = 2;
  for (const JunctionLaw& law : laws)
    circuit.diodes.push_back({1, 0, law});
  circuit.resistors.push_back({1, 0, 4700.0});
  CHECK(oneNode(laws, 1.0 / 4700, Source{}) == Approx(operatingPoint(circuit, Source{}, 1)[1]).margin(1e-6));
  CHECK(oneNode({}, 0.0, Source{}) == Approx(3.0 * 10e6 / (10e6 + 500)).margin(1e-4));
  CHECK(oneNode({}, 1e-3, Source{}) == Approx(1.0).margin(1e-3));
}

TEST_CASE("before any reading the exact posterior is the shares") {
  const Small small;
  const Bench bench(small);
  const ExactDraws draws(*bench.job, bench.lookup, bench.shares, bench.meter);
  REQUIRE(draws.usable());
  const auto answer = draws.after({});
  REQUIRE(answer);
  const double weights = 3.0 + 1.0 + 0.04 * 30 + 0.5 + 0.25 + 0.75;
  CHECK(bench.chance(*answer, "sound") == Approx(0.1));
  CHECK(bench.chance(*answer, "open joint") == Approx(0.9 * 4.0 / weights));
  CHECK(bench.chance(*answer, "open track") == Approx(0.9 * 1.2 / weights));
  CHECK(bench.chance(*answer, "dead pin") == Approx(0.9 * 0.25 / weights));
}

TEST_CASE("an OL at the far end leaves the breaks, each with its weight") {
  const Small small;
  Bench bench(small);
  bench.job->slipped = 0.0;
  const ExactDraws draws(*bench.job, bench.lookup, bench.shares, bench.meter);
  const double good = *bench.job->good.front().readings.front().value;
  const auto answer =
      draws.after({bench.reading(small.connector, std::nullopt), bench.reading(small.chip, good)});
  REQUIRE(answer);
  const double breaks = 3.0 + 1.0 + 1.2 + 0.5;
  CHECK(bench.chance(*answer, "open joint") == Approx(4.0 / breaks).margin(1e-6));
  CHECK(bench.chance(*answer, "open via") == Approx(0.5 / breaks).margin(1e-6));
  // The test pad between them reads: of the tracks the first is left, beside the connector's joint.
  const auto nearer = draws.after({bench.reading(small.connector, std::nullopt),
                                   bench.reading(small.chip, good), bench.reading(small.testPad, good)});
  REQUIRE(nearer);
  CHECK(bench.chance(*nearer, "open joint") == Approx(3.0 / 3.4).margin(1e-6));
  CHECK(bench.chance(*nearer, "open track") == Approx(0.4 / 3.4).margin(1e-6));
}

TEST_CASE("readings that a known fault explains do not contradict, others do") {
  const Small small;
  Bench bench(small);
  const ExactDraws draws(*bench.job, bench.lookup, bench.shares, bench.meter);
  const double good = *bench.job->good.front().readings.front().value;
  const std::vector<Taken> open{bench.reading(small.connector, std::nullopt),
                                bench.reading(small.chip, good)};
  CHECK(draws.contradiction(open).value() < 3.0);
  const std::vector<Taken> odd{bench.reading(small.connector, good - 0.1),
                               bench.reading(small.chip, good - 0.1)};
  CHECK(draws.contradiction(odd).value() > 3.0);
}

TEST_CASE("a repair is right where it joins what is parted") {
  const Small small;
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net).value();
  const PartId chip = small.board.pins.find(small.chip)->part;
  for (const auto& [fault, weight] :
       allFaults(line, Design{std::vector<Behind>(3), {}, {}, {}}, certainChips())) {
    CHECK(restores(line, fault, mendingFor(line, lookup, fault)));
    CHECK_FALSE(restores(line, fault, {}));
    const std::string kind = kindOf(line, fault);
    const auto leg = [&](PinId pin) { return *line.copper.leg(pin); };
    const bool open = kind.starts_with("open");
    CHECK(restores(line, fault, wireBetween(line, leg(small.connector), leg(small.chip))) == open);
    // A new chip mends its own joint only.
    const bool joint = fault.crack && line.copper.bonds[fault.crack->bond].object == small.chip.value;
    CHECK(restores(line, fault, newPart(line, lookup, chip)) == joint);
  }
  CHECK(restores(line, {}, {}));
  CHECK_FALSE(restores(line, {}, wireBetween(line, 0, 1)));
  Fault dead;
  dead.family = FaultFamily::deadPin;
  for (std::size_t i = 0; i < line.pins.size(); ++i)
    if (line.pins[i].pin == small.chip) dead.pin = i;
  CHECK(restores(line, dead, newPart(line, lookup, chip)));
  CHECK_FALSE(restores(line, dead, {Mending::Kind::clearShort, {}, {}}));
}
