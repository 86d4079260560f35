#pragma once

#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "netmend/base/geometry.h"
#include "netmend/isolation/isolation.h"
#include "netmend/jobbook/job.h"

namespace netmend {

/// For people and scripts, places are in millimetres.
[[nodiscard]] inline nlohmann::json pointJsonMm(Point p) {
  return nlohmann::json::array({p.x.mm(), p.y.mm()});
}

[[nodiscard]] inline nlohmann::json wayJsonMm(const std::vector<Point>& way) {
  auto out = nlohmann::json::array();
  for (const Point p : way)
    out.push_back(pointJsonMm(p));
  return out;
}

[[nodiscard]] inline std::string_view faultWord(FaultKind kind) {
  switch (kind) {
  case FaultKind::sound:
    return "sound";
  case FaultKind::open:
    return "open";
  case FaultKind::deadPin:
    return "dead pin";
  case FaultKind::shortToGround:
    return "short to ground";
  case FaultKind::noneOfThese:
    return "none of these";
  }
  return "?";
}

/// Empty: not judged.
[[nodiscard]] inline std::string_view verdictWord(const JobReading& reading) {
  return reading.judged ? word(reading.kind()) : "";
}

} // namespace netmend
