#include "reading_field.h"

#include <QKeyEvent>
#include <QKeySequence>
#include <QPainter>

#include <utility>

#include "netmend/drawing/face.h"

namespace netmend {

ReadingField::ReadingField(const QString& hint, Growth growth, const QString& name, QWidget* parent)
    : QLineEdit(parent) {
  setLetters(*this, Letters::large, true);
  setPlaceholderText(hint);
  keepRoomForHint(*this, growth);
  setObjectName(name);
}

QPushButton* ReadingField::keyButton(const QString& text, Qt::Key key, Qt::KeyboardModifiers modifiers) {
  const QKeySequence sequence(QKeyCombination(modifiers, key));
  QPushButton* button = makePrompt(text, sequence, parentWidget());
  connect(button, &QPushButton::clicked, this, [this, key, modifiers] {
    // First the keyboard, then the command: it may give the keyboard to something else.
    setFocus();
    if (onKey) onKey(key, modifiers);
  });
  return button;
}

void ReadingField::setLive(const std::optional<QString>& value) {
  if (live_ == value) return;
  const bool other = live_.has_value() != value.has_value();
  live_ = value;
  if (other) updateGeometry();
  update();
}

QSize ReadingField::sizeHint() const {
  const QSize typed = QLineEdit::sizeHint();
  return live_ ? QSize(typed.width(), QFontMetrics(lettersFont(Letters::point)).height()) : typed;
}

void ReadingField::paintEvent(QPaintEvent* event) {
  if (!live_ || !text().isEmpty()) return QLineEdit::paintEvent(event);
  QPainter painter(this);
  painter.setPen(palette().color(QPalette::WindowText));
  // Smaller before it is cut off.
  double pixels = face::dueLetters;
  QFont font = lettersFont(Letters::point, true);
  while (pixels > face::largeLetters && QFontMetrics(font).horizontalAdvance(*live_) > width()) {
    pixels -= face::grid;
    font.setPixelSize(scaled(pixels));
  }
  painter.setFont(font);
  painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter, *live_);
}

bool ReadingField::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && text().isEmpty()) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return true;
    }
  }
  return QLineEdit::event(event);
}

bool ReadingField::restOfOverLimit(int key) {
  if (key == Qt::Key_Shift || key == Qt::Key_CapsLock) return false;
  const int before = std::exchange(typedOut_, 0);
  const bool rest = (before == Qt::Key_O && key == Qt::Key_L) ||
                    (before == Qt::Key_L && (key == Qt::Key_Return || key == Qt::Key_Enter));
  if (rest ? key == Qt::Key_L : key == Qt::Key_O) typedOut_ = key;
  return rest;
}

void ReadingField::keyPressEvent(QKeyEvent* event) {
  if (restOfOverLimit(event->key()) && text().isEmpty()) return;
  const bool plain = (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == 0;
  if (plain && text().isEmpty() && onKey && onKey(event->key(), event->modifiers())) return;
  QLineEdit::keyPressEvent(event);
}

} // namespace netmend
