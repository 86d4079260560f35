#include "netmend/casework/fault_case.h"

#include <algorithm>

namespace netmend {

namespace {

/// Readings with at least one lead on the line. A point that is no pin may be a via or a track of the line:
/// the isolation knows these by their labels.
std::vector<Reading> readingsOn(const Line& line, std::vector<Reading> all) {
  std::vector<PinId> onLine;
  for (const NodeIndex node : line.terminals())
    if (const auto* pin = std::get_if<PinId>(&line.graph[node].object)) onLine.push_back(*pin);
  std::erase_if(all, [&](const Reading& reading) {
    return reading.point.pin && std::find(onLine.begin(), onLine.end(), reading.point.pin) == onLine.end();
  });
  return all;
}

Result<const MeterProfile*> meterOf(const FaultQuestion& question, const std::vector<Reading>& readings,
                                    const std::vector<MeterProfile>& meters) {
  const std::string& asked =
      !question.meter.empty() || readings.empty() ? question.meter : readings.front().meter;
  const MeterProfile* meter = findMeter(meters, asked);
  if (meter == nullptr && !asked.empty())
    return failure({pattern("core", "no such meter profile"), "meters.json", "", asked,
                    pattern("core", "an id of that file")});
  return meter != nullptr ? meter : &meters.front(); // nobody said which: the plainest one
}

} // namespace

Result<FaultCase> solveFault(const Lookup& lookup, const BoardGraph& graph, const FaultQuestion& question,
                             const RepairData& data) {
  if (!question.net && !question.pin)
    return failure({pattern("core", "no line was named"), "", "", pattern("core", "neither net nor pin"),
                    pattern("core", "one of them")});
  FaultCase out;
  out.line = question.net ? lineOf(lookup, graph, question.net) : lineOf(lookup, graph, question.pin);
  out.readings = readingsOn(out.line, question.readings);
  const auto meter = meterOf(question, out.readings, data.probing.meters);
  if (!meter) return failure(meter.error());
  IsolationInput input{lookup, out.line, data.priors, data.efforts, **meter, {}, {}, {}};
  if (!out.readings.empty()) input.options.condition = out.readings.back().condition;
  input.knownGood = knownGoodOf(lookup, out.line, question.expected, input.options.condition);
  out.isolation = update(makeIsolation(input), out.readings);
  out.names = LineNames(PlaceNames(lookup), out.line, out.isolation);
  out.suspects = suspects(out.isolation);
  out.next = nextProbe(out.isolation, {}, {question.unreachable});
  if (out.next.stop) return out;
  out.jumpers = sharedJumpers(lookup, out.line, out.isolation, out.suspects, data.jumper);
  if (!out.jumpers.empty())
    out.next = nextProbe(out.isolation, repairView(out.isolation, out.jumpers), {question.unreachable});
  return out;
}

std::string lineName(const Board& board, const Line& line) {
  if (!line.nets.empty()) return board.nets.find(line.nets.front())->name;
  for (const NodeIndex node : line.terminals())
    if (const auto* pin = std::get_if<PinId>(&line.graph[node].object)) return pinLabel(board, *pin);
  return {};
}

const Suspect* leadingBreak(const FaultCase& fault) {
  if (fault.suspects.ranked.empty()) return nullptr;
  const Suspect& first = fault.suspects.ranked.front();
  return fault.isolation.classes[first.faultClass].kind == FaultKind::open ? &first : nullptr;
}

} // namespace netmend
