#pragma once

#include "line_cells.h"
#include "netmend/isolation/isolation.h"

namespace netmend {

struct PlacesOnLine {
  std::vector<ProbePlace> places;
  std::vector<std::size_t> cell; ///< of each place
};

/// Terminals and pads of pins, vias that come up to an outer layer, outer tracks.
[[nodiscard]] PlacesOnLine probePlaces(const Lookup& lookup, const Line& line, const LineCells& cells,
                                       const ProbeEfforts& efforts);

/// "(12.10, 8.00) mm"
[[nodiscard]] std::string placeText(Point at);
/// "top", "bottom", "layer 2 (In1.Cu)"; empty when it does not apply
[[nodiscard]] std::string layerText(const Board& board, int layer);

} // namespace netmend
