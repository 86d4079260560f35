#include "outline.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace netmend::copper {

namespace {

void keepNearer(Closest& best, Vec onFirst, Vec onSecond) {
  const double distance = length(onFirst - onSecond);
  if (distance < best.distance) best = {distance, onFirst, onSecond};
}

std::size_t edgesOf(const AreaOutline& outline) {
  const std::size_t n = outline.core.size();
  if (outline.filled) return n;
  return n > 1 ? n - 1 : n;
}

std::pair<Vec, Vec> edgeOf(const AreaOutline& outline, std::size_t i) {
  const std::size_t n = outline.core.size();
  return {outline.core[i], outline.core[(i + 1) % n]};
}

bool coreContains(const AreaOutline& outline, Vec p) {
  return outline.area ? outline.area->contains(p) : outline.filled && insideRing(outline.core, p);
}

Vec anyPoint(const AreaOutline& outline) {
  return outline.area ? outline.area->anyCorner() : outline.core.front();
}

Bounds boundsOfEdge(Vec a, Vec b) {
  Bounds out;
  out.include(a);
  out.include(b);
  return out;
}

/// Every edge of one against every edge of the other, less those that the other's box tells to be too far.
void approachEdges(const AreaOutline& a, const AreaOutline& b, Closest& best) {
  Bounds box;
  for (const Vec p : b.core)
    box.include(p);
  for (std::size_t i = 0; i < edgesOf(a); ++i) {
    const auto [p, q] = edgeOf(a, i);
    const Bounds edge = boundsOfEdge(p, q);
    if (squaredDistance(edge, box) >= best.distance * best.distance) continue;
    for (std::size_t j = 0; j < edgesOf(b); ++j) {
      const auto [r, s] = edgeOf(b, j);
      if (edgesOf(b) > 1 && squaredDistance(edge, boundsOfEdge(r, s)) >= best.distance * best.distance)
        continue;
      const Closest c = closestOnSegments(p, q, r, s);
      if (c.distance < best.distance) best = c;
    }
  }
}

Closest swapped(Closest c) {
  std::swap(c.onFirst, c.onSecond);
  return c;
}

} // namespace

void Bounds::include(Vec p) {
  min = {std::min(min.x, p.x), std::min(min.y, p.y)};
  max = {std::max(max.x, p.x), std::max(max.y, p.y)};
}

void Bounds::include(const Bounds& other) {
  include(other.min);
  include(other.max);
}

Bounds Bounds::grownBy(double margin) const {
  return {{min.x - margin, min.y - margin}, {max.x + margin, max.y + margin}};
}

double squaredDistance(const Bounds& a, const Bounds& b) {
  const double x = std::max({0.0, a.min.x - b.max.x, b.min.x - a.max.x});
  const double y = std::max({0.0, a.min.y - b.max.y, b.min.y - a.max.y});
  return x * x + y * y;
}

AreaChain::AreaChain(const std::vector<std::vector<Vec>>& rings) {
  std::vector<Vec> starts;
  const auto add = [&](Vec p, bool byLink) {
    if (!points_.empty()) link_.push_back(byLink);
    points_.push_back(p);
  };
  for (const auto& ring : rings) {
    if (ring.empty()) continue;
    for (std::size_t i = 0; i < ring.size(); ++i)
      add(ring[i], i == 0);
    add(ring.front(), false);
    starts.push_back(ring.front());
  }
  for (std::size_t i = starts.size(); i-- > 1;)
    add(starts[i - 1], true);
  if (points_.empty()) add({}, false);
  if (points_.size() == 1) add(points_.front(), false);
  buildTree();
}

void AreaChain::buildTree() {
  std::vector<Bounds> leaves((edgeCount() + leafSize - 1) / leafSize);
  for (std::size_t i = 0; i < edgeCount(); ++i) {
    leaves[i / leafSize].include(points_[i]);
    leaves[i / leafSize].include(points_[i + 1]);
  }
  levels_.push_back(std::move(leaves));
  while (levels_.back().size() > 1) {
    std::vector<Bounds> above((levels_.back().size() + fanOut - 1) / fanOut);
    for (std::size_t i = 0; i < levels_.back().size(); ++i)
      above[i / fanOut].include(levels_.back()[i]);
    levels_.push_back(std::move(above));
  }
}

std::size_t AreaChain::firstEdge(Run run) const {
  std::size_t first = run.index * leafSize;
  for (std::size_t i = 0; i < run.level; ++i)
    first *= fanOut;
  return first;
}

std::size_t AreaChain::lastEdge(Run run) const {
  return std::min(firstEdge({run.level, run.index + 1}), edgeCount());
}

template <class Visit> void AreaChain::forChildren(Run run, Visit visit) const {
  const std::size_t first = run.index * fanOut;
  const std::size_t last = std::min(first + fanOut, levels_[run.level - 1].size());
  for (std::size_t i = first; i < last; ++i)
    visit(Run{run.level - 1, i});
}

