// What real files of versions 3 to 9 have, in small files of our own: read, and told where something is left
// out.
#include <algorithm>

#include <catch2/catch.hpp>

#include "measure.h"
#include "netmend/board/exchange/import.h"

using namespace netmend;

namespace {

Imported imported(const std::string& text) {
  auto result = importBoard(ImportSource{text, "b.kicad_pcb"});
  if (!result) throw std::runtime_error(result.error().text());
  return *result;
}

const std::string v6 =
    "(kicad_pcb (version 20211014) (generator x)\n"
    "(layers (0 \"F.Cu\" signal) (31 \"B.Cu\" signal) (37 \"F.SilkS\" user) (39 \"F.Mask\" user))\n"
    "(net 0 \"\") (net 1 \"GND\") (net 2 \"A\")\n";

const std::string square = "(pts (xy 0 0) (xy 4 0) (xy 4 4) (xy 0 4))";

std::string zone(const std::string& layer) {
  return "(zone (net 0) (net_name \"\") (layer \"" + layer +
         "\") (min_thickness 0.2)\n(filled_polygon (layer \"" + layer + "\") " + square + "))\n";
}

std::size_t noticesWith(const Imported& i, const std::string& text) {
  return static_cast<std::size_t>(std::count_if(i.notices.begin(), i.notices.end(), [&](const Said& n) {
    return wordsOf(n).find(text) != std::string::npos;
  }));
}

} // namespace

TEST_CASE("fills on silk and mask are left out, with one notice that counts them and names the first line") {
  const Imported i = imported(v6 + zone("F.SilkS") + zone("F.Cu") + zone("F.Mask") + ")");
  REQUIRE(i.board.areas.size() == 1);
  CHECK(i.board.areas[0].layer == fromFile(i.board.info.layerOrder[0]));
  CHECK(hasNotice(i.notices, "filled zones on layers without copper, left out: 2, first in line 5"));
  CHECK(noticesWith(i, "filled zones") == 1);
}

TEST_CASE("fills and tracks on copper layers that the file does not declare are left out with a notice") {
  const Imported i = imported(v6 + zone("In1.Cu") + zone("B.Cu") +
                              "(segment (start 0 0) (end 1 1) (width 0.2) (layer \"In2.Cu\") (net 1))\n"
                              "(segment (start 0 0) (end 1 1) (width 0.2) (layer \"F.SilkS\") (net 1))\n"
                              "(segment (start 0 0) (end 1 1) (width 0.2) (layer \"F.Cu\") (net 1)))");
  CHECK(i.board.areas.size() == 1);
  CHECK(i.board.tracks.size() == 1);
  CHECK(hasNotice(i.notices,
                  "filled zones on layers that the file does not declare, left out: 1, first in line 5"));
  CHECK(
      hasNotice(i.notices, "tracks on layers that the file does not declare, left out: 1, first in line 8"));
  CHECK(hasNotice(i.notices, "tracks on layers without copper, left out: 1, first in line 9"));
}

TEST_CASE("inner layers may have the user's names, and items may say the fixed ones") {
  const Imported i = imported(
      "(kicad_pcb (version 20171130)\n"
      "(layers (0 F.Cu signal) (1 El1 signal) (2 \"In2(GND).Cu\" power) (31 B.Cu signal) (36 B.SilkS user))\n"
      "(net 0 \"\") (net 1 GND)\n"
      "(via (at 0 0) (size 0.6) (drill 0.3) (layers F.Cu In1.Cu) (net 1))\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layer El1) (net 1))\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layer \"In2(GND).Cu\") (net 1))\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layer In2.Cu) (net 1)))");
  const Board& b = i.board;
  REQUIRE(b.info.layerOrder.size() == 4);
  CHECK(b.layers[1].name == "El1");
  CHECK(b.layers[2].name == "In2(GND).Cu");
  CHECK(b.vias[0].to == fromFile(b.info.layerOrder[1]));
}

TEST_CASE(
    "inner layers with the user's names lie in the order of the table, whatever numbers the names have") {
  const Imported i = imported(
      "(kicad_pcb (version 4)\n"
      "(layers (0 F.Cu signal) (1 Inner2.Cu mixed) (2 \"In1(GND).Cu\" mixed) (31 B.Cu signal hide))\n"
      "(net 0 \"\") (net 1 GND)\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layer \"In1(GND).Cu\") (net 1))\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layer Inner2.Cu) (net 1)))");
  const Board& b = i.board;
  REQUIRE(b.info.layerOrder.size() == 4);
  CHECK(b.tracks[0].layer == fromFile(b.info.layerOrder[2]));
  CHECK(b.tracks[1].layer == fromFile(b.info.layerOrder[1]));
}

