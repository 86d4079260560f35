#pragma once

#include <vector>

#include "netmend/base/said.h"
#include "netmend/casework/short_case.h"

/// What a search for a short found, in words.
namespace netmend {

/// "inside C12", "bridge from U1.3 to U1.4", "to ground beside track from C1.1 to C2.1, gap 0.15 mm".
[[nodiscard]] Said nameOf(const ShortPlace& place, const PlaceNames& places);
[[nodiscard]] Said nameOf(const ProbePlace& point, const PlaceNames& places);
/// Why the reading was not used.
[[nodiscard]] Said setAsideSaid(const ShortAside& aside);
/// "milliohms at C6.1: 1.2 of 2.3 bits open, in 15 s".
[[nodiscard]] Said probeSaid(const NextShortProbe& next, const ShortProbe& probe, const ShortSearch& search,
                             const PlaceNames& places);
/// Settings, a line each.
[[nodiscard]] std::vector<Said> injectionSaid(const InjectionProposal& proposal, const Board& board);
/// What to do before, and what may happen: to be read before a supply is connected.
[[nodiscard]] std::vector<Said> injectionCautions();

} // namespace netmend
