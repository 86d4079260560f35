#include "netmend/drawing/board_scene.h"

#include <catch2/catch.hpp>

#include <QBuffer>
#include <QImage>
#include <QPageSize>
#include <QPdfWriter>

#include <fstream>

#include "gui.h"
#include "netmend/drawing/picture_colors.h"
#include "small_board.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

constexpr int pixelsPerMm = 10;

/// A plain picture of the small board: 10 pixels a mm, no labels in the way.
QImage pictureOf(const Board& board, Overlay overlay, Side side = Side::top) {
  needApplication();
  QImage image(1000, 500, QImage::Format_RGB32);
  image.fill(PictureColors().paper);
  overlay.scaleBar = overlay.partLabels = overlay.pinLabels = false;
  QPainter painter(&image);
  BoardView view = viewOf({at(0, 0), at(100, 50)}, QRectF(0, 0, 1000, 500), side, 0.0);
  paintBoard(painter, BoardScene(board), view, overlay, pictureType(14));
  return image;
}

QColor colourAt(const QImage& image, double x, double y) {
  return image.pixelColor(static_cast<int>(x * pixelsPerMm), static_cast<int>(500 - y * pixelsPerMm));
}

/// The words of a picture, as a PDF reader of another make finds them.
std::string wordsOf(const Board& board, const Overlay& overlay, double scale, Degrees turn = {}) {
  needApplication();
  const TemporaryFolder folder;
  {
    QPdfWriter writer(QString::fromStdString(folder.file("x.pdf")));
    writer.setResolution(72);
    writer.setPageSize(QPageSize(QPageSize::A3));
    writer.setPageMargins({});
    QPainter painter(&writer);
    BoardView view = viewOf(pictureExtent(board), QRectF(0, 0, 800, 800));
    view.scale = PictureScale(scale);
    view.turn = turn;
    paintBoard(painter, BoardScene(board), view, overlay, pictureType(10));
  }
  return outputOf("pdftotext -layout '" + folder.file("x.pdf") + "' -");
}

} // namespace

TEST_CASE("a lit net is ink on the side seen, dashed inside the board and hollow on its other side") {
  SmallBoard small;
  Overlay overlay;
  overlay.litNets = {small.key};
  const QImage image = pictureOf(small.board, overlay);
  CHECK(colourAt(image, 30, 20) == PictureColors().lit);
  // Inside it is dashes across its whole width, some of which are there on any way of 10 mm.
  int ink = 0;
  int gaps = 0;
  for (double x = 45; x < 55; x += 0.1) {
    ink += colourAt(image, x, 20.8) == PictureColors().lit;
    gaps += colourAt(image, x, 20.8) == PictureColors().substrate;
  }
  CHECK(ink > 50);
  CHECK(gaps > 15);
  CHECK(colourAt(image, 75, 20) == PictureColors().litCore);
  CHECK(colourAt(image, 75, 20.8) == PictureColors().lit);
}

TEST_CASE("from the top nothing is seen of the other layers, unless one sees through the board") {
  SmallBoard small;
  CHECK(colourAt(pictureOf(small.board, {}), 75, 20) == PictureColors().substrate);
  Overlay through;
  through.seeThrough = true;
  CHECK(colourAt(pictureOf(small.board, through), 75, 20) != PictureColors().substrate);
}

TEST_CASE("seen from the bottom the board is mirrored and shows its bottom copper") {
  SmallBoard small;
  const QImage image = pictureOf(small.board, {}, Side::bottom);
  CHECK(colourAt(image, 100 - 75, 20) == PictureColors().copper);
  CHECK(colourAt(image, 100 - 30, 20) == PictureColors().substrate);
}

TEST_CASE("a hidden layer is left out and a dimmed one is paler") {
  SmallBoard small;
  Overlay hidden;
  hidden.hidden = {small.top};
  CHECK(colourAt(pictureOf(small.board, hidden), 30, 20) == PictureColors().substrate);
  Overlay dimmed;
  dimmed.dimmed = {small.top};
  const QColor pale = colourAt(pictureOf(small.board, dimmed), 30, 20);
  CHECK(pale.lightness() > PictureColors().copper.lightness());
  CHECK(pale.lightness() < PictureColors().substrate.lightness());
}

