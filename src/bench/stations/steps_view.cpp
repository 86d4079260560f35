#include "steps_view.h"

#include <algorithm>

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

#include "bench/widgets/letters.h"
#include "bench/widgets/reading_field.h"
#include "netmend/casework/function_check.h"
#include "netmend/casework/step_check.h"
#include "netmend/casework/take_reading.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/job.h"
#include "netmend/words/step.h"

namespace netmend {

const RepairAction* StepsView::action() const {
  const Job* job = desk_.job.job();
  if (job == nullptr) return nullptr;
  for (const RepairAction& each : job->actions)
    if (each.id == action_) return &each;
  return nullptr;
}

const WorkStep* StepsView::step() const {
  const RepairAction* chosen = action();
  return chosen != nullptr && step_ < chosen->steps.size() ? &chosen->steps[step_] : nullptr;
}

void StepsView::showLast() {
  const Job* job = desk_.job.job();
  action_ = job != nullptr && !job->actions.empty() ? job->actions.back().id : RepairActionId{};
  step_ = 0;
  read_.reset();
  goToOpenStep(0);
  showSteps();
}

bool StepsView::isOn(const RepairAction& action, const std::string& net, const std::string& pin) const {
  if (action.target == pin || action.target == net || (action.jumper && action.jumper->net == net))
    return true;
  const BoardUnderWork* board = desk_.job.board();
  return std::any_of(action.places.begin(), action.places.end(), [&](const ProbePoint& place) {
    const Pin* found = board != nullptr ? board->board->pins.find(place.pin) : nullptr;
    const Net* of =
        found != nullptr && found->net.known() ? board->board->nets.find(found->net.value) : nullptr;
    return place.label == pin || (of != nullptr && !net.empty() && of->name == net);
  });
}

bool StepsView::showActionOn(const std::string& net, const std::string& pin) {
  const Job* job = desk_.job.job();
  if (job == nullptr) return false;
  const auto found = std::find_if(job->actions.rbegin(), job->actions.rend(),
                                  [&](const RepairAction& each) { return isOn(each, net, pin); });
  if (found == job->actions.rend()) return false;
  action_ = found->id;
  step_ = 0;
  read_.reset();
  goToOpenStep(0);
  showSteps();
  return true;
}

void StepsView::refresh() {
  const RepairAction* chosen = action();
  if (chosen == nullptr) return showLast();
  if (const auto stopped = stoppedAt(*chosen)) step_ = *stopped; // by undo, too
  showSteps();
}

void StepsView::focusEntry() {
  field_->setFocus();
}

QWidget* StepsView::field() const {
  return reason_->isVisible() ? static_cast<QWidget*>(reason_) : field_;
}

QString StepsView::title() const {
  const RepairAction* chosen = action();
  if (chosen == nullptr) return {};
  QString text = shown(nameOf(chosen->kind)) + QStringLiteral(", ") + QString::fromStdString(chosen->target);
  if (chosen->jumper && chosen->jumper->figures)
    text += QStringLiteral(", %1 mm").arg(QString::number(chosen->jumper->figures->length.mm(), 'f', 0));
  return text;
}

void StepsView::goToOpenStep(std::size_t from) {
  const RepairAction* chosen = action();
  if (chosen == nullptr) return;
  // What stopped the work comes first, and what was jumped over comes after what is still ahead.
  if (const auto stopped = stoppedAt(*chosen)) {
    step_ = *stopped;
    return;
  }
  const auto open = [&](std::size_t i) { return isOpenWork(chosen->steps[i]); };
  for (std::size_t n = 0; n < chosen->steps.size(); ++n) {
    const std::size_t i = (from + n) % chosen->steps.size();
    if (!open(i)) continue;
    step_ = i;
    return;
  }
  step_ = chosen->steps.size();
}

void StepsView::change(const QString& what, const std::function<void(WorkStep&)>& to) {
  const RepairAction* chosen = action();
  if (chosen == nullptr || step() == nullptr) return;
  RepairAction after = *chosen;
  to(after.steps[step_]);
  desk_.job.updateAction(what, after);
}

/// Whether a check that read wrong stands in the way of this step, and says so.
bool StepsView::refused() {
  const RepairAction* chosen = action();
  if (chosen == nullptr || isOpenToWork(*chosen, step_)) return false;
  Q_EMIT told(tr("Check %1 read what it must not: repeat it, or overrule it with a reason")
                  .arg(*stoppedAt(*chosen) + 1),
              true);
  return true;
}

void StepsView::tick() {
  const WorkStep* now = step();
  if (now == nullptr) return;
  const bool done = !now->done;
  const std::size_t at = step_;
  if (done) {
    if (refused()) return;
    if (stoppedAt(*action()) == at) {
      Q_EMIT told(tr("It read what it must not: repeat it, or overrule it with a reason (Shift+O)"), true);
      return;
    }
  }
  change(done ? tr("tick of a step") : tr("tick taken off"), [&](WorkStep& s) { s.done = done; });
  if (!done) return;
  goToOpenStep(at + 1);
  showSteps();
}

void StepsView::typed() {
  const QString text = field_->text().trimmed();
  const WorkStep* now = step();
  if (text.isEmpty() || now == nullptr) return;
  field_->clear();
  if (now->measure)
    if (const auto value = parseReadingValue(text.toStdString(), now->measure->mode)) {
      reading(value->value);
      return;
    }
  change(tr("note of a step"), [&](WorkStep& s) { s.note = text.toStdString(); });
  Q_EMIT told(tr("Kept as a note: %1").arg(text), false);
}

void StepsView::reading(std::optional<double> value) {
  const WorkStep* now = step();
  if (now == nullptr || !now->measure) {
    Q_EMIT told(tr("This step takes no reading: Space ticks it"), true);
    return;
  }
  if (refused()) return;
  const BoardUnderWork* board = desk_.job.board();
  const StepMeasure& wanted = *now->measure;
  const StepOutcome outcome = compareWith(wanted, value);
  const Walk& walk = desk_.walk.walk(false);
  JobReading kept;
  kept.purpose = ReadingPurpose::check;
  kept.reading =
      readingNow(walk, withPin(wanted.point, board != nullptr ? board->lookup.get() : nullptr), value);
  kept.reading.other = wanted.other;
  kept.reading.mode = wanted.mode;
  kept.reading.condition.handling = repairUnderWay;
  const CheckRead read{value, outcome};
  const QString words = shown(readSaid(read, wanted.mode));
  const std::size_t at = step_;
  read_ = at;
  const bool good = outcome == StepOutcome::agrees;
  // What reads wrong when it is repeated is open again, and stops the work.
  const bool wrong = outcome == StepOutcome::disagrees;
  const bool added = desk_.job.addReadingFor(action_, tr("reading of a check"), kept,
                                             [at, read, good, wrong](RepairAction& a, JobReadingId) {
                                               a.steps[at].read = read;
                                               a.steps[at].done = !wrong && (a.steps[at].done || good);
                                             });
  if (!added) return;
  Q_EMIT told(words, wrong);
  if (!good) return;
  goToOpenStep(at + 1);
  showSteps();
}

void StepsView::askReason() {
  const RepairAction* chosen = action();
  const auto stopped = chosen != nullptr ? stoppedAt(*chosen) : std::nullopt;
  if (!stopped) {
    Q_EMIT told(tr("No check has read wrong: nothing to overrule"), true);
    return;
  }
  step_ = *stopped;
  showSteps();
  reason_->show();
  reason_->setFocus(Qt::ShortcutFocusReason);
}

void StepsView::overruled() {
  const QString text = reason_->text().trimmed();
  const RepairAction* chosen = action();
  if (chosen == nullptr || stoppedAt(*chosen) != step_) return;
  if (text.isEmpty()) {
    Q_EMIT told(tr("Overruled only with a reason: it stands on the sheet"), true);
    return;
  }
  const std::size_t at = step_;
  change(tr("overruling of a check"), [&](WorkStep& s) { overrule(s, text.toStdString()); });
  reason_->clear();
  reason_->hide();
  field_->setFocus();
  goToOpenStep(at + 1);
  showSteps();
}

bool StepsView::command(int key, Qt::KeyboardModifiers modifiers) {
  switch (key) {
  case Qt::Key_Space:
    tick();
    return true;
  case Qt::Key_O:
    if ((modifiers & Qt::ShiftModifier) != 0)
      askReason();
    else
      reading(std::nullopt);
    return true;
  case Qt::Key_U:
    if (const auto undone = desk_.job.undo(); !undone) Q_EMIT told(shown(undone.error()), true);
    return true;
  case Qt::Key_N:
    Q_EMIT otherWanted();
    return true;
  case Qt::Key_B:
  case Qt::Key_Up:
    if (steps_->currentRow() > 0)
      steps_->setCurrentRow(steps_->currentRow() - 1);
    else if (step() == nullptr)
      steps_->setCurrentRow(steps_->count() - 1);
    return true;
  case Qt::Key_Down:
    if (steps_->currentRow() + 1 < steps_->count()) steps_->setCurrentRow(steps_->currentRow() + 1);
    return true;
  default:
    return false;
  }
}

bool StepsView::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  const int key = static_cast<QKeyEvent*>(event)->key();
  if (watched == steps_ && key == Qt::Key_Space) {
    tick();
    return true;
  }
  if (watched == reason_ && key == Qt::Key_Escape) {
    reason_->hide();
    field_->setFocus();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend
