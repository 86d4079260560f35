#include <catch2/catch.hpp>

#include "casework/demo_device.h"
#include "netmend/casework/function_check.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/words/jumper.h"
#include "netmend/words/step.h"

using namespace netmend;
using namespace netmend::test;

namespace {

using What = KeepOutName::What;

std::string textOf(const KeepOutName& name) {
  return wordsOf(nameOf(name));
}

std::vector<std::string> textsOf(const std::vector<Said>& all) {
  std::vector<std::string> out;
  for (const Said& one : all)
    out.push_back(wordsOf(one));
  return out;
}

const JumperProposal& demoProposal() {
  static const JumperProposal found =
      proposeJumpers(demoDevice().lookup, demoFault(), suspectedCut(demoFault()).value(), repairData())
          .value()
          .proposals.front();
  return found;
}

/// A wire of 0.1 mm, 20 mm long, for 0.1 A.
WireChoice wireFor(CurrentBasis::Why why) {
  WireChoice wire;
  wire.wire.name = "enamelled copper 0.1 mm";
  wire.wire.copper = Length::fromMm(0.1);
  wire.current = fromUser(Amperes(0.1));
  wire.basis.why = why;
  wire.basis.limit = CopperLimit{Amperes(3.7), CopperLimit::Piece::track, Length::fromMm(1.2), {}};
  wire.basis.rise = Kelvins(20);
  wire.length = Length::fromMm(20);
  wire.resistance = Ohms(0.0439);
  wire.drop = Volts(0.00439);
  wire.mostDrop = Volts(0.05);
  wire.heating = Amperes(0.61);
  wire.fusing = Amperes(2.53);
  wire.mostRise = Kelvins(40);
  wire.fusingShare = 0.5;
  return wire;
}

} // namespace

TEST_CASE("What stands in a wire's way is called by its kind and reference", "[words]") {
  CHECK(textOf({What::part, ZoneKind::connector, "J4", {}}) == "connector J4");
  CHECK(textOf({What::part, ZoneKind::tallPart, "L3", {}}) == "part L3");
  CHECK(textOf({What::part, ZoneKind::shieldWall, "", {}}) == "shield wall without reference");
  CHECK(textOf({What::zone, ZoneKind::battery, "BT", {}}) == "battery zone BT");
  CHECK(textOf({What::zone, ZoneKind::antenna, "", {}}) == "antenna zone");
  CHECK(textOf({What::hole, ZoneKind::tallPart, "H1", {}}) == "hole of H1");
  CHECK(textOf({What::hole, ZoneKind::tallPart, "", mm(20, 15)}) == "hole at (20.00, 15.00) mm");
  CHECK(textOf({What::joint, ZoneKind::tallPart, "J7.2", {}}) == "joint J7.2");
  CHECK(textOf({What::boardEdge, ZoneKind::tallPart, "", {}}) == "edge of the board");
}

TEST_CASE("A landing is called by its pin and what that is, or by what it is beside", "[words]") {
  const PlaceNames places(demoDevice().lookup);
  CHECK(wordsOf(nameOf(demoProposal().from, places)) == "via 2.4 mm above J4.9");
  CHECK(wordsOf(nameOf(demoProposal().to, places)) == "C28.1 (part terminal)");
  LandingPlace old;
  old.label = "via at (12.1, 8.0) mm";
  CHECK(wordsOf(nameOf(old)) == "via at (12.1, 8.0) mm");
}

