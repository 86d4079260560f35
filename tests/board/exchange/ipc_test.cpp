#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "measure.h"
#include "netmend/board/board_file.h"
#include "netmend/board/exchange/import.h"

// The layout of the records is that of IPC-D-356A (column numbers from 1); the lines here are our own.

using namespace netmend;

namespace {

Result<Imported> read(const std::string& text) {
  return importBoard(ImportSource{text, "board.ipc"});
}

Imported imported(const std::string& text) {
  auto result = read(text);
  if (!result) throw std::runtime_error(result.error().text());
  return *result;
}

/// A standard electrical test record with everything in its columns.
std::string record(int code, const std::string& net, const std::string& part, const std::string& pin,
                   const std::string& hole, const std::string& rest, bool midpoint = false) {
  return fmt::format("{:03}{:<14}   {:<6}-{:<4}{}{:<6}{}\n", code, net, part, pin, midpoint ? "M" : " ", hole,
                     rest);
}

const std::string head = "P  JOB   ours\nP  UNITS CUST 0\nP  VER   IPC-D-356A\n";

Length unit(std::int64_t n) {
  return Length(n * 2540); // 0.0001 inch
}

} // namespace

TEST_CASE("surface and through features become pads with place, size, rotation, access and mask") {
  const Imported i =
      imported(head + record(327, "GND", "U1", "7", "", "A01X+001000Y-002000X0300Y0500R090 S2") +
               record(317, "GND", "J1", "1", "D0400P", "A00X 010000Y   500X0600Y0000R000 S0") + "999\n");
  const Board& b = i.board;
  REQUIRE(b.pads.size() == 2);
  const Pad& surface = b.pads[0];
  CHECK(surface.position == fromFile(Point{unit(1000), unit(-2000)}));
  CHECK(surface.size == fromFile(Size{unit(300), unit(500)}));
  CHECK(surface.shape == guessed(PadShape::rectangle));
  CHECK(surface.rotation == Degrees(90));
  CHECK(surface.reach == fromFile(PadReach::top));
  CHECK(surface.maskOpening == fromFile(MaskOpening::top)); // 2: mask on the secondary side only
  const Pad& through = b.pads[1];
  CHECK(through.position == fromFile(Point{unit(10000), unit(500)})); // leading zeros may be blanks
  CHECK(through.shape == fromFile(PadShape::circle));
  CHECK(through.drill == fromFile(Size{unit(400), unit(400)}));
  CHECK(through.plated == fromFile(true));
  CHECK(through.reach == fromFile(PadReach::allLayers));
  CHECK(through.maskOpening == fromFile(MaskOpening::both));
  CHECK(b.parts.size() == 2);
  CHECK(b.parts[0].body.origin == Origin::guessed);
  CHECK(netName(b, b.pins[0].net) == "GND");
  CHECK(b.info.name == fromFile(std::string("ours")));
}

TEST_CASE("units are 0.0001 inch or 0.001 mm, degrees or radians") {
  const auto pad = [](const std::string& units) {
    const Imported i =
        imported("P  UNITS " + units + "\n" +
                 record(327, "A", "U1", "1", "", "A01X+001000Y+000000X0100Y0200R157 S0") + "999\n");
    return i.board.pads[0];
  };
  CHECK(pad("SI").position.value.x == Length(1'000'000));
  CHECK(pad("CUST 1").position.value.x == Length(1'000'000));
  CHECK(pad("CUST").position.value.x == Length(2'540'000));
  CHECK(pad("CUST 0").position.value.x == Length(2'540'000));
  CHECK(pad("CUST 0").rotation == Degrees(157));
  CHECK(pad("CUST 2").position.value.x == Length(2'540'000));
  CHECK(pad("CUST 2").rotation.value == Approx(89.95).margin(0.01));
  CHECK_FALSE(read("P  UNITS CUST 7\n999\n"));
  CHECK_FALSE(read("P  UNITS CUST 0\nP  UNITS SI\n999\n"));
}

