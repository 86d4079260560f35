#include "table.h"
#include "style.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace netmend {

namespace {

struct LaidCell {
  TextBlock text;
  Sign sign;
  double left; ///< of the text
  double signLeft;
};

struct LaidRow {
  std::vector<LaidCell> cells;
  int lines = 1;
  double lineHeight = 0;
};

LaidRow layRow(const std::vector<Column>& columns, const TableRow& row, const TableStyle& style) {
  const double total = std::accumulate(columns.begin(), columns.end(), 0.0,
                                       [](double s, const Column& c) { return s + c.share; });
  const double gap = 4 * SheetStyle::point;
  const double signSize = QFontMetricsF(style.font).height();
  LaidRow out;
  double left = 0;
  for (std::size_t i = 0; i < row.cells.size() && i < columns.size(); ++i) {
    const double share = columns[i].share / total * style.width;
    const bool last = i + 1 == row.cells.size();
    const double right = last ? style.width : left + share;
    const Cell& content = row.cells[i];
    const double textLeft = left + (content.sign ? signSize * 1.25 : 0.0);
    const double width = std::max(signSize, right - textLeft - (right < style.width ? gap : 0.0));
    out.cells.push_back(
        {TextBlock(content.runs, style.font, width, columns[i].alignment), content.sign, textLeft, left});
    out.lines = std::max(out.lines, out.cells.back().text.lines());
    out.lineHeight = out.cells.back().text.lineHeight();
    left += share;
  }
  return out;
}

Piece rowPiece(const LaidRow& laid, const TableRow& row, const TableStyle& style, int first, int last) {
  Piece piece;
  // A row that goes on has no gap where it was divided.
  const double above = first == 0 ? style.padding : 0.0;
  const double below = last == laid.lines ? style.padding : 0.0;
  piece.height = laid.lineHeight * (last - first) + above + below;
  piece.paint = [laid, row, style, first, last, above, height = piece.height](QPainter& painter, QPointF at) {
    if (row.shaded) painter.fillRect(QRectF(at, QSizeF(style.width, height)), sheetColors().range);
    for (const LaidCell& laidCell : laid.cells) {
      painter.setPen(sheetColors().ink);
      const QPointF top = at + QPointF(0, above);
      laidCell.text.paint(painter, top + QPointF(laidCell.left, 0), first, last);
      if (laidCell.sign && first == 0)
        laidCell.sign(painter,
                      QRectF(top + QPointF(laidCell.signLeft, 0), QSizeF(laid.lineHeight, laid.lineHeight)));
    }
    if (!row.ruled) return;
    painter.setPen(QPen(sheetColors().grid, 0.5 * SheetStyle::point));
    painter.drawLine(at + QPointF(0, height), at + QPointF(style.width, height));
  };
  return piece;
}

Piece headPiece(const std::vector<Column>& columns, const TableStyle& style) {
  TableRow row;
  for (const Column& column : columns)
    row.cells.push_back(cell(column.head, true));
  row.shaded = true;
  const LaidRow laid = layRow(columns, row, style);
  Piece piece = rowPiece(laid, row, style, 0, laid.lines);
  piece.keepWithNext = true;
  return piece;
}

} // namespace

Cell cell(const QString& text, bool bold) {
  return {{{text, bold, false}}, {}};
}

TableStyle tableStyle(const SheetStyle& style, const QFont& font) {
  TableStyle out;
  out.font = font;
  out.width = style.body.width();
  out.tallest = style.body.height() / 2;
  return out;
}

Pieces tablePieces(const std::vector<Column>& columns, const std::vector<TableRow>& rows,
                   const TableStyle& style) {
  Pieces pieces;
  const bool headed =
      std::any_of(columns.begin(), columns.end(), [](const Column& c) { return !c.head.isEmpty(); });
  std::shared_ptr<const Piece> head;
  if (headed && !rows.empty()) {
    head = std::make_shared<const Piece>(headPiece(columns, style));
    pieces.push_back(*head);
  }
  for (const TableRow& row : rows) {
    const LaidRow laid = layRow(columns, row, style);
    constexpr int essayPart = 6; // lines
    const int most = laid.lines * laid.lineHeight > style.tallest ? essayPart : laid.lines;
    for (int first = 0; first < laid.lines; first += most) {
      const int last = std::min(laid.lines, first + most);
      TableRow part = row;
      part.ruled = row.ruled && last == laid.lines;
      Piece piece = rowPiece(laid, part, style, first, last);
      piece.head = head;
      piece.keepWithNext = row.keepWithNext && last == laid.lines;
      pieces.push_back(std::move(piece));
    }
  }
  return pieces;
}

} // namespace netmend
