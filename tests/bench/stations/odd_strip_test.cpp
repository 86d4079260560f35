#include <catch2/catch.hpp>

#include <QMenu>
#include <QPushButton>

#include "bench/stations/odd_pins.h"
#include "bench/widgets/letters.h"
#include "demo_desk.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

std::vector<OddPin> pinsOf(std::size_t count) {
  std::vector<OddPin> out;
  for (std::size_t i = 1; i <= count; ++i) {
    OddPin pin;
    pin.pin = PinId(i);
    pin.label = QStringLiteral("J4.%1").arg(i);
    pin.word = QStringLiteral("open");
    pin.net = QStringLiteral("KEY_COL%1").arg(i);
    out.push_back(pin);
  }
  return out;
}

/// On the screen, as wide as a page at 1280 pixels.
struct ShownStrip {
  ShownStrip() {
    needApplication<QApplication>();
    strip.resize(1232, scaled(40));
    strip.show();
    strip.activateWindow();
    REQUIRE(waitFor([this] { return strip.isActiveWindow(); }));
    strip.onChosen = [this](std::size_t i) { chosen.push_back(i); };
  }
  [[nodiscard]] QList<QPushButton*> boxes() const {
    QList<QPushButton*> out;
    for (QPushButton* box : strip.findChildren<QPushButton*>(QStringLiteral("oddPin")))
      if (box->isVisible()) out << box;
    return out;
  }
  OddStrip strip;
  std::vector<std::size_t> chosen;
};

} // namespace

TEST_CASE("an odd pin's box is chosen by a click and by its key, and the strip says which one is") {
  ShownStrip shown;
  shown.strip.setPins(pinsOf(3));
  REQUIRE(shown.boxes().size() == 3);
  CHECK(shown.strip.hiddenCount() == 0);
  QTest::keyClick(&shown.strip, Qt::Key_2, Qt::AltModifier);
  QTest::mouseClick(shown.boxes()[0], Qt::LeftButton);
  CHECK(shown.chosen == std::vector<std::size_t>{1, 0});
  CHECK_FALSE(shown.boxes()[0]->isChecked()); // who owns the strip says so
  shown.strip.setChosen(2);
  CHECK(shown.boxes()[2]->isChecked());
  CHECK_FALSE(shown.boxes()[1]->isChecked());
  shown.strip.setChosen(3); // there is none
  CHECK_FALSE(shown.strip.chosen());
}

TEST_CASE("of thirty odd pins as many as fit have a box, the chosen one too, and the rest is counted") {
  ShownStrip shown;
  shown.strip.setPins(pinsOf(30));
  const auto fit = static_cast<std::size_t>(shown.boxes().size());
  CHECK(fit >= 4);
  CHECK(shown.strip.hiddenCount() == 30 - fit);
  auto* more = shown.strip.findChild<QPushButton*>(QStringLiteral("moreOddPins"));
  REQUIRE(more != nullptr);
  CHECK(more->isVisible());
  CHECK(more->text() == QStringLiteral("+%1").arg(30 - fit));
  CHECK(more->geometry().right() < shown.strip.width());
  shown.strip.setChosen(29);
  CHECK(shown.boxes().back()->isChecked());
  CHECK(shown.boxes().back()->accessibleName() == QStringLiteral("J4.30 open, KEY_COL30"));
  CHECK(more->geometry().right() < shown.strip.width());
  for (const QPushButton* box : shown.boxes())
    CHECK(box->geometry().right() < more->x());
  shown.strip.setPins(pinsOf(2));
  CHECK_FALSE(more->isVisible());
  CHECK(shown.boxes().size() == 2);
}

