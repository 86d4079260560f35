#include "kicad_board.h"

#include <fmt/format.h>

#include "kicad_reader.h"

namespace netmend {

namespace kicad {

namespace {

void readVersion(KicadReader& r) {
  const double version = r.in.onlyNumber();
  if (r.in.failed()) return;
  if (version < 3) {
    r.in.fail(pattern("core", "a board file too old to be read"),
              said(pattern("core", "version {}"), fmt::format("{}", version)),
              pattern("core", "version 3 or later"));
    return;
  }
  r.version = static_cast<long>(version);
}

void readItem(KicadReader& r, const Item& item) {
  if (item.kind != Item::Kind::list) return;
  const std::string_view head = item.text;
  if (head == "segment") return readSegment(r);
  if (head == "via") return readVia(r);
  if (head == "arc") return readArc(r);
  if (head == "footprint" || head == "module") return readFootprint(r);
  if (head == "zone") return readZone(r);
  if (head == "net") return readNetDeclaration(r);
  if (head == "layers") return readLayers(r);
  if (head == "setup") return readSetup(r);
  if (head == "general") return readGeneral(r);
  if (head == "title_block") return readTitle(r);
  if (head == "version") return readVersion(r);
  if (head == "gr_text" || head == "gr_text_box") return readStrokeless(r, textsLeftOut, r.in.place());
  if (head == "dimension" || head == "target" || head == "table" || head == "barcode")
    return readStrokeless(r, pattern("core", "dimensions, targets and tables on copper layers, left out"),
                          r.in.place());
  if (const auto kind = head.starts_with("gr_") ? graphicKind(head) : std::nullopt) {
    const Graphic g = readGraphic(r.in, *kind);
    if (!r.in.failed()) addDrawing(r, g, Point{}, Degrees{});
    return;
  }
  r.in.leave();
}

/// Where only the board's thickness is known, the dielectrics are taken as equal shares of it.
void guessDielectrics(KicadReader& r) {
  const auto& order = r.board().info.layerOrder;
  if (!r.boardThickness.known() || order.size() < 2 || r.boardThickness.value <= Length(0)) return;
  for (const LayerId id : order) {
    if (r.board().layers.find(id)->dielectricBelow.known()) return;
  }
  for (std::size_t i = 0; i + 1 < order.size(); ++i) {
    Layer layer = *r.board().layers.find(order[i]);
    layer.dielectricBelow = guessed(r.boardThickness.value / static_cast<std::int64_t>(order.size() - 1));
    r.board().layers.put(std::move(layer));
  }
}

Result<void> finish(KicadReader& r) {
  auto outline = outlineFrom(std::move(r.edges));
  if (!outline) {
    Error error = outline.error();
    error.file = r.source.file;
    return failure(std::move(error));
  }
  for (Said& notice : outline->notices)
    r.notice(std::move(notice));
  if (outline->polygons.empty())
    r.notice(pattern("core", "the board's edge is not known"));
  else
    r.board().info.outline = fromFile(std::move(outline->polygons));
  guessDielectrics(r);
  for (const auto& [english, counted] : r.counted)
    r.notice(said(pattern("core", "{}: {}, first in line {}"), counted.what, counted.count,
                  r.in.lineAt(counted.first)));
  return {};
}

} // namespace

} // namespace kicad

bool looksLikeKicadBoard(std::string_view content) {
  const std::size_t start = content.find_first_not_of(" \t\r\n");
  return start != std::string_view::npos && content.substr(start).starts_with("(kicad_pcb");
}

Result<Imported> readKicadBoard(const ImportSource& source) {
  kicad::KicadReader r(source);
  const kicad::Item head = r.in.next();
  if (!head.isList("kicad_pcb"))
    r.in.fail(pattern("core", "not a board file"), std::string(head.text.substr(0, 40)),
              asItIs("(kicad_pcb"));
  bool first = true;
  double told = 0.0;
  while (const kicad::Item item = r.in.next()) {
    if (first && !item.isList("version")) {
      r.in.fail(pattern("core", "the file's version is missing"), std::string(item.text.substr(0, 40)),
                asItIs("(version …)"));
      break;
    }
    first = false;
    kicad::readItem(r, item);
    const double share = static_cast<double>(item.text.data() - source.content.data()) /
                         static_cast<double>(source.content.size());
    if (share > told + 0.02) source.options.progress(pattern("core", "reading"), told = share);
    if (source.options.progress.stopped())
      return failure({pattern("core", "reading was stopped"), source.file});
  }
  r.in.expectEnd();
  if (!r.in.failed() && r.board().info.layerOrder.empty())
    r.in.fail(pattern("core", "the file declares no copper layers"));
  if (r.in.failed()) return failure(r.in.error(source.file));
  if (auto done = kicad::finish(r); !done) return failure(done.error());
  return std::move(r.result);
}

} // namespace netmend
