#include <algorithm>

#include <QLineF>

#include "netmend/base/plane.h"
#include "scene_content.h"

namespace netmend {

namespace {

bool reaches(const SceneItem& item, int layer) {
  return item.firstLayer <= layer && layer <= item.lastLayer;
}

double distanceTo(const QPolygonF& way, QPointF p) {
  const auto vec = [](QPointF q) { return Vec{q.x(), q.y()}; };
  double least = 1e300;
  for (qsizetype i = 1; i < way.size(); ++i)
    least = std::min(least, distanceToSegment(vec(p), vec(way[i - 1]), vec(way[i])));
  return least;
}

bool covers(const SceneItem& item, QPointF at) {
  switch (item.kind) {
  case ItemKind::padPlace:
    return true;
  case ItemKind::track:
    return distanceTo(item.points, at) <= item.width / 2;
  default:
    return item.path.contains(at);
  }
}

} // namespace

PadId BoardScene::padAt(Point place, Side side) const {
  const QPointF at = mm(place);
  const int near = side == Side::top ? 0 : content_->lastLayer;
  const SceneItem* best = nullptr;
  const auto better = [&](const SceneItem& item) {
    if (best == nullptr) return true;
    if (reaches(item, near) != reaches(*best, near)) return reaches(item, near);
    return areaOf(item) < areaOf(*best);
  };
  for (const std::uint32_t index : itemsIn(*content_, QRectF(at, QSizeF(0, 0)))) {
    const SceneItem& item = content_->items[index];
    if (item.kind != ItemKind::pad && item.kind != ItemKind::padPlace) continue;
    if (covers(item, at) && better(item)) best = &item;
  }
  return best != nullptr ? best->pad : PadId();
}

BoardScene::Found BoardScene::foundAt(Point place, Side side, bool through) const {
  const QPointF at = mm(place);
  const int near = side == Side::top ? 0 : content_->lastLayer;
  const SceneItem* copper = nullptr;
  const SceneItem* body = nullptr;
  const auto keep = [&](const SceneItem*& best, const SceneItem& item) {
    const bool better =
        best == nullptr ||
        (reaches(item, near) != reaches(*best, near) ? reaches(item, near) : areaOf(item) < areaOf(*best));
    if (better && covers(item, at)) best = &item;
  };
  for (const std::uint32_t index : itemsIn(*content_, QRectF(at, QSizeF(0, 0)))) {
    const SceneItem& item = content_->items[index];
    if (item.kind == ItemKind::zone || (!through && !reaches(item, near))) continue;
    if (item.kind == ItemKind::body)
      keep(body, item);
    else if (item.net != SceneItem::noNet)
      keep(copper, item);
  }
  return {copper != nullptr ? content_->nets[copper->net] : NetId(), body != nullptr ? body->part : PartId()};
}

std::optional<Side> BoardScene::sideTouched(Point place) const {
  const QPointF at = mm(place);
  bool top = false;
  bool bottom = false;
  for (const std::uint32_t index : itemsIn(*content_, QRectF(at, QSizeF(0, 0)))) {
    const SceneItem& item = content_->items[index];
    if (item.kind == ItemKind::zone || item.kind == ItemKind::body || item.kind == ItemKind::area) continue;
    if (!covers(item, at)) continue;
    top = top || reaches(item, 0);
    bottom = bottom || reaches(item, content_->lastLayer);
  }
  if (top == bottom) return std::nullopt;
  return top ? Side::top : Side::bottom;
}

Box BoardScene::around(Point place, Side side, Length reach) const {
  const QPointF at = mm(place);
  const int near = side == Side::top ? 0 : content_->lastLayer;
  const QRectF within(at - QPointF(reach.mm(), reach.mm()), QSizeF(2 * reach.mm(), 2 * reach.mm()));
  QRectF touched(at, QSizeF(0, 0));
  const SceneItem* part = nullptr;
  double nearest = 1e300;
  double smallest = 1e300;
  for (const std::uint32_t index : itemsIn(*content_, within)) {
    const SceneItem& item = content_->items[index];
    if (!reaches(item, near)) continue;
    if ((item.kind == ItemKind::pad || item.kind == ItemKind::via) && covers(item, at) &&
        areaOf(item) < smallest) {
      smallest = areaOf(item);
      touched = item.box;
    }
    if (item.kind != ItemKind::body) continue;
    // Of two that it lies in, or between, the smaller one says more.
    const QPointF closest(std::clamp(at.x(), item.box.left(), item.box.right()),
                          std::clamp(at.y(), item.box.top(), item.box.bottom()));
    const double away = QLineF(closest, at).length();
    if (away < nearest - 1e-9 || (away < nearest + 1e-9 && areaOf(item) < areaOf(*part))) {
      nearest = away;
      part = &item;
    }
  }
  QRectF box = touched;
  if (part != nullptr) box |= part->box;
  box &= within;
  const auto point = [](QPointF p) { return Point{Length::fromMm(p.x()), Length::fromMm(p.y())}; };
  Box out;
  out.include(place);
  if (!box.isNull()) {
    out.include(point(box.topLeft()));
    out.include(point(box.bottomRight()));
  }
  return out;
}

} // namespace netmend
