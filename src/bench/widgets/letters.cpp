#include "letters.h"

#include <cmath>

#include <QApplication>
#include <QEvent>
#include <QShortcutEvent>
#include <QStyleOptionButton>
#include <QStylePainter>

#include "netmend/drawing/face.h"

namespace netmend {

namespace {

double& scaleNow() {
  static double scale = 1.0;
  return scale;
}

} // namespace

double pixelsOf(Letters letters) {
  switch (letters) {
  case Letters::small:
    return face::smallLetters;
  case Letters::reading:
    return face::textLetters;
  case Letters::metre:
    return face::midLetters;
  case Letters::foot:
    return face::footLetters;
  case Letters::large:
    return face::largeLetters;
  case Letters::point:
    return face::dueLetters;
  }
  return face::textLetters;
}

QFont lettersFont(Letters letters, bool bold) {
  QFont font = faceFont(pixelsOf(letters) * faceScale());
  font.setBold(bold);
  return font;
}

double faceScale() {
  return scaleNow();
}

void setFaceScale(double scale) {
  scaleNow() = scale;
  if (const QFont font = lettersFont(Letters::reading); QApplication::font() != font)
    QApplication::setFont(font);
}

int scaled(double pixels) {
  return static_cast<int>(std::lround(pixels * faceScale()));
}

namespace {

constexpr const char* lettersProperty = "netmendLetters";
constexpr const char* boldProperty = "netmendBold";
constexpr const char* growthProperty = "netmendGrowth";
constexpr const char* heightProperty = "netmendHeight";

constexpr const char* mainProperty = "netmendMain"; // face_style.cpp fills it

/// Its key is drawn as a key cap beside its words, and acts at once.
class PromptButton : public QPushButton {
public:
  PromptButton(const QString& words, QString cap, QWidget* parent)
      : QPushButton(words, parent), cap_(std::move(cap)) {}
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }
  [[nodiscard]] QSize sizeHint() const override {
    return {compact_ ? capSize().width() + 2 * gap() : withWords(), scaled(face::control)};
  }
  [[nodiscard]] int withWords() const {
    const int cap = cap_.isEmpty() ? 0 : capSize().width() + gap();
    return fontMetrics().size(Qt::TextShowMnemonic, text()).width() + cap + 3 * gap();
  }
  void setCompact(bool compact) {
    if (cap_.isEmpty() || compact_ == compact) return;
    compact_ = compact;
    setToolTip(compact ? text() : QString());
    updateGeometry();
    update();
  }

protected:
  bool event(QEvent* event) override { return clickedAtOnce(*this, *event) || QPushButton::event(event); }

  void paintEvent(QPaintEvent*) override {
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    painter.drawControl(QStyle::CE_PushButton, option);
    // Of a filled block the words are in the colour of what it lies on.
    const bool isMain = netmend::isMain(*this) && isEnabled();
    const auto role = isMain        ? QPalette::HighlightedText
                      : isChecked() ? QPalette::Button
                                    : QPalette::ButtonText;
    painter.setPen(palette().color(role));
    QRect inside = rect().adjusted(gap() * 3 / 2, 0, -gap(), 0);
    if (compact_) {
      const QSize size = capSize();
      const QRect cap(QPoint((width() - size.width()) / 2, (height() - size.height()) / 2), size);
      return paintKeyCap(painter, cap, cap_, isMain || isChecked() ? QBrush(Qt::NoBrush) : palette().base());
    }
    if (!cap_.isEmpty()) {
      const QRect cap = capIn(inside);
      inside.setRight(cap.left() - gap());
      paintKeyCap(painter, cap, cap_, isMain || isChecked() ? QBrush(Qt::NoBrush) : palette().base());
    } else {
      inside.adjust(-gap() / 2, 0, 0, 0);
    }
    const QString words =
        fontMetrics().elidedText(text(), Qt::ElideRight, inside.width(), Qt::TextShowMnemonic);
    const int across = cap_.isEmpty() ? Qt::AlignHCenter : Qt::AlignLeft;
    painter.drawText(inside, across | Qt::AlignVCenter | static_cast<int>(Qt::TextShowMnemonic), words);
  }

private:
  [[nodiscard]] static int gap() { return scaled(face::grid); }
  [[nodiscard]] QSize capSize() const { return keyCapSize(cap_); }
  [[nodiscard]] QRect capIn(const QRect& inside) const {
    const QSize size = capSize();
    return {QPoint(inside.right() - size.width() + 1, inside.center().y() - size.height() / 2), size};
  }
  QString cap_;
  bool compact_ = false;
};

} // namespace

bool clickedAtOnce(QPushButton& button, QEvent& event) {
  if (event.type() != QEvent::Shortcut || static_cast<QShortcutEvent&>(event).isAmbiguous()) return false;
  button.click();
  return true;
}

QSize keyCapSize(const QString& key) {
  const QFontMetrics metrics(lettersFont(Letters::small));
  return {std::max(metrics.horizontalAdvance(key) + scaled(12), scaled(24)), scaled(23)};
}

