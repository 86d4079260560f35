#include <cmath>
#include <filesystem>
#include <numeric>

#include <catch2/catch.hpp>

#include "board/exchange/measure.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/shape.h"

// Every board of the Debian package kicad-demos, read where the package puts it, against what the CAD
// program's own library (package kicad 6.0.11+dfsg-1) says of it. The table is the output of
//   /usr/bin/python3 tests/reference/kicad/counts.py

using namespace netmend;

namespace {

struct Expected {
  const char* file;
  std::size_t parts, pads, segments, arcs, vias, shortVias, nets, netsWithPad, layers, fills, outlines,
      cutOuts;
  double boardArea;
  std::size_t partsBelow;
  double padX, padY, padArea, padWidth, trackLength, fillArea;
};

const Expected table[] = {
    {"complex_hierarchy/complex_hierarchy.kicad_pcb",
     68,
     165,
     365,
     0,
     0,
     0,
     52,
     52,
     2,
     1,
     1,
     0,
     8057.41,
     0,
     21446.473000,
     -16239.087000,
     431.6984,
     264.0388,
     1265.7611,
     5092.4782},
    {"custom_pads_test/custom_pads_test.kicad_pcb",
     5,
     11,
     19,
     0,
     0,
     0,
     3,
     3,
     2,
     1,
     1,
     0,
     10620.00,
     0,
     1595.204000,
     -1147.236000,
     618.0353,
     120.5878,
     108.2815,
     8700.7409},
    {"ecc83/ecc83-pp.kicad_pcb",
     15,
     33,
     59,
     0,
     0,
     0,
     9,
     9,
     2,
     1,
     1,
     0,
     2413.70,
     0,
     4798.321000,
     -3723.651000,
     218.4591,
     84.6609,
     210.9984,
     1260.1054},
    {"ecc83/ecc83-pp_v2.kicad_pcb",
     15,
     34,
     53,
     0,
     0,
     0,
     13,
     13,
     2,
     1,
     1,
     0,
     2022.58,
     0,
     4911.360000,
     -3807.910000,
     165.9381,
     78.9699,
     219.0891,
     1101.0328},
    {"flat_hierarchy/flat_hierarchy.kicad_pcb",
     64,
     247,
     366,
     0,
     7,
     0,
     111,
     111,
     2,
     1,
     1,
     0,
     15851.58,
     0,
     38075.225000,
     -22104.272400,
     754.2800,
     494.5552,
     1750.2272,
     10287.1964},
    {"interf_u/interf_u.kicad_pcb",
     25,
     379,
     731,
     0,
     84,
     0,
     173,
     173,
     2,
     6,
     1,
     0,
     12191.59,
     0,
     53377.932000,
     -37904.580000,
     1457.2736,
     603.6352,
     5101.4589,
     5503.0318},
    {"kit-dev-coldfire-xilinx_5213/kit-dev-coldfire-xilinx_5213.kicad_pcb",
     160,
     825,
     2940,
     0,
     253,
     0,
     278,
     278,
     4,
     16,
     1,
     0,
     14399.97,
     14,
     128254.528000,
     -85106.096000,
     1418.1520,
     1133.7406,
     9413.5472,
     29986.2164},
    {"microwave/microwave.kicad_pcb",
     4,
     8,
     0,
     0,
     0,
     0,
     0,
     0,
     2,
     0,
     1,
     0,
     35241.86,
     0,
     1625.539040,
     -1005.829840,
     7.4943,
     7.3457,
     0.0000,
     0.0000},
    {"pic_programmer/pic_programmer.kicad_pcb",
     63,
     247,
     370,
     0,
     6,
     0,
     111,
     111,
     2,
     1,
     1,
     0,
     15851.58,
     1,
     38040.169000,
     -22011.823000,
     822.5559,
     513.3597,
     1745.6202,
     10437.6425},
    {"sonde xilinx/sonde xilinx.kicad_pcb",
     25,
     108,
     208,
     0,
     3,
     0,
     42,
     42,
     2,
     1,
     1,
     0,
     3471.67,
     1,
     14674.077400,
     -9575.509200,
     408.7746,
     260.5162,
     637.7554,
     2036.9313},
    {"stickhub/StickHub.kicad_pcb",
     94,
     278,
     1111,
     180,
     87,
     0,
     47,
     47,
     2,
     11,
     1,
     0,
     605.27,
     57,
     41695.735948,
     -26858.312986,
     194.3418,
     254.4204,
     742.5748,
     696.0986},
    {"test_pads_inside_pads/test_pads_inside_pads.kicad_pcb",
     4,
     14,
     4,
     0,
     0,
     0,
     2,
     2,
     2,
     0,
     1,
     0,
     2736.63,
     0,
     1286.764000,
     -609.727000,
     469.7886,
     47.7509,
     31.9838,
     0.0000},
    {"test_xil_95108/carte_test.kicad_pcb",
     42,
     282,
     635,
     0,
     12,
     0,
     100,
     100,
     2,
     8,
     1,
     0,
     10129.01,
     8,
     39869.547000,
     -24059.274000,
     787.2929,
     490.4208,
     2950.4206,
     4791.5843},
    {"video/video.kicad_pcb",
     189,
     2238,
     7972,
     0,
     808,
     0,
     486,
     486,
     4,
     3,
     1,
     0,
     28029.28,
     103,
     452946.282689,
     -233973.299458,
     3142.8889,
     2578.6754,
     35467.4610,
     40804.8372},
};

double within(double value, double relative, double absolute) {
  return std::abs(value) * relative + absolute;
}

void compareCounts(const Board& board, const Expected& e) {
  CHECK(board.parts.size() == e.parts);
  CHECK(board.pads.size() == e.pads);
  std::size_t arcs = 0;
  for (const Track& t : board.tracks)
    arcs += t.way == TrackWay::arc ? 1 : 0;
  CHECK(board.tracks.size() - arcs == e.segments);
  CHECK(arcs == e.arcs);
  CHECK(board.vias.size() == e.vias);
  std::size_t shortVias = 0;
  for (const Via& v : board.vias) {
    const auto& order = board.info.layerOrder;
    shortVias += v.from.value != order.front() || v.to.value != order.back() ? 1 : 0;
  }
  CHECK(shortVias == e.shortVias);
  CHECK(board.nets.size() == e.nets);
  CHECK(netsWithPad(board) == e.netsWithPad);
  CHECK(board.info.layerOrder.size() == e.layers);
  std::size_t fills = 0;
  for (const Area& a : board.areas)
    fills += a.net.known() ? 1 : 0; // drawn copper has no net
  CHECK(fills == e.fills);
  std::size_t below = 0;
  for (const Part& p : board.parts)
    below += p.side.value == Side::bottom ? 1 : 0;
  CHECK(below == e.partsBelow);
}

void compareSums(const Board& board, const Expected& e) {
  double x = 0, y = 0, area = 0, width = 0;
  for (const Pad& pad : board.pads) {
    x += pad.position.value.x.mm();
    y += pad.position.value.y.mm();
    const bool bareHole = !pad.plated.value && pad.drill.value.width > Length(0);
    const auto shape = padShape(pad);
    if (!shape || bareHole) continue;
    const Ring outline = outlineOf(*shape);
    area += std::abs(squareMillimetres(outline));
    width += boxOf(outline).size().width.mm();
  }
  const auto count = static_cast<double>(e.pads);
  CHECK(x == Approx(e.padX).margin(1e-6 * count)); // a nanometre of rounding each
  CHECK(y == Approx(e.padY).margin(1e-6 * count));
  CHECK(area == Approx(e.padArea).epsilon(0.012)); // its chords make a disc up to 1.1 % smaller
  CHECK(width == Approx(e.padWidth).epsilon(0.003));
  double length = 0;
  for (const Track& t : board.tracks)
    length += trackLength(t)->mm();
  CHECK(length == Approx(e.trackLength).margin(within(length, 1e-7, 1e-4)));
  double fill = 0;
  for (const Area& a : board.areas)
    if (a.net.known()) fill += std::abs(squareMillimetres(a.polygon.outer));
  CHECK(fill == Approx(e.fillArea).margin(within(fill, 1e-6, 1e-4)));
}

void compareOutline(const Board& board, const Expected& e) {
  REQUIRE(board.info.outline.known());
  const auto& polygons = board.info.outline.value;
  CHECK(polygons.size() == e.outlines);
  std::size_t cutOuts = 0;
  double area = 0;
  for (const Polygon& p : polygons) {
    cutOuts += p.holes.size();
    area += std::abs(squareMillimetres(p.outer));
    for (const Ring& hole : p.holes)
      area -= std::abs(squareMillimetres(hole));
  }
  CHECK(cutOuts == e.cutOuts);
  CHECK(area == Approx(e.boardArea).epsilon(1e-4).margin(0.01));
}

} // namespace

TEST_CASE("every demo board has the parts, pads, tracks, vias and nets that its CAD program counts") {
  const std::filesystem::path root = "/usr/share/kicad/demos";
  std::size_t found = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root))
    found += entry.path().extension() == ".kicad_pcb" ? 1 : 0;
  REQUIRE(found == std::size(table)); // none is left out of the table
  for (const Expected& e : table) {
    INFO(e.file);
    const auto imported = importBoard(root / e.file);
    REQUIRE(imported);
    compareCounts(imported->board, e);
    compareSums(imported->board, e);
    compareOutline(imported->board, e);
  }
}

TEST_CASE("reading a demo board twice gives the same board") {
  const std::filesystem::path file = "/usr/share/kicad/demos/stickhub/StickHub.kicad_pcb";
  const auto first = importBoard(file);
  const auto second = importBoard(file);
  REQUIRE(first);
  REQUIRE(second);
  CHECK(first->board == second->board);
  CHECK(!first->board.info.uuid.empty());
}
