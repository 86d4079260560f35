#include "netmend/casework/jumper_case.h"

#include <algorithm>

#include "netmend/jobbook/record.h"

namespace netmend {

namespace {

constexpr double leastMended = 0.001; ///< a suspect below it changes no per cent
constexpr Length sameSpot{10'000};    ///< on one track

/// The place of the line that this landing is soldered to.
bool isAt(const ProbePlace& place, const Landing& landing) {
  if (place.object != landing.copper) return false;
  if (std::holds_alternative<ViaId>(landing.copper)) return place.layer == landing.layer;
  return !std::holds_alternative<TrackId>(landing.copper) ||
         (place.at && place.layer == landing.layer && distance(*place.at, landing.at) < sameSpot);
}

/// … or else, of a pad that stands and falls with its pin, the pin.
std::optional<std::size_t> placeOf(const Isolation& isolation, const Landing& landing) {
  const auto& places = isolation.places;
  const auto index = [&](auto found) -> std::optional<std::size_t> {
    if (found == places.end()) return std::nullopt;
    return static_cast<std::size_t>(found - places.begin());
  };
  const auto own = index(std::find_if(places.begin(), places.end(),
                                      [&](const ProbePlace& place) { return isAt(place, landing); }));
  const PinId* pin = std::get_if<PinId>(&landing.object);
  if (own || pin == nullptr) return own;
  return index(
      std::find_if(places.begin(), places.end(), [&](const ProbePlace& place) { return place.pin == *pin; }));
}

/// What the bare copper at a place of the line should read if this class were the fault.
std::optional<ExpectedReading> predictionAt(const FaultCase& fault, const Landing& landing,
                                            std::size_t faultClass) {
  const auto place = placeOf(fault.isolation, landing);
  if (!place) return std::nullopt;
  const Prediction predicted = predictDiode(fault.isolation, *place, faultClass);
  // A check that stops the work leaves room for the meter and for a hand that presses otherwise.
  constexpr Volts least{0.010};
  return ExpectedReading{predicted.overLimit > 0.5, predicted.mean, std::max(3.0 * predicted.spread, least)};
}

/// Of two pieces, once they are joined. One with nothing behind it reads what the other does; two in parallel
/// read lower than the lower one by up to 30 mV (n·Vt·ln 2 of two equal junctions, n up to 1.5, and half a
/// series drop).
std::optional<ExpectedReading> joined(const std::optional<ExpectedReading>& a,
                                      const std::optional<ExpectedReading>& b) {
  if (!a || !b) return std::nullopt;
  if (a->overLimit) return b;
  if (b->overLimit) return a;
  constexpr Volts most{0.030};
  ExpectedReading result = a->value < b->value ? *a : *b;
  result.value = result.value - 0.5 * most;
  result.giveOrTake = result.giveOrTake + 0.5 * most;
  return result;
}

} // namespace

Result<std::vector<std::size_t>> suspectedCut(const FaultCase& fault) {
  const Suspect* suspect = leadingBreak(fault);
  if (suspect == nullptr)
    return failure({.message = pattern("core", "no break leads the suspects, so there is nothing to bridge"),
                    .expected = pattern("core", "more readings")});
  std::vector<std::size_t> cut;
  for (const FaultPlace& place : suspect->places)
    if (place.edge) cut.push_back(*place.edge);
  if (cut.empty())
    return failure({.message = pattern("core", "the copper of the suspected stretch is unknown, so its ends "
                                               "cannot be told"),
                    .expected = pattern("core", "the track drawn")});
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

RepairAction actionFor(const BoardUnderWork& board, const FaultCase& fault, const JumperProposal& proposal,
                       const WorkSteps& data) {
  WorkPrediction prediction;
  std::optional<FoundFault> because;
  if (const Suspect* suspect = leadingBreak(fault)) {
    prediction.atFrom = predictionAt(fault, proposal.from, suspect->faultClass);
    prediction.atTo = predictionAt(fault, proposal.to, suspect->faultClass);
    prediction.bridged = joined(prediction.atFrom, prediction.atTo);
    if (!prediction.bridged)
      prediction.bridged = predictionAt(fault, proposal.from, 0); // class 0 is the sound line
    because = toFoundFault(fault.isolation.classes[suspect->faultClass], fault.names);
  }
  return toJumperAction(proposal, *board.places, jumperSteps(data, proposal, prediction), prediction,
                        lineName(*board.board, fault.line), because);
}

std::vector<NetId> linesOf(const std::vector<RepairAction>& actions, const BoardUnderWork& board) {
  std::vector<NetId> out;
  const auto add = [&](const Line& line) { out.insert(out.end(), line.nets.begin(), line.nets.end()); };
  for (const RepairAction& action : actions) {
    for (const NetId net : board.lookup->netsNamed(action.jumper ? action.jumper->net : action.target))
      add(lineOf(*board.lookup, *board.graph, net));
    for (const ProbePoint& place : action.places)
      if (board.board->pins.find(place.pin) != nullptr) add(lineOf(*board.lookup, *board.graph, place.pin));
  }
  return out;
}

double mendedShare(const FaultCase& fault, const JumperProposal& proposal) {
  double share = 0.0;
  for (const Suspect& suspect : fault.suspects.ranked) {
    if (suspect.probability < leastMended) continue;
    for (const FaultPlace& place : suspect.places) {
      if (place.kind != FaultKind::open || !place.edge) continue;
      const auto ends = breakEnds(fault.line.graph, {*place.edge});
      if (ends && joinsBreak(fault.line.graph, *ends, proposal.from, proposal.to))
        share += suspect.probability * place.share;
    }
  }
  return std::min(share, 1.0);
}

Seconds workTime(const std::vector<WorkStep>& steps) {
  const auto checks = std::count_if(steps.begin(), steps.end(), [](const WorkStep& s) { return s.check; });
  const auto work = static_cast<double>(steps.size()) - static_cast<double>(checks);
  return Seconds(work * 120.0 + static_cast<double>(checks) * 30.0); // common practice, no source
}

} // namespace netmend
