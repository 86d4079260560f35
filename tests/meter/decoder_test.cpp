#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <random>
#include <string>
#include <vector>

#include "meter/line_framer.h"
#include "meter/scpi.h"
#include "netmend/meter/meter_address.h"
#include "support/seed.h"

using namespace netmend;

namespace {

std::vector<std::string> linesOf(LineFramer& framer, std::string_view bytes) {
  std::vector<std::string> lines;
  for (const auto& line : framer.add(bytes))
    lines.push_back(line ? *line : "!" + wordsOf(line.error().message));
  return lines;
}

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("numbers are read in the three forms of IEEE 488.2, with the worth of their last place") {
  const auto value = [](const char* text) { return parseNrf(text).value().value; };
  const auto digit = [](const char* text) { return parseNrf(text).value().lastDigit; };
  CHECK(value("-12") == -12.0);
  CHECK(digit("-12") == 1.0);
  CHECK(value("+0.452") == 0.452);
  CHECK(digit("+0.452") == Approx(1e-3));
  CHECK(value(" +4.52103960E-01 ") == 0.45210396);
  CHECK(digit("+4.52103960E-01") == Approx(1e-9));
  CHECK(value(".5") == 0.5);
  CHECK(value("5.") == 5.0);
  CHECK(value("1e3") == 1000.0);
}

TEST_CASE("what is no number is none") {
  for (const char* text :
       {"",    " ",     "+",     "-",   ".",   "+-5", "--5",  "-+5",     "1.2.3",    "1,2",  "0x10", "1E",
        "1E+", "1E+-3", "1E999", "inf", "nan", "NAN", "4 52", "0.452 V", "\xC2\xB5", "1\t2", "E5"})
    CHECK_FALSE(parseNrf(text));
  CHECK_FALSE(parseNrf(std::string(65, '1')));
  CHECK_FALSE(parseNrf(std::string_view("1\0", 2)));
}

TEST_CASE("SCPI's infinity is OL, its NaN no value at all") {
  for (const char* text : {"9.9E37", "+9.90000000E+37", "-9.9E+37"}) {
    const auto value = parseScpiValue(text);
    REQUIRE(value);
    CHECK_FALSE(value->reading.value);
    CHECK_FALSE(value->notANumber);
  }
  const auto nan = parseScpiValue("+9.91000000E+37");
  REQUIRE(nan);
  CHECK(nan->notANumber);
  CHECK(parseScpiValue("4.5E-01")->reading.value == 0.45);
  for (const char* text : {"9.8E37", "1E20", "-2E15", "1.0,2.0", "\"DIOD\"", "+0,\"No error\""}) {
    const auto wrong = parseScpiValue(text);
    REQUIRE_FALSE(wrong);
    CHECK_FALSE(wrong.error().found.empty());
  }
}

TEST_CASE("the function is read from short and long names, with and without range") {
  const auto function = [](const char* text) { return parseScpiFunction(text).value(); };
  CHECK(function("\"DIOD\"") == MeterFunction::diode);
  CHECK(function("\"DIOD +1.0E+01,+1.0E-05\"") == MeterFunction::diode);
  CHECK(function("'diode'") == MeterFunction::diode);
  CHECK(function("\"RES +1.000000E+03,+1.000000E-03\"") == MeterFunction::ohms);
  CHECK(function("\"SENS:FRES\"") == MeterFunction::fourWireOhms);
  CHECK(function("\"VOLT\"") == MeterFunction::dcVolts);
  CHECK(function("\"VOLT:DC\"") == MeterFunction::dcVolts);
  CHECK(function("\"VOLT:AC\"") == MeterFunction::other);
  CHECK(function("\"CAP\"") == MeterFunction::other);
  for (const char* text : {"", "\"", "\"\"", "DIOD", "+4.5E-01", "\"DI\xFFOD\"", "\"DIOD'"})
    CHECK_FALSE(parseScpiFunction(text));
}

TEST_CASE("each function is set by a command whose name the meter answers back") {
  for (const auto function :
       {MeterFunction::diode, MeterFunction::ohms, MeterFunction::fourWireOhms, MeterFunction::continuity,
        MeterFunction::dcVolts, MeterFunction::temperature}) {
    const auto command = scpiCommandFor(function);
    REQUIRE(command.starts_with("CONF:"));
    CHECK(parseScpiFunction("\"" + std::string(command.substr(5)) + "\"") == function);
    CHECK(meterFunctionFrom(word(function)) == function);
  }
  CHECK(scpiCommandFor(MeterFunction::other).empty());
}

TEST_CASE("entries of the error queue and identities are told from values and from each other") {
  CHECK(parseScpiErrorEntry("+0,\"No error\"")->code == 0);
  const auto entry = parseScpiErrorEntry("-113,\"Undefined header\"");
  REQUIRE(entry);
  CHECK(entry->code == -113);
  CHECK(entry->text == "Undefined header");
  CHECK(parseScpiIdentity("NETMEND,PRACTICE METER,0,1.0") == "NETMEND PRACTICE METER");
  const std::vector<std::string> all{"+4.52E-01", "\"DIOD +1.0E+01,+1.0E-05\"",
                                     "-222,\"Data out of range; a, b, c, d\"",
                                     "NETMEND,PRACTICE METER,0,1.0"};
  for (std::size_t i = 0; i < all.size(); ++i) {
    CHECK(parseScpiValue(all[i]).has_value() == (i == 0));
    CHECK(parseScpiFunction(all[i]).has_value() == (i == 1));
    CHECK(parseScpiErrorEntry(all[i]).has_value() == (i == 2));
    CHECK(parseScpiIdentity(all[i]).has_value() == (i == 3));
  }
}

TEST_CASE("lines end with LF, CR or CRLF; empty ones are left out") {
  LineFramer framer(LineFramer::Begin::atLine);
  CHECK(linesOf(framer, "a\nb\rc\r\nd\n\r\n\r") == Lines{"a", "b", "c", "d"});
  CHECK(linesOf(framer, "e\r") == Lines{"e"});
  CHECK(linesOf(framer, "\nf") == Lines{});
  CHECK(linesOf(framer, "\n") == Lines{"f"});
}

TEST_CASE("the rest of a line that began before anybody listened is not taken for a line") {
  LineFramer framer(LineFramer::Begin::anywhere);
  CHECK(linesOf(framer, "52\n0.452\n") == Lines{"0.452"}); // of 0.452 too
}

TEST_CASE("a line without end is told once and takes no memory") {
  LineFramer framer(LineFramer::Begin::atLine, 16);
  Lines all;
  for (int i = 0; i < 1000; ++i)
    for (auto& line : linesOf(framer, "0123456789"))
      all.push_back(line);
  CHECK(all == Lines{"!a line without end"});
  CHECK(linesOf(framer, "99\n0.5\n") == Lines{"0.5"});
  CHECK(linesOf(framer, "0123456789abcdef\n") == Lines{"0123456789abcdef"}); // as long as may be
}

TEST_CASE("lines are the same in whatever pieces their bytes come") {
  const unsigned seed = testSeed();
  std::printf("fragments: seed %u\n", seed);
  std::mt19937 dice(seed);
  const std::string_view alphabet("0123456789+-.E\n\r\"\0\xFF,", 20);
  for (int round = 0; round < 300; ++round) {
    std::string stream;
    for (int i = 0; i < 400; ++i)
      stream += alphabet[dice() % alphabet.size()];
    LineFramer whole(LineFramer::Begin::anywhere, 12);
    LineFramer pieces(LineFramer::Begin::anywhere, 12);
    const Lines expected = linesOf(whole, stream);
    Lines got;
    for (std::string_view rest = stream; !rest.empty();) {
      const auto size = std::min<std::size_t>(1 + dice() % 7, rest.size());
      for (auto& line : linesOf(pieces, rest.substr(0, size)))
        got.push_back(std::move(line));
      rest.remove_prefix(size);
    }
    REQUIRE(got == expected);
  }
}

TEST_CASE("decoders take any bytes, and no value comes of a damaged answer but one that is written there") {
  const unsigned seed = testSeed();
  std::printf("decoder fuzz: seed %u\n", seed);
  std::mt19937 dice(seed);
  const std::vector<std::string> answers{"+4.52103960E-01", "+9.90000000E+37", "\"RES +1.0E+03,+1.0E-03\"",
                                         "-113,\"Undefined header\"", "NETMEND,PRACTICE METER,0,1.0"};
  for (int round = 0; round < 20000; ++round) {
    std::string text = answers[dice() % answers.size()];
    for (auto changes = dice() % 4; changes > 0; --changes) {
      const auto at = dice() % (text.size() + 1);
      const auto byte = static_cast<char>(dice() % 256);
      switch (dice() % 3) {
      case 0:
        text.insert(at, 1, byte);
        break;
      case 1:
        if (at < text.size()) text[at] = byte;
        break;
      default:
        text.erase(at, dice() % 4);
      }
    }
    const auto value = parseScpiValue(text);
    const int shapes = int(value.has_value()) + int(parseScpiFunction(text).has_value()) +
                       int(parseScpiErrorEntry(text).has_value()) + int(parseScpiIdentity(text).has_value());
    CHECK(shapes <= 1);
    if (!value || !value->reading.value) continue;
    // strtod is the reference: it has to use the whole text and come to the same.
    char* end = nullptr;
    const double reference = std::strtod(text.c_str(), &end);
    const std::string_view left(end);
    REQUIRE(left.find_first_not_of(" \t") == std::string_view::npos);
    REQUIRE(reference == *value->reading.value);
  }
}

TEST_CASE("a meter's address is read and written") {
  const auto read = [](const char* text) { return parseMeterAddress(text).value(); };
  CHECK(read("tcp:bench.local") == MeterAddress(TcpAddress{"bench.local", 5025}));
  CHECK(read("tcp:192.0.2.7:9000") == MeterAddress(TcpAddress{"192.0.2.7", 9000}));
  CHECK(read("tcp:[::1]:5030") == MeterAddress(TcpAddress{"::1", 5030}));
  CHECK(read("serial:/dev/ttyUSB0") == MeterAddress(SerialAddress{"/dev/ttyUSB0", "", 0}));
  CHECK(read("serial:/dev/ttyUSB0:value-unit") ==
        MeterAddress(SerialAddress{"/dev/ttyUSB0", "value-unit", 0}));
  CHECK(read("serial:/dev/ttyS1@19200") == MeterAddress(SerialAddress{"/dev/ttyS1", "", 19200}));
  CHECK(read("serial:/dev/serial/by-path/pci-0000:00:14.0-usb-0:1:1.0-port0:value-unit@2400") ==
        MeterAddress(
            SerialAddress{"/dev/serial/by-path/pci-0000:00:14.0-usb-0:1:1.0-port0", "value-unit", 2400}));
  CHECK(read("serial:/dev/serial/by-path/pci-0000:00:14.0-usb-0:1:1.0-port0") ==
        MeterAddress(SerialAddress{"/dev/serial/by-path/pci-0000:00:14.0-usb-0:1:1.0-port0", "", 0}));
  for (const char* text : {"tcp:bench.local", "tcp:[::1]:5030", "serial:/dev/ttyUSB0:value-unit@2400"})
    CHECK(addressText(read(text)) == text);
}

TEST_CASE("an address that is none says what is wrong with it") {
  for (const char* text : {"",
                           "tcp",
                           "tcp:",
                           "tcp::5025",
                           "tcp:host:",
                           "tcp:host:0",
                           "tcp:host:65536",
                           "tcp:host:5025x",
                           "tcp:[::1",
                           "tcp:[::1]5025",
                           "tcp:a b",
                           "serial:",
                           "serial:ttyUSB0",
                           "serial:/",
                           "serial:/dev/ttyUSB0:",
                           "serial:/dev/ttyUSB0:No Such",
                           "serial:/dev/ttyUSB0@fast",
                           "serial:/dev/ttyUSB0@",
                           "usb:1",
                           "tcp:ho\nst"}) {
    const auto address = parseMeterAddress(text);
    INFO(text);
    REQUIRE_FALSE(address);
    CHECK_FALSE(address.error().message.empty());
    CHECK_FALSE(address.error().expected.empty());
  }
}
