#include "netmend/board/board_file.h"
#include "netmend/board/exchange/import.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <unistd.h>

#include "board/file_bound.h"
#include "netmend/base/file.h"
#include "netmend/base/json_text.h"
#include "random_board.h"

#include "support/effort.h"
#include "support/seed.h"

namespace fs = std::filesystem;
using namespace netmend;
using netmend::test::RandomBoard;

namespace {

/// A document of the current version with this in front of its closing brace.
std::string documentWith(const std::string& members, const std::string& lastId = "99") {
  return R"({"format": "netmend-board", "version": 2, "last_id": )" + lastId + (members.empty() ? "" : ", ") +
         members + "}";
}

std::string errorOf(const std::string& text) {
  const auto board = boardFromText(text, "b.json");
  return board ? "none" : board.error().text();
}

/// As JsonLimits counts them.
std::size_t membersIn(const nlohmann::json& value) {
  if (!value.is_structured()) return 0;
  std::size_t count = 1 + (value.is_object() ? value.size() : 0);
  for (const auto& child : value)
    count += membersIn(child);
  return count;
}

struct TemporaryFolder {
  fs::path path = fs::temp_directory_path() / ("netmend-board-test-" + std::to_string(::getpid()));
  TemporaryFolder() { fs::create_directories(path); }
  ~TemporaryFolder() { fs::remove_all(path); }
};

} // namespace

TEST_CASE("random boards with every field come back equal, and writing them again gives the same bytes") {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  RandomBoard random(seed);
  for (int i = 0; i < netmend::rounds(60, 6); ++i) {
    const Board board = random.board(random.below(40));
    const auto text = boardToText(board);
    REQUIRE(text);
    const auto again = boardFromText(*text);
    INFO((again ? "" : again.error().text()));
    REQUIRE(again);
    REQUIRE(*again == board);
    REQUIRE(again->lastId == board.lastId);
    REQUIRE(boardToText(*again).value() == *text);
  }
}

TEST_CASE("a board that is empty, or holds one thing of which nothing is known, survives its file") {
  CHECK(boardFromText(boardToText(Board{}).value()).value() == Board{});
  Board board;
  Pin pin;
  pin.id = board.newId<PinId>();
  board.pins.put(pin);
  const auto text = boardToText(board).value();
  CHECK(text.find("{\"id\":1}") != std::string::npos);
  CHECK(boardFromText(text).value() == board);
}

TEST_CASE(
    "a fact is its bare value when it comes from where its object does, and says its origin otherwise") {
  Board board;
  Net net;
  net.id = board.newId<NetId>();
  net.origin = Origin::file;
  net.role = fromFile(NetRole::ground);
  net.ratedVoltage = measured(Volts(3.3));
  board.nets.put(net);
  const auto text = boardToText(board).value();
  CHECK(
      text.find(
          R"({"id":1,"origin":"file","rated_voltage":{"origin":"measured","value":3.3},"role":"ground"})") !=
      std::string::npos);
}

TEST_CASE("lengths stand in a board file as whole nanometres") {
  const auto board = boardFromText(documentWith(
      R"("tracks": [{"id": 3, "origin": "user", "start": [-1, 2], "end": [10000000000, 0], "width": 150000}])"));
  REQUIRE(board);
  const Track& track = board->tracks[0];
  CHECK(track.start == Point{Length(-1), Length(2)});
  CHECK(track.end.x == largestLength);
  CHECK(track.width == fromUser(Length::fromMm(0.15)));
}

TEST_CASE("objects written by hand in any order are read, and errors speak of the order in the file") {
  const std::string nets = R"("nets": [{"id": 9, "name": "B"}, {"id": 4, "name": "A"}])";
  const auto board = boardFromText(documentWith(nets));
  REQUIRE(board);
  CHECK(board->nets[0].name == "A");
  CHECK(errorOf(documentWith(R"("pins": [{"id": 9, "net": {"origin": "user", "value": 8}}, {"id": 4}])")) ==
        "b.json: /pins/0/net: pin 9 names net 8, which does not exist");
}

