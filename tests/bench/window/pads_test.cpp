#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <random>

#include <QFontMetricsF>
#include <QListWidget>
#include <QPushButton>

#include "bench/demo_cli.h"
#include "bench/language/language.h"
#include "bench/widgets/figures.h"
#include "bench/widgets/foot_bar.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/pad_picture.h"
#include "bench_rig.h"
#include "window_pictures.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

/// Pins of one connector of so many rows, at a pitch of 1; `offset` moves each second row along.
std::vector<PadPlace> rowsOfPads(int pins, int rows, double offset = 0.0) {
  std::vector<PadPlace> out;
  for (int i = 0; i < pins; ++i)
    out.push_back({QPointF(i / rows + offset * (i % rows % 2), 2.0 * (i % rows)), false});
  return out;
}

/// As an edge connector has them: each contact with another one right below it, on the other side.
std::vector<PadPlace> bothSides(int contacts) {
  std::vector<PadPlace> out;
  for (int i = 0; i < contacts; ++i)
    for (const bool below : {false, true})
      out.push_back({QPointF(i, 0), below});
  return out;
}

std::string overlapIn(const std::vector<QRectF>& rects) {
  for (std::size_t i = 0; i < rects.size(); ++i)
    for (std::size_t j = i + 1; j < rects.size(); ++j)
      if (!rects[i].isNull() && !rects[j].isNull() && rects[i].intersects(rects[j]))
        return std::to_string(i) + " lies on " + std::to_string(j);
  return {};
}

/// Laid out in the sizes of page that the window has, with each eighth pad due.
void checkApart(const std::vector<PadPlace>& places) {
  const PadGrid grid = padGrid(places);
  REQUIRE(grid.cells.size() == places.size());
  for (const int quarters : {0, 1, 2, 3}) {
    const PadGrid lies = turned(grid, quarters, quarters == 3);
    for (const QSizeF size : {QSizeF(1280, 430), QSizeF(1920, 560), QSizeF(1280, 250), QSizeF(700, 300)})
      for (std::size_t due = 0; due < places.size(); due += 1 + places.size() / 8) {
        PadRoom room;
        room.size = size;
        room.chart = quarters != 1;
        room.due = due;
        const PadLayout layout = layPads(lies, room);
        INFO(places.size() << " pads, " << size.width() << " by " << size.height() << ", due " << due
                           << ", turned by " << quarters);
        CHECK(overlapIn(layout.pads).empty());
        CHECK(overlapIn(layout.small).empty());
        CHECK_FALSE(layout.pads[due].isNull());
        for (const QRectF& pad : layout.pads) {
          CHECK(pad.left() >= 0);
          CHECK(pad.right() <= size.width());
        }
      }
  }
}

/// A walk on a connector of which nothing else is known.
struct Walked {
  BenchRig rig;

  explicit Walked(const QString& connector) {
    rig.type(connector);
    rig.press(Qt::Key_Return);
    REQUIRE(rig.window->station() == Station::walk);
  }
  [[nodiscard]] Desk desk() const { return rig.window->desk(); }
  [[nodiscard]] PadPicture& pads() const {
    return *rig.window->findChild<PadPicture*>(QStringLiteral("pads"));
  }
  void take(std::optional<double> value) const {
    ValueTaken taken;
    taken.value = value;
    REQUIRE(desk().walk.take(taken));
  }
  /// What this pin of a good board reads: grounds, a pin that reads OL, and lines.
  static std::optional<double> goodAt(std::size_t pin, int board = 0) {
    if (pin % 11 == 0) return 0.001 + 0.0003 * board;
    if (pin % 13 == 12) return std::nullopt;
    return 0.62 + 0.013 * std::sin(static_cast<double>(pin) * 3.1) + 0.004 * board;
  }
  void goodBoards(int boards) const {
    desk().walk.setGood(true);
    for (int board = 0; board < boards; ++board) {
      desk().walk.setGood(true);
      while (desk().walk.due())
        take(goodAt(desk().walk.walk().readings.size(), board));
      REQUIRE(desk().walk.keepGood());
    }
    REQUIRE(BenchRig::wait([this] { return !desk().job.weighing(); }));
    if (desk().walk.good()) desk().walk.setGood(false);
  }
  /// So many pins of the job's board: the ninth is open, the 17th low, the 20th skipped.
  void jobsBoard(std::size_t pins) const {
    for (std::size_t i = 0; i < pins; ++i) {
      if (i == 19)
        REQUIRE(desk().walk.take(PointSkipped{}));
      else
        take(i == 8 ? std::nullopt : i == 16 ? std::optional(0.212) : goodAt(i, 1));
    }
  }
  /// As wide and as high as asked for, and not more.
  QImage picture(const QString& name, int width = 1280, int height = 800) {
    // In two steps: the first may be held up by what needs room at the scale of the former size.
    rig.window->resize(width, height);
    BenchRig::wait([] { return false; }, 20);
    rig.window->resize(width, height);
    BenchRig::wait([] { return false; }, 80);
    INFO(name.toStdString());
    CHECK(rig.window->width() <= width);
    CHECK(rig.window->height() <= height);
    const QImage image = rig.window->grab().toImage();
    if (const QString folder = qEnvironmentVariable("NETMEND_PICTURES"); !folder.isEmpty()) {
      REQUIRE(QDir().mkpath(folder));
      REQUIRE(image.save(QDir(folder).filePath(name + QStringLiteral(".png"))));
    }
    return image;
  }
};

} // namespace

