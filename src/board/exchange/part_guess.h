#pragma once

#include <string_view>
#include <vector>

#include "netmend/base/geometry.h"
#include "netmend/board/board.h"

namespace netmend {

/// The kind that the letters of a reference stand for, as IEEE 315 and common practice have them, refined
/// by value and pin count (`0R` is a link, `RN` or a resistor of many pins an array). Unknown when the
/// letters mean nothing. Always marked guessed.
[[nodiscard]] Fact<PartKind> guessedKind(std::string_view reference, std::string_view value,
                                         std::size_t pins);

/// Smallest convex ring around the points, counter-clockwise; empty when they lie on a line.
[[nodiscard]] Ring convexHull(std::vector<Point> points);

/// The hull moved outwards by `margin`, with bevelled corners.
[[nodiscard]] Ring hullWithMargin(std::vector<Point> points, Length margin);

} // namespace netmend
