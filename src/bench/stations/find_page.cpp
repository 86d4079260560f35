#include "find_page.h"

#include <algorithm>

#include <QCompleter>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QStandardItemModel>
#include <QStringListModel>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/reading_field.h"
#include "bench/widgets/wrap_layout.h"
#include "find_words.h"
#include "netmend/drawing/fault_overlay.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/place.h"

namespace netmend {

namespace {

/// Found by name or by handle; what is picked is typed as its handle.
class PlaceCompleter : public QCompleter {
public:
  using QCompleter::QCompleter;
  [[nodiscard]] QString pathFromIndex(const QModelIndex& index) const override {
    return index.data(Qt::UserRole).toString() + QLatin1Char(' ');
  }
};

/// Takes what room is left, but asks for its least: a layout whose height depends on its width would count it
/// as nothing if it asked for nothing.
class LowScrollArea : public QScrollArea {
public:
  using QScrollArea::QScrollArea;
  [[nodiscard]] QSize sizeHint() const override { return {QScrollArea::sizeHint().width(), minimumHeight()}; }
};

} // namespace

FindPage::FindPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), line_(new QLineEdit(this)),
      name_(makeLabel(Letters::metre, QStringLiteral("lineName"), this)),
      state_(makeLabel(Letters::reading, QStringLiteral("findState"), this)),
      due_(makeLabel(Letters::reading, QStringLiteral("probeHead"), this)),
      place_(makeLabel(Letters::point, QStringLiteral("probePlace"), this)),
      lead_(makeLabel(Letters::metre, QStringLiteral("probeLead"), this)),
      effort_(makeLabel(Letters::metre, QStringLiteral("probeEffort"), this)),
      reason_(makeLabel(Letters::reading, QStringLiteral("probeReason"), this)),
      again_(makeLabel(Letters::reading, QStringLiteral("takeAgain"), this)),
      unknown_(makeLabel(Letters::small, QStringLiteral("notKnown"), this)),
      field_(new ReadingField(tr("452  Enter"), Growth::none, QStringLiteral("reading"), this)),
      other_(new QLineEdit(this)), suspects_(new SuspectList(this)), explanation_(new QPlainTextEdit(this)),
      selected_(makeLabel(Letters::reading, QStringLiteral("selected"), this)),
      tree_(new LineTreeView(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(head());
  auto* upper = new QHBoxLayout;
  upper->addLayout(probe(), 5);
  upper->addLayout(suspectsBox(), 5);
  layout->addLayout(upper, 1);
  layout->addLayout(entry());
  layout->addWidget(tree_, 1);
  layout->addWidget(selected_);
  for (QLineEdit* field : std::initializer_list<QLineEdit*>{field_, other_, line_})
    field->installEventFilter(this);
  tree_->onSelected = [this] { treeSelected(); };
  tree_->onUnfold = [this](std::size_t key) {
    unfolded_.insert(key);
    showTree();
  };
  connect(&desk_.fault, &BenchFault::changed, this, &FindPage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &FindPage::listLines);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &FindPage::showTree);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &FindPage::showProbe);
  QWidget* before = field_;
  for (QWidget* next : std::initializer_list<QWidget*>{other_, overLimit_, cannotReach_, reachAll_, suspects_,
                                                       explanation_, tree_, line_}) {
    setTabOrder(before, next);
    before = next;
  }
  listLines();
  refresh();
}

QLayout* FindPage::head() {
  auto* row = new WrapLayout;
  name_->setWordWrap(false);
  state_->setWordWrap(false);
  row->addWidget(name_);
  row->addWidget(state_);
  line_->setObjectName(QStringLiteral("line"));
  line_->setAccessibleName(tr("Line: a net or a pin"));
  line_->setPlaceholderText(tr("another line: net or pin   Ctrl+L"));
  line_->setToolTip(tr("Empty: the oddest pin's line"));
  keepRoomForHint(*line_, Growth::free);
  connect(line_, &QLineEdit::returnPressed, this, &FindPage::chooseLine);
  auto* go = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_L), this);
  go->setContext(Qt::WidgetWithChildrenShortcut);
  connect(go, &QShortcut::activated, this, [this] {
    line_->setFocus(Qt::ShortcutFocusReason);
    line_->selectAll();
  });
  row->addWidget(line_);
  return row;
}

