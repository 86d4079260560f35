#include <catch2/catch.hpp>

#include <filesystem>

#include <fmt/format.h>
#include <unistd.h>

#include "measure.h"
#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/exchange/import.h"
#include "support/effort.h"

using namespace netmend;

namespace {

Result<Imported> read(std::string_view text) {
  return importBoard(ImportSource{text, "points.csv"});
}

Board board(std::string_view text) {
  auto imported = read(text);
  if (!imported) throw std::runtime_error(imported.error().text());
  return imported->board;
}

} // namespace

TEST_CASE("a table with just part and pin is a board") {
  const Board b = board("part,pin\nJ4,1\nJ4,2\nTP,7\n");
  CHECK(b.parts.size() == 2);
  CHECK(b.pins.size() == 3);
  CHECK(b.pads.size() == 3);
  CHECK(b.nets.empty());
  CHECK_FALSE(b.pins[0].net.known());
  CHECK_FALSE(b.pads[0].position.known());
  CHECK(b.parts[0].kind == guessed(PartKind::connector));
  CHECK_FALSE(b.parts[0].body.known());
}

TEST_CASE("a table without a header has the columns in their order") {
  const Board b = board("J4,1,GND,1.5,-2.25,top\nJ4,2,\n");
  REQUIRE(b.pins.size() == 2);
  CHECK(netName(b, b.pins[0].net) == "GND");
  CHECK(b.pads[0].position == fromFile(Point{Length(1'500'000), Length(-2'250'000)}));
  CHECK(b.pads[0].reach == fromFile(PadReach::top));
  CHECK_FALSE(b.pins[1].net.known());
}

TEST_CASE("a header names the columns in any order, and columns it does not know are reported") {
  const auto imported = read("Net,Pin,colour,PART\nVBAT,1,red,J1\n");
  REQUIRE(imported);
  CHECK(partNamed(imported->board, "J1") != nullptr);
  CHECK(netName(imported->board, imported->board.pins[0].net) == "VBAT");
  CHECK(hasNotice(imported->notices, "colour"));
}

TEST_CASE("semicolons bring decimal commas, and a byte order mark and CRLF do no harm") {
  const Board b = board("\xEF\xBB\xBFpart;pin;net;x_mm;y_mm;side\r\nU1;A1;+3V3;10,5;0,001;bottom\r\n");
  REQUIRE(b.pads.size() == 1);
  CHECK(b.pads[0].position == fromFile(Point{Length(10'500'000), Length(1000)}));
  CHECK(b.pads[0].reach == fromFile(PadReach::bottom));
  CHECK(b.parts[0].side == guessed(Side::bottom));
}

TEST_CASE("quoted cells may hold separators, quotes and line breaks as in RFC 4180") {
  const Board b = board("part,pin,net\n\"J,1\",\"a\"\"b\",\"two\nlines\"\nJ2,1,X\n");
  CHECK(partNamed(b, "J,1") != nullptr);
  CHECK(b.pins[0].name == "a\"b");
  CHECK(netName(b, b.pins[0].net) == "two\nlines");
  const auto bad = read("part,pin,net\n\"J,1\",1,\"two\nlines\"\nJ2,1,X,1,2,3,4,5,6,7\n");
  REQUIRE_FALSE(bad);
  CHECK(wordsOf(bad.error().place) == "line 4"); // line breaks inside quotes count
}

TEST_CASE("N/C is known to be connected to nothing, an empty net is unknown") {
  const Board b = board("part,pin,net\nJ1,1,N/C\nJ1,2,nc\nJ1,3,\n");
  CHECK(b.nets.empty());
  CHECK(b.pins[0].net == fromFile(NetId{}));
  CHECK(b.pins[1].net == fromFile(NetId{}));
  CHECK_FALSE(b.pins[2].net.known());
}

TEST_CASE("a pin with several places has several pads") {
  const Board b = board("part,pin,net,x_mm,y_mm,side\nJ1,1,GND,0,0,top\nJ1,1,GND,3,0,top\nJ1,2,A,0,4,top\n");
  CHECK(b.pins.size() == 2);
  CHECK(padsOf(b, b.pins[0].id).size() == 2);
  REQUIRE(b.parts[0].body.known());
  CHECK(b.parts[0].body.origin == Origin::guessed);
  // Hull of the pads' places and a quarter of a millimetre.
  CHECK(boxOf(b.parts[0].body.value).min == Point{Length(-250'000), Length(-250'000)});
  CHECK(boxOf(b.parts[0].body.value).max == Point{Length(3'250'000), Length(4'250'000)});
}

TEST_CASE("a row without part is a free point") {
  const Board b = board("part,pin,net,x_mm,y_mm,side\n,TP1,RESET,1,1,top\n");
  CHECK(b.parts.empty());
  CHECK_FALSE(b.pins[0].part);
  CHECK(b.pins[0].name == "TP1");
}

