#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>

#include <boost/geometry/algorithms/expand.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>

#include "ipc_reader.h"
#include "netmend/board/shape.h"

// The standard counts a pad's angle counter-clockwise, from a size before turning. Some writers count the
// other way, which shows at odd angles only; some give the size as it lies on the board, which shows at
// quarter turns. Ovals are to be written as rectangles, which shows at their corners. Read the wrong way,
// pads reach into copper of other nets.

namespace netmend::ipc {

namespace {

namespace bgi = boost::geometry::index;
using GeoPoint = boost::geometry::model::d2::point_xy<double>;
using GeoBox = boost::geometry::model::box<GeoPoint>;

/// What overlaps of it are counted by: copper of one owner is meant to meet.
struct Owner {
  NetId net;
  PinId pin; ///< none: a via or track
  [[nodiscard]] bool sameAs(const Owner& other) const {
    return (net && net == other.net) || (pin && pin == other.pin);
  }
};

struct Copper {
  Ring ring;
  Owner owner;
  int firstLayer = 0, lastLayer = 0;
};

bool onSameLayer(const Copper& a, const Copper& b) {
  return a.firstLayer <= b.lastLayer && b.firstLayer <= a.lastLayer;
}

/// Whether some side of `a` has all of `b` behind it; both convex and counter-clockwise.
bool separates(const Ring& a, const Ring& b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    const Point from = a[i];
    const Point along = a[(i + 1) % a.size()] - from;
    const auto isOutside = [&](Point p) {
      const auto dx = static_cast<double>((p - from).x.nm), dy = static_cast<double>((p - from).y.nm);
      return static_cast<double>(along.x.nm) * dy - static_cast<double>(along.y.nm) * dx <= 0;
    };
    if (std::all_of(b.begin(), b.end(), isOutside)) return true;
  }
  return false;
}

bool overlap(const Ring& a, const Ring& b) {
  return !separates(a, b) && !separates(b, a);
}

GeoBox boxAround(const Ring& ring) {
  Box box;
  for (const Point p : ring)
    box.include(p);
  const auto geo = [](Point p) { return GeoPoint(static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)); };
  return {geo(box.min), geo(box.max)};
}

/// Pads that may be meant in two ways.
struct Doubt {
  bool (*concerns)(const Pad&);
  Pad (*otherWay)(Pad);
  bool lies; ///< the other way lies within the first
};

/// Counts overlaps of doubtful pads with copper of others, taken either way.
class Counting {
public:
  struct Both {
    const Pad* pad;
    std::size_t first = 0, other = 0;
  };

  Counting(const Board& board, const Doubt& doubt)
      : board_(board), doubt_(doubt), last_(static_cast<int>(board.info.layerOrder.size()) - 1) {
    std::vector<std::pair<GeoBox, std::size_t>> entries;
    for (const Pad& pad : board.pads) {
      if (!doubt.concerns(pad) || !padShape(pad)) continue;
      coppers_.push_back(copperOf(pad));
      entries.emplace_back(boxAround(coppers_.back().ring), pads.size());
      if (!doubt.lies) boost::geometry::expand(entries.back().first, boxAround(otherRing(pad)));
      pads.push_back({&pad});
    }
    if (pads.empty()) return;
    tree_ = Tree(entries);
    for (std::size_t i = 0; i < pads.size(); ++i)
      count(coppers_[i], i);
    for (const Pad& pad : board.pads)
      if (!doubt.concerns(pad) && padShape(pad)) count(copperOf(pad), SIZE_MAX);
    for (const Via& via : board.vias)
      countVia(via);
    for (const Track& track : board.tracks)
      countTrack(track);
  }

  std::vector<Both> pads; ///< in the board's order
  std::size_t first = 0, other = 0;

private:
  using Tree = bgi::rtree<std::pair<GeoBox, std::size_t>, bgi::linear<16>>;
  static constexpr Length roundness{2000};

