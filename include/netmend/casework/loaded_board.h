#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/lookup.h"

namespace netmend {

/// A board read from a file in any format, with what questions are asked of.
struct LoadedBoard {
  std::unique_ptr<const Board> board; ///< on the heap: `lookup` refers to it
  std::unique_ptr<const Lookup> lookup;
  std::vector<Said> notices;
};
/// `inArchive`: which board of a ZIP archive, where it holds several.
[[nodiscard]] Result<LoadedBoard> loadBoard(const std::filesystem::path& file,
                                            const std::string& inArchive = {});
[[nodiscard]] LoadedBoard loadedBoard(Board board);

/// The pin so labelled; an error when there is none or more than one.
[[nodiscard]] Result<PinId> pinLabelled(const Lookup& lookup, const std::string& label);
/// The net so named; an error when there is none or more than one.
[[nodiscard]] Result<NetId> netNamed(const Lookup& lookup, const std::string& name);

} // namespace netmend
