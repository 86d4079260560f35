#include "netmend/jumper/navigation_mesh.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <utility>

#include "exact.h"
#include "noding.h"
#include "triangulation.h"

namespace netmend {
namespace {

/// By how much the winding number rises from the right of u-v to its left; zero where there is no edge.
class EdgeWeights {
public:
  EdgeWeights(const std::vector<WeightedEdge>& edges,
              const std::vector<std::pair<std::int32_t, std::int32_t>>& ends)
      : start_(0) {
    items_.reserve(edges.size());
    for (std::size_t i = 0; i < edges.size(); ++i)
      items_.push_back({ends[i].first, ends[i].second, edges[i].weight});
    std::sort(items_.begin(), items_.end(), before);
    std::int32_t most = -1;
    for (const Item& item : items_)
      most = std::max(most, item.u);
    start_.assign(static_cast<std::size_t>(std::int64_t{most} + 2), 0);
    for (const Item& item : items_)
      ++start_[static_cast<std::size_t>(item.u) + 1];
    for (std::size_t i = 1; i < start_.size(); ++i)
      start_[i] += start_[i - 1];
  }
  [[nodiscard]] int operator()(std::int32_t u, std::int32_t v) const { return find(u, v) - find(v, u); }

private:
  struct Item {
    std::int32_t u, v;
    int weight;
  };
  static bool before(const Item& a, const Item& b) { return a.u != b.u ? a.u < b.u : a.v < b.v; }
  [[nodiscard]] int find(std::int32_t u, std::int32_t v) const {
    if (static_cast<std::size_t>(u) + 1 >= start_.size()) return 0;
    for (std::size_t i = start_[static_cast<std::size_t>(u)]; i < start_[static_cast<std::size_t>(u) + 1];
         ++i)
      if (items_[i].v == v) return items_[i].weight;
    return 0;
  }
  std::vector<Item> items_;
  std::vector<std::size_t> start_;
};

std::vector<int> windings(const Triangulation& triangulation, const EdgeWeights& weights) {
  const auto& triangles = triangulation.triangles();
  constexpr int unseen = INT32_MIN;
  std::vector<int> winding(triangles.size(), unseen);
  // The corners of the box come last; outside of all loops nothing winds.
  const auto corner = static_cast<std::int32_t>(triangulation.points().size()) - 1;
  std::vector<std::int32_t> open;
  for (std::size_t t = 0; t < triangles.size() && open.empty(); ++t)
    if (std::count(triangles[t].corner.begin(), triangles[t].corner.end(), corner) > 0) {
      winding[t] = 0;
      open.push_back(static_cast<std::int32_t>(t));
    }
  while (!open.empty()) {
    const auto t = static_cast<std::size_t>(open.back());
    open.pop_back();
    for (std::size_t i = 0; i < 3; ++i) {
      const std::int32_t u = triangles[t].neighbour[i];
      if (u < 0 || winding[static_cast<std::size_t>(u)] != unseen) continue;
      winding[static_cast<std::size_t>(u)] =
          winding[t] - weights(triangles[t].corner[next3(i)], triangles[t].corner[previous3(i)]);
      open.push_back(u);
    }
  }
  return winding;
}

/// Sum of the free angles around each vertex of a free region, per gapless fan; more than half a turn makes a
/// corner that a taut way can bend at. Rounding only ever adds a corner too many, which costs time, not
/// truth.
std::vector<std::uint8_t> corners(const NavigationMesh& mesh) {
  std::vector<std::uint8_t> result(mesh.vertices.size(), 0);
  const auto free = [&](std::int32_t t) {
    return t >= 0 && mesh.triangles[static_cast<std::size_t>(t)].free;
  };
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    if (!mesh.triangles[t].free) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      // Start at the clockwise end of a fan: nothing free across the edge from this corner to the next.
      if (free(mesh.triangles[t].neighbour[previous3(i)])) continue;
      const std::int32_t vertex = mesh.triangles[t].corner[i];
      const Point v = mesh.vertices[static_cast<std::size_t>(vertex)];
      double angle = 0;
      for (auto here = static_cast<std::int32_t>(t); free(here);) {
        const MeshTriangle& triangle = mesh.triangles[static_cast<std::size_t>(here)];
        const std::size_t k = triangle.corner[0] == vertex ? 0 : triangle.corner[1] == vertex ? 1 : 2;
        const Point a = mesh.vertices[static_cast<std::size_t>(triangle.corner[next3(k)])];
        const Point b = mesh.vertices[static_cast<std::size_t>(triangle.corner[previous3(k)])];
        angle += std::atan2(static_cast<double>(cross(v, a, b)), static_cast<double>(dot(v, a, b)));
        here = triangle.neighbour[next3(k)];
      }
      if (angle > std::numbers::pi - 1e-9) result[static_cast<std::size_t>(vertex)] = 1;
    }
  }
  return result;
}

