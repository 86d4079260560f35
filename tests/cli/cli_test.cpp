#include "cli/cli.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <unistd.h>

#include "support/zipped.h"

namespace fs = std::filesystem;
using namespace netmend;

namespace {

const fs::path device = fs::path(NETMEND_SOURCE_DIR) / "demo" / "device";
const std::string board = (device / "tide-logger.netmend-board.json").string();

struct Ran {
  ExitCode code;
  std::string out;
  std::string err;
  [[nodiscard]] nlohmann::json json() const { return nlohmann::json::parse(out); }
};

Ran run(const std::vector<std::string>& arguments, const std::string& typed = "") {
  std::istringstream in(typed);
  std::ostringstream out, err;
  const ExitCode code = runCli(arguments, {in, out, err});
  return {code, out.str(), err.str()};
}

std::vector<std::string> with(std::vector<std::string> start, const std::vector<std::string>& more) {
  start.insert(start.end(), more.begin(), more.end());
  return start;
}

std::vector<std::string> goodWalks() {
  std::vector<std::string> out{"--good"};
  for (int i = 1; i <= 8; ++i)
    out.push_back((device / ("good-" + std::to_string(i) + ".netmend-walk.json")).string());
  return out;
}

struct TemporaryFolder {
  fs::path path = fs::temp_directory_path() / ("netmend-cli-test-" + std::to_string(::getpid()));
  TemporaryFolder() { fs::create_directories(path); }
  ~TemporaryFolder() { fs::remove_all(path); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path / name).string(); }
};

} // namespace

TEST_CASE("a board is summed up in numbers") {
  const Ran ran = run({"board", "summary", board, "--json"});
  REQUIRE(ran.code == ExitCode::good);
  const auto json = ran.json();
  CHECK(json["parts"] >= 60);
  CHECK(json["pads"] >= 250);
  CHECK(json["layers"] == 4);
  CHECK(json["width_mm"] == Approx(84.0));
  CHECK(json["height_mm"] == Approx(56.0));
  for (const auto& net : json["net_list"])
    if (net["name"] == "KEY_COL3") {
      CHECK(net["pins"] == 3); // J4.9, C28.1, R28.1
      CHECK(net["fragments"] == 1);
    }
}

TEST_CASE("a table of parts and pins becomes a Netmend board that reads the same") {
  const TemporaryFolder folder;
  std::ofstream(folder.file("b.csv")) << "part,pin,net\nJ4,1,GND\nJ4,2,KEY\nR1,1,KEY\nR1,2,GND\n";
  REQUIRE(run({"board", "import", folder.file("b.csv"), "-o", folder.file("b.netmend-board.json")}).code ==
          ExitCode::good);
  const auto a = run({"board", "summary", folder.file("b.csv"), "--json"}).json();
  const auto b = run({"board", "summary", folder.file("b.netmend-board.json"), "--json"}).json();
  CHECK(a["parts"] == 2);
  CHECK(a["net_list"] == b["net_list"]);
}

TEST_CASE("commands that only read make no book, and a job that cannot be booked in leaves none") {
  const TemporaryFolder folder;
  const std::string book = folder.file("typo.netmend-book");
  for (const std::vector<std::string>& only :
       {std::vector<std::string>{"job", "list", "--book", book},
        {"job", "show", "2026-0001", "--book", book},
        {"job", "add", "--book", book, "--job", "2026-0001", "--state", "probing"},
        {"sheet", "make", "--book", book, "--job", "2026-0001", "-o", folder.file("x.pdf")},
        {"fault", "isolate", "--board", board, "--net", "KEY_COL3", "--book", book},
        {"walk", "judge", (device / "faulty.netmend-walk.json").string(), "--board", board, "--book",
         book}}) {
    const Ran ran = run(only);
    INFO(only[0] << " " << only[1] << ": " << ran.err);
    CHECK(ran.code == ExitCode::badInput);
    CHECK(ran.err.find("there is no job book") != std::string::npos);
    CHECK(ran.err.find("typo.netmend-book") != std::string::npos);
    CHECK(fs::is_empty(folder.path));
  }
  const Ran failed = run({"job", "new", "--book", book, "--customer", "c", "--device", "d", "--symptom", "s",
                          "--board", folder.file("no.netmend-board.json")});
  CHECK(failed.code == ExitCode::badInput);
  CHECK(fs::is_empty(folder.path));
}

