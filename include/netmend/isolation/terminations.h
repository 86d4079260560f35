#pragma once

#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/isolation/fault_priors.h"
#include "netmend/netgraph/line.h"

namespace netmend {

/// What a meter is supposed to find behind a pin of a line, with how sure that is.
struct PinTermination {
  PinId pin;
  TerminationShares shares;
  Ohms resistance;                 ///< what the resistive case is; a pull-up's includes its rail
  bool throughRail = false;        ///< the resistance ends at a rail, whose own load is uncertain
  Origin origin = Origin::guessed; ///< `guessed`: from the part's kind

  [[nodiscard]] double confidence() const; ///< share of the likeliest
};

/// One for each terminal of the line, in the order of `line.terminals()`. A pin's own fact counts first, then
/// its part: not fitted: none; a resistor that the line does not go through and whose other end is on ground
/// or on a supply: resistive; otherwise the shares of the part's kind.
[[nodiscard]] std::vector<PinTermination> terminationsOf(const Lookup& lookup, const Line& line,
                                                         const FaultPriors& priors);

} // namespace netmend
