#include "geodesic_peer.h"

#include <cmath>
#include <stdexcept>

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/orient_polygon_soup.h>
#include <CGAL/Polygon_mesh_processing/polygon_soup_to_polygon_mesh.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Surface_mesh_shortest_path.h>

namespace netmend::benchmarks {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Mesh = CGAL::Surface_mesh<Kernel::Point_3>;
using ShortestPath = CGAL::Surface_mesh_shortest_path<CGAL::Surface_mesh_shortest_path_traits<Kernel, Mesh>>;

Kernel::Point_3 inMm(Point p) {
  return {p.x.mm(), p.y.mm(), 0.0};
}

/// Coordinates of `p` in the order in which the library counts a face's corners: from the source of the
/// face's halfedge on, which need not be the order in which they were inserted.
ShortestPath::Barycentric_coordinates barycentric(const Mesh& mesh, Mesh::Face_index face,
                                                  Kernel::Point_3 p) {
  const auto halfedge = mesh.halfedge(face);
  const auto& a = mesh.point(mesh.source(halfedge));
  const auto& b = mesh.point(mesh.target(halfedge));
  const auto& c = mesh.point(mesh.target(mesh.next(halfedge)));
  const auto twice = [](const auto& u, const auto& v, const auto& w) {
    return (v.x() - u.x()) * (w.y() - u.y()) - (v.y() - u.y()) * (w.x() - u.x());
  };
  const double whole = twice(a, b, c);
  return {twice(p, b, c) / whole, twice(a, p, c) / whole, twice(a, b, p) / whole};
}

bool near(const Kernel::Point_3& a, const Kernel::Point_3& b) {
  return std::hypot(a.x() - b.x(), a.y() - b.y()) < 1e-5;
}

} // namespace

struct GeodesicPeer::Data {
  const NavigationMesh* source;
  Mesh mesh;
  std::vector<Mesh::Face_index> faceOf; ///< by triangle; null where it is not free
};

GeodesicPeer::GeodesicPeer(const NavigationMesh& mesh) : data_(std::make_unique<Data>()) {
  namespace pmp = CGAL::Polygon_mesh_processing;
  data_->source = &mesh;
  std::vector<Kernel::Point_3> points;
  points.reserve(mesh.vertices.size());
  for (const auto vertex : mesh.vertices)
    points.push_back(inMm(vertex));
  std::vector<std::vector<std::size_t>> corners;
  for (const auto& triangle : mesh.triangles)
    if (triangle.free)
      corners.push_back({static_cast<std::size_t>(triangle.corner[0]),
                         static_cast<std::size_t>(triangle.corner[1]),
                         static_cast<std::size_t>(triangle.corner[2])});
  // Parts of free board that meet in a single point are no way for a wire: such points become two.
  pmp::orient_polygon_soup(points, corners);
  pmp::polygon_soup_to_polygon_mesh(points, corners, data_->mesh);
  auto face = data_->mesh.faces().begin();
  for (const auto& triangle : mesh.triangles)
    data_->faceOf.push_back(triangle.free ? *face++ : Mesh::null_face());
}

GeodesicPeer::~GeodesicPeer() = default;

double GeodesicPeer::lengthMm(Point from, Point to) const {
  const auto faceAt = [&](Point p) {
    for (const auto triangle : data_->source->locate(p))
      if (const auto face = data_->faceOf[static_cast<std::size_t>(triangle)]; face != Mesh::null_face())
        return face;
    throw std::logic_error("a place is not on free board");
  };
  const auto start = faceAt(from);
  const auto end = faceAt(to);
  ShortestPath search(data_->mesh);
  search.add_source_point(start, barycentric(data_->mesh, start, inMm(from)));
  std::vector<Kernel::Point_3> path;
  const auto found = search.shortest_path_points_to_source_points(
      end, barycentric(data_->mesh, end, inMm(to)), std::back_inserter(path));
  if (found.second == search.source_points_end() || path.empty()) return -1.0;
  if (!near(path.front(), inMm(to)) || !near(path.back(), inMm(from)))
    throw std::logic_error("the peer's path does not run between the places asked for");
  return found.first;
}

} // namespace netmend::benchmarks
