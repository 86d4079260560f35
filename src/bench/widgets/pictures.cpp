#include "pictures.h"

#include <algorithm>

#include <QPainter>

#include "netmend/drawing/pin_strip.h"

namespace netmend {

VerdictMark::VerdictMark(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  setFixedSize(64, 64);
}

void VerdictMark::setShape(std::optional<MarkShape> shape) {
  shape_ = shape;
  update();
}

void VerdictMark::setTheme(PictureTheme theme) {
  theme_ = theme;
  update();
}

void VerdictMark::paintEvent(QPaintEvent*) {
  if (!shape_) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double size = std::min(width(), height()) * 0.8;
  paintMark(painter, *shape_, QRectF(rect()).center(), size, pictureColors(theme_));
}

} // namespace netmend
