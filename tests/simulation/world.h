#pragma once

#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "simulation/board_line.h"
#include "simulation/circuit.h"
#include "simulation/shares.h"

namespace netmend::simulation {

using Random = std::mt19937_64;
[[nodiscard]] double between(Random& random, double least, double most);
[[nodiscard]] double normal(Random& random, double spread);
[[nodiscard]] bool chance(Random& random, double share);

/// How the chips of one kind of board differ. Drawn anew for each world.
struct Population {
  double centre = 0.58;     ///< V, of clamp drops at 1 mA
  double own = 0.0;         ///< 0: chips alike, 1: each anywhere from 0.35 to 0.8 V
  double pinSpread = 0.003; ///< V, between pins of one chip
  double boardSpread = 0.005;
  bool odd = false; ///< one pin in seven is Schottky-like, without clamp, or resistive
};
[[nodiscard]] Population drawPopulation(Random& random);

/// What is behind a leg.
struct Behind {
  enum class Kind { nothing, junction, resistance };
  Kind kind = Kind::nothing;
  Junction junction;
  double ohms = 1e6;
};

/// A draw of what is behind all legs of a line and beyond its exits: the design, without one board's own
/// spread.
struct Design {
  std::vector<Behind> behind;   ///< by line pin
  std::map<NetId, double> rail; ///< ohms to ground of a supply
  std::map<NetId, Behind> far;  ///< of a signal beyond a resistor
  std::vector<double> exitOhms; ///< by exit
};
[[nodiscard]] Behind drawBehind(const TerminationShare& shares, const Population& population, double chipDrop,
                                double emission, double series, Random& random);
[[nodiscard]] Design drawDesign(const Lookup& lookup, const BoardLine& line, const Population& population,
                                const FaultShares& shares, Random& random);
/// The same on one board: each junction moved by a draw of the spread between boards.
[[nodiscard]] Design onOneBoard(Design design, const Population& population, Random& random);

} // namespace netmend::simulation
