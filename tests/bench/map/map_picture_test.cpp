#include <catch2/catch.hpp>

#include <cstdio>
#include <ctime>
#include <random>

#include <QImage>

#include "netmend/drawing/board_scene.h"
#include "shown_map.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// What the map must show once nothing is left to do: the board painted straight onto one image.
QImage paintedDirectly(CopperMap& map) {
  QImage image(map.size() * map.devicePixelRatioF(), QImage::Format_RGB32);
  image.setDevicePixelRatio(map.devicePixelRatioF());
  const PictureColors colors = pictureColors(map.theme());
  image.fill(colors.paper);
  QPainter painter(&image);
  const PictureType type = pictureType(std::max(12.0, map.fontInfo().pixelSize() * 0.8));
  paintBoard(painter, BoardScene(*map.board()), map.view(), map.overlay(), type, colors);
  if (!map.inset().isEmpty())
    paintInset(painter, BoardScene(*map.board()), map.view(), map.overlay(), map.inset(), colors);
  return image;
}

/// The share of pixels in which a channel differs by more than antialiasing may.
double difference(const QImage& a, const QImage& b) {
  REQUIRE(a.size() == b.size());
  int differing = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x) {
      const QRgb p = a.pixel(x, y);
      const QRgb q = b.pixel(x, y);
      const int most = std::max(
          {std::abs(qRed(p) - qRed(q)), std::abs(qGreen(p) - qGreen(q)), std::abs(qBlue(p) - qBlue(q))});
      if (most > 24) ++differing;
    }
  return static_cast<double>(differing) / (static_cast<double>(a.width()) * a.height());
}

double settledDifference(ShownMap& shown) {
  shown.map->clearFocus(); // the frame of the focus is no part of the board's picture
  REQUIRE(shown.map->settle());
  return difference(shown.map->grab().toImage(), paintedDirectly(*shown.map));
}

/// Milliseconds of processor time of this thread: what other programs do to it left out.
double threadTime() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) * 1e-6;
}

/// A board with so many tracks and a pad for every fourth.
Board manyTracks(int count) {
  SmallBoard small;
  for (int i = 0; i < count; ++i) {
    const double x = 1 + (i % 300) * 0.3;
    const double y = 1 + static_cast<double>(i / 300) * 0.4;
    small.track(at(x, y), at(x + 1.5, y + 0.2 * (i % 3)), i % 2 == 0 ? small.top : small.bottom,
                i % 7 == 0 ? small.key : small.ground);
    if (i % 4 == 0) small.pad({}, "P" + std::to_string(i), small.key, at(x, y), PadReach::top);
  }
  return small.board;
}

} // namespace

TEST_CASE("the settled map is the directly painted picture, at every zoom, side and angle") {
  ShownMap shown;
  Overlay overlay;
  overlay.litNets = {shown.small.key};
  overlay.marks.push_back({at(50, 20), MarkShape::cross, asItIs("break")});
  overlay.lines.push_back({{at(20, 40), at(45, 44)}, LineStyle::wire, asItIs("wire")});
  shown.map->setOverlay(overlay);
  for (const Side side : {Side::top, Side::bottom})
    for (const double turn : {0.0, 90.0, 180.0, 270.0, 33.0})
      for (const double steps : {0.0, 4.0, 11.0}) {
        INFO("side " << static_cast<int>(side) << ", turned by " << turn << ", zoomed by " << steps);
        shown.map->setSide(side);
        shown.map->setTurn(Degrees(turn));
        shown.map->fit();
        BoardView view = shown.map->view();
        view.zoom(steps, {300.5, 251.25});
        shown.map->setView(view);
        CHECK(settledDifference(shown) < 0.0005);
      }
}

TEST_CASE("themes, layers and seeing through change the picture as direct painting does") {
  ShownMap shown;
  for (const PictureTheme theme : {PictureTheme::light, PictureTheme::dark, PictureTheme::highContrast})
    for (const bool through : {false, true})
      for (const LayerShow show : {LayerShow::whole, LayerShow::dimmed, LayerShow::hidden}) {
        shown.map->setTheme(theme);
        shown.map->seeThrough(through);
        shown.map->setLayerShow(shown.small.top, show);
        INFO("theme " << static_cast<int>(theme) << ", through " << through << ", layer "
                      << static_cast<int>(show));
        CHECK(settledDifference(shown) < 0.0005);
      }
}

