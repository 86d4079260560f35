#include "copper_facts.h"

#include <algorithm>

namespace netmend::copper {

StackUp::StackUp(const Board& board, int layerCount) {
  const auto count = static_cast<std::size_t>(layerCount);
  copper_.assign(count, guessed(usualCopperThickness));
  below_.assign(count, guessed(usualBoardThickness / std::max(1, layerCount - 1)));
  for (std::size_t i = 0; i < board.info.layerOrder.size() && i < count; ++i) {
    const Layer* layer = board.layers.find(board.info.layerOrder[i]);
    if (!layer) continue;
    if (layer->copperThickness.known() && layer->copperThickness.value.nm > 0)
      copper_[i] = layer->copperThickness;
    if (layer->dielectricBelow.known() && layer->dielectricBelow.value.nm > 0)
      below_[i] = layer->dielectricBelow;
  }
}

Fact<Length> StackUp::copper(int layer) const {
  return layer < 0 ? guessed(usualCopperThickness) : copper_[static_cast<std::size_t>(layer)];
}

Fact<Length> StackUp::between(int upper, int lower) const {
  Fact<Length> sum{Length(0), Origin::measured};
  for (auto i = static_cast<std::size_t>(upper); i < static_cast<std::size_t>(lower); ++i) {
    sum.value += copper_[i].value + below_[i].value;
    sum.origin = std::min({sum.origin, copper_[i].origin, below_[i].origin});
  }
  return sum;
}

Fact<Ohms> resistanceOfTrack(Fact<Length> length, Fact<Length> width, Fact<Length> thickness) {
  if (!length.known() || !width.known() || width.value.nm <= 0) return {};
  return {trackResistance(length.value, width.value, thickness.value),
          std::min({length.origin, width.origin, thickness.origin})};
}

Fact<Ohms> resistanceOfBarrel(Fact<Length> drill, Fact<Length> height) {
  if (!drill.known() || drill.value.nm <= 0) return {};
  // The plating is a guess in every case.
  return {viaResistance(drill.value, usualPlating, height.value), Origin::guessed};
}

} // namespace netmend::copper
