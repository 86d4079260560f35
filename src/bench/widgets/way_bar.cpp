#include "way_bar.h"

#include <QCoreApplication>
#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <QPushButton>

#include "face_style.h"
#include "letters.h"

namespace netmend {

namespace {

constexpr double jobPart = 0.172; ///< of the width, 264 of 1536
constexpr double leastJob = 176;

class StepButton : public QPushButton {
public:
  using QPushButton::QPushButton;
  WayBar::Step step;
  int number = 0;
  bool named = true;

  /// What it takes with its name.
  [[nodiscard]] int wanted() const {
    const QFontMetrics metrics(lettersFont(Letters::reading, true));
    return metrics.horizontalAdvance(step.name) + scaled(14 + 8 + 2 * 12) + (step.done ? scaled(18) : 0);
  }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const FaceColors& colors = faceColors(faceTheme());
    const QColor ink = step.here ? colors.onJob : step.done ? colors.ink : colors.quiet;
    painter.fillRect(rect(), step.here ? colors.job : colors.card);
    if (underMouse() && !step.here) painter.fillRect(rect(), colors.shade);
    paintRule(painter, colors);
    painter.setPen(ink);
    QRect inside = rect().adjusted(scaled(12), 0, -scaled(10), 0);
    painter.setFont(lettersFont(Letters::small, step.here));
    painter.drawText(inside, Qt::AlignVCenter | Qt::AlignLeft, QString::number(number));
    if (step.done && !step.here) {
      paintTick(painter, QPointF(inside.right() - scaled(6), inside.center().y()), ink);
      inside.setRight(inside.right() - scaled(18));
    }
    if (named) {
      painter.setFont(lettersFont(Letters::reading, step.here));
      painter.drawText(inside.adjusted(scaled(17), 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, step.name);
    }
    if (hasFocus()) {
      painter.setPen(QPen(colors.accent, scaled(colors.edge)));
      painter.drawRect(rect().adjusted(scaled(3), scaled(3), -scaled(4), -scaled(6)));
    }
  }

private:
  void paintRule(QPainter& painter, const FaceColors& colors) const {
    if (step.here) return;
    if (step.done) {
      painter.fillRect(QRect(0, height() - scaled(4), width(), scaled(4)), colors.ink);
      return;
    }
    QPen dots(colors.outline, scaled(3), Qt::CustomDashLine, Qt::FlatCap);
    dots.setDashPattern({1, 1});
    painter.setPen(dots);
    painter.drawLine(0, height() - scaled(2), width(), height() - scaled(2));
  }
  static void paintTick(QPainter& painter, QPointF at, const QColor& ink) {
    const double u = faceScale();
    painter.setPen(QPen(ink, 2.4 * u, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawPolyline(
        QPolygonF({at + QPointF(-6, 0) * u, at + QPointF(-2, 4) * u, at + QPointF(6, -5) * u}));
  }
};

} // namespace

WayBar::WayBar(std::size_t steps, QWidget* parent)
    : QWidget(parent), steps_(steps), row_(new QHBoxLayout(this)) {
  setScaledHeight(*this, face::bar);
  row_->setSpacing(0);
  for (std::size_t i = 0; i < steps; ++i) {
    auto* button = new StepButton(this);
    button->number = static_cast<int>(i) + 1;
    button->setObjectName(QStringLiteral("station%1").arg(i + 1));
    button->setFocusPolicy(Qt::TabFocus);
    button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
    button->setCheckable(true);
    connect(button, &QPushButton::clicked, this, [this, i] {
      if (onStep) onStep(i);
    });
    row_->addWidget(button, 1);
    buttons_.push_back(button);
  }
}

void WayBar::setJob(const QString& number, const QString& device) {
  if (number_ == number && device_ == device) return;
  number_ = number;
  device_ = device;
  setAccessibleName(number + QLatin1Char('\n') + device);
  layOut();
  update();
}

void WayBar::setSteps(const std::vector<Step>& steps) {
  if (steps_ == steps) return;
  steps_ = steps;
  for (std::size_t i = 0; i < buttons_.size(); ++i) {
    const Step& step = steps_[i];
    buttons_[i]->setAccessibleName(
        step.done ? QCoreApplication::translate("netmend::BenchWindow", "%1, done").arg(step.name)
                  : step.name);
    buttons_[i]->setToolTip(buttons_[i]->accessibleName());
    buttons_[i]->setChecked(step.here);
  }
  layOut();
}

int WayBar::jobWidth() const {
  return number_.isEmpty() && device_.isEmpty()
             ? 0
             : std::max(scaled(leastJob), static_cast<int>(width() * jobPart));
}

void WayBar::layOut() {
  int wanted = 0;
  for (std::size_t i = 0; i < buttons_.size(); ++i) {
    auto* button = static_cast<StepButton*>(buttons_[i]);
    button->step = steps_[i];
    wanted += button->wanted();
  }
  // Large letters leave no room for names of a job beside its way.
  const bool narrow = width() < scaled(900);
  row_->setContentsMargins(narrow ? 0 : jobWidth(), 0, 0, 0);
  const bool all = wanted <= width() - (narrow ? 0 : jobWidth());
  for (std::size_t i = 0; i < buttons_.size(); ++i) {
    auto* button = static_cast<StepButton*>(buttons_[i]);
    button->named = all || button->step.here;
    row_->setStretch(static_cast<int>(i), button->named ? button->wanted() : scaled(54));
    button->update();
  }
}

void WayBar::resizeEvent(QResizeEvent*) {
  layOut();
}

bool WayBar::event(QEvent* event) {
  if (event->type() == QEvent::ApplicationFontChange) layOut();
  return QWidget::event(event);
}

void WayBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const FaceColors& colors = faceColors(faceTheme());
  painter.fillRect(rect(), colors.card);
  painter.fillRect(QRect(0, height() - 1, width(), 1), colors.line);
  const int left = row_->contentsMargins().left();
  if (left == 0) return;
  const QRect inside(scaled(face::margin), 0, left - scaled(face::margin) - scaled(4), height());
  const auto line = [&](const QString& text, bool bold, int top) {
    painter.setFont(lettersFont(Letters::small, bold));
    painter.setPen(bold ? colors.ink : colors.quiet);
    const QRect box(inside.left(), top, inside.width(), scaled(20));
    painter.drawText(box, Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(text, Qt::ElideRight, box.width()));
  };
  line(number_, true, device_.isEmpty() ? (height() - scaled(20)) / 2 : scaled(4));
  line(device_, false, scaled(24));
}

} // namespace netmend
