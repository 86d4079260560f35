// Scripts of drawing steps, docs/formats/edits.md.
#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

#include "edit_script.h"

using namespace netmend;
using namespace netmend::test;

TEST_CASE("an empty script does nothing") {
  Board board = rows();
  const ScriptDone nothing = done(board, "");
  CHECK(nothing.steps == 0);
  CHECK(nothing.edits.empty());
  CHECK(board == rows());
}

TEST_CASE("lines and clicks draw connectors, rows of parts, test pads, shields, zones and areas") {
  Board board;
  const ScriptDone all = done(board, R"(
    {"line": "J4 4 2 rows", "clicks": [[1, 2], [2, 1]], "side": "bottom"},
    {"line": "J5 4 2 rows", "clicks": [[11, 2], [12, 1]], "other_way": true},
    {"line": "R21 100 0402 3", "clicks": [[30, 0], [31, 0], [30, -4]]},
    {"line": "TP", "clicks": [[40, 0], [42, 0], [44, 0]]},
    {"line": "SH1", "clicks": [[50, 0], [60, 0], [60, 10], [50, 10], [50, 0]]},
    {"line": "C 1n 0402", "clicks": [[70, 0], [71, 0], [72, 0], [73, 0]]})");
  CHECK(all.steps == 6);
  CHECK(all.edits.size() == 6);
  CHECK(placeOf(board, "J4.1") == mm(1, 2));
  CHECK(placeOf(board, "J4.4") == mm(2, 1));
  CHECK(partCalled(board, "J4").side == fromUser(Side::bottom));
  CHECK(partCalled(board, "J5").side == fromUser(Side::top));
  // Pin 2 lies across the way of the rows, which is the other one.
  CHECK(placeOf(board, "J4.2") != placeOf(board, "J5.2") - mm(10, 0));
  CHECK(placeOf(board, "J5.4") == mm(12, 1));
  for (const auto& [reference, y] : {std::pair{"R21", 0}, {"R22", -2}, {"R23", -4}}) {
    CHECK(partCalled(board, reference).position == fromUser(mm(30.5, y)));
    CHECK(partCalled(board, reference).value == fromUser<std::string>("100"));
  }
  for (const auto& [name, x] : {std::pair{"TP1", 40}, {"TP2", 42}, {"TP3", 44}})
    CHECK(placeOf(board, name) == mm(x, 0));
  CHECK(partCalled(board, "SH1").kind == fromUser(PartKind::shield));
  CHECK(partCalled(board, "SH1").body == fromUser(box(50, 0, 60, 10)));
  CHECK(partCalled(board, "C1").position == fromUser(mm(70.5, 0)));
  CHECK(partCalled(board, "C2").position == fromUser(mm(72.5, 0)));
  CHECK(board.parts.size() == 8);
}

TEST_CASE("what lies where a script clicks does not matter") {
  Board board = rows();
  done(board, R"({"track": ["J1.1", "J2.1"], "width_mm": 3},
                 {"line": "R5 0402", "clicks": [[9.5, 0], [10.5, 0]]},
                 {"line": "TP", "clicks": [[0, 0]]},
                 {"via": [5, 0]},
                 {"line": "TP", "clicks": [[5, 0]]})");
  CHECK(partCalled(board, "R5").position == fromUser(mm(10, 0)));
  CHECK(placeOf(board, "TP1") == mm(0, 0));
  CHECK(placeOf(board, "TP2") == mm(5, 0));
  CHECK(board.tracks.size() == 1);
}

TEST_CASE("parts are copied with what joins them") {
  Board board;
  done(board, R"({"line": "R1 0402", "clicks": [[0, 0], [1, 0]]},
                 {"line": "C1 0402", "clicks": [[0, -3], [1, -3]]},
                 {"track": ["R1.1", "C1.1"]},
                 {"line": "copy R1 C1", "clicks": [[10, 0]]})");
  CHECK(board.parts.size() == 4);
  CHECK(board.tracks.size() == 2);
  CHECK(pinCalled(board, "R2.1").net == pinCalled(board, "C2.1").net);
  CHECK(pinCalled(board, "R2.1").net.value != pinCalled(board, "R1.1").net.value);
  CHECK(placeOf(board, "R2.1") == mm(10, 0));
}

