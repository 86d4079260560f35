#include "netmend/probing/spread.h"

#include <algorithm>
#include <cmath>

#include <boost/math/special_functions/digamma.hpp>
#include <boost/math/special_functions/trigamma.hpp>

namespace netmend {

namespace {

/// Inverse of the trigamma function by Newton on 1/ψ', which is nearly linear (Smyth 2004, appendix).
double inverseTrigamma(double x) {
  double y = 0.5 + 1.0 / x;
  for (int i = 0; i < 50; ++i) {
    const double value = boost::math::trigamma(y);
    // ψ'' from a central difference: only the step's size depends on it.
    const double h = 1e-4 * y;
    const double slope = (boost::math::trigamma(y + h) - boost::math::trigamma(y - h)) / (2.0 * h);
    const double step = value * (1.0 - value / x) / slope;
    y = std::max(y + step, 1e-3);
    if (std::abs(step) < 1e-9 * y) break;
  }
  return y;
}

} // namespace

Spread fitSpread(std::span<const Spread> samples, const Spread& fallback, double least) {
  double pooled = 0.0;
  double dof = 0.0;
  std::size_t count = 0;
  for (const auto& s : samples) {
    if (s.dof <= 0.0) continue;
    pooled += s.dof * std::max(s.variance, least);
    dof += s.dof;
    ++count;
  }
  if (dof < 8.0 || count < 3) {
    return {(fallback.dof * std::max(fallback.variance, least) + pooled) / (fallback.dof + dof),
            fallback.dof};
  }
  // e = ln s² − ψ(d/2) + ln(d/2) has mean ln s0² − ψ(d0/2) + ln(d0/2) and variance ψ'(d/2) + ψ'(d0/2).
  double mean = 0.0;
  double inner = 0.0;
  const auto logOf = [&](const Spread& s) {
    const double half = s.dof / 2.0;
    return std::log(std::max(s.variance, least)) - boost::math::digamma(half) + std::log(half);
  };
  for (const auto& s : samples) {
    if (s.dof <= 0.0) continue;
    mean += logOf(s);
    inner += boost::math::trigamma(s.dof / 2.0);
  }
  const auto n = static_cast<double>(count);
  mean /= n;
  inner /= n;
  double outer = 0.0;
  for (const auto& s : samples) {
    if (s.dof <= 0.0) continue;
    const double off = logOf(s) - mean;
    outer += off * off;
  }
  outer = outer / (n - 1.0) - inner;
  if (outer <= 1.0 / dof) return {pooled / dof, dof}; // no more scatter than chance makes: one spread for all
  const double d0 = std::min(2.0 * inverseTrigamma(outer), dof);
  return {std::exp(mean + boost::math::digamma(d0 / 2.0) - std::log(d0 / 2.0)), d0};
}

Spread moderated(const Spread& prior, const Spread& own) {
  const double dof = prior.dof + own.dof;
  return {(prior.dof * prior.variance + own.dof * own.variance) / dof, dof};
}

} // namespace netmend
