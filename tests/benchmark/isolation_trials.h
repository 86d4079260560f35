#pragma once

#include <optional>

#include "simulation/exact.h"
#include "simulation/policy.h"
#include "simulation/worlds.h"

namespace netmend::benchmarks {

/// What the program said, against somebody who knows the population.
struct ExactTrial {
  bool decided = false;      ///< the exact posterior names a right repair with more than 0.8
  double said = 0.0;         ///< of the program's claim, none of these left out
  double exactOnClaim = 0.0; ///< the exact posterior's chance that this claim is right
  double exactOnTruth = 0.0;
};
/// How far shares move, at most.
struct StableTrial {
  double order = 0.0; ///< readings weighed the other way round, and another seed where there is one
  double moved = 0.0; ///< all readings moved by a tenth of the common error
};
/// What a job costs, in seconds.
struct PolicyTrial {
  double own = 0.0, inOrder = 0.0, halfSplit = 0.0;
};
struct OptimalTrial {
  double own = 0.0, best = 0.0;
};

[[nodiscard]] std::optional<ExactTrial> exactTrial(const simulation::BenchJob& job, const Lookup& truth,
                                                   const simulation::ExactDraws& draws,
                                                   const simulation::Played& played);
[[nodiscard]] StableTrial stableTrial(const simulation::Workplace& at, const simulation::Played& played);
[[nodiscard]] std::optional<PolicyTrial> policyTrial(const simulation::BenchJob& job,
                                                     const simulation::Workplace& at,
                                                     const simulation::Played& played);
/// In a world without errors, with a meter that has diode mode only.
[[nodiscard]] std::optional<OptimalTrial> optimalTrial(const simulation::BenchJob& job,
                                                       const simulation::Workplace& at,
                                                       const simulation::FaultShares& shares);

/// A line of 500 pads and about 1,500 edges with 100 readings: ms to weigh one more, and to weigh all of them
/// anew.
struct LargeLine {
  std::size_t edges = 0;
  double oneMoreMs = 0.0, allMs = 0.0;
};
[[nodiscard]] LargeLine largeLine(const RepairData& data, const MeterProfile& meter);

} // namespace netmend::benchmarks
