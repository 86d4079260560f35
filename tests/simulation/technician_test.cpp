#include <catch2/catch.hpp>

#include "simulation/policy.h"
#include "simulation/small_board.h"
#include "simulation/worlds.h"

// Whole jobs on a board so small that it is known how they have to end.

using namespace netmend;
using namespace netmend::simulation;
using netmend::test::mm;
using netmend::test::Small;

namespace {

struct Shop {
  RepairData data = loadRepairData(NETMEND_SOURCE_DIR "/data").value();
  FaultShares shares = faultShares(NETMEND_SOURCE_DIR "/data/fault_priors.json");
  MeterProfile meter = *findMeter(data.probing.meters, "handheld-4000");
};

/// A job on the small board with a break in the middle of the bottom track, in a world without errors.
BenchJob broken(const Small& small, const Lookup& lookup, const Shop& shop) {
  const auto line = std::make_shared<const BoardLine>(boardLine(lookup, small.net).value());
  std::optional<BenchJob> job;
  for (std::uint64_t seed = 1; !job; ++seed)
    job = drawJob(lookup, line, shop.shares, shop.meter, seed);
  job->fault = {};
  job->fault.family = FaultFamily::open;
  for (std::size_t bond = 0; bond < line->copper.bonds.size(); ++bond)
    if (line->copper.bonds[bond].object == small.third.value &&
        line->copper.bonds[bond].kind == Bond::Kind::track)
      job->fault.crack = Crack{bond, 5.0};
  return withoutErrors(*job, lookup, shop.meter);
}

} // namespace

TEST_CASE("readings are those of the piece that the lead is on") {
  const Small small;
  const Lookup lookup(small.board);
  const Shop shop;
  const BenchJob job = broken(small, lookup, shop);
  const auto at = [&](PinId pin) {
    ProbePlace place;
    place.object = place.pin = pin;
    return read(job, lookup, shop.meter, place, nullptr, ReadingMode::diode, 1)->reading.value;
  };
  CHECK_FALSE(at(small.connector));
  CHECK_FALSE(at(small.testPad));
  REQUIRE(at(small.chip));
  std::size_t chip = 0;
  while (job.line->pins[chip].pin != small.chip)
    ++chip;
  CHECK(*at(small.chip) == Approx(job.design.behind[chip].junction.drop).margin(0.0006));
}

TEST_CASE("a meter shows whole counts of what it finds, with its bias, and OL above its limit") {
  const Shop shop;
  const MeterMode& mode = *shop.meter.mode(ReadingMode::diode); // 1 % and 3 digits of 1 mV up to 2 V
  CHECK(*shown(mode, 0.5004, {}, 0.0) == Approx(0.500));
  CHECK(*shown(mode, 0.5, {1.0, 0.0}, 0.0) == Approx(0.505));
  CHECK(*shown(mode, 0.5, {0.0, -1.0}, 0.0) == Approx(0.497));
  CHECK(*shown(mode, 0.5, {}, 0.0021) == Approx(0.502));
  CHECK(*shown(mode, 0.0, {0.0, -1.0}, 0.0) == 0.0);
  CHECK(shown(mode, 1.999, {}, 0.0));
  CHECK_FALSE(shown(mode, 2.001, {}, 0.0));
}

TEST_CASE("about one reading in fifty slips, and two of a job no more often together") {
  const Small small;
  const Lookup lookup(small.board);
  const Shop shop;
  BenchJob job = broken(small, lookup, shop);
  job.slipped = 0.02;
  ProbePlace place;
  place.object = place.pin = small.chip;
  int slipped = 0, both = 0;
  for (job.seed = 1000; job.seed < 6000; ++job.seed) {
    const auto slip = [&](std::size_t taken) {
      return read(job, lookup, shop.meter, place, nullptr, ReadingMode::diode, taken)->slipped;
    };
    const bool first = slip(3), second = slip(5);
    slipped += first + second;
    both += first && second;
  }
  CHECK(slipped == Approx(200).margin(60));
  CHECK(both <= 8); // two are expected
}

TEST_CASE("the technician's claim on a clear break is right, and costs what was read") {
  const Small small;
  const SimBoard board = simBoard(small.board, "small");
  const Shop shop;
  const BenchJob job = broken(small, board.truth(), shop);
  for (std::size_t grade = 0; grade < grades.size(); ++grade) {
    const auto played = play(job, {board.known[grade], board.truth(), shop.data, shop.meter});
    REQUIRE(played);
    CHECK_FALSE(played->unfinished);
    CHECK(played->onTruth <= 1.0 + 1e-9);
    double effort = 0.0;
    for (const Taken& taken : played->taken)
      effort += taken.effort.value;
    CHECK(costOf(*played, Seconds(1800)).value == Approx(effort + (played->right ? 0.0 : 1800.0)));
  }
}

TEST_CASE(
    "the best policy reads nothing where a wrong repair costs nothing, and else no more than there is") {
  const Small small;
  const SimBoard board = simBoard(small.board, "small");
  const Shop shop;
  const BenchJob job = broken(small, board.truth(), shop);
  std::optional<FaultCase> start;
  PlayOptions options;
  options.watch = [&](const FaultCase& now, const Taken&) {
    if (!start) start = now;
  };
  const Workplace at{board.known.front(), board.truth(), shop.data, shop.meter};
  REQUIRE(play(job, at, options));
  const auto free = optimal(job, at, shop.shares, *start, {}, Seconds(0));
  REQUIRE(free);
  CHECK(free->here.value == 0.0); // nothing is worth reading where a wrong repair costs nothing
  const auto dear = optimal(job, at, shop.shares, *start, {}, Seconds(1e6));
  REQUIRE(dear);
  CHECK(dear->expected.value > 0.0);
  CHECK(dear->places <= mostPlaces);
}