/// Numbers the regions of free triangles that hang together; -1 where blocked.
std::vector<std::int32_t> regions(const NavigationMesh& mesh) {
  std::vector<std::int32_t> region(mesh.triangles.size(), -1);
  std::int32_t count = 0;
  std::vector<std::size_t> open;
  for (std::size_t first = 0; first < region.size(); ++first) {
    if (!mesh.triangles[first].free || region[first] >= 0) continue;
    region[first] = count;
    open.push_back(first);
    while (!open.empty()) {
      const std::size_t t = open.back();
      open.pop_back();
      for (const std::int32_t u : mesh.triangles[t].neighbour) {
        if (u < 0 || !mesh.triangles[static_cast<std::size_t>(u)].free) continue;
        if (std::exchange(region[static_cast<std::size_t>(u)], count) < 0)
          open.push_back(static_cast<std::size_t>(u));
      }
    }
    ++count;
  }
  return region;
}

bool holds(const NavigationMesh& mesh, std::int32_t t, Point p) {
  const MeshTriangle& triangle = mesh.triangles[static_cast<std::size_t>(t)];
  for (std::size_t i = 0; i < 3; ++i)
    if (side(mesh.vertices[static_cast<std::size_t>(triangle.corner[i])],
             mesh.vertices[static_cast<std::size_t>(triangle.corner[next3(i)])], p) < 0)
      return false;
  return true;
}

/// Some triangle that holds the point; it must lie in the mesh.
std::int32_t walk(const NavigationMesh& mesh, Point p, std::int32_t from) {
  std::uint32_t random = 88172645u;
  for (std::int32_t t = from;;) {
    random ^= random << 13;
    random ^= random >> 17;
    random ^= random << 5;
    const MeshTriangle& here = mesh.triangles[static_cast<std::size_t>(t)];
    std::int32_t next = -1;
    std::size_t i = random % 3;
    for (int k = 0; k < 3 && next < 0; ++k, i = next3(i))
      if (side(mesh.vertices[static_cast<std::size_t>(here.corner[next3(i)])],
               mesh.vertices[static_cast<std::size_t>(here.corner[previous3(i)])], p) < 0)
        next = here.neighbour[i];
    if (next < 0) return t;
    t = next;
  }
}

void buildGrid(NavigationMesh& mesh, const Box& box) {
  const auto cells = std::max<double>(1.0, static_cast<double>(mesh.triangles.size()) / 4.0);
  const double area = static_cast<double>(box.size().width.nm) * static_cast<double>(box.size().height.nm);
  mesh.gridOrigin = box.min;
  const double longest = static_cast<double>(std::max(box.size().width, box.size().height).nm);
  mesh.gridPitch =
      Length(std::max<std::int64_t>(1, std::llround(std::max(std::sqrt(area / cells), longest / 2000.0))));
  mesh.gridColumns = static_cast<std::int32_t>(box.size().width.nm / mesh.gridPitch.nm) + 1;
  const auto rows = static_cast<std::int32_t>(box.size().height.nm / mesh.gridPitch.nm) + 1;
  mesh.gridTriangle.resize(static_cast<std::size_t>(mesh.gridColumns) * static_cast<std::size_t>(rows));
  std::int32_t t = 0;
  for (std::int32_t r = 0; r < rows; ++r)
    for (std::int32_t k = 0; k < mesh.gridColumns; ++k) {
      const std::int32_t c =
          r % 2 == 0 ? k : mesh.gridColumns - 1 - k; // to and fro, so that steps stay short
      const Point middle{std::min(box.min.x + mesh.gridPitch * c + mesh.gridPitch / 2, box.max.x),
                         std::min(box.min.y + mesh.gridPitch * r + mesh.gridPitch / 2, box.max.y)};
      t = walk(mesh, middle, t);
      mesh.gridTriangle[static_cast<std::size_t>(r) * static_cast<std::size_t>(mesh.gridColumns) +
                        static_cast<std::size_t>(c)] = t;
    }
}

} // namespace

