// What the whole jobs are about. Devices and boards are invented; the large board is Debian's.
#include <catch2/catch.hpp>

#include <cctype>
#include <queue>

#include "bench/demo_cli.h"
#include "job_hand.h"
#include "netmend/casework/board_under_work.h"
#include "netmend/jumper/proposal.h"
#include "netmend/probing/walk_file.h"

namespace netmend::testing {

namespace {

/// What that walk of the demo's board reads there; none: OL.
std::optional<double> demoReading(const std::string& walkFile, const std::string& pin) {
  const auto walk = readWalkFile(deviceFile(walkFile));
  REQUIRE(walk);
  for (const Reading& reading : walk->readings)
    if (reading.point.label == pin) return reading.value;
  FAIL("no " << pin << " in " << walkFile);
  return {};
}

/// A via that parts the pin from another, the nearest to it; else the nearest such track.
std::size_t nearestBreak(const Line& line, NodeIndex pin) {
  std::optional<std::size_t> track;
  std::vector<bool> seen(boost::num_vertices(line.graph));
  std::queue<NodeIndex> next;
  next.push(pin);
  seen[pin] = true;
  for (; !next.empty(); next.pop())
    for (const auto out : boost::make_iterator_range(boost::out_edges(next.front(), line.graph))) {
      const CopperEdge& edge = line.graph[out];
      const NodeIndex to = boost::target(out, line.graph);
      if (seen[to]) continue;
      seen[to] = true;
      next.push(to);
      if ((edge.kind != EdgeKind::via && (edge.kind != EdgeKind::track || track)) ||
          !breakEnds(line.graph, {edge.index}))
        continue;
      if (edge.kind == EdgeKind::via) return edge.index;
      track = edge.index;
    }
  REQUIRE(track);
  return *track;
}

/// The longest track that parts the line.
std::size_t longestBreak(const Line& line, NodeIndex) {
  std::optional<CopperEdge> longest;
  for (const auto each : boost::make_iterator_range(boost::edges(line.graph))) {
    const CopperEdge& edge = line.graph[each];
    if (edge.kind == EdgeKind::track && edge.length.known() && breakEnds(line.graph, {edge.index}) &&
        (!longest || edge.length.value > longest->length.value))
      longest = edge;
  }
  REQUIRE(longest);
  return longest->index;
}

/// Values between those of a diode of silicon and less, told by the pin's name: the same on all boards but
/// for some mV.
std::optional<double> inventedReading(const std::string& pin, int board) {
  unsigned mixed = 7;
  for (const char c : pin)
    mixed = mixed * 31 + static_cast<unsigned char>(c);
  return 0.420 + 0.002 * (mixed % 120) + 0.003 * (board % 3);
}

JobStory onDemoBoard() {
  JobStory out;
  out.boardFile = QString::fromStdString(deviceFile("tide-logger.netmend-board.json"));
  out.part = "J4";
  out.device = QStringLiteral("Tide logger");
  out.temperature = QStringLiteral("22");
  out.goodWalks = [](const QString&) {
    std::vector<std::string> files;
    for (int i = 1; i <= 8; ++i)
      files.push_back(deviceFile("good-" + std::to_string(i) + ".netmend-walk.json"));
    return files;
  };
  // Mended it reads there what the first good board does.
  out.good = [](const std::string& pin, int) {
    return demoReading(pin == "J4.9" ? "good-1.netmend-walk.json" : "faulty.netmend-walk.json", pin);
  };
  out.broken = nearestBreak;
  return out;
}

} // namespace

JobStory guideStory() {
  JobStory out = onDemoBoard();
  out.name = QStringLiteral("the guide's story");
  out.serial = QStringLiteral("TL-0417");
  out.symptom = QStringLiteral("Third column of the keypad is dead: 3, 6, 9 and Enter do nothing");
  out.history = QStringLiteral("Keypad swapped on site, no change. Washed over in a winter storm.");
  out.received = QStringLiteral("Salt marks at the lower edge; opened before");
  out.customer = QStringLiteral("North pier, harbour office");
  out.reference = QStringLiteral("HO-118");
  out.notes = QStringLiteral("Wants the board back for Friday's tide");
  out.workshop = QStringLiteral("Slipway Board Repair, Quay 3");
  out.odd = {{"J4.9", std::nullopt}};
  out.repairs = {{"J4.9"}};
  out.probes = 2; // as docs/guide/first-job.md tells it
  return out;
}

JobStory threeOddStory() {
  JobStory out = onDemoBoard();
  out.name = QStringLiteral("three odd pins");
  out.symptom = QStringLiteral("Keys 3, 4 and 8 do nothing");
  out.customer = QStringLiteral("Lock keeper");
  out.notes = QStringLiteral("Paid in advance");
  out.odd = {{"J4.5", 0.003}, {"J4.7", 0.212}, {"J4.9", std::nullopt}};
  out.repairs = {{"J4.9"},
                 {"J4.5", 3, QStringLiteral("C24.1 C24.2, solder splash"), FaultKind::shortToGround},
                 {"J4.7", 4, QStringLiteral("C26, leaks"), std::nullopt}};
  return out;
}

JobStory typedStory() {
  JobStory out;
  out.name = QStringLiteral("a typed connector");
  out.connector = QStringLiteral("J1, 20 pins");
  out.part = "J1";
  out.device = QStringLiteral("Buoy light");
  out.symptom = QStringLiteral("Lamp stays dark");
  out.customer = QStringLiteral("Fairway office");
  out.notes = QStringLiteral("No other board of this kind in the house");
  out.functions = {QStringLiteral("Lamp"), QStringLiteral("Flash code")};
  out.goodBoards = 1;
  out.good = inventedReading;
  out.odd = {{"J1.9", std::nullopt}};
  out.repairs = {{"J1.9", 1, QStringLiteral("J1.9 U3.12, track torn"), std::nullopt}};
  return out;
}

JobStory largeStory() {
  JobStory out;
  out.name = QStringLiteral("a large board");
  // The largest board of Debian's package kicad-demos, a video card for a bus of 120 contacts.
  out.boardFile = QStringLiteral("/usr/share/kicad/demos/video/video.kicad_pcb");
  out.part = "BUS1";
  out.device = QStringLiteral("Video card");
  out.symptom = QStringLiteral("Picture with stripes, one address in two lost");
  out.customer = QStringLiteral("Museum of computing");
  out.notes = QStringLiteral("The only one they have");
  out.functions = {QStringLiteral("Picture")};
  out.good = inventedReading;
  out.goodWalks = [board = out.boardFile](const QString& folder) {
    const auto under = openBoard(board.toStdString());
    REQUIRE(under);
    std::vector<std::string> files;
    for (int i = 0; i < 2; ++i) {
      Walk walk;
      walk.title = "BUS1";
      walk.boardUuid = under->board->info.uuid;
      walk.specimen = Specimen::good;
      for (const Part& part : under->board->parts)
        if (part.reference == "BUS1") walk.points = pointsOf(*under->lookup, part.id);
      walk.skipped = pointsWithoutNet(*under->lookup, walk.points);
      for (const ProbePoint& point : walk.points) {
        if (std::find(walk.skipped.begin(), walk.skipped.end(), point) != walk.skipped.end()) continue;
        Reading reading;
        reading.point = point;
        reading.value = inventedReading(point.label, i);
        walk.readings.push_back(reading);
      }
      files.push_back(folder.toStdString() + "/good-" + std::to_string(i) + ".netmend-walk.json");
      REQUIRE(writeWalkFile(files.back(), walk));
    }
    return files;
  };
  out.broken = longestBreak;
  out.odd = {{"BUS1.B20", std::nullopt}};
  out.repairs = {{"BUS1.B20"}};
  return out;
}

namespace {

/// By mouse and keys on the map of an empty board.
class Pencil {
public:
  explicit Pencil(JobHand& hand) : rig_(hand.rig), before_(rig_.keys) { rig_.press(drawKey); }
  [[nodiscard]] int keys() const { return rig_.keys - before_; }
  void line(const QString& text) {
    rig_.press(Qt::Key_Return);
    rig_.type(text);
    rig_.press(Qt::Key_Return);
  }
  void key(Qt::Key key) { rig_.press(key); }
  void click(double x, double y) { QTest::mouseClick(&map(), Qt::LeftButton, {}, at(x, y)); }
  /// Pressed at the first place, drawn along all of them, let go at the last.
  void stroke(const std::vector<std::pair<double, double>>& way) {
    QTest::mousePress(&map(), Qt::LeftButton, {}, at(way.front().first, way.front().second));
    for (std::size_t i = 1; i < way.size(); ++i)
      for (int step = 1; step <= 5; ++step) {
        const QPointF a = at(way[i - 1].first, way[i - 1].second), b = at(way[i].first, way[i].second);
        const QPointF now = a + (b - a) * step / 5.0;
        QMouseEvent move(QEvent::MouseMove, now, map().mapToGlobal(now), Qt::NoButton, Qt::LeftButton, {});
        QApplication::sendEvent(&map(), &move);
      }
    QTest::mouseRelease(&map(), Qt::LeftButton, {}, at(way.back().first, way.back().second));
  }

private:
  [[nodiscard]] CopperMap& map() const { return rig_.window->map(); }
  [[nodiscard]] QPoint at(double x, double y) const {
    return map().view().toPicture({Length::fromMm(x), Length::fromMm(y)}).toPoint();
  }
  BenchRig& rig_;
  int before_;
};

/// A connector of six pins and a chip of two rows, six lines between them; one of them goes inside the board
/// for a stretch.
void drawSmallBoard(JobHand& hand) {
  Pencil pencil(hand);
  const BenchDrawing& drawing = hand.desk().drawing;
  REQUIRE(drawing.begun());
  pencil.line(QStringLiteral("J4 6 pads 1.2x2"));
  pencil.click(10, 10);
  pencil.click(35, 10);
  pencil.key(Qt::Key_A);
  pencil.line(QStringLiteral("U1 8 pads 1.2x2"));
  pencil.click(10, 30);
  pencil.click(25, 38);
  pencil.key(Qt::Key_A);
  REQUIRE(drawing.board()->parts.size() == 2);
  pencil.stroke({{10, 10}, {10, 30}});
  pencil.line(QStringLiteral("GND"));
  pencil.stroke({{15, 10}, {15, 30}});
  pencil.line(QStringLiteral("KEY2"));
  pencil.stroke({{20, 10}, {20, 30}});
  pencil.line(QStringLiteral("KEY3"));
  pencil.click(25, 10);
  pencil.click(25, 16);
  pencil.key(Qt::Key_I);
  pencil.click(25, 24);
  pencil.click(25, 30);
  pencil.line(QStringLiteral("KEY4"));
  pencil.stroke({{30, 10}, {30, 38}, {25, 38}});
  pencil.line(QStringLiteral("KEY5"));
  pencil.stroke({{35, 10}, {35, 44}, {20, 44}, {20, 38}});
  pencil.line(QStringLiteral("KEY6"));
  CHECK(drawing.board()->nets.size() == 6);
  // Drawing is left, and its keys are not those of the job.
  pencil.key(drawKey);
  hand.keys.leaveOut(pencil.keys());
}

} // namespace

JobStory drawnStory() {
  JobStory out;
  out.name = QStringLiteral("a drawn board");
  out.draw = drawSmallBoard;
  out.part = "J4";
  out.device = QStringLiteral("Sluice control");
  out.symptom = QStringLiteral("Key 4 does nothing");
  out.customer = QStringLiteral("Lock keeper");
  out.notes = QStringLiteral("Keep the old cover");
  out.goodBoards = 1;
  out.good = inventedReading;
  out.broken = nearestBreak;
  out.odd = {{"J4.4", std::nullopt}};
  out.repairs = {{"J4.4"}};
  return out;
}

} // namespace netmend::testing
