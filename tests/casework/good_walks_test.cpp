#include <catch2/catch.hpp>

#include <fstream>

#include "demo_device.h"
#include "netmend/probing/walk_file.h"
#include "temporary_folder.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// A connector whose points were written down by their labels alone.
struct LabelledBoard : DrawnBoard {
  PinId seven;
  LabelledBoard() {
    board.info.uuid = "b0a7";
    seven = pin(part("J4", Side::top, {}), "7", net("KEY"));
  }
};

Walk labelledWalk(Specimen specimen, double volts) {
  Walk walk;
  walk.title = "J4";
  walk.specimen = specimen;
  Reading reading;
  reading.point.label = "J4.7";
  reading.value = volts;
  walk.points = {reading.point};
  walk.readings = {reading};
  return walk;
}

} // namespace

TEST_CASE("walks are read in the order of their files, and their points found on the board", "[casework]") {
  const TemporaryFolder folder;
  const LabelledBoard drawn;
  const Lookup lookup(drawn.board);
  REQUIRE(writeWalkFile(folder.file("a.json"), labelledWalk(Specimen::faulty, 0.1)));
  REQUIRE(writeWalkFile(folder.file("b.json"), labelledWalk(Specimen::unknown, 0.2)));
  const auto walks = loadWalks({folder.file("b.json"), folder.file("a.json")}, &lookup);
  REQUIRE(walks);
  REQUIRE(walks->size() == 2);
  CHECK((*walks)[0].readings.front().value == 0.2);
  CHECK((*walks)[1].readings.front().value == 0.1);
  for (const Walk& walk : *walks) {
    CHECK(walk.readings.front().point.pin == drawn.seven);
    CHECK(walk.points.front().pin == drawn.seven);
    CHECK(walk.boardUuid == "b0a7");
  }
  // What they are of is left as it is.
  CHECK((*walks)[0].specimen == Specimen::unknown);
  CHECK((*walks)[1].specimen == Specimen::faulty);
  // Without a board they are as the file has them.
  const auto asWritten = loadWalks({folder.file("a.json")}, nullptr);
  REQUIRE(asWritten);
  CHECK_FALSE(asWritten->front().readings.front().point.pin);
  CHECK(loadWalks({}, nullptr)->empty());
}

TEST_CASE("a file that is no walk fails by its name, wherever it stands", "[casework]") {
  const TemporaryFolder folder;
  REQUIRE(writeWalkFile(folder.file("good.json"), labelledWalk(Specimen::good, 0.2)));
  for (const auto& load : {loadWalks, loadGoodWalks}) {
    const auto gone = load({folder.file("good.json"), folder.file("gone.json")}, nullptr);
    REQUIRE_FALSE(gone);
    CHECK(gone.error().file == folder.file("gone.json"));
  }
}

TEST_CASE("a walk counts as one of a good board unless it says that it is not", "[casework]") {
  const TemporaryFolder folder;
  REQUIRE(writeWalkFile(folder.file("good.json"), labelledWalk(Specimen::good, 0.2)));
  REQUIRE(writeWalkFile(folder.file("unsaid.json"), labelledWalk(Specimen::unknown, 0.3)));
  REQUIRE(writeWalkFile(folder.file("faulty.json"), labelledWalk(Specimen::faulty, 0.4)));
  const LabelledBoard drawn;
  const Lookup lookup(drawn.board);
  const auto walks = loadGoodWalks({folder.file("unsaid.json"), folder.file("good.json")}, &lookup);
  REQUIRE(walks);
  REQUIRE(walks->size() == 2);
  for (const Walk& walk : *walks) {
    CHECK(walk.specimen == Specimen::good);
    CHECK(walk.readings.front().point.pin == drawn.seven);
  }
  const auto refused = loadGoodWalks(
      {folder.file("good.json"), folder.file("faulty.json"), folder.file("unsaid.json")}, nullptr);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().file == "J4"); // the walk by its title
}

TEST_CASE("a job book gives the good walks of this very board, matched to it", "[casework]") {
  const TemporaryFolder folder;
  auto book = JobBook::open(folder.file("jobs.netmend-book"), BookUse::make);
  REQUIRE(book);
  Walk mine = labelledWalk(Specimen::good, 0.2), foreign = labelledWalk(Specimen::good, 0.3);
  mine.boardUuid = "b0a7";
  foreign.boardUuid = "c0de";
  REQUIRE(book->addKnownGoodWalk(mine));
  REQUIRE(book->addKnownGoodWalk(foreign));
  const LabelledBoard drawn;
  const auto kept = keptGoodWalks(*book, underWork(drawn.board));
  REQUIRE(kept);
  REQUIRE(kept->size() == 1);
  CHECK(kept->front().readings.front().value == 0.2);
  CHECK(kept->front().readings.front().point.pin == drawn.seven);
}

