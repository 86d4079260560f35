#pragma once

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/overlay.h"

namespace netmend {

/// The line lit, the suspects of the reported set marked with their probability, and the next probe.
[[nodiscard]] Overlay suspectsOverlay(const FaultCase& fault);

/// The line lit, the break, landings and the jumper's way.
[[nodiscard]] Overlay jumperOverlay(const FaultCase& fault, const JumperProposal& proposal,
                                    const PlaceNames& places);

} // namespace netmend