TEST_CASE("the demo's board has no copper that joins different nets") {
  for (const auto& finding : run({"board", "check", board, "--json"}).json()["findings"]) {
    INFO(finding.dump());
    CHECK(finding["kind"] != "shorted");
  }
}

TEST_CASE("the dead column's pin is the one odd pin of the bad board") {
  const Ran ran =
      run(with({"walk", "judge", (device / "faulty.netmend-walk.json").string(), "--board", board, "--json"},
               goodWalks()));
  REQUIRE(ran.code == ExitCode::finding);
  const auto json = ran.json();
  CHECK(json["flags"] == 1);
  for (const auto& verdict : json["verdicts"])
    if (verdict["flag"] == true) {
      CHECK(verdict["point"] == "J4.9");
      CHECK(verdict["verdict"] == "open");
    }
}

TEST_CASE("a good board's walk has no odd pins") {
  auto others = goodWalks();
  others.erase(others.begin() + 3);
  const Ran ran = run(with({"walk", "judge", (device / "good-3.netmend-walk.json").string()}, others));
  CHECK(ran.code == ExitCode::good);
}

TEST_CASE("a connector of which only the pin count is known goes through walk, verdict and sheet") {
  const TemporaryFolder folder;
  const auto record = [&](const std::string& name, const std::string& kind, const std::string& typed) {
    return run({"walk", "record", "--part", "J9", "--pins", "4", kind, "-o", folder.file(name)}, typed);
  };
  REQUIRE(record("g1", "--good", "0.451\n0.448\nOL\n0.600\n").code == ExitCode::good);
  REQUIRE(record("g2", "--good", "453m\n0,447\nol\n.603\n").code == ExitCode::good);
  REQUIRE(record("g3", "--good", "0.452\n0.449\nOL\n0.601\n").code == ExitCode::good);
  REQUIRE(record("bad", "--faulty", "0.450\nOL\nOL\n0.602\n").code == ExitCode::good);
  const Ran judged = run({"walk", "judge", folder.file("bad"), "--good", folder.file("g1"), folder.file("g2"),
                          folder.file("g3"), "--json"});
  CHECK(judged.code == ExitCode::finding);
  CHECK(judged.json()["flags"] == 1);
  CHECK(judged.json()["verdicts"][1]["verdict"] == "open");

  const std::string book = folder.file("jobs");
  const auto number =
      run({"job", "new", "--book", book, "--customer", "c", "--device", "d", "--symptom", "s", "--json"})
          .json()["job"]
          .get<std::string>();
  REQUIRE(run({"job", "add", "--book", book, "--job", number, "--walk", folder.file("bad"), "--good",
               folder.file("g1"), folder.file("g2"), folder.file("g3")})
              .code == ExitCode::finding);
  REQUIRE(run({"sheet", "make", "--book", book, "--job", number, "-o", folder.file("sheet.pdf")}).code ==
          ExitCode::good);
  std::ifstream pdf(folder.file("sheet.pdf"));
  std::string head(5, ' ');
  pdf.read(head.data(), 5);
  CHECK(head == "%PDF-");
}

TEST_CASE("nonsense typed in a walk is told, kept out, and does not end it") {
  const TemporaryFolder folder;
  const Ran ran = run({"walk", "record", "--part", "J9", "--pins", "2", "-o", folder.file("w"), "--json"},
                      "0.4\nhello world\n0.5\n");
  CHECK(ran.code == ExitCode::badInput);
  CHECK(ran.json()["readings"] == 2);
  CHECK(ran.json()["refused"] == 1);
  CHECK(ran.err.find("line 2") != std::string::npos);
}

