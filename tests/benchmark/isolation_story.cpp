#include "isolation_story.h"

#include <chrono>
#include <iostream>
#include <map>

#include <fmt/format.h>

#include "netmend/base/words.h"
#include "simulation/figures.h"

namespace netmend::benchmarks {

using namespace simulation;

namespace {

std::string wordsOf(const Reading& reading) {
  if (!reading.value) return "OL";
  return reading.mode == ReadingMode::diode ? fmt::format("{:.3f} V", *reading.value)
                                            : fmt::format("{:.1f} ohm", *reading.value);
}

std::string wordsOf(const Board& board, const FaultClass& suspect) {
  static const char* const kinds[] = {"sound", "open", "dead pin", "short to ground", "none of these"};
  const auto kind = static_cast<std::size_t>(suspect.kind);
  std::string out = kind < std::size(kinds) ? kinds[kind] : fmt::format("kind {}", kind);
  std::size_t told = 0;
  for (const FaultPlace& place : suspect.places) {
    if (++told > 4) return out + fmt::format(" … {} places", suspect.places.size());
    out += told == 1 ? ": " : ", ";
    static const char* const edges[] = {"joint", "track", "via", "contact", "way", "part"};
    if (place.edgeKind) out += fmt::format("{} ", edges[static_cast<std::size_t>(*place.edgeKind)]);
    if (place.pin) out += pinLabel(board, place.pin);
    if (place.at) out += fmt::format(" {:.1f},{:.1f}", place.at->x.mm(), place.at->y.mm());
    for (const PinId pin : place.beyond)
      out += " >" + pinLabel(board, pin);
  }
  return out;
}

std::string wordsOf(const Board& board, const FaultCase& now) {
  std::string out;
  for (std::size_t i = 0; i < std::min<std::size_t>(5, now.suspects.ranked.size()); ++i) {
    const Suspect& suspect = now.suspects.ranked[i];
    out += fmt::format("    {:6.3f}  {}\n", suspect.probability,
                       wordsOf(board, now.isolation.classes[suspect.faultClass]));
  }
  return out;
}

std::string wordsOf(const Behind& behind) {
  switch (behind.kind) {
  case Behind::Kind::nothing:
    return "-";
  case Behind::Kind::junction:
    return fmt::format("{:.3f} V n {:.2f}", behind.junction.drop, behind.junction.emission);
  case Behind::Kind::resistance:
    return fmt::format("{:.0f} ohm", behind.ohms);
  }
  return {};
}

} // namespace

namespace {

Outcome outcomeOf(const BenchJob& job, const SimBoard& board, std::size_t grade, const Played& played) {
  Outcome out;
  out.played = true;
  out.grade = grades[grade];
  out.odd = job.population.odd;
  out.family = job.fault.family;
  out.kind = kindOf(*job.line, job.fault);
  out.fault = board.name + ": " + wordsFor(board.truth().board(), *job.line, job.fault);
  out.said = played.claim.said;
  out.right = played.right;
  out.onTruth = played.onTruth;
  out.unfinished = played.unfinished;
  std::map<std::string, std::size_t> atOne;
  for (const Taken& taken : played.taken) {
    ++out.readings;
    out.repeats += taken.again ? 1 : 0;
    out.effort += taken.effort.value;
    const auto& r = taken.shown.reading;
    const auto here = fmt::format("{}|{}|{}", r.point.label, r.other.label, static_cast<int>(r.mode));
    out.mostAtOne = std::max(out.mostAtOne, ++atOne[here]);
  }
  return out;
}

} // namespace

std::array<Outcome, 3> playWorld(const Shop& shop, std::uint64_t number) {
  std::array<Outcome, 3> out;
  const auto world = shop.worlds.at(number);
  if (!world) return out;
  const BenchJob& job = world->job;
  const SimBoard& board = shop.worlds.boards()[world->board];
  const bool byShares = number < outsideFrom;
  std::optional<ExactDraws> draws;
  if (!byShares || number % 4 == 0) draws.emplace(job, board.truth(), shop.worlds.shares(), shop.meter);
  for (std::size_t grade = 0; grade < grades.size(); ++grade) {
    const Workplace at{board.known[grade], board.truth(), shop.data, shop.meter};
    const auto start = std::chrono::steady_clock::now();
    const auto played = play(job, at);
    const double took = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    if (!played) continue;
    Outcome& one = out[grade] = outcomeOf(job, board, grade, *played);
    one.job = number * grades.size() + grade;
    one.took = took;
    if (draws && !outside(job.fault.family))
      one.exactWhyNot = !draws->small() ? "line too large" : !draws->usable() ? "too few draws" : "readings";
    if (draws && draws->usable()) {
      one.exact = exactTrial(job, board.truth(), *draws, *played);
      if (one.exact) one.exactWhyNot.clear();
      if (outside(job.fault.family)) one.contradiction = draws->contradiction(played->taken);
    }
    if (!byShares) continue;
    if (number % 12 == 1) one.stable = stableTrial(at, *played);
    if (number % 12 == 3)
      if (const auto again = shop.worlds.at(number, shop.better))
        if (const auto better = play(again->job, {at.board, at.truth, at.data, shop.better}))
          one.betterMeter = ClaimMade{better->claim.said, better->right};
    if (number % 12 == 5) one.policy = policyTrial(job, at, *played);
    if (number % 12 == 7) one.best = optimalTrial(job, at, shop.worlds.shares());
  }
  return out;
}

std::string storyOf(const Shop& shop, std::uint64_t number) {
  const auto world = shop.worlds.at(number / grades.size());
  if (!world) return "no such job\n";
  const SimBoard& board = shop.worlds.boards()[world->board];
  const Board& truth = board.truth().board();
  const BenchJob& job = world->job;
  std::string out =
      fmt::format("job {}: {}, grade {}, line {}, {:.1f} C{}, population {:.3f} V own {:.2f}{}\n", number,
                  board.name, wordFor(grades[number % grades.size()]), truth.nets.find(job.net)->name,
                  job.celsius, job.toldCelsius ? "" : " (not told)", job.population.centre,
                  job.population.own, job.population.odd ? " odd pins" : "");
  for (std::size_t i = 0; i < job.line->pins.size(); ++i)
    out += fmt::format("  {:<12} good {:<20} here {}\n", pinLabel(truth, job.line->pins[i].pin),
                       wordsOf(job.design.behind[i]), wordsOf(job.specimen.behind[i]));
  for (const LineExit& exit : job.line->exits)
    out += fmt::format("  exit from {} to {} by {:.0f} ohm\n",
                       wordsFor(truth, job.line->copper.spots[exit.spot]), truth.nets.find(exit.net)->name,
                       exit.ohms);
  out += "  fault: " + wordsFor(truth, *job.line, job.fault) + "\n";
  for (const Walk& walk : job.good)
    for (const Reading& reading : walk.readings)
      out += fmt::format("  good board: {} {}\n", reading.point.label, wordsOf(reading));
  const Workplace at{board.known[number % grades.size()], board.truth(), shop.data, shop.meter};
  PlayOptions options;
  options.watch = [&](const FaultCase& now, const Taken& taken) {
    out += fmt::format("{}{}: {}{}\n", taken.asked, taken.again ? " (again)" : "",
                       wordsOf(taken.shown.reading), taken.shown.slipped ? " (slipped)" : "");
    out += wordsOf(truth, now);
  };
  const auto played = play(job, at, options);
  if (!played) return out + "could not be solved\n";
  out += fmt::format("stop. claim {:.3f} {}: {}; on the right repairs {:.3f}\n", played->claim.said,
                     played->claim.repair ? wordsFor(*played->claim.repair, truth) : "none",
                     played->right ? "right" : "WRONG", played->onTruth);
  const ExactDraws draws(job, board.truth(), shop.worlds.shares(), shop.meter);
  if (draws.usable())
    if (const auto exact = exactTrial(job, board.truth(), draws, *played))
      out += fmt::format("exactly known population: {:.3f} on this claim, {:.3f} on the right repairs\n",
                         exact->exactOnClaim, exact->exactOnTruth);
  return out;
}

void listJobs(const std::vector<Outcome>& outcomes) {
  std::cout << "job grade odd said right onTruth readings repeats effort fault\n";
  for (const Outcome& o : outcomes)
    if (o.played)
      std::cout << fmt::format("{} {} {} {:.3f} {} {:.3f} {} {} {:.0f} {:.2f} {}\n", o.job, wordFor(o.grade),
                               o.odd ? "odd" : "-", o.said, o.right ? "right" : "WRONG", o.onTruth,
                               o.readings, o.repeats, o.effort, o.took, o.fault);
}

} // namespace netmend::benchmarks
