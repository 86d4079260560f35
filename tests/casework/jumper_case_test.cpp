#include <catch2/catch.hpp>

#include "demo_device.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/casework/step_check.h"
#include "netmend/probing/reading_entry.h"

using namespace netmend;
using namespace netmend::test;

namespace {

constexpr std::array<MeasureTemplate, 3> placesOfChecks{
    {{MeasureAt::from, {}, ReadingMode::diode, MeasureReads::expectedFrom},
     {MeasureAt::to, {}, ReadingMode::diode, MeasureReads::expectedTo},
     {MeasureAt::from, {}, ReadingMode::diode, MeasureReads::expectedBridged}}};

/// Three checks and nothing else: at both landings before the wire, and of the line with it.
WorkSteps checksAlone() {
  WorkSteps out;
  for (const MeasureTemplate& what : placesOfChecks)
    out.kinds[WorkKind::jumper].push_back({"", "measure", true, "", what});
  return out;
}

/// What each of the three should read.
std::vector<StepMeasure> wantedAt(const FaultCase& fault, const JumperProposal& proposal) {
  std::vector<StepMeasure> out;
  for (const WorkStep& step : actionFor(demoDevice().loaded, fault, proposal, checksAlone()).steps)
    out.push_back(step.measure.value());
  REQUIRE(out.size() == 3);
  return out;
}

void checkWithin(const StepMeasure& wanted, const Prediction& predicted) {
  CHECK(wanted.mode == ReadingMode::diode);
  CHECK_FALSE(wanted.overLimit);
  REQUIRE(wanted.interval);
  // Three standard deviations to each side, and 10 mV at least; both are told in whole millivolts.
  const double mean = predicted.mean.value, room = std::max(3 * predicted.spread.value, 0.010);
  CHECK(wanted.interval->lowest == Approx(mean - room).margin(0.001));
  CHECK(wanted.interval->highest == Approx(mean + room).margin(0.001));
}

std::size_t placeOn(const Isolation& isolation, Point at) {
  for (std::size_t i = 0; i < isolation.places.size(); ++i)
    if (isolation.places[i].at == at) return i;
  FAIL("no place is there");
  return 0;
}

const std::vector<JumperProposal>& demoProposals() {
  static const std::vector<JumperProposal> found =
      proposeJumpers(demoDevice().lookup, demoFault(), suspectedCut(demoFault()).value(), repairData())
          .value()
          .proposals;
  return found;
}

FaultPlace place(std::optional<std::size_t> edge) {
  FaultPlace out;
  out.edge = edge;
  return out;
}

} // namespace

TEST_CASE("the suspected cut is all edges that the leading break may be at, likeliest first", "[casework]") {
  const FaultCase& fault = demoFault();
  const auto cut = suspectedCut(fault);
  REQUIRE(cut);
  REQUIRE(cut->size() == 3);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK((*cut)[i] == fault.suspects.ranked.front().places[i].edge);
}

TEST_CASE("of a leading break that lies partly in unknown copper the known edges are cut", "[casework]") {
  FaultCase fault;
  fault.isolation.classes.resize(1);
  fault.suspects.ranked.resize(1);
  Suspect& leading = fault.suspects.ranked.front();
  leading.places = {place(std::nullopt), place(7), place(std::nullopt), place(4)};
  CHECK(suspectedCut(fault) == std::vector<std::size_t>{7, 4});
  leading.places = {place(std::nullopt)};
  REQUIRE_FALSE(suspectedCut(fault));
  CHECK(wordsOf(suspectedCut(fault).error().expected) == "the track drawn");
}

TEST_CASE("without a leading break there is no cut, and the error says what would help", "[casework]") {
  FaultCase fault;
  REQUIRE_FALSE(suspectedCut(fault));
  CHECK(wordsOf(suspectedCut(fault).error().expected) == "more readings");
  fault.isolation.classes.resize(2);
  fault.isolation.classes[0].kind = FaultKind::deadPin;
  fault.suspects.ranked.resize(2);
  fault.suspects.ranked[0].places = {place(3)};
  fault.suspects.ranked[1].faultClass = 1;
  REQUIRE_FALSE(suspectedCut(fault));
  CHECK(wordsOf(suspectedCut(fault).error().expected) == "more readings");
}

