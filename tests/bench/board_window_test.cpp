#include "netmend/bench/board_window.h"

#include <catch2/catch.hpp>

#include <QApplication>
#include <QDropEvent>
#include <QMimeData>
#include <QTest>
#include <QUrl>
#include <QWheelEvent>

#include <fstream>

#include "drawing/gui.h"
#include "drawing/small_board.h"
#include "netmend/drawing/palette.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// A window with the small board, shown offscreen.
struct Shown {
  BoardWindow* window;
  SmallBoard small;
  Shown() : window((needApplication<QApplication>(), new BoardWindow)) {
    window->resize(1000, 700);
    window->show(small.board, QStringLiteral("small"));
    window->show();
    window->canvas().setFocus();
    QApplication::processEvents();
    REQUIRE(window->canvas().settle());
  }
  ~Shown() { delete window; }
  [[nodiscard]] CopperMap& canvas() const { return window->canvas(); }
  [[nodiscard]] QPoint pixelOf(Point p) const { return canvas().view().toPicture(p).toPoint(); }
};

void turnWheel(CopperMap& canvas, QPoint where, int notches) {
  QWheelEvent event(where, canvas.mapToGlobal(where), {}, {0, notches * 120}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QApplication::sendEvent(&canvas, &event);
}

} // namespace

TEST_CASE("the board follows the mouse that drags it") {
  const Shown shown;
  const QPoint start = shown.pixelOf(at(50, 40));
  QTest::mousePress(&shown.canvas(), Qt::LeftButton, {}, start);
  QTest::mouseMove(&shown.canvas(), start + QPoint(30, 20));
  QTest::mouseMove(&shown.canvas(), start + QPoint(80, 60));
  QTest::mouseRelease(&shown.canvas(), Qt::LeftButton, {}, start + QPoint(80, 60));
  CHECK((shown.pixelOf(at(50, 40)) - start - QPoint(80, 60)).manhattanLength() <= 1); // of rounding
  CHECK(shown.canvas().overlay().litNets.empty());                                    // a drag is no click
}

TEST_CASE("the wheel zooms at the pointer") {
  const Shown shown;
  const QPoint where = shown.pixelOf(at(12, 20));
  const double before = shown.canvas().view().scale.value;
  turnWheel(shown.canvas(), where, 4);
  CHECK(shown.canvas().view().scale.value == Approx(before * std::pow(1.25, 4)));
  CHECK((shown.pixelOf(at(12, 20)) - where).manhattanLength() <= 2);
}

TEST_CASE("keys move, zoom, fit and turn the board over") {
  const Shown shown;
  CopperMap& canvas = shown.canvas();
  const BoardView fitted = canvas.view();
  QTest::keyClick(&canvas, Qt::Key_Right);
  CHECK(canvas.view().middle.x > fitted.middle.x);
  QTest::keyClick(&canvas, Qt::Key_Up);
  CHECK(canvas.view().middle.y > fitted.middle.y);
  QTest::keyClick(&canvas, Qt::Key_Plus);
  CHECK(canvas.view().scale > fitted.scale);
  QTest::keyClick(&canvas, Qt::Key_T);
  CHECK(canvas.view().side == Side::bottom);
  QTest::keyClick(&canvas, Qt::Key_F);
  CHECK(canvas.view().scale == fitted.scale);
  CHECK(canvas.view().middle == fitted.middle);
  CHECK(canvas.view().side == Side::bottom);
  QTest::keyClick(&canvas, Qt::Key_Minus);
  CHECK(canvas.view().scale < fitted.scale);
}

TEST_CASE("a click on a pad lights its net, and the picture shows it") {
  const Shown shown;
  QTest::mouseClick(&shown.canvas(), Qt::LeftButton, {}, shown.pixelOf(at(12, 20)));
  CHECK(shown.canvas().overlay().litNets == std::vector<NetId>{shown.small.key});
  REQUIRE(shown.canvas().settle());
  const QImage image = shown.canvas().grab().toImage();
  CHECK(image.pixelColor(shown.pixelOf(at(30, 20))) == palette::blue);
  QTest::mouseClick(&shown.canvas(), Qt::LeftButton, {}, shown.pixelOf(at(70, 45)));
  CHECK(shown.canvas().overlay().litNets.empty());
}

TEST_CASE("all of the board stays in sight when the window is resized, until somebody zooms") {
  const Shown shown;
  shown.window->resize(600, 500);
  QApplication::processEvents();
  const double small = shown.canvas().view().scale.value;
  shown.window->resize(1200, 900);
  QApplication::processEvents();
  CHECK(shown.canvas().view().scale.value > small);
  turnWheel(shown.canvas(), {100, 100}, 1);
  const double zoomed = shown.canvas().view().scale.value;
  shown.window->resize(800, 600);
  QApplication::processEvents();
  CHECK(shown.canvas().view().scale.value == zoomed);
}

TEST_CASE("a board file is opened or dropped; one that is none leaves the board shown and says why") {
  const Shown shown;
  const TemporaryFolder folder;
  std::ofstream(folder.file("keys.csv"))
      << "part,pin,net,x_mm,y_mm,side\nJ1,1,GND,1.0,2.0,top\nJ1,2,KEY,3.5,2.0,top\n";
  REQUIRE(shown.window->open(folder.file("keys.csv")));
  CHECK(shown.canvas().board()->pins.size() == 2);
  CHECK(shown.window->message().contains(QStringLiteral("keys.csv: 1 parts, 2 pads, 2 nets")));

  CHECK_FALSE(shown.window->open(folder.file("none.csv")));
  CHECK(shown.window->message().contains(QStringLiteral("none.csv")));
  CHECK(shown.canvas().board()->pins.size() == 2);

  std::ofstream(folder.file("more.csv")) << "part,pin,net\nJ7,1,A\nJ7,2,B\nJ7,3,C\n";
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(QString::fromStdString(folder.file("more.csv")))});
  QDragEnterEvent enter({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(shown.window, &enter);
  CHECK(enter.isAccepted());
  QDropEvent drop({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(shown.window, &drop);
  CHECK(shown.canvas().board()->pins.size() == 3);
}
