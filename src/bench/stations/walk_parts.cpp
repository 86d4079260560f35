// What the Walk station is made of, and how it shares its room.
#include <algorithm>
#include <array>

#include <QComboBox>
#include <QFrame>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/widgets/face_style.h"
#include "bench/widgets/meter_figure.h"
#include "bench/widgets/pad_picture.h"
#include "bench/widgets/reading_field.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/reading.h"
#include "walk_page.h"

namespace netmend {

namespace {

constexpr std::array walkModes{ReadingMode::diode, ReadingMode::diodeReverse, ReadingMode::ohms,
                               ReadingMode::continuity, ReadingMode::volts};

} // namespace

void WalkPage::makeBand() {
  partButton_ = field_->keyButton(QString(), Qt::Key_J);
  partButton_->setObjectName(QStringLiteral("part"));
  conditionButton_ = field_->keyButton(QString(), Qt::Key_C);
  other_ = field_->keyButton(QString(), Qt::Key_G);
  for (QPushButton* button : {partButton_, conditionButton_, other_})
    band_->add(button);
}

QWidget* WalkPage::condition() {
  conditionBox_->setBackgroundRole(QPalette::Button);
  conditionBox_->setAutoFillBackground(true);
  auto* column = new QVBoxLayout(conditionBox_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  auto* row = new WrapLayout;
  questions_ = row;
  column->addLayout(row);
  column->addWidget(makeRule(Qt::Horizontal, conditionBox_));
  plugged_->setPlaceholderText(tr("nothing; or: battery, display"));
  temperature_->setPlaceholderText(QStringLiteral("25"));
  keepRoomForHint(*plugged_, Growth::free);
  keepRoomForHint(*temperature_, Growth::none);
  profile_->setObjectName(QStringLiteral("meter"));
  profile_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  profile_->setMinimumContentsLength(8);
  by_->setObjectName(QStringLiteral("measuredBy"));
  profile_->addItem(tr("not stated"), QString());
  for (const MeterProfile& meter : desk_.job.data().probing.meters)
    profile_->addItem(shown(dataPattern(meter.name)), QString::fromStdString(meter.id));
  profile_->setCurrentIndex(std::max(0, profile_->findData(QString::fromStdString(desk_.walk.meter()))));
  by_->setText(QString::fromStdString(desk_.walk.by()));
  by_->setPlaceholderText(tr("initials"));
  keepRoomForHint(*by_, Growth::none);
  mode_->setAccessibleName(tr("Meter mode"));
  for (const ReadingMode mode : walkModes)
    mode_->addItem(shown(nameOf(mode)), static_cast<int>(mode));
  connect(mode_, &QComboBox::activated, this, [this] {
    run(desk_.walk.take(ModeChanged{static_cast<ReadingMode>(mode_->currentData().toInt())}));
    field_->setFocus();
  });
  const auto ask = [&](const QString& text, QWidget* answer) {
    // Question and answer stay on one line.
    auto* box = new QWidget(conditionBox_);
    auto* pair = new QHBoxLayout(box);
    pair->setContentsMargins(0, 0, 0, 0);
    auto* label = new QLabel(text, box);
    label->setBuddy(answer);
    pair->addWidget(label);
    pair->addWidget(answer, 1);
    row->addWidget(box);
  };
  ask(tr("Left &plugged in"), plugged_);
  ask(tr("Board at °C"), temperature_);
  ask(tr("M&eter"), profile_);
  ask(tr("Measured &by"), by_);
  row->addWidget(mode_);
  lies_ = new QWidget(conditionBox_);
  auto* lies = new QHBoxLayout(lies_);
  lies->setContentsMargins(0, 0, 0, 0);
  lies->addWidget(field_->keyButton(tr("Turn picture"), Qt::Key_R));
  lies->addWidget(field_->keyButton(tr("Mirror"), Qt::Key_M));
  row->addWidget(lies_);
  for (QLineEdit* field : {plugged_, temperature_, by_})
    connect(field, &QLineEdit::returnPressed, this, &WalkPage::startWithCondition);
  connect(profile_, &QComboBox::currentIndexChanged, this, &WalkPage::keepWho);
  connect(by_, &QLineEdit::editingFinished, this, &WalkPage::keepWho);
  return conditionBox_;
}

QLayout* WalkPage::dueFigure() {
  auto* column = new QVBoxLayout;
  column->setSpacing(0);
  setLetters(*nextCaption_, Letters::reading);
  column->addWidget(nextCaption_);
  column->addWidget(point_);
  column->addWidget(net_);
  setQuiet(*lead_);
  column->addWidget(lead_);
  column->addStretch(1);
  return column;
}

QWidget* WalkPage::takenFigure() {
  auto* box = new QWidget(this);
  third_ = new QVBoxLayout(box);
  third_->setContentsMargins(0, 0, 0, 0);
  third_->setSpacing(0);
  head_ = new QHBoxLayout;
  auto* caption = makeCaption(tr("Taken last"), box);
  setLetters(*caption, Letters::reading);
  caption->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  head_->addWidget(caption, 1);
  head_->addWidget(makeWhyButton());
  head_->addWidget(field_->keyButton(tr("Undo"), Qt::Key_U));
  third_->addLayout(head_);
  third_->addWidget(taken_);
  third_->addWidget(explanation_);
  third_->addStretch(1);
  setLetters(*oddCaption_, Letters::reading);
  third_->addWidget(oddCaption_);
  odd_->onOdd = [this](std::size_t point) {
    desk_.walk.goTo(point);
    field_->setFocus();
  };
  third_->addWidget(odd_);
  return box;
}

QWidget* WalkPage::figures() {
  auto* box = new QFrame(this);
  box->setBackgroundRole(QPalette::Button);
  box->setAutoFillBackground(true);
  auto* rows = new QVBoxLayout(box);
  rows->setSpacing(0);
  row_ = new QHBoxLayout;
  row_->addLayout(dueFigure(), 10);
  row_->addWidget(makeRule(Qt::Vertical, box));
  second_ = new QVBoxLayout;
  second_->setSpacing(0);
  second_->addWidget(meter_);
  second_->addStretch(1);
  second_->addWidget(gauge_);
  good_ = new QHBoxLayout;
  setLetters(*expectedCaption_, Letters::reading);
  good_->addWidget(expectedCaption_);
  good_->addWidget(expected_, 1);
  second_->addLayout(good_);
  row_->addLayout(second_, 11);
  lastRule_ = makeRule(Qt::Vertical, box);
  row_->addWidget(lastRule_);
  last_ = takenFigure();
  row_->addWidget(last_, 10);
  rows->addLayout(row_, 1);
  rows->addWidget(reasons_);
  reasons_->hide();
  return box;
}

QWidget* WalkPage::makeFootKeys() {
  auto* box = new QWidget(this);
  auto* row = new QHBoxLayout(box);
  row->setContentsMargins(0, 0, 0, 0);
  shift_ = field_->keyButton(tr("Move by one pin"), Qt::Key_X);
  again_ = field_->keyButton(tr("Comes and goes"), Qt::Key_I);
  back_ = field_->keyButton(tr("Back"), Qt::Key_B);
  keep_ = field_->keyButton(tr("Keep as good"), Qt::Key_K);
  setLater(*keep_);
  keepMain_ = field_->keyButton(tr("Keep as good"), Qt::Key_K);
  setMain(*keepMain_);
  map_ = makePrompt(tr("Map"), QKeySequence(Qt::CTRL | Qt::Key_B), box);
  connect(map_, &QPushButton::clicked, this, &StationPage::mapWanted);
  for (QPushButton* button :
       {field_->keyButton(tr("OL"), Qt::Key_O), field_->keyButton(tr("Skip"), Qt::Key_S), back_, shift_,
        again_, keep_, keepMain_, map_})
    row->addWidget(button);
  box->hide();
  return box;
}

void WalkPage::makePartList() {
  parts_->setObjectName(QStringLiteral("parts"));
  parts_->setAccessibleName(tr("What to walk"));
  parts_->hide();
  parts_->installEventFilter(this);
  connect(parts_, &QListWidget::itemClicked, this, &WalkPage::partChosen);
}

bool WalkPage::eventFilter(QObject* watched, QEvent* event) {
  if (watched != parts_) return StationPage::eventFilter(watched, event);
  if (event->type() == QEvent::FocusOut) parts_->hide();
  if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Escape) field_->setFocus();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) partChosen();
    return key == Qt::Key_Escape || key == Qt::Key_Return || key == Qt::Key_Enter;
  }
  return false;
}

