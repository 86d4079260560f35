#include <catch2/catch.hpp>

#include <fmt/format.h>

#include "casework/demo_device.h"
#include "netmend/jobbook/record.h"
#include "netmend/words/fault.h"
#include "netmend/words/place.h"

using namespace netmend;
using namespace netmend::test;

namespace {

JobEvidence readAt(const std::string& pin, double value, const Prediction& foretold, double bits) {
  JobEvidence out;
  out.at.sort = PlaceName::Sort::pin;
  out.at.label = pin;
  out.value = value;
  out.foretold = {Foretold::What::volts, foretold, {}, {}};
  out.bits = bits;
  return out;
}

std::string weight(double bits) {
  const std::string text =
      wordsOf(evidenceSaid(readAt("J4.11", 0.471, {0.0, Volts(0.45), Volts(0.01)}, bits)));
  return text.substr(text.rfind(": ") + 2);
}

std::string expected(double overLimit) {
  const std::string text =
      wordsOf(evidenceSaid(readAt("J4.11", 0.471, {overLimit, Volts(0.45), Volts(0.01)}, 0.0)));
  const auto from = text.find("here ") + 5;
  return text.substr(from, text.rfind(": ") - from);
}

std::string probe(double open, double bits) {
  NextProbe next;
  next.openBits = open;
  ProbeProposal proposal;
  proposal.bits = bits;
  return wordsOf(probeLine(next, proposal));
}

} // namespace

TEST_CASE("A reading says for and against a suspect what was read, what was expected, and how much it tells",
          "[words]") {
  CHECK(wordsOf(evidenceSaid(readAt("J4.11", 0.471, {0.0, Volts(0.453), Volts(0.008)}, -5.1))) ==
        "J4.11 read 0.471 V; here 0.453 ± 0.008 V is expected: 34 times less likely");
  JobEvidence between = readAt("J4.11", 0.3, {}, 2.0);
  between.mode = ReadingMode::continuity;
  between.other = PlaceName{};
  between.other->sort = PlaceName::Sort::pad;
  between.other->label = "U1.7";
  between.foretold = {Foretold::What::ohms, {}, Ohms(0.21), Ohms(0.3)};
  CHECK(wordsOf(evidenceSaid(between)) ==
        "J4.11 to pad of U1.7 read 0.3 Ω; here 0.21 ± 0.3 Ω is expected: 4.0 times likelier");
  between.value.reset();
  between.foretold.what = Foretold::What::overLimit;
  CHECK(wordsOf(evidenceSaid(between)) ==
        "J4.11 to pad of U1.7 read OL; here OL is expected: 4.0 times likelier");
  between.foretold.what = Foretold::What::anything;
  CHECK(wordsOf(evidenceSaid(between)).find("; here anything is possible: ") != std::string::npos);
  between.foretold.what = Foretold::What::notSaid;
  CHECK(wordsOf(evidenceSaid(between)).find("; here as computed from what is behind the pins: ") !=
        std::string::npos);
  JobEvidence warm = readAt("J4.11", 0.471, {}, 1.0);
  warm.temperature = Celsius(45);
  CHECK(wordsOf(evidenceSaid(warm)).starts_with("J4.11 read 0.471 V, at 25 °C 0."));
  warm.temperature = Celsius(25);
  CHECK(wordsOf(evidenceSaid(warm)).starts_with("J4.11 read 0.471 V; here "));
}

TEST_CASE("Weights are told in times, from what is nothing to what is beyond counting", "[words]") {
  CHECK(weight(0.070) == "as likely as before"); // 2^0.0704 is 1.05
  CHECK(weight(0.071) == "1.1 times likelier");
  CHECK(weight(-0.071) == "1.1 times less likely");
  CHECK(weight(3.3) == "9.8 times likelier");
  CHECK(weight(3.33) == "10 times likelier");
  CHECK(weight(9.96) == "996 times likelier");
  CHECK(weight(9.97) == "more than 1000 times likelier"); // 2^9.966 is 1000
  CHECK(weight(-9.97) == "more than 1000 times less likely");
}

