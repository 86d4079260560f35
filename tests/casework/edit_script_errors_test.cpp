// What scripts of drawing steps are refused for.
#include <catch2/catch.hpp>

#include "edit_script.h"

using namespace netmend;
using namespace netmend::test;

TEST_CASE("what is no script is refused") {
  const Board& board = rows();
  CHECK(refusal(board, "") == "s.json: is empty");
  CHECK(refusal(board, "{\n {").find("s.json: line 2, column 2: is not valid JSON: ") == 0);
  CHECK(refusal(board, "[]") == "s.json: is no script of edits (expected \"format\": \"netmend-edits\")");
  CHECK(refusal(board, "{}") == "s.json: is no script of edits (expected \"format\": \"netmend-edits\")");
  CHECK(refusal(board, R"({"format": "netmend-board", "version": 1, "steps": []})") ==
        "s.json: is no script of edits (expected \"format\": \"netmend-edits\")");
  CHECK(refusal(board, R"({"format": "netmend-edits", "version": 2, "steps": []})") ==
        "s.json: /version: is no version (found 2; expected 1)");
  CHECK(refusal(board, R"({"format": "netmend-edits", "steps": []})") ==
        "s.json: /version: is no version (expected 1)");
  const std::string members = "s.json: is no script of edits (expected format, version, steps)";
  CHECK(refusal(board, R"({"format": "netmend-edits", "version": 1})") == members);
  CHECK(refusal(board, R"({"format": "netmend-edits", "version": 1, "steps": {}})") == members);
  CHECK(refusal(board, R"({"format": "netmend-edits", "version": 1, "steps": [], "more": 1})") == members);
}

TEST_CASE("steps that are none, and members that a step has not, are refused") {
  const Board& board = rows();
  CHECK(stepRefusal(board, "7") == "s.json: /steps/0: is not an object (found 7; expected {...})");
  CHECK(stepRefusal(board, "null") == "s.json: /steps/0: is not an object (expected {...})");
  CHECK(stepRefusal(board, R"({"jion": []})") ==
        "s.json: /steps/0: is no step of drawing (found an object; expected changes, line, join, separate, "
        "track, via, role, zone, remove)");
  for (const char* step :
       {R"("line": "J9 2 1 row", "clicks": [[1, 1], [2, 1]])", R"("join": ["J1.1", "J1.2"])",
        R"("separate": "J1.1")", R"("track": ["J1.1", "J1.2"])", R"("via": [1, 1])",
        R"("role": "ground", "net": "A")", R"("zone": "J1")", R"("remove": "J1")"}) {
    INFO(step);
    CHECK(stepRefusal(board, std::string("{") + step + R"(, "a/b": 1})") ==
          "s.json: /steps/0/a~1b: is no field of this");
  }
  CHECK(stepRefusal(board, R"({"changes": [], "net": "A"})").find("s.json: /steps/0: is no edit (found ") ==
        0);
}

