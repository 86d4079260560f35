#include <algorithm>
#include <array>
#include <cmath>

#include <QPainterPath>

#include "netmend/drawing/pin_strip.h"
#include "netmend/drawing/shown.h"
#include "painting.h"

// What is due, and what lies outside the frame.
namespace netmend {

namespace {

QFont plateFont(const Painting& p) {
  QFont font = p.type.font;
  font.setPixelSize(std::max(1, static_cast<int>(font.pixelSize() * 1.7)));
  font.setBold(true);
  return font;
}

/// How much of the box is taken by what is on the board, at most 1 each.
double coveredShare(const Painting& p, const QRectF& box, const std::vector<const SceneItem*>& around) {
  double sum = 0;
  for (const SceneItem* item : around) {
    const QRectF common = p.toPicture.mapRect(item->box) & box;
    // An outline is easily seen round a plate; a pad beneath one is gone.
    const double weight = item->kind == ItemKind::body ? 0.3 : 1.0;
    sum += weight * std::max(0.0, common.width()) * std::max(0.0, common.height());
  }
  return sum / (box.width() * box.height());
}

/// Beside the ring in each of eight directions, those straight to a side first.
std::array<QRectF, 8> platesAround(QPointF at, double gap, QSizeF size) {
  std::array<QRectF, 8> out;
  constexpr std::array<std::array<double, 2>, 8> ways{
      {{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}}};
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const auto [x, y] = ways[i];
    const double out_ = x != 0 && y != 0 ? 0.75 : 1.0;
    out[i] = QRectF(QPointF(), size);
    out[i].moveCenter(at +
                      QPointF(x * (gap * out_ + size.width() / 2), y * (gap * out_ + size.height() / 2)));
  }
  return out;
}

/// How far outside the frame, and beyond which of its edges.
QString awayText(double millimetres, int edge) {
  static constexpr std::array<Pattern, 4> patterns{pattern("core", "{} left"), pattern("core", "{} right"),
                                                   pattern("core", "{} up"), pattern("core", "{} down")};
  const QString length = QStringLiteral("%1 mm").arg(millimetres, 0, 'f', millimetres < 9.5 ? 1 : 0);
  return shown(said(patterns.at(static_cast<std::size_t>(edge)), length.toStdString()));
}

} // namespace

DuePlace placeDue(const Painting& p, const std::vector<const SceneItem*>& around, LabelPlacer& placer) {
  DuePlace due;
  for (const OverlayMark& mark : p.overlay.marks)
    if (mark.shape == MarkShape::probe) due.mark = &mark;
  if (due.mark == nullptr) return due;
  due.at = p.view.toPicture(due.mark->at);
  if (!p.view.frame.contains(due.at)) return {};
  due.ring = 9 * p.unit;
  const QPointF place = mm(due.mark->at);
  for (const SceneItem* item : around)
    if (item->kind == ItemKind::pad && item->box.contains(place))
      due.ring = std::clamp(p.picture(std::min(item->box.width(), item->box.height()) / 2) + 6 * p.unit,
                            due.ring, 30 * p.unit);
  const QRectF ring(due.at - QPointF(due.ring, due.ring) * 1.3, QSizeF(due.ring, due.ring) * 2.6);
  placer.occupy(ring);
  if (due.mark->label.empty()) return due;
  const QFontMetricsF metrics(plateFont(p));
  const QString text = metrics.elidedText(shown(due.mark->label, p.view.lie()), Qt::ElideMiddle,
                                          std::max(60 * p.unit, p.view.frame.width() * 0.45));
  const QSizeF size(metrics.horizontalAdvance(text) + 14 * p.unit, metrics.height() + 4 * p.unit);
  double least = 1e300;
  for (const QRectF& box : platesAround(due.at, due.ring * 1.2 + 7 * p.unit, size)) {
    const double cost = placer.cost(box) + 4 * coveredShare(p, box, around);
    if (cost < least - 0.02) {
      least = cost;
      due.plate = box;
    }
  }
  const QRectF& frame = p.view.frame;
  due.plate.moveLeft(
      std::clamp(due.plate.left(), frame.left(), std::max(frame.left(), frame.right() - size.width())));
  due.plate.moveTop(
      std::clamp(due.plate.top(), frame.top(), std::max(frame.top(), frame.bottom() - size.height())));
  placer.occupy(due.plate);
  return due;
}

