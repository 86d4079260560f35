#include "isolation_trials.h"

#include <algorithm>
#include <cmath>

namespace netmend::benchmarks {

using namespace simulation;

namespace {

/// Another seed, where the engine draws anything.
template <class Options> void reseed(Options& options) {
  if constexpr (requires { options.seed; }) options.seed += 12345;
}

double noneOf(const Isolation& isolation) {
  double out = 0.0;
  for (std::size_t c = 0; c < isolation.classes.size(); ++c)
    if (isolation.classes[c].kind == FaultKind::noneOfThese) out += isolation.probability[c];
  return out;
}

double furthest(const Isolation& a, const Isolation& b) {
  if (a.probability.size() != b.probability.size()) return 1.0;
  double out = 0.0;
  for (std::size_t c = 0; c < a.probability.size(); ++c)
    out = std::max(out, std::abs(a.probability[c] - b.probability[c]));
  return out;
}

Isolation weighed(const Workplace& at, const FaultCase& end, const std::vector<Reading>& readings,
                  bool otherSeed) {
  IsolationInput input{
      *at.board.lookup, end.line, at.data.priors, at.data.efforts, at.meter, end.basis.knownGood, {}, {}};
  input.options.condition = end.basis.condition;
  if (otherSeed) reseed(input.options);
  return update(makeIsolation(input), readings);
}

double charged(const BenchJob& job, const Workplace& at, Choose choose) {
  PlayOptions options;
  options.choose = std::move(choose);
  const auto played = play(job, at, options);
  return played ? costOf(*played, at.data.efforts.wrongRepair).value : at.data.efforts.wrongRepair.value;
}

} // namespace

std::optional<ExactTrial> exactTrial(const BenchJob& job, const Lookup& truth, const ExactDraws& draws,
                                     const Played& played) {
  if (outside(job.fault.family) || !played.claim.repair) return std::nullopt;
  const auto answer = draws.after(played.taken);
  if (!answer) return std::nullopt;
  ExactTrial out;
  const BoardLine& line = *job.line;
  out.said = std::min(1.0, played.claim.said / std::max(1e-9, 1.0 - noneOf(played.end.isolation)));
  out.exactOnClaim = answer->of(line, mendingOf(line, truth, *played.claim.repair, job.fault.crack));
  std::vector<Mending> repairs;
  for (const Repair& repair : played.claim.weighed)
    repairs.push_back(mendingOf(line, truth, repair, job.fault.crack));
  for (std::size_t f = 0; f < answer->faults.size(); ++f) {
    if (answer->probability[f] < 1e-4) continue;
    const Mending own = mendingFor(line, truth, answer->faults[f]);
    if (restores(line, job.fault, own)) out.exactOnTruth += answer->probability[f];
    if (answer->probability[f] > 0.02) repairs.push_back(own);
  }
  double best = 0.0;
  for (const Mending& repair : repairs)
    if (const double chance = answer->of(line, repair); chance > best) {
      best = chance;
      out.decided = chance > 0.8 && restores(line, job.fault, repair);
    }
  return out;
}

StableTrial stableTrial(const Workplace& at, const Played& played) {
  const FaultCase& end = played.end;
  StableTrial out;
  auto readings = end.readings;
  std::reverse(readings.begin(), readings.end());
  const Isolation here = weighed(at, end, end.readings, false);
  out.order = furthest(here, weighed(at, end, readings, true));
  readings = end.readings;
  const MeterRange& range = at.meter.mode(ReadingMode::diode)->ranges.front();
  for (Reading& reading : readings)
    if (reading.mode == ReadingMode::diode && reading.value) {
      const double gain = 0.01 * range.percent * *reading.value, zero = range.digits * range.resolution;
      *reading.value += 0.1 * std::sqrt((gain * gain + zero * zero) / 3.0);
    }
  out.moved = furthest(here, weighed(at, end, readings, false));
  return out;
}

std::optional<PolicyTrial> policyTrial(const BenchJob& job, const Workplace& at, const Played& played) {
  return PolicyTrial{costOf(played, at.data.efforts.wrongRepair).value, charged(job, at, inOrder),
                     charged(job, at, halfSplit)};
}

std::optional<OptimalTrial> optimalTrial(const BenchJob& faulty, const Workplace& at,
                                         const FaultShares& shares) {
  if (outside(faulty.fault.family)) return std::nullopt;
  MeterProfile meter = at.meter;
  std::erase_if(meter.modes, [](const MeterMode& mode) { return mode.mode != ReadingMode::diode; });
  RepairData data = at.data;
  data.probing.meters = {meter};
  const Workplace bare{at.board, at.truth, data, meter};
  const BenchJob job = withoutErrors(faulty, at.truth, meter);
  std::optional<FaultCase> start;
  PlayOptions options;
  options.eachOnce = true;
  options.watch = [&](const FaultCase& now, const Taken&) {
    if (!start) start = now;
  };
  const auto played = play(job, bare, options);
  if (!played || !start) return std::nullopt;
  std::vector<Mending> repairs;
  for (const Repair& repair : played->claim.weighed)
    repairs.push_back(mendingOf(*job.line, at.truth, repair, job.fault.crack));
  const auto best = optimal(job, bare, shares, *start, repairs, data.efforts.wrongRepair);
  if (!best) return std::nullopt;
  // Both have the first reading.
  return OptimalTrial{costOf(*played, data.efforts.wrongRepair).value - played->taken.front().effort.value,
                      best->here.value};
}

} // namespace netmend::benchmarks
