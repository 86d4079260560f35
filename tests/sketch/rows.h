#pragma once

#include "hand.h"

namespace netmend::test {

/// J1 at x = 0 and J2 at x = 20, four pins each, downwards from y = 0 at 1 mm.
struct Rows : Hand {
  Rows() {
    row("J1", 4, 0);
    row("J2", 4, 20);
  }
};

using Labels = std::vector<std::string>;
inline Labels labels(const Board& board, const std::vector<PinId>& pins) {
  Labels out;
  for (const PinId pin : pins)
    out.push_back(pinLabel(board, pin));
  return out;
}

} // namespace netmend::test
