#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include <QPointF>
#include <QRectF>

namespace netmend {

/// Where a pad lies beside the others of its connector: any unit, y down.
struct PadPlace {
  QPointF at;
  bool below = false; ///< on the bottom side alone
  friend bool operator==(const PadPlace&, const PadPlace&) = default;
};

/// A connector's pads in rows and columns, on its long side, the first pad left. What lies on the two sides
/// of the board makes rows of its own. Pads that make neither rows nor a grid, as those round a chip, follow
/// each other in one row.
struct PadGrid {
  struct Cell {
    int row = 0;
    int column = 0;
    friend bool operator==(const Cell&, const Cell&) = default;
  };
  std::vector<Cell> cells; ///< parallel to the pads; in a row at least `span` columns apart
  int rows = 0;
  int columns = 0;
  bool inOrder = false; ///< in one row, wherever they lie
  int span = 1;         ///< columns that a pad takes: 2 where the rows are offset by half a pitch

  /// So much longer than high that a quarter turn would only waste room.
  [[nodiscard]] bool isLong() const { return 5 * columns > 6 * rows * span; }
};
[[nodiscard]] PadGrid padGrid(const std::vector<PadPlace>& places);
/// By quarters, clockwise, then left and right exchanged.
[[nodiscard]] PadGrid turned(const PadGrid& grid, int quarters, bool mirrored);

/// The readings of a row, on one scale for all its pins: every pin's good range is the same box, OL has a
/// lane above it, 0 is the floor. Heights in the picture.
struct PadChart {
  int row = 0;
  QRectF area;
  double laneBottom = 0.0; ///< the lane begins at the area's top
  double boxTop = 0.0;
  double boxBottom = 0.0;
  double floorTop = 0.0; ///< of the box of what has to read next to nothing; the floor is the area's bottom
};

struct PadRoom {
  QSizeF size;
  double unit = 1.0;       ///< pixels of one at 100 %
  double narrowest = 46.0; ///< pad that holds a value, pixels
  double narrowestLow = 0; ///< the same where number and shape stand beside each other
  bool chart = false;      ///< there is something to compare with
  std::optional<std::size_t> due;
  int firstColumn = 0; ///< that was shown last: the span moves only when it must
  int firstRow = 0;
};

/// Where everything is. With more columns than can be read, some are shown in full, and all of them small.
struct PadLayout {
  std::vector<QRectF> pads;  ///< parallel to the cells; null: outside the span
  std::vector<QRectF> small; ///< empty: all are shown in full
  QRectF frame;              ///< round the span, among the small ones
  QRectF body;               ///< the connector's own, with its name
  std::vector<PadChart> charts;
  int firstColumn = 0;
  int firstRow = 0;
};
[[nodiscard]] PadLayout layPads(const PadGrid& grid, const PadRoom& room);

} // namespace netmend
