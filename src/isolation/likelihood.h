#pragma once

#include <algorithm>
#include <cmath>

#include "line_cells.h"
#include "netmend/isolation/isolation.h"

namespace netmend {

/// How a reading is understood.
enum class ReadingSort { voltsToGround, ohmsToGround, ohmsBetween };

struct PlacedReading {
  ReadingSort sort = ReadingSort::voltsToGround;
  std::size_t place = 0;
  std::optional<std::size_t> other;
  std::optional<double> value; ///< V at the bench temperature, or Ω; empty: OL
  ReadingMode mode = ReadingMode::diode;
};

/// Which place of the line a reading was taken at and how it can be used, or why not.
[[nodiscard]] tl::expected<PlacedReading, SetAsideWhy> placed(const Isolation& isolation,
                                                              const Reading& reading);
/// Of all observations.
[[nodiscard]] std::vector<PlacedReading> placedReadings(const Isolation& isolation);

/// How likely a reading from point to point is under a class, none of these excepted.
[[nodiscard]] double betweenLikelihood(const IsolationModel& model, const PlacedReading& reading,
                                       std::size_t faultClass);

/// What is known of the resistance between two places while nothing parts them.
struct PathOhms {
  double ohms = 0.0;
  double sigma = 0.0;
};
[[nodiscard]] PathOhms pathBetween(const IsolationModel& model, std::size_t cellA, std::size_t cellB,
                                   ReadingMode mode);

/// Do two places still hang together under this class?
[[nodiscard]] bool together(const IsolationModel& model, std::size_t faultClass, std::size_t cellA,
                            std::size_t cellB);

/// Any resistance from a tenth of an ohm to ten megohms is as likely per decade.
[[nodiscard]] inline double anyOhms(double ohms) {
  return 1.0 / (std::max(ohms, 0.1) * std::log(1e8));
}

/// Shares of outcomes that do not come from the model of the line. Common practice, no source.
inline constexpr double openReadsOverLimit = 0.95; ///< between fragments; else something finds a way round
inline constexpr double noneReadsOverLimit = 0.35; ///< in diode mode, when it is none of these
inline constexpr double noneParted = 0.3;          ///< between points, when it is none of these
inline constexpr double noneJoined = 0.35;

} // namespace netmend
