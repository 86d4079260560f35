#pragma once

#include <cstddef>
#include <string>

#include "netmend/board/lookup.h"

namespace netmend {

/// What a drawing is good for at the stations to come, in figures. It never stops anybody.
struct DrawingWorth {
  // Walk: the connector with most pins.
  std::string connector; ///< empty: none is drawn
  PartId connectorPart;
  std::size_t pins = 0;
  std::size_t placedPins = 0;
  std::size_t pinsWithNet = 0;
  // Find: of the net in hand, or the board's nets of two pins or more.
  std::size_t lines = 0;
  std::size_t linesWithCopper = 0;
  std::string net; ///< the one in hand: its name, or a pin of it; empty: none is
  std::size_t netPins = 0;
  std::size_t netTracks = 0;
  std::size_t netUnknownWays = 0;
  // Bridge
  std::size_t landings = 0; ///< pads with a place, and vias
  std::size_t zones = 0;    ///< drawn, or made by a part's body
  friend bool operator==(const DrawingWorth&, const DrawingWorth&) = default;
};

[[nodiscard]] DrawingWorth worthOf(const Lookup& lookup, NetId inHand);

} // namespace netmend
