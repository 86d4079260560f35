#include "netmend/probing/reading_entry.h"

#include <random>

#include <catch2/catch.hpp>

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

std::optional<double> read(std::string_view text, ReadingMode mode = ReadingMode::diode) {
  const auto entered = parseReadingValue(text, mode);
  INFO(text);
  REQUIRE(entered);
  return entered->value;
}

bool refused(std::string_view text, ReadingMode mode = ReadingMode::diode) {
  const auto entered = parseReadingValue(text, mode);
  return !entered && !entered.error().message.empty() && !entered.error().expected.empty();
}

} // namespace

TEST_CASE("0.452 V can be typed in many ways") {
  for (const char* text :
       {"0.452", ".452", "0,452", ",452", "452m", "452 m", "452mV", "452 mV", "452 mv", "0.452V", "0.452 v",
        "  0.452\r", "+0.452", "452000u", "452000 uV", "452000 \u00b5V", "452000\u03bcV", "452"}) {
    INFO(text);
    REQUIRE(read(text).has_value());
    CHECK(*read(text) == Approx(0.452).epsilon(1e-12));
  }
  CHECK(*read("0.452") == 0.452);
}

TEST_CASE("a bare whole number is in millivolts in diode modes and nowhere else") {
  CHECK(*read("10") == Approx(0.010));
  CHECK(*read("2") == Approx(0.002));
  CHECK(*read("1") == Approx(0.001));
  CHECK(*read("0") == 0.0);
  CHECK(*read("-2") == Approx(-0.002));
  CHECK(*read("1.0") == 1.0); // with a point it is volts
  CHECK(*read("2V") == 2.0);
  CHECK(*read("2", ReadingMode::volts) == 2.0);
  CHECK(*read("1200", ReadingMode::diodeReverse) == Approx(1.2));
  CHECK(*read("452", ReadingMode::ohms) == 452.0);
  CHECK(*read("12", ReadingMode::volts) == 12.0);
  CHECK(refused("452.0")); // with a point it is volts, and no diode range shows that
}

TEST_CASE("a bare number in milliohms mode is in milliohms") {
  CHECK(*read("12.5", ReadingMode::milliohms) == Approx(0.0125));
  CHECK(*read("12.5m", ReadingMode::milliohms) == Approx(0.0125));
  CHECK(*read("2 \u03a9", ReadingMode::milliohms) == Approx(2.0));
}

TEST_CASE("OL is OL in upper and lower case, with the points some meters show") {
  for (const char* text : {"OL", "ol", "Ol", "O.L", "0L", "o.l.", ".OL", " OL "})
    CHECK_FALSE(read(text).has_value());
  CHECK(refused("OL", ReadingMode::temperature));
}

TEST_CASE("resistances take prefixes and letters for the point as in IEC 60062") {
  CHECK(*read("4.7k", ReadingMode::ohms) == Approx(4700.0));
  CHECK(*read("4k7", ReadingMode::ohms) == Approx(4700.0));
  CHECK(*read("4K7", ReadingMode::ohms) == Approx(4700.0));
  CHECK(*read("4,7 k\u03a9", ReadingMode::ohms) == Approx(4700.0));
  CHECK(*read("4k7 \u2126", ReadingMode::ohms) == Approx(4700.0));
  CHECK(*read("1M2", ReadingMode::ohms) == Approx(1.2e6));
  CHECK(*read("1.2 Mohm", ReadingMode::ohms) == Approx(1.2e6));
  CHECK(*read("0R5", ReadingMode::ohms) == Approx(0.5));
  CHECK(*read("33R", ReadingMode::ohms) == Approx(33.0));
  CHECK(*read("12 ohm", ReadingMode::continuity) == Approx(12.0));
  CHECK(*read("100m", ReadingMode::ohms) == Approx(0.1)); // m and M differ
}