TEST_CASE("the column is bridged from its via to its capacitor, in up to three ways", "[casework]") {
  const auto& proposals = demoProposals();
  REQUIRE(proposals.size() == 3);
  const JumperProposal& best = proposals.front();
  CHECK(best.from.object == CopperObject{ViaId{963}});
  CHECK(best.to.object == CopperObject{demoDevice().pin("C28.1")});
  CHECK(best.from.at == mm(19.5, 9.0));
  CHECK(best.side == Side::top);
  CHECK(best.wire.current.value == Amperes(0.1)); // a signal's, by data/wires.json
  const auto one =
      proposeJumpers(demoDevice().lookup, demoFault(), suspectedCut(demoFault()).value(), repairData(), 1);
  REQUIRE(one);
  REQUIRE(one->proposals.size() == 1);
  CHECK(one->proposals.front().way == best.way);
}

TEST_CASE("the cut may be named by hand", "[casework]") {
  // The joint of J4.9 instead: soldered to its leg.
  const FaultCase& fault = demoFault();
  for (const FaultClass& suspect : fault.isolation.classes) {
    if (suspect.places.size() != 1 || suspect.places.front().edgeKind != EdgeKind::solderJoint ||
        suspect.places.front().pin != demoDevice().pin("J4.9"))
      continue;
    const auto found =
        proposeJumpers(demoDevice().lookup, fault, {suspect.places.front().edge.value()}, repairData(), 1);
    REQUIRE(found);
    REQUIRE(found->proposals.size() == 1);
    CHECK(found->proposals.front().from.object == CopperObject{demoDevice().pin("J4.9")});
    return;
  }
  FAIL("the joint is no suspect");
}

TEST_CASE("the wire carries what is asked for, or what the line's first net is rated for", "[casework]") {
  const auto cut = suspectedCut(demoFault()).value();
  const auto asked =
      proposeJumpers(demoDevice().lookup, demoFault(), cut, repairData(), 1, fromUser(Amperes(0.7)));
  REQUIRE(asked);
  REQUIRE(asked->proposals.size() == 1);
  CHECK(asked->proposals.front().wire.current.value == Amperes(0.7));

  Board board = demoDevice().board;
  Net rated = *board.nets.find(demoDevice().column);
  rated.ratedCurrent = fromUser(Amperes(0.4));
  board.nets.put(rated);
  rated = *board.nets.find(netNamed(demoDevice().lookup, "KEY_COL3_U").value());
  rated.ratedCurrent = fromUser(Amperes(0.6));
  board.nets.put(rated);
  const Lookup lookup(board);
  FaultCase fault;
  fault.line = demoFault().line;
  const auto byNet = proposeJumpers(lookup, fault, cut, repairData(), 1);
  REQUIRE(byNet);
  REQUIRE(byNet->proposals.size() == 1);
  CHECK(byNet->proposals.front().wire.current.value == Amperes(0.4));
  // Copper without a net is rated for nothing: what the 0.12 mm track carries, as for any signal.
  fault.line.nets.clear();
  const auto nameless = proposeJumpers(lookup, fault, cut, repairData(), 1);
  REQUIRE(nameless);
  REQUIRE(nameless->proposals.size() == 1);
  CHECK(nameless->proposals.front().wire.current.value == Amperes(0.1));
}

TEST_CASE("before the wire is in, its landings read what the leading break leaves of the line there",
          "[casework]") {
  const FaultCase& fault = demoFault();
  const JumperProposal& best = demoProposals().front();
  const std::size_t leading = fault.suspects.ranked.front().faultClass;
  const std::size_t via = placeOn(fault.isolation, best.from.at);
  const std::size_t capacitor = placeOn(fault.isolation, best.to.at);
  const auto wanted = wantedAt(fault, best);
  // Of the connector's side nothing is behind the via any more, on the chip's side all is.
  CHECK(predictDiode(fault.isolation, via, leading).overLimit > 0.5);
  CHECK(wanted[0].overLimit);
  CHECK_FALSE(wanted[0].interval);
  checkWithin(wanted[1], predictDiode(fault.isolation, capacitor, leading));
  // Bridged, the first landing reads what the other one did: nothing else is behind it.
  checkWithin(wanted[2], predictDiode(fault.isolation, capacitor, leading));
}

TEST_CASE("bridged, the line reads what it does behind the break, however often it read OL before it",
          "[casework]") {
  const JumperProposal& best = demoProposals().front();
  const std::string via = probePointOf(best.from).label;
  const FaultCase fault =
      demoDevice()
          .solve(demoDevice().question({"C28.1 0.649", "pad of J4.9 OL", "pad of J4.9 OL", via + " OL"}))
          .value();
  const auto wanted = wantedAt(fault, best);
  CHECK(wanted[0].overLimit);
  REQUIRE(wanted[2].interval);
  CHECK(wanted[2].interval->lowest < 0.649);
  CHECK(wanted[2].interval->highest > 0.649);
}