TEST_CASE("N/C is no net: each such point stands alone") {
  const Imported i =
      imported(head + record(317, "N/C", "J1", "", "D0400P", "A00X+000000Y+000000X0600Y0000R000 S0") +
               record(317, "N/C", "J1", "", "D0400P", "A00X+001000Y+000000X0600Y0000R000 S0") +
               record(327, "N/C", "U1", "3", "", "A01X+002000Y+000000X0600Y0200R000 S0") +
               record(327, "N/C", "U1", "3", "", "A01X+003000Y+000000X0600Y0200R000 S0") + "999\n");
  CHECK(i.board.nets.empty());
  CHECK(i.board.pins.size() == 4);
  for (const Pin& pin : i.board.pins)
    CHECK(pin.net == fromFile(NetId{}));
}

TEST_CASE("VIA is never a part, and its midpoint flag does no harm") {
  const Imported i =
      imported(head + record(317, "CLK", "VIA", "", "D0120P", "A00X+000100Y+000200X0240Y0000R000S3", true) +
               record(317, "CLK", "", "", "D0120P", "A00X+000500Y+000200X0240Y0000R000 S0") + "999\n");
  const Board& b = i.board;
  CHECK(b.parts.empty());
  CHECK(b.pins.empty());
  REQUIRE(b.vias.size() == 2); // a plated hole that belongs to no part is one too
  CHECK(b.vias[0].diameter == fromFile(unit(240)));
  CHECK(b.vias[0].drill == fromFile(unit(120)));
  CHECK(b.vias[0].maskOpening == fromFile(MaskOpening::none));
  CHECK(b.vias[1].maskOpening == fromFile(MaskOpening::both));
  CHECK(netName(b, b.vias[0].net) == "CLK");
  CHECK(hasNotice(i.notices, "middle of their net"));
}

TEST_CASE("a blind via spans the layers it names, and its surface feature is no further point") {
  const Imported i = imported(
      head + record(307, "A", "NOREF", "NPIN", "D0100P", "A01X+000100Y+000200                S0L01L03") +
      record(27, "A", "NOREF", "NPIN", "", "A01X+000100Y+000200X0300Y0000R000 S0") +
      record(327, "A", "U1", "1", "", "A06X+000900Y+000200X0300Y0000R000 S0") + "999\n");
  const Board& b = i.board;
  REQUIRE(b.vias.size() == 1);
  REQUIRE(b.info.layerOrder.size() == 6);
  CHECK(b.vias[0].from == fromFile(b.info.layerOrder[0]));
  CHECK(b.vias[0].to == fromFile(b.info.layerOrder[2]));
  CHECK(b.vias[0].diameter == fromFile(unit(300)));
  REQUIRE(b.pads.size() == 1);
  CHECK(b.pads[0].reach == fromFile(PadReach::bottom)); // the highest layer of the file
}

TEST_CASE("records that continue a point add its features and its hole to one pin") {
  const Imported i =
      imported(head + record(317, "A", "J1", "2", "", "A01X+009750Y+062880X0380Y          S0") +
               record(17, "A", "J1", "2", "", "A02X+009750Y+062880X0400Y0400      S0") +
               record(17, "A", "", "", "D0200P", "A00X+009750Y+062880") + "999\n");
  const Board& b = i.board;
  REQUIRE(b.pins.size() == 1);
  REQUIRE(b.pads.size() == 2);
  CHECK(b.pads[0].drill == fromFile(Size{unit(200), unit(200)}));
  CHECK(b.pads[0].reach == fromFile(PadReach::allLayers));
  CHECK(b.pads[1].reach == fromFile(PadReach::bottom));
  const auto alone =
      read(head + record(17, "A", "J1", "2", "", "A02X+009750Y+062880X0400Y0400      S0") + "999\n");
  REQUIRE_FALSE(alone);
  CHECK(wordsOf(alone.error().place) == "line 4");
}

TEST_CASE("a tooling hole is a point without copper") {
  const Imported i = imported(
      head + record(367, "N/C", "H1", "", "D1250U", "A00X+000000Y+000000X0000Y0000R000 S0") + "999\n");
  REQUIRE(i.board.pads.size() == 1);
  CHECK(i.board.pads[0].plated == fromFile(false));
  CHECK(i.board.pads[0].size == fromFile(Size{}));
  CHECK(i.board.pads[0].drill.value.width == unit(1250));
}

