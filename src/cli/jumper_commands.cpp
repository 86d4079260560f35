#include <fmt/format.h>

#include "command.h"
#include "fault_case.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/board/words.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/words/jumper.h"
#include "netmend/words/step.h"
#include "pictures.h"
#include "place_json.h"

namespace netmend {

namespace {

struct RouteOptions {
  FaultOptions fault;
  std::string job;
  std::vector<std::size_t> edges;
  std::size_t most = 3;
  std::size_t choose = 0;
  double current = 0.0; ///< A; nought: not said
  bool why = false;
  std::string picture;
};

nlohmann::json wordsJson(const std::vector<Said>& all) {
  auto out = nlohmann::json::array();
  for (const Said& one : all)
    out.push_back(wordsOf(one));
  return out;
}

nlohmann::json landingJson(const Landing& landing, const PlaceNames& places) {
  auto out = placeJson(landing, places);
  out["side"] = wordFor(boardWords<Side>, landing.side);
  out["price"] = landing.price().value;
  return out;
}

nlohmann::json proposalJson(const JumperProposal& p, const PlaceNames& places) {
  auto terms = nlohmann::json::array();
  for (const ScoreTerm& term : p.terms)
    terms.push_back({{"name", wordsOf(nameOf(term, p, places))},
                     {"text", wordsOf(figuresOf(term))},
                     {"price", term.price.value}});
  nlohmann::json out{{"from", landingJson(p.from, places)},
                     {"to", landingJson(p.to, places)},
                     {"side", wordFor(boardWords<Side>, p.side)},
                     {"way_mm", wayJsonMm(p.way)},
                     {"length_mm", p.length.mm()},
                     {"current_A", p.wire.current.value.value},
                     {"current_from", wordsOf(currentSaid(p.wire))},
                     {"wire", p.wire.wire.name},
                     {"wire_suffices", p.wire.suffices()},
                     {"wire_reasons", wordsJson(wireReasons(p.wire))},
                     {"warnings", wordsJson(wireWarnings(p.wire))},
                     {"cut_length_mm", p.wire.cutLength.mm()},
                     {"terms", terms},
                     {"total", p.total.value},
                     {"why_not_straight", wordsOf(whyNotStraight(p.detour))},
                     {"difference", wordsOf(differenceSaid(p, places))},
                     {"proposal_notes", wordsJson(notesOn(p, places))}};
  if (p.leastClearance.known()) {
    out["least_clearance_mm"] = p.leastClearance.value.mm();
    out["clearance_to"] = wordsOf(nameOf(p.clearanceTo));
  }
  return out;
}

std::string proposalText(std::size_t number, const JumperProposal& p, const PlaceNames& places, bool why) {
  std::string out =
      fmt::format("{}. {} to {}, {} side, {:.1f} mm, {}\n", number, wordsOf(nameOf(p.from, places)),
                  wordsOf(nameOf(p.to, places)), wordsOf(nameOf(p.side)), p.length.mm(), p.wire.wire.name);
  if (why) {
    out += fmt::format("     current: {}\n", wordsOf(currentSaid(p.wire)));
    for (const ScoreTerm& term : p.terms)
      out += fmt::format("     {:6.1f}  {}: {}\n", term.price.value, wordsOf(nameOf(term, p, places)),
                         wordsOf(figuresOf(term)));
    out += fmt::format("     {:6.1f}  in all\n", p.total.value);
  }
  if (p.leastClearance.known())
    out += fmt::format("     least clearance {:.2f} mm, to {}\n", p.leastClearance.value.mm(),
                       wordsOf(nameOf(p.clearanceTo)));
  if (why) out += "     " + wordsOf(whyNotStraight(p.detour)) + "\n";
  for (const Said& note : notesOn(p, places))
    out += "     " + wordsOf(note) + "\n";
  for (const Said& warning : wireWarnings(p.wire))
    out += "     warning: " + wordsOf(warning) + "\n";
  return out;
}

/// Places of the line where no wire is soldered, and why not.
nlohmann::json excludedJson(const std::vector<ExcludedLanding>& excluded) {
  auto out = nlohmann::json::array();
  for (const ExcludedLanding& each : excluded)
    out.push_back({{"point", each.point}, {"why", wordsOf(whyExcluded(each))}});
  return out;
}

std::string excludedText(const std::vector<ExcludedLanding>& excluded) {
  std::string out;
  for (const ExcludedLanding& each : excluded)
    out += fmt::format("  no landing: {}: {}\n", each.point, wordsOf(whyExcluded(each)));
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
  for (const Said& note : notesOn(*found))
    answer.notices.push_back(note);
  const PlaceNames& places = *solved->board.places;
  auto proposals = nlohmann::json::array();
  for (std::size_t i = 0; i < found->proposals.size(); ++i) {
    answer.text += proposalText(i + 1, found->proposals[i], places, options.why);
    auto json = proposalJson(found->proposals[i], places);
    auto steps = nlohmann::json::array();
    const RepairAction action = actionFor(solved->board, fault, found->proposals[i], work);
    for (const WorkStep& step : action.steps)
      steps.push_back(stepJson(step, action));
    json["steps"] = std::move(steps);
    proposals.push_back(std::move(json));
  }
  if (options.why) answer.text += excludedText(found->excluded);
  const std::string fewer = wordsOf(whyFewer(*found));
  if (!fewer.empty()) answer.text += fewer + "\n";
  answer.json = {{"line", solved->line()},
                 {"cut", *cut},
                 {"proposals", proposals},
                 {"why_fewer", fewer},
                 {"excluded", excludedJson(found->excluded)}};
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
    if (auto drawn = drawJumper(options.picture, places, fault, proposal); !drawn)
      return failure(drawn.error());
    answer.text += "Picture: " + options.picture + "\n";
  }
  if (options.choose > 0) {
    const RepairAction action = actionFor(solved->board, fault, proposal, work);
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
  route.add_flag("--why", options->why, "What the scores and the wire are made from");
  route.add_option("--picture", options->picture, "Draw the chosen (or best) proposal as PNG");
}

} // namespace netmend
