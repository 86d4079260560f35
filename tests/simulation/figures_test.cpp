#include <cmath>

#include <catch2/catch.hpp>

#include "simulation/figures.h"

using namespace netmend::simulation;

namespace {

std::vector<ClaimMade> claims(std::size_t right, std::size_t wrong, double said) {
  std::vector<ClaimMade> out(right, {said, true});
  out.insert(out.end(), wrong, {said, false});
  return out;
}

void append(std::vector<ClaimMade>& to, const std::vector<ClaimMade>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

} // namespace

TEST_CASE("bins with fewer than 300 claims join the next, the last the one before") {
  auto all = claims(100, 199, 0.15);
  append(all, claims(1, 0, 0.25));
  append(all, claims(250, 50, 0.97));
  append(all, claims(5, 5, 1.0));
  const auto bins = reliability(all);
  REQUIRE(bins.size() == 2);
  CHECK(bins[0].claims == 300);
  CHECK(bins[0].least == 0.0);
  CHECK(bins[0].most == Approx(0.3));
  CHECK(bins[0].said == Approx((299 * 0.15 + 0.25) / 300));
  CHECK(bins[0].right == Approx(101.0 / 300));
  CHECK(bins[1].claims == 310);
  CHECK(bins[1].right == Approx(255.0 / 310));
  const auto few = reliability(claims(3, 4, 0.5));
  REQUIRE(few.size() == 1);
  CHECK(few[0].claims == 7);
  CHECK(reliability({}).front().claims == 0);
}

TEST_CASE("over and under confidence are those of the worst bins") {
  auto all = claims(150, 150, 0.75);  // says 0.25 too much
  append(all, claims(270, 30, 0.45)); // and 0.45 too little
  const auto worst = worstOf(reliability(all));
  CHECK(worst.over.value == Approx(0.25));
  CHECK(worst.over.error == Approx(std::sqrt(0.75 * 0.25 / 300)));
  CHECK(worst.under.value == Approx(0.45));
}

TEST_CASE("what is wrong above a level is counted above it only") {
  auto all = claims(9, 1, 0.9);
  append(all, claims(0, 50, 0.8));
  CHECK(wrongAbove(all, 0.8, false).value == Approx(0.1));
  CHECK(wrongAbove(all, 0.8, false).of == 10);
  CHECK(wrongAbove(all, 0.8, true).value == Approx(0.0).margin(1e-12));
  CHECK(wrongAbove(claims(8, 2, 0.9), 0.8, true).value == Approx(0.1));
}

TEST_CASE("log loss is in bits, and limited where a certain claim was wrong") {
  CHECK(logLoss(claims(1, 1, 0.5)).value == Approx(1.0));
  CHECK(logLoss(claims(1, 0, 0.25)).value == Approx(2.0));
  CHECK(logLoss(claims(0, 1, 0.75)).value == Approx(2.0));
  CHECK(logLoss(claims(0, 1, 1.0)).value == Approx(std::log2(1e4)));
}

TEST_CASE("means and ratios come with their standard errors") {
  const auto mean = meanOf({1.0, 2.0, 3.0, 4.0});
  CHECK(mean.value == Approx(2.5));
  CHECK(mean.error == Approx(std::sqrt(5.0 / 3.0 / 4.0)));
  const auto ratio = ratioOf({2.0, 4.0, 6.0}, {1.0, 2.0, 3.0});
  CHECK(ratio.value == Approx(2.0));
  CHECK(ratio.error == Approx(0.0).margin(1e-12));
  CHECK(ratioOf({1.0, 3.0}, {2.0, 2.0}).error == Approx(0.5));
}
