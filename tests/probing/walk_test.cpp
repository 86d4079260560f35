#include <cstdlib>
#include <random>
#include <sstream>

#include "netmend/probing/walk_file.h"
#include "netmend/probing/walk_session.h"
#include "support.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using test::TemporaryFile;

namespace {

constexpr std::chrono::sys_time<std::chrono::milliseconds> noon{std::chrono::milliseconds(1772366400123)};

WalkSession sessionOf(std::initializer_list<const char*> labels) {
  WalkSession session;
  for (const char* label : labels)
    session.walk.points.push_back({PinId{}, label});
  return session;
}

/// Types lines into a session; gives the errors.
std::vector<std::string> type(WalkSession& session, const std::string& lines) {
  std::istringstream in(lines);
  const auto source = makeTextSource(in, "typed", session.walk.mode);
  std::vector<std::string> errors;
  while (auto event = source->next()) {
    if (!*event) {
      errors.push_back(event->error().text());
    } else if (const auto taken = take(session, **event, noon); !taken) {
      errors.push_back(taken.error().text());
    }
  }
  CHECK(source->ended());
  return errors;
}

/// A board with a connector of four pins, two of which carry the same label.
Board smallBoard() {
  Board board;
  board.info.uuid = "board-a";
  const auto part = board.newId<PartId>();
  Part connector;
  connector.id = part;
  connector.reference = "J4";
  board.parts.put(connector);
  for (const char* name : {"10", "2", "1", "1"}) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part;
    pin.name = name;
    board.pins.put(pin);
  }
  return board;
}

Walk fullWalk() {
  Walk walk;
  walk.title = "keypad, \"first\" try";
  walk.boardUuid = "board-a";
  walk.boardName = "logger";
  walk.boardRevision = "B";
  walk.serial = "0042 µ";
  walk.specimen = Specimen::good;
  walk.meter = "handheld-4000";
  walk.by = "me";
  walk.condition.plugged = {"display", "keypad"};
  walk.condition.temperature = Celsius(21.5);
  walk.points = {{PinId(7), "J4.1"}, {PinId{}, "J4.2"}, {PinId(9), ""}};
  walk.skipped = {{PinId{}, "J4.2"}};
  Reading first;
  first.point = walk.points[0];
  first.other = walk.other;
  first.value = 0.1 + 0.2; // not a short decimal
  first.settling = Settling::settled;
  first.time = noon;
  first.meter = walk.meter;
  first.by = walk.by;
  first.condition = walk.condition;
  Reading second = first;
  second.point = walk.points[2];
  second.other = {PinId(3), "TP1"};
  second.mode = ReadingMode::dropUnderCurrent;
  second.value.reset();
  second.injected = Amperes(0.5);
  second.condition = {{}, true, {"FB2"}, std::nullopt, "pressed U3"};
  second.by.clear();
  walk.readings = {first, second};
  EnteredExpectation entered;
  entered.point = walk.points[1];
  entered.lowest = 0.4;
  entered.highest = 0.5;
  entered.by = walk.by;
  entered.condition = walk.condition;
  EnteredExpectation open = entered;
  open.overLimit = true;
  open.lowest = open.highest = 0.0;
  open.mode = ReadingMode::ohms;
  walk.entered = {entered, open};
  return walk;
}

std::string placeOf(std::string_view text) {
  const auto walk = walkFromText(text, "w");
  INFO(text);
  REQUIRE_FALSE(walk);
  CHECK(walk.error().file == "w");
  CHECK_FALSE(walk.error().message.empty());
  return wordsOf(walk.error().place);
}

} // namespace

TEST_CASE("typed values go to the points in their order") {
  auto session = sessionOf({"J4.1", "J4.2", "J4.3"});
  session.walk.meter = "handheld-4000";
  CHECK(type(session, "452\nOL rising\n\n# a remark\n.003 # near ground\n").empty());
  REQUIRE(session.walk.readings.size() == 3);
  CHECK(session.walk.readings[0].value == 0.452);
  CHECK(session.walk.readings[0].meter == "handheld-4000");
  CHECK(session.walk.readings[0].other.label == "GND");
  CHECK(session.walk.readings[0].time == noon);
  CHECK(session.walk.readings[1].overLimit());
  CHECK(session.walk.readings[1].settling == Settling::rising);
  CHECK(session.walk.readings[2].point.label == "J4.3");
  CHECK(session.finished());
  CHECK(type(session, "0.4").size() == 1); // no point is due
}

