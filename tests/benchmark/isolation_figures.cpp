#include <functional>
#include <iostream>

#include <fmt/format.h>

#include "isolation_story.h"
#include "simulation/figures.h"

namespace netmend::benchmarks {

using namespace simulation;

namespace {

void addFigure(Report& report, const std::string& name, const Estimate& figure,
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
  addFigure(report, name + "_over_confident", worst.over, limit(0.05 + 2 * worst.over.error));
  addFigure(report, name + "_under_confident", worst.under, limit(0.15));
  const Estimate beyond = wrongAbove(claims, 0.8, true);
  addFigure(report, name + "_wrong_beyond_said", beyond, limit(2 * beyond.error));
  addFigure(report, name + "_confident_wrong", wrongAbove(claims, 0.95, false), limit(0.03));
  addFigure(report, name + "_log_loss", logLoss(claims));
  const auto mean = [&](const std::function<double(const Outcome&)>& of) {
    std::vector<double> values;
    for (const Outcome* job : jobs)
      values.push_back(of(*job));
    return meanOf(values);
  };
  addFigure(report, name + "_right", mean([](const Outcome& o) { return o.right ? 1.0 : 0.0; }));
  addFigure(report, name + "_decided_right",
            mean([](const Outcome& o) { return o.right && o.said > 0.8 ? 1.0 : 0.0; }));
  addFigure(report, name + "_readings",
            mean([](const Outcome& o) { return static_cast<double>(o.readings); }));
  std::vector<double> repeats, readings;
  double most = 0.0, unfinished = 0.0;
  for (const Outcome* job : jobs) {
    repeats.push_back(static_cast<double>(job->repeats));
    readings.push_back(static_cast<double>(job->readings));
    most = std::max(most, static_cast<double>(job->mostAtOne));
    unfinished += job->unfinished ? 1.0 : 0.0;
  }
  addFigure(report, name + "_repeats", ratioOf(repeats, readings), limit(0.10));
  report.add(name + "_most_at_one_place", most, {}, limit(2.0));
  report.add(name + "_unfinished", unfinished, "jobs");
}

} // namespace

void addFigures(Report& report, const std::vector<Outcome>& outcomes) {
  for (const Grade grade : grades)
    for (const bool odd : {false, true}) {
      std::vector<const Outcome*> jobs;
      for (const Outcome& outcome : outcomes)
        if (outcome.played && outcome.grade == grade && outcome.odd == odd) jobs.push_back(&outcome);
      addGroup(report, wordFor(grade) + (odd ? "_odd" : ""), jobs, !odd);
    }
  std::cout << "by what was true (said of the right repairs; right and said with more than 0.8; wrong with "
               "more than 0.8)\n";
  for (std::size_t family = 0; family < faultFamilies; ++family) {
    std::vector<double> on, decided, wrong;
    for (const Outcome& o : outcomes)
      if (o.played && o.family == static_cast<FaultFamily>(family)) {
        on.push_back(o.onTruth);
        decided.push_back(o.right && o.said > 0.8 ? 1.0 : 0.0);
        wrong.push_back(!o.right && o.said > 0.8 ? 1.0 : 0.0);
      }
    if (!on.empty())
      std::cout << fmt::format("  {:<16} {:>6} jobs  {:.3f}  {:.3f}  {:.3f}\n",
                               wordFor(static_cast<FaultFamily>(family)), on.size(), meanOf(on).value,
                               meanOf(decided).value, meanOf(wrong).value);
  }
}

} // namespace netmend::benchmarks
