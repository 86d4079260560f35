#include "netmend/probing/meter.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "by_mode.h"

namespace netmend {

namespace {

constexpr double huge = 1e12;

MeterRange readRange(const JsonReader::Node& node) {
  node.onlyKeys({"full_scale", "resolution", "percent", "digits"});
  return {node.at("full_scale").number(1e-9, huge), node.at("resolution").number(1e-12, huge),
          node.at("percent").number(0.0, 100.0), node.at("digits").number(0.0, 1000.0)};
}

MeterMode readMeterMode(const JsonReader::Node& node) {
  node.onlyKeys({"mode", "test_current_A", "compliance_V", "short_below", "ranges"});
  MeterMode mode;
  mode.mode = probing::readMode(node.at("mode"));
  if (node.has("test_current_A")) mode.testCurrent = Amperes(node.at("test_current_A").number(1e-9, 100.0));
  if (node.has("compliance_V")) mode.compliance = Volts(node.at("compliance_V").number(1e-3, 1000.0));
  if (node.has("short_below")) mode.shortBelow = node.at("short_below").number(0.0, huge);
  for (const auto& item : node.at("ranges").items()) {
    const auto range = readRange(item);
    if (!mode.ranges.empty() && range.fullScale <= mode.ranges.back().fullScale)
      item.at("full_scale")
          .wrong(pattern("core", "ranges must ascend"), {}, pattern("core", "more than the range before"));
    mode.ranges.push_back(range);
  }
  if (mode.ranges.empty()) {
    node.at("ranges").wrong(pattern("core", "a mode needs a range"), pattern("core", "none"),
                            pattern("core", "at least one"));
    mode.ranges.push_back({1.0, 1.0, 0.0, 0.0});
  }
  return mode;
}

MeterProfile readMeter(const JsonReader::Node& node) {
  node.onlyKeys({"id", "name", "source", "lead_resistance_ohm", "input_resistance_ohm", "modes"});
  MeterProfile meter;
  meter.id = node.at("id").text();
  meter.name = node.at("name").text();
  meter.source = node.source();
  if (meter.id.empty())
    node.at("id").wrong(pattern("core", "a meter needs an id"), asItIs("\"\""),
                        pattern("core", "a short word"));
  meter.leadResistance = Ohms(node.at("lead_resistance_ohm").number(0.0, 1000.0));
  meter.inputResistance = Ohms(node.at("input_resistance_ohm").number(1.0, huge));
  meter.modes = probing::readEachMode(node.at("modes"), readMeterMode);
  return meter;
}

} // namespace

const MeterMode* MeterProfile::mode(ReadingMode wanted) const {
  return probing::entryFor(modes, wanted);
}

Result<std::vector<MeterProfile>> loadMeters(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-meters");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "meters"});
  std::vector<MeterProfile> meters;
  std::set<std::string> ids;
  for (const auto& item : root.at("meters").items()) {
    meters.push_back(readMeter(item));
    if (!ids.insert(meters.back().id).second)
      item.at("id").wrong(pattern("core", "two meters with one id"), meters.back().id,
                          pattern("core", "each id once"));
  }
  return reader->result(std::move(meters));
}

const MeterProfile* findMeter(const std::vector<MeterProfile>& meters, std::string_view id) {
  const auto it =
      std::find_if(meters.begin(), meters.end(), [&](const MeterProfile& m) { return m.id == id; });
  return it == meters.end() ? nullptr : &*it;
}

double rectangularUncertainty(double halfWidth) {
  return std::abs(halfWidth) / std::sqrt(3.0);
}

double ReadingUncertainty::combined() const {
  return std::hypot(calibration, resolution, leads);
}

std::optional<ReadingUncertainty> uncertaintyOf(const MeterProfile& meter, ReadingMode readingMode,
                                                double value) {
  const auto* mode = meter.mode(readingMode);
  if (mode == nullptr) return std::nullopt;
  const double size = std::abs(value);
  const auto range = std::find_if(mode->ranges.begin(), mode->ranges.end(),
                                  [&](const MeterRange& r) { return size <= r.fullScale; });
  if (range == mode->ranges.end()) return std::nullopt;
  ReadingUncertainty u;
  u.calibration = rectangularUncertainty(range->percent / 100.0 * size + range->digits * range->resolution);
  u.resolution = rectangularUncertainty(range->resolution / 2.0);
  switch (readingMode) {
  case ReadingMode::ohms:
  case ReadingMode::continuity:
    u.leads = rectangularUncertainty(meter.leadResistance.value);
    break;
  case ReadingMode::diode:
  case ReadingMode::diodeReverse:
    if (mode->testCurrent)
      u.leads = rectangularUncertainty((*mode->testCurrent * meter.leadResistance).value);
    break;
  default: // milliohms are taken with four wires, the rest draws no current worth counting
    break;
  }
  return u;
}

} // namespace netmend
