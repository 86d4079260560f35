#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

/// Shannon's measure, in bits. What "the next probe" is chosen by, and nothing else: no words of boards here.
namespace netmend {

/// H = −Σ p·log2 p. Weights need not sum to 1; negative ones count as 0. 0 for an empty list.
[[nodiscard]] double entropyBits(const std::vector<double>& weights);
template <class Row> [[nodiscard]] double rowBits(const Row& row) {
  return entropyBits(std::vector<double>(row.begin(), row.end()));
}

/// What one test is expected to tell of groups of hypotheses: of which group is it? Summed up hypothesis by
/// hypothesis. `Row` is an array: the chances of the test's outcomes.
template <class Row> class TestWorth {
public:
  /// `groupSize[g]`: how many hypotheses are of that group. Those of one group need no telling apart.
  explicit TestWorth(const std::vector<std::size_t>& groupSize)
      : groupSize_(groupSize), joint_(groupSize.size()), mass_(groupSize.size(), 0.0) {}

  void begin() {
    all_ = best_ = Row{};
    within_ = 0.0;
    for (std::size_t g = 0; g < joint_.size(); ++g)
      if (groupSize_[g] > 1) {
        joint_[g] = Row{};
        mass_[g] = 0.0;
      }
  }
  /// A hypothesis of this probability, what it says of the test, and that row's entropy.
  void add(std::size_t group, double probability, const Row& says, double bits) {
    const auto p = static_cast<typename Row::value_type>(probability);
    if (groupSize_[group] > 1) {
      Row& joint = joint_[group];
      for (std::size_t k = 0; k < says.size(); ++k)
        joint[k] += p * says[k];
      mass_[group] += probability;
      return;
    }
    within_ += probability * bits;
    for (std::size_t k = 0; k < says.size(); ++k)
      take(k, p * says[k]);
  }
  struct Sum {
    /// Expected fall of the entropy over groups (Lindley, "On a measure of the information provided by an
    /// experiment", Ann. Math. Statist. 27, 1956): Σ_k P(k) · [H(G) − H(G | k)] = H(K) − Σ_g P(g)·H(K | g).
    double bits = 0.0;
    /// Probability of being right when the best group is picked after the test: Σ_k max_g P(g, k).
    double bestGuess = 0.0;
  };
  /// Of hypotheses whose probabilities sum to 1.
  [[nodiscard]] Sum sum() {
    for (std::size_t g = 0; g < joint_.size(); ++g) {
      if (groupSize_[g] < 2) continue;
      within_ += mass_[g] * rowBits(joint_[g]);
      for (std::size_t k = 0; k < all_.size(); ++k)
        take(k, joint_[g][k]);
    }
    Sum out;
    out.bits = std::max(0.0, rowBits(all_) - within_);
    for (const auto p : best_)
      out.bestGuess += static_cast<double>(p);
    return out;
  }

private:
  void take(std::size_t k, typename Row::value_type joint) {
    all_[k] += joint;
    best_[k] = best_[k] < joint ? joint : best_[k];
  }

  const std::vector<std::size_t>& groupSize_;
  std::vector<Row> joint_; ///< of groups of several hypotheses
  std::vector<double> mass_;
  Row all_{};
  Row best_{};
  double within_ = 0.0;
};

} // namespace netmend
