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
  error.place = FilePlace::atLine(line);
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
    r.folded.add(pattern("core", "outlines other than the board's edge, not read"),
                 drawing.drawn.place.said());
  drawing = {};
}

Result<void> readTestRecord(IpcReader& r, const RecordLine& line, std::size_t number) {
  FilePlace place = FilePlace::atLine(number);
  auto record = testRecord(line, r.preamble.units);
  if (!record) return placed(record.error(), r, number);
  if (record->netRunsOn)
    r.folded.add(pattern("core", "net names that run past their columns, read to column 20"), place.said());
  const bool continues = record->kind < 300;
  if (continues && r.group.records.empty())
    return placed({pattern("core", "a record continues none before it"), "", "",
                   std::string(line.text().substr(0, 3)), pattern("core", "317, 327, 367 or 307")},
                  r, number);
  if (!continues) {
    if (auto done = finishGroup(r); !done) return done;
    r.group = {record->reference, record->pin, record->net, {}, std::move(place)};
  }
  r.group.records.push_back(std::move(*record));
  return {};
}

Result<void> readDrawing(IpcReader& r, Drawing& drawing, const RecordLine& line, std::size_t number) {
  const int code = line.code();
  const bool starts = code > 300;
  if (starts) {
    finishDrawing(r, drawing);
    drawing.code = code;
    drawing.name = line.columns(4, 17);
    drawing.drawn.place = FilePlace::atLine(number);
    if (code == 378 && line.at(19) == 'L') {
      const std::string_view digits = line.columns(20, 21);
      for (const char c : digits)
        if (c >= '0' && c <= '9') drawing.layer = drawing.layer * 10 + (c - '0');
    }
  } else if (drawing.code != code + 300) {
    return placed({pattern("core", "a record continues none before it"), "", "",
                   std::string(line.text().substr(0, 3)), pattern("core", "378 or 389")},
                  r, number);
  }
  // A continuation may repeat the fixed columns or start right behind its code.
  const bool fixed = starts || line.columns(4, 22).empty() || line.at(19) == 'L';
  std::string_view rest = line.from(fixed ? 23 : 4);
  if (code == 389 && !line.columns(18, 22).empty()) { // written without columns
    const std::string_view text = line.from(4);
    const std::size_t end = std::min(text.find(' '), text.size());
    drawing.name = text.substr(0, end);
    rest = text.substr(end);
  }
  if (auto added = addCoordinates(drawing.drawn, rest, r.preamble.units, drawing.code == 389); !added)
    return placed(added.error(), r, number);
  return {};
}

/// Records that say nothing about the copper of one board.
void countUnread(IpcReader& r, int code, std::size_t number) {
  const Said place = FilePlace::atLine(number).said();
  switch (code) {
  case 99:
  case 88:
  case 379:
  case 79:
    return; // where a tester probes, how large the mask's opening is, which nets lie side by side
  case 309:
    r.folded.add(pattern("core", "step records of a panel, not read"), place);
    return;
  default:
    r.folded.add(said(pattern("core", "records {}, not read"), fmt::format("{:03}", code)), place);
  }
}

Result<void> readLine(IpcReader& r, Drawing& drawing, const RecordLine& line, std::size_t number) {
  const int code = line.code();
  if (isTestRecord(code)) {
    finishDrawing(r, drawing);
    return readTestRecord(r, line, number);
  }
  if (code == 378 || code == 389 || code == 78 || code == 89) {
    if (auto done = finishGroup(r); !done) return done;
    r.tracks = r.tracks || code == 378;
    return readDrawing(r, drawing, line, number);
  }
  if (code >= 0) {
    countUnread(r, code, number);
    return {};
  }
  const std::string_view text = trimmed(line.text());
  if (text.empty() || text.front() == 'C' || text.front() == 'P') return {};
  return placed({pattern("core", "not a record of this format"), "", "", std::string(text.substr(0, 20)),
                 pattern("core", "a three-digit code, P or C")},
                r, number);
}

