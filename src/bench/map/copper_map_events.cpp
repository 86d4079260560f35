#include "copper_map.h"

#include <cmath>
#include <utility>

#include <QGuiApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

#include "map_picture.h"
#include "netmend/drawing/shown.h"
#include "netmend/words/sketch.h"

namespace netmend {

namespace {

constexpr double clickReach = 4.0;  ///< pixels that a click may slip
constexpr double wheelStep = 120.0; ///< eighths of a degree of one notch, as Qt counts them
constexpr double keyPan = 0.12;     ///< share of the frame
constexpr double keyTurn = 5.0;     ///< degrees

QString millimetres(Length length) {
  return QString::number(length.mm(), 'f', 2);
}

/// `way` rounded so that the picture moves by whole pixels: what is painted can be moved along.
QPointF wholePixels(QPointF way, double ratio) {
  return {std::round(way.x() * ratio) / ratio, std::round(way.y() * ratio) / ratio};
}

} // namespace

void CopperMap::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  noteCovered();
  if (!ready_) {
    painter.fillRect(rect(), colors_.paper);
    painter.setFont(font());
    painter.setPen(colors_.quietInk);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     board_ ? tr("Working out the picture of the board …")
                            : tr("Drop a board file here, or press Ctrl+O"));
  } else {
    painter.drawImage(QPointF(0, 0), picture_->frame(view_, style()));
    paintLive(painter);
  }
  if (!hasFocus()) return;
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setPen(QPen(colors_.lit, 2));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void CopperMap::paintLive(QPainter& painter) {
  const PictureType& type = style()->type;
  if (!ready_->scene.extent().empty()) paintScaleBar(painter, view_, type, colors_);
  if (const QRectF box = inset(); !box.isEmpty())
    paintInset(painter, ready_->scene, view_, overlay_, box, colors_);
  painter.setRenderHint(QPainter::Antialiasing);
  if (byKeys_ && hasFocus()) {
    const QPointF c = view_.frame.center();
    const double r = type.font.pixelSize();
    for (const auto& [colour, width] : {std::pair(colors_.casing, 5.0), std::pair(colors_.ink, 2.0)}) {
      painter.setPen(QPen(colour, width));
      painter.drawLine(c - QPointF(r, 0), c - QPointF(r / 3, 0));
      painter.drawLine(c + QPointF(r / 3, 0), c + QPointF(r, 0));
      painter.drawLine(c - QPointF(0, r), c - QPointF(0, r / 3));
      painter.drawLine(c + QPointF(0, r / 3), c + QPointF(0, r));
    }
  }
  if (const auto hand = hand_; hand && hand->paint) hand->paint(painter, view_);
  if (measuring_) paintMeasure(painter, type);
}

void CopperMap::paintMeasure(QPainter& painter, const PictureType& type) const {
  QString text = tr("Measure: click the first place, or press Return at the cross");
  if (!measure_.empty()) {
    const Point from = measure_[0];
    const Point to =
        measure_.size() > 1 ? measure_[1] : view_.toBoard(byKeys_ ? view_.frame.center() : pointer_);
    const QLineF line(view_.toPicture(from), view_.toPicture(to));
    for (const auto& [colour, width] : {std::pair(colors_.casing, 5.0), std::pair(colors_.ink, 2.0)}) {
      painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::RoundCap));
      painter.drawLine(line);
      const double r = type.font.pixelSize() * 0.5;
      for (const QPointF end : {line.p1(), line.p2()})
        painter.drawEllipse(end, r, r);
    }
    const auto across = [](Length length) { return millimetres(length.nm < 0 ? -length : length); };
    text = tr("%1 mm    dx %2    dy %3")
               .arg(millimetres(distance(from, to)), across(to.x - from.x), across(to.y - from.y));
  }
  QFont bold = type.font;
  bold.setBold(true);
  painter.setFont(bold);
  const QFontMetricsF metrics(bold);
  const double pad = type.font.pixelSize() * 0.5;
  const QRectF box(view_.frame.left() + pad, view_.frame.top() + pad,
                   metrics.horizontalAdvance(text) + 2 * pad, metrics.height() + pad);
  painter.fillRect(box, colors_.labelGround);
  painter.setPen(colors_.ink);
  painter.drawText(box, Qt::AlignCenter, text);
}

