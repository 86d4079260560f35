#pragma once

#include <algorithm>
#include <cstdint>
#include <map>
#include <numeric>
#include <set>
#include <vector>

#include "netmend/board/shape.h"
#include "netmend/netgraph/copper_graph.h"

/// What hangs together, worked out by another method than the graph's: each object's outline as a polygon of
/// whole nanometres, polygons compared edge by edge with exact integer predicates, sets joined by repainting.
namespace netmend::test {

struct BruteObject {
  CopperObject id;
  NetId net;
  PinId pin; ///< pads only
  int firstLayer = 0;
  int lastLayer = 0;
  bool area = false;
  std::vector<Ring> outlines{}; ///< filled each by itself; of an area all together, even-odd
  std::vector<Box> boxes{};     ///< parallel to outlines
};

inline void setOutlines(BruteObject& object, std::vector<Ring> outlines) {
  object.outlines = std::move(outlines);
  object.boxes.clear();
  for (const Ring& ring : object.outlines) {
    Box& box = object.boxes.emplace_back();
    for (const Point p : ring)
      box.include(p);
  }
}

/// `grow` is added to the track's width on each side.
[[nodiscard]] inline std::vector<Ring> trackOutlines(const Track& track, Length grow = {}) {
  const Ring line = centreLine(track, Length(50));
  std::vector<Ring> out;
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    out.push_back(outlineOf({{line[i], line[i + 1]}, track.width.value / 2 + grow}, Length(50)));
  return out;
}

[[nodiscard]] inline bool boxesMeet(const Box& a, const Box& b) {
  return a.min.x <= b.max.x && b.min.x <= a.max.x && a.min.y <= b.max.y && b.min.y <= a.max.y;
}

/// 1: c is left of a-b; -1: right; 0: on the line. Exact.
[[nodiscard]] inline int sideOf(Point a, Point b, Point c) {
  __extension__ using Wide = __int128; // GCC and Clang have it on every 64-bit machine
  const Wide turn =
      static_cast<Wide>((b - a).x.nm) * (c - a).y.nm - static_cast<Wide>((b - a).y.nm) * (c - a).x.nm;
  return turn > 0 ? 1 : turn < 0 ? -1 : 0;
}

[[nodiscard]] inline bool edgesMeet(Point a, Point b, Point c, Point d) {
  Box ab;
  ab.include(a);
  ab.include(b);
  Box cd;
  cd.include(c);
  cd.include(d);
  if (!boxesMeet(ab, cd)) return false;
  return sideOf(a, b, c) * sideOf(a, b, d) <= 0 && sideOf(c, d, a) * sideOf(c, d, b) <= 0;
}

[[nodiscard]] inline bool oddAround(const Ring& ring, Point p) {
  bool odd = false;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    if ((a.y > p.y) == (b.y > p.y)) continue;
    odd ^= (sideOf(a, b, p) > 0) == (b.y > a.y);
  }
  return odd;
}

[[nodiscard]] inline bool covers(const BruteObject& object, Point p) {
  bool odd = false;
  for (const Ring& ring : object.outlines) {
    const bool inside = oddAround(ring, p);
    if (inside && !object.area) return true;
    odd ^= inside;
  }
  return odd;
}

[[nodiscard]] inline bool bordersMeet(const Ring& a, const Ring& b, const Box& boxB) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    const Point p = a[i];
    const Point q = a[(i + 1) % a.size()];
    Box edge;
    edge.include(p);
    edge.include(q);
    if (!boxesMeet(edge, boxB)) continue;
    for (std::size_t j = 0; j < b.size(); ++j)
      if (edgesMeet(p, q, b[j], b[(j + 1) % b.size()])) return true;
  }
  return false;
}

[[nodiscard]] inline bool touch(const BruteObject& a, const BruteObject& b) {
  if (a.firstLayer > b.lastLayer || b.firstLayer > a.lastLayer) return false;
  bool near = false;
  for (std::size_t i = 0; i < a.outlines.size(); ++i) {
    for (std::size_t j = 0; j < b.outlines.size(); ++j) {
      if (!boxesMeet(a.boxes[i], b.boxes[j])) continue;
      near = true;
      // The ring with more corners first: most of its edges fall away by the other's box.
      const bool larger = a.outlines[i].size() >= b.outlines[j].size();
      if (larger ? bordersMeet(a.outlines[i], b.outlines[j], b.boxes[j])
                 : bordersMeet(b.outlines[j], a.outlines[i], a.boxes[i]))
        return true;
    }
  }
  if (!near) return false;
  return (!b.outlines.empty() && covers(a, b.outlines.front().front())) ||
         (!a.outlines.empty() && covers(b, a.outlines.front().front()));
}

