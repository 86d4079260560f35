#include "bench/stations/find_page.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/fault.h"

#include <ctime>

#include <QAbstractItemModel>
#include <QCompleter>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollBar>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "demo_desk.h"
#include "support/effort.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

using Find = ShownPage<FindPage>;

/// What the command line says of the demo's faulty walk and these further readings.
nlohmann::json isolated(const std::vector<std::string>& readings,
                        const std::vector<std::string>& unreachable = {}) {
  std::vector<std::string> arguments{
      "fault", "isolate",  "--board", deviceFile("tide-logger.netmend-board.json"),
      "--net", "KEY_COL3", "--walk",  deviceFile("faulty.netmend-walk.json"),
      "--good"};
  for (int i = 1; i <= 8; ++i)
    arguments.push_back(deviceFile("good-" + std::to_string(i) + ".netmend-walk.json"));
  for (const auto& reading : readings)
    arguments.insert(arguments.end(), {"--reading", reading});
  for (const auto& label : unreachable)
    arguments.insert(arguments.end(), {"--cannot-reach", label});
  return cli(arguments);
}

void checkSame(const DemoDesk& demo, const nlohmann::json& theirs) {
  REQUIRE(demo.fault->fault());
  const FaultCase& mine = *demo.fault->fault();
  REQUIRE(mine.suspects.ranked.size() == theirs["suspects"].size());
  for (std::size_t i = 0; i < mine.suspects.ranked.size(); ++i) {
    const FaultClass& faultClass = mine.isolation.classes[mine.suspects.ranked[i].faultClass];
    CHECK(wordsOf(nameOf(faultClass, mine.names)) == theirs["suspects"][i]["text"]);
    CHECK(mine.suspects.ranked[i].probability ==
          Approx(theirs["suspects"][i]["probability"].get<double>()).margin(1e-9));
  }
  CHECK(mine.next.stop == theirs["next_probe"]["stop"]);
  CHECK(wordsOf(adviceReasons(mine.isolation, mine.names, mine.next)) == theirs["next_probe"]["reason"]);
  const auto& ranked = theirs["next_probe"]["ranked"];
  REQUIRE(mine.next.ranked.size() == ranked.size());
  for (std::size_t i = 0; i < ranked.size(); ++i)
    CHECK(mine.isolation.places[mine.next.ranked[i].place].label == ranked[i]["point"]["handle"]);
}

std::string due(const DemoDesk& demo) {
  const ProbeProposal* next = demo.fault->nextProbe();
  return next != nullptr ? demo.fault->fault()->isolation.places[next->place].label : "";
}

LineTreeView& treeOf(const Find& find) {
  return *dynamic_cast<LineTreeView*>(find.find<QWidget>("lineTree"));
}

} // namespace

TEST_CASE("two probes by keys alone lead to the suspects and the next probe of the command line") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  checkSame(demo, isolated({}));
  find.picture("find-start");
  const std::string first = due(demo);
  REQUIRE(first == "C28.1");
  CHECK(find.find<QLabel>("probePlace")->text() == QStringLiteral("C28 pin 1"));
  Find::type("649");
  demo.settle();
  checkSame(demo, isolated({"C28.1 0.649"}));
  const std::string second = due(demo);
  REQUIRE(second == "pad of J4.9");
  CHECK(find.find<QLabel>("probePlace")->text() == QStringLiteral("pad of J4.9")); // copper is no pin
  find.picture("find-one");
  Find::key(Qt::Key_O);
  demo.settle();
  checkSame(demo, isolated({"C28.1 0.649", "pad of J4.9 OL"}));
  CHECK((find.find<QLabel>("probeHead")->text() == QStringLiteral("Stop probing")) ==
        (demo.fault->nextProbe() == nullptr));
  find.picture("find-two");
  CHECK(demo.failures.isEmpty());
  CHECK_FALSE(find.error);
}

