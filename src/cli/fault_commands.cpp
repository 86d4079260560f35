#include <algorithm>

#include <fmt/format.h>

#include "command.h"
#include "fault_case.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/words.h"
#include "pictures.h"

namespace netmend {

namespace {

struct IsolateOptions {
  FaultOptions fault;
  std::string job;
  std::string picture;
};

nlohmann::json suspectJson(const Suspect& suspect, const Isolation& isolation) {
  auto places = nlohmann::json::array();
  for (const FaultPlace& place : suspect.places) {
    nlohmann::json j{{"text", place.text}, {"share", place.share}, {"way_mm", wayJsonMm(place.way)}};
    if (place.edge) j["edge"] = *place.edge;
    if (place.at) j["at_mm"] = pointJsonMm(*place.at);
    if (place.length) j["length_mm"] = place.length->mm();
    places.push_back(std::move(j));
  }
  auto evidence = nlohmann::json::array();
  for (const Evidence& e : suspect.evidence)
    evidence.push_back({{"bits", e.bits}, {"text", e.text}});
  return {{"kind", faultWord(isolation.classes[suspect.faultClass].kind)},
          {"probability", suspect.probability},
          {"text", suspect.text},
          {"explanation", suspect.explanation},
          {"places", places},
          {"evidence", evidence}};
}

nlohmann::json proposalJson(const ProbeProposal& proposal, const Isolation& isolation) {
  nlohmann::json out{{"mode", word(proposal.mode)},
                     {"point", isolation.places[proposal.place].label},
                     {"seconds", proposal.effort.value},
                     {"bits", proposal.bits},
                     {"text", proposal.text}};
  if (proposal.other) out["other"] = isolation.places[*proposal.other].label;
  return out;
}

/// Its suspects by their place in the list of suspects.
nlohmann::json jumperJson(const OneJumper& jumper, const Suspects& suspects) {
  auto mended = nlohmann::json::array();
  for (std::size_t i = 0; i < suspects.ranked.size(); ++i)
    if (std::count(jumper.classes.begin(), jumper.classes.end(), suspects.ranked[i].faultClass) > 0)
      mended.push_back(i);
  return {
      {"from", jumper.from}, {"to", jumper.to}, {"suspects", mended}, {"probability", jumper.probability}};
}

std::string isolationText(const FaultCase& fault, const std::string& line) {
  const Suspects& found = fault.suspects;
  std::string out = fmt::format("Line {}: {} readings used\n", line, fault.isolation.observations.size());
  for (std::size_t i = 0; i < found.ranked.size(); ++i) {
    const Suspect& suspect = found.ranked[i];
    if (i >= found.setSize && i >= 3) break;
    out += fmt::format("{:5.1f} %  {}\n", suspect.probability * 100.0, suspect.text);
    for (const FaultPlace& place : suspect.places)
      if (suspect.places.size() > 1)
        out += fmt::format("           {:5.1f} %  {}\n", place.share * 100.0, place.text);
    for (const Evidence& e : suspect.evidence)
      out += "         " + e.text + "\n";
  }
  out += fmt::format("The first {} hold {:.1f} %: {} places, {:.1f} mm of track{}.\n", found.setSize,
                     found.setMass * 100.0, found.setPlaces, found.setLength.mm(),
                     found.setHasUnknownLength ? " and some whose way is unknown" : "");
  for (const OneJumper& jumper : fault.jumpers)
    out += fmt::format("One jumper from {} to {} mends {} of them ({:.1f} %).\n", jumper.from, jumper.to,
                       jumper.classes.size(), jumper.probability * 100.0);
  for (const auto& text : found.contradictions)
    out += "Take again: " + text + "\n";
  out += (fault.next.stop ? "Stop probing: " : "Next probe: ") + fault.next.reason + "\n";
  if (!fault.next.stop)
    for (std::size_t i = 0; i < fault.next.ranked.size() && i < 3; ++i)
      out += fmt::format("  {}. {}\n", i + 1, fault.next.ranked[i].text);
  return out;
}

Result<Answer> isolateCommand(const IsolateOptions& options) {
  auto withJob = options.fault;
  if (auto added = addJobReadings(withJob, options.job); !added) return failure(added.error());
  const auto solved = solveFault(withJob);
  if (!solved) return failure(solved.error());
  const FaultCase& fault = solved->fault;
  Answer answer;
  answer.notices = solved->board.notices;
  for (const auto& notice : fault.isolation.notices)
    answer.notices.push_back(notice);
  for (const auto& aside : fault.isolation.setAside)
    answer.notices.push_back("reading at " + aside.reading.point.label + " not used: " + aside.reason);
  auto ranked = nlohmann::json::array();
  for (const Suspect& suspect : fault.suspects.ranked)
    ranked.push_back(suspectJson(suspect, fault.isolation));
  auto probes = nlohmann::json::array();
  for (const ProbeProposal& proposal : fault.next.ranked)
    probes.push_back(proposalJson(proposal, fault.isolation));
  auto jumpers = nlohmann::json::array();
  for (const OneJumper& jumper : fault.jumpers)
    jumpers.push_back(jumperJson(jumper, fault.suspects));
  answer.json = {
      {"line", solved->line()},
      {"readings", fault.isolation.observations.size()},
      {"suspects", ranked},
      {"set",
       {{"size", fault.suspects.setSize},
        {"mass", fault.suspects.setMass},
        {"places", fault.suspects.setPlaces},
        {"length_mm", fault.suspects.setLength.mm()}}},
      {"one_jumper", jumpers},
      {"contradictions", fault.suspects.contradictions},
      {"next_probe", {{"stop", fault.next.stop}, {"reason", fault.next.reason}, {"ranked", probes}}}};
  answer.text = isolationText(fault, solved->line());
  if (!options.picture.empty()) {
    if (auto drawn = drawSuspects(options.picture, *solved->board.board, fault); !drawn)
      return failure(drawn.error());
    answer.text += "Picture: " + options.picture + "\n";
  }
  if (!options.job.empty()) {
    auto open = openJob(options.fault.book, options.job, BookUse::change);
    if (!open) return failure(open.error());
    auto kept = open->book.setSuspects(open->job.id, toJobSuspects(fault.isolation, fault.suspects));
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
  CLI::App& group = *line.app.add_subcommand("fault", "Find where a line is open");
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
}

} // namespace netmend
