#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include <QPainterPath>
#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QString>

#include "netmend/drawing/board_scene.h"

/// Inside of a scene. Coordinates are millimetres with y up.
namespace netmend {

enum class ItemKind : std::uint8_t { area, track, via, pad, padPlace, body, zone };

struct SceneItem {
  ItemKind kind = ItemKind::area;
  bool uncertain = false; ///< guessed, or its layer or way is not known
  bool absent = false;    ///< bodies: not fitted
  int firstLayer = 0;     ///< dense, 0 is the top
  int lastLayer = 0;
  std::size_t net = noNet; ///< dense index in the board's table
  PadId pad;               ///< pads only
  PartId part;             ///< bodies only
  ZoneKind zone = ZoneKind::connector;
  QRectF box;
  QPainterPath path;   ///< filled
  QPainterPath coarse; ///< areas with many corners: the same for views where `coarseStep` is below a pixel
  QPolygonF points;    ///< tracks: the centre line
  double width = 0.0;  ///< tracks: mm
  QRectF hole;         ///< empty: none
  QString text;        ///< reference, pin name or zone name

  static constexpr std::size_t noNet = SIZE_MAX;
  static constexpr double coarseStep = 0.06; ///< mm between corners
};

/// The items' boxes in an R-tree; known to board_scene.cpp alone, since its header is heavy.
struct SceneIndex;

[[nodiscard]] inline double areaOf(const SceneItem& item) {
  return item.box.width() * item.box.height();
}

struct BoardScene::Content {
  std::vector<SceneItem> items;
  std::shared_ptr<const SceneIndex> index;
  QPainterPath outline;
  Box extent;
  std::vector<std::uint32_t> landmarks; ///< the largest bodies, by which the whole board is recognised
  std::vector<NetId> nets;              ///< parallel to the board's nets, ordered by id
  std::vector<LayerId> layers;          ///< dense, top to bottom
  int lastLayer = 1;                    ///< dense index of the bottom layer
  QString nothingToSee;                 ///< what is known of a board without any place
};

/// The items whose boxes touch this one (mm, y up), in no order.
[[nodiscard]] std::vector<std::uint32_t> itemsIn(const BoardScene::Content& content, const QRectF& box);

[[nodiscard]] inline QPointF mm(Point p) {
  return {p.x.mm(), p.y.mm()};
}
[[nodiscard]] QPainterPath pathOf(const Polygon& polygon);
/// As outline or, where none is known, nothing.
[[nodiscard]] QPolygonF polygonOf(const Ring& ring);

} // namespace netmend
