#pragma once

#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace netmend {

[[nodiscard]] inline double logNormal(double x, double mean, double sigma) {
  const double z = (x - mean) / sigma;
  return -0.5 * z * z - std::log(sigma * std::sqrt(2.0 * std::numbers::pi));
}

[[nodiscard]] inline double normalDensity(double x, double mean, double sigma) {
  return std::exp(logNormal(x, mean, sigma));
}

/// Share of a normal distribution below `z` standard deviations.
[[nodiscard]] inline double normalBelow(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

/// Chance of OL, or density (1/V) of a value, when `volts` are there: Gaussian, OL above the limit, and a
/// share of slipped probes of which half read OL and half anything.
[[nodiscard]] inline double voltsLikelihood(std::optional<double> value, double volts, double sigma,
                                            double limit, double slipped) {
  if (!value) return (1.0 - slipped) * normalBelow((volts - limit) / sigma) + 0.5 * slipped;
  return (1.0 - slipped) * normalDensity(*value, volts, sigma) + 0.5 * slipped / limit;
}

/// log Σ exp; of nothing: −∞.
[[nodiscard]] double logSum(const double* first, std::size_t count);
[[nodiscard]] inline double logSum(const std::vector<double>& values) {
  return logSum(values.data(), values.size());
}

} // namespace netmend
