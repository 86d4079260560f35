#include <fmt/format.h>

#include "command.h"
#include "fault_case.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/base/data_folder.h"
#include "netmend/jobbook/record.h"
#include "netmend/jumper/proposal.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/probing/reading_entry.h"
#include "pictures.h"

namespace netmend {

namespace {

struct RouteOptions {
  FaultOptions fault;
  std::string job;
  std::vector<std::size_t> edges;
  std::size_t most = 3;
  std::size_t choose = 0;
  std::string picture;
};

nlohmann::json landingJson(const Landing& landing) {
  return {{"label", landing.label},
          {"at_mm", pointJsonMm(landing.at)},
          {"side", landing.side == Side::top ? "top" : "bottom"},
          {"price", landing.price().value}};
}

nlohmann::json proposalJson(const JumperProposal& p) {
  auto terms = nlohmann::json::array();
  for (const ScoreTerm& term : p.terms)
    terms.push_back({{"name", term.name}, {"text", term.text}, {"price", term.price.value}});
  nlohmann::json out{{"from", landingJson(p.from)},
                     {"to", landingJson(p.to)},
                     {"side", p.side == Side::top ? "top" : "bottom"},
                     {"way_mm", wayJsonMm(p.way)},
                     {"length_mm", p.length.mm()},
                     {"wire", p.wire.wire.name},
                     {"wire_reasons", p.wire.reasons},
                     {"warnings", p.wire.warnings},
                     {"cut_length_mm", p.wire.cutLength.mm()},
                     {"terms", terms},
                     {"total", p.total.value},
                     {"why_not_straight", p.whyNotStraight},
                     {"difference", p.difference},
                     {"proposal_notes", p.notes}};
  if (p.leastClearance.known()) {
    out["least_clearance_mm"] = p.leastClearance.value.mm();
    out["clearance_to"] = p.clearanceTo;
  }
  return out;
}

std::string proposalText(std::size_t number, const JumperProposal& p) {
  std::string out = fmt::format("{}. {} to {}, {} side, {:.1f} mm, {}\n", number, p.from.label, p.to.label,
                                p.side == Side::top ? "top" : "bottom", p.length.mm(), p.wire.wire.name);
  for (const ScoreTerm& term : p.terms)
    out += fmt::format("     {:6.1f}  {}: {}\n", term.price.value, term.name, term.text);
  out += fmt::format("     {:6.1f}  in all\n", p.total.value);
  if (p.leastClearance.known())
    out += fmt::format("     least clearance {:.2f} mm, to {}\n", p.leastClearance.value.mm(), p.clearanceTo);
  if (!p.whyNotStraight.empty()) out += "     " + p.whyNotStraight + "\n";
  for (const auto& note : p.notes)
    out += "     " + note + "\n";
  for (const auto& warning : p.wire.warnings)
    out += "     warning: " + warning + "\n";
  return out;
}

/// What the bare copper at a place of the line should read if the leading suspect is right.
std::string predictionAt(const FaultCase& fault, const Landing& landing, std::size_t faultClass) {
  const auto& places = fault.isolation.places;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const bool here = places[i].at && distance(*places[i].at, landing.at) < Length(10'000);
    if (!here) continue;
    const Prediction predicted = predictDiode(fault.isolation, i, faultClass);
    if (predicted.overLimit > 0.5) return "OL in diode mode";
    return fmt::format("{} ± {} in diode mode", readingText(predicted.mean.value, ReadingMode::diode),
                       readingText(2.0 * predicted.spread.value, ReadingMode::diode));
  }
  return "";
}

std::vector<Step> stepsFor(const FaultCase& fault, const JumperProposal& proposal, const WorkSteps& data) {
  WorkPrediction prediction;
  if (const Suspect* suspect = leadingBreak(fault)) {
    prediction.atFrom = predictionAt(fault, proposal.from, suspect->faultClass);
    prediction.atTo = predictionAt(fault, proposal.to, suspect->faultClass);
    prediction.bridged = predictionAt(fault, proposal.from, 0); // class 0 is the sound line
  }
  return jumperSteps(data, proposal, prediction);
}

Result<std::vector<std::size_t>> cutOf(const RouteOptions& options, const FaultCase& fault) {
  if (!options.edges.empty()) return options.edges;
  const Suspect* suspect = leadingBreak(fault);
  if (suspect == nullptr) {
    return failure({"no break leads the suspects, so there is nothing to bridge", options.fault.board, "",
                    fault.suspects.ranked.empty() ? "no suspects" : fault.suspects.ranked.front().text,
                    "more readings, or --edge"});
  }
  std::vector<std::size_t> cut;
  for (const FaultPlace& place : suspect->places)
    if (place.edge) cut.push_back(*place.edge);
  if (cut.empty())
    return failure({"the copper of the suspected stretch is unknown, so its ends cannot be told",
                    options.fault.board, "", suspect->text, "the track drawn, or --edge"});
  return cut;
}

Result<Answer> routeCommand(const RouteOptions& options) {
  auto withJob = options.fault;
  if (auto added = addJobReadings(withJob, options.job); !added) return failure(added.error());
  const auto solved = solveFault(withJob);
  if (!solved) return failure(solved.error());
  const FaultCase& fault = *solved;
  const auto cut = cutOf(options, fault);
  if (!cut) return failure(cut.error());
  const auto data = loadJumperData(dataFolder());
  if (!data) return failure(data.error());
  const auto work = loadWorkSteps(dataFile("work_steps.json"));
  if (!work) return failure(work.error());

  JumperRequest request;
  request.graph = &fault.line.graph;
  request.cut = *cut;
  request.net = fault.line.nets.empty() ? NetId{} : fault.line.nets.front();
  request.most = options.most;
  const auto found = proposeJumpers(*fault.board.lookup, request, *data);
  if (!found) return failure(found.error());

  Answer answer;
  answer.notices = fault.board.notices;
  for (const auto& note : found->notes)
    answer.notices.push_back(note);
  auto proposals = nlohmann::json::array();
  for (std::size_t i = 0; i < found->proposals.size(); ++i) {
    answer.text += proposalText(i + 1, found->proposals[i]);
    auto json = proposalJson(found->proposals[i]);
    auto steps = nlohmann::json::array();
    for (const Step& step : stepsFor(fault, found->proposals[i], *work))
      steps.push_back({{"text", step.text}, {"check", step.check}, {"expected", step.expected}});
    json["steps"] = std::move(steps);
    proposals.push_back(std::move(json));
  }
  if (!found->whyFewer.empty()) answer.text += found->whyFewer + "\n";
  answer.json = {
      {"line", lineName(fault)}, {"cut", *cut}, {"proposals", proposals}, {"why_fewer", found->whyFewer}};
  if (found->proposals.empty()) {
    answer.code = ExitCode::finding;
    return answer;
  }
  const std::size_t chosen = options.choose == 0 ? 0 : options.choose - 1;
  if (chosen >= found->proposals.size())
    return failure({"no such proposal", "", "--choose", std::to_string(options.choose),
                    "1 to " + std::to_string(found->proposals.size())});
  const JumperProposal& proposal = found->proposals[chosen];
  if (!options.picture.empty()) {
    if (auto drawn = drawJumper(options.picture, fault, proposal); !drawn) return failure(drawn.error());
    answer.text += "Picture: " + options.picture + "\n";
  }
  if (options.choose > 0) {
    const Suspect* suspect = leadingBreak(fault);
    const auto action =
        toJumperAction(proposal, stepsFor(fault, proposal, *work), lineName(fault),
                       suspect != nullptr ? suspect->text : "break at the edges named by hand");
    const auto kept = keepAction(options.fault.book, options.job, action);
    if (!kept) return failure(kept.error());
    answer.text +=
        fmt::format("Proposal {} is repair action {} of job {}.\n", options.choose, kept->value, options.job);
    answer.json["action"] = kept->value;
  }
  return answer;
}

} // namespace

void addJumperCommands(CommandLine& line) {
  CLI::App& group = *line.app.add_subcommand("jumper", "Bridge a break with a wire");
  group.require_subcommand(1);
  const auto options = std::make_shared<RouteOptions>();
  CLI::App& route = addCommand(line, group, "route",
                               "Propose landings and ways for a jumper round the leading break of a line",
                               "netmend jumper route --board logger.netmend-board.json --net KEY_COL3 --walk "
                               "bad.netmend-walk.json --good good-*.netmend-walk.json",
                               [options] { return routeCommand(*options); });
  addFaultOptions(route, options->fault);
  auto* job = addJobOption(route, options->job);
  route.add_option("--edge", options->edges, "Take these edges of the line (fault isolate --json) as broken");
  route.add_option("--most", options->most, "Proposals wanted")
      ->check(CLI::Range(1, 9))
      ->capture_default_str();
  route.add_option("--choose", options->choose, "Put this proposal into the job as a repair action")
      ->needs(job);
  route.add_option("--picture", options->picture, "Draw the chosen (or best) proposal as PNG");
}

} // namespace netmend
