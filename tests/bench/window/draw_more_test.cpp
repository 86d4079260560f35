#include <catch2/catch.hpp>

#include <QClipboard>
#include <QDropEvent>
#include <QFile>
#include <QMimeData>
#include <QUrl>

#include <fstream>

#include "bench/demo_cli.h"
#include "bench/language/language.h"
#include "bench/stations/board_page.h"
#include "bench/stations/draw_view.h"
#include "bench/stations/photo_inset.h"
#include "bench_rig.h"
#include "netmend/board/board_file.h"
#include "netmend/board/underlay.h"
#include "support/board_photo.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

Point milli(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

void drop(BenchRig& rig, const QString& file) {
  QMimeData mime;
  mime.setUrls({QUrl::fromLocalFile(file)});
  QDragEnterEvent enter(QPoint(400, 400), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(rig.window.get(), &enter);
  QDropEvent event(QPointF(400, 400), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(rig.window.get(), &event);
}

void clickOnMap(BenchRig& rig, Point p) {
  CopperMap& map = rig.window->map();
  QTest::mouseClick(&map, Qt::LeftButton, {}, map.view().toPicture(p).toPoint());
}

void line(BenchRig& rig, const char* text) {
  rig.press(Qt::Key_Return);
  rig.type(QString::fromLatin1(text));
  rig.press(Qt::Key_Return);
}

BenchDrawing& drawingOf(BenchRig& rig) {
  return rig.window->desk().drawing;
}

PinId pinOf(BenchRig& rig, const std::string& label) {
  const auto pins = drawingOf(rig).lookup().pinsLabelled(label);
  REQUIRE(pins.size() == 1);
  return pins.front();
}

NetId netOf(BenchRig& rig, const std::string& label) {
  const Pin& pin = *drawingOf(rig).board()->pins.find(pinOf(rig, label));
  return pin.net.known() ? pin.net.value : NetId();
}

void openDemo(BenchRig& rig) {
  rig.window->openBoard(QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
  REQUIRE(BenchRig::wait([&] { return rig.window->desk().job.board() != nullptr; }));
  REQUIRE(BenchRig::wait([&] { return rig.window->map().settled(); }));
}

} // namespace

TEST_CASE("a board from a file is corrected in a copy, and readings stay with their pins") {
  BenchRig rig;
  speak(QStringLiteral("en"));
  openDemo(rig);
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.bookIn());
  rig.window->go(Station::walk);
  desk.walk.setCondition({});
  REQUIRE(desk.walk.type("0.5"));
  const PinId read = desk.job.job()->readings.front().reading.point.pin;
  const std::string uuid = desk.job.board()->board->info.uuid;
  const auto graph = desk.job.board()->graph;
  const Board* shown = rig.window->map().board();
  rig.press(drawKey);
  REQUIRE(drawingOf(rig).begun());
  // Nothing of it is new: its copper is not followed again, and the map shows it still.
  CHECK(desk.job.board()->graph == graph);
  CHECK(rig.window->map().board() == shown);
  CHECK(desk.job.board()->file.parent_path().filename() == "boards");
  CHECK(desk.job.board()->board->info.uuid == uuid);
  CHECK(desk.job.job()->boardFile == desk.job.board()->file.string());
  rig.window->map().zoomTo(pinOf(rig, "J4.10"));
  // J4.10 and J4.11 are one net, it turns out: the other's name is told.
  const auto place = [&](const std::string& label) {
    return positionOf(drawingOf(rig).lookup(), pinOf(rig, label)).value;
  };
  clickOnMap(rig, place("J4.10"));
  clickOnMap(rig, place("J4.11"));
  CHECK(netOf(rig, "J4.10") == netOf(rig, "J4.11"));
  CHECK(rig.window->message().contains(QStringLiteral("LED_RTN is part of KEY_LED now")));
  rig.press(Qt::Key_U);
  CHECK(netOf(rig, "J4.10") != netOf(rig, "J4.11"));
  rig.press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  CHECK(netOf(rig, "J4.10") == netOf(rig, "J4.11"));
  // The other stations have it, and the reading is where it was.
  rig.press(Qt::Key_3, Qt::ControlModifier);
  CHECK(desk.job.board()->board->pins.find(pinOf(rig, "J4.11"))->net.value == netOf(rig, "J4.10"));
  CHECK(desk.job.job()->readings.front().reading.point.pin == read);
  CHECK(desk.walk.walk(false).readings.size() == 1);
  CHECK(desk.job.job()->boardDigest == desk.job.board()->digest);
  // The file that it came from is as it was.
  std::ifstream in(deviceFile("tide-logger.netmend-board.json"));
  const auto original = boardFromText(std::string(std::istreambuf_iterator<char>(in), {}));
  const Lookup theirs(*original);
  CHECK(original->pins.find(theirs.pinsLabelled("J4.10").front())->net !=
        original->pins.find(theirs.pinsLabelled("J4.11").front())->net);
}

TEST_CASE("what was drawn is there after a kill") {
  BenchRig rig;
  rig.press(drawKey);
  REQUIRE(drawingOf(rig).begun());
  line(rig, "J7 6");
  clickOnMap(rig, milli(0, 0));
  clickOnMap(rig, milli(10, 0));
  rig.press(Qt::Key_A);
  REQUIRE(drawingOf(rig).board()->pins.size() == 6);
  const std::filesystem::path store(rig.folder.path().toStdU16String());
  const auto file = rig.window->desk().job.board()->file;
  // The store as a kill would leave it: nothing has been saved since.
  const QTemporaryDir other;
  const std::filesystem::path left(other.path().toStdU16String());
  std::filesystem::copy(store / "boards", left / "boards", std::filesystem::copy_options::recursive);
  REQUIRE(std::filesystem::exists(left / "boards" / (file.filename().string() + ".journal")));
  auto job = BenchJob::open({std::filesystem::path(NETMEND_SOURCE_DIR) / "data", left});
  REQUIRE(job);
  (*job)->openBoardFile(left / "boards" / file.filename());
  REQUIRE(BenchRig::wait([&] { return (*job)->board() != nullptr; }));
  CHECK((*job)->board()->board->pins.size() == 6);
  CHECK((*job)->board()->board->pads.size() == 6);
}

TEST_CASE("a close-up is laid on the board by places that both show, and a photo that is none is refused") {
  BenchRig rig;
  speak(QStringLiteral("en"));
  openDemo(rig);
  rig.press(drawKey);
  const Board board = *drawingOf(rig).board();
  Camera camera;
  camera.pixelsPerMm = 40.0;
  camera.turn = 15.0;
  camera.part.include(milli(30, 17));
  camera.part.include(milli(50, 29));
  const TakenPhoto photo = takePhoto(board, camera);
  const QString file = rig.folder.filePath(QStringLiteral("close.png"));
  REQUIRE(photo.image.save(file));
  drop(rig, file);
  const bool added = BenchRig::wait([&] { return drawingOf(rig).photos().size() == 1; }, 10'000);
  INFO(rig.window->message().toStdString());
  REQUIRE(added);
  auto* inset = static_cast<PhotoInset*>(rig.window->findChild<QWidget*>(QStringLiteral("photoInset")));
  REQUIRE(inset != nullptr);
  REQUIRE(BenchRig::wait([&] { return inset->isVisible(); }));
  REQUIRE(BenchRig::wait([&] { return rig.window->map().settled(); }));
  const auto pair = [&](const char* label) {
    const Point at = positionOf(drawingOf(rig).lookup(), pinOf(rig, label)).value;
    const QPointF pixel = photo.pixelOf(at);
    QTest::mouseClick(inset, Qt::LeftButton, {},
                      inset->placeOf({Pixels(pixel.x()), Pixels(pixel.y())}).toPoint());
    INFO(rig.text("drawDue").toStdString());
    CHECK(rig.text("drawDue").startsWith(QStringLiteral("Now the same place")));
    REQUIRE(rig.window->map().zoomTo(pinOf(rig, label)));
    clickOnMap(rig, at);
  };
  for (const char* label : {"C21.1", "C28.1", "R28.2", "R21.2"})
    pair(label);
  CHECK(rig.text("drawFacts").contains(QStringLiteral("so many points always fit")));
  pair("R24.1");
  CHECK(rig.text("drawFacts").contains(QStringLiteral("worst place off by")));
  rig.press(Qt::Key_A);
  const Underlay& laid = drawingOf(rig).board()->underlays[0];
  REQUIRE(laid.lie.certain());
  CHECK(laid.pairs.size() == 5);
  const PhotoMapping mapping(laid);
  // The inset shows a pixel of it for some of the photo's: a click is off by up to half of one.
  const QPointF there = photo.pixelOf(milli(40, 22));
  const auto place = mapping.toBoard({Pixels(there.x()), Pixels(there.y())});
  REQUIRE(place);
  CHECK(distance(*place, milli(40, 22)) < Length(150'000));

  const QString broken = rig.folder.filePath(QStringLiteral("broken.jpg"));
  QFile out(broken);
  REQUIRE(out.open(QIODevice::WriteOnly));
  out.write("\xFF\xD8 no photo at all");
  out.close();
  drop(rig, broken);
  REQUIRE(BenchRig::wait([&] { return rig.window->message().contains(QStringLiteral("broken.jpg")); }));
  CHECK(drawingOf(rig).photos().size() == 1);
  CHECK(drawingOf(rig).board()->underlays.size() == 1);
}

TEST_CASE("a file dropped on a drawing is merged into it, one difference after the other") {
  BenchRig rig;
  speak(QStringLiteral("en"));
  rig.press(drawKey);
  line(rig, "J4 14");
  clickOnMap(rig, milli(0, 0));
  clickOnMap(rig, milli(13, 0));
  rig.press(Qt::Key_A);
  REQUIRE(BenchRig::wait([&] { return rig.window->map().settled(); }));
  rig.window->map().fit();
  const auto place = [&](const std::string& label) {
    return positionOf(drawingOf(rig).lookup(), pinOf(rig, label)).value;
  };
  // Three pins of one net, of which the file knows two nets.
  for (const char* label : {"J4.2", "J4.3", "J4.4"})
    clickOnMap(rig, place(label));
  line(rig, "ROWS");
  const PinId pin = pinOf(rig, "J4.2");
  drop(rig, QString::fromStdString(deviceFile("tide-logger.netmend-board.json")));
  REQUIRE(BenchRig::wait([&] { return rig.text("drawDue").contains(QStringLiteral("which is right?")); }));
  CHECK(rig.window->desk().job.board()->board->parts.size() <= 1); // nothing has changed yet
  int asked = 0;
  while (rig.text("drawDue").contains(QStringLiteral("which is right?")) && asked < 20) {
    rig.press(Qt::Key_X);
    ++asked;
  }
  CHECK(asked >= 2);
  CHECK(rig.text("drawDue").startsWith(QStringLiteral("Bring tide-logger")));
  rig.press(Qt::Key_A);
  CHECK(drawingOf(rig).board()->parts.size() > 60);
  CHECK(pinOf(rig, "J4.2") == pin);
  CHECK(netOf(rig, "J4.2") != netOf(rig, "J4.3"));
  CHECK(netOf(rig, "J4.2") == netOf(rig, "C21.1"));
  rig.press(Qt::Key_U);
  CHECK(drawingOf(rig).board()->parts.size() == 1);
  CHECK(netOf(rig, "J4.2") == netOf(rig, "J4.4"));
}

TEST_CASE("a list of nets is pasted, and a held lead's beeps join, silence does not") {
  BenchRig rig;
  speak(QStringLiteral("en"));
  rig.press(drawKey);
  line(rig, "J4 6");
  clickOnMap(rig, milli(0, 0));
  clickOnMap(rig, milli(5, 0));
  rig.press(Qt::Key_A);
  QGuiApplication::clipboard()->setText(QStringLiteral("Pin\tNet\n1\tGND\n2\tKEY\nX9\tQ\n"));
  rig.press(Qt::Key_V, Qt::ControlModifier);
  CHECK(drawingOf(rig).board()->nets.size() == 2);
  CHECK(rig.window->message().contains(QStringLiteral("X9")));
  const Desk desk = rig.window->desk();
  REQUIRE(desk.job.bookIn());
  REQUIRE(BenchRig::wait([&] { return rig.window->map().settled(); }));
  rig.window->map().fit();
  clickOnMap(rig, positionOf(drawingOf(rig).lookup(), pinOf(rig, "J4.1")).value);
  StationPage& page = rig.window->page(Station::board);
  const auto meter = [&](std::optional<double> value) {
    ValueTaken taken;
    taken.value = value;
    taken.mode = page.wantedMode();
    page.take(taken);
  };
  // The nearest without a net is J4.3.
  meter(0.4);
  CHECK(netOf(rig, "J4.3") == netOf(rig, "J4.1"));
  const Pin& joined = *drawingOf(rig).board()->pins.find(pinOf(rig, "J4.3"));
  CHECK(joined.net.origin == Origin::measured);
  REQUIRE(desk.job.job()->readings.size() == 1);
  CHECK(desk.job.job()->readings[0].reading.point.label == "J4.3");
  CHECK(desk.job.job()->readings[0].reading.other.label == "J4.1");
  meter({}); // OL says nothing
  CHECK(desk.job.job()->readings.size() == 1);
  CHECK(netOf(rig, "J4.4") == NetId());
  meter(2.1); // more than copper alone: apart, and the next one
  CHECK(desk.job.job()->readings.size() == 2);
  CHECK(netOf(rig, "J4.4") == NetId());
  meter(2.0);
  CHECK(netOf(rig, "J4.4") == NetId());
  CHECK(netOf(rig, "J4.5") == netOf(rig, "J4.1"));
}

TEST_CASE("a known-good value typed at a pin is what a good board reads there") {
  BenchRig rig;
  speak(QStringLiteral("en"));
  rig.press(drawKey);
  line(rig, "J4 6");
  clickOnMap(rig, milli(0, 0));
  clickOnMap(rig, milli(5, 0));
  rig.press(Qt::Key_A);
  const Desk desk = rig.window->desk();
  clickOnMap(rig, positionOf(drawingOf(rig).lookup(), pinOf(rig, "J4.2")).value);
  line(rig, "good 452");
  CHECK(rig.window->message() == QStringLiteral("J4.2: a good board reads 0.452 V"));
  REQUIRE(desk.job.goodWalks().size() == 1);
  CHECK(desk.job.goodWalks().front().readings.front().value == Approx(0.452));
  CHECK(desk.job.goodWalks().front().readings.front().point.pin == pinOf(rig, "J4.2"));
  CHECK(drawingOf(rig).sketch().group().size() == 1); // the pin is still in hand
  line(rig, "good loud");
  CHECK(rig.window->message().startsWith(QStringLiteral("⚠")));
  rig.press(Qt::Key_U);
  CHECK(desk.job.goodWalks().empty());
}

TEST_CASE(
    "a photo from straight above is scaled by two places, and the far side's lies mirrored by its corners") {
  BenchRig rig;
  speak(QStringLiteral("en"));
  std::ifstream in(deviceFile("tide-logger.netmend-board.json"));
  const auto real = boardFromText(std::string(std::istreambuf_iterator<char>(in), {}));
  REQUIRE(real);
  const auto taken = [&](Side side, const char* name) {
    Camera camera;
    camera.side = side;
    camera.pixelsPerMm = 12.0;
    if (side == Side::bottom) camera.tiltX = 5.0;
    TakenPhoto photo = takePhoto(*real, camera);
    QFile out(rig.folder.filePath(QLatin1String(name)));
    REQUIRE(out.open(QIODevice::WriteOnly));
    out.write(photo.jpeg);
    return photo;
  };
  const auto clickPhoto = [&](const TakenPhoto& photo, std::size_t which, Point p) {
    const QPointF pixel = photo.pixelOf(p);
    const PhotoMapping mapping(drawingOf(rig).board()->underlays[which]);
    clickOnMap(rig, *mapping.toBoard({Pixels(pixel.x()), Pixels(pixel.y())}));
  };
  const TakenPhoto top = taken(Side::top, "top.jpg");
  drop(rig, rig.folder.filePath(QStringLiteral("top.jpg")));
  REQUIRE(BenchRig::wait([&] { return drawingOf(rig).begun() && drawingOf(rig).photos().size() == 1; }));
  REQUIRE(BenchRig::wait([&] { return rig.window->map().settled(); }));
  rig.window->map().fit();
  clickPhoto(top, 0, milli(0, 0));
  clickPhoto(top, 0, milli(84, 0));
  line(rig, "no size");
  CHECK(rig.window->message().contains(QStringLiteral("how far apart the two are")));
  rig.press(Qt::Key_Escape);
  line(rig, "84");
  const Underlay& scaled = drawingOf(rig).board()->underlays[0];
  REQUIRE(scaled.lie.certain());
  CHECK(PhotoMapping(scaled).pixelsPerMm() == Approx(12.0).epsilon(0.005));

  // Ctrl and the wheel fade it, and undo brings it back.
  CopperMap& map = rig.window->map();
  const auto wheel = [&](Qt::KeyboardModifiers modifiers, int notches) {
    QWheelEvent event(QRectF(map.rect()).center(), {}, {}, {0, 120 * notches}, Qt::NoButton, modifiers,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&map, &event);
  };
  wheel(Qt::ControlModifier, -3);
  CHECK(drawingOf(rig).board()->underlays[0].faded.value == Approx(0.3));
  wheel(Qt::AltModifier, 2);
  CHECK(drawingOf(rig).board()->underlays[0].lightened.value == Approx(0.2));
  rig.press(Qt::Key_U);
  rig.press(Qt::Key_U);
  CHECK(drawingOf(rig).board()->underlays[0].faded.value == 0.0);
  const Length width = drawingOf(rig).sketch().trackWidth();
  wheel(Qt::ShiftModifier, 2);
  CHECK(drawingOf(rig).sketch().trackWidth() == width + Length(40'000));

  // The far side: turned over, its photo is dropped, and laid where the places of both are known.
  const TakenPhoto bottom = taken(Side::bottom, "bottom.jpg");
  rig.press(Qt::Key_T);
  drop(rig, rig.folder.filePath(QStringLiteral("bottom.jpg")));
  REQUIRE(BenchRig::wait([&] { return drawingOf(rig).photos().size() == 2; }));
  const Underlay& far = drawingOf(rig).board()->underlays[1];
  CHECK(far.side == Side::bottom);
  CHECK_FALSE(far.closeUp);
  rig.press(Qt::Key_P); // by its corners rather than by pairs
  REQUIRE(BenchRig::wait([&] { return map.settled(); }));
  map.fit();
  // Clockwise as it is seen from below.
  for (const Point corner : {milli(84, 56), milli(0, 56), milli(0, 0), milli(84, 0)})
    clickPhoto(bottom, 1, corner);
  line(rig, "84 x 56");
  const Underlay& laid = drawingOf(rig).board()->underlays[1];
  REQUIRE(laid.lie.certain());
  const QPointF pixel = bottom.pixelOf(milli(20, 15));
  const auto there = PhotoMapping(laid).toBoard({Pixels(pixel.x()), Pixels(pixel.y())});
  REQUIRE(there);
  CHECK(distance(*there, milli(20, 15)) < Length(150'000));
}
