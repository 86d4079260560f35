#include <cmath>
#include <functional>
#include <random>

#include <catch2/catch.hpp>

#include "drawn_line.h"
#include "isolation/drop_density.h"
#include "support/effort.h"
#include "support/seed.h"

// Junctions in parallel and the densities of their drops, against plain sums.

using namespace netmend;

namespace {

constexpr double usualEmission = 1.25, usualSeries = 8.0, milliampere = 1e-3;
const double usualSlope = usualEmission * 1.380649e-23 * 298.15 / 1.602176634e-19; // n·k·T/q, CODATA 2018

SoftMinimum softMinimum() {
  return {usualEmission, Ohms(usualSeries), Amperes(milliampere), Celsius(25.0)};
}

/// Two junctions of these drops share a current: the voltage at which their currents add up to it.
double parallel(double a, double b) {
  const auto taken = [](double drop, double volts) {
    double low = -60.0, high = 2.0; // ln of the share
    for (int step = 0; step < 45; ++step) {
      const double middle = 0.5 * (low + high);
      const double at = drop + usualSlope * middle + milliampere * usualSeries * (std::exp(middle) - 1.0);
      (at < volts ? low : high) = middle;
    }
    return std::exp(low);
  };
  double low = std::min(a, b) - 0.1, high = std::min(a, b);
  for (int step = 0; step < 40; ++step) {
    const double middle = 0.5 * (low + high);
    (taken(a, middle) + taken(b, middle) < 1.0 ? low : high) = middle;
  }
  return low;
}

double sumOf(const DropDensity& density) {
  double sum = static_cast<double>(density.high) + static_cast<double>(density.none);
  for (const float mass : density.mass)
    sum += static_cast<double>(mass);
  return sum;
}

/// Mass below a voltage, even within bins.
double below(const DropDensity& density, double volts) {
  double sum = 0.0;
  for (std::size_t i = 0; i < DropDensity::bins; ++i) {
    const double from = DropDensity::first + DropDensity::step * static_cast<double>(i);
    sum += static_cast<double>(density.mass[i]) * std::clamp((volts - from) / DropDensity::step, 0.0, 1.0);
  }
  return sum;
}

double meanOf(const DropDensity& density) {
  double sum = 0.0, mass = 0.0;
  for (std::size_t i = 0; i < DropDensity::bins; ++i) {
    sum += static_cast<double>(density.mass[i]) * DropDensity::middle(i);
    mass += static_cast<double>(density.mass[i]);
  }
  return sum / mass;
}

DropDensity randomDensity(std::mt19937_64& random) {
  std::uniform_real_distribution<double> uniform(0.0, 1.0);
  DropDensity density;
  double sum = 0.0;
  std::vector<double> mass(DropDensity::bins + 2, 0.0);
  const std::size_t from = random() % 150, wide = 1 + random() % 50;
  for (std::size_t i = from; i < from + wide; ++i)
    sum += mass[i] = uniform(random);
  sum += mass[DropDensity::bins] = random() % 2 == 0 ? uniform(random) : 0.0;
  sum += mass[DropDensity::bins + 1] = random() % 2 == 0 ? uniform(random) : 0.0;
  for (std::size_t i = 0; i < DropDensity::bins; ++i)
    density.mass[i] = static_cast<float>(mass[i] / sum);
  density.high = static_cast<float>(mass[DropDensity::bins] / sum);
  density.none = static_cast<float>(mass[DropDensity::bins + 1] / sum);
  return density;
}

/// Everything in one bin.
DropDensity at(std::size_t bin) {
  DropDensity density;
  density.mass[bin] = 1.0F;
  density.none = 0.0F;
  return density;
}

} // namespace

