#include <catch2/catch.hpp>

#include <QListWidget>
#include <QSettings>

#include <fstream>

#include "bench/demo_cli.h"
#include "hands.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// A job with two readings on a connector of the demo's board.
struct JobUnderWay {
  BenchRig rig;
  std::string number;

  JobUnderWay() {
    open(QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
    rig.window->go(Station::walk);
    for (const char* value : {"450", "460"}) {
      rig.type(QString::fromLatin1(value));
      rig.press(Qt::Key_Return);
    }
    REQUIRE(job().job()->readings.size() == 2);
    number = job().job()->number;
  }
  [[nodiscard]] BenchJob& job() const { return rig.window->desk().job; }
  void open(const QString& file) {
    rig.window->go(Station::board);
    rig.window->openBoard(file);
    settle();
  }
  void settle() const {
    REQUIRE(BenchRig::wait([this] { return !job().openingBoard(); }));
    QApplication::processEvents();
  }
  [[nodiscard]] std::string boardName() const {
    return job().board() == nullptr ? "" : job().board()->file.filename().string();
  }
  QString table(const char* name, const char* text) const {
    const QString file = rig.folder.filePath(QString::fromLatin1(name));
    std::ofstream(file.toStdString()) << text;
    return file;
  }
};

constexpr const char* smallTable = "part,pin,net\nJ4,1,GND\nJ4,2,KEY\nR1,1,KEY\nR1,2,GND\n";

QStringList recentBoards() {
  return QSettings().value(QStringLiteral("recentBoards")).toStringList();
}

} // namespace

TEST_CASE("another board in the middle of a job is asked about, and nothing changes by staying") {
  JobUnderWay bench;
  bench.open(bench.table("other.csv", smallTable));
  CHECK(bench.rig.text("otherBoard") ==
        QString::fromStdString("other.csv is another board. Job " + bench.number +
                               " has readings of the one that is open."));
  CHECK(bench.boardName() == "tide-logger.netmend-board.json");
  bench.rig.press(Qt::Key_X);
  CHECK(bench.rig.text("otherBoard").isEmpty());
  REQUIRE(bench.job().job() != nullptr);
  CHECK(bench.job().job()->number == bench.number);
  CHECK(bench.job().job()->readings.size() == 2);
  CHECK(bench.boardName() == "tide-logger.netmend-board.json");
  CHECK(recentBoards().size() == 1);
}

TEST_CASE("another board that is taken closes the job, and undo opens it again with its board") {
  JobUnderWay bench;
  bench.open(bench.table("other.csv", smallTable));
  bench.rig.press(Qt::Key_A);
  bench.settle();
  CHECK(bench.boardName() == "other.csv");
  CHECK(bench.job().job() == nullptr);
  CHECK(recentBoards().front().endsWith(QStringLiteral("other.csv")));
  REQUIRE(bench.job().undo());
  REQUIRE(BenchRig::wait([&] { return bench.job().job() != nullptr; }));
  bench.settle();
  CHECK(bench.job().job()->number == bench.number);
  CHECK(bench.job().job()->readings.size() == 2);
  CHECK(bench.boardName() == "tide-logger.netmend-board.json");
}

