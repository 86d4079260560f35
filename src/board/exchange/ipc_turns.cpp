#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/index/rtree.hpp>

#include "ipc_reader.h"
#include "netmend/board/shape.h"

// The standard counts a pad's angle counter-clockwise, from a size before turning. Some writers count the
// other way, which shows at odd angles only; some give the size as it lies on the board, which shows at
// quarter turns. Read the wrong way, pads reach over their neighbours.

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
  Ring asWritten, otherWay; ///< the latter only where it differs
  Owner owner;
  int firstLayer = 0, lastLayer = 0;
  [[nodiscard]] const Ring& ring(bool turned) const {
    return turned && !otherWay.empty() ? otherWay : asWritten;
  }
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

GeoBox boxAround(const Copper& copper) {
  Box box;
  for (const Ring* ring : {&copper.asWritten, &copper.otherWay})
    for (const Point p : *ring)
      box.include(p);
  const auto geo = [](Point p) { return GeoPoint(static_cast<double>(p.x.nm), static_cast<double>(p.y.nm)); };
  return {geo(box.min), geo(box.max)};
}

/// The pad as the other kind of writer means it.
Pad otherWay(Pad pad, Turn turn) {
  pad.rotation = turn == Turn::odd ? -pad.rotation : Degrees(0);
  return pad;
}

/// Counts overlaps of the pads so turned with copper of others, read either way.
class Counting {
public:
  Counting(const Board& board, Turn turn)
      : board_(board), turn_(turn), last_(static_cast<int>(board.info.layerOrder.size()) - 1) {
    for (const Pad& pad : board.pads)
      if (turnOf(pad) == turn) addPad(pad);
    std::vector<std::pair<GeoBox, std::size_t>> entries;
    for (std::size_t i = 0; i < turning_.size(); ++i)
      entries.emplace_back(boxAround(turning_[i]), i);
    tree_ = Tree(entries);
    for (std::size_t i = 0; i < turning_.size(); ++i)
      count(turning_[i], i);
    for (const Pad& pad : board.pads)
      if (turnOf(pad) != turn) countPad(pad);
    for (const Via& via : board.vias)
      countVia(via);
    for (const Track& track : board.tracks)
      countTrack(track);
  }

  [[nodiscard]] std::size_t pads() const { return turning_.size(); }
  std::size_t byStandard = 0, byOther = 0;

private:
  using Tree = bgi::rtree<std::pair<GeoBox, std::size_t>, bgi::linear<16>>;
  static constexpr Length roundness{2000};

  [[nodiscard]] std::optional<Copper> copperOf(const Pad& pad) const {
    const auto shape = padShape(pad);
    if (!shape) return std::nullopt;
    const Fact<NetId>& net = board_.pins.find(pad.pin)->net;
    Copper out{outlineOf(*shape, roundness), {}, {net.valueOr({}), pad.pin}, 0, last_};
    if (pad.reach.known() && pad.reach.value == PadReach::top) out.lastLayer = 0;
    if (pad.reach.known() && pad.reach.value == PadReach::bottom) out.firstLayer = last_;
    return out;
  }

  void addPad(const Pad& pad) {
    auto copper = copperOf(pad);
    if (!copper) return;
    copper->otherWay = outlineOf(*padShape(otherWay(pad, turn_)), roundness);
    turning_.push_back(std::move(*copper));
  }

  void countPad(const Pad& pad) {
    if (const auto copper = copperOf(pad)) count(*copper, SIZE_MAX);
  }

  void countVia(const Via& via) {
    if (!via.net.known() || !via.net.value || !via.diameter.known() || via.diameter.value <= Length(0))
      return;
    const RoundedShape disc{{via.position}, via.diameter.value / 2};
    count({outlineOf(disc, roundness), {}, {via.net.value, {}}, layerOr(via.from, 0), layerOr(via.to, last_)},
          SIZE_MAX);
  }

  void countTrack(const Track& track) {
    if (!track.net.known() || !track.net.value || !track.width.known()) return;
    RoundedShape swept{{track.start, track.end}, track.width.value / 2};
    if (track.start == track.end) swept.core.pop_back();
    count({outlineOf(swept, roundness),
           {},
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

  /// `index`: of a turning pad, which meets only those after it, so that each two count once.
  void count(const Copper& copper, std::size_t index) {
    if (copper.asWritten.size() < 3) return;
    for (auto it = tree_.qbegin(bgi::intersects(boxAround(copper))); it != tree_.qend(); ++it) {
      const Copper& other = turning_[it->second];
      if (it->second == index || (index != SIZE_MAX && it->second < index)) continue;
      if (copper.owner.sameAs(other.owner) || !onSameLayer(copper, other)) continue;
      byStandard += overlap(copper.ring(false), other.ring(false)) ? 1 : 0;
      byOther += overlap(copper.ring(true), other.ring(true)) ? 1 : 0;
    }
  }

  const Board& board_;
  Turn turn_;
  int last_;
  std::vector<Copper> turning_;
  Tree tree_;
};

std::string noticeOf(Turn turn, const Counting& counted, const std::string& first) {
  const bool other = counted.byOther < counted.byStandard;
  const std::string overlaps = fmt::format("{} overlaps of different nets, the other way {}",
                                           std::min(counted.byStandard, counted.byOther),
                                           std::max(counted.byStandard, counted.byOther));
  if (turn == Turn::odd) {
    return fmt::format("pads at odd angles: {}, first at {}; angles taken as counted {}: {}", counted.pads(),
                       first, other ? "clockwise" : "counter-clockwise", overlaps);
  }
  return fmt::format(
      "pads at quarter turns {}: {}, first at {}; their sizes taken as they lie on the board: {}",
      turn == Turn::quarterDrilled ? "with holes" : "without holes", counted.pads(), first, overlaps);
}

void settle(IpcReader& r, Turn turn) {
  const std::string& first = r.firstTurned[static_cast<std::size_t>(turn)];
  if (first.empty()) return;
  Board& board = r.points.board();
  const Counting counted(board, turn);
  const bool other = counted.byOther < counted.byStandard;
  if (other || turn == Turn::odd) r.points.notice(noticeOf(turn, counted, first));
  if (!other) return;
  std::vector<Pad> turned;
  for (const Pad& pad : board.pads)
    if (turnOf(pad) == turn) turned.push_back(otherWay(pad, turn));
  for (Pad& pad : turned)
    board.pads.put(std::move(pad));
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

void settleTurns(IpcReader& r) {
  for (const Turn turn : {Turn::quarterDrilled, Turn::quarterSurface, Turn::odd})
    settle(r, turn);
}

} // namespace netmend::ipc