void CopperMap::resizeEvent(QResizeEvent*) {
  view_.frame = rect();
  if (aim_ != Aim::byHand) aimNow();
}

void CopperMap::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange) styleChanged();
  QWidget::changeEvent(event);
}

void CopperMap::focusInEvent(QFocusEvent* event) {
  if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason) byKeys_ = true;
  update();
}

void CopperMap::focusOutEvent(QFocusEvent*) {
  update();
}

void CopperMap::mousePressEvent(QMouseEvent* event) {
  byKeys_ = false;
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  pressedAt_ = draggedTo_ = event->position();
  dragged_ = false;
  const bool left = event->button() == Qt::LeftButton;
  const auto hand = hand_;
  stroking_ = left && !measuring_ && hand && hand->press && hand->press(pointerAt(event->position()));
}

void CopperMap::mouseMoveEvent(QMouseEvent* event) {
  pointer_ = event->position();
  if (measuring_ && measure_.size() == 1) {
    byKeys_ = false;
    update();
  }
  const auto hand = hand_;
  if (hand && hand->move) {
    hand->move(pointerAt(pointer_));
    update();
  }
  if (!pressedAt_) {
    tellPlace(pointer_);
    return;
  }
  if ((pointer_ - *pressedAt_).manhattanLength() > clickReach) dragged_ = true;
  if (!dragged_) return;
  if (stroking_ && hand) {
    hand->stroke(pointerAt(pointer_), false);
    return;
  }
  const QPointF by = wholePixels(pointer_ - draggedTo_, devicePixelRatioF());
  takeByHand();
  view_.pan(by);
  draggedTo_ += by;
  viewChanged();
}

void CopperMap::mouseReleaseEvent(QMouseEvent* event) {
  const bool left = pressedAt_ && event->button() == Qt::LeftButton;
  pressedAt_.reset();
  const auto hand = hand_;
  if (left && dragged_ && std::exchange(stroking_, false) && hand) {
    hand->stroke(pointerAt(event->position()), true);
    return;
  }
  stroking_ = false;
  if (left && !dragged_) act(event->position());
}

void CopperMap::leaveEvent(QEvent*) {
  if (onPlace && !byKeys_) onPlace({});
}

MapPointer CopperMap::pointerAt(QPointF at) const {
  return {view_.toBoard(at), view_.side, Length::fromMm(clickReach / view_.scale.value),
          QGuiApplication::keyboardModifiers()};
}

void CopperMap::keyReleaseEvent(QKeyEvent* event) {
  if (photoOnly_ && event->key() == Qt::Key_H && !event->isAutoRepeat()) return showPhotoOnly(false);
  QWidget::keyReleaseEvent(event);
}

void CopperMap::wheelEvent(QWheelEvent* event) {
  const double steps =
      (event->angleDelta().y() != 0 ? event->angleDelta().y() : event->angleDelta().x()) / wheelStep;
  if (const auto hand = hand_;
      event->modifiers() != Qt::NoModifier && hand && hand->wheel && hand->wheel(steps, event->modifiers())) {
    update();
    return event->accept();
  }
  zoomBy(event->angleDelta().y() / wheelStep, event->position());
  event->accept();
}

void CopperMap::zoomBy(double steps, QPointF at) {
  takeByHand();
  view_.zoom(steps, at);
  viewChanged();
}

void CopperMap::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_H && !photos_.empty()) return showPhotoOnly(true);
  const QPointF at = byKeys_ ? view_.frame.center() : pointer_;
  if (const auto hand = hand_; hand && hand->key && hand->key(*event, pointerAt(at))) return update();
  const auto plain = event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier);
  if (plain != 0 || !(moveByKey(key) || turnByKey(key) || actByKey(key))) {
    QWidget::keyPressEvent(event);
    return;
  }
  if (!byKeys_) {
    byKeys_ = true;
    tellMiddle();
  }
  update();
}

bool CopperMap::moveByKey(int key) {
  const auto pan = [&](double x, double y) {
    byKeys_ = true;
    takeByHand();
    view_.pan(wholePixels({x * view_.frame.width() * keyPan, y * view_.frame.height() * keyPan},
                          devicePixelRatioF()));
    viewChanged();
  };
  switch (key) {
  case Qt::Key_Left:
    pan(1, 0);
    return true;
  case Qt::Key_Right:
    pan(-1, 0);
    return true;
  case Qt::Key_Up:
    pan(0, 1);
    return true;
  case Qt::Key_Down:
    pan(0, -1);
    return true;
  case Qt::Key_Plus:
  case Qt::Key_Equal:
    zoomBy(1, view_.frame.center());
    return true;
  case Qt::Key_Minus:
    zoomBy(-1, view_.frame.center());
    return true;
  case Qt::Key_F:
    fit();
    return true;
  default:
    return false;
  }
}