TEST_CASE(
    "two equal junctions read n·Vt·ln 2 and half the series drop below one, two far apart the lower one") {
  const auto soft = softMinimum();
  CHECK(soft.below(0.0) ==
        Approx(usualSlope * std::log(2.0) + 0.5 * milliampere * usualSeries).epsilon(1e-6));
  // Ideal diodes at 300 K: 17.92 mV, as ngspice 39 gives it (docs/methods/probing.md).
  CHECK(SoftMinimum(1.0, Ohms(0), Amperes(1e-3), Celsius(26.85)).below(0.0) == Approx(0.01792).margin(5e-6));
  CHECK(soft.below(0.2385) < 1e-4);
  CHECK(soft.below(0.24) == 0.0);
  CHECK(soft.below(5.0) == 0.0);
  for (const double apart : {0.0, 0.0005, 0.003, 0.0107, 0.05, 0.1, 0.2}) {
    INFO(apart << " V apart");
    CHECK(soft.below(apart) == Approx(0.5 - parallel(0.5, 0.5 + apart)).margin(2e-6));
  }
  CHECK(soft.belowOne(1) == 0.0);
  CHECK(soft.belowOne(2) == Approx(soft.below(0.0)).epsilon(1e-6));
  CHECK(soft.belowOne(5) == Approx(usualSlope * std::log(5.0) + 0.8 * milliampere * usualSeries));
}

TEST_CASE("densities of parallel junctions are those of a sum over all pairs, and hold all of the mass") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  const auto soft = softMinimum();
  for (int round = 0; round < netmend::rounds(10, 2); ++round) {
    const auto a = randomDensity(random), b = randomDensity(random);
    const auto both = composed(a, b, soft);
    CHECK(sumOf(both) == Approx(1.0).epsilon(1e-5));
    CHECK(both.none == Approx(a.none * b.none).margin(1e-7));
    CHECK(both.high == Approx(a.high * b.high + a.high * b.none + a.none * b.high).margin(1e-7));
    const auto turned = composed(b, a, soft);
    std::vector<std::pair<double, double>> points; // drop, mass
    for (std::size_t i = 0; i < DropDensity::bins; ++i) {
      CHECK(turned.mass[i] == Approx(both.mass[i]).margin(1e-7));
      points.emplace_back(DropDensity::middle(i), a.mass[i] * (b.high + b.none));
      points.emplace_back(DropDensity::middle(i), b.mass[i] * (a.high + a.none));
      for (std::size_t j = 0; j < DropDensity::bins && a.mass[i] > 0.0F; ++j)
        if (b.mass[j] > 0.0F)
          points.emplace_back(parallel(DropDensity::middle(i), DropDensity::middle(j)),
                              a.mass[i] * b.mass[j]);
    }
    double mean = 0.0, mass = 0.0;
    for (const auto& [volts, share] : points) {
      mean += volts * share;
      mass += share;
    }
    if (mass > 1e-3) CHECK(meanOf(both) == Approx(mean / mass).margin(5e-5));
    // What lies between two middles is parted between both.
    for (std::size_t i = 5; i < DropDensity::bins; i += 7) {
      const double edge = DropDensity::middle(i);
      double sum = 0.0;
      for (const auto& [volts, share] : points)
        sum += share * std::clamp((edge - volts) / DropDensity::step + 0.5, 0.0, 1.0);
      INFO("below " << edge << " V, round " << round);
      CHECK(below(both, edge) == Approx(sum).margin(0.01));
    }
  }
}

TEST_CASE("junctions beside nothing, and far above or below each other, are as if alone") {
  const auto soft = softMinimum();
  const DropDensity nothing;
  CHECK(composed(nothing, nothing, soft).none == 1.0F);
  CHECK(composed(at(70), nothing, soft).mass == at(70).mass);
  CHECK(composed(nothing, at(70), soft).mass == at(70).mass);
  CHECK(composed(at(70), at(110), soft).mass == at(70).mass); // 240 mV apart
  CHECK(composed(at(110), at(70), soft).mass == at(70).mass);
  // 26.26 mV are four bins and three eighths.
  const auto equal = composed(at(70), at(70), soft);
  const double down = soft.below(0.0) / DropDensity::step - 4.0;
  CHECK(equal.mass[66] == Approx(1.0 - down).epsilon(1e-5));
  CHECK(equal.mass[65] == Approx(down).epsilon(1e-5));
  // The lowest bin holds what would lie below it.
  CHECK(composed(at(1), at(1), soft).mass[0] == Approx(1.0));
}

