#pragma once

#include "model.h"

namespace netmend {

/// What a meter meets in the fragment that a place is in, for any effect and sample. The junctions of a
/// sample are of one kind and differ in area only, and copper has no resistance here: all that hangs on one
/// super is one junction and one load. Sums over cells are differences of running sums.
class LineSolver {
public:
  LineSolver(const LineCells& cells, const std::vector<LinePin>& pins, const TerminationSamples& samples);

  /// Voltage at the part of `super` that is below the cut, or above it.
  [[nodiscard]] Volts volts(const FaultEffect& effect, bool below, std::size_t super, std::size_t sample,
                            const MeterSource& meter) const;

private:
  struct SeriesEdge {
    std::size_t parent;
    std::size_t cell;
    Ohms resistance;
  };
  [[nodiscard]] NodeLoad load(const FaultEffect& effect, bool below, std::size_t super,
                              std::size_t sample) const;
  [[nodiscard]] NodeLoad sumOf(std::size_t super, std::size_t from, std::size_t to, std::size_t sample) const;
  [[nodiscard]] bool sameSide(const FaultEffect& effect, bool below, const SeriesEdge& edge) const;

  const LineCells& cells_;
  const std::vector<LinePin>& pins_;
  const TerminationSamples& samples_;
  std::vector<SeriesEdge> series_;
  std::vector<std::vector<std::size_t>> pinsOfSuper_; ///< ordered by cell
  std::vector<std::vector<double>> area_;             ///< by super: running sums, (pin + 1) × sample
  std::vector<std::vector<double>> siemens_;
};

} // namespace netmend
