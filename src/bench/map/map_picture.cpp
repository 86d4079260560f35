#include "map_picture.h"

#include <algorithm>
#include <cmath>

namespace netmend {

namespace {

constexpr std::size_t keptTiles = 120; ///< of 1 MB each
constexpr double farAway = 1e8;        ///< device pixels from a level's origin; beyond, a new level begins

QSize pixelsOf(const BoardView& view, double ratio) {
  return {std::max(1, static_cast<int>(std::ceil(view.frame.width() * ratio - 1e-6))),
          std::max(1, static_cast<int>(std::ceil(view.frame.height() * ratio - 1e-6)))};
}

bool sameLie(const BoardView& a, const BoardView& b) {
  return a.side == b.side && a.turn == b.turn;
}

/// From the board in mm to device pixels.
QTransform pixelTransform(const MapLevel& level) {
  return level.view.transform() * QTransform::fromScale(level.style->pixelRatio, level.style->pixelRatio);
}

/// Where a view's frame begins on the level's picture, in device pixels, for views of the same scale.
QPointF originOf(const BoardView& view, const MapLevel& level) {
  const double ratio = level.style->pixelRatio;
  return (level.view.toPicture(view.middle) - (view.frame.center() - view.frame.topLeft())) * ratio;
}

bool fits(const BoardView& view, const MapLevel& level) {
  if (!sameLie(view, level.view) || view.scale != level.view.scale) return false;
  const QPointF origin = originOf(view, level);
  if (std::abs(origin.x()) > farAway || std::abs(origin.y()) > farAway) return false;
  // Places are whole nanometres; at great scales these can be seen.
  const double slack = std::max(0.02, 2e-6 * view.scale.value * level.style->pixelRatio);
  return std::abs(origin.x() - std::round(origin.x())) < slack &&
         std::abs(origin.y() - std::round(origin.y())) < slack;
}

/// What of the level's picture is more than paper.
QRectF paintedPart(const MapLevel& level) {
  const Box& extent = level.style->board->scene.extent();
  if (extent.empty()) return {};
  const QRectF box(QPointF(extent.min.x.mm(), extent.min.y.mm()),
                   QPointF(extent.max.x.mm(), extent.max.y.mm()));
  const double reach = level.style->type.font.pixelSize() * level.style->pixelRatio;
  return pixelTransform(level).mapRect(box).adjusted(-reach, -reach, reach, reach);
}

QRect rectOf(TileAt at) {
  return {at.column * tilePixels, at.row * tilePixels, tilePixels, tilePixels};
}

int tileIndex(int pixel) {
  return pixel >= 0 ? pixel / tilePixels : -((-pixel + tilePixels - 1) / tilePixels);
}

} // namespace

void MapPicture::forget(const std::function<bool(const Level&)>& which) {
  // Freeing a large board takes longer than a frame: the painting thread does it.
  auto old = std::make_shared<std::list<Level>>();
  for (auto it = levels_.begin(); it != levels_.end();) {
    const auto level = it++;
    if (which(*level)) old->splice(old->end(), levels_, level);
  }
  if (!old->empty()) painter_.release(std::move(old));
}

void MapPicture::release(std::shared_ptr<const MapBoard> board, bool standIn) {
  painter_.want({});
  if (!standIn) {
    forget([&](const Level& level) { return level.about->style->board == board; });
    painter_.release(std::make_shared<PaintedWords>(std::exchange(words_, {})));
  }
  painter_.release(std::exchange(wordsAsked_, nullptr));
  painter_.release(std::move(board));
}

std::shared_ptr<const MapBoard> MapPicture::takeBoard() {
  takeResults();
  return std::exchange(ready_, nullptr);
}

void MapPicture::takeResults() {
  for (MapResult& result : painter_.take()) {
    if (auto* board = std::get_if<std::shared_ptr<const MapBoard>>(&result)) {
      painter_.release(std::exchange(ready_, std::move(*board)));
    } else if (auto* tile = std::get_if<PaintedTile>(&result)) {
      const auto level = std::find_if(levels_.begin(), levels_.end(),
                                      [&](const Level& l) { return l.about == tile->level; });
      if (level != levels_.end()) level->tiles[tile->at] = std::move(tile->image);
    } else if (auto* words = std::get_if<PaintedWords>(&result)) {
      painter_.release(std::exchange(words_.level, nullptr));
      words_ = std::move(*words);
    }
  }
}

MapPicture::Level& MapPicture::levelFor(const BoardView& view, const std::shared_ptr<const MapStyle>& style) {
  const auto found = std::find_if(levels_.begin(), levels_.end(), [&](const Level& level) {
    return sameCopper(*level.about->style, *style) && fits(view, *level.about);
  });
  if (found != levels_.end()) {
    levels_.splice(levels_.begin(), levels_, found);
  } else {
    MapLevel level{view, style};
    level.view.frame.moveTopLeft({0, 0});
    levels_.push_front({std::make_shared<const MapLevel>(std::move(level)), {}});
  }
  return levels_.front();
}

MapPicture::Shown MapPicture::blitTiles(QPainter& painter, const Level& level, const BoardView& view) const {
  Shown shown;
  const QPointF origin = originOf(view, *level.about);
  shown.origin = QPoint(static_cast<int>(std::lround(origin.x())), static_cast<int>(std::lround(origin.y())));
  const QRect frame(shown.origin, frame_.size());
  const QRect painted = (paintedPart(*level.about) & QRectF(frame)).toAlignedRect() & frame;
  if (painted.isEmpty()) return shown;
  for (int row = tileIndex(painted.top()); row <= tileIndex(painted.bottom()); ++row)
    for (int column = tileIndex(painted.left()); column <= tileIndex(painted.right()); ++column) {
      const TileAt at{column, row};
      const QRect place = rectOf(at).translated(-shown.origin);
      const auto tile = level.tiles.find(at);
      if (tile != level.tiles.end() && !tile->second.isNull()) {
        painter.drawImage(place.topLeft(), tile->second);
      } else {
        shown.gaps += place;
        if (tile == level.tiles.end()) shown.missing.push_back(at);
      }
    }
  // From the middle outwards: what one looks at comes first.
  const auto away = [&](TileAt at) {
    const QPoint d = rectOf(at).center() - frame.center();
    return QPoint::dotProduct(d, d);
  };
  std::sort(shown.missing.begin(), shown.missing.end(),
            [&](TileAt a, TileAt b) { return away(a) < away(b); });
  return shown;
}

void MapPicture::fillGaps(QPainter& painter, const Level& level, const Shown& shown) {
  struct Candidate {
    const Level* level;
    QTransform toFrame;
    double covered;
  };
  const MapLevel& about = *level.about;
  const QRectF frame(QPointF(0, 0), QSizeF(frame_.size()));
  std::vector<Candidate> candidates;
  for (const Level& other : levels_) {
    if (&other == &level || other.tiles.empty() || !standsIn(*other.about->style, *about.style) ||
        other.about->view.side != about.view.side)
      continue;
    const QTransform toFrame = pixelTransform(*other.about).inverted() * pixelTransform(about) *
                               QTransform::fromTranslate(-shown.origin.x(), -shown.origin.y());
    double covered = 0;
    for (const auto& [at, image] : other.tiles) {
      const QRectF common = toFrame.mapRect(QRectF(rectOf(at))) & frame;
      covered += common.width() * common.height();
    }
    // Of two that cover as much, the one nearer in scale blurs less.
    const double blur = std::abs(std::log(about.view.scale / other.about->view.scale));
    candidates.push_back({&other, toFrame, covered * (1.0 - std::min(0.5, 0.05 * blur))});
  }
  const auto count = std::min<std::size_t>(2, candidates.size());
  std::partial_sort(candidates.begin(), candidates.begin() + static_cast<std::ptrdiff_t>(count),
                    candidates.end(),
                    [](const Candidate& a, const Candidate& b) { return a.covered > b.covered; });
  painter.save();
  painter.setClipRegion(shown.gaps);
  // The better one last, on top. The second is left out where the first covers all there is.
  const bool one = count > 0 && candidates[0].covered > 0.93 * frame.width() * frame.height();
  for (std::size_t i = one ? 1 : count; i-- > 0;)
    for (const auto& [at, image] : candidates[i].level->tiles) {
      if (image.isNull() || !candidates[i].toFrame.mapRect(QRectF(rectOf(at))).intersects(frame)) continue;
      painter.setTransform(candidates[i].toFrame);
      painter.drawImage(rectOf(at).topLeft(), image);
    }
  painter.restore();
}

bool MapPicture::drawWords(QPainter& painter, const BoardView& view,
                           const std::shared_ptr<const MapStyle>& style) {
  if (!words_.level || words_.image.isNull() || !standsIn(*words_.level->style, *style)) return false;
  const BoardView& theirs = words_.level->view;
  if (!sameLie(theirs, view)) return false;
  if (theirs.scale == view.scale) {
    const QPointF shift =
        (view.toPicture(theirs.middle) - view.frame.center() +
         QPointF(view.frame.width() - theirs.frame.width(), view.frame.height() - theirs.frame.height()) /
             2) *
        style->pixelRatio;
    if (std::abs(shift.x()) < farAway && std::abs(shift.y()) < farAway)
      painter.drawImage(
          QPoint(static_cast<int>(std::lround(shift.x())), static_cast<int>(std::lround(shift.y()))),
          words_.image);
    return words_.level->style == style && theirs.middle == view.middle && theirs.frame == view.frame;
  }
  painter.save();
  BoardView mine = view;
  mine.frame.moveTopLeft({0, 0});
  BoardView other = theirs;
  other.frame.moveTopLeft({0, 0});
  const QTransform ratio = QTransform::fromScale(style->pixelRatio, style->pixelRatio);
  painter.setTransform((other.transform() * ratio).inverted() * mine.transform() * ratio);
  painter.drawImage(QPoint(0, 0), words_.image);
  painter.restore();
  return false;
}

const QImage& MapPicture::frame(const BoardView& view, const std::shared_ptr<const MapStyle>& style) {
  const QSize size = pixelsOf(view, style->pixelRatio);
  if (frame_.size() != size) frame_ = QImage(size, QImage::Format_RGB32);
  frame_.setDevicePixelRatio(1.0);
  frame_.fill(style->colors.paper);
  takeResults();
  Level& level = levelFor(view, style);
  Shown shown;
  bool wordsFit = false;
  {
    QPainter painter(&frame_);
    shown = blitTiles(painter, level, view);
    if (!shown.gaps.isEmpty()) fillGaps(painter, level, shown);
    wordsFit = drawWords(painter, view, style);
  }
  exact_ = shown.missing.empty() && wordsFit;
  const bool asked = wordsAsked_ && wordsAsked_->style == style && wordsAsked_->view == view;
  if (!wordsFit && !asked) wordsAsked_ = std::make_shared<const MapLevel>(MapLevel{view, style});
  if (exact_) forget([&](const Level& old) { return old.about->style->board != style->board; });
  forgetOldest(shown);
  painter_.want({level.about, std::move(shown.missing), wordsFit ? nullptr : wordsAsked_});
  frame_.setDevicePixelRatio(style->pixelRatio);
  return frame_;
}

void MapPicture::forgetOldest(const Shown& shown) {
  const auto inSight = static_cast<std::size_t>(frame_.width() / tilePixels + 2) *
                       static_cast<std::size_t>(frame_.height() / tilePixels + 2);
  const std::size_t most = std::max(keptTiles, 6 * inSight);
  Level& now = levels_.front();
  if (now.tiles.size() > most) {
    const QRect near =
        QRect(shown.origin, frame_.size()).adjusted(-tilePixels, -tilePixels, tilePixels, tilePixels);
    std::erase_if(now.tiles, [&](const auto& tile) { return !rectOf(tile.first).intersects(near); });
  }
  std::size_t count = 0;
  forget([&](const Level& level) {
    count += level.tiles.size();
    return &level != &now && (level.tiles.empty() || count > most);
  });
}

} // namespace netmend
