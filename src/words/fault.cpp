#include "netmend/words/fault.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "joined.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/place.h"
#include "netmend/words/reading.h"

namespace netmend {

namespace {

Said whereSaid(const LineNames& names, const Observation& observation) {
  if (!observation.other) return nameOf(names.probe(observation.place));
  return said(pattern("core", "{} to {}"), nameOf(names.probe(observation.place)),
              nameOf(names.probe(*observation.other)));
}

/// `0.651 V`, or with what is compared where the board was not at 25 °C.
Said comparedSaid(const Reading& reading) {
  const std::string text = readingText(reading.value, reading.mode);
  const std::string atBench = readingText(valueAtBenchTemperature(reading), reading.mode);
  return text == atBench ? asItIs(text) : said(pattern("core", "{}, at 25 °C {}"), text, atBench);
}

Said predictionSaid(const Prediction& expected) {
  if (expected.overLimit > 0.9) return pattern("core", "OL is expected");
  const auto volts = fmt::format("{:.3f} ± {:.3f} V", expected.mean.value, expected.spread.value);
  if (expected.overLimit <= 0.1) return said(pattern("core", "{} is expected"), volts);
  return said(pattern("core", "{} is expected, or OL ({} %)"), volts,
              fmt::format("{:.0f}", 100.0 * expected.overLimit));
}

Said foretoldSaid(const Foretold& foretold) {
  switch (foretold.what) {
  case Foretold::What::anything:
    return pattern("core", "anything is possible");
  case Foretold::What::overLimit:
    return pattern("core", "OL is expected");
  case Foretold::What::ohms:
    return said(pattern("core", "{} is expected"),
                fmt::format("{:.2g} ± {:.2g} Ω", foretold.ohms.value, foretold.ohmsSpread.value));
  case Foretold::What::volts:
    return predictionSaid(foretold.prediction);
  case Foretold::What::notSaid:
    break;
  }
  return pattern("core", "as computed from what is behind the pins");
}

/// How much likelier a reading makes a suspect than the others.
Said weightSaid(double bits) {
  constexpr double mostTimes = 1000.0;
  const double times = std::exp2(std::abs(bits));
  if (times < 1.05) return pattern("core", "as likely as before");
  const bool likelier = bits >= 0.0;
  if (times > mostTimes) {
    const auto most = fmt::format("{:.0f}", mostTimes);
    return likelier ? said(pattern("core", "more than {} times likelier"), most)
                    : said(pattern("core", "more than {} times less likely"), most);
  }
  const auto figure = fmt::format("{:.{}f}", times, times < 10.0 ? 1 : 0);
  return likelier ? said(pattern("core", "{} times likelier"), figure)
                  : said(pattern("core", "{} times less likely"), figure);
}

Said standingSaid(const Isolation& isolation, const LineNames& names, const StandingOverLimit& standing) {
  return said(pattern("core", "{} read OL, but good boards read {} V there"),
              nameOf(names.probe(isolation.observations[standing.observation].place)),
              fmt::format("{:.3f}", standing.good.value));
}

/// An entropy as so many equally likely repairs: what people can picture.
double repairsOf(double bits) {
  return std::exp2(std::max(0.0, bits));
}

Said narrowsSaid(double open, const ProbeProposal& probe) {
  return said(pattern("core", "narrows {} possible repairs down to {} in {} s"),
              fmt::format("{:.1f}", repairsOf(open)), fmt::format("{:.1f}", repairsOf(open - probe.bits)),
              fmt::format("{:.0f}", probe.effort.value));
}

std::string minutes(double seconds) {
  return fmt::format("{:.{}f}", seconds / 60.0, seconds < 600.0 ? 1 : 0);
}

} // namespace

Said shareSaid(double probability) {
  if (probability >= 0.9995) return asItIs("> 99.9 %");
  return asItIs(probability < 0.0005 ? "< 0.1 %" : fmt::format("{:.3g} %", 100.0 * probability));
}

Said headlineOf(const FoundFault& fault) {
  switch (fault.kind) {
  case FaultKind::sound:
    return pattern("core", "the line is sound");
  case FaultKind::noneOfThese:
    return pattern("core", "none of these");
  case FaultKind::shortToGround:
    return pattern("core", "short to ground somewhere on the line");
  case FaultKind::open:
  case FaultKind::deadPin:
    break;
  }
  Said name = nameOf(fault.place);
  return fault.kind == FaultKind::open ? said(pattern("core", "open: {}"), std::move(name)) : name;
}

Said othersSaid(const FoundFault& fault) {
  if (fault.places <= 1 || (fault.kind != FaultKind::open && fault.kind != FaultKind::deadPin)) return {};
  return saidCount(
      counted("core", "or {n} more place that reads the same", "or {n} more places that read the same"),
      static_cast<std::int64_t>(fault.places - 1));
}

Said nameOf(const FoundFault& fault) {
  Said others = othersSaid(fault);
  return others.empty() ? headlineOf(fault)
                        : said(pattern("core", "{}, {}"), headlineOf(fault), std::move(others));
}

Said nameOf(const FaultClass& faultClass, const LineNames& names) {
  return nameOf(toFoundFault(faultClass, names));
}

Said evidenceSaid(const JobEvidence& evidence) {
  Reading reading;
  reading.mode = evidence.mode;
  reading.value = evidence.value;
  reading.condition.temperature = evidence.temperature;
  const Said where = evidence.other
                         ? said(pattern("core", "{} to {}"), nameOf(evidence.at), nameOf(*evidence.other))
                         : nameOf(evidence.at);
  return said(pattern("core", "{} read {}; here {}: {}"), where, comparedSaid(reading),
              foretoldSaid(evidence.foretold), weightSaid(evidence.bits));
}

Said nameOf(const JobSuspect& suspect) {
  return suspect.what.empty() ? nameOf(suspect.fault) : asItIs(suspect.what);
}

Said explanationOf(const JobSuspect& suspect) {
  if (!suspect.what.empty()) return asItIs(suspect.explanation);
  Said out = said(pattern("core", "{}: {}. Before any reading {}."), shareSaid(suspect.probability),
                  nameOf(suspect.fault), shareSaid(suspect.prior));
  const auto add = [&](Said next) { out = said(pattern("core", "{} {}."), std::move(out), std::move(next)); };
  for (const JobEvidence& one : suspect.evidence)
    add(evidenceSaid(one));
  if (suspect.more > 0)
    add(saidCount(counted("core", "{n} more reading tells less", "{n} more readings tell less"),
                  static_cast<std::int64_t>(suspect.more)));
  constexpr double worthSaying = 0.03;
  if (suspect.samplingError > worthSaying)
    add(said(pattern("core", "Shares on a line of this size are worked out to about {} % only"),
             fmt::format("{:.0f}", 100.0 * suspect.samplingError)));
  return out;
}

std::vector<Said> readingsToTakeAgain(const Isolation& isolation, const LineNames& names,
                                      const Suspects& suspects) {
  std::vector<Said> out;
  for (const Contradiction& one : suspects.contradictions) {
    const Observation& observation = isolation.observations[one.observation];
    const FaultClass& leading = isolation.classes[suspects.ranked.front().faultClass];
    out.push_back(
        said(pattern("core", "{} read {}, but {} if it is \"{}\": the probe may have slipped ({} %)"),
             whereSaid(names, observation), comparedSaid(observation.reading), foretoldSaid(one.foretold),
             nameOf(leading, names), fmt::format("{:.0f}", 100.0 * one.slipped)));
  }
  if (suspects.againstSound)
    out.push_back(said(pattern("core", "{}: if the probe had slipped, the line may be sound"),
                       standingSaid(isolation, names, *suspects.againstSound)));
  return out;
}

Said probeLine(const NextProbe& next, const ProbeProposal& probe) {
  if (next.why == ProbeAdvice::readAgain && probe.again) return pattern("core", "Take this reading again.");
  const double left = repairsOf(next.openBits - probe.bits) / repairsOf(next.openBits);
  if (next.openBits - probe.bits < 0.2) return pattern("core", "Settles it, most likely.");
  // The nearest by ratio.
  if (left < 0.14) return pattern("core", "Cuts what is left to a tenth.");
  if (left < 0.26) return pattern("core", "Cuts what is left to a fifth.");
  if (left < 0.4) return pattern("core", "Cuts what is left to a third.");
  if (left < 0.65) return pattern("core", "Halves what is left.");
  if (left < 0.9) return pattern("core", "Takes a quarter of what is left.");
  return pattern("core", "Tells a little.");
}

Said probeReasons(const LineNames& names, const NextProbe& next, const ProbeProposal& probe) {
  const Said figures = narrowsSaid(next.openBits, probe);
  if (probe.other)
    return said(probe.mode == ReadingMode::continuity ? pattern("core", "continuity from {} to {}: {}")
                                                      : pattern("core", "resistance from {} to {}: {}"),
                nameOf(names.probe(probe.place)), nameOf(names.probe(*probe.other)), figures);
  const auto overLimit = fmt::format("{:.0f}", 100.0 * probe.expected.overLimit);
  const Said expects =
      probe.expected.overLimit < 0.995
          ? said(pattern("core", "OL is to be expected with {} %, else {} V"), overLimit,
                 fmt::format("{:.3f} ± {:.3f}", probe.expected.mean.value, probe.expected.spread.value))
          : said(pattern("core", "OL is to be expected with {} %"), overLimit);
  return said(probe.again ? pattern("core", "diode mode at {} once more, lest the probe had slipped: {}; {}")
                          : pattern("core", "diode mode at {}: {}; {}"),
              nameOf(names.probe(probe.place)), figures, expects);
}

Said adviceReasons(const Isolation& isolation, const LineNames& names, const NextProbe& next) {
  if (next.why == ProbeAdvice::readAgain && next.standing)
    return said(pattern("core", "{}: take this reading again before anything else"),
                standingSaid(isolation, names, *next.standing));
  const Said state =
      said(pattern("core", "as many as {} equally likely repairs are left and the best guess holds {} %"),
           fmt::format("{:.1f}", repairsOf(next.openBits)), fmt::format("{:.1f}", 100.0 * next.bestGuess));
  if (next.why == ProbeAdvice::nothingReachable)
    return joined({pattern("core", "no place of this line can be reached"), state});
  if (next.why == ProbeAdvice::nothingTelling)
    return joined({pattern("core", "no reachable place would tell anything more"), state});
  const Said costs =
      said(pattern("core", "a wrong repair costs {} min, on average {} min from here"),
           minutes(next.wrongRepair.value), minutes(next.wrongRepair.value * (1.0 - next.bestGuess)));
  if (next.why == ProbeAdvice::notWorthItsTime)
    return joined({state, costs,
                   said(pattern("core", "no reachable probe is worth its time (the best {})"),
                        narrowsSaid(next.openBits, next.ranked.front()))});
  return joined({state, costs, pattern("core", "probing on is worth its time")});
}

Said noticeSaid(const LineNotice& notice) {
  switch (notice.kind) {
  case LineNotice::Kind::unknownWays:
    return said(pattern("core",
                        "copper whose way nobody has seen holds {} % of the chances: there a break is "
                        "found between pins, not along the track; drawing that way would say where"),
                fmt::format("{:.0f}", 100.0 * notice.share));
  case LineNotice::Kind::knownGoodAstray:
    return pattern("core", "a known-good value is for a pin that is not on this line");
  case LineNotice::Kind::noKnownGood:
    return said(pattern("core",
                        "no good board's value is known on this line: readings are predicted to about "
                        "{} mV; one value from a good board would make that about {} mV"),
                fmt::format("{:.0f}", 1e3 * notice.spread.value),
                fmt::format("{:.0f}", 1e3 * notice.spreadThen.value));
  case LineNotice::Kind::onePin:
    return pattern("core", "only one pin of this line is known: a break can not be placed; entering the pins "
                           "that it leads to would make it possible");
  case LineNotice::Kind::noDiodeMode:
    break;
  }
  return pattern("core", "the meter has no diode mode: only resistances are used");
}

Said setAsideSaid(const SetAside& aside) {
  switch (aside.why) {
  case SetAsideWhy::notANumber:
    return pattern("core", "the value is not a number");
  case SetAsideWhy::otherCondition:
    return pattern("core", "taken in another condition than the expected values hold for");
  case SetAsideWhy::rising:
    return pattern("core", "still rising: take it again when it has settled");
  case SetAsideWhy::notOnLine:
    return said(pattern("core", "{} is not a place on this line"), aside.reading.point.label);
  case SetAsideWhy::otherLeadElsewhere:
    return said(pattern("core", "the other lead is at {}, neither on ground nor on this line"),
                aside.reading.other.label);
  case SetAsideWhy::diodeFromPointToPoint:
    return pattern("core", "diode mode from point to point is not used");
  case SetAsideWhy::noDiodeMode:
    return pattern("core", "the meter has no diode mode");
  case SetAsideWhy::negativeResistance:
    return pattern("core", "a negative resistance");
  case SetAsideWhy::modeToGround:
    return said(pattern("core", "{} to ground is not used"), nameOf(aside.reading.mode));
  case SetAsideWhy::mode:
    break;
  }
  return said(pattern("core", "readings of mode \"{}\" are not used"), nameOf(aside.reading.mode));
}

} // namespace netmend