TEST_CASE("OL is told of where it is not out of the question, alone where it is all but certain", "[words]") {
  CHECK(expected(0.0) == "0.450 ± 0.010 V is expected");
  CHECK(expected(0.1) == "0.450 ± 0.010 V is expected");
  CHECK(expected(0.101) == "0.450 ± 0.010 V is expected, or OL (10 %)");
  CHECK(expected(0.9) == "0.450 ± 0.010 V is expected, or OL (90 %)");
  CHECK(expected(0.901) == "OL is expected");
}

TEST_CASE("A suspect in a job is explained by its most telling readings", "[words]") {
  JobSuspect suspect;
  suspect.fault.kind = FaultKind::open;
  suspect.fault.place.sort = PlaceName::Sort::joint;
  suspect.fault.place.label = "J4.9";
  suspect.fault.places = 1;
  suspect.probability = 0.874;
  suspect.prior = 0.125;
  suspect.evidence = {readAt("TP3", 0.523, {0.0, Volts(0.52), Volts(0.01)}, 4.0)};
  CHECK(wordsOf(explanationOf(suspect)) ==
        "87.4 %: open: joint of J4.9. Before any reading 12.5 %. TP3 read 0.523 V; here 0.520 ± 0.010 V is "
        "expected: 16 times likelier.");
  suspect.more = 1;
  CHECK(wordsOf(explanationOf(suspect)).ends_with(" 1 more reading tells less."));
  suspect.more = 3;
  suspect.samplingError = 0.03;
  CHECK(wordsOf(explanationOf(suspect)).ends_with(" 3 more readings tell less."));
  suspect.samplingError = 0.0301;
  CHECK(wordsOf(explanationOf(suspect))
            .ends_with(" Shares on a line of this size are worked out to about 3 % only."));
  CHECK(wordsOf(nameOf(suspect)) == "open: joint of J4.9");
  // Of an older book it is word for word what stands there.
  suspect.what = "open in track";
  suspect.explanation = "J4.9 read OL {}";
  CHECK(wordsOf(nameOf(suspect)) == "open in track");
  CHECK(wordsOf(explanationOf(suspect)) == "J4.9 read OL {}");
}

TEST_CASE("Shares are told to three figures, and not as certain", "[words]") {
  CHECK(wordsOf(shareSaid(0.5)) == "50 %");
  CHECK(wordsOf(shareSaid(0.12345)) == "12.3 %");
  CHECK(wordsOf(shareSaid(0.99949)) == "99.9 %");
  CHECK(wordsOf(shareSaid(0.9995)) == "> 99.9 %");
  CHECK(wordsOf(shareSaid(0.0005)) == "0.05 %");
  CHECK(wordsOf(shareSaid(0.00049)) == "< 0.1 %");
}

TEST_CASE("One line says what a probe is worth", "[words]") {
  CHECK(probe(1.0, 0.81) == "Settles it, most likely.");
  CHECK(probe(1.0, 0.79) == "Halves what is left.");
  CHECK(probe(5.0, 2.85) == "Cuts what is left to a tenth."); // 2^-2.8365 is 0.14
  CHECK(probe(5.0, 2.82) == "Cuts what is left to a fifth.");
  CHECK(probe(5.0, 1.96) == "Cuts what is left to a fifth."); // 2^-1.9434 is 0.26
  CHECK(probe(5.0, 1.93) == "Cuts what is left to a third.");
  CHECK(probe(4.0, 1.33) == "Cuts what is left to a third."); // 2^-1.322 is 0.4
  CHECK(probe(4.0, 1.31) == "Halves what is left.");
  CHECK(probe(4.0, 0.63) == "Halves what is left."); // 2^-0.6215 is 0.65
  CHECK(probe(4.0, 0.61) == "Takes a quarter of what is left.");
  CHECK(probe(4.0, 0.16) == "Takes a quarter of what is left."); // 2^-0.152 is 0.9
  CHECK(probe(4.0, 0.14) == "Tells a little.");
  NextProbe next;
  next.why = ProbeAdvice::readAgain;
  ProbeProposal again;
  again.again = true;
  CHECK(wordsOf(probeLine(next, again)) == "Take this reading again.");
}

