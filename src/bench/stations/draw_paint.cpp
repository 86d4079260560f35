// What is in hand, painted over the map.
#include <QPainter>

#include "draw_view.h"
#include "netmend/board/shape.h"
#include "netmend/board/underlay.h"

namespace netmend {

namespace {

const QColor penEdge(0xFF, 0xFF, 0xFF);
const QColor penInk(0x11, 0x16, 0x1A);

/// A core in a light edge, apart from any tone of a photo.
class Pencil {
public:
  Pencil(QPainter& painter, const BoardView& view, QColor core)
      : painter_(painter), view_(view), core_(core) {}

  void line(const Ring& way, Qt::PenStyle style = Qt::SolidLine, bool closed = false) {
    QPolygonF points;
    for (const Point p : way)
      points << view_.toPicture(p);
    if (closed && !points.isEmpty()) points << points.first();
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(QPen(penEdge, 5.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter_.drawPolyline(points);
    painter_.setPen(
        QPen(core_, 2.4, style, style == Qt::DotLine ? Qt::RoundCap : Qt::FlatCap, Qt::RoundJoin));
    painter_.drawPolyline(points);
  }
  void cross(Point at) {
    const QPointF c = view_.toPicture(at);
    for (const auto& [colour, width] : {std::pair(penEdge, 5.0), std::pair(penInk, 2.0)}) {
      painter_.setPen(QPen(colour, width));
      painter_.drawLine(c - QPointF(11, 0), c + QPointF(11, 0));
      painter_.drawLine(c - QPointF(0, 11), c + QPointF(0, 11));
    }
  }
  void ring(Point at, double radius = 12.0) {
    const QPointF c = view_.toPicture(at);
    painter_.setBrush(Qt::NoBrush);
    for (const auto& [colour, width] : {std::pair(penEdge, 6.0), std::pair(core_, 3.0)}) {
      painter_.setPen(QPen(colour, width));
      painter_.drawEllipse(c, radius, radius);
    }
  }
  void plate(Point at, const QString& text, QPointF by) {
    const QFontMetricsF metrics(painter_.font());
    const QSizeF size(metrics.horizontalAdvance(text) + 8, metrics.height() + 2);
    const QRectF box(view_.toPicture(at) + by - QPointF(size.width(), size.height()) / 2, size);
    painter_.setPen(QPen(penInk, 1.0));
    painter_.setBrush(penEdge);
    painter_.drawRoundedRect(box, 3, 3);
    painter_.setPen(penInk);
    painter_.drawText(box, Qt::AlignCenter, text);
  }

private:
  QPainter& painter_;
  const BoardView& view_;
  QColor core_;
};

Ring outlineOfPad(const PlacedArray::Pad& placed) {
  Pad pad;
  pad.position = guessed(placed.at);
  pad.shape = guessed(PadShape::rectangle);
  pad.size = guessed(placed.size);
  pad.rotation = placed.turn;
  const auto shape = padShape(pad);
  return shape ? outlineOf(*shape) : Ring();
}

/// Of a row so many that they can be read: the ends, and every fifth.
bool showsNumber(std::size_t index, std::size_t count) {
  return count <= 12 || index < 2 || index + 2 >= count || (index + 1) % 5 == 0;
}

} // namespace

void DrawView::paintHand(QPainter& painter, const BoardView& view) const {
  if (!desk_.drawing.begun()) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (laying_) {
    paintLaying(painter, view);
    painter.restore();
    return;
  }
  const Sketch& sketch = desk_.drawing.sketch();
  const Lookup& lookup = desk_.drawing.lookup();
  Pencil accent(painter, view, colors_.litOnPhoto);
  Pencil dark(painter, view, penInk);
  if (const auto& placed = sketch.proposal()) {
    accent.line(placed->body, Qt::SolidLine, true);
    for (const auto& pad : placed->pads)
      accent.line(outlineOfPad(pad), Qt::SolidLine, true);
    for (std::size_t i = 0; i < placed->pads.size(); ++i)
      if (showsNumber(i, placed->pads.size()))
        accent.plate(placed->pads[i].at, QString::fromStdString(placed->pads[i].name), {0, 0});
  }
  for (const auto& pins : sketch.series())
    for (std::size_t i = 1; i < pins.size(); ++i) {
      const auto a = positionOf(lookup, pins[i - 1]);
      const auto b = positionOf(lookup, pins[i]);
      if (a.known() && b.known()) accent.line({a.value, b.value}, Qt::DotLine);
    }
  for (const Point click : sketch.clicks())
    if (!sketch.proposal()) dark.cross(click);
  if (sketch.clicks().size() > 1 && !sketch.proposal()) dark.line(sketch.clicks(), Qt::DashLine);
  // The net in hand: what was clicked of it hangs together by dots where no copper is known.
  Ring joined;
  for (const PinId pin : sketch.group())
    if (const auto at = positionOf(lookup, pin); at.known()) joined.push_back(at.value);
  if (joined.size() > 1) dark.line(joined, Qt::DotLine);
  if (sketch.from()) {
    accent.ring(*sketch.from());
    if (sketch.goesInside()) dark.line({*sketch.from(), pointer_.at}, Qt::DashLine);
  }
  // Which pin is ringed is a look over all of them: not for each picture without a meter.
  if (const PinId ringed = metered_ ? sketch.ringed(lookup) : PinId{}; ringed)
    if (const auto at = positionOf(lookup, ringed); at.known()) accent.ring(at.value, 16.0);
  if (pressed_ && strokeWay_.size() > 1) {
    if (pressed_->pin) {
      accent.line(strokeWay_);
    } else if (const Part* part = desk_.drawing.board()->parts.find(pressed_->part)) {
      Ring moved = part->body.valueOr({});
      for (Point& corner : moved)
        corner = corner + (strokeWay_.back() - pressed_->at);
      accent.line(moved, Qt::SolidLine, true);
    }
  }
  if (const Part* part = desk_.drawing.board()->parts.find(sketch.part());
      part != nullptr && part->body.known())
    accent.line(part->body.value, Qt::SolidLine, true);
  painter.restore();
}

void DrawView::paintLaying(QPainter& painter, const BoardView& view) const {
  const Underlay* photo = underlayInHand();
  if (photo == nullptr) return;
  Pencil pencil(painter, view, colors_.litOnPhoto);
  pencil.line(outlineOf(*photo), Qt::SolidLine, true);
  const PhotoMapping mapping(*photo);
  int number = 0;
  for (const PhotoPoint& corner : laying_->corners())
    if (const auto at = mapping.toBoard(corner)) {
      pencil.cross(*at);
      pencil.plate(*at, QString::number(++number), {16, -16});
    }
  for (const PhotoPair& pair : laying_->pairs()) {
    if (laying_->by() == PhotoLaying::By::corners) break;
    pencil.cross(pair.board);
    pencil.plate(pair.board, QString::number(++number), {16, -16});
  }
}

} // namespace netmend
