#include "verdict_text.h"

#include <cmath>

#include <fmt/format.h>

#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"

namespace netmend::probing {

namespace {

/// `310 to 1`, `1 to 40`.
std::string oddsText(double odds) {
  constexpr double most = 1e6;
  if (odds >= most) return "more than a million to 1";
  if (odds >= 10.0) return fmt::format("{:.0f} to 1", odds);
  if (odds >= 1.0) return fmt::format("{:.3g} to 1", odds);
  if (odds <= 1.0 / most) return "1 to more than a million";
  const double against = 1.0 / odds;
  return fmt::format("1 to {:.0f}", against);
}

std::string onceIn(double share) {
  if (share <= 1e-6) return "less than once in a million";
  return fmt::format("once in {:.0f}", 1.0 / share);
}

std::string boardsText(const Expected& e) {
  const auto noun = [](std::size_t n) { return n == 1 ? "good board" : "good boards"; };
  if (e.boardsOverLimit == e.boards) return fmt::format("{} {} read OL", e.boards, noun(e.boards));
  std::string values;
  const auto low = readingText(e.seen->lowest, e.mode);
  const auto high = readingText(e.seen->highest, e.mode);
  values = low == high ? low : low + " to " + high;
  if (e.boardsOverLimit == 0) return fmt::format("{} {} read {}", e.boards, noun(e.boards), values);
  return fmt::format("of {} good boards {} read OL, the others {}", e.boards, e.boardsOverLimit, values);
}

std::string expectationText(const Expected& e) {
  switch (e.from) {
  case ExpectedFrom::boards:
    return boardsText(e);
  case ExpectedFrom::entered:
    return "entered by hand: " + expectedText(e);
  case ExpectedFrom::pinKind:
    return fmt::format("no board measured; the default for {}: {}",
                       e.kind == PinKind::junction ? "a pin with a junction"
                                                   : std::string(word(e.kind)) + " pins",
                       expectedText(e));
  }
  return {};
}

/// `62 mV below the expected 0.453 V, 5.1 times the spread`: the figures that are read, one from the other.
std::string distanceText(const Reading& reading, const Expected& e, double offInSpreads) {
  const double value = *valueAtBenchTemperature(reading);
  const ExpectedHump* nearest = &e.humps.front();
  for (const auto& h : e.humps)
    if (std::abs(h.centre - value) < std::abs(nearest->centre - value)) nearest = &h;
  const double off = asShown(value, e.mode) - asShown(nearest->centre, e.mode);
  const bool volts = e.mode == ReadingMode::diode || e.mode == ReadingMode::diodeReverse;
  const std::string size =
      volts ? fmt::format("{:.0f} mV", std::abs(off) * 1e3) : readingText(std::abs(off), e.mode);
  return fmt::format("{} {} the expected {}, {:.1f} times the spread", size, off < 0.0 ? "below" : "above",
                     readingText(nearest->centre, e.mode), std::abs(offInSpreads));
}

} // namespace

std::string explain(const Reading& reading, const Verdict& verdict, double offInSpreads,
                    double falseAlarmRate) {
  const Expected& e = *verdict.expected;
  std::string text = fmt::format("reads {}; {}", comparedText(reading), expectationText(e));
  if (!verdict.rarity) return text;
  if (reading.value && !e.humps.empty()) text += "; " + distanceText(reading, e, offInSpreads);
  text += fmt::format("; a good board reads something as telling {}; odds of a fault here {}",
                      onceIn(*verdict.rarity), oddsText(verdict.odds));
  const bool flagged = isFlag(verdict.kind);
  if (flagged && *verdict.rarity > falseAlarmRate) {
    text +=
        fmt::format("; flagged for its odds, though the walk's rate allows only {}", onceIn(falseAlarmRate));
  } else if (!flagged && *verdict.rarity > falseAlarmRate) {
    text += fmt::format("; flagged from {} on", onceIn(falseAlarmRate));
  }
  if (verdict.kind == VerdictKind::open) text += "; press again: a missed contact reads OL too";
  if (reading.settling == Settling::rising && reading.value)
    text += "; it was still rising: wait until it has settled";
  return text;
}

} // namespace netmend::probing
