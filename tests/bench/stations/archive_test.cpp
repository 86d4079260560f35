#include <fstream>

#include <QListWidget>

#include "bench/stations/board_page.h"
#include "demo_desk.h"
#include "support/zipped.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

const std::string pinRows = "part,pin,net\nJ1,1,GND\n";

QString written(const DemoDesk& demo, const char* name, const std::string& content) {
  const std::string file = demo.folder.file(name);
  std::ofstream(file, std::ios::binary) << content;
  return QString::fromStdString(file);
}

} // namespace

TEST_CASE("the one board of an archive opens, and the job has it when the archive is gone") {
  DemoDesk demo(DemoDesk::Until::walked);
  demo.job->closeJob();
  ShownPage<BoardPage> shown(demo);
  const QString archive =
      written(demo, "parcel.zip", test::zipped({{"x/pins.csv", pinRows}, {"a.txt", "hello"}}));
  shown.page.open(archive);
  REQUIRE(
      waitFor([&] { return demo.job->board() != nullptr && demo.job->board()->board->pins.size() == 1; }));
  REQUIRE(demo.job->bookIn());
  const JobId id = demo.job->job()->id;
  const std::filesystem::path kept(demo.job->job()->boardFile);
  CHECK(kept.parent_path() == demo.folder.path / "from-archives");
  CHECK(kept.filename().string().starts_with("parcel-"));
  std::filesystem::remove(archive.toStdString());
  demo.open(demo.number);
  REQUIRE(demo.job->openJob(id));
  REQUIRE(
      waitFor([&] { return demo.job->board() != nullptr && demo.job->board()->board->pins.size() == 1; }));
  CHECK(demo.job->board()->digest == demo.job->job()->boardDigest);
  CHECK(demo.failures.isEmpty());
}

TEST_CASE("several boards of an archive are offered, and the chosen one opens") {
  DemoDesk demo(DemoDesk::Until::walked);
  demo.job->closeJob();
  ShownPage<BoardPage> shown(demo);
  auto* offered = shown.find<QListWidget>("offeredBoards");
  CHECK_FALSE(offered->isVisible());
  shown.page.open(written(demo, "two.zip",
                          test::zipped({{"pins.csv", pinRows}, {"more.csv", pinRows + "J1,2,A\nJ1,3,B\n"}})));
  REQUIRE(waitFor([&] { return offered->isVisible(); }));
  REQUIRE(offered->count() == 2);
  CHECK(offered->item(1)->text() == QStringLiteral("more.csv"));
  offered->setCurrentRow(1);
  QTest::keyClick(offered, Qt::Key_Return);
  REQUIRE(waitFor([&] { return demo.job->board()->board->pins.size() == 3; }));
  CHECK_FALSE(offered->isVisible());
  CHECK(demo.failures.isEmpty());
}

TEST_CASE("what is no board leaves the job and its board as they are") {
  DemoDesk demo(DemoDesk::Until::walked);
  ShownPage<BoardPage> shown(demo);
  const auto* board = demo.job->board()->board.get();
  shown.page.open(written(demo, "letter.txt", "Dear customer, thank you\n"));
  REQUIRE(waitFor([&] { return !demo.failures.isEmpty(); }));
  CHECK(demo.failures.first().contains(QStringLiteral("no columns for part and pin")));
  REQUIRE(demo.job->job() != nullptr);
  CHECK(demo.job->board()->board.get() == board);
}
