#include "netmend/casework/take_reading.h"

#include <cmath>

#include <catch2/catch.hpp>

#include "demo_device.h"
#include "netmend/jobbook/record.h"

using namespace netmend;
using namespace netmend::test;

namespace {

JudgeBasis demoBasis() {
  return {&demoDevice().lookup, demoDevice().expected, repairData()};
}

Reading readAt(const std::string& label, std::optional<double> value, ReadingMode mode = ReadingMode::diode) {
  Walk walk = demoDevice().faulty;
  walk.mode = mode;
  return readingNow(walk, {demoDevice().pin(label), label}, value);
}

JobReading numbered(std::uint64_t id, Reading reading, ReadingPurpose purpose = ReadingPurpose::fault) {
  JobReading out;
  out.id = JobReadingId(id);
  out.purpose = purpose;
  out.reading = std::move(reading);
  return out;
}

/// Whether the second reading is told to be another than the first.
bool otherwise(ReadingMode mode, std::optional<double> first, std::optional<double> second,
               const std::string& meter = "") {
  Reading reading;
  reading.point.label = "J1.1";
  reading.mode = mode;
  reading.meter = meter;
  reading.value = first;
  std::vector<JobReading> readings{numbered(1, reading)};
  reading.value = second;
  readings.push_back(numbered(2, reading));
  return readOtherwiseBefore(readings, readings.back(), repairData()) != nullptr;
}

} // namespace

TEST_CASE("a reading says the same alone as among its walk, first or last", "[casework]") {
  const DemoDevice& device = demoDevice();
  const JudgedWalk walked = judgeWalk(device.faulty, device.expected, &device.lookup, repairData().probing);
  REQUIRE(walked.verdicts.size() > 10);
  for (std::size_t i = 0; i < walked.verdicts.size(); ++i) {
    const JobReading alone = judged(device.faulty.readings[i], ReadingPurpose::check, demoBasis(), {});
    REQUIRE(alone.judged);
    CHECK(alone.judged->verdict == walked.verdicts[i]);
    CHECK(alone.purpose == ReadingPurpose::check);
    CHECK(alone.reading == device.faulty.readings[i]);
  }
}

