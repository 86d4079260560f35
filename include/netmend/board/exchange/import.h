#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/length.h"
#include "netmend/base/progress.h"
#include "netmend/board/board.h"

namespace netmend {

/// A board as read, and what the user should know about how it was read: sentences that say what the
/// file left open, what was left out and where ("line 12: …").
struct Imported {
  Board board;
  std::vector<Said> notices;
  std::string digest{}; ///< SHA-256 of the file's bytes: the very description that was read
  /// What the board's uuid was made of this content before it came from a SHA-256: walks of good boards may
  /// be kept under it. Empty where the file has a uuid of its own.
  std::string formerUuid{};
};

struct ImportOptions {
  /// Name of a `BoardFormat`; empty: chosen by the file's content, then by its extension.
  std::string format{};
  /// Where a file draws no body, it is guessed as the hull of the pads and this margin.
  Length bodyMargin = Length(250'000);
  /// Which board of a ZIP archive, where it holds several (see zip.h).
  std::string inArchive{};
  Progress progress{};
};

/// What a reader gets: the whole file, its name for messages, and the options.
struct ImportSource {
  std::string_view content;
  std::string file; ///< as given by the user; may be empty
  ImportOptions options{};
};

/// One line of the table of formats.
struct BoardFormat {
  std::string_view name;       ///< for `ImportOptions::format` and command lines
  std::string_view title;      ///< for people
  std::string_view extensions; ///< with their points, lower case, separated by spaces
  bool (*recognises)(std::string_view content);
  Result<Imported> (*read)(const ImportSource& source);
  bool mendsText = false; ///< `read` takes what is not UTF-8
};

/// Reads a board file of any known format, or a ZIP archive with one in it. Every failure names the file, and
/// the place in it where there is one; references within the board hold (`checkReferences`).
[[nodiscard]] Result<Imported> importBoard(const std::filesystem::path& path,
                                           const ImportOptions& options = {});

/// The same for content that is already in memory. `source.file` gives the extension and the board's
/// name where the content has none.
[[nodiscard]] Result<Imported> importBoard(const ImportSource& source);

} // namespace netmend
