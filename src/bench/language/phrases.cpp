#include "netmend/bench/language/phrases.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace netmend {

namespace {

constexpr int deepest = 40;             ///< of sentences within sentences
constexpr std::size_t longest = 4000;   ///< no sentence of the core is as long
constexpr int mostTries = 4000;         ///< of ways to lay one pattern over one text
constexpr int mostWork = 200'000;       ///< of such ways for a whole sentence
constexpr std::size_t mostParts = 5000; ///< of a sentence that are looked for

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// `0.453 V`, `-3.1 mV`, `> 99.9 %`, `12`, `OL`.
bool isValue(std::string_view text) {
  if (text == "OL") return true;
  constexpr std::size_t longestValue = 16;
  if (text.size() > longestValue || std::count(text.begin(), text.end(), ' ') > 2) return false;
  const auto first = text.find_first_not_of("<>-+ ");
  return first != std::string_view::npos && isDigit(text[first]) && text.find(',') == std::string_view::npos;
}

bool isList(std::string_view text) {
  for (std::size_t at = text.find(' '); at != std::string_view::npos; at = text.find(' ', at + 1))
    if (at == 0 || text[at - 1] != ',') return false;
  return true;
}

bool fits(const std::string& gap, std::string_view text) {
  if (text.empty()) return false;
  if (gap == "n") return isValue(text);
  if (gap == "list") return isList(text);
  if (gap == "id") return text.find(' ') == std::string_view::npos;
  return true;
}

/// The gaps of `text`, calling with each literal before one, and with the name of the gap.
template <class Literal, class Gap> void eachPart(std::string_view text, Literal literal, Gap gap) {
  std::size_t from = 0;
  for (;;) {
    const auto open = text.find('{', from);
    const auto close = open == std::string_view::npos ? open : text.find('}', open);
    literal(text.substr(from, close == std::string_view::npos ? close : open - from));
    if (close == std::string_view::npos) return;
    gap(text.substr(open + 1, close - open - 1));
    from = close + 1;
  }
}

} // namespace

/// One pattern laid over one text.
struct Phrases::Match {
  const Pattern& pattern;
  std::string_view text;
  std::vector<std::string_view> gaps;
  int tries = 0;

  bool found() {
    gaps.resize(pattern.gaps.size());
    return text.starts_with(pattern.literals.front()) && text.ends_with(pattern.literals.back()) &&
           fromGap(0, pattern.literals.front().size());
  }

private:
  bool take(std::size_t gap, std::size_t from, std::size_t to) {
    gaps[gap] = text.substr(from, to - from);
    return fits(pattern.gaps[gap], gaps[gap]);
  }
  bool fromGap(std::size_t gap, std::size_t at) {
    if (++tries > mostTries) return false;
    const std::string& next = pattern.literals[gap + 1];
    if (gap + 1 == pattern.gaps.size()) {
      const std::size_t end = text.size() - next.size();
      return end > at && take(gap, at, end);
    }
    for (auto end = text.find(next, at + 1); end != std::string_view::npos; end = text.find(next, end + 1))
      if (take(gap, at, end) && fromGap(gap + 1, end + next.size())) return true;
    return false;
  }
};

Phrases::Pattern Phrases::patternOf(const Phrase& phrase) {
  Pattern out;
  eachPart(
      phrase.english, [&](std::string_view literal) { out.literals.emplace_back(literal); },
      [&](std::string_view gap) { out.gaps.emplace_back(gap); });
  out.translated = phrase.translated;
  for (const std::string& literal : out.literals)
    out.letters += literal.size();
  return out;
}

/// One text's search. Its parts come back again and again by different ways; each is looked for once.
class Phrases::Search {
public:
  explicit Search(const Phrases& phrases) : phrases_(phrases) {}

  std::optional<std::string> translate(std::string_view english, int depth) {
    if (const auto found = phrases_.whole_.find(std::string(english)); found != phrases_.whole_.end())
      return found->second;
    if (const auto found = known_.find(english); found != known_.end()) return found->second;
    if (depth > deepest || work_ > mostWork || known_.size() > mostParts) return std::nullopt;
    auto said = byPattern(english, depth);
    known_.emplace(english, said);
    return said;
  }

private:
  std::optional<std::string> byPattern(std::string_view english, int depth) {
    for (const Pattern& pattern : phrases_.patterns_) {
      if (pattern.letters >= english.size()) continue;
      Match match{pattern, english, {}};
      const bool found = match.found();
      work_ += match.tries;
      if (!found) continue;
      if (auto said = filledIn(pattern, match.gaps, depth)) return said;
    }
    return std::nullopt;
  }
  std::optional<std::string> filledIn(const Pattern& pattern, const std::vector<std::string_view>& gaps,
                                      int depth);

  const Phrases& phrases_;
  std::unordered_map<std::string_view, std::optional<std::string>> known_;
  int work_ = 0;
};

Phrases::Phrases(const std::vector<Phrase>& phrases) {
  for (const Phrase& phrase : phrases) {
    Pattern pattern = patternOf(phrase);
    if (pattern.gaps.empty())
      whole_.emplace(phrase.english, phrase.translated);
    else
      patterns_.push_back(std::move(pattern));
  }
  std::stable_sort(patterns_.begin(), patterns_.end(),
                   [](const Pattern& a, const Pattern& b) { return a.letters > b.letters; });
  if (whole_.empty() && patterns_.empty()) return; // nothing that joined sentences could be made of
  // Sentences stand beside each other in these ways; they come last, for they fit nearly everything.
  for (const char* joined : {"{}.", "\"{}\"", "{}. {}", "{}; {}", "{}: {}", "{} ({})", "{}, {}"}) {
    patterns_.push_back(patternOf({joined, joined}));
    patterns_.back().joiner = true;
  }
}

std::optional<std::string> Phrases::translate(std::string_view english) const {
  if (english.empty() || english.size() > longest) return std::nullopt;
  return Search(*this).translate(english, 0);
}

std::optional<std::string> Phrases::Search::filledIn(const Pattern& pattern,
                                                     const std::vector<std::string_view>& gaps, int depth) {
  std::vector<std::string> said;
  bool known = !pattern.joiner;
  for (const std::string_view gap : gaps) {
    auto inner = translate(gap, depth + 1);
    known = known || inner.has_value();
    said.push_back(inner ? std::move(*inner) : std::string(gap));
  }
  if (!known) return std::nullopt;
  std::string out;
  std::size_t next = 0;
  eachPart(
      pattern.translated, [&](std::string_view literal) { out += literal; },
      [&](std::string_view name) {
        const auto named = std::find(pattern.gaps.begin(), pattern.gaps.end(), name);
        std::size_t index = next;
        if (!name.empty() && isDigit(name.front()))
          index = static_cast<std::size_t>(name.front() - '0');
        else if (!name.empty() && std::count(pattern.gaps.begin(), pattern.gaps.end(), name) == 1)
          index = static_cast<std::size_t>(named - pattern.gaps.begin());
        next = index + 1;
        if (index < said.size()) out += said[index];
      });
  return out;
}

} // namespace netmend
