#include <algorithm>

#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/reading_field.h"
#include "netmend/casework/step_check.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/reading.h"
#include "netmend/words/step.h"
#include "step_words.h"
#include "steps_view.h"

/// What the work steps look like; what is done there is in steps_view.cpp.
namespace netmend {

namespace {

constexpr int stepRowHeight = 38;     ///< pixels at 100 %
constexpr int stepsBefore = 3;        ///< steps shown that are done
constexpr double leastForRows = 430;  ///< of the view's height, pixels at 100 %
constexpr double leastForWords = 330; ///< for what is only read at the desk
constexpr int signRole = Qt::UserRole;
constexpr int readRole = Qt::UserRole + 1;

/// Sign, number, words, and at the right what it must read or did.
class StepDelegate : public QStyledItemDelegate {
public:
  using QStyledItemDelegate::QStyledItemDelegate;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
    return {scaled(200), scaled(stepRowHeight)};
  }
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FaceColors& colors = faceColors(faceTheme());
    const bool due = (option.state & QStyle::State_Selected) != 0;
    const QString sign = index.data(signRole).toString();
    if (due) painter->fillRect(option.rect, colors.accentTint);
    painter->fillRect(QRect(option.rect.left(), option.rect.top(), option.rect.width(), 1), colors.line);
    int x = option.rect.left() + scaled(face::margin);
    const auto write = [&](const QString& text, int width, int align, const QColor& ink, bool bold) {
      painter->setFont(lettersFont(Letters::reading, bold));
      painter->setPen(ink);
      painter->drawText(QRect(x, option.rect.top(), width, option.rect.height()), align | Qt::AlignVCenter,
                        painter->fontMetrics().elidedText(text, Qt::ElideRight, width));
    };
    write(due ? QStringLiteral("▸") : sign, scaled(24), Qt::AlignLeft, due ? colors.accent : colors.ink,
          true);
    x += scaled(28);
    write(QString::number(index.row() + 1), scaled(30), Qt::AlignRight, colors.quiet, due);
    x += scaled(46);
    const QString read = index.data(readRole).toString();
    const int right = option.rect.right() - scaled(face::margin);
    const QFontMetrics metrics(lettersFont(Letters::reading, due));
    const int wanted = read.isEmpty() ? 0 : metrics.horizontalAdvance(read) + scaled(24);
    const int side = std::min(wanted, (right - x) / 2);
    const bool done = sign != QStringLiteral("☐");
    write(index.data(Qt::DisplayRole).toString(), right - x - side, Qt::AlignLeft,
          done && !due ? colors.quiet : colors.ink, due);
    if (side == 0) return;
    x = right - side + scaled(16);
    write(read, side - scaled(16), Qt::AlignRight, due ? colors.ink : colors.quiet, due);
  }
};

void yieldAcross(QLabel& label) {
  label.setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  label.setMinimumWidth(1);
}

TickState tickStateOf(const WorkStep& step) {
  const bool wrong = step.read && step.read->outcome == StepOutcome::disagrees;
  if (step.done) return wrong ? TickState::overruled : TickState::done;
  return wrong ? TickState::failed : TickState::open;
}

} // namespace

