#include <catch2/catch.hpp>

#include <QAbstractButton>

#include "bench/window/bench_rig.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// A connector of nine pins, each of its own value.
constexpr std::array<const char*, 9> good{"300", "380", "460", "540", "620", "700", "780", "860", "940"};

void enter(BenchRig& rig, const char* value) {
  rig.type(QString::fromLatin1(value));
  rig.press(Qt::Key_Return);
}

/// Two good walks kept; the job's board is due.
void walkGoodBoards(BenchRig& rig) {
  const Desk desk = rig.window->desk();
  rig.type(QStringLiteral("J1, 9 pins"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  for (int board = 0; board < 2; ++board) {
    rig.press(Qt::Key_G);
    for (const char* value : good)
      enter(rig, value);
    rig.press(Qt::Key_K);
    REQUIRE_FALSE(desk.walk.good());
  }
  REQUIRE(rig.wait([&] { return !desk.job.weighing(); }));
  REQUIRE(desk.job.goodWalks().size() == 2);
}

QStringList pinsRead(const Walk& walk) {
  QStringList out;
  for (const Reading& reading : walk.readings)
    out << QString::fromStdString(reading.point.label).section(QLatin1Char('.'), 1);
  return out;
}

QStringList inBook(const Desk& desk) {
  QStringList out;
  const auto job = desk.job.book().job(desk.job.job()->id);
  REQUIRE(job);
  for (const JobReading& entry : job->readings)
    out << QString::fromStdString(entry.reading.point.label).section(QLatin1Char('.'), 1) +
               (entry.odd() ? QStringLiteral("!") : QString());
  return out;
}

bool buttonSeen(const BenchRig& rig, const QString& text) {
  for (const auto* button : rig.window->findChildren<QAbstractButton*>())
    if (button->text().startsWith(text) && button->isVisible()) return true;
  return false;
}

} // namespace

TEST_CASE("pins without net are passed over, drawn as such, and read by whoever goes there") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.window->openBoard(QStringLiteral(NETMEND_SOURCE_DIR "/demo/device/tide-logger.netmend-board.json"));
  REQUIRE(rig.wait([&] { return desk.job.board() != nullptr; }));
  rig.window->go(Station::walk);
  PartId j5;
  for (const Part& part : desk.job.board()->board->parts)
    if (part.reference == "J5") j5 = part.id;
  desk.walk.setPart(j5);
  QString without;
  for (const PointState& state : desk.walk.points()) {
    if (state.hasNet) continue;
    without += QString::fromStdString(state.point.label) + QLatin1Char(' ');
    CHECK(state.skipped);
  }
  CHECK(without == QStringLiteral("J5.7 J5.8 J5.10 "));
  for (int i = 0; i < 6; ++i)
    enter(rig, "450");
  CHECK(desk.walk.due()->label == "J5.9");
  CHECK_FALSE(stationDone(Station::walk, desk));
  enter(rig, "450");
  CHECK_FALSE(desk.walk.due());
  CHECK(stationDone(Station::walk, desk));
  rig.press(Qt::Key_U);
  CHECK(desk.walk.due()->label == "J5.9");
  CHECK_FALSE(stationDone(Station::walk, desk));
  // Gone to by hand it is read like any other.
  desk.walk.goTo(7);
  CHECK(desk.walk.due()->label == "J5.8");
  CHECK(rig.text("dueNet") == QStringLiteral("no net"));
  enter(rig, "OL");
  CHECK(desk.walk.walk(false).readings.back().point.label == "J5.8");
  CHECK(desk.walk.due()->label == "J5.9");
  // After the window is gone it goes on where it was.
  const JobId job = desk.job.job()->id;
  rig.window.reset();
  rig.open();
  const Desk again = rig.window->desk();
  REQUIRE(again.job.openJob(job));
  REQUIRE(rig.wait([&] { return again.job.board() != nullptr; }));
  CHECK(again.walk.walk(false).readings.size() == 7);
  CHECK(again.walk.due()->label == "J5.9");
}

TEST_CASE("a good walk that is kept makes the job's board due, and undo brings it back") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.type(QStringLiteral("J1, 2 pins"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_G);
  enter(rig, "450");
  enter(rig, "460");
  // The foot names the key where it works.
  CHECK(rig.window->nextText() == QStringLiteral("Good board walked: keep it (K)"));
  rig.window->go(Station::find);
  CHECK(rig.window->nextText() == QStringLiteral("Good board walked: keep it"));
  rig.window->go(Station::walk);
  rig.press(Qt::Key_K);
  CHECK_FALSE(desk.walk.good());
  CHECK(rig.text("whichBoard").startsWith(QStringLiteral("JOB'S BOARD")));
  CHECK(desk.job.goodWalks().size() == 1);
  CHECK(rig.window->nextText() == QStringLiteral("Walk: touch J1.1"));
  rig.press(Qt::Key_U);
  CHECK(desk.walk.good());
  CHECK(desk.job.goodWalks().empty());
  CHECK(desk.walk.walk(true).readings.size() == 2);
  REQUIRE(desk.job.redo());
  CHECK_FALSE(desk.walk.good());
  CHECK(desk.job.goodWalks().size() == 1);
  // The next value is one of the job's board.
  enter(rig, "451");
  REQUIRE(desk.job.job() != nullptr);
  CHECK(desk.job.job()->readings.size() == 1);
}

