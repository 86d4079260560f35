#include "netmend/probing/expected.h"

#include <cmath>

#include "netmend/base/words.h"
#include "netmend/probing/comparison.h"

namespace netmend {

namespace {

constexpr std::array<Word<ExpectedFrom>, 3> fromWords{{
    {ExpectedFrom::boards, "boards measured"},
    {ExpectedFrom::entered, "entered by hand"},
    {ExpectedFrom::pinKind, "kind of pin"},
}};

/// Degrees of freedom that are as good as a normal distribution.
constexpr double normalDof = 1e6;

} // namespace

std::string_view word(ExpectedFrom from) {
  return wordFor(fromWords, from);
}
std::optional<ExpectedFrom> expectedSourceFrom(std::string_view text) {
  return fromWord(fromWords, text);
}

std::optional<Expected> expectedFromKind(PinKind kind, ReadingMode mode, const PinKindData& kinds) {
  const auto* data = kinds.find(kind, mode);
  if (data == nullptr || !data->overLimitShare) return std::nullopt;
  Expected e;
  e.mode = mode;
  e.from = ExpectedFrom::pinKind;
  e.kind = kind;
  e.overLimitShare = *data->overLimitShare;
  e.humps = data->humps;
  for (const auto& hump : e.humps) {
    if (hump.weight < 0.01) continue; // judged by, but not worth a word
    const double middle = toComparison(mode, hump.centre);
    e.shown.push_back(
        {fromComparison(mode, middle - 2.0 * hump.scale), fromComparison(mode, middle + 2.0 * hump.scale)});
  }
  return e;
}

Expected expectedFromEntry(const EnteredExpectation& entry, PinKind kind) {
  constexpr double rare = 2e-5; // what nobody thought of when entering it
  constexpr double z99 = 2.5758;
  Expected e;
  e.mode = entry.mode;
  e.from = ExpectedFrom::entered;
  e.kind = kind;
  e.overLimitShare = entry.overLimit ? 1.0 - rare : rare;
  if (entry.overLimit) return e;
  const double low = toComparison(entry.mode, entry.lowest);
  const double high = toComparison(entry.mode, entry.highest);
  e.humps.push_back(
      {1.0 - rare, fromComparison(entry.mode, (low + high) / 2.0), (high - low) / 2.0 / z99, normalDof, 0.0});
  e.shown.push_back({entry.lowest, entry.highest});
  return e;
}

} // namespace netmend