TEST_CASE("one line says what the next probe is worth; the reasons come with the key for why") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const FaultCase& fault = *demo.fault->fault();
  const ProbeProposal& next = *demo.fault->nextProbe();
  const auto reason = [&] { return find.find<QLabel>("probeReason")->text(); };
  const auto* explanation = find.find<QPlainTextEdit>("suspectExplanation");
  CHECK(reason() == shown(probeLine(fault.next, next)) + QStringLiteral(" Free to touch."));
  CHECK_FALSE(explanation->isVisible());
  bool asked = false;
  QObject::connect(&find.page, &StationPage::whyWanted, &find.page, [&] { asked = true; });
  auto* button = find.find<QPushButton>("why");
  button->click();
  CHECK(asked);
  find.page.setWhy(true);
  CHECK(button->isChecked());
  CHECK(explanation->toPlainText().contains(shown(probeReasons(fault.names, fault.next, next))));
  CHECK(explanation->isVisible());
  find.page.setWhy(false);
  CHECK_FALSE(explanation->isVisible());
}

TEST_CASE("what each answer would leave is said by the suspects' letters, OL last") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const FaultCase& fault = *demo.fault->fault();
  const auto& rows = find.find<AnswersView>("answers")->rows();
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].reads.startsWith(QStringLiteral("near 0.6")));
  CHECK(rows[1].reads == QStringLiteral("OL"));
  // Each of the first four stands in one of the answers: in that which is foretold for it.
  std::size_t letters = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const std::size_t which = fault.suspects.ranked[i].faultClass;
    if (fault.isolation.classes[which].kind == FaultKind::noneOfThese) continue;
    const Prediction told = predictDiode(fault.isolation, demo.fault->nextProbe()->place, which);
    const QString letter(QChar(static_cast<char>('A' + i)));
    const auto& row = rows[told.overLimit > 0.5 ? 1 : 0];
    CHECK(std::find(row.letters.begin(), row.letters.end(), letter) != row.letters.end());
    ++letters;
  }
  CHECK(rows[0].letters.size() + rows[1].letters.size() == letters);
}

TEST_CASE("four suspects are listed and the rest is one row; V lists all, and the shares add up") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const auto* list = find.find<SuspectList>("suspects");
  CHECK(list->count() == 4);
  double sum = list->rest().probability;
  for (std::size_t i = 0; i < 4; ++i)
    sum += demo.fault->fault()->suspects.ranked[i].probability;
  CHECK(sum == Approx(1.0).margin(1e-9));
  CHECK(list->rest().words.contains(QStringLiteral("other place")));
  Find::key(Qt::Key_V);
  CHECK(list->count() > 4);
  CHECK(find.find<QPushButton>("allSuspects")->isChecked());
  Find::key(Qt::Key_V);
  CHECK(list->count() == 4);
}

TEST_CASE("a suspect keeps its letter when the order changes, in list, tree and map") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const auto lettersNow = [&] {
    std::map<std::string, std::string> out;
    const auto* list = find.find<SuspectList>("suspects");
    for (int i = 0; i < list->count(); ++i) {
      const QString said = list->item(i)->data(Qt::AccessibleTextRole).toString();
      if (said.isEmpty()) continue;
      const QString words = list->item(i)->text().section(QStringLiteral("  "), 1);
      out[words.toStdString()] = said.left(1).toStdString();
    }
    return out;
  };
  const auto before = lettersNow();
  REQUIRE(before.size() == 4);
  Find::type("649");
  demo.settle();
  const auto after = lettersNow();
  std::size_t kept = 0;
  for (const auto& [words, letter] : after)
    if (const auto old = before.find(words); old != before.end()) {
      CHECK(letter == old->second);
      ++kept;
    } else {
      CHECK(letter > "D"); // new among the first: the next letter
    }
  CHECK(kept >= 1);
  CHECK(kept < 4);
  // The leading one's letter stands on the tree and on the map.
  const auto* list = find.find<SuspectList>("suspects");
  const QString leading = list->item(0)->data(Qt::AccessibleTextRole).toString().left(1);
  const auto& nodes = treeOf(find).tree().nodes;
  CHECK(std::any_of(nodes.begin(), nodes.end(),
                    [&](const TreeNode& node) { return node.branch.letters.contains(leading); }));
  const Overlay overlay = find.page.overlay();
  CHECK(std::any_of(overlay.marks.begin(), overlay.marks.end(),
                    [&](const OverlayMark& mark) { return wordsOf(mark.label) == leading.toStdString(); }));
}

