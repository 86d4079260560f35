#include "function_checks.h"

#include <algorithm>

#include <QCheckBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QStyleOptionButton>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/casework/function_check.h"

namespace netmend {

namespace {

/// A button that keeps a tick or an empty box before its words: it is read without colour and fill.
class FunctionToggle : public QCheckBox {
public:
  using QCheckBox::QCheckBox;
  [[nodiscard]] QSize sizeHint() const override {
    // Somewhat more than its words: what fits to the pixel is cut off.
    return {fontMetrics().horizontalAdvance(text()) + 7 * gap() / 2 + mark(), scaled(face::control)};
  }
  [[nodiscard]] QSize minimumSizeHint() const override {
    return {std::min(sizeHint().width(), scaled(120)), scaled(face::control)};
  }

protected:
  [[nodiscard]] bool hitButton(const QPoint& at) const override { return rect().contains(at); }
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    QStyleOptionButton panel;
    panel.initFrom(this);
    panel.state.setFlag(QStyle::State_Sunken, isDown());
    style()->drawPrimitive(QStyle::PE_PanelButtonCommand, &panel, &painter, this);
    painter.setPen(
        palette().color(isEnabled() ? QPalette::Active : QPalette::Disabled, QPalette::ButtonText));
    const QRectF box(gap(), (height() - mark()) / 2.0, mark(), mark());
    QFont font = this->font();
    if (isChecked()) {
      font.setBold(true);
      painter.setFont(font);
      painter.drawText(box, Qt::AlignCenter, QStringLiteral("✓"));
      painter.setFont(this->font());
    } else {
      const double inset = mark() * 0.1;
      painter.drawRect(box.adjusted(inset, inset, -inset, -inset));
    }
    const QRect words(gap() * 2 + mark(), 0, width() - 3 * gap() - mark(), height());
    painter.drawText(words, Qt::AlignVCenter,
                     fontMetrics().elidedText(text(), Qt::ElideRight, words.width()));
  }

private:
  [[nodiscard]] static int gap() { return scaled(face::grid); }
  [[nodiscard]] static int mark() { return scaled(16); }
};

} // namespace

FunctionChecks::FunctionChecks(BenchJob& job, QWidget* parent)
    : QWidget(parent), job_(job), row_(new WrapLayout), none_(new QLabel(tr("no function yet"), this)),
      function_(new QLineEdit(this)), more_(makePrompt(tr("Add"), QKeySequence(Qt::Key_F), this)) {
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  auto* must = new QLabel(tr("Must work"), this);
  setQuiet(*must);
  setQuiet(*none_);
  setScaledHeight(*none_, face::control);
  layout->addWidget(must);
  row_->addWidget(none_);
  layout->addLayout(row_, 1);
  function_->setPlaceholderText(tr("what should work: Enter"));
  function_->setAccessibleName(tr("Another function to try"));
  function_->setObjectName(QStringLiteral("function"));
  keepRoomForHint(*function_, Growth::none);
  function_->installEventFilter(this);
  function_->hide();
  connect(function_, &QLineEdit::returnPressed, this, &FunctionChecks::add);
  layout->addWidget(function_);
  more_->setAccessibleName(tr("Function"));
  connect(more_, &QPushButton::clicked, this, &FunctionChecks::focusEntry);
  layout->addWidget(more_);
  connect(&job_, &BenchJob::jobChanged, this, &FunctionChecks::refresh);
  connect(&job_, &BenchJob::actionsChanged, this, &FunctionChecks::refresh);
  refresh();
}

void FunctionChecks::focusEntry() {
  function_->show();
  function_->setFocus();
}

int FunctionChecks::left() const {
  return static_cast<int>(
      std::count_if(lines_.begin(), lines_.end(), [](const Line& line) { return !line.done; }));
}

std::vector<FunctionChecks::Line> FunctionChecks::linesOf(const Job* job) const {
  std::vector<Line> out;
  if (job == nullptr) return out;
  for (const RepairAction& action : job->actions)
    for (std::size_t i = 0; i < action.steps.size(); ++i)
      if (const WorkStep& step = action.steps[i]; isFunctionCheck(step))
        out.push_back({action.id, i, step.text, step.done});
  if (out.empty() && actionToProve(*job) != nullptr)
    for (const std::string& function : functionsIn(job->symptom))
      out.push_back({{}, 0, function, false});
  return out;
}

