#include "meter/sample_clock.h"

#include <catch2/catch.hpp>

#include <cstdio>
#include <random>

#include "netmend/meter/settle_detector.h"
#include "support/seed.h"

using namespace netmend;
using Moment = SampleClock::Moment;

namespace {

/// A clock that has heard a value every 40 ms up to 200 ms.
SampleClock steadyClock() {
  SampleClock clock;
  for (const double ms : {0.0, 40.0, 80.0, 120.0, 160.0, 200.0})
    CHECK(clock.arrived(Moment(ms), 1) == std::vector{Moment(ms)});
  return clock;
}

} // namespace

TEST_CASE("values that arrive together get the meter's own spacing back") {
  SampleClock clock = steadyClock();
  CHECK(clock.cadence() == Moment(40.0));
  CHECK(clock.arrived(Moment(403.0), 5) ==
        std::vector{Moment(243.0), Moment(283.0), Moment(323.0), Moment(363.0), Moment(403.0)});
  CHECK(clock.arrived(Moment(443.0), 0).empty());
}

TEST_CASE("a late arrival and a punctual one after it take no more than a tenth of the time between values") {
  SampleClock clock = steadyClock();
  CHECK(clock.arrived(Moment(275.0), 1) == std::vector{Moment(275.0)}); // sent at 240
  CHECK(clock.arrived(Moment(281.0), 1) == std::vector{Moment(311.0)});
  CHECK(clock.arrived(Moment(360.0), 2) == std::vector{Moment(347.0), Moment(383.0)});
}

TEST_CASE("a meter that pauses is not taken for a late one") {
  SampleClock clock = steadyClock();
  CHECK(clock.arrived(Moment(2000.0), 1) == std::vector{Moment(2000.0)});
  CHECK(clock.cadence() == Moment(40.0));
}

TEST_CASE("before a cadence is known values that arrive together have the same time") {
  SampleClock clock;
  CHECK(clock.arrived(Moment(100.0), 3) == std::vector{Moment(100.0), Moment(100.0), Moment(100.0)});
  CHECK(clock.cadence() == Moment(0.0));
}

TEST_CASE("a walk of touches gives each value once, however late the values are found") {
  const unsigned seed = testSeed();
  std::printf("late walk: seed %u\n", seed);
  std::mt19937 dice(seed);
  const auto pick = [&](double lowest, double highest) {
    return std::uniform_real_distribution<double>(lowest, highest)(dice);
  };
  // What the meter sends, every 40 ms: leads in the air, touches of 0.9 s, lifts of 0.3 s; bounces of one
  // value.
  std::vector<std::optional<double>> sent(50);
  std::vector<double> truth;
  for (int pin = 0; pin < 200; ++pin) {
    truth.push_back(pin % 3 == 1 ? truth.back() : pick(0.15, 0.8)); // neighbours that read the same
    for (int i = 0; i < 23; ++i)
      sent.emplace_back(truth.back() + pick(-5e-4, 5e-4));
    if (pin % 4 == 0) {
      sent.emplace_back();
      for (int i = 0; i < 3; ++i)
        sent.emplace_back(truth.back());
    }
    sent.insert(sent.end(), 8, std::nullopt);
  }
  SampleClock clock;
  SettleDetector detector(settleRulesFor(ReadingMode::diode));
  std::vector<double> taken;
  std::size_t found = 0;
  double now = 0.0;
  while (found < sent.size()) {
    // Punctual for a while, then late by up to 1.2 s.
    now += found < 50 || dice() % 3 != 0 ? 40.0 : pick(40.0, 1200.0);
    const auto there = std::min(sent.size(), static_cast<std::size_t>(now / 40.0));
    if (there <= found) continue;
    for (const Moment time : clock.arrived(Moment(now), there - found)) {
      const MeterSample sample{std::chrono::round<std::chrono::milliseconds>(time),
                               {sent[found++], 1e-3},
                               std::chrono::floor<std::chrono::milliseconds>(clock.cadence()),
                               {}};
      if (const auto one = detector.add(sample)) taken.push_back(*one->reading.value);
    }
  }
  CHECK_FALSE(detector.takeMissed());
  REQUIRE(taken.size() == truth.size());
  for (std::size_t i = 0; i < truth.size(); ++i)
    CHECK(taken[i] == Approx(truth[i]).margin(1.5e-3));
}
