#include "netmend/probing/expected.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "netmend/base/words.h"
#include "netmend/probing/comparison.h"
#include "netmend/probing/reading_entry.h"
#include "spread.h"

namespace netmend {

namespace {

constexpr std::array<Word<ExpectedFrom>, 3> fromWords{{
    {ExpectedFrom::boards, "boards measured"},
    {ExpectedFrom::entered, "entered by hand"},
    {ExpectedFrom::pinKind, "kind of pin"},
}};

/// Degrees of freedom that are as good as a normal distribution.
constexpr double normalDof = 1e6;

/// What the good boards read at one point.
struct Sample {
  struct Value {
    std::size_t walk;
    std::optional<double> value; ///< at bench temperature, comparison scale; empty: OL
    double leastVariance;        ///< what the meter's resolution hides
  };
  std::vector<Value> boards;
};

/// Values of one variant: boards that read alike.
struct Cluster {
  double mean = 0.0;
  double variance = 0.0; ///< over n − 1
  double boards = 0.0;
};

/// The points of one kind, mode and level.
struct Group {
  Spread fallback;
  Spread prior;
  double least = 0.0;
  std::vector<std::size_t> members;
};

Cluster clusterOf(const std::vector<double>& sorted, std::size_t from, std::size_t to) {
  Cluster c;
  c.boards = static_cast<double>(to - from);
  for (std::size_t i = from; i < to; ++i)
    c.mean += sorted[i];
  c.mean /= c.boards;
  for (std::size_t i = from; i < to; ++i)
    c.variance += (sorted[i] - c.mean) * (sorted[i] - c.mean);
  if (c.boards > 1.0) c.variance /= c.boards - 1.0;
  return c;
}

/// Cuts sorted values where neighbours lie further apart than `gap`.
std::vector<Cluster> clusters(const std::vector<double>& sorted, double gap) {
  std::vector<Cluster> out;
  std::size_t from = 0;
  for (std::size_t i = 1; i <= sorted.size(); ++i) {
    if (i < sorted.size() && sorted[i] - sorted[i - 1] <= gap) continue;
    out.push_back(clusterOf(sorted, from, i));
    from = i;
  }
  return out;
}

std::vector<double> sortedValues(const Sample& sample) {
  std::vector<double> values;
  for (const auto& b : sample.boards)
    if (b.value) values.push_back(*b.value);
  std::sort(values.begin(), values.end());
  return values;
}

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

/// Collects, groups and estimates; one use.
class Estimator {
public:
  Estimator(const Lookup* lookup, const PinKindData& kinds, const std::vector<MeterProfile>& meters,
            const ExpectedOptions& options)
      : lookup_(lookup), kinds_(&kinds), meters_(&meters), options_(&options) {}

  void take(std::span<const Walk> walks, const std::string& boardUuid) {
    for (std::size_t w = 0; w < walks.size(); ++w) {
      if (walks[w].specimen != Specimen::good) continue;
      for (const auto& reading : walks[w].readings) {
        if (reading.settling == Settling::rising) continue;
        if (walks[w].boardUuid == boardUuid) {
          takeReading(w, reading);
        } else {
          Reading byLabel = reading; // its pin ids are another board description's
          byLabel.point.pin = PinId{};
          byLabel.other.pin = PinId{};
          takeReading(w, byLabel);
        }
      }
    }
  }

  ExpectedTable table() {
    findKinds();
    makeGroups();
    for (auto& [key, group] : groups_)
      fitGroup(group);
    const double share = variantShare();
    ExpectedTable out;
    for (std::size_t i = 0; i < samples_.size(); ++i)
      out.put(points_[i].point, points_.setting(points_[i].setting), expectedAt(i, share));
    return out;
  }

private:
  using GroupKey = std::pair<std::size_t, PinKind>; ///< setting, kind

