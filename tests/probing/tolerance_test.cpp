#include "netmend/probing/tolerance.h"

#include <array>
#include <cmath>

#include <catch2/catch.hpp>

using namespace netmend;

TEST_CASE("the exact factor is near Howe's approximation as NIST/SEMATECH e-Handbook 7.2.6.3 gives it") {
  CHECK(toleranceFactorExact(43, 42, {0.90, 0.99}) == Approx(2.217).epsilon(0.003));
  // No printed source: computed by another numerical integration.
  CHECK(toleranceFactorExact(43, 42, {0.90, 0.99}) == Approx(2.2228).margin(0.00005));
}

TEST_CASE("exact factors agree with the table for 95 % confidence in Berthouex and Brown") {
  // P. M. Berthouex, L. C. Brown, Statistics for Environmental Engineers, 2nd ed., table 21.1: two decimals.
  struct Row {
    int n;
    std::array<double, 3> k; ///< content 90, 95, 99 %
  };
  for (const Row& row :
       {Row{4, {5.37, 6.34, 8.22}}, Row{5, {4.29, 5.08, 6.60}}, Row{6, {3.73, 4.42, 5.76}},
        Row{7, {3.39, 4.02, 5.24}}, Row{8, {3.16, 3.75, 4.89}}, Row{9, {2.99, 3.55, 4.63}},
        Row{10, {2.86, 3.39, 4.44}}, Row{12, {2.67, 3.17, 4.16}}, Row{15, {2.49, 2.96, 3.89}},
        Row{20, {2.32, 2.76, 3.62}}, Row{25, {2.22, 2.64, 3.46}}, Row{40, {2.06, 2.45, 3.22}}}) {
    const std::array<double, 3> contents{0.90, 0.95, 0.99};
    for (std::size_t i = 0; i < 3; ++i) {
      INFO("n = " << row.n << ", content " << contents[i]);
      CHECK(toleranceFactorExact(row.n, row.n - 1, {contents[i], 0.95}) == Approx(row.k[i]).margin(0.0065));
    }
  }
}

TEST_CASE("a borrowed spread narrows the interval, down to the normal quantile") {
  const ToleranceAim aim{0.99, 0.95};
  CHECK(toleranceFactorExact(2, 20, aim) < toleranceFactorExact(2, 5, aim));
  CHECK(toleranceFactorExact(2, 5, aim) < toleranceFactorExact(2, 1, aim));
  CHECK(toleranceFactorExact(1e6, 1e6, aim) == Approx(2.576).margin(0.01));
}

TEST_CASE("without a spread there is no factor") {
  CHECK(std::isnan(toleranceFactorExact(3, 0, {})));
  CHECK(std::isnan(toleranceFactorExact(4, 3, {1.0, 0.95})));
}
