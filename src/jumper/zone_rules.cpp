#include "netmend/jumper/zone_rules.h"

#include <algorithm>
#include <array>

#include "data_reader.h"

namespace netmend {
namespace {

/// In the order of ZoneKind; for files, and for people with a space for the underscore.
const std::vector<std::string_view> zoneWords{"connector", "shield_wall", "battery",        "fastener",
                                              "antenna",   "flex",        "heat_sensitive", "tall_part"};
const std::vector<std::string_view> effectWords{"forbidden", "per_length", "per_crossing"};
/// In the order of PartKind.
const std::vector<std::string_view> partWords{
    "resistor", "zero_ohm_link", "resistor_array", "capacitor",     "inductor", "ferrite",
    "choke",    "filter",        "fuse",           "diode",         "led",      "transistor",
    "chip",     "crystal",       "connector",      "switch_or_key", "battery",  "antenna",
    "shield",   "test_point",    "mechanical",     "other"};

void readZones(const jumper::DataNode& root, ZoneRules& rules) {
  for (const auto& node : root.at("zones").items()) {
    node.onlyKeys({"zone", "effect", "margin_mm", "price", "reason", "source"});
    ZoneRule rule;
    rule.kind = static_cast<ZoneKind>(node.at("zone").oneOf(zoneWords));
    rule.effect = static_cast<ZoneEffect>(node.at("effect").oneOf(effectWords));
    rule.margin = node.at("margin_mm").mm(100);
    if (rule.effect != ZoneEffect::forbidden) rule.price = node.at("price").price();
    rule.reason = node.at("reason").text();
    rule.source = node.at("source").text();
    if (std::any_of(rules.zones.begin(), rules.zones.end(),
                    [&](const ZoneRule& r) { return r.kind == rule.kind; }))
      node.at("zone").wrong("a second rule for the same zone", std::string(nameOf(rule.kind)),
                            "one for each");
    rules.zones.push_back(std::move(rule));
  }
  for (std::size_t kind = 0; kind < zoneWords.size(); ++kind)
    if (std::none_of(rules.zones.begin(), rules.zones.end(),
                     [&](const ZoneRule& r) { return r.kind == static_cast<ZoneKind>(kind); }))
      root.at("zones").wrong("no rule for a kind of zone", "", std::string(zoneWords[kind]));
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

std::string_view nameOf(ZoneKind kind) {
  constexpr std::array<std::string_view, 8> names{"connector", "shield wall", "battery",        "fastener",
                                                  "antenna",   "flex",        "heat-sensitive", "tall part"};
  return names.at(static_cast<std::size_t>(kind));
}

Result<ZoneRules> loadZoneRules(const std::filesystem::path& path) {
  auto file = jumper::openData(path, "netmend-zones");
  if (!file) return failure(file.error());
  const auto root = jumper::rootOf(*file);
  root.onlyKeys({"format", "version", "zones", "parts", "bodies"});
  ZoneRules rules;
  readZones(root, rules);
  for (const auto& node : root.at("parts").items()) {
    node.onlyKeys({"part", "zone", "wall_only", "source"});
    rules.parts.push_back({static_cast<PartKind>(node.at("part").oneOf(partWords)),
                           static_cast<ZoneKind>(node.at("zone").oneOf(zoneWords)),
                           node.has("wall_only") && node.at("wall_only").boolean(),
                           node.at("source").text()});
  }
  const auto bodies = root.at("bodies");
  bodies.onlyKeys({"edge_margin_mm", "tall_from_mm", "low_up_to_mm", "guessed_body_margin_mm", "source"});
  rules.edgeMargin = bodies.at("edge_margin_mm").mm(10);
  rules.tallFrom = bodies.at("tall_from_mm").mm(100);
  rules.lowUpTo = bodies.at("low_up_to_mm").mm(100);
  rules.guessedBodyMargin = bodies.at("guessed_body_margin_mm").mm(10);
  static_cast<void>(bodies.at("source").text());
  if (file->error) return failure(*file->error);
  return rules;
}

} // namespace netmend
