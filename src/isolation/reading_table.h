#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "likelihood.h"

/// What readings to ground say of the voltage that a lead meets.
namespace netmend {

/// log likelihood of one reading over the voltage that the meter sees, its common error left out.
struct ReadingTable {
  static constexpr double first = -0.06;  ///< V
  static constexpr double step = 0.00025; ///< V
  std::vector<float> logLikelihood;
  double atNothing = 0.0; ///< log likelihood where nothing is behind the lead
};
[[nodiscard]] ReadingTable tableOf(const IsolationModel& model, const PlacedReading& reading);

/// The same of what good boards read at a node of the line.
[[nodiscard]] ReadingTable goodTable(const IsolationModel& model, const KnownGood& known);

/// Several readings of one fragment together. Averages over stretches of voltage, so that a stretch may be
/// wider than what the readings leave.
class ReadingProduct {
public:
  explicit ReadingProduct(std::span<const ReadingTable* const> readings);

  /// Mean of the likelihood over [low, high] V, over `exp(logScale())`.
  [[nodiscard]] double mean(double low, double high) const;
  /// The greatest there.
  [[nodiscard]] double most(double low, double high) const;
  [[nodiscard]] double atNothing() const { return atNothing_; }
  [[nodiscard]] double logScale() const { return logScale_; }
  [[nodiscard]] bool empty() const { return integral_.empty(); }

private:
  [[nodiscard]] double integralTo(double volts) const;

  static constexpr std::size_t block = 16; ///< lattice points whose greatest is kept

  std::vector<double> integral_; ///< from the first lattice point on
  std::vector<double> value_;
  std::vector<double> greatest_; ///< by block
  double atNothing_ = 1.0;
  double logScale_ = 0.0;
};

} // namespace netmend
