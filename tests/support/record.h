#pragma once

#include <cstdlib>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "netmend/base/file.h"

/// Records of what came out, kept beside the tests and compared exactly. A record says that nothing has
/// changed, not that it is right: that is for references and for what is worked out by hand. To record anew
/// what was meant to change: `NETMEND_RECORD=1 .build/check/tests/…/test_FOLDER '[record]'`, and read the
/// difference before it is committed.
namespace netmend::test {

/// As text for people: what fits stands in one line.
inline std::string readable(const nlohmann::json& value, std::size_t indent = 0) {
  const std::string line = value.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  if (line.size() + indent <= 116 || !value.is_structured() || value.empty()) return line;
  const std::string blanks(indent + 1, ' ');
  std::string out;
  for (const auto& [key, member] : value.items()) {
    out += out.empty() ? "\n" : ",\n";
    const std::string head = value.is_object() ? nlohmann::json(key).dump() + ": " : "";
    out += blanks + head + readable(member, indent + 1);
  }
  return (value.is_object() ? "{" : "[") + out + "\n" + std::string(indent, ' ') +
         (value.is_object() ? "}" : "]");
}

inline void compareWithRecord(const std::string& file, const nlohmann::json& found) {
  const std::string text = readable(found) + "\n";
  if (std::getenv("NETMEND_RECORD") != nullptr) {
    std::ofstream(file, std::ios::binary) << text;
    return;
  }
  const auto kept = readFile(file);
  if (!kept) FAIL(kept.error().text());
  if (*kept == text) return;
  const auto difference = nlohmann::json::diff(nlohmann::json::parse(*kept), nlohmann::json::parse(text));
  for (std::size_t i = 0; i < std::min<std::size_t>(difference.size(), 5); ++i)
    UNSCOPED_INFO(difference[i].dump().substr(0, 300));
  FAIL(file << " says something else, in " << difference.size() << " places");
}

} // namespace netmend::test
