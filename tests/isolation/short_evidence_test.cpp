#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "../../src/isolation/short_evidence.h"

using namespace netmend;

namespace {

double normalAt(double x, double mean, double sigma) {
  const double z = (x - mean) / sigma;
  return std::exp(-0.5 * z * z) / (sigma * std::sqrt(2 * std::numbers::pi));
}

/// The same integral by plain sums over the logarithms, for one unknown wire and independent errors.
double bruteForce(const ShortEquations& e, const Eigen::VectorXd& ohms, double sigma) {
  constexpr int steps = 240;
  constexpr double reach = 6.0;
  const auto value = [](const PositivePrior& prior, double z) {
    return prior.median * std::exp(prior.spread * z);
  };
  const double width = 2 * reach / steps;
  double sum = 0.0;
  for (int i = 0; i < steps; ++i)
    for (int j = 0; j < steps; j += 20)
      for (int k = 0; k < steps; ++k) {
        const double zc = -reach + (i + 0.5) * width, zt = -reach + (j + 10.0) * width,
                     zx = -reach + (k + 0.5) * width;
        double density = normalAt(zc, 0, 1) * normalAt(zt, 0, 1) * normalAt(zx, 0, 1);
        for (Eigen::Index r = 0; r < ohms.size(); ++r)
          density *= normalAt(ohms[r],
                              value(e.shorted, zc) + value(e.thickness, zt) * e.copper[r] +
                                  value(e.unknown[0], zx) * e.shares(r, 0),
                              sigma);
        sum += density * width * width * (20 * width);
      }
  return std::log(sum);
}

ShortEquations twoReadings(double copper0, double copper1, double share0, double share1) {
  ShortEquations e;
  e.shorted = {0.05, 1.8};
  e.thickness = {1.0, 0.14};
  e.ways = {1.0, 1e-3};
  e.unknown = {{0.01, 1.1}};
  e.copper = Eigen::Vector2d(copper0, copper1);
  e.shares = Eigen::Vector2d(share0, share1);
  e.own = Eigen::MatrixXd::Zero(2, 0);
  return e;
}

MeasuredOhms independent(const Eigen::VectorXd& ohms, double sigma) {
  return {ohms, sigma * sigma * Eigen::MatrixXd::Identity(ohms.size(), ohms.size())};
}

} // namespace

TEST_CASE("how well a place fits agrees with the integral over all that is not known") {
  // Figures of the size of a rail's; the sum's grid is fine against sigma only if that is not tiny.
  constexpr double sigma = 0.004;
  struct Case {
    Eigen::Vector2d ohms;
    ShortEquations e;
  };
  const Case cases[] = {
      {{0.060, 0.072}, twoReadings(0.010, 0.020, 0.0, 1.0)},
      {{0.060, 0.072},
       twoReadings(0.020, 0.010, 1.0, 0.0)}, // the wrong way round: less likely, not unthinkable
      {{0.020, 0.090}, twoReadings(0.002, 0.002, 0.0, 1.0)},
      {{0.020, 0.090}, twoReadings(0.002, 0.002, 1.0, 0.0)}, // cannot be: the wire would be negative
  };
  for (const Case& one : cases) {
    const double exact = bruteForce(one.e, one.ohms, sigma);
    INFO("exact " << exact);
    CHECK(fitShort(one.e, independent(one.ohms, sigma)).logEvidence == Approx(exact).margin(0.7));
    CHECK(fitShort(one.e, independent(one.ohms, sigma), 2).logEvidence == Approx(exact).margin(0.05));
  }
  const double right = fitShort(cases[2].e, independent(cases[2].ohms, sigma)).logEvidence;
  const double wrong = fitShort(cases[3].e, independent(cases[3].ohms, sigma)).logEvidence;
  CHECK(right - wrong > 15.0);
}

TEST_CASE("the likeliest values are where readings are exact") {
  const auto e = twoReadings(0.010, 0.020, 0.0, 1.0);
  Eigen::Vector2d ohms(0.060, 0.085); // 50 mΩ + 10; 50 + 20 + 15
  const ShortFit fit = fitShort(e, independent(ohms, 1e-6));
  CHECK(fit.unknowns[0] + fit.unknowns[1] * 0.010 == Approx(0.060).epsilon(1e-3));
  CHECK(fit.unknowns[0] + fit.unknowns[1] * 0.020 + fit.unknowns[3] == Approx(0.085).epsilon(1e-3));
}

TEST_CASE("a slipped reading costs about its share and not the place") {
  auto e = twoReadings(0.010, 0.020, 0.0, 0.0);
  Eigen::Vector2d good(0.060, 0.070), slipped(0.060, 2.0);
  const double fits = evidenceWithSlip(e, independent(good, 1e-4), 0.02, 0);
  const double slip = evidenceWithSlip(e, independent(slipped, 1e-4), 0.02, 0);
  // Without a share for slips there is no way.
  CHECK(evidenceWithSlip(e, independent(slipped, 1e-4), 0.0, 0) < fits - 1000.0);
  // One of them slipped, 0.02 × 1/(ohms · ln 10⁶), and the other stands alone.
  const auto alone = [&](Eigen::Index left, double ohms) {
    auto other = e;
    other.copper = Eigen::VectorXd::Constant(1, e.copper[left]);
    other.shares = Eigen::MatrixXd::Zero(1, 1);
    other.own = Eigen::MatrixXd::Zero(1, 0);
    return fitShort(other, independent(Eigen::VectorXd::Constant(1, ohms), 1e-4)).logEvidence;
  };
  const double second = std::exp(alone(0, 0.060)) * 0.98 * 0.02 / (2.0 * std::log(1e6));
  const double first = std::exp(alone(1, 2.0)) * 0.98 * 0.02 / (0.060 * std::log(1e6));
  CHECK(slip == Approx(std::log(second + first)).margin(1e-6));
}
