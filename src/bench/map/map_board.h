#pragma once

#include <memory>

#include "map_search.h"
#include "netmend/board/lookup.h"
#include "netmend/drawing/board_scene.h"

namespace netmend {

/// A board with all that showing it needs. Made and let go by the painting thread, since both take long for a
/// large one; never changed in between.
struct MapBoard {
  explicit MapBoard(std::shared_ptr<const Board> of)
      : board(std::move(of)), lookup(*board), scene(*board), index(lookup) {}
  MapBoard(const MapBoard&) = delete;
  MapBoard& operator=(const MapBoard&) = delete;

  std::shared_ptr<const Board> board;
  Lookup lookup;
  BoardScene scene;
  MapIndex index;
};

} // namespace netmend
