#include "signs.h"

#include "netmend/drawing/pin_strip.h"
#include "style.h"

namespace netmend {

Sign markSign(MarkShape shape) {
  return [shape](QPainter& painter, const QRectF& box) {
    paintMark(painter, shape, box.center(), box.height() * 0.75);
  };
}

Sign tickBox(bool check, bool done) {
  return [check, done](QPainter& painter, const QRectF& box) {
    const double inset = box.height() * 0.12;
    const QRectF square = box.adjusted(inset, inset, -inset, -inset);
    painter.setPen(QPen(sheetColors().ink, 0.8 * SheetStyle::point));
    painter.setBrush(sheetColors().labelGround);
    if (check)
      painter.drawEllipse(square);
    else
      painter.drawRect(square);
    if (!done) return;
    painter.setPen(
        QPen(sheetColors().ink, 1.5 * SheetStyle::point, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF at = square.topLeft();
    const double s = square.width();
    painter.drawPolyline(QPolygonF(QList<QPointF>{
        at + QPointF(0.2 * s, 0.5 * s), at + QPointF(0.43 * s, 0.75 * s), at + QPointF(0.85 * s, 0.15 * s)}));
  };
}

Sign warningSign() {
  return [](QPainter& painter, const QRectF& box) {
    const double s = box.height();
    const QPointF at = box.topLeft();
    painter.setPen(
        QPen(sheetColors().ink, 0.8 * SheetStyle::point, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(sheetColors().labelGround);
    painter.drawPolygon(QPolygonF(QList<QPointF>{
        at + QPointF(0.5 * s, 0.1 * s), at + QPointF(0.95 * s, 0.88 * s), at + QPointF(0.05 * s, 0.88 * s)}));
    painter.setPen(QPen(sheetColors().ink, 1.1 * SheetStyle::point, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(at + QPointF(0.5 * s, 0.38 * s), at + QPointF(0.5 * s, 0.6 * s));
    painter.drawPoint(at + QPointF(0.5 * s, 0.76 * s));
  };
}

} // namespace netmend
