#include "../../src/jobsheet/findings.h"

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
  CHECK(pairs[0].before->id == JobReadingId(2));
  CHECK(pairs[0].after->id == JobReadingId(4));
}

TEST_CASE("readings with a part lifted are not put beside those without") {
  std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, 0.9, "high"),
                                   jobReading(2, "J4.3", ReadingPurpose::proof, 0.45, "in range")};
  readings[1].reading.condition.temperature = Celsius(31);
  CHECK(pairReadings(readings).size() == 1);
  readings[1].reading.condition.lifted = {"R5"};
  CHECK(pairReadings(readings).size() == 2);
}

TEST_CASE("the words that a reading was judged by become the strip's bars") {
  const auto one = parseExpected("0.441 V to 0.465 V", ReadingMode::diode);
  REQUIRE(one);
  CHECK(one->intervals.size() == 1);
  CHECK(one->intervals[0].low == Approx(0.441));
  CHECK(one->intervals[0].high == Approx(0.465));
  const auto mixture = parseExpected("OL or 4.7 kΩ to 4.9 kΩ", ReadingMode::ohms);
  REQUIRE(mixture);
  CHECK(mixture->overLimit);
  CHECK(mixture->intervals.at(0).low == Approx(4700));
  CHECK_FALSE(parseExpected("", ReadingMode::diode));
  CHECK_FALSE(parseExpected("about half a volt", ReadingMode::diode));
}

TEST_CASE("each connector and way of measuring gets a strip of its own") {
  std::vector<JobReading> readings{jobReading(1, "J4.3", ReadingPurpose::fault, std::nullopt, "open"),
                                   jobReading(2, "J5.1", ReadingPurpose::fault, 0.45, "in range"),
                                   jobReading(3, "J4.4", ReadingPurpose::fault, 0.45, "in range")};
  const auto strips = stripsOf(pairReadings(readings));
  REQUIRE(strips.size() == 2);
  CHECK(strips[0].pins.size() == 2);
  CHECK(strips[0].pins[0].label == "3");
  CHECK(strips[0].pins[0].reading->flagged);
  CHECK(strips[0].pins[0].expected.size() == 1);
}
