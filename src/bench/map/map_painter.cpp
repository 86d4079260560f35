#include "map_painter.h"

#include <utility>

namespace netmend {

bool standsIn(const MapStyle& a, const MapStyle& b) {
  return a.theme == b.theme && a.pixelRatio == b.pixelRatio;
}

bool sameCopper(const MapStyle& a, const MapStyle& b) {
  const Overlay& x = a.overlay;
  const Overlay& y = b.overlay;
  return standsIn(a, b) && a.board == b.board && a.type.font == b.type.font && x.litNets == y.litNets &&
         x.dimmed == y.dimmed && x.hidden == y.hidden && x.seeThrough == y.seeThrough && x.zones == y.zones &&
         x.overPhoto == y.overPhoto && a.photos == b.photos && a.photoOnly == b.photoOnly;
}

QImage paintTile(const MapLevel& level, TileAt at) {
  QImage image(tilePixels, tilePixels, QImage::Format_RGB32);
  if (image.isNull()) return image;
  const MapStyle& style = *level.style;
  image.fill(style.colors.paper);
  if (style.board->scene.extent().empty()) return image;
  const QPoint origin(at.column * tilePixels, at.row * tilePixels);
  const QTransform toBoard =
      (level.view.transform() * QTransform::fromScale(style.pixelRatio, style.pixelRatio) *
       QTransform::fromTranslate(-origin.x(), -origin.y()))
          .inverted();
  for (const ShownPhoto& photo : style.photos)
    if (photo.underlay.side == level.view.side) paintPhoto(image, toBoard, photo);
  if (style.photoOnly) return image;
  QPainter painter(&image);
  painter.translate(-origin);
  painter.scale(style.pixelRatio, style.pixelRatio);
  const double side = tilePixels / style.pixelRatio;
  const QRectF part(origin.x() / style.pixelRatio, origin.y() / style.pixelRatio, side, side);
  paintCopper(painter, style.board->scene, level.view, style.overlay, style.type, style.colors, part);
  return image;
}

QImage paintFrameWords(const MapLevel& level) {
  const MapStyle& style = *level.style;
  const QSizeF size = level.view.frame.size() * style.pixelRatio;
  QImage image(size.toSize(), QImage::Format_ARGB32_Premultiplied);
  if (image.isNull()) return image;
  image.fill(Qt::transparent);
  if (style.photoOnly) return image;
  QPainter painter(&image);
  painter.scale(style.pixelRatio, style.pixelRatio);
  painter.translate(-level.view.frame.topLeft());
  paintWords(painter, style.board->scene, level.view, style.overlay, style.type, style.colors);
  return image;
}

MapPainter::MapPainter(std::function<void()> onResult)
    : onResult_(std::move(onResult)), thread_([this](const std::stop_token& stop) { run(stop); }) {}

MapPainter::~MapPainter() = default;

void MapPainter::prepare(std::shared_ptr<const Board> board) {
  {
    const std::lock_guard lock(mutex_);
    board_ = std::move(board);
  }
  something_.notify_one();
}

void MapPainter::release(std::shared_ptr<const void> something) {
  if (!something) return;
  {
    const std::lock_guard lock(mutex_);
    released_.push_back(std::move(something));
  }
  something_.notify_one();
}

void MapPainter::want(MapWanted wanted) {
  {
    const std::lock_guard lock(mutex_);
    if (atLevel_ && atLevel_ == wanted.level && atTile_) std::erase(wanted.tiles, *atTile_);
    if (atLevel_ && atLevel_ == wanted.words && !atTile_) wanted.words = nullptr;
    // The last to know an old board lets it go, and that takes long: not the caller.
    for (auto* old : {&wanted_.level, &wanted_.words})
      if (*old) released_.push_back(std::move(*old));
    wanted_ = std::move(wanted);
    nextTile_ = 0;
  }
  something_.notify_one();
}

std::vector<MapResult> MapPainter::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(results_, {});
}

void MapPainter::deliver(MapResult result) {
  bool first = false;
  {
    const std::lock_guard lock(mutex_);
    first = results_.empty();
    results_.push_back(std::move(result));
    atLevel_ = nullptr;
  }
  if (first) onResult_();
}

MapPainter::Task MapPainter::next() {
  if (board_)
    return [this, board = std::exchange(board_, nullptr)] {
      deliver(std::shared_ptr<const MapBoard>(std::make_shared<MapBoard>(board)));
    };
  if (nextTile_ < wanted_.tiles.size()) {
    atLevel_ = wanted_.level;
    atTile_ = wanted_.tiles[nextTile_++];
    return [this, level = atLevel_, at = *atTile_] {
      deliver(PaintedTile{level, at, paintTile(*level, at)});
    };
  }
  if (wanted_.words) {
    atLevel_ = std::exchange(wanted_.words, nullptr);
    atTile_.reset();
    return [this, level = atLevel_] { deliver(PaintedWords{level, paintFrameWords(*level)}); };
  }
  if (!released_.empty()) {
    // They go with the task, outside the lock.
    auto gone = std::make_shared<std::vector<std::shared_ptr<const void>>>(std::exchange(released_, {}));
    return [gone = std::move(gone)] { gone->clear(); };
  }
  return {};
}

void MapPainter::run(const std::stop_token& stop) {
  while (!stop.stop_requested()) {
    Task task;
    {
      std::unique_lock lock(mutex_);
      something_.wait(lock, stop, [&] {
        task = next();
        return task != nullptr;
      });
    }
    if (task && !stop.stop_requested()) task();
  }
}

} // namespace netmend
