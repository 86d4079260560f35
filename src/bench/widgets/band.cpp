#include "band.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>

#include "face_style.h"
#include "letters.h"

namespace netmend {

void paintBand(QPainter& painter, const QRect& rect, BandLook look, const FaceColors& colors) {
  switch (look) {
  case BandLook::job:
    painter.fillRect(rect, colors.job);
    break;
  case BandLook::good: {
    painter.save();
    painter.setClipRect(rect, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect, colors.goodStripe);
    const double width = scaled(16);
    painter.setPen(QPen(colors.good, width, Qt::SolidLine, Qt::FlatCap));
    for (double x = rect.left() - rect.height(); x < rect.right() + 2 * width; x += 2 * width * 1.41)
      painter.drawLine(QPointF(x, rect.bottom() + width),
                       QPointF(x + rect.height() + 2 * width, rect.top() - width));
    painter.restore();
    break;
  }
  case BandLook::open: {
    painter.fillRect(rect, colors.card);
    const int edge = scaled(2 * colors.edge);
    painter.fillRect(QRect(rect.left(), rect.top(), rect.width(), edge), colors.ink);
    painter.fillRect(QRect(rect.left(), rect.bottom() - edge + 1, rect.width(), edge), colors.ink);
    painter.fillRect(QRect(rect.left(), rect.top(), edge, rect.height()), colors.ink);
    painter.fillRect(QRect(rect.right() - edge + 1, rect.top(), edge, rect.height()), colors.ink);
    break;
  }
  case BandLook::plain:
    painter.fillRect(rect, colors.card);
    break;
  }
}

QColor bandInk(BandLook look, const FaceColors& colors) {
  switch (look) {
  case BandLook::job:
    return colors.onJob;
  case BandLook::good:
    return colors.onGood;
  case BandLook::open:
  case BandLook::plain:
    return colors.ink;
  }
  return colors.ink;
}

Band::Band(const QString& name, QWidget* parent)
    : QWidget(parent), title_(makeLabel(Letters::metre, name, this)),
      words_(makeLabel(Letters::reading, name + QStringLiteral("Words"), this)), row_(new QHBoxLayout(this)) {
  setScaledHeight(*this, face::bar);
  setLetters(*title_, Letters::metre, true);
  title_->setWordWrap(false);
  // What is said beside the state gives way first.
  words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  row_->addWidget(title_);
  row_->addWidget(words_, 1);
  row_->addStretch(0); // where there are no words
  paintWords();
}

void Band::add(QLabel* words) {
  row_->addWidget(words);
  paintWords();
}

void Band::add(QPushButton* button) {
  button->setFlat(true);
  buttons_.push_back(button);
  row_->addWidget(button);
  paintWords();
}

QString Band::title() const {
  return title_->text();
}

QString Band::words() const {
  return words_->text();
}

void Band::set(BandLook look, const QString& title, const QString& words) {
  look_ = look;
  title_->setText(title);
  words_->setText(words);
  words_->setVisible(!words.isEmpty());
  words_->setToolTip(words);
  paintWords();
  update();
}

void Band::paintWords() {
  const FaceColors& colors = faceColors(faceTheme());
  row_->setContentsMargins(scaled(face::margin), 0, scaled(face::margin), 0);
  row_->setSpacing(scaled(2 * face::grid));
  const bool striped = look_ == BandLook::good;
  for (QLabel* label : {title_, words_}) {
    QPalette inks = palette();
    inks.setColor(QPalette::WindowText, label == words_ && striped ? colors.ink : bandInk(look_, colors));
    inks.setColor(QPalette::Window, label == words_ ? colors.card : colors.good);
    label->setPalette(inks);
    label->setAutoFillBackground(striped);
    if (label == words_)
      label->setMaximumWidth(striped ? label->fontMetrics().horizontalAdvance(words_->text()) + 2 +
                                           2 * scaled(face::grid)
                                     : QWIDGETSIZE_MAX);
    label->setContentsMargins(striped ? scaled(face::grid) : 0, 0, striped ? scaled(face::grid) : 0, 0);
  }
  fitLetters(*words_, scaled(face::bar), {Letters::reading, Letters::small});
  for (QPushButton* button : buttons_) {
    QPalette inks = palette();
    const QColor ground = striped ? colors.card : look_ == BandLook::job ? colors.job : colors.card;
    inks.setColor(QPalette::ButtonText, striped ? colors.ink : bandInk(look_, colors));
    inks.setColor(QPalette::Base, ground);
    inks.setColor(QPalette::Button, ground);
    button->setPalette(inks);
    button->setAutoFillBackground(striped);
  }
}

bool Band::event(QEvent* event) {
  // The window alone hears of the application's palette and font; what is in it, of its own.
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) paintWords();
  return QWidget::event(event);
}

void Band::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintBand(painter, rect(), look_, faceColors(faceTheme()));
}

} // namespace netmend