TEST_CASE("a walk that is there is gone on with, not overwritten") {
  const TemporaryFolder folder;
  const std::vector<std::string> record{"walk",   "record", "--part", "J9",
                                        "--pins", "3",      "-o",     folder.file("w")};
  REQUIRE(run(record, "0.4\n").code == ExitCode::good);
  CHECK(run(record, "0.9\n").code == ExitCode::badInput);
  const Ran again = run(with(record, {"--resume", "--json"}), "0.5\n0.6\n");
  REQUIRE(again.code == ExitCode::good);
  CHECK(again.json()["readings"] == 3);
}

TEST_CASE("pins that the board knows to be on no net are not asked for, and can be read all the same") {
  // J5 of the demo has ten pins, of which 7, 8 and 10 are on no net.
  const TemporaryFolder folder;
  const std::vector<std::string> record{"walk", "record", "--board",        board,   "--part",
                                        "J5",   "-o",     folder.file("w"), "--json"};
  const Ran first = run(record, "0.1\n0.2\n0.3\n0.4\n0.5\n");
  REQUIRE(first.code == ExitCode::good);
  CHECK(first.err.find("no net, passed over unless named: J5.7 J5.8 J5.10\n") != std::string::npos);
  CHECK(first.json()["points"] == 10);
  CHECK(first.json()["skipped"] == 3);
  const Ran again = run(with(record, {"--resume"}), "0.6\n0.9\n0.11\nJ5.8 0.8\n");
  CHECK(again.code == ExitCode::badInput); // nothing is due after the last one
  CHECK(again.json()["readings"] == 8);
  CHECK(again.json()["skipped"] == 3);
  CHECK(again.err.find("J5.9? ") != std::string::npos);
  CHECK(again.err.find("J5.7? ") == std::string::npos);
}

