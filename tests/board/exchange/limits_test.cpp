// Both sides of what the readers take at most, and options that change what they read.
#include <algorithm>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "board/exchange/outline.h"
#include "board/exchange/part_guess.h"
#include "board/exchange/text.h"
#include "measure.h"
#include "netmend/board/exchange/import.h"

using namespace netmend;

namespace {

const std::string head = "(kicad_pcb (version 20211014)\n(layers (0 F.Cu signal) (31 B.Cu signal))\n";

std::string errorOf(const std::string& text, const char* file = "b.kicad_pcb") {
  const auto result = importBoard(ImportSource{text, file});
  return result ? std::string("read") : result.error().text();
}

std::string repeated(const std::string& text, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i)
    out += text;
  return out;
}

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

} // namespace

TEST_CASE("lists nest a hundred deep and no deeper") {
  const auto nested = [](std::size_t depth) { // the board's own list is the first
    return head + std::string(depth - 1, '(') + std::string(depth - 1, ')') + ")";
  };
  CHECK(errorOf(nested(100)) == "read");
  CHECK(errorOf(nested(101)).find("nested too deeply") != std::string::npos);
}

TEST_CASE("a custom pad has a thousand primitives and no more") {
  const auto pad = [](std::size_t primitives) {
    return head +
           "(footprint f (layer F.Cu) (at 0 0) (pad 1 smd custom (at 0 0) (size 1 1) (layers F.Cu) "
           "(primitives " +
           repeated("(gr_circle (center 0 0) (end 1 0) (width 0))", primitives) + "))))";
  };
  CHECK(errorOf(pad(1000)) == "read");
  CHECK(errorOf(pad(1001)).find("too many primitives (expected at most 1000)") != std::string::npos);
}

TEST_CASE("the board's edge has a million corners and no more") {
  const auto edge = [](std::size_t corners) {
    return head + "(gr_poly (pts (xy 0 0) (xy 1 0)" + repeated("(xy 1 1)", corners - 2) +
           ") (layer Edge.Cuts)))";
  };
  CHECK(errorOf(edge(1'000'000)) == "read");
  CHECK(errorOf(edge(1'000'001)).find("too many corners (expected at most 1000000)") != std::string::npos);
}

