#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/edit.h"

namespace netmend {

/// An append-only file of edits, one JSON line each, that survives a kill: what is done to a board since
/// it was last saved. Described in docs/formats/board.md.
class Journal {
public:
  Journal(Journal&& other) noexcept;
  Journal& operator=(Journal&& other) noexcept;
  Journal(const Journal&) = delete;
  Journal& operator=(const Journal&) = delete;
  ~Journal();

  /// Writes the edit behind the others. When this returns without an error the edit is on the disk
  /// (fdatasync). On an error (full disk, edit that JSON cannot hold) the file is as before; if even that
  /// cannot be ensured, every later append fails too.
  [[nodiscard]] Result<void> append(const Edit& edit);

  /// Forgets all edits, once the board itself has been saved: the file starts anew from `key`.
  [[nodiscard]] Result<void> restart(const std::string& key);

private:
  friend struct JournalAccess;
  Journal(int fd, std::filesystem::path path, std::uintmax_t length);

  int fd_ = -1;
  std::filesystem::path path_;
  std::uintmax_t length_ = 0; ///< of what is safely there
  bool broken_ = false;
};

struct OpenedJournal {
  Journal journal;
  std::vector<Edit> edits;  ///< all that were appended, oldest first
  bool droppedTorn = false; ///< a last line was cut off by a kill or crash, and has been removed
};

/// Opens the journal, or makes one. `key` says what the edits start from, for example the board's uuid and a
/// checksum of its file; a journal of another key is refused. A torn last line (no line end, or blocks of
/// zeros that never reached the disk) is dropped; any other damage is an error with its line. The file
/// is locked: a second program that opens it is refused.
[[nodiscard]] Result<OpenedJournal> openJournal(const std::filesystem::path& path, const std::string& key);

/// An edit as a line of a journal has it. Errors have a place.
[[nodiscard]] Result<Edit> editFromText(std::string_view text);

/// Applies edits one after the other. The error's place names the edit as a line of the journal.
[[nodiscard]] Result<void> replay(Board& board, const std::vector<Edit>& edits);

} // namespace netmend
