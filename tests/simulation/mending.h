#pragma once

#include <utility>
#include <vector>

#include "simulation/fault.h"

namespace netmend::simulation {

/// What is done to the simulator's board.
struct Mending {
  enum class Kind { nothing, wire, newPart, clearShort };
  Kind kind = Kind::nothing;
  std::vector<std::pair<std::size_t, std::size_t>> joins; ///< spots that solder or wire joins
  PartId part;                                            ///< newPart
};
/// A new part, with its joints made anew.
[[nodiscard]] Mending newPart(const BoardLine& line, const Lookup& lookup, PartId part);
/// A wire between two spots; solder at a leg or its pad joins both.
[[nodiscard]] Mending wireBetween(const BoardLine& line, std::size_t a, std::size_t b);
/// What somebody does who knows the fault.
[[nodiscard]] Mending mendingFor(const BoardLine& line, const Lookup& lookup, const Fault& fault);

/// Whether the board is whole after it. A sound line is only right when nothing is done.
[[nodiscard]] bool restores(const BoardLine& line, const Fault& fault, const Mending& mending);

} // namespace netmend::simulation
