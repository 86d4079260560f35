#pragma once

#include <cstddef>

#include <QGraphicsScene>

#include "netmend/board/board.h"

namespace netmend::benchmarks {

/// A board of so many pads in parts of eight, and so many tracks on four layers in runs from part to part.
/// The same every time.
[[nodiscard]] Board largeBoard(std::size_t pads, std::size_t tracks);

/// What the map draws of a board's top side, as one item each: areas, tracks, vias, pads, bodies, in the
/// colours of the map, with the names of the parts.
void fillScene(QGraphicsScene& scene, const Board& board);

} // namespace netmend::benchmarks