TEST_CASE("a bad board file is refused with its place") {
  const auto refused = [](const std::string& text, const std::string& error) {
    CHECK(errorOf(text) == error);
  };
  refused("", "b.json: is empty");
  refused(" \n", "b.json: is empty");
  refused("[]", "b.json: is no Netmend board file (expected \"format\": \"netmend-board\")");
  refused("{}", "b.json: is no Netmend board file (expected \"format\": \"netmend-board\")");
  refused(
      R"({"format": "other"})",
      "b.json: is no Netmend board file (found format \"other\"; expected \"format\": \"netmend-board\")");
  refused(R"({"format": "netmend-board"})", "b.json: a field is missing (expected version)");
  refused(R"({"format": "netmend-board", "version": 0})",
          "b.json: /version: is no version (found 0; expected 1 to 3)");
  refused(R"({"format": "netmend-board", "version": "2"})",
          "b.json: /version: is no version (found \"2\"; expected 1 to 3)");
  refused(R"({"format": "netmend-board", "version": 4})",
          "b.json: /version: written by a newer Netmend: format 4, this one reads up to 3");
  refused(R"({"format": "netmend-board", "version": 99999999999999})",
          "b.json: /version: written by a newer Netmend: format 99999999999999, this one reads up to 3");
  refused(R"({"format": "netmend-board", "version": 2})", "b.json: a field is missing (expected last_id)");
  refused(documentWith(R"("colour": 1)"), "b.json: /colour: is no field of a board");
  refused(documentWith(R"("nets": {})"), "b.json: /nets: is not a list (found an object; expected [...])");
  refused(documentWith(R"("nets": [5])"), "b.json: /nets/0: is not an object (found 5; expected {...})");
  refused(documentWith(R"("nets": [{"name": "A"}])"), "b.json: /nets/0: a field is missing (expected id)");
  refused(documentWith(R"("nets": [{"id": 0}])"),
          "b.json: /nets/0/id: is no id (found 0; expected a whole number from 1 on)");
  refused(documentWith(R"("nets": [{"id": 1, "nane": "A"}])"),
          "b.json: /nets/0/nane: is no field of this (found \"A\")");
  refused(documentWith(R"("nets": [{"id": 1, "a/b~": 1}])"),
          "b.json: /nets/0/a~1b~0: is no field of this (found 1)");
  refused(documentWith(R"("nets": [{"id": 1}, {"id": 1}])"),
          "b.json: /nets/1/id: id 1 is used twice (found also at /nets/0)");
  refused(documentWith(R"("nets": [{"id": 1}], "pins": [{"id": 1}])"),
          "b.json: /pins/0/id: id 1 is used twice (found also at /nets/0)");
  refused(documentWith(R"("nets": [{"id": 7}])", "6"),
          "b.json: /nets/0/id: id 7 is above last_id (found last_id 6)");
  refused(documentWith("", "-1"), "b.json: /last_id: is no id (found -1; expected a whole number from 0 to "
                                  "9007199254740991)");
  refused(
      documentWith(R"("nets": [{"id": 1, "origin": "file", "role": "grund"}])"),
      "b.json: /nets/0/role: is none of the words for it (found \"grund\"; expected signal, ground, supply, "
      "fast_pair, radio)");
  refused(documentWith(R"("nets": [{"id": 1, "role": "ground"}])"),
          "b.json: /nets/0/role: has no origin, and neither has its object (found \"ground\"; expected "
          "{\"origin\": ..., \"value\": ...})");
  refused(documentWith(R"("nets": [{"id": 1, "role": {"value": "ground"}}])"),
          "b.json: /nets/0/role: is no fact with an origin of its own (found an object; expected "
          "{\"origin\": ..., "
          "\"value\": ...} and nothing else)");
  refused(documentWith(R"("nets": [{"id": 1, "role": {"origin": "unknown", "value": "ground"}}])"),
          "b.json: /nets/0/role/origin: an unknown fact is left out");
  refused(documentWith(R"("pads": [{"id": 1}])"), "b.json: /pads/0: a field is missing (expected pin)");
  refused(documentWith(R"("pads": [{"id": 1, "pin": 0}])"),
          "b.json: /pads/0/pin: names nothing (found 0; expected an id)");
  refused(documentWith(R"("vias": [{"id": 1, "position": [1, 2, 3]}])"),
          "b.json: /vias/0/position: is no pair (found a list of 3; expected two lengths)");
  refused(documentWith(R"("areas": [{"id": 1, "polygon": {"outer": [1, 2, 3]}}])"),
          "b.json: /areas/0/polygon/outer: has an x without y (found a list of 3; expected x, y, x, y, ...)");
  const std::string range = "expected whole nanometres from -10000000000 to 10000000000)";
  for (const std::string bad :
       {"10000000001", "-10000000001", "18446744073709551615", "1.5", "1e3", "\"7\"", "null"})
    refused(documentWith(R"("vias": [{"id": 1, "position": [)" + bad + ", 0]}]"),
            "b.json: /vias/0/position/0: is no length (found " + (bad == "1e3" ? "1000.0" : bad) + "; " +
                range);
  refused(documentWith(R"("info": {"layer_order": [5]})"),
          "b.json: /info/layer_order/0: the board's info names layer 5, which does not exist");
}

