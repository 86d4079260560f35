#include <catch2/catch.hpp>

#include "measure.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/shape.h"

using namespace netmend;

namespace {

Result<Imported> read(const std::string& text) {
  return importBoard(ImportSource{text, "b.kicad_pcb"});
}

Imported imported(const std::string& text) {
  auto result = read(text);
  if (!result) throw std::runtime_error(result.error().text());
  return *result;
}

const std::string v6 =
    "(kicad_pcb (version 20211014) (generator x)\n"
    "(layers (0 \"F.Cu\" signal) (31 \"B.Cu\" signal))\n(net 0 \"\") (net 1 \"GND\") (net 2 \"A\")\n";

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

} // namespace

TEST_CASE("files of version 4 with modules, bare words and the user's layer names are read") {
  const Imported i = imported(
      "(kicad_pcb (version 4) (host pcbnew 4.0.2-stable)\n"
      "(general (links 1) (thickness 1.6))\n"
      "(layers (0 Upper signal) (31 Lower signal) (44 Edge.Cuts user))\n"
      "(net 0 \"\") (net 1 GND) (net_class Default \"\" (clearance 0.2) (add_net GND))\n"
      "(module Lib:R3 (layer Upper) (tedit 0) (tstamp 0) (at 10 20 90)\n"
      "  (fp_text reference R1 (at 0 0) (layer F.SilkS)) (fp_text value 4k7 (at 0 0) (layer F.Fab))\n"
      "  (pad 1 smd rect (at -1 0 90) (size 1 2) (layers Upper F.Paste F.Mask) (net 1 GND))\n"
      "  (pad 2 thru_hole circle (at 1 0 90) (size 2 2) (drill 0.8) (layers *.Cu *.Mask)))\n"
      "(gr_line (start 0 0) (end 10 0) (angle 90) (layer Edge.Cuts) (width 0.15))\n"
      "(gr_line (start 10 10) (end 0 10) (angle 90) (layer Edge.Cuts) (width 0.15))\n"
      "(gr_line (start 0 10) (end 0 0) (angle 90) (layer Edge.Cuts) (width 0.15))\n"
      "(gr_arc (start 10 5) (end 10 0) (angle 180) (layer Edge.Cuts) (width 0.15))\n"
      "(segment (start 10 21) (end 12 21) (width 0.25) (layer Upper) (net 1))\n"
      "(via (at 12 21) (size 0.6) (layers Upper Lower) (net 1))\n"
      "(zone (net 1) (net_name GND) (layer Lower) (tstamp 0) (hatch edge 0.5) (min_thickness 0.2)\n"
      "  (polygon (pts (xy 0 0) (xy 4 0) (xy 4 4) (xy 0 4)))\n"
      "  (filled_polygon (pts (xy 0.1 0.1) (xy 3.9 0.1) (xy 3.9 3.9) (xy 0.1 3.9)))))\n");
  const Board& b = i.board;
  REQUIRE(b.info.layerOrder.size() == 2);
  CHECK(b.layers[0].name == "Upper");
  CHECK(b.layers[0].dielectricBelow == guessed(Length(1'600'000)));
  REQUIRE(b.parts.size() == 1);
  CHECK(b.parts[0].reference == "R1");
  CHECK(b.parts[0].value == fromFile(std::string("4k7")));
  CHECK(b.parts[0].kind == guessed(PartKind::resistor));
  CHECK(b.pads[0].position == fromFile(mm(10, -21))); // -1 along x turned by 90° is down on the board
  CHECK(b.pads[0].reach == fromFile(PadReach::top));
  CHECK(b.pads[1].maskOpening == fromFile(MaskOpening::both));
  CHECK(netName(b, b.pins[1].net) == "-");
  CHECK_FALSE(b.vias[0].drill.known()); // from the net class, which is not read
  // Half a circle of radius 5 beside a square of 10.
  REQUIRE(b.info.outline.value.size() == 1);
  CHECK(std::abs(squareMillimetres(b.info.outline.value[0].outer)) ==
        Approx(100 + 3.14159265 * 12.5).epsilon(1e-3));
  // Up to version 5 the fill's edge is drawn with a pen of the least width: 3.8 mm and twice 0.1 mm.
  REQUIRE(b.areas.size() == 1);
  CHECK(boxOf(b.areas[0].polygon.outer).size().width.mm() == Approx(4.0).margin(0.001));
}

