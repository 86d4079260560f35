#include "netmend/photo/straighten.h"

#include <algorithm>
#include <cmath>
#include <complex>

#include <boost/math/tools/minima.hpp>
#include <opencv2/calib3d.hpp>

#include "netmend/board/underlay.h"

namespace netmend {

namespace {

using Points = std::vector<cv::Point2d>;

Points placesOf(const std::vector<PhotoPair>& pairs) {
  Points out;
  for (const PhotoPair& pair : pairs)
    out.emplace_back(pair.board.x.mm(), pair.board.y.mm());
  return out;
}

Points pixelsOf(const std::vector<PhotoPair>& pairs) {
  Points out;
  for (const PhotoPair& pair : pairs)
    out.emplace_back(pair.photo.x.value, pair.photo.y.value);
  return out;
}

std::array<double, 9> rows(const cv::Matx33d& m) {
  std::array<double, 9> out{};
  std::copy(m.val, m.val + 9, out.begin());
  return out;
}

/// No three of the four in a line: only then a perspective is told by them.
bool spansPlane(const std::array<cv::Point2d, 4>& p, double widest) {
  for (std::size_t left = 0; left < 4; ++left) {
    std::array<cv::Point2d, 3> three;
    std::copy_if(p.begin(), p.end(), three.begin(), [&](const auto& point) { return &point != &p[left]; });
    if (std::abs((three[1] - three[0]).cross(three[2] - three[0])) < 1e-3 * widest * widest) return false;
  }
  return true;
}

/// There are no four places among them of which no three lie in a line.
bool degenerate(const Points& points) {
  double widest = 0.0;
  for (const auto& a : points)
    for (const auto& b : points)
      widest = std::max(widest, cv::norm(a - b));
  const std::size_t n = points.size();
  for (std::size_t a = 0; a < n; ++a)
    for (std::size_t b = a + 1; b < n; ++b)
      for (std::size_t c = b + 1; c < n; ++c)
        for (std::size_t d = c + 1; d < n; ++d)
          if (spansPlane({points[a], points[b], points[c], points[d]}, widest)) return false;
  return true;
}

std::array<double, 9> similarity(const Points& places, const Points& pixels, Side side) {
  // In the photo y runs down, and from below x runs the other way, too: what is left is no mirror or one.
  const double mirror = side == Side::top ? 1.0 : -1.0;
  using Complex = std::complex<double>;
  const auto seen = [&](const cv::Point2d& p) { return Complex(mirror * p.x, -p.y); };
  const auto in = [](const cv::Point2d& p) { return Complex(p.x, p.y); };
  Complex fromMiddle, toMiddle;
  for (std::size_t i = 0; i < places.size(); ++i) {
    fromMiddle += seen(places[i]) / static_cast<double>(places.size());
    toMiddle += in(pixels[i]) / static_cast<double>(places.size());
  }
  // Turned and scaled by one complex number; least squares.
  Complex common;
  double size = 0.0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Complex from = seen(places[i]) - fromMiddle;
    common += std::conj(from) * (in(pixels[i]) - toMiddle);
    size += std::norm(from);
  }
  const Complex by = common / size;
  const Complex offset = toMiddle - by * fromMiddle;
  return {
      mirror * by.real(), by.imag(), offset.real(), mirror * by.imag(), -by.real(), offset.imag(), 0, 0, 1};
}

/// Where a lens without fault would show what this one shows.
Points withoutLens(const Points& pixels, const Underlay& photo, double radial) {
  // The plane of such a lens is the photo itself, at a scale at which the largest photo is a board's size.
  constexpr double scale = 100.0;
  Underlay flat = photo;
  flat.lie = guessed(PhotoLie{{scale, 0, 0, 0, scale, 0, 0, 0, 1}, radial});
  const PhotoMapping mapping(flat);
  Points out;
  for (const auto& p : pixels) {
    const auto ideal = mapping.toBoard({Pixels(p.x), Pixels(p.y)});
    out.emplace_back(ideal ? cv::Point2d(ideal->x.mm(), ideal->y.mm()) * scale : p);
  }
  return out;
}

std::optional<std::array<double, 9>> perspective(const Points& places, const Points& pixels) {
  const cv::Mat found = cv::findHomography(places, pixels, 0);
  if (found.empty()) return std::nullopt;
  return rows(cv::Matx33d(found));
}

/// Sum of squares in pixels.
double misfit(const Underlay& lying, const Points& places, const Points& pixels) {
  const PhotoMapping mapping(lying);
  double sum = 0.0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto seen = mapping.toPhoto(places[i].x, places[i].y);
    const double off = seen ? std::hypot(seen->x.value - pixels[i].x, seen->y.value - pixels[i].y) : 1e6;
    sum += off * off;
  }
  return sum;
}

