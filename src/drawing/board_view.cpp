#include "netmend/drawing/board_view.h"

#include <algorithm>
#include <cmath>

#include "netmend/board/shape.h"

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

QPointF BoardView::toPicture(Point p) const {
  const double dx = (static_cast<double>(p.x.nm) - static_cast<double>(middle.x.nm)) / nmPerMm;
  const double dy = (static_cast<double>(p.y.nm) - static_cast<double>(middle.y.nm)) / nmPerMm;
  return frame.center() + QPointF(mirror(side) * dx, -dy) * scale.value;
}

Point BoardView::toBoard(QPointF p) const {
  const QPointF d = (p - frame.center()) / scale.value;
  return {lengthOfMm(middle.x.mm() + mirror(side) * d.x()), lengthOfMm(middle.y.mm() - d.y())};
}

Box BoardView::shown() const {
  Box box;
  box.include(toBoard(frame.topLeft()));
  box.include(toBoard(frame.bottomRight()));
  return box;
}

void BoardView::zoom(double steps, QPointF at) {
  const double before = scale.value;
  const double after = std::clamp(before * std::pow(1.25, steps), leastScale, greatestScale);
  // The place under `at` is middle + d/scale before and after.
  const QPointF d = at - frame.center();
  const double change = 1.0 / before - 1.0 / after;
  middle.x = lengthOfMm(middle.x.mm() + mirror(side) * d.x() * change);
  middle.y = lengthOfMm(middle.y.mm() - d.y() * change);
  scale = PictureScale(after);
}

void BoardView::pan(QPointF by) {
  middle.x = lengthOfMm(middle.x.mm() - mirror(side) * by.x() / scale.value);
  middle.y = lengthOfMm(middle.y.mm() + by.y() / scale.value);
}

void BoardView::flip() {
  side = side == Side::top ? Side::bottom : Side::top;
}

BoardView viewOf(const Box& box, const QRectF& frame, Side side, double margin) {
  BoardView view;
  view.frame = frame;
  view.side = side;
  double width = 20.0;
  double height = 20.0;
  if (!box.empty()) {
    view.middle = {lengthOfMm(0.5 * (box.min.x.mm() + box.max.x.mm())),
                   lengthOfMm(0.5 * (box.min.y.mm() + box.max.y.mm()))};
    const double w = box.max.x.mm() - box.min.x.mm();
    const double h = box.max.y.mm() - box.min.y.mm();
    if (w > 0 || h > 0) {
      width = w;
      height = h;
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
  for (const Part& part : board.parts) {
    if (part.body.known())
      include(box, part.body.value);
    else if (part.position.known())
      box.include(part.position.value);
  }
  return box;
}

} // namespace netmend
