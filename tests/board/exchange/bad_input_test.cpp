#include <chrono>
#include <fstream>
#include <iterator>
#include <random>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/edit.h"
#include "netmend/board/exchange/import.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

const std::string testData =
    "P  JOB   ours\nP  UNITS CUST 0\nP  NNAMEm0001 A_NAME_LONGER_THAN_14\n"
    "327m0001            U1    -7          A01X+001000Y-002000X0300Y0500R090 S2\n"
    "317CLK              VIA   -    MD0120PA00X+000100Y+000200X0240Y0000R000 S3\n"
    "307A                NOREF -NPIN D0100PA01X+000100Y+000200                S0L01L03\n"
    "027A                NOREF -NPIN      A01X+000100Y+000200X0300Y0000R000 S0\n"
    "378GND            L02 X150 X400Y250 Y275 X500*X275Y300 X300\n078                   Y310\n"
    "389BOARD_EDGE         X10Y10 X0Y0 X20000Y0 Y10000 X0 Y0\n999\n";
const std::string points =
    "part;pin;net;x_mm;y_mm;side\r\nJ1;1;GND;1,5;2;top\r\n\"J;2\";\"a\"\"b\";N/C;3;4;bottom\r\n";

std::string shapesBoard() {
  return *readFile(NETMEND_SOURCE_DIR "/tests/reference/kicad/shapes.kicad_pcb");
}

struct Sample {
  const char* file;
  std::string content;
};
std::vector<Sample> samples() {
  return {{"shapes.kicad_pcb", shapesBoard()}, {"board.ipc", testData}, {"points.csv", points}};
}

/// Whatever comes, there is a sound board or an error that names the file.
void mustCope(const std::string& content, const char* file) {
  const auto result = importBoard(ImportSource{content, file});
  if (result) {
    if (!checkReferences(result->board)) FAIL_CHECK("dangling reference");
    if (!checkWritable(result->board)) FAIL_CHECK("read, and cannot be saved");
  } else if (result.error().file != file || result.error().message.empty()) {
    FAIL_CHECK("error without file: " << result.error().text());
  }
}

std::string mutated(std::string text, std::mt19937& random) {
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  static const std::vector<std::string> pieces{
      "(", ")",  "\"", "-",  "1e999", "nan", "99999999999",    "\0", "\\", ";",
      ",", "\n", "X",  "Y-", "*",     "999", "(pts (xy 0 0))", "0"};
  for (std::size_t i = 1 + below(4); i > 0 && !text.empty(); --i) {
    const std::size_t at = below(text.size());
    switch (below(5)) {
    case 0:
      text[at] = static_cast<char>(below(256));
      break;
    case 1:
      text.erase(at, 1 + below(20));
      break;
    case 2:
      text.insert(at, pieces[below(pieces.size())]);
      break;
    case 3:
      text.insert(at, text.substr(below(text.size()), 1 + below(200)));
      break;
    default:
      text.replace(at, 1, pieces[below(pieces.size())]);
    }
  }
  return text;
}

void fuzzFor(std::chrono::seconds duration) {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  fmt::print("fuzzing the readers with seed {}\n", seed);
  std::mt19937 random(seed);
  const auto all = samples();
  const auto end = std::chrono::steady_clock::now() + duration;
  std::size_t count = 0;
  while (std::chrono::steady_clock::now() < end) {
    for (const Sample& s : all)
      mustCope(mutated(s.content, random), s.file);
    ++count;
  }
  CHECK(count > 10);
}

} // namespace

TEST_CASE("a board file cut short anywhere is an error") {
  for (const Sample& s : samples()) {
    INFO(s.file);
    const bool table = std::string_view(s.file) == "points.csv"; // a shorter table is a table
    const std::size_t whole = s.content.find_last_not_of(" \r\n") + 1;
    for (std::size_t length = 0; length < whole; length += netmend::everyPlace(31)) {
      const auto result = importBoard(ImportSource{std::string_view(s.content).substr(0, length), s.file});
      if (result && !table) FAIL_CHECK("read at length " << length);
      if (!result && result.error().file != s.file) FAIL_CHECK("error without file at length " << length);
    }
    CHECK(importBoard(ImportSource{s.content, s.file}));
  }
}

TEST_CASE("damaged files give an error or a sound board, never a crash") {
  fuzzFor(std::chrono::seconds(4));
}

TEST_CASE("damaged files give an error or a sound board, for long", "[.full]") {
  fuzzFor(std::chrono::minutes(5));
}

TEST_CASE("deep nesting, binary and foreign files are errors with a place where there is one") {
  const auto error = [](const std::string& content, const char* file) {
    const auto result = importBoard(ImportSource{content, file});
    return result ? std::string("read") : result.error().text();
  };
  const std::string start = "(kicad_pcb (version 20211014)";
  CHECK(error(start + std::string(1'000'000, '('), "a.kicad_pcb").find("nested too deeply") !=
        std::string::npos);
  CHECK(error(start + std::string(1'000'000, ')'), "a.kicad_pcb").find("column") != std::string::npos);
  CHECK(error("", "a.kicad_pcb").find("empty") != std::string::npos);
  CHECK(error(std::string("(kicad_pcb\0", 11), "a.kicad_pcb").find("binary") != std::string::npos);
  CHECK(error("\xFF\xFE(\0", "a.kicad_pcb").find("UTF-16") != std::string::npos);
  CHECK(error("\x89PNG\r\n", "a.png").find("known format") != std::string::npos);
  CHECK(error("(kicad_pcb (version 20211014) (net 1 \"\xE4\"))", "a.kicad_pcb").find("UTF-8") !=
        std::string::npos);
  CHECK(error("(kicad_pcb (version 2))", "a.kicad_pcb").find("version 3") != std::string::npos);
  CHECK_FALSE(importBoard(std::filesystem::path("/")));
  CHECK_FALSE(importBoard(std::filesystem::path("/no/such/file.csv")));
}

TEST_CASE("a board whose parts reach farther than a board can be is refused, whatever the format") {
  const auto withPadAt = [](const std::string& mm) {
    return importBoard(ImportSource{"(kicad_pcb (version 20211014) (layers (0 F.Cu signal) (31 B.Cu signal))"
                                    "(footprint a (layer F.Cu) (at 9000 0)"
                                    "(pad 1 smd rect (at " +
                                        mm + " 0) (size 1 1) (layers F.Cu))))",
                                    "far.kicad_pcb"});
  };
  // The part's body reaches half a pad and a margin beyond the pad's middle.
  const auto near = withPadAt("999");
  REQUIRE(near);
  CHECK(boardToText(near->board));
  const auto far = withPadAt("1000");
  REQUIRE_FALSE(far);
  CHECK(far.error().file == "far.kicad_pcb");
  CHECK(wordsOf(far.error().message) == "is longer than a board can be");
}

TEST_CASE("a format that nobody knows is refused by name") {
  ImportSource source{"part,pin\nJ1,1\n", "a.csv"};
  source.options.format = "papyrus";
  const auto result = importBoard(source);
  REQUIRE_FALSE(result);
  CHECK(wordsOf(result.error().found) == "papyrus");
  source.options.format = "csv";
  CHECK(importBoard(source));
}

TEST_CASE("content decides on the format before the extension does") {
  CHECK(importBoard(ImportSource{shapesBoard(), "renamed.csv"})->board.parts.size() == 2);
  CHECK(importBoard(ImportSource{testData, "renamed.txt"})->board.vias.size() == 2);
  CHECK(importBoard(ImportSource{"J1,1\n", "plain.csv"})->board.pins.size() == 1);
}
