#include "figures.h"

#include <algorithm>
#include <cmath>

#include <QEvent>
#include <QMouseEvent>
#include <QPainter>

#include "face_style.h"
#include "netmend/drawing/picture_colors.h"
#include "netmend/drawing/pin_strip.h"

namespace netmend {

FittingLabel::FittingLabel(Letters most, const QString& name, QWidget* parent) : QLabel(parent), most_(most) {
  setTextFormat(Qt::PlainText);
  setObjectName(name);
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  setLetters(*this, most, true);
}

void FittingLabel::setWords(const QString& text) {
  setText(text);
  setToolTip(text);
  fit();
}

void FittingLabel::fit() {
  const auto sized = [&](double pixels) {
    QFont font = faceFont(pixels * faceScale());
    font.setBold(true);
    return font;
  };
  double pixels = pixelsOf(most_);
  while (pixels > face::textLetters && QFontMetrics(sized(pixels)).horizontalAdvance(text()) > width())
    pixels = std::max(pixels - face::grid, face::textLetters);
  if (font() != sized(pixels)) setFont(sized(pixels));
}

void FittingLabel::resizeEvent(QResizeEvent* event) {
  QLabel::resizeEvent(event);
  fit();
}

bool FittingLabel::event(QEvent* event) {
  if (event->type() == QEvent::FontChange) fit();
  return QLabel::event(event);
}

namespace {
constexpr double rangePart = 1.0 / 7; ///< of the scale
constexpr int ticks = 25;
constexpr double marginAtEnd = 0.02; ///< of the scale
} // namespace

RangeGauge::RangeGauge(QWidget* parent) : QWidget(parent) {
  setScaledHeight(*this, 46);
}

void RangeGauge::setRanges(std::vector<Range> ranges) {
  ranges_ = std::move(ranges);
  setVisible(!ranges_.empty());
  update();
}

void RangeGauge::setValue(std::optional<double> value) {
  if (value == value_) return;
  value_ = value;
  update();
}

double RangeGauge::share(double value) const {
  double low = ranges_.front().low, high = ranges_.front().high;
  for (const Range& range : ranges_) {
    low = std::min(low, range.low);
    high = std::max(high, range.high);
  }
  const double whole = std::max(high - low, 1e-9) / rangePart;
  const double at = 0.5 + (value - (low + high) / 2) / whole;
  return std::clamp(at, marginAtEnd, 1.0 - marginAtEnd);
}

void RangeGauge::paintEvent(QPaintEvent*) {
  if (ranges_.empty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const FaceColors& colors = faceColors(faceTheme());
  const double u = faceScale();
  const double base = height() - 11 * u;
  painter.setPen(QPen(colors.outline, 1.5 * u));
  painter.drawLine(QPointF(0, base), QPointF(width(), base));
  for (int i = 0; i < ticks; ++i) {
    const double x = 1 + (width() - 2) * i / static_cast<double>(ticks - 1);
    painter.drawLine(QPointF(x, base), QPointF(x, base + (i % 6 == 0 ? 10 : 6) * u));
  }
  painter.setPen(QPen(colors.calm, 1.5 * u));
  painter.setBrush(colors.calmTint);
  for (const Range& range : ranges_) {
    const double left = share(range.low) * width();
    const double wide = std::max(share(range.high) * width() - left, 3 * u);
    painter.drawRect(QRectF(left, base - 22 * u, wide, 22 * u));
  }
  if (!value_) return;
  const double x = share(*value_) * width();
  painter.setPen(QPen(colors.accent, 3 * u));
  painter.drawLine(QPointF(x, 1), QPointF(x, base));
  painter.setPen(Qt::NoPen);
  painter.setBrush(colors.accent);
  painter.drawPolygon(
      QPolygonF({QPointF(x, base), QPointF(x - 9 * u, base - 24 * u), QPointF(x + 9 * u, base - 24 * u)}));
}

TakenLabel::TakenLabel(const QString& name, QWidget* parent) : QLabel(parent) {
  setTextFormat(Qt::PlainText);
  setObjectName(name);
  setLetters(*this, Letters::large);
}

void TakenLabel::setTaken(const std::optional<TakenPin>& taken, const QString& label) {
  taken_ = taken;
  setText(taken ? QStringLiteral("%1   %2   %3").arg(label, taken->value, taken->said) : QString());
  update();
}

void TakenLabel::setCompact(bool compact) {
  compact_ = compact;
  updateGeometry();
}

QSize TakenLabel::sizeHint() const {
  return {scaled(240), QFontMetrics(lettersFont(compact_ ? Letters::reading : Letters::large)).height()};
}

void TakenLabel::paintEvent(QPaintEvent*) {
  if (!taken_) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double mark = std::min(34.0 * faceScale(), 0.95 * height());
  PictureColors colors = pictureColors(faceTheme());
  // In range asks for nothing: no edge in ink.
  if (taken_->shape == MarkShape::disc) colors.ink = colors.calm;
  paintMark(painter, taken_->shape, {mark / 2 + 1, height() / 2.0}, mark, colors);
  const int gap = scaled(12);
  int left = static_cast<int>(mark) + gap;
  painter.setPen(palette().color(QPalette::WindowText));
  const auto write = [&](Letters letters, bool bold, const QString& words, bool whole) {
    const QFont font = lettersFont(letters, bold);
    const QFontMetrics metrics(font);
    const int wide = metrics.horizontalAdvance(words);
    if (!whole && left + wide > width()) return;
    painter.setFont(font);
    painter.drawText(QRect(left, 0, width() - left, height()), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(words, Qt::ElideRight, width() - left));
    left += wide + gap;
  };
  const int wanted =
      QFontMetrics(lettersFont(Letters::large, true)).horizontalAdvance(taken_->pin + taken_->value) + gap;
  const Letters size = compact_                  ? Letters::reading
                       : left + wanted > width() ? Letters::metre
                                                 : Letters::large;
  write(size, true, taken_->pin, true);
  write(size, false, taken_->value, true);
  write(Letters::reading, false, taken_->said, false);
}

OddList::OddList(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("oddPins"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void OddList::setOdd(std::vector<Odd> odd) {
  odd_ = std::move(odd);
  QStringList names;
  for (const Odd& each : odd_)
    names << each.pin.pin + QLatin1Char(' ') + each.pin.value + QLatin1Char(' ') + each.pin.said;
  setAccessibleDescription(names.join(QStringLiteral(", ")));
  setToolTip(names.join(QLatin1Char('\n')));
  update();
}

std::vector<int> OddList::widths() const {
  const QFontMetrics bold(lettersFont(Letters::reading, true));
  const QFontMetrics plain(lettersFont(Letters::reading));
  const int more = bold.horizontalAdvance(QStringLiteral("+88"));
  std::vector<int> out;
  int left = 0;
  for (std::size_t i = 0; i < odd_.size(); ++i) {
    const int wide = scaled(24) + scaled(8) + bold.horizontalAdvance(odd_[i].pin.pin) + scaled(6) +
                     plain.horizontalAdvance(odd_[i].pin.value) + scaled(16);
    const bool last = i + 1 == odd_.size();
    if (left + wide - scaled(16) + (last ? 0 : more + scaled(16)) > width()) break;
    out.push_back(wide);
    left += wide;
  }
  return out;
}

void OddList::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(palette().color(QPalette::WindowText));
  const std::vector<int> wide = widths();
  const double mark = scaled(22);
  int left = 0;
  const auto write = [&](int x, bool bold, const QString& words) {
    painter.setFont(lettersFont(Letters::reading, bold));
    painter.drawText(QRect(x, 0, width() - x, height()), Qt::AlignLeft | Qt::AlignVCenter, words);
    return x + painter.fontMetrics().horizontalAdvance(words);
  };
  for (std::size_t i = 0; i < wide.size(); ++i) {
    const TakenPin& pin = odd_[i].pin;
    paintMark(painter, pin.shape, {left + scaled(24) / 2.0, height() / 2.0}, mark,
              pictureColors(faceTheme()));
    const int after = write(left + scaled(32), true, pin.pin);
    write(after + scaled(6), false, pin.value);
    left += wide[i];
  }
  if (wide.size() < odd_.size()) write(left, true, QStringLiteral("+%1").arg(odd_.size() - wide.size()));
}

void OddList::mousePressEvent(QMouseEvent* event) {
  int left = 0;
  const std::vector<int> wide = widths();
  for (std::size_t i = 0; i < wide.size(); ++i) {
    left += wide[i];
    if (event->position().x() >= left) continue;
    if (onOdd) onOdd(odd_[i].point);
    return;
  }
}

} // namespace netmend
