#include <catch2/catch.hpp>

#include "job_hand.h"

#include <set>

#include <QListWidget>
#include <QMenu>

#include "bench/demo_cli.h"
#include "bench/language/language.h"
#include "netmend/base/plane.h"
#include "netmend/netgraph/copper_graph.h"

namespace netmend::testing {

namespace {

/// Of the piece of track that the place is on; what is broken is so in its middle.
NodeIndex nearerEnd(const CopperGraph& graph, const ProbePlace& place) {
  std::optional<CopperGraph::edge_descriptor> nearest;
  const auto away = [&](const auto edge) {
    return distanceToSegment(*place.at, *graph[edge].from, *graph[edge].to);
  };
  for (const auto edge : boost::make_iterator_range(boost::edges(graph)))
    if (graph[edge].object == place.object && graph[edge].from && graph[edge].to &&
        (!nearest || away(edge) < away(*nearest)))
      nearest = edge;
  INFO(place.label);
  REQUIRE(nearest);
  const bool from = distance(*place.at, *graph[*nearest].from) < distance(*place.at, *graph[*nearest].to);
  return from ? boost::source(*nearest, graph) : boost::target(*nearest, graph);
}

} // namespace

void KeyCount::add() const {
  counts_.at(static_cast<std::size_t>(station_)) += rig_.keys - before_ - left_;
  before_ = rig_.keys;
  left_ = 0;
}

void KeyCount::at(Station station) {
  add();
  station_ = station;
}

int KeyCount::all() const {
  add();
  int out = 0;
  for (const int count : counts_)
    out += count;
  return out;
}

std::string KeyCount::byStation() const {
  add();
  constexpr std::array names{"book in", "board", "walk", "find", "bridge", "prove", "hand over"};
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i)
    out += (i > 0 ? ", " : "") + std::string(names.at(i)) + " " + std::to_string(counts_.at(i));
  return out;
}

JobHand::JobHand(Hands::By by, const QString& language, JobStory of) : hands(rig, by), story(std::move(of)) {
  speak(language);    // plurals are words
  rig.window.reset(); // it was made in the language before
  rig.open();
  if (!story.goodWalks) return;
  std::vector<std::string> keep{"walk", "keep", "--book", book()};
  for (const std::string& file : story.goodWalks(rig.folder.path()))
    keep.push_back(file);
  cli(keep);
}

JobHand::~JobHand() {
  speak(QStringLiteral("en"));
}

void JobHand::settle() const {
  REQUIRE(BenchRig::wait([this] { return !desk().job.weighing() && !desk().fault.working(); }));
  QApplication::processEvents();
}

void JobHand::goOn(Station station) {
  keys.at(station);
  if (rig.window->station() == station) return;
  if (hands.mouse() || nextThing(desk()).station != station) return hands.goTo(station);
  rig.press(Qt::Key_Return, Qt::ControlModifier);
  REQUIRE(rig.window->station() == station);
}

void JobHand::type(const QString& text) {
  rig.type(text);
  keys.leaveOut(static_cast<int>(text.size()));
}

void JobHand::write(const char* field, const QString& text) {
  if (text.isEmpty()) return;
  hands.reach(hands.visible<QWidget>(field));
  type(text);
}

void JobHand::enter(const std::optional<double>& value) {
  const int before = rig.keys;
  if (value) {
    rig.type(QString::number(*value, 'f', 3));
    rig.press(Qt::Key_Return);
  } else {
    hands.command("OL", Qt::Key_O);
  }
  keys.leaveOut(rig.keys - before);
}

void JobHand::bookIn() {
  keys.at(Station::bookIn);
  // The window's first station is Board. Ctrl+N books in from anywhere.
  if (hands.mouse())
    hands.goTo(Station::bookIn);
  else
    rig.press(Qt::Key_N, Qt::ControlModifier);
  REQUIRE(rig.window->station() == Station::bookIn);
  write("&Device", story.device);
  write("Serial", story.serial);
  write("&Customer", story.customer);
  write("Their reference", story.reference);
  write("&Symptom", story.symptom);
  write("&History", story.history);
  write("As &received", story.received);
  write("&Internal notes", story.notes);
  const auto kept = [&] {
    const Job* now = desk().job.job();
    if (now == nullptr) return std::optional<Job>();
    const auto inBook = desk().job.book().jobNumbered(now->number);
    return inBook ? std::optional(*inBook) : std::nullopt;
  };
  REQUIRE(BenchRig::wait([&] {
    const auto now = kept();
    return now && now->symptom == story.symptom.toStdString() &&
           now->internalNotes == story.notes.toStdString();
  }));
  CHECK(kept()->device == story.device.toStdString());
  CHECK(kept()->serial == story.serial.toStdString());
  CHECK(kept()->customer == story.customer.toStdString());
  CHECK(kept()->customerReference == story.reference.toStdString());
  CHECK(kept()->history == story.history.toStdString());
  CHECK(kept()->condition == story.received.toStdString());
}

