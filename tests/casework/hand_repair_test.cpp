#include "netmend/casework/hand_repair.h"

#include <catch2/catch.hpp>

#include "netmend/casework/step_check.h"
#include "netmend/words/customer.h"
#include "netmend/words/step.h"
#include "repaired_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// A connector of three pins and a chip, each pin on a line of its own but for J1.1 and U1.1.
struct ByHand : RepairedBoard {
  PinId j1, j2, u1;
  BoardUnderWork under;

  ByHand() {
    const PartId connector = part("J1", Side::top, {});
    const PartId chip = part("U1", Side::top, {});
    j1 = placed(connector, "1", mm(0, 0));
    j2 = placed(connector, "2", mm(1, 0));
    u1 = placed(chip, "1", mm(20, 0));
    Pin joined = *board.pins.find(u1);
    joined.net = board.pins.find(j1)->net;
    board.pins.put(joined);
    under.board = std::make_shared<const Board>(board);
    under.lookup = std::make_shared<const Lookup>(*under.board);
    under.graph = std::make_shared<const BoardGraph>(buildBoardGraph(*under.board));
  }

  [[nodiscard]] Result<HandRepaired> typed(RepairKind kind, const std::string& line,
                                           const ProbePoint& odd = {}) const {
    return handRepair(handRepairFrom(kind, line), {under, expected, job.readings, data.work, odd});
  }
};

Expected goodBoards(double volts) {
  Expected out = reads(volts);
  out.boards = 8;
  return out;
}

const WorkStep& measuredIn(const RepairAction& action, ReadingMode mode, std::size_t which = 0) {
  for (const WorkStep& step : action.steps)
    if (step.measure && step.measure->mode == mode && which-- == 0) return step;
  FAIL("no such check");
  return action.steps.front();
}

} // namespace

TEST_CASE("one line says what is worked on and why; in one's own words all of it is what is done") {
  CHECK(handRepairFrom(RepairKind::wire, " J1.1 U1.1 , torn, near the edge ") ==
        HandRepair{RepairKind::wire, "J1.1 U1.1", "torn, near the edge"});
  CHECK(handRepairFrom(RepairKind::resolder, "J1.1") == HandRepair{RepairKind::resolder, "J1.1", ""});
  CHECK(handRepairFrom(RepairKind::other, "lid off, contact bent back") ==
        HandRepair{RepairKind::other, "lid off, contact bent back", ""});
}

TEST_CASE("the ends of a wire are two words, or stand apart by a dash, an arrow or \"to\"") {
  const ByHand at;
  for (const char* line : {"J1.1 U1.1", "J1.1 to U1.1", "J1.1 - U1.1", "J1.1 – U1.1", "J1.1 → U1.1"}) {
    INFO(line);
    const auto made = at.typed(RepairKind::wire, line);
    REQUIRE(made);
    CHECK(made->action.target == "J1.1 – U1.1");
    CHECK(made->action.places == std::vector<ProbePoint>{{at.j1, "J1.1"}, {at.u1, "U1.1"}});
  }
  const auto words = at.typed(RepairKind::wire, "left lug of the shield - J1.1");
  REQUIRE(words);
  CHECK(words->action.places ==
        std::vector<ProbePoint>{{PinId{}, "left lug of the shield"}, {at.j1, "J1.1"}});
}

TEST_CASE("a wire without a second end, to its own place or to a pin that the part has not is refused") {
  const ByHand at;
  for (const char* line : {"J1.1", "J1.1 J1.1", "J1.1 - J1.2 - U1.1", "J1.1 J1.99", ""}) {
    INFO(line);
    CHECK_FALSE(at.typed(RepairKind::wire, line));
  }
  CHECK(wordsOf(at.typed(RepairKind::wire, "J1.1 J1.99").error().said()) ==
        "J1 has no such pin (found J1.99; expected a pin of it, as the board numbers them)");
  CHECK(at.typed(RepairKind::wire, "J1.1 U9.1")); // a part that nobody has drawn yet
}

