#include <catch2/catch.hpp>

#include <QLabel>

#include <QFileInfo>
#include <QImage>

#include <cstdio>
#include <random>

#include "bench/stations/photos_view.h"
#include "bench_rig.h"
#include "meter/simulated_meter.h"
#include "netmend/probing/reading_entry.h"

using namespace netmend;
using namespace netmend::testing;
using namespace std::chrono_literals;

namespace {

constexpr std::size_t pins = 14;

/// What a good board of an invented connector reads, in volts; one pin reads OL.
std::vector<std::optional<double>> goodValues() {
  std::vector<std::optional<double>> out;
  for (std::size_t i = 0; i < pins; ++i)
    out.emplace_back(0.420 + 0.012 * static_cast<double>(i));
  return out;
}

std::vector<SimulatedTouch> touchesOf(const std::vector<std::optional<double>>& values) {
  std::vector<SimulatedTouch> out;
  for (const auto& value : values)
    out.push_back({value, 750ms, 250ms});
  return out;
}

} // namespace

TEST_CASE("from nothing to the odd pins with a linked meter, no key a reading") {
  BenchRig rig;
  BenchWindow& window = *rig.window;
  const Desk desk = window.desk();
  SimulatedMeter meter;

  // Nothing is known but the connector's pins.
  REQUIRE(window.station() == Station::board);
  rig.type(QStringLiteral("J4, 14 pins"));
  rig.press(Qt::Key_Return);
  REQUIRE(window.station() == Station::walk);
  REQUIRE(desk.job.board() != nullptr);
  rig.press(Qt::Key_Return); // nothing is plugged in
  window.linkMeter(QString::fromStdString(meter.address()));
  REQUIRE(rig.wait([&] { return window.meter()->status().state == LinkState::ready; }));

  rig.press(Qt::Key_G);
  REQUIRE(desk.walk.good());
  CHECK(rig.text("whichBoard") == QStringLiteral("GOOD BOARD"));
  CHECK(rig.text("duePoint") == QStringLiteral("J4 pin 1"));
  const int before = rig.keys;
  bool played = false;
  meter.play(touchesOf(goodValues()), [&] { played = true; });
  REQUIRE(rig.wait([&] { return played && !desk.walk.due(); }, 120'000));
  const int keysTaken = rig.keys - before;
  CHECK(keysTaken == 0);
  REQUIRE(desk.walk.walk(true).readings.size() == pins);
  for (std::size_t i = 0; i < pins; ++i) {
    CHECK(desk.walk.walk(true).readings[i].point.label == "J4." + std::to_string(i + 1));
    CHECK(*desk.walk.walk(true).readings[i].value == Approx(*goodValues()[i]).margin(0.002));
  }
  rig.press(Qt::Key_K);
  REQUIRE(desk.job.goodWalks().size() == 1);

  // The bad board: pin 9 is open, pin 3 is shorted.
  REQUIRE(!desk.walk.good());
  auto bad = goodValues();
  bad[2] = 0.003;
  bad[8] = std::nullopt;
  std::vector<std::optional<double>> first(bad.begin(), bad.begin() + 8);
  std::vector<std::optional<double>> second(bad.begin() + 9, bad.end());
  played = false;
  meter.play(touchesOf(first), [&] { played = true; });
  REQUIRE(rig.wait([&] { return played; }, 120'000));
  INFO(rig.window->message().toStdString() << ", due " << rig.text("duePoint").toStdString());
  REQUIRE(desk.walk.walk(false).readings.size() == 8);
  CHECK(rig.text("duePoint") == QStringLiteral("J4 pin 9"));
  const int beforeOl = rig.keys;
  rig.press(Qt::Key_O); // the meter shows OL touching it or not: one key says that it does
  CHECK(rig.keys - beforeOl == 1);
  CHECK(rig.text("verdict").contains(QStringLiteral("open")));
  played = false;
  meter.play(touchesOf(second), [&] { played = true; });
  REQUIRE(rig.wait([&] { return played && !desk.walk.due(); }, 120'000));

  const auto odd = desk.walk.oddOnes();
  std::vector<std::string> names;
  for (const std::size_t i : odd)
    names.push_back(desk.walk.walk(false).readings[i].point.label);
  std::sort(names.begin(), names.end());
  CHECK(names == std::vector<std::string>{"J4.3", "J4.9"});
  CHECK(rig.text("duePoint").contains(QStringLiteral("2 odd")));
  // All of it is in the job book already.
  const auto kept = desk.job.book().job(desk.job.job()->id);
  REQUIRE(kept);
  CHECK(kept->readings.size() == pins);
  std::printf("linked meter: %d keys for %zu readings, OL %d key\n", keysTaken, pins, rig.keys - beforeOl);
  rig.fastEvents();
}

TEST_CASE("values of the linked meter that were lost are told where the eyes are, and stay told") {
  BenchRig rig;
  rig.type(QStringLiteral("J4, 14 pins"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  SimulatedMeter meter;
  rig.window->linkMeter(QString::fromStdString(meter.address()));
  REQUIRE(rig.wait([&] { return rig.window->meter()->status().state == LinkState::ready; }));
  int reads = meter.readsAnswered();
  REQUIRE(rig.wait([&] { return meter.readsAnswered() > reads + 3; }));
  meter.answerLate(600ms); // a touch takes 400
  REQUIRE(rig.wait([&] { return rig.window->message().contains(QStringLiteral("perhaps a touch")); }));
  reads = meter.readsAnswered();
  REQUIRE(rig.wait([&] { return meter.readsAnswered() > reads + 10; }));
  CHECK(rig.window->message().contains(QStringLiteral("perhaps a touch")));
}

TEST_CASE("a typed reading takes four keys, a wrong one is taken back by one") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.type(QStringLiteral("J1 6 pins"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  const int before = rig.keys;
  rig.type(QStringLiteral("452"));
  rig.press(Qt::Key_Return);
  std::printf("typed: %d keys a reading\n", rig.keys - before);
  CHECK(rig.keys - before <= 4);
  REQUIRE(desk.walk.walk(false).readings.size() == 1);
  CHECK(*desk.walk.walk(false).readings[0].value == Approx(0.452));
  CHECK(desk.job.job()->readings.size() == 1);

  rig.press(Qt::Key_U);
  CHECK(desk.walk.walk(false).readings.empty());
  CHECK(desk.job.job()->readings.empty());
  CHECK(desk.job.book().job(desk.job.job()->id)->readings.empty());
  CHECK(rig.text("duePoint") == QStringLiteral("J1 pin 1"));

  rig.press(Qt::Key_S);
  CHECK(rig.text("duePoint") == QStringLiteral("J1 pin 2"));
  rig.press(Qt::Key_B);
  CHECK(rig.text("duePoint") == QStringLiteral("J1 pin 1"));

  rig.type(QStringLiteral("4x2"));
  rig.press(Qt::Key_Return);
  CHECK(desk.job.job()->readings.empty());
  CHECK(rig.window->message().startsWith(QStringLiteral("⚠")));
  rig.fastEvents();
}

TEST_CASE("a second reading of a point keeps both") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.type(QStringLiteral("J1 4"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  rig.type(QStringLiteral("450"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_B);
  rig.type(QStringLiteral("455"));
  rig.press(Qt::Key_Return);
  CHECK(desk.job.job()->readings.size() == 2);
  CHECK(desk.walk.points()[0].reading == 1);
}

TEST_CASE("a second press in the same touch belongs to the first reading") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  rig.type(QStringLiteral("J1 4"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  ValueTaken value{{}, 0.300, ReadingMode::diode, Settling::rising, {}};
  REQUIRE(desk.walk.take(value));
  value.value = 0.450;
  value.settling = Settling::settled;
  value.again = true;
  REQUIRE(desk.walk.take(value));
  const Walk& walk = desk.walk.walk(false);
  REQUIRE(walk.readings.size() == 2);
  CHECK(walk.readings[1].point.label == "J1.1");
  CHECK(walk.readings[1].value == 0.45);
  CHECK(desk.walk.due()->label == "J1.2");
  CHECK(desk.walk.points()[0].reading == 1);
  CHECK(desk.walk.readOtherwise() == nullptr);
  // Taken back, the point is due again, and the same touch is its first.
  rig.press(Qt::Key_U);
  rig.press(Qt::Key_U);
  REQUIRE(desk.walk.take(value));
  CHECK(walk.readings.back().point.label == "J1.1");
  CHECK(desk.walk.due()->label == "J1.2");
}

TEST_CASE("a good board half walked goes on where it was left after the window was gone") {
  BenchRig rig;
  rig.type(QStringLiteral("J1 4"));
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_Return);
  rig.press(Qt::Key_G);
  rig.type(QStringLiteral("450"));
  rig.press(Qt::Key_Return);
  rig.type(QStringLiteral("460"));
  rig.press(Qt::Key_Return);
  const auto file = rig.window->desk().job.board()->file;
  rig.window.reset(); // nothing is asked to be saved
  rig.open();
  rig.window->openBoard(QString::fromStdU16String(file.u16string()));
  const Desk desk = rig.window->desk();
  REQUIRE(rig.wait([&] { return desk.job.board() != nullptr; }));
  rig.window->go(Station::walk);
  CHECK(desk.walk.walk(true).readings.size() == 2);
  rig.window->page(Station::walk).setFocus();
  desk.walk.setGood(true);
  CHECK(desk.walk.due()->label == "J1.3");
}

TEST_CASE("a button's key acts at once") {
  BenchRig rig;
  rig.window->go(Station::bookIn);
  rig.wait([] { return false; }, 50);
  REQUIRE(rig.window->desk().job.job() == nullptr);
  rig.press(Qt::Key_N, Qt::ControlModifier);
  // Nothing is waited for in between.
  CHECK(rig.window->desk().job.job() != nullptr);
}

TEST_CASE("tones and speech are as they were before the window was gone") {
  BenchRig rig;
  rig.press(Qt::Key_D, Qt::ControlModifier);
  REQUIRE(rig.window->message() == QStringLiteral("Tones on"));
  rig.press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  REQUIRE(rig.window->message() == QStringLiteral("Speech on"));
  rig.window.reset();
  rig.open();
  rig.press(Qt::Key_D, Qt::ControlModifier);
  CHECK(rig.window->message() == QStringLiteral("Tones off"));
  rig.press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(rig.window->message() == QStringLiteral("Speech off"));
}

TEST_CASE(
    "a photo of twelve megabytes is durable before it is shown, and the window never stands still for it") {
  BenchRig rig;
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.bookIn());
  rig.window->go(Station::handOver);
  // Noise, so that no packing makes it smaller.
  QImage image(2000, 2100, QImage::Format_RGB888);
  std::mt19937 random(1);
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.bytesPerLine(); ++x)
      image.scanLine(y)[x] = static_cast<uchar>(random());
  const QString file = rig.folder.filePath(QStringLiteral("board.png"));
  REQUIRE(image.save(file));
  REQUIRE(QFileInfo(file).size() > 12'000'000);
  auto* photos = rig.window->page(Station::handOver).findChild<PhotosView*>();
  REQUIRE(photos != nullptr);
  std::size_t inBook = 0;
  QObject::connect(&desk.job, &BenchJob::papersChanged, [&] {
    auto other = JobBook::open(bookFile(desk.job.folders()), BookUse::change);
    inBook = other->job(desk.job.job()->id)->photos.size();
  });
  rig.wait([] { return false; }, 300);
  static_cast<TimedApplication*>(qApp)->slow = {};
  photos->addFiles({file});
  REQUIRE(rig.wait([&] { return desk.job.job()->photos.size() == 1; }, 120'000));
  CHECK(inBook == 1);
  CHECK(desk.job.job()->photos.front().bytes.size() > 12'000'000);
  // What is changed now does not carry the photo to the book and back.
  Charge charge;
  charge.what = "Wire";
  REQUIRE(desk.job.addCharge(charge));
  REQUIRE(desk.job.setState(JobState::proving));
  REQUIRE(desk.job.undo());
  REQUIRE(desk.job.undo());
  REQUIRE(desk.job.undo());
  REQUIRE(rig.wait([&] { return desk.job.job()->photos.empty(); }));
  REQUIRE(desk.job.redo());
  REQUIRE(rig.wait([&] { return desk.job.job()->photos.size() == 1; }));
  rig.wait([] { return false; }, 300);
  rig.fastEvents();
}
