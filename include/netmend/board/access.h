#pragma once

#include "netmend/board/board.h"

namespace netmend {

/// How a pad can be probed from its own side. Known from the board, or derived and marked guessed:
/// mask closed → underMask; a lid over its part → underLid; a grid array or a body over the pad with no
/// edge near → underPart; otherwise open.
[[nodiscard]] Fact<Access> accessOf(const Board& board, const Pad& pad);
[[nodiscard]] Fact<Access> accessOf(const Board& board, const Via& via);
/// The easiest of the pin's pads.
[[nodiscard]] Fact<Access> accessOf(const Board& board, PinId pin);

} // namespace netmend
