#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/board.h"

/// How a photo lies on a board, from places that were found in both.
namespace netmend {

/// What a photo's lie was taken for.
enum class PhotoModel {
  similarity,  ///< moved, turned, scaled: two pairs or more
  perspective, ///< four or more
  lens         ///< perspective, and one radial term of the lens: six or more
};

struct Straightened {
  PhotoLie lie;
  PhotoModel model = PhotoModel::similarity;
  /// How far off the pairs are on the board, in their order; empty where there are only as many as the model
  /// needs, which then fits whatever was clicked.
  std::vector<Length> residuals;
};

/// The model that so many pairs allow; nothing for fewer than two. Perspective needs a pair more than it has
/// to, and the lens two, before a residual says anything.
[[nodiscard]] constexpr std::optional<PhotoModel> richestModel(std::size_t pairs) {
  if (pairs < 2) return std::nullopt;
  return pairs < 4 ? PhotoModel::similarity : pairs < 6 ? PhotoModel::perspective : PhotoModel::lens;
}

/// Least squares over the pairs, in the photo's pixels: a similarity in closed form, a perspective by the
/// normalised direct linear transformation and a refinement (Hartley and Zisserman, Multiple View Geometry,
/// 2nd edition, 4.4 and 4.5), the lens by the best radial term over these. Of the photo only its size and
/// side count. Fails for too few pairs, and for pairs that tell nothing: two at the same place, three of four
/// in a line.
[[nodiscard]] Result<Straightened> straighten(const Underlay& photo, const std::vector<PhotoPair>& pairs,
                                              PhotoModel model);

/// A photo in grey, row by row.
struct GreyPhoto {
  std::span<const std::uint8_t> pixels;
  int width = 0;
  int height = 0;
};

/// How far the board's edges, seen between neighbouring corners, are off the straight line at worst (but for
/// the worst twentieth); nothing where no edge is to be seen along half of the way. `corners` go round.
[[nodiscard]] std::optional<Length> edgesOff(const GreyPhoto& photo, const Underlay& lying,
                                             const std::vector<Point>& corners);

} // namespace netmend
