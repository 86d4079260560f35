#include "netmend/sketch/typed_line.h"

#include <catch2/catch.hpp>

#include "after.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

TypedLine read(std::string_view text, bool netInHand = false, const Board& board = {}) {
  static const ChipSizes sizes = chipSizes();
  return readLine(text, board, sizes, netInHand);
}

template <class T> T wanted(std::string_view text, bool netInHand = false, const Board& board = {}) {
  const TypedLine line = read(text, netInHand, board);
  INFO(text);
  REQUIRE(std::holds_alternative<T>(line.wanted));
  return std::get<T>(line.wanted);
}
bool nothing(std::string_view text, bool netInHand = false, const Board& board = {}) {
  return std::holds_alternative<std::monostate>(read(text, netInHand, board).wanted);
}
using Meanings = std::vector<LineWord>;

Length millimetres(double mm) {
  return Length::fromMm(mm);
}

} // namespace

TEST_CASE("an empty line wants nothing") {
  CHECK(read("") == TypedLine{});
  CHECK(read("  \t ; ") == TypedLine{});
  CHECK(read("", true) == TypedLine{});
}

TEST_CASE("a connector: pins, rows, pitch and what else is known of it") {
  const auto array =
      wanted<ArrayWanted>("J4 20 pins 2 rows pitch 0.5 key 7 tabs pads 0.3x1.6 holes 0.9 along FH12");
  CHECK(array.label == PartLabel{"J4", PartKind::connector, "FH12"});
  CHECK(array.array.form == PinForm::rows);
  CHECK(array.array.pins == 20);
  CHECK(array.array.rows == 2);
  CHECK(array.array.order == PinOrder::along);
  CHECK(array.array.pitch == millimetres(0.5));
  CHECK(array.array.left == std::vector<std::string>{"7"});
  CHECK(array.array.tabs);
  CHECK(array.array.pad == Size{millimetres(0.3), millimetres(1.6)});
  CHECK(array.array.drill == Size{millimetres(0.9), millimetres(0.9)});
  CHECK(read("J4 20 pins 2 rows pitch 0.5 key 7 tabs pads 0.3x1.6 holes 0.9 along FH12").words ==
        Meanings{{"J4", WordMeaning::part},
                 {"20 pins", WordMeaning::pins},
                 {"2 rows", WordMeaning::rows},
                 {"pitch 0.5", WordMeaning::pitch},
                 {"key 7", WordMeaning::leftOut},
                 {"tabs", WordMeaning::tabs},
                 {"pads 0.3x1.6", WordMeaning::padSize},
                 {"holes 0.9", WordMeaning::holes},
                 {"along", WordMeaning::order},
                 {"FH12", WordMeaning::value}});
  // German, in any case, with decimal commas.
  CHECK(wanted<ArrayWanted>("J4, 20 polig, ZWEI Reihen; Raster 0,5mm ohne 7 LASCHEN pad 0,3x1,6 LÖCHER 0,9 "
                            "Reihenweise FH12") == array);
}

