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
  Shown shown;
  Seconds effort;
  std::string asked;
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

/// Told of every state of the case, and the reading that led to it.
using Watch = std::function<void(const FaultCase&, const Taken&)>;
/// Another technician's choice of the next probe; nothing: none is left.
using Choose = std::function<std::optional<ProbeProposal>(const FaultCase&, const std::vector<Taken>&)>;

/// The first reading is that of a known pin, as a walk over the connector gives it; from then on what the
/// program asks for (or `choose` says), until the program stops. `eachOnce`: no place is offered twice.
struct PlayOptions {
  Watch watch{};
  Choose choose{};
  bool eachOnce = false;
};
[[nodiscard]] Result<Played> play(const BenchJob& job, const Workplace& at, const PlayOptions& options = {});

} // namespace netmend::simulation
