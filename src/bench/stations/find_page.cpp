#include "find_page.h"

#include <algorithm>

#include <QCompleter>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QStandardItemModel>
#include <QStringListModel>

#include "bench/widgets/reading_field.h"
#include "find_words.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/place.h"

namespace netmend {

bool FindPage::command(int key, Qt::KeyboardModifiers modifiers) {
  const bool shift = (modifiers & Qt::ShiftModifier) != 0;
  switch (key) {
  case Qt::Key_O:
    run(desk_.fault.take(std::nullopt));
    return true;
  case Qt::Key_N:
    if (shift)
      desk_.fault.reachAll();
    else if (desk_.fault.solving())
      Q_EMIT told(tr("The reading before is still being weighed"), true);
    else
      desk_.fault.cannotReach();
    return true;
  case Qt::Key_U:
    undo();
    return true;
  case Qt::Key_I:
    sayComesAndGoes();
    return true;
  case Qt::Key_V:
    setAll(!listAll_);
    return true;
  case Qt::Key_PageUp:
  case Qt::Key_PageDown:
    if (suspects_->count() > 0)
      suspects_->setCurrentRow(std::clamp(suspects_->currentRow() + (key == Qt::Key_PageDown ? 1 : -1), 0,
                                          suspects_->count() - 1));
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter:
    return enter();
  case Qt::Key_Left:
  case Qt::Key_Right:
  case Qt::Key_Up:
  case Qt::Key_Down:
  case Qt::Key_Home:
    return tree_->key(key);
  default:
    return false;
  }
}

/// With nothing typed: opens the fold that is selected, or goes on where probing has come to its end.
bool FindPage::enter() {
  if (const TreeNode* node = tree_->selectedNode(); node != nullptr && node->kind == TreeNodeKind::folded) {
    unfolded_.insert(node->key);
    showTree();
    return true;
  }
  if (!shown_ || desk_.fault.solving() || desk_.fault.nextProbe() != nullptr) return false;
  Q_EMIT goTo(adviceFor(*shown_).station);
  return true;
}

bool FindPage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::KeyPress) return StationPage::eventFilter(watched, event);
  const auto* key = static_cast<QKeyEvent*>(event);
  if (watched != field_) {
    if (key->key() != Qt::Key_Escape) return StationPage::eventFilter(watched, event);
    closeFields();
    return true;
  }
  if (key->key() == Qt::Key_Tab && key->modifiers() == Qt::NoModifier && shown_) {
    openOther();
    return true;
  }
  if (key->matches(QKeySequence::ZoomIn) || key->matches(QKeySequence::ZoomOut)) {
    tree_->key(key->matches(QKeySequence::ZoomIn) ? Qt::Key_Plus : Qt::Key_Minus);
    return true;
  }
  return StationPage::eventFilter(watched, event);
}

void FindPage::typed(QLineEdit& field) {
  const QString text = field.text().trimmed();
  if (text.isEmpty()) return;
  const auto done = desk_.fault.type(text.toStdString());
  if (done) {
    field.clear();
    closeFields();
  } else {
    field.selectAll();
  }
  run(done);
}

void FindPage::run(const Result<void>& done) {
  if (!done) Q_EMIT told(shown(done.error()), true);
}

void FindPage::openLine() {
  anotherLine_->hide();
  line_->show();
  line_->setFocus(Qt::ShortcutFocusReason);
  line_->selectAll();
}

void FindPage::openOther() {
  other_->show();
  other_->setFocus(Qt::ShortcutFocusReason);
  other_->selectAll();
}

/// Back to the reading; a field with something in it stays.
void FindPage::closeFields() {
  if (other_->text().isEmpty()) other_->hide();
  line_->hide();
  anotherLine_->show();
  field_->setFocus();
}

void FindPage::arrive() {
  field_->setFocus();
}

QWidget* FindPage::messageAnchor() {
  return other_->isVisible() ? static_cast<QWidget*>(other_) : field_;
}

void FindPage::accept(const ReadingEvent& event) {
  field_->clear();
  if (const auto* value = std::get_if<ValueTaken>(&event)) {
    run(desk_.fault.take(*value));
  } else if (std::holds_alternative<PointSkipped>(event)) {
    command(Qt::Key_N, Qt::NoModifier);
  } else if (std::holds_alternative<UndoLast>(event)) {
    undo();
  }
}

ReadingMode FindPage::wantedMode() const {
  const ProbeProposal* next = desk_.fault.nextProbe();
  return next != nullptr ? next->mode : ReadingMode::diode;
}

void FindPage::listPlaces() {
  places_->clear();
  if (!shown_) return;
  const auto& places = shown_->isolation.places;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const QString handle = QString::fromStdString(places[i].label);
    const QString name = besidePicture(nameOf(shown_->names.probe(i)));
    auto* item = new QStandardItem(name == handle ? handle : tr("%1   (%2)").arg(name, handle));
    item->setData(handle, Qt::UserRole);
    places_->appendRow(item);
  }
}

void FindPage::listLines() {
  QStringList names;
  if (const BoardUnderWork* board = desk_.job.board()) {
    for (const Net& net : board->board->nets)
      if (!net.name.empty()) names << QString::fromStdString(net.name);
    for (const Pin& pin : board->board->pins)
      names << QString::fromStdString(pinLabel(*board->board, pin.id));
  }
  auto* completer = new QCompleter(names, this);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  completer->setMaxVisibleItems(12);
  line_->setCompleter(completer);
  delete lines_;
  lines_ = completer;
}

void FindPage::chooseLine() {
  const std::string text = line_->text().trimmed().toStdString();
  const BoardUnderWork* board = desk_.job.board();
  if (text.empty()) {
    desk_.fault.followWalk();
    closeFields();
    return;
  }
  if (board == nullptr) {
    Q_EMIT told(tr("No board yet: open one at the station before"), true);
    return;
  }
  const auto nets = board->lookup->netsNamed(text);
  const auto pins = board->lookup->pinsLabelled(text);
  if (nets.size() == 1) {
    desk_.fault.choose(nets.front());
  } else if (nets.empty() && pins.size() == 1) {
    desk_.fault.choose(pins.front());
  } else {
    const int found = static_cast<int>(nets.size() + pins.size());
    Q_EMIT told(found == 0 ? tr("No net and no pin is called %1").arg(line_->text())
                           : tr("%n nets or pins are called so: name a pin of the line that is meant",
                                nullptr, found),
                true);
    line_->selectAll();
    return;
  }
  line_->clear();
  closeFields();
}

} // namespace netmend
