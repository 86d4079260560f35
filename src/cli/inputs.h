#pragma once

#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"
#include "netmend/casework/good_walks.h"

namespace netmend {

/// Walks of good boards from files and from a job book, where one is named and there is a board.
[[nodiscard]] Result<std::vector<Walk>> goodWalksOf(const std::vector<std::string>& files,
                                                    const std::string& book, const BoardUnderWork& board);

} // namespace netmend