void paintKeyCap(QPainter& painter, const QRect& cap, const QString& key, const QBrush& fill) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(lettersFont(Letters::small));
  QPen pen = painter.pen();
  const QColor ink = pen.color();
  pen.setWidthF(faceScale());
  painter.setPen(pen);
  painter.setBrush(fill);
  const double half = pen.widthF() / 2;
  painter.drawRoundedRect(QRectF(cap).adjusted(half, half, -half, -half), 3 * faceScale(), 3 * faceScale());
  const int edge = scaled(2);
  painter.fillRect(QRect(cap.left() + edge, cap.bottom() - edge, cap.width() - 2 * edge, edge), ink);
  painter.drawText(cap.adjusted(0, 0, 0, -edge), Qt::AlignCenter, key);
  painter.restore();
}

void setLetters(QWidget& widget, Letters letters, bool bold) {
  widget.setProperty(lettersProperty, static_cast<int>(letters));
  widget.setProperty(boldProperty, bold);
  widget.setFont(lettersFont(letters, bold));
}

int fieldPadding() {
  return scaled(6);
}

void keepRoomForHint(QLineEdit& field, Growth growth) {
  field.setProperty(growthProperty, static_cast<int>(growth));
  // A field that is not on the screen learns of the application's new font only when it is shown again.
  const QFontMetrics metrics(field.property(lettersProperty).isValid() ? field.font() : QApplication::font());
  const int hint = metrics.horizontalAdvance(field.placeholderText()) * 9 / 8 + metrics.averageCharWidth() +
                   2 * fieldPadding();
  field.setMinimumWidth(hint);
  if (growth == Growth::none) field.setMaximumWidth(hint * 3 / 2);
}

void fitLetters(QLabel& label, int height, std::initializer_list<Letters> letters, bool bold) {
  const int room = label.contentsRect().width();
  if (room <= 0) return;
  Letters chosen = *letters.begin();
  for (const Letters each : letters) {
    chosen = each;
    const QRect wanted = QFontMetrics(lettersFont(each, bold))
                             .boundingRect(QRect(0, 0, room, 10 * height), Qt::TextWordWrap, label.text());
    if (wanted.width() <= room && wanted.height() <= height) break;
  }
  // Asked at every change of the layout, which another font changes again.
  if (label.font() != lettersFont(chosen, bold)) setLetters(label, chosen, bold);
}

void setScaledHeight(QWidget& widget, double pixels) {
  widget.setProperty(heightProperty, pixels);
  widget.setFixedHeight(scaled(pixels));
}

void followScale(QWidget& window) {
  for (QWidget* widget : window.findChildren<QWidget*>()) {
    const QVariant letters = widget->property(lettersProperty);
    if (letters.isValid())
      setLetters(*widget, static_cast<Letters>(letters.toInt()), widget->property(boldProperty).toBool());
    if (const QVariant height = widget->property(heightProperty); height.isValid())
      setScaledHeight(*widget, height.toDouble());
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

QLabel* makeCaption(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setTextFormat(Qt::PlainText);
  setLetters(*label, Letters::small);
  setQuiet(*label);
  return label;
}

// The palette's roles: what has no meaning of its own to Qt stands for a colour of the face
// (`window/theme.cpp`).
void setQuiet(QLabel& label) {
  label.setForegroundRole(QPalette::PlaceholderText);
}

void setOdd(QLabel& label, bool odd) {
  label.setForegroundRole(odd ? QPalette::LinkVisited : QPalette::WindowText);
}

QFrame* makeCard(QWidget* parent) {
  auto* card = new QFrame(parent);
  card->setFrameShape(QFrame::StyledPanel);
  card->setBackgroundRole(QPalette::Button);
  card->setAutoFillBackground(true);
  return card;
}

QFrame* makeRule(Qt::Orientation lies, QWidget* parent) {
  auto* rule = new QFrame(parent);
  rule->setBackgroundRole(QPalette::Midlight);
  rule->setAutoFillBackground(true);
  if (lies == Qt::Horizontal)
    rule->setFixedHeight(1);
  else
    rule->setFixedWidth(1);
  return rule;
}

void setMain(QPushButton& button, bool isMain) {
  if (netmend::isMain(button) == isMain) return;
  button.setProperty(mainProperty, isMain);
  setLetters(button, Letters::reading, isMain);
}

bool isMain(const QPushButton& button) {
  return button.property(mainProperty).toBool();
}

void setCompact(QPushButton& button, bool compact) {
  if (auto* prompt = dynamic_cast<PromptButton*>(&button)) prompt->setCompact(compact);
}

int widthWithWords(const QPushButton& button) {
  const auto* prompt = dynamic_cast<const PromptButton*>(&button);
  return prompt != nullptr ? prompt->withWords() : button.sizeHint().width();
}

void setLater(QPushButton& button) {
  button.setProperty("netmendLater", true); // face_style.cpp dashes it
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
