#include "triangulation.h"

#include <algorithm>
#include <deque>
#include <numeric>

#include "exact.h"

namespace netmend {
namespace {

/// Place on a Z-shaped curve through the plane: near in order is mostly near in place.
std::uint64_t curveIndex(Point p, Point origin) {
  const auto spread = [](std::uint64_t v) {
    v &= 0xffffffffu;
    v = (v | (v << 16)) & 0x0000ffff0000ffffu;
    v = (v | (v << 8)) & 0x00ff00ff00ff00ffu;
    v = (v | (v << 4)) & 0x0f0f0f0f0f0f0f0fu;
    v = (v | (v << 2)) & 0x3333333333333333u;
    return (v | (v << 1)) & 0x5555555555555555u;
  };
  return spread(static_cast<std::uint64_t>(p.x.nm - origin.x.nm)) |
         (spread(static_cast<std::uint64_t>(p.y.nm - origin.y.nm)) << 1);
}

std::size_t cornerIndex(const Triangulation::Triangle& t, std::int32_t vertex) {
  return t.corner[0] == vertex ? 0 : t.corner[1] == vertex ? 1 : 2;
}

std::size_t neighbourIndex(const Triangulation::Triangle& t, std::int32_t neighbour) {
  return t.neighbour[0] == neighbour ? 0 : t.neighbour[1] == neighbour ? 1 : 2;
}

} // namespace

Triangulation::Triangulation(const Box& box, const std::vector<Point>& points,
                             const std::vector<std::pair<std::int32_t, std::int32_t>>& edges)
    : points_(points) {
  const auto n = static_cast<std::int32_t>(points.size());
  points_.push_back(box.min);
  points_.push_back({box.max.x, box.min.y});
  points_.push_back(box.max);
  points_.push_back({box.min.x, box.max.y});
  triangles_.reserve(2 * points_.size());
  triangles_.push_back({{n, n + 1, n + 2}, {-1, 1, -1}});
  triangles_.push_back({{n, n + 2, n + 3}, {-1, -1, 0}});
  triangleOf_.assign(points_.size(), 0);
  triangleOf_[static_cast<std::size_t>(n) + 3] = 1;

  std::vector<std::int32_t> order(points.size());
  std::iota(order.begin(), order.end(), 0);
  std::vector<std::uint64_t> key(points.size());
  for (std::size_t i = 0; i < points.size(); ++i)
    key[i] = curveIndex(points[i], box.min);
  std::sort(order.begin(), order.end(), [&](std::int32_t a, std::int32_t b) {
    return key[static_cast<std::size_t>(a)] < key[static_cast<std::size_t>(b)];
  });
  std::int32_t hint = 0;
  for (const std::int32_t vertex : order)
    insert(vertex, hint);
  for (const auto& [a, b] : edges)
    force(a, b);
}

std::int32_t Triangulation::walkTo(Point p, std::int32_t from) {
  // Starting each look at a random edge keeps the walk from going in circles.
  std::int32_t t = from;
  for (;;) {
    random_ ^= random_ << 13;
    random_ ^= random_ >> 17;
    random_ ^= random_ << 5;
    std::size_t i = random_ % 3;
    bool moved = false;
    for (int k = 0; k < 3 && !moved; ++k, i = next3(i)) {
      const Triangle& here = tri(t);
      if (side(at(here.corner[next3(i)]), at(here.corner[previous3(i)]), p) < 0) {
        t = here.neighbour[i];
        moved = true;
      }
    }
    if (!moved) return t;
  }
}

void Triangulation::insert(std::int32_t vertex, std::int32_t& hint) {
  const std::int32_t t = walkTo(at(vertex), hint);
  int onEdge = -1;
  for (std::size_t i = 0; i < 3; ++i)
    if (side(at(tri(t).corner[next3(i)]), at(tri(t).corner[previous3(i)]), at(vertex)) == 0)
      onEdge = static_cast<int>(i);
  if (onEdge < 0)
    splitTriangle(t, vertex);
  else
    splitEdge(t, onEdge, vertex);
  legalise();
  hint = triangleOf_[static_cast<std::size_t>(vertex)];
}

void Triangulation::set(std::int32_t t, std::array<std::int32_t, 3> corner,
                        std::array<std::int32_t, 3> neighbour) {
  tri(t) = {corner, neighbour};
  for (const std::int32_t v : corner)
    triangleOf_[static_cast<std::size_t>(v)] = t;
}

void Triangulation::relink(std::int32_t t, std::int32_t was, std::int32_t now) {
  if (t >= 0) tri(t).neighbour[neighbourIndex(tri(t), was)] = now;
}

void Triangulation::splitTriangle(std::int32_t t, std::int32_t vertex) {
  const auto [a, b, c] = tri(t).corner;
  const auto [na, nb, nc] = tri(t).neighbour;
  const auto t1 = static_cast<std::int32_t>(triangles_.size());
  const std::int32_t t2 = t1 + 1;
  triangles_.resize(triangles_.size() + 2);
  set(t, {a, b, vertex}, {t1, t2, nc});
  set(t1, {b, c, vertex}, {t2, t, na});
  set(t2, {c, a, vertex}, {t, t1, nb});
  relink(na, t, t1);
  relink(nb, t, t2);
  doubtful_.insert(doubtful_.end(), {{t, 2}, {t1, 2}, {t2, 2}});
}

void Triangulation::splitEdge(std::int32_t t, int edge, std::int32_t vertex) {
  const auto i = static_cast<std::size_t>(edge);
  const std::int32_t c = tri(t).corner[i], a = tri(t).corner[next3(i)], b = tri(t).corner[previous3(i)];
  const std::int32_t na = tri(t).neighbour[next3(i)], nb = tri(t).neighbour[previous3(i)];
  const std::int32_t u = tri(t).neighbour[i];
  const std::size_t j = neighbourIndex(tri(u), t);
  const std::int32_t d = tri(u).corner[j];
  const std::int32_t ub = tri(u).neighbour[next3(j)], ua = tri(u).neighbour[previous3(j)];
  // t is c, a, b and u is d, b, a; ub lies opposite b (along a-d), ua opposite a (along d-b).
  const auto t1 = static_cast<std::int32_t>(triangles_.size());
  const std::int32_t u1 = t1 + 1;
  triangles_.resize(triangles_.size() + 2);
  set(t, {c, a, vertex}, {u1, t1, nb});
  set(t1, {b, c, vertex}, {t, u, na});
  set(u, {d, b, vertex}, {t1, u1, ua});
  set(u1, {a, d, vertex}, {u, t, ub});
  relink(na, t, t1);
  relink(ub, u, u1);
  doubtful_.insert(doubtful_.end(), {{t, 2}, {t1, 2}, {u, 2}, {u1, 2}});
}

void Triangulation::flip(std::int32_t t, int edge) {
  const auto i = static_cast<std::size_t>(edge);
  const std::int32_t c = tri(t).corner[i], a = tri(t).corner[next3(i)], b = tri(t).corner[previous3(i)];
  const std::int32_t na = tri(t).neighbour[next3(i)], nb = tri(t).neighbour[previous3(i)];
  const std::int32_t u = tri(t).neighbour[i];
  const std::size_t j = neighbourIndex(tri(u), t);
  const std::int32_t d = tri(u).corner[j];
  const std::int32_t ub = tri(u).neighbour[next3(j)], ua = tri(u).neighbour[previous3(j)];
  set(t, {a, d, c}, {u, nb, ub});
  set(u, {d, b, c}, {na, t, ua});
  relink(na, t, u);
  relink(ub, u, t);
}

void Triangulation::legalise() {
  while (!doubtful_.empty()) {
    const auto [t, edge] = doubtful_.back();
    doubtful_.pop_back();
    const std::int32_t u = tri(t).neighbour[static_cast<std::size_t>(edge)];
    if (u < 0) continue;
    const Triangle& other = tri(u);
    const std::int32_t d = other.corner[neighbourIndex(other, t)];
    const Triangle& here = tri(t);
    if (inCircle(at(here.corner[0]), at(here.corner[1]), at(here.corner[2]), at(d)) <= 0) continue;
    flip(t, edge);
    // The new vertex is corner 2 of both, as `flip` and the splits leave it.
    doubtful_.emplace_back(t, 2);
    doubtful_.emplace_back(u, 2);
  }
}

std::pair<std::int32_t, int> Triangulation::findEdge(std::int32_t u, std::int32_t v) const {
  const std::int32_t first = triangleOf_[static_cast<std::size_t>(u)];
  for (const bool forward : {true, false}) { // a vertex of the box has no full turn
    std::int32_t t = first;
    do {
      const Triangle& here = tri(t);
      const std::size_t i = cornerIndex(here, u);
      if (here.corner[next3(i)] == v) return {t, static_cast<int>(previous3(i))};
      if (here.corner[previous3(i)] == v) return {t, static_cast<int>(next3(i))};
      t = here.neighbour[forward ? next3(i) : previous3(i)];
    } while (t >= 0 && t != first);
    if (t == first) break;
  }
  return {-1, -1};
}

std::vector<std::pair<std::int32_t, std::int32_t>> Triangulation::edgesAcross(std::int32_t a,
                                                                              std::int32_t b) const {
  // The triangle at a whose far edge the way to b crosses.
  std::int32_t t = triangleOf_[static_cast<std::size_t>(a)];
  std::size_t i = cornerIndex(tri(t), a);
  for (const std::int32_t first = t;;) {
    const Triangle& here = tri(t);
    i = cornerIndex(here, a);
    if (side(at(a), at(here.corner[next3(i)]), at(b)) > 0 &&
        side(at(a), at(here.corner[previous3(i)]), at(b)) < 0)
      break;
    t = here.neighbour[next3(i)];
    if (t < 0 || t == first) return {};
  }
  std::vector<std::pair<std::int32_t, std::int32_t>> crossed;
  std::int32_t right = tri(t).corner[next3(i)], left = tri(t).corner[previous3(i)];
  for (;;) {
    crossed.emplace_back(right, left);
    const std::int32_t u = tri(t).neighbour[i];
    const std::size_t j = neighbourIndex(tri(u), t);
    const std::int32_t apex = tri(u).corner[j];
    if (apex == b) return crossed;
    t = u;
    if (side(at(a), at(b), at(apex)) > 0) {
      i = cornerIndex(tri(u), left);
      left = apex;
    } else {
      i = cornerIndex(tri(u), right);
      right = apex;
    }
  }
}

void Triangulation::force(std::int32_t a, std::int32_t b) {
  if (findEdge(a, b).first >= 0) return;
  const auto list = edgesAcross(a, b);
  std::deque<std::pair<std::int32_t, std::int32_t>> crossed(list.begin(), list.end());
  while (!crossed.empty()) {
    const auto [u, v] = crossed.front();
    crossed.pop_front();
    const auto [t, edge] = findEdge(u, v);
    const auto i = static_cast<std::size_t>(edge);
    const std::int32_t other = tri(t).neighbour[i];
    const std::int32_t c = tri(t).corner[i];
    const std::int32_t d = tri(other).corner[neighbourIndex(tri(other), t)];
    // Only the diagonal of a strictly convex quadrangle can be turned; others wait for their neighbours.
    if (!crossProperly(at(u), at(v), at(c), at(d))) {
      crossed.emplace_back(u, v);
      continue;
    }
    flip(t, edge);
    if (c != a && c != b && d != a && d != b && crossProperly(at(a), at(b), at(c), at(d)))
      crossed.emplace_back(c, d);
  }
}

} // namespace netmend
