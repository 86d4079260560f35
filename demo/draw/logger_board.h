#pragma once

#include "netmend/board/board.h"

namespace netmend::demo {

/// The board of the demo: 80-odd parts, two sides, four layers, partly traced.
[[nodiscard]] Board loggerBoard();

} // namespace netmend::demo