TEST_CASE("a named point takes the value and the walk goes on behind it") {
  auto session = sessionOf({"J4.1", "J4.2", "J4.3"});
  CHECK(type(session, "J4.2 0.5\n0.6\nTP7 OL\n").empty());
  REQUIRE(session.walk.readings.size() == 3);
  CHECK(session.walk.readings[0].point.label == "J4.2");
  CHECK(session.walk.readings[1].point.label == "J4.3");
  CHECK(session.walk.readings[2].point.label == "TP7");
  CHECK(session.walk.points.size() == 4);
}

TEST_CASE("skip, back and undo") {
  auto session = sessionOf({"J4.1", "J4.2"});
  CHECK(type(session, "skip\nback\n0.4\nundo\n").empty());
  CHECK(session.turn == 0);
  CHECK(session.walk.readings.empty());
  CHECK(session.walk.skipped.size() == 1);
  CHECK(type(session, "undo\nundo\n").empty());
  CHECK(session.walk.skipped.empty());
  CHECK(type(session, "undo\n").front().find("nothing to take back") != std::string::npos);
  CHECK(type(session, "back\n").front().find("first point") != std::string::npos);
  CHECK(type(session, "mode ohms\n4k7\nundo\nundo\n").empty());
  CHECK(session.walk.mode == ReadingMode::diode);
}

TEST_CASE("a line that is no reading is an error with its number and changes nothing") {
  auto session = sessionOf({"J4.1", "J4.2"});
  const auto errors = type(session, "0.4\nrubbish\nJ4.2 12 ohm\n452 kV\nmode warp\nJ4.2 0.5 0.6\n\xff 0.3\n");
  REQUIRE(errors.size() == 6);
  CHECK(errors[0].starts_with("typed: line 2: not a value"));
  CHECK(errors[1].starts_with("typed: line 3: a unit of another mode"));
  CHECK(errors[2].starts_with("typed: line 4: "));
  CHECK(errors[3].starts_with("typed: line 5: unknown mode"));
  CHECK(session.walk.readings.size() == 1);
  CHECK(session.turn == 1);
  std::istringstream endless(std::string(1 << 20, '7'));
  CHECK_FALSE(*makeTextSource(endless, "typed")->next());
}

TEST_CASE("a random walk with undo for every step ends where it began") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  auto session = sessionOf({"A", "B", "C", "D"});
  const auto start = session.walk;
  std::size_t done = 0;
  const std::vector<std::string> lines{"0.4", "skip",      "back",       "B 0.3",
                                       "X 1", "mode ohms", "mode diode", "OL"};
  for (int i = 0; i < 500; ++i)
    done += type(session, lines[random() % lines.size()]).empty() ? 1u : 0u;
  for (std::size_t i = 0; i < done; ++i)
    CHECK(type(session, "undo").empty());
  CHECK(session.walk == start);
  CHECK(session.turn == 0);
}

TEST_CASE("a walk file gives back exactly what was written") {
  const Walk walk = fullWalk();
  const auto text = walkToText(walk);
  const auto read = walkFromText(text, "w");
  REQUIRE(read);
  CHECK(*read == walk);
  CHECK(walkToText(*read) == text);
  const TemporaryFile file("a.netmend-walk.json", "old");
  REQUIRE(writeWalkFile(file.path(), walk));
  CHECK(*readWalkFile(file.path()) == walk);
  CHECK(*walkFromText(walkToText(Walk{}), "w") == Walk{});
}

TEST_CASE("a walk can be written as a table") {
  const auto walk =
      walkFromText("\xEF\xBB\xBF# specimen: good\r\n# serial: 17\r\n# any remark\r\n"
                   "point;value;mode\r\nJ4.1;0,452;\r\n\"J4;2\";OL;\r\nJ4.3;;\r\nJ4.4;4k7;ohms\r\n",
                   "w.csv");
  REQUIRE(walk);
  CHECK(walk->specimen == Specimen::good);
  CHECK(walk->serial == "17");
  CHECK(walk->points.size() == 4);
  REQUIRE(walk->readings.size() == 3);
  CHECK(walk->readings[0].value == 0.452);
  CHECK(walk->readings[1].point.label == "J4;2");
  CHECK(walk->readings[1].overLimit());
  CHECK(walk->readings[2].value == 4700.0);
  CHECK(walk->skipped.size() == 1);
}