TEST_CASE("files of version 8 name a part's texts properties, and later ones nets without numbers") {
  const Imported i = imported(
      "(kicad_pcb (version 20250901) (generator \"pcbnew\") (generator_version \"10.0\")\n"
      "(layers (0 \"F.Cu\" signal) (2 \"B.Cu\" signal) (4 \"In1.Cu\" signal) (25 \"Edge.Cuts\" user))\n"
      "(setup (tenting (front yes) (back no)))\n"
      "(footprint \"l:f\" (layer \"B.Cu\") (uuid \"0\") (at 1 2)\n"
      " (property \"Reference\" \"C3\" (at 0 0 0) (layer \"B.SilkS\"))\n"
      " (property \"Value\" \"100n\" (at 0 0 0) (layer \"B.Fab\")) (attr smd dnp)\n"
      " (pad \"1\" smd roundrect (at 0 0) (size 1 1) (layers \"B.Cu\" \"B.Mask\") (roundrect_rratio 0.25) "
      "(net \"GND\"))\n"
      " (pad \"2\" smd roundrect (at 2 0) (size 1 1) (layers \"B.Cu\" \"B.Mask\") (roundrect_rratio 0.25) "
      "(net \"+5V\")))\n"
      "(segment (start 0 0) (end 1 0) (width 0.2) (layers \"B.Cu\" \"B.Mask\") (net \"GND\"))\n"
      "(via (at 0 0) (size 0.6) (drill 0.3) (layers \"F.Cu\" \"B.Cu\") (tenting (front no) (back no)) (net "
      "\"GND\"))\n"
      "(via (at 5 0) (size 0.6) (drill 0.3) (layers \"F.Cu\" \"In1.Cu\") (net \"+5V\")))\n");
  const Board& b = i.board;
  CHECK(b.layers[1].name == "In1.Cu"); // between the outer ones, whatever its number
  CHECK(b.parts[0].reference == "C3");
  CHECK(b.parts[0].value == fromFile(std::string("100n")));
  CHECK(b.parts[0].fitted == fromFile(false));
  CHECK(b.parts[0].side == fromFile(Side::bottom));
  CHECK(b.nets.size() == 2);
  CHECK(netName(b, b.tracks[0].net) == "GND");
  CHECK(b.vias[0].maskOpening == fromFile(MaskOpening::both));
  CHECK(b.vias[1].maskOpening == fromFile(MaskOpening::bottom));
  CHECK(b.vias[1].to == fromFile(b.info.layerOrder[1]));
}

TEST_CASE("pads of one number and net are one pin; pads without number are pins of their own") {
  const Imported i = imported(
      v6 +
      "(footprint \"f\" (layer \"F.Cu\") (at 0 0) (fp_text reference \"U1\" (at 0 0) (layer \"F.SilkS\"))\n"
      "(pad \"1\" smd rect (at 0 0) (size 1 1) (layers \"F.Cu\") (net 1 \"GND\"))\n"
      "(pad \"1\" smd rect (at 2 0) (size 1 1) (layers \"F.Cu\") (net 1 \"GND\"))\n"
      "(pad \"1\" smd rect (at 4 0) (size 1 1) (layers \"F.Cu\") (net 2 \"A\"))\n"
      "(pad \"\" smd rect (at 6 0) (size 1 1) (layers \"F.Cu\"))\n"
      "(pad \"\" smd rect (at 8 0) (size 1 1) (layers \"F.Paste\")))\n"
      "(footprint \"f\" (layer \"F.Cu\") (at 0 9) (fp_text reference \"U1\" (at 0 0) (layer \"F.SilkS\"))))");
  const Board& b = i.board;
  CHECK(b.parts.size() == 2); // the reference repeats
  CHECK(b.pins.size() == 4);
  CHECK(padsOf(b, b.pins[0].id).size() == 2);
  CHECK_FALSE(padShape(b.pads[4])); // an opening for paste only has no copper
  CHECK(hasNotice(i.notices, "edge is not known"));
}

TEST_CASE("copper drawn in a footprint is an area whose net is unknown") {
  const Imported i = imported(
      v6 + "(footprint \"f\" (layer \"F.Cu\") (at 5 5 90)\n"
           "(fp_poly (pts (xy 0 0) (xy 2 0) (xy 2 1) (xy 0 1)) (layer \"F.Cu\") (width 0) (fill solid))\n"
           "(fp_line (start 0 3) (end 4 3) (layer \"B.Cu\") (width 0.5)))\n"
           "(gr_text \"text\" (at 0 0) (layer \"F.Cu\")))");
  REQUIRE(i.board.areas.size() == 2);
  CHECK_FALSE(i.board.areas[0].net.known());
  CHECK(boxOf(i.board.areas[0].polygon.outer).min == mm(5, -5));
  CHECK(boxOf(i.board.areas[0].polygon.outer).max == mm(6, -3));
  CHECK(std::abs(squareMillimetres(i.board.areas[1].polygon.outer)) ==
        Approx(4 * 0.5 + 3.14159265 * 0.0625).epsilon(0.01));
  CHECK(hasNotice(i.notices, "texts on copper layers, left out: "));
}

