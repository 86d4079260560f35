#pragma once

#include <string>
#include <vector>

#include "netmend/casework/good_walks.h"
#include "netmend/casework/loaded_board.h"

namespace netmend {

/// Walks of good boards from files and from a job book, where one is named and there is a board.
[[nodiscard]] Result<std::vector<Walk>> goodWalksOf(const std::vector<std::string>& files,
                                                    const std::string& book, const Lookup* lookup);

} // namespace netmend
