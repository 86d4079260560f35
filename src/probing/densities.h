#pragma once

#include <optional>
#include <vector>

#include "netmend/probing/expected.h"
#include "netmend/probing/meter.h"
#include "netmend/probing/verdict.h"

namespace netmend::probing {

/// What good and faulty boards read at one point through one meter: a chance of OL and a density over the
/// comparison scale. The judge's whole arithmetic.
class Densities {
public:
  Densities(const Expected& expected, const MeterProfile* meter, const FaultReadings& faults);

  /// Faulty against good, as a likelihood ratio; `y` on the comparison scale.
  [[nodiscard]] double ratio(double y) const { return faulty(y) / good(y); }
  [[nodiscard]] double ratioOverLimit() const { return faultyOverLimit_ / goodOverLimit(); }

  /// Of boards of which this share is faulty here: the density at `y`, and the chance of OL.
  [[nodiscard]] double chance(double y, double faultyShare) const {
    return (1.0 - faultyShare) * good(y) + faultyShare * faulty(y);
  }
  [[nodiscard]] double chanceOfOverLimit(double faultyShare) const {
    return (1.0 - faultyShare) * goodOverLimit() + faultyShare * faultyOverLimit_;
  }

  /// Share of good boards whose reading is at least as telling of a fault as this ratio.
  [[nodiscard]] double shareAtLeast(double wanted, double near) const;
  /// Of good boards, shown as OL by this meter: without a current path, or above its limit.
  [[nodiscard]] double goodOverLimit() const;
  /// So close to what is expected that no test would flag it at this rate: within two spreads of a hump that
  /// holds enough of the good boards that the tail beyond is above the rate.
  [[nodiscard]] bool plainlyGood(double y, double rate) const;

  struct Hump {
    double weight;
    double centre;
    double scale;
    double dof;
    double factor; ///< of the density, before the power
  };
  /// The hump whose centre is fewest spreads away, or nullptr.
  [[nodiscard]] const Hump* nearest(double y) const;
  [[nodiscard]] const std::vector<Hump>& humps() const { return humps_; }

private:
  [[nodiscard]] double good(double y) const;
  [[nodiscard]] double faulty(double y) const;
  [[nodiscard]] double even(double y) const;
  [[nodiscard]] double goodShareBetween(double from, double to) const;
  [[nodiscard]] std::vector<double> breakpoints(double near) const;

  const FaultReadings* faults_;
  ReadingMode mode_;
  std::vector<Hump> humps_;
  double unseen_ = 0.0; ///< weight of values on a point of which only OL is known, even over the range
  double lowest_ = 0.0;
  double highest_ = 1.0;
  double noPath_ = 0.0;         ///< good boards
  std::optional<double> limit_; ///< of the meter's display
  double faultyOverLimit_ = 0.0;
};

} // namespace netmend::probing
