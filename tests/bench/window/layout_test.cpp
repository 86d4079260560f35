#include <catch2/catch.hpp>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSplitter>
#include <QTest>

#include "bench/demo_cli.h"
#include "room.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

void showDemo(BenchRig& rig) {
  rig.window->openBoard(QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  REQUIRE(rig.window->map().settle());
}

/// The first of a class of which Qt knows only the base.
template <class Wanted, class Known> Wanted* childOf(const BenchRig& rig) {
  for (Known* child : rig.window->template findChildren<Known*>())
    if (auto* found = dynamic_cast<Wanted*>(child)) return found;
  return nullptr;
}

} // namespace

TEST_CASE("a wider window gives its room to the station and to the map") {
  BenchRig rig;
  showDemo(rig);
  rig.window->go(Station::find);
  rig.window->resize(1920, 1080);
  BenchRig::wait([] { return false; }, 50);
  const QList<int> sizes = rig.window->findChild<QSplitter*>()->sizes();
  REQUIRE(sizes.size() == 2);
  CHECK(sizes[0] > sizes[1]);
  CHECK(sizes[1] > 500);
}

TEST_CASE("with letters at 200 % every station fits 1280 by 800 pixels") {
  BenchRig rig;
  checkRoom(rig);
}

TEST_CASE("with a board, too, the window is no larger than 1280 by 800 at any station") {
  BenchRig rig;
  showDemo(rig);
  for (const Station station : stations) {
    rig.window->go(station);
    rig.window->resize(1280, 800);
    BenchRig::wait([] { return false; }, 20);
    INFO(stationName(station).toStdString());
    CHECK(rig.window->width() <= 1280);
    CHECK(rig.window->height() <= 800);
  }
}

TEST_CASE("where nothing happens nothing is laid out anew, at any station") {
  struct Counts : QObject {
    int layouts = 0;
    bool eventFilter(QObject*, QEvent* event) override {
      layouts += event->type() == QEvent::LayoutRequest;
      return false;
    }
  } counts;
  BenchRig rig;
  qApp->installEventFilter(&counts);
  for (const Station station : stations) {
    rig.window->go(station);
    // Turns of the event loop, not time.
    CHECK(BenchRig::wait(
        [&] {
          counts.layouts = 0;
          for (int turn = 0; turn < 20; ++turn)
            QApplication::processEvents();
          return counts.layouts == 0;
        },
        5'000));
  }
}

TEST_CASE("without a board there is no map: the station has all of the window") {
  BenchRig rig;
  rig.window->go(Station::board);
  CHECK_FALSE(rig.window->map().isVisible());
  showDemo(rig);
  CHECK(rig.window->map().isVisible());
  // At the board's own station it comes first and has most of the room.
  const QList<int> sizes = rig.window->findChild<QSplitter*>()->sizes();
  CHECK(rig.window->map().mapTo(rig.window.get(), QPoint()).x() < 100);
  CHECK(sizes[0] > 2 * sizes[1]);
  rig.window->go(Station::walk);
  CHECK(rig.window->map().mapTo(rig.window.get(), QPoint()).x() > 500);
}

TEST_CASE("the search stands over the map once it is asked for, and Escape closes it") {
  BenchRig rig;
  showDemo(rig);
  rig.window->go(Station::walk);
  auto* search = childOf<MapSearch, QLineEdit>(rig);
  REQUIRE(search != nullptr);
  CHECK_FALSE(search->isVisible());
  rig.press(Qt::Key_F, Qt::ControlModifier);
  CHECK(search->isVisible());
  CHECK(QApplication::focusWidget() == search);
  rig.press(Qt::Key_Escape);
  CHECK_FALSE(search->isVisible());
  CHECK(QApplication::focusWidget() == &rig.window->map());
}

TEST_CASE("what is under the pointer is said over the map, where there is something") {
  BenchRig rig;
  showDemo(rig);
  rig.window->go(Station::board);
  REQUIRE(rig.window->map().settle());
  CopperMap& map = rig.window->map();
  auto* place = rig.window->findChild<QLabel*>(QStringLiteral("mapPlace"));
  REQUIRE(place != nullptr);
  CHECK_FALSE(place->isVisible());
  const Board& board = *rig.window->desk().job.board()->board;
  const Pad& pad = *board.pads.begin();
  QTest::mouseMove(&map, map.view().toPicture(pad.position.value).toPoint());
  CHECK(place->isVisible());
  CHECK_FALSE(place->text().isEmpty());
  QTest::mouseMove(&map, QPoint(2, map.height() / 2));
  CHECK_FALSE(place->isVisible());
}

TEST_CASE("at the board a part is found by its name, framed on the map, and Enter walks it") {
  BenchRig rig;
  showDemo(rig);
  rig.window->go(Station::board);
  rig.press(Qt::Key_F, Qt::ControlModifier);
  rig.type(QStringLiteral("J5"));
  REQUIRE(BenchRig::wait([&] {
    const auto& lines = rig.window->map().overlay().lines;
    return !lines.empty() && lines.front().style == LineStyle::chosen &&
           wordsOf(lines.front().label).starts_with("J5");
  }));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  CHECK(rig.window->station() == Station::walk);
  CHECK(rig.window->desk().walk.due()->label.starts_with("J5."));
}

TEST_CASE("layers are chips in the map's corner") {
  BenchRig rig;
  showDemo(rig);
  rig.window->go(Station::board);
  auto* layers = childOf<MapLayers, QListWidget>(rig);
  REQUIRE(layers != nullptr);
  CHECK(layers->isVisible());
  CHECK(layers->count() == static_cast<int>(rig.window->desk().job.board()->board->info.layerOrder.size()));
  CHECK(layers->geometry().top() < 20);
  CHECK(layers->geometry().left() < 20);
  // All of them in sight.
  BenchRig::wait(
      [&] { return layers->viewport()->rect().contains(layers->visualItemRect(layers->item(3))); });
  for (int i = 0; i < layers->count(); ++i)
    CHECK(layers->viewport()->rect().contains(layers->visualItemRect(layers->item(i))));
}

TEST_CASE("the key for why shows reasons at every station, also at those that are opened later") {
  BenchRig rig;
  rig.window->go(Station::walk);
  const auto pressed = [&](Station station) {
    rig.window->go(station);
    // Where there is nothing to give reasons for, the button is hidden; it knows all the same.
    const auto all = rig.window->findChildren<QPushButton*>(QStringLiteral("why"));
    REQUIRE_FALSE(all.isEmpty());
    for (const QPushButton* button : all)
      CHECK(button->isChecked() == all.front()->isChecked());
    return all.front()->isChecked();
  };
  CHECK_FALSE(pressed(Station::find));
  QTest::keyClick(QApplication::focusWidget(), whyKey);
  CHECK(pressed(Station::find));
  CHECK(pressed(Station::bridge));
  QTest::keyClick(QApplication::focusWidget(), whyKey);
  CHECK_FALSE(pressed(Station::bridge));
  CHECK_FALSE(pressed(Station::find));
}
