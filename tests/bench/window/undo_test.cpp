#include <catch2/catch.hpp>

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTextBrowser>

#include "hands.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// A job whose only pin was found open, with its joint resoldered.
void resolder(const Desk& desk) {
  if (desk.job.job() == nullptr) REQUIRE(desk.job.bookIn());
  JobReading odd;
  odd.reading.point = desk.walk.points().front().point;
  odd.judged = Judged{};
  odd.judged->verdict.kind = VerdictKind::open;
  REQUIRE(desk.job.addReading(odd));
  RepairAction action;
  action.kind = RepairKind::resolder;
  action.target = "J1.1";
  REQUIRE(desk.job.addAction(action));
}

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

void walkAndKeepGood(BenchRig& rig) {
  walk(rig, "J1 2");
  rig.press(Qt::Key_G);
  enter(rig, "450");
  enter(rig, "460");
  rig.press(Qt::Key_K);
}

} // namespace

TEST_CASE("undo of the job's state leaves what was typed since") {
  BenchRig rig;
  BenchJob& job = rig.window->desk().job;
  REQUIRE(job.bookIn());
  REQUIRE(job.setState(JobState::proving));
  REQUIRE(job.keep([](Job& kept) { kept.symptom = "Third column dead"; }));
  REQUIRE(job.undo());
  CHECK(job.job()->state == JobState::bookedIn);
  CHECK(job.job()->symptom == "Third column dead");
  REQUIRE(job.redo());
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
  walkAndKeepGood(rig);
  const Desk desk = rig.window->desk();
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

TEST_CASE("undo goes back through good walk, keeping and job's walk in one history, and redo forward again") {
  BenchRig rig;
  walkAndKeepGood(rig);
  const Desk desk = rig.window->desk();
  const Walk& good = desk.walk.walk(true);
  const Walk& bad = desk.walk.walk(false);
  rig.press(Qt::Key_G);
  enter(rig, "451"); // the next good board
  rig.press(Qt::Key_G);
  enter(rig, "300");
  rig.press(Qt::Key_S);
  REQUIRE(desk.walk.due() == std::nullopt);

  rig.press(Qt::Key_U);
  CHECK(desk.walk.due()->label == "J1.2"); // no longer skipped
  rig.press(Qt::Key_U);
  CHECK(bad.readings.empty());
  CHECK(rig.window->message().contains(QStringLiteral("reading at J1.1")));
  rig.press(Qt::Key_U);
  CHECK(desk.walk.good()); // what was taken back is shown
  CHECK(good.readings.empty());
  REQUIRE(desk.job.goodWalks().size() == 1);
  rig.press(Qt::Key_U);
  CHECK(desk.job.goodWalks().empty());
  CHECK(good.readings.size() == 2);
  rig.press(Qt::Key_U);
  REQUIRE(good.readings.size() == 1);
  CHECK(desk.walk.due()->label == "J1.2");

  for (int i = 0; i < 5; ++i)
    rig.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  REQUIRE(desk.job.goodWalks().size() == 1);
  CHECK(desk.job.goodWalks().front().readings.size() == 2);
  CHECK(good.readings.size() == 1);
  REQUIRE(bad.readings.size() == 1);
  CHECK(bad.readings.front().value == 0.3);
  CHECK(bad.skipped.size() == 1);
  CHECK_FALSE(desk.walk.good());
  CHECK(desk.job.book().job(desk.job.job()->id)->readings.size() == 1);
  rig.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(rig.window->message().contains(QStringLiteral("nothing was taken back")));
}

TEST_CASE("after the window was gone, undo still takes the job's readings back, the last first") {
  BenchRig rig;
  walk(rig, "J1 4");
  enter(rig, "450");
  enter(rig, "460");
  rig.window.reset();
  rig.open();
  rig.window->restore();
  const Desk desk = rig.window->desk();
  REQUIRE(BenchRig::wait([&] { return desk.job.board() != nullptr; }));
  rig.window->go(Station::walk);
  rig.press(Qt::Key_Z, Qt::ControlModifier);
  REQUIRE(desk.job.job()->readings.size() == 1);
  CHECK(desk.job.job()->readings.front().reading.value == 0.45);
  CHECK(desk.walk.due()->label == "J1.2");
  rig.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(desk.job.job()->readings.size() == 2);
  CHECK(desk.walk.due()->label == "J1.3");
}

TEST_CASE("a point that reads otherwise the second time: the later counts, or one key says that it comes and "
          "goes") {
  BenchRig rig;
  walkAndKeepGood(rig);
  const Desk desk = rig.window->desk();
  REQUIRE(BenchRig::wait([&] { return !desk.job.weighing(); }));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_O);
  REQUIRE(desk.walk.oddOnes().size() == 1);
  rig.press(Qt::Key_I);
  CHECK(rig.window->message().contains(QStringLiteral("was the first here")));
  rig.press(Qt::Key_B);
  enter(rig, "450");
  CHECK(desk.walk.oddOnes().empty()); // a slip
  CHECK(rig.text("explanation").contains(QStringLiteral("it read OL before")));
  CHECK(desk.job.job()->readings.size() == 2);
  rig.press(Qt::Key_I);
  REQUIRE(desk.walk.oddOnes() == std::vector<std::size_t>{0});
  CHECK(rig.text("explanation").startsWith(QStringLiteral("It comes and goes")));
  const auto kept = desk.job.book().job(desk.job.job()->id);
  REQUIRE(kept->readings.size() == 2);
  CHECK(kept->readings[0].comesAndGoes);
  CHECK(kept->readings[1].comesAndGoes);
  CHECK(desk.walk.strip().pins.front().reading->verdict == VerdictKind::open);
  // Read a third time it still does, until somebody says that it was a slip.
  rig.press(Qt::Key_B);
  enter(rig, "451");
  CHECK(desk.walk.oddOnes().size() == 1);
  rig.press(Qt::Key_Z, Qt::ControlModifier);
  rig.press(Qt::Key_Z, Qt::ControlModifier);
  CHECK(desk.walk.oddOnes().empty());
  rig.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(desk.walk.oddOnes().size() == 1);
  // A second reading that agrees raises no question.
  rig.press(Qt::Key_B);
  enter(rig, "458");
  CHECK(desk.walk.readOtherwise() == nullptr);
}

