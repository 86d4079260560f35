#include "netmend/drawing/short_overlay.h"

#include <catch2/catch.hpp>

#include <QImage>

#include "gui.h"
#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/picture_colors.h"
#include "netmend/probing/reading_entry.h"
#include "small_board.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("a drop is drawn in pieces from the current's entry to the short, with both voltages") {
  SmallBoard small;
  const BoardUnderWork board = underWork(small.board);
  ShortCase found;
  found.next.stop = true;
  DropPattern pattern;
  pattern.pieces = {{{at(12, 20), at(40, 20)}, 0, Volts(0.020), Volts(0.010)},
                    {{at(60, 20)}, 1, Volts(0.010), Volts(0.010)}};
  pattern.most = Volts(0.020);
  pattern.into = at(12, 20);
  pattern.out = at(40, 20);
  const Overlay overlay = shortOverlay(found, pattern, *board.places);
  // 25 pieces of 4 % each, and the spot.
  REQUIRE(overlay.drops.size() == 26);
  CHECK(overlay.drops.front().share.value == Approx(0.98));
  CHECK(overlay.drops.front().points.front() == at(12, 20));
  CHECK(overlay.drops[24].share.value == Approx(0.02));
  CHECK(overlay.drops[24].points.back() == at(40, 20));
  CHECK(overlay.drops[25].share.value == Approx(0.0));
  REQUIRE(overlay.marks.size() == 2);
  CHECK(overlay.marks[0].shape == MarkShape::ring);
  CHECK(wordsOf(overlay.marks[0].label) == readingText(0.020, ReadingMode::dropUnderCurrent));
  CHECK(overlay.marks[1].shape == MarkShape::cross);
  CHECK(shortOverlay(found, {}, *board.places).drops.empty());
}

TEST_CASE("more drop is broader and of the odd's colour, less is calm") {
  SmallBoard small;
  needApplication();
  QImage image(1000, 500, QImage::Format_RGB32);
  image.fill(PictureColors().paper);
  Overlay overlay;
  overlay.scaleBar = overlay.partLabels = overlay.pinLabels = false;
  overlay.drops = {{{at(40, 40), at(50, 40)}, Share(1.0)}, {{at(60, 40), at(70, 40)}, Share(0.0)}};
  QPainter painter(&image);
  const BoardView view = viewOf({at(0, 0), at(100, 50)}, QRectF(0, 0, 1000, 500), Side::top, 0.0);
  paintBoard(painter, BoardScene(small.board), view, overlay, pictureType(14));
  painter.end();
  const auto colourAt = [&](double x, double y) {
    return image.pixelColor(static_cast<int>(x * 10), static_cast<int>(500 - y * 10));
  };
  CHECK(colourAt(45, 40) == PictureColors().oddPlate);
  CHECK(colourAt(65, 40) == PictureColors().calm);
  // 1.4 pixels a unit: 8 units against 2.5, and 2 more of casing.
  CHECK(colourAt(45, 40.45) == PictureColors().oddPlate);
  CHECK(colourAt(65, 40.45) == PictureColors().substrate);
}
