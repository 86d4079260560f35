#include "painting.h"

namespace netmend {

namespace {

/// A core in an edge: apart from any tone of the photo, whose tones keep away from both.
struct Stroke {
  QColor edge;
  QColor core;
  double edgeWidth; ///< units
  double coreWidth;
};

Stroke strokeOf(const Painting& p, bool lit, double strength) {
  const QColor white(0xFF, 0xFF, 0xFF);
  return {white, lit ? p.colors.litOnPhoto : QColor(0x11, 0x16, 0x1A), 4.6 * strength, 2.2 * strength};
}

QPen penOf(const Painting& p, const QColor& colour, double units) {
  return {colour, p.inMm(units * p.unit), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

template <class Draw> void drawTwice(const Painting& p, const Stroke& stroke, bool dashed, Draw draw) {
  p.painter.setBrush(Qt::NoBrush);
  p.painter.setPen(penOf(p, stroke.edge, stroke.edgeWidth));
  draw();
  QPen core = penOf(p, stroke.core, stroke.coreWidth);
  if (dashed) {
    core.setCapStyle(Qt::FlatCap);
    core.setDashPattern({3.0, 2.2});
  }
  p.painter.setPen(core);
  draw();
}

void fill(const Painting& p, const SceneItem& item, const QColor& colour) {
  p.painter.setPen(Qt::NoPen);
  p.painter.setBrush(colour);
  p.painter.drawPath(item.path);
}

} // namespace

void paintOverPhoto(const Painting& p, const SceneItem& item, bool lit) {
  const Stroke strong = strokeOf(p, lit, 1.0);
  const Stroke fine = strokeOf(p, lit, 0.6);
  const bool named = item.net != SceneItem::noNet;
  switch (item.kind) {
  case ItemKind::track:
    // The centre line alone: the photo's copper stays to be seen on both sides.
    drawTwice(p, strong, item.uncertain, [&] { p.painter.drawPolyline(item.points); });
    break;
  case ItemKind::via:
    fill(p, item, named ? QColor(255, 255, 255, 235) : QColor(255, 255, 255, 60));
    drawTwice(p, fine, false, [&] { p.painter.drawPath(item.path); });
    break;
  case ItemKind::pad:
    fill(p, item, named ? QColor(255, 255, 255, 215) : QColor(255, 255, 255, 40));
    drawTwice(p, fine, false, [&] { p.painter.drawPath(item.path); });
    break;
  case ItemKind::padPlace: {
    const double r = p.inMm(3.5 * p.unit);
    const QPointF c = item.box.center();
    drawTwice(p, fine, false, [&] {
      p.painter.drawLine(c - QPointF(r, r), c + QPointF(r, r));
      p.painter.drawLine(c - QPointF(r, -r), c + QPointF(r, -r));
    });
    break;
  }
  case ItemKind::area:
    fill(p, item, QColor(0x11, 0x16, 0x1A, 36));
    drawTwice(p, fine, false, [&] { p.painter.drawPath(item.path); });
    break;
  case ItemKind::body:
    drawTwice(p, strokeOf(p, lit, 0.45), item.uncertain || item.absent,
              [&] { p.painter.drawPath(item.path); });
    break;
  case ItemKind::zone:
    paintZone(p, item);
    break;
  }
}

} // namespace netmend
