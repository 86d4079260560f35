// The second half of a job: from the repair to the customer.
#include <catch2/catch.hpp>

#include "job_hand.h"

#include <QCheckBox>
#include <QPlainTextEdit>

#include <regex>

#include "bench/session/proof_open.h"
#include "bench/stations/odd_pins.h"
#include "netmend/casework/function_check.h"
#include "netmend/casework/step_check.h"

namespace netmend::testing {

std::string pdfWords(const std::string& file) {
  return std::regex_replace(outputOf("pdftotext -layout '" + file + "' -"), std::regex(R"(\s+)"), " ");
}

void JobHand::bridge(const Repair& repair) {
  keys.at(Station::bridge);
  // Where probing has come to its end and a fault was found, Enter goes on by itself.
  if (!hands.mouse() && repair.found && desk().fault.nextProbe() == nullptr) rig.press(Qt::Key_Return);
  goOn(Station::bridge);
  settle();
  onReading(Station::bridge, 0);
  const std::size_t before = job().actions.size();
  INFO(rig.text("whyNoProposals").toStdString());
  if (repair.byHand == 0) {
    hands.command("accept", Qt::Key_A);
  } else {
    hands.command("Repair by hand", Qt::Key_H);
    const std::string kind = "repairKind" + std::to_string(repair.byHand);
    hands.command(kind.c_str(), static_cast<Qt::Key>(static_cast<int>(Qt::Key_0) + repair.byHand));
    hands.reach(hands.visible<QWidget>("repairLine"));
    type(repair.line);
    if (hands.mouse())
      hands.command("Add this repair", Qt::Key_Return);
    else
      rig.press(Qt::Key_Return);
  }
  INFO(rig.window->message().toStdString());
  REQUIRE(job().actions.size() == before + 1);
  takeSteps(before);
}

/// Checks read what they must; where nobody knows what that is, and at work, the step is ticked.
void JobHand::takeSteps(std::size_t action) {
  const std::size_t count = job().actions[action].steps.size();
  bool joined = false; // both ends of the wire are soldered
  for (std::size_t i = 0; i < count; ++i) {
    onReading(Station::bridge, i + 1);
    const WorkStep step = job().actions[action].steps[i];
    const QString due = rig.text("dueStep");
    CHECK_FALSE(due.isEmpty());
    if (step.measure && step.measure->comparable()) {
      const auto& must = step.measure->interval;
      CHECK_FALSE(rig.text("mustFigure").isEmpty());
      if (must && step.measure->mode == ReadingMode::diode) {
        const auto good = goodAt(step.measure->point);
        REQUIRE(good);
        INFO(due.toStdString() << ": " << must->lowest << " to " << must->highest << ", good boards "
                               << *good);
        CHECK((must->lowest <= *good && *good <= must->highest));
      }
      if (joined && step.measure->mode == ReadingMode::diode) CHECK_FALSE(step.measure->overLimit);
      if (step.measure->overLimit)
        enter(std::nullopt);
      else
        enter((must->lowest + must->highest) / 2);
    } else {
      hands.command("Tick", Qt::Key_Space);
      if (!hands.mouse()) keys.leaveOut(1);
    }
    INFO("step " << i + 1 << ", " << due.toStdString() << ": " << rig.window->message().toStdString());
    REQUIRE(job().actions[action].steps[i].done);
    joined = joined || (!step.check && step.text.find("older") != std::string::npos &&
                        step.text.find("{to}.") != std::string::npos);
  }
  CHECK(isWorkDone(job().actions[action]));
}

/// What a good board reads there: on one line it is the same everywhere.
std::optional<double> JobHand::goodAt(const ProbePoint& point) const {
  const Board& board = *desk().job.board()->board;
  const auto of = [&](const std::string& pin) { return story.good(pin, story.goodBoards); };
  if (point.label.starts_with(story.part + ".")) return of(point.label);
  if (const Pin* pin = board.pins.find(point.pin); pin != nullptr && pin->net.known())
    for (const PinId other : desk().job.board()->lookup->pinsOf(pin->net.value))
      if (const std::string label = pinLabel(board, other); label.starts_with(story.part + "."))
        return of(label);
  return of(line_);
}

std::optional<ProofPoint> JobHand::openPoint() const {
  for (const ProofPoint& point : proofPoints(proofBasis(desk().job)))
    if (!point.now) return point;
  return std::nullopt;
}

void JobHand::prove() {
  goOn(Station::prove);
  std::size_t count = 0;
  while (const auto point = openPoint()) {
    REQUIRE(count < 40);
    onReading(Station::prove, count++);
    const QString shown = rig.text("proofPoint");
    CHECK_FALSE(shown.isEmpty());
    const bool wire = point->why == ProofWhy::endToEnd;
    enter(wire ? std::optional(point->limits->highest / 2) : goodAt(point->point));
    const JobReading& read = job().readings.back();
    INFO(shown.toStdString() << ": " << rig.window->message().toStdString());
    REQUIRE(read.purpose == ReadingPurpose::proof);
    REQUIRE(read.reading.point.label == point->point.label);
    CHECK_FALSE(read.odd());
    CHECK(read.kind() == VerdictKind::inRange);
  }
  for (const auto& [pin, value] : story.odd)
    CHECK(std::any_of(job().readings.begin(), job().readings.end(), [&, pin = pin](const JobReading& each) {
      return each.purpose == ReadingPurpose::proof && each.reading.point.label == pin && !each.odd();
    }));
  for (const OddPin& pin : oddPins(desk()))
    CHECK(pin.mended);
  CHECK(rig.text("proofState").startsWith(said("NOT PROVED")));
  tryFunctions();
  INFO(rig.text("proofState").toStdString());
  REQUIRE(BenchRig::wait([&] { return stationDone(Station::prove, desk()); }));
  CHECK(rig.text("proofState").startsWith(said("PROVED")));
}

void JobHand::tryFunctions() {
  if (!story.functions.isEmpty()) hands.command("Function", Qt::Key_F);
  for (const QString& function : story.functions) {
    type(function);
    rig.press(Qt::Key_Return);
  }
  const auto toggles = rig.window->findChildren<QCheckBox*>(QStringLiteral("functionCheck"));
  CHECK_FALSE(toggles.isEmpty());
  for (QCheckBox* toggle : toggles) {
    REQUIRE(toggle->isVisible());
    if (hands.mouse()) {
      QTest::mouseClick(toggle, Qt::LeftButton);
    } else {
      hands.reach(*toggle);
      rig.press(Qt::Key_Space);
      keys.leaveOut(1);
    }
  }
}

void JobHand::charge() {
  goOn(Station::handOver);
  for (const std::size_t key : story.charges) {
    const std::string preset = "chargePreset" + std::to_string(key);
    hands.command(preset.c_str(), static_cast<Qt::Key>(static_cast<int>(Qt::Key_0) + static_cast<int>(key)));
  }
  CHECK(job().charges.size() == story.charges.size());
}

void JobHand::handOver() {
  CHECK(rig.text("total") == QString::fromLatin1(story.total));
  if (!story.workshop.isEmpty()) {
    hands.command("changeLetterhead", Qt::Key_L, Qt::ControlModifier);
    hands.reach(hands.visible<QPlainTextEdit>("workshop"));
    type(story.workshop);
    hands.command("changeLetterhead", Qt::Key_L, Qt::ControlModifier);
  }
  hands.command("handedOver", Qt::Key_H, Qt::ControlModifier);
  INFO(rig.window->message().toStdString());
  REQUIRE(BenchRig::wait([&] { return job().state == JobState::handedOver; }));
  CHECK(stationDone(Station::handOver, desk()));
  // All of it is in the book.
  const auto kept = desk().job.book().jobNumbered(job().number);
  REQUIRE(kept);
  CHECK(kept->state == JobState::handedOver);
  CHECK(kept->actions.size() == story.repairs.size());
  CHECK(kept->readings.size() == job().readings.size());
  CHECK(kept->charges.size() == job().charges.size());
  std::size_t proofs = 0;
  for (const RepairAction& action : kept->actions)
    proofs += action.proof.size();
  CHECK(proofs >= story.odd.size());
}

void JobHand::savePdf(const std::string& to) {
  hands.command("Save PDF", Qt::Key_S, Qt::ControlModifier);
  hands.nameFile(QString::fromStdString(to));
  keys.leaveOut(static_cast<int>(to.size()));
  const bool saved =
      BenchRig::wait([&] { return rig.window->message().contains(QString::fromStdString(to)); });
  INFO(rig.window->message().toStdString());
  REQUIRE(saved);
}

void JobHand::savePdfs() {
  savePdf(file("customer.pdf"));
  hands.command("workshopCopy", Qt::Key_Tab);
  savePdf(file("workshop.pdf"));
  const std::string customers = pdfWords(file("customer.pdf")), workshops = pdfWords(file("workshop.pdf"));
  std::vector<std::string> both{job().number, story.device.toStdString(), story.symptom.toStdString(),
                                story.total};
  for (const Charge& charge : job().charges)
    both.push_back(charge.what);
  for (const auto& [pin, value] : story.odd) {
    both.push_back(pin);
    both.push_back(value ? QString::number(*value, 'f', 3).toStdString() : "OL");
    both.push_back(QString::number(story.good(pin, story.goodBoards).value(), 'f', 3).toStdString());
  }
  for (const std::string& words : both) {
    INFO(words << "\nin the customer's: " << customers << "\nin the workshop's: " << workshops);
    CHECK(customers.find(words) != std::string::npos);
    CHECK(workshops.find(words) != std::string::npos);
  }
  const std::string notes = story.notes.toStdString();
  INFO(notes);
  if (!notes.empty()) {
    CHECK(customers.find(notes) == std::string::npos);
    CHECK(workshops.find(notes) != std::string::npos);
  }
  // Nobody reads there where this machine keeps its files.
  CHECK(customers.find(rig.folder.path().toStdString()) == std::string::npos);
  CHECK(workshops.find(rig.folder.path().toStdString()) == std::string::npos);
  for (const RepairAction& action : job().actions) {
    INFO(action.target << " in " << workshops);
    CHECK(workshops.find(action.jumper ? action.jumper->net : action.target) != std::string::npos);
  }
}

void JobHand::takeThrough() {
  bookIn();
  openBoard();
  walk();
  for (const Repair& repair : story.repairs) {
    find(repair);
    bridge(repair);
  }
  prove();
  charge();
  handOver();
  savePdfs();
  checkKeys();
}

void JobHand::checkKeys() const {
  CHECK_FALSE(rig.window->message().startsWith(QStringLiteral("⚠")));
  std::printf("%s by %s: %d keys: %s\n", story.name.toStdString().c_str(), hands.mouse() ? "mouse" : "keys",
              keys.all(), keys.byStation().c_str());
  CHECK(keys.all() <= KeyCount::most);
  rig.fastEvents();
}

} // namespace netmend::testing
