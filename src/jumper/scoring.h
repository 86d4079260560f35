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

/// Fills in the terms and the total of a candidate whose way is known.
void score(Candidate& candidate, const LandingPrices& prices);

/// No way between these landings can be cheaper.
[[nodiscard]] Price leastPossible(const Landing& from, const Landing& to);

/// Length of a-b inside the polygon.
[[nodiscard]] Length lengthInside(const Polygon& polygon, Point a, Point b);

/// Writes the candidate up: clearance, wire, tack points, notes and "why not straight".
[[nodiscard]] Result<JumperProposal> writtenUp(const Lookup& lookup, const Candidate& candidate,
                                               const JumperRequest& request, const JumperData& data);

/// What a wire on this net has to carry, for a way of this length.
[[nodiscard]] WireRequest wireRequestFor(const Board& board, NetId net, Length length,
                                         Fact<Length> landingWidth);

} // namespace netmend
