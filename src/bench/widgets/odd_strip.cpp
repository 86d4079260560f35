#include "odd_strip.h"

#include <algorithm>

#include <QEvent>
#include <QLabel>
#include <QMenu>
#include <QPainter>
#include <QPushButton>
#include <QShortcut>

#include "face_style.h"
#include "letters.h"
#include "netmend/drawing/pin_strip.h"

namespace netmend {

namespace {

constexpr int boxHeight = 40;     ///< pixels at 100 %
constexpr std::size_t keyed = 9;  ///< Alt+1 to Alt+9
constexpr double markSize = 19.0; ///< of a shape, as in the sketches' 24

QKeySequence keyOf(std::size_t index) {
  return index < keyed
             ? QKeySequence(Qt::ALT |
                            static_cast<Qt::Key>(static_cast<int>(Qt::Key_1) + static_cast<int>(index)))
             : QKeySequence();
}

} // namespace

/// One odd pin. It acts in the moment its key is pressed, as all prompts do.
class OddStrip::Box : public QPushButton {
public:
  Box(OddPin pin, std::size_t index, QWidget* parent) : QPushButton(parent), pin_(std::move(pin)) {
    setObjectName(QStringLiteral("oddPin"));
    setFocusPolicy(Qt::TabFocus);
    setCheckable(true);
    setAutoDefault(false);
    cap_ = keyOf(index).toString(QKeySequence::NativeText);
    const QString mended = pin_.mended ? tr("%1 mended, %2") : QStringLiteral("%1 %2");
    const QString what = mended.arg(pin_.label, pin_.word);
    setAccessibleName(pin_.net.isEmpty() ? what : what + QStringLiteral(", ") + pin_.net);
    setToolTip(accessibleName());
  }
  void showNet(bool shown) { net_ = shown && !pin_.net.isEmpty(); }
  [[nodiscard]] int widthWith(bool net) const {
    const QFontMetrics label(lettersFont(Letters::reading, true));
    const QFontMetrics word(lettersFont(Letters::reading));
    const QFontMetrics small(lettersFont(Letters::small));
    int width = 2 * pad() + scaled(24) + gap() + label.horizontalAdvance(pin_.label) + gap() +
                word.horizontalAdvance(wordShown());
    if (net && !pin_.net.isEmpty()) width += 2 * gap() + small.horizontalAdvance(pin_.net);
    if (!cap_.isEmpty()) width += gap() + keyCapSize(cap_).width();
    return width;
  }
  [[nodiscard]] QString text() const { return pin_.label + QLatin1Char(' ') + wordShown(); }

protected:
  bool event(QEvent* event) override { return clickedAtOnce(*this, *event) || QPushButton::event(event); }
  /// The strip says which one is chosen, not the click.
  void nextCheckState() override {}

  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const FaceColors& colors = faceColors(faceTheme());
    const bool thick = isChecked() || hasFocus();
    const double line = (thick ? colors.edge : colors.hair) * faceScale();
    painter.setPen(QPen(isChecked() ? colors.accent : hasFocus() ? colors.ink : colors.outline, line));
    painter.setBrush(isChecked() ? QBrush(colors.card) : QBrush(Qt::NoBrush));
    painter.drawRoundedRect(QRectF(rect()).adjusted(line / 2, line / 2, -line / 2, -line / 2),
                            face::round * faceScale(), face::round * faceScale());
    int x = pad();
    paintMark(painter, pin_.mended ? MarkShape::disc : pin_.shape, QPointF(x + scaled(12), height() / 2.0),
              markSize * faceScale(), pictureColors(faceTheme()));
    x += scaled(24) + gap();
    const auto write = [&](const QString& text, const QFont& font, const QColor& ink) {
      painter.setFont(font);
      painter.setPen(ink);
      const int width = QFontMetrics(font).horizontalAdvance(text);
      painter.drawText(QRect(x, 0, width + gap(), height()), Qt::AlignLeft | Qt::AlignVCenter, text);
      x += width;
    };
    write(pin_.label, lettersFont(Letters::reading, true), colors.ink);
    x += gap();
    write(wordShown(), lettersFont(Letters::reading), colors.ink);
    if (net_) {
      x += 2 * gap();
      write(pin_.net, lettersFont(Letters::small), colors.quiet);
    }
    if (cap_.isEmpty()) return;
    x += gap();
    painter.setPen(colors.ink);
    const QSize cap = keyCapSize(cap_);
    paintKeyCap(painter, QRect(QPoint(x, (height() - cap.height()) / 2), cap), cap_, colors.field);
  }

private:
  [[nodiscard]] static int pad() { return scaled(12); }
  [[nodiscard]] static int gap() { return scaled(face::grid); }
  [[nodiscard]] QString wordShown() const {
    return pin_.mended ? QStringLiteral("✓ ") + pin_.word : pin_.word;
  }
  OddPin pin_;
  QString cap_;
  bool net_ = true;
};

OddStrip::OddStrip(QWidget* parent)
    : QWidget(parent), caption_(makeCaption({}, this)), more_(makePrompt({}, {}, this)) {
  setObjectName(QStringLiteral("oddStrip"));
  setLetters(*caption_, Letters::reading);
  more_->setObjectName(QStringLiteral("moreOddPins"));
  connect(more_, &QPushButton::clicked, this, [this] { listHidden(); });
  // Keys of the strip, not of the boxes: one that has no room is chosen all the same.
  for (std::size_t i = 0; i < keyed; ++i)
    connect(new QShortcut(keyOf(i), this), &QShortcut::activated, this, [this, i] {
      if (i < pins_.size() && onChosen) onChosen(i);
    });
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setPins({});
}

