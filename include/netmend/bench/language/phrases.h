#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace netmend {

/// A sentence of the core with gaps, and the same in another language. A gap is written `{}` or `{name}`. The
/// other language fills its gaps in their order, by the number of the English gap (`{1}`, from 0 on), or by
/// its name. Names that say what may stand in a gap: `{n}` a value as `0.45 V`, `12` or `OL`; `{list}` words
/// parted by commas; `{id}` one word without a blank. Every other gap takes any text.
struct Phrase {
  std::string english;
  std::string translated;
};

/// Finds of which phrase a finished English sentence was made, and says it in the other language, with what
/// stands in its gaps said so as well. The core can thus go on writing plain English into job book and files,
/// and what was written there last year is understood, too.
class Phrases {
public:
  Phrases() = default;
  explicit Phrases(const std::vector<Phrase>& phrases);

  /// nullopt: nothing in it is known. Parts that are not known are left as they are. The time it takes is
  /// bounded: each part of the text is looked for once, and what is left when that takes too long counts as
  /// not known.
  [[nodiscard]] std::optional<std::string> translate(std::string_view english) const;

private:
  struct Pattern {
    std::vector<std::string> literals; ///< one more than gaps
    std::vector<std::string> gaps;     ///< their names
    std::string translated;
    std::size_t letters = 0; ///< of all literals
    bool joiner = false;     ///< says nothing by itself
  };
  struct Match;
  class Search;

  static Pattern patternOf(const Phrase& phrase);

  std::unordered_map<std::string, std::string> whole_; ///< without gaps
  std::vector<Pattern> patterns_;                      ///< most letters first
};

} // namespace netmend
