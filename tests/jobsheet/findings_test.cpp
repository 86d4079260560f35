#include "jobsheet/findings.h"

#include <catch2/catch.hpp>

#include "sheet_job.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("the latest reading before and after the repair of one place stand side by side") {
  std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, 0.9, "high"),
                                   jobReading(2, "J4.3", ReadingPurpose::fault, std::nullopt, "open"),
                                   jobReading(3, "J4.3", ReadingPurpose::check, 0.2, "low"),
                                   jobReading(4, "J4.3", ReadingPurpose::proof, 0.45, "in range")};
  const auto pairs = pairReadings(readings);
  REQUIRE(pairs.size() == 1);
  CHECK(pairs[0].before->id == JobReadingId(3)); // read again at Find, and so it counts
  CHECK(pairs[0].after->id == JobReadingId(4));
}

TEST_CASE("a check where nobody walked has no row of its own; rows are in the order of first readings") {
  const std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, 0.9, "high"),
                                         jobReading(2, "J4.4", ReadingPurpose::fault, 0.45, "in range"),
                                         jobReading(3, "C7.1", ReadingPurpose::check, 0.2, "low"),
                                         jobReading(4, "J4.3", ReadingPurpose::fault, 0.45, "in range")};
  const auto pairs = pairReadings(readings);
  REQUIRE(pairs.size() == 2);
  CHECK(pairs[0].before->id == JobReadingId(4));
  CHECK(pairs[1].before->id == JobReadingId(2));
}

TEST_CASE("of a point that comes and goes the odd reading stands on the sheet") {
  std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, std::nullopt, "open"),
                                   jobReading(2, "J4.3", ReadingPurpose::fault, 0.45, "in range")};
  CHECK(pairReadings(readings).at(0).before->id == JobReadingId(2));
  for (JobReading& reading : readings)
    reading.comesAndGoes = true;
  CHECK(pairReadings(readings).at(0).before->id == JobReadingId(1));
}

TEST_CASE("readings with a part lifted are not put beside those without") {
  std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, 0.9, "high"),
                                   jobReading(2, "J4.3", ReadingPurpose::proof, 0.45, "in range")};
  readings[1].reading.condition.temperature = Celsius(31);
  CHECK(pairReadings(readings).size() == 1);
  readings[1].reading.condition.lifted = {"R5"};
  CHECK(pairReadings(readings).size() == 2);
}

TEST_CASE("what a reading was judged by becomes the strip's bars") {
  JobReading reading = jobReading(1, "J4.3", ReadingPurpose::fault, 0.45, "in range", std::nullopt);
  Expected expected;
  expected.overLimitShare = 0.4;
  expected.shown = {{4700.0, 4900.0}, {8000.0, 8100.0}};
  reading.judged->verdict.expected = expected;
  const std::vector<JobReading> readings{reading,
                                         jobReading(2, "J4.4", ReadingPurpose::fault, 0.45, "in range")};
  const auto pins = stripsOf(pairReadings(readings)).at(0).pins;
  CHECK(pins[0].expectedOl);
  REQUIRE(pins[0].expected.size() == 2);
  CHECK(pins[0].expected[1].low == 8000.0);
  CHECK(pins[0].expected[1].high == 8100.0);
  CHECK_FALSE(pins[1].expectedOl);
  REQUIRE(pins[1].expected.size() == 1); // limits of its own
  CHECK(pins[1].expected[0].low == 0.441);
  CHECK(pins[1].expected[0].high == 0.465);
}

TEST_CASE("each connector and way of measuring gets a strip of its own") {
  std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, std::nullopt, "open"),
                                   jobReading(2, "J5.1", ReadingPurpose::fault, 0.45, "in range"),
                                   jobReading(3, "J4.4", ReadingPurpose::fault, 0.45, "in range")};
  const auto strips = stripsOf(pairReadings(readings));
  REQUIRE(strips.size() == 2);
  CHECK(strips[0].pins.size() == 2);
  CHECK(strips[0].pins[0].label == "3");
  CHECK(strips[0].pins[0].reading->odd());
  CHECK(strips[0].pins[0].expected.size() == 1);
}