TEST_CASE("no two pads lie on each other, whatever the connector") {
  for (const int pins : {2, 3, 8, 14, 24, 25, 40, 41, 64, 100, 120, 200, 400}) {
    checkApart(rowsOfPads(pins, 1));
    checkApart(rowsOfPads(pins, 2));
    checkApart(rowsOfPads(pins, 2, 0.5)); // offset by half a pitch
    checkApart(rowsOfPads(pins, 3, 0.5));
    checkApart(rowsOfPads(pins, static_cast<int>(std::ceil(std::sqrt(pins)))));
    checkApart(bothSides(pins / 2));
  }
}

TEST_CASE("pads anywhere, in a circle, on one place: each has a place of its own") {
  const unsigned seed = std::random_device{}();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> anywhere(0, 30);
  for (const int pins : {5, 12, 37, 150}) {
    std::vector<PadPlace> scattered, circle, one;
    for (int i = 0; i < pins; ++i) {
      scattered.push_back({QPointF(anywhere(random), anywhere(random)), random() % 2 == 0});
      circle.push_back(
          {QPointF(10 * std::cos(6.2831853 * i / pins), 10 * std::sin(6.2831853 * i / pins)), false});
      one.push_back({QPointF(1, 1), false});
    }
    for (const auto& places : {scattered, circle, one})
      checkApart(places);
  }
}

TEST_CASE("an upright connector is laid down with its first pad left, and both sides make a row each") {
  std::vector<PadPlace> upright;
  for (const PadPlace& pad : rowsOfPads(40, 2))
    upright.push_back({QPointF(pad.at.y(), pad.at.x()), false});
  const PadGrid grid = padGrid(upright);
  CHECK(grid.rows == 2);
  CHECK(grid.columns == 20);
  CHECK(grid.cells.front().column == 0);
  CHECK(grid.cells.back().column == 19);

  const PadGrid edge = padGrid(bothSides(60));
  CHECK(edge.rows == 2);
  CHECK(edge.columns == 60);
  for (std::size_t i = 0; i < edge.cells.size(); i += 2) {
    CHECK(edge.cells[i] == PadGrid::Cell{0, static_cast<int>(i / 2)});
    CHECK(edge.cells[i + 1] == PadGrid::Cell{1, static_cast<int>(i / 2)});
  }
  // Half a turn: the other side above, the first contact right. Mirrored as well, it is left again.
  CHECK(turned(edge, 2, false).cells.front() == PadGrid::Cell{1, 59});
  CHECK(turned(edge, 2, true).cells.front() == PadGrid::Cell{1, 0});
  // Rows offset by half a pitch: each pad takes two columns of half its width.
  const PadGrid offset = padGrid(rowsOfPads(26, 2, 0.5));
  CHECK(offset.span == 2);
  CHECK(offset.columns == 27);
}