TEST_CASE("kinds of zones stay apart in black and white, by pattern alone") {
  std::vector<QImage> pictures;
  for (const ZoneKind kind :
       {ZoneKind::connector, ZoneKind::shieldWall, ZoneKind::battery, ZoneKind::fastener, ZoneKind::antenna,
        ZoneKind::flex, ZoneKind::heatSensitive, ZoneKind::tallPart}) {
    SmallBoard small;
    small.zone(kind, "", box(20, 35, 90, 48));
    pictures.push_back(pictureOf(small.board, {})
                           .copy(210, 30, 250, 110) // inside, away from edge and label
                           .convertToFormat(QImage::Format_Grayscale8));
  }
  for (std::size_t a = 0; a < pictures.size(); ++a)
    for (std::size_t b = a + 1; b < pictures.size(); ++b) {
      int differing = 0;
      for (int y = 0; y < pictures[a].height(); ++y)
        for (int x = 0; x < pictures[a].width(); ++x)
          if (std::abs(qGray(pictures[a].pixel(x, y)) - qGray(pictures[b].pixel(x, y))) > 20) ++differing;
      INFO(a << " and " << b);
      CHECK(differing > 250 * 110 / 20);
    }
}

TEST_CASE("zones, marks and lines carry their words") {
  SmallBoard small;
  small.zone(ZoneKind::battery, "BT1", box(20, 35, 60, 48));
  Overlay overlay;
  overlay.lines.push_back({{at(12, 20), at(50, 40), at(90, 20)}, LineStyle::wire, asItIs("wire of 0.10 mm")});
  overlay.marks.push_back({at(50, 20), MarkShape::cross, asItIs("break")});
  const std::string words = wordsOf(small.board, overlay, 7);
  for (const char* word : {"battery BT1", "wire of 0.10 mm", "break", "seen from the top", "J4"}) {
    INFO(word);
    CHECK(words.find(word) != std::string::npos);
  }
}

TEST_CASE("a suspect outside the frame is a tab with its letter, distance and way; inside it is no tab") {
  SmallBoard small;
  // 20 units a mm in a frame of 800 by 800: from 30 to 70 mm across, 5 to 45 mm up.
  const auto words = [&](Point place, MarkShape shape) {
    Overlay overlay;
    overlay.partLabels = overlay.pinLabels = false;
    overlay.marks.push_back({place, shape, asItIs("Q")});
    return wordsOf(small.board, overlay, 20);
  };
  CHECK(words(at(13, 25), MarkShape::suspect).find("17 mm left") != std::string::npos);
  CHECK(words(at(75.5, 25), MarkShape::suspect).find("5.5 mm right") != std::string::npos);
  CHECK(words(at(50, 48), MarkShape::suspect).find("3.0 mm up") != std::string::npos);
  CHECK(words(at(50, 1), MarkShape::probe).find("4.0 mm down") != std::string::npos);
  CHECK(words(at(69.9, 25), MarkShape::suspect).find(" mm right") == std::string::npos);
  CHECK(words(at(69.9, 25), MarkShape::suspect).find("Q") != std::string::npos);
  CHECK(words(at(75.5, 25), MarkShape::cross).find(" mm right") == std::string::npos);
}

TEST_CASE("the due place is named on a plate in the accent, off what lies beside it") {
  SmallBoard small;
  Overlay overlay;
  overlay.marks.push_back({at(70, 40), MarkShape::probe, asItIs("C28.1")});
  CHECK(wordsOf(small.board, overlay, 7).find("C28.1") != std::string::npos);
  const QImage image = pictureOf(small.board, overlay);
  int left = 0;
  int right = 0;
  for (double x = 0.5; x < 100; x += 0.1)
    (x < 67 ? left : right) += x < 67 || x > 73 ? colourAt(image, x, 40) == PictureColors().due : 0;
  CHECK(left + right > 30);
  // With something to its right the plate stands left of it.
  small.part("U1", Side::top, box(72, 36, 90, 44));
  const PartId part = small.board.parts.begin()->id;
  for (int i = 0; i < 8; ++i)
    small.pad(part, std::to_string(50 + i), small.ground, at(74 + 2 * i, 40), PadReach::top);
  const QImage beside = pictureOf(small.board, overlay);
  int onPads = 0;
  for (double x = 75; x < 90; x += 0.1)
    onPads += colourAt(beside, x, 40) == PictureColors().due;
  CHECK(onPads == 0);
}

TEST_CASE("where names are covered by what stands over the picture, there are none") {
  SmallBoard small;
  Overlay overlay;
  CHECK(wordsOf(small.board, overlay, 7).find("J4") != std::string::npos);
  overlay.covered = {QRectF(0, 0, 800, 800)};
  CHECK(wordsOf(small.board, overlay, 7).find("J4") == std::string::npos);
}

