// The map's panel, and what stands over the map.
#include <algorithm>

#include <QFrame>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include "bench/widgets/letters.h"
#include "bench_window.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/verdict.h"

namespace netmend {

QWidget* BenchWindow::mapPanel() {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  overMap_ = new QVBoxLayout;
  layout->addLayout(overMap_);
  QFrame* card = makeCard(box);
  auto* inside = new QVBoxLayout(card);
  inside->setContentsMargins(1, 1, 1, 1);
  inside->addWidget(map_);
  layout->addWidget(card, 1);
  layOverMap();
  map_->onPlace = [this](const MapPlace& place) {
    const bool something = place.pin || place.net || place.part;
    // Short of the inset.
    place_->setText(something
                        ? place_->fontMetrics().elidedText(place.text, Qt::ElideRight, map_->width() * 2 / 3)
                        : QString());
    place_->setVisible(something);
  };
  map_->onPin = [this](PinId pin) {
    page(station_).pinChosen(pin);
    putFirst(false); // the next digits are a reading, not the map's
  };
  map_->onTurned = [this] { sayHowPictureLies(); };
  map_->onLayersChanged = [this] { layers_->refresh(); };
  map_->onBoardReady = [this] {
    layers_->refresh();
    refreshMap();
  };
  map_->lineOfNet = [this](NetId net) -> std::vector<NetId> {
    const BoardUnderWork* board = job_->board();
    if (board == nullptr || !net) return {};
    return lineOf(*board->lookup, *board->graph, net).nets;
  };
  map_->verdictOf = [this](PinId pin) -> QString {
    const Walk& walk = walk_->walk();
    for (std::size_t i = walk.readings.size(); i-- > 0;)
      if (walk.readings[i].point.pin == pin) {
        return QString::fromStdString(readingText(walk.readings[i].value, walk.readings[i].mode)) +
               QStringLiteral(", ") + shown(nameOf(walk_->judged().verdicts[i].kind));
      }
    return {};
  };
  return box;
}

void BenchWindow::layOverMap() {
  auto* over = new QGridLayout(map_);
  over->setSizeConstraint(QLayout::SetNoConstraint);
  setLetters(*layers_, Letters::small);
  over->addWidget(layers_, 0, 0, Qt::AlignTop | Qt::AlignLeft);
  auto* tools = new QWidget;
  auto* row = new QHBoxLayout(tools);
  row->setContentsMargins({});
  const auto add = [&](const QString& text, Qt::Key key, auto act) {
    QPushButton* chip = makePrompt(text, QKeySequence(key), tools);
    chip->setFocusPolicy(Qt::NoFocus); // its key is the map's
    setLetters(*chip, Letters::small);
    setScaledHeight(*chip, 28);
    connect(chip, &QPushButton::clicked, map_, act);
    row->addWidget(chip);
  };
  add(tr("turn"), Qt::Key_R, [this] {
    map_->setTurn(Degrees(map_->view().turn.value >= 90 ? map_->view().turn.value - 90
                                                        : map_->view().turn.value + 270));
  });
  add(tr("whole board"), Qt::Key_0, [this] { map_->standUpright(); });
  over->addWidget(tools, 0, 1, Qt::AlignTop | Qt::AlignRight);
  over->addWidget(search_, 1, 0, 1, 2, Qt::AlignTop | Qt::AlignLeft);
  search_->hide();
  over->setRowStretch(2, 1);
  place_->setBackgroundRole(QPalette::Base);
  place_->setAutoFillBackground(true);
  place_->setWordWrap(false);
  place_->setAttribute(Qt::WA_TransparentForMouseEvents);
  place_->hide();
  over->addWidget(place_, 3, 0, 1, 2, Qt::AlignBottom | Qt::AlignLeft);
}

/// What is set in pixels, at today's scale.
void BenchWindow::spaceMap() {
  const bool right = splitter_->indexOf(panel_) > 0;
  const int margin = scaled(face::margin);
  panel_->layout()->setContentsMargins(right ? 0 : margin, scaled(2 * face::grid), right ? margin : 0,
                                       scaled(2 * face::grid));
  auto* over = static_cast<QGridLayout*>(map_->layout());
  const int gap = scaled(face::grid);
  // Above the scale, which is painted.
  over->setContentsMargins(gap, gap, gap, gap + scaled(32));
  over->setSpacing(gap);
  place_->setMargin(gap / 2);
  search_->setFixedWidth(std::min(scaled(360), std::max(200, map_->width() - 2 * gap)));
}

bool BenchWindow::hasPlaces() const {
  if (station_ == Station::board) {
    StationPage* now = made_.at(static_cast<std::size_t>(station_));
    if (now != nullptr && now->overMap() != nullptr) return true; // being drawn
  }
  const BoardUnderWork* open = job_->board();
  if (open == nullptr) return false;
  const Board& board = *open->board;
  return board.info.outline.known() || !board.tracks.empty() || !board.underlays.empty() ||
         std::any_of(board.pads.begin(), board.pads.end(),
                     [](const Pad& pad) { return pad.position.known(); }) ||
         std::any_of(board.parts.begin(), board.parts.end(),
                     [](const Part& part) { return part.position.known() || part.body.known(); });
}

} // namespace netmend