TEST_CASE("a density lowered keeps its mass and moves its mean by as much") {
  std::mt19937_64 random(netmend::testSeed());
  for (int round = 0; round < 20; ++round) {
    const auto density = randomDensity(random);
    CHECK(lowered(density, 0.0).mass == density.mass);
    const auto moved = lowered(lowered(density, 0.0), 0.0137);
    CHECK(sumOf(moved) == Approx(1.0).epsilon(1e-5));
    CHECK(moved.high == density.high);
    CHECK(moved.none == density.none);
    if (density.mass[0] + density.mass[1] + density.mass[2] == 0.0F)
      CHECK(meanOf(moved) == Approx(meanOf(density) - 0.0137).margin(1e-6));
  }
  CHECK(lowered(at(1), 0.03).mass[0] == Approx(1.0));
}

TEST_CASE("two chips of technologies of their own read as a throw of a hundred thousand dice says") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  auto priors = test::priorsFromData();
  const auto one = clampDensity(priors, {1.0, false, 0.0, 0.0}, Amperes(milliampere));
  const auto both = composed(one, one, softMinimum());
  std::vector<double> share;
  for (const auto& drop : priors.drops)
    share.push_back(drop.share);
  std::discrete_distribution<std::size_t> range(share.begin(), share.end());
  std::uniform_real_distribution<double> uniform(0.0, 1.0);
  std::normal_distribution<double> soft(0.0, 0.02); // ends are known to a few hundredths of a volt
  const auto drop = [&] {
    const auto& from = priors.drops[range(random)];
    return from.from.value + (from.to - from.from).value * uniform(random) + soft(random);
  };
  const int throws = netmend::rounds(100'000, 5000);
  std::vector<double> read;
  for (int i = 0; i < throws; ++i) {
    const double a = drop(), b = drop();
    read.push_back(std::abs(a - b) > 0.3 ? std::min(a, b) : parallel(a, b));
  }
  for (const double volts : {0.2, 0.3, 0.36, 0.4, 0.45, 0.5, 0.6, 0.7, 0.8, 1.0}) {
    double sum = 0.0;
    for (const double r : read)
      sum += r < volts ? 1.0 : 0.0;
    INFO("below " << volts << " V");
    CHECK(below(both, volts) == Approx(sum / throws).margin(2.5 / std::sqrt(throws)));
  }
}

TEST_CASE("a clamp's drop is even between the ends of its ranges, at the meter's own current") {
  auto priors = test::priorsFromData();
  priors.drops = {{Volts(0.35), Volts(0.8), 0.9}, {Volts(0.2), Volts(0.3), 0.1}};
  const auto own = clampDensity(priors, {1.0, false, 0.0, 0.0}, priors.dropCurrent);
  CHECK(sumOf(own) == Approx(1.0).epsilon(1e-5));
  CHECK(own.none == 0.0F);
  CHECK(below(own, 0.7) - below(own, 0.45) == Approx(0.9 * 0.25 / 0.45).epsilon(1e-4));
  // In the middle of the narrower one, 2.5 of its soft ends' deviations from both: 98.76 % of a normal
  // distribution.
  CHECK(below(own, 0.254) - below(own, 0.246) == Approx(0.1 * 0.008 / 0.1 * 0.9876).epsilon(2e-3));
  CHECK(below(own, 0.8) == Approx(1.0 - 0.9 * 0.02 * 0.39894 / 0.45).epsilon(1e-4)); // σ·φ(0) over the width
  // A tenth of the current: n·Vt·ln 10 lower.
  const auto weak = clampDensity(priors, {1.0, false, 0.0, 0.0}, priors.dropCurrent * 0.1);
  CHECK(meanOf(weak) == Approx(meanOf(own) - usualSlope * std::log(10.0)).margin(1e-4));
  // Alike about a centre, but for those of a technology of their own.
  priors.ownInAlike = 0.25;
  const auto alike = clampDensity(priors, {1.0, true, 0.5, 0.012}, priors.dropCurrent);
  CHECK(sumOf(alike) == Approx(1.0).epsilon(1e-5));
  CHECK(below(alike, 0.512) - below(alike, 0.488) ==
        Approx(0.75 * 0.6827 + 0.25 * 0.9 * 0.024 / 0.45).margin(0.005)); // a bell within its σ
  CHECK(below(alike, 0.7) - below(alike, 0.6) == Approx(0.25 * 0.9 * 0.1 / 0.45).epsilon(1e-3));
  // Above the last bin.
  priors.drops = {{Volts(2.0), Volts(3.0), 1.0}};
  CHECK(clampDensity(priors, {1.0, false, 0.0, 0.0}, priors.dropCurrent).high == Approx(1.0));
}

