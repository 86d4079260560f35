#include "function_checks.h"

#include <algorithm>

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QVBoxLayout>

#include "netmend/casework/function_check.h"

namespace netmend {

FunctionChecks::FunctionChecks(BenchJob& job, QWidget* parent)
    : QWidget(parent), job_(job), list_(new QListWidget(this)), function_(new QLineEdit(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  auto* label = new QLabel(tr("Functions to &try: Space ticks what works, Delete takes a line out"), this);
  label->setWordWrap(true);
  label->setBuddy(list_);
  layout->addWidget(label);
  list_->setAccessibleName(tr("Functions to try"));
  list_->setObjectName(QStringLiteral("functions"));
  list_->setWordWrap(true);
  list_->installEventFilter(this);
  connect(list_, &QListWidget::itemChanged, this, [this](QListWidgetItem* item) {
    if (filling_) return;
    // The list is filled again by what this changes, so not while it is telling of the change.
    const auto line = static_cast<std::size_t>(list_->row(item));
    const bool done = item->checkState() == Qt::Checked;
    QMetaObject::invokeMethod(
        this, [this, line, done] { setDone(line, done); }, Qt::QueuedConnection);
  });
  layout->addWidget(list_, 1);
  function_->setPlaceholderText(tr("what should work: keys 3, 6, 9 and Enter"));
  function_->setAccessibleName(tr("Another function to try"));
  function_->setObjectName(QStringLiteral("function"));
  connect(function_, &QLineEdit::returnPressed, this, &FunctionChecks::add);
  layout->addWidget(function_);
  connect(&job_, &BenchJob::jobChanged, this, &FunctionChecks::refresh);
  connect(&job_, &BenchJob::actionsChanged, this, &FunctionChecks::refresh);
  refresh();
}

void FunctionChecks::focusEntry() {
  function_->setFocus();
}

void FunctionChecks::refresh() {
  const Job* job = job_.job();
  const int row = list_->currentRow();
  filling_ = true;
  list_->clear();
  lines_.clear();
  if (job != nullptr)
    for (const RepairAction& action : job->actions)
      for (std::size_t i = 0; i < action.steps.size(); ++i) {
        if (!isFunctionCheck(action.steps[i])) continue;
        auto* item = new QListWidgetItem(QString::fromStdString(action.steps[i].text), list_);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(action.steps[i].done ? Qt::Checked : Qt::Unchecked);
        lines_.push_back({action.id, i});
      }
  list_->setCurrentRow(std::clamp(row, -1, list_->count() - 1));
  filling_ = false;
}

void FunctionChecks::add() {
  const QString text = function_->text().trimmed();
  const Job* job = job_.job();
  if (text.isEmpty() || job == nullptr) return;
  const RepairAction* action = actionToProve(*job);
  if (action == nullptr) return;
  RepairAction after = *action;
  after.steps.push_back(functionCheck(text.toStdString()));
  if (job_.updateAction(tr("function to try"), after)) function_->clear();
}

void FunctionChecks::setDone(std::size_t line, bool done) {
  const Job* job = job_.job();
  if (job == nullptr || line >= lines_.size()) return;
  for (RepairAction action : job->actions) {
    if (action.id != lines_[line].action) continue;
    action.steps[lines_[line].step].done = done;
    job_.updateAction(done ? tr("function seen to work") : tr("tick taken off"), action);
    job_.reached(JobState::proving);
    return;
  }
}

void FunctionChecks::remove() {
  const Job* job = job_.job();
  const int row = list_->currentRow();
  if (job == nullptr || row < 0 || row >= static_cast<int>(lines_.size())) return;
  const Line line = lines_[static_cast<std::size_t>(row)];
  for (RepairAction action : job->actions) {
    if (action.id != line.action) continue;
    action.steps.erase(action.steps.begin() + static_cast<std::ptrdiff_t>(line.step));
    job_.updateAction(tr("removal of a function"), action);
    return;
  }
}

bool FunctionChecks::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Delete) {
    remove();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

} // namespace netmend