void JobHand::openBoard() {
  goOn(Station::board);
  if (!story.boardFile.isEmpty()) {
    hands.command("Open a board file", Qt::Key_O, Qt::ControlModifier);
    hands.nameFile(story.boardFile);
    keys.leaveOut(static_cast<int>(story.boardFile.size()));
  } else if (story.draw) {
    story.draw(*this);
  } else {
    write("Connector in one line", story.connector);
    rig.press(Qt::Key_Return);
  }
  REQUIRE(BenchRig::wait([&] { return desk().job.board() != nullptr; }));
  settle();
}

/// The row is chosen already, or its name is typed, where the list is long, or gone to.
void JobHand::choosePart() {
  auto& list = hands.visible<QListWidget>("Walk which part");
  const QString name = QString::fromStdString(story.part) + QLatin1Char(' ');
  constexpr int shortList = 12;
  if (list.count() > shortList) {
    if (hands.mouse())
      hands.reach(hands.visible<QWidget>("Search the parts"));
    else
      rig.press(Qt::Key_F, Qt::ControlModifier);
    type(QString::fromStdString(story.part));
    if (!hands.mouse()) rig.press(Qt::Key_Return);
  }
  if (!hands.mouse() && QApplication::focusWidget() == &list && list.currentItem() != nullptr &&
      list.currentItem()->text().startsWith(name))
    rig.press(Qt::Key_Return);
  else
    hands.choose(list, name);
}

void JobHand::walk() {
  if (rig.window->station() == Station::board) choosePart();
  keys.at(Station::walk);
  REQUIRE(rig.window->station() == Station::walk);
  REQUIRE(desk().walk.due());
  CHECK(desk().walk.due()->label.starts_with(story.part + "."));
  if (!story.temperature.isEmpty()) {
    write("Board at °C", story.temperature);
    rig.press(Qt::Key_Return);
  }
  for (int board = 0; board < story.goodBoards; ++board) {
    hands.command("Walk a good board", Qt::Key_G);
    REQUIRE(desk().walk.good());
    CHECK(rig.text("whichBoard") == said("GOOD BOARD"));
    walkBoard(true, board);
    hands.command("Keep as good", Qt::Key_K);
    settle();
    REQUIRE(desk().job.goodWalks().size() == static_cast<std::size_t>(board + 1));
    REQUIRE_FALSE(desk().walk.good());
  }
  walkBoard(false, story.goodBoards);
  settle();
  std::set<std::string> odd;
  for (const std::size_t i : desk().walk.oddOnes())
    odd.insert(desk().walk.walk(false).readings[i].point.label);
  std::set<std::string> wanted;
  for (const auto& [pin, value] : story.odd)
    wanted.insert(pin);
  CHECK(odd == wanted);
}

void JobHand::walkBoard(bool good, int board) {
  std::size_t count = 0;
  while (const auto due = desk().walk.due()) {
    onReading(Station::walk, count++);
    const auto odd = story.odd.find(due->label);
    const auto value = !good && odd != story.odd.end() ? odd->second : story.good(due->label, board);
    enter(value);
    const Walk& walk = desk().walk.walk(good);
    REQUIRE(walk.readings.size() == count);
    REQUIRE(walk.readings.back().point.label == due->label);
    CHECK(walk.readings.back().value.has_value() == value.has_value());
    if (value) CHECK(*walk.readings.back().value == Approx(*value).margin(0.0006));
  }
  if (!good) CHECK(job().readings.size() == count);
}

