#pragma once

#include <vector>

#include "netmend/base/said.h"
#include "netmend/jobbook/job.h"
#include "netmend/jumper/proposal.h"

/// Landings, ways and wires in words.
namespace netmend {

[[nodiscard]] Said nameOf(LandingKind kind);
[[nodiscard]] Said nameOf(ZoneKind kind); ///< "shield wall"
[[nodiscard]] Said nameOf(Side side);     ///< "top"
/// "C12.1 (part terminal)", "via 2.1 mm right of U102.76"; of an older book as it was written there.
[[nodiscard]] Said nameOf(const LandingPlace& place);
[[nodiscard]] Said nameOf(const Landing& landing, const PlaceNames& places);
/// "connector J4", "edge of the board".
[[nodiscard]] Said nameOf(const KeepOutName& keepOut);

/// What a term of the score counts, and the figures.
[[nodiscard]] Said nameOf(const ScoreTerm& term, const JumperProposal& proposal, const PlaceNames& places);
[[nodiscard]] Said figuresOf(const ScoreTerm& term);

[[nodiscard]] Said whyExcluded(const ExcludedLanding& landing);

/// "1.2 mm track carries 3.7 A (IPC-2221, 20 K): taken as 3.7 A".
[[nodiscard]] Said currentSaid(const WireChoice& wire);
/// Why this wire, and why not a thinner one.
[[nodiscard]] std::vector<Said> wireReasons(const WireChoice& wire);
[[nodiscard]] std::vector<Said> wireWarnings(const WireChoice& wire);

/// Names what stands in the straight way; says so where the way is straight.
[[nodiscard]] Said whyNotStraight(const Detour& detour);
/// What sets the proposal apart from those before it.
[[nodiscard]] Said differenceSaid(const JumperProposal& proposal, const PlaceNames& places);
/// What to mind about its landings and its way.
[[nodiscard]] std::vector<Said> notesOn(const JumperProposal& proposal, const PlaceNames& places);

/// Why there are no more; empty: there are as many as wanted.
[[nodiscard]] Said whyFewer(const JumperProposals& proposals);
[[nodiscard]] std::vector<Said> notesOn(const JumperProposals& proposals);

} // namespace netmend
