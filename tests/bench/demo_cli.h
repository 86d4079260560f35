#pragma once

#include <catch2/catch.hpp>

#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "cli/cli.h"

namespace netmend::testing {

/// A file of the demo's device.
inline std::string deviceFile(const std::string& file) {
  return (std::filesystem::path(NETMEND_SOURCE_DIR) / "demo" / "device" / file).string();
}

/// What the command line answers with `--json`; the test fails where the command does.
inline nlohmann::json cli(std::vector<std::string> arguments) {
  arguments.emplace_back("--json");
  std::istringstream in;
  std::ostringstream out, err;
  const ExitCode code = runCli(arguments, {in, out, err});
  INFO(out.str() << err.str());
  REQUIRE((code == ExitCode::good || code == ExitCode::finding));
  return nlohmann::json::parse(out.str());
}

} // namespace netmend::testing