TEST_CASE(
    "contacts of two lengths make one row, two rows offset by half a pitch do not, pads round a chip follow "
    "their numbers") {
  std::vector<PadPlace> fingers, ring;
  for (int i = 0; i < 30; ++i)
    fingers.push_back({QPointF(i, i % 7 == 3 ? 0.8 : 0.0), false});
  CHECK(padGrid(fingers).rows == 1);
  CHECK(padGrid(fingers).columns == 30);
  CHECK_FALSE(padGrid(fingers).inOrder);
  for (PadPlace& pad : fingers)
    if (pad.at.y() > 0) pad.at.setY(0.95);
  CHECK(padGrid(fingers).rows == 2);
  CHECK(padGrid(rowsOfPads(26, 2, 0.5)).rows == 2);
  for (int side = 0; side < 4; ++side)
    for (int i = 0; i < 16; ++i)
      ring.push_back(
          {side % 2 == 0 ? QPointF(2 + i, side == 0 ? 19 : 0) : QPointF(side == 1 ? 19 : 0, 2 + i), false});
  CHECK(padGrid(ring).inOrder);
  CHECK(padGrid(ring).cells[40] == PadGrid::Cell{0, 40});
  CHECK_FALSE(padGrid(rowsOfPads(64, 8)).inOrder);
}

TEST_CASE("up to 24 columns all pads are shown in full, of more some, with the due one among them") {
  PadRoom room;
  room.size = QSizeF(1600, 500);
  room.narrowest = 40;
  CHECK(layPads(padGrid(rowsOfPads(48, 2)), room).small.empty());
  const PadGrid grid = padGrid(rowsOfPads(50, 2));
  room.due = 0;
  PadLayout layout = layPads(grid, room);
  CHECK(layout.small.size() == 50);
  CHECK(std::count_if(layout.pads.begin(), layout.pads.end(), [](const QRectF& r) { return !r.isNull(); }) ==
        40);
  // The span stays while what is due is within it.
  for (std::size_t due = 0; due < 50; ++due) {
    room.due = due;
    const int before = room.firstColumn;
    layout = layPads(grid, room);
    INFO(due);
    CHECK_FALSE(layout.pads[due].isNull());
    if (grid.cells[due].column <= 18) CHECK(layout.firstColumn == before);
    room.firstColumn = layout.firstColumn;
  }
  CHECK(room.firstColumn == 5);
}

TEST_CASE("in a chart every good range is the same box; low, high and OL leave it on their side") {
  const PadChart chart{0, QRectF(0, 0, 100, 100), 20, 45, 75, 85};
  PadState pad;
  pad.value = QStringLiteral("0.6");
  pad.good = PadState::Range{0.5, 0.7};
  pad.read = 0.6;
  CHECK(chartHeight(chart, pad, false) == Approx(60)); // the middle of the box
  pad.odd = true;
  pad.read = 0.25; // half of the lowest: halfway to the floor
  CHECK(chartHeight(chart, pad, false) == Approx(87.5));
  pad.read = 0.0;
  CHECK(chartHeight(chart, pad, false) == Approx(100));
  pad.read = 1.4; // twice the highest: halfway to the lane
  CHECK(chartHeight(chart, pad, false) == Approx(32.5));
  pad.read.reset(); // OL
  CHECK(chartHeight(chart, pad, false) == Approx(10));
  pad.odd = false;
  pad.read = 0.705; // not called odd
  CHECK(chartHeight(chart, pad, false) == Approx(48));
  pad.good = PadState::Range{0.0, 0.004};
  CHECK(readsNothing(pad, 0.7));
  CHECK_FALSE(readsNothing(pad, 0.05));
}

TEST_CASE(
    "the range beside the value takes a seventh of its scale; what is off the scale stands at its end") {
  needApplication<TimedApplication>();
  RangeGauge gauge;
  gauge.setRanges({{0.6, 0.64}});
  CHECK(gauge.share(0.62) == Approx(0.5));
  CHECK(gauge.share(0.6) == Approx(0.5 - 1.0 / 14));
  CHECK(gauge.share(0.64) == Approx(0.5 + 1.0 / 14));
  CHECK(gauge.share(0.0) == Approx(0.02));
  CHECK(gauge.share(9.0) == Approx(0.98));
  gauge.setRanges({{0.3, 0.31}, {0.6, 0.64}}); // of a mixture the whole
  CHECK(gauge.share(0.3) == Approx(0.5 - 1.0 / 14));
}

