#include <catch2/catch.hpp>

#include <QFile>
#include <QLabel>
#include <QSettings>

#include "bench/widgets/letters.h"
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
  REQUIRE(BenchRig::wait([&] { return rig.text("duePoint").startsWith(QStringLiteral("J4")); }));
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

TEST_CASE("a job is found open again from the very moment on at which it is in the book") {
  BenchRig rig;
  rig.window->go(Station::walk);
  REQUIRE(rig.window->desk().job.useConnector("J4, 60 pins"));
  const std::filesystem::path store = rig.folder.path().toStdString();
  // The window is gone between the book's commit and anything that it would do next.
  {
    auto book = JobBook::open(store / "jobs.netmend-book", BookUse::change);
    REQUIRE(book);
    REQUIRE(book->addOpenJob(Job{}));
  }
  rig.window.reset();
  rig.open();
  rig.window->restore();
  REQUIRE(rig.window->desk().job.job() != nullptr);
  CHECK(rig.window->desk().job.job()->number.ends_with("-0001"));
  CHECK(rig.window->station() == Station::walk);
  // The bench books in this way: before anybody is told of the job, a second look into the book finds it
  // open.
  LeftOpen left;
  rig.window->desk().job.closeJob();
  const JobBook& book = rig.window->desk().job.book();
  CHECK_FALSE(book.leftOpen().value().job);
  auto other = BenchJob::open(rig.window->desk().job.folders());
  REQUIRE(other);
  QObject::connect(other->get(), &BenchJob::jobOpened, other->get(), [&] { left = book.leftOpen().value(); });
  REQUIRE((*other)->bookIn());
  CHECK(left.job == (*other)->job()->id);
}

TEST_CASE("a job that was closed stays closed, and a board without a job is found again") {
  BenchRig rig;
  REQUIRE(rig.window->desk().job.useConnector("J4, 60 pins"));
  REQUIRE(rig.window->desk().job.bookIn());
  rig.window->desk().job.closeJob();
  const std::filesystem::path file = rig.window->desk().job.board()->file;

  rig.window.reset();
  rig.open();
  rig.window->restore();
  CHECK(rig.window->desk().job.job() == nullptr);
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  CHECK(rig.window->desk().job.board()->file == file);
}

TEST_CASE("settings of a program that was killed with an empty lock in its hand can be changed at once") {
  BenchRig rig;
  rig.window->setScale(150);
  QFile lock(QSettings().fileName() + QStringLiteral(".lock"));
  REQUIRE(lock.open(QIODevice::WriteOnly));
  lock.close();
  rig.window.reset();
  rig.open();
  rig.window->restore();
  CHECK_FALSE(lock.exists());
  rig.window->setScale(100);
  CHECK(QSettings().value(QStringLiteral("window/scale")).toInt() == 100);
}

TEST_CASE("settings that are as they were are not written when a window starts") {
  BenchRig rig;
  const QString file = QSettings().fileName();
  rig.window->restore();
  QSettings().sync();
  CHECK_FALSE(QFile::exists(file));
  rig.window->setWhy(true);
  QSettings().sync();
  CHECK(QFile::exists(file));
  CHECK(QSettings().value(QStringLiteral("window/why")).toBool());
  rig.window->setWhy(false);
  CHECK_FALSE(QSettings().value(QStringLiteral("window/why")).toBool());
}

TEST_CASE("letters are as large as they were before the window was gone") {
  BenchRig rig;
  CHECK(QApplication::font().pixelSize() == 18);
  rig.window->setScale(200);
  rig.window.reset();
  setFaceScale(1.0); // as a new process begins
  rig.open();
  rig.window->restore();
  CHECK(QApplication::font().pixelSize() == 36);
  rig.window->setScale(100);
  CHECK(QApplication::font().pixelSize() == 18);
}

TEST_CASE("sizes follow the window, and the person's own letters with it") {
  BenchRig rig;
  CHECK(QApplication::font().pixelSize() == 18);
  rig.window->resize(1920, 1080);
  CHECK(QApplication::font().pixelSize() == 23); // 22.5
  rig.window->setScale(125);
  CHECK(QApplication::font().pixelSize() == 28); // 18 times 1.25 twice: 28.1
  rig.window->resize(1280, 800);
  CHECK(QApplication::font().pixelSize() == 23);
  rig.window->setScale(100);
  CHECK(QApplication::font().pixelSize() == 18);
}