TEST_CASE("what a step says wrongly is named with its place") {
  const Board& board = rows();
  const auto said = [&](const std::string& step) {
    const std::string text = stepRefusal(board, step);
    const std::string before = "s.json: /steps/0";
    REQUIRE(text.substr(0, before.size()) == before);
    return text.substr(before.size());
  };
  // line
  CHECK(said(R"({"line": 7})") == "/line: is not a text (found 7; expected a text)");
  CHECK(said(R"({"line": "what ever"})") ==
        "/line: not understood (found \"what ever\"; expected J4 40 2 rows)");
  CHECK(said(R"({"line": "J9 4 1 row", "clicks": 7})") == "/clicks: is not a list (found 7; expected [...])");
  CHECK(said(R"({"line": "J9 4 1 row", "clicks": [[1, 1], [1]]})") ==
        "/clicks/1: is no place (found a list of 1; expected x and y in millimetres)");
  CHECK(said(R"({"line": "J9 4 1 row", "clicks": [[1, 1]]})") ==
        "/clicks: too few clicks for what the line says (found a list of 1)");
  CHECK(said(R"({"line": "J9 4 1 row"})") ==
        "/clicks: too few clicks for what the line says (found a list of 0)");
  CHECK(said(R"({"line": "R 0402", "clicks": [[1, 1], [2, 1], [5, 1]]})") ==
        "/clicks: too few clicks for what the line says (found a list of 3)");
  CHECK(said(R"({"line": "SH1", "clicks": [[0, 0], [9, 0], [9, 9]]})") ==
        "/clicks: too few clicks for what the line says (found a list of 3)");
  CHECK(said(R"({"line": "SH1", "clicks": [[0, 0], [9, 0], [9, 9], [0, 0], [1, 1]]})") ==
        "/clicks/4: one click too many for what the line says (found a list of 2)");
  CHECK(said(R"({"line": "J1 4 1 row", "clicks": [[1, 1], [1, 4]]})").find(": is on this board already") ==
        0);
  CHECK(said(R"({"line": "J9 4 1 row", "clicks": [[1, 1], [1, 1]]})").find(": ") == 0);
  CHECK(said(R"({"line": "J9 4 1 row", "clicks": [[1, 1], [1, 4]], "side": "left"})") ==
        "/side: unknown side (found \"left\"; expected top or bottom)");
  CHECK(said(R"({"line": "J9 4 1 row", "clicks": [[1, 1], [1, 4]], "other_way": "yes"})") ==
        "/other_way: is neither true nor false (found \"yes\"; expected true, false)");
  CHECK(said(R"({"line": "net GND", "clicks": [[1, 1]]})") ==
        "/clicks: too few clicks for what the line says (found a list of 1)");
  // places
  for (const char* place : {"[]", "[1, 2, 3]", "[\"1\", 2]", "[1, null]", "{\"x\": 1}", "10000.1", "\"J1.1\"",
                            "[10000.001, 0]", "[0, -10000.001]"})
    CHECK(said(std::string(R"({"via": )") + place + "}").find("/via: is no place (found ") == 0);
  // join
  CHECK(said(R"({"join": "J1.1"})") == "/join: is not a list (found \"J1.1\"; expected [...])");
  CHECK(said(R"({"join": []})") == "/join: is not a list (found a list of 0; expected [...])");
  CHECK(said(R"({"join": ["J1.1", 5]})") ==
        "/join/1: names no pin, or more than one (found 5; expected for example J4.11)");
  CHECK(said(R"({"join": ["J1.1"], "net": 5})") == "/net: is not a text (found 5; expected a text)");
  CHECK(said(R"({"join": ["J1.1"], "measured": 1})") ==
        "/measured: is neither true nor false (found 1; expected true, false)");
  // track
  CHECK(said(R"({"track": ["J1.1"]})") ==
        "/track: is no way (found a list of 1; expected two places or more)");
  CHECK(said(R"({"track": 1})") == "/track: is no way (found 1; expected two places or more)");
  CHECK(said(R"({"track": ["J1.1", "J1.9"]})") ==
        "/track/1: names no pin, or more than one (found \"J1.9\"; expected for example J4.11)");
  CHECK(said(R"({"track": ["J1.1", [1]]})") ==
        "/track/1: is no place (found a list of 1; expected x and y in millimetres)");
  CHECK(said(R"({"track": ["J1.1", "J1.2"], "side": 1})") ==
        "/side: unknown side (found 1; expected top or bottom)");
  CHECK(said(R"({"track": ["J1.1", "J1.2"], "inside": "no"})") ==
        "/inside: is neither true nor false (found \"no\"; expected true, false)");
  for (const char* width : {"0", "-1", "1000.01", "\"1\"", "null"})
    CHECK(said(std::string(R"({"track": ["J1.1", "J1.2"], "width_mm": )") + width + "}")
              .find("/width_mm: is no length (") == 0);
  // via, role, zone, remove
  CHECK(said(R"({"via": [1, 1], "diameter_mm": 0})") ==
        "/diameter_mm: is no length (found 0; expected millimetres)");
  CHECK(said(R"({"role": "ground", "net": "A"})") == "/net: no such net on this board (found \"A\")");
  CHECK(said(R"({"role": "ground"})") == "/net: no such net on this board");
  CHECK(said(R"({"zone": "J9"})") ==
        "/zone: names no part, or more than one (found \"J9\"; expected a reference, R28)");
  CHECK(said(R"({"zone": 4})") ==
        "/zone: names no part, or more than one (found 4; expected a reference, R28)");
  CHECK(said(R"({"remove": null})") ==
        "/remove: names no part, or more than one (expected a reference, R28)");
  CHECK(said(R"({"separate": ["J1.1"]})") ==
        "/separate: names no pin, or more than one (found a list of 1; expected for example J4.11)");
  // changes
  CHECK(said(R"({"changes": [{"put": "net"}]})").find("/changes/0: is no change (found ") == 0);
  CHECK(said(R"({"changes": [{"remove": "net", "id": 9999}]})") ==
        "/changes/0: net 9999 is to be removed and does not exist");
}

