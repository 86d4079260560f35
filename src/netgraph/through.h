#pragma once

#include <vector>

#include "netmend/board/board.h"

namespace netmend {

/// The current paths of a part: as the board says, or else by kind and pins, then marked guessed. Pins count
/// in the order of their names, numbers as numbers.
/// - two pins: resistor, zero-ohm link, inductor, ferrite, fuse pass from pin to pin;
/// - choke of 4 pins: 1-4 and 2-3; of more (even): each pin and the one across, first-last and so on inwards;
/// - resistor array of an even number of pins from 4 on: each pin and the one across; an odd number is bussed
/// and
///   passes nothing;
/// - filter of 3 or 4 pins of which all but two are on ground: between these two, unless one is a radio net
///   (a resonator filter blocks direct current).
/// Everything else passes nothing. It is taken as fitted. Unknown when the kind is. The pairs
/// are common practice, no source. Resistance is that of the value for resistors and arrays, zero for links.
[[nodiscard]] Fact<std::vector<Through>> pathsIfFitted(const Board& board, const Part& part,
                                                       const std::vector<PinId>& pins);

} // namespace netmend