void WalkPage::choosePart() {
  if (parts_->count() == 0) return;
  for (int i = 0; i < parts_->count(); ++i)
    if (parts_->item(i)->data(Qt::UserRole).toULongLong() == desk_.walk.part().value)
      parts_->setCurrentRow(i);
  const int wide = std::min(width() - 2 * scaled(face::margin), scaled(360));
  const int right = partButton_->mapTo(this, QPoint(partButton_->width(), 0)).x();
  parts_->show();
  const int row = parts_->visualItemRect(parts_->item(0)).height();
  const int rows = std::min(parts_->count(), 12) * row + 2 * parts_->frameWidth();
  parts_->setGeometry(std::clamp(right - wide, 0, std::max(0, width() - wide)), band_->height(), wide,
                      std::min(rows, height() - band_->height()));
  parts_->raise();
  parts_->setFocus();
}

void WalkPage::partChosen() {
  const QListWidgetItem* item = parts_->currentItem();
  field_->setFocus();
  if (item == nullptr) return;
  forgetAsked();
  desk_.walk.setPart(PartId(item->data(Qt::UserRole).toULongLong()));
}

namespace {
constexpr double roomyWidth = 1000; ///< pixels at 100 %, for all three figures
constexpr double roomyHeight = 540;
constexpr double wideBand = 1500; ///< for all buttons beside what is said of a good board
constexpr double figuresHeight = 200;
constexpr double lowFigures = 116; ///< without captions and gauge
} // namespace