TEST_CASE("a bare number of pins is one row of a connector") {
  for (const char* text :
       {"J4 8", "CN4 8 kontakte", "P4 8 stifte", "CON4 8 1 row", "J4 8 eine reihe", "J4 8 eins Reihe"}) {
    const auto array = wanted<ArrayWanted>(text);
    CHECK(array.array.pins == 8);
    CHECK(array.array.rows == 1);
    CHECK(array.array.order == PinOrder::alternating);
    CHECK(array.label.kind == PartKind::connector);
    CHECK(array.label.value.empty());
  }
  CHECK(nothing("J4"));
  CHECK(nothing("J4 0"));
  CHECK(nothing("J4 2 rows"));
  CHECK(nothing("J4 7 2 rows"));
  CHECK(nothing("J4 8 0 rows"));
  CHECK(wanted<ArrayWanted>("J4 10000").array.pins == 10'000);
  CHECK(nothing("J4 10001"));
  CHECK(nothing("J4 99999999999999999999"));
  CHECK(nothing("J1 1 ohne 1"));
  for (const char* text : {"J4 6 six rows", "J4 6 sechs reihen"})
    CHECK(wanted<ArrayWanted>(text).array.rows == 6);
  CHECK(wanted<ArrayWanted>("J4 10 fünf Reihen").array.rows == 5);
  CHECK(wanted<ArrayWanted>("J4 10 FÜNF Reihen").array.rows == 5);
}

TEST_CASE("each order of pins has its words") {
  const auto order = [](const char* text) {
    return wanted<ArrayWanted>(std::string("J4 4 2 rows ") + text).array.order;
  };
  CHECK(order("alternating") == PinOrder::alternating);
  CHECK(order("abwechselnd") == PinOrder::alternating);
  CHECK(order("along") == PinOrder::along);
  CHECK(order("reihenweise") == PinOrder::along);
  CHECK(order("round") == PinOrder::round);
  CHECK(order("rundum") == PinOrder::round);
  CHECK(order("lettered") == PinOrder::lettered);
  CHECK(order("Buchstaben") == PinOrder::lettered);
  CHECK(nothing("J4 6 3 rows round"));
}

TEST_CASE("a chip has two rows counted round it, four sides or a grid") {
  auto chip = wanted<ArrayWanted>("U7 8 TPS123");
  CHECK(chip.label == PartLabel{"U7", PartKind::chip, "TPS123"});
  CHECK(chip.array.rows == 2);
  CHECK(chip.array.order == PinOrder::round);
  CHECK(wanted<ArrayWanted>("U7 8 1 row").array.rows == 1);
  CHECK(wanted<ArrayWanted>("Y1 2").array.rows == 2);
  // An odd number cannot be two rows.
  CHECK(wanted<ArrayWanted>("Q1 3").array.rows == 1);
  chip = wanted<ArrayWanted>("IC3 48 4 sides");
  CHECK(chip.array.form == PinForm::fourSides);
  CHECK(chip.array.pins == 48);
  CHECK(wanted<ArrayWanted>("IC3 48 vier Seiten") == chip);
  CHECK(nothing("IC3 46 4 sides"));
  CHECK(nothing("IC3 48 3 sides"));
  chip = wanted<ArrayWanted>("U1 9x8 pitch 0.4 ohne A1");
  CHECK(chip.array.form == PinForm::grid);
  CHECK(chip.array.rows == 9);
  CHECK(chip.array.pins == 72);
  CHECK(chip.array.left == std::vector<std::string>{"A1"});
  CHECK(read("U1 9x8").words == Meanings{{"U1", WordMeaning::part}, {"9x8", WordMeaning::grid}});
  CHECK(read("U1 48 4 sides").words[2] == LineWord{"4 sides", WordMeaning::fourSides});
  CHECK(wanted<ArrayWanted>("U1 100x100").array.pins == 10'000);
  CHECK(wanted<ArrayWanted>("U1 1x10000").array.rows == 1);
  CHECK(wanted<ArrayWanted>("U1 10000x1").array.rows == 10'000);
  CHECK(nothing("U1 100x101"));
  CHECK(nothing("U1 0x8"));
  CHECK(nothing("U1 8x0"));
  CHECK(nothing("U1 4x4611686018427387905")); // their product is 4 in 64 bits
}

TEST_CASE("lengths are above a micrometre and up to a metre") {
  const auto pitch = [](const char* text) {
    return wanted<ArrayWanted>(std::string("J4 8 pitch ") + text).array.pitch;
  };
  CHECK(pitch("0.001") == millimetres(0.001));
  CHECK(pitch("1000") == millimetres(1000));
  CHECK(pitch("2.54mm") == millimetres(2.54));
  // What is no length is no pitch: one word is the value, the other nothing.
  for (const char* text : {"0.0009", "1001", "-1", "1.2.3", "mm"}) {
    const auto line = read(std::string("J4 8 pitch ") + text);
    INFO(text);
    CHECK(std::holds_alternative<std::monostate>(line.wanted));
    CHECK(line.words.back() == LineWord{text, WordMeaning::notUnderstood});
  }
  CHECK(nothing("J4 8 pads 0.3 x"));
  CHECK(nothing("J4 8 pads 0.3x y"));
  CHECK(nothing("J4 8 holes x y"));
}

TEST_CASE("a part of two terminals: value, size and count in any order") {
  auto two = wanted<TwoTerminalsWanted>("R28 4k7 0402 x8");
  CHECK(two.letters == "R");
  CHECK(two.from == 28ul);
  CHECK(two.kind == PartKind::resistor);
  CHECK(two.value == "4k7");
  CHECK(two.size == "0402");
  CHECK(two.count == 8);
  CHECK(wanted<TwoTerminalsWanted>("R28 0402 4k7 8") == two);
  CHECK(wanted<TwoTerminalsWanted>("R28 0402 8 4k7") == two);
  CHECK(wanted<TwoTerminalsWanted>("r28 x8 1005M 4k7") == two);
  CHECK(read("R28 4k7 0402 x8").words == Meanings{{"R28", WordMeaning::part},
                                                  {"4k7", WordMeaning::value},
                                                  {"0402", WordMeaning::size},
                                                  {"x8", WordMeaning::count}});
  two = wanted<TwoTerminalsWanted>("C");
  CHECK(two.letters == "C");
  CHECK_FALSE(two.from);
  CHECK(two.kind == PartKind::capacitor);
  CHECK(two.value.empty());
  CHECK(two.size.empty());
  CHECK(two.count == 1);
  CHECK(wanted<TwoTerminalsWanted>("D1 BAT54").value == "BAT54");
  CHECK(wanted<TwoTerminalsWanted>("FB2").kind == PartKind::ferrite);
  CHECK(wanted<TwoTerminalsWanted>("R1 10").value == "10"); // the first number is the value
  CHECK(wanted<TwoTerminalsWanted>("R 0402 zwei").count == 2);
}

TEST_CASE("a row has from one to 500 parts") {
  CHECK(wanted<TwoTerminalsWanted>("R x1").count == 1);
  CHECK(wanted<TwoTerminalsWanted>("R x500").count == 500);
  CHECK(wanted<TwoTerminalsWanted>("R 10k 500").count == 500);
  CHECK(nothing("R x501"));
  CHECK(nothing("R x0"));
  CHECK(nothing("R 10k 501"));
  CHECK(nothing("R 10k 8 9"));
  CHECK(nothing("R x8 x9"));
  CHECK(read("R x501").words[1].meaning == WordMeaning::notUnderstood);
  CHECK(wanted<TwoTerminalsWanted>("R 0402 501").value == "501"); // 500 Ω in three digits
  // A second size is no count.
  CHECK(wanted<TwoTerminalsWanted>("R 0402 0201").count == 1);
}

TEST_CASE("test pads, shields and parts that have only an outline") {
  auto pads = wanted<TestPadsWanted>("TP");
  CHECK(pads.letters == "TP");
  CHECK_FALSE(pads.from);
  CHECK(pads.diameter == millimetres(1));
  pads = wanted<TestPadsWanted>("tp5 0,8");
  CHECK(pads.letters == "TP");
  CHECK(pads.from == 5ul);
  CHECK(pads.diameter == millimetres(0.8));
  CHECK(read("TP5 0.8").words[1] == LineWord{"0.8", WordMeaning::diameter});
  CHECK(nothing("TP5 0.8 red"));
  CHECK(nothing("TP5 red"));
  CHECK(wanted<ShieldWanted>("SH2") == ShieldWanted{"SH2", {}});
  CHECK(wanted<ShieldWanted>("SH2 lid 1.8") == ShieldWanted{"SH2", millimetres(1.8)});
  CHECK(wanted<ShieldWanted>("SH2 Deckel 1,8mm") == ShieldWanted{"SH2", millimetres(1.8)});
  CHECK(read("SH2 lid 1.8").words[1] == LineWord{"lid 1.8", WordMeaning::lid});
  CHECK(nothing("SH2 lid"));
  CHECK(nothing("SH2 lid high"));
  CHECK(nothing("SH2 tin"));
  CHECK(wanted<BodyWanted>("BT1 CR2032").label == PartLabel{"BT1", PartKind::battery, "CR2032"});
  CHECK(wanted<BodyWanted>("ANT1").label == PartLabel{"ANT1", PartKind::antenna, ""});
  CHECK(wanted<BodyWanted>("MH3").label.kind == PartKind::mechanical);
  CHECK(nothing("BT1 CR2032 flat"));
}

TEST_CASE("a part without a number gets the next one") {
  DrawnBoard drawn;
  drawn.part("J4", Side::top, {});
  drawn.part("SH1", Side::top, {});
  CHECK(wanted<ArrayWanted>("J 8", false, drawn.board).label.reference == "J5");
  CHECK(wanted<ArrayWanted>("j 8", false, drawn.board).label.reference == "J5");
  CHECK(wanted<ShieldWanted>("SH", false, drawn.board).reference == "SH2");
  CHECK(wanted<BodyWanted>("BT", false, drawn.board).label.reference == "BT1");
  // Letters as boards print them.
  CHECK(wanted<ArrayWanted>("cn07 8", false, drawn.board).label.reference == "CN07");
}

TEST_CASE("zones of each kind, with a name") {
  const auto kind = [](const char* word) { return wanted<ZoneWanted>(std::string("zone ") + word).kind; };
  for (const auto& [word, meant] : {std::pair{"connector", ZoneKind::connector},
                                    {"plug", ZoneKind::connector},
                                    {"Stecker", ZoneKind::connector},
                                    {"shield", ZoneKind::shieldWall},
                                    {"Schirm", ZoneKind::shieldWall},
                                    {"battery", ZoneKind::battery},
                                    {"Batterie", ZoneKind::battery},
                                    {"Akku", ZoneKind::battery},
                                    {"fastener", ZoneKind::fastener},
                                    {"screw", ZoneKind::fastener},
                                    {"Schraube", ZoneKind::fastener},
                                    {"antenna", ZoneKind::antenna},
                                    {"Antenne", ZoneKind::antenna},
                                    {"flex", ZoneKind::flex},
                                    {"heat", ZoneKind::heatSensitive},
                                    {"Hitze", ZoneKind::heatSensitive},
                                    {"tall", ZoneKind::tallPart},
                                    {"hoch", ZoneKind::tallPart}})
    CHECK(kind(word) == meant);
  CHECK(wanted<ZoneWanted>("Zone screw lower left").name == "lower left");
  CHECK(wanted<ZoneWanted>("zone screw").name.empty());
  CHECK(read("zone screw lower").words ==
        Meanings{{"zone screw", WordMeaning::zone}, {"lower", WordMeaning::part}});
  CHECK(nothing("zone"));
  CHECK(nothing("zone unknown"));
  CHECK(read("zone unknown").words ==
        Meanings{{"zone", WordMeaning::notUnderstood}, {"unknown", WordMeaning::notUnderstood}});
}

TEST_CASE("areas and the width of tracks") {
  CHECK(wanted<AreaWanted>("area") == AreaWanted{});
  CHECK(wanted<AreaWanted>("Fläche") == AreaWanted{});
  CHECK(wanted<AreaWanted>("FLÄCHE") == AreaWanted{});
  CHECK(nothing("area round"));
  CHECK(wanted<TrackWanted>("track 0.25").width == millimetres(0.25));
  CHECK(wanted<TrackWanted>("Leiterbahn 0,25mm").width == millimetres(0.25));
  CHECK(read("track 0.25").words == Meanings{{"track", WordMeaning::track}, {"0.25", WordMeaning::width}});
  CHECK(nothing("track"));
  CHECK(nothing("track wide"));
  CHECK(nothing("track 0.25 wide"));
}

TEST_CASE("parts to copy are named one by one or from the first to the last, each once") {
  DrawnBoard drawn;
  std::vector<PartId> r;
  for (int i = 21; i <= 25; ++i)
    r.push_back(drawn.part("R" + std::to_string(i), Side::top, {}));
  const PartId u1 = drawn.part("U1", Side::top, {});
  const auto copy = [&](const char* text) { return wanted<CopyWanted>(text, false, drawn.board); };
  CHECK(copy("copy R21").parts == std::vector{r[0]});
  CHECK(copy("copy R22-R24").parts == std::vector{r[1], r[2], r[3]});
  CHECK(copy("kopie R22-24 U1").parts == std::vector{r[1], r[2], r[3], u1});
  CHECK(copy("copy R24-99").parts == std::vector{r[3], r[4]});
  CHECK(copy("copy R21 R21-R22, R22").parts == std::vector{r[0], r[1]});
  // No more than 500 numbers are looked at.
  const PartId most = drawn.part("R520", Side::top, {});
  drawn.part("R521", Side::top, {});
  CHECK(copy("copy R21-R999").parts == std::vector{r[0], r[1], r[2], r[3], r[4], most});
  CHECK_FALSE(copy("copy R21").mirrored);
  CHECK(copy("copy mirrored R21").mirrored);
  CHECK(copy("copy R21 gespiegelt").mirrored);
  CHECK(read("copy R21 mirrored R99", false, drawn.board).words ==
        Meanings{{"copy", WordMeaning::copy},
                 {"R21", WordMeaning::copied},
                 {"mirrored", WordMeaning::mirrored},
                 {"R99", WordMeaning::notUnderstood}});
  for (const char* text :
       {"copy", "copy R99", "copy R24-R22", "copy R21-C25", "copy R", "copy mirrored", "copy R21 R99"})
    CHECK(nothing(text, false, drawn.board));
}

TEST_CASE("a single word names the net in hand, or says its role") {
  CHECK(wanted<NetWanted>("KEY_COL3", true).name == "KEY_COL3");
  CHECK(nothing("KEY_COL3"));
  CHECK(read("KEY_COL3").words == Meanings{{"KEY_COL3", WordMeaning::notUnderstood}});
  CHECK(read("KEY_COL3", true).words == Meanings{{"KEY_COL3", WordMeaning::net}});
  // Two meanings: a part, or a net of this name.
  CHECK(wanted<NetWanted>("R28", true).name == "R28");
  CHECK(wanted<TwoTerminalsWanted>("R28").from == 28ul);
  CHECK(wanted<NetWanted>("area", true).name == "area");
  CHECK(wanted<AreaWanted>("area") == AreaWanted{});
  CHECK(wanted<TwoTerminalsWanted>("R28 4k7", true).value == "4k7"); // two words are no name
  for (const auto& [word, role] : {std::pair{"signal", NetRole::signal},
                                   {"ground", NetRole::ground},
                                   {"Masse", NetRole::ground},
                                   {"supply", NetRole::supply},
                                   {"Versorgung", NetRole::supply},
                                   {"pair", NetRole::fastPair},
                                   {"Paar", NetRole::fastPair},
                                   {"radio", NetRole::radio},
                                   {"FUNK", NetRole::radio}}) {
    CHECK(wanted<RoleWanted>(word, true).role == role);
    CHECK(nothing(word));
  }
  CHECK(read("ground", true).words == Meanings{{"ground", WordMeaning::role}});
  CHECK(nothing("ground plane", true));
  // A name that looks like a role, or any other, is typed behind `net`.
  for (const bool netInHand : {false, true}) {
    CHECK(wanted<NetWanted>("net ground", netInHand).name == "ground");
    CHECK(wanted<NetWanted>("Netz GND", netInHand).name == "GND");
  }
  CHECK(read("net GND").words == Meanings{{"net GND", WordMeaning::net}});
  CHECK(nothing("net"));
  CHECK(read("net").words == Meanings{{"net", WordMeaning::net}});
  CHECK(nothing("net A B"));
}

TEST_CASE("what begins with no known word is not understood, word by word") {
  const auto line = read("W12 8 pins; and");
  CHECK(std::holds_alternative<std::monostate>(line.wanted));
  CHECK(line.words == Meanings{{"W12", WordMeaning::notUnderstood},
                               {"8", WordMeaning::notUnderstood},
                               {"pins", WordMeaning::notUnderstood},
                               {"and", WordMeaning::notUnderstood}});
  CHECK(read("J4 8 A B").words[3] == LineWord{"B", WordMeaning::notUnderstood}); // one value only
  CHECK(read("J4 FH12 8").words[1] ==
        LineWord{"FH12", WordMeaning::notUnderstood}); // a value comes after the pins
}
