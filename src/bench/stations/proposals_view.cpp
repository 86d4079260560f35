#include "proposals_view.h"

#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/casework/jumper_case.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/words/job.h"
#include "netmend/words/jumper.h"
#include "proposal_card.h"
#include "scrolled.h"

namespace netmend {

ProposalsView::ProposalsView(Desk desk, QWidget* parent)
    : QWidget(parent), desk_(desk), title_(makeLabel(Letters::large, QStringLiteral("bridgeTitle"), this)),
      why_(makeLabel(Letters::reading, QStringLiteral("whyNoProposals"), this)), column_(new QVBoxLayout),
      kind_(new QComboBox(this)), target_(new QLineEdit(this)), reason_(new QLineEdit(this)), drawing_(this) {
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
  byHand_ = otherRepair();
  layout->addWidget(byHand_);
  connect(&desk_.fault, &BenchFault::changed, this, [this] { showProposals(); });
  connect(&desk_.job, &BenchJob::boardChanged, this, [this] { showProposals(); });
  showProposals();
}

void ProposalsView::setWhy(bool why) {
  reasons_ = why;
  for (ProposalCard* card : cards_)
    card->setWhy(why);
}

QWidget* ProposalsView::otherRepair() {
  auto* card = makeCard(this);
  card->setObjectName(QStringLiteral("byHand"));
  auto* row = new WrapLayout;
  card->setLayout(row);
  row->setContentsMargins(scaled(16), scaled(12), scaled(16), scaled(12));
  auto* label = new QLabel(tr("By hand"), this);
  label->setBuddy(kind_);
  row->addWidget(label);
  kind_->setAccessibleName(tr("Kind of repair"));
  kind_->setObjectName(QStringLiteral("repairKind"));
  for (const auto& word : repairKindWords)
    if (word.value != RepairKind::jumper)
      kind_->addItem(shown(nameOf(word.value)), static_cast<int>(word.value));
  row->addWidget(kind_);
  target_->setPlaceholderText(tr("on what: J4.9, C28, net KEY_COL3"));
  target_->setAccessibleName(tr("Part, joint or net worked on"));
  target_->setObjectName(QStringLiteral("repairTarget"));
  reason_->setPlaceholderText(tr("why"));
  reason_->setAccessibleName(tr("Reason for the repair"));
  reason_->setObjectName(QStringLiteral("repairReason"));
  for (QLineEdit* field : {target_, reason_}) {
    keepRoomForHint(*field, Growth::free);
    row->addWidget(field);
  }
  QPushButton* add = makePrompt(tr("Add"), QKeySequence(Qt::Key_Enter), this);
  add->setAccessibleName(tr("Add this repair"));
  connect(add, &QPushButton::clicked, this, &ProposalsView::addOther);
  row->addWidget(add);
  connect(target_, &QLineEdit::returnPressed, this, &ProposalsView::addOther);
  connect(reason_, &QLineEdit::returnPressed, this, &ProposalsView::addOther);
  return card;
}

void ProposalsView::openByHand() {
  handWanted_ = true;
  byHand_->show();
  kind_->setFocus(Qt::ShortcutFocusReason);
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

void ProposalsView::addOther() {
  if (target_->text().trimmed().isEmpty()) {
    target_->setFocus();
    Q_EMIT told(tr("Say what is worked on: a part, joint, place or net"), true);
    return;
  }
  if (desk_.job.job() == nullptr && !desk_.job.bookIn()) return;
  const auto kind = static_cast<RepairKind>(kind_->currentData().toInt());
  const auto kept = desk_.fault.addAction(kind, target_->text().trimmed().toStdString(),
                                          reason_->text().trimmed().toStdString());
  if (!kept) {
    reason_->setFocus();
    Q_EMIT told(shown(kept.error()), true);
    return;
  }
  desk_.job.reached(JobState::repairing);
  target_->clear();
  reason_->clear();
  handWanted_ = false;
  Q_EMIT added();
}

bool ProposalsView::command(int key) {
  if (key >= Qt::Key_1 && key <= Qt::Key_9) {
    const auto wanted = static_cast<std::size_t>(key - Qt::Key_1);
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
  if (event->type() == QEvent::ApplicationFontChange && byHand_ != nullptr) showProposals(selected_);
}

} // namespace netmend
