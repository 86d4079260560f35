#include <fmt/format.h>

#include "command.h"
#include "inputs.h"
#include "netmend/base/data_folder.h"
#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/exchange/zip.h"
#include "netmend/board/kept_board.h"
#include "netmend/board/summary.h"
#include "netmend/casework/edit_script.h"
#include "netmend/netgraph/board_graph.h"

namespace netmend {

namespace {

std::string objectText(const Board& board, const CopperObject& object) {
  const auto idText = [](const char* what, auto id) { return fmt::format("{} {}", what, id.value); };
  return std::visit(
      [&](const auto& id) -> std::string {
        using T = std::decay_t<decltype(id)>;
        if constexpr (std::is_same_v<T, PinId>) return "pin " + pinLabel(board, id);
        if constexpr (std::is_same_v<T, PadId>) {
          const Pad* pad = board.pads.find(id);
          return pad != nullptr ? "pad of " + pinLabel(board, pad->pin) : idText("pad", id);
        }
        if constexpr (std::is_same_v<T, PartId>) {
          const Part* part = board.parts.find(id);
          return part != nullptr ? "part " + part->reference : idText("part", id);
        }
        if constexpr (std::is_same_v<T, TrackId>) return idText("track", id);
        if constexpr (std::is_same_v<T, ViaId>) return idText("via", id);
        if constexpr (std::is_same_v<T, AreaId>) return idText("area", id);
        return "nothing";
      },
      object);
}

nlohmann::json pointJson(Point p) {
  return {{"x_mm", p.x.mm()}, {"y_mm", p.y.mm()}};
}

/// The file that a command was given, and which board in it.
struct Given {
  std::string file;
  std::string inside;
};

Error withHint(Error error) {
  if (error.cause == ErrorCause::severalInArchive)
    error.expected = said(pattern("core", "{}, after --inside"), error.expected);
  return error;
}

Result<BoardUnderWork> load(const Given& given) {
  auto loaded = openBoard(given.file, given.inside);
  if (!loaded) return failure(withHint(loaded.error()));
  return loaded;
}

Result<Answer> importCommand(const Given& given, std::string out) {
  ImportOptions options;
  options.inArchive = given.inside;
  auto imported = importBoard(given.file, options);
  if (!imported) return failure(withHint(imported.error()));
  if (out.empty())
    out = std::filesystem::path(given.file).filename().replace_extension().string() + ".netmend-board.json";
  if (auto written = writeBoardFile(out, imported->board); !written) return failure(written.error());
  const BoardSummary summary = summarize(imported->board);
  Answer answer;
  answer.notices = imported->notices;
  answer.text = fmt::format("{}: {} parts, {} pads, {} nets, {} tracks, {} vias\n", out, summary.parts,
                            summary.pads, summary.nets, summary.tracks, summary.vias);
  answer.json = {{"written", out}};
  return answer;
}

struct ToEdit {
  std::string steps = "-"; ///< file of the script
  std::string out;         ///< empty: the board's own file
};

Result<Answer> editCommand(const Given& given, const ToEdit& to, const Streams& streams) {
  const auto folder = dataFolder();
  auto sizes = loadChipSizes(folder / "part_sizes.json");
  if (!sizes) return failure(sizes.error());
  auto zones = loadZoneRules(folder / "zones.json");
  if (!zones) return failure(zones.error());
  std::string text;
  if (to.steps == "-") {
    text.assign(std::istreambuf_iterator<char>(streams.in), {});
  } else {
    auto read = readFile(to.steps);
    if (!read) return failure(read.error());
    text = std::move(*read);
  }
  const std::string steps = to.steps == "-" ? "standard input" : to.steps;
  Answer answer;
  const std::string out = to.out.empty() ? given.file : to.out;
  const auto finish = [&](const Result<ScriptDone>& result) -> Result<Answer> {
    if (!result) return failure(result.error());
    answer.text = fmt::format("{}: {} steps\n", out, result->steps);
    answer.json = {{"written", out}, {"steps", result->steps}};
    return answer;
  };
  if (to.out.empty()) {
    // In place, as at the bench: whoever draws on it is the only one.
    auto kept = KeptBoard::open(given.file);
    if (!kept) return failure(kept.error());
    Board board = *kept->board();
    const auto result = applyScript(board, text, steps, *sizes, *zones);
    if (!result) return failure(result.error());
    for (const Edit& edit : result->edits)
      if (auto applied = kept->apply(edit); !applied) return failure(applied.error());
    if (auto saved = kept->save(); !saved) return failure(saved.error());
    return finish(result);
  }
  ImportOptions options;
  options.inArchive = given.inside;
  auto imported = importBoard(given.file, options);
  if (!imported) return failure(withHint(imported.error()));
  answer.notices = imported->notices;
  const auto result = applyScript(imported->board, text, steps, *sizes, *zones);
  if (!result) return failure(result.error());
  if (auto written = writeBoardFile(out, imported->board); !written) return failure(written.error());
  return finish(result);
}

Result<Answer> summaryCommand(const Given& given) {
  const auto loaded = load(given);
  if (!loaded) return failure(loaded.error());
  const Board& board = *loaded->board;
  const BoardSummary summary = summarize(board);
  const BoardGraph graph = buildBoardGraph(board);
  Answer answer;
  answer.notices = loaded->notices;
  auto nets = nlohmann::json::array();
  for (const NetGraph& net : graph.nets) {
    const auto pins = loaded->lookup->pinsOf(net.net).size();
    nets.push_back(
        {{"name", board.nets.find(net.net)->name}, {"pins", pins}, {"fragments", net.islandCount}});
  }
  answer.json = {{"name", board.info.name.valueOr("")},
                 {"parts", summary.parts},
                 {"pads", summary.pads},
                 {"nets", summary.nets},
                 {"tracks", summary.tracks},
                 {"vias", summary.vias},
                 {"layers", summary.layers},
                 {"width_mm", summary.size.width.mm()},
                 {"height_mm", summary.size.height.mm()},
                 {"net_list", nets}};
  answer.text = fmt::format(
      "{}\n  {:.2f} × {:.2f} mm, {} copper layers\n  {} parts, {} pads, {} nets, {} tracks, {} vias\n",
      board.info.name.valueOr(given.file), summary.size.width.mm(), summary.size.height.mm(), summary.layers,
      summary.parts, summary.pads, summary.nets, summary.tracks, summary.vias);
  for (const auto& net : nets) {
    answer.text += fmt::format("  {:24} {:4} pins, {} {}\n", net["name"].get<std::string>(),
                               net["pins"].get<int>(), net["fragments"].get<int>(),
                               net["fragments"] == 1 ? "piece of copper" : "pieces of copper");
  }
  return answer;
}

std::string disagreementText(const Board& board, const Disagreement& d) {
  std::string names;
  for (const NetId id : d.nets) {
    const Net* net = board.nets.find(id);
    names += (names.empty() ? "" : " and ") + (net != nullptr ? net->name : std::string("?"));
  }
  std::string objects;
  for (const auto& object : d.objects)
    objects += (objects.empty() ? "" : " and ") + objectText(board, object);
  const char* what =
      d.kind == Disagreement::Kind::shorted ? "copper joins different nets" : "net is in pieces";
  return fmt::format("{}: {} at ({:.3f}, {:.3f}) mm, {}", what, names, d.at.x.mm(), d.at.y.mm(), objects);
}

std::string joinText(const Board& board, const DrawnJoin& join) {
  const Part* part = board.parts.find(join.part);
  std::string names;
  for (const NetId id : join.nets)
    names += (names.empty() ? "" : " and ") + board.nets.find(id)->name;
  return fmt::format("nets joined by drawn copper at {}: {}", part != nullptr ? part->reference : "?", names);
}

Result<Answer> checkCommand(const Given& given) {
  const auto loaded = load(given);
  if (!loaded) return failure(loaded.error());
  const Board& board = *loaded->board;
  const BoardGraph graph = buildBoardGraph(board);
  Answer answer;
  answer.notices = loaded->notices;
  auto findings = nlohmann::json::array();
  for (const Disagreement& d : compareWithNames(board, graph)) {
    const std::string text = disagreementText(board, d);
    auto names = nlohmann::json::array();
    for (const NetId id : d.nets)
      names.push_back(board.nets.find(id)->name);
    findings.push_back({{"kind", d.kind == Disagreement::Kind::shorted ? "shorted" : "disconnected"},
                        {"nets", names},
                        {"at", pointJson(d.at)},
                        {"text", text}});
    answer.text += text + "\n";
  }
  auto joins = nlohmann::json::array();
  std::string joinTexts;
  for (const DrawnJoin& join : drawnJoins(board, graph)) {
    const std::string text = joinText(board, join);
    auto names = nlohmann::json::array();
    for (const NetId id : join.nets)
      names.push_back(board.nets.find(id)->name);
    joins.push_back({{"nets", names}, {"at", pointJson(join.at)}, {"text", text}});
    joinTexts += text + "\n";
  }
  if (findings.empty())
    answer.text = "Copper and net names agree.\n";
  else
    answer.code = ExitCode::finding;
  answer.text += joinTexts;
  answer.json = {{"findings", findings}, {"drawn_joins", joins}};
  return answer;
}

} // namespace

void addBoardCommands(CommandLine& line) {
  CLI::App& group = *line.app.add_subcommand("board", "Read, check, count and draw a board");
  group.require_subcommand(1);

  const auto given = std::make_shared<Given>();
  const auto out = std::make_shared<std::string>();
  const auto addFile = [given](CLI::App& command) {
    command
        .add_option("file", given->file,
                    "Board file: Netmend, CSV, IPC-D-356A or KiCad, or a ZIP archive with one in it")
        ->required();
    command.add_option("--inside", given->inside, "Which board of a ZIP archive, where it holds several");
  };
  const auto to = std::make_shared<ToEdit>();
  const Streams& streams = line.streams;
  CLI::App& edit =
      addCommand(line, group, "edit",
                 "Draw on a board by a script of steps (docs/formats/edits.md): all of them, or nothing",
                 "netmend board edit logger.netmend-board.json --steps nets.json",
                 [=, &streams] { return editCommand(*given, *to, streams); });
  addFile(edit);
  edit.add_option("--steps", to->steps, "File with the steps; -: standard input")->capture_default_str();
  edit.add_option("-o,--out", to->out,
                  "File to write; without it the board's own, which is a Netmend board then");
  CLI::App& import = addCommand(line, group, "import",
                                "Read a board file of any known format and write it as a Netmend board",
                                "netmend board import logger.ipc -o logger.netmend-board.json",
                                [=] { return importCommand(*given, *out); });
  addFile(import);
  import.add_option("-o,--out", *out,
                    "File to write (default: the name with .netmend-board.json, in this folder)");
  addFile(addCommand(line, group, "check",
                     "Compare what the copper joins with what the net names say, both ways",
                     "netmend board check logger.netmend-board.json", [=] { return checkCommand(*given); }));
  addFile(addCommand(line, group, "summary", "Count parts, pads, nets, tracks and vias",
                     "netmend board summary logger.netmend-board.json --json",
                     [=] { return summaryCommand(*given); }));
}

} // namespace netmend
