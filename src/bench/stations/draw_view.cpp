#include "draw_view.h"

#include <algorithm>
#include <utility>

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench/widgets/wrap_layout.h"
#include "netmend/words/sketch.h"
#include "photo_inset.h"

namespace netmend {

namespace {

/// A value below is copper alone, above it a part (common practice: a beeper sounds up to some ohms).
constexpr double beepsUpTo = 2.0;

std::optional<SketchKey> keyOf(int key) {
  switch (key) {
  case Qt::Key_A:
    return SketchKey::take;
  case Qt::Key_X:
  case Qt::Key_Escape:
    return SketchKey::refuse;
  case Qt::Key_Space:
    return SketchKey::next;
  case Qt::Key_S:
    return SketchKey::skip;
  case Qt::Key_O:
    return SketchKey::otherWay;
  case Qt::Key_C:
    return SketchKey::copper;
  case Qt::Key_V:
    return SketchKey::via;
  case Qt::Key_I:
    return SketchKey::inside;
  case Qt::Key_Z:
    return SketchKey::zone;
  case Qt::Key_N:
    return SketchKey::series;
  case Qt::Key_G:
    return SketchKey::gone;
  case Qt::Key_Delete:
  case Qt::Key_Backspace:
    return SketchKey::remove;
  default:
    return std::nullopt;
  }
}

} // namespace

DrawView::DrawView(Desk desk, QWidget* parent)
    : QWidget(parent), desk_(desk), line_(new DrawLine(desk.job.data().sizes)),
      due_(makeLabel(Letters::metre, QStringLiteral("drawDue"), this)),
      help_(makeLabel(Letters::reading, QStringLiteral("drawHelp"), this)),
      facts_(makeLabel(Letters::reading, QStringLiteral("drawFacts"), this)),
      members_(makeLabel(Letters::reading, QStringLiteral("drawMembers"), this)),
      inset_(new PhotoInset(this)) {
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(8, 0, 0, 0);
  setLetters(*due_, Letters::metre, true);
  for (QWidget* widget : std::initializer_list<QWidget*>{due_, help_})
    layout->addWidget(widget);
  layout->addLayout(keys());
  layout->addWidget(inset_, 2);
  for (QWidget* widget : std::initializer_list<QWidget*>{facts_, members_})
    layout->addWidget(widget);
  layout->addStretch(1);
  auto* title = makeLabel(Letters::small, QStringLiteral("worthTitle"), this);
  title->setText(tr("What is drawn is good for"));
  layout->addWidget(title);
  constexpr std::array stationsAhead{Station::walk, Station::find, Station::bridge};
  for (std::size_t i = 0; i < worth_.size(); ++i) {
    WorthLabels& row = worth_.at(i);
    row.what = makeLabel(Letters::reading,
                         QStringLiteral("worth%1").arg(static_cast<int>(stationsAhead.at(i))), this);
    row.more = makeLabel(Letters::small, QStringLiteral("worthMore%1").arg(i), this);
    layout->addWidget(row.what);
    layout->addWidget(row.more);
  }
  auto hand = std::make_shared<CopperMap::Hand>();
  hand->click = [this](const MapPointer& at) {
    if (laying_) {
      laying_->clickBoard(*desk_.drawing.board(), clickAt(at), desk_.drawing.lookup());
      straighten();
    } else {
      desk_.drawing.click(clickAt(at));
    }
    return true;
  };
  hand->press = [this](const MapPointer& at) { return press(at); };
  hand->stroke = [this](const MapPointer& at, bool done) { stroke(at, done); };
  hand->move = [this](const MapPointer& at) { pointer_ = at; };
  hand->key = [this](const QKeyEvent& event, const MapPointer& at) { return pressKey(event, at); };
  hand->wheel = [this](double steps, Qt::KeyboardModifiers modifiers) { return wheel(steps, modifiers); };
  hand->paint = [this](QPainter& painter, const BoardView& view) { paintHand(painter, view); };
  hand_ = std::move(hand);
  line_->read = [this](const QString& text) {
    if (!desk_.drawing.begun() || (laying_ && laying_->wantsSize())) return TypedLine{};
    return readLine(text.toStdString(), *desk_.drawing.board(), desk_.job.data().sizes,
                    desk_.drawing.sketch().netInHand());
  };
  connect(line_, &DrawLine::typed, this, &DrawView::lineTyped);
  connect(line_, &DrawLine::left, this, &DrawView::mapWanted);
  inset_->onClick = [this](PhotoPoint at) {
    if (!laying_) return;
    laying_->clickPhoto(at);
    refresh();
  };
  connect(&desk_.drawing, &BenchDrawing::changed, this, &DrawView::refresh);
  connect(&desk_.drawing, &BenchDrawing::handChanged, this, &DrawView::refresh);
  connect(&desk_.drawing, &BenchDrawing::photosChanged, this, &DrawView::refresh);
  connect(&desk_.drawing, &BenchDrawing::mergeRead, this, &DrawView::beginMerge);
  connect(&desk_.drawing, &BenchDrawing::photoAdded, this, &DrawView::photoAdded);
  connect(&desk_.drawing, &BenchDrawing::told, this, &DrawView::told);
}

QPushButton* DrawView::keyButton(const QString& text, Qt::Key key, SketchKey means) {
  QPushButton* button = makePrompt(text, QKeySequence(key), this);
  button->setFocusPolicy(Qt::NoFocus);
  connect(button, &QPushButton::clicked, this, [this, means] { act(means); });
  buttons_.emplace_back(button, means);
  return button;
}

QLayout* DrawView::keys() {
  auto* row = new WrapLayout;
  QPushButton* line = makePrompt(tr("Type"), QKeySequence(Qt::Key_Enter), this);
  line->setFocusPolicy(Qt::NoFocus);
  connect(line, &QPushButton::clicked, this, [this] { line_->open(); });
  row->addWidget(line);
  layTake_ = makePrompt(tr("Take it"), QKeySequence(Qt::Key_A), this);
  layTake_->setFocusPolicy(Qt::NoFocus);
  layTake_->setObjectName(QStringLiteral("takePhoto"));
  connect(layTake_, &QPushButton::clicked, this, &DrawView::takeLaying);
  row->addWidget(layTake_);
  struct Decides {
    QString text;
    Qt::Key key;
  };
  for (const Decides& each : {Decides{tr("Drawing is right"), Qt::Key_A},
                              Decides{tr("File is right"), Qt::Key_X}, Decides{tr("Later"), Qt::Key_S},
                              Decides{tr("Merge"), Qt::Key_A}, Decides{tr("No merge"), Qt::Key_Escape}}) {
    QPushButton* button = makePrompt(each.text, QKeySequence(each.key), this);
    button->setFocusPolicy(Qt::NoFocus);
    connect(button, &QPushButton::clicked, this, [this, key = each.key] { (void)mergingKey(key); });
    row->addWidget(button);
    mergeButtons_.push_back(button);
  }
  struct Means {
    QString text;
    Qt::Key key;
    SketchKey means;
  };
  for (const Means& each :
       {Means{tr("Take"), Qt::Key_A, SketchKey::take}, Means{tr("Not so"), Qt::Key_X, SketchKey::refuse},
        Means{tr("Next net"), Qt::Key_Space, SketchKey::next},
        Means{tr("Copper between"), Qt::Key_C, SketchKey::copper},
        Means{tr("Other way"), Qt::Key_O, SketchKey::otherWay}, Means{tr("Via"), Qt::Key_V, SketchKey::via},
        Means{tr("Goes inside"), Qt::Key_I, SketchKey::inside},
        Means{tr("And so on"), Qt::Key_N, SketchKey::series},
        Means{tr("Silent, next"), Qt::Key_S, SketchKey::skip}, Means{tr("Zone"), Qt::Key_Z, SketchKey::zone},
        Means{tr("Gone"), Qt::Key_G, SketchKey::gone},
        Means{tr("Take off"), Qt::Key_Delete, SketchKey::remove}})
    row->addWidget(keyButton(each.text, each.key, each.means));
  QPushButton* photo = makeButton(tr("Photo"), QKeySequence(Qt::CTRL | Qt::Key_P), this);
  photo->setFocusPolicy(Qt::NoFocus);
  connect(photo, &QPushButton::clicked, this, &DrawView::choosePhoto);
  row->addWidget(photo);
  return row;
}

void DrawView::setTheme(PictureTheme theme) {
  colors_ = pictureColors(theme);
}

void DrawView::setMetered(bool metered) {
  metered_ = metered;
  refresh();
}

SketchClick DrawView::clickAt(const MapPointer& at) const {
  return desk_.drawing.clickAt(at.at, at.side, at.reach);
}

void DrawView::act(SketchKey key) {
  if (!desk_.drawing.begun()) return;
  desk_.drawing.key(key, clickAt(pointer_));
  Q_EMIT mapWanted();
}

bool DrawView::pressKey(const QKeyEvent& event, const MapPointer& at) {
  if (!desk_.drawing.begun()) return false;
  if ((event.modifiers() & ~Qt::KeypadModifier) != 0) return false;
  const int key = event.key();
  if (key == Qt::Key_Return || key == Qt::Key_Enter) {
    line_->open();
    return true;
  }
  if (key == Qt::Key_U) {
    if (laying_ && (!laying_->corners().empty() || !laying_->pairs().empty() || laying_->waiting())) {
      laying_->takeBack();
      straighten();
    } else if (const auto undone = desk_.job.undo(); !undone) {
      Q_EMIT told(shown(undone.error().said()), true);
    }
    return true;
  }
  if (merging_) return mergingKey(key);
  if (laying_) return layingKey(key);
  if (key == Qt::Key_P && !desk_.drawing.photos().empty()) {
    lay(PhotoLaying::By::pairs);
    return true;
  }
  const auto means = keyOf(key);
  if (!means || event.isAutoRepeat()) return means.has_value();
  if (key == Qt::Key_Escape && desk_.drawing.sketch().clicks().empty() &&
      !desk_.drawing.sketch().netInHand() && !desk_.drawing.sketch().proposes() &&
      !desk_.drawing.sketch().part()) {
    Q_EMIT leaveWanted();
    return true;
  }
  pointer_ = at;
  desk_.drawing.key(*means, clickAt(at));
  return true;
}

bool DrawView::press(const MapPointer& at) {
  pressed_.reset();
  strokeWay_.clear();
  if (!desk_.drawing.begun() || laying_) return false;
  const SketchClick click = clickAt(at);
  const Sketch& sketch = desk_.drawing.sketch();
  // From a pin a track is drawn; the part in hand is moved; all else moves the picture.
  const bool move = !click.pin && click.part && click.part == sketch.part();
  if (!click.pin && !move) return false;
  pressed_ = click;
  strokeWay_ = {at.at};
  return true;
}

void DrawView::stroke(const MapPointer& at, bool done) {
  if (!pressed_) return;
  pointer_ = at;
  if (!done) {
    strokeWay_.push_back(at.at);
    Q_EMIT mapStale();
    return;
  }
  const SketchClick from = *std::exchange(pressed_, std::nullopt);
  const Ring way = simplified(std::exchange(strokeWay_, {}), at.reach);
  if (from.pin)
    desk_.drawing.stroke(from, way, clickAt(at));
  else
    desk_.drawing.movePart(from.part, at.at - from.at);
}

bool DrawView::wheel(double steps, Qt::KeyboardModifiers modifiers) {
  if (!desk_.drawing.begun()) return false;
  if (modifiers == Qt::ShiftModifier) {
    constexpr Length step{20'000};
    desk_.drawing.setTrackWidth(desk_.drawing.sketch().trackWidth() +
                                step * static_cast<std::int64_t>(steps));
    return true;
  }
  const Underlay* photo = underlayInHand();
  if (photo == nullptr || (modifiers != Qt::ControlModifier && modifiers != Qt::AltModifier)) return false;
  constexpr double step = 0.1;
  const bool fade = modifiers == Qt::ControlModifier;
  const double faded = std::clamp(photo->faded.value - (fade ? steps * step : 0.0), 0.0, 1.0);
  const double lightened = std::clamp(photo->lightened.value + (fade ? 0.0 : steps * step), -1.0, 1.0);
  desk_.drawing.setPhotoTones(photo->id, Share(faded), Share(lightened));
  return true;
}

void DrawView::lineTyped(const QString& text) {
  if (!desk_.drawing.begun()) return;
  if (laying_ && laying_->by() == PhotoLaying::By::corners) {
    if (const auto sized = laying_->typeSize(text, *desk_.drawing.board()); !sized) {
      Q_EMIT told(shown(sized.error().said()), true);
      return;
    }
    straighten();
    takeLaying();
    line_->setText({});
    Q_EMIT mapWanted();
    return;
  }
  const bool named = desk_.drawing.sketch().netInHand();
  desk_.drawing.type(text.toStdString());
  const auto& words = desk_.drawing.sketch().line().words;
  const auto odd = std::find_if(words.begin(), words.end(), [](const LineWord& word) {
    return word.meaning == WordMeaning::notUnderstood;
  });
  if (odd != words.end()) {
    Q_EMIT told(tr("%1 is not understood").arg(QString::fromStdString(odd->text)), true);
    return;
  }
  if (named) line_->setText({});
  Q_EMIT mapWanted();
}

void DrawView::arrive() {
  if (!desk_.drawing.begin()) return;
  refresh();
  Q_EMIT mapWanted();
}

void DrawView::take(const ReadingEvent& event) {
  const auto* taken = std::get_if<ValueTaken>(&event);
  if (taken == nullptr || !desk_.drawing.begun() || desk_.drawing.sketch().group().empty()) return;
  Reading reading = taken->whole.value_or(Reading{});
  reading.value = taken->value;
  reading.mode = taken->mode.value_or(wantedMode());
  reading.settling = taken->settling;
  // OL is silence, and silence is no contact: it says nothing about the two.
  if (reading.value) desk_.drawing.touched(reading, *reading.value <= beepsUpTo);
}

void DrawView::refresh() {
  if (!desk_.drawing.begun()) {
    laying_.reset();
    merging_.reset();
    return;
  }
  showDue();
  showLaying();
  showMerging();
  showWorth();
  Q_EMIT mapStale();
}

void DrawView::showDue() {
  const Sketch& sketch = desk_.drawing.sketch();
  const SketchDue due = sketch.due(desk_.drawing.lookup());
  for (const auto& [button, means] : buttons_) {
    const bool net = sketch.netInHand();
    bool wanted = false;
    switch (means) {
    case SketchKey::take:
      wanted = sketch.proposes();
      break;
    case SketchKey::refuse:
      wanted = sketch.proposes() || !sketch.clicks().empty() || net || sketch.part();
      break;
    case SketchKey::next:
    case SketchKey::via:
    case SketchKey::inside:
      wanted = net;
      break;
    case SketchKey::copper:
      wanted = sketch.group().size() > 1;
      break;
    case SketchKey::otherWay:
      wanted = sketch.proposal().has_value() || sketch.group().size() > 1;
      break;
    case SketchKey::series:
      wanted = sketch.group().size() > 1 || (!net && sketch.seriesPossible());
      break;
    case SketchKey::skip:
      wanted = net && metered_;
      break;
    case SketchKey::zone:
      wanted = bool(sketch.part());
      break;
    case SketchKey::gone:
    case SketchKey::remove:
      wanted = sketch.part() || net;
      break;
    }
    button->setVisible(wanted && !laying_ && !merging_);
  }
  if (laying_ || merging_) return;
  due_->setText(shown(dueSaid(due)));
  const Said help = dueHelp(due);
  help_->setText(help.empty() ? QString() : shown(help));
  help_->setVisible(!help.empty());
  line_->setHint(tr("J4 40 2 rows  ·  R 100 0402  ·  zone battery"));
}

QStringList DrawView::factsInHand() const {
  const Sketch& sketch = desk_.drawing.sketch();
  QStringList facts;
  if (const auto& placed = sketch.proposal()) {
    facts << tr("%n pin(s)", nullptr, static_cast<int>(placed->pads.size()))
          << tr("pitch %1 mm").arg(placed->pitch.mm(), 0, 'f', 3);
    if (placed->across) facts << tr("rows %1 mm apart").arg(placed->across->mm(), 0, 'f', 2);
  } else if (sketch.netInHand()) {
    facts << tr("track %1 mm wide, Shift and the wheel").arg(sketch.trackWidth().mm(), 0, 'f', 2);
  }
  return facts;
}

void DrawView::showWorth() {
  const Sketch& sketch = desk_.drawing.sketch();
  const Board& board = *desk_.drawing.board();
  const auto rows = worthRows(worthOf(desk_.drawing.lookup(), sketch.net(board)));
  constexpr std::array signs{"☐", "◪", "✓"};
  constexpr std::array ahead{Station::walk, Station::find, Station::bridge};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const WorthRow& row = rows.at(i);
    const WorthLabels& labels = worth_.at(i);
    labels.what->setText(QStringLiteral("%1  %2: %3")
                             .arg(QString::fromUtf8(signs.at(static_cast<std::size_t>(row.grade))),
                                  stationName(ahead.at(i)), shown(row.what)));
    labels.more->setText(row.more.empty() ? QString() : shown(row.more));
    labels.more->setVisible(!row.more.empty());
  }
  QStringList members;
  for (const PinId pin : sketch.group())
    members << QString::fromStdString(pinLabel(board, pin));
  const Net* net = board.nets.find(sketch.net(board));
  QString text = members.join(QStringLiteral("   "));
  if (net != nullptr && !net->name.empty())
    text = QStringLiteral("%1:   %2").arg(QString::fromStdString(net->name), text);
  if (metered_ && sketch.netInHand())
    if (const PinId ringed = sketch.ringed(desk_.drawing.lookup()))
      text += QLatin1Char('\n') + tr("Touch next: %1").arg(QString::fromStdString(pinLabel(board, ringed)));
  members_->setText(text);
  members_->setVisible(!text.isEmpty());
}

} // namespace netmend
