#include <catch2/catch.hpp>

#include "board/exchange/measure.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/shape.h"

// A board of our own with every pad shape, on both sides and turned, against what the CAD program's own
// library (package kicad 6.0.11+dfsg-1) makes of it. The table is the output of
//   /usr/bin/python3 tests/reference/kicad/shapes.py

using namespace netmend;

namespace {

struct ExpectedPad {
  const char *part, *pin;
  double holeX, holeY, left, low, right, high, area;
};

const ExpectedPad table[] = {
    {"U1", "1", 43.937822, -43.500000, 43.3378, -44.1000, 44.5378, -42.9000, 1.11810},
    {"U1", "2", 46.169873, -43.366025, 45.0236, -43.8469, 46.9816, -42.5884, 1.77489},
    {"U1", "3", 47.401924, -41.500000, 46.3145, -42.5258, 48.4894, -40.4742, 2.00000},
    {"U1", "4", 49.133975, -40.500000, 48.1234, -41.6020, 50.1445, -39.3980, 2.87197},
    {"U1", "5", 50.866025, -39.500000, 49.9330, -40.6160, 51.5990, -38.7304, 1.60000},
    {"U1", "6", 52.165064, -38.750000, 51.2972, -39.4531, 53.1829, -37.7871, 1.60000},
    {"U1", "7", 53.897114, -37.750000, 52.8911, -38.7529, 54.9031, -36.7471, 2.58768},
    {"U1", "8", 56.062178, -36.500000, 55.0345, -37.9869, 57.6514, -35.2859, 2.43724},
    {"U1", "", 51.250000, -42.165064, 50.7000, -42.7151, 51.8000, -41.6151, 0.93951},
    {"U1", "", 48.750000, -37.834936, 47.7501, -38.8347, 49.7500, -36.8350, 3.12171},
    {"U1", "8", 57.562178, -39.098076, 57.2890, -39.3713, 57.8354, -38.8249, 0.16000},
    {"R7", "1", 70.906308, -39.577382, 70.2743, -40.2963, 71.5383, -38.8003, 1.09549},
    {"R7", "2", 69.093692, -40.422618, 68.4776, -41.1354, 69.7943, -39.5285, 1.12000},
};

Board shapesBoard() {
  const auto imported =
      importBoard(std::filesystem::path(NETMEND_SOURCE_DIR "/tests/reference/kicad/shapes.kicad_pcb"));
  if (!imported) throw std::runtime_error(imported.error().text());
  return imported->board;
}

Point holeOf(const Pad& pad) {
  return placed(pad.position.value, pad.rotation, pad.drillOffset);
}

} // namespace

TEST_CASE("pads of every shape lie where the CAD program has them, turned and on both sides") {
  const Board board = shapesBoard();
  REQUIRE(board.pads.size() == std::size(table));
  std::size_t i = 0;
  for (const Pad& pad : board.pads) {
    const ExpectedPad& e = table[i++];
    const Pin& pin = *board.pins.find(pad.pin);
    INFO(e.part << "." << e.pin << " (" << i << ")");
    CHECK(board.parts.find(pin.part)->reference == e.part);
    CHECK(pin.name == e.pin);
    CHECK(holeOf(pad).x.mm() == Approx(e.holeX).margin(2e-6));
    CHECK(holeOf(pad).y.mm() == Approx(e.holeY).margin(2e-6));
    const bool onlyHole = !pad.plated.value && pad.size.value.width == Length(0);
    if (onlyHole) {
      CHECK_FALSE(padShape(pad));
      continue;
    }
    const auto shape = padShape(pad);
    REQUIRE(shape);
    const Ring outline = outlineOf(*shape);
    const Box box = boxOf(outline);
    // The CAD program puts its chords within 5 µm, partly outside the true edge; ours lie on it.
    CHECK(box.min.x.mm() == Approx(e.left).margin(0.006));
    CHECK(box.min.y.mm() == Approx(e.low).margin(0.006));
    CHECK(box.max.x.mm() == Approx(e.right).margin(0.006));
    CHECK(box.max.y.mm() == Approx(e.high).margin(0.006));
    CHECK(std::abs(squareMillimetres(outline)) == Approx(e.area).epsilon(0.015));
  }
}

TEST_CASE("an outline with lines, an arc, a curve and two cut-outs has the CAD program's area") {
  const Board board = shapesBoard();
  REQUIRE(board.info.outline.value.size() == 1);
  const Polygon& outline = board.info.outline.value.front();
  CHECK(outline.holes.size() == 2);
  double area = std::abs(squareMillimetres(outline.outer));
  for (const Ring& hole : outline.holes)
    area -= std::abs(squareMillimetres(hole));
  CHECK(area == Approx(1501.693).epsilon(5e-4)); // printed by the same script
}
