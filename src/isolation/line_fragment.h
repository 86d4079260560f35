#pragma once

#include <string>
#include <utility>
#include <vector>

#include "line_cells.h"
#include "netmend/isolation/isolation.h"

namespace netmend {

/// What a fault does to the line: cells in `below` (intervals [first, second)) lose touch with the rest, or
/// one pin loses its termination, or everything is tied to ground.
struct FaultEffect {
  FaultKind kind = FaultKind::sound;
  std::vector<std::pair<std::size_t, std::size_t>> below;
  std::size_t deadPin = noCell; ///< index into the line's pins

  [[nodiscard]] bool isBelow(std::size_t cell) const {
    for (const auto& [first, last] : below)
      if (cell >= first && cell < last) return true;
    return false;
  }
};

/// A pin of the line with what stands behind it.
struct LinePin {
  PinId pin;
  PartId part;
  bool chip = false; ///< whose technology is the board's
  std::size_t cell = 0;
  std::string label;
  PinTermination termination;
};

/// Copper that hangs together with whatever is behind its pins; node 0 is where the lead is held.
struct Fragment {
  struct Series {
    std::size_t a;
    std::size_t b;
    Ohms resistance;
  };
  std::vector<std::size_t> supers;            ///< of each node
  std::vector<std::vector<std::size_t>> pins; ///< by node: those with something behind them
  std::vector<Series> series;
};

/// What hangs together with a lead held at a super, under an effect and on one side of its cut.
[[nodiscard]] Fragment fragmentOf(const LineCells& cells, const std::vector<LinePin>& pins,
                                  const FaultEffect& effect, bool below, std::size_t super);

} // namespace netmend
