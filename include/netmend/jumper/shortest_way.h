#pragma once

#include <utility>
#include <vector>

#include <tl/expected.hpp>

#include "netmend/jumper/navigation_mesh.h"

namespace netmend {

/// The edge between two mesh vertices, the smaller index first.
using MeshEdge = std::pair<std::int32_t, std::int32_t>;

struct Way {
  std::vector<Point>
      points; ///< from start to end; inner points are corners of keep-outs, without straight ones
  Length length;
  std::vector<MeshEdge> crossed; ///< mesh edges from start to end: tells one way round something from another
};

/// Why there is no way.
struct NoWay {
  enum class Reason { startBlocked, endBlocked, closed } reason = Reason::closed;
  /// closed, and asked for: triangles of a way through blocked ground with the least length inside it, from
  /// start to end.
  std::vector<std::int32_t> through;
};

struct WayOptions {
  std::vector<MeshEdge> closedEdges{}; ///< that must not be crossed, sorted; for finding other ways
  bool explain = true;                 ///< where there is no way: work out what lies in between
};

/// The shortest way over the mesh's free triangles: exact up to the choice between ways whose lengths differ
/// by less than 1e-12 of their length; bends and crossings are decided in exact arithmetic. A gap of no width
/// is closed. Search: Cui, Harabor, Grastien, "Compromise-free pathfinding on a navigation mesh", IJCAI 2017.
[[nodiscard]] tl::expected<Way, NoWay> shortestWay(const NavigationMesh& mesh, Point from, Point to,
                                                   const WayOptions& options = {});

[[nodiscard]] Length lengthOf(const std::vector<Point>& way);

} // namespace netmend