TEST_CASE("a negative width, as the CAD program writes it, is none") {
  const Imported i =
      imported(v6 + "(gr_poly " + square +
               " (stroke (width -0.000001) (type solid)) (fill solid) (layer \"F.Cu\"))\n"
               "(gr_poly " +
               square +
               " (stroke (width -0.000001) (type solid)) (fill solid) (layer \"F.SilkS\"))\n"
               "(gr_line (start 0 0) (end 9 0) (stroke (width -0.000001) (type solid)) (layer \"B.Cu\")))");
  REQUIRE(i.board.areas.size() == 1);
  CHECK(std::abs(squareMillimetres(i.board.areas[0].polygon.outer)) == Approx(16.0));
  CHECK(hasNotice(i.notices, "lines without width drawn on copper layers, left out: 1, first in line 6"));
}

TEST_CASE(
    "files of version 3 number copper from the bottom, and a footprint's side may have the user's name") {
  const Imported i = imported(
      "(kicad_pcb (version 3) (host pcbnew \"(2013-07-07 BZR 4022)-stable\")\n"
      "(general (thickness 1.6)) (page A4)\n"
      "(layers (15 TOP signal) (2 Inner2.Cu signal) (1 Inner1.Cu signal) (0 BOT signal) (21 F.SilkS user))\n"
      "(net 0 \"\") (net 1 LCD-5\"CTS)\n"
      "(module R3 (layer BOT) (tedit 5322B4E3) (tstamp 5320D334) (at 10 20)\n"
      " (fp_text reference R1 (at 0 0) (layer B.SilkS)) (fp_text value 4k7 (at 0 0) (layer BOT))\n"
      " (fp_text user x (at 0 0) (layer BOT) hide)\n"
      " (pad 1 smd rect (at -1 0) (size 1 2) (layers BOT B.Paste) (net 1 LCD-5\"CTS))\n"
      " (pad 2 thru_hole circle (at 1 0) (size 2 2) (drill 0.8) (layers *.Cu *.Mask F.SilkS)))\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layer Inner2.Cu) (net 1) (tstamp 53E911B2) (status 400))\n"
      "(via (at 0 0) (size 0.889) (layers TOP BOT) (net 1))\n"
      "(via (at 5 0) (size 0) (layers TOP BOT) (net 1)))");
  const Board& b = i.board;
  REQUIRE(b.info.layerOrder.size() == 4);
  CHECK(b.layers[0].name == "TOP");
  CHECK(b.layers[1].name == "Inner2.Cu");
  CHECK(b.layers[3].name == "BOT");
  CHECK(b.parts[0].side == fromFile(Side::bottom));
  CHECK(b.pads[0].reach == fromFile(PadReach::bottom));
  CHECK(b.pads[1].reach == fromFile(PadReach::allLayers));
  CHECK(b.tracks[0].layer == fromFile(b.info.layerOrder[1]));
  CHECK(b.nets[0].name == "LCD-5\"CTS"); // a quotation mark within a bare word
  REQUIRE(b.vias.size() == 1);
  CHECK(b.vias[0].from == fromFile(b.info.layerOrder[0]));
  CHECK(hasNotice(i.notices, "vias without size, left out: 1, first in line 12"));
  CHECK(hasNotice(i.notices, "texts on copper layers, left out: 1, first in line 6")); // a hidden one is none
}

TEST_CASE("zones that are not filled are told once, with their number and the first") {
  const std::string bare = "(zone (net 1) (net_name \"GND\") (layer \"F.Cu\") (polygon " + square + "))\n";
  const Imported i = imported(v6 + bare + bare + bare + ")");
  CHECK(hasNotice(i.notices,
                  "zones that are not filled, so that their copper is not known: 3, first in line 4"));
  CHECK(noticesWith(i, "not filled") == 1);
}

TEST_CASE("a via whose faces are tented as the board's are ends where it ends") {
  const Imported i = imported(v6 + "(setup (tenting front back))\n" +
                              "(via (at 0 0) (size 0.5) (layers \"F.Cu\" \"B.Cu\") "
                              "(tenting (front none) (back none)) (net 1))\n" +
                              "(via (at 1 0) (size 0.5) (layers \"F.Cu\" \"B.Cu\") (net 2)))");
  REQUIRE(i.board.vias.size() == 2);
  CHECK(i.board.vias[0].maskOpening == fromFile(MaskOpening::none));
  CHECK(netName(i.board, i.board.vias[0].net) == "GND");
}
