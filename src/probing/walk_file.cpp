#include "netmend/probing/walk_file.h"

#include <algorithm>
#include <cmath>

#include "by_mode.h"
#include "netmend/base/file.h"
#include "netmend/probing/words.h"
#include "time_text.h"
#include "walk_table.h"

namespace netmend {

using nlohmann::json;
using probing::readMode;

namespace {

constexpr int newestVersion = 1;
constexpr double huge = 1e12;

ProbePoint readPoint(const JsonReader::Node& node) {
  node.onlyKeys({"label", "pin"});
  ProbePoint point;
  if (node.has("pin")) point.pin = PinId(node.at("pin").whole());
  point.label = node.text("label", "");
  if (!node.has("label") && !node.has("pin"))
    node.wrong(pattern("core", "a point needs a label or a pin"), {}, {});
  return point;
}

json written(const ProbePoint& point) {
  json out = json::object();
  if (!point.label.empty() || !point.pin) out["label"] = point.label;
  if (point.pin) out["pin"] = point.pin.value;
  return out;
}

std::vector<std::string> readNames(const JsonReader::Node& node) {
  std::vector<std::string> names;
  for (const auto& item : node.items())
    names.push_back(item.text());
  std::sort(names.begin(), names.end()); // only equal lists compare, whatever order they were typed in
  return names;
}

Condition readCondition(const JsonReader::Node& node) {
  node.onlyKeys({"plugged", "powered", "lifted", "temperature_C", "handling"});
  Condition condition;
  if (node.has("plugged")) condition.plugged = readNames(node.at("plugged"));
  if (node.has("powered")) condition.powered = node.at("powered").boolean();
  if (node.has("lifted")) condition.lifted = readNames(node.at("lifted"));
  if (node.has("temperature_C"))
    condition.temperature = Celsius(node.at("temperature_C").number(-60.0, 500.0));
  condition.handling = node.text("handling", "");
  return condition;
}

json written(const Condition& condition) {
  json out = json::object();
  if (!condition.plugged.empty()) out["plugged"] = condition.plugged;
  if (condition.powered) out["powered"] = true;
  if (!condition.lifted.empty()) out["lifted"] = condition.lifted;
  if (condition.temperature) out["temperature_C"] = condition.temperature->value;
  if (!condition.handling.empty()) out["handling"] = condition.handling;
  return out;
}

/// What a reading leaves out is as the walk says.
Reading readReading(const JsonReader::Node& node, const Walk& walk) {
  node.onlyKeys(
      {"point", "other", "mode", "value", "settling", "time", "meter", "by", "condition", "injected_A"});
  Reading reading;
  reading.point = readPoint(node.at("point"));
  reading.other = node.has("other") ? readPoint(node.at("other")) : walk.other;
  reading.mode = node.has("mode") ? readMode(node.at("mode")) : walk.mode;
  const auto value = node.at("value");
  if (!value.is("OL")) reading.value = value.number(-huge, huge);
  if (node.has("settling")) reading.settling = node.at("settling").wordOf(settlingFrom, "settled or rising");
  if (node.has("time")) reading.time = node.at("time").wordOf(probing::timeFrom, "a time in UTC (ISO 8601)");
  reading.meter = node.text("meter", walk.meter);
  reading.by = node.text("by", walk.by);
  reading.condition = node.has("condition") ? readCondition(node.at("condition")) : walk.condition;
  if (node.has("injected_A")) reading.injected = Amperes(node.at("injected_A").number(-1000.0, 1000.0));
  return reading;
}

json written(const Reading& reading, const Walk& walk) {
  json out = json::object();
  out["point"] = written(reading.point);
  if (!(reading.other == walk.other)) out["other"] = written(reading.other);
  if (reading.mode != walk.mode) out["mode"] = word(reading.mode);
  out["value"] = reading.value ? json(*reading.value) : json("OL");
  if (reading.settling != Settling::unknown) out["settling"] = word(reading.settling);
  if (reading.time.time_since_epoch().count() != 0) out["time"] = probing::timeText(reading.time);
  if (reading.meter != walk.meter) out["meter"] = reading.meter;
  if (reading.by != walk.by) out["by"] = reading.by;
  if (!(reading.condition == walk.condition)) out["condition"] = written(reading.condition);
  if (reading.injected) out["injected_A"] = reading.injected->value;
  return out;
}

EnteredExpectation readEntered(const JsonReader::Node& node, const Walk& walk) {
  node.onlyKeys({"point", "other", "mode", "value", "lowest", "highest", "by", "condition"});
  EnteredExpectation entry;
  entry.point = readPoint(node.at("point"));
  entry.other = node.has("other") ? readPoint(node.at("other")) : walk.other;
  entry.mode = node.has("mode") ? readMode(node.at("mode")) : walk.mode;
  entry.by = node.text("by", walk.by);
  entry.condition = node.has("condition") ? readCondition(node.at("condition")) : walk.condition;
  entry.overLimit = node.has("value");
  if (entry.overLimit) {
    if (!node.at("value").is("OL"))
      node.at("value").wrong(pattern("core", "only OL can stand here"), {}, asItIs("\"OL\""));
    return entry;
  }
  entry.lowest = node.at("lowest").number(-huge, huge);
  entry.highest = node.at("highest").number(-huge, huge);
  if (entry.lowest >= entry.highest)
    node.at("highest").wrong(pattern("core", "an empty interval"), {},
                             pattern("core", "more than \"lowest\""));
  return entry;
}

json written(const EnteredExpectation& entry, const Walk& walk) {
  json out = json::object();
  out["point"] = written(entry.point);
  if (!(entry.other == walk.other)) out["other"] = written(entry.other);
  if (entry.mode != walk.mode) out["mode"] = word(entry.mode);
  if (entry.by != walk.by) out["by"] = entry.by;
  if (!(entry.condition == walk.condition)) out["condition"] = written(entry.condition);
  if (entry.overLimit) {
    out["value"] = "OL";
  } else {
    out["lowest"] = entry.lowest;
    out["highest"] = entry.highest;
  }
  return out;
}

void readBoard(const JsonReader::Node& node, Walk& walk) {
  node.onlyKeys({"uuid", "name", "revision"});
  walk.boardUuid = node.text("uuid", "");
  walk.boardName = node.text("name", "");
  walk.boardRevision = node.text("revision", "");
}

Walk readWalk(JsonReader& reader) {
  const auto root = reader.root();
  Walk walk;
  root.onlyKeys({"format", "version", "title", "board", "serial", "specimen", "mode", "other", "meter", "by",
                 "condition", "points", "readings", "skipped", "entered"});
  if (reader.failed()) return walk;
  reader.expectFormat("netmend-walk", newestVersion);
  walk.title = root.text("title", "");
  if (root.has("board")) readBoard(root.at("board"), walk);
  walk.serial = root.text("serial", "");
  if (root.has("specimen"))
    walk.specimen = root.at("specimen").wordOf(specimenFrom, "good, faulty or unknown");
  if (root.has("mode")) walk.mode = readMode(root.at("mode"));
  if (root.has("other")) walk.other = readPoint(root.at("other"));
  walk.meter = root.text("meter", "");
  walk.by = root.text("by", "");
  if (root.has("condition")) walk.condition = readCondition(root.at("condition"));
  const auto each = [&](const char* key, auto take) {
    if (!root.has(key)) return;
    for (const auto& item : root.at(key).items()) {
      if (reader.failed()) return;
      take(item);
    }
  };
  each("points", [&](const auto& item) { walk.points.push_back(readPoint(item)); });
  each("readings", [&](const auto& item) { walk.readings.push_back(readReading(item, walk)); });
  each("skipped", [&](const auto& item) { walk.skipped.push_back(readPoint(item)); });
  each("entered", [&](const auto& item) { walk.entered.push_back(readEntered(item, walk)); });
  return walk;
}

} // namespace

Result<Walk> walkFromText(std::string_view text, const std::string& fileName) {
  const auto first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  if (first == std::string_view::npos) return failure({pattern("core", "the file is empty"), fileName});
  if (text[first] != '{' && text[first] != '[') return probing::walkFromTable(text, fileName);
  auto reader = JsonReader::ofText(text, fileName);
  if (!reader) return failure(reader.error());
  Walk walk = readWalk(*reader);
  return reader->result(std::move(walk));
}

Result<Walk> readWalkFile(const std::filesystem::path& path) {
  const auto text = readFile(path, 64u << 20);
  if (!text) return failure(text.error());
  return walkFromText(*text, path.string());
}

std::string walkToText(const Walk& walk) {
  json out = {{"format", "netmend-walk"}, {"version", newestVersion}};
  const auto text = [&](json& to, const char* key, const std::string& value) {
    if (!value.empty()) to[key] = value;
  };
  text(out, "title", walk.title);
  json board = json::object();
  text(board, "uuid", walk.boardUuid);
  text(board, "name", walk.boardName);
  text(board, "revision", walk.boardRevision);
  if (!board.empty()) out["board"] = board;
  text(out, "serial", walk.serial);
  out["specimen"] = word(walk.specimen);
  out["mode"] = word(walk.mode);
  out["other"] = written(walk.other);
  text(out, "meter", walk.meter);
  text(out, "by", walk.by);
  if (const json condition = written(walk.condition); !condition.empty()) out["condition"] = condition;
  const auto each = [&](const char* key, const auto& items, auto write) {
    json array = json::array();
    for (const auto& item : items)
      array.push_back(write(item));
    if (!array.empty()) out[key] = std::move(array);
  };
  each("points", walk.points, [](const ProbePoint& p) { return written(p); });
  each("readings", walk.readings, [&](const Reading& r) { return written(r, walk); });
  each("skipped", walk.skipped, [](const ProbePoint& p) { return written(p); });
  each("entered", walk.entered, [&](const EnteredExpectation& e) { return written(e, walk); });
  return out.dump(1, ' ', false, json::error_handler_t::replace) + "\n";
}

Result<void> writeWalkFile(const std::filesystem::path& path, const Walk& walk) {
  return writeFileAtomically(path, walkToText(walk));
}

} // namespace netmend