TEST_CASE("pins are joined, named, measured and separated") {
  Board board = rows();
  const ScriptDone all = done(board, R"({"join": ["J1.1", "J2.1"]},
                                        {"join": ["J1.2", "J2.2"], "net": "KEY", "measured": true},
                                        {"join": ["J1.3"], "net": "KEY", "measured": false},
                                        {"join": ["J1.4"]})");
  CHECK(all.edits.size() == 4);
  CHECK(netOfPin(board, "J1.1").empty());
  CHECK(pinCalled(board, "J1.1").net == pinCalled(board, "J2.1").net);
  CHECK(pinCalled(board, "J1.1").net.origin == Origin::user);
  CHECK(pinCalled(board, "J1.2").net.origin == Origin::measured);
  CHECK(pinCalled(board, "J1.3").net.origin == Origin::user);
  CHECK(netOfPin(board, "J2.2") == "KEY");
  CHECK(netOfPin(board, "J1.3") == "KEY");
  CHECK(Lookup(board).netsNamed("KEY").size() == 1);
  CHECK(board.nets.size() == 3);
  const ScriptDone apart = done(board, R"({"separate": "J1.2"}, {"separate": "J1.2"}, {"separate": "J1.4"})");
  CHECK(apart.steps == 3);
  CHECK(apart.edits.size() == 2); // the second time there is nothing to do
  CHECK(netOfPin(board, "J1.2") == "?");
  CHECK(board.nets.size() == 2);
}

