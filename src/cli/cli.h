#pragma once

#include <filesystem>
#include <istream>
#include <ostream>
#include <string>
#include <vector>

namespace netmend {

/// What the process gives back.
enum class ExitCode { good = 0, finding = 1, badUse = 2, badInput = 3 };

struct Streams {
  std::istream& in;
  std::ostream& out; ///< results: text, or one JSON object with --json
  std::ostream& err; ///< errors, notices, prompts
};

/// The whole command line, without the program's name. Finds `data/` by itself.
[[nodiscard]] ExitCode runCli(const std::vector<std::string>& arguments, const Streams& streams);

} // namespace netmend