TEST_CASE("a bad walk file is refused with the place of the fault") {
  CHECK(placeOf("point,value\nJ4.1,0.4\nJ4.2,junk\n") == "line 3");
  CHECK(placeOf("point,value\nJ4.1\n") == "line 2");
  CHECK(placeOf("point,valve\n") == "line 1");
  CHECK(placeOf("point,value\n,0.4\n") == "line 2");
  CHECK(placeOf("point,value,mode\nJ4.1,0.4,amperes\n") == "line 2");
  CHECK(placeOf("point,value\nJ4.1,\"0.4\n") == "line 2");
  CHECK(placeOf("point,value\n\x01\x02,0.4\n") == "line 2");
  CHECK(placeOf("# specimen: superb\n") == "line 1");
  CHECK(placeOf("").empty());
  CHECK(placeOf(R"({"format":"netmend-walk","version":2})") == "/version");
  CHECK(placeOf(R"({"format":"netmend-walk","version":1,"reading":[]})") == "/reading");
  CHECK(
      placeOf(R"({"format":"netmend-walk","version":1,"readings":[{"point":{"label":"a"},"value":"0L"}]})") ==
      "/readings/0/value");
  CHECK(placeOf(R"({"format":"netmend-walk","version":1,"readings":[{"value":0.4}]})") ==
        "/readings/0/point");
  CHECK(placeOf(R"({"format":"netmend-walk","version":1,"readings":[{"point":{"label":"a"},"value":0.4,
                 "time":"2026-02-30T00:00:00Z"}]})") == "/readings/0/time");
  CHECK(placeOf(R"({"format":"netmend-walk","version":1,"entered":[{"point":{"label":"a"},
                 "lowest":0.5,"highest":0.4}]})") == "/entered/0/highest");
}

TEST_CASE("a walk file cut or changed anywhere gives an error or a walk, never a crash") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  const std::string text = walkToText(fullWalk());
  const std::string table = "# serial: 17\npoint,value,mode\nJ4.1,0.452,diode\n\"J4,2\",OL,ohms\n";
  for (std::size_t i = 0; i + 2 < text.size(); ++i)
    CHECK_FALSE(walkFromText(std::string_view(text).substr(0, i), "w"));
  std::size_t errors = 0;
  for (int i = 0; i < netmend::rounds(3000); ++i) {
    std::string changed = i % 2 == 0 ? text : table;
    for (auto k = random() % 4 + 1; k > 0; --k)
      changed[random() % changed.size()] = static_cast<char>(random() % 256);
    errors += walkFromText(changed, "w") ? 0u : 1u;
  }
  CHECK(errors > 0);
}

TEST_CASE("a connector's points come in the order of their numbers and match a walk by label") {
  const Board board = smallBoard();
  const Lookup lookup(board);
  const auto points = pointsOf(lookup, board.parts[0].id);
  REQUIRE(points.size() == 4);
  CHECK(points[0].label == "J4.1");
  CHECK(points[2].label == "J4.2");
  CHECK(points[3].label == "J4.10");
  Walk walk;
  walk.boardUuid = "another board";
  walk.readings = {test::at(1, 0.4)};
  walk.readings[0].point = {PinId(999), "J4.10"};
  walk.points = {{PinId{}, "J4.1"}};
  matchToBoard(walk, lookup);
  CHECK(walk.readings[0].point.pin == points[3].pin);
  CHECK_FALSE(walk.points[0].pin); // two pins of this label: nobody knows which
  CHECK(walk.boardUuid == "board-a");
}

TEST_CASE("a written walk agrees with the published schema, which refuses spoilt ones") {
  const TemporaryFile file("walk.netmend-walk.json", walkToText(fullWalk()));
  const std::string root = NETMEND_SOURCE_DIR;
  const std::string command = "/usr/bin/python3 '" + root + "/tests/probing/schema_check.py' '" +
                              file.path().string() + "' '" + root + "/docs/formats/netmend-walk.schema.json'";
  CHECK(std::system(command.c_str()) == 0);
}