TEST_CASE(
    "an input that looks like a resistor has any value per decade, and none that the meter cannot show") {
  auto priors = test::priorsFromData();
  priors.leastInput = Ohms(100);
  priors.mostPullUp = Ohms(100e3);
  const auto density = resistiveDensity(priors, Amperes(1e-3), Volts(2.0));
  CHECK(sumOf(density) == Approx(1.0).epsilon(1e-5));
  CHECK(below(density, 0.098) == Approx(0.0).margin(1e-7));
  CHECK(below(density, 1.004) - below(density, 0.5) == Approx(std::log10(1.004 / 0.5) / 3.0).epsilon(1e-4));
  CHECK(density.high == Approx(std::log10(2.0 / DropDensity::last) / 3.0).epsilon(1e-4));
  CHECK(density.none == Approx(std::log10(100.0 / 2.0) / 3.0).epsilon(1e-4));
  const auto less = resistiveDensity(priors, Amperes(1e-3), Volts(1.0)); // OL is nothing there
  CHECK(less.high == 0.0F);
  CHECK(less.none == Approx(std::log10(100.0 / DropDensity::last) / 3.0).epsilon(1e-4));
}

TEST_CASE("what may be behind a pin is mixed by its shares, and nothing has the rest") {
  auto high = at(3);
  high.mass[3] = 0.0F;
  high.high = 1.0F;
  const auto both = mixed(0.6, at(70), 0.3, high);
  CHECK(both.mass[70] == Approx(0.6));
  CHECK(both.high == Approx(0.3));
  CHECK(both.none == Approx(0.1));
  CHECK(sumOf(both) == Approx(1.0));
}

TEST_CASE("technologies: boards of each spread about centres over the usual range, and each chip its own") {
  auto priors = test::priorsFromData();
  priors.drops = {{Volts(0.4), Volts(0.8), 1.0}};
  priors.alike = {{Volts(0.1), 0.2}, {Volts(0.3), 0.3}};
  // One and a half of its spreads apart: three centres in 0.4 V at 0.1 V, one at 0.3 V.
  const auto found = technologies(priors);
  REQUIRE(found.size() == 3 + 1 + 1);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(found[i].alike);
    CHECK(found[i].weight == Approx(0.2 / 3));
    CHECK(found[i].spread == 0.1);
    CHECK(found[i].centre == Approx(0.4 + 0.4 * (static_cast<double>(i) + 0.5) / 3));
  }
  CHECK(found[3].centre == Approx(0.6));
  CHECK(found[3].weight == Approx(0.3));
  CHECK(found[3].spread == 0.3);
  CHECK_FALSE(found[4].alike);
  CHECK(found[4].weight == Approx(0.5));
  priors.alike = {{Volts(0.5), 1.0}}; // wider than the range
  CHECK(technologies(priors).size() == 2);
  CHECK(technologies(priors).back().weight == Approx(0.0).margin(1e-12));
  priors.alike.clear();
  REQUIRE(technologies(priors).size() == 1);
  CHECK(technologies(priors).front().weight == 1.0);
}