std::optional<PhotoLie> lens(const Underlay& photo, const Points& places, const Points& pixels) {
  const auto lieWith = [&](double radial) -> std::optional<PhotoLie> {
    const auto plane = perspective(places, withoutLens(pixels, photo, radial));
    if (!plane) return std::nullopt;
    return PhotoLie{*plane, radial};
  };
  const auto cost = [&](double radial) {
    const auto lie = lieWith(radial);
    if (!lie) return 1e12;
    Underlay lying = photo;
    lying.lie = guessed(*lie);
    return misfit(lying, places, pixels);
  };
  constexpr double most = 0.2; // beyond is a fish eye, no lens for boards
  constexpr int bits = 26;
  const auto best = boost::math::tools::brent_find_minima(cost, -most, most, bits);
  return lieWith(best.first);
}

std::vector<Length> residualsOf(const Underlay& lying, const std::vector<PhotoPair>& pairs) {
  const PhotoMapping mapping(lying);
  std::vector<Length> out;
  for (const PhotoPair& pair : pairs) {
    const auto place = mapping.toBoard(pair.photo);
    out.push_back(place ? distance(*place, pair.board) : largestLength);
  }
  return out;
}

std::size_t leastPairs(PhotoModel model) {
  switch (model) {
  case PhotoModel::similarity:
    return 2;
  case PhotoModel::perspective:
    return 4;
  case PhotoModel::lens:
    return 6;
  }
  return 0;
}

/// Pairs that the model fits whatever they are: 4, 8 and 9 unknowns, two for each pair.
std::size_t pairsThatAlwaysFit(PhotoModel model) {
  return model == PhotoModel::similarity ? 2 : 4;
}

} // namespace

Result<Straightened> straighten(const Underlay& photo, const std::vector<PhotoPair>& pairs,
                                PhotoModel model) {
  if (pairs.size() < leastPairs(model))
    return failure({pattern("core", "too few points to straighten a photo by"), "", "",
                    std::to_string(pairs.size()), std::to_string(leastPairs(model))});
  const Points places = placesOf(pairs);
  const Points pixels = pixelsOf(pairs);
  const bool flat = model == PhotoModel::similarity;
  const auto apart = [](const Points& points) {
    return std::any_of(points.begin(), points.end(),
                       [&](const auto& p) { return cv::norm(p - points[0]) > 1e-3; });
  };
  if (!apart(places) || !apart(pixels) || (!flat && (degenerate(places) || degenerate(pixels))))
    return failure({pattern("core", "the points lie in a line, or at one place")});
  Straightened out;
  out.model = model;
  std::optional<PhotoLie> lie;
  if (flat)
    lie = PhotoLie{similarity(places, pixels, photo.side), 0.0};
  else if (model == PhotoModel::lens)
    lie = lens(photo, places, pixels);
  else if (const auto plane = perspective(places, pixels))
    lie = PhotoLie{*plane, 0.0};
  if (!lie) return failure({pattern("core", "the points fit no photo of a board")});
  out.lie = *lie;
  if (pairs.size() > pairsThatAlwaysFit(model)) {
    Underlay lying = photo;
    lying.lie = guessed(out.lie);
    out.residuals = residualsOf(lying, pairs);
  }
  return out;
}

} // namespace netmend
