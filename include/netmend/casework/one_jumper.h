#pragma once

#include <vector>

#include "netmend/isolation/isolation.h"
#include "netmend/jumper/proposal.h"

namespace netmend {

/// One wire and the fault classes that it would mend, whichever of them it is: these need not be told apart.
struct OneJumper {
  Landing from; ///< as in the proposal
  Landing to;
  std::vector<std::size_t> classes; ///< at least two, likeliest first
  double probability = 0.0;         ///< of all these classes together
};

/// Jumpers that mend more than one class of the reported set: the best proposal for the likeliest break, made
/// longer for the next likeliest ones while it costs no more than twice as much; then the same for the
/// likeliest break that is left. A wire mends a break when its landings stand on the two pieces that have to
/// be joined; one that would short a part is none. Empty where the set is still too wide to think of a
/// repair.
[[nodiscard]] std::vector<OneJumper> sharedJumpers(const Lookup& lookup, const Line& line,
                                                   const Isolation& isolation, const Suspects& suspects,
                                                   const JumperData& data);

/// The same for the engine: the classes of one jumper are one group.
[[nodiscard]] RepairView repairView(const Isolation& isolation, const std::vector<OneJumper>& jumpers);

} // namespace netmend
