#include "label_placer.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace netmend {

namespace {

double areaOf(const QRectF& box) {
  return std::max(0.0, box.width()) * std::max(0.0, box.height());
}

bool crosses(const QRectF& box, const QLineF& line) {
  if (box.contains(line.p1()) || box.contains(line.p2())) return true;
  const QLineF sides[] = {{box.topLeft(), box.topRight()},
                          {box.topRight(), box.bottomRight()},
                          {box.bottomRight(), box.bottomLeft()},
                          {box.bottomLeft(), box.topLeft()}};
  return std::any_of(std::begin(sides), std::end(sides), [&](const QLineF& side) {
    return side.intersects(line, nullptr) == QLineF::BoundedIntersection;
  });
}

} // namespace

double LabelPlacer::cost(const QRectF& box) const {
  const double area = std::max(1e-9, areaOf(box));
  double sum = 30.0 * (area - areaOf(box & frame_)) / area;
  for (const Taken& other : taken_)
    sum += 12.0 * other.weight * areaOf(box & other.box) / area;
  for (const QLineF& line : lines_)
    if (crosses(box, line)) sum += 0.8;
  return sum;
}

QRectF LabelPlacer::place(QSizeF size, QPointF anchor, double gap) {
  constexpr int directions = 16;
  QRectF best;
  double bestCost = 1e300;
  for (int ring = 0; ring < 5; ++ring) {
    const double distance = gap + 0.9 * size.height() * ring;
    for (int i = 0; i < directions; ++i) {
      // Starts to the upper right, where a label is looked for first.
      const double angle = -std::numbers::pi / 8 + 2 * std::numbers::pi * i / directions;
      const double c = std::cos(angle);
      const double s = std::sin(angle);
      const QPointF centre =
          anchor + QPointF(c * (distance + size.width() / 2), s * (distance + size.height() / 2));
      const QRectF box(centre - QPointF(size.width(), size.height()) / 2, size);
      const double total = cost(box) + 0.7 * ring + 0.01 * i;
      if (total < bestCost) {
        bestCost = total;
        best = box;
      }
    }
  }
  // At worst it covers something, but it is never cut off.
  best.moveLeft(
      std::clamp(best.left(), frame_.left(), std::max(frame_.left(), frame_.right() - best.width())));
  best.moveTop(std::clamp(best.top(), frame_.top(), std::max(frame_.top(), frame_.bottom() - best.height())));
  occupy(best);
  return best;
}

bool LabelPlacer::isFree(const QRectF& box) const {
  return std::none_of(taken_.begin(), taken_.end(),
                      [&](const Taken& other) { return other.blocks && box.intersects(other.box); });
}

QRectF LabelPlacer::placeOver(QSizeF size, QPointF anchor, double gap) {
  const QRectF over(anchor - QPointF(size.width(), size.height()) / 2, size);
  if (cost(over) > 0.05) return place(size, anchor, gap);
  occupy(over);
  return over;
}

} // namespace netmend
