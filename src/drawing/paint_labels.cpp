#include <algorithm>
#include <array>

#include "marks.h"
#include "painting.h"

namespace netmend {

namespace {

/// Text in its final place.
struct PlacedText {
  const SceneItem* item;
  FittedText text;
  QRectF box; ///< as it lies on the picture
};

double covered(const QRectF& box, const std::vector<QRectF>& others) {
  double sum = 0;
  for (const QRectF& other : others) {
    const QRectF common = box & other;
    sum += std::max(0.0, common.width()) * std::max(0.0, common.height());
  }
  return sum;
}

/// Middle of the body, or beside it within the body where that covers less of its pads.
QRectF placeInBody(const QRectF& body, QSizeF size, const std::vector<QRectF>& pads) {
  const double dx = std::max(0.0, body.width() - size.width()) / 2;
  const double dy = std::max(0.0, body.height() - size.height()) / 2;
  const std::array<QPointF, 5> offsets{{{0, 0}, {0, -dy}, {0, dy}, {-dx, 0}, {dx, 0}}};
  QRectF best;
  double least = 1e300;
  for (const QPointF offset : offsets) {
    const QRectF box(body.center() + offset - QPointF(size.width(), size.height()) / 2, size);
    const double cost = covered(box, pads);
    if (cost < least * 0.999) {
      least = cost;
      best = box;
    }
  }
  return best;
}

std::vector<PlacedText> placePartLabels(const Painting& p, const std::vector<const SceneItem*>& bodies,
                                        const std::vector<const SceneItem*>& pads) {
  std::vector<PlacedText> out;
  for (const SceneItem* item : bodies) {
    // Of a body cut by the frame, what is to be seen of it.
    const QRectF body = p.roomIn(item->box) & p.view.frame;
    if (item->text.isEmpty() || body.isEmpty()) continue;
    const auto fitted = fitText(p, item->text, body.size() * 0.94, p.unit * 13, true);
    if (!fitted) continue;
    std::vector<QRectF> near;
    for (const SceneItem* pad : pads)
      if (pad->box.intersects(item->box)) near.push_back(p.toPicture.mapRect(pad->box));
    std::vector<QRectF> earlier;
    for (const PlacedText& other : out)
      if (other.box.intersects(body)) earlier.push_back(other.box);
    near.insert(near.end(), earlier.begin(), earlier.end());
    const QSizeF size = fitted->upright ? fitted->size : fitted->size.transposed();
    const QRectF box = placeInBody(body, size, near);
    // Two names on one another are none.
    if (covered(box, earlier) < 0.1 * size.width() * size.height()) out.push_back({item, *fitted, box});
  }
  return out;
}

void paintText(const Painting& p, const PlacedText& placed, const QColor& colour, bool ground) {
  QPainter& painter = p.painter;
  painter.save();
  painter.setFont(placed.text.font);
  painter.translate(placed.box.center());
  if (!placed.text.upright) painter.rotate(-90);
  const QSizeF size = placed.text.size;
  const QRectF box(-size.width() / 2, -size.height() / 2, size.width(), size.height());
  if (ground) {
    paintLabel(painter, box, placed.item->text, p.colors);
  } else {
    painter.setPen(colour);
    painter.drawText(box, Qt::AlignCenter, placed.item->text);
  }
  painter.restore();
}

/// What reads on a pad as it is filled.
QColor inkOn(const Painting& p, const SceneItem& pad) {
  if (!p.isLit(pad)) return p.colors.padInk;
  const bool near = pad.firstLayer <= p.nearLayer && p.nearLayer <= pad.lastLayer;
  return near ? p.colors.litInk : p.colors.ink;
}

/// On the pad, or in its hole.
void paintPinLabel(const Painting& p, const SceneItem& pad, const std::vector<PlacedText>& parts) {
  const bool drilled = !pad.hole.isEmpty();
  const QRectF box = p.roomIn(drilled ? pad.hole : pad.box);
  if (pad.text.isEmpty() || !box.intersects(p.view.frame)) return;
  const auto fitted = fitText(p, pad.text, box.size() * (drilled ? 0.75 : 0.94), p.unit * 10, false);
  if (!fitted) return;
  const QSizeF size = fitted->size;
  const QRectF place(box.center() - QPointF(size.width(), size.height()) / 2, size);
  const bool hidden = std::any_of(parts.begin(), parts.end(),
                                  [&](const PlacedText& part) { return part.box.intersects(place); });
  if (!hidden) paintText(p, {&pad, *fitted, place}, drilled ? p.colors.holeInk : inkOn(p, pad), false);
}

} // namespace

QFont Painting::fontOf(double size) const {
  QFont font = type.font;
  font.setPixelSize(std::max(1, static_cast<int>(size)));
  return font;
}

QRectF Painting::roomIn(const QRectF& box) const {
  const QRectF around = toPicture.mapRect(box);
  const double c = std::abs(toPicture.m11()) / view.scale.value;
  const double s = std::abs(toPicture.m12()) / view.scale.value;
  if (s < 1e-9 || c < 1e-9 || box.isEmpty()) return around;
  // Turned by any other angle. An upright box of a by b lies in a turned one of w by h while
  // a·cos + b·sin ≤ w and a·sin + b·cos ≤ h; taken in the proportions of the box around.
  const double k = std::min(picture(box.width()) / (around.width() * c + around.height() * s),
                            picture(box.height()) / (around.width() * s + around.height() * c));
  const QSizeF size = around.size() * k;
  return {around.center() - QPointF(size.width(), size.height()) / 2, size};
}

std::optional<FittedText> fitText(const Painting& p, const QString& text, QSizeF room, double largest,
                                  bool mayTurn) {
  const double lineHeight = 1.17; // of DejaVu Sans, ascent and descent together
  const bool upright = !mayTurn || room.width() >= room.height() * 0.8;
  if (!upright) room.transpose();
  double size = std::min(largest, room.height() / lineHeight);
  if (size < p.type.smallest) return std::nullopt;
  QFont font = p.fontOf(size);
  double width = QFontMetricsF(font).horizontalAdvance(text);
  if (width > room.width()) {
    size *= room.width() / width;
    if (size < p.type.smallest) return std::nullopt;
    font = p.fontOf(size);
    width = QFontMetricsF(font).horizontalAdvance(text);
  }
  return FittedText{font, upright, QSizeF(width, font.pixelSize() * lineHeight)};
}

void paintItemLabels(const Painting& p, const std::vector<const SceneItem*>& bodies,
                     const std::vector<const SceneItem*>& pads, LabelPlacer& placer) {
  std::vector<PlacedText> parts;
  if (p.overlay.partLabels) parts = placePartLabels(p, bodies, pads);
  if (p.overlay.pinLabels)
    for (const SceneItem* pad : pads)
      paintPinLabel(p, *pad, parts);
  for (const PlacedText& part : parts) {
    if (!placer.isFree(part.box)) continue;
    paintText(p, part, p.colors.ink, true);
    placer.occupyName(part.box);
  }
}

} // namespace netmend
