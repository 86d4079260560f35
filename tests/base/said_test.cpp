#include <catch2/catch.hpp>

#include "netmend/base/error.h"
#include "netmend/base/said.h"

namespace netmend {

namespace {

constexpr Pattern apart = pattern("core", "{} is {} from {}");
constexpr Pattern probes = counted("core", "{n} probe at {}", "{n} probes at {}");

/// A language of our own, with another order and another plural.
std::string otherWise(const Pattern& pattern, std::optional<std::int64_t> count) {
  if (pattern.english == apart.english) return "von {2} sind es {1} bis {0}";
  if (pattern.english == probes.english) return *count < 3 ? "wenige ({n}) an {}" : "viele ({n}) an {}";
  if (pattern.english == "{} and {}") return "{} und {}";
  return english(pattern, count);
}

} // namespace

TEST_CASE("Gaps of a sentence are filled in turn, or by number where a language wants another order",
          "[base]") {
  const Said sentence = said(apart, "J4.7", Figure{2.04, 1, "mm"}, "U3");
  CHECK(wordsOf(sentence) == "J4.7 is 2.0 mm from U3");
  CHECK(wordsOf(sentence, otherWise) == "von U3 sind es 2.0 mm bis J4.7");
}

TEST_CASE("A sentence that counts has the number's own form in each language", "[base]") {
  const auto counted = [](std::int64_t n) { return saidCount(probes, n, "J4"); };
  CHECK(wordsOf(counted(0)) == "0 probes at J4");
  CHECK(wordsOf(counted(1)) == "1 probe at J4");
  CHECK(wordsOf(counted(2)) == "2 probes at J4");
  CHECK(wordsOf(counted(2), otherWise) == "wenige (2) an J4");
  CHECK(wordsOf(counted(3), otherWise) == "viele (3) an J4");
}

TEST_CASE("Figures keep their decimals, and none is less than nothing by rounding alone", "[base]") {
  const auto shown = [](Figure figure) { return wordsOf(said(pattern("core", "{}"), figure)); };
  CHECK(shown({0.4535, 3, "V"}) == "0.454 V");
  CHECK(shown({-0.04, 1, "V"}) == "0.0 V");
  CHECK(shown({-0.06, 1, "V"}) == "-0.1 V");
  CHECK(shown({12.0, 0, ""}) == "12");
}

TEST_CASE("How many things are joined is the language's rule", "[base]") {
  const auto joined = [](std::vector<SaidArgument> parts, SaidList::Last last,
                         const Language& language = english) {
    return wordsOf(said(pattern("core", "{}"), SaidList{std::move(parts), last}), language);
  };
  using enum SaidList::Last;
  CHECK(joined({}, conjunction).empty());
  CHECK(joined({"a"}, conjunction) == "a");
  CHECK(joined({"a", "b"}, conjunction) == "a and b");
  CHECK(joined({"a", "b", "c"}, conjunction, otherWise) == "a, b und c");
  CHECK(joined({"a", "b", "c"}, disjunction) == "a, b or c");
  CHECK(joined({"a", "b", "c"}, none) == "a, b, c");
}

TEST_CASE("What a person typed is the same in every language, whatever it looks like", "[base]") {
  const Language upsideDown = [](const Pattern&, std::optional<std::int64_t>) { return std::string("?"); };
  CHECK(wordsOf(asItIs("{0} and {n} or {}"), upsideDown) == "{0} and {n} or {}");
  CHECK(wordsOf(said(pattern("core", "noted: {}"), "{} battery swollen")) == "noted: {} battery swollen");
  CHECK(asItIs("").empty());
}

TEST_CASE("A translation that asks for more than there is leaves the gap empty", "[base]") {
  const Language greedy = [](const Pattern&, std::optional<std::int64_t>) {
    return std::string("{0}{1}{7}{");
  };
  CHECK(wordsOf(said(pattern("core", "only {}"), "one"), greedy) == "one{");
}

TEST_CASE("A sentence of a data file has its gaps by name, in any order, in every language", "[base]") {
  Said step = said(dataPattern("Tin {to} and {from}; mind {glass}"), "C1.1", "TP1");
  step.names = {"from", "to"};
  CHECK(wordsOf(step) == "Tin TP1 and C1.1; mind ");
  const Language german = [](const Pattern& pattern, std::optional<std::int64_t>) {
    return pattern.english.starts_with("Tin ") ? std::string("{from} und {to} verzinnen") : std::string();
  };
  CHECK(wordsOf(step, german) == "C1.1 und TP1 verzinnen");
  // The same text is one pattern, kept once.
  CHECK(dataPattern(std::string("Tin it")).english.data() ==
        dataPattern(std::string("Tin it")).english.data());
}

TEST_CASE("Sentences are equal when their patterns, counts and arguments are", "[base]") {
  const auto of = [](std::int64_t n, const char* what) {
    return saidCount(counted("core", "{n} {}", "{n} {}"), n, what);
  };
  CHECK(of(2, "pads") == of(2, "pads"));
  CHECK_FALSE(of(2, "pads") == of(3, "pads"));
  CHECK_FALSE(of(2, "pads") == of(2, "pins"));
  CHECK_FALSE(said(pattern("core", "at {}"), of(2, "pads")) == said(pattern("core", "at {}"), of(1, "pads")));
}

TEST_CASE("What lies in a direction is said as the picture beside it lies", "[base]") {
  const SaidHeading right{Heading::right,
                          false,
                          {Pattern{"east {}"}, Pattern{"north {}"}, Pattern{"west {}"}, Pattern{"south {}"}}};
  const Said word = saidTowards(right, "X");
  CHECK(wordsOf(word) == "east X");
  const auto seen = [](const Said& said, bool fromBelow, int quarters) {
    return wordsOf(said, english, PictureLie{fromBelow, quarters});
  };
  CHECK(seen(word, false, 0) == "east X");
  CHECK(seen(word, false, 1) == "north X");
  CHECK(seen(word, false, 2) == "west X");
  CHECK(seen(word, false, 3) == "south X");
  CHECK(seen(word, false, -1) == "south X");
  CHECK(seen(word, true, 0) == "west X");
  CHECK(seen(word, true, 1) == "south X");
  // Nested, and in a list.
  CHECK(seen(said(Pattern{"a {}"}, word), false, 1) == "a north X");
  CHECK(seen(said(Pattern{"{}"}, SaidList{{word, word}}), false, 1) == "north X and north X");
  Said other = word;
  CHECK(other == word);
  other.heading->fromBelow = true;
  CHECK_FALSE(other == word);
  CHECK(seen(other, true, 0) == "east X");
  CHECK(seen(other, false, 0) == "west X");
  other.heading->heading = Heading::above;
  CHECK(seen(other, false, 0) == "north X");
  CHECK(seen(other, true, 0) == "north X");
}

TEST_CASE("An error is said with file, place and what was found, each once", "[base]") {
  const Error whole{pattern("core", "unknown side"), "b.csv", "line 3", asItIs("\"up\""),
                    pattern("core", "top or bottom")};
  CHECK(whole.text() == "b.csv: line 3: unknown side (found \"up\"; expected top or bottom)");
  CHECK(Error{pattern("core", "unknown side"), "b.csv"}.text() == "b.csv: unknown side");
  CHECK(Error{pattern("core", "unknown side"), "", "", asItIs("\"up\"")}.text() ==
        "unknown side (found \"up\")");
  CHECK(Error{pattern("core", "unknown side"), "", "line 3", {}, asItIs("top")}.text() ==
        "line 3: unknown side (expected top)");
}

} // namespace netmend
