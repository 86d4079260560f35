#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "netmend/base/plane.h"

/// Plane geometry of copper: distances between swept discs, filled polygons and large areas. Coordinates
/// are nanometres in double, which holds them exactly up to 9 m.
namespace netmend::copper {

struct Bounds {
  Vec min{1e300, 1e300};
  Vec max{-1e300, -1e300};

  void include(Vec p);
  void include(const Bounds& other);
  [[nodiscard]] Bounds grownBy(double margin) const;
};
/// Zero when they overlap.
[[nodiscard]] double squaredDistance(const Bounds& a, const Bounds& b);

/// Two points and how far they are from each other.
struct Closest {
  double distance = 1e300;
  Vec onFirst;
  Vec onSecond;
};

/// The rings of an area as one closed chain of edges, with a tree of boxes over runs of consecutive edges.
/// A run that lies right of a point crosses the ray from it to the right an odd number of times exactly if
/// its ends lie on different sides of the ray: that makes the point-in-polygon test logarithmic. Rings are
/// linked by edges that are run both ways and hence cancel out; they are no border of the copper.
class AreaChain {
public:
  explicit AreaChain(const std::vector<std::vector<Vec>>& rings);

  /// Even-odd rule, so that winding does not matter and keyhole seams cancel out.
  [[nodiscard]] bool contains(Vec p) const;
  /// Closest approach of the border to the edge a-b, if nearer than `best` (which it then replaces).
  void approach(Vec a, Vec b, Closest& best) const;
  /// The same between two borders; `best.onFirst` is on this one.
  void approach(const AreaChain& other, Closest& best) const;
  [[nodiscard]] const Bounds& bounds() const { return levels_.back().front(); }
  [[nodiscard]] Vec anyCorner() const { return points_.front(); }

private:
  static constexpr std::size_t leafSize = 8;
  static constexpr std::size_t fanOut = 4;

  struct Run {
    std::size_t level; ///< 0: a leaf
    std::size_t index;
  };
  [[nodiscard]] const Bounds& boundsOf(Run run) const { return levels_[run.level][run.index]; }
  [[nodiscard]] Run top() const { return {levels_.size() - 1, 0}; }
  [[nodiscard]] std::size_t edgeCount() const { return points_.size() - 1; }
  [[nodiscard]] std::size_t firstEdge(Run run) const;
  [[nodiscard]] std::size_t lastEdge(Run run) const; ///< one past it
  template <class Visit> void forChildren(Run run, Visit visit) const;
  [[nodiscard]] bool oddCrossings(Run run, Vec p) const;
  void approachEdge(Run run, Vec a, Vec b, const Bounds& box, Closest& best) const;
  void approachRun(Run run, const AreaChain& other, Run otherRun, Closest& best) const;
  void buildTree();

  std::vector<Vec> points_;
  std::vector<bool> link_; ///< edge i (from point i to i + 1) joins two rings
  std::vector<std::vector<Bounds>> levels_;
};

/// One piece of copper: a disc of `radius` swept over a point, a chain, or (filled) a closed polygon;
/// or over the border and inside of `area`, if there is one (then `core` does not count).
struct AreaOutline {
  std::span<const Vec> core;
  double radius = 0.0;
  bool filled = false;
  const AreaChain* area = nullptr;
};

[[nodiscard]] Closest closestOnSegments(Vec a, Vec b, Vec c, Vec d);

/// Distance between the cores (zero when they overlap) and where it is taken; gives up beyond `limit`, and
/// then `distance` is larger than it.
[[nodiscard]] Closest closestBetween(const AreaOutline& a, const AreaOutline& b, double limit = 1e300);

/// Whether the point is on the copper, give or take `slack`.
[[nodiscard]] bool covers(const AreaOutline& outline, Vec p, double slack);

} // namespace netmend::copper
