#pragma once

#include <optional>

#include "netmend/board/board.h"

namespace netmend {

/// A disc of `radius` swept over `core`: one point is a disc, two are a stadium, three and more a
/// filled simple polygon with rounded corners. The polygon is convex when `radius` is above zero.
/// Every pad, track segment and via is one of these.
struct RoundedShape {
  Ring core;
  Length radius;
};

/// The copper of a pad on the board (rotated and moved). Nothing when position, shape or size is unknown,
/// or a side is not above zero. `size` does not matter to a polygon; a circle's diameter is its width.
[[nodiscard]] std::optional<RoundedShape> padShape(const Pad& pad);

/// The same as a ring of corners, counter-clockwise; arcs become chords whose sagitta is at most `maxError`,
/// corners on the arc. At most 4096 chords a circle, whatever the error asked for.
[[nodiscard]] Ring outlineOf(const RoundedShape& shape, Length maxError = Length(1000));

/// Where the pad's hole is; nothing if it has none or it is unknown.
[[nodiscard]] std::optional<Point> drillCentre(const Pad& pad);

/// `offset` turned by `rotation` counter-clockwise and moved to `origin`. Exact for quarter turns.
[[nodiscard]] Point placed(Point origin, Degrees rotation, Point offset);

/// Centre, radius (nm) and swept angle (radians, positive is counter-clockwise) of an arc track.
struct ArcGeometry {
  double centreX, centreY, radius, startAngle, sweep;
};
/// The circle through three points (perpendicular bisectors). Nothing when they lie on a line to within half
/// a nanometre: then the track is as good as straight. Start equal to end is a full circle, `mid` opposite.
[[nodiscard]] std::optional<ArcGeometry> arcGeometry(Point start, Point mid, Point end);

/// The track's centre line: two points (also for an unknown way), or a chain along the arc with sagitta at
/// most `maxError`, corners on the arc.
[[nodiscard]] Ring centreLine(const Track& track, Length maxError = Length(1000));

/// Length of the way; nothing for an unknown way.
[[nodiscard]] std::optional<Length> trackLength(const Track& track);

} // namespace netmend
