#include "text.h"
#include "style.h"

#include <QFontMetricsF>

namespace netmend {

TextBlock::TextBlock(const std::vector<Run>& runs, const QFont& font, double width, Qt::Alignment alignment) {
  QString text;
  QList<QTextLayout::FormatRange> formats;
  for (const Run& run : runs) {
    QTextLayout::FormatRange range;
    range.start = static_cast<int>(text.size());
    range.length = static_cast<int>(run.text.size());
    if (run.bold) range.format.setFontWeight(QFont::Bold);
    if (run.italic) range.format.setFontItalic(true);
    if (range.length > 0 && (run.bold || run.italic)) formats.append(range);
    text += run.text;
  }
  layout_ = std::make_shared<QTextLayout>(text, font);
  layout_->setFormats(formats);
  QTextOption option(alignment);
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  // The sheet is set from left to right, whatever a text begins with.
  option.setTextDirection(Qt::LeftToRight);
  layout_->setTextOption(option);
  layout_->beginLayout();
  for (QTextLine line = layout_->createLine(); line.isValid(); line = layout_->createLine()) {
    line.setLineWidth(width);
    line.setPosition(QPointF(0, 0));
  }
  layout_->endLayout();
  lineHeight_ = QFontMetricsF(font).height() * 1.04;
}

void TextBlock::paint(QPainter& painter, QPointF topLeft, int first, int last) const {
  for (int i = first; i < last && i < lines(); ++i)
    layout_->lineAt(i).draw(&painter, topLeft + QPointF(0, lineHeight_ * (i - first)));
}

Shortened shortened(const QString& text, const QFont& font, double width, int lines, bool bold) {
  constexpr qsizetype mostInLine = 400; // letters: no page is wide enough for more
  const auto block = [&](const QString& part) { return TextBlock({{part, bold, false}}, font, width); };
  const QString whole = text.left(lines * mostInLine);
  if (TextBlock all = block(whole); whole.size() == text.size() && all.lines() <= lines) return {all, false};
  qsizetype fits = 0;
  for (qsizetype low = 1, high = whole.size(); low <= high;) {
    const qsizetype middle = (low + high) / 2;
    const bool enough = block(whole.left(middle) + QStringLiteral(" …")).lines() <= lines;
    if (enough) fits = middle;
    (enough ? low : high) = enough ? middle + 1 : middle - 1;
  }
  QString part = whole.left(fits);
  constexpr qsizetype longWord = 30; // one that is longer is cut, too
  const qsizetype blank = part.lastIndexOf(QLatin1Char(' '));
  if (blank > 0 && part.size() - blank < longWord && fits < whole.size() && !whole[fits].isSpace())
    part.truncate(blank);
  if (!part.isEmpty() && part.back().isHighSurrogate()) part.chop(1);
  while (!part.isEmpty() && (part.back().isSpace() || part.back() == QLatin1Char(',')))
    part.chop(1);
  return {block(part + QStringLiteral(" …")), true};
}

Piece headingPiece(const SheetStyle& style, const QString& text) {
  const TextBlock block({{text, false, false}}, style.heading, style.body.width());
  const double rule = 2.5 * SheetStyle::point;
  Piece piece;
  piece.height = block.height() + 2 * rule;
  piece.spaceAbove = 11 * SheetStyle::point;
  piece.keepWithNext = true;
  piece.paint = [block, rule, width = style.body.width()](QPainter& painter, QPointF at) {
    painter.setPen(sheetColors().ink);
    block.paint(painter, at, 0, block.lines());
    painter.setPen(QPen(sheetColors().lit, 0.9 * SheetStyle::point));
    const double y = at.y() + block.height() + rule * 0.6;
    painter.drawLine(QPointF(at.x(), y), QPointF(at.x() + width, y));
  };
  return piece;
}

Pieces paragraph(const std::vector<Run>& runs, const QFont& font, double width, double spaceAbove) {
  const TextBlock block(runs, font, width);
  Pieces pieces;
  const int count = block.lines();
  for (int i = 0; i < count; ++i) {
    Piece piece;
    piece.height = block.lineHeight();
    piece.spaceAbove = i == 0 ? spaceAbove : 0.0;
    piece.keepWithNext = i + 1 < count && (i == 0 || i == count - 2);
    piece.paint = [block, i](QPainter& painter, QPointF at) {
      painter.setPen(sheetColors().ink);
      block.paint(painter, at, i, i + 1);
    };
    pieces.push_back(std::move(piece));
  }
  return pieces;
}

} // namespace netmend
