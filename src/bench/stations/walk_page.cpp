#include "walk_page.h"

#include <algorithm>
#include <array>

#include <QComboBox>
#include <QFrame>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/reading_field.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/reading.h"

namespace netmend {

namespace {

constexpr std::array walkModes{ReadingMode::diode, ReadingMode::diodeReverse, ReadingMode::ohms,
                               ReadingMode::continuity, ReadingMode::volts};

} // namespace

WalkPage::WalkPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), band_(makeLabel(Letters::metre, QStringLiteral("whichBoard"), this)),
      other_(makePrompt(QString(), QKeySequence(Qt::Key_G), this)), part_(new QComboBox(this)),
      mode_(new QComboBox(this)), conditionBox_(new QFrame(this)), plugged_(new QLineEdit(this)),
      temperature_(new QLineEdit(this)), meter_(new QComboBox(this)), by_(new QLineEdit(this)),
      point_(makeLabel(Letters::point, QStringLiteral("duePoint"), this)),
      lead_(makeLabel(Letters::metre, QStringLiteral("dueLead"), this)),
      expected_(makeLabel(Letters::metre, QStringLiteral("dueExpected"), this)),
      connector_(new ConnectorView(this)), mark_(new VerdictMark(this)),
      verdict_(makeLabel(Letters::metre, QStringLiteral("verdict"), this)),
      explanation_(makeLabel(Letters::reading, QStringLiteral("explanation"), this)),
      field_(new ReadingField(tr("452  Enter"), Growth::none, QStringLiteral("reading"), this)),
      strip_(new StripView(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(head());
  layout->addWidget(condition());
  layout->addLayout(now(), 2);
  layout->addLayout(entry());
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(strip_);
  scroll->setMinimumHeight(130);
  layout->addWidget(scroll, 3);
  connect(&desk_.walk, &BenchWalk::changed, this, &WalkPage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &WalkPage::showParts);
  connect(&desk_.job, &BenchJob::jobOpened, this, &WalkPage::forgetAsked);
  for (const auto changed : {&BenchJob::jobChanged, &BenchJob::readingsChanged})
    connect(&desk_.job, changed, this, &WalkPage::refresh);
  showParts();
}

QLayout* WalkPage::head() {
  auto* row = new WrapLayout;
  band_->setWordWrap(false);
  row->addWidget(band_);
  connect(other_, &QPushButton::clicked, this, [this] { command(Qt::Key_G); });
  row->addWidget(other_);
  row->addWidget(field_->keyButton(tr("Condition, meter"), Qt::Key_C));
  part_->setAccessibleName(tr("What to walk"));
  part_->setObjectName(QStringLiteral("part"));
  connect(part_, &QComboBox::activated, this, [this] {
    forgetAsked();
    desk_.walk.setPart(PartId(part_->currentData().toULongLong()));
    field_->setFocus();
  });
  row->addWidget(part_);
  mode_->setAccessibleName(tr("Meter mode"));
  for (const ReadingMode mode : walkModes)
    mode_->addItem(shown(nameOf(mode)), static_cast<int>(mode));
  connect(mode_, &QComboBox::activated, this, [this] {
    run(desk_.walk.take(ModeChanged{static_cast<ReadingMode>(mode_->currentData().toInt())}));
    field_->setFocus();
  });
  row->addWidget(mode_);
  return row;
}

QWidget* WalkPage::condition() {
  conditionBox_->setFrameShape(QFrame::StyledPanel);
  auto* grid = new QGridLayout(conditionBox_);
  plugged_->setPlaceholderText(tr("nothing; or: battery, display"));
  temperature_->setPlaceholderText(QStringLiteral("25"));
  meter_->setObjectName(QStringLiteral("meter"));
  by_->setObjectName(QStringLiteral("measuredBy"));
  meter_->addItem(tr("not stated"), QString());
  for (const MeterProfile& meter : desk_.job.data().probing.meters)
    meter_->addItem(shown(dataPattern(meter.name)), QString::fromStdString(meter.id));
  meter_->setCurrentIndex(std::max(0, meter_->findData(QString::fromStdString(desk_.walk.meter()))));
  by_->setText(QString::fromStdString(desk_.walk.by()));
  by_->setPlaceholderText(tr("name or initials"));
  struct Question {
    QString text;
    QWidget* answer;
  };
  const std::array<Question, 4> questions{{{tr("Left &plugged in"), plugged_},
                                           {tr("Board at °C"), temperature_},
                                           {tr("M&eter"), meter_},
                                           {tr("Measured &by"), by_}}};
  for (int i = 0; i < 4; ++i) {
    const Question& each = questions.at(static_cast<std::size_t>(i));
    auto* label = new QLabel(each.text, conditionBox_);
    label->setBuddy(each.answer);
    grid->addWidget(label, i / 2, i % 2 * 2);
    grid->addWidget(each.answer, i / 2, i % 2 * 2 + 1);
  }
  grid->setColumnStretch(1, 2);
  grid->setColumnStretch(3, 1);
  for (QLineEdit* field : {plugged_, temperature_, by_})
    connect(field, &QLineEdit::returnPressed, this, &WalkPage::startWithCondition);
  connect(meter_, &QComboBox::currentIndexChanged, this, &WalkPage::keepWho);
  connect(by_, &QLineEdit::editingFinished, this, &WalkPage::keepWho);
  return conditionBox_;
}

void WalkPage::keepWho() {
  desk_.walk.setMeter(meter_->currentData().toString().toStdString());
  desk_.walk.setBy(by_->text().trimmed().toStdString());
}

void WalkPage::startWithCondition() {
  // What is not asked here, as parts that were lifted, stays as it is known.
  Condition condition = desk_.walk.walk().condition;
  condition.plugged.clear();
  condition.temperature.reset();
  for (const QString& name : plugged_->text().split(QLatin1Char(','), Qt::SkipEmptyParts))
    if (!name.trimmed().isEmpty()) condition.plugged.push_back(name.trimmed().toStdString());
  std::sort(condition.plugged.begin(), condition.plugged.end());
  if (!temperature_->text().trimmed().isEmpty()) {
    const auto value = parseReadingValue(temperature_->text().toStdString(), ReadingMode::temperature);
    if (!value || !value->value) {
      Q_EMIT told(tr("Not a temperature: %1").arg(temperature_->text()), true);
      return;
    }
    condition.temperature = Celsius(*value->value);
  }
  keepWho();
  conditionWanted_ = false;
  desk_.walk.setCondition(condition);
  field_->setFocus();
}

void WalkPage::askCondition() {
  conditionWanted_ = true;
  const Condition& known = desk_.walk.walk().condition;
  QStringList plugged;
  for (const std::string& name : known.plugged)
    plugged << QString::fromStdString(name);
  plugged_->setText(plugged.join(QStringLiteral(", ")));
  temperature_->setText(known.temperature ? QLocale().toString(known.temperature->value) : QString());
  refresh();
  plugged_->setFocus();
}

void WalkPage::forgetAsked() {
  if (!conditionWanted_) return;
  conditionWanted_ = false;
  plugged_->clear();
  temperature_->clear();
}

void WalkPage::conditionAsTyped() {
  keepWho();
  const bool said = !plugged_->text().trimmed().isEmpty() || !temperature_->text().trimmed().isEmpty();
  if (conditionWanted_ || (said && !desk_.walk.conditionKnown())) startWithCondition();
}

QLayout* WalkPage::now() {
  auto* words = new QVBoxLayout;
  words->addWidget(point_);
  words->addWidget(lead_);
  words->addWidget(expected_);
  words->addStretch(1);
  result_ = new QWidget(this);
  auto* result = new QHBoxLayout(result_);
  result->setContentsMargins(0, 0, 0, 0);
  result->addWidget(mark_);
  auto* said = new QVBoxLayout;
  said->addStretch(1);
  said->addWidget(verdict_);
  said->addWidget(explanation_);
  said->addStretch(1);
  result->addLayout(said, 1);
  result->addWidget(makeWhyButton());
  words_ = new QBoxLayout(QBoxLayout::TopToBottom);
  words_->addLayout(words, 1);
  words_->addWidget(result_, 1);
  now_ = new QBoxLayout(QBoxLayout::LeftToRight);
  now_->addLayout(words_, 3);
  connector_->onPin = [this](std::size_t pin) { desk_.walk.goTo(pin); };
  now_->addWidget(connector_, 2);
  return now_;
}

/// A long connector has a row of its own, with words and verdict side by side above it; any other stands
/// beside them.
void WalkPage::arrangeNow() {
  const bool below = connector_->isLong();
  now_->setDirection(below ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
  words_->setDirection(below ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

QLayout* WalkPage::entry() {
  auto* row = new WrapLayout;
  field_->setAccessibleName(tr("Reading"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers) { return command(key); };
  connect(field_, &QLineEdit::returnPressed, this, &WalkPage::typed);
  row->addWidget(field_);
  row->addWidget(field_->keyButton(tr("OL"), Qt::Key_O));
  row->addWidget(field_->keyButton(tr("Skip"), Qt::Key_S));
  row->addWidget(field_->keyButton(tr("Back"), Qt::Key_B));
  row->addWidget(field_->keyButton(tr("Undo"), Qt::Key_U));
  shift_ = field_->keyButton(tr("Move by one pin"), Qt::Key_X);
  row->addWidget(shift_);
  again_ = field_->keyButton(tr("Comes and goes"), Qt::Key_I);
  row->addWidget(again_);
  row->addWidget(field_->keyButton(tr("Turn picture"), Qt::Key_R));
  row->addWidget(field_->keyButton(tr("Mirror"), Qt::Key_M));
  keep_ = field_->keyButton(tr("Keep this good walk"), Qt::Key_K);
  row->addWidget(keep_);
  return row;
}

bool WalkPage::command(int key) {
  switch (key) {
  case Qt::Key_O:
    conditionAsTyped();
    run(desk_.walk.take(ValueTaken{}));
    return true;
  case Qt::Key_S:
    run(desk_.walk.take(PointSkipped{}));
    return true;
  case Qt::Key_B:
    run(desk_.walk.take(StepBack{}));
    return true;
  case Qt::Key_U:
    undo();
    return true;
  case Qt::Key_C:
    askCondition();
    return true;
  case Qt::Key_I:
    sayComesAndGoes();
    return true;
  case Qt::Key_G:
    forgetAsked();
    desk_.walk.setGood(!desk_.walk.good());
    return true;
  case Qt::Key_K:
    keep();
    return true;
  case Qt::Key_H:
    Q_EMIT sayAgain();
    return true;
  case Qt::Key_R:
    connector_->turn();
    arrangeNow();
    return true;
  case Qt::Key_M:
    connector_->mirror();
    return true;
  case Qt::Key_X:
    if (!desk_.walk.shift()) return false;
    run(desk_.walk.moveShifted());
    return true;
  case Qt::Key_Space:
    Q_EMIT takeNow();
    return true;
  default:
    return false;
  }
}

void WalkPage::keep() {
  if (desk_.walk.good() && desk_.walk.keepGood())
    Q_EMIT told(tr("Kept for all jobs on this board; Undo takes it back"), false);
}

void WalkPage::typed() {
  if (field_->text().trimmed().isEmpty()) return;
  conditionAsTyped();
  const auto done = desk_.walk.type(field_->text().trimmed().toStdString());
  if (done) field_->clear();
  if (!done) field_->selectAll();
  run(done);
}

void WalkPage::run(const Result<void>& done) {
  if (!done) Q_EMIT told(shown(done.error()), true);
}

void WalkPage::arrive() {
  // The condition stands above, one Tab away: a first value typed there would be taken for what is plugged
  // in.
  field_->setFocus();
}

void WalkPage::accept(const ReadingEvent& event) {
  // What was half typed was meant for this point, not for the next one.
  field_->clear();
  conditionAsTyped();
  run(desk_.walk.take(event));
}

void WalkPage::pinChosen(PinId pin) {
  const auto points = desk_.walk.points();
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].point.pin == pin) {
      desk_.walk.goTo(i);
      return;
    }
  // A pin of another part: that one is walked from there.
  const BoardUnderWork* board = desk_.job.board();
  const Pin* found = board != nullptr ? board->board->pins.find(pin) : nullptr;
  if (found == nullptr || !found->part) return;
  desk_.walk.setPart(found->part);
  const auto others = desk_.walk.points();
  for (std::size_t i = 0; i < others.size(); ++i)
    if (others[i].point.pin == pin) desk_.walk.goTo(i);
}

void WalkPage::setTheme(PictureTheme theme) {
  StationPage::setTheme(theme);
  connector_->setTheme(theme);
  mark_->setTheme(theme);
  strip_->setTheme(theme);
}

void WalkPage::showParts() {
  filling_ = true;
  part_->clear();
  if (const BoardUnderWork* board = desk_.job.board())
    for (const PartId id : desk_.walk.partsToWalk()) {
      const Part* part = board->board->parts.find(id);
      part_->addItem(tr("%1, %n pin(s)", nullptr, static_cast<int>(board->lookup->pinsOf(id).size()))
                         .arg(QString::fromStdString(part->reference)),
                     QVariant::fromValue<qulonglong>(id.value));
    }
  filling_ = false;
  refresh();
}

} // namespace netmend
