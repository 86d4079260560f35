#include "netmend/bench/stations/walk_page.h"

#include <algorithm>
#include <array>

#include <QComboBox>
#include <QFrame>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "connector_lie.h"
#include "netmend/bench/widgets/letters.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"

namespace netmend {

namespace {

constexpr std::array walkModes{ReadingMode::diode, ReadingMode::diodeReverse, ReadingMode::ohms,
                               ReadingMode::continuity, ReadingMode::volts};

} // namespace

WalkPage::WalkPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), band_(makeLabel(Letters::metre, QStringLiteral("whichBoard"), this)),
      other_(makeButton(QString(), QKeySequence(), this)), part_(new QComboBox(this)),
      mode_(new QComboBox(this)), conditionBox_(new QFrame(this)), plugged_(new QLineEdit(this)),
      temperature_(new QLineEdit(this)), point_(makeLabel(Letters::point, QStringLiteral("duePoint"), this)),
      lead_(makeLabel(Letters::metre, QStringLiteral("dueLead"), this)),
      expected_(makeLabel(Letters::metre, QStringLiteral("dueExpected"), this)),
      connector_(new ConnectorView(this)), mark_(new VerdictMark(this)),
      verdict_(makeLabel(Letters::metre, QStringLiteral("verdict"), this)),
      explanation_(makeLabel(Letters::reading, QStringLiteral("explanation"), this)),
      field_(new QLineEdit(this)), keep_(makeButton(tr("Keep this good walk"), QKeySequence(), this)),
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
  scroll->setMinimumHeight(170);
  layout->addWidget(scroll, 3);
  field_->installEventFilter(this);
  connect(&desk_.walk, &BenchWalk::changed, this, &WalkPage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &WalkPage::showParts);
  connect(&desk_.job, &BenchJob::jobChanged, this, &WalkPage::refresh);
  showParts();
}

QLayout* WalkPage::head() {
  auto* row = new QHBoxLayout;
  band_->setWordWrap(false);
  row->addWidget(band_);
  connect(other_, &QPushButton::clicked, this, [this] { desk_.walk.setGood(!desk_.walk.good()); });
  row->addWidget(other_);
  row->addStretch(1);
  part_->setAccessibleName(tr("What to walk"));
  part_->setObjectName(QStringLiteral("part"));
  connect(part_, &QComboBox::activated, this, [this] {
    desk_.walk.setPart(PartId(part_->currentData().toULongLong()));
    field_->setFocus();
  });
  row->addWidget(part_);
  mode_->setAccessibleName(tr("Meter mode"));
  for (const ReadingMode mode : walkModes)
    mode_->addItem(shown(word(mode)), static_cast<int>(mode));
  connect(mode_, &QComboBox::activated, this, [this] {
    run(desk_.walk.take(ModeChanged{static_cast<ReadingMode>(mode_->currentData().toInt())}));
    Q_EMIT modeWanted();
    field_->setFocus();
  });
  row->addWidget(mode_);
  return row;
}

QWidget* WalkPage::condition() {
  conditionBox_->setFrameShape(QFrame::StyledPanel);
  auto* row = new QHBoxLayout(conditionBox_);
  auto* pluggedLabel = new QLabel(tr("Left &plugged in"), this);
  pluggedLabel->setBuddy(plugged_);
  plugged_->setPlaceholderText(tr("nothing; or: battery, display"));
  auto* temperatureLabel = new QLabel(tr("Board at °C"), this);
  temperatureLabel->setBuddy(temperature_);
  temperatureLabel->setBuddy(temperature_);
  temperature_->setPlaceholderText(QStringLiteral("25"));
  temperature_->setMaximumWidth(90);
  row->addWidget(pluggedLabel);
  row->addWidget(plugged_, 1);
  row->addWidget(temperatureLabel);
  row->addWidget(temperature_);
  for (QLineEdit* field : {plugged_, temperature_})
    connect(field, &QLineEdit::returnPressed, this, &WalkPage::startWithCondition);
  return conditionBox_;
}

void WalkPage::startWithCondition() {
  Condition condition;
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
  desk_.walk.setCondition(condition);
  field_->setFocus();
}

