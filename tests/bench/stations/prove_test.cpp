#include "bench/stations/prove_page.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QTreeWidget>

#include "bench/language/language.h"
#include "bench/session/proof_open.h"
#include "demo_desk.h"
#include "netmend/casework/function_check.h"
#include "netmend/probing/reading_entry.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

using Prove = ShownPage<ProvePage>;

Reading reads(std::optional<double> value) {
  Reading out;
  out.value = value;
  return out;
}

/// The line bridged by the first proposal, all work steps ticked.
struct Bridged : DemoDesk {
  Bridged() {
    REQUIRE(fault->accept(0));
    RepairAction action = job->job()->actions.front();
    for (WorkStep& step : action.steps)
      step.done = true;
    REQUIRE(job->updateAction(QStringLiteral("ticks"), action));
  }
  [[nodiscard]] std::vector<ProofPoint> points() const { return proofPoints(proofBasis(*job)); }
};

/// What a good board reads at a point, as somebody would type it.
std::string goodValue(const ProofPoint& point) {
  if (point.why == ProofWhy::endToEnd) return "0.6";
  if (point.expected && point.expected->seen)
    return readingText((point.expected->seen->lowest + point.expected->seen->highest) / 2, point.mode);
  return point.expected ? "OL" : readingText(point.limits->lowest, point.mode);
}

} // namespace

TEST_CASE("what was odd comes first, then the wire's ends, the wire itself and the neighbours") {
  speak(QStringLiteral("en")); // plurals are words
  const Bridged demo;
  const auto points = demo.points();
  const auto label = [&](const LandingPlace& place) { return place.point.label; };
  const JumperRecord& jumper = *demo.job->job()->actions.front().jumper;
  REQUIRE_FALSE(points.empty());
  CHECK(points.front().point.label == "J4.9");
  CHECK(points.front().why == ProofWhy::odd);
  CHECK(points.front().before->kind() == VerdictKind::open);
  const auto has = [&](const std::string& at, ProofWhy why) {
    return std::any_of(points.begin(), points.end(),
                       [&](const ProofPoint& p) { return p.point.label == at && p.why == why; });
  };
  for (const LandingPlace* place : {&jumper.from, &jumper.to})
    CHECK((has(label(*place), ProofWhy::landing) || has(label(*place), ProofWhy::odd)));
  CHECK(has(label(jumper.from), ProofWhy::endToEnd));
  CHECK(has("J4.8", ProofWhy::neighbour));
  CHECK(has("J4.10", ProofWhy::neighbour));
  CHECK_FALSE(has("J4.2", ProofWhy::neighbour));
}

