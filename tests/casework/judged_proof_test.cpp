#include <catch2/catch.hpp>

#include "repaired_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// The verdict on a value, as a kind.
struct Judge {
  RepairedBoard board;
  ProofPoint point;
  std::string meter = "handheld-4000";

  [[nodiscard]] JobReading reading(std::optional<double> value) const {
    Reading reading;
    reading.value = value;
    reading.meter = meter;
    return judgedProof(point, reading, {board.job, nullptr, board.expected, board.data});
  }
  [[nodiscard]] VerdictKind operator()(std::optional<double> value) const {
    const JobReading kept = reading(value);
    REQUIRE(kept.judged);
    return kept.kind();
  }
};

} // namespace

TEST_CASE("a wire's reading is judged by its limits, which it may just reach", "[casework]") {
  Judge judge;
  judge.point.mode = ReadingMode::continuity;
  judge.point.limits = ValueInterval{0.25, 0.75};
  CHECK(judge(0.25) == foundGood);
  CHECK(judge(0.5) == foundGood);
  CHECK(judge(0.75) == foundGood);
  CHECK(judge(0.2499) == VerdictKind::low);
  CHECK(judge(0.7501) == VerdictKind::high);
  CHECK(judge(std::nullopt) == foundOpen);
  CHECK(judge.reading(0.5).judged->limits == judge.point.limits);
  CHECK(judge.reading(0.5).judged->verdict.nothing == NothingBecause::judged);
}

TEST_CASE("a place that good boards were read at is judged by them, also where it has limits", "[casework]") {
  Judge judge;
  judge.point.expected = reads(0.65);
  for (const bool limited : {false, true}) {
    if (limited) judge.point.limits = ValueInterval{0.0, 0.1};
    CHECK(judge(0.65) == foundGood);
    CHECK(judge(0.4) == VerdictKind::low);
    CHECK(judge(0.9) == VerdictKind::high);
    CHECK(judge(std::nullopt) == foundOpen);
    CHECK(judge.reading(0.65).judged->verdict.expected == judge.point.expected);
    CHECK_FALSE(judge.reading(0.65).judged->limits);
  }
}

TEST_CASE("a proof is judged like any reading, with its meter and at the rate of false flags", "[casework]") {
  Judge judge;
  judge.point.expected = reads(0.65);
  const auto asAnyReading = [&](double value) {
    const VerdictRules& rules = judge.board.data.probing.rules;
    Reading reading;
    reading.value = value;
    return judgeReading(reading, &*judge.point.expected,
                        findMeter(judge.board.data.probing.meters, judge.meter), rules,
                        ratePerPoint(judge.board.expected.points().count(ReadingSetting{}), rules));
  };
  // From the middle outwards, until it is flagged and a little beyond.
  for (int mv = 650; mv < 720; ++mv) {
    const auto said = asAnyReading(1e-3 * mv);
    CHECK(judge(1e-3 * mv) == said.kind);
    CHECK(judge.reading(1e-3 * mv).judged->verdict == said);
  }
  CHECK(asAnyReading(0.650).kind == foundGood);
  CHECK(asAnyReading(0.719).kind == VerdictKind::high);
}

TEST_CASE("what counts as a short is the meter's to say", "[casework]") {
  Judge judge;
  judge.point.expected = reads(0.65);
  CHECK(judge(0.0099) == VerdictKind::shorted);
  CHECK(judge(0.0101) == VerdictKind::low);
  for (MeterProfile& meter : judge.board.data.probing.meters)
    for (MeterMode& mode : meter.modes)
      if (meter.id == "bench-200000" && mode.shortBelow) mode.shortBelow = 0.05;
  judge.meter = "bench-200000";
  CHECK(judge(0.0101) == VerdictKind::shorted);
}

TEST_CASE("without anything to compare with, a proof says so", "[casework]") {
  const Judge judge;
  CHECK(judge(0.65) == VerdictKind::nothingToCompare);
  CHECK(judge(std::nullopt) == VerdictKind::nothingToCompare);
  CHECK_FALSE(judge.reading(0.65).judged->verdict.expected);
  CHECK(judge.reading(0.65).judged->verdict.nothing == NothingBecause::noExpectedValue);
}

TEST_CASE("a proof is kept as it was measured", "[casework]") {
  Judge judge;
  judge.point.point = {PinId{3}, "J1.3"};
  judge.point.other = {PinId{7}, "J1.7"};
  judge.point.mode = ReadingMode::ohms;
  judge.point.condition.lifted = {"R3"};
  const JobReading kept = judge.reading(47.0);
  CHECK(kept.purpose == ReadingPurpose::proof);
  CHECK(kept.reading.point == judge.point.point);
  CHECK(kept.reading.other == judge.point.other);
  CHECK(kept.reading.mode == ReadingMode::ohms);
  CHECK(kept.reading.condition == judge.point.condition);
  CHECK(kept.reading.value == 47.0);
  CHECK(kept.reading.meter == "handheld-4000");
  CHECK_FALSE(judge.reading(std::nullopt).reading.value);
}

TEST_CASE("where the expected value comes from is kept with the verdict", "[casework]") {
  Judge judge;
  judge.point.expected = reads(0.65);
  judge.point.expectedBy = ExpectedBy::sameNet;
  judge.point.asAt = "J1.9";
  CHECK(judge.reading(0.65).judged->by == ExpectedBy::sameNet);
  CHECK(judge.reading(0.65).judged->asAt == "J1.9");
}