TEST_CASE("A score is told term by term", "[words]") {
  const PlaceNames places(demoDevice().lookup);
  const JumperProposal& p = demoProposal();
  const auto told = [&](const ScoreTerm& term) {
    return wordsOf(nameOf(term, p, places)) + ": " + wordsOf(figuresOf(term));
  };
  ScoreTerm term{TermKind::length, Price(14.2), Length::fromMm(14.2)};
  CHECK(told(term) == "length: 14.20 mm of wire");
  term.kind = TermKind::bends;
  term.count = 3;
  CHECK(told(term) == "bends: 3");
  term.kind = TermKind::landing;
  term.landing = LandingKind::tentedVia;
  term.point = p.from.point;
  CHECK(told(term) == "landing via 2.4 mm above J4.9: tented via");
  term.point = p.to.point;
  term.landing = LandingKind::partTerminal;
  CHECK(told(term) == "landing C28.1 (part terminal): part terminal");
  term.kind = TermKind::underMask;
  CHECK(told(term) == "mask: mask has to be scraped off first");
  term.kind = TermKind::smallPart;
  term.length = Length::fromMm(0.35);
  CHECK(told(term) == "small part: 0.35 mm wide: lifts easily");
  term.kind = TermKind::farSideUnknown;
  CHECK(told(term) == "far side unknown: may be a coupling capacitor");
  term.kind = TermKind::tightPassage;
  CHECK(told(term) == "tight passage: 0.350 mm to spare beyond the margins");
  term.kind = TermKind::marginOpened;
  term.keepOuts = {{What::part, ZoneKind::connector, "J4", {}},
                   {What::boardEdge, ZoneKind::tallPart, "", {}}};
  CHECK(told(term) == "margin opened: connector J4, edge of the board");
  term.kind = TermKind::softZone;
  term.reason = "film melts";
  CHECK(told(term) == "connector J4: 0.35 mm inside: film melts");
}

TEST_CASE("A landing that is none says why", "[words]") {
  ExcludedLanding out;
  out.cover = "SH1";
  const auto why = [&](ExcludedLanding::Why why) {
    out.why = why;
    return wordsOf(whyExcluded(out));
  };
  CHECK(why(ExcludedLanding::Why::underLid) == "under a lid");
  CHECK(why(ExcludedLanding::Why::underPart) == "under a part");
  CHECK(why(ExcludedLanding::Why::coveredByLid) == "under the lid SH1");
  CHECK(why(ExcludedLanding::Why::coveredByPart) == "under part SH1");
  CHECK(why(ExcludedLanding::Why::placeUnknown) == "its place on the board is not known");
  CHECK(why(ExcludedLanding::Why::couplingCapacitor).starts_with("coupling capacitor: "));
  CHECK(why(ExcludedLanding::Why::keptOut) == "off the board");
  out.keepOuts = {{What::part, ZoneKind::connector, "J4", {}}};
  CHECK(why(ExcludedLanding::Why::keptOut) == "inside a keep-out, or walled in by one: connector J4");
}

TEST_CASE("The current is told with where it is taken from", "[words]") {
  using Why = CurrentBasis::Why;
  const auto said = [](Why why) { return wordsOf(currentSaid(wireFor(why))); };
  CHECK(said(Why::asked) == "0.1 A as asked for");
  CHECK(said(Why::rated) == "0.1 A as the net is rated");
  CHECK(said(Why::roleDefault) == "0.1 A taken for a net of this role");
  CHECK(said(Why::copper) == "1.2 mm track carries 3.7 A (IPC-2221, 20 K): taken as 0.1 A");
  CHECK(said(Why::cappedByRole) ==
        "1.2 mm track carries 3.7 A (IPC-2221, 20 K); more than a net of this role "
        "is taken to carry: taken as 0.1 A");
  CHECK(said(Why::cappedAsSignal) == "1.2 mm track carries 3.7 A (IPC-2221, 20 K); its role is not known and "
                                     "its copper narrow, so that it counts as a signal: taken as 0.1 A");
  const auto piece = [](CopperLimit::Piece piece, const std::string& pin = {}) {
    WireChoice wire = wireFor(Why::copper);
    wire.basis.limit->piece = piece;
    wire.basis.limit->pin = pin;
    const std::string text = wordsOf(currentSaid(wire));
    return text.substr(0, text.find(" carries "));
  };
  CHECK(piece(CopperLimit::Piece::innerTrack) == "1.2 mm inner track");
  CHECK(piece(CopperLimit::Piece::via) == "via with a 1.2 mm hole");
  CHECK(piece(CopperLimit::Piece::platedHole, "J1.2") == "plated hole of J1.2 (1.2 mm)");
  CHECK(piece(CopperLimit::Piece::pad, "J1.2") == "pad of J1.2 (1.2 mm wide)");
  CHECK(piece(CopperLimit::Piece::together) == "the broken copper together");
}

