#include <array>

#include <fmt/format.h>

#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "support.h"

// How each mode's values are typed, bounded and shown: each unit, each letter, both sides of each limit.

using namespace netmend;

namespace {

constexpr std::array<ReadingMode, 8> everyMode{ReadingMode::diode,
                                               ReadingMode::diodeReverse,
                                               ReadingMode::ohms,
                                               ReadingMode::milliohms,
                                               ReadingMode::continuity,
                                               ReadingMode::volts,
                                               ReadingMode::dropUnderCurrent,
                                               ReadingMode::temperature};

/// The value, or nothing where it is refused or OL.
std::optional<double> typed(std::string_view text, ReadingMode mode) {
  const auto entered = parseReadingValue(text, mode);
  return entered ? entered->value : std::nullopt;
}

std::string whyNot(std::string_view text, ReadingMode mode) {
  const auto entered = parseReadingValue(text, mode);
  return entered ? std::string() : wordsOf(entered.error().message);
}

} // namespace

TEST_CASE("each mode takes values up to what a meter can show in it, with its unit, and none beyond") {
  struct Bound {
    ReadingMode mode;
    double lowest, highest;
    const char* unit;
  };
  // Common practice, no source: the widest ranges that meters have, and a little below zero for their errors.
  for (const Bound& bound :
       {Bound{ReadingMode::diode, -0.5, 3.5, "V"}, Bound{ReadingMode::diodeReverse, -0.5, 3.5, "V"},
        Bound{ReadingMode::ohms, -1, 1e9, "\u03a9"}, Bound{ReadingMode::milliohms, -0.01, 1000, "\u03a9"},
        Bound{ReadingMode::continuity, -1, 1e5, "\u03a9"}, Bound{ReadingMode::volts, -1500, 1500, "V"},
        Bound{ReadingMode::dropUnderCurrent, -10, 10, "V"},
        Bound{ReadingMode::temperature, -60, 500, "\u00b0C"}}) {
    INFO(word(bound.mode));
    CHECK(unitOf(bound.mode) == bound.unit);
    const auto with = [&](double value) { return fmt::format("{:.6f} {}", value, bound.unit); };
    CHECK(typed(with(bound.lowest), bound.mode) == bound.lowest);
    CHECK(typed(with(bound.highest), bound.mode) == bound.highest);
    CHECK_FALSE(typed(with(bound.lowest - 0.001), bound.mode));
    CHECK_FALSE(typed(with(bound.highest + 0.001), bound.mode));
    CHECK(whyNot(with(bound.highest + 0.001), bound.mode).starts_with("no meter shows that in this mode"));
    CHECK(whyNot("1 A", bound.mode) == "not a value");
    CHECK(whyNot("", bound.mode) == "no value");
  }
}

TEST_CASE("every way to write a unit is known, and belongs to its modes only") {
  const std::vector<std::pair<std::string, std::vector<const char*>>> units{
      {"V", {"V", "v", "volt", "Volts", "VOLT"}},
      {"\u03a9", {"R", "r", "ohm", "Ohms", "OHM", "\u03a9", "\u2126", "\u03c9"}},
      {"\u00b0C", {"C", "c", "\u00b0C", "\u00b0c", "\u2103"}}};
  for (const auto& [unit, spelt] : units)
    for (const char* text : spelt)
      for (const auto mode : everyMode) {
        INFO(text << " in " << word(mode));
        const std::string entry = std::string("2 ") + text;
        if (unitOf(mode) == unit)
          CHECK(typed(entry, mode) == 2.0);
        else
          CHECK(whyNot(entry, mode) == "a unit of another mode");
      }
  for (const char* text : {"2 W", "2 voltss", "2 o", "2 \u00b0", "2 F", "2 degC"})
    for (const auto mode : everyMode)
      CHECK(whyNot(text, mode) == "not a value");
}

