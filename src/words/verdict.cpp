#include "netmend/words/verdict.h"

#include <cmath>

#include <fmt/format.h>

#include "joined.h"
#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/reading.h"

namespace netmend {

namespace {

Said valueSaid(std::optional<double> value, ReadingMode mode) {
  return asItIs(readingText(value, mode));
}

Said rangeSaid(const ValueInterval& range, ReadingMode mode) {
  return said(pattern("core", "{} to {}"), readingText(range.lowest, mode), readingText(range.highest, mode));
}

/// `310 to 1`, `1 to 40`.
Said oddsSaid(double odds) {
  constexpr double most = 1e6;
  if (odds >= most) return pattern("core", "more than a million to 1");
  if (odds >= 10.0) return said(pattern("core", "{} to 1"), fmt::format("{:.0f}", odds));
  if (odds >= 1.0) return said(pattern("core", "{} to 1"), fmt::format("{:.3g}", odds));
  if (odds <= 1.0 / most) return pattern("core", "1 to more than a million");
  return said(pattern("core", "1 to {}"), fmt::format("{:.0f}", 1.0 / odds));
}

Said onceIn(double share) {
  if (share <= 1e-6) return pattern("core", "less than once in a million");
  return said(pattern("core", "once in {}"), fmt::format("{:.0f}", 1.0 / share));
}

Said boardsSaid(const Expected& e) {
  const auto boards = static_cast<std::int64_t>(e.boards);
  if (e.boardsOverLimit == e.boards)
    return saidCount(counted("core", "{n} good board read OL", "{n} good boards read OL"), boards);
  const std::string low = readingText(e.seen->lowest, e.mode);
  const std::string high = readingText(e.seen->highest, e.mode);
  const Said values = low == high ? asItIs(low) : said(pattern("core", "{} to {}"), low, high);
  if (e.boardsOverLimit == 0)
    return saidCount(counted("core", "{n} good board read {}", "{n} good boards read {}"), boards, values);
  return said(pattern("core", "of {} good boards {} read OL, the others {}"), e.boards, e.boardsOverLimit,
              values);
}

Said kindSaid(PinKind kind) {
  switch (kind) {
  case PinKind::junction:
    return pattern("core", "a pin with a junction");
  case PinKind::signal:
    return pattern("core", "signal pins");
  case PinKind::supply:
    return pattern("core", "supply pins");
  case PinKind::ground:
    return pattern("core", "ground pins");
  case PinKind::unconnected:
    return pattern("core", "unconnected pins");
  case PinKind::unknown:
    break;
  }
  return pattern("core", "unknown pins");
}

Said expectationSaid(const Expected& e) {
  switch (e.from) {
  case ExpectedFrom::boards:
    return boardsSaid(e);
  case ExpectedFrom::entered:
    return said(pattern("core", "entered by hand: {}"), whatIsExpected(e));
  case ExpectedFrom::pinKind:
    return said(pattern("core", "no board measured; the default for {}: {}"), kindSaid(e.kind),
                whatIsExpected(e));
  }
  return {};
}

/// `62 mV below the expected 0.453 V, 5.1 times the spread`: the figures that are read, one from the other.
Said distanceSaid(const Reading& reading, const Expected& e, double offInSpreads) {
  const double value = *valueAtBenchTemperature(reading);
  const ExpectedHump* nearest = &e.humps.front();
  for (const auto& h : e.humps)
    if (std::abs(h.centre - value) < std::abs(nearest->centre - value)) nearest = &h;
  const double off = asShown(value, e.mode) - asShown(nearest->centre, e.mode);
  const bool volts = e.mode == ReadingMode::diode || e.mode == ReadingMode::diodeReverse;
  const std::string size =
      volts ? fmt::format("{:.0f} mV", std::abs(off) * 1e3) : readingText(std::abs(off), e.mode);
  const std::string spreads = fmt::format("{:.1f}", std::abs(offInSpreads));
  const std::string centre = readingText(nearest->centre, e.mode);
  return off < 0.0
             ? said(pattern("core", "{} below the expected {}, {} times the spread"), size, centre, spreads)
             : said(pattern("core", "{} above the expected {}, {} times the spread"), size, centre, spreads);
}

/// `reads 0.651 V`, or with what is compared where the board was not at 25 °C: `reads 0.651 V, at 25 °C 0.645
/// V`.
Said readsSaid(const Reading& reading) {
  const std::string text = readingText(reading.value, reading.mode);
  const std::string atBench = readingText(valueAtBenchTemperature(reading), reading.mode);
  if (atBench == text) return said(pattern("core", "reads {}"), text);
  return said(pattern("core", "reads {}, at 25 °C {}"), text, atBench);
}

Said rateSaid(const Verdict& verdict) {
  if (*verdict.rarity <= verdict.falseAlarmRate) return {};
  if (isFlag(verdict.kind))
    return said(pattern("core", "flagged for its odds, though the walk's rate allows only {}"),
                onceIn(verdict.falseAlarmRate));
  return said(pattern("core", "flagged from {} on"), onceIn(verdict.falseAlarmRate));
}

Said stillRising() {
  return pattern("core", "it was still rising: wait until it has settled");
}

Said lineOf(const Reading& reading, const Said& rest) {
  Said value = valueSaid(reading.value, reading.mode);
  return rest.empty() ? value : joined({std::move(value), rest});
}

} // namespace

Said nameOf(VerdictKind kind) {
  switch (kind) {
  case VerdictKind::inRange:
    return pattern("core", "in range");
  case VerdictKind::open:
    return pattern("core", "open");
  case VerdictKind::shorted:
    return pattern("core", "short");
  case VerdictKind::low:
    return pattern("core", "low");
  case VerdictKind::high:
    return pattern("core", "high");
  case VerdictKind::readsWhereOverLimitExpected:
    return pattern("core", "reads where OL is expected");
  case VerdictKind::nothingToCompare:
    break;
  }
  return pattern("core", "nothing to compare");
}

Said nameOf(const JobReading& reading) {
  const Said kind = nameOf(reading.kind());
  return reading.comesAndGoes ? said(pattern("core", "{}, comes and goes"), kind) : kind;
}

Said otherwiseSaid(const JobReading& before) {
  return said(pattern("core", "it read {} before"), valueSaid(before.reading.value, before.reading.mode));
}

Said whatIsExpected(const Expected& expected) {
  SaidList all{{}, SaidList::Last::disjunction};
  if (expected.expectsOverLimit() || expected.onlyOverLimit()) all.parts.emplace_back("OL");
  for (const ValueInterval& range : expected.shown)
    all.parts.emplace_back(rangeSaid(range, expected.mode));
  return said(pattern("core", "{}"), std::move(all));
}

Said whatIsExpected(const JobReading& reading) {
  if (!reading.judged) return {};
  const Judged& judged = *reading.judged;
  if (judged.verdict.expected) return whatIsExpected(*judged.verdict.expected);
  return judged.limits ? rangeSaid(*judged.limits, reading.reading.mode) : Said();
}

Said whatIsExpected(const ProofPoint& point) {
  if (point.expected) return whatIsExpected(*point.expected);
  return point.limits ? rangeSaid(*point.limits, point.mode) : Said();
}

Said whereItIsFrom(ExpectedBy by, const std::string& asAt) {
  switch (by) {
  case ExpectedBy::goodBoards:
    return {};
  case ExpectedBy::sameNet:
    return said(pattern("core", "as {}, on the same net"), asAt);
  case ExpectedBy::workSteps:
    return pattern("core", "what the work steps expect of the bridged line");
  case ExpectedBy::wire:
    break;
  }
  return pattern("core", "twice the wire's resistance, and what leads and meter may add");
}

Said besideValueSaid(const Reading& reading, const Verdict& verdict) {
  std::vector<Said> all;
  if (isFlag(verdict.kind) && verdict.expected) all.push_back(expectationSaid(*verdict.expected));
  if (reading.settling == Settling::rising && reading.value) all.push_back(stillRising());
  return all.empty() ? Said() : joined(all);
}

Said besideValueSaid(const JobReading& entry) {
  if (!entry.judged || entry.judged->fromOldBook) return {};
  const Judged& judged = *entry.judged;
  if (!judged.limits) return besideValueSaid(entry.reading, judged.verdict);
  if (!entry.odd()) return {};
  return said(pattern("core", "it must be {}"), rangeSaid(*judged.limits, entry.reading.mode));
}

Said verdictLine(const Reading& reading, const Verdict& verdict) {
  return lineOf(reading, besideValueSaid(reading, verdict));
}

Said verdictLine(const JobReading& entry) {
  return lineOf(entry.reading, besideValueSaid(entry));
}

Said verdictReasons(const Reading& reading, const Verdict& verdict) {
  switch (verdict.nothing) {
  case NothingBecause::noExpectedValue:
    return joined({said(pattern("core", "reads {}"), valueSaid(reading.value, reading.mode)),
                   pattern("core", "no good board was measured here in this mode and condition, and nobody "
                                   "entered what to expect")});
  case NothingBecause::noRule:
    return said(pattern("core", "no rule in the data for readings in {}"), nameOf(reading.mode));
  case NothingBecause::judged:
    break;
  }
  const Expected& e = *verdict.expected;
  std::vector<Said> all{readsSaid(reading), expectationSaid(e)};
  if (verdict.rarity) {
    if (reading.value && !e.humps.empty()) all.push_back(distanceSaid(reading, e, verdict.offInSpreads));
    all.push_back(
        said(pattern("core", "a good board reads something as telling {}"), onceIn(*verdict.rarity)));
    all.push_back(said(pattern("core", "odds of a fault here {}"), oddsSaid(verdict.odds)));
    all.push_back(rateSaid(verdict));
    if (verdict.kind == VerdictKind::open)
      all.emplace_back(pattern("core", "press again: a missed contact reads OL too"));
    if (reading.settling == Settling::rising && reading.value) all.push_back(stillRising());
  }
  return joined(all);
}

Said verdictReasons(const JobReading& entry) {
  if (!entry.judged || entry.judged->fromOldBook) return asItIs(entry.remark);
  const Judged& judged = *entry.judged;
  const Said from = whereItIsFrom(judged.by, judged.asAt);
  if (judged.limits)
    return said(pattern("core", "{}; expected {}: {}"), valueSaid(entry.reading.value, entry.reading.mode),
                rangeSaid(*judged.limits, entry.reading.mode), from);
  const Said why = verdictReasons(entry.reading, judged.verdict);
  return from.empty() ? why : said(pattern("core", "{} ({})"), why, from);
}

} // namespace netmend
