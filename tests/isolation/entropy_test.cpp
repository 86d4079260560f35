#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "isolation/entropy.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

using Row = std::array<double, 16>; ///< outcomes that are not there have no chance

/// What `nextProbe` sums up, of all hypotheses at once.
TestWorth<Row>::Sum worthOf(const std::vector<double>& probability, const std::vector<Row>& says,
                            std::vector<std::size_t> groupOf = {}) {
  for (std::size_t h = groupOf.size(); h < probability.size(); ++h)
    groupOf.push_back(h);
  std::vector<std::size_t> groupSize(*std::max_element(groupOf.begin(), groupOf.end()) + 1, 0);
  for (const std::size_t group : groupOf)
    ++groupSize[group];
  TestWorth<Row> worth(groupSize);
  worth.begin();
  worth.add(0, 0.3, says.front(), 1.0); // what was summed up before
  worth.begin();
  for (std::size_t h = 0; h < probability.size(); ++h)
    worth.add(groupOf[h], probability[h], says[h], rowBits(says[h]));
  return worth.sum();
}

} // namespace

TEST_CASE("entropy of equal chances is the logarithm of their number, of certainty nothing") {
  CHECK(entropyBits({1, 1, 1, 1, 1, 1, 1, 1}) == Approx(3.0));
  CHECK(entropyBits({0, 5, 0}) == Approx(0.0).margin(1e-12));
  CHECK(entropyBits({}) == 0.0);
  // Shannon 1948, the example of chances 1/2, 1/3, 1/6 (from memory): 1.4591 bits by the formula.
  CHECK(entropyBits({0.5, 1.0 / 3, 1.0 / 6}) == Approx(0.5 + std::log2(3.0) / 3 + std::log2(6.0) / 6));
}

TEST_CASE("expected information is entropy before less expected entropy after, and never negative") {
  const auto seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> uniform(0.0, 1.0);
  for (int round = 0; round < netmend::rounds(200); ++round) {
    const std::size_t hypotheses = 2 + random() % 6;
    const std::size_t outcomes = 2 + random() % 4;
    std::vector<double> probability(hypotheses);
    std::vector<Row> table(hypotheses);
    double sum = 0.0;
    for (auto& p : probability)
      sum += p = uniform(random);
    for (auto& p : probability)
      p /= sum;
    for (auto& row : table) {
      double all = 0.0;
      for (std::size_t k = 0; k < outcomes; ++k)
        all += row[k] = uniform(random);
      for (auto& p : row)
        p /= all;
    }
    double after = 0.0;
    double guess = 0.0;
    for (std::size_t k = 0; k < outcomes; ++k) {
      std::vector<double> posterior;
      double mass = 0.0;
      for (std::size_t h = 0; h < hypotheses; ++h) {
        posterior.push_back(probability[h] * table[h][k]);
        mass += posterior.back();
      }
      after += mass * entropyBits(posterior);
      guess += *std::max_element(posterior.begin(), posterior.end());
    }
    const auto worth = worthOf(probability, table);
    CHECK(worth.bits == Approx(entropyBits(probability) - after).margin(1e-12));
    CHECK(worth.bestGuess == Approx(guess));
    CHECK(worthOf(probability, table, std::vector<std::size_t>(hypotheses, 0)).bits ==
          Approx(0.0).margin(1e-9));
    // The first two in one group: as one hypothesis that says what both say together.
    std::vector<std::size_t> groups{0, 0};
    for (std::size_t h = 2; h < hypotheses; ++h)
      groups.push_back(h - 1);
    std::vector<double> merged(probability.begin() + 1, probability.end());
    merged[0] += probability[0];
    std::vector<Row> mergedTable(table.begin() + 1, table.end());
    for (std::size_t k = 0; k < outcomes; ++k)
      mergedTable[0][k] = (probability[0] * table[0][k] + probability[1] * table[1][k]) / merged[0];
    CHECK(worthOf(probability, table, groups).bits ==
          Approx(worthOf(merged, mergedTable).bits).margin(1e-12));
    CHECK(worthOf(probability, table, groups).bestGuess == Approx(worthOf(merged, mergedTable).bestGuess));
  }
}

namespace {

/// The circuit of de Kleer & Williams, "Diagnosing multiple faults", Artificial Intelligence 32 (1987): three
/// multipliers give X = A·C, Y = B·D, Z = C·E, two adders F = X + Y, G = Y + Z; inputs 3, 2, 2, 3, 3; seen
/// are F = 10 and G = 12. What a healthy component implies, in either direction.
struct Polybox {
  static constexpr int unknown = -1;
  int value[3] = {unknown, unknown, unknown}; ///< X, Y, Z
  bool consistent = true;

  void set(int point, int to) {
    if (value[point] != unknown && value[point] != to) consistent = false;
    value[point] = to;
  }
  /// Bits of `faulty`: M1, M2, M3, A1, A2.
  explicit Polybox(unsigned faulty) {
    for (int m = 0; m < 3; ++m)
      if (!(faulty >> m & 1u)) set(m, 6);
    for (int pass = 0; pass < 3; ++pass) {
      if (!(faulty >> 3 & 1u)) sum(0, 1, 10);
      if (!(faulty >> 4 & 1u)) sum(1, 2, 12);
    }
  }
  void sum(int a, int b, int total) {
    if (value[a] != unknown) set(b, total - value[a]);
    if (value[b] != unknown) set(a, total - value[b]);
  }
};

} // namespace

TEST_CASE("in the adder-multiplier example the first point asked for is X") {
  // The paper's answer is from memory; the candidates are worked out here.
  constexpr double failure = 0.01;
  constexpr std::size_t values = 16; ///< what a faulty component may give, all alike
  std::vector<double> probability;
  std::vector<Polybox> states;
  for (unsigned faulty = 0; faulty < 32; ++faulty) {
    const Polybox state(faulty);
    if (!state.consistent) continue;
    double p = 1.0;
    for (unsigned i = 0; i < 5; ++i)
      p *= faulty >> i & 1u ? failure : 1.0 - failure;
    probability.push_back(p);
    states.push_back(state);
  }
  double sum = 0.0;
  for (const double p : probability)
    sum += p;
  for (auto& p : probability)
    p /= sum;
  std::vector<double> information;
  for (int point = 0; point < 3; ++point) {
    std::vector<Row> table;
    for (const auto& state : states) {
      Row row{};
      if (state.value[point] == Polybox::unknown)
        row.fill(1.0 / values);
      else
        row[static_cast<std::size_t>(state.value[point])] = 1.0;
      table.push_back(row);
    }
    information.push_back(worthOf(probability, table).bits);
  }
  CHECK(information[0] > information[1]);
  CHECK(information[1] > information[2]);
  CHECK(information[0] > 0.9); // M1 or A1: almost one bit
}
