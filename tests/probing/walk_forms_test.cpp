#include <nlohmann/json.hpp>

#include "netmend/probing/walk_file.h"
#include "support.h"

// Walks in all their forms, member by member: docs/formats/walk.md.

using namespace netmend;
using nlohmann::json;
using std::chrono::milliseconds;

namespace {

constexpr std::chrono::sys_time<milliseconds> twelve{milliseconds(1772366400123)};

json wholeWalk() {
  return json::parse(R"({
    "format": "netmend-walk", "version": 1, "title": "keys", "serial": "17", "specimen": "faulty",
    "board": {"uuid": "u", "name": "logger", "revision": "B"},
    "mode": "ohms", "other": {"label": "TP1", "pin": 5}, "meter": "m", "by": "me",
    "condition": {"plugged": ["b", "a"], "powered": true, "lifted": ["R2", "R1"], "temperature_C": 21.5,
                  "handling": "pressed"},
    "points": [{"label": "J1.1", "pin": 7}, {"label": "J1.2"}, {"pin": 9}],
    "skipped": [{"label": "J1.2"}],
    "readings": [
      {"point": {"label": "J1.1", "pin": 7}, "value": 470},
      {"point": {"label": "J1.1"}, "other": {"label": "GND"}, "mode": "diode", "value": "OL", "settling": "rising",
       "time": "2026-03-01T12:00:00.123Z", "meter": "n", "by": "you", "condition": {"powered": false},
       "injected_A": -0.5}],
    "entered": [
      {"point": {"label": "J1.3"}, "lowest": 1.5, "highest": 2.5},
      {"point": {"label": "J1.4"}, "other": {"pin": 3}, "mode": "volts", "by": "she", "condition": {},
       "value": "OL"}]
  })");
}

Walk walkIn(const json& document) {
  auto read = walkFromText(document.dump(), "w");
  INFO(document.dump());
  if (!read) FAIL(read.error().text());
  return *read;
}

/// Place of the error with this member changed.
std::string placeWithMember(const std::string& pointer, const json& value) {
  json document = wholeWalk();
  document[json::json_pointer(pointer)] = value;
  const auto read = walkFromText(document.dump(), "w");
  return read ? std::string() : wordsOf(read.error().place);
}

Walk tableOf(const std::string& text) {
  auto read = walkFromText(text, "w.csv");
  INFO(text);
  if (!read) FAIL(read.error().text());
  return *read;
}

struct Refused {
  std::string message, place, found, expected;
  friend bool operator==(const Refused&, const Refused&) = default;
};

Refused refusedTable(const std::string& text) {
  const auto read = walkFromText(text, "w.csv");
  INFO(text);
  REQUIRE_FALSE(read);
  CHECK(read.error().file == "w.csv");
  return {wordsOf(read.error().message), wordsOf(read.error().place), wordsOf(read.error().found),
          wordsOf(read.error().expected)};
}

} // namespace

