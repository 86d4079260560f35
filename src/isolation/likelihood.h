#pragma once

#include "model.h"

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

/// The likelihood of a reading, once for all classes that say the same of it.
struct ReadingLikelihood {
  std::vector<std::size_t> rowOf;        ///< by class
  std::vector<std::vector<double>> rows; ///< by sample; of one value: the same for all samples
};
[[nodiscard]] ReadingLikelihood likelihoodOf(const Isolation& isolation, const PlacedReading& reading);

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

[[nodiscard]] std::vector<double> sigmaTable(const MeterProfile& meter, Volts readingSpread, Volts limit);

/// One standard deviation of a diode reading of this value: meter, and hand.
[[nodiscard]] double voltsSigma(const IsolationModel& model, double volts);

/// Shares of outcomes that do not come from the model of the line. Common practice, no source.
inline constexpr double openReadsOverLimit = 0.95; ///< between fragments; else something finds a way round
inline constexpr double noneReadsOverLimit = 0.35; ///< in diode mode, when it is none of these
inline constexpr double noneParted = 0.3;          ///< between points, when it is none of these
inline constexpr double noneJoined = 0.35;

} // namespace netmend
