#pragma once

#include "netmend/netgraph/resistance.h"

namespace netmend::copper {

/// The stack-up by dense layers; the usual thicknesses where the board does not say, marked guessed.
class StackUp {
public:
  explicit StackUp(const Board& board, int layerCount);

  [[nodiscard]] Fact<Length> copper(int layer) const;
  /// From the middle of one layer's foil to the other's, give or take a foil.
  [[nodiscard]] Fact<Length> between(int upper, int lower) const;

private:
  std::vector<Fact<Length>> copper_;
  std::vector<Fact<Length>> below_;
};

[[nodiscard]] Fact<Ohms> resistanceOfTrack(Fact<Length> length, Fact<Length> width, Fact<Length> thickness);
[[nodiscard]] Fact<Ohms> resistanceOfBarrel(Fact<Length> drill, Fact<Length> height);

} // namespace netmend::copper
