#include "fault_case.h"

#include <algorithm>

#include "netmend/base/data_folder.h"

namespace netmend {

namespace {

/// Readings with at least one lead on the line, from walks and from the command line, in that order.
Result<std::vector<Reading>> readingsOnLine(const FaultOptions& options, const Lookup& lookup,
                                            const Line& line) {
  std::vector<Reading> all = options.taken;
  const auto walks = loadWalks(options.walks, &lookup);
  if (!walks) return failure(walks.error());
  for (const Walk& walk : *walks)
    all.insert(all.end(), walk.readings.begin(), walk.readings.end());
  // What is typed is taken under the condition and with the meter of what came before.
  Walk defaults = walks->empty() ? Walk{} : walks->back();
  if (walks->empty() && !all.empty()) {
    defaults.meter = all.back().meter;
    defaults.condition = all.back().condition;
  }
  for (const auto& text : options.readings) {
    auto reading = parseReading(text, defaults, &lookup);
    if (!reading) return failure(reading.error());
    all.push_back(std::move(*reading));
  }
  std::vector<PinId> onLine;
  for (const NodeIndex node : line.terminals())
    if (const auto* pin = std::get_if<PinId>(&line.graph[node].object)) onLine.push_back(*pin);
  std::erase_if(all, [&](const Reading& reading) {
    // A point that is no pin may be a via or a track of the line: the isolation knows these by their labels.
    return reading.point.pin && std::find(onLine.begin(), onLine.end(), reading.point.pin) == onLine.end();
  });
  return all;
}

Result<Line> lineAsked(const FaultOptions& options, const LoadedBoard& board, const BoardGraph& graph) {
  if (!options.net.empty()) {
    const auto net = netNamed(*board.lookup, options.net);
    if (!net) return failure(net.error());
    return lineOf(*board.lookup, graph, *net);
  }
  const auto pin = pinLabelled(*board.lookup, options.point);
  if (!pin) return failure(pin.error());
  return lineOf(*board.lookup, graph, *pin);
}

} // namespace

void addFaultOptions(CLI::App& command, FaultOptions& options) {
  command.add_option("--board", options.board, "Board file")->required();
  auto* net = command.add_option("--net", options.net, "Net whose line is faulty");
  command.add_option("--point", options.point, "… or a pin on it, for example J4.7")->excludes(net);
  command.add_option("--walk", options.walks, "Walks of the faulty board");
  command.add_option("--reading", options.readings, "More readings: \"[MODE] POINT [to POINT] VALUE\"");
  command.add_option("--good", options.good, "Walks of good boards");
  command.add_option("--book", options.book, "Job book with known-good walks of this board");
  command.add_option("--meter", options.meter, "Meter profile, an id of data/meters.json");
  command.add_option("--cannot-reach", options.unreachable, "Points that cannot be probed");
}

Result<FaultCase> solveFault(const FaultOptions& options) {
  FaultCase out;
  auto board = loadBoard(options.board);
  if (!board) return failure(board.error());
  out.board = std::move(*board);
  const Lookup& lookup = *out.board.lookup;
  out.graph = buildBoardGraph(*out.board.board);
  auto line = lineAsked(options, out.board, out.graph);
  if (!line) return failure(line.error());
  out.line = std::move(*line);

  const auto data = loadProbingData(dataFolder());
  if (!data) return failure(data.error());
  auto priors = readFaultPriors(dataFile("fault_priors.json"));
  if (!priors) return failure(priors.error());
  auto efforts = readProbeEfforts(dataFile("efforts.json"));
  if (!efforts) return failure(efforts.error());
  auto readings = readingsOnLine(options, lookup, out.line);
  if (!readings) return failure(readings.error());
  out.readings = std::move(*readings);
  const auto good = loadGoodWalks(options.good, options.book, &lookup);
  if (!good) return failure(good.error());

  const std::string& asked =
      !options.meter.empty() || out.readings.empty() ? options.meter : out.readings.front().meter;
  const MeterProfile* meter = findMeter(data->meters, asked);
  if (meter == nullptr && !asked.empty())
    return failure({"no such meter profile", dataFile("meters.json").string(), "", asked});
  if (meter == nullptr) meter = &data->meters.front(); // nobody said which: the plainest one

  IsolationInput input{lookup, out.line, std::move(*priors), std::move(*efforts), *meter, {}, {}, {}};
  if (!out.readings.empty()) input.options.condition = out.readings.back().condition;
  input.knownGood =
      knownGoodOf(lookup, out.line, expectedValues(*good, &lookup, *data), input.options.condition);
  out.isolation = update(makeIsolation(input), out.readings);
  out.suspects = suspects(out.isolation);
  out.next = nextProbe(out.isolation, {}, {options.unreachable});
  return out;
}

std::string lineName(const FaultCase& fault) {
  if (fault.line.nets.empty()) return "this line";
  return fault.board.board->nets.find(fault.line.nets.front())->name;
}

const Suspect* leadingBreak(const FaultCase& fault) {
  if (fault.suspects.ranked.empty()) return nullptr;
  const Suspect& first = fault.suspects.ranked.front();
  return fault.isolation.classes[first.faultClass].kind == FaultKind::open ? &first : nullptr;
}

} // namespace netmend
