#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "netmend/board/underlay.h"
#include "netmend/photo/straighten.h"

namespace netmend {

namespace {

constexpr int samples = 60;          ///< along an edge
constexpr double keptShare = 0.95;   ///< the worst twentieth is scratches and tabs
constexpr double reachShare = 0.012; ///< of the edge's length, to both sides of where it should be
constexpr int grain = 3; ///< pixels beside each other that are taken together, to both sides: noise goes
constexpr double leastStep = 12.0; ///< grey levels that an edge has at least

struct Edge {
  cv::Point2d from;
  cv::Point2d to;
};

/// How far the strongest step across the edge is from where it should be, in pixels; nothing where there is
/// none.
std::optional<double> stepAcross(const cv::Mat& grey, cv::Point2d at, cv::Point2d normal, int reach) {
  std::vector<float> profile;
  const cv::Point2d along(-normal.y, normal.x);
  for (int i = -reach; i <= reach; ++i) {
    float sum = 0.0F;
    for (int beside = -grain; beside <= grain; ++beside) {
      const cv::Point2d p = at + normal * static_cast<double>(i) + along * (2.0 * beside);
      if (p.x < 1 || p.y < 1 || p.x >= grey.cols - 2 || p.y >= grey.rows - 2) return std::nullopt;
      cv::Mat one;
      cv::getRectSubPix(grey, cv::Size(1, 1), cv::Point2f(static_cast<float>(p.x), static_cast<float>(p.y)),
                        one, CV_32F);
      sum += one.at<float>(0, 0);
    }
    profile.push_back(sum / static_cast<float>(2 * grain + 1));
  }
  std::size_t best = 0;
  double strongest = 0.0;
  const auto slope = [&](std::size_t i) { return std::abs(profile[i + 2] - profile[i - 2]); };
  for (std::size_t i = 2; i + 2 < profile.size(); ++i)
    if (slope(i) > strongest) {
      strongest = slope(i);
      best = i;
    }
  if (strongest < leastStep || best < 3 || best + 3 >= profile.size()) return std::nullopt;
  // The middle of the step, finer than a pixel: a parabola through three slopes.
  const double a = slope(best - 1);
  const double b = slope(best);
  const double c = slope(best + 1);
  const double curve = a - 2 * b + c;
  const double fine = curve < 0.0 ? std::clamp(0.5 * (a - c) / curve, -0.5, 0.5) : 0.0;
  return static_cast<double>(best) + fine - reach;
}

/// Distances of the found steps from the straight line through them, in pixels.
std::vector<double> offLine(const std::vector<std::pair<double, double>>& steps) {
  // Robust against what lies beside the edge: the line of Theil and Sen.
  std::vector<double> slopes;
  for (std::size_t i = 0; i < steps.size(); ++i)
    for (std::size_t j = i + 1; j < steps.size(); ++j)
      slopes.push_back((steps[j].second - steps[i].second) / (steps[j].first - steps[i].first));
  const auto median = [](std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
  };
  const double slope = median(std::move(slopes));
  std::vector<double> heights;
  for (const auto& [along, across] : steps)
    heights.push_back(across - slope * along);
  const double height = median(heights);
  for (double& value : heights)
    value = std::abs(value - height);
  return heights;
}

} // namespace

std::optional<Length> edgesOff(const GreyPhoto& photo, const Underlay& lying,
                               const std::vector<Point>& corners) {
  if (corners.size() < 3 ||
      photo.pixels.size() < static_cast<std::size_t>(photo.width) * static_cast<std::size_t>(photo.height))
    return std::nullopt;
  // OpenCV has no view of constant pixels; nothing is written to them.
  const cv::Mat grey(photo.height, photo.width, CV_8UC1, const_cast<std::uint8_t*>(photo.pixels.data()));
  const PhotoMapping mapping(lying);
  std::vector<double> off;
  std::size_t asked = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const auto a = mapping.toPhoto(corners[i]);
    const auto b = mapping.toPhoto(corners[(i + 1) % corners.size()]);
    if (!a || !b) return std::nullopt;
    const cv::Point2d from(a->x.value, a->y.value);
    const cv::Point2d way = cv::Point2d(b->x.value, b->y.value) - from;
    const double length = cv::norm(way);
    if (length < 50.0) continue;
    const cv::Point2d normal(-way.y / length, way.x / length);
    const int reach = std::max(6, static_cast<int>(reachShare * length));
    std::vector<std::pair<double, double>> steps;
    for (int s = 1; s < samples; ++s) { // corners are round
      const double along = static_cast<double>(s) / samples;
      ++asked;
      if (const auto step = stepAcross(grey, from + way * along, normal, reach))
        steps.emplace_back(along * length, *step);
    }
    if (steps.size() < samples / 2) continue;
    for (const double value : offLine(steps))
      off.push_back(value);
  }
  if (off.size() * 2 < asked || off.empty()) return std::nullopt;
  std::sort(off.begin(), off.end());
  const double worst = off[static_cast<std::size_t>(keptShare * static_cast<double>(off.size() - 1))];
  const double scale = mapping.pixelsPerMm();
  return scale > 0.0 ? std::optional(Length::fromMm(worst / scale)) : std::nullopt;
}

} // namespace netmend
