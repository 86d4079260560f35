#include "pictures.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <QMouseEvent>
#include <QPainter>

namespace netmend {

namespace {

constexpr double stripLetters = 0.85; ///< of the widget's font: many pins side by side
constexpr double longFrom = 3.0;      ///< a connector's length over its height
constexpr double largestPin = 44.0;   ///< pixels

QRectF extentOf(const std::vector<QPointF>& places) {
  QRectF extent(places.front(), QSizeF(0, 0));
  for (const QPointF& p : places)
    extent = extent.united(QRectF(p, QSizeF(1e-9, 1e-9)));
  return extent;
}

} // namespace

StripView::StripView(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setAccessibleName(tr("Pin strip"));
}

void StripView::setStrip(PinStrip strip) {
  strip_ = std::move(strip);
  std::size_t odd = 0, read = 0;
  for (const StripPin& pin : strip_.pins) {
    if (!pin.reading) continue;
    ++read;
    if (pin.reading->odd()) ++odd;
  }
  setAccessibleDescription(tr("%1 of %2 pins read, %3 odd").arg(read).arg(strip_.pins.size()).arg(odd));
  updateGeometry();
  update();
}

void StripView::setTheme(PictureTheme theme) {
  theme_ = theme;
  update();
}

PictureType StripView::type() const {
  return pictureType(fontInfo().pixelSize() * stripLetters);
}

int StripView::heightForWidth(int width) const {
  if (strip_.pins.empty()) return 0;
  return static_cast<int>(std::ceil(pinStripHeight(strip_, width, type())));
}

QSize StripView::sizeHint() const {
  constexpr int usualWidth = 700;
  return {usualWidth, heightForWidth(usualWidth)};
}

void StripView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const PictureColors colors = pictureColors(theme_);
  painter.fillRect(rect(), colors.paper);
  if (!strip_.pins.empty()) paintPinStrip(painter, strip_, QRectF(rect()), type(), colors);
}

ConnectorView::ConnectorView(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Connector as it lies"));
  setMinimumHeight(90);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void ConnectorView::setPins(std::vector<ConnectorPin> pins) {
  pins_ = std::move(pins);
  const auto due = std::find_if(pins_.begin(), pins_.end(), [](const ConnectorPin& p) { return p.due; });
  setAccessibleDescription(due == pins_.end() ? tr("no pin is due") : tr("pin %1 is due").arg(due->label));
  update();
}

void ConnectorView::setTheme(PictureTheme theme) {
  theme_ = theme;
  update();
}

void ConnectorView::turn() {
  quarters_ = (quarters_ + 1) % 4;
  update();
}

void ConnectorView::mirror() {
  mirrored_ = !mirrored_;
  update();
}

bool ConnectorView::isLong() const {
  const std::vector<QPointF> at = turned();
  if (at.empty()) return true;
  const QRectF extent = extentOf(at);
  return extent.width() >= longFrom * extent.height();
}

std::vector<QPointF> ConnectorView::turned() const {
  std::vector<QPointF> out;
  for (const ConnectorPin& pin : pins_) {
    QPointF p = pin.place;
    if (mirrored_) p.setX(-p.x());
    for (int i = 0; i < quarters_; ++i)
      p = {-p.y(), p.x()};
    out.push_back(p);
  }
  return out;
}

std::vector<QPointF> ConnectorView::places() const {
  std::vector<QPointF> out = turned();
  if (out.empty()) return out;
  const QRectF extent = extentOf(out);
  const double margin = 26;
  const QRectF frame = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
  const double scale = std::min(frame.width() / std::max(extent.width(), 1e-6),
                                frame.height() / std::max(extent.height(), 1e-6));
  for (QPointF& p : out)
    p = frame.center() + (p - extent.center()) * scale;
  return out;
}

double ConnectorView::pitch(const std::vector<QPointF>& places) const {
  double least = 60;
  for (std::size_t i = 1; i < places.size(); ++i)
    least = std::min(least, std::hypot(places[i].x() - places[i - 1].x(), places[i].y() - places[i - 1].y()));
  return std::max(least, 6.0);
}

void ConnectorView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const PictureColors colors = pictureColors(theme_);
  painter.fillRect(rect(), colors.paper);
  const auto at = places();
  const double size = std::min(pitch(at) * 0.72, largestPin);
  QFont font = this->font();
  font.setPixelSize(std::max(9, static_cast<int>(size * 0.55)));
  painter.setFont(font);
  const bool named = size >= 15;
  const bool large = size >= 28; // its name can be read within it, also from a metre
  for (std::size_t i = 0; i < pins_.size(); ++i) {
    const ConnectorPin& pin = pins_[i];
    const QRectF box(at[i].x() - size / 2, at[i].y() - size / 2, size, size);
    painter.setPen(QPen(colors.edge, 1.2));
    painter.setBrush(pin.skipped ? colors.lane : colors.substrate);
    painter.drawRoundedRect(box, 2, 2);
    if (pin.read)
      paintMark(painter, pin.shape, at[i], size * 0.62, colors);
    else if (named && (large || !pin.due)) {
      painter.setPen(colors.ink);
      painter.drawText(box, Qt::AlignCenter, pin.label);
    }
    if (pin.skipped) {
      painter.setPen(QPen(colors.edge, 1.2));
      painter.drawLine(box.topLeft(), box.bottomRight());
    }
  }
  // Last, so that no neighbour covers it.
  for (std::size_t i = 0; i < pins_.size(); ++i) {
    if (!pins_[i].due) continue;
    painter.setPen(QPen(colors.due, 3.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(at[i], size * 0.95, size * 0.95);
    if (large && !pins_[i].read) continue;
    QFont beside = this->font();
    beside.setPixelSize(std::clamp(static_cast<int>(size * 0.8), 16, 24));
    beside.setBold(true);
    painter.setFont(beside);
    const QFontMetricsF metrics(beside);
    QRectF label(0, 0, metrics.horizontalAdvance(pins_[i].label) + 8, metrics.height());
    label.moveCenter({at[i].x(), at[i].y() - size - label.height() / 2 - 2});
    if (label.top() < 0) label.moveTop(std::min(at[i].y() + size + 4, height() - label.height()));
    label.moveLeft(std::clamp(label.left(), 2.0, std::max(2.0, width() - label.width() - 2)));
    painter.fillRect(label, colors.labelGround);
    painter.setPen(colors.ink);
    painter.drawText(label, Qt::AlignCenter, pins_[i].label);
  }
}

void ConnectorView::mousePressEvent(QMouseEvent* event) {
  if (!onPin) return;
  const auto at = places();
  double best = std::numeric_limits<double>::max();
  std::size_t nearest = at.size();
  for (std::size_t i = 0; i < at.size(); ++i) {
    const QPointF d = at[i] - event->position();
    if (const double distance = std::hypot(d.x(), d.y()); distance < best) {
      best = distance;
      nearest = i;
    }
  }
  if (nearest < at.size() && best < pitch(at)) onPin(nearest);
}

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
