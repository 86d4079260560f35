#include "netmend/bench/board_canvas.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

#include "netmend/drawing/palette.h"

namespace netmend {

namespace {

constexpr double clickReach = 4.0;  ///< pixels that a click may slip
constexpr double wheelStep = 120.0; ///< eighths of a degree of one notch, as Qt counts them
constexpr double keyPan = 0.12;     ///< share of the frame

QString netText(const Board& board, const Pin& pin) {
  if (!pin.net.known()) return QStringLiteral("net not known");
  const Net* net = board.nets.find(pin.net.value);
  if (net == nullptr) return QStringLiteral("connected to nothing");
  return net->name.empty() ? QStringLiteral("net without name")
                           : QStringLiteral("net ") + QString::fromStdString(net->name);
}

} // namespace

BoardCanvas::BoardCanvas(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setMinimumSize(320, 240);
}

void BoardCanvas::setBoard(Board board) {
  auto next = std::make_unique<Board>(std::move(board));
  scene_ = std::make_unique<BoardScene>(*next);
  board_ = std::move(next);
  overlay_ = {};
  view_.side = Side::top;
  fit();
}

void BoardCanvas::fit() {
  if (!scene_) return;
  view_ = viewOf(scene_->extent(), rect(), view_.side);
  fitted_ = true;
  update();
}

void BoardCanvas::flip() {
  view_.flip();
  update();
}

void BoardCanvas::seeThrough(bool on) {
  overlay_.seeThrough = on;
  update();
}

void BoardCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette::paper);
  const PictureType type = pictureType(std::max(12.0, fontInfo().pixelSize() * 0.8));
  if (!scene_) {
    painter.setFont(font());
    painter.setPen(palette::quietText);
    painter.drawText(rect(), Qt::AlignCenter, tr("Drop a board file here, or press Ctrl+O"));
    return;
  }
  paintBoard(painter, *scene_, view_, overlay_, type);
  if (!hasFocus()) return;
  painter.setPen(QPen(palette::blue, 2));
  painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void BoardCanvas::resizeEvent(QResizeEvent*) {
  if (fitted_)
    fit();
  else
    view_.frame = rect();
}

void BoardCanvas::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  pressedAt_ = draggedTo_ = event->position();
  dragged_ = false;
}

void BoardCanvas::mouseMoveEvent(QMouseEvent* event) {
  tellPlace(event->position());
  if (!pressedAt_) return;
  if ((event->position() - *pressedAt_).manhattanLength() > clickReach) dragged_ = true;
  if (!dragged_) return;
  view_.pan(event->position() - draggedTo_);
  draggedTo_ = event->position();
  fitted_ = false;
  update();
}

void BoardCanvas::mouseReleaseEvent(QMouseEvent* event) {
  if (pressedAt_ && !dragged_ && event->button() == Qt::LeftButton) light(event->position());
  pressedAt_.reset();
}

void BoardCanvas::wheelEvent(QWheelEvent* event) {
  view_.zoom(event->angleDelta().y() / wheelStep, event->position());
  fitted_ = false;
  update();
  event->accept();
}

void BoardCanvas::keyPressEvent(QKeyEvent* event) {
  const QPointF middle = view_.frame.center();
  const double dx = view_.frame.width() * keyPan;
  const double dy = view_.frame.height() * keyPan;
  const auto pan = [&](double x, double y) {
    view_.pan({x, y});
    fitted_ = false;
  };
  const auto zoom = [&](double steps) {
    view_.zoom(steps, middle);
    fitted_ = false;
  };
  switch (event->key()) {
  case Qt::Key_Left:
    pan(dx, 0);
    break;
  case Qt::Key_Right:
    pan(-dx, 0);
    break;
  case Qt::Key_Up:
    pan(0, dy);
    break;
  case Qt::Key_Down:
    pan(0, -dy);
    break;
  case Qt::Key_Plus:
  case Qt::Key_Equal:
    zoom(1);
    break;
  case Qt::Key_Minus:
    zoom(-1);
    break;
  case Qt::Key_F:
    fit();
    break;
  case Qt::Key_Tab:
    flip();
    break;
  case Qt::Key_X:
    seeThrough(!overlay_.seeThrough);
    break;
  default:
    QWidget::keyPressEvent(event);
    return;
  }
  update();
}

bool BoardCanvas::focusNextPrevChild(bool) {
  // Tab turns the board over; there is nothing else to go to.
  return false;
}

void BoardCanvas::light(QPointF at) {
  overlay_.litNets.clear();
  if (!scene_) return;
  const Pad* pad = board_->pads.find(scene_->padAt(view_.toBoard(at), view_.side));
  const Pin* pin = pad != nullptr ? board_->pins.find(pad->pin) : nullptr;
  if (pin != nullptr && pin->net.known() && pin->net.value) overlay_.litNets.push_back(pin->net.value);
  update();
}

void BoardCanvas::tellPlace(QPointF at) {
  if (!onPlace || !scene_) return;
  const Point place = view_.toBoard(at);
  QString text = QStringLiteral("%1, %2 mm").arg(place.x.mm(), 0, 'f', 2).arg(place.y.mm(), 0, 'f', 2);
  const Pad* pad = board_->pads.find(scene_->padAt(place, view_.side));
  const Pin* pin = pad != nullptr ? board_->pins.find(pad->pin) : nullptr;
  if (pin != nullptr)
    text = QStringLiteral("%1, %2    ")
               .arg(QString::fromStdString(pinLabel(*board_, pin->id)), netText(*board_, *pin)) +
           text;
  onPlace(text);
}

} // namespace netmend
