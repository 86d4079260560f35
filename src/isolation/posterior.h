#pragma once

#include "model.h"

namespace netmend {

/// Shares by class as the readings leave them, slips weighed in; sums to 1.
[[nodiscard]] std::vector<double> posteriorOf(const Isolation& isolation);

[[nodiscard]] std::vector<StandingOverLimit> standingOverLimits(const Isolation& isolation);

/// The standing OL that alone keeps the line from being called sound: a slip, or none of the faults.
[[nodiscard]] std::optional<StandingOverLimit> againstSound(const Isolation& isolation);

/// Fills `probability` and `samplingError` from the weights: without sound while an OL stands against it.
void normalise(Isolation& isolation);

inline constexpr double mostSamplingError = 0.01; ///< one standard deviation of a share

/// Are there too few samples to tell? A share is less certain than that, or one that matters rests on fewer
/// than a hundred effective samples.
[[nodiscard]] bool wantsMoreSamples(const Isolation& isolation);

} // namespace netmend
