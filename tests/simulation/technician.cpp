#include "simulation/technician.h"

#include <chrono>
#include <set>
#include <tuple>

#include <fmt/format.h>

#include "netmend/probing/words.h"

namespace netmend::simulation {

namespace {

constexpr double firstEffort = 15.0;         ///< s: a pin that can be reached
constexpr std::chrono::seconds mostTime(20); ///< of the program, for one job

std::string wordsOf(const FaultCase& now, const ProbeProposal& probe) {
  std::string out = fmt::format("{} at {}", word(probe.mode), now.isolation.places[probe.place].label);
  if (probe.other) out += " to " + now.isolation.places[*probe.other].label;
  return out;
}

} // namespace

Result<Played> play(const BenchJob& job, const Workplace& at, const PlayOptions& options) {
  FaultQuestion question;
  question.net = job.net;
  question.meter = at.meter.id;
  question.expected = expectedFromWalks(job.good, at.board.lookup.get(), at.data.probing.kinds,
                                        at.data.probing.meters, {at.data.probing.rules.variants, {}});
  Played out;
  const auto begun = std::chrono::steady_clock::now();
  std::set<std::tuple<std::string, std::string, ReadingMode>> book;
  const auto note = [&](const Shown& shown, Seconds effort, std::string asked) {
    const Reading& r = shown.reading;
    const bool fresh = book.emplace(r.point.label, r.other.label, r.mode).second;
    question.readings.push_back(r);
    if (options.eachOnce) question.unreachable.push_back(r.point.label);
    out.taken.push_back({shown, effort, std::move(asked), !fresh});
  };
  const auto label = pinLabel(*at.board.board, job.known.front());
  ProbePlace first;
  first.label = label;
  first.object = first.pin = job.known.front();
  const auto start = read(job, at.truth, at.meter, first, nullptr, ReadingMode::diode, 0);
  note(start.value(), Seconds(firstEffort), "diode at " + label + " (walk)");
  auto now = solveFault(at.board, question, at.data);
  for (; now; now = solveFault(at.board, question, at.data, &*now)) {
    if (options.watch) options.watch(*now, out.taken.back());
    if (now->next.stop || now->next.ranked.empty()) break;
    const bool late = std::chrono::steady_clock::now() - begun > mostTime;
    if ((out.unfinished = late || out.taken.size() >= mostReadings)) break;
    const auto probe = options.choose ? options.choose(*now, out.taken) : now->next.ranked.front();
    if (!probe) break;
    const auto& places = now->isolation.places;
    const ProbePlace* other = probe->other ? &places[*probe->other] : nullptr;
    const auto reading =
        read(job, at.truth, at.meter, places[probe->place], other, probe->mode, out.taken.size());
    if (reading)
      note(*reading, probe->effort, wordsOf(*now, *probe));
    else
      question.unreachable.push_back(places[probe->place].label);
    if (question.unreachable.size() > 2 * mostReadings) break;
  }
  if (!now) return failure(now.error());
  out.end = std::move(*now);
  // Where it stopped for good no wire was looked for yet.
  if (out.end.jumpers.empty())
    out.end.jumpers =
        sharedJumpers(*at.board.lookup, out.end.line, out.end.isolation, out.end.suspects, at.data.jumper);
  out.claim = topClaim(out.end, *at.board.lookup, out.end.jumpers);
  out.right =
      out.claim.repair &&
      restores(*job.line, job.fault, mendingOf(*job.line, at.truth, *out.claim.repair, job.fault.crack));
  out.onTruth = massOnTruth(job, at.truth, out.end.line, out.end.isolation);
  return out;
}

} // namespace netmend::simulation