TEST_CASE("a unit of another mode is refused") {
  CHECK(refused("452 mV", ReadingMode::ohms));
  CHECK(refused("4k7 ohm", ReadingMode::diode));
  CHECK(refused("12R", ReadingMode::volts));
  CHECK(refused("25 V", ReadingMode::temperature));
  CHECK(*read("25 \u00b0C", ReadingMode::temperature) == 25.0);
  CHECK(*read("25.5 C", ReadingMode::temperature) == 25.5);
}

TEST_CASE("nonsense is refused and never a zero") {
  for (const char* text : {"",       " ",        "-",      ".",      ",",      "m",     "V",   "mV",
                           "abc",    "0.4.5",    "1..2",   "0,4,5",  "4 5",    "nan",   "inf", "1e3",
                           "0x10",   "OLOL",     "O",      "L",      "4k7k",   "4k7.1", "--1", "0.452 mVV",
                           "0.452;", "\xff\xfe", "OL 0.4", "0.4 OL", "\u00b5", "1kk",   "4R7k"}) {
    INFO(text);
    CHECK(refused(text));
    CHECK(refused(text, ReadingMode::ohms));
  }
  CHECK(refused(std::string(100000, '1')));
  CHECK(refused(std::string("0.4\0"
                            "52",
                            6)));
}

TEST_CASE("a value that no meter shows in the mode is refused") {
  CHECK(refused("5 V", ReadingMode::diode));
  CHECK(refused("5.0", ReadingMode::diode));
  CHECK(refused("3501", ReadingMode::diode));
  CHECK(*read("3500", ReadingMode::diode) == 3.5);
  CHECK(refused("-501", ReadingMode::diode));
  CHECK(*read("-500", ReadingMode::diode) == -0.5);
  CHECK(refused("20000", ReadingMode::diode));
  CHECK(refused("-100", ReadingMode::ohms));
  CHECK(refused("9999", ReadingMode::volts));
  CHECK(refused("-300", ReadingMode::temperature));
}

TEST_CASE("random bytes are refused or give a finite value") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  const std::string_view letters = "0123456789.,-+mMkKuUVvRrOoLl \xc2\xb5\xce\xa9"
                                   "e\t";
  for (int i = 0; i < netmend::rounds(200000); ++i) {
    std::string text(random() % 9, ' ');
    for (char& c : text)
      c = letters[random() % letters.size()];
    const auto mode = static_cast<ReadingMode>(random() % 8);
    const auto entered = parseReadingValue(text, mode);
    if (entered && entered->value && !std::isfinite(*entered->value)) FAIL(text);
  }
  SUCCEED();
}

TEST_CASE("a value as shown is the very number that stands there") {
  CHECK(asShown(0.45249, ReadingMode::diode) == 0.452);
  CHECK(asShown(0.4525000001, ReadingMode::diode) == 0.453);
  CHECK(asShown(-0.0004, ReadingMode::diode) == 0.0);
  CHECK(asShown(4702.4, ReadingMode::ohms) == 4702.0);
  CHECK(asShown(0.12344, ReadingMode::milliohms) == Approx(0.1234).epsilon(1e-12));
  CHECK(asShown(25.04, ReadingMode::temperature) == 25.0);
}

TEST_CASE("what is shown of a value can be typed in again") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> decade(-4.0, 7.0);
  for (const auto mode : {ReadingMode::ohms, ReadingMode::continuity, ReadingMode::milliohms,
                          ReadingMode::volts, ReadingMode::dropUnderCurrent}) {
    for (int i = 0; i < netmend::rounds(2000); ++i) {
      const double value = std::pow(10.0, decade(random));
      const auto entered = parseReadingValue(readingText(value, mode), mode);
      if (!entered) continue; // outside what the mode shows
      CAPTURE(value, readingText(value, mode));
      REQUIRE(entered->value);
      CHECK(*entered->value == Approx(value).epsilon(0.001).margin(mode == ReadingMode::volts ? 6e-5 : 0.0));
    }
  }
  CHECK(readingText(0.452, ReadingMode::diode) == "0.452 V");
  CHECK(readingText(std::nullopt, ReadingMode::ohms) == "OL");
  CHECK(readingText(999.99, ReadingMode::ohms) == "1 k\u03a9");
}
