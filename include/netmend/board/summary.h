#pragma once

#include <cstddef>

#include "netmend/board/board.h"

namespace netmend {

/// A board in a few figures.
struct BoardSummary {
  std::size_t parts = 0;
  std::size_t pads = 0;
  std::size_t nets = 0; ///< with at least one pad
  std::size_t tracks = 0;
  std::size_t vias = 0;
  std::size_t layers = 0;
  /// Upright box of the outline, or of everything with a place when the outline is unknown; zero when
  /// nothing has a place.
  Size size;
  friend bool operator==(const BoardSummary&, const BoardSummary&) = default;
};

[[nodiscard]] BoardSummary summarize(const Board& board);

/// How much of the copper is drawn: as the board says; else everything where there is a track, via or area,
/// and points where there is none.
[[nodiscard]] DrawnCopper drawnCopper(const Board& board);

/// Upright box around the outline, or around everything with a place when the outline is unknown: copper
/// with its width, bodies, zones.
[[nodiscard]] Box extentOf(const Board& board);

} // namespace netmend
