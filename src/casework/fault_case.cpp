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

/// Whether these are readings that were weighed before, and perhaps more.
bool goesOn(const FaultCase& before, const FaultBasis& basis, const std::vector<Reading>& readings) {
  return before.basis == basis && before.readings.size() <= readings.size() &&
         std::equal(before.readings.begin(), before.readings.end(), readings.begin());
}

/// Weighs what is new.
Result<void> weigh(FaultCase& out, std::size_t from, const std::stop_token& stop) {
  const auto first = out.readings.begin() + static_cast<std::ptrdiff_t>(from);
  auto weighed = update(std::move(out.isolation), {first, out.readings.end()}, stop);
  if (!weighed) return failure({pattern("core", "was stopped")});
  out.isolation = std::move(*weighed);
  return {};
}

} // namespace

Result<FaultCase> solveFault(const BoardUnderWork& board, const FaultQuestion& question,
                             const RepairData& data, const FaultCase* before, const std::stop_token& stop) {
  if (!question.net && !question.pin)
    return failure({pattern("core", "no line was named"), "", "", pattern("core", "neither net nor pin"),
                    pattern("core", "one of them")});
  const Lookup& lookup = *board.lookup;
  const auto stopped = [&] { return stop.stop_requested(); };
  FaultCase out;
  out.line =
      question.net ? lineOf(lookup, *board.graph, question.net) : lineOf(lookup, *board.graph, question.pin);
  out.readings = readingsOn(out.line, question.readings);
  const auto meter = meterOf(question, out.readings, data.probing.meters);
  if (!meter) return failure(meter.error());
  out.basis = {question.net, question.pin, (*meter)->id, {}, {}};
  if (!out.readings.empty()) out.basis.condition = out.readings.back().condition;
  out.basis.knownGood = knownGoodOf(lookup, out.line, question.expected, out.basis.condition);
  std::size_t weighed = 0;
  if (before != nullptr && goesOn(*before, out.basis, out.readings)) {
    out.isolation = before->isolation;
    weighed = before->readings.size();
  } else {
    IsolationInput input{lookup, out.line, data.priors, data.efforts, **meter, out.basis.knownGood, {}, {}};
    input.options.condition = out.basis.condition;
    out.isolation = makeIsolation(input);
  }
  if (auto done = weigh(out, weighed, stop); !done) return failure(done.error());
  out.names = LineNames(*board.places, out.line, out.isolation);
  out.suspects = suspects(out.isolation);
  if (stopped()) return failure({pattern("core", "was stopped")});
  out.next = nextProbe(out.isolation, {}, {question.unreachable});
  if (out.next.stop || stopped()) return out;
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
