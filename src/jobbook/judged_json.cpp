#include "judged_json.h"

#include <algorithm>
#include <limits>

#include <nlohmann/json.hpp>

#include "netmend/probing/words.h"
#include "reading_words.h"

namespace netmend {

namespace {

using nlohmann::json;

constexpr std::array<Word<NothingBecause>, 3> nothingWords{{
    {NothingBecause::judged, "judged"},
    {NothingBecause::noExpectedValue, "no expected value"},
    {NothingBecause::noRule, "no rule"},
}};
constexpr std::array<Word<ExpectedBy>, 4> byWords{{
    {ExpectedBy::goodBoards, "good boards"},
    {ExpectedBy::sameNet, "same net"},
    {ExpectedBy::workSteps, "work steps"},
    {ExpectedBy::wire, "wire"},
}};
constexpr std::array<Word<ExpectedFrom>, 3> fromWords{{
    {ExpectedFrom::boards, "boards"},
    {ExpectedFrom::entered, "entered"},
    {ExpectedFrom::pinKind, "pin kind"},
}};
constexpr std::array<Word<PinKind>, pinKindCount> kindWords{{
    {PinKind::unknown, "unknown"},
    {PinKind::signal, "signal"},
    {PinKind::junction, "junction"},
    {PinKind::supply, "supply"},
    {PinKind::ground, "ground"},
    {PinKind::unconnected, "unconnected"},
}};

template <class E, std::size_t N>
E oneOf(const std::array<Word<E>, N>& words, const json& in, const char* name) {
  return stored(words, in.at(name).get<std::string>());
}

/// JSON has no infinity, and odds may be out of a double's reach.
double finite(double value) {
  constexpr double most = std::numeric_limits<double>::max();
  return std::clamp(value, -most, most);
}

json pairOf(const ValueInterval& range) {
  return {range.lowest, range.highest};
}
ValueInterval intervalOf(const json& in) {
  return {in.at(0).get<double>(), in.at(1).get<double>()};
}

json jsonOf(const Expected& e) {
  json humps = json::array();
  for (const ExpectedHump& h : e.humps)
    humps.push_back({h.weight, h.centre, h.scale, h.dof, h.boards});
  json shown = json::array();
  for (const ValueInterval& range : e.shown)
    shown.push_back(pairOf(range));
  json out{{"mode", word(e.mode)},
           {"from", wordFor(fromWords, e.from)},
           {"pin_kind", wordFor(kindWords, e.kind)},
           {"over_limit_share", e.overLimitShare},
           {"humps", humps},
           {"shown", shown},
           {"boards", e.boards},
           {"boards_over_limit", e.boardsOverLimit}};
  if (e.seen) out["seen"] = pairOf(*e.seen);
  return out;
}

Expected expectedOf(const json& in) {
  Expected e;
  const auto mode = in.at("mode").get<std::string>();
  e.mode = stored(readingModeFrom(mode), mode);
  e.from = oneOf(fromWords, in, "from");
  e.kind = oneOf(kindWords, in, "pin_kind");
  e.overLimitShare = in.at("over_limit_share").get<double>();
  for (const json& h : in.at("humps"))
    e.humps.push_back({h.at(0).get<double>(), h.at(1).get<double>(), h.at(2).get<double>(),
                       h.at(3).get<double>(), h.at(4).get<double>()});
  for (const json& range : in.at("shown"))
    e.shown.push_back(intervalOf(range));
  e.boards = in.at("boards").get<std::size_t>();
  e.boardsOverLimit = in.at("boards_over_limit").get<std::size_t>();
  if (in.contains("seen")) e.seen = intervalOf(in.at("seen"));
  return e;
}

} // namespace

std::string judgedText(const std::optional<Judged>& judged) {
  if (!judged) return {};
  const Verdict& v = judged->verdict;
  json out{{"kind", word(v.kind)},
           {"nothing", wordFor(nothingWords, v.nothing)},
           {"odds", finite(v.odds)},
           {"off_in_spreads", finite(v.offInSpreads)},
           {"false_alarm_rate", v.falseAlarmRate},
           {"by", wordFor(byWords, judged->by)}};
  if (v.rarity) out["rarity"] = *v.rarity;
  if (v.expected) out["expected"] = jsonOf(*v.expected);
  if (judged->limits) out["limits"] = pairOf(*judged->limits);
  if (!judged->asAt.empty()) out["as_at"] = judged->asAt;
  if (judged->fromOldBook) out["from_old_book"] = true;
  return out.dump();
}

std::optional<Judged> judgedFrom(const std::string& text) {
  if (text.empty()) return std::nullopt;
  const json in = json::parse(text);
  Judged out;
  Verdict& v = out.verdict;
  const auto kind = in.at("kind").get<std::string>();
  v.kind = stored(verdictKindFrom(kind), kind);
  v.nothing = oneOf(nothingWords, in, "nothing");
  v.odds = in.at("odds").get<double>();
  v.offInSpreads = in.at("off_in_spreads").get<double>();
  v.falseAlarmRate = in.at("false_alarm_rate").get<double>();
  if (in.contains("rarity")) v.rarity = in.at("rarity").get<double>();
  if (in.contains("expected")) v.expected = expectedOf(in.at("expected"));
  out.by = oneOf(byWords, in, "by");
  if (in.contains("limits")) out.limits = intervalOf(in.at("limits"));
  out.asAt = in.value("as_at", "");
  out.fromOldBook = in.value("from_old_book", false);
  return out;
}

} // namespace netmend
