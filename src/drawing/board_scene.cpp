#include "netmend/drawing/board_scene.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>

#include "netmend/base/plane.h"
#include "netmend/board/lookup.h"
#include "netmend/board/shape.h"
#include "netmend/drawing/shown.h"
#include "scene_content.h"

namespace netmend {

namespace bg = boost::geometry;
namespace bgi = boost::geometry::index;

using MmPoint = bg::model::point<double, 2, bg::cs::cartesian>;
using MmBox = bg::model::box<MmPoint>;
using IndexedBox = std::pair<MmBox, std::uint32_t>;

struct SceneIndex {
  bgi::rtree<IndexedBox, bgi::quadratic<16>> tree;
};

std::vector<std::uint32_t> itemsIn(const BoardScene::Content& content, const QRectF& box) {
  std::vector<std::uint32_t> out;
  const auto query = bgi::intersects(MmBox({box.left(), box.top()}, {box.right(), box.bottom()}));
  for (auto it = content.index->tree.qbegin(query); it != content.index->tree.qend(); ++it)
    out.push_back(it->second);
  return out;
}

QPolygonF polygonOf(const Ring& ring) {
  QPolygonF out;
  out.reserve(static_cast<qsizetype>(ring.size()));
  for (const Point p : ring)
    out.append(mm(p));
  return out;
}

QPainterPath pathOf(const Polygon& polygon) {
  QPainterPath path;
  path.setFillRule(Qt::OddEvenFill);
  const auto add = [&](const Ring& ring) {
    if (ring.size() < 3) return;
    path.addPolygon(polygonOf(ring));
    path.closeSubpath();
  };
  add(polygon.outer);
  for (const Ring& hole : polygon.holes)
    add(hole);
  return path;
}

namespace {

/// The ring without corners nearer than `step` to the one before: what a small picture cannot show.
Ring thinned(const Ring& ring, Length step) {
  Ring out;
  for (const Point p : ring)
    if (out.empty() || distance(out.back(), p) >= step) out.push_back(p);
  return out;
}

Polygon thinned(const Polygon& polygon, Length step) {
  Polygon out{thinned(polygon.outer, step), {}};
  for (const Ring& hole : polygon.holes)
    out.holes.push_back(thinned(hole, step));
  return out;
}

/// Adds the board's objects to a scene, kind by kind.
class Builder {
public:
  Builder(const Board& board, BoardScene::Content& content)
      : board_(board), lookup_(board), content_(content) {}

  void build() {
    prepareTables();
    for (const Area& area : board_.areas)
      add(area);
    for (const Track& track : board_.tracks)
      add(track);
    for (const Via& via : board_.vias)
      add(via);
    for (const Pad& pad : board_.pads)
      add(pad);
    for (const Part& part : board_.parts)
      add(part);
    for (const Zone& zone : board_.zones)
      add(zone);
    if (board_.info.outline.known())
      for (const Polygon& polygon : board_.info.outline.value)
        content_.outline.addPath(pathOf(polygon));
    content_.extent = pictureExtent(board_);
    if (content_.extent.empty())
      content_.nothingToSee =
          shown(pattern("core", "No places are known on this board: %1 parts, %2 pins, %3 nets"))
              .arg(board_.parts.size())
              .arg(board_.pins.size())
              .arg(board_.nets.size());
    fillIndex();
  }

private:
  void prepareTables() {
    content_.layers = board_.info.layerOrder;
    content_.lastLayer = std::max(1, static_cast<int>(content_.layers.size()) - 1);
    content_.nets.reserve(board_.nets.size());
    for (const Net& net : board_.nets)
      content_.nets.push_back(net.id);
    content_.items.reserve(board_.areas.size() + board_.tracks.size() + board_.vias.size() +
                           board_.pads.size() + board_.parts.size() + board_.zones.size());
  }

