#include <QCompleter>
#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QShortcut>
#include <QStandardItemModel>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/reading_field.h"
#include "find_page.h"
#include "odd_pins.h"
#include "others_row.h"

/// How the Find station is laid out, and what goes where room is short.
namespace netmend {

namespace {

constexpr double leastForTree = 560; ///< of the page's height, pixels at 100 %
constexpr double leastForList = 420;

/// Found by name or by handle; what is picked is typed as its handle.
class PlaceCompleter : public QCompleter {
public:
  using QCompleter::QCompleter;
  [[nodiscard]] QString pathFromIndex(const QModelIndex& index) const override {
    return index.data(Qt::UserRole).toString() + QLatin1Char(' ');
  }
};

/// Asks for no room across: the column decides, and the words wrap.
void yieldWidth(QLabel& label) {
  label.setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  label.setMinimumWidth(1);
}

} // namespace

FindPage::FindPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), strip_(new OddStrip(this)),
      anotherLine_(makePrompt(tr("Another line"), QKeySequence(Qt::CTRL | Qt::Key_L), this)),
      line_(new QLineEdit(this)), name_(makeLabel(Letters::reading, QStringLiteral("lineName"), this)),
      due_(makeLabel(Letters::reading, QStringLiteral("probeHead"), this)),
      place_(makeLabel(Letters::point, QStringLiteral("probePlace"), this)),
      lead_(makeLabel(Letters::reading, QStringLiteral("probeLead"), this)),
      reason_(makeLabel(Letters::reading, QStringLiteral("probeReason"), this)),
      again_(makeLabel(Letters::reading, QStringLiteral("takeAgain"), this)),
      unknown_(makeLabel(Letters::small, QStringLiteral("notKnown"), this)),
      field_(new ReadingField(tr("452  Enter"), Growth::free, QStringLiteral("reading"), this)),
      figure_(new MeterFigure(field_, this)), answers_(new AnswersView(this)), other_(new QLineEdit(this)),
      keys_(new QWidget(this)), suspects_(new SuspectList(this)), explanation_(new QPlainTextEdit(this)),
      selected_(makeLabel(Letters::small, QStringLiteral("selected"), this)), tree_(new LineTreeView(this)) {
  auto* layout = new QVBoxLayout(this);
  makeStrip();
  makeKeys();
  layout->addWidget(strip_);
  auto* card = makeCard(this);
  auto* inside = new QVBoxLayout(card);
  inside->setContentsMargins(0, 0, 0, 0);
  inside->setSpacing(0);
  auto* head = new QHBoxLayout;
  head->setObjectName(QStringLiteral("head"));
  head->addLayout(probe(), 1);
  head->addWidget(makeRule(Qt::Vertical, card));
  head->addLayout(meter(), 1);
  inside->addLayout(head);
  lower_ = lower();
  inside->addWidget(lower_, 1);
  layout->addWidget(card, 1);
  connectDesk();
  listLines();
  refresh();
}

void FindPage::connectDesk() {
  for (QLineEdit* field : std::initializer_list<QLineEdit*>{field_, other_, line_})
    field->installEventFilter(this);
  strip_->onChosen = [this](std::size_t i) {
    chooseOddPin(desk_, strip_->pins()[i]);
    field_->setFocus();
  };
  tree_->onSelected = [this] { treeSelected(); };
  tree_->onUnfold = [this](std::size_t key) {
    unfolded_.insert(key);
    showTree();
  };
  connect(&desk_.fault, &BenchFault::changed, this, &FindPage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &FindPage::listLines);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &FindPage::showTree);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &FindPage::showProbe);
  connect(&desk_.job, &BenchJob::readingsChanged, this, &FindPage::nameLine);
}

void FindPage::makeStrip() {
  line_->setObjectName(QStringLiteral("line"));
  line_->setAccessibleName(tr("Line: a net or a pin"));
  line_->setPlaceholderText(tr("net or pin   Enter"));
  line_->setToolTip(tr("Empty: the oddest pin's line"));
  keepRoomForHint(*line_, Growth::free);
  line_->hide();
  connect(line_, &QLineEdit::returnPressed, this, &FindPage::chooseLine);
  connect(anotherLine_, &QPushButton::clicked, this, &FindPage::openLine);
  auto* go = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_L), this);
  go->setContext(Qt::WidgetWithChildrenShortcut);
  connect(go, &QShortcut::activated, this, &FindPage::openLine);
  name_->setWordWrap(false);
  setQuiet(*name_);
  strip_->addRight(anotherLine_);
  strip_->addRight(line_);
  strip_->addRight(name_);
}

