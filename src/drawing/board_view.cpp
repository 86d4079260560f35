#include "netmend/drawing/board_view.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "netmend/board/shape.h"
#include "netmend/board/underlay.h"

namespace netmend {

namespace {

constexpr double nmPerMm = 1e6;
constexpr double leastScale = 0.05;
constexpr double greatestScale = 50000.0;

Length lengthOfMm(double mm) {
  // A picture can be panned past any board; what leaves the range of coordinates stops at its end.
  constexpr double limit = 9e18;
  return Length(std::llround(std::clamp(mm * nmPerMm, -limit, limit)));
}

double mirror(Side side) {
  return side == Side::bottom ? -1.0 : 1.0;
}

/// Cosine and sine of an angle; exact for quarter turns, so that straight lines stay straight.
struct Unit {
  double c;
  double s;
};

Unit unitOf(Degrees angle) {
  const double degrees =
      std::isfinite(angle.value) ? std::fmod(std::fmod(angle.value, 360.0) + 360.0, 360.0) : 0.0;
  if (degrees == 0.0) return {1, 0};
  if (degrees == 90.0) return {0, 1};
  if (degrees == 180.0) return {-1, 0};
  if (degrees == 270.0) return {0, -1};
  const double radians = degrees * std::numbers::pi / 180.0;
  return {std::cos(radians), std::sin(radians)};
}

/// Counter-clockwise, with y down.
QPointF turnedBy(Unit unit, QPointF p) {
  return {p.x() * unit.c + p.y() * unit.s, -p.x() * unit.s + p.y() * unit.c};
}

/// A way across the picture as one across the board seen from the top, y up, in the picture's units.
QPointF onBoard(const BoardView& view, QPointF way) {
  const Unit unit = unitOf(view.turn);
  const QPointF upright = turnedBy({unit.c, -unit.s}, way);
  return {mirror(view.side) * upright.x(), -upright.y()};
}

void include(Box& box, const Ring& ring) {
  for (const Point p : ring)
    box.include(p);
}

void include(Box& box, Point p, Length around) {
  box.include({p.x - around, p.y - around});
  box.include({p.x + around, p.y + around});
}

void includePad(Box& box, const Pad& pad) {
  if (!pad.position.known()) return;
  if (const auto shape = padShape(pad)) {
    for (const Point p : shape->core)
      include(box, p, shape->radius);
  } else {
    box.include(pad.position.value);
  }
}

} // namespace

PictureLie BoardView::lie() const {
  return {side == Side::bottom, static_cast<int>(std::lround(turn.value / 90.0)) & 3};
}

QTransform BoardView::transform() const {
  const Unit turned = unitOf(turn);
  const double s = scale.value;
  const double m = mirror(side);
  const QTransform linear(m * s * turned.c, -m * s * turned.s, -s * turned.s, -s * turned.c, 0, 0);
  const QPointF offset = frame.center() - linear.map(QPointF(middle.x.mm(), middle.y.mm()));
  return {linear.m11(), linear.m12(), linear.m21(), linear.m22(), offset.x(), offset.y()};
}

QPointF BoardView::toPicture(Point p) const {
  const double dx = (static_cast<double>(p.x.nm) - static_cast<double>(middle.x.nm)) / nmPerMm;
  const double dy = (static_cast<double>(p.y.nm) - static_cast<double>(middle.y.nm)) / nmPerMm;
  return frame.center() + turnedBy(unitOf(turn), QPointF(mirror(side) * dx, -dy)) * scale.value;
}

Point BoardView::toBoard(QPointF p) const {
  const QPointF d = onBoard(*this, p - frame.center()) / scale.value;
  return {lengthOfMm(middle.x.mm() + d.x()), lengthOfMm(middle.y.mm() + d.y())};
}

Box BoardView::shown(const QRectF& rectangle) const {
  Box box;
  for (const QPointF corner :
       {rectangle.topLeft(), rectangle.topRight(), rectangle.bottomLeft(), rectangle.bottomRight()})
    box.include(toBoard(corner));
  return box;
}

void BoardView::zoom(double steps, QPointF at) {
  const double before = scale.value;
  const double after = std::clamp(before * std::pow(1.25, steps), leastScale, greatestScale);
  // The place under `at` is middle + d/scale before and after.
  const QPointF d = onBoard(*this, at - frame.center());
  const double change = 1.0 / before - 1.0 / after;
  middle.x = lengthOfMm(middle.x.mm() + d.x() * change);
  middle.y = lengthOfMm(middle.y.mm() + d.y() * change);
  scale = PictureScale(after);
}

void BoardView::pan(QPointF by) {
  const QPointF d = onBoard(*this, by) / scale.value;
  middle.x = lengthOfMm(middle.x.mm() - d.x());
  middle.y = lengthOfMm(middle.y.mm() - d.y());
}

void BoardView::flip() {
  side = side == Side::top ? Side::bottom : Side::top;
}

BoardView viewOf(const Box& box, const QRectF& frame, Side side, double margin, Degrees turn) {
  BoardView view;
  view.frame = frame;
  view.side = side;
  view.turn = turn;
  double width = 20.0;
  double height = 20.0;
  if (!box.empty()) {
    view.middle = {lengthOfMm(0.5 * (box.min.x.mm() + box.max.x.mm())),
                   lengthOfMm(0.5 * (box.min.y.mm() + box.max.y.mm()))};
    const double w = box.max.x.mm() - box.min.x.mm();
    const double h = box.max.y.mm() - box.min.y.mm();
    if (w > 0 || h > 0) {
      const Unit unit = unitOf(turn);
      width = w * std::abs(unit.c) + h * std::abs(unit.s);
      height = w * std::abs(unit.s) + h * std::abs(unit.c);
    }
  }
  const double share = 1.0 - 2.0 * margin;
  const double across = width > 0 ? frame.width() * share / width : greatestScale;
  const double down = height > 0 ? frame.height() * share / height : greatestScale;
  view.scale = PictureScale(std::clamp(std::min(across, down), leastScale, greatestScale));
  return view;
}

Box pictureExtent(const Board& board) {
  Box box;
  if (board.info.outline.known())
    for (const Polygon& polygon : board.info.outline.value)
      include(box, polygon.outer);
  for (const Pad& pad : board.pads)
    includePad(box, pad);
  for (const Track& track : board.tracks) {
    const Length half = track.width.valueOr(Length()) / 2;
    for (const Point p : centreLine(track))
      include(box, p, half);
  }
  for (const Via& via : board.vias)
    include(box, via.position, via.diameter.valueOr(Length()) / 2);
  for (const Area& area : board.areas)
    include(box, area.polygon.outer);
  for (const Zone& zone : board.zones)
    include(box, zone.polygon.outer);
  for (const Underlay& photo : board.underlays)
    include(box, outlineOf(photo));
  for (const Part& part : board.parts) {
    if (part.body.known())
      include(box, part.body.value);
    else if (part.position.known())
      box.include(part.position.value);
  }
  return box;
}

} // namespace netmend
