#include "board_clip.h"

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

void BoardClip::show(const Box& box, Side side, Overlay overlay, const QString& plate) {
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

QPixmap BoardClip::painted() const {
  QPixmap out(size() * devicePixelRatio());
  out.setDevicePixelRatio(devicePixelRatio());
  const FaceColors& colors = faceColors(faceTheme());
  out.fill(colors.board);
  QPainter painter(&out);
  painter.setRenderHint(QPainter::Antialiasing);
  if (scene_)
    paintBoard(painter, *scene_, viewOf(box_, QRectF(rect()), side_, clipMargin), overlay_,
               pictureType(face::smallLetters * faceScale()), pictureColors(faceTheme()));
  if (plate_.isEmpty()) return out;
  painter.setFont(lettersFont(Letters::small, true));
  const QFontMetrics metrics(painter.font());
  const int gap = scaled(face::grid);
  const QString words = metrics.elidedText(plate_, Qt::ElideMiddle, width() - 4 * gap);
  const int wide = metrics.horizontalAdvance(words) + 2 * gap;
  const QRect plate((width() - wide) / 2, height() - scaled(32), wide, scaled(24));
  painter.fillRect(plate, colors.plate);
  painter.setPen(colors.ink);
  painter.drawText(plate, Qt::AlignCenter, words);
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
