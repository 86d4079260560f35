#pragma once

#include <array>
#include <string>

#include <soci/soci.h>

#include "netmend/jobbook/job_words.h"

namespace netmend {

/// As stored; these never change, whatever the screen says.
inline constexpr std::array<Word<ReadingMode>, 8> storedModeWords{{
    {ReadingMode::diode, "diode"},
    {ReadingMode::diodeReverse, "diode-reverse"},
    {ReadingMode::ohms, "ohms"},
    {ReadingMode::milliohms, "milliohms"},
    {ReadingMode::continuity, "continuity"},
    {ReadingMode::volts, "volts"},
    {ReadingMode::dropUnderCurrent, "drop"},
    {ReadingMode::temperature, "temperature"},
}};

inline constexpr std::array<Word<Settling>, 3> storedSettlingWords{{
    {Settling::settled, "settled"},
    {Settling::rising, "rising"},
    {Settling::unknown, "unknown"},
}};

inline constexpr std::array<Word<Side>, 2> storedSideWords{{{Side::top, "top"}, {Side::bottom, "bottom"}}};

/// The value of a stored word; a word that no Netmend of this version writes is damage.
template <class E, std::size_t N>
[[nodiscard]] E stored(const std::array<Word<E>, N>& words, const std::string& text) {
  if (const auto value = fromWord(words, text)) return *value;
  throw soci::soci_error("unknown word \"" + text + "\" in the book");
}

} // namespace netmend
