#include "bench/stations/bridge_page.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

#include "bench/stations/proposal_card.h"
#include "bench/stations/proposal_words.h"
#include "bench/stations/step_ticks.h"
#include "bench/stations/step_words.h"
#include "demo_desk.h"
#include "netmend/casework/jumper_case.h"
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
  CHECK_FALSE(reasons->isVisible()); // points and prices
  CHECK_FALSE(bridge.find<QLabel>("cardRemarks")->isVisible());
  bridge.page.setWhy(true);
  CHECK(reasons->isVisible());
  CHECK(bridge.find<QLabel>("cardRemarks")->isVisible());
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

TEST_CASE("a card says the proposal's length, what it mends, its least gap and the work, and its chips") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  std::vector<const ProposalCard*> cards;
  for (const QFrame* frame : bridge.page.findChildren<QFrame*>(QStringLiteral("proposalCard")))
    cards.push_back(static_cast<const ProposalCard*>(frame));
  const auto& proposals = demo.fault->proposals()->proposals;
  REQUIRE(cards.size() == proposals.size());
  CHECK(cards[0]->chosen());
  const QString figures = bridge.find<QWidget>("cardFigures")->accessibleName();
  CHECK(figures.startsWith(QString::number(proposals[0].length.mm(), 'f', 0) +
                           QStringLiteral(" mm of wire; ")));
  CHECK(figures.contains(QStringLiteral("% mends it")));
  CHECK(figures.endsWith(QStringLiteral("min of work")));
  CHECK_FALSE(figures.contains(QStringLiteral("point")));
  const double mends = mendedShare(*demo.fault->fault(), proposals[0]);
  CHECK(mends > 0.5); // the leading break at least
  CHECK(mends <= 1.0);
  CHECK(chipsOf(proposals[0], *demo.job->places()).size() ==
        static_cast<std::size_t>(cards[0]->findChildren<QWidget*>(QStringLiteral("need")).size() +
                                 cards[0]->findChildren<QWidget*>(QStringLiteral("caution")).size()));
  Bridge::key(Qt::Key_2);
  CHECK_FALSE(cards[0]->chosen());
  CHECK(cards[1]->chosen());
  CHECK_FALSE(bridge.page.wantsMap());
  CHECK(bridge.find<QPushButton>("accept")->text() == QStringLiteral("Take 2"));
  Bridge::key(Qt::Key_A);
  CHECK(bridge.page.wantsMap());
}

TEST_CASE("a check that reads wrong stops the work until it is repeated") {
  const DemoDesk demo;
  Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  const std::size_t at = goToCheck(demo, "end to end");
  Bridge::type("12"); // ohms: a wire of some centimetres has far less
  REQUIRE(stepNow(demo, at).read);
  REQUIRE(stepNow(demo, at).read->outcome == StepOutcome::disagrees);
  CHECK(bridge.find<QLabel>("stopped")->isVisible());
  CHECK(bridge.find<QPushButton>("overrule")->isEnabled());
  CHECK(bridge.find<StepTicks>("ticks")->states().at(at) == TickState::failed);
  Bridge::key(Qt::Key_Space); // neither this one …
  CHECK_FALSE(stepNow(demo, at).done);
  CHECK(bridge.error);
  Bridge::key(Qt::Key_Down); // … nor one after it
  Bridge::key(Qt::Key_Space);
  CHECK_FALSE(stepNow(demo, at + 1).done);
  CHECK(bridge.error);
  Bridge::key(Qt::Key_B);
  Bridge::type("0.001");
  CHECK(stepNow(demo, at).done);
  CHECK_FALSE(bridge.find<QLabel>("stopped")->isVisible());
  Bridge::key(Qt::Key_Space);
  CHECK(stepNow(demo, at + 1).done);
}

TEST_CASE("a check that reads wrong is overruled with a reason alone, which the job and its note keep") {
  const DemoDesk demo;
  Bridge bridge(demo);
  Bridge::key(Qt::Key_A);
  Bridge::key(Qt::Key_O, Qt::ShiftModifier);
  CHECK(bridge.error); // nothing to overrule
  const std::size_t at = goToCheck(demo, "end to end");
  Bridge::type("12");
  Bridge::key(Qt::Key_O, Qt::ShiftModifier);
  const auto* reason = bridge.find<QLineEdit>("overruleReason");
  REQUIRE(QApplication::focusWidget() == reason);
  Bridge::key(Qt::Key_Return);
  CHECK_FALSE(stepNow(demo, at).done); // without a reason
  Bridge::type("the long lead, known");
  CHECK(stepNow(demo, at).done);
  CHECK(wordsOf(noteSaid(stepNow(demo, at))) == "12 Ω, NOT as it must be; overruled: the long lead, known");
  CHECK_FALSE(reason->isVisible());
  CHECK(bridge.find<StepTicks>("ticks")->states().at(at) == TickState::overruled);
  const auto book = demo.job->book().jobNumbered(demo.number);
  REQUIRE(book);
  CHECK(book->actions.back().steps.at(at).note == "the long lead, known");
  Bridge::key(Qt::Key_U);
  CHECK_FALSE(stepNow(demo, at).done);
  CHECK(stepNow(demo, at).note.empty());
  CHECK(bridge.find<QLabel>("stopped")->isVisible());
}

