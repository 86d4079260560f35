#include "netmend/probing/verdict.h"

#include <algorithm>
#include <cmath>

#include "by_mode.h"

namespace netmend {

namespace {

FaultReadings readFaults(const JsonReader::Node& node) {
  node.onlyKeys({"mode", "open", "short", "shift", "anywhere", "short_scale", "shift_scale", "lowest",
                 "highest", "source"});
  FaultReadings f;
  f.mode = probing::readMode(node.at("mode"));
  f.source = node.source();
  f.open = node.at("open").number(0.0, 1.0);
  f.shorted = node.at("short").number(0.0, 1.0);
  f.shift = node.at("shift").number(0.0, 1.0);
  // Never nothing: else a reading that no kind of fault explains would have no odds at all.
  f.anywhere = node.at("anywhere").number(1e-6, 1.0);
  f.shortScale = node.at("short_scale").number(1e-9, 1e9);
  f.shiftScale = node.at("shift_scale").number(1e-9, 1e9);
  f.lowest = node.at("lowest").number(-1e9, 1e9);
  f.highest = node.at("highest").number(-1e9, 1e9);
  if (f.lowest >= f.highest)
    node.at("highest").wrong(pattern("core", "an empty range"), {}, pattern("core", "more than \"lowest\""));
  const double sum = f.open + f.shorted + f.shift + f.anywhere;
  if (std::abs(sum - 1.0) > 1e-9)
    node.wrong(pattern("core", "shares do not add up"), std::to_string(sum),
               pattern("core", "open, short, shift and anywhere together 1"));
  return f;
}

double readValue(const JsonReader::Node& node, double lowest, double highest) {
  node.onlyKeys({"value", "source"});
  node.source();
  return node.at("value").number(lowest, highest);
}

} // namespace

const FaultReadings* VerdictRules::find(ReadingMode mode) const {
  return probing::entryFor(faults, mode);
}

Result<VerdictRules> loadVerdictRules(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-verdict");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "false_flags_per_good_walk", "fault_prior", "decisive_odds", "variants",
                 "faults"});
  VerdictRules rules;
  rules.falseFlagsPerGoodWalk = readValue(root.at("false_flags_per_good_walk"), 1e-6, 0.99);
  rules.faultPrior = readValue(root.at("fault_prior"), 1e-9, 0.5);
  rules.decisiveOdds = readValue(root.at("decisive_odds"), 1.0, 1e12);
  const auto variants = root.at("variants");
  variants.onlyKeys({"share", "weight", "split_at", "source"});
  variants.source();
  rules.variants.share = variants.at("share").number(1e-9, 0.5);
  rules.variants.weight = variants.at("weight").number(1.0, 1e9);
  rules.variants.splitAt = variants.at("split_at").number(3.0, 1e3);
  rules.faults = probing::readEachMode(root.at("faults"), readFaults);
  return reader->result(std::move(rules));
}

Result<ProbingData> loadProbingData(const std::filesystem::path& folder) {
  auto meters = loadMeters(folder / "meters.json");
  if (!meters) return failure(meters.error());
  auto kinds = loadPinKinds(folder / "pin_kinds.json");
  if (!kinds) return failure(kinds.error());
  auto rules = loadVerdictRules(folder / "verdict.json");
  if (!rules) return failure(rules.error());
  return ProbingData{std::move(*meters), std::move(*kinds), std::move(*rules)};
}

} // namespace netmend
