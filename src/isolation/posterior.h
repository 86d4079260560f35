#pragma once

#include "model.h"

namespace netmend {

/// Shares by class as the readings leave them, slips weighed in; sums to 1.
[[nodiscard]] std::vector<double> posteriorOf(const Isolation& isolation);

[[nodiscard]] std::vector<StandingOverLimit> standingOverLimits(const Isolation& isolation);

/// The standing OL that alone keeps the line from being called sound: a slip, or none of the faults.
[[nodiscard]] std::optional<StandingOverLimit> againstSound(const Isolation& isolation);

/// Fills `probability` from the masses: without sound while an OL stands against it.
void normalise(Isolation& isolation);

} // namespace netmend
