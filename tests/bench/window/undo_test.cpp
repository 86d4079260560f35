#include <catch2/catch.hpp>

#include <QComboBox>
#include <QLineEdit>

#include "hands.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// At the walk of a connector that was typed in one line.
void walk(BenchRig& rig, const char* connector) {
  rig.type(QString::fromLatin1(connector));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
}

void enter(BenchRig& rig, const char* value) {
  rig.type(QString::fromLatin1(value));
  rig.press(Qt::Key_Return);
}

} // namespace

TEST_CASE("undo of the job's state leaves what was typed since") {
  BenchRig rig;
  BenchJob& job = rig.window->desk().job;
  REQUIRE(job.bookIn());
  REQUIRE(job.setState(JobState::proving));
  REQUIRE(job.keep([](Job& kept) { kept.symptom = "Third column dead"; }));
  job.undoStack().undo();
  CHECK(job.job()->state == JobState::bookedIn);
  CHECK(job.job()->symptom == "Third column dead");
  job.undoStack().redo();
  CHECK(job.job()->state == JobState::proving);
  CHECK(job.book().job(job.job()->id)->symptom == "Third column dead");
}

TEST_CASE("with nothing typed, the undo key takes the last reading back") {
  BenchRig rig;
  walk(rig, "J1 4");
  enter(rig, "450");
  enter(rig, "460");
  const Walk& walked = rig.window->desk().walk.walk(false);
  REQUIRE(walked.readings.size() == 2);
  rig.press(Qt::Key_Z, Qt::ControlModifier);
  CHECK(walked.readings.size() == 1);
  // In what is being typed it takes letters back.
  rig.type(QStringLiteral("47"));
  rig.press(Qt::Key_Z, Qt::ControlModifier);
  CHECK(walked.readings.size() == 1);
}

TEST_CASE("a good walk kept by mistake is taken out of the book by undo") {
  BenchRig rig;
  walk(rig, "J1 2");
  rig.press(Qt::Key_G);
  enter(rig, "450");
  enter(rig, "460");
  const Desk desk = rig.window->desk();
  rig.press(Qt::Key_K);
  REQUIRE(desk.job.goodWalks().size() == 1);
  REQUIRE(desk.walk.walk(true).readings.empty());
  rig.press(Qt::Key_U);
  CHECK(desk.job.goodWalks().empty());
  CHECK(desk.job.book().knownGoodWalks(desk.job.board()->board->info.uuid)->empty());
  CHECK(desk.walk.walk(true).readings.size() == 2);
  // It goes on where it was, also after the window was gone.
  const auto file = desk.job.board()->file;
  rig.window.reset();
  rig.open();
  rig.window->desk().job.openBoardFile(file);
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  CHECK(rig.window->desk().walk.walk(true).readings.size() == 2);
}

TEST_CASE("a good walk that was kept stays when the next one has begun") {
  BenchRig rig;
  walk(rig, "J1 2");
  rig.press(Qt::Key_G);
  enter(rig, "450");
  enter(rig, "460");
  const Desk desk = rig.window->desk();
  rig.press(Qt::Key_K);
  rig.press(Qt::Key_Return);
  enter(rig, "451");
  rig.press(Qt::Key_U);
  rig.press(Qt::Key_U);
  CHECK(desk.job.goodWalks().size() == 1);
}

TEST_CASE("what is typed first, without a job, stays as it was typed") {
  BenchRig rig;
  rig.window->go(Station::bookIn);
  auto* device = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  REQUIRE(device != nullptr);
  rig.type(QStringLiteral("ogger"));
  rig.press(Qt::Key_Home);
  rig.type(QStringLiteral("L"));
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.job() != nullptr; }));
  CHECK(device->cursorPosition() == 1);
  rig.type(QStringLiteral("og l"));
  CHECK(device->text() == QStringLiteral("Log logger"));
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.job()->device == "Log logger"; }));
}

TEST_CASE("who measures, and with what, is asked once and stands at every reading") {
  BenchRig rig;
  rig.type(QStringLiteral("J1 4"));
  rig.press(Qt::Key_Return);
  const Hands hands(rig, Hands::By::keyboard);
  auto& meter = hands.visible<QComboBox>("meter");
  meter.setCurrentIndex(meter.findData(QStringLiteral("handheld-4000")));
  Hands(rig, Hands::By::keyboard).fill("measuredBy", QStringLiteral("KB"));
  rig.press(Qt::Key_Return);
  enter(rig, "450");
  const auto readings = rig.window->desk().job.job()->readings;
  REQUIRE(readings.size() == 1);
  CHECK(readings.front().reading.meter == "handheld-4000");
  CHECK(readings.front().reading.by == "KB");

  rig.window.reset();
  rig.open();
  rig.type(QStringLiteral("J2 4"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  enter(rig, "450");
  CHECK(rig.window->desk().job.job()->readings.front().reading.meter == "handheld-4000");
  CHECK(rig.window->desk().job.job()->readings.front().reading.by == "KB");
}
