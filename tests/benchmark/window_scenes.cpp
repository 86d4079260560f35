#include "window_scenes.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include <QGraphicsPathItem>
#include <QPen>

#include "netmend/board/shape.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend::benchmarks {

namespace {

Point at(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

QPointF sceneOf(Point p) {
  return {p.x.mm(), -p.y.mm()};
}

QPainterPath pathOf(const Polygon& polygon) {
  QPainterPath path;
  const auto add = [&](const Ring& ring) {
    QPolygonF corners;
    for (const Point p : ring)
      corners << sceneOf(p);
    path.addPolygon(corners);
    path.closeSubpath();
  };
  add(polygon.outer);
  for (const Ring& hole : polygon.holes)
    add(hole);
  return path;
}

class BoardBuilder {
public:
  Board build(std::size_t pads, std::size_t tracks) {
    for (int i = 0; i < 4; ++i)
      addLayer(i);
    const auto columns = static_cast<std::size_t>(std::ceil(std::sqrt(static_cast<double>(pads) / 8.0)));
    side_ = static_cast<double>(columns) * pitch;
    board_.info.outline =
        fromFile(std::vector<Polygon>{{{at(0, 0), at(side_, 0), at(side_, side_), at(0, side_)}, {}}});
    for (std::size_t i = 0; i < 2000; ++i) {
      Net net;
      net.id = board_.newId<NetId>();
      net.name = "N" + std::to_string(i);
      net.origin = Origin::file;
      nets_.push_back(net.id);
      board_.nets.put(net);
    }
    for (std::size_t i = 0; i * 8 < pads; ++i)
      addPart(i, std::min<std::size_t>(8, pads - i * 8), i % columns, i / columns);
    while (board_.tracks.size() < tracks)
      addRun(tracks - board_.tracks.size());
    return std::move(board_);
  }

private:
  static constexpr double pitch = 4.0; ///< mm from part to part

  void addLayer(int number) {
    Layer layer;
    layer.id = board_.newId<LayerId>();
    layer.name = "L" + std::to_string(number + 1);
    layer.origin = Origin::file;
    board_.info.layerOrder.push_back(layer.id);
    board_.layers.put(layer);
  }

  void addPart(std::size_t number, std::size_t pins, std::size_t column, std::size_t row) {
    const double x = (static_cast<double>(column) + 0.5) * pitch;
    const double y = (static_cast<double>(row) + 0.5) * pitch;
    Part part;
    part.id = board_.newId<PartId>();
    part.reference = "U" + std::to_string(number + 1);
    part.side = fromFile(number % 5 == 0 ? Side::bottom : Side::top);
    part.body = fromFile(Ring{at(x - 1, y - 1), at(x + 1, y - 1), at(x + 1, y + 1), at(x - 1, y + 1)});
    part.origin = Origin::file;
    board_.parts.put(part);
    for (std::size_t i = 0; i < pins; ++i) {
      Pin pin;
      pin.id = board_.newId<PinId>();
      pin.part = part.id;
      pin.name = std::to_string(i + 1);
      pin.net = fromFile(nets_[random_() % nets_.size()]);
      pin.origin = Origin::file;
      board_.pins.put(pin);
      Pad pad;
      pad.id = board_.newId<PadId>();
      pad.pin = pin.id;
      pad.position = fromFile(at(x + (i < 4 ? -1.2 : 1.2), y - 0.9 + 0.6 * static_cast<double>(i % 4)));
      pad.shape = fromFile(PadShape::rectangle);
      pad.size = fromFile(netmend::Size{Length::fromMm(0.8), Length::fromMm(0.35)});
      pad.reach = fromFile(part.side.value == Side::top ? PadReach::top : PadReach::bottom);
      pad.origin = Origin::file;
      board_.pads.put(pad);
    }
  }

  /// Steps to and fro, as tracks run, with a via where the layer changes.
  void addRun(std::size_t most) {
    std::uniform_real_distribution<double> place(0.0, side_);
    std::uniform_real_distribution<double> step(0.5, 6.0);
    double x = place(random_);
    double y = place(random_);
    const NetId net = nets_[random_() % nets_.size()];
    std::size_t layer = random_() % 4;
    const double width = 0.1 + 0.05 * static_cast<double>(random_() % 5);
    for (std::size_t i = 0; i < std::min<std::size_t>(most, 12); ++i) {
      const double way = (random_() % 2 == 0 ? 1 : -1) * step(random_);
      const double nextX = std::clamp(i % 2 == 0 ? x + way : x, 0.0, side_);
      const double nextY = std::clamp(i % 2 == 0 ? y : y + way, 0.0, side_);
      Track track;
      track.id = board_.newId<TrackId>();
      track.start = at(x, y);
      track.end = at(nextX, nextY);
      track.layer = fromFile(board_.info.layerOrder[layer]);
      track.width = fromFile(Length::fromMm(width));
      track.net = fromFile(net);
      track.origin = Origin::file;
      board_.tracks.put(track);
      x = nextX;
      y = nextY;
      if (i % 6 == 5) {
        Via via;
        via.id = board_.newId<ViaId>();
        via.position = at(x, y);
        via.diameter = fromFile(Length::fromMm(0.5));
        via.drill = fromFile(Length::fromMm(0.25));
        via.net = fromFile(net);
        via.origin = Origin::file;
        board_.vias.put(via);
        layer = random_() % 4;
      }
    }
  }

  Board board_;
  std::vector<NetId> nets_;
  double side_ = 0;
  std::mt19937 random_{20'261'125};
};

} // namespace

Board largeBoard(std::size_t pads, std::size_t tracks) {
  return BoardBuilder().build(pads, tracks);
}

void fillScene(QGraphicsScene& scene, const Board& board) {
  const PictureColors colors;
  const auto add = [&](const QPainterPath& path, const QBrush& brush, const QPen& pen, double z) {
    auto* item = scene.addPath(path, pen, brush);
    item->setZValue(z);
  };
  const LayerId top = board.info.layerOrder.empty() ? LayerId() : board.info.layerOrder.front();
  if (board.info.outline.known())
    for (const Polygon& polygon : board.info.outline.value)
      add(pathOf(polygon), colors.substrate, QPen(colors.edge, 0), 0);
  for (const Area& area : board.areas)
    if (area.layer.known() && area.layer.value == top)
      add(pathOf(area.polygon), colors.copperArea, Qt::NoPen, 1);
  for (const Track& track : board.tracks) {
    if (!track.layer.known() || track.layer.value != top) continue;
    QPolygonF way;
    for (const Point p : centreLine(track))
      way << sceneOf(p);
    QPainterPath path;
    path.addPolygon(way);
    add(path, Qt::NoBrush,
        QPen(colors.copper, track.width.valueOr(Length()).mm(), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin),
        2);
  }
  for (const Via& via : board.vias) {
    QPainterPath path;
    const double r = via.diameter.valueOr(Length(300'000)).mm() / 2;
    path.addEllipse(sceneOf(via.position), r, r);
    add(path, colors.pad, Qt::NoPen, 3);
  }
  for (const Pad& pad : board.pads) {
    const auto shape = padShape(pad);
    if (!shape || pad.reach.valueOr(PadReach::allLayers) == PadReach::bottom) continue;
    QPainterPath path;
    if (shape->core.size() == 1)
      path.addEllipse(sceneOf(shape->core.front()), shape->radius.mm(), shape->radius.mm());
    else
      path = pathOf({outlineOf(*shape), {}});
    add(path, colors.pad, Qt::NoPen, 4);
  }
  for (const Part& part : board.parts) {
    if (!part.body.known() || (part.side.known() && part.side.value != Side::top)) continue;
    const QPainterPath path = pathOf({part.body.value, {}});
    add(path, Qt::NoBrush, QPen(colors.body, 0), 5);
    auto* name = scene.addSimpleText(QString::fromStdString(part.reference));
    const QRectF body = path.boundingRect();
    const QRectF text = name->boundingRect();
    if (text.isEmpty()) continue;
    name->setScale(std::min(body.width() / text.width(), body.height() / text.height()));
    name->setPos(body.topLeft());
    name->setZValue(6);
  }
}

} // namespace netmend::benchmarks
