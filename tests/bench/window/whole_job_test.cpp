#include <catch2/catch.hpp>

#include <QCheckBox>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>

#include <algorithm>
#include <regex>

#include "bench/demo_cli.h"
#include "bench/language/language.h"
#include "hands.h"
#include "netmend/probing/walk_file.h"
#include "netmend/probing/words.h"
#include "netmend/words/fault.h"
#include "room.h"
#include "window_pictures.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// The demo's job done at the window, each result beside what the command line makes of the same book.
class WholeJob {
public:
  explicit WholeJob(Hands::By by) : hands(rig, by), pictures(rig) {
    speak(QStringLiteral("en")); // plurals are words
    std::vector<std::string> keep{"walk", "keep", "--book", book()};
    for (int i = 1; i <= 8; ++i)
      keep.push_back(deviceFile("good-" + std::to_string(i) + ".netmend-walk.json"));
    cli(keep);
  }

  void bookIn();
  void openBoard();
  void walk();
  void find();
  void bridge();
  void prove();
  void handOver();
  void savePdf();
  void finish() const {
    CHECK_FALSE(rig.window->message().startsWith(QStringLiteral("⚠")));
    if (pictures.wanted()) return;
    const SlowEvents& slow = static_cast<TimedApplication*>(qApp)->slow;
    std::printf("slowest handler %lld ms of work, %lld ms with the disk; %d keys\n", slow.worst,
                slow.worstWithDisk, rig.keys);
    rig.fastEvents();
  }

