#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace netmend {

/// One value of an enumeration and the word that files, command line and sheet use for it.
template <class E> struct Word {
  E value;
  std::string_view text;
};

/// The word for a value; `words` has one for each.
template <class E, std::size_t N>
[[nodiscard]] constexpr std::string_view wordFor(const std::array<Word<E>, N>& words, E value) {
  for (const auto& word : words)
    if (word.value == value) return word.text;
  return "?";
}

template <class E, std::size_t N>
[[nodiscard]] constexpr std::optional<E> fromWord(const std::array<Word<E>, N>& words,
                                                  std::string_view text) {
  for (const auto& word : words)
    if (word.text == text) return word.value;
  return std::nullopt;
}

} // namespace netmend
