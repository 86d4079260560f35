#include "bench/stations/bridge_page.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>

#include "demo_desk.h"
#include "netmend/casework/step_check.h"
#include "netmend/words/step.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

using Bridge = ShownPage<BridgePage>;

const WorkStep& stepNow(const DemoDesk& demo, std::size_t index) {
  return demo.job->job()->actions.back().steps.at(index);
}

/// The first open step that is a check with this in its words.
std::size_t goToCheck(const DemoDesk& demo, const std::string& words) {
  // Each tick makes the job anew, so nothing of it is held on to.
  const std::size_t count = demo.job->job()->actions.back().steps.size();
  for (std::size_t i = 0; i < count; ++i) {
    const WorkStep step = stepNow(demo, i);
    if (step.done) continue;
    if (step.check && step.text.find(words) != std::string::npos) return i;
    Bridge::key(Qt::Key_Space);
  }
  FAIL("no such check: " << words);
  return 0;
}

} // namespace

TEST_CASE("the first proposal, taken by keys, becomes the action that the command line makes of it") {
  DemoDesk demo;
  const std::string twin = demo.bookIn(DemoDesk::Until::probed);
  const auto routed = cli({"jumper", "route", "--board", deviceFile("tide-logger.netmend-board.json"),
                           "--net", "KEY_COL3", "--book", demo.book(), "--job", twin, "--choose", "1"});
  const Bridge bridge(demo);
  Bridge::key(Qt::Key_1);
  Bridge::key(Qt::Key_A);
  REQUIRE(demo.job->job()->actions.size() == 1);
  const RepairAction& mine = demo.job->job()->actions.front();
  const auto job = demo.job->book().jobNumbered(twin);
  REQUIRE(job);
  const RepairAction& theirs = job->actions.at(0);
  CHECK(mine.target == theirs.target);
  CHECK(mine.reason == theirs.reason);
  REQUIRE(mine.jumper);
  CHECK(mine.jumper->from.name == theirs.jumper->from.name);
  CHECK(mine.jumper->to.name == theirs.jumper->to.name);
  CHECK(mine.jumper->way == theirs.jumper->way);
  CHECK(mine.jumper->wire == theirs.jumper->wire);
  REQUIRE(mine.steps.size() == theirs.steps.size());
  const auto& printed = routed["proposals"][0];
  CHECK(mine.jumper->from.point.label == printed["from"]["handle"].get<std::string>());
  REQUIRE(printed["steps"].size() == mine.steps.size());
  for (std::size_t i = 0; i < mine.steps.size(); ++i) {
    CHECK(mine.steps[i].text == theirs.steps[i].text);
    CHECK(mine.steps[i].expected == theirs.steps[i].expected);
    CHECK(wordsOf(stepSaid(mine.steps[i], mine)) == printed["steps"][i]["text"].get<std::string>());
  }
  CHECK(demo.job->job()->state == JobState::repairing);
  CHECK(bridge.find<QLabel>("dueStep")->text().toStdString() == wordsOf(stepSaid(mine.steps.front(), mine)));
}

TEST_CASE("a number key puts that proposal on the map") {
  const DemoDesk demo;
  REQUIRE(demo.fault->proposals());
  const auto& proposals = demo.fault->proposals()->proposals;
  REQUIRE(proposals.size() >= 2);
  Bridge bridge(demo);
  const auto wayShown = [&] {
    std::vector<Point> way;
    for (const OverlayLine& line : bridge.page.overlay().lines)
      if (line.style == LineStyle::wire) way = line.points;
    return way;
  };
  CHECK(wayShown() == proposals[0].way);
  const auto* reasons = bridge.find<QLabel>("cardReasons");
  CHECK_FALSE(reasons->isVisible());
  CHECK(bridge.find<QLabel>("cardRemarks")->isVisible()); // what to mind is always said
  bridge.page.setWhy(true);
  CHECK(reasons->isVisible());
  bridge.page.setWhy(false);
  bridge.picture("bridge-choose");
  Bridge::key(Qt::Key_2);
  CHECK(wayShown() == proposals[1].way);
  Bridge::key(Qt::Key_A);
  CHECK(demo.job->job()->actions.front().jumper->way == proposals[1].way);
  CHECK(wayShown() == proposals[1].way);
}

TEST_CASE("Space ticks the step that is due and goes on; U takes the tick back") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  const QString first = bridge.find<QLabel>("dueStep")->text();
  Bridge::key(Qt::Key_Space);
  CHECK(stepNow(demo, 0).done);
  CHECK(bridge.find<QLabel>("dueStep")->text().toStdString() ==
        wordsOf(stepSaid(stepNow(demo, 1), demo.job->job()->actions.back())));
  Bridge::key(Qt::Key_U);
  CHECK_FALSE(stepNow(demo, 0).done);
  Bridge::key(Qt::Key_B);
  CHECK(bridge.find<QLabel>("dueStep")->text() == first);
}

TEST_CASE("after the last step the page says what comes next, and undo is still a key") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  const std::size_t count = demo.job->job()->actions.back().steps.size();
  for (std::size_t i = 0; i < count; ++i)
    Bridge::key(Qt::Key_Space);
  CHECK(bridge.find<QLabel>("dueStep")->text() == QStringLiteral("All steps are done"));
  CHECK(stationDone(Station::bridge, demo.desk()));
  CHECK_FALSE(stationDone(Station::prove, demo.desk()));
  Bridge::key(Qt::Key_U);
  CHECK_FALSE(stepNow(demo, count - 1).done);
}

