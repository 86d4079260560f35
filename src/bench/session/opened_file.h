#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"

namespace netmend {

/// What opening a file gives: its board, or those in an archive of which one has to be chosen.
struct OpenedFile {
  std::optional<BoardUnderWork> board;
  std::vector<std::string> offered; ///< names inside the archive; empty when there is a board
};

/// Any file. The board of a ZIP archive, `inArchive` or the only one, is taken out into `folder` as a Netmend
/// board, named after the archive's own file, and opened from there: a job's board outlasts the archive.
[[nodiscard]] Result<OpenedFile> openFile(const std::filesystem::path& file, const std::string& inArchive,
                                          const std::filesystem::path& folder, const Progress& progress = {});

} // namespace netmend
