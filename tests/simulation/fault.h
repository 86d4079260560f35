#pragma once

#include <optional>
#include <string>
#include <vector>

#include "simulation/world.h"

namespace netmend::simulation {

/// What is wrong with the board on the bench. From `foreignCell` on: families that no hypothesis has.
enum class FaultFamily {
  sound,
  open,
  deadPin,
  shortToGround,
  foreignCell,   ///< corrosion between two metals: a cell of its own behind some kilohms
  otherChip,     ///< a chip of another make was fitted: its pins read otherwise
  lostGround,    ///< a chip's ground is gone: its clamps work through another junction
  charge,        ///< left on the line, and seeping away from reading to reading
  doubleJunction ///< a leak to ground through two junctions
};
inline constexpr std::size_t faultFamilies = 9;
[[nodiscard]] std::string wordFor(FaultFamily family);
[[nodiscard]] bool outside(FaultFamily family);

struct Fault {
  FaultFamily family = FaultFamily::sound;
  std::optional<Crack> crack; ///< open
  std::size_t pin = 0;        ///< dead pin; a chip's faults: one of its pins
  std::size_t spot = 0;       ///< where a short or leak is
  double ohms = 0.0;          ///< of a short, or behind a cell
  double volts = 0.0;         ///< of a cell, of a charge, between chips
};

/// A fault and how much it weighs by the shares, `sound` excepted, which has a share of its own.
struct WeighedFault {
  Fault fault;
  double weight = 0.0;
};
/// All single faults that no family outside has; a crack stands in the middle of its piece.
[[nodiscard]] std::vector<WeighedFault> allFaults(const BoardLine& line, const Design& design,
                                                  const FaultShares& shares);
/// What faults are drawn by: the shares with a twentieth from outside; all from outside; or each kind as
/// often.
enum class Seeding { byShares, outside, evenly };
[[nodiscard]] Fault drawFault(const BoardLine& line, const Design& design, const FaultShares& shares,
                              Random& random, Seeding seeding = Seeding::byShares);
inline constexpr double outsideShare = 0.05;
inline constexpr double shortDecades = 0.5; ///< of a short's ohms about one, one standard deviation
/// "open joint", "open track", "open via", "open part", "dead pin", …
[[nodiscard]] std::string kindOf(const BoardLine& line, const Fault& fault);

/// For people: "open: joint of U3.7".
[[nodiscard]] std::string wordsFor(const Board& board, const BoardLine& line, const Fault& fault);
[[nodiscard]] std::string wordsFor(const Board& board, const Spot& spot);

/// The circuit of the line on this board, with the node of each spot.
struct LineCircuit {
  Circuit circuit;
  std::vector<std::size_t> nodeOf; ///< by spot
};
/// `reading`: how many were taken before: a charge seeps away.
[[nodiscard]] LineCircuit circuitOf(const BoardLine& line, const Design& specimen, const Fault& fault,
                                    double celsius, std::size_t reading = 0);

} // namespace netmend::simulation