TEST_CASE("an edge of more than 20000 pieces is left unknown, drawn twice counts once") {
  const auto outline = [](int open, int closed) {
    std::vector<EdgePiece> pieces;
    for (int i = 0; i < open; ++i) {
      pieces.push_back({{mm(i % 1000, i / 1000), mm(i % 1000 + 0.5, i / 1000)}, false});
      pieces.push_back({{mm(i % 1000 + 0.5, i / 1000), mm(i % 1000, i / 1000)}, false});
    }
    for (int i = 0; i < closed; ++i)
      pieces.push_back({{mm(i, -5), mm(i + 0.5, -5), mm(i, -4)}, true});
    return outlineFrom(std::move(pieces)).value();
  };
  CHECK(hasNotice(outline(19'998, 2).notices, "such chains are left out: 19998"));
  CHECK(outline(19'998, 2).polygons.size() == 2);
  const Outline over = outline(19'998, 3);
  CHECK(over.polygons.empty());
  REQUIRE(over.notices.size() == 1);
  CHECK(wordsOf(over.notices[0]) == "the board's edge has 20001 pieces, more than 20000; it is left unknown");
}

TEST_CASE("ends meet across the gap and no farther, the nearest first") {
  const auto polygons = [](Length gap) {
    return outlineFrom({{{mm(0, 0), mm(9, 0)}, false},
                        {{mm(9, 0) + Point{gap, {}}, mm(9, 9)}, false},
                        {{mm(9, 9), mm(0, 0)}, false}},
                       Length(50'000))
        .value()
        .polygons.size();
  };
  CHECK(polygons(Length(0)) == 1);
  CHECK(polygons(Length(50'000)) == 1);
  CHECK(polygons(Length(50'001)) == 0);
  // Two ends within the gap: the near one is taken, and the far one is left open.
  const Outline nearest = outlineFrom({{{mm(0, 0), mm(9, 0)}, false},
                                       {{mm(9.04, 0), mm(20, 20)}, false},
                                       {{mm(9.01, 0), mm(9, 9)}, false},
                                       {{mm(9, 9), mm(0, 0)}, false}})
                              .value();
  CHECK(nearest.polygons.empty()); // what is left open is larger than what closes
  CHECK(hasNotice(nearest.notices, "first between x 20.000 mm, y 20.000 mm and x 9.040 mm, y 0.000 mm"));
}

TEST_CASE("an open chain no larger than the closed edge is only left out") {
  const Ring square{mm(0, 0), mm(3, 0), mm(3, 4), mm(0, 4)}; // 5 mm across
  const auto with = [&](double length) {
    return outlineFrom({{square, true}, {{mm(10, 0), mm(10 + length, 0)}, false}}).value();
  };
  CHECK(with(5.0).polygons.size() == 1);
  CHECK(with(5.001).polygons.empty());
  CHECK(with(5.001).notices.size() == 1);
}

TEST_CASE("corners that overshoot by a micrometre are no crossing") {
  const auto crosses = [](double by) { // a bow tie whose sides cross that far
    return !outlineFrom({{{mm(0, 0), mm(10, 0), mm(10, 10), mm(5, -by), mm(0, 10)}, true}});
  };
  CHECK_FALSE(crosses(0.0009));
  CHECK(crosses(0.0011));
  const auto crossing = outlineFrom({{{mm(0, 0), mm(9, 9), mm(9, 0), mm(0, 9)}, true}});
  CHECK(wordsOf(crossing.error().message) == "the board's edge crosses itself near x 0.000 mm, y 0.000 mm");
}

TEST_CASE("of more than a hundred notices the number of the others is told") {
  const auto table = [](int columns) {
    std::string text = "part,pin";
    for (int i = 0; i < columns; ++i)
      text += fmt::format(",column {}", i);
    return importBoard(ImportSource{text + "\nJ1,1\n", "b.csv"})->notices;
  };
  CHECK(table(100).size() == 100);
  CHECK(wordsOf(table(100).back()) == "line 1: the column \"column 99\" is not read");
  CHECK(table(101).size() == 101);
  CHECK(wordsOf(table(101).back()) == "and 1 more notices");
  CHECK(wordsOf(table(103).back()) == "and 3 more notices");
}

TEST_CASE("test data are known by their beginning: a thousand lines, 100000 bytes") {
  const auto format = [](const std::string& before) {
    return errorOf(before + "P  UNITS SI\n999\n", "b.unknown").find("known format") == std::string::npos;
  };
  CHECK(format(repeated("C\n", 999)));
  CHECK_FALSE(format(repeated("C\n", 1000)));
  const std::string line = std::string(99, 'C') + "\n";
  CHECK(format(repeated(line, 999)));
  CHECK_FALSE(format(repeated(line, 1000)));
  CHECK_FALSE(format(std::string(100'000, 'C') + "\n"));
  for (const char* first : {"P  JOB x\n", "P  UNITS SI\n", "P  VER\n", "P JOB x\n"}) {
    INFO(first);
    CHECK(errorOf(first, "b.unknown").find("known format") == std::string::npos);
  }
  for (const char* first : {"P  JOBS x\n", "PUNITS SI\n", "P  TITLE x\n", "X\n"}) {
    INFO(first);
    CHECK(errorOf(first, "b.unknown").find("known format") != std::string::npos);
  }
  // A test record has X in column 42 and Y in column 50.
  const std::string record = "327A                U1    -1          A01X+001000Y-002000";
  CHECK(errorOf(record + "\n999\n", "b.unknown") == "read");
  std::string noX = record, noY = record, other = record;
  noX[41] = 'Z';
  noY[49] = 'Z';
  other[0] = '9';
  for (const std::string& none : {noX, noY, other})
    CHECK(errorOf(none + "\n999\n", "b.unknown").find("known format") != std::string::npos);
}

TEST_CASE("formats are known by extension in either case, after their content") {
  CHECK(errorOf("J1,1\n", "b.CSV") == "read");
  for (const char* file : {"b.tsv", "b.txt", "b.csv"})
    CHECK(errorOf("J1,1\n", file) == "read");
  for (const char* file : {"b.ipc", "b.d356", "b.356", "b.NET"})
    CHECK(errorOf("999\n", file) == "read");
  for (const char* file : {"b", "b.", "b.cs", "b.csvx", "b. ", "csv"})
    CHECK(errorOf("J1,1\n", file)
              .find("not a board file of a known format (expected netmend, kicad, ipc-d-356a, "
                    "csv)") != std::string::npos);
}

TEST_CASE("a guessed body has the margin that was asked for") {
  ImportSource source{"J1,1,A,0,0\nJ1,2,B,10,0\n", "b.csv"};
  const auto width = [&] { return boxOf(importBoard(source)->board.parts[0].body.value).size().width; };
  CHECK(width() == Length(10'500'000)); // a quarter of a millimetre on each side
  source.options.bodyMargin = Length(1'000'000);
  CHECK(width() == Length(12'000'000));
  const Ring around = hullWithMargin({mm(0, 0)}, Length(1'000'000));
  REQUIRE(around.size() == 8); // a regular octagon: its corners 1 and tan 22.5° = 0.414 214 away
  CHECK(around[0] == Point{Length(-1'000'000), Length(-414'214)});
  CHECK(std::abs(squareMillimetres(around)) == Approx(8 * 0.41421356).margin(1e-5));
  CHECK(convexHull({mm(0, 0), mm(2, 0), mm(1, 0)}).empty());
  CHECK(convexHull({mm(0, 0), mm(2, 0)}).empty());
  CHECK(convexHull({mm(0, 0), mm(2, 0), mm(2, 2), mm(0, 2), mm(1, 1), mm(1, 0), mm(2, 0)}) ==
        Ring{mm(0, 0), mm(2, 0), mm(2, 2), mm(0, 2)});
}

TEST_CASE("kinds of parts are guessed by the letters of their reference, value and pins") {
  const auto kind = [](const char* reference, const char* value = "", std::size_t pins = 2) {
    return guessedKind(reference, value, pins);
  };
  CHECK(kind("R1") == guessed(PartKind::resistor));
  CHECK(kind("r12a") == guessed(PartKind::resistor));
  CHECK(kind("R1", "0") == guessed(PartKind::zeroOhmLink));
  CHECK(kind("R1", "0R") == guessed(PartKind::zeroOhmLink));
  CHECK(kind("R1", "0V") == guessed(PartKind::resistor));
  CHECK(kind("R1", "1R") == guessed(PartKind::resistor));
  CHECK(kind("R1", "0R", 3) == guessed(PartKind::resistor));
  CHECK(kind("R1", "10k", 3) == guessed(PartKind::resistor));
  CHECK(kind("R1", "0R", 4) == guessed(PartKind::resistorArray));
  CHECK(kind("L1", "", 3) == guessed(PartKind::inductor));
  CHECK(kind("L1", "", 4) == guessed(PartKind::choke));
  CHECK(kind("L1", "", 5) == guessed(PartKind::inductor));
  CHECK(kind("FB2") == guessed(PartKind::ferrite));
  CHECK(kind("LED3") == guessed(PartKind::led));
  for (const char* none : {"", "1", "ZZ1", "RX1", "*"})
    CHECK_FALSE(kind(none).known());
}

TEST_CASE("letters of UTF-8 are counted as the standard has them, and nothing else is one") {
  // The Unicode Standard, table 3-7: well-formed UTF-8 byte sequences, first and last of each row.
  const std::vector<std::pair<std::string, std::size_t>> rows{{"\x01", 1},
                                                              {"\x7F", 1},
                                                              {"\xC2\x80", 2},
                                                              {"\xDF\xBF", 2},
                                                              {"\xE0\xA0\x80", 3},
                                                              {"\xE0\xBF\xBF", 3},
                                                              {"\xE1\x80\x80", 3},
                                                              {"\xEC\xBF\xBF", 3},
                                                              {"\xED\x80\x80", 3},
                                                              {"\xED\x9F\xBF", 3},
                                                              {"\xEE\x80\x80", 3},
                                                              {"\xEF\xBF\xBF", 3},
                                                              {"\xF0\x90\x80\x80", 4},
                                                              {"\xF0\xBF\xBF\xBF", 4},
                                                              {"\xF1\x80\x80\x80", 4},
                                                              {"\xF3\xBF\xBF\xBF", 4},
                                                              {"\xF4\x80\x80\x80", 4},
                                                              {"\xF4\x8F\xBF\xBF", 4}};
  for (const auto& [letter, length] : rows) {
    CHECK(letterLength(letter) == length);
    CHECK(letterLength(letter + "x") == length);
    CHECK_FALSE(textFault(letter, ""));
    if (length > 1) CHECK(letterLength(letter.substr(0, length - 1)) == 0); // cut short
  }
  for (const char* none : {"\x80", "\xBF", "\xC1\xBF", "\xC0\x80", "\xC2\x7F", "\xC2\xC0", "\xE0\x9F\xBF",
                           "\xED\xA0\x80", "\xE1\x80\x7F", "\xE1\xC0\x80", "\xF0\x8F\xBF\xBF",
                           "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF\x80\x80\x80"})
    CHECK(letterLength(none) == 0);
}

TEST_CASE("a fault of the text is told with its byte and line, wherever it stands in a word of eight") {
  for (std::size_t before = 0; before < 20; ++before) {
    const auto fault = textFault(std::string(before, 'a') + "\n\xE4xyzabcdefgh", "f");
    REQUIRE(fault);
    CHECK(fault->text() == "f: line 2: is not UTF-8 text (found byte 0xE4; expected text in UTF-8)");
    const auto zero = textFault(std::string(before, 'a') + std::string("\0abcdefgh", 9), "f");
    REQUIRE(zero);
    CHECK(zero->text() == "f: line 1: is a binary file (found byte 0x00; expected text in UTF-8)");
    CHECK_FALSE(textFault(std::string(before, 'a') + "\xC3\xA4\x01" + std::string(before, 'b'), "f"));
  }
}

TEST_CASE("UTF-16 is read in either order, with every length of letter, and half a letter is refused") {
  const auto utf8 = [](const std::string& text) { return utf8FromUtf16(text, "f"); };
  const std::string little(
      "\xFF\xFE\x7F\x00\x80\x00\xFF\x07\x00\x08\xFF\xD7\x00\xE0\xFF\xFF\x00\xD8\x00\xDC\xFF\xDB\xFF\xDF", 24);
  const std::string expected = "\x7F\xC2\x80\xDF\xBF\xE0\xA0\x80\xED\x9F\xBF\xEE\x80\x80\xEF\xBF\xBF"
                               "\xF0\x90\x80\x80\xF4\x8F\xBF\xBF";
  CHECK(utf8(little).value() == expected);
  std::string big = little;
  for (std::size_t i = 0; i < big.size(); i += 2)
    std::swap(big[i], big[i + 1]);
  CHECK(utf8(big).value() == expected);
  const std::vector<std::string> halves{
      std::string("\xFF\xFE\n\0\0\xD8", 6), std::string("\xFF\xFE\n\0\0\xDC", 6),
      std::string("\xFF\xFE\n\0\0\xD8\0\xD8", 8), std::string("\xFF\xFE\n\0\0\xD8\0\xE0", 8),
      std::string("\xFF\xFE\n\0x", 5)};
  for (const std::string& half : halves) {
    const auto refused = utf8(half);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().text() == "f: line 2: half a letter in UTF-16 text");
  }
}
