#pragma once

#include "model.h"

namespace netmend {

struct ClassesOnLine {
  std::vector<FaultClass> classes;  ///< sound, none of these, short to ground, then the rest by prior
  std::vector<FaultEffect> effects; ///< parallel
  std::vector<LineNotice> notices;
  double unknownWayShare = 0.0; ///< of the prior
};

struct LineView {
  const Lookup& lookup;
  const Line& line;
  const LineCells& cells;
  const std::vector<LinePin>& pins;
  const std::vector<ProbePlace>& places;
  const std::vector<std::size_t>& cellOfPlace;
  const FaultPriors& priors;
};

/// One possible fault before faults of equal effect are put together.
struct FaultCandidate {
  FaultPlace place;
  FaultEffect effect;
  double weight = 0.0;
};

/// A break in each edge of the tree, a dead pin behind each junction.
[[nodiscard]] std::vector<FaultCandidate> singlePlaceFaults(const LineView& view);

/// Copper whose way nobody knows joins pieces of known copper, most likely along a short tree between their
/// loose ends. Breaks in it, and what breaks in the pieces cut off, are gathered over a number of such trees;
/// candidates of the hubs themselves go.
void addUnknownWays(const LineView& view, std::vector<FaultCandidate>& candidates);

/// Puts together what no reading at a reachable place can tell apart, and sorts.
[[nodiscard]] ClassesOnLine faultClasses(const LineView& view);

/// The pins on one side of a break.
[[nodiscard]] std::vector<PinId> pinsOf(const LineView& view, const FaultEffect& effect, bool below,
                                        std::size_t root);

} // namespace netmend
