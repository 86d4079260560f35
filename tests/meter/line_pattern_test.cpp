#include "netmend/meter/line_pattern.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>

#include <unistd.h>

#include "support/seed.h"

using namespace netmend;

namespace {

std::vector<LinePattern> shippedPatterns() {
  return loadLinePatterns(NETMEND_SOURCE_DIR "/data/meter_lines.json").value();
}

LineReading readBy(const char* id, std::string_view line) {
  const auto patterns = shippedPatterns();
  const auto* pattern = findLinePattern(patterns, id);
  REQUIRE(pattern != nullptr);
  const auto reading = parseMeterLine(*pattern, line);
  INFO(line);
  REQUIRE(reading);
  return *reading;
}

/// A file with one pattern, in which `what` is replaced.
Result<std::vector<LinePattern>> loadChanged(std::string_view what, std::string_view by) {
  std::string text = R"json({"format": "netmend-meter-lines", "version": 1, "patterns": [
    {"id": "plain", "name": "Plain", "source": "invented", "baud": 9600,
     "pattern": "(?<value>[0-9.]+) (?<mode>[A-Z])", "modes": {"D": "diode"}, "examples": ["0.5 D"]}]})json";
  const auto at = text.find(what);
  REQUIRE(at != std::string::npos);
  text.replace(at, what.size(), by);
  const auto path =
      std::filesystem::temp_directory_path() / ("netmend-lines-" + std::to_string(::getpid()) + ".json");
  std::ofstream(path) << text;
  auto patterns = loadLinePatterns(path);
  std::filesystem::remove(path);
  return patterns;
}

} // namespace

TEST_CASE("the shipped patterns load, each with its source, and read what their examples mean") {
  for (const auto& pattern : shippedPatterns()) {
    CHECK_FALSE(pattern.source.empty());
    CHECK(pattern.examples.size() >= 3);
  }
  const auto plain = readBy("value-unit", "-12.3mV");
  CHECK(*plain.reading.value == Approx(-0.0123));
  CHECK(plain.reading.lastDigit == Approx(1e-4));
  CHECK(plain.unit == "V");
  CHECK_FALSE(plain.function);
  CHECK(*readBy("value-unit", "4,70 kΩ").reading.value == Approx(4700.0));
  CHECK(readBy("value-unit", "4.70 kOhm").unit == "Ω");
  CHECK_FALSE(readBy("value-unit", "OL MΩ").reading.value);

  const auto diode = readBy("mode-value-unit", "DIODE,+0.4521,V");
  CHECK(*diode.reading.value == Approx(0.4521));
  CHECK(diode.function == MeterFunction::diode);
  CHECK_FALSE(readBy("mode-value-unit", "DIODE,OL,V").reading.value);
  CHECK(*readBy("mode-value-unit", "VDC,+3.301E+00,V").reading.value == Approx(3.301));
  CHECK(readBy("mode-value-unit", "CAP,101.2,uF").function == MeterFunction::other);

  const auto log = readBy("semicolon-log", "12:03:04;0,452;V;DI");
  CHECK(*log.reading.value == Approx(0.452));
  CHECK_FALSE(readBy("semicolon-log", "12:03:05;----;V;DI").reading.value);
  CHECK(readBy("semicolon-log", "12:03:06;4,70;kOhm;RE").reading.lastDigit == Approx(10.0));
}

TEST_CASE("a value of another function or unit is not for the walk") {
  const auto at = [](const char* id, const char* line, MeterFunction wanted) {
    const auto why = mismatch(readBy(id, line), wanted);
    return why ? std::optional(wordsOf(*why)) : std::nullopt;
  };
  CHECK_FALSE(at("mode-value-unit", "DIODE,+0.4521,V", MeterFunction::diode));
  CHECK(at("mode-value-unit", "VDC,+0.4521,V", MeterFunction::diode).value() ==
        "the meter is at DC volts, diode is wanted");
  CHECK(at("mode-value-unit", "CAP,101.2,uF", MeterFunction::diode));
  CHECK(at("value-unit", "4.70 kΩ", MeterFunction::diode).value() == "the meter sends Ω, diode is wanted");
  CHECK(at("value-unit", "1.2 A", MeterFunction::dcVolts));
  CHECK_FALSE(at("value-unit", "0.452 V", MeterFunction::diode));
  CHECK_FALSE(at("value-unit", "0.452 V", MeterFunction::dcVolts)); // such a meter does not tell
}

