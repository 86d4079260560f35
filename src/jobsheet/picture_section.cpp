#include <algorithm>

#include "findings.h"
#include "map_picture.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/verdict.h"
#include "signs.h"
#include "style.h"

namespace netmend {

namespace {

Piece mapPiece(const Sheet& sheet, SheetMap map, const std::shared_ptr<const BoardScene>& scene) {
  const SheetStyle& style = sheet.style;
  const double width = style.body.width();
  const double height = std::min(92 * SheetStyle::millimetre, width * 0.55);
  const TextBlock caption({{map.caption, false, true}}, style.small, width);
  Piece piece;
  const int lines = std::min(caption.lines(), 6);
  piece.height = height + caption.lineHeight() * lines + 3 * SheetStyle::point;
  piece.spaceAbove = 4 * SheetStyle::point;
  piece.paint = [=, map = std::move(map)](QPainter& painter, QPointF at) {
    paintSheetMap(painter, map, *scene, QRectF(at, QSizeF(width, height)), style);
    painter.setPen(sheetColors().ink);
    caption.paint(painter, at + QPointF(0, height + 2 * SheetStyle::point), 0, lines);
  };
  return piece;
}

/// What the shapes in the strips mean; only those that occur.
TableRow keyOf(const std::vector<PinStrip>& strips) {
  std::vector<std::pair<MarkShape, QString>> seen;
  bool after = false;
  for (const PinStrip& strip : strips)
    for (const StripPin& pin : strip.pins) {
      after |= pin.reading && pin.after;
      for (const auto* reading : {&pin.reading, &pin.after}) {
        if (!*reading) continue;
        const VerdictKind kind = (*reading)->verdict.value_or(VerdictKind::nothingToCompare);
        const MarkShape shape = markForVerdict(kind);
        const bool known =
            std::any_of(seen.begin(), seen.end(), [&](const auto& s) { return s.first == shape; });
        if (!known) seen.emplace_back(shape, shown(nameOf(kind)));
      }
    }
  TableRow row;
  for (const auto& [shape, verdict] : seen) {
    Cell one = cell(verdict);
    one.sign = markSign(shape);
    row.cells.push_back(std::move(one));
  }
  row.cells.push_back(
      cell(after ? shown(pattern("core", "bar: expected; left mark: as found, right mark: after repair"))
                 : shown(pattern("core", "bar: expected"))));
  row.ruled = false;
  return row;
}

Pieces stripPieces(const Sheet& sheet, const std::vector<PinStrip>& strips) {
  const SheetStyle& style = sheet.style;
  const double width = style.body.width();
  Pieces pieces;
  for (const PinStrip& strip : strips)
    for (const PinStrip& row : pinStripRows(strip, width, style.picture)) {
      Piece piece;
      piece.height = pinStripHeight(row, width, style.picture);
      piece.spaceAbove = 5 * SheetStyle::point;
      piece.paint = [row, width, height = piece.height, type = style.picture](QPainter& painter, QPointF at) {
        paintPinStrip(painter, row, QRectF(at, QSizeF(width, height)), type);
      };
      pieces.push_back(std::move(piece));
    }
  if (pieces.empty()) return pieces;
  pieces.back().keepWithNext = true;
  const TableRow key = keyOf(strips);
  std::vector<Column> columns(key.cells.size(), Column{{}, 1.0, Qt::AlignLeft});
  columns.back().share = 2.6;
  append(pieces, tablePieces(columns, {key}, tableStyle(style, style.small)));
  return pieces;
}

} // namespace

Pieces pictures(const Sheet& sheet) {
  Pieces pieces;
  if (sheet.content.board.board != nullptr) {
    const auto scene = std::make_shared<const BoardScene>(*sheet.content.board.board);
    for (SheetMap& map : mapsOf(sheet, *scene))
      pieces.push_back(mapPiece(sheet, std::move(map), scene));
  }
  std::vector<PinStrip> strips = sheet.content.strips;
  if (pieces.empty() && strips.empty()) strips = stripsOf(pairReadings(sheet.job().readings));
  append(pieces, stripPieces(sheet, strips));
  if (pieces.empty()) return {};
  pieces.insert(pieces.begin(), headingPiece(sheet.style, shown(pattern("core", "Picture"))));
  return pieces;
}

} // namespace netmend