StepsView::StepsView(Desk desk, QWidget* parent)
    : QWidget(parent), desk_(desk), ticks_(new StepTicks(this)),
      number_(makeLabel(Letters::reading, QStringLiteral("stepNumber"), this)),
      due_(makeLabel(Letters::large, QStringLiteral("dueStep"), this)),
      must_(makeLabel(Letters::point, QStringLiteral("mustFigure"), this)),
      unit_(makeLabel(Letters::metre, QStringLiteral("mustUnit"), this)),
      mustWord_(makeLabel(Letters::reading, QStringLiteral("mustRead"), this)),
      note_(makeLabel(Letters::reading, QStringLiteral("stepNote"), this)),
      stopped_(makeLabel(Letters::reading, QStringLiteral("stopped"), this)),
      otherwise_(makeLabel(Letters::reading, QStringLiteral("otherwise"), this)),
      // Whatever the buttons beside it are called, a reading and what the field asks for can be read in it.
      field_(new ReadingField(tr("reading  Enter"), Growth::free, QStringLiteral("stepReading"), this)),
      figure_(new MeterFigure(field_, this)), reason_(new QLineEdit(this)), keys_(new QWidget(this)),
      steps_(new QListWidget(this)),
      cautions_(makeLabel(Letters::reading, QStringLiteral("cautions"), this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  auto* card = makeCard(this);
  layout->addWidget(card);
  auto* column = new QVBoxLayout(card);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  makeKeys();
  column->addLayout(head());
  column->addWidget(rows(), 1);
  refresh();
}

void StepsView::makeKeys() {
  auto* row = new QHBoxLayout(keys_);
  row->setContentsMargins(0, 0, 0, 0);
  field_->setAccessibleName(tr("Reading or note of this step"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers modifiers) { return command(key, modifiers); };
  connect(field_, &QLineEdit::returnPressed, this, &StepsView::typed);
  tick_ = field_->keyButton(tr("Tick"), Qt::Key_Space);
  overLimit_ = field_->keyButton(tr("OL"), Qt::Key_O);
  overrule_ = field_->keyButton(tr("Overrule"), Qt::Key_O, Qt::ShiftModifier);
  overrule_->setObjectName(QStringLiteral("overrule"));
  QPushButton* other = makePrompt(tr("Another repair"), QKeySequence(Qt::Key_N), this);
  connect(other, &QPushButton::clicked, this, &StepsView::otherWanted);
  for (QPushButton* button : {tick_, overLimit_, field_->keyButton(tr("Step before"), Qt::Key_B), overrule_,
                              other, field_->keyButton(tr("Undo"), Qt::Key_U)})
    row->addWidget(button);
  keys_->hide(); // the window's foot shows them
  reason_->setObjectName(QStringLiteral("overruleReason"));
  reason_->setPlaceholderText(tr("why it is overruled   Enter"));
  reason_->setAccessibleName(tr("Reason for overruling this check"));
  reason_->installEventFilter(this);
  reason_->hide();
  connect(reason_, &QLineEdit::returnPressed, this, &StepsView::overruled);
}

QLayout* StepsView::head() {
  auto* layout = new QVBoxLayout;
  layout->setObjectName(QStringLiteral("stepHead"));
  ticks_->onStep = [this](std::size_t step) {
    if (step < static_cast<std::size_t>(steps_->count())) steps_->setCurrentRow(static_cast<int>(step));
    field_->setFocus();
  };
  layout->addWidget(ticks_);
  setLetters(*due_, Letters::large, true);
  setQuiet(*number_);
  for (QLabel* label : {number_, due_, note_}) {
    yieldAcross(*label);
    layout->addWidget(label);
  }
  auto* columns = new QHBoxLayout;
  columns->setObjectName(QStringLiteral("stepColumns"));
  auto* left = new QVBoxLayout;
  left->setSpacing(scaled(2));
  auto* figure = new QHBoxLayout;
  figure->setSpacing(scaled(face::grid));
  must_->setWordWrap(false);
  unit_->setWordWrap(false);
  figure->addWidget(must_);
  figure->addWidget(unit_, 1, Qt::AlignBottom | Qt::AlignLeft);
  left->addLayout(figure);
  yieldAcross(*mustWord_);
  left->addWidget(mustWord_);
  setQuiet(*mustWord_);
  left->addStretch(1);
  columns->addLayout(left, 6);
  columns->addWidget(makeRule(Qt::Vertical, this));
  columns->addLayout(meter(), 5);
  layout->addLayout(columns);
  return layout;
}

QLayout* StepsView::meter() {
  auto* right = new QVBoxLayout;
  right->setSpacing(scaled(4));
  right->addWidget(figure_);
  setLetters(*stopped_, Letters::reading, true);
  setOdd(*stopped_, true);
  for (QLabel* label : {stopped_, otherwise_}) {
    yieldAcross(*label);
    right->addWidget(label);
  }
  right->addWidget(reason_);
  right->addStretch(1);
  return right;
}

QWidget* StepsView::rows() {
  auto* box = new QWidget(this);
  auto* column = new QVBoxLayout(box);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  steps_->setAccessibleName(tr("Steps"));
  steps_->setObjectName(QStringLiteral("steps"));
  steps_->setItemDelegate(new StepDelegate(steps_));
  steps_->setFrameShape(QFrame::NoFrame);
  steps_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  steps_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  steps_->viewport()->setAutoFillBackground(false);
  steps_->setMinimumHeight(1);
  steps_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
  steps_->installEventFilter(this);
  connect(steps_, &QListWidget::currentRowChanged, this, [this](int row) {
    if (filling_ || row < 0) return;
    step_ = static_cast<std::size_t>(row);
    showRows();
    showDue();
  });
  column->addWidget(steps_, 1);
  cautions_->setAccessibleName(tr("Cautions"));
  yieldAcross(*cautions_);
  column->addWidget(cautions_);
  return box;
}

void StepsView::showSteps() {
  const RepairAction* chosen = action();
  filling_ = true;
  steps_->clear();
  std::vector<TickState> ticks;
  if (chosen != nullptr) {
    for (std::size_t i = 0; i < chosen->steps.size(); ++i) {
      const WorkStep& each = chosen->steps[i];
      const TickState state = tickStateOf(each);
      ticks.push_back(i == step_ && state == TickState::open ? TickState::due : state);
      const QString text = besidePicture(stepSaid(each, *chosen));
      auto* item = new QListWidgetItem(text, steps_);
      item->setData(signRole, each.done                    ? QStringLiteral("✓")
                              : state == TickState::failed ? QStringLiteral("!")
                                                           : QStringLiteral("☐"));
      const Said note = noteSaid(each);
      item->setData(readRole, note.empty() ? mustFigure(each) : besidePicture(note));
      item->setToolTip(text);
      item->setData(Qt::AccessibleTextRole, (each.done ? tr("done: %1") : tr("open: %1")).arg(text));
    }
    if (step_ < chosen->steps.size()) steps_->setCurrentRow(static_cast<int>(step_));
  }
  filling_ = false;
  ticks_->setStates(std::move(ticks));
  showRows();
  showDue();
}

/// A few steps before the due one, and after it as many as there is room for.
void StepsView::showRows() {
  const int count = steps_->count();
  const int room = std::max(1, steps_->height() / std::max(1, scaled(stepRowHeight)));
  const int now = std::clamp(static_cast<int>(step_), 0, std::max(0, count - 1));
  const int first = std::clamp(now - std::min(stepsBefore, (room - 1) / 2), 0, std::max(0, count - room));
  for (int i = 0; i < count; ++i)
    steps_->setRowHidden(i, i < first || i >= first + room);
}

void StepsView::showMust(const WorkStep& now, const RepairAction& chosen) {
  const QString figure = mustFigure(now);
  // The unit needs no eye from two metres.
  const qsizetype space = figure.lastIndexOf(QLatin1Char(' '));
  must_->setText(space < 0 ? figure : figure.left(space));
  unit_->setText(space < 0 ? QString() : figure.mid(space + 1));
  const QString words =
      now.check ? tr("Must be: %1").arg(besidePicture(expectedSaid(now, chosen))) : QString();
  QStringList lines{words};
  if (const QString leads = leadsOf(now); !leads.isEmpty()) lines << leads;
  lines.removeAll(QString());
  mustWord_->setText(lines.join(QLatin1Char('\n')));
  setLetters(*mustWord_, figure.isEmpty() ? Letters::metre : Letters::reading);
  const bool wrong = stoppedAt(chosen) == step_;
  stopped_->setText(wrong ? tr("%1. Stop: repeat it, or overrule it with a reason (Shift+O)")
                                .arg(besidePicture(readSaid(*now.read, now.measure->mode)))
                          : QString());
  const Said otherwise = otherwiseSaid(now, chosen);
  otherwise_->setText(otherwise.empty() ? QString() : besidePicture(otherwise));
}

void StepsView::showDue() {
  const RepairAction* chosen = action();
  const WorkStep* now = step();
  field_->setEnabled(chosen != nullptr); // its keys are needed after the last step, too
  for (QLabel* label : {number_, must_, unit_, mustWord_, note_, stopped_, otherwise_, cautions_})
    label->clear();
  const bool measures = now != nullptr && now->measure;
  tick_->setVisible(!measures || !now->measure->comparable());
  overLimit_->setVisible(measures);
  const bool failed = chosen != nullptr && stoppedAt(*chosen);
  overrule_->setVisible(measures || failed);
  overrule_->setEnabled(failed);
  if (!failed) reason_->hide();
  if (chosen == nullptr || now == nullptr) {
    due_->setText(chosen == nullptr ? tr("No repair chosen yet") : tr("All steps are done"));
    mustWord_->setText(chosen == nullptr ? QString() : tr("Now prove that it holds: the next station"));
  } else {
    number_->setText(tr("%1: step %2 of %3%4")
                         .arg(QString::fromStdString(chosen->target))
                         .arg(step_ + 1)
                         .arg(chosen->steps.size())
                         .arg(now->done ? tr(", done") : QString()));
    due_->setText(besidePicture(stepSaid(*now, *chosen)));
    showMust(*now, *chosen);
    QStringList rest;
    if (const Said detail = detailSaid(*now, *chosen); !detail.empty()) rest << besidePicture(detail);
    if (const Said note = noteSaid(*now); !note.empty() && stoppedAt(*chosen) != step_)
      rest << tr("Noted: %1").arg(besidePicture(note));
    note_->setText(rest.join(QLatin1Char(' ')));
    field_->setPlaceholderText(now->measure ? tr("reading  Enter") : tr("note  Enter"));
    figure_->setCaption(measures ? shown(nameOf(now->measure->mode)) : QString());
    QStringList lines;
    if (step_ == 0)
      for (const std::string& caution : desk_.job.data().work.cautions)
        lines << shown(dataPattern(caution));
    if (!lines.isEmpty()) cautions_->setText(QStringLiteral("⚠ ") + lines.join(QStringLiteral(". ")));
  }
  share();
  Q_EMIT dueChanged();
}

/// The due step, its figure and the reading stay; first the other steps go, then words.
void StepsView::share() {
  const double room = height() / faceScale();
  const int edge = scaled(face::margin);
  if (auto* head = findChild<QLayout*>(QStringLiteral("stepHead"))) {
    head->setContentsMargins(edge, scaled(12), edge, scaled(8));
    head->setSpacing(scaled(6));
  }
  if (auto* columns = findChild<QLayout*>(QStringLiteral("stepColumns"))) columns->setSpacing(edge);
  cautions_->setContentsMargins(edge, scaled(4), edge, scaled(8));
  for (QLabel* label : {number_, note_, otherwise_, cautions_})
    label->setVisible(!label->text().isEmpty() && room >= leastForWords);
  for (QLabel* label : {must_, unit_, mustWord_, stopped_})
    label->setVisible(!label->text().isEmpty());
  steps_->setVisible(steps_->count() > 0 && room >= leastForRows);
  // A long sentence in smaller letters: cut off it would say nothing.
  const bool low = room < leastForWords;
  mustWord_->setMinimumWidth(width() * 2 / 5); // beside the reading, whose field takes what it gets
  fitLetters(*due_, scaled(low ? 56 : 82), {Letters::large, Letters::metre, Letters::reading}, true);
  if (low && !must_->text().isEmpty()) mustWord_->hide();
  if (must_->text().isEmpty())
    fitLetters(*mustWord_, scaled(72), {Letters::metre, Letters::reading, Letters::small});
  const int forFigure = std::max(1, width() * 6 / 11 - scaled(60 + 2 * face::margin));
  for (const Letters letters : {Letters::point, Letters::large, Letters::metre}) {
    const QFont font = lettersFont(letters, true);
    const bool fits = QFontMetrics(font).horizontalAdvance(must_->text()) <= forFigure;
    if (!fits && letters != Letters::metre) continue;
    if (must_->font() != font) setLetters(*must_, letters, true);
    break;
  }
}

void StepsView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  share();
  showRows();
}

void StepsView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::ApplicationFontChange && layout() != nullptr) {
    share();
    showRows();
  }
}

} // namespace netmend
