#include "step_ticks.h"

#include <algorithm>

#include <QMouseEvent>
#include <QPainter>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"

namespace netmend {

namespace {
constexpr int tickSide = 32; ///< pixels at 100 %
constexpr int tickGap = 5;
} // namespace

StepTicks::StepTicks(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("ticks"));
  setScaledHeight(*this, tickSide);
}

void StepTicks::setStates(std::vector<TickState> states) {
  states_ = std::move(states);
  setVisible(!states_.empty());
  update();
}

QSize StepTicks::sizeHint() const {
  return {static_cast<int>(states_.size()) * scaled(tickSide + tickGap), scaled(tickSide)};
}

QSize StepTicks::minimumSizeHint() const {
  return {scaled(120), scaled(tickSide)};
}

/// In one row, however many.
QRect StepTicks::boxOf(std::size_t index) const {
  const double step =
      std::min(static_cast<double>(scaled(tickSide + tickGap)),
               static_cast<double>(width()) / static_cast<double>(std::max<std::size_t>(1, states_.size())));
  const int left = static_cast<int>(step * static_cast<double>(index));
  const int right = static_cast<int>(step * static_cast<double>(index + 1)) - std::min(scaled(tickGap), 3);
  return {left, 0, std::max(2, right - left), height()};
}

void StepTicks::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const FaceColors& colors = faceColors(faceTheme());
  for (std::size_t i = 0; i < states_.size(); ++i) {
    const TickState state = states_[i];
    const QRect box = boxOf(i);
    const bool done = state == TickState::done || state == TickState::overruled;
    const bool odd = state == TickState::failed || state == TickState::overruled;
    painter.fillRect(box, state == TickState::due ? colors.accent : done ? colors.shade : colors.card);
    const double line = (odd ? colors.edge : colors.hair) * faceScale();
    painter.setPen(QPen(odd ? colors.odd : state == TickState::due ? colors.accent : colors.line, line));
    painter.drawRect(QRectF(box).adjusted(line / 2, line / 2, -line / 2, -line / 2));
    painter.setPen(state == TickState::due ? colors.onAccent : colors.ink);
    const bool bold = state == TickState::due || odd;
    painter.setFont(lettersFont(bold ? Letters::reading : Letters::small, bold));
    const QString text = done ? QStringLiteral("✓") : QString::number(i + 1);
    if (painter.fontMetrics().horizontalAdvance(text) <= box.width())
      painter.drawText(box, Qt::AlignCenter, text);
  }
}

void StepTicks::mousePressEvent(QMouseEvent* event) {
  for (std::size_t i = 0; i < states_.size(); ++i)
    if (boxOf(i).contains(event->pos()) && onStep) {
      onStep(i);
      return;
    }
}

} // namespace netmend
