// Good boards of which next to nothing is known, and files that are dropped on texts.
#include <catch2/catch.hpp>

#include <QDropEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QUrl>

#include "bench_rig.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("what a good board reads is there again after the window was gone, though it has no parts yet") {
  BenchRig rig;
  std::filesystem::path file;
  {
    const Desk desk = rig.window->desk();
    REQUIRE(desk.drawing.begin());
    REQUIRE(desk.job.board()->board->parts.empty());
    desk.walk.setGood(true);
    REQUIRE(desk.walk.type("TP4 0.452"));
    REQUIRE(desk.walk.walk(true).readings.size() == 1);
    file = desk.job.board()->file;
  }
  rig.window.reset();
  rig.open();
  const Desk desk = rig.window->desk();
  desk.job.openBoardFile(file);
  REQUIRE(BenchRig::wait([&] { return desk.job.board() != nullptr; }));
  REQUIRE(desk.walk.walk(true).readings.size() == 1);
  CHECK(desk.walk.walk(true).readings.front().point.label == "TP4");
  CHECK(desk.walk.walk(true).readings.front().value == 0.452);
}

TEST_CASE("without a board no reading of a good one is taken: nobody would find it again") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  desk.walk.setGood(true);
  const auto taken = desk.walk.type("TP4 0.452");
  REQUIRE_FALSE(taken);
  CHECK(taken.error().text() == "no board is open");
  CHECK(desk.walk.walk(true).readings.empty());
  // One of the job's board is the job's.
  desk.walk.setGood(false);
  CHECK(desk.walk.type("TP4 0.452"));
  CHECK(desk.job.job()->readings.size() == 1);
}

TEST_CASE("a board that is dropped on a field is opened and not written into it, but words are") {
  BenchRig rig;
  rig.window->go(Station::bookIn);
  QMimeData file;
  file.setUrls({QUrl::fromLocalFile(QStringLiteral(NETMEND_SOURCE_DIR "/demo/device/"
                                                                      "tide-logger.netmend-board.json"))});
  file.setText(file.urls().first().toString()); // as file managers do
  const auto drop = [](QWidget& on, const QMimeData& what) {
    const QPoint at = on.rect().center();
    QDragEnterEvent enter(at, Qt::CopyAction, &what, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&on, &enter);
    REQUIRE(enter.isAccepted());
    QDropEvent dropped(at, Qt::CopyAction, &what, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&on, &dropped);
  };
  auto* lines = rig.window->findChild<QPlainTextEdit*>();
  auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  REQUIRE(lines != nullptr);
  REQUIRE(line != nullptr);
  QMimeData words;
  words.setText(QStringLiteral("Tide logger"));
  drop(*line, words);
  CHECK(line->text() == QStringLiteral("Tide logger"));
  drop(*line, file);
  CHECK(line->text() == QStringLiteral("Tide logger"));
  CHECK(rig.window->station() == Station::board);
  CHECK(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  rig.window->go(Station::bookIn);
  drop(*lines->viewport(), file);
  CHECK(lines->toPlainText().isEmpty());
  CHECK(rig.window->station() == Station::board);
}

TEST_CASE("undo takes a good board's reading back once, though another board was looked at meanwhile") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  const auto open = [&](const std::filesystem::path& file) {
    desk.job.openBoardFile(file);
    REQUIRE(BenchRig::wait([&] { return desk.job.board() != nullptr && desk.job.board()->file == file; }));
  };
  REQUIRE(desk.job.useConnector("J1 4"));
  const auto first = desk.job.board()->file;
  desk.walk.setGood(true);
  for (const char* value : {"0.450", "0.460"})
    REQUIRE(desk.walk.type(value));
  const auto values = [&] {
    std::vector<std::optional<double>> out;
    for (const Reading& reading : desk.walk.walk(true).readings)
      out.push_back(reading.value);
    return out;
  };
  open(std::filesystem::path(NETMEND_SOURCE_DIR) / "demo" / "device" / "tide-logger.netmend-board.json");
  CHECK(values().empty());
  open(first);
  REQUIRE(values() == std::vector<std::optional<double>>{0.450, 0.460});
  // The same readings stood on the history a second time: four undos took two readings, and the third
  // crashed.
  REQUIRE(desk.job.undo());
  CHECK(values() == std::vector<std::optional<double>>{0.450});
  REQUIRE(desk.job.undo());
  CHECK(values().empty());
  CHECK_FALSE(desk.job.undo());
  REQUIRE(desk.job.redo());
  CHECK(values() == std::vector<std::optional<double>>{0.450});
}