TEST_CASE("a check's reading ticks it when it is as it must be, and stands in job and note") {
  const DemoDesk demo;
  Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  const std::size_t readingsBefore = demo.job->job()->readings.size();
  const std::size_t at = goToCheck(demo, "Touch the bare copper");
  REQUIRE(stepNow(demo, at).measure);
  const StepMeasure wanted = *stepNow(demo, at).measure;
  REQUIRE(wanted.comparable());
  bridge.picture("bridge-work");
  // The wrong way round first.
  if (wanted.overLimit)
    Bridge::type("649");
  else
    Bridge::key(Qt::Key_O);
  CHECK_FALSE(stepNow(demo, at).done);
  CHECK(bridge.error);
  REQUIRE(stepNow(demo, at).read);
  CHECK(stepNow(demo, at).read->outcome == StepOutcome::disagrees);
  CHECK(stepNow(demo, at).note.empty());
  if (wanted.overLimit)
    Bridge::key(Qt::Key_O);
  else
    Bridge::type("649");
  CHECK(stepNow(demo, at).done);
  CHECK_FALSE(bridge.error);
  REQUIRE(demo.job->job()->readings.size() == readingsBefore + 2);
  const JobReading& kept = demo.job->job()->readings.back();
  CHECK(kept.purpose == ReadingPurpose::check);
  CHECK(kept.reading.point == wanted.point);
  // Both go with one key, in the book as well.
  Bridge::key(Qt::Key_U);
  CHECK_FALSE(stepNow(demo, at).done);
  const auto book = demo.job->book().jobNumbered(demo.number);
  REQUIRE(book);
  CHECK(book->readings.size() == readingsBefore + 1);
  CHECK_FALSE(book->actions.back().steps.at(at).done);
  CHECK(demo.failures.isEmpty());
}

TEST_CASE("readings taken during the repair do not change what was found before it") {
  DemoDesk demo;
  const std::string before = demo.fault->proposals()->proposals.front().from.point;
  {
    const Bridge bridge(demo);
    Bridge::key(Qt::Key_A);
    goToCheck(demo, "Measure from");
    Bridge::type("0.1");
  }
  const double leading = demo.fault->fault()->suspects.ranked.front().probability;
  demo.open(demo.number);
  REQUIRE(demo.fault->fault());
  CHECK(demo.fault->fault()->suspects.ranked.front().probability == Approx(leading));
  CHECK(demo.fault->proposals()->proposals.front().from.point == before);
}

TEST_CASE("a linked meter's value serves the check that is due") {
  const DemoDesk demo;
  Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  const std::size_t at = goToCheck(demo, "end to end");
  CHECK(bridge.page.wantedMode() == ReadingMode::ohms);
  bridge.page.take(ValueTaken{"", 0.001, std::nullopt, Settling::settled, std::nullopt});
  CHECK(stepNow(demo, at).done);
}

TEST_CASE("words typed at a step are its note, and the step stays open") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  Bridge::key(Qt::Key_Space);
  Bridge::type("pad lifted a little");
  CHECK(stepNow(demo, 1).note == "pad lifted a little");
  CHECK_FALSE(stepNow(demo, 1).done);
}

TEST_CASE("another repair is added by keys alone; one that lacks its reason is refused with a word") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  auto* kind = bridge.find<QComboBox>("repairKind");
  while (QApplication::focusWidget() != kind)
    Bridge::key(Qt::Key_Tab);
  Bridge::key(Qt::Key_End);
  CHECK(kind->currentText() == QStringLiteral("not economic"));
  Bridge::key(Qt::Key_Tab);
  Bridge::type("the board");
  CHECK(bridge.error);
  CHECK(demo.job->job()->actions.empty());
  Bridge::type("two more corroded inner layers");
  REQUIRE(demo.job->job()->actions.size() == 1);
  CHECK(demo.job->job()->actions.front().kind == RepairKind::notEconomic);
  CHECK(demo.job->job()->actions.front().reason == "two more corroded inner layers");
}

TEST_CASE("where no way can be proposed the page says why") {
  const DemoDesk demo;
  const auto nets = demo.job->board()->lookup->netsNamed("GND");
  REQUIRE_FALSE(nets.empty());
  demo.fault->choose(nets.front());
  REQUIRE(waitFor([&] { return !demo.fault->working(); }));
  QApplication::processEvents();
  const Bridge bridge(demo);
  CHECK((!demo.fault->proposals() || demo.fault->proposals()->proposals.empty()));
  const auto* why = bridge.find<QLabel>("whyNoProposals");
  CHECK(why->isVisible());
  CHECK(why->text().contains(QString::fromStdString(wordsOf(demo.fault->whyNoProposals()))));
  Bridge::key(Qt::Key_A);
  CHECK(demo.job->job()->actions.empty());
}

TEST_CASE("a step is measured as it was made to be, whatever its words say") {
  const DemoDesk demo;
  RepairAction action;
  action.kind = RepairKind::clean;
  action.target = "J4";
  action.steps = {{"Look for a short in 0.4 V in diode mode", true, "no short, 3 ohm", false, ""}};
  REQUIRE(demo.job->addAction(action));
  Bridge bridge(demo);
  Bridge::type("452");
  CHECK(demo.job->job()->actions.back().steps.front().note == "452"); // by eye: a note, no reading
}
