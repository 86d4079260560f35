#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/base/geometry.h"
#include "netmend/board/lookup.h"
#include "netmend/jumper/zone_rules.h"

namespace netmend {

/// What stands in a wire's way, as people call it.
struct KeepOutName {
  enum class What { part, zone, hole, joint, boardEdge };
  What what = What::part;
  ZoneKind kind = ZoneKind::tallPart; ///< of parts and zones
  std::string label;                  ///< reference, zone's name, or pin; empty: it has none
  Point at;                           ///< of a hole that belongs to no part
  friend auto operator<=>(const KeepOutName&, const KeepOutName&) = default;
};

/// A place that no wire may enter, before it is grown by margin and wire.
struct KeepOut {
  Polygon core;          ///< the zone or body itself
  bool wallOnly = false; ///< only the edges of `core` are in the way (a shield's wall, the board's edge)
  Length margin;
  ZoneKind kind = ZoneKind::tallPart;
  ZoneId zone; ///< none: made from a part, or the edge of the board
  PartId part; ///< none: drawn as a zone, a hole or joint, or the edge of the board
  PadId pad;   ///< of a hole or joint; none otherwise
  KeepOutName name;
  bool guessed = false; ///< the shape is a guess: hull of the pads, or a part of unknown height

  [[nodiscard]] bool isBoardEdge() const { return !part && !zone && !pad; }
};

/// A zone that costs but does not forbid.
struct SoftZone {
  Polygon core;
  ZoneId zone;
  ZoneRule rule;
  KeepOutName name;
};

/// One zone that a job takes out, with the reason that the sheet prints.
struct ZoneOverride {
  ZoneId zone;
  std::string reason;
};

struct Obstacles {
  std::vector<KeepOut> keepOuts;
  std::vector<SoftZone> softZones;
};

/// All that stands in the way of a wire on this side: drawn zones, and bodies of fitted parts that the
/// rules take for connectors, batteries, tall parts and so on. A body that is unknown is taken as the hull of
/// the part's pads. The edge of the board is not in it.
[[nodiscard]] Obstacles obstaclesOf(const Lookup& lookup, Side side, const ZoneRules& rules,
                                    const std::vector<ZoneOverride>& overrides = {});

/// Drilled holes of pads, and through-hole joints of other nets than the line's (`own`: the pads of its
/// copper, ascending): a bare hole wears the wire through, a live joint is one scratch away from a short. The
/// core is the pad's copper where it has some on this side, otherwise the hole. Vias are not among them.
[[nodiscard]] std::vector<KeepOut> holesAndJoints(const Board& board, Side side, const ZoneRules& rules,
                                                  const std::vector<PadId>& own);

/// Whether the pad has copper on this side, if it has any.
[[nodiscard]] bool reachesSide(const Pad& pad, const Part* part, Side side);

/// Whether the point is inside or on the edge of the polygon. Exact.
[[nodiscard]] bool covers(const Polygon& polygon, Point p);
/// Whether the point is strictly inside the core (not on its edge). Exact. Always false for a wall.
[[nodiscard]] bool strictlyInside(const KeepOut& keepOut, Point p);

/// Distance from the segment a-b to the filled core (to its edges, for a wall); zero when they touch.
[[nodiscard]] Length distanceTo(const KeepOut& keepOut, Point a, Point b);

/// Convex hull, counter-clockwise, without collinear corners. Exact.
[[nodiscard]] Ring hullOf(std::vector<Point> points);

/// Closed loops in whole nanometres whose summed winding number is positive exactly where the core, grown by
/// `by`, is: a little more near its arcs (circumscribed, `segmentsPerCorner` to a quarter turn), never less,
/// and at most by*(1/cos(45°/segmentsPerCorner) - 1) + 10 nm too much.
[[nodiscard]] std::vector<Ring> grownLoops(const KeepOut& keepOut, Length by, int segmentsPerCorner = 8);

} // namespace netmend
