#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "netmend/base/error.h"
#include "netmend/board/board.h"

/// Netmend's own board file, `*.netmend-board.json`; described in docs/formats/board.md and by the JSON
/// Schema beside it.
namespace netmend {

/// The file format that this program writes. It reads this one and all older ones.
inline constexpr int boardFileVersion = 3;

/// Writes the board so that reading it gives an equal one and writing that gives the same bytes. The
/// file is replaced atomically. Fails, with the file as it was, also for what JSON cannot hold: text
/// that is not UTF-8, infinite numbers, lengths above `largestLength`.
[[nodiscard]] Result<void> writeBoardFile(const std::filesystem::path& path, const Board& board);

/// The same from and to memory. `file` is for messages.
[[nodiscard]] Result<Board> boardFromText(std::string_view text, std::string file = {});
[[nodiscard]] Result<std::string> boardToText(const Board& board);

/// Whether `boardToText` would take the board; needs no memory for the text.
[[nodiscard]] Result<void> checkWritable(const Board& board);

/// Whether a file's content is meant to be a board of this format, whatever its version.
[[nodiscard]] bool looksLikeBoardFile(std::string_view content);

} // namespace netmend
