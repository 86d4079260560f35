#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "netmend/board/board.h"
#include "netmend/netgraph/copper_object.h"

/// Handles: the short names by which people type a place and readings remember it. A pin's is its label
/// (board/lookup.h). They are the same for as long as the board description is.
namespace netmend {

/// "via 17", or the ring on one outer layer: "via 17 top". `layer` is dense; -1: of the whole via.
[[nodiscard]] std::string viaHandle(const Board& board, ViaId via, int layer);
/// A bare place in millimetres: "12.00,8.50 bottom"; an inner layer by its number: "12.00,8.50 layer 2".
[[nodiscard]] std::string pointHandle(const Board& board, Point at, int layer);

/// What such a handle says: a via that is on the board, or a place on whatever copper is there (no object).
struct HandledPlace {
  CopperObject object;
  Point at;
  int layer = -1;
};
[[nodiscard]] std::optional<HandledPlace> placeOfHandle(const Board& board, std::string_view handle);

} // namespace netmend