TEST_CASE("without a board a reading is judged by its label alone", "[casework]") {
  Reading reading = readAt("J4.9", std::nullopt);
  reading.point.pin = PinId(99'999); // of no board at hand
  const JobReading kept =
      judged(reading, ReadingPurpose::fault, {nullptr, demoDevice().expected, repairData()}, {});
  CHECK(kept.kind() == VerdictKind::open);
  CHECK(kept.reading.point.pin == PinId(99'999));
}

TEST_CASE("where nothing was measured the pins of the part share the rate by their kinds", "[casework]") {
  Board board;
  board.info.uuid = "b";
  Net net;
  net.id = board.newId<NetId>();
  net.name = "COL";
  net.role = fromUser(NetRole::signal);
  board.nets.put(net);
  Part part;
  part.id = board.newId<PartId>();
  part.reference = "J1";
  board.parts.put(part);
  Reading reading;
  reading.value = 0.5;
  for (const char* name : {"1", "2", "3", "4", "5", "6"}) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part.id;
    pin.name = name;
    pin.net = fromUser(net.id);
    board.pins.put(pin);
    reading.point = {pin.id, pinLabel(board, pin.id)};
  }
  const Lookup lookup(board);
  const JobReading kept = judged(reading, ReadingPurpose::fault, {&lookup, {}, repairData()}, {});
  REQUIRE(kept.judged);
  // 1 − 0.95^(1/6): data/verdict.json allows a good board in twenty one flag.
  CHECK(kept.judged->verdict.falseAlarmRate == Approx(1.0 - std::pow(0.95, 1.0 / 6.0)).epsilon(1e-12));
}

TEST_CASE("a reading taken now has the walk's way: mode, other lead, meter, person and condition",
          "[casework]") {
  Walk walk;
  walk.mode = ReadingMode::ohms;
  walk.other = {PinId(7), "J1.7"};
  walk.meter = "handheld-4000";
  walk.by = "KB";
  walk.condition.plugged = {"battery"};
  const auto before =
      std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
  const Reading taken = readingNow(walk, {PinId(3), "J1.3"}, 47.0);
  CHECK(taken.point == ProbePoint{PinId(3), "J1.3"});
  CHECK(taken.other == walk.other);
  CHECK(taken.mode == ReadingMode::ohms);
  CHECK(taken.value == 47.0);
  CHECK(taken.meter == "handheld-4000");
  CHECK(taken.by == "KB");
  CHECK(taken.condition == walk.condition);
  CHECK(taken.time >= before);
  CHECK(taken.time <= std::chrono::system_clock::now());
}

// 4 · √2 · the repeatability of docs/methods/probing.md: 1.5 mV in diode mode; 0.3 Ω and a hundredth.
TEST_CASE("two readings differ where one point read twice does not, and OL differs from any value",
          "[casework]") {
  CHECK_FALSE(otherwise(ReadingMode::diode, 0.6500, 0.6584));
  CHECK(otherwise(ReadingMode::diode, 0.6500, 0.6586));
  CHECK_FALSE(otherwise(ReadingMode::diode, 0.6500, 0.6416));
  CHECK(otherwise(ReadingMode::diode, 0.6500, 0.6414));
  CHECK(otherwise(ReadingMode::diode, std::nullopt, 0.65));
  CHECK(otherwise(ReadingMode::diode, 0.65, std::nullopt));
  CHECK_FALSE(otherwise(ReadingMode::diode, std::nullopt, std::nullopt));
  CHECK_FALSE(otherwise(ReadingMode::continuity, 0.4, 2.09));
  CHECK(otherwise(ReadingMode::continuity, 0.4, 2.11));
  CHECK_FALSE(otherwise(ReadingMode::ohms, 1000.0, 1059.0));
  CHECK(otherwise(ReadingMode::ohms, 1000.0, 1061.0));
  CHECK_FALSE(otherwise(ReadingMode::milliohms, 0.010, 0.0269));
  CHECK(otherwise(ReadingMode::milliohms, 0.010, 0.0271));
  CHECK_FALSE(otherwise(ReadingMode::volts, 0.0, 0.028));
  CHECK(otherwise(ReadingMode::volts, 0.0, 0.0285));
  // Far from zero a share of the value counts: half a hundredth of 12 V, a hundredth of 1 Ω.
  CHECK_FALSE(otherwise(ReadingMode::volts, 12.0, 12.3504));
  CHECK(otherwise(ReadingMode::volts, 12.0, 12.3506));
  CHECK_FALSE(otherwise(ReadingMode::milliohms, 1.0, 1.0623));
  CHECK(otherwise(ReadingMode::milliohms, 1.0, 1.0626));
  CHECK_FALSE(otherwise(ReadingMode::temperature, 25.0, 30.6));
  CHECK(otherwise(ReadingMode::temperature, 25.0, 30.7));
  // A meter of 1 mV rounds both, 1/√12 mV each: 4 · √2 · 1.53 mV.
  CHECK_FALSE(otherwise(ReadingMode::diode, 0.6500, 0.6586, "handheld-4000"));
  CHECK(otherwise(ReadingMode::diode, 0.6500, 0.6587, "handheld-4000"));
}

TEST_CASE("what a reading is held against is the last one of the same measurement, apart from proofs",
          "[casework]") {
  const Reading good = readAt("J4.9", 0.65), open = readAt("J4.9", std::nullopt);
  Reading plugged = open;
  plugged.condition.plugged = {"battery"};
  const std::vector<JobReading> readings{
      numbered(1, open),
      numbered(2, good),
      numbered(3, readAt("J4.8", std::nullopt)),
      numbered(4, plugged),
      numbered(5, open, ReadingPurpose::proof),
      numbered(6, good, ReadingPurpose::check),
      numbered(7, open, ReadingPurpose::check),
  };
  const auto before = [&](std::size_t i) -> std::uint64_t {
    const JobReading* found = readOtherwiseBefore(readings, readings[i], repairData());
    return found != nullptr ? found->id.value : 0;
  };
  CHECK(before(0) == 0);
  CHECK(before(1) == 1);
  CHECK(before(2) == 0);
  CHECK(before(3) == 0);
  CHECK(before(4) == 0);
  CHECK(before(5) == 0); // agrees with 2
  CHECK(before(6) == 6);
}

TEST_CASE("what still climbed and what it climbed to are one reading", "[casework]") {
  Reading rising = readAt("J4.9", 0.4);
  rising.settling = Settling::rising;
  const std::vector<JobReading> readings{numbered(1, rising), numbered(2, readAt("J4.9", 0.65))};
  CHECK(readOtherwiseBefore(readings, readings.back(), repairData()) == nullptr);
}

TEST_CASE("what is known to come and go does so when it is read again", "[casework]") {
  JobReading known = numbered(1, readAt("J4.9", std::nullopt));
  known.comesAndGoes = true;
  CHECK(judged(readAt("J4.9", 0.65), ReadingPurpose::check, demoBasis(), {known}).comesAndGoes);
  CHECK_FALSE(judged(readAt("J4.8", 0.65), ReadingPurpose::check, demoBasis(), {known}).comesAndGoes);
}

TEST_CASE("of readings taken again the last counts; where it comes and goes the last odd one", "[casework]") {
  const auto judgedAs = [](std::uint64_t id, Reading reading,
                           ReadingPurpose purpose = ReadingPurpose::fault) {
    JobReading out = judged(reading, purpose, demoBasis(), {});
    out.id = JobReadingId(id);
    return out;
  };
  Job job;
  job.readings = {judgedAs(1, readAt("J4.9", std::nullopt)), judgedAs(2, readAt("J4.8", 0.65)),
                  judgedAs(3, readAt("J4.9", 0.65), ReadingPurpose::check),
                  judgedAs(4, readAt("J4.9", 0.65), ReadingPurpose::proof)};
  REQUIRE(job.readings[0].kind() == VerdictKind::open);
  REQUIRE(job.readings[2].kind() == VerdictKind::inRange);
  const auto ids = [&] {
    std::vector<std::uint64_t> out;
    for (const JobReading* reading : inForce(job.readings))
      out.push_back(reading->id.value);
    return out;
  };
  CHECK(ids() == std::vector<std::uint64_t>{2, 3, 4});
  REQUIRE(evidenceOf(job).size() == 2);
  CHECK(evidenceOf(job)[1].value == 0.65);
  job.readings[0].comesAndGoes = job.readings[2].comesAndGoes = true;
  CHECK(ids() == std::vector<std::uint64_t>{1, 2, 4});
  CHECK_FALSE(evidenceOf(job)[0].value);
  // Odd once more: that is the later odd one.
  job.readings.push_back(judgedAs(5, readAt("J4.9", std::nullopt)));
  job.readings.back().comesAndGoes = true;
  CHECK(ids() == std::vector<std::uint64_t>{2, 4, 5});
  // Between the steps of a repair the board is another one.
  job.readings.push_back(judgedAs(6, readAt("J4.9", 0.65)));
  job.readings.back().reading.condition.handling = repairUnderWay;
  CHECK(ids() == std::vector<std::uint64_t>{2, 4, 5, 6});
  CHECK(evidenceOf(job).size() == 2);
}
