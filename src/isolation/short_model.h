#pragma once

#include "netmend/isolation/short_places.h"
#include "short_network.h"

namespace netmend {

struct ShortModel {
  ShortPriors priors;
  ProbeEfforts efforts;
  MeterProfile meter;
  CopperGraph graph;                   ///< areas resolved
  std::vector<std::size_t> placeNode;  ///< of the network, by place; `noneOfThese` has none
  std::vector<std::size_t> pointNode;  ///< of the network, by point
  std::optional<std::size_t> intoNode; ///< where current is injected
  std::vector<std::size_t> suspectOf;  ///< by place, numbered in the order of their first places
  ShortNetwork network;
};

/// Places with what they weigh before any reading, their shares summing to 1, and points.
[[nodiscard]] ShortSearch shortHypotheses(const ShortInput& input);

/// The same after readings and signs.
[[nodiscard]] ShortSearch weighShort(ShortSearch hypotheses, const Lookup& lookup,
                                     const std::vector<Reading>& readings,
                                     const std::vector<ShortSign>& signs);

} // namespace netmend
