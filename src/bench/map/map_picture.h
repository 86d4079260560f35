#pragma once

#include <functional>
#include <list>
#include <map>
#include <memory>
#include <vector>

#include <QImage>

#include "map_painter.h"

namespace netmend {

/// Puts frames together out of what the painting thread has painted, and tells it what is missing.
class MapPicture {
public:
  /// `onResult` is called on the painting thread when a frame may look different or a board is ready.
  explicit MapPicture(std::function<void()> onResult) : painter_(std::move(onResult)) {}

  /// Has a board made ready; `takeBoard` gives it back.
  void prepare(std::shared_ptr<const Board> board) { painter_.prepare(std::move(board)); }
  /// Lets a board go that is not shown any more; `standIn`: its picture may be shown until there is another.
  void release(std::shared_ptr<const MapBoard> board, bool standIn);
  /// A board that was made ready since, or null.
  [[nodiscard]] std::shared_ptr<const MapBoard> takeBoard();

  /// The picture of a view without what is drawn live, in device pixels. The style is the same object as
  /// before where nothing changed.
  [[nodiscard]] const QImage& frame(const BoardView& view, const std::shared_ptr<const MapStyle>& style);
  /// Whether the last frame was exact.
  [[nodiscard]] bool exact() const { return exact_; }

private:
  struct Level {
    std::shared_ptr<const MapLevel> about;
    std::map<TileAt, QImage> tiles;
  };
  struct Shown {
    QPoint origin; ///< of the frame, on the level's picture
    std::vector<TileAt> missing;
    QRegion gaps; ///< of the frame, where they are missing
  };

  void takeResults();
  void forget(const std::function<bool(const Level&)>& which);
  Level& levelFor(const BoardView& view, const std::shared_ptr<const MapStyle>& style);
  Shown blitTiles(QPainter& painter, const Level& level, const BoardView& view) const;
  void fillGaps(QPainter& painter, const Level& level, const Shown& shown);
  bool drawWords(QPainter& painter, const BoardView& view, const std::shared_ptr<const MapStyle>& style);
  void forgetOldest(const Shown& shown);

  std::list<Level> levels_; ///< the last used first
  PaintedWords words_;
  std::shared_ptr<const MapLevel> wordsAsked_;
  std::shared_ptr<const MapBoard> ready_;
  QImage frame_;
  bool exact_ = false;
  MapPainter painter_; ///< last: it ends before what its results go to
};

} // namespace netmend
