#include <cmath>
#include <ctime>
#include <iostream>

#include <catch2/catch.hpp>

#include "mixed_technology.h"
#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

namespace {

void print(const test::MixedOutcome& outcome, std::uint64_t seed) {
  std::cout << "lines of mixed technology, seed " << seed << ": of " << outcome.jobs << " jobs right "
            << outcome.right << ", wrong place " << outcome.wrong << ", called sound " << outcome.sound
            << ", undecided " << outcome.undecided << "; " << outcome.probes << " probes\n";
}

} // namespace

TEST_CASE("on lines of mixed technology a wrong place is hardly ever named for sure") {
  const std::uint64_t seed = netmend::testSeed();
  const int jobs = rounds(50, 3);
  const auto outcome = test::mixedJobs(seed, jobs);
  print(outcome, seed);
  CHECK(outcome.wrong <= 4); // one in a hundred would give five about once in three thousand runs
}

TEST_CASE("on lines of mixed technology a wrong place is hardly ever named for sure, many more of them",
          "[.full]") {
  const std::uint64_t seed = netmend::testSeed();
  const auto outcome = test::mixedJobs(seed, 1000);
  print(outcome, seed);
  CHECK(outcome.wrong <= 30);
}

namespace {

/// Two chips whose balls nobody reaches, with one place to read between them.
DrawnLine twoBalls() {
  DrawnLine drawn;
  const auto tp = drawn.testPad("TP1", mm(20, 0));
  const auto a = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "A3", mm(0, 0), Access::underPart);
  const auto b = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "B9", mm(40, 0), Access::underPart);
  drawn.track(tp, a, 20);
  drawn.track(tp, b, 20);
  return drawn;
}

} // namespace

TEST_CASE("of two balls that nobody can reach and of which one is lost, each is as likely") {
  const auto drawn = twoBalls();
  for (const double lifted : {0.020, 0.060, 0.120}) {
    const auto isolation = update(drawn.isolation({{drawn.pins[0], Volts(0.45), Volts(0.005)}}),
                                  drawn.diode("TP1", 0.45 + lifted));
    REQUIRE(isolation.classes.size() == 5);
    INFO("lifted by " << lifted << " V");
    CHECK(isolation.probability[3] == Approx(isolation.probability[4]).epsilon(1e-3));
    std::cout << lifted << ":";
    for (std::size_t c = 0; c < 5; ++c)
      std::cout << " " << isolation.probability[c];
    std::cout << "\n";
  }
}

TEST_CASE("a line of 82 pads is answered within a second") {
  if (sanitized) return; // smaller lines go the same ways
  DrawnLine drawn;
  std::vector<NodeIndex> trunk{drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0))};
  for (int i = 1; i < 82; ++i) {
    const double x = 3.0 * i;
    const auto pad =
        i % 2 == 0 ? drawn.pinOnLine(drawn.part("U" + std::to_string(i), PartKind::chip), "1", mm(x, 0))
                   : drawn.pinOnLine(drawn.part("C" + std::to_string(i), PartKind::capacitor), "1", mm(x, 0));
    drawn.track(trunk[static_cast<std::size_t>(i) / 3], pad, 3.0);
    trunk.push_back(pad);
  }
  // Processor time: tests may share the machine. Printed and not judged.
  for (const double lifted : {0.0, 0.03, 0.08}) {
    const auto start = std::clock();
    auto isolation = drawn.isolation({{drawn.pins[0], Volts(0.40), Volts(0.005)}});
    for (const char* label : {"J1.1", "U40.1", "C9.1", "U80.1", "C41.1"}) {
      const bool far = label == std::string("U80.1");
      isolation = update(std::move(isolation), drawn.diode(label, 0.405 + (far ? 2.0 : 1.0) * lifted));
    }
    const auto next = nextProbe(isolation);
    std::cout << "82 pads, " << isolation.classes.size() << " classes, five readings and the next probe: "
              << 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC << " ms; sampling error "
              << isolation.shareError << "\n";
    CHECK_FALSE(next.ranked.empty());
  }
}

TEST_CASE("a series resistor between chips leaves the answer as certain, and prompt") {
  if (sanitized) return; // smaller lines go the same ways
  DrawnLine drawn;
  const auto a = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(0, 0));
  const auto r = drawn.part("R1", PartKind::resistor, "47");
  const auto r1 = drawn.pinOnLine(r, "1", mm(5, 0));
  const auto r2 = drawn.pinOnLine(r, "2", mm(6, 0));
  const auto b = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "1", mm(20, 0), Access::underPart);
  const auto c = drawn.pinOnLine(drawn.part("U3", PartKind::chip), "1", mm(30, 0), Access::underPart);
  drawn.track(a, r1, 5);
  drawn.through(r1, r2, r, Ohms(47));
  drawn.track(r2, b, 14);
  drawn.track(b, c, 10);
  const auto start = std::clock();
  const auto isolation = update(drawn.isolation({{drawn.pins[0], Volts(0.42), Volts(0.005)}}),
                                {drawn.diode("U1.1", 0.55), drawn.diode("R1.2", 0.60)});
  std::cout << "series resistor, " << isolation.classes.size()
            << " classes, two readings: " << 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC
            << " ms\n";
  CHECK(isolation.shareError < 0.01);
}
