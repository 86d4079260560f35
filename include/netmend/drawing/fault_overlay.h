#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/overlay.h"

namespace netmend {

/// So many suspects have a letter, A the likeliest; the same in list, tree and map.
inline constexpr std::size_t letteredSuspects = 4;
/// Below, a suspect is not drawn on the map.
inline constexpr double leastDrawn = 0.01;

/// The line lit, the suspects of the reported set with their letters, and the next probe. `letters`, parallel
/// to the ranked suspects, stand for those by rank; empty: it has none.
[[nodiscard]] Overlay suspectsOverlay(const FaultCase& fault, const std::vector<std::string>& letters = {});

/// The line lit, the break, landings and the jumper's way.
[[nodiscard]] Overlay jumperOverlay(const FaultCase& fault, const JumperProposal& proposal,
                                    const PlaceNames& places);

} // namespace netmend
