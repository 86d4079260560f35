#include "bridge_page.h"

#include <algorithm>

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "netmend/casework/function_check.h"
#include "netmend/casework/step_check.h"
#include "netmend/drawing/fault_overlay.h"
#include "netmend/words/jumper.h"
#include "netmend/words/place.h"
#include "odd_pins.h"
#include "proposals_view.h"
#include "steps_view.h"

namespace netmend {

BridgePage::BridgePage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), strip_(new OddStrip(this)),
      byHand_(makePrompt(tr("Repair by hand"), QKeySequence(Qt::Key_H), this)),
      repair_(makeLabel(Letters::reading, QStringLiteral("repairName"), this)),
      views_(new QStackedWidget(this)), proposals_(new ProposalsView(desk, this)),
      work_(new StepsView(desk, this)), keys_(new QWidget(this)) {
  setFocusPolicy(Qt::StrongFocus);
  auto* layout = new QVBoxLayout(this);
  repair_->setWordWrap(false);
  strip_->addRight(byHand_);
  strip_->addRight(repair_);
  layout->addWidget(strip_);
  layout->addWidget(views_, 1);
  views_->addWidget(proposals_);
  views_->addWidget(work_);
  views_->setMinimumSize(1, 1); // the one that is not shown must not make it wider
  makeKeys();
  connectViews();
  refresh();
}

void BridgePage::connectViews() {
  strip_->onChosen = [this](std::size_t index) { chooseOdd(index); };
  connect(byHand_, &QPushButton::clicked, proposals_, &ProposalsView::openByHand);
  connect(proposals_, &ProposalsView::told, this, &StationPage::told);
  connect(proposals_, &ProposalsView::selectionChanged, this, [this] {
    showStrip();
    Q_EMIT overlayChanged();
  });
  connect(proposals_, &ProposalsView::back, this, [this] {
    if (work_->action() != nullptr)
      showChoosing(false);
    else
      arrive();
  });
  connect(proposals_, &ProposalsView::added, this, [this] {
    work_->showLast();
    showChoosing(false);
  });
  connect(work_, &StepsView::told, this, &StationPage::told);
  connect(work_, &StepsView::dueChanged, this, [this] {
    showStrip();
    Q_EMIT overlayChanged();
  });
  connect(work_, &StepsView::otherWanted, this, [this] { showChoosing(true); });
  connect(&desk_.job, &BenchJob::actionsChanged, this, &BridgePage::refresh);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &BridgePage::showStrip);
  connect(&desk_.fault, &BenchFault::changed, this, &BridgePage::showStrip);
}

void BridgePage::makeKeys() {
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins(0, 0, 0, 0);
  toWork_ = makePrompt(tr("Back to the work steps"), QKeySequence(Qt::Key_W), keys_);
  connect(toWork_, &QPushButton::clicked, proposals_, &ProposalsView::back);
  take_ = makePrompt(tr("Take %1").arg(1), QKeySequence(Qt::Key_A), keys_);
  take_->setObjectName(QStringLiteral("accept"));
  setMain(*take_);
  connect(take_, &QPushButton::clicked, proposals_, &ProposalsView::acceptSelected);
  for (QWidget* button : std::initializer_list<QWidget*>{makeWhyButton(), toWork_, take_})
    row->addWidget(button);
  keys_->hide(); // the window's foot shows them
}

/// The line of this odd pin: its repair, or the ways to repair it.
void BridgePage::chooseOdd(std::size_t index) {
  const OddPin pin = strip_->pins()[index];
  chooseOddPin(desk_, pin);
  showChoosing(!work_->showActionOn(pin.net.toStdString(), pin.label.toStdString()));
}

void BridgePage::showStrip() {
  fillOddStrip(*strip_, desk_);
  byHand_->setVisible(choosing());
  repair_->setText(work_->title());
  repair_->setVisible(!choosing());
  toWork_->setVisible(work_->action() != nullptr);
  take_->setVisible(proposals_->count() > 0);
  take_->setText(tr("Take %1").arg(proposals_->selected() + 1));
  take_->setAccessibleName(tr("Accept the chosen proposal"));
}

FootMode BridgePage::footMode() const {
  const RepairAction* chosen = work_->action();
  const std::string line = !choosing() && chosen != nullptr && chosen->jumper ? chosen->jumper->net
                           : !choosing() && chosen != nullptr                 ? chosen->target
                                                                              : desk_.fault.lineName();
  return {BandLook::job, line.empty() ? QString() : tr("BRIDGE %1").arg(QString::fromStdString(line))};
}

QWidget* BridgePage::footKeys() {
  return choosing() ? keys_ : work_->keys();
}

MeterFigure* BridgePage::meterFigure() {
  return choosing() ? nullptr : work_->figure();
}

QWidget* BridgePage::messageAnchor() {
  return choosing() ? proposals_->handField() : work_->field();
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
  showStrip();
  if (isVisible()) arrive();
  Q_EMIT mapHandChanged(); // other keys, and the map comes or goes
  Q_EMIT overlayChanged();
}

void BridgePage::refresh() {
  const bool before = work_->action() != nullptr;
  work_->refresh();
  const bool now = work_->action() != nullptr;
  if (now != before || choosing() == now)
    showChoosing(!now);
  else
    showStrip();
}

void BridgePage::arrive() {
  // What is shown is done, and another line was looked at meanwhile: its repair, or the ways to repair it.
  if (!choosing() && work_->step() == nullptr && strip_->chosen()) {
    const OddPin& pin = strip_->pins()[*strip_->chosen()];
    if (!work_->showActionOn(pin.net.toStdString(), pin.label.toStdString())) return showChoosing(true);
  }
  if (choosing())
    setFocus();
  else
    work_->focusEntry();
}

void BridgePage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  const int edge = scaled(face::margin);
  layout()->setContentsMargins(edge, scaled(face::grid), choosing() ? edge : scaled(face::grid),
                               scaled(face::grid * 2));
  layout()->setSpacing(scaled(face::grid * 2));
}

void BridgePage::changeEvent(QEvent* event) {
  StationPage::changeEvent(event);
  if (event->type() == QEvent::ApplicationFontChange && layout() != nullptr)
    layout()->setSpacing(scaled(face::grid * 2));
}

void BridgePage::keyPressEvent(QKeyEvent* event) {
  const bool plain = (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == 0;
  if (plain &&
      (choosing() ? proposals_->command(event->key()) : work_->command(event->key(), event->modifiers())))
    return;
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
  if (chosen == nullptr) return out;
  if (chosen->jumper) {
    if (board != nullptr) out.litNets = board->lookup->netsNamed(chosen->jumper->net);
    out.lines.push_back({chosen->jumper->way, isWorkDone(*chosen) ? LineStyle::laid : LineStyle::wire});
    out.marks.push_back({chosen->jumper->from.at, MarkShape::ring, nameOf(chosen->jumper->from)});
    out.marks.push_back({chosen->jumper->to.at, MarkShape::ring, nameOf(chosen->jumper->to)});
  } else if (board != nullptr) {
    for (const ProbePoint& place : chosen->places)
      if (const auto at = placeOnBoard(*board->lookup, place))
        out.marks.push_back({*at, MarkShape::ring, nameOf(place, board->places.get())});
  }
  const WorkStep* now = work_->step();
  if (board == nullptr || now == nullptr || !now->measure) return out;
  if (const auto at = placeOnBoard(*board->lookup, now->measure->point))
    out.marks.push_back({*at, MarkShape::probe, nameOf(now->measure->point, board->places.get())});
  return out;
}

} // namespace netmend