TEST_CASE("after 200 random drags and zooms the settled picture is still exact") {
  const auto seed = testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_int_distribution<int> way(-180, 180);
  std::uniform_real_distribution<double> steps(-1.5, 1.5);
  ShownMap shown;
  for (int i = 0; i < 200; ++i) {
    BoardView view = shown.map->view();
    if (i % 3 == 0)
      view.zoom(steps(random), {450.0 + way(random), 300.0 + way(random)});
    else
      view.pan({static_cast<double>(way(random)), static_cast<double>(way(random))});
    if (view.scale.value > 400 || view.scale.value < 2) view = viewOf({at(0, 0), at(100, 50)}, view.frame);
    shown.map->setView(view);
    shown.map->repaint();
    if (i % 25 == 24) CHECK(settledDifference(shown) < 0.0005);
  }
}

TEST_CASE("while tiles are missing the board is seen all the same, at its place") {
  ShownMap shown;
  REQUIRE(shown.map->settle());
  BoardView view = shown.map->view();
  view.zoom(1, view.frame.center());
  shown.map->setView(view);
  // The first frame after the zoom, before the painting thread can have done anything about it.
  const QImage frame = shown.map->grab().toImage();
  const QPoint track = shown.pixelOf(at(30, 20));
  const PictureColors colors;
  CHECK(frame.pixelColor(track) == colors.copper);
  CHECK(frame.pixelColor(shown.pixelOf(at(30, 24))) == colors.substrate);
}

TEST_CASE("an edited board replaces the one shown without moving the view") {
  ShownMap shown;
  BoardView view = shown.map->view();
  view.zoom(3, {200, 200});
  shown.map->setView(view);
  shown.map->light({shown.small.key});
  shown.small.track(at(20, 5), at(50, 5), shown.small.top, shown.small.key);
  shown.map->setBoard(shown.small.board, CopperMap::Keep::view);
  CHECK(settledDifference(shown) < 0.0005);
  CHECK(shown.map->view() == view);
  CHECK(shown.map->overlay().litNets == std::vector<NetId>{shown.small.key});
}

TEST_CASE("a board that is shown already is not worked out again, whoever sets it anew") {
  ShownMap shown;
  const auto board = std::make_shared<const Board>(shown.small.board);
  shown.map->setBoard(board, CopperMap::Keep::view);
  CHECK_FALSE(shown.map->settled()); // the same to look at, but it may be any other
  REQUIRE(shown.map->settle());
  shown.map->light({shown.small.key});
  REQUIRE(shown.map->settle());
  shown.map->setBoard(board, CopperMap::Keep::view);
  CHECK(shown.map->settled());
  // Begun anew, it is shown as it was at first.
  shown.map->setBoard(board);
  CHECK_FALSE(shown.map->settled());
  REQUIRE(shown.map->settle());
  CHECK(shown.map->overlay().litNets.empty());
}

TEST_CASE("of several boards set in a row the last is shown") {
  ShownMap shown;
  for (int i = 0; i < 20; ++i) {
    shown.small.track(at(20, 5), at(50, 5 + i * 0.5), shown.small.top, shown.small.key);
    shown.map->setBoard(shown.small.board);
  }
  CHECK(settledDifference(shown) < 0.0005);
  shown.map->setBoard(std::shared_ptr<const Board>());
  CHECK(shown.map->settle());
  CHECK_FALSE(shown.map->hasBoard());
}

TEST_CASE("a board without places says what is known of it") {
  needApplication<QApplication>();
  Board board;
  Part part;
  part.id = board.newId<PartId>();
  part.reference = "J1";
  part.origin = Origin::user;
  board.parts.put(part);
  CopperMap map;
  map.resize(500, 400);
  map.QWidget::show();
  map.setBoard(board);
  REQUIRE(map.settle());
  map.clearFocus();
  CHECK(difference(map.grab().toImage(), paintedDirectly(map)) < 0.0005);
}

TEST_CASE("no handler keeps the event loop for more than 200 ms, with a large board set twice") {
  ShownMap shown(QSize(1280, 800));
  const auto board = std::make_shared<const Board>(manyTracks(30'000));
  double longest = 0;
  const auto timed = [&](auto&& work) {
    const double before = threadTime();
    work();
    longest = std::max(longest, threadTime() - before);
  };
  bool ready = false;
  shown.map->onBoardReady = [&] { ready = true; };
  for (int round = 0; round < 2; ++round) {
    ready = false;
    timed([&] { shown.map->setBoard(board); });
    while (!ready)
      timed([] { QCoreApplication::processEvents(); });
    for (int i = 0; i < 20; ++i) {
      timed([&] {
        BoardView view = shown.map->view();
        view.zoom(i < 10 ? 1 : -1, {400, 300});
        shown.map->setView(view);
      });
      timed([] { QCoreApplication::processEvents(); });
      timed([&] { shown.map->repaint(); });
    }
  }
  std::printf("longest handler of the map: %.1f ms\n", longest);
  CHECK(longest < 200.0); // a shared processor counts some of others' time as ours
}
