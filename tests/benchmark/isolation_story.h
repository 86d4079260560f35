#pragma once

#include <string>
#include <vector>

#include "report.h"
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
  double effort = 0.0; ///< s, of readings
  double took = 0.0;   ///< s, of the program
};

/// Job n is world n / 3 at grade n % 3.
[[nodiscard]] Outcome playJob(const simulation::Worlds& worlds, const RepairData& data,
                              const MeterProfile& meter, std::uint64_t job);
/// A job told reading by reading.
[[nodiscard]] std::string storyOf(const simulation::Worlds& worlds, const RepairData& data,
                                  const MeterProfile& meter, std::uint64_t job);
/// A line a job.
void listJobs(const std::vector<Outcome>& outcomes);
/// All figures of all jobs.
void addFigures(Report& report, const std::vector<Outcome>& outcomes);

} // namespace netmend::benchmarks
