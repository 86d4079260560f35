#pragma once

#include "model.h"

namespace netmend {

/// What hangs together with a lead held at a super, under an effect and on one side of its cut.
[[nodiscard]] Fragment fragmentOf(const LineCells& cells, const std::vector<LinePin>& pins,
                                  const FaultEffect& effect, bool below, std::size_t super);

/// What a meter meets in one fragment. The junctions of a sample are of one kind and differ in area only, and
/// copper has no resistance here: all that hangs on one node is one junction and one load.
class FragmentSolver {
public:
  FragmentSolver(const Fragment& fragment, const TerminationSamples& samples);

  [[nodiscard]] Volts volts(std::size_t sample, const MeterSource& meter) const;

private:
  const Fragment& fragment_;
  const TerminationSamples& samples_;
  std::vector<std::vector<double>> area_;    ///< by node, by sample
  std::vector<std::vector<double>> siemens_; ///< the same
};

} // namespace netmend