  void takeReading(std::size_t walk, const Reading& reading) {
    const auto at = points_.add(reading);
    if (at >= samples_.size()) samples_.resize(at + 1);
    Sample::Value value{walk, valueAtBenchTemperature(reading), 0.0};
    if (value.value) {
      const auto* meter = findMeter(*meters_, reading.meter);
      const auto u = meter != nullptr ? uncertaintyOf(*meter, reading.mode, *value.value) : std::nullopt;
      const double hidden = (u ? u->resolution : 0.0) * comparisonSlope(reading.mode, *value.value);
      value.leastVariance = hidden * hidden;
      value.value = toComparison(reading.mode, *value.value);
    }
    auto& boards = samples_[at].boards;
    if (!boards.empty() && boards.back().walk == walk)
      boards.back() = value; // measured again
    else
      boards.push_back(value);
  }

  ReadingMode modeAt(std::size_t i) const { return points_.setting(points_[i].setting).mode; }

  void findKinds() {
    kindOf_.reserve(samples_.size());
    for (std::size_t i = 0; i < samples_.size(); ++i) {
      const PinId pin = points_[i].point.pin;
      kindOf_.push_back(lookup_ != nullptr && pin ? pinKind(*lookup_, pin) : PinKind::unknown);
    }
  }

  void makeGroups() {
    groupOf_.resize(samples_.size());
    for (std::size_t i = 0; i < samples_.size(); ++i) {
      const auto values = sortedValues(samples_[i]);
      const double middle = values.empty() ? 0.0 : values[values.size() / 2];
      const auto kind = values.empty() ? kindOf_[i] : spreadKind(kindOf_[i], modeAt(i), middle);
      const GroupKey key(points_[i].setting, kind);
      Group& group = groups_[key];
      if (group.members.empty()) {
        if (const auto* data = kinds_->find(kind, modeAt(i)))
          group.fallback = {data->boardSpread * data->boardSpread, data->boardSpreadDof};
        else // a mode that the data does not know: 2 % or 2 % of the unit, hardly trusted
          group.fallback = {0.02 * 0.02, 2.0};
      }
      group.members.push_back(i);
      for (const auto& b : samples_[i].boards)
        group.least = std::max(group.least, b.leastVariance);
      groupOf_[i] = key;
    }
  }

