#include "foot_bar.h"

#include <algorithm>
#include <vector>

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>

#include "face_style.h"
#include "letters.h"

namespace netmend {

namespace {
constexpr double modePart = 0.156; ///< of the width, 240 of 1536
constexpr double leastMode = 176;
constexpr double leastWindow = 900; ///< narrower, the due thing needs all the room
constexpr double leastDue = 0.4; ///< of what the mode leaves, for the due thing before keys lose their words
} // namespace

FootBar::FootBar(QWidget* parent)
    : QWidget(parent), due_(makeLabel(Letters::foot, QStringLiteral("next"), this)),
      row_(new QHBoxLayout(this)), keys_(new QHBoxLayout) {
  setScaledHeight(*this, face::foot);
  row_->setSizeConstraint(QLayout::SetNoConstraint);
  space();
  setLetters(*due_, Letters::foot, true);
  due_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  row_->addWidget(due_, 1);
  row_->addLayout(keys_);
  layOut();
}

void FootBar::setMode(BandLook look, const QString& text) {
  if (look_ == look && mode_ == text) return;
  look_ = look;
  mode_ = text;
  layOut();
  update();
}

void FootBar::setDue(const QString& text) {
  if (due_->text() == text) return;
  due_->setText(text);
  due_->setToolTip(text);
  layOut();
}

QString FootBar::due() const {
  return due_->text();
}

QSize FootBar::minimumSizeHint() const {
  return {1, scaled(face::foot)};
}

void FootBar::showKeys(QWidget* keys) {
  if (shown_ == keys) return;
  if (shown_ != nullptr) shown_->hide();
  shown_ = keys;
  if (keys == nullptr) return;
  if (keys_->indexOf(keys) < 0) keys_->addWidget(keys);
  keys->show();
}

void FootBar::addOwn(QPushButton* button) {
  own_ = button;
  row_->addWidget(button);
}

int FootBar::modeWidth() const {
  if (mode_.isEmpty() || width() < scaled(leastWindow)) return 0;
  return std::max(scaled(leastMode), static_cast<int>(width() * modePart));
}

/// Not as often as it is laid out: spacing that is set asks for that again, even where it is what it was.
void FootBar::space() {
  row_->setSpacing(scaled(face::grid));
  keys_->setSpacing(scaled(face::grid));
}

void FootBar::layOut() {
  row_->setContentsMargins(modeWidth() + scaled(face::margin), 0, scaled(face::margin), 0);
  shareWithKeys();
  // Before it is shown it has not its width: letters would be read that nobody sees.
  if (!isVisible()) return;
  // A long sentence takes smaller letters, then more lines: cut off it would say nothing.
  fitLetters(*due_, scaled(face::foot - face::grid),
             {Letters::foot, Letters::metre, Letters::reading, Letters::small}, true);
}

/// Where words of the keys would leave too little for the due thing, the key caps stand alone; that of the
/// one that goes on last.
void FootBar::shareWithKeys() {
  std::vector<QPushButton*> buttons;
  if (shown_ != nullptr)
    for (auto* button : shown_->findChildren<QPushButton*>())
      if (button->isVisibleTo(shown_)) buttons.push_back(button);
  const bool mainAmongThem =
      std::any_of(buttons.begin(), buttons.end(), [](auto* button) { return isMain(*button); });
  if (own_ != nullptr) {
    setMain(*own_, !mainAmongThem);
    if (own_->isVisibleTo(this)) buttons.push_back(own_);
  }
  const int gap = scaled(face::grid);
  const int inner = width() - modeWidth() - 2 * scaled(face::margin);
  const int due = QFontMetrics(lettersFont(Letters::reading, true)).horizontalAdvance(due_->text());
  int wanted = std::min(due, static_cast<int>(inner * leastDue));
  for (const QPushButton* button : buttons)
    wanted += widthWithWords(*button) + gap;
  for (const bool mains : {false, true})
    for (QPushButton* button : buttons) {
      if (isMain(*button) != mains) continue;
      const bool compact = wanted > inner;
      setCompact(*button, compact);
      if (compact) wanted -= widthWithWords(*button) - button->sizeHint().width();
    }
}

void FootBar::resizeEvent(QResizeEvent*) {
  layOut();
}

bool FootBar::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) space();
  if (event->type() == QEvent::ApplicationFontChange || event->type() == QEvent::LayoutRequest ||
      event->type() == QEvent::Show)
    layOut();
  return QWidget::event(event);
}

void FootBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const FaceColors& colors = faceColors(faceTheme());
  painter.fillRect(rect(), colors.card);
  painter.fillRect(QRect(0, 0, width(), scaled(colors.edge)),
                   look_ == BandLook::good ? colors.good : colors.ink);
  const int mode = modeWidth();
  if (mode == 0) return;
  const QRect block(0, 0, mode, height());
  paintBand(painter, block, look_, colors);
  painter.setFont(lettersFont(Letters::reading, true));
  const QRect inside = block.adjusted(scaled(face::grid * 2), 0, -scaled(face::grid), 0);
  const QString text = painter.fontMetrics().elidedText(mode_, Qt::ElideRight, inside.width());
  if (look_ == BandLook::good) {
    QRect plate = painter.fontMetrics().boundingRect(inside, Qt::AlignVCenter | Qt::AlignLeft, text);
    painter.fillRect(plate.adjusted(-scaled(8), -scaled(4), scaled(8), scaled(4)), colors.good);
  }
  painter.setPen(bandInk(look_, colors));
  painter.drawText(inside, Qt::AlignVCenter | Qt::AlignLeft, text);
}

} // namespace netmend