TEST_CASE("a wire between two lines is doubted, one along a line is not") {
  const ByHand at;
  CHECK_FALSE(at.typed(RepairKind::wire, "J1.1 U1.1")->doubt);
  CHECK_FALSE(at.typed(RepairKind::wire, "J1.1 somewhere")->doubt);
  const auto doubt = at.typed(RepairKind::wire, "J1.1 J1.2")->doubt;
  REQUIRE(doubt);
  CHECK(wordsOf(*doubt) == "Mind: J1.1 is on NET0, J1.2 on NET1. This wire would join two lines.");
}

TEST_CASE("before a wire its ends must be parted, behind it joined, and both read as good boards do") {
  ByHand at;
  at.expected.put(at.at(at.j1), {}, goodBoards(0.5));
  at.expected.put(at.at(at.u1), {}, goodBoards(0.6));
  const auto made = at.typed(RepairKind::wire, "J1.1 U1.1, torn");
  REQUIRE(made);
  const RepairAction& wire = made->action;
  const StepMeasure& before = *measuredIn(wire, ReadingMode::ohms).measure;
  CHECK(before.point == at.at(at.j1));
  CHECK(before.other == at.at(at.u1));
  CHECK(compareWith(before, 9.9) == StepOutcome::disagrees); // joined already: the wire mends nothing
  CHECK(compareWith(before, 10.0) == StepOutcome::agrees);
  CHECK(compareWith(before, std::nullopt) == StepOutcome::agrees);
  const StepMeasure& after = *measuredIn(wire, ReadingMode::ohms, 1).measure;
  CHECK(after.other == at.at(at.u1));
  CHECK(compareWith(after, 1.0) == StepOutcome::agrees);
  CHECK(compareWith(after, 1.01) == StepOutcome::disagrees);
  CHECK(compareWith(after, std::nullopt) == StepOutcome::disagrees);
  CHECK(measuredIn(wire, ReadingMode::diode).measure->interval == reads(0.5).shown.front());
  CHECK(measuredIn(wire, ReadingMode::diode, 1).measure->interval == reads(0.6).shown.front());
  CHECK(wordsOf(expectedSaid(measuredIn(wire, ReadingMode::diode), wire)) == "0.450 V to 0.550 V");
  CHECK(wordsOf(stepSaid(measuredIn(wire, ReadingMode::diode), wire)) == "Measure from J1.1 to ground.");
  CHECK(wordsOf(stepSaid(measuredIn(wire, ReadingMode::diode, 1), wire)) == "Measure from U1.1 to ground.");
  CHECK(wordsOf(doneSaid(wire)) == "Bridged J1.1 and U1.1 with a wire.");
  CHECK(wordsOf(foundSaid(wire)) == "torn");
  CHECK(wordsOf(foundSaid(at.typed(RepairKind::wire, "J1.1 U1.1")->action)) ==
        "The connection between J1.1 and U1.1 was open.");
}

TEST_CASE("solder between two pins is removed when nothing joins them; at one place only that is read") {
  ByHand at;
  at.expected.put(at.at(at.j2), {}, goodBoards(0.6));
  const RepairAction two = at.typed(RepairKind::removeBridge, "J1.1 J1.2")->action;
  CHECK(measuredIn(two, ReadingMode::ohms).measure->overLimit);
  CHECK_FALSE(measuredIn(two, ReadingMode::diode).measure->comparable());
  CHECK(measuredIn(two, ReadingMode::diode, 1).measure->interval == reads(0.6).shown.front());
  CHECK(wordsOf(expectedSaid(measuredIn(two, ReadingMode::diode), two)) == "what a good board reads there");
  CHECK(wordsOf(doneSaid(two)) == "Removed solder between J1.1 and J1.2.");
  CHECK(wordsOf(foundSaid(two)) == "Solder joined J1.1 and J1.2.");
  const RepairAction one = at.typed(RepairKind::removeBridge, "J1.2")->action;
  CHECK(one.steps.size() + 2 == two.steps.size());
  CHECK(measuredIn(one, ReadingMode::diode).measure->interval == reads(0.6).shown.front());
  CHECK(wordsOf(doneSaid(one)) == "Removed a solder bridge at J1.2.");
}

