#include "copper_items.h"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "netmend/board/shape.h"

namespace netmend::copper {

namespace {

/// Pads with this many corners get the search structure of an area.
constexpr std::size_t chainFrom = 24;

class Collector {
public:
  explicit Collector(const Board& board) : board_(board) {
    const auto& order = board.info.layerOrder;
    for (std::size_t i = 0; i < order.size(); ++i)
      layerIndex_.emplace(order[i].value, static_cast<int>(i));
    out_.layerCount = std::max(2, static_cast<int>(order.size()));
  }

  Items collect() {
    out_.items.reserve(board_.pads.size() + board_.vias.size() + board_.tracks.size() + board_.areas.size());
    out_.points.reserve(4 * board_.pads.size() + board_.vias.size() + 2 * board_.tracks.size());
    for (std::size_t i = 0; i < board_.pads.size(); ++i)
      addPad(i);
    for (std::size_t i = 0; i < board_.vias.size(); ++i)
      addVia(i);
    for (std::size_t i = 0; i < board_.tracks.size(); ++i)
      addTrack(i);
    for (std::size_t i = 0; i < board_.areas.size(); ++i)
      addArea(i);
    return std::move(out_);
  }

private:
  [[nodiscard]] int lastLayer() const { return out_.layerCount - 1; }

  [[nodiscard]] LayerSpan spanOf(const Fact<LayerId>& layer) const {
    if (!layer.known()) return {};
    const auto it = layerIndex_.find(layer.value.value);
    return it == layerIndex_.end() ? LayerSpan{} : LayerSpan{it->second, it->second};
  }

  CopperItem& add(CopperItemKind kind, std::size_t object, const std::vector<Point>& core, Length radius,
                  LayerSpan layers) {
    CopperItem item;
    item.kind = kind;
    item.object = object;
    item.firstPoint = out_.points.size();
    item.pointCount = core.size();
    item.radius = std::max(0.0, static_cast<double>(radius.nm));
    item.layers = layers;
    for (const Point p : core) {
      out_.points.push_back(vecOf(p));
      item.bounds.include(out_.points.back());
    }
    item.bounds = item.bounds.grownBy(item.radius);
    return out_.items.emplace_back(std::move(item));
  }

  /// The pad's copper, or for a pad of unknown shape the point where it is.
  [[nodiscard]] static std::optional<RoundedShape> coreOf(const Pad& pad) {
    if (auto shape = padShape(pad)) return shape;
    if (pad.shape.known() && pad.size.known()) return std::nullopt;
    if (!pad.position.known()) return std::nullopt;
    return RoundedShape{{pad.position.value}, Length(0)};
  }

  /// A hole that is as large as the pad leaves no copper.
  [[nodiscard]] static bool drilledAway(const Pad& pad) {
    return pad.plated.known() && !pad.plated.value && pad.size.known() && pad.drill.known() &&
           pad.shape.valueOr(PadShape::circle) != PadShape::polygon &&
           pad.drill.value.width >= pad.size.value.width && pad.drill.value.height >= pad.size.value.height;
  }

  [[nodiscard]] LayerSpan sideOf(const Pad& pad) const {
    const Pin* pin = board_.pins.find(pad.pin);
    const Part* part = pin ? board_.parts.find(pin->part) : nullptr;
    if (!part || !part->side.known()) return {};
    return part->side.value == Side::top ? LayerSpan{0, 0} : LayerSpan{lastLayer(), lastLayer()};
  }

  [[nodiscard]] static std::shared_ptr<const AreaChain> chainOf(const std::vector<Ring>& rings) {
    std::vector<std::vector<Vec>> out;
    for (const Ring& ring : rings) {
      auto& corners = out.emplace_back();
      corners.reserve(ring.size());
      for (const Point p : ring)
        corners.push_back(vecOf(p));
    }
    return std::make_shared<const AreaChain>(out);
  }

