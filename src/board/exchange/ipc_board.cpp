#include "ipc_board.h"

#include <algorithm>

#include <fmt/format.h>

#include "ipc_reader.h"
#include "text.h"

namespace netmend {

namespace ipc {

namespace {

/// A 378 or 389 with its continuations.
struct Drawing {
  int code = 0;
  std::string name;
  int layer = 0;
  Drawn drawn;
};

tl::unexpected<Error> placed(Error error, const IpcReader& r, std::size_t line) {
  error.file = r.source.file;
  error.place = fmt::format("line {}", line);
  return failure(std::move(error));
}

void addLayers(IpcReader& r) {
  for (int number = 1; number <= r.preamble.layers; ++number) {
    Layer layer;
    layer.id = r.points.board().newId<LayerId>();
    layer.name = fmt::format("L{:02}", number);
    layer.origin = r.preamble.layersSeen.contains(number) ? Origin::file : Origin::guessed;
    r.layers.push_back(layer.id);
    r.points.board().info.layerOrder.push_back(layer.id);
    r.points.board().layers.put(std::move(layer));
  }
}

void finishDrawing(IpcReader& r, Drawing& drawing) {
  if (drawing.code == 378) addConductor(r, drawing.name, drawing.layer, drawing.drawn);
  if (drawing.code == 389 && drawing.name == "BOARD_EDGE") addEdge(r, drawing.drawn);
  if (drawing.code == 389 && drawing.name != "BOARD_EDGE")
    ++r.counted["outlines other than the board's edge, not read"];
  drawing = {};
}

Result<void> readTestRecord(IpcReader& r, std::string_view line, std::size_t number) {
  auto record = testRecord(line, r.preamble.units);
  if (!record) return placed(record.error(), r, number);
  if (record->netRunsOn) ++r.counted["net names that run past their columns, read to column 20"];
  const bool continues = record->kind < 300;
  if (continues && r.group.records.empty())
    return placed(
        {"a record continues none before it", "", "", std::string(line.substr(0, 3)), "317, 327, 367 or 307"},
        r, number);
  if (!continues) {
    if (auto done = finishGroup(r); !done) return done;
    r.group = {record->reference, record->pin, record->net, {}, fmt::format("line {}", number)};
  }
  r.group.records.push_back(std::move(*record));
  return {};
}

Result<void> readDrawing(IpcReader& r, Drawing& drawing, int code, std::string_view line,
                         std::size_t number) {
  const bool starts = code > 300;
  if (starts) {
    finishDrawing(r, drawing);
    drawing.code = code;
    drawing.name = columns(line, 4, 17);
    if (code == 378 && line.size() >= 21 && line[18] == 'L') {
      const std::string_view digits = columns(line, 20, 21);
      for (const char c : digits)
        if (c >= '0' && c <= '9') drawing.layer = drawing.layer * 10 + (c - '0');
    }
  } else if (drawing.code != code + 300) {
    return placed({"a record continues none before it", "", "", std::string(line.substr(0, 3)), "378 or 389"},
                  r, number);
  }
  // A continuation may repeat the fixed columns or start right behind its code.
  const bool fixed = starts || columns(line, 4, 22).empty() || (line.size() >= 21 && line[18] == 'L');
  const std::size_t from = fixed ? 22 : 3;
  const std::string_view rest = line.size() > from ? line.substr(from) : std::string_view{};
  if (auto added = addCoordinates(drawing.drawn, rest, r.preamble.units); !added)
    return placed(added.error(), r, number);
  return {};
}

/// Records that say nothing about the copper of one board.
void countUnread(IpcReader& r, int code) {
  switch (code) {
  case 99:
  case 88:
  case 379:
  case 79:
    return; // where a tester probes, how large the mask's opening is, which nets lie side by side
  case 309:
    ++r.counted["step records of a panel, not read"];
    return;
  default:
    ++r.counted[fmt::format("records {:03}, not read", code)];
  }
}

Result<void> readLine(IpcReader& r, Drawing& drawing, std::string_view line, std::size_t number) {
  const int code = codeOf(line);
  if (isTestRecord(code)) {
    finishDrawing(r, drawing);
    return readTestRecord(r, line, number);
  }
  if (code == 378 || code == 389 || code == 78 || code == 89) {
    if (auto done = finishGroup(r); !done) return done;
    return readDrawing(r, drawing, code, line, number);
  }
  if (code >= 0) {
    countUnread(r, code);
    return {};
  }
  if (line.empty() || line.front() == 'C' || line.front() == 'P' || trimmed(line).empty()) return {};
  return placed(
      {"not a record of this format", "", "", std::string(line.substr(0, 20)), "a three-digit code, P or C"},
      r, number);
}

Result<Imported> finish(IpcReader& r) {
  auto outline = outlineFrom(std::move(r.edges));
  if (!outline) {
    Error error = outline.error();
    error.file = r.source.file;
    return failure(std::move(error));
  }
  BoardInfo& info = r.points.board().info;
  if (!outline->polygons.empty()) info.outline = fromFile(std::move(outline->polygons));
  const Preamble& p = r.preamble;
  if (!p.title.empty() || !p.job.empty()) info.name = fromFile(p.title.empty() ? p.job : p.title);
  if (!p.revision.empty()) info.revision = fromFile(p.revision);
  for (const std::string& text : p.notices)
    r.points.notice(text);
  for (std::string& text : outline->notices)
    r.points.notice(std::move(text));
  for (const auto& [what, count] : r.counted)
    r.points.notice(fmt::format("{}: {}", what, count));
  return r.points.finish();
}

bool isPanel(std::string_view line) {
  return line.starts_with('P') && trimmed(line.substr(1)).starts_with("IMAGE") &&
         line.find("PANEL") != std::string_view::npos;
}

} // namespace

} // namespace ipc

bool looksLikeTestData(std::string_view content) {
  bool looks = false;
  forEachLine(content.substr(0, 20'000), [&](std::string_view line, std::size_t number) {
    const bool parameter =
        line.starts_with("P  UNITS") || line.starts_with("P  JOB") || line.starts_with("P  VER");
    const bool record =
        ipc::isTestRecord(ipc::codeOf(line)) && line.size() >= 57 && line[41] == 'X' && line[49] == 'Y';
    looks = parameter || record;
    return !looks && number < 200;
  });
  return looks;
}

Result<Imported> readTestData(const ImportSource& source) {
  auto preamble = ipc::preambleOf(source);
  if (!preamble) return failure(preamble.error());
  ipc::IpcReader r(source, std::move(*preamble));
  ipc::addLayers(r);
  ipc::Drawing drawing;
  Result<void> state;
  forEachLine(source.content, [&](std::string_view line, std::size_t number) {
    if (ipc::codeOf(line) == 999) return false;
    if (ipc::isPanel(line)) {
      r.points.notice(fmt::format("line {}: the data of the panel were not read", number));
      return false;
    }
    state = ipc::readLine(r, drawing, line, number);
    if (state && source.options.progress.stopped()) state = failure({"reading was stopped", source.file});
    return state.has_value();
  });
  if (!state) return failure(state.error());
  if (auto done = ipc::finishGroup(r); !done) return failure(done.error());
  ipc::finishDrawing(r, drawing);
  return ipc::finish(r);
}

} // namespace netmend
