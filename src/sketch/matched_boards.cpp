#include "matched_boards.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace netmend {

namespace {

constexpr Length fits{500'000};
constexpr std::size_t leastPlaces = 3;

NetId netAt(const Board& board, PinId id) {
  const Pin& pin = *board.pins.find(id);
  return pin.net.known() ? pin.net.value : NetId();
}

/// Each net with the one of the other board that it has most pins in common with; of as many, the one of the
/// same name.
void matchNets(const Lookup& drawn, const Lookup& file, MatchedBoards& out) {
  std::map<std::pair<NetId, NetId>, std::size_t> common;
  for (const auto& [theirs, mine] : out.drawnOf) {
    const NetId f = netAt(file.board(), theirs);
    const NetId d = netAt(drawn.board(), mine);
    if (f && d) ++common[{f, d}];
  }
  const auto better = [&](NetId f, NetId d, std::size_t count, std::size_t than) {
    if (count != than) return count > than;
    return file.board().nets.find(f)->name == drawn.board().nets.find(d)->name;
  };
  std::map<NetId, std::size_t> bestOfFile, bestOfDrawn;
  for (const auto& [both, count] : common) {
    const auto& [f, d] = both;
    if (better(f, d, count, bestOfFile[f])) {
      bestOfFile[f] = count;
      out.netOf[f] = d;
    }
    if (better(f, d, count, bestOfDrawn[d])) {
      bestOfDrawn[d] = count;
      out.fileNetOf[d] = f;
    }
  }
}

struct Places {
  std::vector<Point> from;
  std::vector<Point> to;
};

/// The rigid motion of least squares (Umeyama without scale; in the plane a single angle).
Laid motionOf(const Places& places) {
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
  const double quarter = std::round(angle / (std::numbers::pi / 2));
  // Drawn by hand it is off by a little; files lie straight.
  const bool straight = std::abs(angle - quarter * std::numbers::pi / 2) < 0.02;
  Laid out;
  out.c = straight ? std::round(std::cos(quarter * std::numbers::pi / 2)) : std::cos(angle);
  out.s = straight ? std::round(std::sin(quarter * std::numbers::pi / 2)) : std::sin(angle);
  out.x = tx - (out.c * fx - out.s * fy);
  out.y = ty - (out.s * fx + out.c * fy);
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

MatchedBoards::MatchedBoards(const Lookup& drawn, const Lookup& file) {
  Places places;
  for (const Pin& pin : file.board().pins) {
    const auto mine = drawn.pinsLabelled(pinLabel(file.board(), pin.id));
    // A label that stands twice names nothing.
    if (mine.size() != 1 || file.pinsLabelled(pinLabel(file.board(), pin.id)).size() != 1) continue;
    drawnOf.emplace(pin.id, mine.front());
    const PartId part = drawn.board().pins.find(mine.front())->part;
    if (pin.part && part) partOf.emplace(pin.part, part);
    const auto from = positionOf(file, pin.id);
    const auto to = positionOf(drawn, mine.front());
    if (!from.known() || !to.known()) continue;
    places.from.push_back(from.value);
    places.to.push_back(to.value);
  }
  matchNets(drawn, file, *this);
  if (places.from.size() < leastPlaces) return;
  const Laid motion = motionOf(places);
  for (std::size_t i = 0; i < places.from.size(); ++i)
    worst = std::max(worst, distance(motion(places.from[i]), places.to[i]));
  if (worst <= fits) laid = motion;
}

} // namespace netmend