TEST_CASE("OL is wanted where it is likelier than a value", "[casework]") {
  // A line with nothing behind its pins but what may be in the chip.
  const DemoDevice& device = demoDevice();
  FaultCase fault = demoFault();
  const JumperProposal& best = demoProposals().front();
  for (const double nothing : {0.48, 0.52}) {
    IsolationInput input{device.lookup, fault.line, repairData().priors, repairData().efforts,
                         repairData().probing.meters.front()};
    for (const NodeIndex terminal : fault.line.terminals()) {
      PinTermination& behind = input.terminations.emplace_back();
      behind.pin = std::get<PinId>(fault.line.graph[terminal].object);
      behind.shares = {0.0, 0.0, 1.0};
      if (behind.pin == device.pin("U1.12")) behind.shares = {1.0 - nothing, 0.0, nothing};
    }
    fault.isolation = makeIsolation(input);
    const double chance = predictDiode(fault.isolation, placeOn(fault.isolation, best.from.at), 0).overLimit;
    REQUIRE(std::abs(chance - 0.5) < 0.045); // to both sides of an even chance, and near it
    REQUIRE((chance > 0.5) == (nothing > 0.5));
    CHECK(wantedAt(fault, best)[2].overLimit == (nothing > 0.5));
    CHECK(wantedAt(fault, best)[2].interval.has_value() == (nothing < 0.5));
  }
}

TEST_CASE("a wire may read up to twice its resistance before a joint is bad", "[casework]") {
  const JumperProposal& best = demoProposals().front();
  int checks = 0;
  for (const WorkStep& step : actionFor(demoDevice().loaded, demoFault(), best, repairData().work).steps) {
    if (!step.measure || step.measure->mode != ReadingMode::ohms || !step.measure->interval) continue;
    const StepMeasure& wanted = *step.measure;
    ++checks;
    CHECK(wanted.interval->lowest == 0.0);
    CHECK(wanted.interval->highest == Approx(2 * best.wire.resistance.value).epsilon(0.005));
  }
  CHECK(checks == 2); // before it is soldered in, and after
}