bool CopperMap::turnByKey(int key) {
  const auto turn = [&](double degrees) {
    setTurn(Degrees(std::fmod(view_.turn.value + degrees + 360.0, 360.0)));
  };
  switch (key) {
  case Qt::Key_R:
    turn(-90);
    return true;
  case Qt::Key_L:
    turn(90);
    return true;
  case Qt::Key_Comma:
    turn(keyTurn);
    return true;
  case Qt::Key_Period:
    turn(-keyTurn);
    return true;
  case Qt::Key_0:
    standUpright();
    return true;
  case Qt::Key_T:
    flip();
    return true;
  case Qt::Key_X:
    seeThrough(!overlay_.seeThrough);
    return true;
  default:
    return false;
  }
}

bool CopperMap::actByKey(int key) {
  switch (key) {
  case Qt::Key_M:
    startMeasuring();
    return true;
  case Qt::Key_Escape:
    if (!measuring_) return false;
    stopMeasuring();
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter:
    act(view_.frame.center());
    return true;
  default:
    return false;
  }
}

void CopperMap::act(QPointF at) {
  if (measuring_ && ready_) {
    measureAt(at);
    return;
  }
  if (const auto hand = hand_; hand && hand->click && hand->click(pointerAt(at))) return update();
  if (!ready_) return;
  const MapPlace place = placeAt(at);
  std::vector<NetId> nets;
  if (place.net) nets = lineOfNet ? lineOfNet(place.net) : std::vector<NetId>{place.net};
  light(std::move(nets));
  if (place.pin && onPin) onPin(place.pin);
}

void CopperMap::measureAt(QPointF at) {
  if (measure_.size() == 2) measure_.clear();
  measure_.push_back(view_.toBoard(at));
  update();
  const auto both = measured();
  if (both && onMeasured) onMeasured(*both);
}

MapPlace CopperMap::placeAt(QPointF at) const {
  MapPlace place;
  place.at = view_.toBoard(at);
  QStringList words;
  if (ready_) {
    const Board& board = *ready_->board;
    const auto found = ready_->scene.foundAt(place.at, view_.side, overlay_.seeThrough);
    place.net = found.net;
    place.part = found.part;
    const Pad* pad = board.pads.find(ready_->scene.padAt(place.at, view_.side));
    if (const Pin* pin = pad != nullptr ? board.pins.find(pad->pin) : nullptr) {
      place.pin = pin->id;
      place.part = pin->part;
      place.net = pin->net.known() ? pin->net.value : NetId();
      words << QString::fromStdString(pinLabel(board, pin->id));
      if (!pin->net.known()) words << tr("net not known");
      if (pin->net.known() && board.nets.find(place.net) == nullptr) words << tr("connected to nothing");
      if (const Said leads = leadsToSaid(ready_->lookup, pin->id); !leads.empty()) words << shown(leads);
    } else if (const Part* part = board.parts.find(place.part)) {
      words << QString::fromStdString(part->reference);
    }
    if (const Net* net = board.nets.find(place.net))
      words << (net->name.empty() ? tr("net without name")
                                  : tr("net %1").arg(QString::fromStdString(net->name)));
    const QString verdict = place.pin && verdictOf ? verdictOf(place.pin) : QString();
    if (!verdict.isEmpty()) words << verdict;
  }
  const QString where = tr("%1, %2 mm").arg(millimetres(place.at.x), millimetres(place.at.y));
  place.text = words.isEmpty() ? where : words.join(QStringLiteral(", ")) + QStringLiteral("    ") + where;
  return place;
}

void CopperMap::tellPlace(QPointF at) {
  if (onPlace && ready_) onPlace(placeAt(at));
}

void CopperMap::tellMiddle() {
  if (!ready_) return;
  const MapPlace place = placeAt(view_.frame.center());
  // A screen reader says what the cross is over.
  setAccessibleDescription(place.text);
  if (onPlace) onPlace(place);
}

} // namespace netmend
