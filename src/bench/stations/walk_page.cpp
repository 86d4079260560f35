#include "walk_page.h"

#include <algorithm>
#include <utility>

#include <QComboBox>
#include <QFrame>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/pad_picture.h"
#include "bench/widgets/reading_field.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/reading.h"

namespace netmend {

WalkPage::WalkPage(Desk desk, QWidget* parent)
    : StationPage(desk, parent), band_(new Band(QStringLiteral("whichBoard"), this)),
      parts_(new QListWidget(this)), mode_(new QComboBox(this)), conditionBox_(new QFrame(this)),
      plugged_(new QLineEdit(this)), temperature_(new QLineEdit(this)), profile_(new QComboBox(this)),
      by_(new QLineEdit(this)), body_(new QWidget(this)), nextCaption_(makeCaption(tr("Next point"), this)),
      point_(new FittingLabel(Letters::point, QStringLiteral("duePoint"), this)),
      net_(new FittingLabel(Letters::metre, QStringLiteral("dueNet"), this)),
      lead_(makeLabel(Letters::reading, QStringLiteral("dueLead"), this)),
      field_(new ReadingField(tr("452  Enter"), Growth::free, QStringLiteral("reading"), this)),
      meter_(new MeterFigure(field_, this)), gauge_(new RangeGauge(this)),
      expectedCaption_(makeCaption({}, this)),
      expected_(new FittingLabel(Letters::reading, QStringLiteral("dueExpected"), this)),
      taken_(new TakenLabel(QStringLiteral("verdict"), this)),
      explanation_(makeLabel(Letters::small, QStringLiteral("explanation"), this)),
      oddCaption_(makeCaption({}, this)), odd_(new OddList(this)),
      reasons_(makeLabel(Letters::reading, QStringLiteral("reasons"), this)), pads_(new PadPicture(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  makeBand();
  layout->addWidget(band_);
  layout->addWidget(body_, 1);
  auto* column = new QVBoxLayout(body_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(condition());
  figures_ = figures();
  column->addWidget(figures_);
  column->addWidget(makeRule(Qt::Horizontal, body_));
  pads_->onPad = [this](std::size_t pin) {
    desk_.walk.goTo(pin);
    field_->setFocus();
  };
  column->addWidget(pads_, 1);
  // Above it, and asked before the first reading: one Tab away.
  for (QWidget* before = field_;
       QWidget * after : std::initializer_list<QWidget*>{plugged_, temperature_, profile_, by_, mode_})
    setTabOrder(std::exchange(before, after), after);
  footKeys_ = makeFootKeys();
  makePartList();
  field_->setAccessibleName(tr("Reading"));
  field_->onKey = [this](int key, Qt::KeyboardModifiers) { return command(key); };
  connect(field_, &QLineEdit::returnPressed, this, &WalkPage::typed);
  connect(field_, &QLineEdit::textChanged, this, [this](const QString& text) {
    const auto value = parseReadingValue(text.trimmed().toStdString(), desk_.walk.mode());
    gauge_->setValue(value ? value->value : std::nullopt);
  });
  meter_->onValue = [this](std::optional<double> value) {
    gauge_->setValue(value);
    showMeter();
  };
  connect(&desk_.walk, &BenchWalk::changed, this, &WalkPage::refresh);
  connect(&desk_.job, &BenchJob::boardChanged, this, &WalkPage::showParts);
  connect(&desk_.job, &BenchJob::jobOpened, this, &WalkPage::forgetAsked);
  for (const auto changed : {&BenchJob::jobChanged, &BenchJob::readingsChanged})
    connect(&desk_.job, changed, this, &WalkPage::refresh);
  showParts();
}

void WalkPage::keepWho() {
  desk_.walk.setMeter(profile_->currentData().toString().toStdString());
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
  case Qt::Key_A:
    if (const auto odd = oddPins(); !odd.empty()) desk_.walk.goTo(odd.front().point);
    return true;
  case Qt::Key_J:
    choosePart();
    return true;
  case Qt::Key_R:
    pads_->turn();
    return true;
  case Qt::Key_M:
    pads_->mirror();
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

void WalkPage::showParts() {
  filling_ = true;
  parts_->clear();
  if (const BoardUnderWork* board = desk_.job.board())
    for (const PartId id : desk_.walk.partsToWalk()) {
      const Part* part = board->board->parts.find(id);
      auto* item =
          new QListWidgetItem(tr("%1, %n pin(s)", nullptr, static_cast<int>(board->lookup->pinsOf(id).size()))
                                  .arg(QString::fromStdString(part->reference)),
                              parts_);
      item->setData(Qt::UserRole, QVariant::fromValue<qulonglong>(id.value));
    }
  filling_ = false;
  refresh();
}

} // namespace netmend
