#pragma once

#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/geometry.h"

namespace netmend {

/// One drawn piece of a board's edge.
struct EdgePiece {
  Ring points;
  bool closed = false;
};

struct Outline {
  std::vector<Polygon> polygons; ///< empty when nothing closes
  std::vector<Said> notices;
};

/// Chains the pieces into closed lines (ends closer than `gap` meet) and nests these: a closed line inside
/// another is a cut-out of it, one inside a cut-out a board of its own. Open chains are reported in a
/// notice and left out. An outline that crosses itself is an Error with the place on the board.
[[nodiscard]] Result<Outline> outlineFrom(std::vector<EdgePiece> pieces, Length gap = Length(50'000));

} // namespace netmend