  [[nodiscard]] Copper copperOf(const Pad& pad) const {
    const Fact<NetId>& net = board_.pins.find(pad.pin)->net;
    Copper out{outlineOf(*padShape(pad), roundness), {net.valueOr({}), pad.pin}, 0, last_};
    if (pad.reach.known() && pad.reach.value == PadReach::top) out.lastLayer = 0;
    if (pad.reach.known() && pad.reach.value == PadReach::bottom) out.firstLayer = last_;
    return out;
  }

  [[nodiscard]] Ring otherRing(const Pad& pad) const {
    return outlineOf(*padShape(doubt_.otherWay(pad)), roundness);
  }

  void countVia(const Via& via) {
    if (!via.net.known() || !via.net.value || !via.diameter.known() || via.diameter.value <= Length(0))
      return;
    const RoundedShape disc{{via.position}, via.diameter.value / 2};
    count({outlineOf(disc, roundness), {via.net.value, {}}, layerOr(via.from, 0), layerOr(via.to, last_)},
          SIZE_MAX);
  }

  void countTrack(const Track& track) {
    if (!track.net.known() || !track.net.value || !track.width.known()) return;
    RoundedShape swept{{track.start, track.end}, track.width.value / 2};
    if (track.start == track.end) swept.core.pop_back();
    count({outlineOf(swept, roundness),
           {track.net.value, {}},
           layerOr(track.layer, 0),
           layerOr(track.layer, last_)},
          SIZE_MAX);
  }

  [[nodiscard]] int layerOr(const Fact<LayerId>& layer, int otherwise) const {
    const auto& order = board_.info.layerOrder;
    const auto found = std::find(order.begin(), order.end(), layer.valueOr({}));
    return found == order.end() ? otherwise : static_cast<int>(found - order.begin());
  }

  /// `index`: of a doubtful pad, which meets only those after it, so that each two count once.
  void count(const Copper& copper, std::size_t index) {
    if (copper.ring.size() < 3) return;
    const bool doubtful = index != SIZE_MAX;
    GeoBox box = boxAround(copper.ring);
    const Ring otherwise = doubtful && !doubt_.lies ? otherRing(*pads[index].pad) : Ring{};
    if (!otherwise.empty()) boost::geometry::expand(box, boxAround(otherwise));
    for (auto it = tree_.qbegin(bgi::intersects(box)); it != tree_.qend(); ++it) {
      const std::size_t i = it->second;
      if (doubtful && i <= index) continue;
      if (copper.owner.sameAs(coppers_[i].owner) || !onSameLayer(copper, coppers_[i])) continue;
      const bool meets = overlap(copper.ring, coppers_[i].ring);
      if (!meets && doubt_.lies) continue;
      const Ring own = doubtful ? otherRing(*pads[index].pad) : copper.ring;
      const bool meetsOther = overlap(own, otherRing(*pads[i].pad));
      first += meets ? 1 : 0;
      other += meetsOther ? 1 : 0;
      for (const std::size_t pad : {i, index}) {
        if (pad == SIZE_MAX) continue;
        pads[pad].first += meets ? 1 : 0;
        pads[pad].other += meetsOther ? 1 : 0;
      }
    }
  }

  const Board& board_;
  Doubt doubt_;
  int last_;
  std::vector<Copper> coppers_; ///< parallel to `pads`
  Tree tree_;
};

template <Turn turn> bool turnsBy(const Pad& pad) {
  return turnOf(pad) == turn;
}
Pad turnedBack(Pad pad) {
  pad.rotation = -pad.rotation;
  return pad;
}
Pad notTurned(Pad pad) {
  pad.rotation = Degrees(0);
  return pad;
}
bool isRectangle(const Pad& pad) {
  return pad.shape.known() && pad.shape.value == PadShape::rectangle;
}
Pad rounded(Pad pad) {
  pad.shape = guessed(PadShape::oval);
  return pad;
}

