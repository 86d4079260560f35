#include "simulation/policy.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace netmend::simulation {

namespace {

bool takenAt(const std::vector<Taken>& taken, const std::string& label) {
  return std::any_of(taken.begin(), taken.end(), [&](const Taken& one) {
    return one.shown.reading.point.label == label && one.shown.reading.mode == ReadingMode::diode;
  });
}

/// Places that were not read yet, as long as there are any only the cheapest to reach.
std::vector<std::size_t> unread(const FaultCase& now, const std::vector<Taken>& taken) {
  std::vector<std::size_t> out;
  double cheapest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < now.isolation.places.size(); ++i) {
    const ProbePlace& place = now.isolation.places[i];
    if (!place.effort || place.effort->value > cheapest || takenAt(taken, place.label)) continue;
    if (place.effort->value < cheapest) out.clear();
    cheapest = place.effort->value;
    out.push_back(i);
  }
  return out;
}

ProbeProposal diodeAt(const FaultCase& now, std::size_t place) {
  ProbeProposal out;
  out.mode = ReadingMode::diode;
  out.place = place;
  out.effort = *now.isolation.places[place].effort;
  return out;
}

} // namespace

std::optional<ProbeProposal> inOrder(const FaultCase& now, const std::vector<Taken>& taken) {
  const auto left = unread(now, taken);
  if (left.empty()) return std::nullopt;
  return diodeAt(now, left.front());
}

std::optional<ProbeProposal> halfSplit(const FaultCase& now, const std::vector<Taken>& taken) {
  std::vector<std::size_t> suspects;
  for (std::size_t c = 0; c < now.isolation.classes.size(); ++c)
    if (now.isolation.probability[c] > 1e-3 && now.isolation.classes[c].kind != FaultKind::noneOfThese)
      suspects.push_back(c);
  const auto left = unread(now, taken);
  std::optional<ProbeProposal> best;
  double nearest = std::numeric_limits<double>::infinity();
  for (const std::size_t place : left) {
    const Prediction all = predictDiode(now.isolation, place, 0); // sound
    std::size_t odd = 0;
    for (const std::size_t c : suspects) {
      const Prediction one = predictDiode(now.isolation, place, c);
      if (std::abs(one.overLimit - all.overLimit) > 0.5 || std::abs(one.mean.value - all.mean.value) > 0.015)
        ++odd;
    }
    const double off = std::abs(static_cast<double>(odd) - 0.5 * static_cast<double>(suspects.size()));
    if (off >= nearest) continue;
    nearest = off;
    best = diodeAt(now, place);
  }
  return best;
}

Seconds costOf(const Played& played, Seconds wrongRepair) {
  Seconds out{};
  for (const Taken& taken : played.taken)
    out += taken.effort;
  return played.right ? out : out + wrongRepair;
}

namespace {

constexpr double alike = 0.004;  ///< V: what a good board reads
constexpr double unlike = 0.015; ///< V: between, an outcome is not sharp

/// A world without errors as a table: what each fault reads at each place.
struct Table {
  std::vector<double> prior;               ///< by kind of fault
  std::vector<std::vector<int>> outcome;   ///< kind × place
  std::vector<std::vector<double>> mended; ///< repair × kind: share that it mends
  std::vector<double> effort;              ///< by place
};

class Program {
public:
  Program(const Table& table, double wrongRepair) : table_(table), wrong_(wrongRepair) {}

  /// Least expected cost from here on, times the weight of what is left.
  double cost(std::uint32_t read, const std::vector<std::size_t>& left) {
    double mass = 0.0;
    for (const std::size_t k : left)
      mass += table_.prior[k];
    const auto [found, fresh] = known_.emplace(std::pair{read, left}, Step{});
    if (!fresh) return found->second.cost;
    Step best{stopCost(left, mass), -1};
    for (std::size_t p = 0; p < table_.effort.size() && left.size() > 1; ++p) {
      if (read >> p & 1U) continue;
      const auto parts = split(left, p);
      if (parts.size() < 2) continue;
      double there = table_.effort[p] * mass;
      for (const auto& [outcome, part] : parts)
        if (there < best.cost) there += cost(read | 1U << p, part);
      if (there < best.cost) best = {there, static_cast<int>(p)};
    }
    return (known_[{read, left}] = best).cost;
  }

