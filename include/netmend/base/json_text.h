#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "netmend/base/error.h"

namespace netmend {

/// What a document may hold, so that a hostile one cannot eat the memory. A member or a list costs about a
/// hundred bytes once read, a number sixteen.
struct JsonLimits {
  std::size_t bytes = 128u << 20;
  std::size_t depth = 12;
  std::size_t members = 10'000'000; ///< of objects, and lists and objects themselves
};

/// Reads JSON strictly: no comments, no name twice in an object (a reader would drop one silently).
/// Errors have line and column, or a JSON pointer, but no file.
[[nodiscard]] Result<nlohmann::json> parseJson(std::string_view text, const JsonLimits& limits = {});

/// One step of a JSON pointer (RFC 6901): `/` and the member's name, escaped.
[[nodiscard]] std::string jsonPointerStep(std::string_view name);

/// A few words for a message: the value's text, shortened.
[[nodiscard]] std::string shortText(const nlohmann::json& value);

} // namespace netmend
