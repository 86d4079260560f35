#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"
#include "netmend/jobbook/job_book.h"
#include "netmend/probing/verdict.h"
#include "netmend/probing/walk.h"

namespace netmend {

/// Walks from files, matched to the board where there is one.
[[nodiscard]] Result<std::vector<Walk>> loadWalks(const std::vector<std::string>& files,
                                                  const Lookup* lookup);
/// The same, marked as walks of good boards. One of a faulty board is refused.
[[nodiscard]] Result<std::vector<Walk>> loadGoodWalks(const std::vector<std::string>& files,
                                                      const Lookup* lookup);
/// Those that a job book keeps for this very board description, also under its former uuid.
[[nodiscard]] Result<std::vector<Walk>> keptGoodWalks(const JobBook& book, const BoardUnderWork& board);

/// Expected values of the points of some walks, from good walks.
[[nodiscard]] ExpectedTable expectedValues(const std::vector<Walk>& good, const Lookup* lookup,
                                           const ProbingData& data);

} // namespace netmend