  void fitGroup(Group& group) const {
    // What is typical must not depend on the variants it is to tell apart: a first look at the middle of all
    // gaps, then the fit on what the cut leaves.
    std::vector<double> variances;
    for (const auto i : group.members) {
      const auto values = sortedValues(samples_[i]);
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
      for (const auto& c : clusters(sortedValues(samples_[i]), gapOf(group)))
        if (c.boards > 1.0) own.push_back({c.variance, c.boards - 1.0});
    group.prior = fitSpread(own, group.fallback, group.least);
  }

  double gapOf(const Group& group) const {
    return options_->variants.splitAt * std::sqrt(group.prior.variance);
  }

  /// How common variants are, from the data's share and what these walks show.
  double variantShare() const {
    double points = 0.0;
    double mixed = 0.0;
    for (const auto& s : samples_) {
      if (s.boards.size() < 2) continue;
      const auto overLimit =
          std::count_if(s.boards.begin(), s.boards.end(), [](const auto& b) { return !b.value; });
      points += 1.0;
      if (overLimit > 0 && static_cast<std::size_t>(overLimit) < s.boards.size()) mixed += 1.0;
    }
    const auto& rules = options_->variants;
    if (rules.weight + points <= 0.0) return rules.share;
    return (rules.share * rules.weight + mixed) / (rules.weight + points);
  }

  Expected expectedAt(std::size_t i, double share) {
    const ReadingMode mode = modeAt(i);
    const Group& group = groups_.at(groupOf_[i]);
    const auto values = sortedValues(samples_[i]);
    Expected e;
    e.mode = mode;
    e.kind = kindOf_[i];
    e.boards = samples_[i].boards.size();
    e.boardsOverLimit = e.boards - values.size();
    const auto n = static_cast<double>(e.boards);
    e.overLimitShare = overLimitChance(n, static_cast<double>(e.boardsOverLimit), share);
    if (values.empty()) return e;
    e.seen = ValueInterval{fromComparison(mode, values.front()), fromComparison(mode, values.back())};
    // Variants are told apart by the spread of the whole kind, so that one point's own scatter cannot hide
    // them.
    for (const auto& c : clusters(values, gapOf(group))) {
      const auto spread = moderated(group.prior, {std::max(c.variance, group.least), c.boards - 1.0});
      const double sd = std::sqrt(spread.variance);
      e.humps.push_back({(1.0 - e.overLimitShare) * c.boards / static_cast<double>(values.size()),
                         fromComparison(mode, c.mean), sd * std::sqrt(1.0 + 1.0 / c.boards), spread.dof,
                         c.boards});
      const double reach = toleranceFactor(c.boards, spread.dof) * sd;
      e.shown.push_back({fromComparison(mode, c.mean - reach), fromComparison(mode, c.mean + reach)});
    }
    return e;
  }

  /// Exact factors cost milliseconds, and most points share theirs.
  double toleranceFactor(double boards, double dof) {
    const auto [it, isNew] = factors_.try_emplace({boards, dof}, 0.0);
    if (isNew) it->second = toleranceFactorExact(boards, dof, options_->aim);
    return it->second;
  }

  const Lookup* lookup_;
  const PinKindData* kinds_;
  const std::vector<MeterProfile>* meters_;
  const ExpectedOptions* options_;
  PointIndex points_;
  std::vector<Sample> samples_; ///< parallel to points_, as are the next two
  std::vector<PinKind> kindOf_;
  std::vector<GroupKey> groupOf_;
  std::map<GroupKey, Group> groups_;
  std::map<std::pair<double, double>, double> factors_;
};

} // namespace

std::string_view word(ExpectedFrom from) {
  return wordFor(fromWords, from);
}
std::optional<ExpectedFrom> expectedSourceFrom(std::string_view text) {
  return fromWord(fromWords, text);
}

ExpectedTable expectedFromWalks(std::span<const Walk> walks, const Lookup* lookup, const PinKindData& kinds,
                                const std::vector<MeterProfile>& meters, const ExpectedOptions& options) {
  std::string uuid;
  if (lookup != nullptr)
    uuid = lookup->board().info.uuid;
  else if (!walks.empty())
    uuid = walks.front().boardUuid;
  Estimator estimator(lookup, kinds, meters, options);
  estimator.take(walks, uuid);
  ExpectedTable table = estimator.table();
  table.boardUuid = uuid;
  for (const auto& walk : walks) {
    for (auto entry : walk.entered) {
      if (walk.boardUuid != uuid) entry.point.pin = entry.other.pin = PinId{};
      const auto kind =
          lookup != nullptr && entry.point.pin ? pinKind(*lookup, entry.point.pin) : PinKind::unknown;
      table.put(entry.point, {entry.mode, entry.other, entry.condition, std::nullopt},
                expectedFromEntry(entry, kind));
    }
  }
  return table;
}

std::optional<Expected> expectedFromKind(PinKind kind, ReadingMode mode, const PinKindData& kinds) {
  const auto* data = kinds.find(kind, mode);
  if (data == nullptr || !data->overLimitShare) return std::nullopt;
  Expected e;
  e.mode = mode;
  e.from = ExpectedFrom::pinKind;
  e.kind = kind;
  e.overLimitShare = *data->overLimitShare;
  e.humps = data->humps;
  for (const auto& hump : e.humps) {
    if (hump.weight < 0.01) continue; // judged by, but not worth a word
    const double middle = toComparison(mode, hump.centre);
    e.shown.push_back(
        {fromComparison(mode, middle - 2.0 * hump.scale), fromComparison(mode, middle + 2.0 * hump.scale)});
  }
  return e;
}

Expected expectedFromEntry(const EnteredExpectation& entry, PinKind kind) {
  constexpr double rare = 2e-5; // what nobody thought of when entering it
  constexpr double z99 = 2.5758;
  Expected e;
  e.mode = entry.mode;
  e.from = ExpectedFrom::entered;
  e.kind = kind;
  e.overLimitShare = entry.overLimit ? 1.0 - rare : rare;
  if (entry.overLimit) return e;
  const double low = toComparison(entry.mode, entry.lowest);
  const double high = toComparison(entry.mode, entry.highest);
  e.humps.push_back(
      {1.0 - rare, fromComparison(entry.mode, (low + high) / 2.0), (high - low) / 2.0 / z99, normalDof, 0.0});
  e.shown.push_back({entry.lowest, entry.highest});
  return e;
}

} // namespace netmend
