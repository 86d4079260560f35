#include "netmend/casework/jumper_case.h"

#include "netmend/jobbook/record.h"

namespace netmend {

namespace {

constexpr Length samePlace{10'000};

/// What the bare copper at a place of the line should read if this class were the fault.
std::optional<ExpectedReading> predictionAt(const FaultCase& fault, const Landing& landing,
                                            std::size_t faultClass) {
  const auto& places = fault.isolation.places;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i].at || distance(*places[i].at, landing.at) >= samePlace) continue;
    const Prediction predicted = predictDiode(fault.isolation, i, faultClass);
    return ExpectedReading{predicted.overLimit > 0.5, predicted.mean, 2.0 * predicted.spread};
  }
  return std::nullopt;
}

} // namespace

Result<std::vector<std::size_t>> suspectedCut(const FaultCase& fault) {
  const Suspect* suspect = leadingBreak(fault);
  if (suspect == nullptr)
    return failure({pattern("core", "no break leads the suspects, so there is nothing to bridge"), "", "",
                    fault.suspects.ranked.empty() ? pattern("core", "no suspects")
                                                  : asItIs(fault.suspects.ranked.front().text),
                    pattern("core", "more readings")});
  std::vector<std::size_t> cut;
  for (const FaultPlace& place : suspect->places)
    if (place.edge) cut.push_back(*place.edge);
  if (cut.empty())
    return failure(
        {pattern("core", "the copper of the suspected stretch is unknown, so its ends cannot be told"), "",
         "", suspect->text, pattern("core", "the track drawn")});
  return cut;
}

Result<JumperProposals> proposeJumpers(const Lookup& lookup, const FaultCase& fault,
                                       const std::vector<std::size_t>& cut, const RepairData& data,
                                       std::size_t most, Fact<Amperes> current) {
  JumperRequest request;
  request.graph = &fault.line.graph;
  request.cut = cut;
  request.net = fault.line.nets.empty() ? NetId{} : fault.line.nets.front();
  request.most = most;
  request.current = current;
  return proposeJumpers(lookup, request, data.jumper);
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

RepairAction actionFor(const Board& board, const FaultCase& fault, const JumperProposal& proposal,
                       const WorkSteps& data) {
  const Suspect* suspect = leadingBreak(fault);
  return toJumperAction(proposal, stepsFor(fault, proposal, data), lineName(board, fault.line),
                        suspect != nullptr ? suspect->text : "break at the edges named by hand");
}

std::vector<NetId> linesOf(const std::vector<RepairAction>& actions, const Lookup& lookup,
                           const BoardGraph& graph) {
  std::vector<NetId> out;
  for (const RepairAction& action : actions)
    for (const NetId net : lookup.netsNamed(action.jumper ? action.jumper->net : action.target)) {
      const Line line = lineOf(lookup, graph, net);
      out.insert(out.end(), line.nets.begin(), line.nets.end());
    }
  return out;
}

} // namespace netmend