TEST_CASE("every prefix is its power of ten, before a unit, at the end, and for the point") {
  const auto ohms = [](std::string_view text) { return typed(text, ReadingMode::ohms); };
  CHECK(ohms("5m") == 5e-3);
  CHECK(ohms("5M") == 5e6);
  CHECK(ohms("5k") == 5e3);
  CHECK(ohms("5K") == 5e3);
  CHECK(ohms("5u").value() == Approx(5e-6));
  CHECK(ohms("5U").value() == Approx(5e-6));
  CHECK(ohms("5\u00b5").value() == Approx(5e-6));
  CHECK(ohms("5\u03bc").value() == Approx(5e-6));
  CHECK(ohms("1G") == 1e9);
  CHECK(ohms("0.5 Gohm") == 5e8);
  CHECK(ohms("4m7").value() == Approx(4.7e-3));
  CHECK(ohms("4M7").value() == Approx(4.7e6));
  CHECK(ohms("4u7").value() == Approx(4.7e-6));
  CHECK(ohms("0G5").value() == Approx(5e8));
  CHECK(ohms("4k7 ohm").value() == Approx(4700.0));
  CHECK(ohms("4k 7") == std::nullopt);
  CHECK(ohms("4R7").value() == Approx(4.7));
  CHECK(ohms("4r7").value() == Approx(4.7));
  CHECK(ohms("4R70").value() == Approx(4.70));
  CHECK(ohms("4R79").value() == Approx(4.79));
  CHECK(ohms("4R09").value() == Approx(4.09));
  CHECK(ohms("4k9") == 4900.0);
  CHECK(ohms("4k0") == 4000.0);
  CHECK(ohms("4k90") == 4900.0);
  CHECK(ohms("4R7R") == 4.7); // said twice
  CHECK(ohms("4R7V") == std::nullopt);
  CHECK(ohms("4.1k7") == std::nullopt);
  CHECK(ohms("4R7.1") == std::nullopt);
  CHECK(ohms("4R7,1") == std::nullopt);
  CHECK(ohms("-0.5") == -0.5);
  CHECK(ohms("+0.5") == 0.5);
  CHECK(ohms("\u22120.5") == -0.5);
  CHECK(ohms("\u2212") == std::nullopt);
  CHECK(typed("4R7", ReadingMode::diode) == std::nullopt);
  // Where a prefix makes no unit of the rest, the letters are tried as a whole.
  CHECK(typed("5m", ReadingMode::volts) == 5e-3);
  CHECK(typed("5mV", ReadingMode::volts) == 5e-3);
  CHECK(typed("5 MV", ReadingMode::dropUnderCurrent) == std::nullopt);
  CHECK(typed("0.5 kV", ReadingMode::volts) == 500.0);
  CHECK(typed("1.5e0", ReadingMode::volts) == std::nullopt);
}

TEST_CASE("without a unit a whole number is in millivolts in diode modes, any number in milliohms mode") {
  for (const auto mode : everyMode) {
    INFO(word(mode));
    const bool diode = mode == ReadingMode::diode || mode == ReadingMode::diodeReverse;
    const double bare = diode || mode == ReadingMode::milliohms ? 1e-3 : 1.0;
    CHECK(typed("7", mode) == 7 * bare);
    CHECK(typed("1.5", mode).value() == Approx(1.5 * (mode == ReadingMode::milliohms ? 1e-3 : 1.0)));
    CHECK(typed("7m", mode) == 7e-3);
    CHECK(typed("-3", mode).value_or(-99) ==
          (mode == ReadingMode::ohms || mode == ReadingMode::continuity ? -99 : -3 * bare));
  }
}

TEST_CASE("a value has at most 64 letters between its blanks") {
  const std::string digits = "0." + std::string(62, '1');
  CHECK(typed("  " + digits + "\t ", ReadingMode::volts).value() == Approx(1.0 / 9));
  CHECK(whyNot(digits + "1", ReadingMode::volts) == "too long for a value");
  const auto refusedOf = [](std::string_view text) {
    return parseReadingValue(text, ReadingMode::volts).error();
  };
  CHECK(wordsOf(refusedOf(digits + "1x").found) == "\"" + digits + "\"");
  CHECK(wordsOf(refusedOf("abc").found) == "\"abc\"");
  CHECK(wordsOf(refusedOf("abc").expected) == "a value in V or OL, for volts");
  CHECK(wordsOf(refusedOf("").found) == "\"\"");
  CHECK(wordsOf(refusedOf("2000 V").message) == "no meter shows that in this mode (it means 2000 V)");
}

TEST_CASE("OL is known in each of its spellings, in every mode but temperature") {
  for (const char* text : {"OL", "ol", "oL", "O.L", "o.l", "O.L.", "o.l.", "0L", "0l", ".OL", ".ol"})
    for (const auto mode : everyMode) {
      const auto entered = parseReadingValue(text, mode);
      if (mode == ReadingMode::temperature) {
        CHECK(whyNot(text, mode) == "a thermometer shows no OL");
      } else {
        REQUIRE(entered);
        CHECK_FALSE(entered->value);
      }
    }
  for (const char* text : {"O L", "OLL", "..OL", "O,L", "L", "O.L.."})
    CHECK_FALSE(parseReadingValue(text, ReadingMode::diode));
}