TEST_CASE("a landing is found among the places of the line by its copper", "[casework]") {
  const FaultCase& fault = demoFault();
  const JumperProposal& best = demoProposals().front();
  REQUIRE(wantedAt(fault, best)[0].comparable());
  REQUIRE(wantedAt(fault, best)[1].comparable());
  // Where it lies is of no account to a via or a pad.
  JumperProposal moved = best;
  moved.from.at.x += Length(1'000'000);
  moved.to.at.x += Length(1'000'000);
  CHECK(wantedAt(fault, moved)[0] == wantedAt(fault, best)[0]);
  CHECK(wantedAt(fault, moved)[1] == wantedAt(fault, best)[1]);
  // Its ring on the other side is another place, and may be on the other piece.
  JumperProposal under = best;
  under.from.layer = -1;
  CHECK_FALSE(wantedAt(fault, under)[0].comparable());
  JumperProposal elsewhere = best;
  elsewhere.to.copper = PadId{99'999};
  elsewhere.to.object = PinId{99'999};
  CHECK_FALSE(wantedAt(fault, elsewhere)[1].comparable());
}

TEST_CASE("a scraped landing is a place of the line that is less than 10 µm away on the same track",
          "[casework]") {
  FaultCase fault = demoFault();
  JumperProposal scraped = demoProposals().front();
  scraped.from.copper = scraped.from.object = TrackId{7};
  scraped.from.layer = 0;
  CHECK_FALSE(wantedAt(fault, scraped)[0].comparable());
  ProbePlace& place = fault.isolation.places.front();
  place.pin = {};
  place.object = TrackId{7};
  place.layer = 0;
  place.at = scraped.from.at;
  CHECK(wantedAt(fault, scraped)[0].comparable());
  place.at->x += Length(9'999);
  CHECK(wantedAt(fault, scraped)[0].comparable());
  place.at->x += Length(1);
  CHECK_FALSE(wantedAt(fault, scraped)[0].comparable());
}

TEST_CASE("where no break leads, the steps name no values", "[casework]") {
  FaultCase fault = demoFault();
  fault.suspects.ranked.clear();
  for (const StepMeasure& wanted : wantedAt(fault, demoProposals().front()))
    CHECK_FALSE(wanted.comparable());
}

TEST_CASE("a chosen proposal becomes a repair with its way, wire, net and steps", "[casework]") {
  const FaultCase& fault = demoFault();
  const JumperProposal& best = demoProposals().front();
  const RepairAction action = actionFor(demoDevice().loaded, fault, best, repairData().work);
  CHECK(action.kind == RepairKind::jumper);
  CHECK(action.target == "KEY_COL3");
  CHECK(action.reason.empty());
  REQUIRE(action.because);
  CHECK(action.because->kind == FaultKind::open);
  // Its three places are stretches of one track, and none of this track is suspected otherwise.
  CHECK(action.because->places == 1);
  PlaceName whole = fault.names.fault(fault.suspects.ranked.front().places.front());
  CHECK(whole.stretch != PlaceName::Stretch::whole);
  whole.stretch = PlaceName::Stretch::whole;
  whole.fromTenths = whole.toTenths = 0;
  CHECK(action.because->place == whole);
  REQUIRE(action.jumper);
  CHECK(action.jumper->from.at == best.from.at);
  CHECK(action.jumper->to.at == best.to.at);
  CHECK(action.jumper->way == best.way);
  CHECK(action.jumper->side == Side::top);
  CHECK(action.jumper->wire == best.wire.wire.name);
  CHECK(action.jumper->net == "KEY_COL3");
  REQUIRE(action.jumper->figures);
  CHECK(action.jumper->figures->length == best.length);
  CHECK(action.jumper->figures->tacks == best.tackPoints.size());
  CHECK(action.jumper->figures->prediction.atFrom->overLimit);
  CHECK(action.jumper->from.kind == LandingKind::tentedVia);
  CHECK(action.jumper->from.name.sort == PlaceName::Sort::via);
  CHECK(action.jumper->from.point.label == "via 963 top");
  CHECK(action.jumper->to.name.label == "C28.1");
  REQUIRE(action.steps.size() > 10);
  for (const WorkStep& step : action.steps)
    CHECK_FALSE(step.done);
  // Where something else leads, somebody named the edges.
  FaultCase byHand = fault;
  byHand.suspects.ranked.clear();
  CHECK_FALSE(actionFor(demoDevice().loaded, byHand, best, repairData().work).because);
}

TEST_CASE("landings that no good board was read at are proved by what the steps say of the bridged line",
          "[casework]") {
  const FaultCase& fault = demoFault();
  const JumperProposal& best = demoProposals().front();
  const DemoDevice& device = demoDevice();
  Job job;
  job.actions = {actionFor(device.loaded, fault, best, repairData().work)};
  job.actions.front().steps.push_back(functionCheck("keys 3, 6, 9 and Enter"));
  const ExpectedTable nothing;
  const auto points = proofPoints({job, &device.lookup, nothing, repairData()});
  REQUIRE(points.size() == 3);
  // Behind the break is all that the line has.
  const Prediction live = predictDiode(fault.isolation, placeOn(fault.isolation, best.to.at),
                                       fault.suspects.ranked.front().faultClass);
  const double room = std::max(3 * live.spread.value, 0.010);
  for (const std::size_t landing : {0u, 1u}) {
    CHECK(points[landing].why == ProofWhy::landing);
    REQUIRE(points[landing].limits);
    CHECK(points[landing].limits->lowest == Approx(live.mean.value - room).margin(0.001));
    CHECK(points[landing].limits->highest == Approx(live.mean.value + room).margin(0.001));
    CHECK(points[landing].expectedBy == ExpectedBy::workSteps);
  }
  // Good boards' values count for more.
  const auto byBoards = proofPoints({job, &device.lookup, device.expected, repairData()});
  CHECK(byBoards[1].point.pin == device.pin("C28.1"));
  CHECK(byBoards[1].expected == *device.expected.find({device.pin("J4.9"), "J4.9"}, {}));
  CHECK_FALSE(byBoards[1].limits);
}

TEST_CASE("the picture of a job shows the lines that its repairs are on", "[casework]") {
  const DemoDevice& device = demoDevice();
  const auto named = [&](const char* name) { return netNamed(device.lookup, name).value(); };
  RepairAction jumper, joint, elsewhere;
  jumper.target = "U1";
  jumper.jumper = JumperRecord{};
  jumper.jumper->net = "KEY_COL3";
  joint.target = "KEY_COL0_U";
  elsewhere.target = "U1.12"; // no net's name
  CHECK(linesOf({}, device.loaded).empty());
  CHECK(linesOf({elsewhere}, device.loaded).empty());
  CHECK(linesOf({jumper, elsewhere, joint}, device.loaded) ==
        std::vector<NetId>{named("KEY_COL3"), named("KEY_COL3_U"), named("KEY_COL0_U"), named("KEY_COL0")});
}

TEST_CASE("of two nets by one name the picture shows both lines", "[casework]") {
  DrawnBoard drawn;
  const NetId first = drawn.net("KEY"), second = drawn.net("KEY");
  RepairAction action;
  action.target = "KEY";
  CHECK(linesOf({action}, underWork(drawn.board)) == std::vector<NetId>{first, second});
}