TEST_CASE("a repair is proved by reading every point again and seeing the function work, by keys alone") {
  speak(QStringLiteral("en")); // plurals are words
  Bridged demo;
  Prove prove(demo);
  CHECK(prove.find<QLabel>("proofPoint")->text().startsWith(QStringLiteral("J4 pin 9")));
  auto* table = prove.find<QTreeWidget>("proofTable");
  REQUIRE(table->topLevelItemCount() == static_cast<int>(demo.points().size()));
  const QTreeWidgetItem* first = table->topLevelItem(0);
  CHECK(first->text(0) == QStringLiteral("J4.9"));
  CHECK(first->text(1) == QStringLiteral("OL"));
  CHECK(first->text(4) == QStringLiteral("due"));
  CHECK(first->background(0).color() == faceColors(PictureTheme::light).accentTint);
  CHECK(table->topLevelItem(1)->background(0).style() == Qt::NoBrush);
  for (int column : {1, 3, 4}) {
    CHECK((first->textAlignment(column) & Qt::AlignRight) != 0);
    CHECK((table->headerItem()->textAlignment(column) & Qt::AlignRight) != 0);
  }
  const auto* must = prove.find<QLabel>("proofMust");
  CHECK(must->text() == QStringLiteral("Must be ") + first->text(3));
  const auto* state = prove.find<QLabel>("proofState");
  const auto* words = prove.find<QLabel>("proofStateWords");
  const auto* functionsLeft = prove.find<QLabel>("functionsLeft");
  CHECK(state->text() == QStringLiteral("NOT PROVED"));
  CHECK(words->text().startsWith(QStringLiteral("%1 left: J4.9, ").arg(demo.points().size())));
  CHECK(functionsLeft->text() == QStringLiteral("no function tried"));
  CHECK(prove.page.footMode().text == QStringLiteral("PROVE KEY_COL3"));
  Prove::type("651");
  prove.picture("prove-first");
  CHECK(prove.find<QLabel>("proofVerdict")->text().contains(QStringLiteral("in range")));
  REQUIRE(demo.job->job()->actions.front().proof.size() == 1);
  CHECK(demo.job->job()->readings.back().purpose == ReadingPurpose::proof);
  CHECK(demo.job->job()->readings.back().reading.point.label == "J4.9");
  CHECK(demo.job->job()->state == JobState::proving);
  for (auto points = demo.points();; points = demo.points()) {
    const auto open = std::find_if(points.begin(), points.end(), [](const ProofPoint& p) { return !p.now; });
    if (open == points.end()) break;
    const std::size_t before = demo.job->job()->readings.size();
    Prove::type(goodValue(*open).c_str());
    INFO(open->point.label << " " << prove.told.toStdString());
    REQUIRE(demo.job->job()->readings.size() == before + 1);
    if (open->point.pin) continue;
    // A place that is no pin has its name, and its mark on the map.
    const QString name = open->why == ProofWhy::endToEnd ? QStringLiteral("via 2.4 mm above J4.9 to C28.1   ")
                                                         : QStringLiteral("via 2.4 mm above J4.9   ");
    CHECK(prove.find<QLabel>("proofVerdict")->text().startsWith(name));
    const auto marks = prove.page.overlay().marks;
    CHECK(std::any_of(marks.begin(), marks.end(), [&](const OverlayMark& mark) {
      return wordsOf(mark.label) == "via 2.4 mm above J4.9" &&
             mark.at == demo.job->job()->actions.front().jumper->from.at;
    }));
  }
  CHECK(words->text().isEmpty());
  CHECK(state->text() == QStringLiteral("NOT PROVED"));
  // Nothing is due any more, and the keys still work.
  Prove::key(Qt::Key_B);
  CHECK_FALSE(must->text().isEmpty());
  Prove::key(Qt::Key_F);
  CHECK(QApplication::focusWidget() == prove.find<QLineEdit>("function"));
  Prove::type("keys 3, 6, 9 and Enter");
  CHECK(functionsLeft->text() == QStringLiteral("1 of 1 function left"));
  auto* toggle = prove.find<QCheckBox>("functionCheck");
  CHECK(toggle->text() == QStringLiteral("keys 3, 6, 9 and Enter"));
  toggle->setFocus();
  Prove::key(Qt::Key_Space);
  REQUIRE(waitFor([&] { return demo.job->job()->actions.front().steps.back().done; }));
  INFO(state->text().toStdString());
  CHECK(state->text() == QStringLiteral("PROVED"));
  CHECK(functionsLeft->text().isEmpty());
  CHECK(stationDone(Station::prove, demo.desk()));
  prove.picture("prove-done");
  const auto book = demo.job->book().jobNumbered(demo.number);
  REQUIRE(book);
  CHECK(isFunctionCheck(book->actions.front().steps.back()));
  CHECK(book->actions.front().proof.size() == demo.points().size());
}