TEST_CASE("the demo's job goes from booking in to the sheet") {
  const TemporaryFolder folder;
  const std::string book = folder.file("jobs");
  const std::string number = run({"job", "new", "--book", book, "--customer", "pier", "--device", "logger",
                                  "--symptom", "column dead", "--board", board, "--json"})
                                 .json()["job"];
  REQUIRE(run(with({"job", "add", "--book", book, "--job", number, "--walk",
                    (device / "faulty.netmend-walk.json").string()},
                   goodWalks()))
              .code == ExitCode::finding);
  const auto isolate = with(
      {"fault", "isolate", "--board", board, "--net", "KEY_COL3", "--book", book, "--job", number, "--json"},
      goodWalks());
  const auto first = run(isolate).json();
  CHECK_FALSE(first["next_probe"]["stop"].get<bool>());
  // The capacitor's live side reads as on a good board and the connector's pad does not: it lies between.
  REQUIRE(run(with({"job", "add", "--book", book, "--job", number, "--purpose", "check", "--reading",
                    "C28.1 0.649", "--reading", "pad of J4.9 OL"},
                   goodWalks()))
              .code != ExitCode::badInput);
  const Ran second = run(isolate);
  CHECK(second.code == ExitCode::finding);
  // Track and vias between the landings are one repair: no via is scraped to tell them apart.
  const auto jumper = second.json()["one_jumper"].at(0);
  CHECK(jumper["suspects"] == nlohmann::json({0, 1, 2}));
  CHECK(jumper["probability"] > 0.9);
  CHECK(jumper["to"]["handle"] == "C28.1");
  for (const auto& probe : second.json()["next_probe"]["ranked"])
    CHECK(probe["point"]["object"]["kind"] != "via");
  const auto suspects = second.json()["suspects"];
  CHECK(suspects[0]["kind"] == "open");
  CHECK(suspects[0]["probability"] > 0.5);

  const Ran route = run(with({"jumper", "route", "--board", board, "--net", "KEY_COL3", "--book", book,
                              "--job", number, "--choose", "1", "--json"},
                             goodWalks()));
  INFO(route.err);
  REQUIRE(route.code == ExitCode::good);
  const auto proposal = route.json()["proposals"][0];
  CHECK(proposal["from"]["handle"] == "via 963 top");
  CHECK(proposal["from"]["object"] == nlohmann::json({{"kind", "via"}, {"id", 963}}));
  CHECK(proposal["from"]["layer"] == 0);
  CHECK(proposal["to"]["handle"] == "C28.1");
  CHECK(proposal["steps"].size() > 5);
  // The net's role is not known and its copper narrow; the technician knows better.
  CHECK(proposal["current_A"] == 0.1);
  CHECK(proposal["current_from"].get<std::string>().find("IPC-2221") != std::string::npos);
  const auto asked = run(with({"jumper", "route", "--board", board, "--net", "KEY_COL3", "--book", book,
                               "--job", number, "--current", "1", "--json"},
                              goodWalks()))
                         .json()["proposals"][0];
  CHECK(asked["current_A"] == 1.0);
  CHECK(asked["current_from"] == "1 A as asked for");
  CHECK(asked["wire_suffices"] == true);
  CHECK(asked["wire"] != proposal["wire"]);
  REQUIRE(run(with({"job", "add", "--book", book, "--job", number, "--purpose", "proof", "--proof-of", "1",
                    "--reading", "J4.9 0.651", "--works", "keys 3, 6, 9 and Enter", "--charge", "work",
                    "--price", "48.00"},
                   goodWalks()))
              .code == ExitCode::good);
  const auto shown = run({"job", "show", number, "--book", book, "--json"}).json();
  CHECK(shown["actions"][0]["proof"].size() == 1);
  CHECK(shown["actions"][0]["steps"].back()["text"] == "keys 3, 6, 9 and Enter");
  CHECK(shown["actions"][0]["steps"].back()["done"] == true);
  // Said twice, it is one function still.
  REQUIRE(run({"job", "add", "--book", book, "--job", number, "--works", "keys 3, 6, 9 and Enter"}).code ==
          ExitCode::good);
  CHECK(run({"job", "show", number, "--book", book, "--json"}).json()["actions"][0]["steps"] ==
        shown["actions"][0]["steps"]);
  CHECK(run({"job", "add", "--book", book, "--job", number, "--works", ""}).code == ExitCode::badInput);
  CHECK(shown["charges"][0]["price"] == "48.00");
  // For people, places are called as on every page; a script has the handle.
  REQUIRE(run({"job", "add", "--book", book, "--job", number, "--purpose", "check", "--reading",
               "via 963 top 0.65"})
              .code != ExitCode::badInput);
  const std::string name = proposal["from"]["name"];
  REQUIRE(name != "via 963 top");
  const std::string text = run({"job", "show", number, "--book", book}).out;
  CHECK(text.find(name) != std::string::npos);
  CHECK(text.find("via 963") == std::string::npos);
  CHECK(run({"job", "show", number, "--book", book, "--json"}).json()["readings"].back()["point"] ==
        "via 963 top");
  CHECK(
      run({"sheet", "make", "--book", book, "--job", number, "-o", folder.file("s.pdf"), "--paper", "letter"})
          .code == ExitCode::good);
  CHECK(run({"job", "list", "--book", book, "--json"}).json()["jobs"].size() == 1);
}

TEST_CASE("bad use exits with 2 and says what is missing") {
  CHECK(run({}).code == ExitCode::badUse);
  CHECK(run({"board"}).code == ExitCode::badUse);
  CHECK(run({"board", "fly", board}).code == ExitCode::badUse);
  CHECK(run({"walk", "record", "--part", "J4", "-o", "x"}).code == ExitCode::badUse);
  CHECK(run({"jumper", "route", "--board", board, "--net", "GND", "--choose", "1"}).code == ExitCode::badUse);
}

TEST_CASE("bad input exits with 3 and names the file") {
  const TemporaryFolder folder;
  std::ofstream(folder.file("b.csv")) << "part,pin,net,x_mm\nJ4,1,GND,abc\n";
  const Ran ran = run({"board", "summary", folder.file("b.csv"), "--json"});
  CHECK(ran.code == ExitCode::badInput);
  CHECK(ran.json()["error"]["file"].get<std::string>().find("b.csv") != std::string::npos);
  CHECK(ran.json()["error"]["place"].get<std::string>().find("line 2") != std::string::npos);
  CHECK(run({"board", "summary", folder.file("none.csv")}).code == ExitCode::badInput);
  CHECK(run({"fault", "isolate", "--board", board, "--net", "NO_SUCH_NET"}).code == ExitCode::badInput);
  CHECK(run({"job", "show", "2026-9999", "--book", folder.file("jobs")}).code == ExitCode::badInput);
  const Ran booked = run({"job", "new", "--book", folder.file("jobs"), "--customer", "harbour", "--device",
                          "logger", "--symptom", "dead", "--json"});
  REQUIRE(booked.code == ExitCode::good);
  CHECK(run({"job", "add", "--book", folder.file("jobs"), "--job", booked.json()["job"], "--works", "keys"})
            .code == ExitCode::badInput);
}

