#include "bench_window.h"

#include <algorithm>
#include <utility>

#include <QApplication>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QSettings>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "bench/stations/board_page.h"
#include "bench/stations/book_in_page.h"
#include "bench/stations/bridge_page.h"
#include "bench/stations/draw_view.h"
#include "bench/stations/find_page.h"
#include "bench/stations/hand_over_page.h"
#include "bench/stations/prove_page.h"
#include "bench/stations/walk_page.h"
#include "bench/widgets/foot_bar.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/way_bar.h"
#include "netmend/base/data_folder.h"
#include "netmend/drawing/face.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/verdict.h"
#include "pedals.h"
#include "sounds.h"
#include "still_camera.h"
#include "theme.h"
#include "walk_ear.h"

namespace netmend {

namespace {

bool isPhoto(const QString& file) {
  return QStringList{QStringLiteral("png"), QStringLiteral("jpg"), QStringLiteral("jpeg"),
                     QStringLiteral("webp")}
      .contains(QFileInfo(file).suffix().toLower());
}

/// What has no room on a page goes by rules of its own: no page holds the window open, so none is asked what
/// it wants, seen or not, whenever a word on one of them changes.
class Pages : public QStackedWidget {
public:
  [[nodiscard]] QSize sizeHint() const override { return {640, 480}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {1, 1}; }
};

constexpr double drawnShare = 0.29;    ///< of the width, for what stands beside the board at its own station
constexpr QSize leastWindow{960, 600}; ///< pixels
constexpr double leastBeside =
    1000; ///< pixels at 100 % of the window's width, for station and map side by side

} // namespace

BenchWindow::BenchWindow(std::unique_ptr<BenchJob> job)
    : job_(std::move(job)), walk_(std::make_unique<BenchWalk>(*job_)),
      fault_(std::make_unique<BenchFault>(*job_, *walk_)), drawing_(std::make_unique<BenchDrawing>(*job_)),
      sounds_(std::make_unique<Sounds>()), pages_(new Pages), way_(new WayBar(stations.size())),
      splitter_(new QSplitter(Qt::Horizontal)), map_(new CopperMap), search_(new MapSearch(*map_)),
      layers_(new MapLayers(*map_)), place_(makeLabel(Letters::small, QStringLiteral("mapPlace"))),
      foot_(new FootBar), message_(makeLabel(Letters::reading, QStringLiteral("message"))),
      nextButton_(makeButton(tr("Go there"), QKeySequence(Qt::CTRL | Qt::Key_Return), this)) {
  setWindowTitle(tr("Netmend"));
  setAcceptDrops(true);
  auto* middle = new QWidget;
  auto* layout = new QVBoxLayout(middle);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  way_->onStep = [this](std::size_t step) { go(stations.at(step)); };
  layout->addWidget(way_);
  layout->addLayout(bands_ = new QVBoxLayout);
  pages_->setMinimumSize(1, 1);
  setMinimumSize(leastWindow);
  splitter_->addWidget(pages_);
  panel_ = mapPanel();
  splitter_->addWidget(panel_);
  splitter_->setChildrenCollapsible(false);
  connect(splitter_, &QSplitter::splitterMoved, this, [this] {
    const QList<int> sizes = splitter_->sizes();
    if (splitter_->indexOf(pages_) != 0) return; // the board's own station: for this time only
    stationShare_ = static_cast<double>(sizes[0]) / std::max(1, sizes[0] + sizes[1]);
  });
  layout->addWidget(splitter_, 1);
  connect(nextButton_, &QPushButton::clicked, this, [this] { go(nextThing(desk()).station); });
  foot_->addOwn(nextButton_);
  layout->addWidget(foot_);
  setCentralWidget(middle);
  message_->setParent(middle);
  message_->setFrameShape(QFrame::StyledPanel);
  message_->setBackgroundRole(QPalette::Base);
  message_->setAutoFillBackground(true);
  message_->setMargin(scaled(face::grid));
  message_->hide();
  addKeys();
  connect(job_.get(), &BenchJob::noticed, this, [this](const QString& text) { tell(text, false); });
  connect(job_.get(), &BenchJob::failed, this, [this](const QString& text) { tell(text, true); });
  connect(job_.get(), &BenchJob::jobChanged, this, &BenchWindow::refresh);
  connect(job_.get(), &BenchJob::actionsChanged, this, &BenchWindow::refresh);
  connect(job_.get(), &BenchJob::openingChanged, this, &BenchWindow::refresh);
  connect(walk_.get(), &BenchWalk::changed, this, &BenchWindow::refresh);
  connect(fault_.get(), &BenchFault::changed, this, &BenchWindow::refresh);
  connect(job_.get(), &BenchJob::boardChanged, this, [this] {
    const BoardUnderWork* board = job_->board();
    const std::string uuid = board != nullptr ? board->board->info.uuid : std::string();
    const bool same = !uuid.empty() && mapped_ == uuid;
    mapped_ = uuid;
    if (board == nullptr)
      map_->setBoard(std::shared_ptr<const Board>{});
    else
      map_->setBoard(board->board, same ? CopperMap::Keep::view : CopperMap::Keep::nothing);
    shareRoom();
    sayHowPictureLies();
    refresh();
  });
  connect(drawing_.get(), &BenchDrawing::changed, this,
          [this] { map_->setBoard(drawing_->board(), CopperMap::Keep::view); });
  connect(drawing_.get(), &BenchDrawing::photosChanged, this,
          [this] { map_->setPhotos(drawing_->photos()); });
  addEar();
  addCamera();
  // What is open has to be found again even if the next moment is the last one.
  connect(job_.get(), &BenchJob::jobOpened, this, &BenchWindow::remember);
  connect(job_.get(), &BenchJob::boardChanged, this, &BenchWindow::remember);
  setTheme(PictureTheme::light);
  followSize();
}

BenchWindow::~BenchWindow() {
  // The link calls back into the window: it goes first.
  meter_.reset();
  setPictureBeside({});
  // A field that loses the keyboard keeps what was typed in it: as long as there is a job to keep it in.
  hide();
}

StationPage* BenchWindow::makePage(Station station) {
  switch (station) {
  case Station::bookIn:
    return new BookInPage(desk());
  case Station::board:
    return new BoardPage(desk());
  case Station::walk: {
    auto* walk = new WalkPage(desk());
    connect(walk, &WalkPage::takeNow, this, &BenchWindow::takeNow);
    connect(walk, &WalkPage::sayAgain, this, &BenchWindow::sayAgain);
    return walk;
  }
  case Station::find:
    return new FindPage(desk());
  case Station::bridge:
    return new BridgePage(desk());
  case Station::prove:
    return new ProvePage(desk());
  case Station::handOver:
    return new HandOverPage(desk());
  }
  return nullptr;
}

void BenchWindow::follow(StationPage& page) {
  connect(&page, &StationPage::overlayChanged, this, [this, &page] {
    if (&page != pages_->currentWidget()) return;
    refreshMap();
    askWantedMode();
  });
  connect(&page, &StationPage::told, this, &BenchWindow::tell);
  connect(&page, &StationPage::goTo, this, &BenchWindow::go);
  connect(&page, &StationPage::mapStale, this, [this] { map_->update(); });
  connect(&page, &StationPage::mapWanted, this, [this, &page] {
    if (&page == pages_->currentWidget()) putFirst(true);
  });
  connect(&page, &StationPage::allWanted, this, [this] { map_->fit(); });
  connect(&page, &StationPage::mapHandChanged, this, &BenchWindow::lendMap);
  connect(&page, &StationPage::whyWanted, this, [this] { setWhy(!why_); });
}

StationPage& BenchWindow::page(Station station) {
  // Made when it is first wanted: a window that starts at one station waits for no other.
  StationPage*& page = made_.at(static_cast<std::size_t>(station));
  if (page == nullptr) {
    page = makePage(station);
    page->setTheme(theme_);
    page->setWhy(why_);
    pages_->addWidget(page);
    if (QWidget* band = page->band()) bands_->addWidget(band);
    follow(*page);
  }
  return *page;
}

void BenchWindow::go(Station station) {
  showStation(station);
  remember();
}

void BenchWindow::showStation(Station station) {
  // What was drawn is for the other stations.
  if (station != Station::board) drawing_->workUp();
  station_ = station;
  StationPage& to = page(station);
  pages_->setCurrentWidget(&to);
  for (StationPage* each : made_)
    if (each != nullptr && each->band() != nullptr) each->band()->setVisible(each == &to);
  mapFirst_ = false;
  tell({}, false);
  lendMap();
  refresh();
  refreshMap();
  to.arrive();
  ear_->listen(station == Station::walk);
}

void BenchWindow::lendMap() {
  StationPage& now = page(station_);
  map_->setHand(now.mapHand());
  QWidget* over = now.overMap();
  for (int i = 0; i < overMap_->count(); ++i)
    overMap_->itemAt(i)->widget()->setVisible(overMap_->itemAt(i)->widget() == over);
  if (over != nullptr && overMap_->indexOf(over) < 0) overMap_->addWidget(over);
  if (over != nullptr) over->show();
  search_->hide();
  layers_->setVisible(over == nullptr);
  foot_->showKeys(now.footKeys());
  if (MeterFigure* figure = now.meterFigure()) figure->setLive(figure_);
  shareRoom();
  if (station_ == Station::board)
    static_cast<BoardPage&>(now).setMetered(meter_ && meter_->status().state == LinkState::ready);
  askWantedMode();
}

void BenchWindow::draw() {
  auto& board = static_cast<BoardPage&>(page(Station::board));
  if (station_ == Station::board && board.drawing()) return board.setDrawing(false);
  go(Station::board);
  board.setDrawing(true);
}

void BenchWindow::askWantedMode() {
  const ReadingMode wanted = page(station_).wantedMode();
  if (!meter_ || std::exchange(askedMode_, wanted) == wanted) return;
  meter_->setMode(wanted);
}

void BenchWindow::openBoard(const QString& file) {
  static_cast<BoardPage&>(page(Station::board)).open(file);
}

void BenchWindow::refresh() {
  if (restoring_) return;
  const Desk all = desk();
  std::vector<WayBar::Step> steps;
  steps.reserve(stations.size());
  for (const Station station : stations)
    steps.push_back({stationName(station), stationDone(station, all), station == station_});
  way_->setSteps(steps);
  const Job* job = job_->job();
  way_->setJob(job == nullptr ? tr("No job") : QString::fromStdString(job->number),
               job == nullptr ? QString() : QString::fromStdString(job->device));
  const StationPage* now = made_.at(static_cast<std::size_t>(station_));
  const FootMode mode = now != nullptr ? now->footMode() : FootMode();
  foot_->setMode(mode.look, mode.text.isEmpty() ? stationName(station_).toUpper() : mode.text);
  askWantedMode();
  const NextThing next = nextThing(all);
  foot_->setDue(saidAt(station_, next));
  nextButton_->setVisible(next.station != station_ && (now == nullptr || !now->goesOnItself()));
  nextButton_->setText(tr("To %1").arg(stationName(next.station)));
  nextButton_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_Return));
}

