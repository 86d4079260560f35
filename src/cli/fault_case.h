#pragma once

#include <CLI/CLI.hpp>

#include "netmend/casework/board_under_work.h"
#include "netmend/casework/fault_case.h"

namespace netmend {

/// What the user gives to have a line's fault found; shared by the commands that need it.
struct FaultOptions {
  std::string board;
  std::string net;
  std::string point;
  std::vector<std::string> walks;    ///< of the faulty board
  std::vector<std::string> readings; ///< one by one, see parseReading
  std::vector<Reading> taken;        ///< from a job; come before all others
  std::vector<std::string> good;
  std::string book;
  std::string meter;
  std::vector<std::string> unreachable;
};
void addFaultOptions(CLI::App& command, FaultOptions& options);
/// … without what good boards read.
void addLineOptions(CLI::App& command, FaultOptions& options);

/// What is asked with these options.
[[nodiscard]] Result<FaultQuestion> faultQuestion(const FaultOptions& options, const BoardUnderWork& board,
                                                  const ProbingData& data);

/// A line's fault with what it was found from.
struct SolvedFault {
  BoardUnderWork board;
  RepairData data;
  FaultCase fault;
  [[nodiscard]] std::string line() const { return lineName(*board.board, fault.line); }
};
[[nodiscard]] Result<SolvedFault> solveFault(const FaultOptions& options);

} // namespace netmend
