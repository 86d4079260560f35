#include "copper_map.h"

#include <algorithm>
#include <utility>

#include <QElapsedTimer>
#include <QThread>

#include "map_picture.h"

namespace netmend {

namespace {

constexpr int refreshEvery = 15; ///< ms, while tiles come in
constexpr int moveTime = 150;    ///< ms, from one due place to the next

} // namespace

CopperMap::CopperMap(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setMinimumSize(320, 240);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setAccessibleName(tr("Copper map"));
  setAccessibleDescription(tr("The picture of the board"));
  refresh_.setSingleShot(true);
  refresh_.setInterval(refreshEvery);
  connect(&refresh_, &QTimer::timeout, this, [this] { update(); });
  motion_.setDuration(moveTime);
  motion_.setStartValue(0.0);
  motion_.setEndValue(1.0);
  motion_.setEasingCurve(QEasingCurve::InOutQuad);
  connect(&motion_, &QVariantAnimation::valueChanged, this, [this](const QVariant& share) {
    view_ = between(from_, to_, share.toDouble());
    viewChanged();
  });
  picture_ = std::make_unique<MapPicture>([this] {
    QMetaObject::invokeMethod(
        this, [this] { takeResults(); }, Qt::QueuedConnection);
  });
}

CopperMap::~CopperMap() = default;

void CopperMap::setBoard(Board board, Keep keep) {
  setBoard(std::make_shared<const Board>(std::move(board)), keep);
}

void CopperMap::setBoard(std::shared_ptr<const Board> board, Keep keep) {
  if (board && board == board_ && keep == Keep::view) return; // it is shown, or being made ready
  board_ = std::move(board);
  // Of several boards set in a row only the last is made ready: what one of them did away with stays so.
  keep_ = ready_ != nullptr ? keep : Keep::nothing;
  if (keep_ == Keep::nothing) {
    if (ready_) picture_->release(std::exchange(ready_, nullptr), false);
    style_ = nullptr;
    const bool through = overlay_.seeThrough;
    overlay_ = {};
    overlay_.seeThrough = through;
    overlay_.overPhoto = !photos_.empty();
    measure_.clear();
    measuring_ = false;
    followed_ = {};
    motion_.stop();
    aim_ = Aim::all;
  }
  if (board_) picture_->prepare(board_);
  update();
}

void CopperMap::takeResults() {
  if (auto ready = picture_->takeBoard()) {
    if (ready->board == board_)
      showReady(std::move(ready));
    else
      picture_->release(std::move(ready), true);
  }
  if (!refresh_.isActive()) refresh_.start();
}

void CopperMap::showReady(std::shared_ptr<const MapBoard> ready) {
  const bool first = ready_ == nullptr;
  style_ = nullptr;
  if (auto old = std::exchange(ready_, std::move(ready))) picture_->release(std::move(old), true);
  if (first) {
    view_ = {};
    fit();
  } else if (aim_ == Aim::due || (aim_ == Aim::all && !hand_)) {
    aimNow(); // who draws on it knows where things are
  }
  update();
  if (onBoardReady) onBoardReady();
  if (onLayersChanged) onLayersChanged();
}

bool CopperMap::settled() {
  if (!board_) return true;
  if (!ready_ || ready_->board != board_) return false;
  noteCovered();
  (void)picture_->frame(view_, style());
  return picture_->exact();
}

bool CopperMap::settle(int milliseconds) {
  QElapsedTimer time;
  time.start();
  for (;;) {
    if (auto ready = picture_->takeBoard(); ready && ready->board == board_) showReady(std::move(ready));
    if (settled()) break;
    if (time.elapsed() > milliseconds) return false;
    QThread::msleep(2);
  }
  update();
  return true;
}

const std::shared_ptr<const MapStyle>& CopperMap::style() {
  const double ratio = devicePixelRatioF();
  if (!style_ || style_->pixelRatio != ratio)
    style_ = std::make_shared<const MapStyle>(
        MapStyle{ready_, photos_, overlay_, colors_, theme_,
                 pictureType(std::max(12.0, fontInfo().pixelSize() * 0.8)), ratio, photoOnly_});
  return style_;
}

void CopperMap::styleChanged() {
  style_ = nullptr;
  update();
}

void CopperMap::viewChanged() {
  if (byKeys_) tellMiddle();
  // What was under the pointer is elsewhere, or on the other side.
  if (const auto hand = hand_; hand && hand->move) hand->move(pointerAt(pointer_));
  update();
  if (std::exchange(lie_, view_.lie()) != view_.lie() && onTurned) onTurned();
}

bool CopperMap::show(const MapHit& hit) {
  if (hit.net) light(lineOfNet ? lineOfNet(hit.net) : std::vector<NetId>{hit.net});
  switch (hit.kind) {
  case MapHitKind::part:
    return zoomTo(hit.part);
  case MapHitKind::pin:
    return zoomTo(hit.pin);
  case MapHitKind::net:
    return zoomTo(hit.net);
  }
  return false;
}

std::vector<MapHit> CopperMap::find(std::string_view text, std::size_t most) const {
  return ready_ ? ready_->index.find(text, most) : std::vector<MapHit>();
}

void CopperMap::setOverlay(const Overlay& overlay) {
  overlay_.litNets = overlay.litNets;
  overlay_.lines = overlay.lines;
  overlay_.marks = overlay.marks;
  overlay_.zones = overlay.zones;
  styleChanged();
  if (!ready_) return; // it is said again when it is
  Followed now = followedIn(overlay_);
  if (now == followed_) return;
  followed_ = std::move(now);
  if (followed_.places.empty()) {
    if (aim_ == Aim::due) fit();
    return;
  }
  aim_ = Aim::due;
  motion_.stop();
  noteCovered();
  view_.frame = rect();
  moveTo(viewFollowing(followed_, ready_->scene, view_, overlay_));
}

void CopperMap::light(std::vector<NetId> nets) {
  if (overlay_.litNets == nets) return;
  overlay_.litNets = std::move(nets);
  styleChanged();
}

void CopperMap::setLayerShow(LayerId layer, LayerShow show) {
  std::erase(overlay_.dimmed, layer);
  std::erase(overlay_.hidden, layer);
  if (show == LayerShow::dimmed) overlay_.dimmed.push_back(layer);
  if (show == LayerShow::hidden) overlay_.hidden.push_back(layer);
  styleChanged();
  if (onLayersChanged) onLayersChanged();
}

LayerShow CopperMap::layerShow(LayerId layer) const {
  const auto in = [&](const std::vector<LayerId>& list) {
    return std::find(list.begin(), list.end(), layer) != list.end();
  };
  if (in(overlay_.hidden)) return LayerShow::hidden;
  return in(overlay_.dimmed) ? LayerShow::dimmed : LayerShow::whole;
}

void CopperMap::setTheme(PictureTheme theme) {
  theme_ = theme;
  colors_ = pictureColors(theme);
  styleChanged();
}

void CopperMap::setPhotos(std::vector<ShownPhoto> photos) {
  if (photos_ == photos) return;
  photos_ = std::move(photos);
  overlay_.overPhoto = !photos_.empty();
  styleChanged();
}

void CopperMap::showPhotoOnly(bool only) {
  if (std::exchange(photoOnly_, only) != only) styleChanged();
}

void CopperMap::setHand(std::shared_ptr<const Hand> hand) {
  hand_ = std::move(hand);
  stroking_ = false;
  update();
}

void CopperMap::startMeasuring() {
  measuring_ = true;
  measure_.clear();
  update();
}

void CopperMap::stopMeasuring() {
  measuring_ = false;
  measure_.clear();
  update();
}

std::optional<MapMeasure> CopperMap::measured() const {
  if (measure_.size() < 2) return std::nullopt;
  return MapMeasure{measure_[0], measure_[1]};
}

} // namespace netmend
