#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "netmend/board/edit.h"
#include "netmend/jumper/zone_rules.h"
#include "netmend/sketch/chip_sizes.h"

namespace netmend {

/// What a script did.
struct ScriptDone {
  std::size_t steps = 0;
  std::vector<Edit> edits; ///< one for each step that changed something, in their order
};

/// Applies a script of drawing steps (docs/formats/edits.md) to a board: all of it, or nothing. Errors name
/// `file` and the step as a JSON pointer.
[[nodiscard]] Result<ScriptDone> applyScript(Board& board, std::string_view text, const std::string& file,
                                             const ChipSizes& sizes, const ZoneRules& zones);

} // namespace netmend
