#include "steps_view.h"

#include <algorithm>

#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/reading_field.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/casework/function_check.h"
#include "netmend/casework/step_check.h"
#include "netmend/casework/take_reading.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/job.h"
#include "netmend/words/step.h"
#include "scrolled.h"

namespace netmend {

StepsView::StepsView(Desk desk, QWidget* parent)
    : QWidget(parent), desk_(desk), number_(makeLabel(Letters::metre, QStringLiteral("stepNumber"), this)),
      due_(makeLabel(Letters::metre, QStringLiteral("dueStep"), this)),
      must_(makeLabel(Letters::metre, QStringLiteral("mustRead"), this)),
      note_(makeLabel(Letters::reading, QStringLiteral("stepNote"), this)),
      // Whatever the buttons beside it are called, a reading and what the field asks for can be read in it.
      field_(new ReadingField(tr("reading  Enter"), Growth::free, QStringLiteral("stepReading"), this)),
      actions_(new QListWidget(this)), steps_(new QListWidget(this)) {
  auto* layout = new QHBoxLayout(this);
  auto* left = new QVBoxLayout;
  auto* now = new QWidget(this);
  auto* words = new QVBoxLayout(now);
  words->setContentsMargins(0, 0, 0, 0);
  setLetters(*due_, Letters::metre, true);
  for (QLabel* label : {number_, due_, must_, note_})
    words->addWidget(label);
  words->addStretch(1);
  left->addWidget(scrolled(now, this), 1);
  left->addLayout(entry());
  layout->addLayout(left, 3);
  layout->addLayout(lists(), 2);
  refresh();
}

QLayout* StepsView::lists() {
  auto* column = new QVBoxLayout;
  auto* head = new WrapLayout;
  auto* actionsLabel = new QLabel(tr("Repairs of this &job"), this);
  actionsLabel->setBuddy(actions_);
  head->addWidget(actionsLabel);
  QPushButton* other = makePrompt(tr("Another repair"), QKeySequence(Qt::Key_N), this);
  other->setAccessibleName(tr("Another repair"));
  connect(other, &QPushButton::clicked, this, &StepsView::otherWanted);
  head->addWidget(other);
  column->addLayout(head);
  actions_->setAccessibleName(tr("Repairs of this job"));
  actions_->setObjectName(QStringLiteral("actions"));
  actions_->setMaximumHeight(actions_->fontMetrics().height() * 4);
  connect(actions_, &QListWidget::currentRowChanged, this, &StepsView::chooseAction);
  column->addWidget(actions_);
  auto* stepsLabel = new QLabel(tr("Step&s"), this);
  stepsLabel->setBuddy(steps_);
  column->addWidget(stepsLabel);
  steps_->setAccessibleName(tr("Steps"));
  steps_->setObjectName(QStringLiteral("steps"));
  steps_->setWordWrap(true);
  steps_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  steps_->installEventFilter(this);
  connect(steps_, &QListWidget::currentRowChanged, this, [this](int row) {
    if (filling_ || row < 0) return;
    step_ = static_cast<std::size_t>(row);
    showDue();
  });
  column->addWidget(steps_, 1);
  auto* cautions = makeLabel(Letters::small, QStringLiteral("cautions"), this);
  QStringList lines;
  for (const std::string& caution : desk_.job.data().work.cautions)
    lines << QStringLiteral("\u26a0 ") + shown(dataPattern(caution));
  cautions->setText(lines.join(QLatin1Char('\n')));
  cautions->setAccessibleName(tr("Cautions"));
  QScrollArea* area = scrolled(cautions, this);
  area->setMaximumHeight(cautions->fontMetrics().height() * 6);
  column->addWidget(area);
  return column;
}

void StepsView::chooseAction(int row) {
  const Job* job = desk_.job.job();
  if (filling_ || job == nullptr || row < 0 || row >= static_cast<int>(job->actions.size())) return;
  action_ = job->actions[static_cast<std::size_t>(row)].id;
  goToOpenStep(0);
  showSteps();
}

void StepsView::showLast() {
  const Job* job = desk_.job.job();
  action_ = job != nullptr && !job->actions.empty() ? job->actions.back().id : RepairActionId{};
  step_ = 0;
  read_.reset();
  goToOpenStep(0);
  showActions();
  showSteps();
}

void StepsView::refresh() {
  if (action() == nullptr) {
    showLast();
    return;
  }
  showActions();
  showSteps();
}

void StepsView::focusEntry() {
  if (field_->isEnabled())
    field_->setFocus();
  else
    steps_->setFocus();
}

QLayout* StepsView::entry() {
  auto* row = new WrapLayout;
  field_->setAccessibleName(tr("Reading or note of this step"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers) { return command(key); };
  connect(field_, &QLineEdit::returnPressed, this, &StepsView::typed);
  row->addWidget(field_);
  row->addWidget(field_->keyButton(tr("Tick"), Qt::Key_Space));
  row->addWidget(field_->keyButton(tr("OL"), Qt::Key_O));
  row->addWidget(field_->keyButton(tr("Step before"), Qt::Key_B));
  row->addWidget(field_->keyButton(tr("Undo"), Qt::Key_U));
  return row;
}

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

void StepsView::goToOpenStep(std::size_t from) {
  const RepairAction* chosen = action();
  if (chosen == nullptr) return;
  // What was jumped over comes after what is still ahead.
  const auto open = [&](std::size_t i) {
    return !chosen->steps[i].done && !isFunctionCheck(chosen->steps[i]);
  };
  for (std::size_t n = 0; n < chosen->steps.size(); ++n) {
    const std::size_t i = (from + n) % chosen->steps.size();
    if (!open(i)) continue;
    step_ = i;
    return;
  }
  step_ = chosen->steps.size();
}

void StepsView::showActions() {
  const Job* job = desk_.job.job();
  filling_ = true;
  actions_->clear();
  if (job != nullptr) {
    for (const RepairAction& each : job->actions) {
      const auto ticked =
          std::count_if(each.steps.begin(), each.steps.end(), [](const WorkStep& s) { return s.done; });
      actions_->addItem(tr("%1: %2   %3 of %4 steps")
                            .arg(shown(nameOf(each.kind)), QString::fromStdString(each.target))
                            .arg(ticked)
                            .arg(each.steps.size()));
      if (each.id == action_) actions_->setCurrentRow(actions_->count() - 1);
    }
  }
  filling_ = false;
}

void StepsView::showSteps() {
  const RepairAction* chosen = action();
  filling_ = true;
  steps_->clear();
  if (chosen != nullptr) {
    for (std::size_t i = 0; i < chosen->steps.size(); ++i) {
      const WorkStep& each = chosen->steps[i];
      const QString sign = each.done ? QStringLiteral("\u2713") : QStringLiteral("\u2610");
      QString text = each.check ? tr("%1 %2  Check: %3") : tr("%1 %2  %3");
      text = text.arg(sign).arg(i + 1).arg(besidePicture(stepSaid(each, *chosen)));
      if (const Said note = noteSaid(each); !note.empty())
        text += QStringLiteral("\n      ") + besidePicture(note);
      auto* item = new QListWidgetItem(text, steps_);
      item->setData(Qt::AccessibleTextRole, (each.done ? tr("done: %1") : tr("open: %1")).arg(text));
    }
    if (step_ < chosen->steps.size()) steps_->setCurrentRow(static_cast<int>(step_));
  }
  filling_ = false;
  showDue();
}

void StepsView::showDue() {
  const RepairAction* chosen = action();
  const WorkStep* now = step();
  field_->setEnabled(chosen != nullptr); // its keys are needed after the last step, too
  if (chosen == nullptr || now == nullptr) {
    number_->clear();
    due_->setText(chosen == nullptr ? tr("No repair chosen yet") : tr("All steps are done"));
    must_->setText(chosen == nullptr ? QString() : tr("Now prove that it holds: the next station"));
    note_->clear();
    return;
  }
  number_->setText(tr("%1: step %2 of %3%4")
                       .arg(QString::fromStdString(chosen->target))
                       .arg(step_ + 1)
                       .arg(chosen->steps.size())
                       .arg(now->done ? tr(", done") : QString()));
  due_->setText(besidePicture(stepSaid(*now, *chosen)));
  // What it must read is for the eyes from a metre; what else follows from it is read at the desk.
  must_->setText(now->check ? tr("Must be: %1").arg(besidePicture(expectedSaid(*now, *chosen))) : QString());
  QStringList rest;
  if (const Said detail = detailSaid(*now, *chosen); !detail.empty()) rest << besidePicture(detail);
  if (const Said otherwise = otherwiseSaid(*now, *chosen); !otherwise.empty())
    rest << besidePicture(otherwise);
  if (const Said note = noteSaid(*now); !note.empty()) rest << tr("Noted: %1").arg(besidePicture(note));
  note_->setText(rest.join(QLatin1Char('\n')));
  field_->setPlaceholderText(now->measure ? tr("reading  Enter") : tr("note  Enter"));
  Q_EMIT dueChanged();
}

void StepsView::change(const QString& what, const std::function<void(WorkStep&)>& to) {
  const RepairAction* chosen = action();
  if (chosen == nullptr || step() == nullptr) return;
  RepairAction after = *chosen;
  to(after.steps[step_]);
  desk_.job.updateAction(what, after);
}

void StepsView::tick() {
  const WorkStep* now = step();
  if (now == nullptr) return;
  const bool done = !now->done;
  const std::size_t at = step_;
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
  const bool added = desk_.job.addReadingFor(action_, tr("reading of a check"), kept,
                                             [at, read, good](RepairAction& a, JobReadingId) {
                                               a.steps[at].read = read;
                                               a.steps[at].done = a.steps[at].done || good;
                                             });
  if (!added) return;
  Q_EMIT told(words, outcome == StepOutcome::disagrees);
  if (!good) return;
  goToOpenStep(at + 1);
  showSteps();
}

bool StepsView::command(int key) {
  switch (key) {
  case Qt::Key_Space:
    tick();
    return true;
  case Qt::Key_O:
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
  if (watched == steps_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Space) {
    tick();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend
