#pragma once

#include <filesystem>

#include <soci/soci.h>

#include "netmend/base/error.h"

namespace netmend {

/// Brings the book's tables up to date, all steps or none. Refuses a book from the future.
[[nodiscard]] Result<void> migrate(soci::session& sql, const std::filesystem::path& path);

/// Refuses a book that is not of today's version.
[[nodiscard]] Result<void> checkVersion(soci::session& sql, const std::filesystem::path& path);

} // namespace netmend
