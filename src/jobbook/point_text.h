#pragma once

#include <vector>

#include <nlohmann/json.hpp>

#include "netmend/base/geometry.h"

/// Points as the book keeps them: pairs of whole nanometres.
namespace netmend {

[[nodiscard]] inline nlohmann::json pointJson(Point p) {
  return nlohmann::json::array({p.x.nm, p.y.nm});
}

[[nodiscard]] inline Point pointFrom(const nlohmann::json& j) {
  return {Length(j.at(0).get<std::int64_t>()), Length(j.at(1).get<std::int64_t>())};
}

[[nodiscard]] inline nlohmann::json wayJson(const std::vector<Point>& way) {
  auto out = nlohmann::json::array();
  for (const Point p : way)
    out.push_back(pointJson(p));
  return out;
}

[[nodiscard]] inline std::vector<Point> wayFrom(const nlohmann::json& j) {
  std::vector<Point> out;
  for (const auto& p : j)
    out.push_back(pointFrom(p));
  return out;
}

} // namespace netmend
