#include <algorithm>

#include "netmend/base/json_reader.h"
#include "netmend/board/words.h"
#include "netmend/jumper/wire.h"

namespace netmend {
namespace {

void readWires(const JsonReader::Node& root, WireTable& table) {
  for (const auto& node : root.at("wires").items()) {
    node.onlyKeys({"name", "copper_mm", "outer_mm", "insulation", "stripping", "source"});
    Wire wire;
    wire.name = node.at("name").text();
    wire.copper = Length::fromMm(node.at("copper_mm").number(0.001, 20));
    wire.outer = Length::fromMm(node.at("outer_mm").number(0.001, 40));
    wire.insulation = node.at("insulation").text();
    wire.stripping = node.at("stripping").text();
    wire.source = node.source();
    if (wire.outer < wire.copper)
      node.at("outer_mm")
          .wrong(pattern("core", "thinner than its copper"), wire.name, pattern("core", "copper_mm or more"));
    table.wires.push_back(std::move(wire));
  }
  if (table.wires.empty())
    root.at("wires").wrong(pattern("core", "no wire"), pattern("core", "an empty list"),
                           pattern("core", "at least one"));
  std::stable_sort(table.wires.begin(), table.wires.end(),
                   [](const Wire& a, const Wire& b) { return a.copper < b.copper; });
}

bool hasRole(const WireTable& table, NetRole role) {
  return std::any_of(table.roles.begin(), table.roles.end(),
                     [&](const RoleCurrent& entry) { return entry.role == role; });
}

void readRoles(const JsonReader::Node& root, WireTable& table) {
  for (const auto& node : root.at("roles").items()) {
    node.onlyKeys({"role", "current_A", "most_A", "most_drop_V", "warning", "source"});
    RoleCurrent role;
    role.role = node.at("role").oneOf(boardWords<NetRole>);
    role.current = Amperes(node.at("current_A").number(0, 1000));
    if (node.has("most_A")) role.most = Amperes(node.at("most_A").number(1e-6, 1000));
    role.mostDrop = Volts(node.at("most_drop_V").number(1e-6, 1000));
    role.warning = node.text("warning", "");
    role.source = node.source();
    if (hasRole(table, role.role))
      node.at("role").wrong(pattern("core", "a second entry for the same role"),
                            std::string(wordFor(boardWords<NetRole>, role.role)),
                            pattern("core", "one for each"));
    table.roles.push_back(std::move(role));
  }
  for (const auto& role : boardWords<NetRole>)
    if (!hasRole(table, role.value))
      root.at("roles").wrong(pattern("core", "no entry for a role"), {}, std::string(role.text));
}

} // namespace

Result<WireTable> loadWireTable(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-wires");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "wires", "roles", "rules"});
  WireTable table;
  readWires(root, table);
  readRoles(root, table);
  const auto rules = root.at("rules");
  rules.onlyKeys({"most_rise_K", "copper_rise_K", "signal_up_to_mm", "ambient_C", "fusing_share",
                  "thinnest_by_choice_mm", "slack", "end_allowance_mm", "end_tack_mm", "tack_spacing_mm",
                  "landing_share", "source"});
  table.mostRise = Kelvins(rules.at("most_rise_K").number(1, 200));
  table.copperRise = Kelvins(rules.at("copper_rise_K").number(1, 200));
  table.signalUpTo = rules.at("signal_up_to_mm").mm(10);
  table.ambient = Celsius(rules.at("ambient_C").number(-50, 150));
  table.fusingShare = rules.at("fusing_share").number(0.01, 1);
  table.thinnestByChoice = rules.at("thinnest_by_choice_mm").mm(5);
  table.slack = rules.at("slack").number(0, 5);
  table.endAllowance = rules.at("end_allowance_mm").mm(100);
  table.endTack = Length::fromMm(rules.at("end_tack_mm").number(0.1, 100));
  table.tackSpacing = Length::fromMm(rules.at("tack_spacing_mm").number(0.5, 1000));
  table.landingShare = rules.at("landing_share").number(0.1, 10);
  rules.source();
  return reader->result(std::move(table));
}

} // namespace netmend