TEST_CASE("a board that takes the place of another before the first reading is taken back by undo") {
  BenchRig rig;
  BenchJob& job = rig.window->desk().job;
  const auto named = [&](const char* name) {
    return BenchRig::wait([&] { return job.board() != nullptr && job.board()->file.filename() == name; });
  };
  REQUIRE(job.bookIn());
  rig.window->openBoard(QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
  REQUIRE(named("tide-logger.netmend-board.json"));
  std::ofstream(rig.folder.filePath(QStringLiteral("b.csv")).toStdString()) << smallTable;
  rig.window->openBoard(rig.folder.filePath(QStringLiteral("b.csv")));
  REQUIRE(named("b.csv"));
  REQUIRE(job.undo());
  REQUIRE(named("tide-logger.netmend-board.json"));
  CHECK(job.job()->boardFile.ends_with("tide-logger.netmend-board.json"));
  REQUIRE(job.redo());
  REQUIRE(named("b.csv"));
  CHECK(job.job()->boardFile.ends_with("b.csv"));
  REQUIRE(job.undo());
  REQUIRE(named("tide-logger.netmend-board.json"));
  REQUIRE(job.undo());
  CHECK(job.board() == nullptr);
  CHECK(job.job()->boardFile.empty());
}

TEST_CASE("a file that was refused is not among the recent boards") {
  BenchRig rig;
  rig.window->go(Station::board);
  std::ofstream(rig.folder.filePath(QStringLiteral("x.kicad_pcb")).toStdString()) << "(kicad_pcb (version";
  rig.window->openBoard(rig.folder.filePath(QStringLiteral("x.kicad_pcb")));
  REQUIRE(BenchRig::wait([&] { return rig.window->message().contains(QStringLiteral("x.kicad_pcb")); }));
  CHECK(recentBoards().isEmpty());
  CHECK(rig.window->desk().job.board() == nullptr);
}

TEST_CASE("a second connector that is typed joins the board, and undo takes it out again") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  const auto typed = [&](const char* text) {
    rig.window->go(Station::board);
    auto& field = Hands(rig, Hands::By::keyboard).visible<QLineEdit>("Connector in one line");
    field.setFocus();
    rig.type(QString::fromLatin1(text));
    rig.press(Qt::Key_Return);
  };
  typed("J4, 4 pins");
  rig.type(QStringLiteral("450"));
  rig.press(Qt::Key_Return);
  const std::string uuid = desk.job.board()->board->info.uuid;
  const std::string number = desk.job.job()->number;
  typed("J7, 6 pins, two rows");
  REQUIRE(desk.job.board()->board->parts.size() == 2);
  CHECK(desk.job.board()->board->pins.size() == 10);
  CHECK(desk.job.board()->board->info.uuid == uuid);
  CHECK(desk.job.job()->number == number);
  CHECK(desk.job.job()->boardDigest == desk.job.board()->digest);
  CHECK(rig.window->station() == Station::walk);
  CHECK(desk.walk.due()->label == "J7.A1");
  CHECK(desk.job.job()->readings.front().reading.point.label == "J4.1");
  rig.window->go(Station::board);
  typed("J7, 6 pins");
  CHECK(rig.window->message().contains(QStringLiteral("is on this board already")));
  CHECK(desk.job.board()->board->parts.size() == 2);
  REQUIRE(desk.job.undo());
  CHECK(desk.job.board()->board->parts.size() == 1);
  CHECK(desk.job.job()->boardDigest == desk.job.board()->digest);
  CHECK(desk.job.job()->readings.size() == 1);
  REQUIRE(desk.job.redo());
  CHECK(desk.job.board()->board->parts.size() == 2);
}

TEST_CASE("arriving at Walk, a first value is a reading") {
  BenchRig rig;
  rig.type(QStringLiteral("J4, 4 pins"));
  rig.press(Qt::Key_Return);
  REQUIRE(rig.window->station() == Station::walk);
  rig.type(QStringLiteral("452"));
  rig.press(Qt::Key_Return);
  const auto& readings = rig.window->desk().job.job()->readings;
  REQUIRE(readings.size() == 1);
  CHECK(readings.front().reading.value == 0.452);
  CHECK(readings.front().reading.condition.plugged.empty());
}

TEST_CASE("OL typed out is OL, with Enter and without") {
  BenchRig rig;
  rig.type(QStringLiteral("J4, 6 pins"));
  rig.press(Qt::Key_Return);
  const Walk& walk = rig.window->desk().walk.walk(false);
  for (const char* typed : {"OL", "ol", "o"}) {
    rig.type(QString::fromLatin1(typed));
    if (typed[1] == 'L') rig.press(Qt::Key_Return);
  }
  REQUIRE(walk.readings.size() == 3);
  for (const Reading& reading : walk.readings)
    CHECK_FALSE(reading.value);
  rig.type(QStringLiteral("0l"));
  rig.press(Qt::Key_Return);
  REQUIRE(walk.readings.size() == 4);
  CHECK_FALSE(walk.readings.back().value);
  rig.type(QStringLiteral("452"));
  rig.press(Qt::Key_Return);
  REQUIRE(walk.readings.size() == 5);
  CHECK(walk.readings.back().value == 0.452);
}
