#include "netmend/jumper/zone_rules.h"

#include <algorithm>
#include <array>

#include "netmend/base/json_reader.h"
#include "netmend/board/words.h"

namespace netmend {
namespace {

constexpr auto effectWords = std::to_array<Word<ZoneEffect>>({{ZoneEffect::forbidden, "forbidden"},
                                                              {ZoneEffect::perLength, "per_length"},
                                                              {ZoneEffect::perCrossing, "per_crossing"}});

bool hasZone(const ZoneRules& rules, ZoneKind kind) {
  return std::any_of(rules.zones.begin(), rules.zones.end(),
                     [&](const ZoneRule& rule) { return rule.kind == kind; });
}

void readZones(const JsonReader::Node& root, ZoneRules& rules) {
  for (const auto& node : root.at("zones").items()) {
    node.onlyKeys({"zone", "effect", "margin_mm", "price", "reason", "source"});
    ZoneRule rule;
    rule.kind = node.at("zone").oneOf(boardWords<ZoneKind>);
    rule.effect = node.at("effect").oneOf(effectWords);
    const bool forbidden = rule.effect == ZoneEffect::forbidden;
    rule.margin = forbidden ? node.at("margin_mm").mmAboveZero(100) : node.at("margin_mm").mm(100);
    if (!forbidden) rule.price = Price(node.at("price").number(0.0, 1e6));
    rule.reason = node.at("reason").text();
    rule.source = node.source();
    if (hasZone(rules, rule.kind))
      node.at("zone").wrong(pattern("core", "a second rule for the same zone"),
                            std::string(wordFor(boardWords<ZoneKind>, rule.kind)),
                            pattern("core", "one for each"));
    rules.zones.push_back(std::move(rule));
  }
  for (const auto& kind : boardWords<ZoneKind>)
    if (!hasZone(rules, kind.value))
      root.at("zones").wrong(pattern("core", "no rule for a kind of zone"), {}, std::string(kind.text));
}

} // namespace

const ZoneRule& ZoneRules::of(ZoneKind kind) const {
  const auto found =
      std::find_if(zones.begin(), zones.end(), [&](const ZoneRule& r) { return r.kind == kind; });
  static const ZoneRule strict{};
  return found != zones.end() ? *found : strict;
}

const PartZoneRule* ZoneRules::of(PartKind kind) const {
  const auto found =
      std::find_if(parts.begin(), parts.end(), [&](const PartZoneRule& r) { return r.part == kind; });
  return found != parts.end() ? &*found : nullptr;
}

Result<ZoneRules> loadZoneRules(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-zones");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "zones", "parts", "bodies"});
  ZoneRules rules;
  readZones(root, rules);
  for (const auto& node : root.at("parts").items()) {
    node.onlyKeys({"part", "zone", "wall_only", "source"});
    rules.parts.push_back({node.at("part").oneOf(boardWords<PartKind>),
                           node.at("zone").oneOf(boardWords<ZoneKind>),
                           node.has("wall_only") && node.at("wall_only").boolean(), node.source()});
  }
  const auto bodies = root.at("bodies");
  bodies.onlyKeys({"edge_margin_mm", "hole_margin_mm", "joint_margin_mm", "tall_from_mm", "low_up_to_mm",
                   "guessed_body_margin_mm", "source"});
  rules.edgeMargin = bodies.at("edge_margin_mm").mmAboveZero(10);
  rules.holeMargin = bodies.at("hole_margin_mm").mmAboveZero(10);
  rules.jointMargin = bodies.at("joint_margin_mm").mmAboveZero(10);
  rules.tallFrom = bodies.at("tall_from_mm").mmAboveZero(100);
  rules.lowUpTo = bodies.at("low_up_to_mm").mmAboveZero(100);
  rules.guessedBodyMargin = bodies.at("guessed_body_margin_mm").mmAboveZero(10);
  bodies.source();
  return reader->result(std::move(rules));
}

} // namespace netmend
