#include "bridge_page.h"

#include <QKeyEvent>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "netmend/casework/step_check.h"
#include "netmend/drawing/fault_overlay.h"
#include "netmend/words/jumper.h"
#include "proposals_view.h"
#include "steps_view.h"

namespace netmend {

BridgePage::BridgePage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), views_(new QStackedWidget(this)),
      proposals_(new ProposalsView(desk, makeWhyButton(), this)), work_(new StepsView(desk, this)) {
  setFocusPolicy(Qt::StrongFocus);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(views_);
  views_->addWidget(proposals_);
  views_->addWidget(work_);
  connect(proposals_, &ProposalsView::told, this, &StationPage::told);
  connect(proposals_, &ProposalsView::selectionChanged, this, &StationPage::overlayChanged);
  connect(proposals_, &ProposalsView::back, this, [this] {
    if (work_->action() != nullptr) showChoosing(false);
  });
  connect(proposals_, &ProposalsView::added, this, [this] {
    work_->showLast();
    showChoosing(false);
  });
  connect(work_, &StepsView::told, this, &StationPage::told);
  connect(work_, &StepsView::dueChanged, this, &StationPage::overlayChanged);
  connect(work_, &StepsView::otherWanted, this, [this] { showChoosing(true); });
  connect(&desk_.job, &BenchJob::actionsChanged, this, &BridgePage::refresh);
  refresh();
}

void BridgePage::showWhy() {
  proposals_->setWhy(why_);
}

void BridgePage::pictureTurned() {
  proposals_->pictureTurned();
  work_->pictureTurned();
}

bool BridgePage::choosing() const {
  return views_->currentWidget() == proposals_;
}

void BridgePage::showChoosing(bool choose) {
  if (choose)
    views_->setCurrentWidget(proposals_);
  else
    views_->setCurrentWidget(work_);
  if (isVisible()) arrive();
  Q_EMIT overlayChanged();
}

void BridgePage::refresh() {
  const bool before = work_->action() != nullptr;
  work_->refresh();
  const bool now = work_->action() != nullptr;
  proposals_->setWorkBehind(now);
  if (now != before || choosing() == now) showChoosing(!now);
}

void BridgePage::arrive() {
  if (choosing())
    setFocus();
  else
    work_->focusEntry();
}

void BridgePage::keyPressEvent(QKeyEvent* event) {
  const bool plain = (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == 0;
  if (plain && (choosing() ? proposals_->command(event->key()) : work_->command(event->key()))) return;
  StationPage::keyPressEvent(event);
}

void BridgePage::accept(const ReadingEvent& event) {
  if (choosing()) return;
  if (const auto* value = std::get_if<ValueTaken>(&event)) {
    if (value->again && work_->movedOn())
      Q_EMIT told(tr("Taken already: lift the lead for the next step"), true);
    else
      work_->reading(value->value);
  } else if (std::holds_alternative<StepBack>(event))
    work_->command(Qt::Key_B);
  else if (std::holds_alternative<UndoLast>(event))
    undo();
  else if (std::holds_alternative<PointSkipped>(event))
    work_->command(Qt::Key_Down);
}

ReadingMode BridgePage::wantedMode() const {
  const WorkStep* now = work_->step();
  if (choosing() || now == nullptr || !now->check) return desk_.walk.mode();
  return now->measure ? now->measure->mode : desk_.walk.mode();
}

Overlay BridgePage::overlay() const {
  const auto fault = desk_.fault.fault();
  const auto proposals = desk_.fault.proposals();
  const std::size_t selected = proposals_->selected();
  const BoardUnderWork* board = desk_.job.board();
  if (choosing() && board != nullptr && fault && proposals && selected < proposals->proposals.size())
    return jumperOverlay(*fault, proposals->proposals[selected], *board->places);
  Overlay out;
  const RepairAction* chosen = work_->action();
  if (chosen == nullptr || !chosen->jumper) return out;
  if (board != nullptr) out.litNets = board->lookup->netsNamed(chosen->jumper->net);
  out.lines.push_back({chosen->jumper->way, LineStyle::wire});
  out.marks.push_back({chosen->jumper->from.at, MarkShape::ring, nameOf(chosen->jumper->from)});
  out.marks.push_back({chosen->jumper->to.at, MarkShape::ring, nameOf(chosen->jumper->to)});
  return out;
}

} // namespace netmend
