#include <cmath>
#include <numeric>
#include <random>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include "probing/tolerance.h"
#include "support.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

/// How standard deviations from board to board are drawn: as they are fitted, or otherwise.
enum class Spreads { fitted, logNormal, gamma, twoPoint };
enum class BadDonor { none, shifted, open, shorted, variant };

constexpr int walkedPoints = 40;

struct GoodBoards {
  std::vector<double> middle;
  std::vector<double> spread;
};

double drawSpread(std::mt19937& random, Spreads spreads) {
  switch (spreads) {
  case Spreads::fitted:
    return 0.004 * std::sqrt(8.0 / std::chi_squared_distribution<double>(8.0)(random));
  case Spreads::logNormal:
    return std::lognormal_distribution<double>(std::log(0.004), 0.4)(random);
  case Spreads::gamma:
    return std::max(2e-4, std::gamma_distribution<double>(4.0, 0.001)(random));
  case Spreads::twoPoint:
    break;
  }
  return std::uniform_real_distribution<double>()(random) < 0.7 ? 0.0025 : 0.008;
}

Walk drawWalk(std::mt19937& random, const GoodBoards& truth) {
  std::normal_distribution<double> z;
  std::vector<Reading> readings;
  for (int i = 0; i < walkedPoints; ++i) {
    const auto p = static_cast<std::size_t>(i);
    readings.push_back(test::at(i, std::round((truth.middle[p] + truth.spread[p] * z(random)) * 1e5) * 1e-5));
  }
  return test::walkOf(std::move(readings), Specimen::good);
}

/// A fault at one to three points, or another variant at ten; which.
std::vector<std::size_t> spoil(std::mt19937& random, Walk& walk, BadDonor how) {
  if (how == BadDonor::none) return {};
  std::uniform_real_distribution<double> u;
  std::vector<std::size_t> odd(walkedPoints);
  std::iota(odd.begin(), odd.end(), 0U);
  std::shuffle(odd.begin(), odd.end(), random);
  odd.resize(how == BadDonor::variant ? 10 : 1 + random() % 3);
  for (const std::size_t i : odd) {
    auto& value = walk.readings[i].value;
    const double way = u(random) < 0.5 ? -1.0 : 1.0;
    if (how == BadDonor::open) value.reset();
    if (how == BadDonor::shorted) value = 0.001 * u(random);
    if (how == BadDonor::shifted || how == BadDonor::variant) *value += way * (0.02 + 0.13 * u(random));
  }
  return odd;
}

/// Shares over simulations.
struct Shares {
  double next = 0.0;         ///< of readings of the next good board within 95 % of what is expected
  double error = 0.0;        ///< of that, one standard error: points of one simulation are not independent
  double shown = 0.0;        ///< of intervals shown that hold 99 % of good boards
  double flagged = 0.0;      ///< of walks of good boards
  double setAside = 0.0;     ///< of bad donors
  double wrongly = 0.0;      ///< good donors set aside, a simulation
  double someDisagree = 0.0; ///< of simulations
  double oddDisagree = 0.0;  ///< of the bad donor's points, where it was not set aside
};

bool within95(const Expected& e, double value) {
  const auto heaviest = std::max_element(e.humps.begin(), e.humps.end(),
                                         [](const auto& a, const auto& b) { return a.weight < b.weight; });
  const boost::math::students_t t(heaviest->dof);
  return std::abs(value - heaviest->centre) <= heaviest->scale * quantile(complement(t, 0.025));
}

Shares simulate(std::mt19937& random, int times, int boards, Spreads spreads, BadDonor bad) {
  Shares out;
  double squares = 0.0;
  double oddPoints = 0.0;
  for (int t = 0; t < times; ++t) {
    GoodBoards truth;
    for (int i = 0; i < walkedPoints; ++i) {
      truth.middle.push_back(std::uniform_real_distribution<double>(0.3, 0.8)(random));
      truth.spread.push_back(drawSpread(random, spreads));
    }
    std::vector<Walk> good;
    for (int b = 0; b < boards; ++b)
      good.push_back(drawWalk(random, truth));
    const auto odd = spoil(random, good.front(), bad);
    const auto table = test::expectedFrom(good);
    bool found = false;
    for (const DonorSetAside& donor : table.setAside)
      (donor.walk == 0 && bad != BadDonor::none ? (found = true, out.setAside) : out.wrongly) += 1.0;
    const Walk walk = drawWalk(random, truth);
    double inside = 0.0;
    for (std::size_t i = 0; i < walkedPoints; ++i) {
      const Expected& e = *table.find(walk.readings[i]);
      inside += within95(e, *walk.readings[i].value) ? 1.0 / walkedPoints : 0.0;
      const boost::math::normal all(truth.middle[i], truth.spread[i]);
      double content = 0.0;
      for (const ValueInterval& shown : e.shown)
        content += cdf(all, shown.highest) - cdf(all, shown.lowest);
      out.shown += content >= 0.99 ? 1.0 / walkedPoints : 0.0;
    }
    out.next += inside;
    squares += inside * inside;
    out.flagged += judgeWalk(walk, table, nullptr, test::data()).flags() > 0 ? 1.0 : 0.0;
    out.someDisagree += table.disagreements().empty() ? 0.0 : 1.0;
    if (!found)
      for (const std::size_t i : odd) {
        oddPoints += 1.0;
        out.oddDisagree += table.find(walk.readings[i])->disagree ? 1.0 : 0.0;
      }
  }
  for (double* share : {&out.next, &out.shown, &out.flagged, &out.setAside, &out.wrongly, &out.someDisagree})
    *share /= times;
  out.oddDisagree /= std::max(oddPoints, 1.0);
  out.error = std::sqrt(std::max(0.0, squares / times - out.next * out.next) / times);
  return out;
}