TEST_CASE("long names come from their aliases, in each of the ways that files write them") {
  const std::string tail = "A01X+000000Y+000000X0300Y0000R000 S0";
  const Imported standard = imported(head + "P  NNAMEm0001 A_NAME_LONGER_THAN_14\n" +
                                     record(327, "m0001", "U1", "1", "", tail) + "999\n");
  CHECK(standard.board.nets[0].name == "A_NAME_LONGER_THAN_14");
  const Imported whole =
      imported(head + "P  NNAME1     WITH BLANK AND LONG\n" + record(327, "NNAME1", "U1", "1", "", tail) +
               record(327, "1", "U1", "2", "", tail) + "999\n");
  REQUIRE(whole.board.nets.size() == 2);
  CHECK(whole.board.nets[0].name == "WITH BLANK AND LONG");
  CHECK(whole.board.nets[1].name == "1"); // here "1" is a net of its own
}

TEST_CASE("names that collide when cut are reported") {
  const std::string tail = "A01X+000000Y+000000X0300Y0000R000 S0";
  const Imported i = imported(
      head + "P  NNAMEm1    SAME_FIRST_PART_ONE\nP  NNAMEm2    SAME_FIRST_PART_TWO\n" +
      record(327, "SAME_FIRST_PAR", "U1", "1", "", tail) + record(327, "m1", "U1", "2", "", tail) + "999\n");
  CHECK(hasNotice(i.notices, "have the same first 14 characters"));
  CHECK(hasNotice(i.notices, "net SAME_FIRST_PAR may be"));
  CHECK(hasNotice(i.notices, "fill all 14 columns"));
  const Imported pins = imported(head + record(327, "A", "CONNEC", "1234", "", tail) +
                                 record(327, "B", "CONNEC", "1234", "", tail) + "999\n");
  CHECK(pins.board.pins.size() == 2);
  CHECK(hasNotice(pins.notices, "labels may have been cut"));
}