TEST_CASE("each member of a walk file lands where it belongs, and what a reading leaves out is the walk's") {
  const Walk walk = walkIn(wholeWalk());
  CHECK(walk.title == "keys");
  CHECK(walk.serial == "17");
  CHECK(walk.specimen == Specimen::faulty);
  CHECK(walk.boardUuid == "u");
  CHECK(walk.boardName == "logger");
  CHECK(walk.boardRevision == "B");
  CHECK(walk.mode == ReadingMode::ohms);
  CHECK(walk.other == ProbePoint{PinId(5), "TP1"});
  CHECK(walk.meter == "m");
  CHECK(walk.by == "me");
  CHECK(walk.condition == Condition{{"a", "b"}, true, {"R1", "R2"}, Celsius(21.5), "pressed"});
  CHECK(walk.points == std::vector<ProbePoint>{{PinId(7), "J1.1"}, {PinId{}, "J1.2"}, {PinId(9), ""}});
  CHECK(walk.skipped == std::vector<ProbePoint>{{PinId{}, "J1.2"}});
  REQUIRE(walk.readings.size() == 2);
  CHECK(walk.readings[0] == Reading{{PinId(7), "J1.1"},
                                    walk.other,
                                    ReadingMode::ohms,
                                    470.0,
                                    Settling::unknown,
                                    {},
                                    "m",
                                    "me",
                                    walk.condition,
                                    std::nullopt});
  CHECK(walk.readings[1] == Reading{{PinId{}, "J1.1"},
                                    {PinId{}, "GND"},
                                    ReadingMode::diode,
                                    std::nullopt,
                                    Settling::rising,
                                    twelve,
                                    "n",
                                    "you",
                                    {},
                                    Amperes(-0.5)});
  REQUIRE(walk.entered.size() == 2);
  CHECK(walk.entered[0] ==
        EnteredExpectation{
            {PinId{}, "J1.3"}, walk.other, ReadingMode::ohms, false, 1.5, 2.5, "me", walk.condition});
  CHECK(walk.entered[1] ==
        EnteredExpectation{{PinId{}, "J1.4"}, {PinId(3), ""}, ReadingMode::volts, true, 0.0, 0.0, "she", {}});
  CHECK(walkIn(json::parse(walkToText(walk))) == walk);
  CHECK(walkIn({{"format", "netmend-walk"}, {"version", 1}}) == Walk{});
}

TEST_CASE("only what a reading says otherwise than its walk is written") {
  const json written = json::parse(walkToText(walkIn(wholeWalk())));
  json wanted = wholeWalk();
  wanted["condition"]["plugged"] = {"a", "b"};
  wanted["condition"]["lifted"] = {"R1", "R2"};
  wanted["readings"][0]["value"] = 470.0;
  wanted["readings"][1]["condition"] = json::object();
  wanted["points"][2] = {{"pin", 9}};
  CHECK(written == wanted);
  // Of an empty walk nothing but the defaults; a point of neither label nor pin keeps its empty label.
  Walk bare;
  bare.other = {};
  CHECK(json::parse(walkToText(bare)) == json{{"format", "netmend-walk"},
                                              {"version", 1},
                                              {"specimen", "unknown"},
                                              {"mode", "diode"},
                                              {"other", {{"label", ""}}}});
  CHECK(walkToText(Walk{}).ends_with("}\n"));
}

TEST_CASE("a key that nobody knows is refused in every object of a walk file") {
  for (const char* object : {"", "/board", "/other", "/condition", "/points/0", "/skipped/0", "/readings/0",
                             "/readings/0/point", "/readings/1/other", "/readings/1/condition", "/entered/0",
                             "/entered/0/point", "/entered/1/other", "/entered/1/condition"}) {
    INFO(object);
    CHECK(placeWithMember(std::string(object) + "/colour", "red") == std::string(object) + "/colour");
  }
}

