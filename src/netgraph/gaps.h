#pragma once

#include <cstddef>
#include <vector>

#include "copper_items.h"

namespace netmend::copper {

/// A place where two pieces of one net could be joined again.
struct Gap {
  std::size_t itemA = 0;
  std::size_t itemB = 0;
  Vec onA;
  Vec onB;
  int looseTracks = 0; ///< how many of its two sides are a track's loose end
};

/// The k - 1 gaps that join k pieces again at the least cost. `members` are items, `piece` (parallel) tells
/// which one each is in, from 0. The cost of a gap is its width, times 2 for each side that ends in
/// sound copper instead of a loose end (a track's end, pad or via that nothing touches), more if it changes
/// the layer: where a track is missing, loose ends are what it left behind, while intact tracks of a net
/// often run near each other.
[[nodiscard]] std::vector<Gap> gapsBetween(const Items& items, const std::vector<std::size_t>& members,
                                           const std::vector<std::size_t>& piece);

} // namespace netmend::copper
