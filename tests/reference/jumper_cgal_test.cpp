// Ways against CGAL's exact geodesics (Surface_mesh_shortest_path) on a free area that CGAL cuts into
// triangles itself, from the same blocks.
#include <catch2/catch.hpp>

#include <CGAL/Constrained_Delaunay_triangulation_2.h>
#include <CGAL/Constrained_triangulation_plus_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Surface_mesh_shortest_path.h>

#include <map>

#include "jumper/shapes.h"
#include "netmend/jumper/shortest_way.h"
#include "support/effort.h"

using namespace netmend;
using namespace netmend::test;

namespace {

using Exact = CGAL::Exact_predicates_exact_constructions_kernel;
using Plane = CGAL::Constrained_Delaunay_triangulation_2<Exact, CGAL::Default, CGAL::Exact_intersections_tag>;
using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;
using ShortestPath = CGAL::Surface_mesh_shortest_path<CGAL::Surface_mesh_shortest_path_traits<Kernel, Mesh>>;

Mesh freeMesh(const Scene& scene) {
  Plane plane;
  const auto at = [](Point p) {
    return Exact::Point_2(static_cast<double>(p.x.nm), static_cast<double>(p.y.nm));
  };
  std::vector<Ring> rings = scene.blocks;
  rings.push_back(box(0, 0, scene.width, scene.height));
  for (const Ring& ring : rings)
    for (std::size_t i = 0; i < ring.size(); ++i)
      plane.insert_constraint(at(ring[i]), at(ring[(i + 1) % ring.size()]));
  const auto inside = [&](const Ring& ring, const Exact::Point_2& p) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      if (CGAL::orientation(at(ring[i]), at(ring[(i + 1) % ring.size()]), p) != CGAL::LEFT_TURN) return false;
    return true;
  };
  Mesh mesh;
  std::map<Plane::Vertex_handle, Mesh::Vertex_index> index;
  for (auto face = plane.finite_faces_begin(); face != plane.finite_faces_end(); ++face) {
    const auto middle = CGAL::centroid(plane.triangle(face));
    const bool blocked =
        !inside(rings.back(), middle) || std::any_of(scene.blocks.begin(), scene.blocks.end(),
                                                     [&](const Ring& r) { return inside(r, middle); });
    if (blocked) continue;
    std::array<Mesh::Vertex_index, 3> corner;
    for (int i = 0; i < 3; ++i) {
      const auto v = face->vertex(i);
      auto known = index.find(v);
      if (known == index.end())
        known = index
                    .emplace(v, mesh.add_vertex(
                                    {CGAL::to_double(v->point().x()), CGAL::to_double(v->point().y()), 0}))
                    .first;
      corner[static_cast<std::size_t>(i)] = known->second;
    }
    mesh.add_face(corner[0], corner[1], corner[2]);
  }
  return mesh;
}

/// Face and barycentric coordinates of a point. Their order is that of the face's own halfedge, which need
/// not be that of insertion.
std::optional<ShortestPath::Face_location> locate(const Mesh& mesh, Point p) {
  const double x = static_cast<double>(p.x.nm), y = static_cast<double>(p.y.nm);
  for (const auto face : mesh.faces()) {
    const auto h = mesh.halfedge(face);
    const Kernel::Point_3 a = mesh.point(mesh.source(h)), b = mesh.point(mesh.target(h)),
                          c = mesh.point(mesh.target(mesh.next(h)));
    const auto area = [](double ax, double ay, double bx, double by, double cx, double cy) {
      return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    };
    const double whole = area(a.x(), a.y(), b.x(), b.y(), c.x(), c.y());
    const double u = area(x, y, b.x(), b.y(), c.x(), c.y()) / whole,
                 v = area(a.x(), a.y(), x, y, c.x(), c.y()) / whole;
    if (u >= 0 && v >= 0 && u + v <= 1) return ShortestPath::Face_location{face, {u, v, 1 - u - v}};
  }
  return std::nullopt;
}

} // namespace

TEST_CASE("ways equal CGAL's exact geodesics on the same free area") {
  int compared = 0;
  double worst = 0;
  for (unsigned i = 0; i < static_cast<unsigned>(netmend::rounds(14, 2)); ++i) {
    const unsigned seed = 101 + i;
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const Scene scene = randomScene(random, 60, 70, 50, 8);
    const auto mesh = buildMesh(scene.bounds(), scene.loops());
    REQUIRE(mesh);
    const Mesh theirs = freeMesh(scene);
    std::uniform_real_distribution<double> x(0, 70), y(0, 50);
    for (int source = 0; source < 4; ++source) {
      const Point from = mm(x(random), y(random));
      const auto start = locate(theirs, from);
      if (!start) continue;
      ShortestPath paths(theirs);
      paths.add_source_point(*start);
      for (int query = 0; query < 40; ++query) {
        const Point to = mm(x(random), y(random));
        const auto end = locate(theirs, to);
        if (!end) continue;
        std::vector<Kernel::Point_3> path;
        const auto [length, reached] =
            paths.shortest_path_points_to_source_points(end->first, end->second, std::back_inserter(path));
        const auto way = shortestWay(*mesh, from, to);
        CHECK(way.has_value() == !path.empty());
        if (!way || path.empty()) continue;
        // Does their path end where it was asked to?
        REQUIRE(std::hypot(path.front().x() - static_cast<double>(to.x.nm),
                           path.front().y() - static_cast<double>(to.y.nm)) < 1);
        REQUIRE(std::hypot(path.back().x() - static_cast<double>(from.x.nm),
                           path.back().y() - static_cast<double>(from.y.nm)) < 1);
        const double error = std::abs(lengthMm(way->points) * 1e6 - length) / length;
        worst = std::max(worst, error);
        CHECK(error < 1e-9);
        ++compared;
      }
    }
  }
  WARN("compared " << compared << " ways, worst relative difference " << worst);
  CHECK(compared > netmend::rounds(500, 70));
}