bool AreaChain::oddCrossings(Run run, Vec p) const {
  const Bounds& box = boundsOf(run);
  if (p.y < box.min.y || p.y >= box.max.y || p.x > box.max.x) return false;
  if (p.x < box.min.x) return (points_[firstEdge(run)].y > p.y) != (points_[lastEdge(run)].y > p.y);
  bool odd = false;
  if (run.level == 0) {
    for (std::size_t i = firstEdge(run); i < lastEdge(run); ++i)
      odd ^= crossesRay(points_[i], points_[i + 1], p);
  } else {
    forChildren(run, [&](Run child) { odd ^= oddCrossings(child, p); });
  }
  return odd;
}

bool AreaChain::contains(Vec p) const {
  return oddCrossings(top(), p);
}

void AreaChain::approachEdge(Run run, Vec a, Vec b, const Bounds& box, Closest& best) const {
  if (squaredDistance(boundsOf(run), box) >= best.distance * best.distance) return;
  if (run.level > 0) {
    forChildren(run, [&](Run child) { approachEdge(child, a, b, box, best); });
    return;
  }
  for (std::size_t i = firstEdge(run); i < lastEdge(run); ++i) {
    if (link_[i]) continue;
    if (squaredDistance(boundsOfEdge(points_[i], points_[i + 1]), box) >= best.distance * best.distance)
      continue;
    const Closest c = closestOnSegments(points_[i], points_[i + 1], a, b);
    if (c.distance < best.distance) best = c;
  }
}

void AreaChain::approach(Vec a, Vec b, Closest& best) const {
  approachEdge(top(), a, b, boundsOfEdge(a, b), best);
}

void AreaChain::approachRun(Run run, const AreaChain& other, Run otherRun, Closest& best) const {
  if (squaredDistance(boundsOf(run), other.boundsOf(otherRun)) >= best.distance * best.distance) return;
  if (run.level == 0 && otherRun.level == 0) {
    for (std::size_t i = other.firstEdge(otherRun); i < other.lastEdge(otherRun); ++i) {
      if (other.link_[i]) continue;
      const Vec a = other.points_[i];
      const Vec b = other.points_[i + 1];
      approachEdge(run, a, b, boundsOfEdge(a, b), best);
    }
    return;
  }
  std::array<std::pair<double, std::pair<Run, Run>>, fanOut> pairs;
  std::size_t count = 0;
  const auto add = [&](Run mine, Run theirs) {
    pairs[count++] = {squaredDistance(boundsOf(mine), other.boundsOf(theirs)), {mine, theirs}};
  };
  if (run.level >= otherRun.level)
    forChildren(run, [&](Run child) { add(child, otherRun); });
  else
    other.forChildren(otherRun, [&](Run child) { add(run, child); });
  // Nearest first. Four at most: a plain insertion.
  for (std::size_t i = 1; i < count; ++i)
    for (std::size_t j = i; j > 0 && pairs[j].first < pairs[j - 1].first; --j)
      std::swap(pairs[j], pairs[j - 1]);
  for (std::size_t i = 0; i < count; ++i)
    approachRun(pairs[i].second.first, other, pairs[i].second.second, best);
}

void AreaChain::approach(const AreaChain& other, Closest& best) const {
  approachRun(top(), other, other.top(), best);
}

Closest closestOnSegments(Vec a, Vec b, Vec c, Vec d) {
  const Vec ab = b - a;
  const Vec cd = d - c;
  const double turn = cross(ab, cd);
  if (turn != 0.0) {
    const double s = cross(c - a, cd) / turn;
    const double t = cross(c - a, ab) / turn;
    if (s >= 0.0 && s <= 1.0 && t >= 0.0 && t <= 1.0) {
      const Vec p = a + ab * s;
      return {0.0, p, p};
    }
  }
  Closest best;
  keepNearer(best, a, footOnSegment(a, c, d));
  keepNearer(best, b, footOnSegment(b, c, d));
  keepNearer(best, footOnSegment(c, a, b), c);
  keepNearer(best, footOnSegment(d, a, b), d);
  return best;
}

Closest closestBetween(const AreaOutline& a, const AreaOutline& b, double limit) {
  if (coreContains(b, anyPoint(a))) return {0.0, anyPoint(a), anyPoint(a)};
  if (coreContains(a, anyPoint(b))) return {0.0, anyPoint(b), anyPoint(b)};
  Closest best;
  best.distance = std::nextafter(limit, 1e308);
  if (a.area && b.area) {
    a.area->approach(*b.area, best);
  } else if (a.area) {
    for (std::size_t i = 0; i < edgesOf(b); ++i) {
      const auto [p, q] = edgeOf(b, i);
      a.area->approach(p, q, best);
    }
  } else if (b.area) {
    return swapped(closestBetween(b, a, limit));
  } else {
    approachEdges(a, b, best);
  }
  return best;
}

bool covers(const AreaOutline& outline, Vec p, double slack) {
  const double reach = outline.radius + slack;
  const AreaOutline point{{&p, 1}, 0.0, false, nullptr};
  return closestBetween(outline, point, reach).distance <= reach;
}

} // namespace netmend::copper
