#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
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
/// Those that a job book keeps for this very board description.
[[nodiscard]] Result<std::vector<Walk>> keptGoodWalks(const JobBook& book, const Lookup& lookup);

/// Expected values of the points of some walks, from good walks.
[[nodiscard]] ExpectedTable expectedValues(const std::vector<Walk>& good, const Lookup* lookup,
                                           const ProbingData& data);

/// `[MODE] POINT [to POINT] VALUE`, for example `J4.7 OL` or `continuity J4.7 to C23.1 0.4`. Labels may hold
/// blanks (`pad of J4.7`). Points are matched to the board where there is one.
[[nodiscard]] Result<Reading> parseReading(const std::string& text, const Walk& defaults,
                                           const Lookup* lookup);

} // namespace netmend
