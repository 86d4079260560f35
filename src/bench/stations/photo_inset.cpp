#include "photo_inset.h"

#include <algorithm>
#include <cmath>

#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

namespace netmend {

namespace {
constexpr double clickReach = 4.0;
constexpr double nearest = 20.0; ///< widget pixels a photo pixel
} // namespace

PhotoInset::PhotoInset(QWidget* parent) : QWidget(parent) {
  setMinimumHeight(200);
  setObjectName(QStringLiteral("photoInset"));
  setAccessibleName(QCoreApplication::translate("netmend::PhotoInset", "The photo as it was taken"));
}

void PhotoInset::showPhoto(std::shared_ptr<const BoardPhoto> photo) {
  if (photo_ == photo) return;
  photo_ = std::move(photo);
  places_.clear();
  fit();
}

void PhotoInset::setPlaces(std::vector<PhotoPoint> places) {
  places_ = std::move(places);
  update();
}

void PhotoInset::fit() {
  if (photo_) {
    const QSizeF size = photo_->size();
    scale_ = std::min(width() / size.width(), height() / size.height());
    offset_ = QPointF((width() - size.width() * scale_) / 2, (height() - size.height() * scale_) / 2);
  }
  update();
}

QPointF PhotoInset::placeOf(PhotoPoint at) const {
  return offset_ + QPointF(at.x.value, at.y.value) * scale_;
}

void PhotoInset::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette().mid());
  if (!photo_) return;
  painter.setRenderHints(QPainter::SmoothPixmapTransform | QPainter::Antialiasing);
  const QImage& level = photo_->levelFor(scale_);
  painter.drawImage(QRectF(offset_, QSizeF(photo_->size()) * scale_), level);
  int number = 0;
  for (const PhotoPoint& place : places_) {
    const QPointF at = placeOf(place);
    for (const auto& [colour, width] :
         {std::pair(QColor(Qt::white), 5.0), std::pair(QColor(Qt::black), 2.0)}) {
      painter.setPen(QPen(colour, width));
      painter.drawLine(at - QPointF(9, 0), at + QPointF(9, 0));
      painter.drawLine(at - QPointF(0, 9), at + QPointF(0, 9));
    }
    const QRectF plate(at + QPointF(8, -26), QSizeF(20, 20));
    painter.fillRect(plate, Qt::white);
    painter.setPen(Qt::black);
    painter.drawText(plate, Qt::AlignCenter, QString::number(++number));
  }
}

void PhotoInset::mousePressEvent(QMouseEvent* event) {
  pressedAt_ = draggedTo_ = event->position();
  dragged_ = false;
}

void PhotoInset::mouseMoveEvent(QMouseEvent* event) {
  if ((event->buttons() & Qt::LeftButton) == 0) return;
  if ((event->position() - pressedAt_).manhattanLength() > clickReach) dragged_ = true;
  if (!dragged_) return;
  offset_ += event->position() - draggedTo_;
  draggedTo_ = event->position();
  update();
}

void PhotoInset::mouseReleaseEvent(QMouseEvent* event) {
  if (!photo_ || dragged_ || event->button() != Qt::LeftButton) return;
  const QPointF at = (event->position() - offset_) / scale_;
  const QSizeF size = photo_->size();
  if (at.x() < 0 || at.y() < 0 || at.x() > size.width() || at.y() > size.height()) return;
  if (onClick) onClick({Pixels(at.x()), Pixels(at.y())});
}

void PhotoInset::wheelEvent(QWheelEvent* event) {
  const double factor = std::pow(2.0, event->angleDelta().y() / 480.0);
  const double scale = std::clamp(scale_ * factor, 0.01, nearest);
  offset_ = event->position() - (event->position() - offset_) * (scale / scale_);
  scale_ = scale;
  update();
  event->accept();
}

void PhotoInset::resizeEvent(QResizeEvent*) {
  fit();
}

} // namespace netmend
