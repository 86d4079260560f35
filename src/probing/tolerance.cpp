#include "netmend/probing/tolerance.h"

#include <cmath>
#include <limits>
#include <map>

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/toms748_solve.hpp>

namespace netmend {

namespace bm = boost::math;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

bool sensible(double n, double dof, const ToleranceAim& aim) {
  return n >= 1.0 && dof > 0.0 && aim.content > 0.0 && aim.content < 1.0 && aim.confidence > 0.0 &&
         aim.confidence < 1.0;
}

/// Half-width r of the interval about x that holds `content` of a standard normal.
double halfWidth(double x, double content) {
  const bm::normal z;
  const double reach = bm::quantile(z, 0.5 + content / 2.0);
  const auto excess = [&](double r) { return bm::cdf(z, x + r) - bm::cdf(z, x - r) - content; };
  std::uintmax_t iterations = 100;
  const auto [low, high] = bm::tools::toms748_solve(excess, 0.0, std::abs(x) + reach + 1.0,
                                                    bm::tools::eps_tolerance<double>(48), iterations);
  return (low + high) / 2.0;
}

} // namespace

double toleranceFactorExact(double n, double dof, const ToleranceAim& aim) {
  if (!sensible(n, dof, aim)) return none;
  const bm::chi_squared chi2(dof);
  // P(content held) = ∫ φ(x̄; 1/√n) · P(s² > (r(x̄)/k)²) dx̄: given the mean's error x̄ the interval ± k·s is
  // wide enough when k·s > r(x̄). Even in x̄, hence twice the half.
  const double root = std::sqrt(n);
  constexpr double reach = 8.0;
  std::map<double, double> widths; // the rule's nodes are the same for every k
  const auto widthAt = [&](double u) {
    const auto [it, isNew] = widths.try_emplace(u, 0.0);
    if (isNew) it->second = halfWidth(u / root, aim.content);
    return it->second;
  };
  const auto confidence = [&](double k) {
    const auto part = [&](double u) {
      const double r = widthAt(u);
      const double phi = std::exp(-u * u / 2.0) / std::sqrt(2.0 * bm::constants::pi<double>());
      return 2.0 * phi * bm::cdf(bm::complement(chi2, dof * r * r / (k * k)));
    };
    return bm::quadrature::gauss_kronrod<double, 61>::integrate(part, 0.0, reach, 0);
  };
  const auto excess = [&](double k) { return confidence(k) - aim.confidence; };
  double high = 4.0;
  while (excess(high) < 0.0 && high < 1e6)
    high *= 2.0;
  std::uintmax_t iterations = 100;
  const auto [a, b] =
      bm::tools::toms748_solve(excess, 1e-3, high, bm::tools::eps_tolerance<double>(30), iterations);
  return (a + b) / 2.0;
}

} // namespace netmend
