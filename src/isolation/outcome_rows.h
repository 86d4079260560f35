#pragma once

#include <array>
#include <map>
#include <vector>

#include "foreseen.h"
#include "model.h"

namespace netmend {

/// What each class says of a diode reading, as chances of bins of the value and of OL. Bins hold about equal
/// chances over all predictions, but are not much finer than a reading's uncertainty: finer ones add nothing.
class OutcomeRows {
public:
  static constexpr std::size_t mostBins = 64; ///< fixed, so that loops over bins are unrolled and vectorised
  using Row = std::array<float, mostBins>;    ///< bins that are not there hold 0

  OutcomeRows(const Isolation& isolation, const std::vector<std::size_t>& classes);

  [[nodiscard]] std::size_t bins() const { return edges_.size() + 2; } ///< OL is the last
  /// Of a class, by position in the list given, at a cell.
  [[nodiscard]] const Row& row(std::size_t position, std::size_t cell) { return outcome(position, cell).row; }
  /// Entropy of that row in bits.
  [[nodiscard]] double rowBits(std::size_t position, std::size_t cell) {
    return outcome(position, cell).bits;
  }

private:
  struct Outcome {
    Row row{};
    double bits = 0.0;
  };
  void chooseEdges();
  [[nodiscard]] Outcome& outcome(std::size_t position, std::size_t cell);
  [[nodiscard]] Outcome of(const Foreseen& foreseen) const;

  const Isolation& isolation_;
  const IsolationModel& model_;
  const std::vector<std::size_t>& classes_;
  std::vector<double> edges_; ///< inner edges; the first bin begins below zero, the last ends at the limit
  std::vector<std::map<const Foreseen*, Outcome>> known_; ///< by position: worked out when first asked for
};

} // namespace netmend