TEST_CASE("A wire is chosen for reasons, and warned of by limits", "[words]") {
  WireChoice wire = wireFor(CurrentBasis::Why::asked);
  CHECK(textsOf(wireReasons(wire)) ==
        std::vector<std::string>{"0.1 A as asked for",
                                 "0.0439 ohm over 20.0 mm drops 4.39 mV of 50 mV allowed",
                                 "carries 0.61 A for a rise of 40 K; fuses at about 2.53 A"});
  CHECK(wireWarnings(wire).empty());
  wire.thinner = RefusedWire{{"enamelled copper 0.05 mm", {}, {}, {}, {}, {}},
                             {WireLimit::Why::fusing, Amperes(0.15), {}}};
  wire.thinForLanding = true;
  wire.thinnestByChoice = Length::fromMm(0.12);
  wire.landingWidth = fromUser(Length::fromMm(0.11));
  REQUIRE(wireReasons(wire).size() == 5);
  CHECK(wordsOf(wireReasons(wire)[3]) ==
        "no thinner one: enamelled copper 0.05 mm: 0.1 A is more than 50 % of "
        "its fusing current of 0.15 A");
  CHECK(wordsOf(wireReasons(wire)[4]) == "thinner than 0.12 mm because a landing is only 0.11 mm wide");
  wire.thinner->limit = {WireLimit::Why::heating, Amperes(0.08), {}};
  CHECK(wordsOf(wireReasons(wire)[3]).ends_with("0.1 A would warm it by more than 40 K, which 0.08 A does"));
  wire.tooThin = WireLimit{WireLimit::Why::drop, {}, Volts(0.0612)};
  wire.wideForLanding = true;
  wire.roleWarning = "radio line";
  CHECK(textsOf(wireWarnings(wire)) ==
        std::vector<std::string>{
            "no wire of the table carries 0.1 A over 20.0 mm; this one is too thin: it would "
            "drop 61.2 mV, more than the 50 mV allowed",
            "the wire is 0.1 mm thick and the narrower landing 0.11 mm wide: choose another "
            "landing if you can",
            "radio line"});
}

TEST_CASE("A way says why it is not straight, and a proposal what sets it apart", "[words]") {
  const PlaceNames places(demoDevice().lookup);
  Detour detour;
  CHECK(wordsOf(whyNotStraight(detour)) == "the way is straight between its landings");
  detour = {false, Length::fromMm(12.346), {}};
  CHECK(wordsOf(whyNotStraight(detour)) ==
        "straight it would be 12.35 mm, but too near to the rounded corner of a margin");
  for (const char* reference : {"U1", "U2", "U3", "U4"})
    detour.near.push_back({What::part, ZoneKind::tallPart, reference, {}});
  CHECK(wordsOf(whyNotStraight(detour)).ends_with("too near to part U1, part U2, part U3, part U4"));
  detour.near.push_back({What::part, ZoneKind::tallPart, "U5", {}});
  CHECK(wordsOf(whyNotStraight(detour)).ends_with("part U4 and 1 more"));

  JumperProposal p = demoProposal();
  const auto apart = [&](const Difference& difference) {
    p.difference = difference;
    return wordsOf(differenceSaid(p, places));
  };
  CHECK(apart({.best = true}) == "the best by its score");
  CHECK(apart({.side = Side::top}) == "on the top side");
  CHECK(apart({.side = Side::bottom}) == "on the bottom side");
  CHECK(apart({.from = true}) == "from via 2.4 mm above J4.9");
  CHECK(apart({.to = true}) == "to C28.1 (part terminal)");
  CHECK(apart({.from = true, .to = true}) == "from via 2.4 mm above J4.9 to C28.1 (part terminal)");
  CHECK(apart({.wayRound = true}) == "another way round");
  CHECK(apart({}).empty());
}

