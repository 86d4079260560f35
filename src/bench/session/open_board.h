#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/progress.h"
#include "netmend/board/lookup.h"
#include "netmend/netgraph/board_graph.h"
#include "netmend/netgraph/place_name.h"

namespace netmend {

/// A board under work with all that is asked of it. Its parts never change, so threads may share them.
struct OpenBoard {
  std::shared_ptr<const Board> board;
  std::shared_ptr<const Lookup> lookup;
  std::shared_ptr<const BoardGraph> graph;
  std::shared_ptr<const PlaceNames> places;
  std::filesystem::path file;
  std::string digest; ///< SHA-256 of the file: the very description that a job used
  std::vector<Said> notices;
};

/// Reads a board in any format and builds its copper graph.
[[nodiscard]] Result<OpenBoard> openBoard(const std::filesystem::path& file, const Progress& progress = {});

/// What opening a file gives: its board, or those in an archive of which one has to be chosen.
struct OpenedFile {
  std::optional<OpenBoard> board;
  std::vector<std::string> offered; ///< names inside the archive; empty when there is a board
};

/// The same for any file. The board of a ZIP archive, `inArchive` or the only one, is taken out into `folder`
/// as a Netmend board, named after the archive's own file, and opened from there: a job's board outlasts the
/// archive.
[[nodiscard]] Result<OpenedFile> openFile(const std::filesystem::path& file, const std::string& inArchive,
                                          const std::filesystem::path& folder, const Progress& progress = {});

/// A connector typed in one line: `J4, 40 pins, two rows`, `connector, 24 pins`, `J7 6`. The words may be in
/// any order; a lone number is the pin count, a word that is none of them the reference (`J1` without one).
/// Errors say what is missing.
struct TypedConnector {
  std::string reference = "J1";
  std::size_t pins = 0;
  std::size_t rows = 1;
  friend bool operator==(const TypedConnector&, const TypedConnector&) = default;
};
[[nodiscard]] Result<TypedConnector> parseConnector(const std::string& text);

/// One more of them on a board.
[[nodiscard]] Result<Board> withConnector(const Board& board, const TypedConnector& connector);

/// Makes the least board of a typed connector and writes it to `folder`, so that walks and jobs can refer to
/// it.
[[nodiscard]] Result<OpenBoard> makeConnectorFile(const TypedConnector& connector,
                                                  const std::filesystem::path& folder);

} // namespace netmend