bool WalkPage::roomy() const {
  return width() >= scaled(roomyWidth) && height() >= scaled(roomyHeight);
}

void WalkPage::arrange() {
  const bool room = roomy();
  const int edge = desk_.walk.good() ? scaled(2 * face::grid) : 0;
  body_->layout()->setContentsMargins(edge, 0, edge, 0);
  const int margin = scaled(face::margin);
  figures_->layout()->setContentsMargins(margin - std::min(edge, margin / 2), scaled(room ? 16 : 8), margin,
                                         scaled(8));
  // Its reasons take a line of their own.
  const int high = scaled(room ? figuresHeight : lowFigures);
  figures_->setMinimumHeight(high);
  figures_->setMaximumHeight(reasons_->isHidden() && desk_.walk.due() ? high : QWIDGETSIZE_MAX);
  questions_->setContentsMargins(margin, scaled(8), margin, scaled(8));
  row_->setSpacing(margin);
  head_->setSpacing(scaled(8));
  good_->setSpacing(scaled(8));
  footKeys_->layout()->setSpacing(scaled(8));
  field_->setTextMargins(scaled(8), 0, scaled(8), 0);
  nextCaption_->setVisible(room);
  conditionBox_->setVisible((conditionWanted_ || (!desk_.walk.conditionKnown() && room)) &&
                            desk_.job.board() != nullptr);
  meter_->setCaptioned(room);
  last_->setVisible(room);
  lastRule_->setVisible(room);
  back_->setVisible(room);
  map_->setVisible(!room || !desk_.walk.good());
  expectedCaption_->setVisible(room || expected_->text().isEmpty());
  lies_->setVisible(conditionWanted_);
  conditionButton_->setVisible(room && (!desk_.walk.good() || width() >= scaled(wideBand)));
  net_->setVisible(!net_->text().isEmpty() && room);
  QBoxLayout* to = room ? third_ : second_;
  if (to->indexOf(taken_) < 0) {
    (room ? second_ : third_)->removeWidget(taken_);
    to->insertWidget(room ? 1 : to->count(), taken_);
  }
  taken_->setVisible(true);
  update();
}

void WalkPage::resizeEvent(QResizeEvent* event) {
  StationPage::resizeEvent(event);
  showBand();
  showDue();
  showMeter();
  arrange();
}

bool WalkPage::event(QEvent* event) {
  if (event->type() == QEvent::FontChange) arrange();
  return StationPage::event(event);
}

void WalkPage::paintEvent(QPaintEvent*) {
  if (!desk_.walk.good()) return;
  QPainter painter(this);
  const FaceColors& colors = faceColors(faceTheme());
  const QRect beside = body_->geometry();
  const int edge = scaled(2 * face::grid);
  paintBand(painter, QRect(beside.left(), beside.top(), edge, beside.height()), BandLook::good, colors);
  paintBand(painter, QRect(beside.right() - edge + 1, beside.top(), edge, beside.height()), BandLook::good,
            colors);
}

} // namespace netmend