QLayout* FindPage::probe() {
  auto* layout = new QVBoxLayout;
  auto* head = new QHBoxLayout;
  head->addWidget(due_, 1);
  head->addWidget(makeWhyButton());
  layout->addLayout(head);
  layout->addWidget(place_);
  layout->addWidget(lead_);
  layout->addWidget(effort_);
  // What is only read at the desk scrolls, so that it never pushes the next probe out of sight.
  auto* words = new QWidget(this);
  auto* said = new QVBoxLayout(words);
  said->setContentsMargins(0, 0, 0, 0);
  QFont warning = again_->font();
  warning.setBold(true);
  again_->setFont(warning);
  for (QLabel* label : {again_, reason_, unknown_})
    said->addWidget(label);
  said->addStretch(1);
  auto* scroll = new LowScrollArea(this);
  scroll->setObjectName(QStringLiteral("probeWords"));
  scroll->setAccessibleName(tr("Why this probe, and what is not known"));
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidget(words);
  scroll->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  scroll->setMinimumHeight(scroll->fontMetrics().lineSpacing() * 2);
  layout->addWidget(scroll, 1);
  return layout;
}

QLayout* FindPage::entry() {
  auto* row = new WrapLayout;
  field_->setAccessibleName(tr("Reading at the next probe"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers modifiers) { return command(key, modifiers); };
  connect(field_, &QLineEdit::returnPressed, this, [this] { typed(*field_); });
  row->addWidget(field_);
  overLimit_ = field_->keyButton(tr("OL"), Qt::Key_O);
  cannotReach_ = field_->keyButton(tr("Can't reach it"), Qt::Key_N);
  reachAll_ = field_->keyButton(tr("Reach all"), Qt::Key_N, Qt::ShiftModifier);
  comesAndGoes_ = field_->keyButton(tr("Comes and goes"), Qt::Key_I);
  for (QPushButton* button :
       {overLimit_, cannotReach_, field_->keyButton(tr("Undo"), Qt::Key_U), comesAndGoes_, reachAll_})
    row->addWidget(button);
  other_->setObjectName(QStringLiteral("otherReading"));
  other_->setAccessibleName(tr("Reading elsewhere: mode if another, point, value"));
  other_->setPlaceholderText(tr("elsewhere: J4.11 0.452   Tab"));
  keepRoomForHint(*other_, Growth::free);
  places_ = new QStandardItemModel(this);
  auto* completer = new PlaceCompleter(places_, this);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  completer->setMaxVisibleItems(12);
  other_->setCompleter(completer);
  connect(other_, &QLineEdit::returnPressed, this, [this] { typed(*other_); });
  row->addWidget(other_);
  return row;
}

QLayout* FindPage::suspectsBox() {
  auto* layout = new QVBoxLayout;
  connect(suspects_, &QListWidget::currentRowChanged, this, [this] { suspectChosen(); });
  // They scroll: what room there is they share with the tree.
  for (QWidget* part : std::initializer_list<QWidget*>{suspects_, explanation_})
    part->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
  suspects_->setMinimumHeight(suspects_->fontMetrics().lineSpacing() * 5);
  layout->addWidget(suspects_, 4);
  explanation_->setReadOnly(true);
  explanation_->setTabChangesFocus(true);
  explanation_->setObjectName(QStringLiteral("suspectExplanation"));
  explanation_->setAccessibleName(tr("Why it is suspected"));
  explanation_->setMinimumHeight(explanation_->fontMetrics().lineSpacing() * 4);
  explanation_->setVisible(why_);
  layout->addWidget(explanation_, 3);
  return layout;
}

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
    field_->setFocus();
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
    field_->setFocus();
  } else {
    field.selectAll();
  }
  run(done);
}

void FindPage::run(const Result<void>& done) {
  if (!done) Q_EMIT told(shown(done.error()), true);
}

void FindPage::arrive() {
  field_->setFocus();
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

void FindPage::setTheme(PictureTheme theme) {
  StationPage::setTheme(theme);
  suspects_->setTheme(theme);
  tree_->setTheme(theme);
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
    field_->setFocus();
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
  field_->setFocus();
}

} // namespace netmend