TEST_CASE("a place asked for again says what it read, and what each answer means") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  CHECK_FALSE(treeOf(find).tree().again);
  // OL at every place that is asked for: sooner or later one of them is wanted once more.
  bool again = false;
  for (int i = 0; i < 12 && demo.fault->nextProbe() != nullptr && !again; ++i) {
    again = demo.fault->nextProbe()->again;
    if (again) break;
    Find::key(Qt::Key_O);
    demo.settle();
  }
  if (!again) return; // the solver is content: nothing to show
  CHECK(find.find<QLabel>("probeHead")->text().startsWith(QStringLiteral("Once more")));
  CHECK(find.find<QLabel>("probeReason")->text().startsWith(QStringLiteral("Read OL before.")));
  CHECK(treeOf(find).tree().again);
  find.picture("find-again");
}

TEST_CASE("the tree fits its width, however narrow") {
  DemoDesk demo;
  Find find(demo);
  for (const int width : {1240, 700, 420}) {
    find.page.resize(width, 620);
    QApplication::processEvents();
    CHECK(treeOf(find).horizontalScrollBar()->maximum() <= 1); // nothing to scroll to
  }
}

TEST_CASE("where room is short the due place, the reading and the keys stay") {
  DemoDesk demo;
  Find find(demo);
  CHECK(treeOf(find).isVisible());
  // As with letters of 200 % in a window of 1280 by 800 pixels.
  setFaceScale(2.0);
  followScale(find.page);
  find.page.resize(1280, 576);
  QApplication::processEvents();
  CHECK(find.page.size() == QSize(1280, 576));
  CHECK(find.find<QLabel>("probePlace")->isVisible());
  CHECK(find.find<QLineEdit>("reading")->isVisible());
  CHECK_FALSE(find.find<SuspectList>("suspects")->isVisible());
  CHECK_FALSE(treeOf(find).isVisible());
  setFaceScale(1.0);
}

TEST_CASE("a click in the strip of odd pins looks at that pin's line") {
  DemoDesk demo;
  Find find(demo);
  demo.fault->choose(demo.job->board()->lookup->netsNamed("KEY_COL2").front());
  demo.settle();
  CHECK(find.find<QLabel>("lineName")->isVisible()); // no odd pin is on it
  Find::key(Qt::Key_1, Qt::AltModifier);
  demo.settle();
  CHECK(demo.fault->lineName() == "KEY_COL3");
  CHECK(find.find<OddStrip>("oddStrip")->chosen() == 0);
  CHECK_FALSE(find.find<QLabel>("lineName")->isVisible());
}

TEST_CASE("a reading typed elsewhere counts as one at the next probe does, and undo takes it back") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const std::size_t before = demo.job->job()->readings.size();
  Find::key(Qt::Key_Tab);
  REQUIRE(QApplication::focusWidget() == find.find<QLineEdit>("otherReading"));
  Find::type("pad of J4.9 OL"); // letters are letters here: neither O nor N nor U is a command
  demo.settle();
  CHECK(demo.job->job()->readings.size() == before + 1);
  CHECK(demo.job->job()->readings.back().purpose == ReadingPurpose::check);
  checkSame(demo, isolated({"pad of J4.9 OL"}));
  CHECK(QApplication::focusWidget() == find.find<QLineEdit>("reading"));
  Find::key(Qt::Key_U);
  demo.settle();
  CHECK(demo.job->job()->readings.size() == before);
  checkSame(demo, isolated({}));
  Find::type("J99.1 0.4");
  CHECK(find.error);
  CHECK(demo.job->job()->readings.size() == before);
  CHECK(find.find<QLineEdit>("reading")->text() == QStringLiteral("J99.1 0.4")); // to be mended
}

