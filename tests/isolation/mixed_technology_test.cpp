#include <iostream>

#include <catch2/catch.hpp>

#include "mixed_technology.h"
#include "support/effort.h"

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
  const std::uint64_t seed = std::random_device{}();
  const int jobs = rounds(100, 5);
  const auto outcome = test::mixedJobs(seed, jobs);
  print(outcome, seed);
  CHECK(outcome.wrong <= 3);
}

TEST_CASE("on lines of mixed technology a wrong place is hardly ever named for sure, many more of them",
          "[.full]") {
  const std::uint64_t seed = std::random_device{}();
  const auto outcome = test::mixedJobs(seed, 1000);
  print(outcome, seed);
  CHECK(outcome.wrong <= 30);
}