void JobHand::chooseOdd(const std::string& pin) {
  line_ = pin;
  const PinId id = desk().job.board()->lookup->pinsLabelled(pin).front();
  if (desk().fault.pin() == id) return;
  const auto boxes =
      rig.window->page(rig.window->station()).findChildren<QPushButton*>(QStringLiteral("oddPin"));
  const auto isIt = [&](const QString& text) {
    return text.startsWith(QString::fromStdString(pin) + QLatin1Char(' '));
  };
  for (qsizetype i = 0; i < boxes.size(); ++i) {
    if (!isIt(boxes[i]->accessibleName())) continue;
    if (!hands.mouse()) {
      rig.press(static_cast<Qt::Key>(static_cast<int>(Qt::Key_1) + static_cast<int>(i)), Qt::AltModifier);
    } else if (boxes[i]->isVisible()) {
      QTest::mouseClick(boxes[i], Qt::LeftButton);
    } else {
      QTest::mouseClick(&hands.visible<QWidget>("moreOddPins"), Qt::LeftButton);
      auto& menu = hands.visible<QMenu>("oddPinMenu");
      for (QAction* action : menu.actions())
        if (isIt(action->text()))
          QTest::mouseClick(&menu, Qt::LeftButton, {}, menu.actionGeometry(action).center());
      // As a desktop does when a menu is gone.
      REQUIRE(BenchRig::wait([] { return QApplication::activePopupWidget() == nullptr; }));
      QApplication::processEvents();
      QApplication::setActiveWindow(rig.window.get());
    }
    break;
  }
  INFO(pin << " " << rig.window->message().toStdString());
  REQUIRE(desk().fault.pin() == id);
}

/// The pin's own leg in its line's graph.
NodeIndex JobHand::nodeOf(const std::string& pin) const {
  const CopperGraph& graph = fault().line.graph;
  const CopperObject wanted = desk().job.board()->lookup->pinsLabelled(pin).front();
  for (const NodeIndex node : fault().line.terminals())
    if (graph[node].object == wanted) return node;
  FAIL(pin << " is not on the line");
  return {};
}

std::optional<std::size_t> JobHand::brokenEdge(const std::string& pin) const {
  if (story.odd.at(pin) || !story.broken) return std::nullopt;
  return story.broken(fault().line, nodeOf(pin));
}

/// What is broken parts the pin from the other side; what is shorted or low is so in all of its copper.
std::optional<double> JobHand::readsAt(const ProbeProposal& probe, const std::string& pin) const {
  const CopperGraph& graph = fault().line.graph;
  const auto broken = brokenEdge(pin);
  const auto parts = fragments(graph, broken ? std::vector{*broken} : std::vector<std::size_t>());
  const auto partOf = [&](std::size_t index) {
    const ProbePlace& place = fault().isolation.places[index];
    return parts.ofNode[place.node ? *place.node : nearerEnd(graph, place)];
  };
  if (probe.other) return partOf(probe.place) == partOf(*probe.other) ? std::optional(0.2) : std::nullopt;
  const auto odd = story.odd.at(pin);
  if (odd || partOf(probe.place) == parts.ofNode[nodeOf(pin)]) return odd;
  return story.good(pin, story.goodBoards);
}

void JobHand::find(const Repair& repair) {
  goOn(Station::find);
  settle();
  chooseOdd(repair.pin);
  settle();
  REQUIRE(desk().fault.fault() != nullptr);
  CHECK(rig.window->page(Station::find)
            .footMode()
            .text.endsWith(QString::fromStdString(desk().fault.lineName())));
  std::size_t count = 0;
  while (desk().fault.nextProbe() != nullptr && count != story.probes) {
    INFO(rig.text("probePlace").toStdString());
    REQUIRE(count < 12);
    CHECK_FALSE(rig.text("probePlace").isEmpty());
    const std::size_t before = job().readings.size();
    onReading(Station::find, count++);
    const auto value = readsAt(*desk().fault.nextProbe(), repair.pin);
    enter(value);
    settle();
    INFO("keyboard at " << rig.target()->objectName().toStdString() << " of "
                        << rig.target()->metaObject()->className() << ", told "
                        << rig.window->message().toStdString());
    REQUIRE(job().readings.size() == before + 1);
  }
  onReading(Station::find, count);
  if (!repair.found) return;
  const auto& ranked = fault().suspects.ranked;
  REQUIRE_FALSE(ranked.empty());
  const FaultClass& leading = fault().isolation.classes[ranked.front().faultClass];
  CHECK(leading.kind == *repair.found);
  // The set that is told holds what is broken.
  const auto broken = brokenEdge(repair.pin);
  if (!broken) return;
  const auto holds = [&](const Suspect& suspect) {
    return std::any_of(suspect.places.begin(), suspect.places.end(),
                       [&](const FaultPlace& place) { return place.edge == broken; });
  };
  const auto told = ranked.begin() + static_cast<std::ptrdiff_t>(fault().suspects.setSize);
  CHECK(std::any_of(ranked.begin(), told, holds));
}

} // namespace netmend::testing
