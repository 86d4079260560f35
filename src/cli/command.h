#pragma once

#include <functional>
#include <memory>
#include <string>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "cli.h"
#include "netmend/base/error.h"

namespace netmend {

/// Of the answers in JSON. It grows when a member goes or means something else.
inline constexpr int answerVersion = 2;

/// What a command has to say. Text goes out as it is, or `json` in its place when asked for.
struct Answer {
  std::string text;
  nlohmann::json json = nlohmann::json::object();
  ExitCode code = ExitCode::good;
  std::vector<Said> notices; ///< to standard error, and into `json`
};

/// Where commands are hung up and how they give their answer.
struct CommandLine {
  CLI::App& app;
  const Streams& streams;
  std::function<Result<Answer>()> chosen; ///< set by the subcommand that was parsed
  bool json = false;
};

/// Adds `group name` with its help and example. The options that `work` refers to are kept alive in it.
[[nodiscard]] CLI::App& addCommand(CommandLine& line, CLI::App& group, const std::string& name,
                                   const std::string& help, const std::string& example,
                                   std::function<Result<Answer>()> work);

void addBoardCommands(CommandLine& line);
void addWalkCommands(CommandLine& line);
void addFaultCommands(CommandLine& line);
/// `fault short`.
void addShortCommand(CommandLine& line, CLI::App& group);
void addJumperCommands(CommandLine& line);
void addJobCommands(CommandLine& line);
void addSheetCommands(CommandLine& line);

} // namespace netmend
