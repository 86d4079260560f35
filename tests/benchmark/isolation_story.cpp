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

Outcome playJob(const Worlds& worlds, const RepairData& data, const MeterProfile& meter, std::uint64_t job) {
  Outcome out;
  out.job = job;
  out.grade = grades[job % grades.size()];
  const auto world = worlds.at(job / grades.size());
  if (!world) return out;
  const SimBoard& board = worlds.boards()[world->board];
  const Workplace at{board.known[job % grades.size()], board.truth(), data, meter};
  const auto start = std::chrono::steady_clock::now();
  const auto played = play(world->job, at);
  out.took = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  if (!played) return out;
  out.played = true;
  out.odd = world->job.population.odd;
  out.family = world->job.fault.family;
  out.fault = board.name + ": " + wordsFor(board.truth().board(), *world->job.line, world->job.fault);
  out.said = played->claim.said;
  out.right = played->right;
  out.onTruth = played->onTruth;
  out.unfinished = played->unfinished;
  std::map<std::string, std::size_t> atOne;
  for (const Taken& taken : played->taken) {
    ++out.readings;
    out.repeats += taken.again ? 1 : 0;
    out.effort += taken.effort.value;
    const auto& r = taken.reading;
    out.mostAtOne =
        std::max(out.mostAtOne,
                 ++atOne[fmt::format("{}|{}|{}", r.point.label, r.other.label, static_cast<int>(r.mode))]);
  }
  return out;
}

std::string storyOf(const Worlds& worlds, const RepairData& data, const MeterProfile& meter,
                    std::uint64_t number) {
  const auto world = worlds.at(number / grades.size());
  if (!world) return "no such job\n";
  const SimBoard& board = worlds.boards()[world->board];
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
  const Workplace at{board.known[number % grades.size()], board.truth(), data, meter};
  const auto played = play(job, at, [&](const FaultCase& now, const Taken* taken) {
    if (taken)
      out += fmt::format("{}{}: {}{}\n", taken->asked, taken->again ? " (again)" : "",
                         wordsOf(taken->reading), taken->slipped ? " (slipped)" : "");
    out += wordsOf(truth, now);
  });
  if (!played) return out + "could not be solved\n";
  out += fmt::format("stop. claim {:.3f} {}: {}; on the right repairs {:.3f}\n", played->claim.said,
                     played->claim.repair ? wordsFor(*played->claim.repair, truth) : "none",
                     played->right ? "right" : "WRONG", played->onTruth);
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
