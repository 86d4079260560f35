#pragma once

#include "netmend/casework/board_under_work.h"
#include "netmend/casework/fault_case.h"
#include "netmend/casework/good_walks.h"
#include "netmend/casework/take_reading.h"
#include "repaired_board.h"

namespace netmend::test {

inline std::string deviceFile(const std::string& name) {
  return NETMEND_SOURCE_DIR "/demo/device/" + name;
}

/// The demo's device: its board, what eight good ones read, and the walk of the bad one, whose third column
/// of keys (connector J4.9, via at (19.50, 9.00) mm, capacitor C28, resistor R28) is broken.
struct DemoDevice {
  BoardUnderWork loaded = openBoard(deviceFile("tide-logger.netmend-board.json")).value();
  const Board& board = *loaded.board;
  const Lookup& lookup = *loaded.lookup;
  const BoardGraph& graph = *loaded.graph;
  ExpectedTable expected;
  Walk faulty;
  NetId column = netNamed(lookup, "KEY_COL3").value();

  DemoDevice() {
    std::vector<std::string> files;
    for (int i = 1; i <= 8; ++i)
      files.push_back(deviceFile("good-" + std::to_string(i) + ".netmend-walk.json"));
    expected = expectedValues(loadGoodWalks(files, &lookup).value(), &lookup, repairData().probing);
    faulty = loadWalks({deviceFile("faulty.netmend-walk.json")}, &lookup).value().front();
  }

  /// The column, after the walk and these readings more, taken a minute apart: the same question is the same
  /// readings, however slow the machine is.
  [[nodiscard]] FaultQuestion question(const std::vector<std::string>& more = {}) const {
    FaultQuestion out{column, {}, faulty.readings, expected, {}, {}};
    for (const std::string& text : more) {
      const Time next = out.readings.back().time + std::chrono::minutes(1);
      out.readings.push_back(parseReading(text, faulty, &lookup).value());
      out.readings.back().time = next;
    }
    return out;
  }
  [[nodiscard]] Result<FaultCase> solve(const FaultQuestion& asked,
                                        const RepairData& data = repairData()) const {
    return solveFault(loaded, asked, data);
  }
  [[nodiscard]] PinId pin(const std::string& label) const { return pinLabelled(lookup, label).value(); }
};

inline const DemoDevice& demoDevice() {
  static const DemoDevice device;
  return device;
}

/// Probed until the next thing to do is the repair.
inline const FaultCase& demoFault() {
  static const FaultCase solved =
      demoDevice().solve(demoDevice().question({"C28.1 0.649", "pad of J4.9 OL"})).value();
  return solved;
}

} // namespace netmend::test
