#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "netmend/base/error.h"

namespace netmend {

/// The whole file as bytes. Refuses directories and anything above `limit` bytes.
[[nodiscard]] Result<std::string> readFile(const std::filesystem::path& path,
                                           std::uintmax_t limit = 512u << 20);

/// Replaces `path` so that after a crash it holds either the old or the new content:
/// a temporary file in the same folder, fsync, rename, fsync of the folder.
[[nodiscard]] Result<void> writeFileAtomically(const std::filesystem::path& path, std::string_view content);

} // namespace netmend