TEST_CASE("the largest places, lengths and roles are taken") {
  Board board = rows();
  done(board, R"({"via": [10000, -10000]}, {"via": [0, 0.5], "diameter_mm": 1000},
                 {"track": [[1, 1], [2, 2]], "width_mm": 1e-6}, {"join": ["J1.1"], "net": "A"})");
  CHECK(board.vias[0].position == mm(10'000, -10'000));
  CHECK(board.vias[1].diameter.value == Length(1'000'000'000));
  CHECK(board.tracks[0].width.value == Length(1));
  for (const auto& [word, role] : {std::pair{"signal", NetRole::signal},
                                   {"ground", NetRole::ground},
                                   {"supply", NetRole::supply},
                                   {"fast_pair", NetRole::fastPair},
                                   {"radio", NetRole::radio}}) {
    done(board, std::string(R"({"net": "A", "role": ")") + word + "\"}");
    CHECK(board.nets[0].role.value == role);
  }
  CHECK(stepRefusal(board, R"({"role": "Ground", "net": "A"})") ==
        "s.json: /steps/0/role: unknown word (found \"Ground\"; expected signal, ground, supply, fast_pair, "
        "radio)");
}

TEST_CASE("two pins of one label, and two nets or parts of one name, are not guessed at") {
  DrawnBoard drawn;
  for (int i = 0; i < 2; ++i) {
    const PartId part = drawn.part("R1", Side::top, {});
    drawn.pin(part, "1", drawn.net("A"));
  }
  CHECK(stepRefusal(drawn.board, R"({"separate": "R1.1"})").find("names no pin, or more than one") !=
        std::string::npos);
  CHECK(stepRefusal(drawn.board, R"({"remove": "R1"})").find("names no part, or more than one") !=
        std::string::npos);
  CHECK(stepRefusal(drawn.board, R"({"role": "ground", "net": "A"})").find("/net: ") != std::string::npos);
}

TEST_CASE("a pin without a place is no place of a track") {
  DrawnBoard drawn;
  drawn.pin(drawn.part("R1", Side::top, {}), "1", drawn.net("A"));
  CHECK(stepRefusal(drawn.board, R"({"track": ["R1.1", [1, 1]]})") ==
        "s.json: /steps/0/track/0: has no place on the board (found \"R1.1\")");
}

TEST_CASE("hostile scripts are refused, and nothing is done") {
  const Board& board = rows();
  const std::string deep(100'000, '[');
  CHECK(refusal(board, deep) != "done");
  for (const std::string& value :
       {deep + std::string(100'000, ']'), std::string("[[[[[[[[1]]]]]]]]"),
        std::string(R"({"a": {"b": {}}})"), std::string("1e400"), std::string("-1e308"),
        std::string("\"\\u0000\""), std::string("true"), std::string("\"\xff\""),
        std::string("18446744073709551615"), "\"" + std::string(100'000, 'x') + "\""})
    for (const char* before :
         {"\"line\": ", "\"join\": ", "\"separate\": ", "\"track\": ", "\"via\": ", "\"zone\": ",
          "\"remove\": ", "\"changes\": ", R"("net": "A", "role": )", R"("role": "ground", "net": )",
          R"("line": "J9 2 1 row", "clicks": )",
          R"("line": "J9 2 1 row", "clicks": [[1, 1], [2, 2]], "side": )",
          R"("track": [[1, 1], [2, 2]], "width_mm": )", R"("via": [1, 1], "diameter_mm": )",
          R"("track": ["J1.1", )", R"("join": ["J1.1"], "measuredd": )", ""}) {
      const std::string list = std::string(before).find("[\"J1.1\", ") != std::string::npos ? "]" : "";
      const std::string text = stepRefusal(board, "{" + (before + value) + list + "}");
      INFO(before << " " << value.substr(0, 30) << ": " << text.substr(0, 200));
      CHECK(text.find("s.json: ") == 0);
      CHECK(text.size() < 700);
    }
  // The same name twice.
  CHECK(stepRefusal(board, R"({"remove": "J1", "remove": "J2"})") != "done");
  for (const char* line : {"R 100 0402 99999999999", "J9 99999999 1 row", "J9 1000000 1000 rows",
                           "J9 4 1 row pitch 1e300", "U1 999999999999999999999 grid"})
    CHECK(stepRefusal(board, std::string(R"({"line": ")") + line +
                                 R"(", "clicks": [[0, 40], [9, 50], [9, 60]]})") != "done");
}