TEST_CASE("what is no place of its own is measured at the odd pin") {
  ByHand at;
  at.expected.put(at.at(at.j1), {}, goodBoards(0.5));
  for (const RepairKind kind : {RepairKind::other, RepairKind::replacePart, RepairKind::clean}) {
    const RepairAction made = at.typed(kind, "C28", at.at(at.j1))->action;
    CHECK(made.places == std::vector<ProbePoint>{at.at(at.j1)});
    CHECK(measuredIn(made, ReadingMode::diode).measure->interval == reads(0.5).shown.front());
  }
  const RepairAction nowhere = at.typed(RepairKind::clean, "C28")->action;
  CHECK(nowhere.places.empty());
  CHECK(measuredIn(nowhere, ReadingMode::diode).measure->point == ProbePoint{PinId{}, "C28"});
  const RepairAction words = at.typed(RepairKind::other, "contact bent back", at.at(at.j1))->action;
  CHECK(wordsOf(stepSaid(words.steps.at(1), words)) == "contact bent back.");
  CHECK(wordsOf(doneSaid(words)) == "contact bent back");
}

TEST_CASE("with the part off, or where good boards differ, there is no figure to stop the work at") {
  ByHand at;
  at.expected.put(at.at(at.j1), {}, goodBoards(0.5));
  Expected differing = goodBoards(0.6);
  differing.shown.push_back({0.3, 0.4});
  at.expected.put(at.at(at.j2), {}, differing);
  const auto compares = [&](RepairKind kind, const char* line) {
    return measuredIn(at.typed(kind, line)->action, ReadingMode::diode).measure->comparable();
  };
  CHECK(compares(RepairKind::resolder, "J1.1"));
  CHECK(compares(RepairKind::clean, "J1.1"));
  CHECK(compares(RepairKind::replacePart, "J1.1"));
  CHECK_FALSE(compares(RepairKind::removePart, "J1.1"));
  CHECK_FALSE(compares(RepairKind::cutTrack, "J1.1"));
  CHECK_FALSE(compares(RepairKind::resolder, "J1.2"));
  const RepairAction made = at.typed(RepairKind::resolder, "J1.1")->action;
  CHECK_FALSE(measuredIn(made, ReadingMode::ohms).measure->comparable()); // another mode
}

TEST_CASE("a wire by hand is proved at both ends and from end to end, solder at what it joined") {
  ByHand at;
  for (const PinId pin : {at.j1, at.j2, at.u1})
    at.expected.put(at.at(pin), {}, goodBoards(0.5));
  at.read(at.at(at.j1), std::nullopt, foundOpen);
  at.job.actions = {at.typed(RepairKind::wire, "J1.1 U1.1")->action};
  at.job.actions.front().id = RepairActionId(1);
  const auto wire = proofPoints({at.job, at.under.lookup.get(), at.expected, at.data});
  REQUIRE(wire.size() == 4);
  CHECK(wire[0].why == ProofWhy::odd);
  CHECK(wire[0].point == at.at(at.j1));
  CHECK(wire[1].why == ProofWhy::landing);
  CHECK(wire[1].point == at.at(at.u1));
  CHECK(wire[2].why == ProofWhy::endToEnd);
  REQUIRE(wire[2].limits);
  CHECK(wire[2].limits->highest > 1.0); // the wire's, and what the leads and the meter add
  CHECK(wire[2].limits->highest < 3.0);
  CHECK(wire[3].why == ProofWhy::neighbour);
  CHECK(wire[3].point == at.at(at.j2));

  at.job.readings.clear();
  at.read(at.at(at.j1), 0.0, VerdictKind::shorted);
  at.job.actions = {at.typed(RepairKind::removeBridge, "J1.1 J1.2")->action};
  at.job.actions.front().id = RepairActionId(1);
  const auto bridge = proofPoints({at.job, at.under.lookup.get(), at.expected, at.data});
  REQUIRE(bridge.size() == 2);
  CHECK(bridge[0].point == at.at(at.j1));
  CHECK(bridge[1].point == at.at(at.j2));
}
