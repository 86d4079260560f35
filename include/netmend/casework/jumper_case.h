#pragma once

#include <vector>

#include "netmend/casework/fault_case.h"
#include "netmend/jobbook/job.h"

namespace netmend {

/// The edges of the line that the leading break may be at. Fails when something else leads, or when nobody
/// knows the copper of the suspected stretch, saying which.
[[nodiscard]] Result<std::vector<std::size_t>> suspectedCut(const FaultCase& fault);

/// Ways to bridge these edges of the line. The wire is chosen for `current`; unknown: for what the line's
/// copper carries (jumper/current.h).
[[nodiscard]] Result<JumperProposals> proposeJumpers(const Lookup& lookup, const FaultCase& fault,
                                                     const std::vector<std::size_t>& cut,
                                                     const RepairData& data, std::size_t most = 3,
                                                     Fact<Amperes> current = {});

/// A proposal as a job keeps it: with its steps, and what the bare copper should read if the leading suspect
/// is right.
[[nodiscard]] RepairAction actionFor(const BoardUnderWork& board, const FaultCase& fault,
                                     const JumperProposal& proposal, const WorkSteps& data);

/// How likely the fault is one that this wire mends: of each suspected break, whether the wire joins what it
/// has parted.
[[nodiscard]] double mendedShare(const FaultCase& fault, const JumperProposal& proposal);
/// About how long these steps take at the bench.
[[nodiscard]] Seconds workTime(const std::vector<WorkStep>& steps);

/// Nets of the lines that these repair actions are on, for the picture of the job.
[[nodiscard]] std::vector<NetId> linesOf(const std::vector<RepairAction>& actions,
                                         const BoardUnderWork& board);

} // namespace netmend
