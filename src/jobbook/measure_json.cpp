#include "measure_json.h"

#include <nlohmann/json.hpp>

#include "netmend/probing/words.h"
#include "reading_words.h"

namespace netmend {

namespace {

using nlohmann::json;

constexpr std::array<Word<StepOutcome>, 3> outcomeWords{{{StepOutcome::agrees, "agrees"},
                                                         {StepOutcome::disagrees, "disagrees"},
                                                         {StepOutcome::notCompared, "not compared"}}};

json pointOf(const ProbePoint& point) {
  return {{"pin", point.pin.value}, {"label", point.label}};
}
ProbePoint pointIn(const json& in) {
  return {PinId(in.at("pin").get<std::uint64_t>()), in.at("label")};
}

} // namespace

std::string pointsText(const std::vector<ProbePoint>& points) {
  if (points.empty()) return {};
  auto out = json::array();
  for (const ProbePoint& point : points)
    out.push_back(pointOf(point));
  return out.dump();
}

std::vector<ProbePoint> pointsFrom(const std::string& text) {
  std::vector<ProbePoint> out;
  if (text.empty()) return out;
  for (const json& point : json::parse(text))
    out.push_back(pointIn(point));
  return out;
}

std::string measureText(const std::optional<StepMeasure>& measure) {
  if (!measure) return {};
  json out{
      {"mode", word(measure->mode)}, {"point", pointOf(measure->point)}, {"other", pointOf(measure->other)}};
  if (measure->interval) out["interval"] = {measure->interval->lowest, measure->interval->highest};
  if (measure->overLimit) out["over_limit"] = true;
  return out.dump();
}

std::optional<StepMeasure> measureFrom(const std::string& text) {
  if (text.empty()) return std::nullopt;
  const json in = json::parse(text);
  StepMeasure out;
  out.mode = storedBy(readingModeFrom, in.at("mode"));
  out.point = pointIn(in.at("point"));
  out.other = pointIn(in.at("other"));
  if (in.contains("interval"))
    out.interval =
        ValueInterval{in.at("interval").at(0).get<double>(), in.at("interval").at(1).get<double>()};
  out.overLimit = in.value("over_limit", false);
  return out;
}

std::string checkReadText(const std::optional<CheckRead>& read) {
  if (!read) return {};
  json out{{"outcome", wordFor(outcomeWords, read->outcome)}};
  if (read->value) out["value"] = *read->value;
  return out.dump();
}

std::optional<CheckRead> checkReadFrom(const std::string& text) {
  if (text.empty()) return std::nullopt;
  const json in = json::parse(text);
  CheckRead out;
  out.outcome = stored(outcomeWords, in.at("outcome"));
  if (in.contains("value")) out.value = in.at("value").get<double>();
  return out;
}

} // namespace netmend
