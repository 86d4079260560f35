#include <cmath>

#include "demand.h"
#include "netmend/probing/reading_entry.h"

using namespace netmend;
using namespace netmend::fuzz;

/// The first byte is the mode; the rest is typed. A value that is taken can be shown.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  constexpr int modes = static_cast<int>(ReadingMode::temperature) + 1;
  const auto mode = static_cast<ReadingMode>(data[0] % modes);
  const auto entered = parseReadingValue(textOf(data + 1, size - 1), mode);
  if (!entered) {
    demand(!entered.error().message.empty() && !entered.error().expected.empty(),
           "an error says what is wrong and what is expected");
    return 0;
  }
  if (!entered->value) return 0;
  demand(std::isfinite(*entered->value), "a value is a number");
  demand(std::isfinite(asShown(*entered->value, mode)), "a value as shown is a number");
  demand(!readingText(entered->value, mode).empty(), "a value can be shown");
  return 0;
}
