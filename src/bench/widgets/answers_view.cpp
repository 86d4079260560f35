#include "answers_view.h"

#include <algorithm>

#include <QPainter>

#include "face_style.h"
#include "letters.h"
#include "suspect_list.h"

namespace netmend {

namespace {

constexpr int answerHeight = 32; ///< pixels at 100 %

int widestOf(const std::vector<AnswerRow>& rows, QString AnswerRow::*text) {
  const QFontMetrics metrics(lettersFont(Letters::reading));
  int most = 0;
  for (const AnswerRow& row : rows)
    most = std::max(most, metrics.horizontalAdvance(row.*text));
  return most;
}

} // namespace

AnswersView::AnswersView(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("answers"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void AnswersView::setRows(std::vector<AnswerRow> rows) {
  rows_ = std::move(rows);
  QStringList words;
  for (const AnswerRow& row : rows_) {
    QStringList parts{row.reads, row.then};
    for (const QString& letter : row.letters)
      parts << letter;
    parts << row.after;
    words << parts.join(QLatin1Char(' ')).simplified();
  }
  setAccessibleName(words.join(QStringLiteral("; ")));
  setVisible(!rows_.empty());
  updateGeometry();
  update();
}

QSize AnswersView::sizeHint() const {
  return {scaled(240), static_cast<int>(rows_.size()) * scaled(answerHeight)};
}

QSize AnswersView::minimumSizeHint() const {
  return {scaled(120), sizeHint().height()};
}

void AnswersView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const FaceColors& colors = faceColors(faceTheme());
  painter.setFont(lettersFont(Letters::reading));
  const int gap = scaled(face::grid);
  const int reads = widestOf(rows_, &AnswerRow::reads) + 2 * gap;
  const int then = widestOf(rows_, &AnswerRow::then) + gap;
  const int plate = scaled(letterPlate);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const AnswerRow& row = rows_[i];
    const QRect line(0, static_cast<int>(i) * scaled(answerHeight), width(), scaled(answerHeight));
    const int flags = static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter);
    painter.setPen(colors.ink);
    painter.drawText(line, flags, row.reads);
    painter.setPen(colors.quiet);
    painter.drawText(line.adjusted(reads, 0, 0, 0), flags, row.then);
    int x = reads + (row.then.isEmpty() ? 0 : then);
    for (const QString& letter : row.letters) {
      paintLetter(painter, QRect(x, line.top() + (line.height() - plate) / 2, plate, plate), letter,
                  face::textLetters * faceScale());
      x += plate + gap;
    }
    if (row.after.isEmpty() || x >= width()) continue;
    painter.drawText(QRect(x, line.top(), width() - x, line.height()), flags,
                     painter.fontMetrics().elidedText(row.after, Qt::ElideRight, width() - x));
  }
}

} // namespace netmend
