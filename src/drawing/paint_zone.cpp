#include <algorithm>

#include "marks.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/jumper.h"
#include "painting.h"

namespace netmend {

namespace {

/// Sets of parallel lines; `dash` zero is a whole line. A pattern a kind, so that kinds stay apart
/// in black and white.
struct Hatch {
  double degrees;
  double spacing; ///< in units
  double dash;    ///< in units
};

std::vector<Hatch> hatchesOf(ZoneKind kind) {
  switch (kind) {
  case ZoneKind::connector:
    return {{45, 6, 0}};
  case ZoneKind::shieldWall:
    return {{45, 4.5, 0}, {135, 4.5, 0}};
  case ZoneKind::battery:
    return {{0, 5, 0}};
  case ZoneKind::fastener:
    return {{0, 4, 0.1}};
  case ZoneKind::antenna:
    return {{90, 5, 0}};
  case ZoneKind::flex:
    return {{135, 6, 0}};
  case ZoneKind::heatSensitive:
    return {{0, 7, 0}, {90, 7, 0}};
  case ZoneKind::tallPart:
    return {{45, 5, 5}};
  }
  return {};
}

/// Lines over `box`, in step with those through `anchor`: the pattern stays with the zone however the
/// picture is cut.
void paintHatch(QPainter& painter, const QRectF& box, QPointF anchor, const Hatch& hatch, double unit,
                const QColor& colour) {
  QPen pen(colour, 0.8 * unit, Qt::SolidLine, Qt::RoundCap);
  double period = 0;
  if (hatch.dash > 0) {
    if (hatch.dash < 1) pen.setWidthF(1.4 * unit);
    pen.setDashPattern({hatch.dash * unit / pen.widthF(), 4.0 * unit / pen.widthF()});
    period = (hatch.dash + 4.0) * unit;
  }
  painter.setPen(pen);
  painter.save();
  painter.translate(anchor);
  painter.rotate(-hatch.degrees);
  const QRectF reach = QTransform().rotate(hatch.degrees).mapRect(box.translated(-anchor));
  const double step = hatch.spacing * unit;
  const double left = period > 0 ? std::floor(reach.left() / period) * period : reach.left();
  for (double y = std::floor(reach.top() / step) * step; y <= reach.bottom() + step; y += step)
    painter.drawLine(QPointF(left, y), QPointF(reach.right(), y));
  painter.restore();
}

QString zoneText(const SceneItem& zone) {
  // A name in words is enough: which kind it is the hatch shows, and every letter more hides what is beside
  // it. A reference alone says nothing.
  if (std::any_of(zone.text.begin(), zone.text.end(), [](QChar c) { return c.isLower(); })) return zone.text;
  const QString kind = shown(nameOf(zone.zone));
  return zone.text.isEmpty() ? kind : kind + QStringLiteral(" ") + zone.text;
}

} // namespace

void paintZone(const Painting& p, const SceneItem& zone) {
  QPainter& painter = p.painter;
  painter.save();
  // Back to picture units: the hatch has the same spacing at every scale.
  painter.setTransform(p.toPicture.inverted(), true);
  const QPainterPath path = p.toPicture.map(zone.path);
  const QRectF box = path.boundingRect() & p.part.adjusted(-p.unit, -p.unit, p.unit, p.unit);
  if (!box.isEmpty()) {
    painter.save();
    painter.setClipPath(path, Qt::IntersectClip);
    for (const Hatch& hatch : hatchesOf(zone.zone))
      paintHatch(painter, box, path.boundingRect().center(), hatch, p.unit, p.colors.zone);
    painter.restore();
    painter.setPen(QPen(p.colors.zoneEdge, 0.9 * p.unit));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
  }
  painter.restore();
}

void paintZoneLabels(const Painting& p, const std::vector<const SceneItem*>& zones, LabelPlacer& placer) {
  for (const SceneItem* zone : zones) {
    const QRectF box = p.toPicture.mapRect(zone->box) & p.view.frame;
    if (box.isEmpty()) continue;
    const QString text = zoneText(*zone);
    QFont font = p.type.font;
    font.setItalic(true);
    const QFontMetricsF metrics(font);
    const QSizeF size(metrics.horizontalAdvance(text) + 4 * p.unit, metrics.height());
    // A zone of a few pixels is not worth a label that hides its surroundings.
    if (std::max(box.width(), box.height()) < p.unit * 12) continue;
    const QRectF place = placer.placeOver(size, box.center(), 0.5 * p.unit);
    p.painter.setFont(font);
    paintLabel(p.painter, place, text, p.colors);
  }
}

} // namespace netmend
