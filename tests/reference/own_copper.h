#pragma once

#include <cmath>
#include <numeric>
#include <optional>
#include <set>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/board/shape.h"

/// Which copper of a net hangs together, found from the board's objects alone: a second opinion for jumpers,
/// without the program's copper graph.
namespace netmend::test {

/// What is broken: a pad's joint with its leg, a via between two layers, or a straight track at a place.
struct OwnBreak {
  enum class Kind { joint, barrel, track } kind = Kind::joint;
  PadId pad;
  ViaId via;
  int above = 0; ///< barrel: the last dense layer of the upper piece
  TrackId track;
  Point at;
};

/// Distances in nm, in long double: one plain loop over all pairs of edges.
struct OwnShape {
  std::vector<Ring> rings; ///< one open chain, or closed rings (even-odd) when `filled`
  bool filled = false;
  double radius = 0;
  Box box;

  static OwnShape of(const RoundedShape& shape) {
    return make({shape.core}, shape.core.size() >= 3, shape.radius);
  }
  static OwnShape make(std::vector<Ring> rings, bool filled, Length radius) {
    OwnShape out{std::move(rings), filled, static_cast<double>(radius.nm), {}};
    for (const Ring& ring : out.rings)
      for (const Point p : ring)
        out.box.include(p);
    return out;
  }

  [[nodiscard]] bool holds(Point p) const {
    bool inside = false;
    for (const Ring& ring : rings)
      for (std::size_t i = 0, j = ring.size() - 1; filled && i < ring.size(); j = i++) {
        const Point a = ring[i], b = ring[j];
        if ((a.y > p.y) != (b.y > p.y) &&
            static_cast<long double>(p.x.nm) < static_cast<long double>((b.x - a.x).nm) *
                                                       static_cast<long double>((p.y - a.y).nm) /
                                                       static_cast<long double>((b.y - a.y).nm) +
                                                   static_cast<long double>(a.x.nm))
          inside = !inside;
      }
    return inside;
  }
  template <class Visit> void edges(Visit&& visit) const {
    for (const Ring& ring : rings) {
      if (ring.size() == 1) visit(ring[0], ring[0]);
      for (std::size_t i = 1; i < ring.size(); ++i)
        visit(ring[i - 1], ring[i]);
      if (filled && ring.size() > 2) visit(ring.back(), ring.front());
    }
  }
};

inline double pointToSegment(Point p, Point a, Point b) {
  const auto dx = static_cast<double>((b.x - a.x).nm), dy = static_cast<double>((b.y - a.y).nm);
  const auto px = static_cast<double>((p.x - a.x).nm), py = static_cast<double>((p.y - a.y).nm);
  const double square = dx * dx + dy * dy;
  const double t = square > 0 ? std::clamp((px * dx + py * dy) / square, 0.0, 1.0) : 0.0;
  return std::hypot(px - t * dx, py - t * dy);
}

inline double segmentToSegment(Point a, Point b, Point c, Point d) {
  const auto turn = [](Point p, Point q, Point r) {
    const auto v = static_cast<long double>((q.x - p.x).nm) * static_cast<long double>((r.y - p.y).nm) -
                   static_cast<long double>((q.y - p.y).nm) * static_cast<long double>((r.x - p.x).nm);
    return v > 0 ? 1 : v < 0 ? -1 : 0;
  };
  if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return 0;
  return std::min(
      {pointToSegment(a, c, d), pointToSegment(b, c, d), pointToSegment(c, a, b), pointToSegment(d, a, b)});
}

/// Whether the copper of both comes nearer than `reach`.
inline bool nearer(const OwnShape& a, const OwnShape& b, double reach) {
  const double by = a.radius + b.radius + reach;
  const Length margin(static_cast<std::int64_t>(by) + 1);
  if (a.box.min.x - margin > b.box.max.x || b.box.min.x - margin > a.box.max.x ||
      a.box.min.y - margin > b.box.max.y || b.box.min.y - margin > a.box.max.y)
    return false;
  if (a.holds(b.rings[0][0]) || b.holds(a.rings[0][0])) return true;
  bool found = false;
  a.edges([&](Point p, Point q) {
    if (!found) b.edges([&](Point r, Point s) { found = found || segmentToSegment(p, q, r, s) <= by; });
  });
  return found;
}

class OwnCopper {
public:
  /// Takes `lost` (a track, via or pad's id value) out altogether, if given.
  OwnCopper(const Lookup& lookup, NetId net, const std::optional<OwnBreak>& broken, std::uint64_t lost = 0)
      : board_(lookup.board()), net_(net), broken_(broken), lost_(lost) {
    for (const PinId pin : lookup.pinsOf(net))
      addPin(lookup, pin);
    for (const Via& via : board_.vias)
      if (via.net.known() && via.net.value == net && via.id.value != lost) addVia(via);
    for (const Track& track : board_.tracks)
      if (track.net.known() && track.net.value == net && track.id.value != lost) addTrack(track);
    for (const Area& area : board_.areas)
      if (area.net.known() && area.net.value == net && area.layer.known()) addArea(area);
    join();
  }

