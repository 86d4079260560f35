#include "estimate.h"

#include <algorithm>
#include <cmath>

#include "netmend/probing/comparison.h"
#include "tolerance.h"

namespace netmend::probing {

namespace {

/// The chance that the next good board reads OL, after k of n did. A point is either always alike (OL or
/// value) or, with probability `share`, one of variants with any share of OL (uniform): Bayes.
double overLimitChance(double n, double k, double share) {
  if (k > 0.0 && k < n) return (k + 1.0) / (n + 2.0);
  const double mixed = share / (n + 1.0);
  const double pure = (1.0 - share) / 2.0;
  const double rare = mixed / (mixed + pure) / (n + 2.0);
  return k > 0.0 ? 1.0 - rare : rare;
}

/// Readings near zero spread like ground whatever the point is called; above, points of a kind are alike.
PinKind spreadKind(PinKind kind, ReadingMode mode, double middle) {
  const bool diode = mode == ReadingMode::diode || mode == ReadingMode::diodeReverse;
  return diode && std::abs(middle) < 0.010 ? PinKind::ground : kind;
}

/// Between which two neighbours the gap is widest: the first of the upper ones.
std::size_t widestGap(const std::vector<const GoodReading*>& values) {
  std::size_t at = 1;
  const auto gap = [&](std::size_t i) { return *values[i]->value - *values[i - 1]->value; };
  for (std::size_t i = 2; i < values.size(); ++i)
    if (gap(i) > gap(at)) at = i;
  return at;
}

} // namespace

Estimate::Estimate(const GoodReadings& readings, const Lookup* lookup, const ProbingData& data,
                   Believed believed)
    : readings_(readings), data_(data), believed_(std::move(believed)) {
  takeSamples(believed_);
  kindOf_.reserve(readings.size());
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const PinId pin = readings.points()[i].point.pin;
    kindOf_.push_back(lookup != nullptr && pin ? pinKind(*lookup, pin) : PinKind::unknown);
  }
  makeGroups();
  for (auto& [key, group] : groups_)
    fitGroup(group);
  findVariantShare();
}

void Estimate::takeSamples(const Believed& believed) {
  samples_.resize(readings_.size());
  for (std::size_t i = 0; i < samples_.size(); ++i) {
    Sample& sample = samples_[i];
    for (const GoodReading& good : readings_.at(i)) {
      if (!believed.counts(good.walk)) continue;
      ++sample.boards;
      if (good.value) sample.values.push_back(&good);
    }
    std::sort(sample.values.begin(), sample.values.end(),
              [](const auto* a, const auto* b) { return *a->value < *b->value; });
  }
}

void Estimate::makeGroups() {
  groupOf_.resize(samples_.size());
  for (std::size_t i = 0; i < samples_.size(); ++i) {
    const auto& values = samples_[i].values;
    const ReadingMode mode = readings_.modeAt(i);
    const double middle = values.empty() ? 0.0 : *values[values.size() / 2]->value;
    const auto kind = values.empty() ? kindOf_[i] : spreadKind(kindOf_[i], mode, middle);
    const GroupKey key(readings_.points()[i].setting, kind);
    Group& group = groups_[key];
    if (group.members.empty()) {
      if (const auto* data = data_.kinds.find(kind, mode))
        group.fallback = {data->boardSpread * data->boardSpread, data->boardSpreadDof};
      else // a mode that the data does not know: 2 % or 2 % of the unit, hardly trusted
        group.fallback = {0.02 * 0.02, 2.0};
    }
    group.members.push_back(i);
    for (const auto* value : values)
      group.least = std::max(group.least, value->leastVariance);
    groupOf_[i] = key;
  }
}

Estimate::Cluster Estimate::clusterOf(const std::vector<const GoodReading*>& values, std::size_t from,
                                      std::size_t to) const {
  Cluster c;
  c.boards = static_cast<double>(to - from);
  std::map<std::string_view, std::pair<double, double>> meters; // boards, sum of squared uncertainties
  for (std::size_t i = from; i < to; ++i) {
    c.mean += *values[i]->value;
    if (values[i]->calibration <= 0.0) continue;
    auto& [boards, squares] = meters[readings_.readingOf(*values[i]).meter];
    boards += 1.0;
    squares += values[i]->calibration * values[i]->calibration;
  }
  c.mean /= c.boards;
  for (std::size_t i = from; i < to; ++i)
    c.variance += (*values[i]->value - c.mean) * (*values[i]->value - c.mean);
  // Each meter's error is one and the same at all its boards. In the mean it stands by its share of them;
  // between boards of different meters it is in the variance, from which it is taken out again: it is added
  // once, when a reading is judged.
  double between = 0.0;
  for (const auto& [meter, sums] : meters) {
    const auto& [boards, squares] = sums;
    const double share = boards / c.boards;
    const double error = squares / boards;
    between += share * (1.0 - share) * error;
    c.meters.push_back({std::string(meter), share * std::sqrt(error)});
  }
  if (c.boards > 1.0) c.variance = std::max(0.0, (c.variance - between * c.boards) / (c.boards - 1.0));
  return c;
}