TEST_CASE("figures and words of a walk file are refused outside their ranges, with their place") {
  const std::vector<std::pair<std::string, std::pair<double, double>>> ranges{
      {"/condition/temperature_C", {-60, 500}},
      {"/readings/0/value", {-1e12, 1e12}},
      {"/readings/1/injected_A", {-1000, 1000}}};
  for (const auto& [pointer, range] : ranges) {
    INFO(pointer);
    CHECK(placeWithMember(pointer, range.first).empty());
    CHECK(placeWithMember(pointer, range.second).empty());
    CHECK(placeWithMember(pointer, 1.01 * range.first) == pointer);
    CHECK(placeWithMember(pointer, 1.01 * range.second) == pointer);
  }
  CHECK(placeWithMember("/entered/0/lowest", -1e12).empty());
  CHECK(placeWithMember("/entered/0/lowest", -1.01e12) == "/entered/0/lowest");
  CHECK(placeWithMember("/entered/0/highest", 1e12).empty());
  CHECK(placeWithMember("/entered/0/highest", 1.01e12) == "/entered/0/highest");
  CHECK(placeWithMember("/entered/0/lowest", 2.4).empty());
  CHECK(placeWithMember("/entered/0/lowest", 2.5) == "/entered/0/highest");
  CHECK(placeWithMember("/entered/0/lowest", 2.6) == "/entered/0/highest");
  CHECK(placeWithMember("/entered/1/value", "0L") == "/entered/1/value");
  CHECK(placeWithMember("/entered/1/value", 0.5) == "/entered/1/value");
  CHECK(placeWithMember("/readings/0/value", "ol") == "/readings/0/value");
  CHECK(placeWithMember("/specimen", "superb") == "/specimen");
  CHECK(placeWithMember("/mode", "warp") == "/mode");
  CHECK(placeWithMember("/readings/1/mode", "warp") == "/readings/1/mode");
  CHECK(placeWithMember("/entered/1/mode", "warp") == "/entered/1/mode");
  CHECK(placeWithMember("/readings/1/settling", "falling") == "/readings/1/settling");
  CHECK(placeWithMember("/readings/1/time", "twelve") == "/readings/1/time");
  CHECK(placeWithMember("/condition/powered", "yes") == "/condition/powered");
  CHECK(placeWithMember("/condition/plugged", "a") == "/condition/plugged");
  CHECK(placeWithMember("/points", "J1.1") == "/points");
  CHECK(placeWithMember("/points/1", json::object()) == "/points/1");
  CHECK(placeWithMember("/points/0/pin", -1) == "/points/0/pin");
  CHECK(placeWithMember("/title", 17) == "/title");
  CHECK(placeWithMember("/board/uuid", 17) == "/board/uuid");
  CHECK(placeWithMember("/version", 2) == "/version");
  CHECK(placeWithMember("/version", 0) == "/version");
  CHECK(placeWithMember("/format", "netmend-board") == "/format");
  // A file of something else is told apart by its first letter.
  CHECK(wordsOf(walkFromText(" \t\r\n\xEF\xBB\xBF", "w").error().message) == "the file is empty");
  CHECK(walkFromText("[]", "w").error().file == "w");
  CHECK(walkFromText("\xEF\xBB\xBF{\"format\":\"netmend-walk\",\"version\":1}", "w"));
  CHECK_FALSE(readWalkFile("/nowhere/walk.json"));
}

TEST_CASE("each remark above a table tells about its walk, each column about its row") {
  const Walk walk =
      tableOf("# title: keys: all\n# board:logger\n#revision: B \n# serial: 17\n# specimen: faulty\n"
              "# meter: m\n# by: me\n# other: TP1\n# mode: ohms\n# colour: red\n# no remark\n\n"
              "settling,point,value,mode,other,meter,by,time\n"
              ",J1.1,470,,,,,\n"
              "rising, J1.2 ,0.45, diode ,GND,n,you,2026-03-01T12:00:00.123Z\n"
              "settled,J1.3,skip,,,,,\n"
              ",J1.4,,,,,,\n"
              "# serial: 18\n"
              "unknown,\"J1,\"\"5\"\"\",OL,,,,,");
  CHECK(walk.title == "keys: all");
  CHECK(walk.boardName == "logger");
  CHECK(walk.boardRevision == "B");
  CHECK(walk.serial == "17"); // below the header a remark is a remark
  CHECK(walk.specimen == Specimen::faulty);
  CHECK(walk.meter == "m");
  CHECK(walk.by == "me");
  CHECK(walk.other.label == "TP1");
  CHECK(walk.mode == ReadingMode::ohms);
  REQUIRE(walk.points.size() == 5);
  CHECK(walk.points[1].label == "J1.2");
  CHECK(walk.points[4].label == "J1,\"5\"");
  REQUIRE(walk.skipped.size() == 2);
  CHECK(walk.skipped[0].label == "J1.3");
  CHECK(walk.skipped[1].label == "J1.4");
  REQUIRE(walk.readings.size() == 3);
  CHECK(walk.readings[0] == Reading{{PinId{}, "J1.1"},
                                    {PinId{}, "TP1"},
                                    ReadingMode::ohms,
                                    470.0,
                                    Settling::unknown,
                                    {},
                                    "m",
                                    "me",
                                    {},
                                    std::nullopt});
  CHECK(walk.readings[1] == Reading{{PinId{}, "J1.2"},
                                    {PinId{}, "GND"},
                                    ReadingMode::diode,
                                    0.45,
                                    Settling::rising,
                                    twelve,
                                    "n",
                                    "you",
                                    {},
                                    std::nullopt});
  CHECK(walk.readings[2].overLimit());
  for (const char* text : {"point;value\nA,1;0,45\n", "point\tvalue\nA,1\t0,45\n"}) {
    const Walk other = tableOf(text);
    CHECK(other.points.at(0).label == "A,1");
    CHECK(other.readings.at(0).value == 0.45);
  }
  CHECK(tableOf("\"point\",\"value\"\n\"A\",\"0.45\"\n").readings.at(0).value == 0.45);
  CHECK(tableOf("point,value\n  \"A \" ,0.45\n").points.at(0).label == "A");
  CHECK(tableOf("point,value\nA \"b\",0.45\n").points.at(0).label == "A \"b\"");
  CHECK(tableOf("\xEF\xBB\xBFpoint,value\n\nA,0.45\n \t\n").readings.size() == 1);
}

