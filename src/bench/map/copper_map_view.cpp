// What of the board is in sight.
#include <algorithm>
#include <utility>

#include <QGuiApplication>

#include "copper_map.h"
#include "map_picture.h"
#include "netmend/board/shape.h"

namespace netmend {

namespace {

constexpr double insetFrom = 1.25; ///< times as large as with all of the board in sight

void includePads(Box& box, const Lookup& lookup, PinId pin) {
  for (const PadId id : lookup.padsOf(pin)) {
    const Pad* pad = lookup.board().pads.find(id);
    if (pad == nullptr || !pad->position.known()) continue;
    const Size size = pad->size.valueOr({});
    const Length reach = std::max(size.width, size.height) / 2;
    box.include({pad->position.value.x - reach, pad->position.value.y - reach});
    box.include({pad->position.value.x + reach, pad->position.value.y + reach});
  }
}

std::optional<Side> sideOf(const Lookup& lookup, PinId pin) {
  for (const PadId id : lookup.padsOf(pin)) {
    const Pad* pad = lookup.board().pads.find(id);
    if (pad == nullptr || !pad->reach.known()) continue;
    if (pad->reach.value == PadReach::top) return Side::top;
    if (pad->reach.value == PadReach::bottom) return Side::bottom;
  }
  return std::nullopt;
}

} // namespace

void CopperMap::setView(const BoardView& view) {
  const QRectF frame = rect();
  view_ = view;
  view_.frame = frame;
  takeByHand();
  viewChanged();
}

void CopperMap::fit() {
  motion_.stop();
  view_.frame = rect();
  if (!ready_) return;
  view_ = viewOf(ready_->scene.extent(), rect(), view_.side, 0.04, view_.turn);
  aim_ = Aim::all;
  viewChanged();
}

void CopperMap::standUpright() {
  view_.turn = {};
  fit();
}

void CopperMap::flip() {
  setSide(view_.side == Side::top ? Side::bottom : Side::top);
}

void CopperMap::setSide(Side side) {
  if (aim_ == Aim::due) takeByHand(); // else it would turn back with the next size of the window
  view_.side = side;
  viewChanged();
}

void CopperMap::setTurn(Degrees turn) {
  view_.turn = turn;
  if (aim_ == Aim::byHand)
    viewChanged();
  else
    aimNow();
}

void CopperMap::takeByHand() {
  motion_.stop();
  aim_ = Aim::byHand;
}

void CopperMap::aimNow() {
  view_.frame = rect();
  if (aim_ == Aim::all) fit();
  if (aim_ != Aim::due || !ready_) return;
  noteCovered();
  motion_.stop();
  view_ = viewFollowing(followed_, ready_->scene, view_, overlay_);
  viewChanged();
}

void CopperMap::moveTo(const BoardView& view) {
  from_ = view_;
  to_ = view;
  // From another side there is no way that could be shown; without a screen nobody sees one.
  const bool seen = isVisible() && from_.side == to_.side && from_.turn == to_.turn &&
                    QGuiApplication::platformName() != QLatin1String("offscreen");
  if (!seen) {
    view_ = to_;
    viewChanged();
    return;
  }
  motion_.start();
}

QRectF CopperMap::inset() const {
  if (!ready_ || ready_->scene.extent().empty()) return {};
  const QRectF all = rect();
  const BoardView whole = viewOf(ready_->scene.extent(), all, view_.side, 0.04, view_.turn);
  const double unit = std::max(12.0, fontInfo().pixelSize() * 0.8) / 14;
  if (view_.scale.value < insetFrom * whole.scale.value || all.width() < 420 * unit ||
      all.height() < 300 * unit)
    return {};
  const Size size = ready_->scene.extent().size();
  const QTransform toPicture = whole.transform();
  const QRectF board = toPicture.mapRect(QRectF(0, 0, size.width.mm(), size.height.mm()));
  const QSizeF room =
      board.size().scaled(QSizeF(std::min(184 * unit, all.width() * 0.25), 124 * unit), Qt::KeepAspectRatio);
  const QPointF corner = all.bottomRight() - QPointF(8, 8) * unit;
  return {corner - QPointF(room.width(), room.height()), room};
}

/// What stands over the map: no label goes there. What only follows the pointer does not count.
void CopperMap::noteCovered() {
  std::vector<QRectF> covered;
  for (const QObject* child : children())
    if (const auto* widget = qobject_cast<const QWidget*>(child);
        widget != nullptr && widget->isVisible() && !widget->testAttribute(Qt::WA_TransparentForMouseEvents))
      covered.emplace_back(widget->geometry());
  if (const QRectF box = inset(); !box.isEmpty()) covered.push_back(box);
  if (overlay_.covered == covered) return;
  overlay_.covered = std::move(covered);
  style_ = nullptr;
}

void CopperMap::seeThrough(bool on) {
  overlay_.seeThrough = on;
  styleChanged();
}

bool CopperMap::zoomToBox(Box box, std::optional<Side> side) {
  if (box.empty()) return false;
  // What is around it tells where it is.
  const Size size = box.size();
  const Length around =
      std::clamp(std::max(size.width, size.height) / 2, Length(2'500'000), Length(10'000'000));
  box.include({box.min.x - around, box.min.y - around});
  box.include({box.max.x + around, box.max.y + around});
  view_ = viewOf(box, rect(), side.value_or(view_.side), 0.04, view_.turn);
  takeByHand();
  viewChanged();
  return true;
}

bool CopperMap::zoomTo(PartId id) {
  const Part* part = ready_ ? ready_->board->parts.find(id) : nullptr;
  if (part == nullptr) return false;
  Box box;
  for (const Point p : part->body.valueOr({}))
    box.include(p);
  for (const PinId pin : ready_->lookup.pinsOf(id))
    includePads(box, ready_->lookup, pin);
  if (box.empty() && part->position.known()) box.include(part->position.value);
  return zoomToBox(box, part->side.known() ? std::optional(part->side.value) : std::nullopt);
}

bool CopperMap::zoomTo(PinId pin) {
  if (!ready_) return false;
  Box box;
  includePads(box, ready_->lookup, pin);
  return zoomToBox(box, sideOf(ready_->lookup, pin));
}

bool CopperMap::zoomTo(NetId net) {
  if (!ready_) return false;
  const Board& board = *ready_->board;
  Box box;
  for (const PinId pin : ready_->lookup.pinsOf(net))
    includePads(box, ready_->lookup, pin);
  for (const Track& track : board.tracks)
    if (track.net.known() && track.net.value == net)
      for (const Point p : centreLine(track))
        box.include(p);
  for (const Area& area : board.areas)
    if (area.net.known() && area.net.value == net)
      for (const Point p : area.polygon.outer)
        box.include(p);
  return zoomToBox(box, std::nullopt);
}

} // namespace netmend
