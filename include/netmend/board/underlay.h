#pragma once

#include <cmath>
#include <filesystem>
#include <optional>

#include "netmend/board/board.h"

namespace netmend {

/// Between the board and a photo that lies under it. Millimetres and pixels as of `PhotoLie`.
class PhotoMapping {
public:
  /// The lie has to be known.
  explicit PhotoMapping(const Underlay& underlay);

  /// Where in the photo a place is seen, in or beside it. Nothing for places behind the camera.
  [[nodiscard]] std::optional<PhotoPoint> toPhoto(Point p) const { return toPhoto(p.x.mm(), p.y.mm()); }
  [[nodiscard]] std::optional<PhotoPoint> toPhoto(double xMm, double yMm) const {
    const auto& h = plane_;
    const double w = h[6] * xMm + h[7] * yMm + h[8];
    if (w * front_ <= 0.0) return std::nullopt;
    const double dx = (h[0] * xMm + h[1] * yMm + h[2]) / w - middleX_;
    const double dy = (h[3] * xMm + h[4] * yMm + h[5]) / w - middleY_;
    const double stretch = 1.0 + radial_ * (dx * dx + dy * dy);
    return PhotoPoint{Pixels(middleX_ + stretch * dx), Pixels(middleY_ + stretch * dy)};
  }
  /// What place is seen there. Nothing beyond the horizon, or further out than the lens shows anything.
  [[nodiscard]] std::optional<Point> toBoard(PhotoPoint p) const;
  /// How many pixels a millimetre has in the photo's middle, the shorter way. Zero if the middle shows no
  /// place of the board.
  [[nodiscard]] double pixelsPerMm() const;

private:
  std::array<double, 9> plane_;
  std::array<double, 9> back_{}; ///< inverse of the plane, but for a factor
  double middleX_;
  double middleY_;
  double radial_; ///< for a pixel squared
  double front_;  ///< sign of w before the camera
};

/// The photo's corners on the board; empty where it has no known lie, or shows a horizon.
[[nodiscard]] Ring outlineOf(const Underlay& underlay);

/// A photo that nobody has straightened: upright as it is looked at, with its lower left corner at a place
/// of the board as that side is seen.
[[nodiscard]] PhotoLie uprightLie(const Underlay& underlay, Point lowerLeft, double pixelsPerMm);

/// Where the photos of a board in this file are kept.
[[nodiscard]] std::filesystem::path photosFolder(const std::filesystem::path& boardFile);

} // namespace netmend