TEST_CASE("What has to be minded at landings and on the way is said one by one", "[words]") {
  const PlaceNames places(demoDevice().lookup);
  JumperProposal p = demoProposal();
  p.from.notes = {LandingNote::viaMaskUnknown, LandingNote::marginOpened};
  ScoreTerm opened{TermKind::marginOpened, Price(3), Length::fromMm(0.4)};
  opened.keepOuts = {{What::part, ZoneKind::connector, "J4", {}}};
  p.from.terms.push_back(opened);
  p.to.notes = {LandingNote::bypass,      LandingNote::couplingAllowed, LandingNote::smallPart,
                LandingNote::scrapeTrack, LandingNote::farSideUnknown,  LandingNote::legOnly};
  p.notes = {{ProposalNote::Kind::guessedBodies, {{What::part, ZoneKind::tallPart, "U1", {}}}, {}, {}},
             {ProposalNote::Kind::outlineGuessed, {}, {}, {}},
             {ProposalNote::Kind::zoneSetAside, {{What::zone, ZoneKind::shieldWall, "W", {}}}, {}, "a notch"},
             {ProposalNote::Kind::overHoles, {{What::hole, ZoneKind::tallPart, "H1", {}}}, {}, {}},
             {ProposalNote::Kind::overBareCopper,
              {},
              {{demoDevice().pin("J4.9"), {}}, {ViaId{963}, mm(19.5, 9)}},
              {}}};
  CHECK(textsOf(notesOn(p, places)) ==
        std::vector<std::string>{
            "whether mask covers this via is not known",
            "via 2.4 mm above J4.9: inside the margin of connector J4; opened there for 0.40 mm",
            "bypass capacitor: take its live side, C28.1",
            "coupling capacitor, taken as right: only this end, C28.1",
            "small part: fix the wire within 2 mm of the joint before anything pulls on it",
            "scrape the mask off this track",
            "the capacitor's other side is not known: make sure which end is this one",
            "the leg itself, not its pad: the joint between them is part of the break",
            "passes bodies that are only guessed, look before you lay the wire: part U1",
            "the board's outline is not known: a box round everything drawn was used",
            "shield wall zone W set aside: a notch",
            "no way keeps clear of these holes and joints, sleeve the wire over them: hole of H1",
            "runs over bare copper of other nets, its insulation must be whole there: J4.9, via 2.4 mm above "
            "J4.9"});
}

TEST_CASE("Why there are no more proposals is said", "[words]") {
  JumperProposals found;
  const auto why = [&](WhyFewer why) {
    found.whyFewer = why;
    return wordsOf(whyFewer(found));
  };
  CHECK(why(WhyFewer::asManyAsWanted).empty());
  CHECK(why(WhyFewer::nothingDiffersEnough) == "no further landing or way differs enough from these");
  CHECK(why(WhyFewer::noLanding).starts_with("neither side of the break has a landing"));
  CHECK(why(WhyFewer::oneSideWithout).starts_with("one side of the break has no landing"));
  CHECK(why(WhyFewer::notOnOneSide) ==
        "the two sides of the break have no landing on the same side of the board");
  found.closedBy = {{What::zone, ZoneKind::shieldWall, "W", {}}};
  CHECK(why(WhyFewer::closed) == "every way is closed; in between lie shield wall zone W");
  CHECK(notesOn(found).empty());
  found.onlyJoints = found.outlineGuessed = true;
  CHECK(notesOn(found).size() == 2);
}

