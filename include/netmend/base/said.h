#pragma once

#include <array>
#include <concepts>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

/// Sentences as values. What is said is made from facts at the edge of the program; its text is made last, in
/// the language of whoever reads it, and never read again.
namespace netmend {

/// An English sentence with gaps, and the key of its translation: `{}` takes the next argument, `{0}` a
/// certain one, `{name}` the one that the sentence calls so, `{n}` the count.
struct Pattern {
  std::string_view english;
  std::string_view several{}; ///< English for every count but one; empty: nothing is counted
  friend bool operator==(const Pattern&, const Pattern&) = default;
};

/// The two below mark a pattern for `lupdate` (see DEVELOPERS.md), which wants a context: "core" for all.
[[nodiscard]] consteval Pattern pattern(const char* /*context*/, const char* english) {
  return {english};
}
[[nodiscard]] consteval Pattern counted(const char* /*context*/, const char* one, const char* several) {
  return {one, several};
}

/// A sentence of an editable file as a pattern. It is kept for as long as the program runs.
[[nodiscard]] Pattern dataPattern(const std::string& text);

/// A number as it is read: fixed decimals and the sign of its unit.
struct Figure {
  double value = 0.0;
  int decimals = 0;
  std::string_view unit{}; ///< a literal: "mm", "V", "%"; empty: none
  friend bool operator==(const Figure&, const Figure&) = default;
};

/// Which way one thing lies from another, counter-clockwise from the right.
enum class Heading { right, above, left, below };

/// How a picture of a board lies. Seen from below the board is turned over about its vertical axis.
struct PictureLie {
  bool fromBelow = false;
  int quarters = 0; ///< the picture is turned by so many, counter-clockwise as one looks at it
  friend bool operator==(const PictureLie&, const PictureLie&) = default;
};

/// What is said goes by the picture beside it: right is what is on the right there. Without one it is as
/// whoever looks at that side of the board from above sees it.
struct SaidHeading {
  Heading heading = Heading::right;
  bool fromBelow = false;          ///< the side that `heading` is told of
  std::array<Pattern, 4> patterns; ///< by heading
  [[nodiscard]] Heading seenIn(const PictureLie& lie) const;
  friend bool operator==(const SaidHeading&, const SaidHeading&) = default;
};

struct SaidArgument;

/// A sentence, or a part of one: a pattern and what fills its gaps. Nested ones don't bend: they are figures,
/// names, or words after a colon or dash.
struct Said {
  Pattern what;
  std::int64_t count = 0; ///< for `{n}`, where the pattern counts
  std::vector<SaidArgument> arguments;
  std::vector<std::string_view> names{}; ///< literals, of the arguments; none: they go by their order
  std::optional<SaidHeading> heading{};  ///< other patterns, for other pictures

  Said() = default;
  Said(Pattern pattern); // NOLINT(google-explicit-constructor)
  Said(Pattern pattern, std::int64_t counts, std::vector<SaidArgument> with);
  /// Text that is the same in every language: what a person typed, a name, a value as it stands in a file.
  Said(std::string text); // NOLINT(google-explicit-constructor)
  /// Refused: English in the code is a pattern.
  Said(const char* text) = delete;

  [[nodiscard]] bool empty() const { return what.english.empty(); }
  friend bool operator==(const Said& a, const Said& b);
};

/// Several that belong together; how they are joined is the language's.
struct SaidList {
  enum class Last { conjunction, disjunction, none };
  std::vector<SaidArgument> parts;
  Last last = Last::conjunction; ///< "a, b and c", "a, b or c", "a, b, c"
  friend bool operator==(const SaidList& a, const SaidList& b);
};

/// What fills a gap. Text stands as it is in every language: what a person typed, a board's names, a value as
/// a meter shows it.
struct SaidArgument {
  std::variant<std::string, Figure, Said, SaidList> value;

  SaidArgument(std::string text) : value(std::move(text)) {}        // NOLINT(google-explicit-constructor)
  SaidArgument(std::string_view text) : value(std::string(text)) {} // NOLINT(google-explicit-constructor)
  SaidArgument(const char* text) : value(std::string(text)) {}      // NOLINT(google-explicit-constructor)
  SaidArgument(std::integral auto whole)
      : value(std::to_string(whole)) {}                   // NOLINT(google-explicit-constructor)
  SaidArgument(Pattern pattern) : value(Said(pattern)) {} // NOLINT(google-explicit-constructor)
  SaidArgument(Figure figure) : value(figure) {}          // NOLINT(google-explicit-constructor)
  SaidArgument(Said said) : value(std::move(said)) {}     // NOLINT(google-explicit-constructor)
  SaidArgument(SaidList list) : value(std::move(list)) {} // NOLINT(google-explicit-constructor)
  friend bool operator==(const SaidArgument&, const SaidArgument&) = default;
};

template <class... Arguments> [[nodiscard]] Said said(Pattern pattern, Arguments&&... arguments) {
  return {pattern, 0, {SaidArgument(std::forward<Arguments>(arguments))...}};
}
template <class... Arguments>
[[nodiscard]] Said saidCount(Pattern pattern, std::int64_t count, Arguments&&... arguments) {
  return {pattern, count, {SaidArgument(std::forward<Arguments>(arguments))...}};
}
/// The same for what lies that way.
template <class... Arguments> [[nodiscard]] Said saidTowards(SaidHeading heading, Arguments&&... arguments) {
  Said out{heading.patterns.at(static_cast<std::size_t>(heading.heading)),
           0,
           {SaidArgument(std::forward<Arguments>(arguments))...}};
  out.heading = heading;
  return out;
}
/// The same, for the eye.
[[nodiscard]] inline Said asItIs(std::string text) {
  return {std::move(text)};
}

/// A pattern's text in some language; `count` where it counts something.
using Language = std::function<std::string(const Pattern&, std::optional<std::int64_t> count)>;
[[nodiscard]] std::string english(const Pattern& pattern, std::optional<std::int64_t> count);

/// `picture`: the one beside the text, if there is one.
[[nodiscard]] std::string wordsOf(const Said& said, const Language& language = english,
                                  const std::optional<PictureLie>& picture = {});

} // namespace netmend
