#pragma once

#include <optional>
#include <vector>

#include "netmend/board/lookup.h"
#include "simulation/copper.h"

namespace netmend::simulation {

/// A leg on the line.
struct LinePin {
  PinId pin;
  PartId part;
  std::size_t spot = 0; ///< its leg
  std::optional<PartKind> kind;
};

/// Where a resistor or coil leaves the line for another net.
struct LineExit {
  enum class To { ground, supply, signal };
  std::size_t spot = 0;
  To to = To::ground;
  NetId net;
  double ohms = 0.0; ///< zero: nobody wrote it down
};

/// A line as it is on the board: nets joined by parts of at most a kilohm, with all their copper.
struct BoardLine {
  std::vector<NetId> nets;
  Copper copper;
  std::vector<LinePin> pins;
  std::vector<LineExit> exits;
  std::vector<std::size_t> parting; ///< bonds whose loss parts legs

  [[nodiscard]] bool oneNode() const; ///< no part lies in it
};

/// Ends the search where the line becomes larger than this: nobody would look for a break there.
inline constexpr std::size_t mostPins = 60;
inline constexpr std::size_t mostBonds = 1500;

/// Nothing for ground, supplies, lines of one leg, larger ones, and those whose copper is not whole as drawn.
[[nodiscard]] std::optional<BoardLine> boardLine(const Lookup& lookup, NetId net);

} // namespace netmend::simulation
