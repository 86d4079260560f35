#include "netmend/bench/widgets/letters.h"

#include <QApplication>

namespace netmend {

QFont lettersFont(Letters letters, bool bold) {
  QFont font = QApplication::font();
  const double base = font.pointSizeF() > 0 ? font.pointSizeF() : font.pixelSize() * 0.75;
  double factor = 1.0;
  switch (letters) {
  case Letters::small:
    factor = 0.9;
    break;
  case Letters::reading:
    break;
  case Letters::metre:
    factor = 1.6;
    break;
  case Letters::point:
    factor = 2.7;
    break;
  }
  font.setPointSizeF(base * factor);
  font.setBold(bold);
  return font;
}

QLabel* makeLabel(Letters letters, const QString& name, QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  label->setFont(lettersFont(letters, letters == Letters::point));
  label->setObjectName(name);
  return label;
}

QPushButton* makeButton(const QString& text, const QKeySequence& key, QWidget* parent) {
  const QString keyText = key.toString(QKeySequence::NativeText);
  auto* button = new QPushButton(keyText.isEmpty() ? text : text + QStringLiteral("   ") + keyText, parent);
  button->setAccessibleName(text);
  button->setFocusPolicy(Qt::TabFocus);
  button->setAutoDefault(false);
  button->setShortcut(key);
  button->setMinimumHeight(button->fontMetrics().height() * 2);
  return button;
}

} // namespace netmend