  void fillIndex() {
    std::vector<IndexedBox> boxes;
    boxes.reserve(content_.items.size());
    for (std::size_t i = 0; i < content_.items.size(); ++i) {
      const QRectF& box = content_.items[i].box;
      boxes.emplace_back(MmBox({box.left(), box.top()}, {box.right(), box.bottom()}),
                         static_cast<std::uint32_t>(i));
    }
    content_.index = std::make_shared<const SceneIndex>(SceneIndex{{boxes.begin(), boxes.end()}});
  }

  [[nodiscard]] std::size_t netIndex(const Fact<NetId>& net) const {
    if (!net.known()) return SceneItem::noNet;
    const std::size_t index = board_.nets.indexOf(net.value);
    return index < board_.nets.size() ? index : SceneItem::noNet;
  }

  void placeOn(SceneItem& item, const Fact<LayerId>& layer) const {
    const auto it = std::find(content_.layers.begin(), content_.layers.end(), layer.value);
    if (layer.known() && it != content_.layers.end()) {
      item.firstLayer = item.lastLayer = static_cast<int>(it - content_.layers.begin());
    } else {
      item.lastLayer = content_.lastLayer;
      item.uncertain = true;
    }
  }

  void placeOn(SceneItem& item, const Fact<Side>& side) const {
    item.firstLayer = side.known() && side.value == Side::bottom ? content_.lastLayer : 0;
    item.lastLayer = side.known() && side.value == Side::top ? 0 : content_.lastLayer;
  }

  void finish(SceneItem item) {
    if (item.kind != ItemKind::track && item.kind != ItemKind::padPlace) item.box = item.path.boundingRect();
    // Asked for here, a path keeps it; otherwise it would be worked out by two threads at once.
    (void)item.path.controlPointRect();
    content_.items.push_back(std::move(item));
  }

  void add(const Area& area) {
    SceneItem item;
    item.kind = ItemKind::area;
    item.net = netIndex(area.net);
    item.path = pathOf(area.polygon);
    constexpr int many = 64;
    if (item.path.elementCount() > many)
      item.coarse = pathOf(thinned(area.polygon, Length::fromMm(SceneItem::coarseStep)));
    placeOn(item, area.layer);
    if (!item.path.isEmpty()) finish(std::move(item));
  }

  void add(const Track& track) {
    SceneItem item;
    item.kind = ItemKind::track;
    item.net = netIndex(track.net);
    item.points = polygonOf(centreLine(track));
    item.width = track.width.valueOr(Length()).mm();
    placeOn(item, track.layer);
    item.uncertain |=
        track.way == TrackWay::unknownWay || !track.width.known() || track.origin == Origin::guessed;
    const double half = item.width / 2;
    item.box = item.points.boundingRect().adjusted(-half, -half, half, half);
    finish(std::move(item));
  }

  [[nodiscard]] int layerOr(const Fact<LayerId>& layer, int fallback) const {
    if (!layer.known() || !layer.value) return fallback;
    const auto it = std::find(content_.layers.begin(), content_.layers.end(), layer.value);
    return it == content_.layers.end() ? fallback : static_cast<int>(it - content_.layers.begin());
  }

  void add(const Via& via) {
    SceneItem item;
    item.kind = ItemKind::via;
    item.net = netIndex(via.net);
    item.firstLayer = layerOr(via.from, 0);
    item.lastLayer = layerOr(via.to, content_.lastLayer);
    if (item.firstLayer > item.lastLayer) std::swap(item.firstLayer, item.lastLayer);
    const double drill = via.drill.valueOr(Length()).mm();
    // Without a known ring it is drawn as one a little wider than its hole.
    const double radius = via.diameter.known() ? via.diameter.value.mm() / 2 : std::max(0.15, drill * 0.75);
    item.uncertain = !via.diameter.known();
    item.path.addEllipse(mm(via.position), radius, radius);
    if (drill > 0) item.hole = QRectF(mm(via.position) - QPointF(drill, drill) / 2, QSizeF(drill, drill));
    finish(std::move(item));
  }