/// All copper of a board as the CAD readers give it: nothing unknown, pads on one side or on all layers.
class BruteBoard {
public:
  explicit BruteBoard(const Board& board) : board_(board) {
    for (const Pad& pad : board.pads)
      addPad(pad);
    for (const Via& via : board.vias) {
      BruteObject object{via.id, via.net.value, {}, layerOf(via.from, 0), layerOf(via.to, lastLayer())};
      setOutlines(object, {outlineOf({{via.position}, via.diameter.value / 2}, Length(50))});
      objects.push_back(std::move(object));
    }
    for (const Track& track : board.tracks)
      objects.push_back(trackObject(track));
    for (const Area& area : board.areas) {
      BruteObject object{area.id, area.net.value, {}, layerOf(area.layer, 0), layerOf(area.layer, 0), true};
      std::vector<Ring> rings{area.polygon.outer};
      rings.insert(rings.end(), area.polygon.holes.begin(), area.polygon.holes.end());
      setOutlines(object, std::move(rings));
      objects.push_back(std::move(object));
    }
    for (std::size_t i = 0; i < objects.size(); ++i)
      ofNet_[objects[i].net].push_back(i);
  }

  [[nodiscard]] BruteObject trackObject(const Track& track, Length grow = {}) const {
    const int layer = layerOf(track.layer, 0);
    BruteObject object{track.id, track.net.value, {}, layer, layer};
    setOutlines(object, trackOutlines(track, grow));
    return object;
  }

  [[nodiscard]] const std::vector<std::size_t>& ofNet(NetId net) const { return ofNet_.at(net); }

  /// Indices of everything that an outline touches, itself (by id) left out.
  [[nodiscard]] std::vector<std::size_t> touched(const BruteObject& object) const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < objects.size(); ++i)
      if (objects[i].id != object.id && touch(object, objects[i])) out.push_back(i);
    return out;
  }

  /// Pieces of a net when a track is taken out, or (with `instead`) moved.
  [[nodiscard]] std::size_t piecesOf(NetId net, const CopperObject& without,
                                     const BruteObject* instead = nullptr) {
    const auto& members = ofNet(net);
    const auto left = [&](std::size_t i) { return objects[members[i]].id != without; };
    std::vector<std::size_t> colour(members.size());
    std::iota(colour.begin(), colour.end(), std::size_t{0});
    for (const auto& [a, b] : linksOf(net)) {
      if (!left(a) || !left(b) || colour[a] == colour[b]) continue;
      std::replace(colour.begin(), colour.end(), std::size_t{colour[b]}, std::size_t{colour[a]});
    }
    std::set<std::size_t> colours;
    std::set<std::size_t> joined; // by the moved track
    for (std::size_t i = 0; i < members.size(); ++i) {
      if (!left(i)) continue;
      colours.insert(colour[i]);
      if (instead && touch(*instead, objects[members[i]])) joined.insert(colour[i]);
    }
    return instead ? colours.size() - joined.size() + 1 : colours.size();
  }

  std::vector<BruteObject> objects;

private:
  [[nodiscard]] int lastLayer() const { return static_cast<int>(board_.info.layerOrder.size()) - 1; }
  [[nodiscard]] int layerOf(const Fact<LayerId>& layer, int fallback) const {
    const auto& order = board_.info.layerOrder;
    const auto it = std::find(order.begin(), order.end(), layer.valueOr({}));
    return it == order.end() ? fallback : static_cast<int>(it - order.begin());
  }

  void addPad(const Pad& pad) {
    const auto shape = padShape(pad);
    const bool bareHole = pad.plated.known() && !pad.plated.value && pad.drill.known() &&
                          pad.drill.value.width >= pad.size.value.width &&
                          pad.drill.value.height >= pad.size.value.height;
    if (!shape || bareHole) return;
    const Pin* pin = board_.pins.find(pad.pin);
    BruteObject object{pad.id, pin->net.value, pin->id, 0, lastLayer()};
    if (pad.reach.value == PadReach::top) object.lastLayer = 0;
    if (pad.reach.value == PadReach::bottom) object.firstLayer = lastLayer();
    setOutlines(object, {outlineOf(*shape, Length(50))});
    objects.push_back(std::move(object));
  }

  /// Pairs of the net's members that touch, by their place in `ofNet`.
  const std::vector<std::pair<std::size_t, std::size_t>>& linksOf(NetId net) {
    const auto [it, isNew] = links_.try_emplace(net);
    if (!isNew) return it->second;
    const auto& members = ofNet(net);
    for (std::size_t i = 0; i < members.size(); ++i) {
      for (std::size_t j = i + 1; j < members.size(); ++j) {
        const BruteObject& a = objects[members[i]];
        const BruteObject& b = objects[members[j]];
        if ((a.pin && a.pin == b.pin) || touch(a, b)) it->second.emplace_back(i, j);
      }
    }
    return it->second;
  }

  const Board& board_;
  std::map<NetId, std::vector<std::size_t>> ofNet_;
  std::map<NetId, std::vector<std::pair<std::size_t, std::size_t>>> links_;
};

} // namespace netmend::test
