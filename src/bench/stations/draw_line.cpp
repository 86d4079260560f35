#include "draw_line.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/sketch.h"

namespace netmend {

DrawLine::DrawLine(const ChipSizes& sizes, QWidget* parent)
    : QWidget(parent), sizes_(sizes), edit_(new QLineEdit(this)),
      meanings_(makeLabel(Letters::small, QStringLiteral("lineMeanings"), this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 4);
  layout->setSpacing(2);
  edit_->setObjectName(QStringLiteral("drawLine"));
  edit_->setAccessibleName(tr("What is drawn next"));
  setLetters(*edit_, Letters::metre);
  meanings_->setTextFormat(Qt::RichText);
  meanings_->setMinimumHeight(meanings_->fontMetrics().height());
  layout->addWidget(edit_);
  layout->addWidget(meanings_);
  edit_->installEventFilter(this);
  connect(edit_, &QLineEdit::textChanged, this, &DrawLine::explain);
  connect(edit_, &QLineEdit::returnPressed, this, [this] { Q_EMIT typed(edit_->text().trimmed()); });
}

void DrawLine::open() {
  edit_->setFocus();
  edit_->selectAll();
}

void DrawLine::setHint(const QString& hint) {
  edit_->setPlaceholderText(hint);
}

void DrawLine::setText(const QString& text) {
  edit_->setText(text);
  explain();
}

QString DrawLine::text() const {
  return edit_->text();
}

bool DrawLine::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    Q_EMIT left();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

void DrawLine::explain() {
  QStringList parts;
  const TypedLine line = read ? read(edit_->text()) : TypedLine{};
  for (const LineWord& word : line.words) {
    const bool odd = word.meaning == WordMeaning::notUnderstood;
    const QString meaning = shown(meaningSaid(word, line.wanted, sizes_)).toHtmlEscaped();
    const QString text = QString::fromStdString(word.text).toHtmlEscaped();
    parts << (odd ? QStringLiteral("<b>⚠ %1</b> <b>%2</b>") : QStringLiteral("<b>%1</b> %2"))
                 .arg(text, meaning);
  }
  meanings_->setText(parts.join(QStringLiteral("&nbsp;&nbsp; · &nbsp;&nbsp;")));
}

} // namespace netmend
