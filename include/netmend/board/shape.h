#pragma once

#include <optional>

#include "netmend/board/board.h"

namespace netmend {

/// A disc of `radius` swept over `core`: one point is a disc, two are a stadium, three and more a
/// filled simple polygon with rounded corners. Every pad, track segment and via is one of these.
struct RoundedShape {
  Ring core;
  Length radius;
};

/// The copper of a pad on the board (rotated and moved). Nothing when position, shape or size is unknown.
[[nodiscard]] std::optional<RoundedShape> padShape(const Pad& pad);

/// The same as a ring of corners; arcs become chords whose sagitta is at most `maxError`, corners on the arc.
[[nodiscard]] Ring outlineOf(const RoundedShape& shape, Length maxError = Length(1000));

/// Where the pad's hole is; nothing if it has none or it is unknown.
[[nodiscard]] std::optional<Point> drillCentre(const Pad& pad);

/// `offset` turned by `rotation` counter-clockwise and moved to `origin`.
[[nodiscard]] Point placed(Point origin, Degrees rotation, Point offset);

/// Centre, radius (nm) and swept angle (radians, positive is counter-clockwise) of an arc track.
struct ArcGeometry {
  double centreX, centreY, radius, startAngle, sweep;
};
/// Nothing when the three points lie on a line: then the track is as good as straight.
[[nodiscard]] std::optional<ArcGeometry> arcGeometry(Point start, Point mid, Point end);

/// The track's centre line: two points, or a chain along the arc with sagitta at most `maxError`.
[[nodiscard]] Ring centreLine(const Track& track, Length maxError = Length(1000));

/// Length of the way; nothing for an unknown way.
[[nodiscard]] std::optional<Length> trackLength(const Track& track);

} // namespace netmend