TEST_CASE("a value is shown with the digits and unit of its mode and size, on both sides of each turn") {
  const auto shown = [](double value, ReadingMode mode) { return readingText(value, mode); };
  for (const auto mode : {ReadingMode::diode, ReadingMode::diodeReverse}) {
    CHECK(shown(0.4524, mode) == "0.452 V");
    CHECK(shown(2.0, mode) == "2.000 V");
    CHECK(shown(-0.0126, mode) == "-0.013 V");
  }
  CHECK(shown(25.04, ReadingMode::temperature) == "25.0 °C");
  CHECK(shown(-5.26, ReadingMode::temperature) == "-5.3 °C");
  CHECK(shown(0.9996, ReadingMode::volts) == "999.6 mV");
  CHECK(shown(0.0126, ReadingMode::volts) == "12.6 mV");
  CHECK(shown(1.0, ReadingMode::volts) == "1 V");
  CHECK(shown(3.30049, ReadingMode::volts) == "3.3 V");
  CHECK(shown(12.346, ReadingMode::volts) == "12.35 V");
  CHECK(shown(-0.5, ReadingMode::volts) == "-500.0 mV");
  CHECK(shown(-3.3, ReadingMode::volts) == "-3.3 V");
  CHECK(shown(0.00099, ReadingMode::dropUnderCurrent) == "990 µV");
  CHECK(shown(0.001, ReadingMode::dropUnderCurrent) == "1 mV");
  CHECK(shown(0.99, ReadingMode::dropUnderCurrent) == "990 mV");
  CHECK(shown(1.0, ReadingMode::dropUnderCurrent) == "1 V");
  CHECK(shown(0.0123456, ReadingMode::dropUnderCurrent) == "12.35 mV");
  CHECK(shown(0.9996, ReadingMode::milliohms) == "999.6 mΩ");
  CHECK(shown(1.0, ReadingMode::milliohms) == "1 Ω");
  CHECK(shown(0.0123456, ReadingMode::milliohms) == "12.35 mΩ");
  for (const auto mode : {ReadingMode::ohms, ReadingMode::continuity, ReadingMode::milliohms}) {
    CHECK(shown(470.25, mode) == "470.2 Ω");
    CHECK(shown(999.4, mode) == "999.4 Ω");
    CHECK(shown(999.5, mode) == "0.9995 kΩ");
    CHECK(shown(4702.4, mode) == "4.702 kΩ");
    CHECK(shown(999.4e3, mode) == "999.4 kΩ");
    CHECK(shown(999.5e3, mode) == "0.9995 MΩ");
    CHECK(shown(4.7e6, mode) == "4.7 MΩ");
    CHECK(readingText(std::nullopt, mode) == "OL");
  }
  CHECK(shown(0.4, ReadingMode::ohms) == "0.4 Ω");
  // What is said of a value is the number that stands there.
  CHECK(asShown(0.01264, ReadingMode::volts) == Approx(0.0126).epsilon(1e-12));
  CHECK(asShown(-3.30049, ReadingMode::volts) == Approx(-3.3).epsilon(1e-12));
  CHECK(asShown(4702.44, ReadingMode::continuity) == Approx(4702.0).epsilon(1e-12));
  CHECK(asShown(0.0000123456, ReadingMode::dropUnderCurrent) == Approx(12.35e-6).epsilon(1e-12));
}

TEST_CASE("the words of modes and of settling are as files have them") {
  const std::array<const char*, 8> modes{
      "diode", "diode reversed",     "ohms",       "milliohms", "continuity",
      "volts", "drop under current", "temperature"};
  for (std::size_t i = 0; i < modes.size(); ++i) {
    CHECK(word(everyMode[i]) == modes[i]);
    CHECK(readingModeFrom(modes[i]) == everyMode[i]);
  }
  CHECK_FALSE(readingModeFrom("amperes"));
  for (const auto& [settling, text] : std::vector<std::pair<Settling, const char*>>{
           {Settling::settled, "settled"}, {Settling::rising, "rising"}, {Settling::unknown, "unknown"}}) {
    CHECK(word(settling) == text);
    CHECK(settlingFrom(text) == settling);
  }
  CHECK_FALSE(settlingFrom("falling"));
}
