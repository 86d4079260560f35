#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "netmend/base/plane.h"
#include "netmend/board/shape.h"
#include "netmend/sketch/sketch.h"

namespace netmend {

namespace {

/// From the point to the copper, in nanometres; zero inside.
double distanceTo(const RoundedShape& shape, Point p) {
  const Ring& core = shape.core;
  if (core.size() > 2 && insideRing(core, vecOf(p))) return 0.0;
  double least = 1e300;
  for (std::size_t i = 0; i < core.size(); ++i)
    least = std::min(least, distanceToSegment(p, core[i], core[(i + 1) % core.size()]));
  return std::max(0.0, least - static_cast<double>(shape.radius.nm));
}

bool isOnSide(const Pad& pad, Side side) {
  if (!pad.reach.known()) return true;
  return pad.reach.value != (side == Side::top ? PadReach::bottom : PadReach::top);
}

/// How far a pad can reach from its place; a quick no for those far away.
Length extentOf(const Pad& pad) {
  Length out = pad.size.known() ? pad.size.value.width + pad.size.value.height : Length(500'000);
  for (const Point corner : pad.polygon)
    out = std::max(out, Length(std::abs(corner.x.nm) + std::abs(corner.y.nm)));
  return out;
}

double boxOf(const Ring& ring) {
  Box box;
  for (const Point p : ring)
    box.include(p);
  return box.size().width.mm() * box.size().height.mm();
}

} // namespace

SketchClick sketchClickAt(const Lookup& lookup, Point at, Side side, Length reach) {
  const Board& board = lookup.board();
  SketchClick out{at, side, {}, {}, reach};
  // Of two that are hit the one whose middle is nearer.
  std::pair nearest(static_cast<double>(reach.nm), std::numeric_limits<double>::infinity());
  for (const Pad& pad : board.pads) {
    if (!pad.position.known() || !isOnSide(pad, side)) continue;
    const Point d = pad.position.value - at;
    const Length far = extentOf(pad) + reach;
    if (std::abs(d.x.nm) > far.nm || std::abs(d.y.nm) > far.nm) continue;
    const auto shape = padShape(pad);
    const auto middle = static_cast<double>(distance(pad.position.value, at).nm);
    const std::pair away(shape ? distanceTo(*shape, at) : middle, middle);
    if (away >= nearest) continue;
    nearest = away;
    out.pin = pad.pin;
  }
  if (const Pin* pin = board.pins.find(out.pin)) {
    out.part = pin->part;
    return out;
  }
  double smallest = 1e300;
  for (const Part& part : board.parts) {
    if (!part.body.known() || part.side.valueOr(side) != side) continue;
    const double size = boxOf(part.body.value);
    if (size >= smallest || !insideRing(part.body.value, vecOf(at))) continue;
    smallest = size;
    out.part = part.id;
  }
  return out;
}

} // namespace netmend
