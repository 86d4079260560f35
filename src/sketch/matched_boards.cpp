#include "matched_boards.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <string>

namespace netmend {

namespace {

constexpr Length fits{500'000};
constexpr std::size_t leastPlaces = 3;

struct Places {
  std::vector<Point> from;
  std::vector<Point> to;
  void add(Point a, Point b) {
    from.push_back(a);
    to.push_back(b);
  }
  [[nodiscard]] bool enough() const { return from.size() >= leastPlaces; }
};

/// The rigid motion of least squares (Umeyama without scale; in the plane a single angle).
Laid motionOf(const Places& places, bool straight) {
  double fx = 0, fy = 0, tx = 0, ty = 0;
  const auto n = static_cast<double>(places.from.size());
  for (std::size_t i = 0; i < places.from.size(); ++i) {
    fx += places.from[i].x.mm() / n;
    fy += places.from[i].y.mm() / n;
    tx += places.to[i].x.mm() / n;
    ty += places.to[i].y.mm() / n;
  }
  double along = 0, across = 0;
  for (std::size_t i = 0; i < places.from.size(); ++i) {
    const double ax = places.from[i].x.mm() - fx, ay = places.from[i].y.mm() - fy;
    const double bx = places.to[i].x.mm() - tx, by = places.to[i].y.mm() - ty;
    along += ax * bx + ay * by;
    across += ax * by - ay * bx;
  }
  const double angle = std::atan2(across, along);
  const double quarter = std::round(angle / (std::numbers::pi / 2)) * (std::numbers::pi / 2);
  straight = straight && std::abs(angle - quarter) < 0.02;
  Laid out;
  out.c = straight ? std::round(std::cos(quarter)) : std::cos(angle);
  out.s = straight ? std::round(std::sin(quarter)) : std::sin(angle);
  out.x = tx - (out.c * fx - out.s * fy);
  out.y = ty - (out.s * fx + out.c * fy);
  return out;
}

Length worstOf(const Places& places, const Laid& motion) {
  Length worst;
  for (std::size_t i = 0; i < places.from.size(); ++i)
    worst = std::max(worst, distance(motion(places.from[i]), places.to[i]));
  return worst;
}

std::multimap<std::string, PartId> partsByReference(const Board& board) {
  std::multimap<std::string, PartId> out;
  for (const Part& part : board.parts)
    if (!part.reference.empty()) out.emplace(part.reference, part.id);
  return out;
}

} // namespace

Point Laid::operator()(Point p) const {
  return {Length::fromMm(c * p.x.mm() - s * p.y.mm() + x), Length::fromMm(s * p.x.mm() + c * p.y.mm() + y)};
}

Degrees Laid::turn(Degrees angle) const {
  const double by = std::atan2(s, c) * 180.0 / std::numbers::pi;
  return Degrees(std::fmod(angle.value + by + 720.0, 360.0));
}

void Laid::move(Ring& ring) const {
  for (Point& p : ring)
    p = (*this)(p);
}

void Laid::move(Polygon& polygon) const {
  move(polygon.outer);
  for (Ring& hole : polygon.holes)
    move(hole);
}

MatchedBoards::MatchedBoards(const Lookup& drawn, const Lookup& file) : drawn_(drawn), file_(file) {
  matchByLabel();
  lay();
  if (laid) matchByPlace();
  for (const auto& [theirs, mine] : drawnOf) {
    const PartId from = file.board().pins.find(theirs)->part;
    const PartId to = drawn.board().pins.find(mine)->part;
    if (from && to) partOf.emplace(from, to);
  }
  matchPinless();
  matchNets();
}

void MatchedBoards::matchByLabel() {
  for (const Pin& pin : file_.board().pins) {
    const std::string label = pinLabel(file_.board(), pin.id);
    const auto mine = drawn_.pinsLabelled(label);
    // A label that stands twice names nothing.
    if (mine.size() == 1 && file_.pinsLabelled(label).size() == 1) drawnOf.emplace(pin.id, mine.front());
  }
}

void MatchedBoards::lay() {
  Places all, exact, byHand;
  for (const auto& [theirs, mine] : drawnOf) {
    const auto from = positionOf(file_, theirs);
    const auto to = positionOf(drawn_, mine);
    if (!from.known() || !to.known()) continue;
    all.add(from.value, to.value);
    (to.origin == Origin::file ? exact : byHand).add(from.value, to.value);
  }
  if (!all.enough()) return;
  // What came from a file tells better than a hand. And what comes in now must not tell another motion when
  // the same file is brought in again.
  const Places& told = exact.enough() ? exact : byHand.enough() ? byHand : all;
  // Files lie straight, and what is drawn by hand is off by a little; unless the photo below lies askew.
  Laid motion = motionOf(told, true);
  worst = worstOf(all, motion);
  if (worst > fits) {
    const Laid askew = motionOf(told, false);
    const Length then = worstOf(all, askew);
    if (then < worst) motion = askew;
    worst = std::min(worst, then);
  }
  if (worst <= fits) laid = motion;
}

/// Of pins of the same label the one that lies there.
void MatchedBoards::matchByPlace() {
  std::set<PinId> taken;
  for (const auto& [theirs, mine] : drawnOf)
    taken.insert(mine);
  for (const Pin& pin : file_.board().pins) {
    if (drawnOf.contains(pin.id)) continue;
    const auto from = positionOf(file_, pin.id);
    if (!from.known()) continue;
    const Point at = (*laid)(from.value);
    PinId nearest;
    Length least = fits + Length(1);
    for (const PinId mine : drawn_.pinsLabelled(pinLabel(file_.board(), pin.id))) {
      const auto to = positionOf(drawn_, mine);
      if (!to.known() || taken.contains(mine) || distance(at, to.value) >= least) continue;
      least = distance(at, to.value);
      nearest = mine;
    }
    if (!nearest) continue;
    drawnOf.emplace(pin.id, nearest);
    taken.insert(nearest);
  }
}

/// Parts of which there are no pins to compare: by a reference that stands once, else by their place.
void MatchedBoards::matchPinless() {
  const auto theirs = partsByReference(file_.board());
  const auto mine = partsByReference(drawn_.board());
  std::set<PartId> taken;
  for (const auto& [from, to] : partOf)
    taken.insert(to);
  for (const Part& part : file_.board().parts) {
    if (partOf.contains(part.id)) continue;
    const bool once = theirs.count(part.reference) == 1 && mine.count(part.reference) == 1;
    const auto [first, last] = mine.equal_range(part.reference);
    for (auto there = first; there != last; ++there) {
      const PartId id = there->second;
      const Part& drawn = *drawn_.board().parts.find(id);
      const bool compared = !file_.pinsOf(part.id).empty() && !drawn_.pinsOf(id).empty();
      const bool lies = laid && part.position.known() && drawn.position.known() &&
                        distance((*laid)(part.position.value), drawn.position.value) <= fits;
      if (compared || taken.contains(id) || !(once || lies)) continue;
      partOf.emplace(part.id, id);
      taken.insert(id);
      break;
    }
  }
}

/// Those first that have most pins in common; of as many, those of the same name. The same name alone is
/// enough where it stands once.
void MatchedBoards::matchNets() {
  const auto netAt = [](const Board& board, PinId id) {
    const Pin& pin = *board.pins.find(id);
    return pin.net.known() ? pin.net.value : NetId();
  };
  std::map<std::pair<NetId, NetId>, std::size_t> common;
  for (const auto& [theirs, mine] : drawnOf) {
    const NetId f = netAt(file_.board(), theirs);
    const NetId d = netAt(drawn_.board(), mine);
    if (f && d) ++common[{f, d}];
  }
  for (const Net& net : file_.board().nets) {
    const auto mine = drawn_.netsNamed(net.name);
    if (!net.name.empty() && mine.size() == 1 && file_.netsNamed(net.name).size() == 1)
      common.emplace(std::pair(net.id, mine.front()), 0);
  }
  struct Pair {
    NetId theirs, mine;
    std::size_t count;
    bool sameName;
  };
  std::vector<Pair> pairs;
  pairs.reserve(common.size());
  for (const auto& [both, count] : common)
    pairs.push_back(
        {both.first, both.second, count,
         file_.board().nets.find(both.first)->name == drawn_.board().nets.find(both.second)->name});
  std::stable_sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) {
    return std::pair(a.count, a.sameName) > std::pair(b.count, b.sameName);
  });
  std::set<NetId> taken;
  for (const Pair& pair : pairs)
    if (!netOf.contains(pair.theirs) && taken.insert(pair.mine).second) netOf[pair.theirs] = pair.mine;
}

} // namespace netmend
