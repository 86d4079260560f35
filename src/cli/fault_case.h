#pragma once

#include <CLI/CLI.hpp>

#include "inputs.h"
#include "netmend/isolation/isolation.h"

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

/// One line with what its readings leave of the suspects.
struct FaultCase {
  LoadedBoard board;
  BoardGraph graph;
  Line line;
  std::vector<Reading> readings; ///< those on the line
  Isolation isolation;
  Suspects suspects;
  NextProbe next;
};
[[nodiscard]] Result<FaultCase> solveFault(const FaultOptions& options);

/// The net that the line was asked for by, or "the line of J4.7".
[[nodiscard]] std::string lineName(const FaultCase& fault);

/// The leading class of breaks: the places where the line may be open. None when something else leads.
[[nodiscard]] const Suspect* leadingBreak(const FaultCase& fault);

} // namespace netmend
