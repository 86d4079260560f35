#include "cli.h"

#include "command.h"

namespace netmend {

CLI::App& addCommand(CommandLine& line, CLI::App& group, const std::string& name, const std::string& help,
                     const std::string& example, std::function<Result<Answer>()> work) {
  CLI::App& command = *group.add_subcommand(name, help);
  command.footer("Example:\n  " + example);
  command.add_flag("--json", line.json, "Answer with one JSON object");
  command.callback([&line, work = std::move(work)] { line.chosen = work; });
  return command;
}

namespace {

nlohmann::json errorJson(const Error& error) {
  nlohmann::json out{{"message", wordsOf(error.message)}};
  if (!error.file.empty()) out["file"] = error.file;
  if (!error.place.empty()) out["place"] = wordsOf(error.place);
  if (!error.found.empty()) out["found"] = wordsOf(error.found);
  if (!error.expected.empty()) out["expected"] = wordsOf(error.expected);
  return {{"error", out}};
}

/// Text that came from a file may hold bytes that are no UTF-8; the answer stays valid JSON all the same.
std::string dump(const nlohmann::json& json) {
  return json.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

ExitCode answer(const CommandLine& line) {
  const Result<Answer> result = line.chosen();
  if (!result) {
    line.streams.err << "netmend: " << result.error().text() << "\n";
    if (line.json) line.streams.out << dump(errorJson(result.error()));
    return ExitCode::badInput;
  }
  for (const auto& notice : result->notices)
    line.streams.err << "note: " << wordsOf(notice) << "\n";
  if (line.json) {
    auto json = result->json;
    json["version"] = answerVersion;
    json["notices"] = nlohmann::json::array();
    for (const auto& notice : result->notices)
      json["notices"].push_back(wordsOf(notice));
    line.streams.out << dump(json);
  } else {
    line.streams.out << result->text;
  }
  line.streams.out.flush();
  return result->code;
}

} // namespace

ExitCode runCli(const std::vector<std::string>& arguments, const Streams& streams) {
  CLI::App app("Netmend: find the fault on a circuit board track by track, and mend it.", "netmend");
  app.set_version_flag("--version", NETMEND_VERSION);
  app.require_subcommand(1);
  app.footer("Exit status: 0 good, 1 the thing asked has a finding, 2 bad use, 3 bad input.");
  CommandLine line{app, streams, {}, false};
  addBoardCommands(line);
  addWalkCommands(line);
  addFaultCommands(line);
  addJumperCommands(line);
  addJobCommands(line);
  addSheetCommands(line);
  try {
    std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
    app.parse(reversed);
  } catch (const CLI::ParseError& error) {
    return app.exit(error, streams.out, streams.err) == 0 ? ExitCode::good : ExitCode::badUse;
  }
  return answer(line);
}

} // namespace netmend