TEST_CASE("what was taken last says pin, value and verdict to who does not see it") {
  needApplication<TimedApplication>();
  TakenLabel label(QStringLiteral("verdict"));
  label.setTaken(
      TakenPin{QStringLiteral("21"), QStringLiteral("0.633 V"), QStringLiteral("in range"), MarkShape::disc},
      QStringLiteral("J4.21"));
  CHECK(label.text() == QStringLiteral("J4.21   0.633 V   in range"));
  label.setTaken({}, {});
  CHECK(label.text().isEmpty());
}

TEST_CASE("a pad keeps its number, shape and value after it is read") {
  Walked walked(QStringLiteral("J4, 20 pins"));
  walked.goodBoards(2);
  const std::vector<PadState>& pads = walked.pads().pads();
  REQUIRE(pads.size() == 20);
  CHECK(pads[0].due);
  CHECK_FALSE(pads[0].isRead());
  REQUIRE(pads[1].good);
  CHECK(pads[12].goodOl);
  walked.jobsBoard(20);
  CHECK(pads[1].name == QStringLiteral("2"));
  CHECK(pads[1].value == QStringLiteral("0.625"));
  CHECK(pads[1].shape == MarkShape::disc);
  CHECK_FALSE(pads[1].odd);
  CHECK(pads[8].name == QStringLiteral("9"));
  CHECK(pads[8].value == QStringLiteral("OL"));
  CHECK_FALSE(pads[8].read);
  CHECK(pads[8].shape == MarkShape::gap);
  CHECK(pads[8].odd);
  CHECK(pads[16].shape == MarkShape::downward);
  CHECK(pads[19].skipped);
  CHECK_FALSE(pads[19].isRead());
  CHECK(walked.rig.text("whichBoard") == QStringLiteral("JOB'S BOARD"));
  // A click on a pad goes there.
  QTest::mouseClick(&walked.pads(), Qt::LeftButton, {}, walked.pads().layout().pads[8].center().toPoint());
  CHECK(pads[8].due);
  CHECK(pads[8].value == QStringLiteral("OL"));
  CHECK(walked.rig.text("duePoint") == QStringLiteral("J4 pin 9"));
}

TEST_CASE("the part is chosen by key, in the page") {
  Walked walked(QStringLiteral("J4, 20 pins"));
  auto& parts = *walked.rig.window->findChild<QListWidget*>(QStringLiteral("parts"));
  CHECK_FALSE(parts.isVisible());
  walked.rig.press(Qt::Key_J);
  REQUIRE(parts.isVisible());
  CHECK(QApplication::focusWidget() == &parts);
  walked.rig.press(Qt::Key_Escape);
  CHECK_FALSE(parts.isVisible());
  walked.rig.press(Qt::Key_J);
  walked.rig.press(Qt::Key_Return);
  CHECK_FALSE(parts.isVisible());
  walked.rig.type(QStringLiteral("450"));
  walked.rig.press(Qt::Key_Return);
  CHECK(walked.desk().walk.walk(false).readings.size() == 1);
}

TEST_CASE("an odd pin of a good board is read again by one key") {
  Walked walked(QStringLiteral("J4, 20 pins"));
  walked.goodBoards(2);
  walked.rig.press(Qt::Key_G);
  for (std::size_t i = 0; i < 10; ++i)
    walked.take(i == 4 ? std::optional(0.1) : Walked::goodAt(i));
  REQUIRE(walked.pads().pads()[4].odd);
  walked.rig.press(Qt::Key_A);
  CHECK(walked.rig.text("duePoint") == QStringLiteral("J4 pin 5"));
  CHECK(walked.pads().pads()[4].value == QStringLiteral("0.100"));
  walked.take(Walked::goodAt(4));
  CHECK_FALSE(walked.pads().pads()[4].odd);
}

