#include "netmend/board/value.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace netmend;

namespace {

void reads(const char* text, double magnitude, ValueUnit unit) {
  INFO(text);
  const auto value = parsePartValue(text);
  REQUIRE(value);
  // To the last bit: the same decimal text must give the same number.
  CHECK(value->magnitude == magnitude);
  CHECK(value->unit == unit);
}

} // namespace

TEST_CASE("resistances and capacitances in letter-for-point notation read as IEC 60062 lists them") {
  // The examples of IEC 60062, tables of resistance and capacitance codes; written from memory.
  const auto ohm = ValueUnit::ohm;
  const auto none = ValueUnit::none;
  reads("R10", 0.10, ohm);
  reads("R332", 0.332, ohm);
  reads("1R0", 1.0, ohm);
  reads("3R32", 3.32, ohm);
  reads("10R", 10.0, ohm);
  reads("59R0", 59.0, ohm);
  reads("1K0", 1000.0, none);
  reads("33K2", 33200.0, none);
  reads("590K", 590000.0, none);
  reads("1M5", 1.5e6, none);
  reads("1G0", 1e9, none);
  reads("1T0", 1e12, none);
  reads("p10", 0.10e-12, none);
  reads("p332", 0.332e-12, none);
  reads("1p5", 1.5e-12, none);
  reads("33p2", 33.2e-12, none);
  reads("1n0", 1e-9, none);
  reads("332n", 332e-9, none);
  reads("1\u00b50", 1e-6, none);
  reads("33\u03bc2", 33.2e-6, none);
  reads("1m0", 1e-3, none);
}

TEST_CASE("values as people write them are read") {
  reads("4k7", 4700.0, ValueUnit::none);
  reads("0R", 0.0, ValueUnit::ohm);
  reads("0", 0.0, ValueUnit::none);
  reads("0R05", 0.05, ValueUnit::ohm);
  reads("100n", 100e-9, ValueUnit::none);
  reads("10uF", 10e-6, ValueUnit::farad);
  reads("10UF", 10e-6, ValueUnit::farad);
  reads("22PF", 22e-12, ValueUnit::farad);
  reads("10uf", 10e-6, ValueUnit::farad);
  reads("2u2", 2.2e-6, ValueUnit::none);
  reads("2u2H", 2.2e-6, ValueUnit::henry);
  reads("4.7 k\u03a9", 4700.0, ValueUnit::ohm);
  reads("4.7k\u2126", 4700.0, ValueUnit::ohm);
  reads("4k7\u03a9", 4700.0, ValueUnit::ohm);
  reads("33", 33.0, ValueUnit::none);
  reads("33 ohm", 33.0, ValueUnit::ohm);
  reads("1M", 1e6, ValueUnit::none);
  reads("1MEG", 1e6, ValueUnit::none);
  reads("5m\u03a9", 5e-3, ValueUnit::ohm);
  reads("16 MHz", 16e6, ValueUnit::hertz);
  reads("32.768kHz", 32768.0, ValueUnit::hertz);
  reads("3V3", 3.3, ValueUnit::volt);
  reads("12V", 12.0, ValueUnit::volt);
  reads("500mA", 0.5, ValueUnit::ampere);
  reads("4,7k", 4700.0, ValueUnit::none);
  reads(".1u", 0.1e-6, ValueUnit::none);
  reads("  10k ", 10e3, ValueUnit::none);
}

TEST_CASE("what follows the value is not its business") {
  reads("100n/16V", 100e-9, ValueUnit::none);
  reads("100n,16V", 100e-9, ValueUnit::none);
  reads("100n 16V X7R", 100e-9, ValueUnit::none);
  reads("33 0603", 33.0, ValueUnit::none);
  reads("10u\u00b120%", 10e-6, ValueUnit::none);
  reads("4K7J", 4700.0, ValueUnit::none);
  reads("4R7F", 4.7, ValueUnit::ohm);
  reads("10kF", 10e3, ValueUnit::none);
  reads("100nK", 100e-9, ValueUnit::none);
}

TEST_CASE("what is no value is not read as one") {
  for (const char* text :
       {"",  " ", "TL072", "1N4148", "1n4148", "2N7002", "6N137", "74HC00", "DNP",  "n.c.",     "k7",   "M3",
        "R", "p", "-5",    "+5V",    "10%",    "4k7k7",  "4.7k2", "1.2.3",  "8P8C", "\xff\xfe", "1\xce"}) {
    INFO(text);
    CHECK_FALSE(parsePartValue(text));
  }
  CHECK_FALSE(parsePartValue(std::string(400, '9')));
}