TEST_CASE("the command line stops at the same check, and overrules it with a reason alone") {
  const DemoDesk demo;
  std::size_t at = 0;
  {
    const Bridge bridge(demo);
    Bridge::key(Qt::Key_A);
    at = goToCheck(demo, "end to end");
    Bridge::type("12");
  }
  const std::string action = std::to_string(demo.job->job()->actions.back().id.value) + ":";
  const auto add = [&](std::size_t step, const std::string& reason) {
    std::vector<std::string> words{"job",   "add",       "--book", demo.book(),
                                   "--job", demo.number, "--tick", action + std::to_string(step + 1)};
    if (!reason.empty()) words.insert(words.end(), {"--reason", reason});
    std::istringstream in;
    std::ostringstream out, err;
    return runCli(words, {in, out, err});
  };
  CHECK(add(at + 1, "in a hurry") == ExitCode::badInput);
  CHECK(add(at, "") == ExitCode::badInput);
  CHECK(add(at, "known from before") == ExitCode::good);
  const auto book = demo.job->book().jobNumbered(demo.number);
  REQUIRE(book);
  CHECK(book->actions.back().steps.at(at).done);
  CHECK(book->actions.back().steps.at(at).note == "known from before");
  CHECK(add(at + 1, "") == ExitCode::good);
}

TEST_CASE("what a check must read stands large, as a range with its unit") {
  WorkStep step;
  step.measure = StepMeasure{
      ReadingMode::diode, {PinId{}, "C28.1"}, {PinId{}, "GND"}, ValueInterval{0.631, 0.659}, false};
  CHECK(mustFigure(step) == QStringLiteral("0.631–0.659 V"));
  CHECK(leadsOf(step) == QStringLiteral("diode: black lead on C28.1, red lead on GND"));
  step.measure->interval.reset();
  CHECK(mustFigure(step).isEmpty());
  step.measure->overLimit = true;
  CHECK(mustFigure(step) == QStringLiteral("OL"));
  step.measure->mode = ReadingMode::ohms;
  step.measure->overLimit = false;
  step.measure->interval = ValueInterval{0.0, 1.5};
  CHECK(mustFigure(step) == QStringLiteral("under 1.5 Ω"));
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

TEST_CASE("a repair by hand is added by keys alone; one that lacks its reason is refused with a word") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  auto* line = bridge.find<QLineEdit>("repairLine");
  CHECK_FALSE(line->isVisible());
  Bridge::key(Qt::Key_H);
  REQUIRE(line->isVisible());
  Bridge::key(Qt::Key_9);
  REQUIRE(QApplication::focusWidget() == line);
  CHECK(bridge.find<QPushButton>("repairKind9")->isChecked());
  Bridge::type("the board");
  CHECK(bridge.error);
  CHECK(demo.job->job()->actions.empty());
  CHECK(line->text() == QStringLiteral("the board")); // to be mended, not typed anew
  Bridge::type(", two more corroded inner layers");
  REQUIRE(demo.job->job()->actions.size() == 1);
  CHECK(demo.job->job()->actions.front().kind == RepairKind::notEconomic);
  CHECK(demo.job->job()->actions.front().target == "the board");
  CHECK(demo.job->job()->actions.front().reason == "two more corroded inner layers");
}

TEST_CASE("a wire by hand asks first whether its ends hang together, and then for what good boards read") {
  const DemoDesk demo;
  const Bridge bridge(demo);
  Bridge::key(Qt::Key_H);
  Bridge::key(Qt::Key_1);
  Bridge::type("J4.9 C28.1, track torn");
  REQUIRE(demo.job->job()->actions.size() == 1);
  const RepairAction& wire = demo.job->job()->actions.front();
  CHECK(wire.kind == RepairKind::wire);
  CHECK(wire.target == "J4.9 – C28.1");
  CHECK(wire.reason == "track torn");
  REQUIRE(wire.places.size() == 2);
  CHECK(wire.places[0].pin == demo.job->board()->lookup->pinsLabelled("J4.9").front());
  CHECK(wire.places[1].pin == demo.job->board()->lookup->pinsLabelled("C28.1").front());
  CHECK_FALSE(bridge.error); // one line
  const auto measureOf = [&](std::size_t step) { return wire.steps.at(step).measure.value(); };
  CHECK(measureOf(2).interval->lowest == 10.0);
  CHECK(measureOf(2).overLimit);
  CHECK(measureOf(6).interval == ValueInterval{0.0, 1.0});
  REQUIRE(measureOf(7).interval); // what good boards read at J4.9
  CHECK(measureOf(7).interval->lowest > 0.4);
  CHECK(measureOf(7).interval->highest < 0.8);
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
