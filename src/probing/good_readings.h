#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "netmend/probing/expected.h"

namespace netmend::probing {

/// What one good board read at a point: the last of its readings.
struct GoodReading {
  std::size_t walk = 0;
  std::size_t reading = 0;     ///< of that walk
  std::optional<double> value; ///< at bench temperature, comparison scale; empty: OL
  double leastVariance = 0.0;  ///< what the meter's resolution hides
  double calibration = 0.0;    ///< standard uncertainty that all readings with this meter share
};

/// What some walks of good boards read, point by point. The walks must outlive it.
class GoodReadings {
public:
  /// Rising readings and walks not marked good do not count. Pins of walks of another board description than
  /// `boardUuid` are found by their labels.
  GoodReadings(std::span<const Walk> walks, const std::vector<MeterProfile>& meters,
               const std::string& boardUuid);

  [[nodiscard]] std::span<const Walk> walks() const { return walks_; }
  [[nodiscard]] const PointIndex& points() const { return points_; }
  [[nodiscard]] std::size_t size() const { return at_.size(); }
  /// In the order of the walks.
  [[nodiscard]] const std::vector<GoodReading>& at(std::size_t point) const { return at_[point]; }
  [[nodiscard]] const Reading& readingOf(const GoodReading& good) const {
    return walks_[good.walk].readings[good.reading];
  }
  [[nodiscard]] ReadingMode modeAt(std::size_t point) const {
    return points_.setting(points_[point].setting).mode;
  }

private:
  void take(std::size_t walk, std::size_t index, const Reading& reading,
            const std::vector<MeterProfile>& meters);

  std::span<const Walk> walks_;
  PointIndex points_;
  std::vector<std::vector<GoodReading>> at_; ///< parallel to points_
};

} // namespace netmend::probing