TEST_CASE("turned and mirrored by key, each pad lies where it should") {
  Walked walked(QStringLiteral("J4, 12 pins, 2 rows"));
  const QRectF first = walked.pads().layout().pads[0];
  walked.rig.press(Qt::Key_R);
  CHECK(walked.pads().layout().pads[0].top() > first.top());
  CHECK(walked.pads().layout().pads[0].left() > first.left());
  walked.rig.press(Qt::Key_M);
  CHECK(walked.pads().layout().pads[0].left() == first.left());
  CHECK(walked.pads().mirrored());
}

TEST_CASE("which board is walked is said by pattern and word in band and foot") {
  Walked walked(QStringLiteral("J4, 20 pins"));
  const auto& foot =
      static_cast<FootBar&>(*walked.rig.window->findChild<QLabel*>(QStringLiteral("next"))->parentWidget());
  CHECK(foot.mode() == QStringLiteral("JOB'S BOARD"));
  walked.rig.press(Qt::Key_G);
  CHECK(foot.mode() == QStringLiteral("GOOD BOARD"));
  const auto& band = static_cast<Band&>(
      *walked.rig.window->findChild<QLabel*>(QStringLiteral("whichBoard"))->parentWidget());
  CHECK(band.look() == BandLook::good);
  CHECK(band.words().contains(QStringLiteral("Its readings set the range for every later job")));
  const auto keep = [&] {
    std::vector<bool> out;
    for (const QPushButton* button : walked.rig.window->findChildren<QPushButton*>())
      if (button->isVisible() && button->text() == QStringLiteral("Keep as good"))
        out.push_back(button->property("netmendMain").toBool());
    return out;
  };
  CHECK(keep().empty());
  walked.take(0.45);
  CHECK(keep() == std::vector<bool>{false});
  while (walked.desk().walk.due())
    walked.take(0.45);
  CHECK(keep() == std::vector<bool>{true});
}

