#include <catch2/catch.hpp>

#include <QListWidget>

#include "bench/demo_cli.h"
#include "job_hand.h"
#include "netmend/probing/words.h"
#include "netmend/words/fault.h"
#include "room.h"
#include "window_pictures.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// The guide's story at the window, each result beside what the command line makes of the same book.
class GuidedJob {
public:
  explicit GuidedJob(Hands::By by)
      : hand(by, QStringLiteral("en"), typedCharges(guideStory())), pictures(hand.rig) {
    hand.onReading = [this](Station station, std::size_t which) { look(station, which); };
  }
  void takeThrough();
  void checkFits() const { checkRoom(hand.rig); }

private:
  static JobStory typedCharges(JobStory story) {
    story.total = "75.50"; // 1.5 × 48.00 + 3.50
    return story;
  }
  void look(Station station, std::size_t which);
  void checkWalk() const;
  void checkFind() const;
  void checkWays() const;
  void checkSheet() const;
  void charge();
  /// `text` with the map upright, turned by one, two, three quarters, and from below; after that, as before.
  void checkTurned(const std::function<QString()>& text, const std::vector<const char*>& turned) const;
  /// A command about the line of the job that is open.
  [[nodiscard]] nlohmann::json ofLine(const char* what, const char* how) const {
    return cli({what, how, "--board", deviceFile("tide-logger.netmend-board.json"), "--net", "KEY_COL3",
                "--book", hand.book(), "--job", hand.job().number});
  }

  JobHand hand;
  WindowPictures pictures;
};

void GuidedJob::look(Station station, std::size_t which) {
  if (station == Station::walk && which == 9) pictures.take(QStringLiteral("3-walk"));
  if (station == Station::find && which == 0) {
    pictures.take(QStringLiteral("4-find"));
    CHECK(hand.rig.text("probePlace") == QStringLiteral("C28 pin 1"));
  }
  if (station == Station::find && which == 1)
    CHECK(hand.rig.text("probePlace") == QStringLiteral("pad of J4.9"));
  if (station == Station::bridge && which == 0) {
    pictures.take(QStringLiteral("5-bridge"));
    checkWays();
  }
  if (station == Station::bridge && which == 5) pictures.take(QStringLiteral("5-bridge-work"));
  if (station == Station::prove && which == 2) pictures.take(QStringLiteral("6-prove"));
}

void GuidedJob::checkWalk() const {
  const auto theirs =
      cli({"walk", "judge", deviceFile("faulty.netmend-walk.json"), "--board",
           deviceFile("tide-logger.netmend-board.json"), "--book", hand.book(), "--all"})["verdicts"];
  const Walk& mine = hand.desk().walk.walk(false);
  const auto& verdicts = hand.desk().walk.judged().verdicts;
  REQUIRE(theirs.size() == mine.readings.size());
  for (std::size_t i = 0; i < theirs.size(); ++i) {
    CHECK(mine.readings[i].point.label == theirs[i]["point"]);
    CHECK(word(verdicts[i].kind) == theirs[i]["verdict"].get<std::string>());
  }
}

void GuidedJob::checkFind() const {
  const auto theirs = ofLine("fault", "isolate");
  const FaultCase& fault = hand.fault();
  const auto& mine = fault.suspects.ranked;
  REQUIRE(mine.size() == theirs["suspects"].size());
  for (std::size_t i = 0; i < mine.size(); ++i) {
    CHECK(wordsOf(nameOf(fault.isolation.classes[mine[i].faultClass], fault.names)) ==
          theirs["suspects"][i]["text"]);
    CHECK(mine[i].probability == Approx(theirs["suspects"][i]["probability"].get<double>()).margin(1e-9));
  }
  CHECK(theirs["next_probe"]["stop"] == (hand.desk().fault.nextProbe() == nullptr));
  checkTurned(
      [&] { return hand.rig.window->findChild<QListWidget*>(QStringLiteral("suspects"))->item(0)->text(); },
      {"vias 1.5 mm below C28.1 and 2.4 mm above J4.9", "vias 1.5 mm right of C28.1 and 2.4 mm left of J4.9",
       "vias 1.5 mm above C28.1 and 2.4 mm below J4.9", "vias 1.5 mm left of C28.1 and 2.4 mm right of J4.9",
       "vias 1.5 mm below C28.1 and 2.4 mm above J4.9"});
}