  /// What the policy costs on one kind.
  double walk(std::uint32_t read, std::vector<std::size_t> left, std::size_t kind) {
    double out = 0.0;
    for (;;) {
      cost(read, left);
      const Step step = known_.at({read, left});
      if (step.place < 0) return out + wrong_ * (1.0 - table_.mended[bestRepair(left)][kind]);
      const auto p = static_cast<std::size_t>(step.place);
      out += table_.effort[p];
      left = split(left, p).at(table_.outcome[kind][p]);
      read |= 1U << p;
    }
  }

private:
  struct Step {
    double cost = 0.0;
    int place = -1;
  };
  std::map<int, std::vector<std::size_t>> split(const std::vector<std::size_t>& left,
                                                std::size_t place) const {
    std::map<int, std::vector<std::size_t>> out;
    for (const std::size_t k : left)
      out[table_.outcome[k][place]].push_back(k);
    return out;
  }
  double rightOf(std::size_t repair, const std::vector<std::size_t>& left) const {
    double right = 0.0;
    for (const std::size_t k : left)
      right += table_.prior[k] * table_.mended[repair][k];
    return right;
  }
  std::size_t bestRepair(const std::vector<std::size_t>& left) const {
    std::size_t best = 0;
    for (std::size_t r = 1; r < table_.mended.size(); ++r)
      if (rightOf(r, left) > rightOf(best, left)) best = r;
    return best;
  }
  double stopCost(const std::vector<std::size_t>& left, double mass) const {
    return wrong_ * (mass - rightOf(bestRepair(left), left));
  }

  const Table& table_;
  double wrong_;
  std::map<std::pair<std::uint32_t, std::vector<std::size_t>>, Step> known_;
};

/// OL 0, as good 1, otherwise 2; nothing between them.
std::optional<int> outcomeOf(double volts, double good, double limit) {
  if (volts > limit) return 0;
  const double off = std::abs(volts - good);
  if (off < alike) return 1;
  if (off < unlike) return std::nullopt;
  return 2;
}

/// What faults there are, by what they read at the places, and what repairs mend them.
class World {
public:
  World(const BenchJob& job, const Lookup& lookup, const MeterProfile& meter, const FaultCase& start)
      : job_(job), lookup_(lookup), mode_(*meter.mode(ReadingMode::diode)), source_(sourceOf(mode_)) {
    for (const ProbePlace& place : start.isolation.places) {
      if (!place.effort) continue;
      places_.push_back(&place);
      table.effort.push_back(place.effort->value);
    }
  }

  /// Whether all outcomes are sharp.
  bool fill(const FaultShares& shares, const std::vector<Mending>& extra) {
    auto faults = allFaults(*job_.line, job_.design, shares);
    double sum = 0.0;
    for (const auto& one : faults)
      sum += one.weight;
    for (auto& one : faults)
      one.weight *= (1.0 - shares.sound) / sum;
    faults.push_back({{}, shares.sound});
    std::map<std::vector<int>, std::vector<WeighedFault>> kinds;
    std::vector<Mending> repairs = extra;
    repairs.push_back({});
    for (const auto& one : faults) {
      const auto seen = outcomes(one.fault);
      if (!seen) return false;
      kinds[*seen].push_back(one);
      repairs.push_back(mendingFor(*job_.line, lookup_, one.fault));
    }
    table.mended.resize(repairs.size());
    for (const auto& [seen, members] : kinds) {
      table.outcome.push_back(seen);
      double prior = 0.0;
      for (const auto& one : members)
        prior += one.weight;
      table.prior.push_back(prior);
      for (std::size_t r = 0; r < repairs.size(); ++r) {
        double mended = 0.0;
        for (const auto& one : members)
          if (restores(*job_.line, one.fault, repairs[r])) mended += one.weight;
        table.mended[r].push_back(prior > 0.0 ? mended / prior : 0.0);
      }
    }
    const auto here = outcomes(job_.fault);
    const auto found =
        here ? std::find(table.outcome.begin(), table.outcome.end(), *here) : table.outcome.end();
    kind = static_cast<std::size_t>(found - table.outcome.begin());
    return found != table.outcome.end();
  }

