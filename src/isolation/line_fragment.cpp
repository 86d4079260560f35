#include "line_fragment.h"

#include <algorithm>

namespace netmend {

namespace {

bool somethingBehind(const LinePin& pin) {
  return pin.termination.shares.junction + pin.termination.shares.resistive > 0.0;
}

/// Series parts with both ends on this side of the cut.
std::vector<std::size_t> intactSeries(const LineCells& cells, const FaultEffect& effect, bool below) {
  std::vector<std::size_t> result;
  for (std::size_t cell = 0; cell < cells.size(); ++cell) {
    if (cells.isRoot(cell) || cells.super[cell] == cells.super[cells.parent[cell]]) continue;
    if (effect.isBelow(cell) == below && effect.isBelow(cells.parent[cell]) == below) result.push_back(cell);
  }
  return result;
}

} // namespace

Fragment fragmentOf(const LineCells& cells, const std::vector<LinePin>& pins, const FaultEffect& effect,
                    bool below, std::size_t super) {
  Fragment result;
  std::vector<std::size_t> supers{super};
  if (cells.supers > 1) {
    const auto position = [&](std::size_t wanted) {
      return static_cast<std::size_t>(std::find(supers.begin(), supers.end(), wanted) - supers.begin());
    };
    auto series = intactSeries(cells, effect, below);
    for (std::size_t i = 0; i < supers.size(); ++i)
      std::erase_if(series, [&](std::size_t cell) {
        const std::size_t ends[]{cells.super[cell], cells.super[cells.parent[cell]]};
        if (ends[0] != supers[i] && ends[1] != supers[i]) return false;
        const std::size_t other = ends[0] == supers[i] ? ends[1] : ends[0];
        if (position(other) == supers.size()) supers.push_back(other);
        result.series.push_back({i, position(other), cells.edgeAbove(cell).resistance.value});
        return true;
      });
  }
  result.pins.resize(supers.size());
  bool elsewhere = false;
  for (std::size_t pin = 0; pin < pins.size(); ++pin) {
    if (!somethingBehind(pins[pin]) || effect.isBelow(pins[pin].cell) != below || effect.deadPin == pin)
      continue;
    const auto node = std::find(supers.begin(), supers.end(), cells.super[pins[pin].cell]);
    if (node == supers.end()) continue;
    result.pins[static_cast<std::size_t>(node - supers.begin())].push_back(pin);
    elsewhere = elsewhere || node != supers.begin();
  }
  // Without anything behind them series parts carry nothing.
  if (!elsewhere) {
    result.pins.resize(1);
    result.series.clear();
    supers.resize(1);
  }
  result.supers = std::move(supers);
  return result;
}

} // namespace netmend