TEST_CASE("a place elsewhere is picked from a list by its name, and typed as its handle") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  Find::key(Qt::Key_Tab);
  auto* field = find.find<QLineEdit>("otherReading");
  REQUIRE(field->completer() != nullptr);
  // Every place of the line stands there, once.
  const auto* model = field->completer()->model();
  CHECK(model->rowCount() == static_cast<int>(demo.fault->fault()->isolation.places.size()));
  field->completer()->setCompletionPrefix(QStringLiteral("via"));
  REQUIRE(field->completer()->completionCount() > 0);
  const QString handle = field->completer()->currentCompletion();
  CHECK(field->completer()->currentIndex().data().toString().contains(handle.trimmed()));
  const std::size_t before = demo.job->job()->readings.size();
  field->setText(handle + QStringLiteral("0.65"));
  Find::key(Qt::Key_Return);
  demo.settle();
  REQUIRE(demo.job->job()->readings.size() == before + 1);
  CHECK(QString::fromStdString(demo.job->job()->readings.back().reading.point.label) == handle.trimmed());
}

TEST_CASE("N goes to the next best probe, undo comes back to it, Shift+N reaches all again") {
  DemoDesk demo(DemoDesk::Until::walked);
  const Find find(demo);
  const std::string first = due(demo);
  Find::key(Qt::Key_N);
  demo.settle();
  CHECK(due(demo) != first);
  checkSame(demo, isolated({}, {first}));
  const std::string second = due(demo);
  Find::key(Qt::Key_N);
  demo.settle();
  checkSame(demo, isolated({}, {first, second}));
  Find::key(Qt::Key_U);
  demo.settle();
  CHECK(due(demo) == second);
  Find::key(Qt::Key_N, Qt::ShiftModifier);
  demo.settle();
  CHECK(due(demo) == first);
}

TEST_CASE("a second value while the first is being weighed is refused and not filed under the old place") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const std::size_t before = demo.job->job()->readings.size();
  Find::type("649");
  Find::key(Qt::Key_O); // before the event loop has told the result
  CHECK(demo.job->job()->readings.size() == before + 1);
  CHECK(find.error);
  demo.settle();
  CHECK(demo.job->job()->readings.size() == before + 1);
}

TEST_CASE("at Find, too, a second press in the same touch belongs to the first reading") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  const std::size_t before = demo.job->job()->readings.size();
  ValueTaken value{{}, 0.600, ReadingMode::diode, Settling::rising, {}};
  find.page.take(value);
  value.value = 0.649;
  value.settling = Settling::settled;
  value.again = true;
  find.page.take(value); // while the first is still being weighed
  demo.settle();
  const auto& readings = demo.job->job()->readings;
  REQUIRE(readings.size() == before + 2);
  CHECK(readings[before].reading.point.label == "C28.1");
  CHECK(readings[before + 1].reading.point.label == "C28.1");
  checkSame(demo, isolated({"C28.1 0.649"})); // the later one alone counts
}

TEST_CASE("the linked meter's value is filed at the next probe; one in another mode is refused") {
  DemoDesk demo(DemoDesk::Until::walked);
  Find find(demo);
  REQUIRE(find.page.wantedMode() == ReadingMode::diode);
  ValueTaken value;
  value.value = 12.0;
  value.mode = ReadingMode::ohms;
  const std::size_t before = demo.job->job()->readings.size();
  find.page.take(value);
  CHECK(find.error);
  CHECK(demo.job->job()->readings.size() == before);
  value.value = 0.649;
  value.mode = ReadingMode::diode;
  find.page.take(value);
  demo.settle();
  checkSame(demo, isolated({"C28.1 0.649"}));
}

