#pragma once

#include <optional>
#include <string>
#include <vector>

namespace netmend::benchmarks {

/// All board files of the Debian package kicad-demos, where it is installed, in order.
[[nodiscard]] std::vector<std::string> demoBoards();
/// The largest board file of the Debian package kicad-demos, where it is installed.
[[nodiscard]] std::optional<std::string> largestDemoBoard();
/// Tells what to do without it, and gives the exit code for bad use.
[[nodiscard]] int noBoard();

} // namespace netmend::benchmarks
