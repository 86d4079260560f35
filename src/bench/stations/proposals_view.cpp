#include "proposals_view.h"

#include <QEvent>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "hand_repair_card.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/jumper.h"
#include "proposal_card.h"
#include "scrolled.h"

namespace netmend {

ProposalsView::ProposalsView(Desk desk, QWidget* parent)
    : QWidget(parent), desk_(desk), title_(makeLabel(Letters::large, QStringLiteral("bridgeTitle"), this)),
      why_(makeLabel(Letters::reading, QStringLiteral("whyNoProposals"), this)), column_(new QVBoxLayout),
      byHand_(new HandRepairCard(this)), drawing_(this) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(scaled(face::grid));
  setLetters(*title_, Letters::large, true);
  layout->addWidget(title_);
  auto* cards = new QWidget(this);
  cards->setLayout(column_);
  column_->setContentsMargins(0, 0, 0, 0);
  column_->addWidget(why_);
  QScrollArea* area = scrolled(cards, this);
  area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  layout->addWidget(area, 1);
  layout->addWidget(byHand_);
  byHand_->onTyped = [this](const HandRepair& repair) { addByHand(repair); };
  connect(&desk_.fault, &BenchFault::changed, this, [this] { showProposals(); });
  connect(&desk_.job, &BenchJob::boardChanged, this, [this] { showProposals(); });
  showProposals();
}

void ProposalsView::setWhy(bool why) {
  reasons_ = why;
  for (ProposalCard* card : cards_)
    card->setWhy(why);
}

void ProposalsView::openByHand() {
  handWanted_ = true;
  byHand_->show();
  byHand_->setFocus(Qt::ShortcutFocusReason);
}

QWidget* ProposalsView::handField() const {
  return byHand_->isVisible() ? byHand_->field() : nullptr;
}

void ProposalsView::pictureTurned() {
  showProposals(selected_);
}

QString ProposalsView::whyNone() const {
  if (desk_.fault.working()) return tr("The ways to bridge it are being looked for");
  const Said& why = desk_.fault.whyNoProposals();
  if (!why.empty()) return tr("No jumper: %1").arg(shown(why));
  return tr("No jumper: no line is suspected yet. Walk a connector and find the place first, or choose "
            "another repair below.");
}

/// The board as the cards' pictures need it, made beside the event loop and once for each board.
void ProposalsView::makeScene() {
  const auto board = desk_.job.board() != nullptr ? desk_.job.board()->board : nullptr;
  if (board == sceneOf_) return;
  sceneOf_ = board;
  scene_ = nullptr;
  drawing_.cancel();
  if (!board) return;
  drawing_.run<std::shared_ptr<const BoardScene>>(
      [board](const std::stop_token&) { return std::make_shared<const BoardScene>(*board); },
      [this](std::shared_ptr<const BoardScene> made) {
        scene_ = std::move(made);
        for (ProposalCard* card : cards_)
          card->setScene(scene_);
      });
}

void ProposalsView::showProposals(std::size_t chosen) {
  for (ProposalCard* card : cards_) {
    column_->removeWidget(card);
    card->hide();
    card->deleteLater();
  }
  cards_.clear();
  const auto fault = desk_.fault.fault();
  const auto proposals = desk_.fault.proposals();
  const BoardUnderWork* board = desk_.job.board();
  const std::size_t count = fault && proposals && board != nullptr ? proposals->proposals.size() : 0;
  Box seen;
  for (std::size_t i = 0; i < count; ++i)
    for (const Point& at : proposals->proposals[i].way)
      seen.include(at);
  if (count > 0) makeScene();
  column_->setSpacing(scaled(face::grid * 2));
  for (std::size_t i = 0; i < count; ++i) {
    const JumperProposal& each = proposals->proposals[i];
    const Seconds work = workTime(actionFor(*board, *fault, each, desk_.job.data().work).steps);
    auto* card = new ProposalCard({i + 1, *fault, each, *board->places, seen, work}, this);
    card->setWhy(reasons_);
    card->setScene(scene_);
    card->onChosen = [this, i] { select(i); };
    column_->addWidget(card, 1);
    cards_.push_back(card);
  }
  const QString why = count == 0 ? whyNone() : besidePicture(whyFewer(*proposals));
  setLetters(*why_, count == 0 ? Letters::metre : Letters::reading);
  why_->setText(why);
  why_->setVisible(!why.isEmpty());
  title_->setText(count == 0 ? tr("How to repair it") : QString());
  title_->setVisible(count == 0);
  byHand_->setVisible(count == 0 || handWanted_);
  select(chosen);
}

void ProposalsView::select(std::size_t proposal) {
  selected_ = proposal < cards_.size() ? proposal : 0;
  for (std::size_t i = 0; i < cards_.size(); ++i)
    cards_[i]->setChosen(i == selected_);
  Q_EMIT selectionChanged();
}

void ProposalsView::acceptSelected() {
  if (selected_ >= cards_.size() || !desk_.fault.accept(selected_)) return;
  desk_.job.reached(JobState::repairing);
  Q_EMIT added();
}

void ProposalsView::addByHand(const HandRepair& repair) {
  if (desk_.job.job() == nullptr && !desk_.job.bookIn()) return;
  const auto doubt = desk_.fault.addAction(repair);
  if (!doubt) {
    Q_EMIT told(shown(doubt.error()), true);
    return;
  }
  desk_.job.reached(JobState::repairing);
  byHand_->clear();
  handWanted_ = false;
  Q_EMIT added();
  if (*doubt) Q_EMIT told(shown(**doubt), true);
}

bool ProposalsView::command(int key) {
  if (key >= Qt::Key_1 && key <= Qt::Key_9) {
    const auto wanted = static_cast<std::size_t>(key - Qt::Key_1);
    if (handWanted_ || cards_.empty()) return byHand_->choose(wanted);
    if (wanted >= cards_.size()) return false;
    select(wanted);
    return true;
  }
  switch (key) {
  case Qt::Key_A:
    acceptSelected();
    return true;
  case Qt::Key_H:
    openByHand();
    return true;
  case Qt::Key_W:
  case Qt::Key_Escape:
    if (handWanted_ && key == Qt::Key_Escape) {
      handWanted_ = false;
      byHand_->setVisible(cards_.empty());
    }
    Q_EMIT back();
    return true;
  case Qt::Key_U:
    if (const auto undone = desk_.job.undo(); !undone) Q_EMIT told(shown(undone.error()), true);
    return true;
  default:
    return false;
  }
}

void ProposalsView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::ApplicationFontChange && column_->parent() != nullptr)
    showProposals(selected_);
}

} // namespace netmend