TEST_CASE("a line that is damaged gives an error and no value") {
  const auto patterns = shippedPatterns();
  const auto* pattern = findLinePattern(patterns, "mode-value-unit");
  REQUIRE(pattern != nullptr);
  for (const std::string_view line :
       {std::string_view("DIODE,,V"), std::string_view("DIODE,0.45.2,V"), std::string_view("DIODE,0.452,OHM"),
        std::string_view("LAMP,0.452,V"), std::string_view("DIODE,0.452,V "),
        std::string_view("xDIODE,0.452,V"), std::string_view("DIODE,0.4\0002,V", 13),
        std::string_view("DIODE,0.4\xFF"
                         "2,V"),
        std::string_view("DIODE,1E99,V"), std::string_view("DIODE,\xC3\x28,V"), std::string_view("")}) {
    const auto reading = parseMeterLine(*pattern, line);
    INFO(line);
    REQUIRE_FALSE(reading);
    CHECK_FALSE(reading.error().message.empty());
  }
  CHECK_FALSE(parseMeterLine(*pattern, std::string(100'000, '1')));
}

TEST_CASE("what is wrong in a file of patterns is told with its place") {
  REQUIRE(loadChanged("Plain", "Plain"));
  const auto place = [](std::string_view what, std::string_view by) {
    const auto patterns = loadChanged(what, by);
    INFO(by);
    REQUIRE_FALSE(patterns);
    CHECK(patterns.error().file.find("netmend-lines-") != std::string::npos);
    return wordsOf(patterns.error().place);
  };
  CHECK(place("\"plain\"", "\"Plain Meter\"") == "/patterns/0/id");
  CHECK(place("\"invented\"", "\"\"") == "/patterns/0/source");
  CHECK(place("9600", "1") == "/patterns/0/baud");
  CHECK(place("[0-9.]+)", "[0-9.]+") == "/patterns/0/pattern");
  CHECK(place("(?<value>", "(?<number>") == "/patterns/0/pattern");
  CHECK(place("(?<value>", "(*LIMIT_MATCH=99999999)(?<value>") == "/patterns/0/pattern");
  CHECK(place("\"diode\"", "\"lamp\"") == "/patterns/0/modes/D");
  CHECK(place("0.5 D", "0.5 V") == "/patterns/0/examples/0");
  CHECK(place("0.5 D", "0.5 d") == "/patterns/0/examples/0");
  CHECK(place("[\"0.5 D\"]", "[]") == "/patterns/0/examples");
  CHECK(place("\"baud\"", "\"bauds\"") == "/patterns/0/bauds");
  CHECK_FALSE(loadLinePatterns("/nowhere/meter_lines.json"));
}

TEST_CASE("an expression that tries without end is given up, not waited for") {
  const auto patterns =
      loadChanged("(?<value>[0-9.]+) (?<mode>[A-Z])", "(?<value>(?:[0-9.]+)+) (?<mode>[A-Z])");
  REQUIRE(patterns);
  const auto before = std::chrono::steady_clock::now();
  CHECK_FALSE(parseMeterLine(patterns->front(), std::string(200, '1')));
  CHECK(std::chrono::steady_clock::now() - before < std::chrono::milliseconds(500));
}

TEST_CASE("lines of random bytes and damaged lines never give a value that does not stand in them") {
  const unsigned seed = testSeed();
  std::printf("line fuzz: seed %u\n", seed);
  std::mt19937 dice(seed);
  const auto patterns = shippedPatterns();
  int read = 0;
  for (int round = 0; round < 20000; ++round) {
    const auto& pattern = patterns[dice() % patterns.size()];
    std::string line = pattern.examples[dice() % pattern.examples.size()];
    for (auto changes = dice() % 4; changes > 0 && !line.empty(); --changes)
      line[dice() % line.size()] = static_cast<char>(dice() % 256);
    const auto reading = parseMeterLine(pattern, line);
    if (!reading || !reading->reading.value) continue;
    ++read;
    const double size = std::abs(*reading->reading.value);
    REQUIRE((size == 0.0 || (size > 1e-15 && size < 1e18)));
    // One place more in a number changes it by no more than the worth of its last.
    REQUIRE(reading->reading.lastDigit > 0.0);
  }
  CHECK(read > 1000); // the undamaged ones
}