TEST_CASE("bad input leaves a job as it was") {
  const TemporaryFolder folder;
  const std::string book = folder.file("jobs");
  const std::string number =
      run({"job", "new", "--book", book, "--customer", "c", "--device", "d", "--symptom", "s", "--json"})
          .json()["job"];
  CHECK(run({"job", "add", "--book", book, "--job", number, "--reading", "J4.7 OL", "--charge", "x",
             "--price", "12,3,4"})
            .code == ExitCode::badInput);
  CHECK(run({"job", "add", "--book", book, "--job", number, "--reading", "J4.7 OL", "--reading",
             "J4.8 nonsense"})
            .code == ExitCode::badInput);
  const std::string half = folder.file("half.png");
  std::ofstream(half) << "\x89PNG\r\n\x1a\n and then nothing";
  const Ran photo = run({"job", "add", "--book", book, "--job", number, "--reading", "J4.7 OL", "--charge",
                         "x", "--price", "1", "--state", "probing", "--photo", half, "--json"});
  CHECK(photo.code == ExitCode::badInput);
  CHECK(photo.json()["error"]["file"] == half);
  const auto shown = run({"job", "show", number, "--book", book, "--json"}).json();
  CHECK(shown["readings"].empty());
  CHECK(shown["charges"].empty());
  CHECK(shown["state"] == "booked in");
}

TEST_CASE("a reading at a place that the board does not have is kept, and told") {
  const TemporaryFolder folder;
  const std::string book = folder.file("jobs");
  std::ofstream(folder.file("pins.csv")) << "part,pin,net\nJ4,7,GND\nJ4,8,A\n";
  const std::string number = run({"job", "new", "--book", book, "--customer", "c", "--device", "d",
                                  "--symptom", "s", "--board", folder.file("pins.csv"), "--json"})
                                 .json()["job"];
  const auto notices = [&](const std::string& reading) {
    return run({"job", "add", "--book", book, "--job", number, "--reading", reading, "--json"})
        .json()["notices"];
  };
  CHECK(notices("J4.8 0.45").empty());
  CHECK(notices("pad of J4.8 0.45").empty());
  CHECK(notices("12.00,8.50 0.45").empty());
  REQUIRE(notices("J4.9 0.45").size() == 1);
  CHECK(notices("J4.9 0.45").front().get<std::string>().starts_with("J4.9: no such pin or place"));
  CHECK(notices("pad of J4.9 0.45").size() == 1);
  CHECK(notices("via 963 top 0.45").size() == 1);
  CHECK(run({"job", "show", number, "--book", book, "--json"}).json()["readings"].size() == 7);
}

TEST_CASE("readings taken again are told apart from those that count") {
  const TemporaryFolder folder;
  const std::string book = folder.file("jobs");
  const std::string number =
      run({"job", "new", "--book", book, "--customer", "c", "--device", "d", "--symptom", "s", "--json"})
          .json()["job"];
  run({"job", "add", "--book", book, "--job", number, "--reading", "J4.7 OL", "--reading", "J4.8 0.45",
       "--reading", "J4.7 0.452"});
  const auto readings = run({"job", "show", number, "--book", book, "--json"}).json()["readings"];
  REQUIRE(readings.size() == 3);
  CHECK(readings[0]["counts"] == false);
  CHECK(readings[1]["counts"] == true);
  CHECK(readings[2]["counts"] == true);
  CHECK(readings[2]["comes_and_goes"] == false);
}