TEST_CASE("mistakes in a table are told with their line") {
  const auto place = [](std::string_view text) {
    const auto result = read(text);
    return result ? std::string("read") : result.error().file + ": " + wordsOf(result.error().place);
  };
  CHECK(place("part,pin,side\nJ1,1,up\n") == "points.csv: line 2");
  CHECK(place("part,pin,net,x_mm,y_mm\nJ1,1,A,nan,0\n") == "points.csv: line 2");
  CHECK(place("part,pin,net,x_mm,y_mm\nJ1,1,A,1e300,0\n") == "points.csv: line 2");
  CHECK(place("part,pin,net,x_mm,y_mm\nJ1,1,A,1,\n") == "points.csv: line 2");
  CHECK(place("part,pin,net,x_mm,y_mm\nJ1,1,A,0x10,1\n") == "points.csv: line 2");
  CHECK(place("part,pin\nJ1,1\nJ1,1\n") == "points.csv: line 3");
  CHECK(place("part,pin,net\nJ1,1,A\n\nJ1,1,B\n") == "points.csv: line 4");
  CHECK(place("part,pin\nJ1\n") == "points.csv: line 2");
  CHECK(place("part,pin\nJ1,\n") == "points.csv: line 2");
  CHECK(place("part,part,pin\nJ1,J1,1\n") == "points.csv: line 1");
  CHECK(place("part,pin\nJ1,\"1\n") == "points.csv: line 2");
  CHECK(place("part,pin\nJ1,\"1\"x\n") == "points.csv: line 2");
  CHECK(place("part,pin\nJ\xE4,1\n") == "points.csv: line 2");
}

TEST_CASE("what has no columns for part and pin is no table") {
  const auto error = [](std::string_view text) {
    const auto result = read(text);
    return result ? std::string("read") : result.error().text();
  };
  const std::string refused = "points.csv: line 1: there are no columns for part and pin";
  CHECK(error("Dear customer, thank you for your order\nof May, we will see to it\n").starts_with(refused));
  CHECK(error("Hello, world\n").starts_with(refused));
  CHECK(error("Designator,Comment,Footprint\nR1,10k,0603\n").starts_with(refused));
  CHECK(error("just words\n").starts_with(refused));
  CHECK(error("R1,\n").starts_with(refused));
  CHECK(error("part,pin\nR 1,pin one\n") == "read"); // with a header any words will do
  CHECK(error("R1,1\n,TP7,RESET\n") == "read");
  CHECK(error("R1,1\nand so on, and on\n").starts_with("points.csv: line 2: there are no columns"));
}

TEST_CASE("tables in UTF-16 with their byte order mark are read, of either order") {
  const std::u16string text = u"part\tpin\tnet\r\nJ\u00e4ger\t1\t\U0001F50B\r\n";
  std::string little = "\xFF\xFE", big = "\xFE\xFF";
  for (const char16_t unit : text) {
    const char high = static_cast<char>(unit >> 8), low = static_cast<char>(unit & 0xFF);
    little += {low, high};
    big += {high, low};
  }
  for (const std::string& content : {little, big}) {
    const Board b = board(content);
    CHECK(partNamed(b, "J\u00e4ger") != nullptr);
    CHECK(netName(b, b.pins[0].net) == "\U0001F50B");
  }
  CHECK(wordsOf(read(std::string_view(little).substr(0, little.size() - 1)).error().message) ==
        "half a letter in UTF-16 text");
  const std::string halfPair = little.substr(0, little.find("\x3D\xD8") + 2);
  CHECK(wordsOf(read(halfPair).error().place) == "line 2");
}

TEST_CASE("a table of 200000 pins is read, and refused from the next one on") {
  std::string text = "part,pin\n";
  for (int i = 0; i < 200'000; ++i)
    text += fmt::format("U{},{}\n", i / 1000, i % 1000);
  if (!netmend::sanitized) {
    const auto most = read(text);
    REQUIRE(most);
    CHECK(most->board.pins.size() == 200'000);
  }
  const auto more = read(text + "X1,1\n");
  REQUIRE_FALSE(more);
  CHECK(more.error().text() ==
        "points.csv: line 200002: the table is too long (expected at most 200000 pins)");
}

TEST_CASE("a table of 64 MiB is read, and refused from the next byte on, without being read into memory") {
  std::string text = "part,pin\nU1,1\n";
  text.resize(64u << 20, '\n');
  if (!sanitized)
    CHECK(read(text)); // three minutes under the sanitizers, for the same empty row again and again
  text += '\n';
  const auto more = read(text);
  REQUIRE_FALSE(more);
  CHECK(wordsOf(more.error().message) == "the table is too large");
  const auto file = std::filesystem::temp_directory_path() / fmt::format("netmend-large-{}.csv", getpid());
  REQUIRE(writeFileAtomically(file, text));
  const auto fromFile = importBoard(file);
  std::filesystem::remove(file);
  REQUIRE_FALSE(fromFile);
  CHECK(fromFile.error().file == file.string());
  CHECK(wordsOf(fromFile.error().found) == "67108865 bytes");
}

TEST_CASE("a pin at the farthest place can be saved") {
  const Board b = board("part,pin,net,x_mm,y_mm\nJ1,1,A,10000,-10000\n");
  CHECK_FALSE(b.parts[0].body.known()); // would reach beyond
  CHECK(boardToText(b));
}