  [[nodiscard]] std::size_t size() const { return pieces_.size(); }
  [[nodiscard]] bool onePiece() const {
    for (std::size_t i = 1; i < pieces_.size(); ++i)
      if (find(i) != find(0)) return false;
    return !pieces_.empty();
  }
  /// By pin, where its leg is; legs of parts only.
  [[nodiscard]] std::vector<std::size_t> legs() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (pieces_[i].leg) out.push_back(find(i));
    return out;
  }
  /// The label of what lies at the place on the layer and is of this object; nothing: no such copper.
  [[nodiscard]] std::optional<std::size_t> at(std::uint64_t object, int layer, Point p) const {
    const OwnShape spot = OwnShape::make({{p}}, false, {});
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (!pieces_[i].leg && pieces_[i].object == object && pieces_[i].layer == layer &&
          nearer(pieces_[i].shape, spot, touch))
        return find(i);
    return std::nullopt;
  }
  [[nodiscard]] std::optional<std::size_t> leg(PinId pin) const {
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (pieces_[i].leg && pieces_[i].object == pin.value) return find(i);
    return std::nullopt;
  }

  static int layers(const Board& board) {
    return std::max(2, static_cast<int>(board.info.layerOrder.size()));
  }
  static int layerOf(const Board& board, LayerId id) {
    const auto& order = board.info.layerOrder;
    return static_cast<int>(std::find(order.begin(), order.end(), id) - order.begin());
  }

private:
  static constexpr double touch = 5.0; ///< nm

  struct Piece {
    std::uint64_t object = 0;
    int layer = -1;
    OwnShape shape;
    bool leg = false;
  };

  std::size_t add(std::uint64_t object, int layer, OwnShape shape) {
    pieces_.push_back({object, layer, std::move(shape), false});
    parent_.push_back(parent_.size());
    return pieces_.size() - 1;
  }

  void addPin(const Lookup& lookup, PinId pin) {
    const std::size_t leg = add(pin.value, -1, {});
    pieces_[leg].leg = true;
    for (const PadId id : lookup.padsOf(pin)) {
      const Pad* pad = board_.pads.find(id);
      if (!pad || !pad->reach.known() || id.value == lost_) continue;
      const auto shape = padShape(*pad);
      if (!shape) continue;
      const bool barrel = drillCentre(*pad) && pad->plated.valueOr(true);
      const int last = layers(board_) - 1;
      std::optional<std::size_t> before;
      for (int layer = 0; layer <= last; ++layer) {
        const PadReach reach = pad->reach.value;
        const bool copper = reach == PadReach::allLayers || (layer == 0 && reach != PadReach::bottom) ||
                            (layer == last && reach != PadReach::top);
        if (!copper && !barrel) continue;
        const RoundedShape wall{{drillCentre(*pad).value_or(Point{})},
                                std::min(pad->drill.value.width, pad->drill.value.height) / 2};
        const std::size_t piece = add(id.value, layer, OwnShape::of(copper ? *shape : wall));
        if (barrel && before) unite(*before, piece);
        before = piece;
        const bool open = broken_ && broken_->kind == OwnBreak::Kind::joint && broken_->pad == id;
        if (!open) unite(leg, piece);
      }
    }
  }

  void addVia(const Via& via) {
    const auto layer = [&](const Fact<LayerId>& id, int otherwise) {
      return id.known() && id.value ? layerOf(board_, id.value) : otherwise;
    };
    const auto [first, last] = std::minmax({layer(via.from, 0), layer(via.to, layers(board_) - 1)});
    for (int l = first; l <= last; ++l) {
      const std::size_t piece =
          add(via.id.value, l, OwnShape::make({{via.position}}, false, via.diameter.value / 2));
      const bool open = broken_ && broken_->kind == OwnBreak::Kind::barrel && broken_->via == via.id &&
                        broken_->above == l - 1;
      if (l > first && !open) unite(piece - 1, piece);
    }
  }

  void addTrack(const Track& track) {
    if (!track.layer.known() || track.way == TrackWay::unknownWay) return;
    const int layer = layerOf(board_, track.layer.value);
    const Length radius = track.width.value / 2;
    if (!broken_ || broken_->kind != OwnBreak::Kind::track || broken_->track != track.id) {
      add(track.id.value, layer, OwnShape::make({centreLine(track)}, false, radius));
      return;
    }
    // Two ends with a crack of 200 nm between their round caps.
    const double length = std::hypot((track.end.x - track.start.x).mm(), (track.end.y - track.start.y).mm());
    const double back = (radius.mm() + 1e-4) / length;
    const Point step{Length::fromMm(back * (track.end.x - track.start.x).mm()),
                     Length::fromMm(back * (track.end.y - track.start.y).mm())};
    add(track.id.value, layer, OwnShape::make({{track.start, broken_->at - step}}, false, radius));
    add(track.id.value, layer, OwnShape::make({{broken_->at + step, track.end}}, false, radius));
  }

  void addArea(const Area& area) {
    std::vector<Ring> rings{area.polygon.outer};
    rings.insert(rings.end(), area.polygon.holes.begin(), area.polygon.holes.end());
    if (area.polygon.outer.size() < 3) return;
    add(area.id.value, layerOf(board_, area.layer.value), OwnShape::make(std::move(rings), true, {}));
  }

  void join() {
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (!pieces_[i].leg && !pieces_[j].leg && pieces_[i].layer == pieces_[j].layer &&
            pieces_[i].object != pieces_[j].object && find(i) != find(j) &&
            nearer(pieces_[i].shape, pieces_[j].shape, touch))
          unite(i, j);
  }

  [[nodiscard]] std::size_t find(std::size_t i) const {
    while (parent_[i] != i)
      i = parent_[i];
    return i;
  }
  void unite(std::size_t a, std::size_t b) {
    parent_[std::max(find(a), find(b))] = std::min(find(a), find(b));
  }

  const Board& board_;
  NetId net_;
  const std::optional<OwnBreak>& broken_;
  std::uint64_t lost_;
  std::vector<Piece> pieces_;
  std::vector<std::size_t> parent_;
};

} // namespace netmend::test