TEST_CASE("A step's gaps are filled by its repair, and what a person wrote stays", "[words]") {
  RepairAction jumper = actionFor(demoDevice().loaded, demoFault(), demoProposal(), repairData().work);
  WireFigures& figures = *jumper.jumper->figures;
  figures.length = Length::fromMm(32.46);
  figures.cutLength = Length::fromMm(41.2);
  figures.tacks = 12;
  figures.current = Amperes(0.1);
  figures.drop = Volts(0.00312);
  figures.resistance = Ohms(0.2841);
  figures.prediction = {ExpectedReading{true, {}, {}}, ExpectedReading{false, Volts(0.4504), Volts(0.0121)},
                        std::nullopt};
  WorkStep step;
  const auto text = [&](const std::string& text) {
    step.text = text;
    return wordsOf(stepSaid(step, jumper));
  };
  CHECK(text("Tin {to} and {from}.") == "Tin C28.1 (part terminal) and via 2.4 mm above J4.9.");
  CHECK(text("{side}: {length}, cut {cut_length}, {tacks} spots") == "top: 32.5 mm, cut 42 mm, 12 spots");
  CHECK(text("{current}, {drop}, {resistance}") == "0.1 A, 3.12 mV, 0.284 ohm");
  CHECK(text("{expected_from} | {expected_to} | {expected_bridged}") ==
        "OL in diode mode | 0.450 V ± 0.012 V in diode mode | the value of a good board");
  figures.prediction = {};
  CHECK(text("{expected_from}") == "the value that the rest of the line gives there");
  figures.stripping = "";
  CHECK(text("{stripping}; {wire}") == "strip its ends; " + demoProposal().wire.wire.name);
  CHECK(text("{nobody}") == "");
  // An older book's sentence is whole, whatever stands in it.
  jumper.jumper->figures.reset();
  CHECK(text("Tin {to} as found") == "Tin {to} as found");

  RepairAction joint;
  joint.target = "J4.9";
  joint.reason = "cracked {x}";
  step.text = "Resolder {target}: {reason}; then {points} must read {expected}";
  CHECK(wordsOf(stepSaid(step, joint)) ==
        "Resolder J4.9: cracked {x}; then J4.9 must read what a good board reads there");
  step.expected = "{expected}";
  step.otherwise = "Otherwise {target} again.";
  CHECK(wordsOf(expectedSaid(step, joint)) == "what a good board reads there");
  CHECK(wordsOf(otherwiseSaid(step, joint)) == "Otherwise J4.9 again.");
  CHECK(expectedSaid(WorkStep{}, joint).empty());
  const WorkStep function = functionCheck("keys {target}");
  CHECK(wordsOf(stepSaid(function, joint)) == "keys {target}");
  CHECK(wordsOf(expectedSaid(function, joint)) == "It works as on a good device");
}

TEST_CASE("A check's note is what it read and what somebody wrote", "[words]") {
  WorkStep step;
  CHECK(noteSaid(step).empty());
  step.note = "slipped once";
  CHECK(wordsOf(noteSaid(step)) == "slipped once");
  step.measure = StepMeasure{};
  step.read = CheckRead{0.462, StepOutcome::agrees};
  CHECK(wordsOf(noteSaid(step)) == "0.462 V, as it must be; slipped once");
  step.read = CheckRead{std::nullopt, StepOutcome::disagrees};
  CHECK(wordsOf(noteSaid(step)) == "OL, NOT as it must be; slipped once");
  step.done = true; // all the same
  CHECK(wordsOf(noteSaid(step)) == "OL, NOT as it must be; overruled: slipped once");
  step.done = false;
  step.read = CheckRead{0.462, StepOutcome::notCompared};
  step.note.clear();
  CHECK(wordsOf(noteSaid(step)) == "0.462 V");
}

TEST_CASE("A repair says why it is made: what was found, what somebody wrote, or that edges were named",
          "[words]") {
  RepairAction action;
  CHECK(reasonSaid(action).empty());
  action.reason = "corroded";
  CHECK(wordsOf(reasonSaid(action)) == "corroded");
  action.because = FoundFault{FaultKind::shortToGround, {}, 0};
  CHECK(wordsOf(reasonSaid(action)) == "short to ground somewhere on the line");
  action = {};
  action.jumper = JumperRecord{};
  CHECK(wordsOf(reasonSaid(action)) == "break at the edges named by hand");
}
