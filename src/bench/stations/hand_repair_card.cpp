#include "hand_repair_card.h"

#include <array>

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/job.h"

namespace netmend {

namespace {

/// By the key that chooses them; those done most often first.
constexpr std::array kindsByKey{RepairKind::wire,        RepairKind::resolder,   RepairKind::removeBridge,
                                RepairKind::replacePart, RepairKind::removePart, RepairKind::clean,
                                RepairKind::cutTrack,    RepairKind::other,      RepairKind::notEconomic};

} // namespace

HandRepairCard::HandRepairCard(QWidget* parent) : QWidget(parent), line_(new QLineEdit(this)) {
  setObjectName(QStringLiteral("byHand"));
  auto* outside = new QVBoxLayout(this);
  outside->setContentsMargins(0, 0, 0, 0);
  QWidget* card = makeCard(this);
  outside->addWidget(card);
  auto* layout = new QVBoxLayout(card);
  layout->setContentsMargins(scaled(16), scaled(12), scaled(16), scaled(12));
  auto* row = new WrapLayout;
  auto* group = new QButtonGroup(this);
  for (std::size_t i = 0; i < kindsByKey.size(); ++i) {
    QPushButton* button =
        makePrompt(shown(nameOf(kindsByKey[i])), QKeySequence(Qt::Key_1 + static_cast<int>(i)), this);
    button->setCheckable(true);
    button->setObjectName(QStringLiteral("repairKind%1").arg(i + 1));
    group->addButton(button);
    connect(button, &QPushButton::clicked, this, [this, i] { choose(i); });
    row->addWidget(button);
    kinds_.push_back(button);
  }
  layout->addLayout(row);
  auto* entry = new QHBoxLayout;
  line_->setObjectName(QStringLiteral("repairLine"));
  setLetters(*line_, Letters::metre);
  entry->addWidget(line_, 1);
  QPushButton* add = makePrompt(tr("Add"), QKeySequence(Qt::Key_Enter), this);
  add->setAccessibleName(tr("Add this repair"));
  entry->addWidget(add);
  layout->addLayout(entry);
  connect(add, &QPushButton::clicked, this, &HandRepairCard::type);
  connect(line_, &QLineEdit::returnPressed, this, &HandRepairCard::type);
  setFocusPolicy(Qt::StrongFocus);
  showKind();
}

QWidget* HandRepairCard::field() const {
  return line_;
}

bool HandRepairCard::choose(std::size_t kind) {
  if (kind >= kinds_.size()) return false;
  chosen_ = kind;
  showKind();
  line_->setFocus(Qt::ShortcutFocusReason);
  return true;
}

void HandRepairCard::clear() {
  line_->clear();
}

void HandRepairCard::showKind() {
  kinds_[chosen_]->setChecked(true);
  switch (kindsByKey[chosen_]) {
  case RepairKind::jumper:
  case RepairKind::wire:
    line_->setPlaceholderText(tr("from and to, why: J4.9 U3.12, track torn"));
    break;
  case RepairKind::removeBridge:
    line_->setPlaceholderText(tr("between what: J4.9 J4.10"));
    break;
  case RepairKind::other:
    line_->setPlaceholderText(tr("what is done, in your words"));
    break;
  case RepairKind::notEconomic:
    line_->setPlaceholderText(tr("what was found, why it does not pay"));
    break;
  case RepairKind::resolder:
  case RepairKind::removePart:
  case RepairKind::replacePart:
  case RepairKind::clean:
  case RepairKind::cutTrack:
    line_->setPlaceholderText(tr("on what, why: J4.9, ring around the joint"));
    break;
  }
  line_->setAccessibleName(line_->placeholderText());
}

void HandRepairCard::type() {
  if (line_->text().trimmed().isEmpty()) {
    line_->setFocus();
    return;
  }
  if (onTyped) onTyped(handRepairFrom(kindsByKey[chosen_], line_->text().toStdString()));
}

} // namespace netmend
