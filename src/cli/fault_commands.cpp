#include <algorithm>

#include <fmt/format.h>

#include "command.h"
#include "fault_case.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/words.h"
#include "netmend/words/fault.h"
#include "netmend/words/jumper.h"
#include "netmend/words/place.h"
#include "pictures.h"
#include "place_json.h"

namespace netmend {

namespace {

struct IsolateOptions {
  FaultOptions fault;
  std::string job;
  std::string picture;
  bool why = false;
};

nlohmann::json suspectJson(const Board& board, const FaultCase& fault, const Suspect& suspect) {
  const FaultClass& faultClass = fault.isolation.classes[suspect.faultClass];
  auto places = nlohmann::json::array();
  for (const FaultPlace& place : suspect.places) {
    auto j = placeJson(board, fault, place);
    j["share"] = place.share;
    j["way_mm"] = wayJsonMm(place.way);
    if (place.edge) j["edge"] = *place.edge;
    if (place.length) j["length_mm"] = place.length->mm();
    places.push_back(std::move(j));
  }
  auto evidence = nlohmann::json::array();
  for (const Evidence& e : suspect.evidence)
    evidence.push_back({{"bits", e.bits},
                        {"at", placeJson(fault, fault.isolation.observations[e.observation].place)},
                        {"text", wordsOf(evidenceSaid(toJobEvidence(fault.isolation, fault.names, e)))}});
  return {{"kind", wordFor(faultKindWords, faultClass.kind)},
          {"probability", suspect.probability},
          {"prior", suspect.prior},
          {"text", wordsOf(nameOf(faultClass, fault.names))},
          {"explanation", wordsOf(explanationOf(toJobSuspect(fault.isolation, fault.names, suspect)))},
          {"places", places},
          {"evidence", evidence}};
}

nlohmann::json proposalJson(const FaultCase& fault, const ProbeProposal& probe) {
  nlohmann::json out{{"mode", word(probe.mode)},
                     {"point", placeJson(fault, probe.place)},
                     {"seconds", probe.effort.value},
                     {"bits", probe.bits},
                     {"line", wordsOf(probeLine(fault.next, probe))},
                     {"text", wordsOf(probeReasons(fault.names, fault.next, probe))}};
  if (probe.other) out["other"] = placeJson(fault, *probe.other);
  return out;
}

/// Its suspects by their place in the list of suspects.
nlohmann::json jumperJson(const OneJumper& jumper, const Suspects& suspects, const PlaceNames& places) {
  auto mended = nlohmann::json::array();
  for (std::size_t i = 0; i < suspects.ranked.size(); ++i)
    if (std::count(jumper.classes.begin(), jumper.classes.end(), suspects.ranked[i].faultClass) > 0)
      mended.push_back(i);
  return {{"from", placeJson(jumper.from, places)},
          {"to", placeJson(jumper.to, places)},
          {"suspects", mended},
          {"probability", jumper.probability}};
}

std::vector<std::string> takenAgain(const FaultCase& fault) {
  std::vector<std::string> out;
  for (const Said& one : readingsToTakeAgain(fault.isolation, fault.names, fault.suspects))
    out.push_back(wordsOf(one));
  return out;
}

std::string suspectsText(const FaultCase& fault, bool why) {
  const Suspects& found = fault.suspects;
  std::string out;
  for (std::size_t i = 0; i < found.ranked.size(); ++i) {
    const Suspect& suspect = found.ranked[i];
    if (i >= found.setSize && i >= 3) break;
    out += fmt::format("{:5.1f} %  {}\n", suspect.probability * 100.0,
                       wordsOf(nameOf(fault.isolation.classes[suspect.faultClass], fault.names)));
    for (const FaultPlace& place : suspect.places)
      if (suspect.places.size() > 1)
        out += fmt::format("           {:5.1f} %  {}\n", place.share * 100.0,
                           wordsOf(nameOf(fault.names.fault(place))));
    if (!why) continue;
    for (const Evidence& e : suspect.evidence)
      out += "         " + wordsOf(evidenceSaid(toJobEvidence(fault.isolation, fault.names, e))) + "\n";
  }
  return out;
}

std::string nextText(const FaultCase& fault, bool why) {
  const NextProbe& next = fault.next;
  const std::string reasons = wordsOf(adviceReasons(fault.isolation, fault.names, next));
  if (next.stop) return "Stop probing: " + reasons + "\n";
  const ProbeProposal& first = next.ranked.front();
  std::string out = "Next probe: " + wordsOf(nameOf(fault.names.probe(first.place)));
  if (first.other) out += " to " + wordsOf(nameOf(fault.names.probe(*first.other)));
  out += fmt::format(", {}. {}\n", word(first.mode), wordsOf(probeLine(next, first)));
  if (!why) return out;
  out += "  " + reasons + "\n";
  for (std::size_t i = 0; i < next.ranked.size() && i < 3; ++i)
    out += fmt::format("  {}. {}\n", i + 1, wordsOf(probeReasons(fault.names, next, next.ranked[i])));
  return out;
}

std::string isolationText(const FaultCase& fault, const std::string& line, const PlaceNames& places,
                          bool why) {
  const Suspects& found = fault.suspects;
  std::string out = fmt::format("Line {}: {} readings used\n", line, fault.isolation.observations.size());
  out += suspectsText(fault, why);
  out += fmt::format("The first {} hold {:.1f} %: {} places, {:.1f} mm of track{}.\n", found.setSize,
                     found.setMass * 100.0, found.setPlaces, found.setLength.mm(),
                     found.setHasUnknownLength ? " and some whose way is unknown" : "");
  for (const OneJumper& jumper : fault.jumpers)
    out += fmt::format("One jumper from {} to {} mends {} of them ({:.1f} %).\n",
                       wordsOf(nameOf(jumper.from, places)), wordsOf(nameOf(jumper.to, places)),
                       jumper.classes.size(), jumper.probability * 100.0);
  for (const std::string& text : takenAgain(fault))
    out += "Take again: " + text + ".\n";
  return out + nextText(fault, why) + wordsOf(rightAndLeftSaid()) + "\n";
}

void addNotices(const FaultCase& fault, const PlaceNames& places, std::vector<Said>& notices) {
  for (const LineNotice& notice : fault.isolation.notices)
    notices.push_back(noticeSaid(notice));
  for (const SetAside& aside : fault.isolation.setAside)
    notices.push_back(said(pattern("core", "reading at {} not used: {}"),
                           nameOf(aside.reading.point, &places), setAsideSaid(aside)));
}

nlohmann::json answerJson(const SolvedFault& solved, const PlaceNames& places) {
  const FaultCase& fault = solved.fault;
  auto ranked = nlohmann::json::array();
  for (const Suspect& suspect : fault.suspects.ranked)
    ranked.push_back(suspectJson(*solved.board.board, fault, suspect));
  auto probes = nlohmann::json::array();
  for (const ProbeProposal& probe : fault.next.ranked)
    probes.push_back(proposalJson(fault, probe));
  auto jumpers = nlohmann::json::array();
  for (const OneJumper& jumper : fault.jumpers)
    jumpers.push_back(jumperJson(jumper, fault.suspects, places));
  return {{"line", solved.line()},
          {"readings", fault.isolation.observations.size()},
          {"suspects", ranked},
          {"set",
           {{"size", fault.suspects.setSize},
            {"mass", fault.suspects.setMass},
            {"places", fault.suspects.setPlaces},
            {"length_mm", fault.suspects.setLength.mm()}}},
          {"one_jumper", jumpers},
          {"contradictions", takenAgain(fault)},
          {"next_probe",
           {{"stop", fault.next.stop},
            {"reason", wordsOf(adviceReasons(fault.isolation, fault.names, fault.next))},
            {"ranked", probes}}}};
}

Result<Answer> isolateCommand(const IsolateOptions& options) {
  auto withJob = options.fault;
  if (auto added = addJobReadings(withJob, options.job); !added) return failure(added.error());
  const auto solved = solveFault(withJob);
  if (!solved) return failure(solved.error());
  const FaultCase& fault = solved->fault;
  const PlaceNames& places = *solved->board.places;
  Answer answer;
  answer.notices = solved->board.notices;
  addNotices(fault, places, answer.notices);
  answer.json = answerJson(*solved, places);
  answer.text = isolationText(fault, solved->line(), places, options.why);
  if (!options.picture.empty()) {
    if (auto drawn = drawSuspects(options.picture, *solved->board.board, fault); !drawn)
      return failure(drawn.error());
    answer.text += "Picture: " + options.picture + "\n";
  }
  if (!options.job.empty()) {
    auto open = openJob(options.fault.book, options.job, BookUse::change);
    if (!open) return failure(open.error());
    auto kept =
        open->book.setSuspects(open->job.id, toJobSuspects(fault.isolation, fault.names, fault.suspects));
    if (!kept) return failure(kept.error());
    answer.text += "Suspects kept in job " + options.job + ".\n";
  }
  const bool sound =
      !fault.suspects.ranked.empty() &&
      fault.isolation.classes[fault.suspects.ranked.front().faultClass].kind == FaultKind::sound;
  if (!sound) answer.code = ExitCode::finding;
  return answer;
}

} // namespace

void addFaultCommands(CommandLine& line) {
  CLI::App& group = *line.app.add_subcommand("fault", "Find where a line is open or short");
  group.require_subcommand(1);
  const auto options = std::make_shared<IsolateOptions>();
  CLI::App& isolate = addCommand(
      line, group, "isolate", "Rank the places where a line may be broken and propose the next probe",
      "netmend fault isolate --board logger.netmend-board.json --net KEY_COL3 --walk bad.netmend-walk.json "
      "--good good-*.netmend-walk.json --reading \"C23.1 0.47\"",
      [options] { return isolateCommand(*options); });
  addFaultOptions(isolate, options->fault);
  (void)addJobOption(isolate, options->job)
      ->description("Take this job's readings too, and keep the suspects in it");
  isolate.add_option("--picture", options->picture, "Draw the board with the suspects as PNG");
  isolate.add_flag("--why", options->why,
                   "What every reading says for and against a suspect, and the figures");
  addShortCommand(line, group);
}

} // namespace netmend
