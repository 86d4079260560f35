#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "netmend/board/board.h"
#include "outline.h"

/// The copper of a board as plain outlines on dense layers, 0 being the top.
namespace netmend::copper {

/// Copper this near touches: corners are rounded to whole nanometres on both sides. A gap of 1 µm is open.
inline constexpr double contactSlack = 2.0;
/// Arcs become chords with at most this sagitta.
inline constexpr Length arcError{100};

/// Which layers an item lies on: first to last, or nobody knows.
struct LayerSpan {
  int first = 0;
  int last = -1;
  [[nodiscard]] bool unknown() const { return last < first; }
  friend bool operator==(LayerSpan, LayerSpan) = default;
};

enum class CopperItemKind : std::uint8_t { pad, via, track, area };

/// One outline on a span of layers. A pad has one for each piece of its copper that is joined by the pin
/// only, and one more for its barrel where that reaches layers without a ring.
struct CopperItem {
  CopperItemKind kind = CopperItemKind::pad;
  bool filled = false;
  bool sameAsBefore = false; ///< the pad's barrel: one piece with the item before it
  std::size_t object = 0;    ///< dense index in the board's table of that kind
  std::size_t firstPoint = 0;
  std::size_t pointCount = 0;
  double radius = 0.0;
  LayerSpan layers;
  Bounds bounds;                         ///< of the copper
  std::shared_ptr<const AreaChain> area; ///< areas, and pads with many corners
};

/// A track of which only the ends are known to touch anything: its way or its layer is unknown.
struct LooseTrack {
  std::size_t object = 0;
  Vec start;
  Vec end;
  LayerSpan layers; ///< unknown, or one layer
};

struct Items {
  int layerCount = 2; ///< at least two: a side can be known without its layer
  std::vector<Vec> points;
  std::vector<CopperItem> items;
  std::vector<LooseTrack> looseTracks;
};

[[nodiscard]] Items copperItems(const Board& board);
[[nodiscard]] AreaOutline outlineOf(const Items& items, const CopperItem& item);
/// Rounded, and clamped to what a Length can hold.
[[nodiscard]] Point pointOf(Vec v);
[[nodiscard]] Length lengthOf(double nm);

} // namespace netmend::copper
