#pragma once

#include "copper_items.h"
#include "netmend/netgraph/copper_graph.h"

namespace netmend::copper {

/// The board's object that an item is of.
[[nodiscard]] CopperObject objectOf(const Board& board, const CopperItem& item);

/// The net that the object is said to be of; none if unknown, or known to be none.
[[nodiscard]] NetId netOf(const Board& board, const CopperObject& object);
[[nodiscard]] NetId netOf(const Board& board, const CopperItem& item);

} // namespace netmend::copper