TEST_CASE("help comes with an example for every command") {
  for (const auto& command : std::vector<std::vector<std::string>>{{"board", "import"},
                                                                   {"board", "check"},
                                                                   {"board", "summary"},
                                                                   {"walk", "record"},
                                                                   {"walk", "judge"},
                                                                   {"fault", "isolate"},
                                                                   {"fault", "short"},
                                                                   {"jumper", "route"},
                                                                   {"job", "new"},
                                                                   {"job", "add"},
                                                                   {"job", "show"},
                                                                   {"job", "list"},
                                                                   {"sheet", "make"}}) {
    const Ran ran = run(with(command, {"--help"}));
    CHECK(ran.code == ExitCode::good);
    CHECK(ran.out.find("netmend " + command[0] + " " + command[1]) != std::string::npos);
    CHECK(ran.out.find("Example:") != std::string::npos);
  }
}

TEST_CASE("a board in an archive is taken, and asked for where there are several") {
  const TemporaryFolder folder;
  const std::string pins = "part,pin,net\nJ1,1,GND\n";
  std::ofstream(folder.file("one.zip"), std::ios::binary)
      << test::zipped({{"x/pins.csv", pins}, {"a.txt", "hello"}});
  std::ofstream(folder.file("two.zip"), std::ios::binary)
      << test::zipped({{"pins.csv", pins}, {"more.csv", pins + "J1,2,A\n"}});
  const Ran one = run({"board", "summary", folder.file("one.zip"), "--json"});
  REQUIRE(one.code == ExitCode::good);
  CHECK(one.json()["pads"] == 1);
  const Ran several = run({"board", "summary", folder.file("two.zip")});
  CHECK(several.code == ExitCode::badInput);
  CHECK(
      several.err.find("there are several boards in this archive (expected one of pins.csv, more.csv, after "
                       "--inside)") != std::string::npos);
  const Ran chosen = run({"board", "summary", folder.file("two.zip"), "--inside", "more.csv", "--json"});
  REQUIRE(chosen.code == ExitCode::good);
  CHECK(chosen.json()["pads"] == 2);
  const std::string out = folder.file("out.netmend-board.json");
  REQUIRE(run({"board", "import", folder.file("two.zip"), "--inside", "pins.csv", "-o", out}).code ==
          ExitCode::good);
  CHECK(run({"board", "summary", out, "--json"}).json()["pads"] == 1);
}

TEST_CASE("a script draws on a board: all of it, or nothing, and says at which step it went wrong") {
  const TemporaryFolder folder;
  const std::string file = folder.file("drawn.netmend-board.json");
  const auto empty = [&] {
    std::ofstream(file) << R"({"format": "netmend-board", "version": 3, "last_id": 0})";
  };
  const auto draw = [&](const std::string& steps) {
    return run({"board", "edit", file, "--json"},
               R"({"format": "netmend-edits", "version": 1, "steps": [)" + steps + "]}");
  };
  const auto counted = [&] { return run({"board", "summary", file, "--json"}).json(); };
  empty();
  const std::string parts = R"({"line": "J4 14", "clicks": [[11.5, 6.6], [24.5, 6.6]], "other_way": true},
    {"line": "R21 100 0402 8", "clicks": [[32, 22.52], [32, 23.48], [47.4, 22.52]]})";
  const Ran good =
      draw(parts + R"(, {"join": ["J4.2", "R21.1"], "net": "ROW0"}, {"track": ["J4.3", [20, 9], "R22.1"]})");
  INFO(good.out << good.err);
  REQUIRE(good.code == ExitCode::good);
  CHECK(good.json()["steps"] == 4);
  CHECK(counted()["parts"] == 9);
  CHECK(counted()["pads"] == 30);
  CHECK(counted()["nets"] == 2);
  CHECK(counted()["tracks"] == 2);
  CHECK_FALSE(fs::exists(file + ".journal"));

  const std::string before = [&] {
    std::ifstream in(file);
    return std::string(std::istreambuf_iterator<char>(in), {});
  }();
  struct Wrong {
    const char* steps;
    const char* place;
    const char* message;
  };
  for (const Wrong& wrong :
       {Wrong{R"({"join": ["J4.4", "R23.1"]}, {"join": ["J4.5", "R99.1"]})", "/steps/1/join/1",
              "names no pin, or more than one"},
        Wrong{R"({"line": "J5 40 3 rows", "clicks": []})", "/steps/0/line", "not understood"},
        Wrong{R"({"line": "R 100 0402", "clicks": [[1, 1]]})", "/steps/0/clicks",
              "too few clicks for what the line says"},
        Wrong{R"({"line": "R 100 0402", "clicks": [[1, 1], [2]]})", "/steps/0/clicks/1", "is no place"},
        Wrong{R"({"jion": ["J4.4"]})", "/steps/0", "is no step of drawing"},
        Wrong{R"({"join": ["J4.4", "R23.1"], "nett": "X"})", "/steps/0/nett", "is no field of this"},
        Wrong{R"({"track": ["J4.4"]})", "/steps/0/track", "is no way"},
        Wrong{R"({"role": "loud", "net": "ROW0"})", "/steps/0/role", "unknown word"},
        Wrong{R"({"changes": [{"remove": "pin", "id": 1000}]})", "/steps/0/changes/0",
              "pin 1000 is to be removed and does not exist"}}) {
    const Ran refused = draw(wrong.steps);
    INFO(wrong.steps << refused.out);
    CHECK(refused.code == ExitCode::badInput);
    const auto error = refused.json()["error"];
    CHECK(error["file"] == "standard input");
    CHECK(error["place"] == wrong.place);
    CHECK(error["message"] == wrong.message);
    std::ifstream in(file);
    CHECK(std::string(std::istreambuf_iterator<char>(in), {}) == before);
  }
}

