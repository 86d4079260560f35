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
  json out{{"mode", word(e.mode)},     {"from", word(e.from)},
           {"pin_kind", word(e.kind)}, {"over_limit_share", e.overLimitShare},
           {"humps", humps},           {"shown", shown},
           {"boards", e.boards},       {"boards_over_limit", e.boardsOverLimit}};
  if (e.seen) out["seen"] = pairOf(*e.seen);
  return out;
}

Expected expectedOf(const json& in) {
  Expected e;
  e.mode = storedBy(readingModeFrom, in.at("mode"));
  e.from = storedBy(expectedSourceFrom, in.at("from"));
  e.kind = storedBy(pinKindFrom, in.at("pin_kind"));
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
  v.kind = storedBy(verdictKindFrom, in.at("kind"));
  v.nothing = stored(nothingWords, in.at("nothing"));
  v.odds = in.at("odds").get<double>();
  v.offInSpreads = in.at("off_in_spreads").get<double>();
  v.falseAlarmRate = in.at("false_alarm_rate").get<double>();
  if (in.contains("rarity")) v.rarity = in.at("rarity").get<double>();
  if (in.contains("expected")) v.expected = expectedOf(in.at("expected"));
  out.by = stored(byWords, in.at("by"));
  if (in.contains("limits")) out.limits = intervalOf(in.at("limits"));
  out.asAt = in.value("as_at", "");
  out.fromOldBook = in.value("from_old_book", false);
  return out;
}

} // namespace netmend
