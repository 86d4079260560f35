#include "probing/spread.h"

#include <cmath>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

#include "support/seed.h"

using namespace netmend;

TEST_CASE("the spread that points share is found again from few boards each") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  // 1/σ² ~ χ²(d0)/(d0·s0²), s² ~ σ²·χ²(d)/d: the model of Smyth 2004.
  constexpr double d0 = 6.0;
  constexpr double s0 = 0.004;
  constexpr double d = 3.0;
  std::chi_squared_distribution<double> prior(d0);
  std::chi_squared_distribution<double> sample(d);
  std::vector<Spread> own;
  for (int i = 0; i < 4000; ++i) {
    const double sigma2 = d0 * s0 * s0 / prior(random);
    own.push_back({sigma2 * sample(random) / d, d});
  }
  const auto fit = fitSpread(own, {1.0, 4.0}, 0.0);
  CHECK(std::sqrt(fit.variance) == Approx(s0).epsilon(0.05));
  CHECK(fit.dof == Approx(d0).epsilon(0.25));
}

TEST_CASE("with one spread for all points the estimate is the pooled one") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::chi_squared_distribution<double> sample(4.0);
  std::vector<Spread> own;
  for (int i = 0; i < 500; ++i)
    own.push_back({9.0 * sample(random) / 4.0, 4.0});
  const auto fit = fitSpread(own, {1.0, 4.0}, 0.0);
  CHECK(fit.variance == Approx(9.0).epsilon(0.15));
  CHECK(fit.dof > 10.0);
}

TEST_CASE("too few points leave the default in charge, and a point's own spread is weighed by its boards") {
  CHECK(fitSpread({}, {4.0, 5.0}, 0.0).variance == Approx(4.0));
  const std::vector<Spread> few{{16.0, 2.0}};
  const auto fit = fitSpread(few, {4.0, 6.0}, 0.0);
  CHECK(fit.variance > 4.0);
  CHECK(fit.variance < 10.0);
  CHECK(fit.dof < 6.0); // nor is the spread known any better than by default
  const auto both = moderated({4.0, 6.0}, {10.0, 2.0});
  CHECK(both.variance == Approx(5.5));
  CHECK(both.dof == Approx(8.0));
}

TEST_CASE("boards that read the same to the last digit do not make a spread of nothing") {
  const std::vector<Spread> equal(20, Spread{0.0, 3.0});
  CHECK(fitSpread(equal, {1.0, 4.0}, 1e-4).variance >= 0.3e-4);
  // Nor where the meter, and so its resolution, is unknown.
  const Spread unknownMeter = fitSpread(equal, {1.0, 4.0}, 0.0);
  CHECK(unknownMeter.variance > 0.0);
  CHECK(unknownMeter.variance < 1e-2);
}
