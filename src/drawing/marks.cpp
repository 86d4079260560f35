#include "marks.h"

#include <QPainterPath>

#include "netmend/drawing/pin_strip.h"

namespace netmend {

namespace {

/// Painted twice, first broader in the casing's colour, so that a mark stays apart from what it lies on.
void strokeWithCasing(QPainter& painter, const QPainterPath& path, const QColor& colour, double width,
                      const PictureColors& colors) {
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colors.casing, width * 2.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.drawPath(path);
  painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.drawPath(path);
}

void fillWithEdge(QPainter& painter, const QPainterPath& path, const QColor& fill, double size,
                  const PictureColors& colors) {
  painter.setPen(QPen(colors.ink, size * 0.07, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(fill);
  painter.drawPath(path);
}

QPainterPath polygonPath(std::initializer_list<QPointF> corners) {
  QPainterPath path;
  path.addPolygon(QPolygonF(QList<QPointF>(corners)));
  path.closeSubpath();
  return path;
}

QPainterPath crossPath(double r) {
  QPainterPath path;
  path.moveTo(-r, -r);
  path.lineTo(r, r);
  path.moveTo(-r, r);
  path.lineTo(r, -r);
  return path;
}

/// Two rings with daylight between them round what is touched, which stays to be seen.
void paintDueRing(QPainter& painter, double r, const PictureColors& colors) {
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colors.casing, r * 0.62));
  painter.drawEllipse(QPointF(), r, r);
  painter.setPen(QPen(colors.due, r * 0.24));
  painter.drawEllipse(QPointF(), r * 1.08, r * 1.08);
  painter.setPen(QPen(colors.due, r * 0.11));
  painter.drawEllipse(QPointF(), r * 0.76, r * 0.76);
}

/// A place that may be at fault: tinted all round, as a suspected stretch is along its length.
void paintHalo(QPainter& painter, double r, const PictureColors& colors) {
  QColor tint = colors.suspect;
  tint.setAlpha(110);
  painter.setPen(QPen(colors.suspect, r * 0.12));
  painter.setBrush(tint);
  painter.drawEllipse(QPointF(), r * 0.9, r * 0.9);
}

void paintRing(QPainter& painter, double r, const PictureColors& colors) {
  QPainterPath ring;
  ring.addEllipse(QPointF(), r * 0.85, r * 0.85);
  strokeWithCasing(painter, ring, colors.due, r * 0.36, colors);
  QPainterPath edges;
  edges.addEllipse(QPointF(), r * 1.03, r * 1.03);
  painter.setPen(QPen(colors.ink, r * 0.09));
  painter.drawPath(edges);
}

/// Two halves of a disc with daylight between them.
void paintGap(QPainter& painter, double r, double size, const PictureColors& colors) {
  QPainterPath halves;
  const QRectF box(-r, -r, 2 * r, 2 * r);
  const QPointF left(-r * 0.28, 0);
  const QPointF right(r * 0.28, 0);
  halves.moveTo(left + QPointF(0, -r));
  halves.arcTo(box.translated(left), 90, 180);
  halves.closeSubpath();
  halves.moveTo(right + QPointF(0, r));
  halves.arcTo(box.translated(right), 270, 180);
  halves.closeSubpath();
  fillWithEdge(painter, halves, colors.odd, size, colors);
}

void paintDisc(QPainter& painter, const QColor& fill, double r, double size, const PictureColors& colors) {
  QPainterPath path;
  path.addEllipse(QPointF(), r, r);
  fillWithEdge(painter, path, fill, size, colors);
}

} // namespace

void paintMark(QPainter& painter, MarkShape shape, QPointF at, double size, const PictureColors& colors) {
  painter.save();
  painter.translate(at);
  const double r = size / 2;
  switch (shape) {
  case MarkShape::cross:
    strokeWithCasing(painter, crossPath(r * 0.8), colors.odd, r * 0.42, colors);
    break;
  case MarkShape::ring:
    paintRing(painter, r, colors);
    break;
  case MarkShape::probe:
    paintDueRing(painter, r, colors);
    break;
  case MarkShape::suspect:
    paintHalo(painter, r, colors);
    break;
  case MarkShape::disc:
    paintDisc(painter, colors.calm, r * 0.75, size, colors);
    break;
  case MarkShape::gap:
    paintGap(painter, r * 0.8, size, colors);
    break;
  case MarkShape::bar:
    fillWithEdge(painter, polygonPath({{-r, -r * 0.5}, {r, -r * 0.5}, {r, r * 0.5}, {-r, r * 0.5}}),
                 colors.odd, size, colors);
    break;
  case MarkShape::downward:
    fillWithEdge(painter, polygonPath({{-r, -r * 0.8}, {r, -r * 0.8}, {0, r * 0.9}}), colors.odd, size,
                 colors);
    break;
  case MarkShape::upward:
    fillWithEdge(painter, polygonPath({{-r, r * 0.8}, {r, r * 0.8}, {0, -r * 0.9}}), colors.odd, size,
                 colors);
    break;
  case MarkShape::diamond:
    fillWithEdge(painter, polygonPath({{0, -r}, {r, 0}, {0, r}, {-r, 0}}), colors.calm, size, colors);
    break;
  case MarkShape::hollow:
    paintDisc(painter, colors.paper, r * 0.6, size, colors);
    break;
  }
  painter.restore();
}

void paintLabel(QPainter& painter, const QRectF& box, const QString& text, const PictureColors& colors) {
  QColor ground = colors.labelGround;
  ground.setAlpha(215);
  painter.setPen(Qt::NoPen);
  painter.setBrush(ground);
  painter.drawRoundedRect(box, box.height() * 0.08, box.height() * 0.08);
  painter.setPen(colors.ink);
  painter.drawText(box, Qt::AlignCenter, text);
}

} // namespace netmend
