#pragma once

#include <string>
#include <vector>

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/overlay.h"

namespace netmend {

/// The line lit, the suspects of the reported set marked with their probability, and the next probe.
/// `letters`, parallel to the ranked suspects, stand for them instead; empty: it has none.
[[nodiscard]] Overlay suspectsOverlay(const FaultCase& fault, const std::vector<std::string>& letters = {});

/// The line lit, the break, landings and the jumper's way.
[[nodiscard]] Overlay jumperOverlay(const FaultCase& fault, const JumperProposal& proposal,
                                    const PlaceNames& places);

} // namespace netmend
