#include "netmend/probing/words.h"

#include "netmend/base/words.h"

namespace netmend {

namespace {

constexpr std::array<Word<ReadingMode>, 8> modes{{
    {ReadingMode::diode, "diode"},
    {ReadingMode::diodeReverse, "diode reversed"},
    {ReadingMode::ohms, "ohms"},
    {ReadingMode::milliohms, "milliohms"},
    {ReadingMode::continuity, "continuity"},
    {ReadingMode::volts, "volts"},
    {ReadingMode::dropUnderCurrent, "drop under current"},
    {ReadingMode::temperature, "temperature"},
}};

constexpr std::array<Word<Settling>, 3> settlings{{
    {Settling::settled, "settled"},
    {Settling::rising, "rising"},
    {Settling::unknown, "unknown"},
}};

} // namespace

std::string_view word(ReadingMode mode) {
  return wordFor(modes, mode);
}

std::optional<ReadingMode> readingModeFrom(std::string_view text) {
  return fromWord(modes, text);
}

std::string_view word(Settling settling) {
  return wordFor(settlings, settling);
}

std::optional<Settling> settlingFrom(std::string_view text) {
  return fromWord(settlings, text);
}

std::string_view unitOf(ReadingMode mode) {
  switch (mode) {
  case ReadingMode::ohms:
  case ReadingMode::milliohms:
  case ReadingMode::continuity:
    return "Ω";
  case ReadingMode::temperature:
    return "°C";
  default:
    return "V";
  }
}

} // namespace netmend
