#include <catch2/catch.hpp>

#include <QLabel>

#include "bench_rig.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("a window that was never closed comes back to its job, station, part and due point") {
  BenchRig rig;
  rig.window->go(Station::board);
  rig.window->openBoard(QStringLiteral(NETMEND_SOURCE_DIR "/demo/device/tide-logger.netmend-board.json"));
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  REQUIRE(rig.window->desk().job.bookIn());
  const std::string number = rig.window->desk().job.job()->number;
  for (const PartId part : rig.window->desk().walk.partsToWalk())
    if (rig.window->desk().job.board()->board->parts.find(part)->reference == "J4")
      rig.window->desk().walk.setPart(part);
  rig.window->go(Station::walk);
  rig.press(Qt::Key_Return);
  for (const char* value : {"0.001", "0.652", "0.649"}) {
    rig.type(QString::fromLatin1(value));
    rig.press(Qt::Key_Return);
  }
  REQUIRE(rig.text("duePoint").startsWith(QStringLiteral("J4 pin 4")));

  rig.window.reset(); // no close event: nothing is asked to be saved
  rig.open();
  rig.window->restore();
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  BenchRig::wait([&] { return rig.text("duePoint").startsWith(QStringLiteral("J4")); }, 2'000);
  REQUIRE(rig.window->desk().job.job() != nullptr);
  CHECK(rig.window->desk().job.job()->number == number);
  CHECK(rig.window->station() == Station::walk);
  CHECK(rig.window->desk().walk.walk(false).readings.size() == 3);
  CHECK(rig.text("duePoint").startsWith(QStringLiteral("J4 pin 4")));
  // The next reading goes where it belongs without a click.
  rig.type(QStringLiteral("0.655"));
  rig.press(Qt::Key_Return);
  CHECK(rig.window->desk().walk.walk(false).readings.size() == 4);
  CHECK(rig.text("duePoint").startsWith(QStringLiteral("J4 pin 5")));
}

TEST_CASE("letters are as large as they were before the window was gone") {
  BenchRig rig;
  const double usual = QApplication::font().pointSizeF();
  rig.window->setScale(200);
  rig.window.reset();
  // As a new process begins.
  QFont font = QApplication::font();
  font.setPointSizeF(usual);
  QApplication::setFont(font);
  rig.open();
  rig.window->restore();
  CHECK(QApplication::font().pointSizeF() == Approx(2.0 * usual));
  rig.window->setScale(100);
  CHECK(QApplication::font().pointSizeF() == Approx(usual));
}
