#include "netmend/jumper/shortest_way.h"

#include <algorithm>
#include <cmath>
#include <queue>

#include "exact.h"
#include "funnel.h"
#include "interval_search.h"
#include "triangulation.h"

namespace netmend {
namespace {

std::vector<std::int32_t> freeOnes(const NavigationMesh& mesh, std::vector<std::int32_t> triangles) {
  std::erase_if(triangles, [&](std::int32_t t) { return !mesh.triangles[static_cast<std::size_t>(t)].free; });
  std::sort(triangles.begin(), triangles.end());
  return triangles;
}

bool connected(const NavigationMesh& mesh, const std::vector<std::int32_t>& starts,
               const std::vector<std::int32_t>& ends) {
  const auto regionOf = [&](std::int32_t t) { return mesh.region[static_cast<std::size_t>(t)]; };
  return std::any_of(starts.begin(), starts.end(), [&](std::int32_t s) {
    return std::any_of(ends.begin(), ends.end(), [&](std::int32_t e) { return regionOf(s) == regionOf(e); });
  });
}

struct Middle {
  double x, y;
};

Middle middleOf(const NavigationMesh& mesh, std::size_t t) {
  Middle m{0, 0};
  for (const std::int32_t v : mesh.triangles[t].corner) {
    m.x += static_cast<double>(mesh.vertices[static_cast<std::size_t>(v)].x.nm) / 3.0;
    m.y += static_cast<double>(mesh.vertices[static_cast<std::size_t>(v)].y.nm) / 3.0;
  }
  return m;
}

/// A row of triangles from start to end with as little blocked ground as can be (by the middles of
/// triangles): what would have to give way.
std::vector<std::int32_t> leastBlockedRow(const NavigationMesh& mesh, const std::vector<std::int32_t>& starts,
                                          const std::vector<std::int32_t>& ends) {
  using Entry = std::pair<double, std::int32_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> heap;
  std::vector<double> cost(mesh.triangles.size(), HUGE_VAL);
  std::vector<std::int32_t> parent(mesh.triangles.size(), -1);
  for (const std::int32_t t : starts) {
    cost[static_cast<std::size_t>(t)] = 0;
    heap.emplace(0.0, t);
  }
  while (!heap.empty()) {
    const auto [c, t] = heap.top();
    heap.pop();
    const auto here = static_cast<std::size_t>(t);
    if (c > cost[here]) continue;
    if (std::binary_search(ends.begin(), ends.end(), t)) {
      std::vector<std::int32_t> row;
      for (std::int32_t k = t; k >= 0; k = parent[static_cast<std::size_t>(k)])
        row.push_back(k);
      std::reverse(row.begin(), row.end());
      return row;
    }
    const Middle m = middleOf(mesh, here);
    for (const std::int32_t u : mesh.triangles[here].neighbour) {
      if (u < 0) continue;
      const auto there = static_cast<std::size_t>(u);
      const Middle n = middleOf(mesh, there);
      // Free ground is not quite for nothing, so that the row does not wander.
      const double weight = mesh.triangles[there].free && mesh.triangles[here].free ? 1e-6 : 1.0;
      const double next = c + weight * std::hypot(n.x - m.x, n.y - m.y);
      if (next < cost[there]) {
        cost[there] = next;
        parent[there] = t;
        heap.emplace(next, u);
      }
    }
  }
  return {};
}

} // namespace

Length lengthOf(const std::vector<Point>& way) {
  long double sum = 0;
  for (std::size_t i = 1; i < way.size(); ++i)
    sum += std::hypot(static_cast<long double>(way[i].x.nm - way[i - 1].x.nm),
                      static_cast<long double>(way[i].y.nm - way[i - 1].y.nm));
  return Length(std::llround(sum));
}

tl::expected<Way, NoWay> shortestWay(const NavigationMesh& mesh, Point from, Point to,
                                     const WayOptions& options) {
  auto starts = mesh.locate(from);
  auto ends = mesh.locate(to);
  const auto freeStarts = freeOnes(mesh, starts), freeEnds = freeOnes(mesh, ends);
  if (freeStarts.empty()) return tl::unexpected(NoWay{NoWay::Reason::startBlocked, {}});
  if (freeEnds.empty()) return tl::unexpected(NoWay{NoWay::Reason::endBlocked, {}});

  std::vector<std::int32_t> both;
  std::set_intersection(freeStarts.begin(), freeStarts.end(), freeEnds.begin(), freeEnds.end(),
                        std::back_inserter(both));
  Way way;
  if (!both.empty()) {
    way.points = pulledTight(from, {}, to);
  } else {
    const auto doors = connected(mesh, freeStarts, freeEnds)
                           ? doorsOfShortestWay(mesh, from, to, freeStarts, freeEnds, options.closedEdges)
                           : std::nullopt;
    if (!doors) {
      NoWay none;
      if (options.explain) none.through = leastBlockedRow(mesh, freeStarts, freeEnds);
      return tl::unexpected(std::move(none));
    }
    std::vector<std::pair<Point, Point>> posts;
    posts.reserve(doors->size());
    for (const auto& [l, r] : *doors) {
      posts.emplace_back(mesh.vertices[static_cast<std::size_t>(l)],
                         mesh.vertices[static_cast<std::size_t>(r)]);
      way.crossed.push_back(std::minmax(l, r));
    }
    way.points = pulledTight(from, posts, to);
  }
  way.length = lengthOf(way.points);
  return way;
}

} // namespace netmend
