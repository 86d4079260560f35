#pragma once

#include <filesystem>

#include <soci/soci.h>

#include "netmend/base/error.h"
#include "netmend/jobbook/job_book.h"

/// The file of a job book: what it must look like before a connection to it is trusted.
namespace netmend {

/// Refuses what is not there, is empty, or is something else, each with what to do about it.
[[nodiscard]] Result<void> checkBookFile(const std::filesystem::path& book);

/// Opens a connection, to write as well where that is possible. Throws soci::soci_error.
void connect(soci::session& session, const std::filesystem::path& book);

/// Neither file nor folder refuses to be written.
[[nodiscard]] bool canBeWritten(const std::filesystem::path& book);

/// Refuses a database of somebody else, before anything in it is changed.
[[nodiscard]] Result<void> checkBookTables(soci::session& session, const std::filesystem::path& book);

/// Makes an empty book, whole or not at all; one that another program makes meanwhile is left as it is.
[[nodiscard]] Result<void> makeBook(const std::filesystem::path& book);

/// Of a book that was to be changed.
[[nodiscard]] Error onlyReadable(const std::filesystem::path& book);

/// What SQLite reports by number (sqlite.org/rescode.html), in words with what to do.
[[nodiscard]] Error bookError(int code, const std::string& said, const std::filesystem::path& book);
[[nodiscard]] Error bookError(const soci::soci_error& error, const std::filesystem::path& book);

} // namespace netmend
