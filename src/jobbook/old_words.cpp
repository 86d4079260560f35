#include "old_words.h"

#include <array>
#include <charconv>

namespace netmend::oldbook {

namespace {

struct Unit {
  std::string_view sign;
  double scale;
};
constexpr std::array<Unit, 10> units{{{"V", 1.0},
                                      {"mV", 1e-3},
                                      {"µV", 1e-6},
                                      {"Ω", 1.0},
                                      {"mΩ", 1e-3},
                                      {"kΩ", 1e3},
                                      {"MΩ", 1e6},
                                      {"°C", 1.0},
                                      {"K", 1.0},
                                      {"", 1.0}}};

/// `0.441 V`, `-3 mV`, `4.70 kΩ`.
std::optional<double> valueOf(std::string_view text) {
  const auto space = text.find(' ');
  const std::string_view digits = text.substr(0, space);
  const std::string_view sign = space == std::string_view::npos ? "" : text.substr(space + 1);
  double value = 0.0;
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (read.ec != std::errc{} || read.ptr != digits.data() + digits.size()) return std::nullopt;
  for (const Unit& unit : units)
    if (unit.sign == sign) return value * unit.scale;
  return std::nullopt;
}

std::optional<VerdictKind> kindOf(std::string_view word) {
  using enum VerdictKind;
  constexpr std::array<std::pair<std::string_view, VerdictKind>, 7> words{
      {{"in range", inRange},
       {"open", open},
       {"short", shorted},
       {"low", low},
       {"high", high},
       {"reads where OL is expected", readsWhereOverLimitExpected},
       {"nothing to compare", nothingToCompare}}};
  for (const auto& [text, kind] : words)
    if (text == word) return kind;
  return std::nullopt;
}

/// Calls with each of what `by` parts.
template <class Take> void eachPart(std::string_view text, std::string_view by, Take take) {
  for (auto at = text.find(by); at != std::string_view::npos; at = text.find(by)) {
    take(text.substr(0, at));
    text.remove_prefix(at + by.size());
  }
  take(text);
}

std::optional<Expected> expectedOf(std::string_view words, ReadingMode mode) {
  Expected out;
  out.mode = mode;
  bool good = !words.empty();
  eachPart(words, " or ", [&](std::string_view alternative) {
    if (alternative == "OL") {
      out.overLimitShare = 1.0;
      return;
    }
    const auto to = alternative.find(" to ");
    const auto low = valueOf(alternative.substr(0, to));
    const auto high = to == std::string_view::npos ? low : valueOf(alternative.substr(to + 4));
    good = good && low && high;
    if (good) out.shown.push_back({*low, *high});
  });
  if (!good) return std::nullopt;
  if (!out.shown.empty() && out.overLimitShare > 0.0) out.overLimitShare = 0.5;
  return out;
}

} // namespace

std::optional<Judged> judgedOf(const std::string& verdict, const std::string& expected, ReadingMode mode) {
  const auto kind = kindOf(verdict);
  if (!kind) return std::nullopt;
  Judged out;
  out.fromOldBook = true;
  out.verdict.kind = *kind;
  out.verdict.nothing =
      *kind == VerdictKind::nothingToCompare ? NothingBecause::noExpectedValue : NothingBecause::judged;
  out.verdict.expected = expectedOf(expected, mode);
  return out;
}

} // namespace netmend::oldbook
