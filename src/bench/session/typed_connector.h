#pragma once

#include <cstddef>
#include <filesystem>
#include <string>

#include "netmend/casework/board_under_work.h"

namespace netmend {

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
[[nodiscard]] Result<BoardUnderWork> makeConnectorFile(const TypedConnector& connector,
                                                       const std::filesystem::path& folder);

} // namespace netmend
