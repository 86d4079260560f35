#include "outcome_rows.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "entropy.h"
#include "statistics.h"
#include "weighing.h"

namespace netmend {

namespace {

constexpr std::size_t wantedBins = 56; ///< edges are at most as many; with OL that stays below mostBins
static_assert(wantedBins + 2 <= OutcomeRows::mostBins);
constexpr double tail = 6.0; ///< standard deviations beyond which nothing is left

/// The error function costs more than all else here; a table of 1/64 steps with linear interpolation is
/// within 2e-5.
class NormalTable {
public:
  NormalTable() {
    for (std::size_t i = 0; i < values_.size(); ++i)
      values_[i] = normalBelow(-tail + static_cast<double>(i) / 64.0);
  }
  [[nodiscard]] double below(double z) const {
    if (z <= -tail) return 0.0;
    if (z >= tail) return 1.0;
    const double at = (z + tail) * 64.0;
    const auto i = static_cast<std::size_t>(at);
    const double share = at - static_cast<double>(i);
    return values_[i] + share * (values_[i + 1] - values_[i]);
  }

private:
  std::array<double, static_cast<std::size_t>(2 * tail) * 64 + 2> values_{};
};

} // namespace

OutcomeRows::OutcomeRows(const Isolation& isolation, const std::vector<std::size_t>& classes)
    : isolation_(isolation), model_(*isolation.model), classes_(classes), known_(classes.size()) {
  chooseEdges();
}

OutcomeRows::Outcome& OutcomeRows::outcome(std::size_t position, std::size_t cell) {
  const Foreseen& foreseen = foreseenAt(isolation_, classes_[position], cell);
  const auto [at, fresh] = known_[position].try_emplace(&foreseen);
  if (fresh) at->second = of(foreseen);
  return at->second;
}

/// Weights of all that is foreseen, by millivolt, cut into equal parts.
void OutcomeRows::chooseEdges() {
  const double limit = model_.displayLimit().value;
  std::vector<double> weight(static_cast<std::size_t>(std::ceil(limit * 1e3)) + 1, 0.0);
  for (const std::size_t c : classes_)
    for (const auto& foreseen : (*isolation_.foreseen)[c])
      for (std::size_t i = 0; i < foreseen.share.size() && foreseen.first + i < weight.size(); ++i)
        weight[foreseen.first + i] += isolation_.probability[c] * static_cast<double>(foreseen.share[i]);
  double total = 0.0;
  for (auto& w : weight)
    total += w += 1e-9; // no stretch without an edge for ever
  double sum = 0.0;
  double last = -1.0;
  for (std::size_t i = 0; i < weight.size(); ++i) {
    sum += weight[i];
    const double edge = static_cast<double>(i + 1) * 1e-3;
    if (sum < total / static_cast<double>(wantedBins) || edge >= limit) continue;
    if (edge - last < 0.7 * model_.repeatSigma) continue;
    edges_.push_back(edge);
    last = edge;
    sum = 0.0;
  }
}

OutcomeRows::Outcome OutcomeRows::of(const Foreseen& foreseen) const {
  static const NormalTable table;
  std::array<double, mostBins> row{};
  const double limit = model_.displayLimit().value;
  const double sigma = model_.repeatSigma;
  const double slipped = model_.priors.slippedShare;
  const std::size_t overLimit = bins() - 1;
  const auto edge = [&](std::size_t k) { return k < edges_.size() ? edges_[k] : limit; };
  for (std::size_t i = 0; i < foreseen.share.size(); ++i) {
    const double weight = (1.0 - slipped) * static_cast<double>(foreseen.share[i]);
    if (weight < 1e-9) continue;
    const double v = 1e-3 * (static_cast<double>(foreseen.first + i) + 0.5);
    auto k = static_cast<std::size_t>(std::lower_bound(edges_.begin(), edges_.end(), v - tail * sigma) -
                                      edges_.begin());
    double done = 0.0;
    for (; k < overLimit && done < 1.0; ++k) {
      const double here = table.below((edge(k) - v) / sigma);
      row[k] += weight * (here - done);
      done = here;
    }
    row[overLimit] += weight * (1.0 - done);
  }
  row[overLimit] += (1.0 - slipped) * static_cast<double>(foreseen.overLimit);
  for (std::size_t k = 0; k < overLimit; ++k)
    row[k] += 0.5 * slipped * (edge(k) - (k == 0 ? 0.0 : edge(k - 1))) / limit;
  row[overLimit] += 0.5 * slipped;
  Outcome result;
  result.bits = entropyBits(std::vector<double>(row.begin(), row.end()));
  std::transform(row.begin(), row.end(), result.row.begin(), [](double p) { return static_cast<float>(p); });
  return result;
}

} // namespace netmend