TEST_CASE("the station has the whole width until the map is asked for") {
  Walked walked(QStringLiteral("J4, 20 pins"));
  CHECK(BenchRig::wait([&] { return walked.pads().width() == walked.rig.window->width(); }, 10'000));
  walked.rig.press(Qt::Key_B, Qt::ControlModifier);
  CHECK_FALSE(walked.rig.window->map().isVisible()); // nobody knows where anything is
  walked.rig.window->openBoard(QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
  REQUIRE(BenchRig::wait([&] { return walked.desk().job.board()->board->parts.size() > 1; }));
  walked.rig.window->go(Station::walk);
  CHECK_FALSE(walked.rig.window->map().isVisible());
  walked.rig.press(Qt::Key_B, Qt::ControlModifier);
  CHECK(walked.rig.window->map().isVisible());
  walked.rig.press(Qt::Key_E, Qt::ControlModifier);
  CHECK_FALSE(walked.rig.window->map().isVisible());
}

TEST_CASE("every kind of connector fits the window in every size and language, as a picture") {
  {
    Walked walked(QStringLiteral("J4, 40 pins, 2 rows"));
    walked.picture(QStringLiteral("walk-first"));
    walked.goodBoards(2);
    walked.jobsBoard(26);
    walked.picture(QStringLiteral("walk-40"));
    walked.picture(QStringLiteral("walk-40-1920"), 1920, 1080);
    walked.rig.window->setTheme(PictureTheme::dark);
    walked.picture(QStringLiteral("walk-40-dark"));
    walked.rig.window->setTheme(PictureTheme::highContrast);
    walked.picture(QStringLiteral("walk-40-contrast"));
    walked.rig.window->setTheme(PictureTheme::light);
    walked.rig.window->setWhy(true);
    walked.picture(QStringLiteral("walk-40-why"));
    walked.rig.window->setWhy(false);
    walked.rig.press(Qt::Key_B, Qt::ControlModifier);
    walked.picture(QStringLiteral("walk-40-map"));
    walked.rig.press(Qt::Key_E, Qt::ControlModifier);
    walked.rig.window->setScale(200);
    walked.picture(QStringLiteral("walk-40-200"));
    walked.rig.window->setScale(100);
    walked.rig.press(Qt::Key_J);
    walked.picture(QStringLiteral("walk-40-parts"));
    walked.rig.press(Qt::Key_Escape);
    walked.rig.press(Qt::Key_C);
    walked.picture(QStringLiteral("walk-40-condition"));
    walked.rig.press(Qt::Key_Return);
    MeterFigure& meter = *walked.rig.window->page(Station::walk).meterFigure();
    meter.setLive(LiveFigure{QStringLiteral("0.614 V"), QStringLiteral("hold"), 0.75, false, 0.614});
    walked.picture(QStringLiteral("walk-40-live"));
    walked.picture(QStringLiteral("walk-40-live-1920"), 1920, 1080);
    walked.rig.window->setScale(200);
    meter.setLive(LiveFigure{QStringLiteral("0.614 V"), QStringLiteral("hold"), 0.75, false, 0.614});
    walked.picture(QStringLiteral("walk-40-live-200"));
    walked.rig.window->setScale(100);
    meter.setLive({});
    walked.desk().walk.setGood(true);
    for (std::size_t i = 0; i < 21; ++i)
      walked.take(i == 16 ? std::optional(0.533) : Walked::goodAt(i));
    walked.picture(QStringLiteral("walk-40-good"));
    walked.picture(QStringLiteral("walk-40-good-1920"), 1920, 1080);
  }
  {
    BenchRig::wait([] { return false; }, 1);
    speak(QStringLiteral("de"));
    Walked walked(QStringLiteral("J4, 40 pins, 2 rows"));
    walked.picture(QStringLiteral("walk-german-first"));
    walked.goodBoards(2);
    walked.jobsBoard(26);
    walked.picture(QStringLiteral("walk-german"));
    walked.rig.window->setScale(200);
    walked.picture(QStringLiteral("walk-german-200"));
    walked.rig.window->setScale(100);
    walked.desk().walk.setGood(true);
    walked.take(0.62);
    walked.picture(QStringLiteral("walk-german-good"));
    speak(QStringLiteral("en"));
  }
  for (const char* connector : {"J1, 3 pins", "J4, 14 pins", "J7, 120 pins, 2 rows", "J9, 96 pins, 3 rows",
                                "U1, 400 pins, 20 rows", "J8, 60 pins"}) {
    Walked walked(QString::fromLatin1(connector));
    const auto pins = walked.desk().walk.walk().points.size();
    INFO(connector);
    const QString name =
        QStringLiteral("walk-%1").arg(pins) + (pins == 60 ? QStringLiteral("-row") : QString());
    walked.goodBoards(1);
    walked.jobsBoard(std::min<std::size_t>(2 * pins / 3, 92));
    walked.picture(name);
    if (pins == 120) walked.picture(name + QStringLiteral("-1920"), 1920, 1080);
    walked.rig.window->setScale(200);
    walked.picture(name + QStringLiteral("-200"));
    walked.rig.window->setScale(100);
  }
}

TEST_CASE("a board's edge connector has both of its sides, as a picture") {
  const std::filesystem::path file("/usr/share/kicad/demos/video/video.kicad_pcb");
  if (!std::filesystem::exists(file)) return;
  BenchRig rig;
  rig.window->openBoard(QString::fromStdString(file.string()));
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  rig.window->go(Station::walk);
  const Desk desk = rig.window->desk();
  const auto& board = *desk.job.board()->board;
  for (const PartId id : desk.walk.partsToWalk()) {
    const std::string reference = board.parts.find(id)->reference;
    if (!reference.starts_with("BUS") && reference != "U23" && reference != "P10") continue;
    desk.walk.setPart(id);
    for (int i = 0; i < 12 && desk.walk.due(); ++i) {
      ValueTaken taken;
      taken.value = 0.45 + 0.01 * i;
      REQUIRE(desk.walk.take(taken));
    }
    const auto& pads = *rig.window->findChild<PadPicture*>(QStringLiteral("pads"));
    CHECK(overlapIn(pads.layout().pads).empty());
    CHECK(overlapIn(pads.layout().small).empty());
    if (reference == "BUS1") CHECK(pads.layout().small.size() == 120);
    rig.window->resize(1280, 800);
    BenchRig::wait([] { return false; }, 80);
    CHECK(rig.window->width() <= 1280);
    if (const QString folder = qEnvironmentVariable("NETMEND_PICTURES"); !folder.isEmpty())
      rig.window->grab().save(QDir(folder).filePath(
          QStringLiteral("walk-") + QString::fromStdString(reference) + QStringLiteral(".png")));
  }
}