TEST_CASE("arrows go along the line, and map and suspects follow") {
  DemoDesk demo;
  Find find(demo);
  int changes = 0;
  QObject::connect(&find.page, &StationPage::overlayChanged, [&] { ++changes; });
  LineTreeView& tree = treeOf(find);
  const std::size_t marks = find.page.overlay().marks.size();
  Find::key(Qt::Key_Home);
  REQUIRE(tree.selectedNode() != nullptr);
  CHECK(tree.selectedNode()->label == QStringLiteral("J4.9")); // the pin that was walked
  CHECK(find.page.overlay().marks.size() == marks + 1);
  Find::key(Qt::Key_Right);
  REQUIRE(tree.selection());
  CHECK(tree.selection()->branch);
  const std::size_t lines = find.page.overlay().lines.size();
  CHECK(find.page.overlay().lines.back().style == LineStyle::outline);
  CHECK_FALSE(find.find<QLabel>("selected")->text().isEmpty());
  Find::key(Qt::Key_Right);
  CHECK_FALSE(tree.selection()->branch);
  CHECK(find.page.overlay().lines.size() == lines - 1);
  Find::key(Qt::Key_Left);
  CHECK(tree.selection()->branch);
  CHECK(changes == 4);
  find.picture("find-selected");

  // A suspect chosen in the list is found in the tree.
  const auto* list = find.find<SuspectList>("suspects");
  const QString leading = find.find<QPlainTextEdit>("suspectExplanation")->toPlainText();
  const auto row = list->currentRow();
  Find::key(row == 0 ? Qt::Key_PageDown : Qt::Key_PageUp);
  CHECK(list->currentRow() == (row == 0 ? 1 : row - 1));
  CHECK(find.find<QPlainTextEdit>("suspectExplanation")->toPlainText().toStdString() !=
        leading.toStdString());
  const Suspect& chosen = demo.fault->fault()->suspects.ranked[static_cast<std::size_t>(list->currentRow())];
  REQUIRE(tree.selectedNode() != nullptr);
  const auto& pieces = tree.selectedNode()->branch.pieces;
  CHECK(std::any_of(pieces.begin(), pieces.end(),
                    [&](const TreePiece& piece) { return piece.edge == chosen.places.front().edge; }));
}

TEST_CASE("turning the picture says the places anew, and what was selected stays selected") {
  DemoDesk demo;
  Find find(demo);
  const auto* list = find.find<SuspectList>("suspects");
  const auto* explanation = find.find<QPlainTextEdit>("suspectExplanation");
  Find::key(Qt::Key_PageDown);
  REQUIRE(list->currentRow() == 1);
  LineTreeView& tree = treeOf(find);
  Find::key(Qt::Key_Home);
  REQUIRE(tree.selectedNode()->label == QStringLiteral("J4.9"));
  const int row = list->currentRow();
  const QString upright = list->item(row)->text(), told = explanation->toPlainText();
  for (const auto& [quarters, word] :
       {std::pair{1, "left of"}, {2, "below"}, {3, "right of"}, {0, "above"}}) {
    setPictureBeside(PictureLie{false, quarters});
    find.page.pictureTurned();
    CHECK(list->currentRow() == row);
    REQUIRE(tree.selectedNode() != nullptr);
    CHECK(tree.selectedNode()->label == QStringLiteral("J4.9"));
    CHECK((list->item(row)->text() == upright) == (quarters == 0));
    CHECK((explanation->toPlainText() == told) == (quarters == 0));
    INFO(explanation->toPlainText().toStdString());
    CHECK(explanation->toPlainText().contains(QLatin1String(word)));
  }
  setPictureBeside({});
}

TEST_CASE("a pin clicked in the map is selected in the tree; one of another line is offered as a line") {
  DemoDesk demo;
  Find find(demo);
  const Lookup& lookup = *demo.job->board()->lookup;
  find.page.pinChosen(lookup.pinsLabelled("C28.1").front());
  REQUIRE(treeOf(find).selectedNode() != nullptr);
  CHECK(treeOf(find).selectedNode()->label == QStringLiteral("C28.1"));
  find.page.pinChosen(lookup.pinsLabelled("J4.8").front());
  CHECK(find.told.contains(QStringLiteral("J4.8")));
  CHECK(treeOf(find).selectedNode()->label == QStringLiteral("C28.1"));
  Find::key(Qt::Key_L, Qt::ControlModifier);
  Find::key(Qt::Key_Return);
  demo.settle();
  CHECK(demo.fault->pin() == lookup.pinsLabelled("J4.8").front());
  CHECK(demo.fault->chosen());
  CHECK(treeOf(find).tree().nodes.front().label == QStringLiteral("J4.8"));
}