  [[nodiscard]] std::size_t placeOf(const std::string& label) const {
    const auto found =
        std::find_if(places_.begin(), places_.end(), [&](const ProbePlace* p) { return p->label == label; });
    return static_cast<std::size_t>(found - places_.begin());
  }

  /// Of places that tell the same only the cheapest is worth anything; one that tells nothing is none.
  void keepWhatTells() {
    std::map<std::vector<int>, std::size_t> best;
    for (std::size_t p = 0; p < table.effort.size(); ++p) {
      const auto [found, fresh] = best.emplace(told(p), p);
      if (!fresh && table.effort[p] < table.effort[found->second]) found->second = p;
    }
    Table kept{table.prior, std::vector<std::vector<int>>(table.prior.size()), table.mended, {}};
    for (const auto& [column, p] : best) {
      if (std::all_of(column.begin(), column.end(),
                      [&first = column.front()](int one) { return one == first; }))
        continue;
      kept.effort.push_back(table.effort[p]);
      for (std::size_t k = 0; k < column.size(); ++k)
        kept.outcome[k].push_back(column[k]);
    }
    table = std::move(kept);
  }
  /// What each kind of fault reads at a place.
  [[nodiscard]] std::vector<int> told(std::size_t place) const {
    std::vector<int> out;
    for (const auto& row : table.outcome)
      out.push_back(row[place]);
    return out;
  }

  Table table;
  std::size_t kind = 0; ///< of this job's fault

private:
  std::optional<std::vector<int>> outcomes(const Fault& fault) const {
    std::vector<int> out;
    for (const ProbePlace* place : places_) {
      const auto spot = spotAt(*job_.line, lookup_, place->object, place->at, place->layer, fault.crack);
      if (!spot) return std::nullopt;
      const double good = idealDiode(*job_.line, job_.design, {}, 25.0, *spot, source_);
      const double volts = idealDiode(*job_.line, job_.design, fault, 25.0, *spot, source_);
      const auto one = outcomeOf(volts, good, mode_.displayLimit());
      if (!one) return std::nullopt;
      out.push_back(*one);
    }
    return out;
  }

  const BenchJob& job_;
  const Lookup& lookup_;
  const MeterMode& mode_;
  Source source_;
  std::vector<const ProbePlace*> places_;
};

} // namespace

std::optional<Optimal> optimal(const BenchJob& job, const Workplace& at, const FaultShares& shares,
                               const FaultCase& start, const std::vector<Mending>& repairs,
                               Seconds wrongRepair) {
  World world(job, at.truth, at.meter, start);
  const std::size_t first = world.placeOf(pinLabel(at.truth.board(), job.known.front()));
  if (first >= world.table.effort.size() || !world.fill(shares, repairs)) return std::nullopt;
  const std::vector<int> atFirst = world.told(first);
  world.keepWhatTells();
  const Table& table = world.table;
  if (table.effort.size() > mostPlaces) return std::nullopt;
  std::vector<std::size_t> left;
  double mass = 0.0;
  for (std::size_t k = 0; k < table.prior.size(); ++k)
    if (atFirst[k] == atFirst[world.kind]) {
      left.push_back(k);
      mass += table.prior[k];
    }
  Program program(table, wrongRepair.value);
  const double expected = program.cost(0, left) / mass;
  return Optimal{Seconds(program.walk(0, left, world.kind)), Seconds(expected), table.effort.size()};
}

} // namespace netmend::simulation
