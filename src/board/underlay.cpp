#include "netmend/board/underlay.h"

#include <algorithm>
#include <string>
#include <string_view>

namespace netmend {

namespace {

/// But for a factor, the inverse (Cramer's rule).
std::array<double, 9> adjugate(const std::array<double, 9>& m) {
  return {m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
          m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
          m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]};
}

/// s with s·(1 + k·s²) = 1, the one nearest to 1: how far out the ideal point is of a real one at 1.
std::optional<double> unstretched(double k) {
  double s = 1.0;
  for (int i = 0; i < 50; ++i) {
    const double slope = 1.0 + 3.0 * k * s * s;
    if (slope <= 1e-6) return std::nullopt; // from here on the lens would fold the picture over
    const double step = (s * (1.0 + k * s * s) - 1.0) / slope;
    s -= step;
    if (std::abs(step) < 1e-14) return s > 0.0 ? std::optional(s) : std::nullopt;
  }
  return std::nullopt;
}

} // namespace

PhotoMapping::PhotoMapping(const Underlay& underlay)
    : plane_(underlay.lie.value.plane), back_(adjugate(plane_)), middleX_(underlay.width.value / 2.0),
      middleY_(underlay.height.value / 2.0),
      radial_(underlay.lie.value.radial / std::max(1.0, middleX_ * middleX_ + middleY_ * middleY_)) {
  // The camera is before what its middle shows.
  const double w = back_[6] * middleX_ + back_[7] * middleY_ + back_[8];
  const double determinant = plane_[0] * back_[0] + plane_[1] * back_[3] + plane_[2] * back_[6];
  front_ = w * determinant < 0.0 ? -1.0 : 1.0;
}

std::optional<Point> PhotoMapping::toBoard(PhotoPoint p) const {
  const double dx = p.x.value - middleX_;
  const double dy = p.y.value - middleY_;
  const auto out = unstretched(radial_ * (dx * dx + dy * dy));
  if (!out) return std::nullopt;
  const double u = middleX_ + *out * dx;
  const double v = middleY_ + *out * dy;
  const double w = back_[6] * u + back_[7] * v + back_[8];
  const double x = (back_[0] * u + back_[1] * v + back_[2]) / w;
  const double y = (back_[3] * u + back_[4] * v + back_[5]) / w;
  const double most = largestLength.mm();
  if (!(std::abs(x) <= most && std::abs(y) <= most)) return std::nullopt;
  const Point place{Length::fromMm(x), Length::fromMm(y)};
  return (plane_[6] * x + plane_[7] * y + plane_[8]) * front_ > 0.0 ? std::optional(place) : std::nullopt;
}

double PhotoMapping::pixelsPerMm() const {
  const auto middle = toBoard({Pixels(middleX_), Pixels(middleY_)});
  if (!middle) return 0.0;
  const double x = middle->x.mm();
  const double y = middle->y.mm();
  const double reach = 0.01;
  const auto at = toPhoto(x, y);
  const auto right = toPhoto(x + reach, y);
  const auto above = toPhoto(x, y + reach);
  if (!at || !right || !above) return 0.0;
  const auto pixels = [&](const PhotoPoint& p) {
    return std::hypot((p.x - at->x).value, (p.y - at->y).value) / reach;
  };
  return std::min(pixels(*right), pixels(*above));
}

Ring outlineOf(const Underlay& underlay) {
  if (!underlay.lie.known()) return {};
  const PhotoMapping mapping(underlay);
  const Pixels none(0.0);
  Ring out;
  for (const PhotoPoint corner :
       {PhotoPoint{none, none}, PhotoPoint{underlay.width, none}, PhotoPoint{underlay.width, underlay.height},
        PhotoPoint{none, underlay.height}}) {
    const auto place = mapping.toBoard(corner);
    if (!place) return {};
    out.push_back(*place);
  }
  return out;
}

PhotoLie uprightLie(const Underlay& underlay, Point lowerLeft, double pixelsPerMm) {
  const double x = lowerLeft.x.mm();
  const double y = lowerLeft.y.mm();
  const double s = pixelsPerMm;
  // From below the board is turned over about its upright axis: the photo's left is its right.
  const double mirror = underlay.side == Side::top ? 1.0 : -1.0;
  PhotoLie lie;
  lie.plane = {mirror * s, 0, -mirror * s * x, 0, -s, underlay.height.value + s * y, 0, 0, 1};
  return lie;
}

std::filesystem::path photosFolder(const std::filesystem::path& boardFile) {
  constexpr std::string_view ending = ".netmend-board.json";
  std::string name = boardFile.filename().string();
  if (name.ends_with(ending)) name.resize(name.size() - ending.size());
  return boardFile.parent_path() / (name + ".photos");
}

} // namespace netmend
