#include "densities.h"

#include <algorithm>
#include <cmath>

#include <boost/math/constants/constants.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/special_functions/gamma.hpp>

#include "netmend/probing/comparison.h"

namespace netmend::probing {

namespace {

/// 1/(scale·√(dof·π))·Γ((dof+1)/2)/Γ(dof/2): what stands before the power in Student's t.
double densityFactor(double scale, double dof) {
  const double a = dof / 2.0;
  // Γ(a + ½)/Γ(a); for large a by its asymptotic series, to 1e-5 here, since it is wanted for every reading.
  const double gammas = a < 3.0
                            ? 1.0 / boost::math::tgamma_delta_ratio(a, 0.5)
                            : std::sqrt(a) * (1.0 - 1.0 / (8.0 * a) + 1.0 / (128.0 * a * a) +
                                              5.0 / (1024.0 * a * a * a) - 21.0 / (32768.0 * a * a * a * a));
  return gammas / (scale * std::sqrt(dof * boost::math::constants::pi<double>()));
}

/// Share of the hump below y, or above it: whichever tail keeps its digits.
double tail(const Densities::Hump& hump, double y, bool above) {
  const boost::math::students_t t(hump.dof);
  const double z = (y - hump.centre) / hump.scale;
  return above ? boost::math::cdf(boost::math::complement(t, z)) : boost::math::cdf(t, z);
}

} // namespace

Densities::Densities(const Expected& expected, const MeterProfile* meter, const FaultReadings& faults)
    : faults_(&faults), mode_(expected.mode), lowest_(toComparison(expected.mode, faults.lowest)),
      highest_(toComparison(expected.mode, faults.highest)), noPath_(expected.overLimitShare),
      faultyOverLimit_(faults.open) {
  humps_.reserve(expected.humps.size());
  if (const MeterMode* range = meter != nullptr ? meter->mode(mode_) : nullptr)
    limit_ = toComparison(mode_, range->displayLimit());
  for (const auto& e : expected.humps) {
    // The meter's own error comes on top of the spread from board to board, once; degrees of freedom by
    // Welch and Satterthwaite (JCGM 100:2008, G.4.1).
    const auto u = meter != nullptr ? uncertaintyOf(*meter, mode_, e.centre) : std::nullopt;
    const double own = u ? u->combined() * comparisonSlope(mode_, e.centre) : 0.0;
    const double spread = e.scale * e.scale;
    const double total = spread + own * own;
    const double dof = std::min(e.dof * (total / spread) * (total / spread), 1e6);
    const double scale = std::sqrt(total);
    Hump hump{e.weight, toComparison(mode_, e.centre), scale, dof, densityFactor(scale, dof)};
    humps_.push_back(hump);
  }
  if (humps_.empty()) unseen_ = 1.0 - expected.overLimitShare;
}

double Densities::goodOverLimit() const {
  double share = noPath_;
  if (limit_)
    for (const auto& h : humps_)
      share += h.weight * tail(h, *limit_, true);
  return share;
}

double Densities::even(double y) const {
  const double inside = 1.0 / (highest_ - lowest_);
  return y >= lowest_ && y <= highest_ ? inside : 0.01 * inside; // a fault keeps to no range for certain
}

double Densities::good(double y) const {
  double sum = unseen_ > 0.0 ? unseen_ * even(y) : 0.0;
  for (const auto& h : humps_) {
    const double z = (y - h.centre) / h.scale;
    sum += h.weight * h.factor * std::exp(-(h.dof + 1.0) / 2.0 * std::log1p(z * z / h.dof));
  }
  return std::max(sum, 1e-300);
}

double Densities::faulty(double y) const {
  const auto& f = *faults_;
  double sum = f.anywhere * even(y);
  if (f.shorted > 0.0) {
    const double value = fromComparison(mode_, y);
    sum +=
        f.shorted / f.shortScale * std::exp(-std::abs(value) / f.shortScale) / comparisonSlope(mode_, value);
  }
  if (humps_.empty()) return sum + f.shift * even(y);
  double weights = 0.0;
  double shifted = 0.0;
  for (const auto& h : humps_) {
    weights += h.weight;
    shifted += h.weight * std::exp(-std::abs(y - h.centre) / f.shiftScale) / (2.0 * f.shiftScale);
  }
  return sum + f.shift * shifted / weights;
}

const Densities::Hump* Densities::nearest(double y) const {
  const auto away = [&](const Hump& h) { return std::abs(y - h.centre) / h.scale; };
  const auto it = std::min_element(humps_.begin(), humps_.end(),
                                   [&](const Hump& a, const Hump& b) { return away(a) < away(b); });
  return it == humps_.end() ? nullptr : &*it;
}

bool Densities::plainlyGood(double y, double rate) const {
  constexpr double beyondTwo = 0.0227; // of a normal; Student's t has more
  return std::any_of(humps_.begin(), humps_.end(), [&](const Hump& h) {
    return std::abs(y - h.centre) <= 2.0 * h.scale && h.weight * beyondTwo > rate && h.weight >= 0.05;
  });
}

double Densities::goodShareBetween(double from, double to) const {
  double sum = unseen_ * (std::clamp(to, lowest_, highest_) - std::clamp(from, lowest_, highest_)) /
               (highest_ - lowest_);
  for (const auto& h : humps_) {
    const bool above = from >= h.centre;
    const double part = above            ? tail(h, from, true) - tail(h, to, true)
                        : to <= h.centre ? tail(h, to, false) - tail(h, from, false)
                                         : 1.0 - tail(h, from, false) - tail(h, to, true);
    sum += h.weight * std::max(part, 0.0);
  }
  return sum;
}

std::vector<double> Densities::breakpoints(double near) const {
  std::vector<double> at{near, lowest_, highest_, 0.0};
  for (const auto& h : humps_) {
    at.push_back(h.centre);
    for (double z = 0.25; z < 300.0; z *= 1.35) {
      at.push_back(h.centre - z * h.scale);
      at.push_back(h.centre + z * h.scale);
    }
  }
  for (const double k : {0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0}) {
    at.push_back(toComparison(mode_, k * faults_->shortScale));
    at.push_back(toComparison(mode_, -k * faults_->shortScale));
  }
  std::sort(at.begin(), at.end());
  return at;
}

double Densities::shareAtLeast(double wanted, double near) const {
  double share = ratioOverLimit() >= wanted ? goodOverLimit() : 0.0;
  const auto excess = [&](double y) { return ratio(y) - wanted; };
  const auto at = breakpoints(near);
  // Where the ratio crosses the wanted one, found between neighbouring points that disagree.
  const auto crossing = [&](double a, double b, bool fromTelling) {
    for (int i = 0; i < 24; ++i) {
      const double middle = (a + b) / 2.0;
      ((excess(middle) >= 0.0) == fromTelling ? a : b) = middle;
    }
    return (a + b) / 2.0;
  };
  bool telling = excess(at.front()) >= 0.0;
  double start = -1e12; // beyond the first point the ratio goes on as there
  for (std::size_t i = 1; i < at.size(); ++i) {
    const bool now = excess(at[i]) >= 0.0;
    if (now == telling) continue;
    const double edge = crossing(at[i - 1], at[i], telling);
    if (telling) share += goodShareBetween(start, edge);
    start = edge;
    telling = now;
  }
  if (telling) share += goodShareBetween(start, 1e12);
  return std::min(share, 1.0);
}

} // namespace netmend::probing
