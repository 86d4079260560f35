#include "letters.h"

#include <QApplication>
#include <QShortcutEvent>

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

namespace {

constexpr const char* lettersProperty = "netmendLetters";
constexpr const char* boldProperty = "netmendBold";
constexpr const char* growthProperty = "netmendGrowth";

/// Acts in the moment its key is pressed. By itself a button shows that it goes down first, a tenth of a
/// second in which somebody fast already types what belongs to the place that the key leads to.
class PromptButton : public QPushButton {
public:
  using QPushButton::QPushButton;
  [[nodiscard]] QSize sizeHint() const override { return glovedHint(QPushButton::sizeHint()); }
  [[nodiscard]] QSize minimumSizeHint() const override { return glovedHint(QPushButton::minimumSizeHint()); }

protected:
  bool event(QEvent* event) override {
    if (event->type() != QEvent::Shortcut || static_cast<QShortcutEvent*>(event)->isAmbiguous())
      return QPushButton::event(event);
    click();
    return true;
  }

private:
  /// Hit with a glove; by its own letters, whatever scale they had when it was made.
  [[nodiscard]] QSize glovedHint(QSize hint) const {
    return hint.expandedTo({0, fontMetrics().height() * 2});
  }
};

} // namespace

void setLetters(QWidget& widget, Letters letters, bool bold) {
  widget.setProperty(lettersProperty, static_cast<int>(letters));
  widget.setProperty(boldProperty, bold);
  widget.setFont(lettersFont(letters, bold));
}

void keepRoomForHint(QLineEdit& field, Growth growth) {
  field.setProperty(growthProperty, static_cast<int>(growth));
  // A field that is not on the screen learns of the application's new font only when it is shown again.
  const QFontMetrics metrics(field.property(lettersProperty).isValid() ? field.font() : QApplication::font());
  const int hint = metrics.horizontalAdvance(field.placeholderText()) * 9 / 8 + metrics.averageCharWidth();
  field.setMinimumWidth(hint);
  if (growth == Growth::none) field.setMaximumWidth(hint * 3 / 2);
}

void followScale(QWidget& window) {
  for (QWidget* widget : window.findChildren<QWidget*>()) {
    const QVariant letters = widget->property(lettersProperty);
    if (letters.isValid())
      setLetters(*widget, static_cast<Letters>(letters.toInt()), widget->property(boldProperty).toBool());
    if (const QVariant growth = widget->property(growthProperty); growth.isValid())
      keepRoomForHint(*qobject_cast<QLineEdit*>(widget), static_cast<Growth>(growth.toInt()));
  }
}

QLabel* makeLabel(Letters letters, const QString& name, QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  setLetters(*label, letters, letters == Letters::point);
  label->setObjectName(name);
  return label;
}

QPushButton* makeButton(const QString& text, const QKeySequence& key, QWidget* parent) {
  const QString keyText = key.toString(QKeySequence::NativeText);
  auto* button = new PromptButton(keyText.isEmpty() ? text : text + QStringLiteral("   ") + keyText, parent);
  button->setAccessibleName(text);
  button->setFocusPolicy(Qt::TabFocus);
  button->setAutoDefault(false);
  button->setShortcut(key);
  return button;
}

} // namespace netmend
