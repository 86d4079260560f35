#pragma once

#include "netmend/base/said.h"
#include "netmend/casework/proof.h"
#include "netmend/netgraph/place_name.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// "via 2.4 mm right of U102.76", "track from R107.1 towards U102.76, last 5 mm, inner layer".
[[nodiscard]] Said nameOf(const PlaceName& name);
/// For a reader who has no picture beside it: how right and left are meant.
[[nodiscard]] Said rightAndLeftSaid();
/// Where a lead is, or was: a pin by its label, other copper by what is beside it. `places` may be null, for
/// want of a board; then it is the handle.
[[nodiscard]] Said nameOf(const ProbePoint& point, const PlaceNames* places);
/// What is to be measured again: a place, or the way between two.
[[nodiscard]] Said nameOf(const ProofPoint& point, const PlaceNames* places);

} // namespace netmend
