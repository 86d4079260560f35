#pragma once

#include <functional>
#include <string>
#include <vector>

#include "netmend/casework/fault_case.h"
#include "simulation/bench_job.h"
#include "simulation/repair.h"

namespace netmend::simulation {

/// A reading with what was asked and what it cost.
struct Taken {
  Reading reading;
  Seconds effort;
  std::string asked;
  bool slipped = false;
  bool again = false; ///< by the simulator's own book: this place in this way before
};

/// A job played to its end.
struct Played {
  std::vector<Taken> taken;
  FaultCase end;
  Claim claim;
  bool right = false;
  double onTruth = 0.0;    ///< what the program gives to the right repairs
  bool unfinished = false; ///< it asked for more than `mostReadings`
};
inline constexpr std::size_t mostReadings = 60;

/// What the technician works with.
struct Workplace {
  const BoardUnderWork& board; ///< as the program knows it
  const Lookup& truth;         ///< as it is
  const RepairData& data;
  const MeterProfile& meter;
};

/// Told of every state of the case, and the reading that led to it (null at the start).
using Watch = std::function<void(const FaultCase&, const Taken*)>;

/// The first reading is that of a known pin, as a walk over the connector gives it; from then on what the
/// program asks for, until it stops.
[[nodiscard]] Result<Played> play(const BenchJob& job, const Workplace& at, const Watch& watch = {});

} // namespace netmend::simulation
