#pragma once

#include <optional>
#include <vector>

#include "simulation/technician.h"

namespace netmend::simulation {

/// Technicians who do not listen to where to probe, only to when to stop.
/// Reads all places that can be reached, the cheapest first, in the order of the program's list (along the
/// copper).
[[nodiscard]] std::optional<ProbeProposal> inOrder(const FaultCase& now, const std::vector<Taken>& taken);
/// Reads where the number of suspects that are left (more than one in a thousand) is split most evenly,
/// whatever each of them weighs.
[[nodiscard]] std::optional<ProbeProposal> halfSplit(const FaultCase& now, const std::vector<Taken>& taken);

/// What a job cost: its readings, and a wrong repair.
[[nodiscard]] Seconds costOf(const Played& played, Seconds wrongRepair);

/// The best policy there is in a world of three outcomes (OL, as a good board, otherwise), each place once,
/// by exhaustive dynamic programming over what is left of the faults.
struct Optimal {
  Seconds here;     ///< what it costs on this job's fault
  Seconds expected; ///< over all faults
  std::size_t places = 0;
};
/// After the job's first reading. `repairs`: wires that mend several faults, beside each fault's own repair.
/// Nothing for lines with more than `mostPlaces` places that tell different things, and where outcomes are
/// not sharp.
inline constexpr std::size_t mostPlaces = 12;
[[nodiscard]] std::optional<Optimal> optimal(const BenchJob& job, const Workplace& at,
                                             const FaultShares& shares, const FaultCase& start,
                                             const std::vector<Mending>& repairs, Seconds wrongRepair);

} // namespace netmend::simulation
