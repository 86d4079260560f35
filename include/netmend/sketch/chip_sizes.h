#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/geometry.h"

namespace netmend {

/// A part with a terminal at each end, in the size that its code names: `0402` in hundredths of an inch.
struct ChipSize {
  std::string code;
  std::string metric; ///< the same in tenths of a millimetre: `1005`
  Size body;          ///< along and across
  Length padsApart;   ///< middle to middle
  Size pad;
  std::string source;
};

struct ChipSizes {
  std::vector<ChipSize> sizes; ///< by rising distance of the pads

  /// By its code in inches; a metric code is known only with `M` behind it (`1005M`), since some stand for
  /// another size in inches. Null: no such size.
  [[nodiscard]] const ChipSize* find(std::string_view code) const;
  /// The one whose ends lie nearest to this far apart, terminal to terminal. Sizes are not empty.
  [[nodiscard]] const ChipSize& nearest(Length apart) const;
};

/// Reads data/part_sizes.json. Fails naming file and JSON pointer.
[[nodiscard]] Result<ChipSizes> loadChipSizes(const std::filesystem::path& path);

} // namespace netmend
