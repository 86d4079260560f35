#include "proposals_view.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/words/job.h"
#include "netmend/words/jumper.h"
#include "proposal_card.h"
#include "scrolled.h"

namespace netmend {

ProposalsView::ProposalsView(Desk desk, QPushButton* whyButton, QWidget* parent)
    : QWidget(parent), desk_(desk), title_(makeLabel(Letters::metre, QStringLiteral("bridgeTitle"), this)),
      why_(makeLabel(Letters::metre, QStringLiteral("whyNoProposals"), this)), cardRow_(new QHBoxLayout),
      accept_(makePrompt(tr("Accept"), QKeySequence(Qt::Key_A), this)), kind_(new QComboBox(this)),
      target_(new QLineEdit(this)), reason_(new QLineEdit(this)),
      toWork_(makePrompt(tr("Back to the work steps"), QKeySequence(Qt::Key_W), this)) {
  auto* layout = new QVBoxLayout(this);
  auto* head = new QHBoxLayout;
  head->addWidget(title_, 1);
  toWork_->setAccessibleName(tr("Back to the work steps"));
  connect(toWork_, &QPushButton::clicked, this, &ProposalsView::back);
  head->addWidget(whyButton);
  head->addWidget(toWork_);
  accept_->setAccessibleName(tr("Accept the chosen proposal"));
  accept_->setObjectName(QStringLiteral("accept"));
  connect(accept_, &QPushButton::clicked, this, &ProposalsView::acceptSelected);
  head->addWidget(accept_);
  layout->addLayout(head);
  layout->addWidget(why_);
  auto* cards = new QWidget(this);
  cards->setLayout(cardRow_);
  cardRow_->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(scrolled(cards, this), 1);
  layout->addLayout(otherRepair());
  connect(&desk_.fault, &BenchFault::changed, this, [this] { showProposals(); });
  connect(&desk_.job, &BenchJob::boardChanged, this, [this] { showProposals(); });
  showProposals();
}

void ProposalsView::setWhy(bool why) {
  reasons_ = why;
  for (ProposalCard* card : cards_)
    card->setWhy(why);
}

void ProposalsView::setWorkBehind(bool behind) {
  toWork_->setVisible(behind);
}

QLayout* ProposalsView::otherRepair() {
  auto* row = new WrapLayout;
  auto* label = new QLabel(tr("Another &repair"), this);
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
  return row;
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

void ProposalsView::showProposals(std::size_t chosen) {
  for (ProposalCard* card : cards_) {
    cardRow_->removeWidget(card);
    card->hide();
    card->deleteLater();
  }
  cards_.clear();
  const auto proposals = desk_.fault.proposals();
  const BoardUnderWork* board = desk_.job.board();
  const std::size_t count = proposals && board != nullptr ? proposals->proposals.size() : 0;
  for (std::size_t i = 0; i < count; ++i) {
    auto* card = new ProposalCard(i + 1, proposals->proposals[i], *board->places, this);
    card->setWhy(reasons_);
    card->onChosen = [this, i] { select(i); };
    cardRow_->addWidget(card, 1);
    cards_.push_back(card);
  }
  accept_->setEnabled(count > 0);
  const QString why = count == 0 ? whyNone() : besidePicture(whyFewer(*proposals));
  setLetters(*why_, count == 0 ? Letters::metre : Letters::reading);
  why_->setText(why);
  why_->setVisible(!why.isEmpty());
  const QString line = QString::fromStdString(desk_.fault.lineName());
  title_->setText(count == 0  ? tr("How to repair it")
                  : count > 1 ? tr("Bridge %1: press 1 to %2, then A").arg(line).arg(count)
                              : tr("Bridge %1: A accepts").arg(line));
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
  case Qt::Key_W:
  case Qt::Key_Escape:
    Q_EMIT back();
    return true;
  case Qt::Key_U:
    if (const auto undone = desk_.job.undo(); !undone) Q_EMIT told(shown(undone.error()), true);
    return true;
  default:
    return false;
  }
}

} // namespace netmend