TEST_CASE("an odd pin without a box has its key all the same, and the list of such pins says it") {
  ShownStrip shown;
  shown.strip.setPins(pinsOf(9));
  shown.strip.resize(scaled(400), scaled(40));
  QApplication::processEvents();
  REQUIRE(shown.strip.hiddenCount() >= 5);
  QTest::keyClick(&shown.strip, Qt::Key_9, Qt::AltModifier);
  CHECK(shown.chosen == std::vector<std::size_t>{8});
  shown.strip.findChild<QPushButton*>(QStringLiteral("moreOddPins"))->click();
  auto* menu = shown.strip.findChild<QMenu*>(QStringLiteral("oddPinMenu"));
  REQUIRE(menu != nullptr);
  CHECK(menu->actions().back()->text() == QStringLiteral("J4.9 open, KEY_COL9\tAlt+9"));
  menu->actions().back()->trigger();
  CHECK(shown.chosen == std::vector<std::size_t>{8, 8});
  menu->close();
}

TEST_CASE("nets go before boxes do") {
  ShownStrip shown;
  shown.strip.setPins(pinsOf(3));
  const int wide = shown.boxes()[0]->width();
  shown.strip.resize(shown.boxes().back()->geometry().right(), scaled(40));
  QApplication::processEvents();
  CHECK(shown.boxes().size() == 3);
  CHECK(shown.boxes()[0]->width() < wide);
}

TEST_CASE("the demo's odd pin is open, on KEY_COL3; in range in the proof it is mended") {
  const DemoDesk demo;
  const auto odd = oddPins(demo.desk());
  REQUIRE(odd.size() == 1);
  CHECK(odd[0].label == QStringLiteral("J4.9"));
  CHECK(odd[0].word == QStringLiteral("open"));
  CHECK(odd[0].net == QStringLiteral("KEY_COL3"));
  CHECK(odd[0].shape == MarkShape::gap);
  CHECK_FALSE(odd[0].mended);
  CHECK(chosenOddPin(demo.desk(), odd) == 0); // the walk's oddest pin is looked at
  const auto another = demo.job->board()->lookup->netsNamed("KEY_COL2");
  REQUIRE_FALSE(another.empty());
  demo.fault->choose(another.front());
  CHECK_FALSE(chosenOddPin(demo.desk(), odd));
  demo.fault->choose(demo.job->board()->lookup->netsNamed("KEY_COL3").front());
  CHECK(chosenOddPin(demo.desk(), odd) == 0); // by its net
  // Read again on the repaired board, it is in range.
  JobReading proof;
  for (const JobReading& each : demo.job->job()->readings)
    if (each.reading.point.label == "J4.9" && each.purpose == ReadingPurpose::fault) proof = each;
  proof.purpose = ReadingPurpose::proof;
  proof.id = JobReadingId();
  proof.reading.value = 0.649;
  REQUIRE(proof.judged);
  proof.judged->verdict.kind = VerdictKind::inRange;
  REQUIRE(demo.job->addReading(proof));
  const auto after = oddPins(demo.desk());
  REQUIRE(after.size() == 1);
  CHECK(after[0].mended);
  CHECK(after[0].word == QStringLiteral("0.649"));
  proof.reading.value = 0.212;
  proof.judged->verdict.kind = VerdictKind::low;
  REQUIRE(demo.job->addReading(proof));
  CHECK_FALSE(oddPins(demo.desk())[0].mended);
  CHECK(oddPins(demo.desk())[0].word == QStringLiteral("low 0.212"));
}

TEST_CASE("a slip that was read again at Find is no odd pin") {
  const DemoDesk demo;
  JobReading again;
  for (const JobReading& each : demo.job->job()->readings)
    if (each.reading.point.label == "J4.9" && each.purpose == ReadingPurpose::fault) again = each;
  again.purpose = ReadingPurpose::check;
  again.id = JobReadingId();
  again.reading.value = 0.649;
  REQUIRE(again.judged);
  again.judged->verdict.kind = VerdictKind::inRange;
  REQUIRE(demo.job->addReading(again));
  CHECK(oddPins(demo.desk()).empty());
}
