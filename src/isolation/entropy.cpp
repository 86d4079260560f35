#include "entropy.h"

#include <algorithm>
#include <cmath>

namespace netmend {

namespace {

std::size_t groupCount(const std::vector<std::size_t>& groupOf, std::size_t hypotheses) {
  if (groupOf.empty()) return hypotheses;
  return *std::max_element(groupOf.begin(), groupOf.end()) + 1;
}

/// joint[g][k] = P(g, k)
OutcomeTable jointTable(const std::vector<double>& probability, const OutcomeTable& outcome,
                        const std::vector<std::size_t>& groupOf) {
  std::size_t outcomes = 0;
  for (const auto& row : outcome)
    outcomes = std::max(outcomes, row.size());
  OutcomeTable joint(groupCount(groupOf, probability.size()), std::vector<double>(outcomes, 0.0));
  for (std::size_t h = 0; h < probability.size(); ++h) {
    auto& row = joint[groupOf.empty() ? h : groupOf[h]];
    for (std::size_t k = 0; k < outcome[h].size(); ++k)
      row[k] += probability[h] * outcome[h][k];
  }
  return joint;
}

} // namespace

double entropyBits(const std::vector<double>& weights) {
  double sum = 0.0;
  double weighted = 0.0;
  for (const double w : weights) {
    if (!(w > 0.0)) continue;
    sum += w;
    weighted += w * std::log2(w);
  }
  return sum > 0.0 ? std::max(0.0, std::log2(sum) - weighted / sum) : 0.0;
}

double expectedInformation(const std::vector<double>& probability, const OutcomeTable& outcome,
                           const std::vector<std::size_t>& groupOf) {
  if (probability.empty()) return 0.0;
  const auto joint = jointTable(probability, outcome, groupOf);
  std::vector<double> all(joint.front().size(), 0.0);
  double within = 0.0;
  for (const auto& row : joint) {
    double mass = 0.0;
    for (std::size_t k = 0; k < row.size(); ++k) {
      all[k] += row[k];
      mass += row[k];
    }
    within += mass * entropyBits(row);
  }
  double total = 0.0;
  for (const double p : all)
    total += p;
  return total > 0.0 ? std::max(0.0, entropyBits(all) - within / total) : 0.0;
}

double expectedBestGuess(const std::vector<double>& probability, const OutcomeTable& outcome,
                         const std::vector<std::size_t>& groupOf) {
  if (probability.empty()) return 0.0;
  const auto joint = jointTable(probability, outcome, groupOf);
  double sum = 0.0;
  for (std::size_t k = 0; k < joint.front().size(); ++k) {
    double best = 0.0;
    for (const auto& row : joint)
      best = std::max(best, row[k]);
    sum += best;
  }
  return sum;
}

} // namespace netmend