TEST_CASE("what is not JSON is refused with line and column") {
  const auto at = [](const std::string& text, const std::string& place) {
    const auto board = boardFromText(text, "b.json");
    REQUIRE_FALSE(board);
    INFO(board.error().text());
    CHECK(wordsOf(board.error().place) == place);
    CHECK(board.error().text().size() < 400);
  };
  at("{\"format\": \"netmend-board\",\n \"version\": 2x}", "line 2, column 14");
  at("{\n\n  bad", "line 3, column 3");
  at(std::string("\x00\x01\x02\xff", 4), "line 1, column 1");
  at("{\"a\": \"\xff\xfe\"}", "line 1, column 8");      // not UTF-8
  at(std::string("{\0\"\0a\0", 6), "line 1, column 2"); // UTF-16
  at("{\"a\": 1e999}", "line 1, column 11");            // no double
  at("{\"a\": NaN}", "line 1, column 7");
  at("{\"a\": " + std::string(1000, 'x'), "line 1, column 7");
  CHECK(errorOf(R"({"a": {"b": [1, {"c": 1, "c": 2}]}})") ==
        "b.json: /a/b/1: the name stands twice in one object (found c)");
}

TEST_CASE("a hostile file costs an error, not the memory or the stack") {
  CHECK(errorOf(std::string(1'000'000, '[')).find("is nested too deeply") != std::string::npos);
  std::string objects;
  for (int i = 0; i < 100'000; ++i)
    objects += "{\"a\":";
  CHECK(errorOf(objects).find("is nested too deeply") != std::string::npos);
  if (netmend::sanitized) return; // files of 30 and 128 MB
  std::string lists = "[";
  for (int i = 0; i < 10'000'000; ++i)
    lists += "[],";
  CHECK(errorOf(lists + "[]]").find("holds too much") != std::string::npos);
  CHECK(errorOf(std::string((128u << 20) + 1, ' ')).find("is too large") != std::string::npos);
}

TEST_CASE("a file cut off anywhere, or with any byte changed, gives an error or a sound board") {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  RandomBoard random(seed);
  const std::string whole = boardToText(random.board(3)).value();
  for (std::size_t n = 0; n + 2 < whole.size(); n += netmend::everyPlace(31))
    REQUIRE_FALSE(boardFromText(whole.substr(0, n)));
  int refused = 0;
  const int times = netmend::rounds(3000);
  for (int i = 0; i < times; ++i) {
    std::string broken = whole;
    for (std::size_t n = random.below(3) + 1; n > 0; --n)
      broken[random.below(broken.size())] = static_cast<char>(random.below(256));
    const auto board = boardFromText(broken);
    if (!board) {
      ++refused;
      continue;
    }
    REQUIRE(checkReferences(*board));
    REQUIRE(boardToText(*board));
  }
  CHECK(refused > times / 3);
}

TEST_CASE("a board of format 1 is upgraded: micrometres, `source`, no last_id") {
  const auto board = boardFromText(R"({"format": "netmend-board", "version": 1,
    "info": {"name": {"origin": "user", "value": "Logger"},
             "outline": {"origin": "file", "value": [{"outer": [0, 0, 50000, 0, 50000, 30000.5]}]}},
    "nets": [{"id": 4, "source": "file", "name": "GND", "rated_voltage": 5}],
    "parts": [{"id": 11, "source": "user", "value": "4k7", "height": {"origin": "guessed", "value": 900}}],
    "pins": [{"id": 7, "source": "file", "part": 11, "net": 4}],
    "pads": [{"id": 8, "source": "file", "pin": 7, "position": [1000.0004, -2], "rotation": 45, "size": [600, 300]}]})");
  INFO((board ? "" : board.error().text()));
  REQUIRE(board);
  CHECK(board->lastId == 11);
  CHECK(board->nets[0] == Net{NetId(4), "GND", {}, fromFile(Volts(5)), {}, Origin::file});
  CHECK(board->info.outline.value[0].outer[2] == Point{Length(50'000'000), Length(30'000'500)});
  CHECK(board->parts[0].value == fromUser(std::string("4k7")));
  CHECK(board->parts[0].height == guessed(Length(900'000)));
  CHECK(board->pads[0].position == fromFile(Point{Length(1'000'000), Length(-2000)}));
  CHECK(board->pads[0].rotation == Degrees(45));
  CHECK(board->pads[0].size == fromFile(Size{Length(600'000), Length(300'000)}));
  CHECK(boardToText(*board).value().find("\"version\": 3") != std::string::npos);

  CHECK(errorOf(R"({"format": "netmend-board", "version": 1, "nets": [{"id": 1, "origin": "file"}]})") ==
        "b.json: /nets/0/origin: is no field of format 1");
  CHECK(errorOf(R"({"format": "netmend-board", "version": 1, "last_id": 5})") ==
        "b.json: /last_id: is no field of format 1");
  CHECK(
      errorOf(R"({"format": "netmend-board", "version": 1, "vias": [{"id": 1, "position": [1e300, 0]}]})") ==
      "b.json: /vias/0/position/0: is longer than a board can be (found 1e+300)");
}

TEST_CASE("what JSON cannot hold, or could not be read again, is not written and the old file stays") {
  const TemporaryFolder folder;
  const fs::path path = folder.path / "a.netmend-board.json";
  REQUIRE(writeBoardFile(path, Board{}));
  const auto old = readFile(path).value();
  const auto refused = [&](const Board& board, const std::string& place) {
    const auto result = writeBoardFile(path, board);
    REQUIRE_FALSE(result);
    CHECK(result.error().file == path.string());
    CHECK(wordsOf(result.error().place) == place);
    CHECK(readFile(path).value() == old);
  };
  const auto withNet = [](auto change) {
    Board board;
    Net net;
    net.id = board.newId<NetId>();
    change(net);
    board.nets.put(net);
    return board;
  };
  refused(withNet([](Net& net) { net.name = "\xff"; }), "/nets/0");
  refused(withNet([](Net& net) { net.ratedVoltage = fromUser(Volts(NAN)); }), "/nets/0/rated_voltage/value");
  refused(withNet([](Net& net) { net.ratedCurrent = fromUser(Amperes(INFINITY)); }),
          "/nets/0/rated_current/value");
  Board board;
  Via via;
  via.id = board.newId<ViaId>();
  via.position.y = largestLength + Length(1);
  board.vias.put(via);
  refused(board, "/vias/0/position");
  Board dangling;
  Pin pin;
  pin.id = dangling.newId<PinId>();
  pin.part = PartId(7);
  dangling.pins.put(pin);
  refused(dangling, "/pins/0/part");
  Board shared = withNet([](Net&) {});
  pin.part = {};
  shared.pins.put(pin);
  refused(shared, "");
}

TEST_CASE("whether a board can be written is known without writing it, with the same error") {
  const auto withPart = [](const auto& change) {
    Board board;
    Part part;
    part.id = board.newId<PartId>();
    part.origin = Origin::user;
    part.position = fromFile(Point{});
    change(part);
    board.parts.put(std::move(part));
    return board;
  };
  const auto alike = [&](const auto& change) {
    const Board board = withPart(change);
    const auto text = boardToText(board);
    const auto check = checkWritable(board);
    CHECK(text.has_value() == check.has_value());
    if (!text && !check) CHECK(check.error().text() == text.error().text());
    return check.has_value();
  };
  CHECK(alike([](Part& part) { part.position.value.x = largestLength; }));
  CHECK_FALSE(alike([](Part& part) { part.position.value.x = largestLength + Length(1); }));
  CHECK(alike([](Part& part) {
    part.body = fromFile(Ring{{}, {Length(1), -largestLength}, {Length(2), {}}});
  }));
  CHECK_FALSE(alike([](Part& part) {
    part.body = fromFile(Ring{{}, {Length(1), -largestLength - Length(1)}, {}});
  }));
  CHECK(alike([](Part& part) { part.reference = "\u00b5"; }));
  CHECK(alike([](Part& part) { part.reference = std::string(1, '\0'); }));
  CHECK_FALSE(alike([](Part& part) { part.reference = "\xB5"; }));
  CHECK(alike([](Part& part) { part.through = fromFile(std::vector<Through>{}); }));
}

TEST_CASE("what a board takes in a file is never above the bound that is found without writing") {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  RandomBoard random(seed);
  for (int i = 0; i < netmend::rounds(60, 6); ++i) {
    const Board board = random.board(random.below(40));
    const auto text = boardToText(board);
    const auto bound = fileBound(board);
    REQUIRE(text);
    REQUIRE(bound);
    REQUIRE(text->size() <= bound->bytes);
    REQUIRE(membersIn(nlohmann::json::parse(*text)) <= bound->members);
  }
}

TEST_CASE("board files that are missing, folders or unreadable are refused by name") {
  const TemporaryFolder folder;
  CHECK(importBoard(folder.path / "none").error().text() ==
        (folder.path / "none").string() + ": no such file");
  CHECK(wordsOf(importBoard(folder.path).error().message) == "is not a regular file");
  std::ofstream(folder.path / "x") << "{\n!";
  CHECK(importBoard(folder.path / "x", {"netmend"})
            .error()
            .text()
            .find((folder.path / "x").string() + ": line 2, column 1: ") == 0);
  CHECK_FALSE(writeBoardFile(folder.path / "none" / "x", Board{}));
}

TEST_CASE("a board file is known by its content") {
  CHECK(looksLikeBoardFile(boardToText(Board{}).value()));
  CHECK(looksLikeBoardFile("\xEF\xBB\xBF {\"format\":\"netmend-board\""));
  CHECK_FALSE(looksLikeBoardFile(""));
  CHECK_FALSE(looksLikeBoardFile("part,pin\nnetmend-board,1"));
  CHECK_FALSE(looksLikeBoardFile("{\"format\": \"other\"}"));
}

TEST_CASE("a board is written with the largest id that there may be, and with none above it or at zero") {
  const auto written = [](std::uint64_t id, std::uint64_t last) {
    Board board;
    Net net;
    net.id = NetId(id);
    board.nets.put(net);
    board.lastId = last;
    CHECK(checkWritable(board).has_value() == boardToText(board).has_value());
    return boardToText(board).has_value();
  };
  CHECK(written(1, 1));
  CHECK(written(largestId, largestId));
  CHECK(written(largestId, 0));
  CHECK(written(1, largestId));
  CHECK_FALSE(written(0, 0));
  CHECK_FALSE(written(largestId + 1, 0));
  CHECK_FALSE(written(1, largestId + 1));
  // Two kinds share one row of ids.
  Board twice;
  Net net;
  net.id = NetId(7);
  twice.nets.put(net);
  Layer layer;
  layer.id = LayerId(7);
  twice.layers.put(layer);
  CHECK(wordsOf(boardToText(twice).error().message) == "id 7 is used twice");
}