TEST_CASE(
    "a wire that does not conduct, or an odd point that stays odd, is no proof, and the page says which") {
  speak(QStringLiteral("en")); // plurals are words
  const Bridged demo;
  const Prove prove(demo);
  Prove::key(Qt::Key_O);
  const auto* state = prove.find<QLabel>("proofStateWords");
  CHECK(state->text().startsWith(QStringLiteral("J4.9 reads OL")));
  // Done again: the new reading counts, and the bad one proves nothing any more.
  Prove::key(Qt::Key_B);
  while (!prove.find<QLabel>("proofPoint")->text().startsWith(QStringLiteral("J4 pin 9")))
    Prove::key(Qt::Key_B);
  Prove::type("651");
  CHECK_FALSE(state->text().contains(QStringLiteral("J4.9 reads")));
  CHECK(demo.job->job()->actions.front().proof.size() == 1);
  const auto points = demo.points();
  const auto wire = std::find_if(points.begin(), points.end(),
                                 [](const ProofPoint& p) { return p.why == ProofWhy::endToEnd; });
  REQUIRE(wire != points.end());
  const ProofBasis basis = proofBasis(*demo.job);
  CHECK(judgedProof(*wire, reads(0.6), basis).kind() == VerdictKind::inRange);
  CHECK(judgedProof(*wire, reads(std::nullopt), basis).kind() == VerdictKind::open);
  CHECK(judgedProof(*wire, reads(12.0), basis).kind() == VerdictKind::high);
}

TEST_CASE(
    "a point that reads otherwise the second time proves nothing once somebody says that it comes and goes") {
  speak(QStringLiteral("en")); // plurals are words
  const Bridged demo;
  const Prove prove(demo);
  const auto* state = prove.find<QLabel>("proofStateWords");
  const auto* explanation = prove.find<QLabel>("proofExplanation");
  const auto says = [&](const char* words) { return explanation->text().contains(QLatin1String(words)); };
  const auto backToFirst = [&] {
    do
      Prove::key(Qt::Key_B);
    while (!prove.find<QLabel>("proofPoint")->text().startsWith(QStringLiteral("J4 pin 9")));
  };
  // Nothing was read here before.
  Prove::type("651");
  CHECK_FALSE(says("I:"));
  Prove::key(Qt::Key_I);
  CHECK_FALSE(demo.job->job()->readings.back().comesAndGoes);
  CHECK(prove.told.contains(QStringLiteral("first here")));
  // A second reading that agrees raises no question, one that does not raises it.
  backToFirst();
  Prove::type("650");
  CHECK_FALSE(says("I:"));
  backToFirst();
  Prove::key(Qt::Key_O);
  CHECK(says("Read again: it read 0.650 V before. I: it comes and goes"));
  backToFirst();
  CHECK_FALSE(says("I:")); // another point is looked at
  Prove::type("651");
  CHECK(says("Read again: it read OL before. I: it comes and goes"));
  CHECK_FALSE(state->text().contains(QStringLiteral("J4.9 reads")));
  Prove::key(Qt::Key_I);
  CHECK(says("It comes and goes: it read OL before. I: a slip"));
  CHECK(state->text().contains(QStringLiteral("J4.9 reads 0.651 V: in range, comes and goes")));
  const auto said = [&] {
    const auto& readings = demo.job->job()->readings;
    return std::count_if(readings.begin(), readings.end(),
                         [](const JobReading& r) { return r.comesAndGoes; });
  };
  CHECK(said() == 4); // all of its proof; the walk's reading before the repair is another matter
  CHECK(demo.job->book().jobNumbered(demo.number)->readings.back().comesAndGoes);
  Prove::key(Qt::Key_I);
  CHECK(said() == 0);
  CHECK_FALSE(state->text().contains(QStringLiteral("J4.9 reads")));
  // What is read after that is read anew.
  Prove::key(Qt::Key_I);
  backToFirst();
  Prove::type("651");
  CHECK_FALSE(demo.job->job()->readings.back().comesAndGoes);
  CHECK_FALSE(state->text().contains(QStringLiteral("J4.9 reads")));
}