void WalkPage::conditionAsTyped() {
  const bool said = !plugged_->text().trimmed().isEmpty() || !temperature_->text().trimmed().isEmpty();
  if (said && !desk_.walk.conditionKnown()) startWithCondition();
}

QLayout* WalkPage::now() {
  auto* row = new QHBoxLayout;
  auto* words = new QVBoxLayout;
  words->addWidget(point_);
  words->addWidget(lead_);
  words->addWidget(expected_);
  words->addStretch(1);
  auto* result = new QHBoxLayout;
  result->addWidget(mark_);
  auto* said = new QVBoxLayout;
  said->addWidget(verdict_);
  said->addWidget(explanation_);
  result->addLayout(said, 1);
  words->addLayout(result);
  row->addLayout(words, 3);
  connector_->onPin = [this](std::size_t pin) { desk_.walk.goTo(pin); };
  row->addWidget(connector_, 2);
  return row;
}

QLayout* WalkPage::entry() {
  auto* row = new QHBoxLayout;
  setLetters(*field_, Letters::metre, true);
  field_->setPlaceholderText(tr("452  Enter"));
  field_->setAccessibleName(tr("Reading"));
  field_->setObjectName(QStringLiteral("reading"));
  keepRoomForHint(*field_, Growth::none);
  connect(field_, &QLineEdit::returnPressed, this, &WalkPage::typed);
  row->addWidget(field_);
  struct Command {
    QString text;
    Qt::Key key;
  };
  const std::array<Command, 6> commands{{{tr("OL"), Qt::Key_O},
                                         {tr("Skip"), Qt::Key_S},
                                         {tr("Back"), Qt::Key_B},
                                         {tr("Undo"), Qt::Key_U},
                                         {tr("Turn picture"), Qt::Key_R},
                                         {tr("Mirror"), Qt::Key_M}}};
  for (const Command& each : commands) {
    // The keys are read by the field, which has the keyboard: a shortcut would take them from what is typed.
    auto* button = makeButton(each.text + QStringLiteral("   ") + QKeySequence(each.key).toString(),
                              QKeySequence(), this);
    button->setAccessibleName(each.text);
    connect(button, &QPushButton::clicked, this, [this, key = each.key] {
      command(key);
      field_->setFocus();
    });
    row->addWidget(button);
  }
  row->addStretch(1);
  keep_->setText(tr("Keep this good walk   K"));
  connect(keep_, &QPushButton::clicked, this, [this] { command(Qt::Key_K); });
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
  case Qt::Key_G:
    desk_.walk.setGood(!desk_.walk.good());
    return true;
  case Qt::Key_K:
    if (desk_.walk.good() && desk_.walk.keepGood()) Q_EMIT told(tr("Kept for all jobs on this board"), false);
    return true;
  case Qt::Key_R:
    connector_->turn();
    return true;
  case Qt::Key_M:
    connector_->mirror();
    return true;
  case Qt::Key_Space:
    Q_EMIT takeNow();
    return true;
  default:
    return false;
  }
}

bool WalkPage::eventFilter(QObject* watched, QEvent* event) {
  if (watched == field_ && event->type() == QEvent::KeyPress) {
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool plain = (key->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == 0;
    if (plain && field_->text().isEmpty() && command(key->key())) return true;
  }
  return StationPage::eventFilter(watched, event);
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
  if (!done) Q_EMIT told(shown(done.error().text()), true);
}

void WalkPage::arrive() {
  if (!desk_.walk.conditionKnown() && desk_.job.board() != nullptr && plugged_->text().isEmpty())
    plugged_->setFocus();
  else
    field_->setFocus();
}

void WalkPage::take(const ReadingEvent& event) {
  // What was half typed was meant for this point, not for the next one.
  field_->clear();
  conditionAsTyped();
  run(desk_.walk.take(event));
}

void WalkPage::undo() {
  run(desk_.walk.take(UndoLast{}));
}

void WalkPage::pinChosen(PinId pin) {
  const auto points = desk_.walk.points();
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].point.pin == pin) {
      desk_.walk.goTo(i);
      return;
    }
  // A pin of another part: that one is walked from there.
  const OpenBoard* board = desk_.job.board();
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
  if (const OpenBoard* board = desk_.job.board())
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
