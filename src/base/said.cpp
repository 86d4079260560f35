#include "netmend/base/said.h"

#include <algorithm>
#include <charconv>
#include <mutex>
#include <set>

#include <fmt/format.h>

namespace netmend {

namespace {

constexpr Pattern asWritten{"{}"};

/// Whom it is said to.
struct Reader {
  const Language& language;
  const std::optional<PictureLie>& picture;
};

std::string wordsFor(const Said& said, const Reader& reader);
std::string textOf(const SaidArgument& argument, const Reader& reader);

std::string listed(const SaidList& list, const Reader& reader) {
  if (list.parts.empty()) return {};
  std::string out = textOf(list.parts.front(), reader);
  for (std::size_t i = 1; i < list.parts.size(); ++i) {
    Pattern joined = pattern("core", "{}, {}");
    if (i + 1 == list.parts.size() && list.last == SaidList::Last::conjunction)
      joined = pattern("core", "{} and {}");
    if (i + 1 == list.parts.size() && list.last == SaidList::Last::disjunction)
      joined = pattern("core", "{} or {}");
    out = wordsFor(said(joined, out, list.parts[i]), reader);
  }
  return out;
}

std::string figureText(const Figure& figure) {
  std::string out = fmt::format("{:.{}f}", figure.value, figure.decimals);
  // No reading is "-0.0".
  if (out.find_first_not_of("-0.") == std::string::npos && out.front() == '-') out.erase(0, 1);
  return figure.unit.empty() ? out : out + " " + std::string(figure.unit);
}

std::string textOf(const SaidArgument& argument, const Reader& reader) {
  struct Visitor {
    const Reader& reader;
    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(const Figure& figure) const { return figureText(figure); }
    std::string operator()(const Said& said) const { return wordsFor(said, reader); }
    std::string operator()(const SaidList& list) const { return listed(list, reader); }
  };
  return std::visit(Visitor{reader}, argument.value);
}

Pattern patternFor(const Said& said, const std::optional<PictureLie>& picture) {
  if (!said.heading || !picture) return said.what;
  return said.heading->patterns.at(static_cast<std::size_t>(said.heading->seenIn(*picture)));
}

std::string wordsFor(const Said& said, const Reader& reader) {
  const Pattern what = patternFor(said, reader.picture);
  const bool counts = !what.several.empty();
  // What stands as it is has no translation to look up.
  const std::string shape = what.english == asWritten.english ? std::string(asWritten.english)
                            : counts                          ? reader.language(what, said.count)
                                                              : reader.language(what, std::nullopt);
  std::string out;
  std::size_t next = 0;
  for (std::size_t from = 0;;) {
    const auto open = shape.find('{', from);
    const auto close = open == std::string::npos ? open : shape.find('}', open);
    if (close == std::string::npos) return out.append(shape, from);
    out.append(shape, from, open - from);
    from = close + 1;
    const std::string_view gap(shape.data() + open + 1, close - open - 1);
    if (gap == "n") {
      out += std::to_string(said.count);
      continue;
    }
    std::size_t index = next;
    if (said.names.empty())
      std::from_chars(gap.data(), gap.data() + gap.size(), index);
    else
      index =
          static_cast<std::size_t>(std::find(said.names.begin(), said.names.end(), gap) - said.names.begin());
    next = index + 1;
    if (index < said.arguments.size()) out += textOf(said.arguments[index], reader);
  }
}

} // namespace

Heading SaidHeading::seenIn(const PictureLie& lie) const {
  int turns = static_cast<int>(heading);
  if (fromBelow != lie.fromBelow) turns = 2 - turns; // left for right
  return static_cast<Heading>((turns + lie.quarters) & 3);
}

Said::Said(Pattern pattern) : what(pattern) {}
Said::Said(Pattern pattern, std::int64_t counts, std::vector<SaidArgument> with)
    : what(pattern), count(counts), arguments(std::move(with)) {}

Said::Said(std::string text) {
  if (text.empty()) return;
  what = asWritten;
  arguments.emplace_back(std::move(text));
}

bool operator==(const Said& a, const Said& b) {
  return a.what == b.what && a.count == b.count && a.arguments == b.arguments && a.names == b.names &&
         a.heading == b.heading;
}
bool operator==(const SaidList& a, const SaidList& b) {
  return a.parts == b.parts && a.last == b.last;
}

Pattern dataPattern(const std::string& text) {
  static std::mutex mutex;
  static std::set<std::string> kept; // its strings stay where they are
  const std::lock_guard lock(mutex);
  return {*kept.insert(text).first};
}

std::string english(const Pattern& pattern, std::optional<std::int64_t> count) {
  return std::string(count && *count != 1 ? pattern.several : pattern.english);
}

std::string wordsOf(const Said& said, const Language& language, const std::optional<PictureLie>& picture) {
  return wordsFor(said, {language, picture});
}

} // namespace netmend
