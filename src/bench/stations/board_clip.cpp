#include "board_clip.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <utility>

#include <QLineF>
#include <QPainter>
#include <QThreadPool>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"

namespace netmend {

namespace {

constexpr double clipMargin = 0.1; ///< of the picture, round what it is about

/// All that the thread which paints it has to know.
struct Clip {
  std::shared_ptr<const BoardScene> scene;
  Box box;
  Side side;
  Overlay overlay;
  QString plate;
  QString scaleWords;
  QSize size;
  double ratio;
  double scale;
  PictureTheme theme;
  PictureType type;
  QFont small;
  QFont bold;
  [[nodiscard]] int scaled(double pixels) const { return static_cast<int>(std::lround(pixels * scale)); }
};

/// Five millimetres, in the lower corner that is farther from every mark.
void paintScale(QPainter& painter, const BoardView& view, const Clip& clip) {
  const FaceColors& colors = faceColors(clip.theme);
  painter.setFont(clip.small);
  const int bar = static_cast<int>(view.scale.value * 5.0);
  const int gap = clip.scaled(face::grid);
  const int wide = std::max(bar, painter.fontMetrics().horizontalAdvance(clip.scaleWords)) + 2 * gap;
  const int high = clip.scaled(34);
  const auto crowding = [&](const QRect& place) {
    double least = 1e9;
    for (const OverlayMark& mark : clip.overlay.marks)
      least = std::min(least, QLineF(view.toPicture(mark.at), QRectF(place).center()).length());
    return least;
  };
  const QRect left(gap, clip.size.height() - high - gap / 2, wide, high);
  const QRect right(clip.size.width() - wide - gap, left.top(), wide, high);
  const QRect place = crowding(left) > crowding(right) ? left : right;
  painter.fillRect(place, colors.plate);
  painter.setPen(QPen(colors.ink, clip.scaled(2)));
  const int y = place.bottom() - clip.scaled(6);
  painter.drawLine(place.left() + gap, y, place.left() + gap + bar, y);
  painter.drawText(place.adjusted(gap, 0, 0, -clip.scaled(8)), Qt::AlignLeft | Qt::AlignVCenter,
                   clip.scaleWords);
}

QImage paint(const Clip& clip) {
  QImage out((QSizeF(clip.size) * clip.ratio).toSize(), QImage::Format_RGB32);
  if (out.isNull()) return out;
  out.setDevicePixelRatio(clip.ratio);
  const FaceColors& colors = faceColors(clip.theme);
  out.fill(colors.board);
  QPainter painter(&out);
  painter.setRenderHint(QPainter::Antialiasing);
  const BoardView view = viewOf(clip.box, QRectF({}, QSizeF(clip.size)), clip.side, clipMargin);
  Overlay overlay = clip.overlay;
  overlay.scaleBar = false; // it would lie on a landing
  paintBoard(painter, *clip.scene, view, overlay, clip.type, pictureColors(clip.theme));
  if (clip.overlay.scaleBar) paintScale(painter, view, clip);
  if (clip.plate.isEmpty()) return out;
  painter.setFont(clip.bold);
  const int gap = clip.scaled(face::grid);
  const int flags = static_cast<int>(Qt::AlignHCenter | Qt::AlignBottom) | static_cast<int>(Qt::TextWordWrap);
  const QRect room = QRect({}, clip.size).adjusted(gap, gap, -gap, -gap);
  const QRect words = painter.fontMetrics().boundingRect(room, flags, clip.plate);
  painter.fillRect(words.adjusted(-gap / 2, -gap / 4, gap / 2, gap / 4), colors.plate);
  painter.setPen(colors.ink);
  painter.drawText(room, flags, clip.plate);
  return out;
}

} // namespace

/// A picture on its way, shared with the thread that paints it.
struct BoardClip::Asked {
  Looks looks;
  std::mutex mutex;
  BoardClip* by; ///< null: nobody any more
  Asked(const Looks& wanted, BoardClip* clip) : looks(wanted), by(clip) {}
  void drop() {
    const std::lock_guard lock(mutex);
    by = nullptr;
  }
};

BoardClip::BoardClip(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

BoardClip::~BoardClip() {
  if (asked_) asked_->drop();
}

void BoardClip::showPlace(const Box& box, Side side, Overlay overlay, const QString& plate) {
  box_ = box;
  side_ = side;
  overlay_ = std::move(overlay);
  plate_ = plate;
  setAccessibleName(plate);
  ++place_;
  update();
}

void BoardClip::setScene(std::shared_ptr<const BoardScene> scene) {
  scene_ = std::move(scene);
  ++place_;
  update();
}

BoardClip::Looks BoardClip::wanted() const {
  return {place_, size(), devicePixelRatio(), faceScale(), faceTheme()};
}

void BoardClip::ask(const Looks& looks) {
  if (asked_ && asked_->looks == looks) return;
  if (asked_) asked_->drop();
  asked_ = std::make_shared<Asked>(looks, this);
  Clip clip{scene_,
            box_,
            side_,
            overlay_,
            plate_,
            side_ == Side::top ? tr("5 mm, top") : tr("5 mm, bottom"),
            looks.size,
            looks.ratio,
            looks.scale,
            looks.theme,
            pictureType(face::smallLetters * looks.scale),
            lettersFont(Letters::small),
            lettersFont(Letters::small, true)};
  QThreadPool::globalInstance()->start([asked = asked_, clip = std::move(clip)] {
    {
      const std::lock_guard lock(asked->mutex);
      if (asked->by == nullptr) return;
    }
    QImage picture = paint(clip);
    const std::lock_guard lock(asked->mutex);
    if (asked->by == nullptr) return;
    QMetaObject::invokeMethod(
        asked->by,
        [asked, picture = std::move(picture)] {
          BoardClip* by = asked->by; // only dropped in this thread
          if (by == nullptr || by->asked_ != asked) return;
          by->picture_ = picture;
          by->pictured_ = asked->looks;
          by->update();
        },
        Qt::QueuedConnection);
  });
}

void BoardClip::paintEvent(QPaintEvent*) {
  const Looks looks = wanted();
  if (scene_ && pictured_ != looks) ask(looks);
  QPainter painter(this);
  painter.fillRect(rect(), faceColors(faceTheme()).board);
  if (scene_ && !picture_.isNull()) painter.drawImage(0, 0, picture_);
  painter.fillRect(0, 0, scaled(1), height(), faceColors(faceTheme()).line);
}

} // namespace netmend