TEST_CASE("conductors are tracks; coordinates that stay the same need not be repeated") {
  // The example of the standard: 0.15 mm wide, two ways that are not connected.
  const Imported i =
      imported("P  UNITS SI\n378GROUND         L02 X150 X40000Y250000 Y275000 X50000*X275000Y300000 X300000\n"
               "078                   Y310000\n999\n");
  const Board& b = i.board;
  REQUIRE(b.tracks.size() == 4);
  const auto um = [](std::int64_t x, std::int64_t y) { return Point{Length(x * 1000), Length(y * 1000)}; };
  CHECK(b.tracks[0].start == um(40000, 250000));
  CHECK(b.tracks[0].end == um(40000, 275000));
  CHECK(b.tracks[1].end == um(50000, 275000));
  CHECK(b.tracks[2].start == um(275000, 300000));
  CHECK(b.tracks[3].start == um(300000, 300000));
  CHECK(b.tracks[3].end == um(300000, 310000));
  CHECK(b.tracks[0].width == fromFile(Length(150'000)));
  CHECK(b.tracks[0].layer == fromFile(b.info.layerOrder[1]));
  CHECK(netName(b, b.tracks[0].net) == "GROUND");
}

TEST_CASE("the board's edge is read with or without the pen that should stand before it") {
  const auto outline = [](const std::string& coordinates) {
    return imported("P  UNITS SI\n389BOARD_EDGE         " + coordinates + "\n999\n").board.info.outline;
  };
  for (const char* text : {"X10Y10 X0Y0 X20000Y0 Y10000 X0 Y0", "X0Y0 X20000Y0 X20000Y10000 X0Y10000 X0Y0"}) {
    INFO(text);
    const auto found = outline(text);
    REQUIRE(found.value.size() == 1);
    CHECK(std::abs(squareMillimetres(found.value[0].outer)) == Approx(200));
  }
}

TEST_CASE("a record that is a column short before its access side is read") {
  const Imported i =
      imported(head + "327GND              U1    -7         A01X+001000Y-002000X0300Y0500R090 S2\n999\n");
  REQUIRE(i.board.pads.size() == 1);
  CHECK(i.board.pads[0].position == fromFile(Point{unit(1000), unit(-2000)}));
}

TEST_CASE("mistakes in test data are told with their line") {
  const auto error = [](const std::string& text) {
    const auto result = read(text);
    return result ? std::string("read") : result.error().text();
  };
  CHECK(error(head + record(327, "A", "U1", "1", "", "A01X+00") + "999\n").find("line 4") !=
        std::string::npos);
  CHECK(error(head + "327A\n999\n").find("line 4") != std::string::npos);
  CHECK(error(head + "what is this\n999\n").find("line 4") != std::string::npos);
  CHECK(error(head + "378A              L01 X10 Y20 X30\n999\n").find("line 4") != std::string::npos);
  CHECK(error(head + record(327, "A", "U1", "1", "", "A01X+000000Y+000000")).find("no end") !=
        std::string::npos);
}

TEST_CASE("test data without conductors say nothing of what joins the points of a net") {
  const std::string points = record(327, "A", "U1", "1", "", "A01X+000000Y+000000X0300Y0000R000 S0") +
                             record(327, "A", "U1", "2", "", "A01X+001000Y+000000X0300Y0000R000 S0");
  const Imported plain = imported(head + points + "999\n");
  CHECK(plain.board.info.copper == fromFile(DrawnCopper::points));
  CHECK(hasNotice(plain.notices, "no records of conductors"));
  const Imported drawn = imported(head + points + "378A              L01 X100 X0Y0 X1000\n999\n");
  CHECK(drawn.board.info.copper == fromFile(DrawnCopper::tracks));
  CHECK_FALSE(hasNotice(drawn.notices, "no records of conductors"));
}

namespace {

/// Three pads of 0.1 by 0.03 inch side by side along a line at 30 degrees, 0.04 inch apart, which are clear
/// of each other when they stand across it: at 120 degrees, or at 60 for who counts the other way.
std::string slantedRow(int turn) {
  std::string out;
  for (int i = 0; i < 3; ++i)
    out += record(327, fmt::format("N{}", i), "U1", fmt::to_string(i + 1), "",
                  fmt::format("A01X+{:06}Y+{:06}X1000Y0300R{:03} S0", 346 * i, 200 * i, turn));
  return head + out + "999\n";
}

} // namespace

TEST_CASE("which way a file counts angles is settled by the fewest overlaps of different nets") {
  const Imported standard = imported(slantedRow(120));
  for (const Pad& pad : standard.board.pads)
    CHECK(pad.rotation == Degrees(120));
  CHECK(hasNotice(standard.notices, "pads at odd angles: 3, first at line 4; angles taken as counted "
                                    "counter-clockwise: 0 overlaps of different nets, the other way 2"));
  const Imported other = imported(slantedRow(240));
  for (const Pad& pad : other.board.pads)
    CHECK(pad.rotation == Degrees(-240));
  CHECK(hasNotice(other.notices,
                  "angles taken as counted clockwise: 0 overlaps of different nets, the other way 2"));
  // A pad whose copper is the same either way asks nothing.
  const Imported square =
      imported(head + record(327, "A", "U1", "1", "", "A01X+000000Y+000000X0300Y0300R045 S0") + "999\n");
  CHECK_FALSE(hasNotice(square.notices, "odd angles"));
  // Where the board does not tell, the standard holds, but for the one writer that is known to count the
  // other way.
  const std::string alone = record(327, "A", "U1", "1", "", "A01X+000000Y+000000X0300Y0100R030 S0") + "999\n";
  CHECK(imported(head + alone).board.pads[0].rotation == Degrees(30));
  CHECK(imported(head + "P  arrayDim   N\n" + alone).board.pads[0].rotation == Degrees(-30));
}

TEST_CASE(
    "sizes that lie on the board as they are written are told by the overlaps that turning them would make") {
  const auto row = [](const char* net) {
    std::string out;
    for (int i = 0; i < 3; ++i)
      out += record(317, net + fmt::to_string(i), "J1", fmt::to_string(i + 1), "D0400P",
                    fmt::format("A00X+{:06}Y+000000X0600Y1200R090 S0", 1000 * i));
    return head + out + "999\n";
  };
  const Imported i = imported(row("N"));
  for (const Pad& pad : i.board.pads)
    CHECK(pad.rotation == Degrees(0));
  CHECK(hasNotice(i.notices,
                  "pads at quarter turns with holes: 3, first at line 4; sizes taken as they lie on the "
                  "board: 0 overlaps of different nets, the other way 2"));
  // Without a contradiction they are turned.
  const Imported one = imported(
      head + record(317, "A", "J1", "1", "D0400P", "A00X+000000Y+000000X0600Y1200R090 S0") + "999\n");
  CHECK(one.board.pads[0].rotation == Degrees(90));
}

TEST_CASE("a rectangle of which only the corners reach into another net is an oval, a real short stays one") {
  // A square of 0.06 inch, and a track of 0.01 inch that cuts its corner off, or runs through its middle.
  const auto withTrack = [](const char* coordinates) {
    return imported(head + record(317, "A", "J1", "1", "D0400P", "A00X+000000Y+000000X0600Y0600R000 S0") +
                    "378B              L01 X100 " + coordinates + "\n999\n");
  };
  const Imported corner = withTrack("X-200Y700 X700Y-200");
  CHECK(corner.board.pads[0].shape == guessed(PadShape::oval));
  CHECK(hasNotice(corner.notices,
                  "pads taken as ovals, as the corners of their rectangles reach into other nets: 1"));
  const Imported middle = withTrack("X-200Y0 X700");
  CHECK(middle.board.pads[0].shape == guessed(PadShape::rectangle));
}

TEST_CASE("the edge may begin with its first corner, say only what changes, and be left open") {
  const Imported i = imported("P  UNITS CUST 0\n389BOARD_EDGE X0Y0 X22500 Y15000 X0\n999\n");
  REQUIRE(i.board.info.outline.value.size() == 1);
  CHECK(i.board.info.outline.value[0].outer.size() == 4);
  CHECK(std::abs(squareMillimetres(i.board.info.outline.value[0].outer)) == Approx(57.15 * 38.1));
  CHECK(hasNotice(i.notices, "closed by a straight line"));
}

TEST_CASE("an edge that crosses itself is left out, and the copper is read") {
  const Imported i = imported(head + record(327, "A", "U1", "1", "", "A01X+000000Y+000000X0300Y0000R000 S0") +
                              "389BOARD_EDGE         X10Y10 X0Y0 X20000Y20000 X20000Y0 X0Y20000 X0Y0\n999\n");
  CHECK_FALSE(i.board.info.outline.known());
  CHECK(i.board.pads.size() == 1);
  CHECK(hasNotice(i.notices, "the board's edge was left out"));
}

TEST_CASE("columns count letters or bytes, as the line's own fixed letters show") {
  const std::string tail = "A01X+001000Y-002000X0300Y0500R090 S2\n";
  // "MASSE_Ö" has seven letters and eight bytes: padded to fourteen of the one or the other.
  const std::string byLetters = "327MASSE_\u00d6          U1    -7    " + std::string(6, ' ') + tail;
  const std::string byBytes = "327MASSE_\u00d6         U1    -7    " + std::string(6, ' ') + tail;
  for (const std::string& line : {byLetters, byBytes}) {
    const Imported i = imported(head + line + "999\n");
    REQUIRE(i.board.pads.size() == 1);
    CHECK(netName(i.board, i.board.pins[0].net) == "MASSE_\u00d6");
    CHECK(i.board.parts[0].reference == "U1");
    CHECK(i.board.pins[0].name == "7");
    CHECK(i.board.pads[0].position == fromFile(Point{unit(1000), unit(-2000)}));
  }
}

TEST_CASE("half a letter at the end of a name goes, other bytes that are not UTF-8 are Latin-1") {
  const std::string tail = "A01X+001000Y-002000X0300Y0500R090 S2\n";
  const std::string half = "327ABCDEFGHIJKLM\xC3   U1    -7    " + std::string(6, ' ') + tail;
  const Imported cut = imported(head + half + "999\n");
  CHECK(netName(cut.board, cut.board.pins[0].net) == "ABCDEFGHIJKLM");
  CHECK(cut.board.pads[0].position == fromFile(Point{unit(1000), unit(-2000)}));
  CHECK(hasNotice(cut.notices, "names that end in half a letter, which is left out: 1, first at line 4"));
  const std::string latin = "327ABC\xC4             U1    -7    " + std::string(6, ' ') + tail;
  const Imported old = imported(head + latin + latin + "999\n");
  CHECK(netName(old.board, old.board.pins[0].net) == "ABC\u00c4");
  CHECK(hasNotice(old.notices, "bytes that are not UTF-8, read as Latin-1: 2, first at line 4"));
  for (const Imported* i : {&cut, &old}) {
    const auto text = boardToText(i->board);
    REQUIRE(text);
    CHECK(*boardFromText(*text) == i->board);
  }
}

TEST_CASE("what a board file cannot hold is refused where it stands") {
  const auto error = [](const std::string& rest) {
    const auto result = read("P  UNITS SI\n" + rest + "999\n");
    return result ? std::string("read") : result.error().text();
  };
  const auto place = [](const std::string& x) {
    return record(327, "A", "U1", "1", "", "A01X+" + x + "Y+000000X0300Y0000R000 S0");
  };
  CHECK(error(place("10000000")) == "read"); // 10 m in steps of 0.001 mm
  CHECK(error(place("10000001")).starts_with("board.ipc: line 2: longer than a board can be"));
  CHECK(error(record(327, "A", "U1", "1", "", "A01X+000000Y+000000X15000000Y0000R000 S0"))
            .starts_with("board.ipc: line 2: longer than a board can be")); // a pad of 15 m
  CHECK(error("378A              L01 X100 X0Y0 X10000001Y0\n").starts_with("board.ipc: line 2: longer"));
  CHECK(error("389BOARD_EDGE         X10Y10 X0Y0 X10000001Y0\n").starts_with("board.ipc: line 2: longer"));
  // A body round a pad at the very edge would not fit.
  const Imported edge = imported("P  UNITS SI\n" + place("10000000") + "999\n");
  CHECK_FALSE(edge.board.parts[0].body.known());
  CHECK(boardToText(edge.board));
}

TEST_CASE("the image of a panel is left out, and said so") {
  const std::string pad = record(327, "A", "U1", "1", "", "A01X+000000Y+000000X0300Y0000R000 S0");
  const Imported i = imported(head + "P  IMAGE PANEL\n" + pad + pad + "P  IMAGE PRIMARY\n" + pad + "999\n");
  CHECK(i.board.pads.size() == 1);
  CHECK(hasNotice(i.notices, "line 4: the data of the panel were not read"));
  CHECK_FALSE(hasNotice(imported(head + "P  IMAGE PRIMARY\n" + pad + "999\n").notices, "panel"));
}

TEST_CASE("records that are not read are one notice a kind, with their count and first place") {
  const Imported i = imported(head + "370A\n370B\n380C\n999\n");
  CHECK(hasNotice(i.notices, "records 370, not read: 2, first at line 4"));
  CHECK(hasNotice(i.notices, "records 380, not read: 1, first at line 6"));
}

TEST_CASE("vias that say an inner layer are blind, and not joined through the board") {
  const auto via = [](const char* access, int x) {
    return record(317, "A", "VIA", "", "D0100P",
                  fmt::format("{}X+{:06}Y+000000X0200Y0000R000 S3", access, x));
  };
  const std::string bottom = record(327, "A", "U1", "1", "", "A04X+009000Y+000000X0300Y0000R000 S0");
  const Imported i = imported(head + via("A00", 0) + via("A01", 1000) + via("A03", 2000) + bottom + "999\n");
  const auto& order = i.board.info.layerOrder;
  CHECK_FALSE(i.board.vias[0].from.known());
  CHECK(i.board.vias[1].from == fromFile(order[0]));
  CHECK(i.board.vias[1].to == fromFile(order[0]));
  CHECK(i.board.vias[2].to == fromFile(order[2]));
  CHECK(hasNotice(i.notices, "read as on that one alone: 2, first at line 5"));
  // Where no inner layer is said, the side is only where to probe a via that goes through.
  const Imported through = imported(head + via("A01", 1000) + bottom + "999\n");
  CHECK_FALSE(through.board.vias[0].from.known());
}
