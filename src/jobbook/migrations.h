#pragma once

#include <filesystem>
#include <memory>

#include <soci/soci.h>

#include "netmend/base/error.h"

namespace netmend {

/// Brings the book's tables up to date, all steps or none, and keeps a copy of the file as it was beside it
/// (`book.version-3`). Refuses a book from the future.
[[nodiscard]] Result<void> migrate(soci::session& sql, const std::filesystem::path& path);
/// The same of a book that no file holds.
[[nodiscard]] Result<void> migrate(soci::session& sql);

[[nodiscard]] Result<void> refuseNewer(soci::session& sql, const std::filesystem::path& path);

/// Whether the book is of an earlier version than today's.
[[nodiscard]] bool isOlder(soci::session& sql);

/// A copy of the book that lives in memory alone. Throws soci::soci_error.
[[nodiscard]] std::unique_ptr<soci::session> inMemory(soci::session& sql);

} // namespace netmend
