#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "kicad_cursor.h"
#include "netmend/base/quantity.h"

namespace netmend::kicad {

/// A drawn shape of a board, a footprint or a custom pad (`gr_…`, `fp_…`), in the coordinates of its owner.
struct Graphic {
  enum class Kind : std::uint8_t { line, arc, circle, rectangle, polygon, curve };
  Kind kind = Kind::line;
  /// line: ends; arc: start, a point between, end; circle: centre and a point of it; rectangle: opposite
  /// corners; polygon: corners; curve: the four control points of a cubic Bézier curve.
  std::vector<Point> points;
  Length width;
  bool filled = false;
  std::vector<std::string_view> layers;
  std::size_t place = 0; ///< in the file
  Item net;              ///< end: none given
};

/// The shape named by a list head such as "gr_line", without its first three letters; nothing for heads
/// that draw no line (text, dimensions, tables).
[[nodiscard]] std::optional<Graphic::Kind> graphicKind(std::string_view head);

/// Reads the rest of the list. On a mistake `in` has failed.
[[nodiscard]] Graphic readGraphic(Cursor& in, Graphic::Kind kind);

/// The points of a list of corners `(pts (xy …) (arc …) …)`, after its head.
[[nodiscard]] Ring readCorners(Cursor& in);

/// The way along the shape; the first point is not repeated when it is closed.
struct Path {
  Ring points;
  bool closed = false;
};
[[nodiscard]] Path pathOf(const Graphic& graphic, Length maxError);

} // namespace netmend::kicad
