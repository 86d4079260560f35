#pragma once

#include "netmend/jumper/proposal.h"

namespace netmend {

/// A wire between two landings, before it is written up as a proposal.
struct Candidate {
  const FreeArea* area = nullptr;
  const Landing* from = nullptr;
  const Landing* to = nullptr;
  std::vector<Point> points; ///< between the landings, both included
  Way free;                  ///< its part on free board
  std::vector<ScoreTerm> terms;
  Price total;
};

/// What of the board is the broken copper itself; ascending.
struct OwnCopper {
  std::vector<PadId> pads;
  std::vector<ViaId> vias;
};

/// Fills in the terms and the total of a candidate whose way is known.
void score(Candidate& candidate, const LandingPrices& prices);

/// No way between these landings can be cheaper.
[[nodiscard]] Price leastPossible(const Landing& from, const Landing& to);

/// Notes what the wire runs over although it had better not: holes and joints where no way keeps clear of
/// them, and bare copper of other nets.
void addCrossings(JumperProposal& proposal, const Board& board, const FreeArea& area, const OwnCopper& own);

/// Length of a-b inside the polygon.
[[nodiscard]] Length lengthInside(const Polygon& polygon, Point a, Point b);

/// Writes the candidate up: clearance, wire, tack points, notes and "why not straight".
/// `load` says what the wire has to carry.
[[nodiscard]] Result<JumperProposal> writtenUp(const Lookup& lookup, const Candidate& candidate,
                                               const JumperRequest& request, WireRequest load,
                                               const OwnCopper& own, const JumperData& data);

} // namespace netmend
