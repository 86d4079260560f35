#pragma once

#include <vector>

#include "netmend/board/board.h"

namespace netmend {

/// `throughPaths` of a part with these pins, as if it were on the board.
[[nodiscard]] Fact<std::vector<Through>> pathsIfFitted(const Board& board, const Part& part,
                                                       const std::vector<PinId>& pins);

} // namespace netmend