/// The board's edge; where no line of it closes, those that are left open are closed straight. An edge that
/// cannot be used is told and left out: copper does not depend on it.
void addOutline(IpcReader& r) {
  auto outline = outlineFrom(r.edges);
  if (outline && outline->polygons.empty() && !r.edges.empty()) {
    for (EdgePiece& piece : r.edges)
      piece.closed = piece.points.size() > 2;
    if (auto closed = outlineFrom(r.edges); closed && !closed->polygons.empty()) {
      r.points.notice(
          pattern("core", "the board's edge is not closed in the file; it was closed by a straight line"));
      outline = std::move(closed);
    }
  }
  if (!outline) {
    r.points.notice(said(pattern("core", "the board's edge was left out: {}"), outline.error().said()));
    return;
  }
  for (Said& notice : outline->notices)
    r.points.notice(std::move(notice));
  if (!outline->polygons.empty()) r.points.board().info.outline = fromFile(std::move(outline->polygons));
}

Result<Imported> finish(IpcReader& r) {
  Preamble& p = r.preamble;
  for (Said& notice : p.notices)
    r.points.notice(std::move(notice));
  addOutline(r);
  settlePads(r);
  BoardInfo& info = r.points.board().info;
  if (!p.title.empty() || !p.job.empty()) info.name = fromFile(p.title.empty() ? p.job : p.title);
  if (!p.revision.empty()) info.revision = fromFile(p.revision);
  info.copper = fromFile(r.tracks ? DrawnCopper::tracks : DrawnCopper::points);
  if (!r.tracks) {
    r.points.notice(pattern(
        "core",
        "the file has no records of conductors: what joins the points of a net is not known, and a net is "
        "not checked for breaks"));
  }
  for (FoldedNotices* folded : {&p.folded, &r.folded})
    r.points.fold(std::move(*folded));
  return r.points.finish();
}

} // namespace

} // namespace ipc

bool looksLikeTestData(std::string_view content) {
  bool looks = false;
  forEachLine(content.substr(0, 100'000), [&](std::string_view text, std::size_t number) {
    const ipc::RecordLine line(text);
    const std::string_view parameter =
        text.starts_with("P ") ? ipc::trimmed(text.substr(1)) : std::string_view{};
    for (const std::string_view word : {"UNITS", "JOB", "VER"})
      looks = looks || (parameter.starts_with(word) &&
                        (parameter.size() == word.size() || parameter[word.size()] == ' '));
    looks = looks || (ipc::isTestRecord(line.code()) && line.at(42) == 'X' && line.at(50) == 'Y');
    return !looks && number < 1000;
  });
  return looks;
}

Result<Imported> readTestData(const ImportSource& source) {
  FoldedNotices mended;
  std::string utf8;
  ImportSource text = source;
  if (auto fault = textFault(source.content, source.file)) {
    if (source.content.find('\0') != std::string_view::npos) return failure(std::move(*fault));
    utf8 = ipc::asUtf8(source.content, mended);
    text.content = utf8;
  }
  auto preamble = ipc::preambleOf(text);
  if (!preamble) return failure(preamble.error());
  ipc::IpcReader r(text, std::move(*preamble));
  r.points.fold(std::move(mended));
  ipc::addLayers(r);
  ipc::Drawing drawing;
  Result<void> state;
  const std::size_t panel =
      ipc::forEachBoardLine(text.content, [&](const ipc::RecordLine& line, std::size_t number) {
        if (line.code() == 999) return true;
        state = ipc::readLine(r, drawing, line, number);
        if (state && source.options.progress.stopped())
          state = failure({pattern("core", "reading was stopped"), source.file});
        return state.has_value();
      });
  if (!state) return failure(state.error());
  if (panel > 0)
    r.points.notice(said(pattern("core", "line {}: the data of the panel were not read"), panel));
  if (auto done = ipc::finishGroup(r); !done) return failure(done.error());
  ipc::finishDrawing(r, drawing);
  return ipc::finish(r);
}

} // namespace netmend