TEST_CASE("good walks that were kept under the board's former uuid are found by its content", "[casework]") {
  const TemporaryFolder folder;
  std::ofstream(folder.file("pins.csv")) << "part,pin,net\nJ4,7,GND\nJ4,8,A\n";
  const auto board = openBoard(folder.file("pins.csv"));
  REQUIRE(board);
  // What that program version made of these bytes.
  REQUIRE(board->formerUuid.size() == 36);
  REQUIRE(board->formerUuid != board->board->info.uuid);
  auto book = JobBook::open(folder.file("jobs.netmend-book"), BookUse::make);
  REQUIRE(book);
  Walk former = labelledWalk(Specimen::good, 0.2), now = labelledWalk(Specimen::good, 0.3);
  former.boardUuid = board->formerUuid;
  former.readings.front().point.pin = board->lookup->pinsLabelled("J4.7").front();
  now.boardUuid = board->board->info.uuid;
  REQUIRE(book->addKnownGoodWalk(former));
  REQUIRE(book->addKnownGoodWalk(now));
  const auto kept = keptGoodWalks(*book, *board);
  REQUIRE(kept);
  REQUIRE(kept->size() == 2);
  CHECK(kept->front().readings.front().value == 0.2); // the older one first
  CHECK(kept->front().boardUuid == board->board->info.uuid);
  CHECK(kept->front().readings.front().point.pin == former.readings.front().point.pin);
  const ExpectedTable expected = expectedValues(*kept, board->lookup.get(), repairData().probing);
  REQUIRE(expected.size() == 1);
  CHECK(expected.at(0).boards == 2);
}

TEST_CASE("a book that cannot be read gives no good walks", "[casework]") {
  const TemporaryFolder folder;
  auto book = JobBook::open(folder.file("jobs.netmend-book"), BookUse::make);
  REQUIRE(book);
  const auto size = std::filesystem::file_size(folder.file("jobs.netmend-book"));
  std::ofstream(folder.file("jobs.netmend-book")) << std::string(size, 'x');
  const LabelledBoard drawn;
  const auto kept = keptGoodWalks(*book, underWork(drawn.board));
  REQUIRE_FALSE(kept);
  CHECK(kept.error().file == folder.file("jobs.netmend-book"));
}

TEST_CASE("expected values come from good walks and their points", "[casework]") {
  const LabelledBoard drawn;
  const Lookup lookup(drawn.board);
  std::vector<Walk> good;
  for (const double volts : {0.648, 0.650, 0.652})
    good.push_back(labelledWalk(Specimen::good, volts));
  for (Walk& walk : good)
    matchToBoard(walk, lookup);
  const ExpectedTable table = expectedValues(good, &lookup, repairData().probing);
  REQUIRE(table.size() == 1);
  const Expected* found = table.find({drawn.seven, "J4.7"}, {});
  REQUIRE(found != nullptr);
  CHECK(found->boards == 3);
  CHECK(found->boardsOverLimit == 0);
  CHECK(found->seen == ValueInterval{0.648, 0.652});
  CHECK(expectedValues({}, &lookup, repairData().probing).size() == 0);
}

TEST_CASE("the rules say how far apart good boards may be before they are two kinds", "[casework]") {
  std::vector<Walk> good;
  for (const double volts : {0.448, 0.450, 0.452, 0.648, 0.650, 0.652})
    good.push_back(labelledWalk(Specimen::good, volts));
  ProbingData data = repairData().probing;
  const auto humps = [&] {
    const ExpectedTable table = expectedValues(good, nullptr, data);
    REQUIRE(table.size() == 1);
    return table.at(0).humps.size();
  };
  CHECK(humps() == 2);
  data.rules.variants.splitAt = 1e6;
  CHECK(humps() == 1);
}

TEST_CASE("the demo's good boards say what every pin of its connector reads", "[casework]") {
  const DemoDevice& device = demoDevice();
  CHECK(device.expected.size() == 14);
  const Expected* column = device.expected.find({device.pin("J4.9"), "J4.9"}, {});
  REQUIRE(column != nullptr);
  CHECK(column->boards == 8);
  CHECK(column->seen->lowest > 0.63);
  CHECK(column->seen->highest < 0.67);
  // Of this device the beeper's pin reads OL on every good board.
  const Expected* beeper = device.expected.find({device.pin("J4.13"), "J4.13"}, {});
  REQUIRE(beeper != nullptr);
  CHECK(beeper->onlyOverLimit());
  CHECK(beeper->boardsOverLimit == 8);
}