TEST_CASE("a track joins what lies at its ends, and is of that net") {
  Board board = rows();
  done(board, R"({"track": [[5, 5], [6, 5]]},
                 {"track": ["J1.1", [2, 0], [5, 5]], "width_mm": 0.15},
                 {"track": [[6.1, 5.1], "J2.1"], "side": "top"},
                 {"track": [[30, 30], [31, 30]], "side": "bottom"},
                 {"track": ["J1.2", "J2.2", "J2.3"]})");
  REQUIRE(board.tracks.size() == 7);
  const Fact<NetId> net = pinCalled(board, "J1.1").net;
  CHECK(net.certain());
  CHECK(pinCalled(board, "J2.1").net.value == net.value);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(board.tracks[i].net == fromUser(net.value)); // the first, too, which was of none
  CHECK(board.tracks[1].start == mm(0, 0));
  CHECK(board.tracks[1].end == mm(2, 0));
  CHECK(board.tracks[2].end == mm(5, 5));
  CHECK(board.tracks[1].width == fromUser(Length(150'000)));
  CHECK(board.tracks[3].start == mm(6.1, 5.1)); // as it is said
  CHECK(board.tracks[3].width == fromUser(Length(200'000)));
  CHECK(board.tracks[3].layer == fromUser(board.info.layerOrder.front()));
  CHECK(board.tracks[4].layer == fromUser(board.info.layerOrder.back()));
  CHECK_FALSE(board.tracks[4].net.known());
  for (const char* pin : {"J2.2", "J2.3"})
    CHECK(pinCalled(board, pin).net.value == pinCalled(board, "J1.2").net.value);
}

TEST_CASE("copper counts to a track's end within 0.15 mm of its edge") {
  // A track of 0.2 mm along y = 10: its edge lies at 10.1.
  for (const auto& [y, joined] : {std::pair{"10.25", true}, {"10.250001", false}}) {
    Board board = rows();
    done(board, std::string(R"({"track": [[0, 10], [9, 10]]}, {"track": [[4, )") + y + R"(], "J1.1"]})");
    CHECK(board.tracks[0].net.known() == joined);
  }
}

TEST_CASE("a run inside the board goes from the first place to the last, its way unknown") {
  Board board = rows();
  done(
      board,
      R"({"track": ["J1.1", [3, 3], "J2.1"], "inside": true}, {"track": [[1, 1], [2, 1]], "inside": false})");
  REQUIRE(board.tracks.size() == 2);
  CHECK(board.tracks[0].way == TrackWay::unknownWay);
  CHECK(board.tracks[0].start == mm(0, 0));
  CHECK(board.tracks[0].end == mm(20, 0));
  CHECK(board.tracks[0].net == fromUser(pinCalled(board, "J1.1").net.value));
  CHECK(pinCalled(board, "J1.1").net.value == pinCalled(board, "J2.1").net.value);
  CHECK(board.tracks[1].way == TrackWay::straight);
}

TEST_CASE("a via is of the net of the copper there, on either side") {
  Board board = rows();
  done(board, R"({"join": ["J1.1"], "net": "A"}, {"join": ["J1.2"], "net": "B"},
                 {"track": ["J1.1", [5, 0]]}, {"track": ["J1.2", [5, -1]], "side": "bottom"},
                 {"via": [5, 0]}, {"via": [5, -1], "diameter_mm": 0.8}, {"via": [50, 50]})");
  REQUIRE(board.vias.size() == 3);
  CHECK(board.vias[0].position == mm(5, 0));
  CHECK(board.vias[0].net == fromUser(pinCalled(board, "J1.1").net.value));
  CHECK(board.vias[0].diameter.value == Length(500'000));
  CHECK(board.vias[1].net == fromUser(pinCalled(board, "J1.2").net.value));
  CHECK(board.vias[1].diameter.value == Length(800'000));
  CHECK_FALSE(board.vias[2].net.known());
}

TEST_CASE("a via is of a track's net sooner than of the area's around it") {
  Board board = rows();
  done(board, R"({"line": "area", "clicks": [[4, -5], [9, -5], [9, 5], [4, 5], [4, -5]]})");
  Area area = board.areas[0];
  done(board, R"({"join": ["J1.3"], "net": "GND"})");
  area.net = pinCalled(board, "J1.3").net;
  REQUIRE(apply(board, Edit().put(area)));
  done(board, R"({"track": ["J1.2", [2, -8], [5, -8]], "side": "bottom"},
                 {"track": [[5, -8], [5, -1]], "side": "bottom"}, {"via": [5, -1]}, {"via": [8, 4]})");
  CHECK(board.vias[0].net == fromUser(pinCalled(board, "J1.2").net.value));
  CHECK(board.vias[1].net == fromUser(pinCalled(board, "J1.3").net.value));
}

TEST_CASE("an outline is closed by its first corner again, within two micrometres") {
  const auto outline = [](const std::string& last) {
    return R"({"line": "SH1", "clicks": [[0, 0], [9, 0], [9, 9], )" + last + "]}";
  };
  Board board;
  done(board, outline("[0, 0.002]"));
  CHECK(partCalled(board, "SH1").body.value == Ring{mm(0, 0), mm(9, 0), mm(9, 9)});
  CHECK(stepRefusal(Board(), outline("[0, 0.002001]")) ==
        "s.json: /steps/0/clicks: too few clicks for what the line says (found a list of 4)");
}

TEST_CASE("a net gets its role") {
  Board board = rows();
  done(board, R"({"join": ["J1.1"], "net": "A"}, {"role": "fast_pair", "net": "A"})");
  CHECK(board.nets[0].role == fromUser(NetRole::fastPair));
  CHECK(done(board, R"({"role": "fast_pair", "net": "A"})").edits.empty());
}

TEST_CASE("a part gets its kind's zone, and goes with it") {
  Board board = rows();
  done(board, R"({"line": "BT1", "clicks": [[50, 0], [60, 0], [60, 9], [50, 0]]},
                 {"line": "U1 8 2 rows", "clicks": [[70, 0], [73, 3]]},
                 {"zone": "J1"}, {"zone": "BT1"}, {"zone": "U1"})");
  REQUIRE(board.zones.size() == 3);
  CHECK(board.zones[0].kind == ZoneKind::connector);
  CHECK(board.zones[0].part == partCalled(board, "J1").id);
  CHECK(board.zones[1].kind == ZoneKind::battery);
  CHECK(board.zones[2].kind == ZoneKind::tallPart);
  done(board, R"({"remove": "J1"}, {"remove": "BT1"})");
  CHECK(board.zones.size() == 1);
  CHECK(board.parts.size() == 2);
  CHECK(board.pins.size() == 12);
}

TEST_CASE("changes are an edit as the journal has it") {
  Board board = rows();
  const std::uint64_t id = board.lastId + 1;
  const ScriptDone all = done(board, R"({"changes": []}, {"changes": [{"put": "net", "object": {"id": )" +
                                         std::to_string(id) + R"(, "name": "VBUS", "origin": "user"}}]})");
  CHECK(all.steps == 2);
  CHECK(all.edits.size() == 1);
  REQUIRE(board.nets.size() == 1);
  CHECK(board.nets[0].name == "VBUS");
  CHECK(board.nets[0].origin == Origin::user);
  done(board, R"({"changes": [{"remove": "net", "id": )" + std::to_string(id) + "}]}");
  CHECK(board.nets.empty());
}

TEST_CASE("a script's edits, one after the other, make the board, and each can be undone") {
  Board board = rows();
  const ScriptDone all = done(board, R"({"join": ["J1.1", "J2.1"]}, {"track": ["J1.1", "J2.1"]},
                                        {"line": "R 0402", "clicks": [[1, 9], [2, 9], [3, 9], [4, 9]]},
                                        {"remove": "J1"}, {"separate": "J2.1"})");
  Board again = rows();
  std::vector<Edit> inverses;
  for (const Edit& edit : all.edits)
    inverses.push_back(apply(again, edit).value());
  CHECK(again == board);
  for (auto inverse = inverses.rbegin(); inverse != inverses.rend(); ++inverse)
    CHECK(apply(again, *inverse));
  CHECK(again == rows());
}

TEST_CASE("all of a script is done, or nothing, and the error names the step") {
  Board board = rows();
  CHECK(stepRefusal(board, R"({"join": ["J1.1", "J2.1"]}, {"remove": "J2"}, {"separate": "J2.1"})") ==
        "s.json: /steps/2/separate: names no pin, or more than one (found \"J2.1\"; expected for example "
        "J4.11)");
}

TEST_CASE("the example of docs/formats/edits.md does what the page says") {
  std::ifstream file(NETMEND_SOURCE_DIR "/docs/formats/edits.md");
  std::stringstream page;
  page << file.rdbuf();
  const std::string text = page.str();
  const auto begin = text.find("    {\n");
  const auto end = text.find("    }\n", begin);
  REQUIRE(end != std::string::npos);
  Board board;
  done(board, R"({"line": "TP1", "clicks": [[90, 90]]}, {"join": ["TP1"], "net": "GND"},
                 {"line": "C99 1n 0402", "clicks": [[70, 0], [71, 0]]})");
  const auto result = run(board, text.substr(begin, end + 6 - begin));
  if (!result) FAIL(result.error().text());
  CHECK(result->steps == 12);
  CHECK(result->edits.size() == 11); // nothing is there to separate
  CHECK(placeOf(board, "J4.1") == mm(11.5, 6.6));
  CHECK(placeOf(board, "J4.14") == mm(24.5, 6.6));
  CHECK(placeOf(board, "J4.2") == mm(12.5, 6.6));
  CHECK(partCalled(board, "R21").position == fromUser(mm(32, 23)));
  CHECK(partCalled(board, "R28").position == fromUser(mm(47.4, 23)));
  CHECK(partCalled(board, "R28").value == fromUser<std::string>("100"));
  CHECK(netOfPin(board, "J4.2") == "KEY_ROW0");
  CHECK(netOfPin(board, "R21.1") == "KEY_ROW0");
  CHECK(pinCalled(board, "J4.9").net == measured(pinCalled(board, "R28.1").net.value));
  REQUIRE(board.tracks.size() == 3);
  CHECK(board.tracks[0].width == fromUser(Length(150'000)));
  CHECK(board.tracks[0].net == fromUser(pinCalled(board, "R28.2").net.value));
  CHECK(board.tracks[2].way == TrackWay::unknownWay);
  CHECK(board.vias[0].position == mm(47.4, 18));
  CHECK(board.nets.find(pinCalled(board, "TP1").net.value)->role == fromUser(NetRole::ground));
  CHECK(board.zones[0].part == partCalled(board, "J4").id);
  CHECK(board.parts.size() == 9);
  CHECK(board.nets.find(NetId(901))->name == "VBUS");
}
