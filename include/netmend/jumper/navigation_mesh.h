#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/geometry.h"

/// A plane cut into triangles, some of which are free to walk on: the data that ways are searched on.
namespace netmend {

struct MeshTriangle {
  std::array<std::int32_t, 3> corner{};              ///< indices of vertices, counter-clockwise
  std::array<std::int32_t, 3> neighbour{-1, -1, -1}; ///< across the edge opposite corner i; -1: none
  bool free = false;
};

struct NavigationMesh {
  std::vector<Point> vertices;
  std::vector<MeshTriangle> triangles;
  std::vector<std::int32_t> region; ///< by triangle: free ones that hang together share a number; -1: blocked
  std::vector<std::uint8_t> isCorner; ///< by vertex: free space turns round it by more than half a turn

  /// All triangles that hold the point, edges included; empty when it lies outside the mesh.
  [[nodiscard]] std::vector<std::int32_t> locate(Point p) const;
  [[nodiscard]] bool freeAt(Point p) const; ///< inside or on the edge of a free triangle

  Point gridOrigin;
  Length gridPitch{1};
  std::int32_t gridColumns = 0;
  std::vector<std::int32_t> gridTriangle; ///< for each cell a triangle near it, where a search starts
};

/// Cuts `box` into triangles along the given closed loops. Free is where the loops' summed winding number is
/// zero or less: counter-clockwise loops block, clockwise ones take that back. Loops may cross, touch and
/// overlap; where they cross, the crossing is rounded to the nanometre grid, which moves an edge by less than
/// 2 nm. Fails for a box wider than 1 m (the predicates are exact in 128 bits up to there).
[[nodiscard]] Result<NavigationMesh> buildMesh(const Box& box, const std::vector<Ring>& loops);

} // namespace netmend
