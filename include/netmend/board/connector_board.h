#pragma once

#include <cstddef>
#include <string>

#include "netmend/base/error.h"
#include "netmend/board/board.h"

namespace netmend {

/// The least board: one connector and its pins; no nets, no coordinates. With one row the pins are named
/// `1`, `2` …; with more each row has a letter and its own count, `A1` … `B1` …, without the letters that are
/// taken for others (I, O, Q, S, X, Z; as JEDEC letters the rows of grid arrays).
/// Fails for no pins, more than 10,000, or pins that do not fill their rows.
[[nodiscard]] Result<Board> makeConnectorBoard(std::string reference, std::size_t pins, std::size_t rows = 1);

/// Puts one more connector on a board. Fails, with the board as it was, as above, and where the reference is
/// there already.
[[nodiscard]] Result<void> addConnector(Board& board, std::string reference, std::size_t pins,
                                        std::size_t rows = 1);

} // namespace netmend