void FindPage::makeKeys() {
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins(0, 0, 0, 0);
  field_->setAccessibleName(tr("Reading at the next probe"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers modifiers) { return command(key, modifiers); };
  connect(field_, &QLineEdit::returnPressed, this, [this] { typed(*field_); });
  overLimit_ = field_->keyButton(tr("OL"), Qt::Key_O);
  cannotReach_ = field_->keyButton(tr("Can't reach it"), Qt::Key_N);
  reachAll_ = field_->keyButton(tr("Reach all"), Qt::Key_N, Qt::ShiftModifier);
  comesAndGoes_ = field_->keyButton(tr("Comes and goes"), Qt::Key_I);
  auto* elsewhere = makePrompt(tr("Elsewhere"), QKeySequence(Qt::Key_Tab), keys_);
  connect(elsewhere, &QPushButton::clicked, this, &FindPage::openOther);
  for (QPushButton* button : {overLimit_, cannotReach_, reachAll_, comesAndGoes_, elsewhere,
                              field_->keyButton(tr("Undo"), Qt::Key_U)})
    row->addWidget(button);
  keys_->hide(); // the window's foot shows them
}

QLayout* FindPage::probe() {
  auto* layout = new QVBoxLayout;
  layout->setObjectName(QStringLiteral("probe"));
  layout->setSpacing(scaled(4));
  for (QLabel* label : {due_, place_, lead_, reason_, again_}) {
    yieldWidth(*label);
    layout->addWidget(label);
  }
  setQuiet(*due_);
  setQuiet(*lead_);
  setLetters(*again_, Letters::reading, true);
  layout->addStretch(1);
  return layout;
}

QLayout* FindPage::meter() {
  auto* layout = new QVBoxLayout;
  layout->setObjectName(QStringLiteral("meter"));
  layout->setSpacing(scaled(4));
  layout->addWidget(figure_);
  layout->addWidget(answers_);
  other_->setObjectName(QStringLiteral("otherReading"));
  other_->setAccessibleName(tr("Reading elsewhere: mode if another, point, value"));
  other_->setPlaceholderText(tr("elsewhere: J4.11 0.452"));
  other_->hide();
  places_ = new QStandardItemModel(this);
  auto* completer = new PlaceCompleter(places_, this);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  completer->setMaxVisibleItems(12);
  other_->setCompleter(completer);
  connect(other_, &QLineEdit::returnPressed, this, [this] { typed(*other_); });
  layout->addWidget(other_);
  layout->addStretch(1);
  return layout;
}

QWidget* FindPage::lower() {
  auto* all = new QWidget(this);
  auto* layout = new QVBoxLayout(all);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(makeRule(Qt::Horizontal, all));
  connect(suspects_, &QListWidget::currentRowChanged, this, [this] { suspectChosen(); });
  layout->addWidget(suspects_);
  others_ = new OthersRow(all);
  all_ = makePrompt(tr("All"), QKeySequence(Qt::Key_V), all);
  all_->setObjectName(QStringLiteral("allSuspects"));
  all_->setCheckable(true);
  connect(all_, &QPushButton::clicked, this, [this] { setAll(!listAll_); });
  for (QWidget* button : std::initializer_list<QWidget*>{all_, makeWhyButton()})
    others_->add(button);
  layout->addWidget(others_);
  below_ = new QWidget(all);
  auto* below = new QVBoxLayout(below_);
  below->setContentsMargins(0, 0, 0, 0);
  below->setSpacing(0);
  below->addWidget(makeRule(Qt::Horizontal, below_));
  explanation_->setReadOnly(true);
  explanation_->setTabChangesFocus(true);
  explanation_->setObjectName(QStringLiteral("suspectExplanation"));
  explanation_->setAccessibleName(tr("Why this probe, and why the suspect is one"));
  explanation_->setMinimumHeight(1);
  explanation_->setFrameShape(QFrame::NoFrame);
  explanation_->setVisible(why_);
  below->addWidget(explanation_, 3);
  below->addWidget(tree_, 2);
  for (QLabel* label : {selected_, unknown_}) {
    yieldWidth(*label);
    setQuiet(*label);
    label->setContentsMargins(scaled(face::margin), 0, scaled(face::margin), scaled(4));
    below->addWidget(label);
  }
  layout->addWidget(below_, 1);
  return all;
}

void FindPage::setAll(bool all) {
  listAll_ = all;
  all_->setChecked(all);
  showSuspects();
}

/// The due point, the field and the keys stay; then suspects, then the tree, then what is said of them.
void FindPage::share() {
  const int edge = scaled(face::margin);
  layout()->setContentsMargins(edge, scaled(face::grid), scaled(face::grid), scaled(face::grid * 2));
  layout()->setSpacing(scaled(face::grid * 2));
  for (const char* name : {"probe", "meter"})
    if (auto* column = findChild<QLayout*>(QString::fromLatin1(name)))
      column->setContentsMargins(edge, scaled(face::grid), scaled(face::grid), scaled(face::grid));
  explanation_->document()->setDocumentMargin(scaled(face::grid * 2));
  const double room = height() / faceScale();
  const bool anything = shown_ != nullptr;
  lower_->setVisible(anything && room >= leastForList);
  below_->setVisible(!listAll_ && (room >= leastForTree));
  answers_->setVisible(!answers_->rows().empty() && room >= leastForList);
  tree_->setVisible(!tree_->tree().nodes.empty() && (!why_ || room >= leastForTree + 120));
  const int rows = suspects_->wantedHeight();
  suspects_->setMinimumHeight(listAll_ ? scaled(suspectRowHeight) : rows);
  suspects_->setMaximumHeight(listAll_ ? QWIDGETSIZE_MAX : rows);
  suspects_->setVerticalScrollBarPolicy(listAll_ ? Qt::ScrollBarAsNeeded : Qt::ScrollBarAlwaysOff);
  // The place in the largest letters in which it stands in one line.
  const int width = std::max(1, place_->width());
  for (const Letters letters : {Letters::point, Letters::large, Letters::metre}) {
    const QFont font = lettersFont(letters, true);
    const bool fits = QFontMetrics(font).horizontalAdvance(place_->text()) <= width;
    if (!fits && letters != Letters::metre) continue;
    if (place_->font() != font) setLetters(*place_, letters, true);
    break;
  }
}

void FindPage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  share();
}

void FindPage::changeEvent(QEvent* event) {
  StationPage::changeEvent(event);
  if (event->type() == QEvent::ApplicationFontChange && layout() != nullptr) share();
}

} // namespace netmend
