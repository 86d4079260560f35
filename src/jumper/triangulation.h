#pragma once

#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "netmend/base/geometry.h"

namespace netmend {

/// A triangulation of a box that holds given points and edges (incremental Delaunay after Lawson, edges
/// forced in by flips after Sloan). All predicates exact.
class Triangulation {
public:
  struct Triangle {
    std::array<std::int32_t, 3> corner{};
    std::array<std::int32_t, 3> neighbour{-1, -1, -1}; ///< opposite corner i
  };

  /// The points must be distinct and strictly inside the box; edges are pairs of indices into `points`, and
  /// have at most ends in common with each other and with the points. The box's corners come after the
  /// points.
  Triangulation(const Box& box, const std::vector<Point>& points,
                const std::vector<std::pair<std::int32_t, std::int32_t>>& edges);

  [[nodiscard]] const std::vector<Point>& points() const { return points_; }
  [[nodiscard]] const std::vector<Triangle>& triangles() const { return triangles_; }

private:
  [[nodiscard]] std::int32_t walkTo(Point p, std::int32_t from);
  void insert(std::int32_t vertex, std::int32_t& hint);
  void splitTriangle(std::int32_t t, std::int32_t vertex);
  void splitEdge(std::int32_t t, int edge, std::int32_t vertex);
  void legalise();
  void force(std::int32_t a, std::int32_t b);
  [[nodiscard]] std::vector<std::pair<std::int32_t, std::int32_t>> edgesAcross(std::int32_t a,
                                                                               std::int32_t b) const;
  /// Triangle and corner opposite the edge u-v; -1 if the edge does not exist.
  [[nodiscard]] std::pair<std::int32_t, int> findEdge(std::int32_t u, std::int32_t v) const;
  void flip(std::int32_t t, int edge);
  void set(std::int32_t t, std::array<std::int32_t, 3> corner, std::array<std::int32_t, 3> neighbour);
  void relink(std::int32_t t, std::int32_t was, std::int32_t now);
  [[nodiscard]] Point at(std::int32_t vertex) const { return points_[static_cast<std::size_t>(vertex)]; }
  [[nodiscard]] Triangle& tri(std::int32_t t) { return triangles_[static_cast<std::size_t>(t)]; }
  [[nodiscard]] const Triangle& tri(std::int32_t t) const { return triangles_[static_cast<std::size_t>(t)]; }

  std::vector<Point> points_;
  std::vector<Triangle> triangles_;
  std::vector<std::int32_t> triangleOf_;               ///< by vertex: one of its triangles
  std::vector<std::pair<std::int32_t, int>> doubtful_; ///< triangle, corner opposite the edge to look at
  std::uint32_t random_ = 2463534242u;
};

[[nodiscard]] inline std::size_t next3(std::size_t i) {
  return i == 2 ? 0 : i + 1;
}
[[nodiscard]] inline std::size_t previous3(std::size_t i) {
  return i == 0 ? 2 : i - 1;
}

} // namespace netmend
