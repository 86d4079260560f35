#pragma once

#include <optional>
#include <vector>

#include "netmend/jumper/proposal.h"

/// What a line's own copper may carry: the measure for the wire that takes its place.
namespace netmend {

/// Current that warms a track by `rise` in the long run: IPC-2221, I = k·ΔT^0.44·A^0.725 with A in square
/// mils, k 0.048 on outer layers and 0.024 inside.
[[nodiscard]] Amperes trackCurrent(Length width, Length thickness, Kelvins rise, bool inner);
/// The same for a plated hole: the annulus of its barrel, π·p·(d + p), as an outer track's section.
[[nodiscard]] Amperes barrelCurrent(Length drill, Length plating, Kelvins rise);

/// The weakest piece of the series way through the break: of all tracks, barrels and pads whose loss alone
/// would part the terminals on its two sides, the broken ones among them. Beyond a branch nothing counts, so
/// that it is never less than what the break can have carried. Broken pieces side by side count together.
/// Nothing when no width on the way is known.
[[nodiscard]] std::optional<CopperLimit> seriesLimit(const Board& board, const CopperGraph& graph,
                                                     const BreakEnds& ends,
                                                     const std::vector<std::size_t>& cut, Kelvins rise);

/// The current that a wire across this break is chosen for, and why: as asked for; as the net is rated; what
/// the series way carries, and no more than the net's role allows. A net of unknown role whose copper is all
/// narrow counts as a signal. With no copper known, the role's default. Length and landing stay open.
[[nodiscard]] WireRequest currentFor(const Board& board, const JumperRequest& request, const BreakEnds& ends,
                                     const WireTable& table);

} // namespace netmend
