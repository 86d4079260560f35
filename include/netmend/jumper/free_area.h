#pragma once

#include <optional>

#include "netmend/jumper/keep_out.h"
#include "netmend/jumper/navigation_mesh.h"

namespace netmend {

/// Where the middle of a wire may run on one side of a board.
struct FreeArea {
  Side side = Side::top;
  Length wire;                   ///< outer diameter it was made for
  Obstacles obstacles;           ///< the edge of the board comes last, one for each outline
  std::vector<KeepOut> passable; ///< holes and joints that were told not to stand in the way
  bool outlineGuessed = false;   ///< no outline known: a box round everything drawn
  std::vector<Box> bounds;       ///< by keep-out: its box with margin and half the wire
  NavigationMesh mesh;
};

struct FreeAreaOptions {
  Length wire = Length(100'000); ///< outer diameter; keep-outs grow by half of it and their margin
  int segmentsPerCorner = 8;     ///< of the polygon that stands for an arc, drawn around it
  std::vector<ZoneOverride> overrides;
  std::vector<PadId> own; ///< pads of the line's own copper, ascending: no obstacle
  bool overHoles = false; ///< holes and joints do not stand in the way
};

/// Fails when nothing on the board has a place, when an outline crosses itself, or when it is wider than 1 m.
[[nodiscard]] Result<FreeArea> buildFreeArea(const Lookup& lookup, Side side, const ZoneRules& rules,
                                             const FreeAreaOptions& options = {});

/// How a wire gets from a place inside a margin to free board.
struct Opening {
  Point exit;                        ///< on free board; the place itself where nothing had to be opened
  std::vector<std::size_t> keepOuts; ///< whose margins (or guessed bodies) were opened; empty: none
};

/// The shortest straight way out of the margins around `p`. Nothing when `p` is inside a keep-out proper (not
/// only its margin), or when every way out of up to `reach` crosses one. A guessed body opens for
/// pads of its own part.
[[nodiscard]] std::optional<Opening> openingAt(const FreeArea& area, Point p, PartId own = {},
                                               Length reach = Length(3'000'000));

/// Indices of the keep-outs nearer to the segment than their margin and half the wire.
[[nodiscard]] std::vector<std::size_t> keepOutsNear(const FreeArea& area, Point a, Point b);
/// The same for a point.
[[nodiscard]] std::vector<std::size_t> keepOutsAt(const FreeArea& area, Point p);

} // namespace netmend
