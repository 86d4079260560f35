#include "spread.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <vector>

#include <boost/math/distributions/students_t.hpp>
#include <boost/math/tools/toms748_solve.hpp>

namespace netmend {

namespace {

using boost::math::students_t;

/// One supposition about all points of a kind.
struct Supposed {
  double logVariance; ///< ln s0²
  double dof;
  double weight; ///< first its logarithm
};

/// ln of the density of all s² when s² ~ s0²·F(d, d0), without what does not depend on s0 and d0. In two
/// parts: the first, which costs most, is the same for all s0.
double logOfDof(const std::vector<Spread>& samples, double d0) {
  std::map<double, double> known; // most samples rest on equally many boards
  double sum = 0.0;
  for (const auto& sample : samples) {
    const auto [it, fresh] = known.try_emplace(sample.dof);
    if (fresh) it->second = std::lgamma((sample.dof + d0) / 2.0) - std::lgamma(d0 / 2.0);
    sum += it->second;
  }
  return sum;
}

double logOfVariance(const std::vector<Spread>& samples, double least, const Supposed& s) {
  const double prior = s.dof * std::exp(s.logVariance);
  const double logPrior = std::log(prior);
  double sum = 0.0;
  for (const auto& sample : samples)
    sum += s.dof / 2.0 * logPrior -
           (sample.dof + s.dof) / 2.0 * std::log(prior + sample.dof * std::max(sample.variance, least));
  return sum;
}

double bothTails(double dof, double q) {
  return 2.0 * boost::math::cdf(boost::math::complement(students_t(dof), q));
}

double quantile(double dof, double bothTailsShare) {
  return boost::math::quantile(boost::math::complement(students_t(dof), bothTailsShare / 2.0));
}

template <class Function> double root(Function function, double low, double high) {
  if (function(low) * function(high) >= 0.0) // at the end that comes closest
    return std::abs(function(low)) < std::abs(function(high)) ? low : high;
  std::uintmax_t iterations = 60;
  const auto [a, b] = boost::math::tools::toms748_solve(
      function, low, high, boost::math::tools::eps_tolerance<double>(20), iterations);
  return (a + b) / 2.0;
}

/// Suppositions with their probabilities after the samples.
std::vector<Supposed> posterior(const std::vector<Spread>& samples, const Spread& fallback, double least) {
  double lowest = std::log(std::max(fallback.variance, least));
  double highest = lowest;
  const double expected = lowest;
  double pooled = 0.0;
  double dof = 0.0;
  for (const auto& s : samples) {
    pooled += s.dof * std::max(s.variance, least);
    dof += s.dof;
  }
  const double middle = std::log(pooled / dof);
  lowest = std::min(lowest, middle) - 3.0;
  highest = std::max(highest, middle) + 3.0;
  std::vector<Supposed> grid;
  double best = -1e300;
  for (const double d0 : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 11.0, 16.0, 24.0, 40.0, 80.0}) {
    const double ofDof = logOfDof(samples, d0);
    for (double v = lowest; v <= highest; v += 0.15) {
      const double offScale = v - expected;
      const double offDof = std::log(d0 / fallback.dof) / 0.5;
      Supposed s{v, d0, -0.5 * (offScale * offScale + offDof * offDof)};
      s.weight += ofDof + logOfVariance(samples, least, s);
      best = std::max(best, s.weight);
      grid.push_back(s);
    }
  }
  double sum = 0.0;
  for (auto& s : grid)
    sum += s.weight = std::exp(s.weight - best);
  std::erase_if(grid, [&](const Supposed& s) { return s.weight < 1e-6 * sum; });
  for (auto& s : grid)
    s.weight /= sum;
  return grid;
}

} // namespace

Spread fitSpread(std::span<const Spread> samples, const Spread& fallback, double least) {
  // Boards never read the same for ever, even where nothing is known of what the meter's resolution hides.
  least = std::max(least, 1e-6 * fallback.variance);
  // A few hundred points tell all there is to know; more would only take time.
  constexpr std::size_t most = 400;
  std::vector<Spread> used;
  for (const auto& s : samples)
    if (s.dof > 0.0) used.push_back(s);
  if (used.empty()) return {std::max(fallback.variance, least), fallback.dof};
  if (used.size() > most) {
    for (std::size_t i = 0; i < most; ++i)
      used[i] = used[i * used.size() / most];
    used.resize(most);
  }
  const auto grid = posterior(used, fallback, least);
  const auto beyond = [&](double logQ) {
    double share = 0.0;
    for (const auto& s : grid)
      share += s.weight * bothTails(s.dof, std::exp(logQ - s.logVariance / 2.0));
    return share;
  };
  constexpr double oneSpread = 0.3173;
  constexpr double oneInThousand = 0.001;
  const double low = grid.front().logVariance / 2.0 - 20.0;
  const double inner = root([&](double q) { return beyond(q) - oneSpread; }, low, low + 60.0);
  const double outer = root([&](double q) { return beyond(q) - oneInThousand; }, inner, inner + 20.0);
  const auto ratio = [](double dof) {
    return std::log(quantile(dof, oneInThousand) / quantile(dof, oneSpread));
  };
  const double dof = root([&](double d) { return ratio(d) - (outer - inner); }, 1.0, 200.0);
  const double scale = std::exp(inner) / quantile(dof, oneSpread);
  return {scale * scale, dof};
}

Spread moderated(const Spread& prior, const Spread& own) {
  const double dof = prior.dof + own.dof;
  return {(prior.dof * prior.variance + own.dof * own.variance) / dof, dof};
}

} // namespace netmend