  void checkFits() const { checkRoom(rig); }

private:
  [[nodiscard]] std::string book() const { return file("jobs.netmend-book"); }
  [[nodiscard]] std::string file(const char* name) const {
    return rig.folder.filePath(QString::fromLatin1(name)).toStdString();
  }
  [[nodiscard]] Desk desk() const { return rig.window->desk(); }
  [[nodiscard]] std::string number() const { return desk().job.job()->number; }
  /// A command about the line of the job that is open.
  [[nodiscard]] nlohmann::json ofLine(const char* what, const char* how) const {
    return cli({what, how, "--board", deviceFile("tide-logger.netmend-board.json"), "--net", "KEY_COL3",
                "--book", book(), "--job", number()});
  }
  /// `text` with the map upright, turned by one, two, three quarters, and from below; after that, as before.
  void checkTurned(const std::function<QString()>& text, const std::vector<const char*>& turned) const;
  void settle() const {
    REQUIRE(BenchRig::wait([this] { return !desk().job.weighing() && !desk().fault.working(); }, 60'000));
    QApplication::processEvents();
  }
  void enter(const QString& value) {
    if (value == QStringLiteral("OL")) return hands.command("OL", Qt::Key_O);
    rig.type(value);
    rig.press(Qt::Key_Return);
  }
  /// The value in the middle of what stands on the screen after these words; nothing where it is no number.
  [[nodiscard]] static std::optional<QString> wantedBy(const QString& text, const QString& after);

  BenchRig rig;
  Hands hands;
  WindowPictures pictures;
};

std::optional<QString> WholeJob::wantedBy(const QString& text, const QString& after) {
  const auto at = text.indexOf(after);
  if (at < 0) return std::nullopt;
  const std::string words = text.mid(at + after.size()).toStdString();
  if (words.starts_with("OL")) return QStringLiteral("OL");
  std::smatch found;
  const auto number = [&](std::size_t group) { return std::stod(found[group].str()); };
  if (std::regex_search(words, found, std::regex(R"(^(-?[0-9.]+) (?:V|Ω) to ([0-9.]+))")))
    return QString::number((number(1) + number(2)) / 2, 'f', 3);
  if (std::regex_search(words, found, std::regex(R"(^at most ([0-9.]+))")))
    return QString::number(number(1) / 2, 'f', 3);
  if (std::regex_search(words, found, std::regex(R"(^(?:About )?([0-9.]+) (?:V|ohm))")))
    return QString::fromStdString(found[1].str());
  return std::nullopt;
}

void WholeJob::bookIn() {
  hands.goTo(Station::bookIn);
  if (!hands.mouse()) rig.press(Qt::Key_N, Qt::ControlModifier);
  hands.fill("Device", QStringLiteral("Tide logger"));
  hands.fill("Serial", QStringLiteral("TL-0417"));
  hands.fill("Symptom", QStringLiteral("Third column of the keypad is dead: 3, 6, 9 and Enter do nothing"));
  hands.fill("History", QStringLiteral("Keypad swapped on site, no change. Washed over in a winter storm."));
  hands.fill("As received", QStringLiteral("Salt marks at the lower edge; opened before"));
  hands.fill("Customer", QStringLiteral("North pier, harbour office"));
  hands.fill("Their reference", QStringLiteral("HO-118"));
  hands.fill("Internal notes", QStringLiteral("Wants the board back for Friday's tide"));
  const auto notes = [&] {
    const Job* job = desk().job.job();
    return job != nullptr ? job->internalNotes : std::string();
  };
  BenchRig::wait([&] { return notes().ends_with("tide"); });
  REQUIRE(notes() == "Wants the board back for Friday's tide");
  const auto kept = desk().job.book().jobNumbered(number());
  REQUIRE(kept);
  CHECK(kept->device == "Tide logger");
  CHECK(kept->customer == "North pier, harbour office");
  pictures.take(QStringLiteral("1-book-in"));
}

void WholeJob::openBoard() {
  hands.goTo(Station::board);
  hands.command("Open a board file", Qt::Key_O, Qt::ControlModifier);
  hands.nameFile(QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
  REQUIRE(BenchRig::wait([&] { return desk().job.board() != nullptr; }));
  settle();
  CHECK(rig.text("boardKnown").contains(QStringLiteral("8 good boards walked")));
  rig.window->map().settle();
  pictures.take(QStringLiteral("2-board"));
}

void WholeJob::walk() {
  hands.choose(hands.visible<QListWidget>("Walk which part"), QStringLiteral("J4 "));
  REQUIRE(rig.window->station() == Station::walk);
  REQUIRE(rig.text("duePoint").startsWith(QStringLiteral("J4 pin 1")));
  hands.fill("Board at °C", QStringLiteral("22"));
  rig.press(Qt::Key_Return);
  const auto faulty = readWalkFile(deviceFile("faulty.netmend-walk.json"));
  REQUIRE(faulty);
  for (const Reading& reading : faulty->readings) {
    REQUIRE(desk().walk.due());
    REQUIRE(desk().walk.due()->label == reading.point.label);
    if (reading.point.label == "J4.10") pictures.take(QStringLiteral("3-walk"));
    enter(reading.value ? QString::number(*reading.value, 'f', 3) : QStringLiteral("OL"));
  }
  CHECK_FALSE(desk().walk.due());
  settle();
  pictures.take(QStringLiteral("3-walk-done"));

  const auto theirs =
      cli({"walk", "judge", deviceFile("faulty.netmend-walk.json"), "--board",
           deviceFile("tide-logger.netmend-board.json"), "--book", book(), "--all"})["verdicts"];
  const Walk& mine = desk().walk.walk(false);
  const auto& verdicts = desk().walk.judged().verdicts;
  REQUIRE(theirs.size() == mine.readings.size());
  for (std::size_t i = 0; i < theirs.size(); ++i) {
    CHECK(mine.readings[i].point.label == theirs[i]["point"]);
    CHECK(word(verdicts[i].kind) == theirs[i]["verdict"].get<std::string>());
    CHECK(mine.readings[i].value == faulty->readings[i].value);
  }
  const auto odd = desk().walk.oddOnes();
  REQUIRE(odd.size() == 1);
  CHECK(mine.readings[odd.front()].point.label == "J4.9");
}

void WholeJob::find() {
  // The mouse follows the way along the top; the key follows what is next.
  if (hands.mouse())
    hands.goTo(Station::find);
  else
    rig.press(Qt::Key_Return, Qt::ControlModifier);
  REQUIRE(rig.window->station() == Station::find);
  settle();
  CHECK(rig.window->page(Station::find).footMode().text == QStringLiteral("FIND KEY_COL3"));
  pictures.take(QStringLiteral("4-find"));
  CHECK(rig.text("probePlace") == QStringLiteral("C28 pin 1"));
  enter(QStringLiteral("0.649"));
  settle();
  CHECK(rig.text("probePlace") == QStringLiteral("pad of J4.9"));
  enter(QStringLiteral("OL"));
  settle();
  pictures.take(QStringLiteral("4-find-found"));

  const auto theirs = ofLine("fault", "isolate");
  const FaultCase& fault = *desk().fault.fault();
  const auto& mine = fault.suspects.ranked;
  REQUIRE(mine.size() == theirs["suspects"].size());
  for (std::size_t i = 0; i < mine.size(); ++i) {
    CHECK(wordsOf(nameOf(fault.isolation.classes[mine[i].faultClass], fault.names)) ==
          theirs["suspects"][i]["text"]);
    CHECK(mine[i].probability == Approx(theirs["suspects"][i]["probability"].get<double>()).margin(1e-9));
  }
  CHECK(theirs["next_probe"]["stop"] == (desk().fault.nextProbe() == nullptr));
  checkTurned(
      [&] { return rig.window->findChild<QListWidget*>(QStringLiteral("suspects"))->item(0)->text(); },
      {"vias 1.5 mm below C28.1 and 2.4 mm above J4.9", "vias 1.5 mm right of C28.1 and 2.4 mm left of J4.9",
       "vias 1.5 mm above C28.1 and 2.4 mm below J4.9", "vias 1.5 mm left of C28.1 and 2.4 mm right of J4.9",
       "vias 1.5 mm below C28.1 and 2.4 mm above J4.9"});
}

void WholeJob::checkTurned(const std::function<QString()>& text,
                           const std::vector<const char*>& turned) const {
  CopperMap& map = rig.window->map();
  if (!map.isVisible()) return;
  const QString before = text();
  const auto has = [&](const char* words) {
    QApplication::processEvents(); // cards made anew are seen with the next event
    const std::string now = text().toStdString();
    INFO(now);
    CHECK(text().contains(QLatin1String(words)));
  };
  has(turned[0]);
  for (std::size_t quarter = 1; quarter < 4; ++quarter) {
    map.setTurn(Degrees(90.0 * static_cast<double>(quarter)));
    has(turned[quarter]);
  }
  map.setTurn(Degrees(0));
  map.flip();
  has(turned[4]);
  map.flip();
  QApplication::processEvents();
  CHECK(text() == before);
}

void WholeJob::bridge() {
  hands.goTo(Station::bridge);
  settle();
  pictures.take(QStringLiteral("5-bridge"));
  const auto theirs = ofLine("jumper", "route")["proposals"];
  const auto mine = desk().fault.proposals();
  REQUIRE(mine);
  REQUIRE(mine->proposals.size() == theirs.size());
  for (std::size_t i = 0; i < theirs.size(); ++i) {
    CHECK(mine->proposals[i].from.point == theirs[i]["from"]["handle"]);
    CHECK(mine->proposals[i].to.point == theirs[i]["to"]["handle"]);
    CHECK(mine->proposals[i].length.mm() == Approx(theirs[i]["length_mm"].get<double>()));
  }
  // The cards have pictures of their own, which lie as the board was drawn.
  CHECK(rig.text("cardPlaces").startsWith(QStringLiteral("Via 2.4 mm above J4.9")));
  hands.command("accept", Qt::Key_A);
  const auto& actions = desk().job.job()->actions;
  REQUIRE(actions.size() == 1);
  CHECK(actions.front().jumper->from.point.label == theirs[0]["from"]["handle"]);
  const std::size_t count = actions.front().steps.size();
  for (std::size_t i = 0; i < count; ++i) {
    if (i == 4) pictures.take(QStringLiteral("5-bridge-work"));
    const auto value = wantedBy(rig.text("mustRead"), QStringLiteral("Must be: "));
    const QString due = rig.text("dueStep");
    if (value)
      enter(*value);
    else
      hands.command("Tick", Qt::Key_Space);
    INFO(due.toStdString() << " " << rig.window->message().toStdString());
    REQUIRE(desk().job.job()->actions.front().steps[i].done);
  }
  CHECK(stationDone(Station::bridge, desk()));
}

void WholeJob::prove() {
  if (hands.mouse())
    hands.goTo(Station::prove);
  else
    rig.press(Qt::Key_Return, Qt::ControlModifier);
  REQUIRE(rig.window->station() == Station::prove);
  CHECK(rig.text("proofPoint").startsWith(QStringLiteral("J4 pin 9")));
  for (int read = 0; !rig.text("proofMust").isEmpty(); ++read) {
    REQUIRE(read < 20);
    if (read == 2) pictures.take(QStringLiteral("6-prove"));
    const auto value = wantedBy(rig.text("proofMust"), QStringLiteral("Must be "));
    INFO(rig.text("proofPoint").toStdString() << " " << rig.text("proofMust").toStdString());
    REQUIRE(value);
    enter(*value);
    CHECK(rig.text("proofVerdict").contains(QStringLiteral("in range")));
  }
  CHECK(rig.text("proofState").startsWith(QStringLiteral("NOT PROVED")));
  // The symptom names them.
  for (QCheckBox* toggle : rig.window->findChildren<QCheckBox*>(QStringLiteral("functionCheck"))) {
    if (hands.mouse()) {
      QTest::mouseClick(toggle, Qt::LeftButton);
    } else {
      hands.reach(*toggle);
      rig.press(Qt::Key_Space);
    }
  }
  REQUIRE(BenchRig::wait([&] { return stationDone(Station::prove, desk()); }));
  CHECK(rig.text("proofState").startsWith(QStringLiteral("PROVED")));
  pictures.take(QStringLiteral("6-prove-done"));
}

void WholeJob::handOver() {
  if (hands.mouse())
    hands.goTo(Station::handOver);
  else
    rig.press(Qt::Key_Return, Qt::ControlModifier);
  REQUIRE(rig.window->station() == Station::handOver);
  struct Line {
    const char* what;
    const char* quantity;
    const char* price;
  };
  for (const Line& line : {Line{"Track repair under the microscope", "1.5", "48.00"},
                           Line{"Wire, mask, solvent", "1", "3.50"}}) {
    hands.fill("chargeWhat", QString::fromLatin1(line.what));
    hands.fill("chargeQuantity", QString::fromLatin1(line.quantity));
    hands.fill("chargePrice", QString::fromLatin1(line.price));
    hands.command("Add this charge", Qt::Key_Return);
  }
  CHECK(rig.text("total") == QStringLiteral("75.50"));
  hands.command("Change notes and letterhead", Qt::Key_L, Qt::ControlModifier);
  auto& workshop = hands.visible<QPlainTextEdit>("workshop");
  hands.reach(workshop);
  rig.type(QStringLiteral("Slipway Board Repair, Quay 3"));
  hands.command("handedOver", Qt::Key_H, Qt::ControlModifier);
  INFO(rig.window->message().toStdString());
  REQUIRE(BenchRig::wait([&] { return desk().job.job()->state == JobState::handedOver; }));
  CHECK(stationDone(Station::handOver, desk()));
  hands.command("Change notes and letterhead", Qt::Key_L, Qt::ControlModifier);
  pictures.take(QStringLiteral("7-hand-over"));
}

void WholeJob::savePdf() {
  // The command line's sheet is the workshop's copy.
  hands.command("workshopCopy", Qt::Key_Tab);
  hands.command("Save PDF", Qt::Key_S, Qt::ControlModifier);
  const std::string mine = file("mine.pdf");
  hands.nameFile(QString::fromStdString(mine));
  const bool saved =
      BenchRig::wait([&] { return rig.window->message().contains(QStringLiteral("Saved: ")); });
  INFO(rig.window->message().toStdString());
  REQUIRE(saved);
  cli({"sheet", "make", "--book", book(), "--job", number(), "-o", file("theirs.pdf"), "--workshop",
       "Slipway Board Repair, Quay 3"});
  const auto textOf = [](const std::string& pdf) { return outputOf("pdftotext -layout '" + pdf + "' -"); };
  const std::string text = textOf(mine);
  for (const char* words : {"Tide logger", "TL-0417", "Slipway Board Repair", "KEY_COL3", "Track repair",
                            "75.50", "J4.9", "Key 3", "Enter"}) {
    INFO(words);
    CHECK(text.find(words) != std::string::npos);
  }
  CHECK(text == textOf(file("theirs.pdf")));
}

void takeThrough(WholeJob& job) {
  job.bookIn();
  job.openBoard();
  job.walk();
  job.find();
  job.bridge();
  job.prove();
  job.handOver();
  job.savePdf();
  job.finish();
}

int mouseEvents() {
  return static_cast<TimedApplication*>(qApp)->mouseEvents;
}

} // namespace

TEST_CASE("the whole job by mouse says at every station what the command line says") {
  WholeJob job(Hands::By::mouse);
  takeThrough(job);
  job.checkFits();
}

TEST_CASE("the whole job by keyboard alone, without one mouse event") {
  if (qEnvironmentVariableIsSet("NETMEND_PICTURES")) return; // the other one takes them
  const int before = [] {
    needApplication<TimedApplication>();
    return mouseEvents();
  }();
  WholeJob job(Hands::By::keyboard);
  takeThrough(job);
  CHECK(mouseEvents() == before);
}
