#include "board_clip.h"

#include <QLineF>
#include <QPainter>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"

namespace netmend {

namespace {
constexpr double clipMargin = 0.1; ///< of the picture, round what it is about
} // namespace

BoardClip::BoardClip(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void BoardClip::showPlace(const Box& box, Side side, Overlay overlay, const QString& plate) {
  box_ = box;
  side_ = side;
  overlay_ = std::move(overlay);
  plate_ = plate;
  setAccessibleName(plate);
  cache_ = {};
  update();
}

void BoardClip::setScene(std::shared_ptr<const BoardScene> scene) {
  scene_ = std::move(scene);
  cache_ = {};
  update();
}

/// Five millimetres, in the lower corner that is farther from every mark.
void BoardClip::paintScale(QPainter& painter, const BoardView& view) const {
  const FaceColors& colors = faceColors(faceTheme());
  const QString words = side_ == Side::top ? tr("5 mm, top") : tr("5 mm, bottom");
  painter.setFont(lettersFont(Letters::small));
  const int bar = static_cast<int>(view.scale.value * 5.0);
  const int gap = scaled(face::grid);
  const int wide = std::max(bar, painter.fontMetrics().horizontalAdvance(words)) + 2 * gap;
  const int high = scaled(34);
  const auto crowding = [&](const QRect& place) {
    double least = 1e9;
    for (const OverlayMark& mark : overlay_.marks)
      least = std::min(least, QLineF(view.toPicture(mark.at), QRectF(place).center()).length());
    return least;
  };
  const QRect left(gap, height() - high - gap / 2, wide, high);
  const QRect right(width() - wide - gap, left.top(), wide, high);
  const QRect place = crowding(left) > crowding(right) ? left : right;
  painter.fillRect(place, colors.plate);
  painter.setPen(QPen(colors.ink, scaled(2)));
  const int y = place.bottom() - scaled(6);
  painter.drawLine(place.left() + gap, y, place.left() + gap + bar, y);
  painter.drawText(place.adjusted(gap, 0, 0, -scaled(8)), Qt::AlignLeft | Qt::AlignVCenter, words);
}

QPixmap BoardClip::painted() const {
  QPixmap out(size() * devicePixelRatio());
  out.setDevicePixelRatio(devicePixelRatio());
  const FaceColors& colors = faceColors(faceTheme());
  out.fill(colors.board);
  QPainter painter(&out);
  painter.setRenderHint(QPainter::Antialiasing);
  const BoardView view = viewOf(box_, QRectF(rect()), side_, clipMargin);
  Overlay overlay = overlay_;
  overlay.scaleBar = false; // it would lie on a landing
  if (scene_)
    paintBoard(painter, *scene_, view, overlay, pictureType(face::smallLetters * faceScale()),
               pictureColors(faceTheme()));
  if (overlay_.scaleBar) paintScale(painter, view);
  if (plate_.isEmpty()) return out;
  painter.setFont(lettersFont(Letters::small, true));
  const QFontMetrics metrics(painter.font());
  const int gap = scaled(face::grid);
  const int flags = static_cast<int>(Qt::AlignHCenter | Qt::AlignBottom) | static_cast<int>(Qt::TextWordWrap);
  const QRect room(gap, gap, width() - 2 * gap, height() - 2 * gap);
  const QRect words = metrics.boundingRect(room, flags, plate_);
  painter.fillRect(words.adjusted(-gap / 2, -gap / 4, gap / 2, gap / 4), colors.plate);
  painter.setPen(colors.ink);
  painter.drawText(room, flags, plate_);
  return out;
}

void BoardClip::paintEvent(QPaintEvent*) {
  if (cache_.isNull() || cache_.size() != size() * devicePixelRatio() || cachedFor_ != faceTheme()) {
    cache_ = painted();
    cachedFor_ = faceTheme();
  }
  QPainter painter(this);
  painter.drawPixmap(0, 0, cache_);
  painter.fillRect(0, 0, scaled(1), height(), faceColors(faceTheme()).line);
}

} // namespace netmend
