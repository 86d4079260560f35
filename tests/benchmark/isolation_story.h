#pragma once

#include <string>
#include <vector>

#include "isolation_trials.h"
#include "report.h"
#include "simulation/figures.h"
#include "simulation/technician.h"
#include "simulation/worlds.h"

namespace netmend::benchmarks {

/// What one job came to.
struct Outcome {
  bool played = false;
  std::uint64_t job = 0;
  simulation::Grade grade = simulation::Grade::copper;
  bool odd = false; ///< its population has odd pins
  simulation::FaultFamily family = simulation::FaultFamily::sound;
  std::string fault; ///< in words, with the board
  double said = 0.0;
  bool right = false;
  double onTruth = 0.0;
  std::size_t readings = 0;
  std::size_t repeats = 0;
  std::size_t mostAtOne = 0; ///< readings at one place in one way
  bool unfinished = false;
  double effort = 0.0;     ///< s, of readings
  double took = 0.0;       ///< s, of the program
  std::string kind;        ///< of the fault
  std::string exactWhyNot; ///< empty: not tried, or it is there
  std::optional<ExactTrial> exact;
  std::optional<double> contradiction; ///< sigmas by which no known fault explains the readings
  std::optional<StableTrial> stable;
  std::optional<simulation::ClaimMade> betterMeter;
  std::optional<PolicyTrial> policy;
  std::optional<OptimalTrial> best;
};

/// What jobs are played with.
struct Shop {
  const simulation::Worlds& worlds;
  const RepairData& data;
  const MeterProfile& meter;
  const MeterProfile& better;
};
/// One world at its three grades; job n is world n / 3 at grade n % 3. Further trials are made in some worlds
/// each.
[[nodiscard]] std::array<Outcome, 3> playWorld(const Shop& shop, std::uint64_t world);
/// A job told reading by reading.
[[nodiscard]] std::string storyOf(const Shop& shop, std::uint64_t job);
/// A line a job.
void listJobs(const std::vector<Outcome>& outcomes);
/// All figures: of jobs by the shares, from outside, and with each kind of fault as often.
void addFigures(Report& report, const std::vector<Outcome>& byShares, const std::vector<Outcome>& outside,
                const std::vector<Outcome>& evenly);

} // namespace netmend::benchmarks
