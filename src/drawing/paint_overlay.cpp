#include <algorithm>
#include <cmath>

#include "marks.h"
#include "netmend/drawing/palette.h"
#include "netmend/drawing/pin_strip.h"
#include "painting.h"

namespace netmend {

namespace {

constexpr double markSize = 12; ///< across, in units

/// A length of 1, 2 or 5 times a power of ten, in mm, of at most this much.
double roundLength(double most) {
  const double power = std::pow(10.0, std::floor(std::log10(most)));
  for (const double f : {5.0, 2.0})
    if (f * power <= most) return f * power;
  return power;
}

QString lengthText(double millimetres) {
  if (millimetres < 0.0999) return QStringLiteral("%1 µm").arg(millimetres * 1000.0, 0, 'g', 6);
  return QStringLiteral("%1 mm").arg(millimetres, 0, 'g', 6);
}

/// Label text in lines of at most a third of the frame.
QString wrapped(const QString& text, const QFontMetricsF& metrics, double width) {
  QString out;
  double used = 0;
  for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    const QString piece = metrics.elidedText(word, Qt::ElideRight, width);
    const double advance = metrics.horizontalAdvance(piece + QLatin1Char(' '));
    if (!out.isEmpty()) {
      const bool fits = used + advance <= width;
      out += fits ? QLatin1Char(' ') : QLatin1Char('\n');
      if (!fits) used = 0;
    }
    out += piece;
    used += advance;
  }
  return out;
}

void paintNamed(const Painting& p, LabelPlacer& placer, QPointF anchor, double gap,
                const std::string& label) {
  if (label.empty()) return;
  QFont font = p.type.font;
  font.setBold(true);
  const QFontMetricsF metrics(font);
  const QString text =
      wrapped(QString::fromStdString(label), metrics, std::max(40 * p.unit, p.view.frame.width() / 3));
  const QRectF extent = metrics.boundingRect(QRectF(0, 0, 1e7, 1e7), Qt::AlignLeft, text);
  const QRectF box = placer.place(extent.size() + QSizeF(5 * p.unit, 1.5 * p.unit), anchor, gap);
  const QPointF nearest(std::clamp(anchor.x(), box.left(), box.right()),
                        std::clamp(anchor.y(), box.top(), box.bottom()));
  if (QLineF(nearest, anchor).length() > gap * 1.5) {
    p.painter.setPen(QPen(palette::body, 0.7 * p.unit));
    p.painter.drawLine(nearest, anchor);
  }
  p.painter.setFont(font);
  paintLabel(p.painter, box, text, palette::black);
}

QPolygonF pictureOf(const Painting& p, const std::vector<Point>& points) {
  QPolygonF out;
  out.reserve(static_cast<qsizetype>(points.size()));
  for (const Point point : points)
    out.append(p.view.toPicture(point));
  return out;
}

double lengthOf(const QPolygonF& way) {
  double sum = 0;
  for (qsizetype i = 1; i < way.size(); ++i)
    sum += QLineF(way[i - 1], way[i]).length();
  return sum;
}

/// The place at this length along the way, and the unit vector across.
QLineF acrossAt(const QPolygonF& way, double along) {
  for (qsizetype i = 1; i < way.size(); ++i) {
    const QLineF piece(way[i - 1], way[i]);
    if (piece.length() <= 0) continue;
    if (along <= piece.length() || i == way.size() - 1) {
      const QLineF normal = piece.normalVector().unitVector();
      const QPointF at = piece.pointAt(std::min(1.0, along / piece.length()));
      return {at, at + (normal.p2() - normal.p1())};
    }
    along -= piece.length();
  }
  return {way.front(), way.front() + QPointF(0, 1)};
}

/// Broad and ticked across: told from a wire without colour.
void paintSuspect(const Painting& p, const QPolygonF& way) {
  QPainter& painter = p.painter;
  QColor broad = palette::vermillion;
  broad.setAlpha(90);
  painter.setPen(QPen(broad, 7 * p.unit, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.drawPolyline(way);
  painter.setPen(QPen(palette::vermillion, 1.1 * p.unit, Qt::SolidLine, Qt::FlatCap));
  const double length = lengthOf(way);
  const double step = std::max(5 * p.unit, length / 400);
  for (double along = 0; along <= length; along += step) {
    const QLineF across = acrossAt(way, along);
    const QPointF reach = (across.p2() - across.p1()) * 3.5 * p.unit;
    painter.drawLine(across.p1() - reach, across.p1() + reach);
  }
}

void paintWire(const Painting& p, const QPolygonF& way) {
  p.painter.setPen(QPen(palette::paper, 5.0 * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  p.painter.drawPolyline(way);
  p.painter.setPen(QPen(palette::black, 3.2 * p.unit, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  p.painter.drawPolyline(way);
  QPen pen(palette::bluishGreen.lighter(120), 2.2 * p.unit, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
  pen.setDashPattern({4.5, 1.5});
  p.painter.setPen(pen);
  p.painter.drawPolyline(way);
}

void paintOutline(const Painting& p, QPolygonF way) {
  if (way.size() > 2 && !way.isClosed()) way.append(way.front());
  p.painter.setPen(QPen(palette::black, 1.2 * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::MiterJoin));
  p.painter.drawPolyline(way);
}

} // namespace

void occupyMarks(const Painting& p, LabelPlacer& placer) {
  const double size = markSize * p.unit;
  for (const OverlayMark& mark : p.overlay.marks)
    placer.occupy(QRectF(p.view.toPicture(mark.at) - QPointF(size, size) / 2, QSizeF(size, size)));
}

void paintScaleBar(const Painting& p, LabelPlacer& placer) {
  QPainter& painter = p.painter;
  const double u = p.unit;
  const QRectF& frame = p.view.frame;
  const double millimetres = roundLength(p.inMm(std::max(frame.width() * 0.22, 20 * u)));
  const double length = p.picture(millimetres);
  painter.setFont(p.type.font);
  const QFontMetricsF metrics(p.type.font);
  const QString text = lengthText(millimetres);
  const QString side =
      p.view.side == Side::top ? QStringLiteral("seen from the top") : QStringLiteral("seen from the bottom");
  const double textWidth = std::max(metrics.horizontalAdvance(text), metrics.horizontalAdvance(side));
  const double height = 2 * metrics.height() + 6 * u;
  const QRectF plate(frame.left() + 3 * u, frame.bottom() - height - 5 * u,
                     std::max(length, textWidth) + 8 * u, height + 2 * u);
  QColor ground = palette::paper;
  ground.setAlpha(225);
  painter.setPen(Qt::NoPen);
  painter.setBrush(ground);
  painter.drawRect(plate);
  painter.setPen(palette::black);
  const double left = plate.left() + 4 * u;
  painter.drawText(QRectF(left, plate.top(), plate.width(), metrics.height()), Qt::AlignLeft, side);
  painter.drawText(QRectF(left, plate.top() + metrics.height(), plate.width(), metrics.height()),
                   Qt::AlignLeft, text);
  const double y = plate.bottom() - 3.5 * u;
  painter.setPen(QPen(palette::black, 1.4 * u, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(left, y), QPointF(left + length, y));
  // The outer edges of the ticks are the bar's ends.
  for (const double x : {left + 0.7 * u, left + length - 0.7 * u})
    painter.drawLine(QPointF(x, y - 2.5 * u), QPointF(x, y + 2.5 * u));
  placer.occupy(plate);
}

void paintLines(const Painting& p, LabelPlacer& placer) {
  p.painter.setBrush(Qt::NoBrush);
  for (const OverlayLine& line : p.overlay.lines) {
    if (line.points.size() < 2) continue;
    const QPolygonF way = pictureOf(p, line.points);
    switch (line.style) {
    case LineStyle::suspect:
      paintSuspect(p, way);
      break;
    case LineStyle::wire:
      paintWire(p, way);
      break;
    case LineStyle::outline:
      paintOutline(p, way);
      break;
    }
    p.painter.setBrush(Qt::NoBrush);
    for (qsizetype i = 1; i < way.size(); ++i)
      placer.avoid({way[i - 1], way[i]});
  }
}

void paintMarks(const Painting& p, LabelPlacer& placer) {
  const double size = markSize * p.unit;
  for (const OverlayMark& mark : p.overlay.marks) {
    const QPointF at = p.view.toPicture(mark.at);
    if (p.view.frame.contains(at)) paintNamed(p, placer, at, size * 0.7, mark.label);
  }
  for (const OverlayLine& line : p.overlay.lines) {
    if (line.label.empty() || line.points.size() < 2) continue;
    const QPolygonF way = pictureOf(p, line.points);
    const QPointF middle = acrossAt(way, lengthOf(way) / 2).p1();
    if (p.view.frame.contains(middle)) paintNamed(p, placer, middle, 5 * p.unit, line.label);
  }
  for (const OverlayMark& mark : p.overlay.marks)
    paintMark(p.painter, mark.shape, p.view.toPicture(mark.at), size);
}

} // namespace netmend
