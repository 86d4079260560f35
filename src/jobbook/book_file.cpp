#include "book_file.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <string_view>

#include <fcntl.h>
#include <soci/sqlite3/soci-sqlite3.h>
#include <sqlite3.h>
#include <unistd.h>

#include "migrations.h"

namespace netmend {

namespace {

namespace fs = std::filesystem;

constexpr Pattern makesOne = pattern("core", "a job book; `netmend job new` makes one");

fs::path folderOf(const fs::path& book) {
  const auto folder = book.parent_path();
  return folder.empty() ? fs::path(".") : folder;
}

/// What waits to be moved into the book's file by the next program that may write.
bool hasLog(const fs::path& book) {
  std::error_code none;
  const auto size = fs::file_size(book.string() + "-wal", none);
  return !none && size > 0;
}

/// A file that nobody can write is read as it is, without the lock that would have to be written beside it.
std::string unchanging(const fs::path& book) {
  constexpr std::string_view plain = "/-._~";
  std::string uri = "file:";
  for (const char c : fs::absolute(book).string()) {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte) != 0 || plain.find(c) != std::string_view::npos) {
      uri += c;
    } else {
      constexpr std::string_view digits = "0123456789ABCDEF";
      uri += {'%', digits[byte >> 4U], digits[byte & 15U]};
    }
  }
  return uri + "?immutable=1";
}

void openFile(soci::session& session, const std::string& file, std::string_view options) {
  session.open(soci::sqlite3, "dbname=\"" + file + "\" timeout=10" + std::string(options));
  session << "pragma busy_timeout = 10000";
}

void removeBook(const fs::path& book) {
  std::error_code none;
  for (const char* ending : {"", "-wal", "-shm", "-journal"})
    fs::remove(book.string() + ending, none);
}

} // namespace

bool canBeWritten(const fs::path& book) {
  const auto may = [](const fs::path& path) {
    return ::faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) == 0;
  };
  return may(book) && may(folderOf(book));
}

void connect(soci::session& session, const fs::path& book) {
  if (canBeWritten(book))
    openFile(session, book.string(), "");
  else if (hasLog(book))
    openFile(session, book.string(), " readonly=true");
  else
    openFile(session, unchanging(book), " readonly=true");
}

Result<void> checkBookFile(const fs::path& book) {
  std::error_code error;
  const auto status = fs::status(book, error);
  if (error && status.type() != fs::file_type::not_found)
    return failure({said(pattern("core", "cannot be read: {}"), error.message()), book.string()});
  if (!fs::exists(status))
    return failure({pattern("core", "there is no job book"), book.string(), "", {}, makesOne});
  if (fs::is_directory(status))
    return failure({pattern("core", "is a folder"), book.string(), "", {}, makesOne});
  std::ifstream file(book, std::ios::binary);
  if (!file)
    return failure(
        {said(pattern("core", "cannot be read: {}"), std::string(std::strerror(errno))), book.string()});
  std::array<char, 16> start{};
  file.read(start.data(), start.size());
  if (file.gcount() == 0)
    return failure({pattern("core", "is empty, and so no job book"), book.string(), "", {}, makesOne});
  // "Database File Format", 1.3 (sqlite.org/fileformat.html): each begins with this, the zero included.
  constexpr std::string_view magic("SQLite format 3\0", 16);
  if (std::string_view(start.data(), static_cast<std::size_t>(file.gcount())) != magic)
    return failure({pattern("core", "is not a job book"), book.string(), "", {}, makesOne});
  return {};
}

Result<void> checkBookTables(soci::session& session, const fs::path& book) {
  int ours = 0;
  session << "select count(*) from sqlite_master where type = 'table' and "
             "name in ('job', 'reading', 'repair_action', 'work_step', 'event')",
      soci::into(ours);
  if (ours < 5)
    return failure({pattern("core", "is a database, but not a job book"), book.string(), "", {}, makesOne});
  return {};
}

Result<void> makeBook(const fs::path& book) {
  const fs::path fresh = book.string() + ".new-" + std::to_string(::getpid());
  removeBook(fresh);
  struct Remover {
    fs::path path;
    ~Remover() { removeBook(path); }
  } const remover{fresh};
  {
    soci::session session;
    openFile(session, fresh.string(), "");
    if (auto made = migrate(session, fresh); !made) return made;
  }
  if (::link(fresh.c_str(), book.c_str()) == 0 || errno == EEXIST) return {};
  // Not every file system has hard links.
  std::error_code error;
  if (!fs::exists(book, error)) fs::rename(fresh, book, error);
  if (error) return failure({said(pattern("core", "cannot be made: {}"), error.message()), book.string()});
  return {};
}

Error onlyReadable(const fs::path& book) {
  return {pattern("core", "the job book can only be read"),
          book.string(),
          "",
          {},
          pattern("core", "a book, in a folder, that you may write")};
}

Error bookError(const soci::soci_error& error, const fs::path& book) {
  const auto* numbered = dynamic_cast<const soci::sqlite3_soci_error*>(&error);
  return bookError(numbered != nullptr ? numbered->result() : SQLITE_ERROR, error.what(), book);
}

Error bookError(int code, const std::string& said, const fs::path& book) {
  const auto told = [&](const Pattern& message, const Pattern& whatToDo) {
    return Error{message, book.string(), "", {}, whatToDo};
  };
  constexpr int withoutDetail = 0xff;
  switch (code & withoutDetail) {
  case SQLITE_FULL:
    return told(pattern("core", "the disk is full, so nothing of this was kept"),
                pattern("core", "some free space; then do it once more"));
  case SQLITE_CORRUPT:
    return told(pattern("core", "the job book is damaged"),
                pattern("core", "a copy of the book from before; keep the damaged one, too"));
  case SQLITE_NOTADB:
    return told(pattern("core", "is not a job book"), makesOne);
  case SQLITE_READONLY:
  case SQLITE_PERM:
    return onlyReadable(book);
  case SQLITE_BUSY:
  case SQLITE_LOCKED:
    return told(pattern("core", "another program is writing into the job book"),
                pattern("core", "wait until it is done; then do it once more"));
  case SQLITE_CANTOPEN:
    return told(pattern("core", "the job book cannot be opened"),
                pattern("core", "a folder that is there and that you may write"));
  case SQLITE_IOERR:
    return told(pattern("core", "the disk of the job book cannot be read or written"),
                pattern("core", "look after the disk; then do it once more"));
  default:
    return {netmend::said(pattern("core", "job book: {}"), said), book.string()};
  }
}

} // namespace netmend
