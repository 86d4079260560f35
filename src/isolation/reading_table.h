#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "common_error.h"
#include "likelihood.h"

/// What readings to ground say of the voltage that a lead meets.
namespace netmend {

/// log likelihood of one reading over the voltage that the meter sees, its common error left out.
struct ReadingTable {
  static constexpr double first = -0.06;  ///< V
  static constexpr double step = 0.00025; ///< V
  std::vector<float> logLikelihood;
  double atNothing = 0.0; ///< log likelihood where nothing is behind the lead
  bool isValue = false;   ///< and not OL, to which some millivolts do not matter
};
[[nodiscard]] ReadingTable tableOf(const IsolationModel& model, const PlacedReading& reading);

/// The same of what good boards read at a node of the line.
[[nodiscard]] ReadingTable goodTable(const IsolationModel& model, const KnownGood& known);

/// Several readings of one fragment together. Averages over stretches of voltage, so that a stretch may be
/// wider than what the readings leave.
class ReadingProduct {
public:
  /// `errors`: of all of them together, for the smoothed means.
  ReadingProduct(std::span<const ReadingTable* const> readings, std::span<const CommonError> errors);

  /// Mean of the likelihood over [low, high] V, over `exp(logScale())`.
  [[nodiscard]] double mean(double low, double high) const { return sharp_.mean(low, high, atNothing_); }
  /// The greatest there.
  [[nodiscard]] double most(double low, double high) const { return sharp_.most(low, high, atNothing_); }
  /// The same summed over the common errors.
  [[nodiscard]] double smoothMean(double low, double high) const {
    return smooth_.mean(low, high, atNothing_);
  }
  [[nodiscard]] double smoothMost(double low, double high) const {
    return smooth_.most(low, high, atNothing_);
  }
  [[nodiscard]] double atNothing() const { return atNothing_; }
  [[nodiscard]] double logScale() const { return logScale_; }
  /// Whether an error of some millivolts matters: not where all is OL.
  [[nodiscard]] bool hasValue() const { return hasValue_; }

private:
  /// A function over the lattice.
  struct Lattice {
    static constexpr std::size_t block = 16; ///< points whose greatest is kept, and as many blocks again
    std::vector<double> value;
    std::vector<double> integral;
    std::vector<double> greatest;
    std::vector<double> greatestOfMany;

    void finish();
    [[nodiscard]] double integralTo(double volts) const;
    [[nodiscard]] double mean(double low, double high, double beyond) const;
    [[nodiscard]] double most(double low, double high, double beyond) const;
  };

  Lattice sharp_;
  Lattice smooth_;
  double atNothing_ = 1.0;
  double logScale_ = 0.0;
  bool hasValue_ = false;
};

} // namespace netmend