TEST_CASE("a good board that is being walked, and not kept, is what Find and Prove compare with as well") {
  BenchRig rig;
  walk(rig, "J1 4");
  rig.press(Qt::Key_G);
  for (const char* value : {"450", "460", "470", "480"})
    enter(rig, value);
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.goodWalks().empty());
  REQUIRE(BenchRig::wait([&] { return desk.job.expected().size() == 4; }));
  rig.press(Qt::Key_G);
  rig.press(Qt::Key_O);
  const JobReading walked = desk.job.job()->readings.back();
  REQUIRE(walked.kind() == VerdictKind::open);
  // The same reading at Find.
  REQUIRE(BenchRig::wait([&] { return !desk.fault.working(); }));
  REQUIRE(desk.fault.type("J1.1 OL"));
  const JobReading found = desk.job.job()->readings.back();
  CHECK(found.purpose == ReadingPurpose::check);
  CHECK(found.judged == walked.judged);
  REQUIRE(found.judged->verdict.expected);
  CHECK(found.judged->verdict.expected->boards == 1);
}

TEST_CASE("the undo key works with nothing typed at Prove, too, and redo brings it back") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  walk(rig, "J1 4");
  resolder(desk);
  rig.window->go(Station::prove);
  rig.type(QStringLiteral("450"));
  rig.press(Qt::Key_Return);
  REQUIRE(desk.job.job()->actions.front().proof.size() == 1);
  rig.press(Qt::Key_Z, Qt::ControlModifier);
  CHECK(desk.job.job()->actions.front().proof.empty());
  rig.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(desk.job.job()->actions.front().proof.size() == 1);
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

TEST_CASE("the meter that was chosen is that of a reading at Prove as well") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  desk.walk.setMeter("handheld-4000");
  desk.walk.setBy("KB");
  rig.window.reset();
  rig.open();
  const Desk later = rig.window->desk();
  walk(rig, "J1 4");
  later.walk.setMeter("handheld-20000");
  resolder(later);
  rig.window->go(Station::prove);
  rig.type(QStringLiteral("450"));
  rig.press(Qt::Key_Return);
  REQUIRE(later.job.job()->readings.size() == 2);
  CHECK(later.job.job()->readings.back().reading.meter == "handheld-20000");
  CHECK(later.job.job()->readings.back().reading.by == "KB");
}

TEST_CASE("asked for again, the condition is what it was, and what is emptied is gone") {
  BenchRig rig;
  rig.type(QStringLiteral("J1 4"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_C);
  rig.type(QStringLiteral("battery"));
  rig.press(Qt::Key_Return);
  enter(rig, "450");
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.job()->readings.back().reading.condition.plugged == std::vector<std::string>{"battery"});
  rig.press(Qt::Key_C);
  auto* plugged = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  REQUIRE(plugged != nullptr);
  CHECK(plugged->text() == QStringLiteral("battery"));
  plugged->clear();
  // Back at the reading without Enter: the next reading takes it as it stands there.
  rig.window->findChild<QLineEdit*>(QStringLiteral("reading"))->setFocus();
  enter(rig, "460");
  CHECK(desk.job.job()->readings.back().reading.condition.plugged.empty());
}

TEST_CASE("every button's key stands on the sheet of all keys") {
  BenchRig rig;
  for (const Station station : stations)
    rig.window->go(station);
  rig.press(Qt::Key_F1);
  const auto* sheet = rig.window->findChild<QTextBrowser*>(QStringLiteral("keys"));
  REQUIRE(sheet != nullptr);
  const QString keys = sheet->toPlainText();
  for (const QPushButton* button : rig.window->findChildren<QPushButton*>()) {
    const QString key = button->shortcut().toString(QKeySequence::NativeText);
    INFO(button->accessibleName().toStdString() << " " << key.toStdString());
    CHECK((key.isEmpty() || keys.contains(key)));
  }
}
