#include "fault_case.h"

#include "inputs.h"
#include "netmend/base/data_folder.h"
#include "netmend/casework/good_walks.h"
#include "netmend/casework/take_reading.h"

namespace netmend {

namespace {

/// From a job, from walks and from the command line, in that order.
Result<std::vector<Reading>> readingsFrom(const FaultOptions& options, const Lookup& lookup) {
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
  return all;
}

} // namespace

Result<FaultQuestion> faultQuestion(const FaultOptions& options, const BoardUnderWork& board,
                                    const ProbingData& data) {
  const Lookup& lookup = *board.lookup;
  FaultQuestion out;
  if (!options.net.empty()) {
    const auto net = netNamed(lookup, options.net);
    if (!net) return failure(net.error());
    out.net = *net;
  } else {
    const auto pin = pinLabelled(lookup, options.point);
    if (!pin) return failure(pin.error());
    out.pin = *pin;
  }
  auto readings = readingsFrom(options, lookup);
  if (!readings) return failure(readings.error());
  out.readings = std::move(*readings);
  const auto good = goodWalksOf(options.good, options.book, board);
  if (!good) return failure(good.error());
  out.expected = expectedValues(*good, &lookup, data);
  out.meter = options.meter;
  out.unreachable = options.unreachable;
  return out;
}

void addLineOptions(CLI::App& command, FaultOptions& options) {
  command.add_option("--board", options.board, "Board file")->required();
  auto* net = command.add_option("--net", options.net, "Net whose line is faulty");
  command.add_option("--point", options.point, "… or a pin on it, for example J4.7")->excludes(net);
  command.add_option("--walk", options.walks, "Walks of the faulty board");
  command.add_option("--reading", options.readings, "More readings: \"[MODE] POINT [to POINT] VALUE\"");
  command.add_option("--meter", options.meter, "Meter profile, an id of data/meters.json");
  command.add_option("--cannot-reach", options.unreachable, "Points that cannot be probed");
}

void addFaultOptions(CLI::App& command, FaultOptions& options) {
  addLineOptions(command, options);
  command.add_option("--good", options.good, "Walks of good boards");
  command.add_option("--book", options.book, "Job book with known-good walks of this board");
}

Result<SolvedFault> solveFault(const FaultOptions& options) {
  auto board = openBoard(options.board);
  if (!board) return failure(board.error());
  auto data = loadRepairData(dataFolder());
  if (!data) return failure(data.error());
  SolvedFault out{std::move(*board), std::move(*data), {}};
  const auto question = faultQuestion(options, out.board, out.data.probing);
  if (!question) return failure(question.error());
  auto fault = solveFault(out.board, *question, out.data);
  if (!fault) return failure(fault.error());
  out.fault = std::move(*fault);
  return out;
}

} // namespace netmend
