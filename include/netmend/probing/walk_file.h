#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "netmend/base/error.h"
#include "netmend/probing/walk.h"

/// `*.netmend-walk.json` and the plain table; docs/formats/walk.md.
namespace netmend {

/// Reads a walk in either format, told apart by its content. Errors name the file and a JSON pointer or line.
[[nodiscard]] Result<Walk> readWalkFile(const std::filesystem::path& path);
[[nodiscard]] Result<Walk> walkFromText(std::string_view text, const std::string& fileName);

/// Writes JSON, sorted keys, atomically.
[[nodiscard]] Result<void> writeWalkFile(const std::filesystem::path& path, const Walk& walk);
[[nodiscard]] std::string walkToText(const Walk& walk);

} // namespace netmend
