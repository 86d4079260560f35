#include <fmt/format.h>

#include "command.h"
#include "fault_case.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/casework/jumper_case.h"
#include "pictures.h"

namespace netmend {

namespace {

struct RouteOptions {
  FaultOptions fault;
  std::string job;
  std::vector<std::size_t> edges;
  std::size_t most = 3;
  std::size_t choose = 0;
  double current = 0.0; ///< A; nought: not said
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
                     {"current_A", p.wire.current.value.value},
                     {"current_from", p.wire.currentFrom},
                     {"wire", p.wire.wire.name},
                     {"wire_suffices", p.wire.suffices},
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
  out += fmt::format("     current: {}\n", p.wire.currentFrom);
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

Result<std::vector<std::size_t>> cutOf(const RouteOptions& options, const FaultCase& fault) {
  if (!options.edges.empty()) return options.edges;
  auto cut = suspectedCut(fault);
  if (cut) return cut;
  Error error = cut.error();
  error.file = options.fault.board;
  error.expected = said(pattern("core", "{}, or --edge"), error.expected);
  return failure(std::move(error));
}

Result<Answer> routeCommand(const RouteOptions& options) {
  auto withJob = options.fault;
  if (auto added = addJobReadings(withJob, options.job); !added) return failure(added.error());
  const auto solved = solveFault(withJob);
  if (!solved) return failure(solved.error());
  const FaultCase& fault = solved->fault;
  const WorkSteps& work = solved->data.work;
  const auto cut = cutOf(options, fault);
  if (!cut) return failure(cut.error());
  const auto current = options.current > 0 ? fromUser(Amperes(options.current)) : Fact<Amperes>{};
  const auto found = proposeJumpers(*solved->board.lookup, fault, *cut, solved->data, options.most, current);
  if (!found) return failure(found.error());

  Answer answer;
  answer.notices = solved->board.notices;
  for (const auto& note : found->notes)
    answer.notices.push_back(note);
  auto proposals = nlohmann::json::array();
  for (std::size_t i = 0; i < found->proposals.size(); ++i) {
    answer.text += proposalText(i + 1, found->proposals[i]);
    auto json = proposalJson(found->proposals[i]);
    auto steps = nlohmann::json::array();
    for (const Step& step : stepsFor(fault, found->proposals[i], work))
      steps.push_back({{"text", step.text}, {"check", step.check}, {"expected", step.expected}});
    json["steps"] = std::move(steps);
    proposals.push_back(std::move(json));
  }
  if (!found->whyFewer.empty()) answer.text += found->whyFewer + "\n";
  answer.json = {
      {"line", solved->line()}, {"cut", *cut}, {"proposals", proposals}, {"why_fewer", found->whyFewer}};
  if (found->proposals.empty()) {
    answer.code = ExitCode::finding;
    return answer;
  }
  const std::size_t chosen = options.choose == 0 ? 0 : options.choose - 1;
  if (chosen >= found->proposals.size())
    return failure({pattern("core", "no such proposal"), "", "--choose", std::to_string(options.choose),
                    said(pattern("core", "1 to {}"), found->proposals.size())});
  const JumperProposal& proposal = found->proposals[chosen];
  if (!options.picture.empty()) {
    if (auto drawn = drawJumper(options.picture, *solved->board.board, fault, proposal); !drawn)
      return failure(drawn.error());
    answer.text += "Picture: " + options.picture + "\n";
  }
  if (options.choose > 0) {
    const RepairAction action = actionFor(*solved->board.board, fault, proposal, work);
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
  route
      .add_option("--current", options->current,
                  "Amperes that the wire has to carry, instead of what the broken copper carries")
      ->check(CLI::Range(0.001, 1000.0));
  route.add_option("--choose", options->choose, "Put this proposal into the job as a repair action")
      ->needs(job);
  route.add_option("--picture", options->picture, "Draw the chosen (or best) proposal as PNG");
}

} // namespace netmend
