#pragma once

#include <array>
#include <optional>
#include <string>

#include <soci/soci.h>

#include "netmend/jobbook/job_words.h"

namespace netmend {

inline constexpr std::array<Word<Side>, 2> storedSideWords{{{Side::top, "top"}, {Side::bottom, "bottom"}}};

/// The value of a stored word; one that no Netmend of this version writes is damage.
template <class E> [[nodiscard]] E stored(std::optional<E> value, const std::string& text) {
  if (value) return *value;
  throw soci::soci_error("unknown word \"" + text + "\" in the book");
}

template <class E, std::size_t N>
[[nodiscard]] E stored(const std::array<Word<E>, N>& words, const std::string& text) {
  return stored(fromWord(words, text), text);
}

/// The same, where a function knows the words: `readingModeFrom`.
template <class From> [[nodiscard]] auto storedBy(From&& from, const std::string& text) {
  return stored(from(text), text);
}

} // namespace netmend
