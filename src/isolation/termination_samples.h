#pragma once

#include "model.h"

namespace netmend {

struct SampleRequest {
  const LineCells& cells;
  const std::vector<LinePin>& pins;
  const std::vector<KnownGood>& knownGood;
  const FaultPriors& priors;
  const MeterSource& meter;
  std::size_t samples;
  std::uint64_t seed;
};

/// Draws what may be behind the pins. In each draw the junction is scaled so that the fault-free line reads
/// what good boards read, moved by one draw of the spread between boards; the draw's weight is how likely the
/// priors make that junction, and how well the other known values fit.
[[nodiscard]] TerminationSamples drawTerminations(const SampleRequest& request);

} // namespace netmend
