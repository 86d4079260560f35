#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/lookup.h"
#include "netmend/netgraph/board_graph.h"
#include "netmend/netgraph/line.h"
#include "netmend/probing/verdict.h"
#include "netmend/probing/walk.h"

namespace netmend {

/// A board read from a file in any format, with what questions are asked of.
struct LoadedBoard {
  std::unique_ptr<const Board> board; ///< on the heap: `lookup` refers to it
  std::unique_ptr<const Lookup> lookup;
  std::vector<std::string> notices;
};
[[nodiscard]] Result<LoadedBoard> loadBoard(const std::string& file);

/// The pin so labelled; an error when there is none or more than one.
[[nodiscard]] Result<PinId> pinLabelled(const Lookup& lookup, const std::string& label);
/// The net so named; an error when there is none or more than one.
[[nodiscard]] Result<NetId> netNamed(const Lookup& lookup, const std::string& name);

/// Walks from files, matched to the board where there is one.
[[nodiscard]] Result<std::vector<Walk>> loadWalks(const std::vector<std::string>& files,
                                                  const Lookup* lookup);
/// The same, marked as walks of good boards, and those kept in a job book for this board.
[[nodiscard]] Result<std::vector<Walk>> loadGoodWalks(const std::vector<std::string>& files,
                                                      const std::string& book, const Lookup* lookup);

/// `[MODE] POINT [to POINT] VALUE`, for example `J4.7 OL` or `continuity J4.7 to C23.1 0.4`. Labels may hold
/// blanks
/// (`pad of J4.7`). Points are matched to the board where there is one.
[[nodiscard]] Result<Reading> parseReading(const std::string& text, const Walk& defaults,
                                           const Lookup* lookup);

/// Expected values of the points of some walks, from good walks.
[[nodiscard]] ExpectedTable expectedValues(const std::vector<Walk>& good, const Lookup* lookup,
                                           const ProbingData& data);

} // namespace netmend