void change(Board& board, const std::vector<const Pad*>& pads, Pad (*otherWay)(Pad)) {
  std::vector<Pad> changed;
  changed.reserve(pads.size());
  for (const Pad* pad : pads)
    changed.push_back(otherWay(*pad));
  for (Pad& pad : changed)
    board.pads.put(std::move(pad));
}

Said overlaps(std::size_t taken, std::size_t otherwise) {
  return said(pattern("core", "{} overlaps of different nets, the other way {}"), taken, otherwise);
}

void settle(IpcReader& r, Turn turn, const Doubt& doubt) {
  const FilePlace& place = r.firstTurned[static_cast<std::size_t>(turn)];
  if (place.empty()) return;
  const Counting counted(r.points.board(), doubt);
  const bool byHabit = turn == Turn::odd && r.preamble.countsClockwise; // where the board does not tell
  const bool other = byHabit ? counted.other <= counted.first : counted.other < counted.first;
  const Said found = other ? overlaps(counted.other, counted.first) : overlaps(counted.first, counted.other);
  if (turn == Turn::odd) {
    r.points.notice(said(
        other ? pattern("core", "pads at odd angles: {}, first at {}; angles taken as counted clockwise: {}")
              : pattern("core", "pads at odd angles: {}, first at {}; angles taken as counted "
                                "counter-clockwise: {}"),
        counted.pads.size(), place.said(), found));
  } else if (other) {
    r.points.notice(said(
        turn == Turn::quarterDrilled
            ? pattern("core",
                      "pads at quarter turns with holes: {}, first at {}; sizes taken as they lie on the "
                      "board: {}")
            : pattern("core",
                      "pads at quarter turns without holes: {}, first at {}; sizes taken as they lie on "
                      "the board: {}"),
        counted.pads.size(), place.said(), found));
  }
  if (!other) return;
  std::vector<const Pad*> pads;
  pads.reserve(counted.pads.size());
  for (const Counting::Both& both : counted.pads)
    pads.push_back(both.pad);
  change(r.points.board(), pads, doubt.otherWay);
}

/// A rectangle of which only the corners reach into other nets is an oval.
void settleCorners(IpcReader& r) {
  const Counting counted(r.points.board(), {isRectangle, rounded, true});
  std::vector<const Pad*> pads;
  for (const Counting::Both& both : counted.pads)
    if (both.first > 0 && both.other == 0) pads.push_back(both.pad);
  if (pads.empty()) return;
  r.points.notice(said(
      pattern("core", "pads taken as ovals, as the corners of their rectangles reach into other nets: {}"),
      pads.size()));
  change(r.points.board(), pads, rounded);
}

} // namespace

Turn turnOf(const Pad& pad) {
  if (pad.shape.valueOr(PadShape::circle) == PadShape::circle || !pad.size.known()) return Turn::indifferent;
  constexpr double nothing = 1e-9;
  const bool square = pad.size.value.width == pad.size.value.height;
  const double eighths = std::abs(pad.rotation.value) / 45.0;
  const double left = std::fmod(eighths, 4.0); // half turns do not matter
  const auto is = [&](double turn) { return std::abs(left - turn) < nothing; };
  if (is(0.0) || is(4.0)) return Turn::indifferent;
  if (square) return is(1.0) || is(2.0) || is(3.0) ? Turn::indifferent : Turn::odd;
  if (!is(2.0)) return Turn::odd;
  return pad.drill.valueOr({}).width > Length(0) ? Turn::quarterDrilled : Turn::quarterSurface;
}

void settlePads(IpcReader& r) {
  settle(r, Turn::quarterDrilled, {turnsBy<Turn::quarterDrilled>, notTurned, false});
  settle(r, Turn::quarterSurface, {turnsBy<Turn::quarterSurface>, notTurned, false});
  settle(r, Turn::odd, {turnsBy<Turn::odd>, turnedBack, false});
  settleCorners(r);
}

} // namespace netmend::ipc
