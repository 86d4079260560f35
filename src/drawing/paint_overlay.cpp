#include <algorithm>
#include <cmath>

#include "marks.h"
#include "netmend/drawing/pin_strip.h"
#include "netmend/drawing/shown.h"
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

struct ScaleBar {
  double length; ///< on the picture
  QString text;
  QString side;
  QRectF plate;
};

ScaleBar scaleBarOf(const BoardView& view, const PictureType& type) {
  const double u = type.font.pixelSize() / 10.0;
  const QRectF& frame = view.frame;
  const double millimetres = roundLength(std::max(frame.width() * 0.22, 20 * u) / view.scale.value);
  ScaleBar bar;
  bar.length = millimetres * view.scale.value;
  bar.text = lengthText(millimetres);
  bar.side = view.side == Side::top ? shown(pattern("core", "seen from the top"))
                                    : shown(pattern("core", "seen from the bottom"));
  bar.text += QStringLiteral(", ") + bar.side;
  const QFontMetricsF metrics(type.font);
  const double height = metrics.height() + 4 * u;
  bar.plate = QRectF(frame.left() + 5 * u, frame.bottom() - height - 5 * u,
                     bar.length + metrics.horizontalAdvance(bar.text) + 15 * u, height);
  return bar;
}

/// Label text in lines of at most `width`.
QString wrapped(const QString& text, const QFontMetricsF& metrics, double width) {
  QString out;
  double used = 0;
  QStringList pieces;
  for (const QString& whole : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    // Some languages have words longer than a line; what takes more than two is no word.
    const QString word = metrics.elidedText(whole, Qt::ElideRight, 2 * width);
    qsizetype from = 0;
    while (metrics.horizontalAdvance(word.mid(from)) > width) {
      qsizetype length = 1;
      while (metrics.horizontalAdvance(word.mid(from, length + 1) + QLatin1Char('-')) <= width)
        ++length;
      pieces << word.mid(from, length) + QLatin1Char('-');
      from += length;
    }
    pieces << word.mid(from);
  }
  for (const QString& piece : pieces) {
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

void paintNamed(const Painting& p, LabelPlacer& placer, QPointF anchor, double gap, const Said& label) {
  if (label.empty()) return;
  QFont font = p.type.font;
  font.setBold(true);
  const QFontMetricsF metrics(font);
  const QString text =
      wrapped(shown(label, p.view.lie()), metrics, std::max(40 * p.unit, p.view.frame.width() * 0.4));
  const QRectF extent = metrics.boundingRect(QRectF(0, 0, 1e7, 1e7), Qt::AlignLeft, text);
  const QRectF box = placer.place(extent.size() + QSizeF(5 * p.unit, 1.5 * p.unit), anchor, gap);
  const QPointF nearest(std::clamp(anchor.x(), box.left(), box.right()),
                        std::clamp(anchor.y(), box.top(), box.bottom()));
  if (QLineF(nearest, anchor).length() > gap * 1.5) {
    p.painter.setPen(QPen(p.colors.body, 0.7 * p.unit));
    p.painter.drawLine(nearest, anchor);
  }
  p.painter.setFont(font);
  paintLabel(p.painter, box, text, p.colors);
}

/// A suspect's letter on its plate, beside the place.
void paintLetter(const Painting& p, LabelPlacer& placer, QPointF anchor, const Said& label) {
  if (label.empty()) return;
  QFont font = p.type.font;
  font.setBold(true);
  font.setPixelSize(font.pixelSize() * 5 / 4);
  const double side = QFontMetricsF(font).height() * 1.1;
  const QRectF box = placer.place({side, side}, anchor, 8 * p.unit);
  const QPointF nearest(std::clamp(anchor.x(), box.left(), box.right()),
                        std::clamp(anchor.y(), box.top(), box.bottom()));
  if (QLineF(nearest, anchor).length() > 12 * p.unit) {
    p.painter.setPen(QPen(p.colors.oddPlate, p.unit));
    p.painter.drawLine(nearest, anchor);
  }
  p.painter.setPen(QPen(p.colors.casing, 1.5 * p.unit));
  p.painter.setBrush(p.colors.oddPlate);
  p.painter.drawRoundedRect(box, 2.5 * p.unit, 2.5 * p.unit);
  p.painter.setFont(font);
  p.painter.setPen(p.colors.oddInk);
  p.painter.drawText(box, Qt::AlignCenter, shown(label));
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

/// Whether the place is on that line, as far as can be seen.
bool isOn(const Painting& p, const OverlayLine& line, Point at) {
  const QPolygonF way = pictureOf(p, line.points);
  const QPointF place = p.view.toPicture(at);
  for (qsizetype i = 1; i < way.size(); ++i) {
    const QPointF along = way[i] - way[i - 1];
    const double length = QPointF::dotProduct(along, along);
    const double share =
        length > 0 ? std::clamp(QPointF::dotProduct(place - way[i - 1], along) / length, 0.0, 1.0) : 0.0;
    if (QLineF(place, way[i - 1] + along * share).length() < 3 * p.unit) return true;
  }
  return false;
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

/// Broad, with edges: told from a wire without colour.
void paintSuspect(const Painting& p, const QPolygonF& way, double broadest) {
  QColor broad = p.colors.suspect;
  for (const auto& [alpha, width] : {std::pair(255, broadest), std::pair(130, broadest - 1.4 * p.unit)}) {
    if (alpha < 255) {
      p.painter.setPen(QPen(p.colors.substrate, width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
      p.painter.drawPolyline(way);
    }
    broad.setAlpha(alpha);
    p.painter.setPen(QPen(broad, width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    p.painter.drawPolyline(way);
  }
}

/// A line in a casing with dashes in it; widths in units, dashes in their own width.
struct Strand {
  double casing;
  double edge;
  Qt::PenCapStyle cap; ///< of the edge
  double dash;
  QList<qreal> pattern;
};

void paintStrand(const Painting& p, const QPolygonF& way, const Strand& strand, const QColor& dashes) {
  p.painter.setPen(QPen(p.colors.casing, strand.casing * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  p.painter.drawPolyline(way);
  p.painter.setPen(QPen(p.colors.wireEdge, strand.edge * p.unit, Qt::SolidLine, strand.cap, Qt::RoundJoin));
  p.painter.drawPolyline(way);
  QPen pen(dashes, strand.dash * p.unit, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
  pen.setDashPattern(strand.pattern);
  p.painter.setPen(pen);
  p.painter.drawPolyline(way);
}

/// Of another kind of line than any copper: whole, ink with white in it.
void paintLaid(const Painting& p, const QPolygonF& way) {
  paintStrand(p, way, {6.0, 4.4, Qt::RoundCap, 1.8, {3.0, 2.0}}, p.colors.casing);
}

void paintWire(const Painting& p, const QPolygonF& way) {
  paintStrand(p, way, {5.0, 3.2, Qt::FlatCap, 2.2, {4.5, 1.5}}, p.colors.wire);
}

void paintOutline(const Painting& p, QPolygonF way) {
  if (way.size() > 2 && !way.isClosed()) way.append(way.front());
  p.painter.setPen(QPen(p.colors.ink, 1.2 * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::MiterJoin));
  p.painter.drawPolyline(way);
}

void paintChosen(const Painting& p, LabelPlacer& placer, const QPolygonF& way, const Said& label) {
  const QRectF box = way.boundingRect().adjusted(-4 * p.unit, -4 * p.unit, 4 * p.unit, 4 * p.unit);
  for (const auto& [colour, width] : {std::pair(p.colors.casing, 5.0), std::pair(p.colors.due, 3.0)}) {
    p.painter.setPen(QPen(colour, width * p.unit, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    p.painter.drawRect(box);
  }
  placer.occupy(box);
  if (label.empty()) return;
  QFont font = p.type.font;
  font.setPixelSize(std::max(1, static_cast<int>(font.pixelSize() * 1.7)));
  font.setBold(true);
  const QFontMetricsF metrics(font);
  const QString text = metrics.elidedText(shown(label), Qt::ElideMiddle, p.view.frame.width() * 0.5);
  const QSizeF size(metrics.horizontalAdvance(text) + 14 * p.unit, metrics.height() + 4 * p.unit);
  // Above or below its left edge, else wherever there is room.
  QRectF plate(box.topLeft() - QPointF(0, size.height() + 3 * p.unit), size);
  if (placer.cost(plate) > 0.5) plate.moveTop(box.bottom() + 3 * p.unit);
  if (placer.cost(plate) > 0.5)
    plate = placer.place(size, box.center(), std::max(box.width(), box.height()) / 2);
  else
    placer.occupy(plate);
  p.painter.setPen(Qt::NoPen);
  p.painter.setBrush(p.colors.due);
  p.painter.drawRoundedRect(plate, 3 * p.unit, 3 * p.unit);
  p.painter.setFont(font);
  p.painter.setPen(p.colors.dueInk);
  p.painter.drawText(plate, Qt::AlignCenter, text);
}

} // namespace

void occupyMarks(const Painting& p, LabelPlacer& placer) {
  const double size = markSize * p.unit;
  for (const QRectF& covered : p.overlay.covered)
    placer.occupy(covered.translated(p.view.frame.topLeft()));
  for (const OverlayMark& mark : p.overlay.marks)
    placer.occupy(QRectF(p.view.toPicture(mark.at) - QPointF(size, size) / 2, QSizeF(size, size)));
}

QRectF scaleBarPlate(const BoardView& view, const PictureType& type) {
  return scaleBarOf(view, type).plate;
}

void paintScaleBar(QPainter& painter, const BoardView& view, const PictureType& type,
                   const PictureColors& colors) {
  const double u = type.font.pixelSize() / 10.0;
  const ScaleBar bar = scaleBarOf(view, type);
  painter.save();
  painter.setClipRect(view.frame, Qt::IntersectClip);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(type.font);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colors.labelGround);
  painter.drawRect(bar.plate);
  painter.setPen(colors.ink);
  const double left = bar.plate.left() + 5 * u;
  painter.drawText(bar.plate.adjusted(bar.length + 10 * u, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                   bar.text);
  const double y = bar.plate.center().y() + 1.5 * u;
  painter.setPen(QPen(colors.ink, 1.4 * u, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(left, y), QPointF(left + bar.length, y));
  // The outer edges of the ticks are the bar's ends.
  for (const double x : {left + 0.7 * u, left + bar.length - 0.7 * u})
    painter.drawLine(QPointF(x, y - 2.5 * u), QPointF(x, y + 2.5 * u));
  painter.restore();
}

void paintSuspectBands(const Painting& p, LabelPlacer& placer, double widest) {
  p.painter.setBrush(Qt::NoBrush);
  for (const OverlayLine& line : p.overlay.lines) {
    if (line.style != LineStyle::suspect || line.points.size() < 2) continue;
    const QPolygonF way = pictureOf(p, line.points);
    paintSuspect(p, way, std::clamp(widest + 7 * p.unit, 9 * p.unit, 30 * p.unit));
    for (qsizetype i = 1; i < way.size(); ++i)
      placer.avoid({way[i - 1], way[i]});
  }
}

void paintLines(const Painting& p, LabelPlacer& placer) {
  p.painter.setBrush(Qt::NoBrush);
  for (const OverlayLine& line : p.overlay.lines) {
    if (line.points.size() < 2 || line.style == LineStyle::suspect) continue;
    const QPolygonF way = pictureOf(p, line.points);
    switch (line.style) {
    case LineStyle::suspect:
      break;
    case LineStyle::laid:
      paintLaid(p, way);
      break;
    case LineStyle::wire:
      paintWire(p, way);
      break;
    case LineStyle::outline:
      paintOutline(p, way);
      break;
    case LineStyle::chosen:
      paintChosen(p, placer, way, line.label);
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
    if (mark.shape == MarkShape::probe || !p.view.frame.contains(at)) continue;
    if (mark.shape == MarkShape::suspect)
      paintLetter(p, placer, at, mark.label);
    else
      paintNamed(p, placer, at, size * 0.7, mark.label);
  }
  for (const OverlayLine& line : p.overlay.lines) {
    if (line.label.empty() || line.points.size() < 2 || line.style == LineStyle::chosen) continue;
    const QPolygonF way = pictureOf(p, line.points);
    const QPointF middle = acrossAt(way, lengthOf(way) / 2).p1();
    if (p.view.frame.contains(middle)) paintNamed(p, placer, middle, 5 * p.unit, line.label);
  }
  for (const OverlayMark& mark : p.overlay.marks) {
    const bool onBand =
        mark.shape == MarkShape::suspect &&
        std::any_of(p.overlay.lines.begin(), p.overlay.lines.end(), [&](const OverlayLine& line) {
          return line.style == LineStyle::suspect && line.points.size() > 1 && isOn(p, line, mark.at);
        });
    if (mark.shape != MarkShape::probe && !onBand)
      paintMark(p.painter, mark.shape, p.view.toPicture(mark.at), size, p.colors);
  }
}

} // namespace netmend