TEST_CASE("a custom pad in two pieces is a pad and an area of its net") {
  const Imported i =
      imported(v6 + "(footprint \"f\" (layer \"F.Cu\") (at 5 5)\n"
                    "(pad \"1\" smd custom (at 0 0 90) (size 1 1) (layers \"F.Cu\") (net 2 \"A\")\n"
                    "(options (clearance outline) (anchor rect)) (primitives\n"
                    "(gr_poly (pts (xy 2 0) (xy 3 0) (xy 3 1) (xy 2 1)) (width 0) (fill yes))))))");
  const Board& b = i.board;
  REQUIRE(b.areas.size() == 1);
  CHECK(netName(b, b.areas[0].net) == "A");
  CHECK(boxOf(b.areas[0].polygon.outer).min == mm(5, -3)); // to the right of the pad, turned by 90°
  CHECK(boxOf(b.areas[0].polygon.outer).max == mm(6, -2));
  CHECK(std::abs(squareMillimetres(b.pads[0].polygon)) == Approx(1));
}

TEST_CASE("a stack-up gives the thicknesses of copper and of what lies between") {
  const Imported i = imported(
      "(kicad_pcb (version 20211014)\n(layers (0 \"F.Cu\" signal) (1 \"In1.Cu\" signal) (31 \"B.Cu\" "
      "signal))\n"
      "(setup (stackup (layer \"F.Mask\" (type \"Top Solder Mask\") (thickness 0.01))\n"
      "(layer \"F.Cu\" (type \"copper\") (thickness 0.035))\n"
      "(layer \"dielectric 1\" (type \"prepreg\") (thickness 0.1 locked) addsublayer (thickness 0.12))\n"
      "(layer \"In1.Cu\" (type \"copper\") (thickness 0.018)) (layer \"dielectric 2\" (type \"core\") "
      "(thickness 1.2))\n"
      "(layer \"B.Cu\" (type \"copper\") (thickness 0.035)))))");
  const Board& b = i.board;
  CHECK(b.layers[0].copperThickness == fromFile(Length(35'000)));
  CHECK(b.layers[0].dielectricBelow == fromFile(Length(220'000)));
  CHECK(b.layers[1].copperThickness == fromFile(Length(18'000)));
  CHECK(b.layers[1].dielectricBelow == fromFile(Length(1'200'000)));
  CHECK_FALSE(b.layers[2].dielectricBelow.known());
}

TEST_CASE("an edge that crosses itself is an error, one that is open a notice") {
  const auto edge = [](const std::string& corners) {
    return read(v6 + "(gr_poly (pts " + corners + ") (layer \"Edge.Cuts\") (width 0.1) (fill none)))");
  };
  const auto crossed = edge("(xy 0 0) (xy 10 10) (xy 10 0) (xy 0 10)");
  REQUIRE_FALSE(crossed);
  CHECK(crossed.error().text().find("crosses itself") != std::string::npos);
  CHECK(crossed.error().file == "b.kicad_pcb");
  CHECK(edge("(xy 0 0) (xy 10 0) (xy 10 10) (xy 0 10)"));
  const auto open = read(v6 + "(gr_line (start 0 0) (end 9 0) (layer \"Edge.Cuts\") (width 0.1))\n"
                              "(gr_circle (center 3 3) (end 4 3) (layer \"Edge.Cuts\") (width 0.1)))");
  REQUIRE(open);
  CHECK_FALSE(open->board.info.outline.known()); // the circle would have been a cut-out
  CHECK(hasNotice(open->notices, "edge is open"));
}

TEST_CASE("mistakes in a board file are told with line and column") {
  const auto place = [](const std::string& item) {
    const auto result = read(v6 + item + ")");
    return result ? std::string("read") : wordsOf(result.error().place);
  };
  CHECK(place("(segment (start 0 0) (end 1 oops) (width 0.2) (layer \"F.Cu\") (net 1))") ==
        "line 4, column 29");
  CHECK(place("(segment (start 0 0) (end 1 1) (width 0) (layer \"F.Cu\") (net 1))").starts_with("line 4"));
  CHECK(place("(segment (start 0 0) (end 1 1) (width 0.2) (layer \"F.Cu\") (net 7))") == "line 4, column 64");
  CHECK(
      place("(segment (start 0 0) (end nan 1) (width 0.2) (layer \"F.Cu\") (net 1))").starts_with("line 4"));
  CHECK(place("(segment (start 0 0) (end 1e200 1) (width 0.2) (layer \"F.Cu\") (net 1))")
            .starts_with("line 4"));
  CHECK(place("(segment (start 0 0) (end 100000 1) (width 0.2) (layer \"F.Cu\") (net 1))")
            .starts_with("line 4"));
  CHECK(place("(net 1 \"twice\")").starts_with("line 4"));
  CHECK(place("\n(footprint \"f\" (layer \"F.Cu\") (at 0 0) (pad \"1\" smd heptagon (at 0 0) (size 1 1) "
              "(layers \"F.Cu\")))")
            .starts_with("line 5"));
  CHECK(place(")").starts_with("line 4"));
}