bool BenchWindow::isNarrow() const {
  return width() < scaled(leastBeside);
}

void BenchWindow::putFirst(bool map) {
  mapFirst_ = map;
  shareRoom();
  if (map)
    map_->setFocus();
  else
    page(station_).arrive();
}

void BenchWindow::shareRoom() {
  // Where nothing is to be seen on the board, the page has all of the window; where letters are large, the
  // one that is worked with.
  const bool hasMap = station_ != Station::bookIn && station_ != Station::handOver && hasPlaces();
  const bool narrow = isNarrow();
  StationPage* now = made_.at(static_cast<std::size_t>(station_)); // laying out makes no page
  const bool beside = !narrow && (now == nullptr || now->wantsMap());
  const bool appears = panel_->isHidden() && hasMap && (beside || mapFirst_);
  panel_->setVisible(hasMap && (beside || mapFirst_));
  pages_->setVisible(!(hasMap && narrow && mapFirst_));
  if (appears) refreshMap();
  // Where it is about the board itself the map comes first, and what is said of it stands beside.
  const bool mapLeft = now != nullptr && station_ == Station::board && panel_->isVisibleTo(this);
  if (splitter_->indexOf(pages_) != (mapLeft ? 1 : 0)) splitter_->insertWidget(mapLeft ? 1 : 0, pages_);
  spaceMap();
  const int room = splitter_->width() - splitter_->handleWidth();
  const int forStation = static_cast<int>(room * (mapLeft ? drawnShare : stationShare_));
  splitter_->setSizes(mapLeft ? QList<int>{room - forStation, forStation}
                              : QList<int>{forStation, room - forStation});
  sayHowPictureLies();
}

void BenchWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  followSize();
  shareRoom();
  placeMessageAnew();
}

void BenchWindow::followSize() {
  const double scale = faceZoom(width(), height()) * letters_ / 100.0;
  if (scale == faceScale()) return;
  setFaceScale(scale);
  followScale(*this);
}

void BenchWindow::refreshMap() {
  if (!map_->isVisible()) return;
  map_->setOverlay(page(station_).overlay());
}

void BenchWindow::sayHowPictureLies() {
  const bool seen = map_->isVisibleTo(this) && map_->hasBoard();
  const auto lie = seen ? std::optional(map_->view().lie()) : std::nullopt;
  if (std::exchange(picture_, lie) == lie) return;
  setPictureBeside(lie);
  for (StationPage* made : made_)
    if (made != nullptr) made->pictureTurned();
  refresh();
}

void BenchWindow::tell(const QString& text, bool isError) {
  message_->setText(isError && !text.isEmpty() ? QStringLiteral("⚠ ") + text : text);
  setLetters(*message_, Letters::reading, isError);
  message_->setVisible(!text.isEmpty());
  placeMessageAnew();
  if (!isError || text.isEmpty()) return;
  sounds_->play(Tone::refused);
  sounds_->say(text);
}

/// Now, and once the page is laid out, which what was told, or another size, may change later.
void BenchWindow::placeMessageAnew() {
  placeMessage();
  if (!message_->text().isEmpty())
    QMetaObject::invokeMethod(this, &BenchWindow::placeMessage, Qt::QueuedConnection);
}

