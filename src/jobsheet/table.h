#pragma once

#include <functional>
#include <vector>

#include "text.h"

namespace netmend {

struct Column {
  QString head;
  double share = 1.0; ///< of the width
  Qt::Alignment alignment = Qt::AlignLeft;
};

/// Paints a sign into a square of the height of a line.
using Sign = std::function<void(QPainter&, const QRectF&)>;

struct Cell {
  std::vector<Run> runs;
  Sign sign; ///< left of the text; empty: none
};

struct TableRow {
  std::vector<Cell> cells; ///< fewer than columns: the last one goes on to the right
  bool shaded = false;
  bool ruled = true; ///< a thin line below
  bool keepWithNext = false;
};

struct TableStyle {
  QFont font;
  double width = 0;
  double padding = 2.2 * SheetStyle::point;
  double tallest = 0; ///< a row above this goes on in a further row, which nothing but an essay needs
};

[[nodiscard]] Cell cell(const QString& text, bool bold = false);
[[nodiscard]] TableStyle tableStyle(const SheetStyle& style, const QFont& font);

/// One piece a row; the head comes again on each further page. Columns without any head text get none.
[[nodiscard]] Pieces tablePieces(const std::vector<Column>& columns, const std::vector<TableRow>& rows,
                                 const TableStyle& style);

} // namespace netmend
