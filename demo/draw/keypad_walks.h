#pragma once

#include <vector>

#include "netmend/probing/walk.h"

namespace netmend::demo {

/// Walks of the keypad's connector on good boards, and last on the one with the dead column. The values are
/// invented: what such pins usually read, spread a little from board to board, and read with a meter of 1 mV.
[[nodiscard]] std::vector<Walk> keypadWalks(const Board& board, int goodBoards);

} // namespace netmend::demo