TEST_CASE("every multiplier and unit that is read has its power of ten") {
  const auto none = ValueUnit::none;
  const std::vector<std::pair<std::string, double>> multipliers{
      {"p", 1e-12}, {"n", 1e-9}, {"u", 1e-6}, {"\u00b5", 1e-6}, {"\u03bc", 1e-6}, {"m", 1e-3},  {"k", 1e3},
      {"K", 1e3},   {"M", 1e6},  {"G", 1e9},  {"T", 1e12},      {"MEG", 1e6},     {"Meg", 1e6}, {"meg", 1e6}};
  for (const auto& [sign, factor] : multipliers) {
    reads(("2" + sign).c_str(), std::stod("2e" + std::to_string(std::lround(std::log10(factor)))), none);
    reads(("3" + sign + "F").c_str(), std::stod("3e" + std::to_string(std::lround(std::log10(factor)))),
          factor < 1 ? ValueUnit::farad : none); // behind k and M it is a tolerance
  }
  const std::vector<std::pair<std::string, ValueUnit>> units{
      {"\u03a9", ValueUnit::ohm}, {"\u2126", ValueUnit::ohm}, {"ohms", ValueUnit::ohm},
      {"Ohms", ValueUnit::ohm},   {"ohm", ValueUnit::ohm},    {"Ohm", ValueUnit::ohm},
      {"OHM", ValueUnit::ohm},    {"R", ValueUnit::ohm},      {"Hz", ValueUnit::hertz},
      {"HZ", ValueUnit::hertz},   {"hz", ValueUnit::hertz},   {"F", ValueUnit::farad},
      {"H", ValueUnit::henry},    {"V", ValueUnit::volt},     {"v", ValueUnit::volt},
      {"A", ValueUnit::ampere}};
  for (const auto& [sign, unit] : units) {
    reads(("7" + sign).c_str(), 7.0, unit);
    reads(("7 " + sign).c_str(), 7.0, unit);
    reads(("7m" + sign).c_str(), 7e-3, unit);
  }
  for (const char* letter : {"R", "F", "V", "v", "A"}) // these stand for the point
    CHECK(parsePartValue(std::string("1") + letter + "5")->magnitude == 1.5);
  for (const char* word : {"ohm", "Hz", "H"})
    CHECK_FALSE(parsePartValue(std::string("1") + word + "5"));
  reads("10uh", 10e-6, ValueUnit::henry);
  reads("10NF", 10e-9, ValueUnit::farad);
  reads("10UH", 10e-6, ValueUnit::henry);
  for (const char* text : {"10f", "10h", "10P", "10N", "10U", "10PX", "10P5F", "10uFx", "10uX"}) {
    INFO(text);
    CHECK_FALSE(parsePartValue(text));
  }
}

TEST_CASE("as many digits behind a letter as markings have, and one point") {
  reads("1n234", 1.234e-9, ValueUnit::none);
  CHECK_FALSE(parsePartValue("1n2345"));
  reads("R1234", 0.1234, ValueUnit::ohm);
  CHECK_FALSE(parsePartValue("R12345"));
  reads("p1J", 0.1e-12, ValueUnit::none);
  reads("n47", 0.47e-9, ValueUnit::none);
  reads("u1", 0.1e-6, ValueUnit::none);
  reads("\u00b51", 0.1e-6, ValueUnit::none);
  for (const char* text :
       {"n", "n47x", "u.1", "m5", "R1R", "1.5k5", "1.5R5", "1.", ".", ",5k5", ",5", "1..5"}) {
    INFO(text);
    CHECK_FALSE(parsePartValue(text));
  }
  reads("1.5k", 1500.0, ValueUnit::none);
  reads("1,5R", 1.5, ValueUnit::ohm);
  reads(".5", 0.5, ValueUnit::none);
  reads("1,k", 1.0, ValueUnit::none); // a comma ends it
}

TEST_CASE("tolerance letters end a value, and only these do") {
  for (const char letter : {'B', 'C', 'D', 'F', 'G', 'J', 'K', 'M'}) {
    reads((std::string("4R7") + letter).c_str(), 4.7, ValueUnit::ohm);
    reads((std::string("4k7") + letter).c_str(), 4700.0, ValueUnit::none);
    reads((std::string("4k7") + letter + " 0603").c_str(), 4700.0, ValueUnit::none);
    reads((std::string("R47") + letter).c_str(), 0.47, ValueUnit::ohm);
  }
  for (const char* text : {"4R7E", "4k7E", "R47E", "4R7JJ", "4k7Fx", "R47FF"}) {
    INFO(text);
    CHECK_FALSE(parsePartValue(text));
  }
  reads("4k7R", 4700.0, ValueUnit::ohm);
  reads("5R\u03a9", 5.0, ValueUnit::ohm);
  reads("100nFJ", 100e-9, ValueUnit::farad);
  for (const char* end : {" ", "\t", "/", ",", ";", "\u00b1"})
    reads(("100n" + std::string(end) + "x").c_str(), 100e-9, ValueUnit::none);
  CHECK_FALSE(parsePartValue("100n:x"));
  reads("33 x", 33.0, ValueUnit::none); // a word that is no unit says nothing of the value
  reads("33 k", 33e3, ValueUnit::none);
  reads("33 k5", 33.0, ValueUnit::none);
  reads("\t33", 33.0, ValueUnit::none);
  reads("33 ", 33.0, ValueUnit::none);
}
