#include <catch2/catch.hpp>

#include <QImage>
#include <QInputDialog>
#include <QSettings>

#include "bench/window/bench_rig.h"
#include "bench/window/still_camera.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

QString picture(const BenchRig& rig, const char* name) {
  QImage image(40, 30, QImage::Format_RGB32);
  image.fill(Qt::darkGreen);
  const QString file = rig.folder.filePath(QString::fromLatin1(name));
  REQUIRE(image.save(file));
  return file;
}

void takeFrom(const QString& address) {
  QSettings().setValue(QStringLiteral("camera/address"), address);
}

RepairAction resoldering(bool done) {
  RepairAction action;
  action.kind = RepairKind::resolder;
  action.target = "J4.9";
  WorkStep step;
  step.text = "Flow the joint anew";
  step.done = done;
  action.steps.push_back(step);
  return action;
}

} // namespace

TEST_CASE("one key takes a picture into the job, from every station, and undo takes it out") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.bookIn());
  takeFrom(QStringLiteral("file:") + picture(rig, "still.png"));
  std::size_t taken = 0;
  for (const Station station : stations) {
    rig.window->go(station);
    rig.press(Qt::Key_F8);
    ++taken;
    REQUIRE(rig.wait([&] { return desk.job.job()->photos.size() == taken; }));
    CHECK(rig.window->message() == QStringLiteral("Picture taken: Before: microscope"));
    const Photo& photo = desk.job.job()->photos.back();
    CHECK(photo.caption == "Before: microscope");
    CHECK(photo.mediaType == "image/png");
    CHECK(QImage::fromData(QByteArray::fromStdString(photo.bytes.text())).size() == QSize(40, 30));
  }
  CHECK(desk.job.book().job(desk.job.job()->id)->photos.size() == stations.size());
  REQUIRE(desk.job.undo());
  REQUIRE(rig.wait([&] { return desk.job.job()->photos.size() == stations.size() - 1; }));
}

TEST_CASE("a picture is one of afterwards once a step of a repair is done") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.bookIn());
  takeFrom(QStringLiteral("file:") + picture(rig, "still.jpg"));
  REQUIRE(desk.job.addAction(resoldering(false)));
  rig.press(Qt::Key_F8);
  REQUIRE(rig.wait([&] { return desk.job.job()->photos.size() == 1; }));
  CHECK(desk.job.job()->photos.back().caption == "Before: microscope");
  CHECK(desk.job.job()->photos.back().mediaType == "image/jpeg");
  RepairAction action = desk.job.job()->actions.front();
  action.steps.front().done = true;
  REQUIRE(desk.job.updateAction(QStringLiteral("step"), action));
  rig.press(Qt::Key_F8);
  REQUIRE(rig.wait([&] { return desk.job.job()->photos.size() == 2; }));
  CHECK(desk.job.job()->photos.back().caption == "After: microscope");
}

TEST_CASE("where nobody has said from where, the key asks; addresses that mean nothing are refused") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.press(Qt::Key_F8);
  CHECK(rig.window->message().contains(QStringLiteral("needs a job")));
  REQUIRE(desk.job.bookIn());
  rig.press(Qt::Key_F8);
  auto* prompt = rig.window->findChild<QInputDialog*>(QStringLiteral("cameraAddress"));
  REQUIRE(prompt != nullptr);
  CHECK_FALSE(prompt->isModal());
  prompt->setTextValue(QStringLiteral("file:"));
  prompt->accept();
  CHECK(rig.window->message().contains(QStringLiteral("not a camera's address")));
  CHECK(StillCamera::address().isEmpty());
  StillCamera camera(desk.job);
  for (const char* wrong : {"still.png", "http://still.png", "file:"})
    CHECK_FALSE(camera.setAddress(QString::fromLatin1(wrong)));
  for (const char* right : {"camera:", "camera:Scope", "file:/still.png", ""}) {
    CHECK(camera.setAddress(QString::fromLatin1(right)));
    CHECK(StillCamera::address() == QString::fromLatin1(right));
  }
}

TEST_CASE("a file that is no picture, or not there, and a camera that is not there are told") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.bookIn());
  const auto told = [&](const QString& address, const QString& text) {
    takeFrom(address);
    rig.press(Qt::Key_F8);
    CHECK(rig.wait([&] { return rig.window->message().contains(text); }));
  };
  told(QStringLiteral("file:/nowhere/still.png"), QStringLiteral("/nowhere/still.png"));
  told(QStringLiteral("file:" NETMEND_SOURCE_DIR "/README.md"), QStringLiteral("README.md"));
  told(QStringLiteral("camera:one that nobody has"), QStringLiteral("no such camera"));
  CHECK(desk.job.job()->photos.empty());
}

TEST_CASE("a new job is booked in by one key from every station") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  JobId last;
  for (const Station station : stations) {
    rig.window->go(station);
    rig.press(Qt::Key_N, Qt::ControlModifier);
    REQUIRE(desk.job.job() != nullptr);
    CHECK(desk.job.job()->id != last);
    last = desk.job.job()->id;
    CHECK(rig.window->station() == Station::bookIn);
  }
}

/// At the others fields of their own have the keyboard.
TEST_CASE("without a board its connector can be typed where readings would be, and where nothing is typed") {
  for (const Station station : {Station::board, Station::walk, Station::find, Station::bridge}) {
    BenchRig rig;
    const Desk desk = rig.window->desk();
    rig.window->go(station);
    INFO("at " << stationName(station).toStdString());
    CHECK(rig.window->nextText().startsWith(QStringLiteral("Drop a board file, or type its connector")));
    rig.type(QStringLiteral("J1, 4 pins"));
    rig.press(Qt::Key_Return);
    CHECK(desk.job.board() != nullptr);
    CHECK(rig.window->station() == Station::walk);
  }
}
