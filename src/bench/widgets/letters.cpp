#include "letters.h"

#include <QApplication>
#include <QShortcutEvent>
#include <QStyleOptionButton>
#include <QStylePainter>

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
///
/// Its key is drawn as a key cap beside its words.
class PromptButton : public QPushButton {
public:
  PromptButton(const QString& words, QString cap, QWidget* parent)
      : QPushButton(words, parent), cap_(std::move(cap)) {}
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }
  /// Hit with a glove; by its own letters, whatever scale they had when it was made.
  [[nodiscard]] QSize sizeHint() const override {
    const int cap = cap_.isEmpty() ? 0 : capSize().width() + padding;
    const QFontMetrics metrics = fontMetrics();
    return {metrics.size(Qt::TextShowMnemonic, text()).width() + cap + 2 * padding, metrics.height() * 2};
  }

protected:
  bool event(QEvent* event) override {
    if (event->type() != QEvent::Shortcut || static_cast<QShortcutEvent*>(event)->isAmbiguous())
      return QPushButton::event(event);
    click();
    return true;
  }

  void paintEvent(QPaintEvent*) override {
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    painter.drawControl(QStyle::CE_PushButton, option);
    // Of a filled block the words are in the colour of what it lies on.
    const QColor ink = palette().color(isChecked() ? QPalette::Button : QPalette::ButtonText);
    painter.setPen(ink);
    QRect inside = rect().adjusted(padding, 0, -padding, 0);
    if (!cap_.isEmpty()) {
      const QRect cap = capIn(inside);
      inside.setRight(cap.left() - padding);
      painter.save();
      painter.setRenderHint(QPainter::Antialiasing);
      painter.setFont(lettersFont(Letters::small));
      painter.drawRoundedRect(QRectF(cap).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
      painter.drawLine(cap.left() + 2, cap.bottom() - 2, cap.right() - 2, cap.bottom() - 2);
      painter.drawText(cap.adjusted(0, 0, 0, -2), Qt::AlignCenter, cap_);
      painter.restore();
    }
    const QString words =
        fontMetrics().elidedText(text(), Qt::ElideRight, inside.width(), Qt::TextShowMnemonic);
    const int across = cap_.isEmpty() ? Qt::AlignHCenter : Qt::AlignLeft;
    painter.drawText(inside, across | Qt::AlignVCenter | static_cast<int>(Qt::TextShowMnemonic), words);
  }

private:
  static constexpr int padding = 8;

  [[nodiscard]] QSize capSize() const {
    const QFontMetrics metrics(lettersFont(Letters::small));
    return {std::max(metrics.horizontalAdvance(cap_) + 10, metrics.height() + 2), metrics.height() + 4};
  }
  [[nodiscard]] QRect capIn(const QRect& inside) const {
    const QSize size = capSize();
    return {QPoint(inside.right() - size.width() + 1, inside.center().y() - size.height() / 2), size};
  }
  QString cap_;
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
  QPushButton* button = makePrompt(text, key, parent);
  button->setShortcut(key);
  return button;
}

QPushButton* makePrompt(const QString& text, const QKeySequence& key, QWidget* parent) {
  // Both keys go on; most keyboards have the larger one's name on both.
  const bool isReturn = !key.isEmpty() && key[0].key() == Qt::Key_Return;
  const QKeySequence said = isReturn ? QKeySequence(key[0].keyboardModifiers() | Qt::Key_Enter) : key;
  auto* button = new PromptButton(text, said.toString(QKeySequence::NativeText), parent);
  button->setAccessibleName(text);
  button->setFocusPolicy(Qt::TabFocus);
  button->setAutoDefault(false);
  return button;
}

} // namespace netmend
