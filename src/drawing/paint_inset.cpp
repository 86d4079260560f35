#include <algorithm>

#include "scene_content.h"

namespace netmend {

void paintInset(QPainter& painter, const BoardScene& scene, const BoardView& view, const Overlay& overlay,
                const QRectF& box, const PictureColors& colors) {
  const BoardScene::Content& content = scene.content();
  const BoardView whole = viewOf(content.extent, box, view.side, 0.06, view.turn);
  const double unit = std::max(1.0, box.height() / 100);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colors.body, unit));
  painter.setBrush(colors.labelGround);
  painter.drawRect(box);
  painter.setClipRect(box);
  const QTransform toPicture = whole.transform();
  painter.setPen(QPen(colors.edge, unit));
  painter.setBrush(colors.substrate);
  painter.drawPath(toPicture.map(content.outline));
  const int near = view.side == Side::bottom ? content.lastLayer : 0;
  painter.setPen(QPen(colors.body, 0.7 * unit));
  painter.setBrush(Qt::NoBrush);
  for (const std::uint32_t index : content.landmarks) {
    const SceneItem& item = content.items[index];
    const QRectF part = toPicture.mapRect(item.box);
    if (item.firstLayer > near || item.lastLayer < near || part.width() + part.height() < 5 * unit) continue;
    painter.drawRect(part);
  }
  const QRectF seen(whole.toPicture(view.toBoard(view.frame.topLeft())),
                    whole.toPicture(view.toBoard(view.frame.bottomRight())));
  const QRectF least(seen.center() - QPointF(3, 3) * unit, QSizeF(6, 6) * unit);
  painter.setPen(QPen(colors.due, 2.2 * unit, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
  painter.drawRect((seen.normalized() | least) & box.adjusted(unit, unit, -unit, -unit));
  painter.setPen(Qt::NoPen);
  painter.setBrush(colors.due);
  for (const OverlayMark& mark : overlay.marks)
    if (mark.shape == MarkShape::probe) painter.drawEllipse(whole.toPicture(mark.at), 3 * unit, 3 * unit);
  painter.restore();
}

} // namespace netmend
