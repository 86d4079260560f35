#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/progress.h"
#include "netmend/board/lookup.h"
#include "netmend/netgraph/board_graph.h"
#include "netmend/netgraph/place_name.h"

namespace netmend {

/// A board under work with all that is asked of it. Its parts never change, so threads may share them.
/// Without a board all of them are null.
struct BoardUnderWork {
  std::shared_ptr<const Board> board;
  std::shared_ptr<const Lookup> lookup;
  std::shared_ptr<const PlaceNames> places;
  std::shared_ptr<const BoardGraph> graph;
  std::filesystem::path file;
  std::string digest;     ///< SHA-256 of the file: the very description that a job used
  std::string formerUuid; ///< as of `Imported`
  std::vector<Said> notices;
};

/// Reads a board in any format and follows its copper. `inArchive`: which board of a ZIP archive, where it
/// holds several. Fails where it was told to stop.
[[nodiscard]] Result<BoardUnderWork> openBoard(const std::filesystem::path& file,
                                               const std::string& inArchive = {},
                                               const Progress& progress = {});
/// The same with a board that has been read or made already.
[[nodiscard]] BoardUnderWork underWork(std::shared_ptr<const Board> board, const Progress& progress = {});
[[nodiscard]] BoardUnderWork underWork(Board board, const Progress& progress = {});

/// The pin so labelled; an error when there is none or more than one.
[[nodiscard]] Result<PinId> pinLabelled(const Lookup& lookup, const std::string& label);
/// The net so named; an error when there is none or more than one.
[[nodiscard]] Result<NetId> netNamed(const Lookup& lookup, const std::string& name);

} // namespace netmend
