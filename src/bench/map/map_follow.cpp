#include "map_follow.h"

#include <algorithm>
#include <cmath>

namespace netmend {

namespace {

constexpr double ofWidth = 1.0 / 3;
constexpr double ofHeight = 1.0 / 2;
const Length partReach = Length::fromMm(5); ///< of what belongs to a place, so that a long connector does not
const Length atLeast = Length::fromMm(3);   ///< across, so that a small part has some board round it

Box boxOf(const Followed& followed, const BoardScene& scene, Side side) {
  Box box;
  for (const Point place : followed.places)
    box.include(place);
  for (const Point end : {followed.places.front(), followed.places.back()}) {
    const Box around = scene.around(end, side, partReach);
    box.include(around.min);
    box.include(around.max);
  }
  const Size size = box.size();
  const Length moreX = std::max(Length(), atLeast - size.width) / 2;
  const Length moreY = std::max(Length(), atLeast - size.height) / 2;
  box.include({box.min.x - moreX, box.min.y - moreY});
  box.include({box.max.x + moreX, box.max.y + moreY});
  return box;
}

/// How many of the marks that count are under something, or at the very edge.
int hiddenMarks(const BoardView& view, const Overlay& overlay) {
  int hidden = 0;
  for (const OverlayMark& mark : overlay.marks) {
    if (mark.shape != MarkShape::suspect && mark.shape != MarkShape::probe) continue;
    const QPointF at = view.toPicture(mark.at);
    hidden += std::any_of(overlay.covered.begin(), overlay.covered.end(), [&](const QRectF& box) {
      return box.translated(view.frame.topLeft()).contains(at);
    });
  }
  return hidden;
}

BoardView clearOfCovers(const BoardView& view, const Overlay& overlay) {
  BoardView best = view;
  int least = hiddenMarks(view, overlay);
  for (const double far : {0.08, 0.16})
    for (const auto& [x, y] : {QPointF(0, -1), QPointF(0, 1), QPointF(-1, 0), QPointF(1, 0), QPointF(-1, -1),
                               QPointF(1, -1), QPointF(-1, 1), QPointF(1, 1)}) {
      if (least == 0) return best;
      BoardView moved = view;
      moved.pan({x * far * view.frame.width(), y * far * view.frame.height()});
      const int hidden = hiddenMarks(moved, overlay);
      if (hidden >= least) continue;
      least = hidden;
      best = moved;
    }
  return best;
}

} // namespace

Followed followedIn(const Overlay& overlay) {
  for (auto mark = overlay.marks.rbegin(); mark != overlay.marks.rend(); ++mark)
    if (mark->shape == MarkShape::probe) return {{mark->at}};
  for (const OverlayLine& line : overlay.lines)
    if ((line.style == LineStyle::wire || line.style == LineStyle::laid) && !line.points.empty())
      return {line.points};
  return {};
}

BoardView viewFollowing(const Followed& followed, const BoardScene& scene, const BoardView& now,
                        const Overlay& overlay) {
  Side side = now.side;
  if (const auto touched = scene.sideTouched(followed.places.front()))
    side = *touched;
  else if (const auto other = scene.sideTouched(followed.places.back()))
    side = *other;
  const QRectF& frame = now.frame;
  const QRectF share(0, 0, frame.width() * ofWidth, frame.height() * ofHeight);
  BoardView view = viewOf(boxOf(followed, scene, side), share, side, 0.0, now.turn);
  view.frame = frame;
  const BoardView whole = viewOf(scene.extent(), frame, side, 0.04, now.turn);
  if (view.scale < whole.scale) return whole;
  return clearOfCovers(view, overlay);
}

BoardView between(const BoardView& from, const BoardView& to, double share) {
  if (share >= 1) return to;
  BoardView view = to;
  view.scale = PictureScale(from.scale.value * std::pow(to.scale / from.scale, share));
  const auto mixed = [&](Length a, Length b) { return Length::fromMm(a.mm() + (b.mm() - a.mm()) * share); };
  view.middle = {mixed(from.middle.x, to.middle.x), mixed(from.middle.y, to.middle.y)};
  return view;
}

} // namespace netmend
