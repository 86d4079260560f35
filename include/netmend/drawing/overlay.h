#pragma once

#include <vector>

#include <QRectF>

#include "netmend/base/quantity.h"
#include "netmend/base/said.h"
#include "netmend/board/board.h"

/// What a station has to say on top of the board: plain points, ways and labels, so that the picture
/// knows neither suspects nor jumpers.
namespace netmend {

/// Shapes that stay apart without colour.
enum class MarkShape {
  cross,    ///< a break
  ring,     ///< a landing
  probe,    ///< the due place: where the lead goes next. The map follows it
  suspect,  ///< its letter on a plate beside it; at the frame's edge where it is outside
  disc,     ///< in range
  gap,      ///< open
  bar,      ///< short
  downward, ///< low
  upward,   ///< high
  diamond,  ///< reads where OL is expected
  hollow    ///< nothing to compare
};

struct OverlayMark {
  Point at;
  MarkShape shape = MarkShape::cross;
  Said label{}; ///< stands beside it, moved to where it covers least
};

enum class LineStyle {
  suspect, ///< stretch that may be broken: a broad band beneath the net
  wire,    ///< a jumper's way as proposed: long dashes
  laid,    ///< the same, soldered in
  chosen,  ///< a closed line in the accent round a part, with its name on a plate
  outline  ///< a closed thin line round a region
};

struct OverlayLine {
  std::vector<Point> points;
  LineStyle style = LineStyle::wire;
  Said label{};
};

/// A piece of copper with the volts along it under an injected current. Colour and width go with them.
struct OverlayDrop {
  std::vector<Point> points; ///< two, or one: a spot
  Share share;               ///< of the whole drop: 0 at the short, 1 where the current goes in
};

/// What is to be seen of the board itself, and what lies on it.
struct Overlay {
  std::vector<NetId> litNets;  ///< a net, or all nets of a line
  std::vector<LayerId> dimmed; ///< copper of these is only hinted at
  std::vector<LayerId> hidden; ///< copper of these is left out
  bool overPhoto = false;      ///< there is a photo below: nothing is filled that would hide it
  bool seeThrough = false;     ///< the far side's parts and pads too, hollow
  bool zones = true;
  bool partLabels = true;
  bool pinLabels = true;
  bool scaleBar = true;
  std::vector<QRectF> covered;    ///< of the picture, by what stands over it: no label goes there
  std::vector<OverlayDrop> drops; ///< over the copper, beneath lines and marks
  std::vector<OverlayLine> lines; ///< drawn in this order
  std::vector<OverlayMark> marks; ///< drawn in this order, over all lines
};

} // namespace netmend
