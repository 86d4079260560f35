#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/geometry.h"
#include "netmend/board/board.h"

/// Connectors and chips: pins in rows, on four sides or in a grid, placed by two pins that somebody clicks.
namespace netmend {

enum class PinForm { rows, fourSides, grid };

/// How pins in rows are counted.
enum class PinOrder {
  alternating, ///< 1 3 5 … over 2 4 6 …
  along,       ///< one row after the other, all from the same end
  round,       ///< round the body, counter-clockwise: the second row is counted back
  lettered     ///< A1 A2 … over B1 B2 …
};

struct PinArray {
  PinForm form = PinForm::rows;
  std::size_t pins = 0;
  std::size_t rows = 1; ///< of rows and grids
  PinOrder order = PinOrder::alternating;
  std::optional<Length> pitch;   ///< none: as it is clicked
  std::optional<Size> pad;       ///< along the row and across it; none: guessed from the pitch
  std::optional<Size> drill;     ///< through-hole pins
  std::vector<std::string> left; ///< out: a key that has no pin
  bool tabs = false;             ///< a soldered tab at each end of the body
  friend bool operator==(const PinArray&, const PinArray&) = default;
};

/// Fails for no pins, also where all are left out, more than 10,000, pins that do not fill their rows or
/// sides, and orders that there are not (round the body in three rows).
[[nodiscard]] Result<void> check(const PinArray& array);

/// In the order of their names: of a row `1`, `2` …; without those left out. Grids and lettered rows have the
/// letters of JEDEC's grid arrays (JEP95, without I, O, Q, S, X, Z; after Y comes AA).
[[nodiscard]] std::vector<std::string> pinNames(const PinArray& array);
/// The pin that is clicked first: its place, where it is left out.
[[nodiscard]] std::string firstPin(const PinArray& array);
/// The pin that is clicked second: diagonally opposite to the first one; the last of a single row.
[[nodiscard]] std::string oppositePin(const PinArray& array);

/// What has been clicked, as seen from the top.
struct PinClicks {
  Point first;
  Point opposite;
  std::optional<Point> rowEnd; ///< the first row's last pin: for rows that lie at an angle
  Side side = Side::top;
  bool otherWay = false; ///< the other of two ways in which rows can lie between the two clicks
};

/// Where everything of it lies, as seen from the top.
struct PlacedArray {
  struct Pad {
    std::string name;
    Point at;
    Size size; ///< before it is turned
    Degrees turn;
  };
  std::vector<Pad> pads; ///< in the order of `pinNames`, then tabs
  Ring body;
  Point middle;
  Length pitch;
  std::optional<Length> across; ///< between the first row and the last
};

/// Rows at right angles to the picture unless `rowEnd` says otherwise. Which way rows run is told by the
/// order where a body's pins are counted round it, else by the pitch that is usual (or `array.pitch`); a
/// pitch that was given moves no clicked pin, it only tells the rows from the columns. Fails where two clicks
/// are the same place, and as `check`.
[[nodiscard]] Result<PlacedArray> placeArray(const PinArray& array, const PinClicks& clicks);

} // namespace netmend
