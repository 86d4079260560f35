#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <variant>
#include <vector>

#include <QImage>

#include "map_style.h"
#include "netmend/drawing/board_view.h"

namespace netmend {

/// One scale, turn and side of the picture, cut into square tiles. The view says where its tiles lie: tile
/// (0, 0) begins at the top left of its frame.
struct MapLevel {
  BoardView view;
  std::shared_ptr<const MapStyle> style;
};

struct TileAt {
  int column = 0;
  int row = 0;
  friend auto operator<=>(const TileAt&, const TileAt&) = default;
};

/// Across, in device pixels.
inline constexpr int tilePixels = 512;

/// What the map lacks, most wanted first. Each list given replaces the one before.
struct MapWanted {
  std::shared_ptr<const MapLevel> level; ///< of the tiles
  std::vector<TileAt> tiles;
  std::shared_ptr<const MapLevel> words; ///< names and marks in the frame of this view; null: none wanted
};

/// What has been painted. An image of nothing but its size means that there was no memory.
struct PaintedTile {
  std::shared_ptr<const MapLevel> level;
  TileAt at;
  QImage image;
};
struct PaintedWords {
  std::shared_ptr<const MapLevel> level;
  QImage image; ///< with transparency
};
using MapResult = std::variant<std::shared_ptr<const MapBoard>, PaintedTile, PaintedWords>;

/// The thread that paints. Results are taken in the event loop with `take` after `onResult`, which is called
/// on the painting thread.
class MapPainter {
public:
  explicit MapPainter(std::function<void()> onResult);
  ~MapPainter();

  /// Makes a board ready; of several asked for before it gets to it, the last.
  void prepare(std::shared_ptr<const Board> board);
  /// Lets go of something large there.
  void release(std::shared_ptr<const void> something);
  void want(MapWanted wanted);
  [[nodiscard]] std::vector<MapResult> take();

private:
  using Task = std::function<void()>;
  void run(const std::stop_token& stop);
  [[nodiscard]] Task next();
  void deliver(MapResult result);

  std::function<void()> onResult_;
  std::mutex mutex_;
  std::condition_variable_any something_;
  std::shared_ptr<const Board> board_;
  std::vector<std::shared_ptr<const void>> released_;
  MapWanted wanted_;
  std::size_t nextTile_ = 0;
  std::shared_ptr<const MapLevel> atLevel_; ///< being painted now, so that it is not asked for twice
  std::optional<TileAt> atTile_;            ///< none: words
  std::vector<MapResult> results_;
  std::jthread thread_; ///< last: it ends before what it uses
};

/// A tile as the painting thread paints it.
[[nodiscard]] QImage paintTile(const MapLevel& level, TileAt at);
[[nodiscard]] QImage paintFrameWords(const MapLevel& level);

} // namespace netmend