TEST_CASE("a short's readings go into a job, and are weighed from there") {
  TemporaryFolder folder;
  const std::string book = folder.file("jobs");
  const std::string number = run({"job", "new", "--book", book, "--customer", "c", "--device", "d",
                                  "--symptom", "s", "--board", board, "--json"})
                                 .json()["job"];
  REQUIRE(run({"job", "add", "--book", book, "--job", number, "--reading", "milliohms C1.1 41", "--reading",
               "milliohms C3.1 28", "--reading", "temperature C3.1 31", "--reading", "temperature C1.1 25"})
              .code == ExitCode::good);
  const std::vector<std::string> ask{"fault", "short",  "--board", board,   "--net",
                                     "+3V3",  "--book", book,      "--job", number};
  const auto json = run(with(ask, {"--json"})).json();
  CHECK(json["readings"] == 2);
  CHECK(json["suspects"][0]["places"][0]["handle"] == "C3.1");
  CHECK(json["injection"]["start_V"] == 0.5);
  CHECK(json["injection"]["limit_V"] == 1.0); // the demo's nets have no ratings
  const std::string picture = folder.file("drop.png");
  const Ran text = run(with(ask, {"--picture", picture}));
  CHECK(text.code == ExitCode::finding);
  CHECK(text.out.find("inside C3") != std::string::npos);
  CHECK(text.out.find("shorted parts can burst") < text.out.find("start at 0.50 V, never above 1.00 V"));
  CHECK(fs::file_size(picture) > 10000);
}

TEST_CASE("without milliohms that say short nothing is injected") {
  const std::vector<std::string> ask{"fault", "short", "--board", board, "--net", "+3V3", "--json"};
  CHECK_FALSE(run(ask).json().contains("injection"));
  CHECK_FALSE(run(with(ask, {"--reading", "milliohms C1.1 2001"})).json().contains("injection"));
  CHECK_FALSE(
      run(with(ask, {"--reading", "drop under current C1.1 10m", "--inject-at", "C1.1", "--injected", "0.5"}))
          .json()
          .contains("injection"));
  CHECK(run(with(ask, {"--reading", "milliohms C1.1 2000"})).json().contains("injection"));
  CHECK(run({"fault", "short", "--board", board, "--net", "GND"}).code == ExitCode::badInput);
  CHECK(run(with(ask, {"--warm", "NOTHING"})).code == ExitCode::badInput);
}
