#include <fmt/format.h>

#include "command.h"
#include "fault_case.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/base/data_folder.h"
#include "netmend/casework/short_case.h"
#include "netmend/probing/words.h"
#include "netmend/words/fault.h"
#include "netmend/words/place.h"
#include "netmend/words/short.h"
#include "pictures.h"
#include "place_json.h"

namespace netmend {

namespace {

struct ShortOptions {
  FaultOptions fault;
  std::string job;
  std::vector<std::string> warm;
  std::vector<std::string> damaged;
  std::string injectAt;
  double injected = 0.0; ///< A; nought: not said
  std::string picture;
};

constexpr std::array<Word<ShortKind>, 4> shortKindWords{{{ShortKind::part, "part"},
                                                         {ShortKind::bridge, "bridge"},
                                                         {ShortKind::nearGround, "near ground"},
                                                         {ShortKind::noneOfThese, "none of these"}}};

Result<ShortQuestion> shortQuestion(const ShortOptions& options, const BoardUnderWork& board,
                                    const ProbingData& data) {
  auto withJob = options.fault;
  if (auto added = addJobReadings(withJob, options.job); !added) return failure(added.error());
  auto fault = faultQuestion(withJob, board, data);
  if (!fault) return failure(fault.error());
  ShortQuestion out;
  out.net = fault->net;
  out.pin = fault->pin;
  out.readings = std::move(fault->readings);
  out.meter = fault->meter;
  out.unreachable = fault->unreachable;
  if (options.injected > 0.0) out.injected = Amperes(options.injected);
  if (!options.injectAt.empty()) {
    const auto pin = pinLabelled(*board.lookup, options.injectAt);
    if (!pin) return failure(pin.error());
    out.injectedAt = *pin;
  }
  for (const auto& [kind, labels] : {std::pair(ShortSign::Kind::warm, &options.warm),
                                     std::pair(ShortSign::Kind::damaged, &options.damaged)})
    for (const std::string& label : *labels) {
      auto sign = signAt(*board.lookup, kind, label);
      if (!sign) return failure(sign.error());
      out.signs.push_back(*sign);
    }
  return out;
}

nlohmann::json suspectsJson(const ShortSearch& search, const PlaceNames& places) {
  auto out = nlohmann::json::array();
  for (const ShortSuspect& suspect : search.suspects) {
    auto all = nlohmann::json::array();
    for (const std::size_t i : suspect.places) {
      auto place = placeJson(search.places[i], places);
      place["probability"] = search.places[i].probability;
      all.push_back(std::move(place));
    }
    out.push_back({{"kind", wordFor(shortKindWords, suspect.kind)},
                   {"text", wordsOf(nameOf(search.places[suspect.places.front()], places))},
                   {"probability", suspect.probability},
                   {"prior", suspect.prior},
                   {"places", std::move(all)}});
  }
  return out;
}

nlohmann::json textsJson(const std::vector<Said>& all) {
  auto out = nlohmann::json::array();
  for (const Said& one : all)
    out.push_back(wordsOf(one));
  return out;
}

nlohmann::json injectionJson(const InjectionProposal& proposal, const Board& board) {
  auto nets = nlohmann::json::array();
  for (const ReachedNet& net : proposal.nets) {
    nlohmann::json one{{"net", board.nets.find(net.net)->name}};
    if (net.through) one["through"] = board.parts.find(net.through)->reference;
    if (net.rating) one["rated_V"] = net.rating->value;
    nets.push_back(std::move(one));
  }
  return {{"start_V", proposal.start.value},
          {"limit_V", proposal.limit.value},
          {"current_A", proposal.current.value},
          {"step_V", proposal.step.value},
          {"step_s", proposal.stepTime.value},
          {"most_s", proposal.duration.value},
          {"unrated", proposal.unrated},
          {"nets", nets},
          {"text", textsJson(injectionSaid(proposal, board))},
          {"cautions", textsJson(injectionCautions())}};
}

std::string suspectsText(const ShortSearch& search, const PlaceNames& places) {
  constexpr double enough = 0.95;
  std::string out;
  double sum = 0.0;
  for (const ShortSuspect& suspect : search.suspects) {
    out += fmt::format("{:5.1f} %  {}\n", suspect.probability * 100.0,
                       wordsOf(nameOf(search.places[suspect.places.front()], places)));
    sum += suspect.probability;
    if (sum >= enough) break;
  }
  return out;
}

std::string injectionText(const ShortCase& found, const Board& board) {
  if (!found.injection) return "No injection: no reading of milliohms says that this line is short.\n";
  std::string out = "Injection, if it has to be:\n";
  for (const Said& line : injectionCautions())
    out += "  ! " + wordsOf(line) + "\n";
  for (const Said& line : injectionSaid(*found.injection, board))
    out += "    " + wordsOf(line) + "\n";
  return out;
}

Result<Answer> shortCommand(const ShortOptions& options) {
  auto board = openBoard(options.fault.board);
  if (!board) return failure(board.error());
  const auto data = loadRepairData(dataFolder());
  if (!data) return failure(data.error());
  const auto question = shortQuestion(options, *board, data->probing);
  if (!question) return failure(question.error());
  const auto found = solveShort(*board, *question, *data);
  if (!found) return failure(found.error());
  const PlaceNames& places = *board->places;
  const ShortSearch& search = found->search;
  const std::string line = lineName(*board->board, found->line);
  Answer answer;
  answer.notices = board->notices;
  for (const ShortAside& aside : search.setAside)
    answer.notices.push_back(said(pattern("core", "reading at {} not used: {}"),
                                  nameOf(aside.reading.point, &places), setAsideSaid(aside)));
  answer.text = fmt::format("Line {}: {} readings used\n", line, search.observations.size());
  answer.text += suspectsText(search, places);
  if (search.saysShort())
    answer.text += fmt::format("The short itself is about {:.3g} mΩ there.\n", search.resistance.value * 1e3);
  auto probes = nlohmann::json::array();
  for (const ShortProbe& probe : found->next.ranked)
    probes.push_back({{"mode", word(probe.mode)},
                      {"point", placeJson(search.points[probe.point], places)},
                      {"seconds", probe.effort.value},
                      {"bits", probe.bits},
                      {"text", wordsOf(probeSaid(found->next, probe, search, places))}});
  if (found->next.stop)
    answer.text += "Stop probing: no point is worth its time.\n";
  else
    answer.text +=
        "Next point: " + wordsOf(probeSaid(found->next, found->next.ranked.front(), search, places)) + ".\n";
  answer.text += injectionText(*found, *board->board);
  answer.json = {{"line", line},
                 {"readings", search.observations.size()},
                 {"suspects", suspectsJson(search, places)},
                 {"short_ohm", search.resistance.value},
                 {"next_probe", {{"stop", found->next.stop}, {"ranked", std::move(probes)}}}};
  if (found->injection) answer.json["injection"] = injectionJson(*found->injection, *board->board);
  if (!options.picture.empty()) {
    const Amperes current = question->injected.value_or(data->injection.current);
    const auto pattern = dropPatternOf(*found, question->injectedAt, current);
    if (auto drawn = drawDrop(options.picture, places, *found, pattern); !drawn)
      return failure(drawn.error());
    answer.text += "Picture: " + options.picture + "\n";
  }
  answer.code = ExitCode::finding;
  return answer;
}

} // namespace

void addShortCommand(CommandLine& line, CLI::App& group) {
  const auto options = std::make_shared<ShortOptions>();
  CLI::App& command = addCommand(
      line, group, "short", "Rank the parts and places where a line may be short to ground",
      "netmend fault short --board logger.netmend-board.json --net +3V3 --reading \"milliohms C3.1 41\" "
      "--reading \"milliohms C17.1 28\" --warm C17",
      [options] { return shortCommand(*options); });
  addLineOptions(command, options->fault);
  command.add_option("--book", options->fault.book, "Job book");
  (void)addJobOption(command, options->job)->description("Take this job's readings too");
  command.add_option("--warm", options->warm, "Part or pin that warms first");
  command.add_option("--damaged", options->damaged, "Part or pin where damage is seen");
  command.add_option("--inject-at", options->injectAt, "Pin where the current of drops goes in");
  command.add_option("--injected", options->injected, "… and how much of it, in amperes")
      ->check(CLI::PositiveNumber);
  command.add_option("--picture", options->picture, "Draw the board with the predicted drop as PNG");
}

} // namespace netmend