TEST_CASE("names are shown only where they are legible") {
  SmallBoard small;
  CHECK(wordsOf(small.board, {}, 7).find("J4") != std::string::npos);
  CHECK(wordsOf(small.board, {}, 0.5).find("J4") == std::string::npos);
}

TEST_CASE("names stay upright however the board is turned") {
  SmallBoard small;
  for (const double degrees : {90.0, 180.0, 33.0}) {
    INFO("turned by " << degrees);
    // A PDF reader puts letters together to words only along their line.
    const std::string words = wordsOf(small.board, {}, 7, Degrees(degrees));
    CHECK(words.find("J4") != std::string::npos);
  }
}

TEST_CASE("what is under a place is found as it is seen: the side seen first, through the board on request") {
  SmallBoard small;
  const BoardScene scene(small.board);
  CHECK(scene.foundAt(at(30, 20), Side::top, false).net == small.key);
  CHECK_FALSE(scene.foundAt(at(30, 20), Side::bottom, false).net);
  CHECK(scene.foundAt(at(30, 20), Side::bottom, true).net == small.key);
  CHECK_FALSE(scene.foundAt(at(30, 21.1), Side::top, true).net); // beside the track
  CHECK(scene.foundAt(at(10, 7), Side::top, false).part == small.board.parts.begin()->id);
}

TEST_CASE("the scale bar is as long as its figure says") {
  SmallBoard small;
  for (const double scale : {3.0, 7.0, 20.0}) {
    needApplication();
    QImage image(1000, 800, QImage::Format_RGB32);
    image.fill(PictureColors().paper);
    {
      QPainter painter(&image);
      BoardView view = viewOf({}, QRectF(0, 0, 1000, 800));
      view.middle = at(1000, 1000); // away from the board: nothing but the bar is black
      view.scale = PictureScale(scale);
      paintBoard(painter, BoardScene(small.board), view, {}, pictureType(14));
    }
    int longest = 0;
    for (int y = 0; y < image.height(); ++y) {
      int run = 0;
      for (int x = 0; x < image.width(); ++x) {
        run = qGray(image.pixel(x, y)) < 100 ? run + 1 : 0;
        longest = std::max(longest, run);
      }
    }
    const double millimetres = longest / scale;
    INFO("scale " << scale << ", bar of " << millimetres << " mm");
    const double power = std::pow(10.0, std::floor(std::log10(millimetres) + 0.01));
    double off = 1e9; // pixels to the nearest round length
    for (const double figure : {1.0, 2.0, 5.0, 10.0})
      off = std::min(off, std::abs(longest - figure * power * scale));
    CHECK(off <= 1.5);
    CHECK(longest <= 225);
  }
}

TEST_CASE("a board of a connector and a pin count alone says what is known of it") {
  Board board;
  Part part;
  part.id = board.newId<PartId>();
  part.reference = "J1";
  part.origin = Origin::user;
  board.parts.put(part);
  CHECK(wordsOf(board, {}, 7).find("No places are known on this board: 1 parts") != std::string::npos);
}

TEST_CASE("the pad under a place is found, the nearer side first") {
  SmallBoard small;
  const BoardScene scene(small.board);
  const Pad* pad = small.board.pads.find(scene.padAt(at(12, 20), Side::top));
  REQUIRE(pad != nullptr);
  CHECK(pad->pin == small.keyPin);
  CHECK(scene.padAt(at(50, 45), Side::top) == PadId());
}

TEST_CASE("a picture is a PNG of the size asked for, and a failure leaves the old file") {
  needApplication();
  const TemporaryFolder folder;
  const SmallBoard small;
  REQUIRE(renderPng(folder.file("x.png"), small.board, {}, {640, 480, Side::top, {}}));
  QImage image(QString::fromStdString(folder.file("x.png")));
  CHECK(image.size() == QSize(640, 480));
  CHECK_FALSE(renderPng(folder.file("x.png"), small.board, {}, {0, 480, Side::top, {}}));
  CHECK(QImage(QString::fromStdString(folder.file("x.png"))).size() == QSize(640, 480));
  const auto nowhere = renderPng(folder.file("none/x.png"), small.board, {});
  REQUIRE_FALSE(nowhere);
  CHECK(nowhere.error().file == folder.file("none/x.png"));
}