TEST_CASE("Advice is given with its figures", "[words]") {
  const FaultCase& fault = demoFault();
  NextProbe next;
  next.openBits = 2.0;
  next.bestGuess = 0.5;
  next.wrongRepair = Seconds(1800);
  const auto reasons = [&](ProbeAdvice why) {
    next.why = why;
    return wordsOf(adviceReasons(fault.isolation, fault.names, next));
  };
  const std::string state = "as many as 4.0 equally likely repairs are left and the best guess holds 50.0 %";
  CHECK(reasons(ProbeAdvice::nothingReachable) == "no place of this line can be reached; " + state);
  CHECK(reasons(ProbeAdvice::nothingTelling) == "no reachable place would tell anything more; " + state);
  CHECK(reasons(ProbeAdvice::worthItsTime) ==
        state + "; a wrong repair costs 30 min, on average 15 min from here; probing on is worth its time");
  next.ranked.resize(1);
  next.ranked.front().bits = 1.0;
  next.ranked.front().effort = Seconds(15);
  CHECK(reasons(ProbeAdvice::notWorthItsTime)
            .ends_with("no reachable probe is worth its time (the best narrows 4.0 possible repairs down to "
                       "2.0 in 15 s)"));
  next.wrongRepair = Seconds(599);
  CHECK(reasons(ProbeAdvice::worthItsTime).find("costs 10.0 min, on average 5.0 min") != std::string::npos);
  next.standing = StandingOverLimit{0, Volts(0.52), false};
  const std::string where = wordsOf(nameOf(fault.names.probe(fault.isolation.observations[0].place)));
  CHECK(reasons(ProbeAdvice::readAgain) ==
        where + " read OL, but good boards read 0.520 V there: take this reading again before anything else");
}

TEST_CASE("A probe's reasons name the mode, the places and what is to be expected", "[words]") {
  const FaultCase& fault = demoFault();
  NextProbe next;
  next.openBits = 2.0;
  ProbeProposal probe;
  probe.bits = 1.0;
  probe.effort = Seconds(15);
  probe.expected = {0.5, Volts(0.65), Volts(0.004)};
  const std::string place = wordsOf(nameOf(fault.names.probe(0)));
  const std::string narrows = ": narrows 4.0 possible repairs down to 2.0 in 15 s";
  const auto reasons = [&] { return wordsOf(probeReasons(fault.names, next, probe)); };
  CHECK(reasons() ==
        "diode mode at " + place + narrows + "; OL is to be expected with 50 %, else 0.650 ± 0.004 V");
  probe.expected.overLimit = 0.995;
  CHECK(reasons().ends_with("; OL is to be expected with 100 %"));
  probe.again = true;
  CHECK(reasons().starts_with("diode mode at " + place + " once more, lest the probe had slipped: "));
  probe.mode = ReadingMode::continuity;
  probe.other = 1;
  const std::string other = wordsOf(nameOf(fault.names.probe(1)));
  CHECK(reasons() == "continuity from " + place + " to " + other + narrows);
  probe.mode = ReadingMode::ohms;
  CHECK(reasons() == "resistance from " + place + " to " + other + narrows);
}

