#include <cmath>
#include <ctime>
#include <random>

#include "support.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

/// How the simulator draws a point's standard deviation from board to board.
enum class Family { inverseChiSquared, logNormal };

struct Truth {
  std::vector<double> middle;
  std::vector<double> spread;
};

Truth drawTruth(std::mt19937& random, std::size_t points, Family family) {
  Truth truth;
  std::uniform_real_distribution<double> level(0.3, 0.8);
  std::chi_squared_distribution<double> chi2(8.0);
  std::lognormal_distribution<double> size(std::log(0.004), 0.4);
  for (std::size_t i = 0; i < points; ++i) {
    truth.middle.push_back(level(random));
    truth.spread.push_back(family == Family::logNormal ? size(random)
                                                       : 0.004 * std::sqrt(8.0 / chi2(random)));
  }
  return truth;
}

/// One good board, walked with a meter whose gain is off by `gain`, shown to 0.01 mV.
Walk drawWalk(std::mt19937& random, const Truth& truth, double gain) {
  std::vector<Reading> readings;
  std::normal_distribution<double> z;
  for (std::size_t i = 0; i < truth.middle.size(); ++i) {
    const double value = (truth.middle[i] + truth.spread[i] * z(random)) * (1.0 + gain);
    readings.push_back(test::at(static_cast<int>(i), std::round(value * 1e5) * 1e-5));
  }
  return test::walkOf(std::move(readings), Specimen::good);
}

/// Share of good walks that get at least one flag.
double flaggedWalks(unsigned seed, int tables, std::size_t boards, std::size_t points, Family family) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> gain(-2e-4, 2e-4); // the bench meter's 0.02 %
  int flagged = 0;
  for (int t = 0; t < tables; ++t) {
    const Truth truth = drawTruth(random, points, family);
    std::vector<Walk> good;
    for (std::size_t b = 0; b < boards; ++b)
      good.push_back(drawWalk(random, truth, 0.0));
    const auto table = test::expectedFrom(good);
    const auto judged = judgeWalk(drawWalk(random, truth, gain(random)), table, nullptr, test::data());
    flagged += judged.flags() > 0 ? 1 : 0;
  }
  return static_cast<double>(flagged) / tables;
}

void checkRate(int tables, std::size_t boards, Family family, double margin) {
  const auto seed = netmend::testSeed();
  const double rate = flaggedWalks(seed, tables, boards, 60, family);
  const double stated = test::data().rules.falseFlagsPerGoodWalk;
  const double error = std::sqrt(stated * (1.0 - stated) / tables);
  WARN("flagged good walks, " << boards << " boards, "
                              << (family == Family::logNormal ? "log-normal" : "inverse chi-squared")
                              << " spreads, seed " << seed << ": " << rate << " (stated " << stated
                              << ", sampling error " << error << ")");
  CHECK(rate <= stated + 3.5 * error + margin);
  // Two or three boards leave the default spread in charge: it errs towards silence, down to half the rate.
  CHECK(rate >= (boards < 4 ? 0.5 * stated : stated - margin) - 3.5 * error);
}

} // namespace

TEST_CASE("good walks are flagged at the stated rate when spreads come from the fitted family") {
  for (const std::size_t boards : {2u, 4u, 8u})
    checkRate(netmend::rounds(400), boards, Family::inverseChiSquared, 0.0);
}

TEST_CASE("good walks are flagged at about the stated rate when spreads come from another family") {
  for (const std::size_t boards : {2u, 4u, 8u})
    checkRate(netmend::rounds(400), boards, Family::logNormal, 0.015);
}

TEST_CASE("good walks are flagged at the stated rate, many more of them", "[.full]") {
  for (const std::size_t boards : {2u, 3u, 4u, 5u, 8u}) {
    checkRate(4000, boards, Family::inverseChiSquared, 0.01);
    checkRate(4000, boards, Family::logNormal, 0.02);
  }
}

TEST_CASE("faults are found: how many of each kind from how many boards") {
  const auto seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  constexpr int times = netmend::rounds(60, 8);
  for (const std::size_t boards : {1u, 4u, 8u}) {
    int open = 0;
    int shorted = 0;
    int tenSpreads = 0;
    int lost = 0;
    for (int r = 0; r < times; ++r) {
      const Truth truth = drawTruth(random, 60, Family::logNormal);
      std::vector<Walk> good;
      for (std::size_t b = 0; b < boards; ++b)
        good.push_back(drawWalk(random, truth, 0.0));
      const auto table = test::expectedFrom(good);
      Walk faulty = drawWalk(random, truth, 0.0);
      faulty.readings[10].value.reset();
      faulty.readings[20].value = 0.0007;
      *faulty.readings[30].value += 12.0 * 0.004;
      *faulty.readings[40].value += 0.018; // one of two equal junctions lost, n = 1
      const auto judged = judgeWalk(faulty, table, nullptr, test::data());
      open += judged.verdicts[10].kind == VerdictKind::open ? 1 : 0;
      shorted += judged.verdicts[20].kind == VerdictKind::shorted ? 1 : 0;
      tenSpreads += judged.verdicts[30].kind == VerdictKind::high ? 1 : 0;
      lost += judged.verdicts[40].kind == VerdictKind::high ? 1 : 0;
    }
    WARN(boards << " boards, of " << times << ": open " << open << ", short " << shorted << ", 48 mV high "
                << tenSpreads << ", 18 mV high " << lost);
    CHECK(open == times);
    CHECK(shorted == times);
    if (boards > 1) CHECK(tenSpreads >= times * 9 / 10);
    if (boards == 8) CHECK(lost >= times / 4);
  }
}

TEST_CASE("ten thousand readings are judged in a fraction of a second") {
  std::mt19937 random(1);
  const Truth truth = drawTruth(random, 10000, Family::logNormal);
  std::vector<Walk> good;
  for (int b = 0; b < 8; ++b)
    good.push_back(drawWalk(random, truth, 0.0));
  const auto table = test::expectedFrom(good);
  const Walk walk = drawWalk(random, truth, 0.0);
  // Processor time: other programs on the machine do not count.
  const auto start = std::clock();
  const auto judged = judgeWalk(walk, table, nullptr, test::data());
  const double ms = 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  WARN("10000 readings judged in " << ms << " ms");
  CHECK(judged.points == 10000);
  if (!netmend::sanitized) CHECK(ms < 1000.0); // loose; the benchmark measures
}
