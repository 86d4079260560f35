#include "netmend/probing/verdict.h"

#include <algorithm>
#include <cmath>

#include "json_reader.h"
#include "netmend/base/file.h"
#include "netmend/probing/words.h"

namespace netmend {

using probing::JsonReader;

namespace {

FaultReadings readFaults(const JsonReader::Node& node) {
  node.onlyKeys({"mode", "open", "short", "shift", "anywhere", "short_scale", "shift_scale", "lowest",
                 "highest", "source"});
  FaultReadings f;
  f.mode = node.at("mode").wordOf(readingModeFrom, "a mode of reading such as \"diode\" or \"ohms\"");
  f.source = node.at("source").text();
  f.open = node.at("open").number(0.0, 1.0);
  f.shorted = node.at("short").number(0.0, 1.0);
  f.shift = node.at("shift").number(0.0, 1.0);
  // Never nothing: else a reading that no kind of fault explains would have no odds at all.
  f.anywhere = node.at("anywhere").number(1e-6, 1.0);
  f.shortScale = node.at("short_scale").number(1e-9, 1e9);
  f.shiftScale = node.at("shift_scale").number(1e-9, 1e9);
  f.lowest = node.at("lowest").number(-1e9, 1e9);
  f.highest = node.at("highest").number(-1e9, 1e9);
  if (f.lowest >= f.highest) node.at("highest").wrong("an empty range", "", "more than \"lowest\"");
  const double sum = f.open + f.shorted + f.shift + f.anywhere;
  if (std::abs(sum - 1.0) > 1e-9)
    node.wrong("shares do not add up", std::to_string(sum), "open, short, shift and anywhere together 1");
  return f;
}

double readValue(const JsonReader::Node& node, double lowest, double highest) {
  node.onlyKeys({"value", "source"});
  static_cast<void>(node.at("source").text());
  return node.at("value").number(lowest, highest);
}

} // namespace

const FaultReadings* VerdictRules::find(ReadingMode mode) const {
  const auto it =
      std::find_if(faults.begin(), faults.end(), [&](const FaultReadings& f) { return f.mode == mode; });
  return it == faults.end() ? nullptr : &*it;
}

Result<VerdictRules> loadVerdictRules(const std::filesystem::path& path) {
  const auto text = readFile(path, 16u << 20);
  if (!text) return failure(text.error());
  const auto json = probing::parseJson(*text, path.string());
  if (!json) return failure(json.error());
  JsonReader reader(*json, path.string());
  const auto root = reader.root();
  root.onlyKeys({"format", "version", "false_flags_per_good_walk", "fault_prior", "decisive_odds", "variants",
                 "faults"});
  probing::checkFormat(root, "netmend-verdict", 1);
  VerdictRules rules;
  rules.falseFlagsPerGoodWalk = readValue(root.at("false_flags_per_good_walk"), 1e-6, 0.99);
  rules.faultPrior = readValue(root.at("fault_prior"), 1e-9, 0.5);
  rules.decisiveOdds = readValue(root.at("decisive_odds"), 1.0, 1e12);
  const auto variants = root.at("variants");
  variants.onlyKeys({"share", "weight", "split_at", "source"});
  static_cast<void>(variants.at("source").text());
  rules.variants.share = variants.at("share").number(1e-9, 0.5);
  rules.variants.weight = variants.at("weight").number(1.0, 1e9);
  rules.variants.splitAt = variants.at("split_at").number(3.0, 1e3);
  for (const auto& item : root.at("faults").items()) {
    rules.faults.push_back(readFaults(item));
    if (rules.find(rules.faults.back().mode) != &rules.faults.back())
      item.at("mode").wrong("mode given twice", "", "each mode once");
    if (reader.failed()) break;
  }
  return reader.result(std::move(rules));
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
