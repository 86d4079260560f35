#pragma once

#include <optional>
#include <vector>

#include "simulation/mending.h"
#include "simulation/technician.h"

namespace netmend::simulation {

/// What somebody would think who knows the population, the meter's limits and all the copper, and has the
/// same readings: draws from the very distributions that the job was drawn from, weighed by the readings.
/// Lines of one node with few things behind them only; a fault from outside is not considered.
struct ExactAnswer {
  std::vector<Fault> faults;
  std::vector<double> probability; ///< sums to 1
  double effective = 0.0;          ///< draws that carry it (Kish)

  [[nodiscard]] double of(const BoardLine& line, const Mending& mending) const; ///< that it mends the fault
};

/// Draws of designs that read what the good boards read, for all questions about one job.
class ExactDraws {
public:
  ExactDraws(const BenchJob& job, const Lookup& lookup, const FaultShares& shares, const MeterProfile& meter);
  /// Nothing: the line is not of one node, too much is behind it, or too few draws fit the good boards.
  [[nodiscard]] bool usable() const { return !draws_.empty(); }
  /// Of the line alone.
  [[nodiscard]] bool small() const { return small_; }
  /// Nothing where a reading is of a kind that is not weighed here, or too few draws are left.
  [[nodiscard]] std::optional<ExactAnswer> after(const std::vector<Taken>& taken) const;
  /// By how many sigmas the best of all known faults on the best of all draws leaves its worst reading
  /// unexplained.
  [[nodiscard]] std::optional<double> contradiction(const std::vector<Taken>& taken) const;

private:
  struct Draw {
    std::vector<Behind> behind; ///< by thing: pins, then exits; of this board, with what lies before it
    MeterBias bias;
    double celsius = 25.0;
    double shortOhms = 1.0;
    double weight = 1.0;
  };
  struct Effect;    ///< what the readings meet under one fault
  struct Suspected; ///< all faults, by effect
  class Volts;

  void drawAll();
  [[nodiscard]] std::vector<Behind> thingsOf(const Design& design) const;
  [[nodiscard]] std::optional<Draw> drawOne(Random& random) const;
  [[nodiscard]] std::optional<Suspected> suspected(const std::vector<Taken>& taken) const;
  [[nodiscard]] std::uint64_t junctionsOf(const Draw& draw) const;
  [[nodiscard]] double likelihood(const Draw& draw, const Effect& effect, const std::vector<Taken>& taken,
                                  Volts& volts) const;
  [[nodiscard]] std::optional<Effect> effectOf(const Fault& fault, const std::vector<Taken>& taken) const;

  const BenchJob& job_;
  const Lookup& lookup_;
  const FaultShares& shares_;
  const MeterMode& mode_;
  Source source_;
  bool small_ = false;
  std::vector<std::size_t> spots_; ///< by thing
  std::vector<Draw> draws_;
};

/// What a meter reads across things that hang on one node.
[[nodiscard]] double oneNode(const std::vector<JunctionLaw>& laws, double siemens, const Source& source);

} // namespace netmend::simulation
