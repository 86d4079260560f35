#pragma once

#include "netmend/drawing/overlay.h"
#include "netmend/repair/fault_case.h"

namespace netmend {

/// The line lit, the suspects of the reported set marked with their probability, and the next probe.
[[nodiscard]] Overlay suspectsOverlay(const FaultCase& fault);

/// The line lit, the break, landings and the jumper's way.
[[nodiscard]] Overlay jumperOverlay(const FaultCase& fault, const JumperProposal& proposal);

} // namespace netmend