  void addPad(std::size_t index) {
    const Pad& pad = board_.pads[index];
    if (pad.gone.valueOr(false) || drilledAway(pad)) return;
    const auto shape = coreOf(pad);
    if (!shape) return;
    const auto hole = drillCentre(pad);
    const bool barrel = hole && pad.plated.valueOr(true);
    const auto put = [&](LayerSpan layers) {
      CopperItem& item = add(CopperItemKind::pad, index, shape->core, shape->radius, layers);
      item.filled = item.pointCount >= 3;
      if (item.pointCount >= chainFrom) item.area = chainOf({shape->core});
    };
    const int last = lastLayer();
    if (!pad.reach.known()) {
      put(barrel ? LayerSpan{0, last} : sideOf(pad));
      return;
    }
    const PadReach reach = pad.reach.value;
    if (barrel) {
      const auto putBarrel = [&](LayerSpan layers) {
        if (layers.unknown()) return;
        const Length radius = std::min(pad.drill.value.width, pad.drill.value.height) / 2;
        add(CopperItemKind::pad, index, {*hole}, radius, layers).sameAsBefore = true;
      };
      const auto putAgain = [&](LayerSpan layers) {
        put(layers);
        out_.items.back().sameAsBefore = true;
      };
      switch (reach) {
      case PadReach::allLayers:
        put({0, last});
        break;
      case PadReach::top:
        put({0, 0});
        putBarrel({1, last});
        break;
      case PadReach::bottom:
        put({last, last});
        putBarrel({0, last - 1});
        break;
      case PadReach::topAndBottom:
        put({0, 0});
        putAgain({last, last});
        putBarrel({1, last - 1});
        break;
      }
      return;
    }
    if (reach == PadReach::top || reach == PadReach::topAndBottom) put({0, 0});
    if (reach == PadReach::bottom || reach == PadReach::topAndBottom) put({last, last});
    for (int layer = 0; reach == PadReach::allLayers && layer <= last; ++layer)
      put({layer, layer});
  }

  void addVia(std::size_t index) {
    const Via& via = board_.vias[index];
    const auto layerOr = [&](const Fact<LayerId>& layer, int fallback) {
      const LayerSpan span = spanOf(layer);
      return span.unknown() ? fallback : span.first;
    };
    const auto [first, last] = std::minmax({layerOr(via.from, 0), layerOr(via.to, lastLayer())});
    add(CopperItemKind::via, index, {via.position},
        std::max(via.diameter.valueOr({}), via.drill.valueOr({})) / 2, {first, last});
  }

  void addTrack(std::size_t index) {
    const Track& track = board_.tracks[index];
    const LayerSpan layers = spanOf(track.layer);
    if (track.way == TrackWay::unknownWay || layers.unknown()) {
      out_.looseTracks.push_back({index, vecOf(track.start), vecOf(track.end), layers});
      return;
    }
    add(CopperItemKind::track, index, centreLine(track, arcError), track.width.valueOr({}) / 2, layers);
  }

  void addArea(std::size_t index) {
    const Area& area = board_.areas[index];
    std::vector<Ring> rings{area.polygon.outer};
    rings.insert(rings.end(), area.polygon.holes.begin(), area.polygon.holes.end());
    CopperItem& item = add(CopperItemKind::area, index, {}, {}, spanOf(area.layer));
    item.area = chainOf(rings);
    item.bounds = item.area->bounds();
    if (area.polygon.outer.size() < 3) item.layers = {};
  }

  const Board& board_;
  Items out_;
  std::unordered_map<std::uint64_t, int> layerIndex_;
};

} // namespace

Items copperItems(const Board& board) {
  return Collector(board).collect();
}

AreaOutline outlineOf(const Items& items, const CopperItem& item) {
  return {
      {items.points.data() + item.firstPoint, item.pointCount}, item.radius, item.filled, item.area.get()};
}

Length lengthOf(double nm) {
  constexpr double limit = 9.0e18;
  if (!(nm > -limit)) return Length(static_cast<std::int64_t>(-limit));
  if (!(nm < limit)) return Length(static_cast<std::int64_t>(limit));
  return Length(std::llround(nm));
}

Point pointOf(Vec v) {
  return {lengthOf(v.x), lengthOf(v.y)};
}

} // namespace netmend::copper
