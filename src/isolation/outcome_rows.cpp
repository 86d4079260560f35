#include "outcome_rows.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "entropy.h"
#include "likelihood.h"
#include "statistics.h"

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
    : isolation_(isolation), model_(*isolation.model), classes_(classes) {
  chooseEdges();
  rows_.assign(classes.size() * 2 * model_.cells.supers, Row{});
  bits_.assign(classes.size() * 2 * model_.cells.supers, 0.0);
  for (std::size_t position = 0; position < classes.size(); ++position)
    for (std::size_t below = 0; below < 2; ++below)
      for (std::size_t super = 0; super < model_.cells.supers; ++super)
        fill(position, below, super);
}

std::size_t OutcomeRows::index(std::size_t position, std::size_t cell) const {
  const std::size_t below = model_.effects[classes_[position]].isBelow(cell) ? 1 : 0;
  return (position * 2 + below) * model_.cells.supers + model_.cells.super[cell];
}

const OutcomeRows::Row& OutcomeRows::row(std::size_t position, std::size_t cell) const {
  return rows_[index(position, cell)];
}

double OutcomeRows::rowBits(std::size_t position, std::size_t cell) const {
  return bits_[index(position, cell)];
}

/// Weights of all predictions on a grid of millivolts, cut into equal parts.
void OutcomeRows::chooseEdges() {
  const double limit = model_.diode->displayLimit.value;
  const auto cells = static_cast<std::size_t>(std::ceil(limit * 1e3)) + 1;
  std::vector<double> weight(cells, 0.0);
  const std::size_t samples = model_.samples.samples;
  const std::size_t sides = 2 * model_.cells.supers;
  for (const std::size_t c : classes_)
    for (std::size_t side = 0; side < sides; ++side) {
      const float* volts = &model_.volts[model_.fragmentOf[c * sides + side] * samples];
      for (std::size_t s = 0; s < samples; ++s) {
        const auto v = static_cast<double>(volts[s]);
        if (v >= limit || v <= 0.0) continue;
        weight[static_cast<std::size_t>(v * 1e3)] +=
            isolation_.probability[c] * isolation_.weight[c * samples + s];
      }
    }
  double total = 0.0;
  for (auto& w : weight)
    total += w += 1e-9; // no stretch without an edge for ever
  double sum = 0.0;
  double last = -1.0;
  for (std::size_t i = 0; i < cells; ++i) {
    sum += weight[i];
    const double edge = static_cast<double>(i + 1) * 1e-3;
    if (sum < total / static_cast<double>(wantedBins) || edge >= limit) continue;
    if (edge - last < 0.7 * voltsSigma(model_, edge)) continue;
    edges_.push_back(edge);
    last = edge;
    sum = 0.0;
  }
}

/// Far more samples than millivolts: what a sample spreads over the bins is worked out once a millivolt. The
/// last cell holds all that is certain to read OL.
std::vector<double> OutcomeRows::byMillivolt(std::size_t faultClass, std::size_t fragment) const {
  const std::size_t samples = model_.samples.samples;
  const float* volts = &model_.volts[fragment * samples];
  const double* weights = &isolation_.weight[faultClass * samples];
  const double limit = model_.diode->displayLimit.value;
  const auto last = static_cast<float>(1e3 * (limit + tail * voltsSigma(model_, limit)) + 1.0);
  std::vector<double> result(static_cast<std::size_t>(last) + 1, 0.0);
  for (std::size_t s = 0; s < samples; ++s)
    result[static_cast<std::size_t>(std::clamp(1e3f * volts[s], 0.0f, last))] += weights[s];
  return result;
}

void OutcomeRows::fill(std::size_t position, std::size_t below, std::size_t super) {
  static const NormalTable table;
  const std::size_t c = classes_[position];
  const auto& effect = model_.effects[c];
  if (below == 1 && effect.kind != FaultKind::open) return;
  const std::size_t at = (position * 2 + below) * model_.cells.supers + super;
  const std::size_t fragment = model_.fragmentOf[(c * 2 + below) * model_.cells.supers + super];
  std::array<double, mostBins> row{};
  const double limit = model_.diode->displayLimit.value;
  const std::size_t overLimit = bins() - 1;
  const auto edge = [&](std::size_t k) { return k < edges_.size() ? edges_[k] : limit; };
  const auto spreadEvenly = [&](double shown, double over) {
    for (std::size_t k = 0; k < overLimit; ++k)
      row[k] += shown * (edge(k) - (k == 0 ? 0.0 : edge(k - 1))) / limit;
    row[overLimit] += over;
  };
  if (effect.kind == FaultKind::noneOfThese) {
    spreadEvenly(1.0 - noneReadsOverLimit, noneReadsOverLimit);
  } else {
    const auto onGrid = byMillivolt(c, fragment);
    const double slipped = model_.priors.slippedShare;
    for (std::size_t i = 0; i < onGrid.size(); ++i) {
      const double weight = (1.0 - slipped) * onGrid[i];
      if (weight < 1e-12) continue;
      const double v = 1e-3 * (static_cast<double>(i) + 0.5);
      const double sigma = voltsSigma(model_, v);
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
    spreadEvenly(0.5 * slipped, 0.5 * slipped);
  }
  bits_[at] = entropyBits(std::vector<double>(row.begin(), row.end()));
  std::transform(row.begin(), row.end(), rows_[at].begin(), [](double p) { return static_cast<float>(p); });
}

} // namespace netmend
