#pragma once

#include "netmend/board/board.h"

namespace netmend {

/// How a pad can be probed from its own side; from the easier side if it is on both. Known from the board,
/// or derived and marked guessed, the hardest that applies: mask closed → underMask; a fitted lid over its
/// part → underLid; a ball of a grid array (a chip's pin named as JEDEC names them, `B7`, on one side),
/// or copper deeper than `coveredDepth` inside the body of its own fitted part → underPart; else open.
/// O(log n); a pad of no part, and a via, look through all bodies on their side.
[[nodiscard]] Fact<Access> accessOf(const Board& board, const Pad& pad);
/// From the easier of the faces that it reaches. Unknown mask is taken as tented. Unknown when it reaches
/// neither face (a buried via), so that it is never taken for open.
[[nodiscard]] Fact<Access> accessOf(const Board& board, const Via& via);
/// The easiest of the pin's pads; unknown when it has none. O(pads): for many pins ask for the pads that
/// `Lookup` knows.
[[nodiscard]] Fact<Access> accessOf(const Board& board, PinId pin);

/// A probe tip reaches copper up to this far under a body, measured from the body's edge to the copper's
/// nearest point (common practice, no source; courtyards as drawn in CAD reach 0.25 to 0.5 mm beyond).
inline constexpr Length coveredDepth{750'000};

} // namespace netmend