void FunctionChecks::refresh() {
  const Job* job = job_.job();
  more_->setEnabled(job != nullptr && actionToProve(*job) != nullptr);
  std::vector<Line> lines = linesOf(job);
  if (lines == lines_ && !lines.empty()) return;
  lines_ = std::move(lines);
  // One that has the keyboard keeps it.
  while (toggles_.size() > lines_.size()) {
    toggles_.back()->deleteLater();
    toggles_.back()->hide();
    row_->removeWidget(toggles_.back());
    toggles_.pop_back();
  }
  while (toggles_.size() < lines_.size()) {
    auto* toggle = new FunctionToggle(this);
    toggle->setObjectName(QStringLiteral("functionCheck"));
    toggle->setFocusPolicy(Qt::TabFocus); // after a click the next digits are still a reading
    toggle->installEventFilter(this);
    const std::size_t line = toggles_.size();
    connect(toggle, &QCheckBox::clicked, this, [this, line](bool done) { setDone(line, done); });
    toggles_.push_back(toggle);
    row_->addWidget(toggle);
    toggle->show();
  }
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    const QString text = QString::fromStdString(lines_[i].text);
    toggles_[i]->setText(text);
    toggles_[i]->setToolTip(tr("%1 (Space ticks it, Delete takes it out)").arg(text));
    toggles_[i]->setChecked(lines_[i].done);
  }
  none_->setVisible(lines_.empty());
  Q_EMIT changed();
}

RepairAction FunctionChecks::writtenDown(const RepairAction& action) const {
  RepairAction out = action;
  for (const Line& line : lines_)
    if (!line.action) out.steps.push_back(functionCheck(line.text));
  return out;
}

void FunctionChecks::add() {
  const QString text = function_->text().trimmed();
  const Job* job = job_.job();
  const RepairAction* action = job != nullptr ? actionToProve(*job) : nullptr;
  if (action != nullptr && !text.isEmpty()) {
    RepairAction after = writtenDown(*action);
    after.steps.push_back(functionCheck(text.toStdString()));
    if (!job_.updateAction(tr("function to try"), after)) return;
    function_->clear();
    return;
  }
  function_->hide();
  if (onLeave) onLeave();
}

void FunctionChecks::setDone(std::size_t line, bool done) {
  const Job* job = job_.job();
  if (job == nullptr || line >= lines_.size()) return;
  const QString what = done ? tr("function seen to work") : tr("tick taken off");
  const Line at = lines_[line];
  const RepairAction* action = actionToProve(*job);
  if (!at.action && action != nullptr) {
    RepairAction after = writtenDown(*action);
    after.steps[action->steps.size() + line].done = done;
    job_.updateAction(what, after);
  }
  for (RepairAction after : std::vector(job->actions)) {
    if (!at.action || after.id != at.action) continue;
    after.steps[at.step].done = done;
    job_.updateAction(what, after);
  }
  job_.reached(JobState::proving);
}

void FunctionChecks::remove(std::size_t line) {
  const Job* job = job_.job();
  if (job == nullptr || line >= lines_.size()) return;
  const Line at = lines_[line];
  const RepairAction* action = actionToProve(*job);
  if (!at.action && action != nullptr) {
    RepairAction after = writtenDown(*action);
    after.steps.erase(after.steps.begin() + static_cast<std::ptrdiff_t>(action->steps.size() + line));
    job_.updateAction(tr("removal of a function"), after);
  }
  for (RepairAction after : std::vector(job->actions)) {
    if (!at.action || after.id != at.action) continue;
    after.steps.erase(after.steps.begin() + static_cast<std::ptrdiff_t>(at.step));
    job_.updateAction(tr("removal of a function"), after);
  }
}

bool FunctionChecks::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    const auto toggle = std::find(toggles_.begin(), toggles_.end(), watched);
    if (toggle != toggles_.end() && key == Qt::Key_Delete) {
      const auto line = static_cast<std::size_t>(toggle - toggles_.begin());
      // The toggle is still being told of the key.
      QMetaObject::invokeMethod(
          this, [this, line] { remove(line); }, Qt::QueuedConnection);
      return true;
    }
    if (key == Qt::Key_Escape) {
      function_->hide();
      if (onLeave) onLeave();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend
