#pragma once

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

/// Figures kept in a JSON file beside a test. Such a record tells that something has changed, not that it was
/// right before: what matters is worked out in tests of its own. Looked through and recorded anew by
/// NETMEND_RECORD=1.
namespace netmend::test {

/// Nine digits: compilers differ in the last ones.
inline nlohmann::json figure(double value) {
  if (!std::isfinite(value)) return fmt::format("{}", value);
  return nlohmann::json::parse(fmt::format("{:.9g}", value));
}

/// The first place where they differ; empty: nowhere.
inline std::string differenceOf(const nlohmann::json& kept, const nlohmann::json& now,
                                const std::string& at) {
  if (kept.is_number() && now.is_number()) {
    const auto a = kept.get<double>(), b = now.get<double>();
    if (std::abs(a - b) <= 1e-10 + 2e-6 * std::max(std::abs(a), std::abs(b))) return {};
  } else if (kept.type() == now.type() && kept.is_structured() && kept.size() == now.size()) {
    for (const auto& [key, value] : kept.items()) {
      const bool there = kept.is_array() || now.contains(key);
      if (!there) return at + "/" + key + " is gone";
      const auto& other = kept.is_array() ? now[std::stoul(key)] : now[key];
      if (auto found = differenceOf(value, other, at + "/" + key); !found.empty()) return found;
    }
    return {};
  } else if (kept == now) {
    return {};
  }
  return at + ": " + kept.dump() + " was, " + now.dump() + " is";
}

/// Lists of lists with a line a row, so that a change can be read.
inline std::string inRows(const nlohmann::json& json, int depth = 0) {
  const bool rows = depth < 3 && json.is_structured() && !json.empty() &&
                    (json.is_object() || json.front().is_structured());
  if (!rows) return json.dump();
  std::string out;
  for (const auto& [key, value] : json.items())
    out += (out.empty() ? "\n" : ",\n") + std::string(static_cast<std::size_t>(depth) + 1, ' ') +
           (json.is_object() ? nlohmann::json(key).dump() + ": " : std::string()) + inRows(value, depth + 1);
  return json.is_object() ? "{" + out + "}" : "[" + out + "]";
}

/// `file` is in the folder tests.
inline void checkFigures(const std::string& file, const std::string& name, const nlohmann::json& now) {
  const std::filesystem::path path = std::filesystem::path(NETMEND_SOURCE_DIR) / "tests" / file;
  nlohmann::json all = nlohmann::json::object();
  if (std::filesystem::exists(path)) all = nlohmann::json::parse(std::ifstream(path));
  if (std::getenv("NETMEND_RECORD") != nullptr) {
    all[name] = now;
    std::ofstream(path) << inRows(all) << "\n";
  }
  REQUIRE(all.contains(name));
  CHECK(differenceOf(all[name], now, name) == "");
}

} // namespace netmend::test
