#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/casework/fault_case.h"
#include "simulation/bench_job.h"
#include "simulation/mending.h"

namespace netmend::simulation {

/// Where a wire is soldered: at a pin or its pad the solder joins both.
struct WireEnd {
  CopperObject object;
  std::optional<Point> at;
  int layer = -1;
  std::vector<NodeIndex> nodes; ///< of the program's line, that it touches
};

/// What a technician does about a suspect, on the program's copper and on the simulator's.
struct Repair {
  enum class Kind { nothing, wire, newPart, clearShort };
  Kind kind = Kind::nothing;
  std::vector<WireEnd> ends{}; ///< wire: two
  PartId part{};               ///< newPart: with its joints
};

/// The repair for a place that the program suspects. Nothing: it names no repair (none of these).
[[nodiscard]] std::optional<Repair> repairOf(const Line& line, const Lookup& lookup,
                                             const FaultClass& suspect, const FaultPlace& place);

/// Whether the program itself would say that this repair mends that suspect.
[[nodiscard]] bool mends(const Line& line, const Lookup& lookup, const Repair& repair,
                         const FaultPlace& place);

/// The same on the simulator's copper. `crack`: a wire on a broken track is soldered on one side of it.
[[nodiscard]] Mending mendingOf(const BoardLine& line, const Lookup& lookup, const Repair& repair,
                                const std::optional<Crack>& crack);

/// The repair that is likeliest to be right, with what the program gives it.
struct Claim {
  std::optional<Repair> repair;
  double said = 0.0;
  std::vector<Repair> weighed; ///< all that were compared
};
/// Those of the likeliest suspects, and the wires that mend several.
[[nodiscard]] Claim topClaim(const FaultCase& fault, const Lookup& lookup,
                             const std::vector<OneJumper>& jumpers);
/// For people: "wire from leg U3.7 to via".
[[nodiscard]] std::string wordsFor(const Repair& repair, const Board& board);
/// What the program gives to all repairs that would be right on the simulator's board.
[[nodiscard]] double massOnTruth(const BenchJob& job, const Lookup& lookup, const Line& line,
                                 const Isolation& isolation);

} // namespace netmend::simulation
