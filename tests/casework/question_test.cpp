#include <catch2/catch.hpp>

#include "netmend/casework/good_walks.h"
#include "support/drawn_board.h"

namespace netmend {

namespace {

struct OneConnector : test::DrawnBoard {
  PinId seven;
  OneConnector() {
    const NetId net = DrawnBoard::net("KEY");
    seven = pin(part("J4", Side::top, {}), "7", net);
  }
};

Walk inOhms() {
  Walk walk;
  walk.mode = ReadingMode::ohms;
  walk.meter = "bench";
  walk.by = "A. Nyman";
  walk.other = {PinId{}, "shell"};
  return walk;
}

} // namespace

TEST_CASE("A typed reading takes mode, points and value from its words and the rest from the walk",
          "[casework]") {
  const OneConnector drawn;
  const Lookup lookup(drawn.board);

  const auto plain = parseReading("J4.7 452 mV", Walk{}, &lookup);
  REQUIRE(plain);
  CHECK(plain->mode == ReadingMode::diode);
  CHECK(plain->point.pin == drawn.seven);
  CHECK(plain->point.label == "J4.7");
  REQUIRE(plain->value);
  CHECK(*plain->value == Approx(0.452).epsilon(1e-12));

  const auto over = parseReading("diode reversed pad of J4.7 OL", inOhms(), &lookup);
  REQUIRE(over);
  CHECK(over->mode == ReadingMode::diodeReverse);
  CHECK(over->point.label == "pad of J4.7");
  CHECK_FALSE(over->point.pin);
  CHECK_FALSE(over->value);
  CHECK(over->other.label == "shell");

  const auto between = parseReading("continuity J4.7 to pad of C23.1 0.4", inOhms(), &lookup);
  REQUIRE(between);
  CHECK(between->mode == ReadingMode::continuity);
  CHECK(between->point.pin == drawn.seven);
  CHECK(between->other.label == "pad of C23.1");
  CHECK_FALSE(between->other.pin);
  CHECK(between->value == 0.4);

  const auto walked = parseReading("J4.8 OL", inOhms(), &lookup);
  REQUIRE(walked);
  CHECK(walked->mode == ReadingMode::ohms);
  CHECK(walked->meter == "bench");
  CHECK(walked->by == "A. Nyman");
  CHECK(walked->other.label == "shell");
  CHECK_FALSE(walked->value);
  CHECK_FALSE(walked->point.pin); // no pin is called so
}

TEST_CASE("What is not a reading is refused, and the error shows what of it", "[casework]") {
  for (const std::string text : {"", "J4.7", " 0.4", "J4.7 to 0.4", " to J4.7 0.4", "J4.7 sometimes"}) {
    const auto read = parseReading(text, Walk{}, nullptr);
    INFO(text);
    REQUIRE_FALSE(read);
    const std::string found = read.error().found; // in quotes
    REQUIRE(found.size() >= 2);
    CHECK(text.find(found.substr(1, found.size() - 2)) != std::string::npos);
  }
}

} // namespace netmend
