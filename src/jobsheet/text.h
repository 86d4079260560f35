#pragma once

#include <memory>
#include <vector>

#include <QString>
#include <QTextLayout>

#include "flow.h"
#include "style.h"

namespace netmend {

/// A stretch of text in one look.
struct Run {
  QString text;
  bool bold = false;
  bool italic = false;
};

/// Text broken into lines of a width; words longer than a line are broken anywhere.
class TextBlock {
public:
  TextBlock(const std::vector<Run>& runs, const QFont& font, double width,
            Qt::Alignment alignment = Qt::AlignLeft);

  [[nodiscard]] int lines() const { return layout_->lineCount(); }
  [[nodiscard]] double lineHeight() const { return lineHeight_; }
  [[nodiscard]] double height() const { return lineHeight_ * lines(); }
  /// Lines `first` to before `last`, the first of them with its top at `topLeft`.
  void paint(QPainter& painter, QPointF topLeft, int first, int last) const;

private:
  std::shared_ptr<QTextLayout> layout_;
  double lineHeight_ = 0;
};

/// At most so many lines: what does not fit is cut behind a word, and an ellipsis says so.
struct Shortened {
  TextBlock block;
  bool cut = false;
};
[[nodiscard]] Shortened shortened(const QString& text, const QFont& font, double width, int lines,
                                  bool bold = false);

/// A line of its own, kept with what follows.
[[nodiscard]] Piece headingPiece(const SheetStyle& style, const QString& text);
/// One piece a line; no single line is left alone on a page.
[[nodiscard]] Pieces paragraph(const std::vector<Run>& runs, const QFont& font, double width,
                               double spaceAbove);

} // namespace netmend