void paintDue(const Painting& p, const DuePlace& due) {
  if (due.mark == nullptr) return;
  if (!due.plate.isEmpty()) {
    // The plate ends in a tip at the ring.
    const QPointF middle = due.plate.center();
    const QPointF towards = due.at - middle;
    const double length = std::hypot(towards.x(), towards.y());
    QPainterPath path;
    path.addRoundedRect(due.plate, 3 * p.unit, 3 * p.unit);
    if (length > 0) {
      const QPointF unit = towards / length;
      const QPointF across(-unit.y() * 6 * p.unit, unit.x() * 6 * p.unit);
      const QPointF nearest(
          std::clamp(due.at.x(), due.plate.left() + 4 * p.unit, due.plate.right() - 4 * p.unit),
          std::clamp(due.at.y(), due.plate.top() + 4 * p.unit, due.plate.bottom() - 4 * p.unit));
      QPainterPath tip;
      tip.addPolygon(
          QPolygonF(QList<QPointF>{nearest + across, due.at - unit * due.ring * 1.15, nearest - across}));
      tip.closeSubpath();
      path = path.united(tip);
    }
    p.painter.setPen(QPen(p.colors.casing, 1.5 * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    p.painter.setBrush(p.colors.due);
    p.painter.drawPath(path);
    const QFont font = plateFont(p);
    p.painter.setFont(font);
    p.painter.setPen(p.colors.dueInk);
    p.painter.drawText(due.plate, Qt::AlignCenter,
                       QFontMetricsF(font).elidedText(shown(due.mark->label, p.view.lie()), Qt::ElideMiddle,
                                                      due.plate.width() - 8 * p.unit));
  }
  paintMark(p.painter, MarkShape::probe, due.at, 2 * due.ring, p.colors);
}

std::vector<EdgeTab> placeTabs(const Painting& p, LabelPlacer& placer) {
  const QRectF frame = p.view.frame;
  QFont font = p.type.font;
  font.setBold(true);
  const QFontMetricsF bold(font);
  const QFontMetricsF plain(p.type.font);
  const double height = bold.height() + 6 * p.unit;
  std::vector<EdgeTab> tabs;
  for (const OverlayMark& mark : p.overlay.marks) {
    const bool isDue = mark.shape == MarkShape::probe;
    const QPointF at = p.view.toPicture(mark.at);
    if ((!isDue && mark.shape != MarkShape::suspect) || mark.label.empty() || frame.contains(at)) continue;
    const QPointF in(std::clamp(at.x(), frame.left(), frame.right()),
                     std::clamp(at.y(), frame.top(), frame.bottom()));
    const QPointF out = at - in;
    EdgeTab tab;
    tab.due = isDue;
    tab.edge = std::abs(out.x()) >= std::abs(out.y()) ? (out.x() < 0 ? 0 : 1) : (out.y() < 0 ? 2 : 3);
    tab.name = bold.elidedText(shown(mark.label, p.view.lie()), Qt::ElideRight, 90 * p.unit);
    tab.away = awayText(std::hypot(out.x(), out.y()) / p.view.scale.value, tab.edge);
    const double width = bold.horizontalAdvance(tab.name) + plain.horizontalAdvance(tab.away) + 24 * p.unit;
    tab.box = QRectF(0, 0, width, height);
    const bool upright = tab.edge < 2;
    tab.box.moveCenter(in);
    if (tab.edge == 0) tab.box.moveLeft(frame.left());
    if (tab.edge == 1) tab.box.moveRight(frame.right());
    if (tab.edge == 2) tab.box.moveTop(frame.top());
    if (tab.edge == 3) tab.box.moveBottom(frame.bottom());
    const QRectF wanted = tab.box;
    // Along its edge to where nothing else is.
    const double step = (upright ? height : width) / 2;
    for (int i = 0; i < 80; ++i) {
      const double by = step * (i % 2 == 0 ? i / 2 : -(i + 1) / 2);
      QRectF box = wanted.translated(upright ? 0 : by, upright ? by : 0);
      box.moveLeft(std::clamp(box.left(), frame.left(), std::max(frame.left(), frame.right() - width)));
      box.moveTop(std::clamp(box.top(), frame.top(), std::max(frame.top(), frame.bottom() - height)));
      tab.box = box;
      if (placer.isFree(box)) break;
    }
    placer.occupy(tab.box);
    tabs.push_back(std::move(tab));
  }
  return tabs;
}

void paintTabs(const Painting& p, const std::vector<EdgeTab>& tabs) {
  QFont bold = p.type.font;
  bold.setBold(true);
  const double tip = 8 * p.unit;
  for (const EdgeTab& tab : tabs) {
    QRectF box = tab.box.adjusted(p.unit, p.unit, -p.unit, -p.unit);
    QPolygonF shape;
    const QPointF c = box.center();
    switch (tab.edge) {
    case 0:
      shape << QPointF(box.left() + tip, box.top()) << box.topRight() << box.bottomRight()
            << QPointF(box.left() + tip, box.bottom()) << QPointF(box.left(), c.y());
      break;
    case 1:
      shape << box.topLeft() << QPointF(box.right() - tip, box.top()) << QPointF(box.right(), c.y())
            << QPointF(box.right() - tip, box.bottom()) << box.bottomLeft();
      break;
    default:
      // The tip would cost a line of its own: the words say above or below.
      shape << box.topLeft() << box.topRight() << box.bottomRight() << box.bottomLeft();
      break;
    }
    const QColor edge = tab.due ? p.colors.due : p.colors.oddPlate;
    p.painter.setPen(QPen(edge, 1.6 * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    p.painter.setBrush(p.colors.labelGround);
    p.painter.drawPolygon(shape);
    const double left = box.left() + 12 * p.unit;
    p.painter.setFont(bold);
    p.painter.setPen(edge);
    p.painter.drawText(QRectF(left, box.top(), box.width(), box.height()), Qt::AlignLeft | Qt::AlignVCenter,
                       tab.name);
    const double advance = QFontMetricsF(bold).horizontalAdvance(tab.name) + 4 * p.unit;
    p.painter.setFont(p.type.font);
    p.painter.setPen(p.colors.ink);
    p.painter.drawText(QRectF(left + advance, box.top(), box.width(), box.height()),
                       Qt::AlignLeft | Qt::AlignVCenter, tab.away);
  }
}

} // namespace netmend
