#pragma once

#include <cmath>
#include <numbers>
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

/// Student's t with five degrees of freedom: a hand's readings have wider tails than a Gaussian's.
[[nodiscard]] inline double studentDensity(double x, double mean, double sigma) {
  constexpr double freedom = 5.0;
  constexpr double atMiddle = 0.3796066898224944; // Γ(3)/(√(5π)·Γ(5/2))
  const double z = (x - mean) / sigma;
  const double base = 1.0 + z * z / freedom;
  return atMiddle / (base * base * base * sigma);
}

/// log Σ exp; of nothing: −∞.
[[nodiscard]] double logSum(const double* first, std::size_t count);
[[nodiscard]] inline double logSum(const std::vector<double>& values) {
  return logSum(values.data(), values.size());
}

} // namespace netmend