void GuidedJob::checkTurned(const std::function<QString()>& text,
                            const std::vector<const char*>& turned) const {
  CopperMap& map = hand.rig.window->map();
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

void GuidedJob::checkWays() const {
  const auto theirs = ofLine("jumper", "route")["proposals"];
  const auto mine = hand.desk().fault.proposals();
  REQUIRE(mine);
  REQUIRE(mine->proposals.size() == theirs.size());
  for (std::size_t i = 0; i < theirs.size(); ++i) {
    CHECK(mine->proposals[i].from.point == theirs[i]["from"]["handle"]);
    CHECK(mine->proposals[i].to.point == theirs[i]["to"]["handle"]);
    CHECK(mine->proposals[i].length.mm() == Approx(theirs[i]["length_mm"].get<double>()));
  }
  // The cards have pictures of their own, which lie as the board was drawn.
  CHECK(hand.rig.text("cardPlaces").startsWith(QStringLiteral("Via 2.4 mm above J4.9")));
}

/// The command line's sheet is the workshop's copy.
void GuidedJob::checkSheet() const {
  cli({"sheet", "make", "--book", hand.book(), "--job", hand.job().number, "-o", hand.file("theirs.pdf"),
       "--workshop", hand.story.workshop.toStdString()});
  const std::string text = pdfWords(hand.file("workshop.pdf"));
  for (const char* words : {"TL-0417", "Slipway Board Repair", "KEY_COL3", "Key 3", "Enter"}) {
    INFO(words);
    CHECK(text.find(words) != std::string::npos);
  }
  CHECK(text == pdfWords(hand.file("theirs.pdf")));
}

/// Typed, not by the keys of the usual ones.
void GuidedJob::charge() {
  hand.goOn(Station::handOver);
  struct Line {
    const char* what;
    const char* quantity;
    const char* price;
  };
  for (const Line& line : {Line{"Track repair under the microscope", "1.5", "48.00"},
                           Line{"Wire, mask, solvent", "1", "3.50"}}) {
    hand.write("chargeWhat", QString::fromLatin1(line.what));
    hand.write("chargeQuantity", QString::fromLatin1(line.quantity));
    hand.write("chargePrice", QString::fromLatin1(line.price));
    hand.hands.command("Add this charge", Qt::Key_Return);
  }
}

void GuidedJob::takeThrough() {
  hand.bookIn();
  pictures.take(QStringLiteral("1-book-in"));
  hand.openBoard();
  CHECK(hand.rig.text("boardKnown").contains(QStringLiteral("8 good boards walked")));
  hand.rig.window->map().settle();
  pictures.take(QStringLiteral("2-board"));
  hand.walk();
  pictures.take(QStringLiteral("3-walk-done"));
  checkWalk();
  const Repair& repair = hand.story.repairs.front();
  hand.find(repair);
  pictures.take(QStringLiteral("4-find-found"));
  checkFind();
  hand.bridge(repair);
  hand.prove();
  pictures.take(QStringLiteral("6-prove-done"));
  charge();
  hand.handOver();
  pictures.take(QStringLiteral("7-hand-over"));
  hand.savePdfs();
  checkSheet();
  if (!pictures.wanted()) hand.checkKeys();
}

int mouseEvents() {
  needApplication<TimedApplication>();
  return static_cast<TimedApplication*>(qApp)->mouseEvents;
}

void inAllWays(const std::function<JobStory()>& story) {
  for (const char* language : {"en", "de"}) {
    const auto job = [&](Hands::By by) {
      INFO(language << (by == Hands::By::mouse ? " by mouse" : " by keys"));
      JobHand(by, QString::fromLatin1(language), story()).takeThrough();
    };
    job(Hands::By::mouse);
    const int before = mouseEvents();
    job(Hands::By::keyboard);
    if (!story().draw) CHECK(mouseEvents() == before); // who draws needs the mouse
  }
}

} // namespace

TEST_CASE("the whole job by mouse says at every station what the command line says") {
  GuidedJob job(Hands::By::mouse);
  job.takeThrough();
  job.checkFits();
}

TEST_CASE("a whole job of which only a connector is known, in German by keys, without one mouse event") {
  const int before = mouseEvents();
  JobHand(Hands::By::keyboard, QStringLiteral("de"), typedStory()).takeThrough();
  CHECK(mouseEvents() == before);
}

TEST_CASE("the guide's job by mouse and by keys, in English and German", "[.full]") {
  inAllWays(guideStory);
}

TEST_CASE("a job on a typed connector by mouse and by keys, in English and German", "[.full]") {
  inAllWays(typedStory);
}

TEST_CASE("a job with three odd pins by mouse and by keys, in English and German", "[.full]") {
  inAllWays(threeOddStory);
}

TEST_CASE("a job on a large board by mouse and by keys, in English and German", "[.full]") {
  inAllWays(largeStory);
}

TEST_CASE("a job on a drawn board by mouse and by keys, in English and German", "[.full]") {
  inAllWays(drawnStory);
}