std::vector<Estimate::Cluster> Estimate::clustersAt(std::size_t point, const Group& group) const {
  // Variants are told apart by the spread of the whole kind, so that one point's own scatter cannot hide
  // them.
  const double gap = data_.rules.variants.splitAt * std::sqrt(group.prior.variance);
  const auto& values = samples_[point].values;
  const std::size_t parted = believed_.disagree(point) && values.size() > 1 ? widestGap(values) : 0;
  std::vector<Cluster> out;
  std::size_t from = 0;
  for (std::size_t i = 1; i <= values.size(); ++i) {
    if (i < values.size() && i != parted && *values[i]->value - *values[i - 1]->value <= gap) continue;
    out.push_back(clusterOf(values, from, i));
    from = i;
  }
  return out;
}

void Estimate::fitGroup(Group& group) const {
  // What is typical must not depend on the variants it is to tell apart: a first look at the middle of all
  // gaps, then the fit on what the cut leaves.
  std::vector<double> variances;
  for (const auto i : group.members) {
    const auto& values = samples_[i].values;
    if (values.size() > 1) variances.push_back(clusterOf(values, 0, values.size()).variance);
  }
  double typical = group.fallback.variance;
  if (variances.size() >= 5) {
    const auto middle = variances.begin() + static_cast<std::ptrdiff_t>(variances.size() / 2);
    std::nth_element(variances.begin(), middle, variances.end());
    typical = *middle;
  }
  group.prior = {std::max(typical, group.least), group.fallback.dof};
  std::vector<Spread> own;
  for (const auto i : group.members)
    for (const auto& c : clustersAt(i, group))
      if (c.boards > 1.0) own.push_back({c.variance, c.boards - 1.0});
  group.prior = fitSpread(own, group.fallback, group.least);
}

/// How common variants are, from the data's share and what these walks show.
void Estimate::findVariantShare() {
  double points = 0.0;
  double mixed = 0.0;
  for (std::size_t i = 0; i < samples_.size(); ++i) {
    if (samples_[i].boards < 2) continue;
    points += 1.0;
    const std::size_t values = samples_[i].values.size();
    if (!believed_.disagree(i) && values > 0 && values < samples_[i].boards) mixed += 1.0;
  }
  const auto& rules = data_.rules.variants;
  variantShare_ = rules.weight + points <= 0.0
                      ? rules.share
                      : (rules.share * rules.weight + mixed) / (rules.weight + points);
}

Spread Estimate::spreadOf(const Cluster& cluster, const Group& group) const {
  return moderated(group.prior, {std::max(cluster.variance, group.least), cluster.boards - 1.0});
}

std::optional<Expected> Estimate::at(std::size_t point) const {
  const Sample& sample = samples_[point];
  if (sample.boards == 0) return std::nullopt;
  const Group& group = groups_.at(groupOf_[point]);
  const auto& values = sample.values;
  Expected e;
  e.mode = readings_.modeAt(point);
  e.kind = kindOf_[point];
  e.boards = sample.boards;
  e.boardsOverLimit = e.boards - values.size();
  e.boardsSetAside = readings_.at(point).size() - e.boards;
  e.disagree = believed_.disagree(point);
  e.overLimitShare =
      overLimitChance(static_cast<double>(e.boards), static_cast<double>(e.boardsOverLimit), variantShare_);
  if (values.empty()) return e;
  e.seen = ValueInterval{fromComparison(e.mode, *values.front()->value),
                         fromComparison(e.mode, *values.back()->value)};
  for (auto& c : clustersAt(point, group)) {
    const auto spread = spreadOf(c, group);
    e.humps.push_back({(1.0 - e.overLimitShare) * c.boards / static_cast<double>(values.size()),
                       fromComparison(e.mode, c.mean), std::sqrt(spread.variance * (1.0 + 1.0 / c.boards)),
                       spread.dof, c.boards, std::move(c.meters)});
  }
  return e;
}

std::optional<Expected> Estimate::withShown(std::size_t point) {
  auto e = at(point);
  if (!e) return e;
  const Group& group = groups_.at(groupOf_[point]);
  for (const auto& c : clustersAt(point, group)) {
    const auto spread = spreadOf(c, group);
    const double reach = toleranceFactor(c.boards, spread.dof) * std::sqrt(spread.variance);
    e->shown.push_back({fromComparison(e->mode, c.mean - reach), fromComparison(e->mode, c.mean + reach)});
  }
  return e;
}

/// Exact factors cost milliseconds, and most points share theirs.
double Estimate::toleranceFactor(double boards, double dof) {
  const auto [it, isNew] = factors_.try_emplace({boards, dof}, 0.0);
  if (isNew) it->second = toleranceFactorExact(boards, dof, {});
  return it->second;
}

} // namespace netmend::probing