std::vector<std::int32_t> NavigationMesh::locate(Point p) const {
  if (gridTriangle.empty() || p.x < gridOrigin.x || p.y < gridOrigin.y) return {};
  const std::int64_t column = (p.x - gridOrigin.x).nm / gridPitch.nm,
                     row = (p.y - gridOrigin.y).nm / gridPitch.nm;
  const auto cell = static_cast<std::size_t>(row * gridColumns + column);
  if (column >= gridColumns || cell >= gridTriangle.size()) return {};
  const std::int32_t first = walk(*this, p, gridTriangle[cell]);
  if (!holds(*this, first, p)) return {};
  std::vector<std::int32_t> found{first};
  for (std::size_t k = 0; k < found.size(); ++k)
    for (const std::int32_t u : triangles[static_cast<std::size_t>(found[k])].neighbour)
      if (u >= 0 && std::find(found.begin(), found.end(), u) == found.end() && holds(*this, u, p))
        found.push_back(u);
  return found;
}

bool NavigationMesh::freeAt(Point p) const {
  const auto found = locate(p);
  return std::any_of(found.begin(), found.end(),
                     [&](std::int32_t t) { return triangles[static_cast<std::size_t>(t)].free; });
}

Result<NavigationMesh> buildMesh(const Box& box, const std::vector<Ring>& loops) {
  if (box.empty()) return failure({pattern("core", "there is no area to search ways in")});
  Box wide = box;
  for (const Ring& loop : loops)
    for (const Point p : loop) {
      if (std::max(std::abs(p.x.nm), std::abs(p.y.nm)) > (INT64_C(1) << 31))
        return failure({.message = pattern("core", "a place more than 2 m from the board's origin"),
                        .found = fmt::format("({:.3f}, {:.3f}) mm", p.x.mm(), p.y.mm())});
      wide.include(p);
    }
  const Length rim(1000);
  wide = {{wide.min.x - rim, wide.min.y - rim}, {wide.max.x + rim, wide.max.y + rim}};
  if (std::max(wide.size().width, wide.size().height).nm >= (INT64_C(1) << 30))
    return failure(
        {.message = pattern("core", "the board is too wide to route on"),
         .found = said(pattern("core", "{} mm by {} mm"), fmt::format("{:.1f}", wide.size().width.mm()),
                       fmt::format("{:.1f}", wide.size().height.mm())),
         .expected = pattern("core", "less than 1070 mm")});

  const auto noded = nodedEdges(loops);
  if (!noded)
    return failure({pattern(
        "core",
        "keep-outs lie all but on each other, so that the free board cannot be cut out between them")});
  const std::vector<WeightedEdge>& edges = *noded;
  std::vector<Point> points;
  points.reserve(2 * edges.size());
  for (const WeightedEdge& e : edges) {
    points.push_back(e.a);
    points.push_back(e.b);
  }
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());
  const auto indexOf = [&](Point p) {
    return static_cast<std::int32_t>(std::lower_bound(points.begin(), points.end(), p) - points.begin());
  };
  std::vector<std::pair<std::int32_t, std::int32_t>> ends;
  ends.reserve(edges.size());
  for (const WeightedEdge& e : edges)
    ends.emplace_back(indexOf(e.a), indexOf(e.b));

  const Triangulation triangulation(wide, points, ends);
  const std::vector<int> winding = windings(triangulation, EdgeWeights(edges, ends));
  NavigationMesh mesh;
  mesh.vertices = triangulation.points();
  mesh.triangles.reserve(triangulation.triangles().size());
  for (std::size_t t = 0; t < winding.size(); ++t)
    mesh.triangles.push_back(
        {triangulation.triangles()[t].corner, triangulation.triangles()[t].neighbour, winding[t] <= 0});
  mesh.isCorner = corners(mesh);
  mesh.region = regions(mesh);
  buildGrid(mesh, wide);
  return mesh;
}

} // namespace netmend
