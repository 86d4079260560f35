// Another description of the board, brought into the drawing: difference by difference.
#include <utility>

#include <QLabel>
#include <QPushButton>

#include "draw_view.h"
#include "netmend/words/sketch.h"

namespace netmend {

void DrawView::mergeFile(const QString& file) {
  desk_.drawing.readToMerge(file);
}

void DrawView::beginMerge(const QString& name, std::shared_ptr<const Board> file) {
  const Lookup theirs(*file);
  laying_.reset();
  merging_ = Merging{name, file, planMerge(desk_.drawing.lookup(), theirs), 0};
  refresh();
  Q_EMIT mapWanted();
}

bool DrawView::mergingKey(int key) {
  using Right = MergeDifference::Right;
  const bool all = merging_->at >= merging_->plan.differences.size();
  switch (key) {
  case Qt::Key_A:
    if (all) {
      const Merging merge = *std::exchange(merging_, std::nullopt);
      if (desk_.drawing.merge(*merge.file, merge.plan))
        Q_EMIT told(tr("Merged: %1. One undo takes it back").arg(merge.name), false);
      refresh();
    } else {
      decide(Right::drawing);
    }
    return true;
  case Qt::Key_X:
    if (!all) decide(Right::file);
    return true;
  case Qt::Key_S:
    if (!all) decide(std::nullopt);
    return true;
  case Qt::Key_B:
    if (merging_->at > 0) --merging_->at;
    refresh();
    return true;
  case Qt::Key_Escape:
    merging_.reset();
    refresh();
    return true;
  default:
    return false;
  }
}

/// Nothing: later, and until then as it is drawn.
void DrawView::decide(std::optional<MergeDifference::Right> right) {
  MergeDifference& difference = merging_->plan.differences[merging_->at++];
  difference.right = right.value_or(MergeDifference::Right::open);
  refresh();
}

void DrawView::showMerging() {
  const std::size_t count = merging_ ? merging_->plan.differences.size() : 0;
  const bool asking = merging_ && merging_->at < count;
  for (std::size_t i = 0; i < mergeButtons_.size(); ++i) {
    const bool ofDifference = i < 3;
    const bool leaves = i + 1 == mergeButtons_.size();
    mergeButtons_[i]->setVisible(merging_ && (leaves || ofDifference == asking));
  }
  if (!merging_) return;
  const MergePlan& plan = merging_->plan;
  QStringList facts{shown(mergeSaid(plan))};
  if (plan.placesFit)
    facts << tr("its places fit within %1 mm: parts and copper come in with theirs")
                 .arg(plan.worstPlace.mm(), 0, 'f', 2);
  else
    facts << tr("its places do not fit the drawing's: parts come in without them, and no copper");
  if (asking) {
    const MergeDifference& difference = plan.differences[merging_->at];
    due_->setText(tr("%1 of %2: which is right?").arg(merging_->at + 1).arg(count));
    const Said why = proposalSaid(difference);
    help_->setText(shown(differenceSaid(difference)) +
                   (why.empty() ? QString() : QLatin1Char('\n') + shown(why)));
  } else {
    due_->setText(tr("Bring %1 into the drawing").arg(merging_->name));
    help_->setText(tr("What was put off stays as it is drawn. Readings stay with their pins. One undo takes "
                      "the whole back"));
  }
  help_->show();
  facts_->setText(facts.join(QLatin1Char('\n')));
  facts_->show();
}

} // namespace netmend
