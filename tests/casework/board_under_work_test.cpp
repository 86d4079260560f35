#include <catch2/catch.hpp>

#include <fstream>

#include "demo_device.h"
#include "netmend/base/digest.h"
#include "netmend/base/file.h"
#include "support/zipped.h"
#include "temporary_folder.h"

using namespace netmend;
using namespace netmend::test;

TEST_CASE("a loaded board has its questions answered, also after it was moved", "[casework]") {
  DrawnBoard drawn;
  const PinId seven = drawn.pin(drawn.part("J4", Side::top, {}), "7", drawn.net("KEY"));
  BoardUnderWork loaded = underWork(drawn.board);
  const BoardUnderWork moved = std::move(loaded);
  CHECK(*moved.board == drawn.board);
  CHECK(&moved.lookup->board() == moved.board.get());
  CHECK(moved.lookup->pinsLabelled("J4.7") == std::vector<PinId>{seven});
  CHECK(moved.notices.empty());
}

TEST_CASE("a board is read from a file, and one that is not there fails by its name", "[casework]") {
  const TemporaryFolder folder;
  std::ofstream(folder.file("pins.csv")) << "part,pin,net\nJ1,1,GND\nJ1,2,A\n";
  const auto table = openBoard(folder.file("pins.csv"));
  REQUIRE(table);
  CHECK(table->board->pins.size() == 2);
  CHECK(table->notices.empty());
  CHECK(pinLabelled(*table->lookup, "J1.2"));
  // The very bytes that were read; and from them a UUID of version 8 and variant 10 (RFC 9562, 5.8).
  CHECK(table->digest == sha256("part,pin,net\nJ1,1,GND\nJ1,2,A\n"));
  const std::string& uuid = table->board->info.uuid;
  REQUIRE(uuid.size() == 36);
  CHECK(uuid.substr(0, 8) == table->digest.substr(0, 8));
  CHECK(uuid.substr(24) == table->digest.substr(20, 12));
  CHECK(uuid[14] == '8');
  CHECK(std::string("89ab").find(uuid[19]) != std::string::npos);
  CHECK(table->file == folder.file("pins.csv"));
  CHECK(table->graph);
  CHECK(table->places);
  const auto gone = openBoard(folder.file("gone.csv"));
  REQUIRE_FALSE(gone);
  CHECK(gone.error().file == folder.file("gone.csv"));
}

TEST_CASE("opening a board tells how far it is and stops when it is told to", "[casework]") {
  Progress progress;
  std::vector<double> shares;
  progress.report = [&](const Pattern&, double share) { shares.push_back(share); };
  const std::string file = "/usr/share/kicad/demos/video/video.kicad_pcb"; // Debian's kicad-demos
  REQUIRE(openBoard(file, {}, progress));
  REQUIRE(shares.size() > 10);
  CHECK(std::is_sorted(shares.begin(), shares.end()));
  CHECK(shares.front() < 0.05);
  CHECK(shares.back() > 0.4);
  CHECK(shares.back() <= 1.0);
  std::stop_source stop;
  progress.stop = stop.get_token();
  progress.report = [&](const Pattern&, double share) {
    if (share > 0.1) stop.request_stop();
    CHECK(share < 0.2); // the reader itself stops
  };
  const auto stopped = openBoard(file, {}, progress);
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().file == file);
  CHECK(wordsOf(stopped.error().message) == "reading was stopped");
}

TEST_CASE("of an archive with several boards the one that is named is read", "[casework]") {
  const TemporaryFolder folder;
  REQUIRE(writeFileAtomically(folder.file("parcel.zip"), zipped({{"main.csv", "part,pin,net\nJ1,1,GND\n"},
                                                                 {"key.csv", "part,pin,net\nK1,1,ROW\n"}})));
  const auto key = openBoard(folder.file("parcel.zip"), "key.csv");
  REQUIRE(key);
  CHECK(pinLabelled(*key->lookup, "K1.1"));
  CHECK(key->digest.size() == 64);
  CHECK(key->digest != sha256("part,pin,net\nK1,1,ROW\n")); // of the archive, which is the file
  // What the reader noticed is kept: which of the archive's files it was.
  REQUIRE(key->notices.size() == 1);
  CHECK(wordsOf(key->notices.front()).find("key.csv") != std::string::npos);
  CHECK(pinLabelled(*openBoard(folder.file("parcel.zip"), "main.csv")->lookup, "J1.1"));
  CHECK_FALSE(openBoard(folder.file("parcel.zip")));
}

TEST_CASE("a pin is found by a label that stands once", "[casework]") {
  DrawnBoard drawn;
  const NetId net = drawn.net("KEY");
  const PinId once = drawn.pin(drawn.part("J4", Side::top, {}), "7", net);
  const PartId twice = drawn.part("U1", Side::top, {});
  drawn.pin(twice, "3", net);
  drawn.pin(twice, "3", net);
  const Lookup lookup(drawn.board);
  CHECK(pinLabelled(lookup, "J4.7") == once);
  REQUIRE_FALSE(pinLabelled(lookup, "J4.8"));
  CHECK(wordsOf(pinLabelled(lookup, "J4.8").error().found) == "J4.8");
  REQUIRE_FALSE(pinLabelled(lookup, "U1.3"));
  const std::string found = wordsOf(pinLabelled(lookup, "U1.3").error().found);
  CHECK(found.find("U1.3") != std::string::npos);
  CHECK(found.find('2', found.find("U1.3") + 4) != std::string::npos); // twice
}

TEST_CASE("a net is found by a name that stands once", "[casework]") {
  DrawnBoard drawn;
  const NetId once = drawn.net("KEY");
  drawn.net("ROW");
  drawn.net("ROW");
  const Lookup lookup(drawn.board);
  CHECK(netNamed(lookup, "KEY") == once);
  REQUIRE_FALSE(netNamed(lookup, "LED"));
  CHECK(wordsOf(netNamed(lookup, "LED").error().found) == "LED");
  REQUIRE_FALSE(netNamed(lookup, "ROW"));
  CHECK(wordsOf(netNamed(lookup, "ROW").error().found) == "ROW");
  CHECK(wordsOf(netNamed(lookup, "ROW").error().message) != wordsOf(netNamed(lookup, "LED").error().message));
}

TEST_CASE("all that a repair needs is read from the data folder", "[casework]") {
  const RepairData& data = repairData();
  CHECK(findMeter(data.probing.meters, "handheld-4000") != nullptr);
  CHECK(data.probing.rules.falseFlagsPerGoodWalk == 0.05);
  CHECK(data.priors.solderJoint > 0.0);
  CHECK(data.efforts.wrongRepair.value > 0.0);
  CHECK(data.jumper.wires.wires.size() > 20);
  CHECK_FALSE(data.work.kinds.at(WorkKind::jumper).empty());
}

TEST_CASE("of the data folder the file that is missing is named", "[casework]") {
  for (const char* missing : {"meters.json", "verdict.json", "fault_priors.json", "efforts.json",
                              "wires.json", "landings.json", "zones.json", "work_steps.json"}) {
    const TemporaryFolder folder;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(NETMEND_SOURCE_DIR) / "data"))
      if (entry.path().extension() == ".json" && entry.path().filename() != missing)
        std::filesystem::copy_file(entry.path(), folder.path / entry.path().filename());
    const auto loaded = loadRepairData(folder.path);
    INFO(missing);
    REQUIRE_FALSE(loaded);
    CHECK(loaded.error().file == folder.file(missing));
  }
}