void OddStrip::setPins(std::vector<OddPin> pins) {
  caption_->setText(pins.empty() ? tr("No odd pins") : tr("Odd pins"));
  if (pins == pins_) return layOut();
  pins_ = std::move(pins);
  if (chosen_ && *chosen_ >= pins_.size()) chosen_.reset();
  for (Box* box : boxes_) {
    box->hide();
    box->deleteLater();
  }
  boxes_.clear();
  for (std::size_t i = 0; i < pins_.size(); ++i) {
    auto* box = new Box(pins_[i], i, this);
    box->setChecked(chosen_ == i);
    connect(box, &QPushButton::clicked, this, [this, i] {
      if (onChosen) onChosen(i);
    });
    boxes_.push_back(box);
  }
  layOut();
}

void OddStrip::setChosen(std::optional<std::size_t> chosen) {
  if (chosen && *chosen >= pins_.size()) chosen.reset();
  chosen_ = chosen;
  for (std::size_t i = 0; i < boxes_.size(); ++i)
    boxes_[i]->setChecked(chosen_ == i);
  layOut();
}

void OddStrip::addRight(QWidget* widget) {
  widget->setParent(this);
  right_.push_back(widget);
  layOut();
}

std::size_t OddStrip::hiddenCount() const {
  return static_cast<std::size_t>(
      std::count_if(boxes_.begin(), boxes_.end(), [](const Box* box) { return box->isHidden(); }));
}

QSize OddStrip::sizeHint() const {
  return {scaled(400), scaled(boxHeight)};
}

QSize OddStrip::minimumSizeHint() const {
  return {scaled(200), scaled(boxHeight)};
}

/// Which boxes fit side by side: the first ones, and whichever is chosen.
std::vector<std::size_t> OddStrip::fitting(int room, bool nets) const {
  const int gap = scaled(face::grid);
  const auto widthOf = [&](std::size_t i) { return boxes_[i]->widthWith(nets) + gap; };
  if (chosen_) room -= widthOf(*chosen_);
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < boxes_.size(); ++i) {
    if (chosen_ != i && (room -= widthOf(i)) < 0) break;
    out.push_back(i);
  }
  if (chosen_ && (out.empty() || out.back() < *chosen_)) out.push_back(*chosen_);
  return out;
}

void OddStrip::layOut() {
  const int gap = scaled(face::grid);
  int right = width();
  const int chosen = chosen_ ? boxes_[*chosen_]->widthWith(false) + gap : 0;
  for (QWidget* widget : right_) {
    if (widget->isHidden()) continue;
    const int wide = std::min(widget->sizeHint().width(), std::max(0, right - chosen));
    widget->setGeometry(right - wide, (height() - scaled(face::control)) / 2, wide, scaled(face::control));
    right -= wide + gap;
  }
  const int captionWidth = caption_->sizeHint().width();
  const auto all = [&] {
    int wide = captionWidth + 2 * gap;
    for (const Box* box : boxes_)
      wide += box->widthWith(false) + gap;
    return wide;
  };
  // Words go before boxes do.
  const bool captioned = right - captionWidth - gap >= scaled(200) && (boxes_.empty() || all() <= right);
  caption_->setVisible(captioned);
  caption_->setGeometry(0, 0, captionWidth, height());
  int x = captioned ? captionWidth + 2 * gap : 0;
  more_->setText(QStringLiteral("+%1").arg(boxes_.size()));
  const int moreWidth = more_->sizeHint().width() + gap;
  bool nets = true;
  auto shown = fitting(right - x, true);
  int wanted = 0;
  for (const std::size_t i : shown)
    wanted += boxes_[i]->widthWith(true) + gap;
  if (shown.size() < boxes_.size() || wanted > right - x) {
    nets = false;
    shown = fitting(right - x, false);
  }
  if (shown.size() < boxes_.size()) shown = fitting(right - x - moreWidth, false);
  for (std::size_t i = 0; i < boxes_.size(); ++i) {
    Box& box = *boxes_[i];
    const bool fits = std::find(shown.begin(), shown.end(), i) != shown.end();
    box.setVisible(fits);
    if (!fits) continue;
    box.showNet(nets);
    box.setGeometry(x, (height() - scaled(boxHeight)) / 2, box.widthWith(nets), scaled(boxHeight));
    box.update();
    x += box.width() + gap;
  }
  const std::size_t hidden = hiddenCount();
  more_->setVisible(hidden > 0);
  more_->setText(QStringLiteral("+%1").arg(hidden));
  more_->setAccessibleName(tr("%n more odd pin(s)", nullptr, static_cast<int>(hidden)));
  more_->setGeometry(x, (height() - scaled(face::control)) / 2, more_->sizeHint().width(),
                     scaled(face::control));
}

void OddStrip::listHidden() {
  auto* menu = new QMenu(this);
  menu->setObjectName(QStringLiteral("oddPinMenu"));
  menu->setAttribute(Qt::WA_DeleteOnClose);
  for (std::size_t i = 0; i < boxes_.size(); ++i)
    if (boxes_[i]->isHidden())
      menu->addAction(boxes_[i]->accessibleName() + QLatin1Char('\t') +
                          keyOf(i).toString(QKeySequence::NativeText),
                      this, [this, i] {
                        if (onChosen) onChosen(i);
                      });
  menu->popup(more_->mapToGlobal(QPoint(0, more_->height())));
}

bool OddStrip::event(QEvent* event) {
  switch (event->type()) {
  case QEvent::ApplicationFontChange:
    updateGeometry();
    layOut();
    break;
  case QEvent::Resize:
  case QEvent::Show:
  case QEvent::LayoutRequest:
    layOut();
    break;
  default:
    break;
  }
  return QWidget::event(event);
}

} // namespace netmend