TEST_CASE("Readings that do not fit are named with what speaks against them", "[words]") {
  FaultCase fault = demoFault();
  fault.suspects.contradictions = {{0, {Foretold::What::overLimit, {}, {}, {}}, 0.874}};
  fault.suspects.againstSound = StandingOverLimit{0, Volts(0.52), true};
  const Observation& first = fault.isolation.observations[0];
  const std::string where = wordsOf(nameOf(fault.names.probe(first.place)));
  const std::string leading =
      wordsOf(nameOf(fault.isolation.classes[fault.suspects.ranked.front().faultClass], fault.names));
  const auto again = readingsToTakeAgain(fault.isolation, fault.names, fault.suspects);
  REQUIRE(again.size() == 2);
  CHECK(wordsOf(again[0]) == where + " read OL, but OL is expected if it is \"" + leading +
                                 "\": the probe may have slipped (87 %)");
  CHECK(wordsOf(again[1]) == where +
                                 " read OL, but good boards read 0.520 V there: if the probe had slipped, "
                                 "the line may be sound");
}

TEST_CASE("What is not known of a line is said with what it costs", "[words]") {
  using Kind = LineNotice::Kind;
  CHECK(wordsOf(noticeSaid({Kind::unknownWays, 0, 0.374})).find(" holds 37 % of the chances: ") !=
        std::string::npos);
  CHECK(wordsOf(noticeSaid({Kind::noKnownGood, 0, 0.0, Volts(0.06), Volts(0.009)}))
            .ends_with("about 60 mV; one value from a good board would make that about 9 mV"));
  CHECK(wordsOf(noticeSaid({Kind::onePin})).starts_with("only one pin of this line is known"));
  CHECK(wordsOf(noticeSaid({Kind::noDiodeMode})) == "the meter has no diode mode: only resistances are used");
  CHECK(wordsOf(noticeSaid({Kind::knownGoodAstray})) ==
        "a known-good value is for a pin that is not on this line");
}

TEST_CASE("A reading that was not used says why", "[words]") {
  SetAside aside;
  aside.reading.point.label = "J7.1";
  aside.reading.other.label = "U9.1";
  aside.reading.mode = ReadingMode::milliohms;
  const auto why = [&](SetAsideWhy why) {
    aside.why = why;
    return wordsOf(setAsideSaid(aside));
  };
  CHECK(why(SetAsideWhy::notOnLine) == "J7.1 is not a place on this line");
  CHECK(why(SetAsideWhy::otherLeadElsewhere) ==
        "the other lead is at U9.1, neither on ground nor on this line");
  CHECK(why(SetAsideWhy::modeToGround) == "milliohms to ground is not used");
  CHECK(why(SetAsideWhy::mode) == "readings of mode \"milliohms\" are not used");
  CHECK(why(SetAsideWhy::notANumber) == "the value is not a number");
  CHECK(why(SetAsideWhy::otherCondition) == "taken in another condition than the expected values hold for");
  CHECK(why(SetAsideWhy::rising) == "still rising: take it again when it has settled");
  CHECK(why(SetAsideWhy::diodeFromPointToPoint) == "diode mode from point to point is not used");
  CHECK(why(SetAsideWhy::noDiodeMode) == "the meter has no diode mode");
  CHECK(why(SetAsideWhy::negativeResistance) == "a negative resistance");
}

TEST_CASE("A job keeps six readings of a suspect, and the number of the others", "[words]") {
  FaultCase fault = demoFault();
  Suspect suspect = fault.suspects.ranked.front();
  REQUIRE_FALSE(suspect.evidence.empty());
  suspect.evidence.resize(8, suspect.evidence.front());
  const JobSuspect kept = toJobSuspect(fault.isolation, fault.names, suspect);
  CHECK(kept.evidence.size() == 6);
  CHECK(kept.more == 2);
  CHECK(kept.probability == suspect.probability);
  CHECK(kept.prior == suspect.prior);
  CHECK(kept.fault == toFoundFault(fault.isolation.classes[suspect.faultClass], fault.names));
  CHECK(kept.way == suspect.places.front().way);
  suspect.evidence.resize(6);
  CHECK(toJobSuspect(fault.isolation, fault.names, suspect).more == 0);
}