TEST_CASE("a line is chosen by net or pin, and an empty name follows the oddest pin again") {
  DemoDesk demo;
  Find find(demo);
  const NetId odd = demo.fault->net();
  Find::key(Qt::Key_L, Qt::ControlModifier);
  Find::type("NO_SUCH_NET");
  CHECK(find.error);
  CHECK(demo.fault->net() == odd);
  Find::type("KEY_COL2");
  demo.settle();
  CHECK(demo.fault->lineName() == "KEY_COL2");
  CHECK(find.find<QLabel>("lineName")->text() == QStringLiteral("Line KEY_COL2"));
  CHECK(QApplication::focusWidget() == find.find<QLineEdit>("reading"));
  Find::key(Qt::Key_L, Qt::ControlModifier);
  Find::key(Qt::Key_Return);
  demo.settle();
  CHECK(demo.fault->net() == odd);
}

TEST_CASE("empty states say what to do, and a line without known copper works between its pins") {
  needApplication<QApplication>();
  const TemporaryFolder folder;
  const std::filesystem::path store = folder.path / "empty";
  auto opened = BenchJob::open({std::filesystem::path(NETMEND_SOURCE_DIR) / "data", store});
  REQUIRE(opened);
  BenchWalk walk(**opened);
  BenchFault fault(**opened, walk);
  BenchDrawing drawing(**opened);
  FindPage page({**opened, walk, fault, drawing});
  page.resize(1240, 620);
  const auto lead = [&] { return page.findChild<QLabel*>(QStringLiteral("probeLead"))->text(); };
  CHECK(lead().contains(QStringLiteral("No board yet")));
  REQUIRE((*opened)->useConnector("J4, 6 pins"));
  CHECK(lead().contains(QStringLiteral("walk the connector first")));
  auto* field = page.findChild<QLineEdit*>(QStringLiteral("line"));
  QTest::keyClicks(field, QStringLiteral("J4.3"));
  QTest::keyClick(field, Qt::Key_Return);
  REQUIRE(waitFor([&] { return !fault.working(); }));
  REQUIRE(fault.fault());
  CHECK(page.findChild<QLabel*>(QStringLiteral("notKnown"))
            ->text()
            .contains(QStringLiteral("entering the pins that it leads to")));
  const auto* tree = page.findChild<LineTreeView*>(QStringLiteral("lineTree"));
  REQUIRE_FALSE(tree->tree().nodes.empty());
  CHECK(tree->tree().nodes.front().label == QStringLiteral("J4.3"));
}

TEST_CASE("all that is drawn on the dark ground stays dark but for letters and marks") {
  DemoDesk demo;
  Find find(demo);
  faceStyle().setTheme(PictureTheme::dark);
  const QImage image = find.find<QWidget>("lineTree")->grab().toImage();
  int bright = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x)
      bright += image.pixelColor(x, y).lightness() > 128;
  CHECK(bright > 100); // something is to be seen
  CHECK(bright < image.width() * image.height() / 4);
  faceStyle().setTheme(PictureTheme::light);
  find.picture("find-dark");
}

TEST_CASE("no key keeps the window waiting") {
  DemoDesk demo(DemoDesk::Until::walked);
  const Find find(demo);
  double worst = 0.0;
  const auto press = [&](int key, Qt::KeyboardModifiers modifiers = {}) {
    const std::clock_t start = std::clock();
    Find::key(key, modifiers);
    worst = std::max(worst, 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  };
  for (const int key :
       {Qt::Key_Home, Qt::Key_Right, Qt::Key_Right, Qt::Key_Down, Qt::Key_PageDown, Qt::Key_N})
    press(key);
  demo.settle();
  press(Qt::Key_O);
  demo.settle();
  WARN("slowest key: " << worst << " ms of processor time, that of the solver beside it included");
  if (!sanitized) CHECK(worst < 50.0);
}