TEST_CASE("behind the last pin the foot asks for what was left out, and a pin read there ends the walk") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.type(QStringLiteral("J1, 3 pins"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  enter(rig, "450");
  desk.walk.goTo(2);
  enter(rig, "450");
  CHECK(desk.walk.due()->label == "J1.2");
  CHECK(rig.window->nextText() == QStringLiteral("Walk: touch J1.2"));
  enter(rig, "450");
  CHECK_FALSE(desk.walk.due());
  CHECK(rig.window->nextText() ==
        QStringLiteral("Walk a good board, so that there is something to compare with (G)"));
}

TEST_CASE("a pin left out is noticed by the third odd one, and one key moves the readings on") {
  BenchRig rig;
  walkGoodBoards(rig);
  const Desk desk = rig.window->desk();
  for (const std::size_t pin : {0u, 1u, 3u, 4u})
    enter(rig, good.at(pin));
  CHECK_FALSE(desk.walk.shift());
  rig.press(Qt::Key_X); // as yet no command: it is what is typed
  rig.press(Qt::Key_Backspace);
  CHECK_FALSE(buttonSeen(rig, QStringLiteral("Move by one pin")));
  enter(rig, good[5]);
  REQUIRE(desk.walk.shift());
  CHECK(buttonSeen(rig, QStringLiteral("Move by one pin")));
  CHECK(rig.text("explanation")
            .startsWith(QStringLiteral("All from J1.3 on stand one pin beside: was J1.3 left out?")));
  CHECK(inBook(desk) == QStringList{"1", "2", "3!", "4!", "5!"});
  rig.press(Qt::Key_X);
  CHECK(inBook(desk) == QStringList{"1", "2", "4", "5", "6"});
  CHECK(pinsRead(desk.walk.walk(false)) == QStringList{"1", "2", "4", "5", "6"});
  CHECK_FALSE(desk.walk.shift());
  CHECK_FALSE(buttonSeen(rig, QStringLiteral("Move by one pin")));
  // The pin that was left out is due, and after it the one behind those that were read.
  CHECK(desk.walk.due()->label == "J1.3");
  rig.press(Qt::Key_U);
  CHECK(inBook(desk) == QStringList{"1", "2", "3!", "4!", "5!"});
  CHECK(desk.walk.due()->label == "J1.6");
  CHECK(desk.walk.shift());
  REQUIRE(desk.job.redo());
  CHECK(inBook(desk) == QStringList{"1", "2", "4", "5", "6"});
  CHECK(desk.walk.due()->label == "J1.3");
  enter(rig, good[2]);
  CHECK(desk.walk.due()->label == "J1.7");
  CHECK(desk.walk.oddOnes().empty());
}

TEST_CASE("a pin read twice is noticed, and one key moves the readings back") {
  BenchRig rig;
  walkGoodBoards(rig);
  const Desk desk = rig.window->desk();
  for (const std::size_t pin : {0u, 1u, 1u, 2u, 3u})
    enter(rig, good.at(pin));
  REQUIRE(desk.walk.shift());
  CHECK(rig.text("explanation")
            .startsWith(QStringLiteral("All from J1.3 on stand one pin beside: was a pin read twice?")));
  rig.press(Qt::Key_X);
  CHECK(inBook(desk) == QStringList{"1", "2", "2", "3", "4"});
  CHECK(desk.walk.due()->label == "J1.5");
}

TEST_CASE("a shift in a good walk is put right in its file") {
  BenchRig rig;
  walkGoodBoards(rig);
  const Desk desk = rig.window->desk();
  rig.press(Qt::Key_G);
  for (const std::size_t pin : {0u, 1u, 3u, 4u, 5u})
    enter(rig, good.at(pin));
  REQUIRE(desk.walk.shift());
  rig.press(Qt::Key_X);
  CHECK(pinsRead(desk.walk.walk(true)) == QStringList{"1", "2", "4", "5", "6"});
  CHECK(desk.walk.due()->label == "J1.3");
  rig.press(Qt::Key_U);
  CHECK(pinsRead(desk.walk.walk(true)) == QStringList{"1", "2", "3", "4", "5"});
  CHECK(desk.walk.due()->label == "J1.6");
  REQUIRE(desk.job.redo());
  // In the file as well: the window goes and comes back.
  const auto file = desk.job.board()->file;
  rig.window.reset();
  rig.open();
  rig.window->openBoard(QString::fromStdU16String(file.u16string()));
  const Desk again = rig.window->desk();
  REQUIRE(rig.wait([&] { return again.job.board() != nullptr; }));
  CHECK(pinsRead(again.walk.walk(true)) == QStringList{"1", "2", "4", "5", "6"});
}
