#include <catch2/catch.hpp>

#include "netmend/casework/good_walks.h"
#include "netmend/casework/take_reading.h"
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

TEST_CASE("Every mode has its word in front of a typed reading", "[casework]") {
  for (const auto& [text, mode] : std::vector<std::pair<std::string, ReadingMode>>{
           {"diode J4.7 0.452", ReadingMode::diode},
           {"diode reversed J4.7 0.452", ReadingMode::diodeReverse},
           {"ohms J4.7 0.452", ReadingMode::ohms},
           {"milliohms J4.7 0.452", ReadingMode::milliohms},
           {"continuity J4.7 0.452", ReadingMode::continuity},
           {"volts J4.7 0.452", ReadingMode::volts},
           {"drop under current J4.7 0.452", ReadingMode::dropUnderCurrent},
           {"temperature J4.7 25", ReadingMode::temperature}}) {
    INFO(text);
    const auto read = parseReading(text, Walk{}, nullptr);
    REQUIRE(read);
    CHECK(read->mode == mode);
    CHECK(read->point.label == "J4.7");
  }
}

TEST_CASE("A typed reading's value may be two words, and its label too", "[casework]") {
  const auto read = [](const char* text) {
    auto out = parseReading(text, Walk{}, nullptr);
    REQUIRE(out);
    return *out;
  };
  CHECK(read("pad 452").point.label == "pad");
  CHECK(read("pad 452").value == Approx(0.452));
  CHECK(read("A 0.45 V").point.label == "A");
  CHECK(read("A 0.45").point.label == "A");
  CHECK(read("ohms U1 4.7 k\u03a9").value == Approx(4700.0));
  CHECK(read("ohms pad of U1 4.7 k\u03a9").point.label == "pad of U1");
  CHECK(read("ohms U1 4.7 k\u03a9").point.label == "U1");
  CHECK(read("via 12 0.4").point.label == "via 12");
  CHECK(read("J4.7  0.4").point.label == "J4.7");
  // Two words count as the value only where a label is left before them.
  CHECK_FALSE(parseReading("452 mV", Walk{}, nullptr));
  CHECK_FALSE(parseReading(" 452 mV", Walk{}, nullptr));
}

TEST_CASE("A typed reading is taken now, in the walk's condition", "[casework]") {
  Walk walk = inOhms();
  walk.condition.lifted = {"R3"};
  walk.condition.powered = true;
  const auto before = std::chrono::system_clock::now() - std::chrono::milliseconds(1);
  const auto read = parseReading("J4.7 12", walk, nullptr);
  REQUIRE(read);
  CHECK(read->condition == walk.condition);
  CHECK(read->time >= before);
  CHECK(read->time <= std::chrono::system_clock::now());
}

TEST_CASE("A typed point that several pins are called by is known by its label", "[casework]") {
  test::DrawnBoard drawn;
  const PartId part = drawn.part("J4", Side::top, {});
  const NetId net = drawn.net("KEY");
  drawn.pin(part, "7", net);
  drawn.pin(part, "7", net);
  const PinId once = drawn.pin(part, "8", net);
  const Lookup lookup(drawn.board);
  const auto read = parseReading("continuity J4.7 to J4.8 0.4", Walk{}, &lookup);
  REQUIRE(read);
  CHECK_FALSE(read->point.pin);
  CHECK(read->point.label == "J4.7");
  CHECK(read->other.pin == once);
}

TEST_CASE("What is not a reading is refused, and the error shows what of it", "[casework]") {
  for (const std::string text :
       {"", "J4.7", "0.4", " 0.4", "J4.7 to 0.4", " to J4.7 0.4", "J4.7 sometimes"}) {
    const auto read = parseReading(text, Walk{}, nullptr);
    INFO(text);
    REQUIRE_FALSE(read);
    const std::string found = wordsOf(read.error().found); // in quotes
    REQUIRE(found.size() >= 2);
    CHECK(text.find(found.substr(1, found.size() - 2)) != std::string::npos);
  }
  const auto unknown = parseReading("J4.7 sometimes", Walk{}, nullptr);
  REQUIRE_FALSE(unknown);
  CHECK(wordsOf(unknown.error().found).find("sometimes") != std::string::npos);
}

} // namespace netmend