void BenchWindow::placeMessage() {
  if (message_->text().isEmpty()) return;
  const QWidget& all = *centralWidget();
  StationPage* now = made_.at(static_cast<std::size_t>(station_));
  const QWidget* anchor = now != nullptr ? now->messageAnchor() : nullptr;
  const bool anchored = anchor != nullptr && anchor->isVisible();
  const int left = anchored ? anchor->mapTo(&all, QPoint()).x() : scaled(face::margin);
  const int most = std::max(scaled(200), std::min(all.width() - left - scaled(face::margin), scaled(640)));
  const QFontMetrics metrics(message_->font());
  const int frame = 2 * message_->margin() + 2 * scaled(face::grid);
  const int width = std::min(most, metrics.horizontalAdvance(message_->text()) + frame);
  const int height = message_->heightForWidth(width);
  int top = foot_->y() - height - scaled(face::grid);
  if (anchored) top = std::min(top, anchor->mapTo(&all, QPoint(0, anchor->height())).y() + scaled(4));
  message_->setGeometry(left, top, width, height);
  message_->raise();
}

QString BenchWindow::message() const {
  return message_->text();
}

QString BenchWindow::nextText() const {
  return foot_->due();
}

void BenchWindow::undo() {
  page(station_).undo();
}

void BenchWindow::setTheme(PictureTheme theme) {
  theme_ = theme;
  setFace(theme);
  map_->setTheme(theme);
  for (StationPage* made : made_)
    if (made != nullptr) made->setTheme(theme);
}

void BenchWindow::setWhy(bool why) {
  why_ = why;
  // Settings that are written wait for the disk: not at every start.
  if (QSettings settings; settings.value(QStringLiteral("window/why"), false).toBool() != why)
    settings.setValue(QStringLiteral("window/why"), why);
  for (StationPage* made : made_)
    if (made != nullptr) made->setWhy(why);
}

void BenchWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls() && event->mimeData()->urls().first().isLocalFile())
    event->acceptProposedAction();
}

void BenchWindow::dropEvent(QDropEvent* event) {
  const QList<QUrl> urls = event->mimeData()->urls();
  if (urls.isEmpty() || !urls.first().isLocalFile()) return;
  go(Station::board);
  const QString file = urls.first().toLocalFile();
  auto& board = static_cast<BoardPage&>(page(Station::board));
  if (!isPhoto(file)) {
    // Dropped on a drawing it is brought into it.
    if (board.drawing()) return board.drawView().mergeFile(file);
    return openBoard(file);
  }
  board.setDrawing(true);
  if (board.drawing()) board.drawView().addPhoto(file);
}

void BenchWindow::showEvent(QShowEvent* event) {
  // Not before: the station at which it was left may be another one, and making a page takes its time.
  if (pages_->currentWidget() == nullptr ||
      pages_->currentWidget() != made_.at(static_cast<std::size_t>(station_)))
    showStation(station_);
  QMainWindow::showEvent(event);
}

void BenchWindow::paintEvent(QPaintEvent* event) {
  QMainWindow::paintEvent(event);
  if (painted_) return;
  painted_ = true;
  QMetaObject::invokeMethod(
      this,
      [this] {
        Q_EMIT firstPicture();
        job_->readBoardsNow();
        const QSettings settings;
        for (const auto& set : {sounds_->setTones(settings.value(QStringLiteral("sound/tones")).toBool()),
                                sounds_->setSpeech(settings.value(QStringLiteral("sound/speech")).toBool())})
          if (!set) tell(shown(set.error()), true);
      },
      Qt::QueuedConnection);
}

} // namespace netmend
