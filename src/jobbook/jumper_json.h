#pragma once

#include <string>

#include "netmend/jobbook/job.h"

namespace netmend {

/// A jumper as the book keeps it.
[[nodiscard]] std::string jumperText(const JumperRecord& jumper);
/// Throws what nlohmann_json or SOCI throw for a damaged entry.
[[nodiscard]] JumperRecord jumperFrom(const std::string& text);

} // namespace netmend
