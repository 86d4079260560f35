#include <cmath>

#include <fmt/format.h>

#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/job.h"
#include "netmend/words/verdict.h"
#include "probing/support.h"

using namespace netmend;
using test::at;
using test::boardsReading;
using test::verdictOn;

namespace {

using Boards = std::vector<std::optional<double>>;
const Boards eightBoards{0.451, 0.455, 0.447, 0.453, 0.449, 0.456, 0.452, 0.450};

std::string reasons(const Boards& boards, const Reading& reading) {
  return wordsOf(verdictReasons(reading, verdictOn(boardsReading(boards), reading)));
}
std::string line(const Boards& boards, std::optional<double> value) {
  const Reading reading = at(1, value);
  return wordsOf(verdictLine(reading, verdictOn(boardsReading(boards), reading)));
}
bool has(const std::string& text, const std::string& part) {
  INFO(text << "\n  lacks: " << part);
  CHECK(text.find(part) != std::string::npos);
  return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("At the bench a value in range stands alone, and an odd one beside what good boards read",
          "[words]") {
  CHECK(line(eightBoards, 0.452) == "0.452 V");
  const Verdict open = verdictOn(boardsReading(eightBoards), at(1, std::nullopt));
  REQUIRE(open.expected);
  REQUIRE(open.expected->shown.size() == 1);
  REQUIRE(open.expected->seen);
  CHECK(line(eightBoards, std::nullopt) == fmt::format("OL; 8 good boards read {:.3f} V to {:.3f} V",
                                                       open.expected->seen->lowest,
                                                       open.expected->seen->highest));
  Reading rising = at(1, 0.452);
  rising.settling = Settling::rising;
  CHECK(wordsOf(verdictLine(rising, verdictOn(boardsReading(eightBoards), rising))) ==
        "0.452 V; it was still rising: wait until it has settled");
  CHECK(line({}, 0.3) == "0.300 V"); // nothing to compare
}

TEST_CASE("Reasons name the reading, how many boards read what, how rare it is, and the odds", "[words]") {
  const std::string open = reasons(eightBoards, at(1, std::nullopt));
  CHECK(open.starts_with(
      "reads OL; 8 good boards read 0.447 V to 0.456 V; a good board reads something as telling "));
  has(open, "; odds of a fault here ");
  CHECK(open.ends_with("; press again: a missed contact reads OL too"));
  has(reasons(eightBoards, at(1, 0.300)), "; 152 mV below the expected 0.452 V, ");
  has(reasons(eightBoards, at(1, 0.600)), "; 148 mV above the expected 0.452 V, ");
  has(reasons({0.452}, at(1, std::nullopt)), "; 1 good board read 0.452 V; ");
  has(reasons({std::nullopt, 0.610, 0.612, std::nullopt, 0.609}, at(1, 0.4)),
      "of 5 good boards 2 read OL, the others 0.609 V to 0.612 V");
  has(reasons({std::nullopt, std::nullopt}, at(1, 0.4)), "2 good boards read OL");
  CHECK(reasons({}, at(1, 0.4)) == "reads 0.400 V; no good board was measured here in this mode and "
                                   "condition, and nobody entered what to expect");
}

TEST_CASE("What happened to a job is said in one line", "[words]") {
  using Kind = JobEvent::Kind;
  using Entry = JobEvent::Entry;
  const auto line = [](const JobEvent& event) { return wordsOf(eventSaid(event)); };
  CHECK(line({Kind::bookedIn}) == "booked in");
  CHECK(line({Kind::asWritten, "repair_action 7 taken back"}) == "repair_action 7 taken back");
  CHECK(line({.kind = Kind::state, .state = JobState::handedOver}) == "handed over");
  CHECK(line({Kind::boardUsed, "12ab"}) == "board used: 12ab");
  CHECK(line({.kind = Kind::takenBack, .entry = Entry::reading, .number = 8}) == "taken back: reading 8");
  CHECK(line({.kind = Kind::takenBack, .entry = Entry::repairAction, .number = 7}) == "taken back: repair 7");
  CHECK(line({.kind = Kind::putBack, .entry = Entry::photo, .number = 2}) == "put back: photo 2");
  CHECK(line({.kind = Kind::putBack, .entry = Entry::charge, .number = 3}) == "put back: charge 3");
  CHECK(line({.kind = Kind::repairAdded, .text = "C28", .repair = RepairKind::replacePart}) ==
        "repair added: replace part, C28");
  CHECK(line({.kind = Kind::repairAdded, .repair = RepairKind::jumper}) == "repair added: jumper");
  CHECK(line({.kind = Kind::suspects, .number = 1}) == "1 suspect found");
  CHECK(line({.kind = Kind::suspects, .number = 12}) == "12 suspects found");
  CHECK(line({.kind = Kind::suspects}) == "suspects withdrawn");
}

TEST_CASE("What is said of a reading agrees with the figures beside it", "[words]") {
  // 0.4524 is shown as 0.452, and the boards' 0.4515 as 0.452: a difference of 0.9 mV is not told as 1 mV.
  has(reasons({0.4515, 0.4515, 0.4515, 0.4515}, at(1, 0.4524)), "reads 0.452 V; 4 good");
  auto warm = at(1, 0.640);
  warm.condition.temperature = Celsius(35);
  const std::string said = reasons({0.600, 0.601, 0.602, 0.601}, warm);
  const auto compared = asShown(*valueAtBenchTemperature(warm), ReadingMode::diode);
  CHECK(compared > 0.645); // about 2 mV a degree (common practice, no source)
  has(said, fmt::format("reads 0.640 V, at 25 °C {:.3f} V; 4 good boards", compared));
  has(said, fmt::format("{} mV above the expected 0.601 V", std::lround(1e3 * (compared - 0.601))));
}

TEST_CASE("What still climbs is told to wait", "[words]") {
  auto rising = at(1, 0.300);
  rising.settling = Settling::rising;
  CHECK(reasons(eightBoards, rising).ends_with("; it was still rising: wait until it has settled"));
}

TEST_CASE("A proof says by what it was judged", "[words]") {
  JobReading entry;
  entry.reading = at(1, 0.6, ReadingMode::continuity);
  Judged judged;
  judged.verdict.kind = VerdictKind::inRange;
  judged.limits = ValueInterval{0.0, 0.9};
  judged.by = ExpectedBy::wire;
  entry.judged = judged;
  CHECK(wordsOf(whatIsExpected(entry)) == "0 Ω to 0.9 Ω");
  CHECK(wordsOf(verdictReasons(entry)) ==
        "0.6 Ω; expected 0 Ω to 0.9 Ω: twice the wire's resistance, and what leads "
        "and meter may add");
  entry.judged =
      Judged{verdictOn(boardsReading(eightBoards), at(1, 0.452)), {}, ExpectedBy::sameNet, "J4.9", false};
  CHECK(wordsOf(verdictReasons(entry)).ends_with(" (as J4.9, on the same net)"));
}

TEST_CASE("What is expected is OL, values, or one of them", "[words]") {
  Expected expected;
  expected.overLimitShare = 1.0;
  CHECK(wordsOf(whatIsExpected(expected)) == "OL");
  expected.humps = {{1.0, 0.644, 0.025, 0.0, 0.0}};
  expected.shown = {{0.619, 0.669}};
  CHECK(wordsOf(whatIsExpected(expected)) == "OL or 0.619 V to 0.669 V");
  expected.overLimitShare = 0.01; // never quite none
  CHECK(wordsOf(whatIsExpected(expected)) == "0.619 V to 0.669 V");
}

TEST_CASE("What an older book explained is shown word for word", "[words]") {
  JobReading entry;
  entry.reading = at(1, std::nullopt);
  entry.judged = Judged{};
  entry.judged->fromOldBook = true;
  entry.judged->verdict.kind = VerdictKind::open;
  entry.remark = "reads OL; 3 good boards {n} read so";
  CHECK(wordsOf(verdictReasons(entry)) == entry.remark);
  CHECK(wordsOf(nameOf(entry.kind())) == "open");
}
