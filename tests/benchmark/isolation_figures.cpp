#include <algorithm>
#include <functional>
#include <iostream>
#include <map>
#include <optional>

#include <fmt/format.h>

#include "isolation_story.h"
#include "simulation/figures.h"

namespace netmend::benchmarks {

using namespace simulation;

namespace {

void addEstimate(Report& report, const std::string& name, const Estimate& figure,
                 std::optional<double> most = {}) {
  report.add(name, figure.value, fmt::format("± {:.2g} of {}", figure.error, figure.of), most);
  report.object()[name + "_error"] = figure.error;
}

std::vector<ClaimMade> claimsOf(const std::vector<const Outcome*>& jobs) {
  std::vector<ClaimMade> out;
  for (const Outcome* job : jobs)
    out.push_back({job->said, job->right});
  return out;
}

/// `wanted`: whether the figures have to meet their limits.
void addGroup(Report& report, const std::string& name, const std::vector<const Outcome*>& jobs, bool wanted) {
  if (jobs.empty()) return report.skip(name, "no jobs");
  const auto claims = claimsOf(jobs);
  const auto bins = reliability(claims);
  std::cout << fmt::format("{}: {} jobs\n  said             claims  mean said  right\n", name, jobs.size());
  for (const Bin& bin : bins)
    std::cout << fmt::format("  {:.2f} to {:.2f} {:>10}      {:.3f}  {:.3f} ± {:.3f}\n", bin.least, bin.most,
                             bin.claims, bin.said, bin.right, bin.error);
  const Calibration worst = worstOf(bins);
  const auto limit = [&](double most) { return wanted ? std::optional(most) : std::nullopt; };
  addEstimate(report, name + "_over_confident", worst.over, limit(0.05 + 2 * worst.over.error));
  addEstimate(report, name + "_under_confident", worst.under, limit(0.15));
  const Estimate beyond = wrongAbove(claims, 0.8, true);
  addEstimate(report, name + "_wrong_beyond_said", beyond, limit(2 * beyond.error));
  addEstimate(report, name + "_confident_wrong", wrongAbove(claims, 0.95, false), limit(0.03));
  addEstimate(report, name + "_log_loss", logLoss(claims));
  const auto mean = [&](const std::function<double(const Outcome&)>& of) {
    std::vector<double> values;
    for (const Outcome* job : jobs)
      values.push_back(of(*job));
    return meanOf(values);
  };
  addEstimate(report, name + "_right", mean([](const Outcome& o) { return o.right ? 1.0 : 0.0; }));
  addEstimate(report, name + "_decided_right",
              mean([](const Outcome& o) { return o.right && o.said > 0.8 ? 1.0 : 0.0; }));
  addEstimate(report, name + "_readings",
              mean([](const Outcome& o) { return static_cast<double>(o.readings); }));
  std::vector<double> repeats, readings;
  double most = 0.0, unfinished = 0.0;
  for (const Outcome* job : jobs) {
    repeats.push_back(static_cast<double>(job->repeats));
    readings.push_back(static_cast<double>(job->readings));
    most = std::max(most, static_cast<double>(job->mostAtOne));
    unfinished += job->unfinished ? 1.0 : 0.0;
  }
  addEstimate(report, name + "_repeats", ratioOf(repeats, readings), limit(0.10));
  report.add(name + "_most_at_one_place", most, {}, limit(2.0));
  report.add(name + "_unfinished", unfinished, "jobs");
}

/// Of all jobs for which `of` has a value.
template <class Of> std::vector<double> valuesOf(const std::vector<Outcome>& outcomes, Of&& of) {
  std::vector<double> out;
  for (const Outcome& outcome : outcomes)
    if (outcome.played && !outcome.odd)
      if (const std::optional<double> value = of(outcome)) out.push_back(*value);
  return out;
}

double lossOf(double said, bool right) {
  return logLoss({{said, right}}).value;
}

void addExact(Report& report, const std::vector<Outcome>& outcomes) {
  std::map<std::string, int> whyNot;
  for (const Outcome& o : outcomes)
    if (o.played && (o.exact || !o.exactWhyNot.empty())) ++whyNot[o.exact ? "compared" : o.exactWhyNot];
  for (const auto& [why, jobs] : whyNot)
    report.add("exact jobs: " + why, jobs);
  for (const Grade grade : grades) {
    std::vector<double> own, exact, more, lost;
    for (const Outcome& o : outcomes) {
      if (!o.played || o.odd || !o.exact || o.grade != grade) continue;
      own.push_back(o.right && o.said > 0.8 ? 1.0 : 0.0);
      exact.push_back(o.exact->decided ? 1.0 : 0.0);
      more.push_back(lossOf(o.exact->said, o.right) - lossOf(o.exact->exactOnClaim, o.right));
      if (o.exact->exactOnTruth > 0.5) lost.push_back(o.onTruth < 1e-3 ? 1.0 : 0.0);
    }
    const std::string name = wordFor(grade) + "_exact";
    if (own.empty()) {
      report.skip(name, "no jobs");
      continue;
    }
    if (meanOf(exact).value <= 0.0) {
      report.skip(name, "nothing could be decided");
      continue;
    }
    const Estimate ratio = ratioOf(own, exact);
    addEstimate(report, name + "_decided_right", meanOf(exact));
    // Wanted at least: the shortfall is what has a limit.
    addEstimate(report, name + "_decided_short", {1.0 - ratio.value, ratio.error, ratio.of}, 0.1);
    addEstimate(report, name + "_log_loss_more", meanOf(more), 0.1);
    addEstimate(report, name + "_zero_where_known", meanOf(lost), 0.0);
  }
}

void addStable(Report& report, const std::vector<Outcome>& outcomes) {
  const auto order = valuesOf(
      outcomes, [](const Outcome& o) { return o.stable ? std::optional(o.stable->order) : std::nullopt; });
  const auto moved = valuesOf(
      outcomes, [](const Outcome& o) { return o.stable ? std::optional(o.stable->moved) : std::nullopt; });
  if (order.empty()) return report.skip("stable", "no jobs");
  report.add("stable_order", *std::max_element(order.begin(), order.end()),
             fmt::format("of {}", order.size()), 0.01);
  report.add("stable_moved", *std::max_element(moved.begin(), moved.end()),
             fmt::format("of {}", moved.size()), 0.03);
  addEstimate(report, "stable_moved_mean", meanOf(moved));
  const auto worse = valuesOf(outcomes, [](const Outcome& o) {
    return o.betterMeter
               ? std::optional(lossOf(o.betterMeter->said, o.betterMeter->right) - lossOf(o.said, o.right))
               : std::nullopt;
  });
  const Estimate loss = meanOf(worse);
  addEstimate(report, "better_meter_log_loss_more", loss, 2 * loss.error);
}

void addPolicies(Report& report, const std::vector<Outcome>& outcomes) {
  std::vector<double> own, order, half, played, best;
  for (const Outcome& o : outcomes) {
    if (!o.played || o.odd) continue;
    if (o.policy) {
      own.push_back(o.policy->own);
      order.push_back(o.policy->inOrder);
      half.push_back(o.policy->halfSplit);
    }
    if (o.best) {
      played.push_back(o.best->own);
      best.push_back(o.best->best);
    }
  }
  if (!own.empty()) {
    addEstimate(report, "probes_vs_in_order", ratioOf(own, order), 1.0);
    addEstimate(report, "probes_vs_half_split", ratioOf(own, half), 1.0);
  }
  if (!best.empty()) addEstimate(report, "probes_vs_optimal", ratioOf(played, best), 1.05);
}

void addOutside(Report& report, const std::vector<Outcome>& outcomes) {
  std::vector<double> all, contradicted;
  for (const Outcome& o : outcomes) {
    if (!o.played || o.odd || !outside(o.family)) continue;
    const double wrong = !o.right && o.said > 0.8 ? 1.0 : 0.0;
    all.push_back(wrong);
    if (o.contradiction && *o.contradiction > 3.0) contradicted.push_back(wrong);
  }
  addEstimate(report, "outside_wrong", meanOf(all));
  addEstimate(report, "outside_contradicted_wrong", meanOf(contradicted), 0.05);
}

void tableByKind(Report& report, const std::string& name, const std::vector<Outcome>& outcomes) {
  std::cout << name << "\n  kind              jobs  on the right repairs  right > 0.8  wrong > 0.8\n";
  std::map<std::string, std::vector<const Outcome*>> kinds;
  for (const Outcome& o : outcomes)
    if (o.played && !o.odd) kinds[o.kind].push_back(&o);
  for (const auto& [kind, jobs] : kinds) {
    std::vector<double> on, right, wrong;
    for (const Outcome* o : jobs) {
      on.push_back(o->onTruth);
      right.push_back(o->right && o->said > 0.8 ? 1.0 : 0.0);
      wrong.push_back(!o->right && o->said > 0.8 ? 1.0 : 0.0);
    }
    std::cout << fmt::format("  {:<16} {:>5}  {:>10.3f} ± {:.3f}     {:.3f}        {:.3f} ± {:.3f}\n", kind,
                             jobs.size(), meanOf(on).value, meanOf(on).error, meanOf(right).value,
                             meanOf(wrong).value, meanOf(wrong).error);
    report.object()[name][kind] = {{"jobs", jobs.size()},
                                   {"on_right_repairs", meanOf(on).value},
                                   {"right", meanOf(right).value},
                                   {"wrong", meanOf(wrong).value}};
  }
}

} // namespace

void addFigures(Report& report, const std::vector<Outcome>& byShares, const std::vector<Outcome>& strange,
                const std::vector<Outcome>& evenly) {
  for (const bool odd : {false, true})
    for (const Grade grade : grades) {
      std::vector<const Outcome*> jobs;
      for (const Outcome& outcome : byShares)
        if (outcome.played && outcome.grade == grade && outcome.odd == odd) jobs.push_back(&outcome);
      addGroup(report, wordFor(grade) + (odd ? "_odd" : ""), jobs, !odd);
    }
  addExact(report, byShares);
  addStable(report, byShares);
  addPolicies(report, byShares);
  addOutside(report, strange);
  tableByKind(report, "by_kind", byShares);
  tableByKind(report, "by_kind_evenly", evenly);
}

} // namespace netmend::benchmarks