const char* nameOf(Spreads spreads) {
  constexpr std::array names{"fitted", "log-normal", "gamma", "two-point"};
  return names[static_cast<std::size_t>(spreads)];
}
const char* nameOf(BadDonor bad) {
  constexpr std::array names{"none bad", "one shifted", "one open", "one shorted", "one of a variant"};
  return names[static_cast<std::size_t>(bad)];
}

Shares printed(std::mt19937& random, int times, int boards, Spreads spreads, BadDonor bad) {
  const Shares s = simulate(random, times, boards, spreads, bad);
  WARN(boards << " boards, " << nameOf(bad) << ", " << nameOf(spreads) << ", " << times << " times: next "
              << s.next << " ± " << s.error << ", shown " << s.shown << ", flagged " << s.flagged
              << ", set aside " << s.setAside << ", wrongly " << s.wrongly << ", disagree " << s.someDisagree
              << ", at its odd points " << s.oddDisagree);
  return s;
}

void checkGood(std::mt19937& random, int times) {
  for (const int boards : {4, 5, 8}) {
    const Shares s = printed(random, times, boards, Spreads::fitted, BadDonor::none);
    CHECK(s.next >= 0.945 - 3.0 * s.error);
    CHECK(s.next <= 0.955 + 3.0 * s.error);
    CHECK(s.wrongly <= 0.01 + 3.0 * std::sqrt(0.01 / times));
    CHECK(s.someDisagree <= 0.05 + 3.0 * std::sqrt(0.05 * 0.95 / times));
  }
  for (const Spreads spreads : {Spreads::logNormal, Spreads::gamma, Spreads::twoPoint})
    for (const int boards : {1, 2, 3, 4, 5}) {
      const Shares s = printed(random, times, boards, spreads, BadDonor::none);
      CHECK(s.next >= 0.90 - 3.0 * s.error);
    }
}

void checkBad(std::mt19937& random, int times) {
  for (const BadDonor bad : {BadDonor::shifted, BadDonor::open, BadDonor::shorted, BadDonor::variant}) {
    for (const int boards : {4, 5}) {
      const Shares s = printed(random, times, boards, Spreads::logNormal, bad);
      const double error = std::sqrt(0.25 / times);
      CHECK(s.next >= 0.90 - 3.0 * s.error);
      CHECK(s.setAside >= 0.8 - 3.0 * error);
      CHECK(s.wrongly <= 0.02 + 3.0 * std::sqrt(0.02 / times));
      CHECK(s.flagged <= 0.07 + 3.0 * std::sqrt(0.07 / times));
    }
    for (const int boards : {2, 3}) {
      const Shares s = printed(random, times, boards, Spreads::logNormal, bad);
      CHECK(s.setAside == 0.0);
      CHECK(s.wrongly == 0.0);
      CHECK(s.oddDisagree >= 0.6);
    }
  }
}

} // namespace

TEST_CASE("expected values hold for the next good board, whatever family spreads come from") {
  const auto seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  checkGood(random, rounds(60, 4));
}

TEST_CASE("a bad donor is set aside where three others vouch, and else the boards are said to disagree") {
  const auto seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  checkBad(random, rounds(60, 4));
}

TEST_CASE("expected values hold for the next good board, many of them", "[.full]") {
  const auto seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  for (const int boards : {4, 5, 8}) {
    const Shares s = printed(random, 20'000, boards, Spreads::fitted, BadDonor::none);
    CHECK(s.next >= 0.945);
    CHECK(s.next <= 0.955);
  }
  checkGood(random, 2000);
  checkBad(random, 2000);
}

TEST_CASE("a tolerance interval of n boards holds 99 % of all in 95 of 100 cases") {
  const auto seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::normal_distribution<double> z;
  const boost::math::normal all;
  constexpr int times = rounds(20'000, 1000);
  for (const int n : {4, 5, 8, 16}) {
    const double k = toleranceFactorExact(n, n - 1, {});
    int held = 0;
    for (int t = 0; t < times; ++t) {
      double sum = 0.0;
      double squares = 0.0;
      for (int i = 0; i < n; ++i) {
        const double x = z(random);
        sum += x;
        squares += x * x;
      }
      const double mean = sum / n;
      const double s = std::sqrt((squares - n * mean * mean) / (n - 1));
      held += cdf(all, mean + k * s) - cdf(all, mean - k * s) >= 0.99 ? 1 : 0;
    }
    const double share = static_cast<double>(held) / times;
    WARN(n << " boards: " << share);
    const double chance = 3.3 * std::sqrt(0.95 * 0.05 / times); // 0.5 % of 20,000
    CHECK(share == Approx(0.95).margin(chance));
  }
}
