#include <algorithm>
#include <cmath>
#include <iostream>
#include <random>

#include <catch2/catch.hpp>

#include "isolation/drawn_line.h"
#include "isolation/entropy.h"

#include "support/seed.h"

// Against the optimal alphabetic tree: Knuth, "Optimum binary search trees", Acta Informatica 1 (1971), here
// with weights on the leaves only; its cost is below H + 2: Gilbert & Moore, "Variable-length binary
// encodings", Bell System Technical Journal 38 (1959). Both cited from memory.

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

namespace {

double optimalCost(const std::vector<double>& weight) {
  const std::size_t n = weight.size();
  std::vector<std::vector<double>> cost(n, std::vector<double>(n, 0.0));
  for (std::size_t span = 1; span < n; ++span)
    for (std::size_t i = 0; i + span < n; ++i) {
      const std::size_t j = i + span;
      double best = 1e300;
      for (std::size_t k = i; k < j; ++k)
        best = std::min(best, cost[i][k] + cost[k + 1][j]);
      double sum = 0.0;
      for (std::size_t k = i; k <= j; ++k)
        sum += weight[k];
      cost[i][j] = best + sum;
    }
  return cost[0][n - 1];
}

/// Perfect probes, equal effort, nothing but breaks in tracks.
FaultPriors onlyTracks() {
  auto priors = test::priorsFromData();
  priors.soundShare = priors.noneOfTheseShare = priors.slippedShare = 0.0;
  priors.solderJoint = priors.connectorJoint = priors.deadPin = priors.shortToGround = 0.0;
  priors.trackPerMm = 1.0;
  return priors;
}

DrawnLine series(const std::vector<double>& lengths) {
  DrawnLine drawn;
  NodeIndex last = drawn.barePin(drawn.part("J1", PartKind::connector), "1");
  double x = 0.0;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    x += lengths[i];
    const auto next = i + 1 < lengths.size() ? drawn.testPad("TP" + std::to_string(i), mm(x, 0))
                                             : drawn.barePin(drawn.part("U1", PartKind::chip), "1");
    drawn.track(last, next, lengths[i]);
    last = next;
  }
  return drawn;
}

/// Probes until one break is left; the segment counted from the connector.
int probesToFind(const DrawnLine& drawn, Isolation isolation, std::size_t broken) {
  int count = 0;
  for (; count < 200; ++count) {
    if (*std::max_element(isolation.probability.begin(), isolation.probability.end()) > 0.999) return count;
    const auto next = nextProbe(isolation, {}, {{"J1.1", "U1.1"}, 200});
    const ProbeProposal* probe = nullptr;
    for (const auto& proposal : next.ranked)
      if (!proposal.other && !probe) probe = &proposal;
    REQUIRE(probe != nullptr);
    const auto& label = isolation.places[probe->place].label;
    const auto segment = static_cast<std::size_t>(std::stoul(label.substr(2)));
    const bool chipSide = segment >= broken;
    isolation =
        update(std::move(isolation), drawn.diode(label, chipSide ? std::optional(0.5) : std::nullopt));
  }
  return count;
}

double meanProbes(const std::vector<double>& lengths, const std::vector<double>& weight) {
  const auto drawn = series(lengths);
  PinTermination chip;
  chip.pin = drawn.pins.back();
  chip.shares = {1.0, 0.0, 0.0};
  const auto isolation = drawn.isolation({{drawn.pins.back(), Volts(0.5), Volts(0.003)}}, onlyTracks(),
                                         test::effortsFromData(), {chip});
  double sum = 0.0;
  for (std::size_t i = 0; i < weight.size(); ++i)
    sum += weight[i] * probesToFind(drawn, isolation, i);
  return sum;
}

} // namespace

TEST_CASE("on series lines the mean number of probes is near the optimal alphabetic tree and below H + 2") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  double all = 0.0;
  double allOptimal = 0.0;
  for (const std::size_t n : {3u, 5u, 8u, 12u, 16u}) {
    for (int round = 0; round < 3; ++round) {
      std::vector<double> lengths;
      for (std::size_t i = 0; i < n; ++i)
        lengths.push_back(std::round(10.0 * std::exp(1.3 * std::normal_distribution<double>()(random))) +
                          1.0);
      std::vector<double> weight;
      double sum = 0.0;
      for (const double length : lengths)
        sum += length;
      for (const double length : lengths)
        weight.push_back(length / sum);
      const double mean = meanProbes(lengths, weight);
      const double optimal = optimalCost(weight);
      const double entropy = entropyBits(weight);
      std::cout << "series of " << n << ": " << mean << " probes, optimal " << optimal << ", entropy "
                << entropy << " bits (seed " << seed << ")\n";
      CHECK(mean < entropy + 2.0);
      CHECK(mean >= optimal - 1e-9); // a mean below it would be a mistake of this test
      CHECK(mean <= 1.25 * optimal);
      all += mean;
      allOptimal += optimal;
    }
  }
  std::cout << "mean over all: " << all / allOptimal << " of the optimum\n";
  CHECK(all <= 1.05 * allOptimal);
}
