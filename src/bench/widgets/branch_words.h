#pragma once

#include "line_pieces.h"

namespace netmend {

/// "joint + 12.3 mm + 2 vias"; what is not known is said.
[[nodiscard]] QString branchWords(const TreeBranch& branch, const LinePieces& pieces);
/// Reference and value of the part that the branch goes through; empty: none.
[[nodiscard]] QString partOn(const TreeBranch& branch, const LinePieces& pieces);

} // namespace netmend
