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

/// Whether readings of job books up to version 5 called the place so: "via at (12.10, 8.00) mm, top".
[[nodiscard]] bool isOldHandle(std::string_view label, const ProbePlace& place);

} // namespace netmend