TEST_CASE("skip, back and undo are keys; a neighbour may be left out, what was odd may not") {
  speak(QStringLiteral("en")); // plurals are words
  const Bridged demo;
  const Prove prove(demo);
  const auto* point = prove.find<QLabel>("proofPoint");
  const QString first = point->text();
  Prove::key(Qt::Key_S);
  CHECK(point->text() != first);
  CHECK(prove.find<QLabel>("proofStateWords")->text().contains(QStringLiteral("J4.9 (left out)")));
  Prove::key(Qt::Key_U);
  CHECK(point->text() == first);
  Prove::type("651");
  const std::size_t readings = demo.job->job()->readings.size();
  Prove::key(Qt::Key_U);
  CHECK(point->text() == first);
  CHECK(demo.job->job()->readings.size() == readings - 1);
  CHECK(demo.job->job()->actions.front().proof.empty());
  auto points = demo.points();
  std::vector<std::size_t> neighbours;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].why == ProofWhy::neighbour) neighbours.push_back(i);
  REQUIRE_FALSE(neighbours.empty());
  const QStringList with = openForProof(points, *demo.job->job(), {}, nullptr);
  const QStringList without = openForProof(points, *demo.job->job(), neighbours, nullptr);
  CHECK(with.size() == without.size() + static_cast<qsizetype>(neighbours.size()));
}

TEST_CASE("without a repair there is nothing to prove") {
  speak(QStringLiteral("en")); // plurals are words
  const DemoDesk demo;
  const Prove prove(demo);
  CHECK(prove.find<QLabel>("proofState")->text().startsWith(QStringLiteral("Nothing to prove")));
  CHECK(prove.find<QTreeWidget>("proofTable")->topLevelItemCount() == 0);
  CHECK_FALSE(prove.find<QLineEdit>("proofReading")->isEnabled());
}

TEST_CASE("functions that the symptom names are offered, and written down with the first tick") {
  speak(QStringLiteral("en")); // plurals are words
  Bridged demo;
  REQUIRE(demo.job->keep([](Job& job) { job.symptom = "Keypad: 3, 6, 9 and Enter do nothing"; }));
  const Prove prove(demo);
  const auto toggles = [&] {
    QStringList out;
    for (const QCheckBox* toggle : prove.page.findChildren<QCheckBox*>(QStringLiteral("functionCheck")))
      if (!toggle->isHidden())
        out << (toggle->isChecked() ? QStringLiteral("x ") : QString()) + toggle->text();
    return out;
  };
  const auto written = [&] {
    std::vector<std::string> out;
    for (const WorkStep& step : demo.job->job()->actions.front().steps)
      if (isFunctionCheck(step)) out.push_back((step.done ? "x " : "") + step.text);
    return out;
  };
  using Texts = std::vector<std::string>;
  CHECK(toggles() == QStringList{"Key 3", "Key 6", "Key 9", "Enter"});
  CHECK(prove.find<QLabel>("functionsLeft")->text() == QStringLiteral("4 of 4 functions left"));
  CHECK(written().empty());
  prove.page.findChildren<QCheckBox*>(QStringLiteral("functionCheck")).at(1)->setFocus();
  Prove::key(Qt::Key_Space);
  CHECK(written() == Texts{"Key 3", "x Key 6", "Key 9", "Enter"});
  CHECK(prove.find<QLabel>("functionsLeft")->text() == QStringLiteral("3 of 4 functions left"));
  Prove::key(Qt::Key_Delete);
  CHECK(waitFor([&] { return written() == Texts{"Key 3", "Key 9", "Enter"}; }));
  // What a person wrote stays, whatever the symptom says later.
  REQUIRE(demo.job->keep([](Job& job) { job.symptom = "Keys 1 and 2 dead"; }));
  CHECK(written() == Texts{"Key 3", "Key 9", "Enter"});
  CHECK(toggles() == QStringList{"Key 3", "Key 9", "Enter"});
}