  void add(const Pad& pad) {
    if (!pad.position.known()) return;
    SceneItem item;
    item.kind = ItemKind::pad;
    item.pad = pad.id;
    if (const Pin* pin = board_.pins.find(pad.pin)) {
      item.net = netIndex(pin->net);
      item.text = QString::fromStdString(pin->name);
    }
    const PadReach reach = pad.reach.valueOr(PadReach::allLayers);
    item.firstLayer = reach == PadReach::bottom ? content_.lastLayer : 0;
    item.lastLayer = reach == PadReach::top ? 0 : content_.lastLayer;
    if (const auto shape = padShape(pad)) {
      if (shape->core.size() == 1)
        item.path.addEllipse(mm(shape->core.front()), shape->radius.mm(), shape->radius.mm());
      else
        item.path = pathOf({outlineOf(*shape), {}});
    }
    const auto hole = drillCentre(pad);
    if (hole && pad.drill.known()) {
      const QSizeF size(pad.drill.value.width.mm(), pad.drill.value.height.mm());
      item.hole = QRectF(mm(*hole) - QPointF(size.width(), size.height()) / 2, size);
    }
    if (item.path.isEmpty() || pad.gone.valueOr(false)) {
      item.path = {};
      item.hole = {};
      item.kind = ItemKind::padPlace;
      item.uncertain = true;
      item.box = QRectF(mm(pad.position.value), QSizeF(0, 0)).adjusted(-0.2, -0.2, 0.2, 0.2);
    }
    finish(std::move(item));
  }

  void add(const Part& part) {
    SceneItem item;
    item.kind = ItemKind::body;
    item.part = part.id;
    item.text = QString::fromStdString(part.reference);
    item.absent = part.fitted.known() && !part.fitted.value;
    placeOn(item, part.side);
    if (part.body.known()) {
      item.path = pathOf({part.body.value, {}});
      item.uncertain = part.body.origin == Origin::guessed;
    }
    if (item.path.isEmpty()) {
      item.path = aroundPads(part.id);
      item.uncertain = true;
    }
    if (!item.path.isEmpty()) finish(std::move(item));
  }

  [[nodiscard]] QPainterPath aroundPads(PartId part) const {
    Box box;
    for (const PinId pin : lookup_.pinsOf(part))
      for (const PadId id : lookup_.padsOf(pin)) {
        const Pad* pad = board_.pads.find(id);
        if (pad == nullptr || !pad->position.known()) continue;
        const Point p = pad->position.value;
        const Size size = pad->size.valueOr({});
        const Length reach = std::max(size.width, size.height) / 2 + Length(250'000);
        box.include({p.x - reach, p.y - reach});
        box.include({p.x + reach, p.y + reach});
      }
    QPainterPath path;
    if (!box.empty()) path.addRect(QRectF(mm(box.min), mm(box.max)));
    return path;
  }

  void add(const Zone& zone) {
    SceneItem item;
    item.kind = ItemKind::zone;
    item.zone = zone.kind;
    item.text = QString::fromStdString(zone.name);
    item.path = pathOf(zone.polygon);
    placeOn(item, zone.side);
    if (!item.path.isEmpty()) finish(std::move(item));
  }

  const Board& board_;
  Lookup lookup_;
  BoardScene::Content& content_;
};

} // namespace

namespace {

constexpr std::size_t mostLandmarks = 250;

void findLandmarks(BoardScene::Content& content) {
  for (std::uint32_t i = 0; i < content.items.size(); ++i)
    if (content.items[i].kind == ItemKind::body) content.landmarks.push_back(i);
  std::stable_sort(content.landmarks.begin(), content.landmarks.end(), [&](std::uint32_t a, std::uint32_t b) {
    return areaOf(content.items[a]) > areaOf(content.items[b]);
  });
  if (content.landmarks.size() > mostLandmarks) content.landmarks.resize(mostLandmarks);
}

} // namespace

BoardScene::BoardScene(const Board& board) : content_(std::make_unique<Content>()) {
  Builder(board, *content_).build();
  findLandmarks(*content_);
}
BoardScene::BoardScene(BoardScene&&) noexcept = default;
BoardScene& BoardScene::operator=(BoardScene&&) noexcept = default;
BoardScene::~BoardScene() = default;

const Box& BoardScene::extent() const {
  return content_->extent;
}

} // namespace netmend