TEST_CASE("a bad table is refused with its line, what stands there and what was expected") {
  const std::string row = "point,value,mode,settling,time\n";
  CHECK(refusedTable("# specimen: superb\n") ==
        Refused{"unknown state of the specimen", "line 1", "\"superb\"", "good, faulty or unknown"});
  CHECK(refusedTable("\n# mode: warp\n") ==
        Refused{"unknown mode", "line 2", "\"warp\"", "a mode such as diode or ohms"});
  CHECK(refusedTable("point,valve\n") == Refused{"unknown column", "line 1", "\"valve\"",
                                                 "point, value, mode, other, meter, by, time or settling"});
  CHECK(refusedTable("point,value,point\n") == Refused{"column named twice", "line 1", "\"point\"", ""});
  CHECK(refusedTable("point,mode\n") == Refused{"column missing", "line 1", "\"point,mode\"", "value"});
  CHECK(refusedTable("value\n") == Refused{"column missing", "line 1", "\"value\"", "point"});
  CHECK(refusedTable("\"point,value\n").message == "a quote is not closed");
  CHECK(refusedTable(row + "A,\"0.4,,,\n") ==
        Refused{"a quote is not closed", "line 2", "\"A,\"0.4,,,\"", ""});
  CHECK(refusedTable(row + "A,0.4\n") == Refused{"2 cells", "line 2", "\"A,0.4\"", "5 cells"});
  CHECK(refusedTable(row + "A,0.4,,,,\n").message == "6 cells");
  CHECK(refusedTable(row + ",0.4,,,\n") ==
        Refused{"no point", "line 2", "\",0.4,,,\"", "the name of a point such as J4.11"});
  CHECK(refusedTable(row + "A,0.4,warp,,\n") ==
        Refused{"unknown mode", "line 2", "\"warp\"", "a mode such as diode or ohms"});
  CHECK(refusedTable(row + "A,0.4,,falling,\n") ==
        Refused{"unknown word", "line 2", "\"falling\"", "settled, rising or unknown"});
  CHECK(refusedTable(row + "A,0.4,,,twelve\n") ==
        Refused{"not a time", "line 2", "\"twelve\"", "a time in UTC such as 2026-03-01T09:30:00Z"});
  CHECK(refusedTable(row + "A,0.4 A,,,\n") ==
        Refused{"not a value", "line 2", "\"0.4 A\"", "a value in V or OL, for diode"});
  CHECK(refusedTable(row + "A,470 ohm,,,\n").message == "a unit of another mode");
  CHECK(refusedTable(row + "\x02,0.4,,,\n").message == "not text in UTF-8");
  CHECK(refusedTable("# a remark\n") ==
        Refused{"no header", "line 2", "", "a row of column names with at least point and value"});
  const std::string longRow(100, 'x');
  CHECK(refusedTable("point,value\n" + longRow + "\n").found == "\"" + longRow.substr(0, 80) + "\"");
}
