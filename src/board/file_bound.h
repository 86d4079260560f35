#pragma once

#include <cstddef>
#include <optional>

#include "netmend/board/board.h"

namespace netmend {

/// What a board takes in a file at the most, found without writing any of it.
struct FileBound {
  std::size_t bytes = 0;
  std::size_t members = 0; ///< as `JsonLimits` counts them
};

/// Nothing for a board with a value that may have no place in a file: a length above `largestLength`, a
/// number that is none, a text that is not UTF-8. Ids and references are not looked at.
[[nodiscard]] std::optional<FileBound> fileBound(const Board& board);

} // namespace netmend
