#include <algorithm>
#include <cmath>

#include "exact.h"
#include "netmend/base/plane.h"
#include "netmend/jumper/free_area.h"
#include "triangulation.h"

namespace netmend {
namespace {

struct Exit {
  double distance; ///< nm
  Point at;
  friend bool operator<(const Exit& a, const Exit& b) {
    return a.distance != b.distance ? a.distance < b.distance : a.at < b.at;
  }
};

/// A guessed body is only a guess: it opens for the pads of its own part.
bool opensFor(const KeepOut& keepOut, PartId own) {
  return keepOut.guessed && own && keepOut.part == own;
}

Point corner(const NavigationMesh& mesh, const MeshTriangle& triangle, std::size_t i) {
  return mesh.vertices[static_cast<std::size_t>(triangle.corner[i])];
}

bool holds(const NavigationMesh& mesh, const MeshTriangle& triangle, Point p) {
  for (std::size_t i = 0; i < 3; ++i)
    if (side(corner(mesh, triangle, i), corner(mesh, triangle, next3(i)), p) < 0) return false;
  return true;
}

/// The place of the edge a-b nearest to p, moved to a whole nanometre inside the free triangle behind it.
Exit exitAcross(const NavigationMesh& mesh, const MeshTriangle& free, Point a, Point b, Point p) {
  const Vec foot = footOnSegment(vecOf(p), vecOf(a), vecOf(b));
  const Point near{Length(std::llround(foot.x)), Length(std::llround(foot.y))};
  const auto distanceOf = [&](Point q) { return length(vecOf(q - p)); };
  Exit best{std::min(distanceOf(a), distanceOf(b)), distanceOf(a) <= distanceOf(b) ? a : b};
  for (const std::int64_t x : {0, -1, 1})
    for (const std::int64_t y : {0, -1, 1}) {
      const Point q{near.x + Length(x), near.y + Length(y)};
      if (holds(mesh, free, q)) best = std::min(best, Exit{distanceOf(q), q});
    }
  return best;
}

/// Places on the rim of the blocked ground around p, nearest first.
std::vector<Exit> exitsAround(const NavigationMesh& mesh, Point p, double reach) {
  std::vector<std::int32_t> open = mesh.locate(p);
  std::vector<std::int32_t> seen = open;
  std::sort(seen.begin(), seen.end());
  std::vector<Exit> exits;
  while (!open.empty()) {
    const MeshTriangle& here = mesh.triangles[static_cast<std::size_t>(open.back())];
    open.pop_back();
    for (std::size_t i = 0; i < 3; ++i) {
      const std::int32_t next = here.neighbour[i];
      const Point a = corner(mesh, here, next3(i)), b = corner(mesh, here, previous3(i));
      if (next < 0 || distanceToSegment(p, a, b) > reach) continue;
      const MeshTriangle& there = mesh.triangles[static_cast<std::size_t>(next)];
      if (there.free) {
        exits.push_back(exitAcross(mesh, there, a, b, p));
        continue;
      }
      const auto at = std::lower_bound(seen.begin(), seen.end(), next);
      if (at != seen.end() && *at == next) continue;
      seen.insert(at, next);
      open.push_back(next);
    }
  }
  std::sort(exits.begin(), exits.end());
  return exits;
}

bool crossesCore(const KeepOut& keepOut, Point a, Point b) {
  const auto crossesRing = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      if (crossProperly(a, b, ring[i], ring[(i + 1) % ring.size()])) return true;
    return false;
  };
  if (crossesRing(keepOut.core.outer)) return true;
  for (const Ring& hole : keepOut.core.holes)
    if (crossesRing(hole)) return true;
  const Point middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
  return strictlyInside(keepOut, b) || strictlyInside(keepOut, middle);
}

} // namespace

std::optional<Opening> openingAt(const FreeArea& area, Point p, PartId own, Length reach) {
  const auto& keepOuts = area.obstacles.keepOuts;
  const bool onBoard = std::any_of(keepOuts.begin(), keepOuts.end(),
                                   [&](const KeepOut& k) { return k.isBoardEdge() && covers(k.core, p); });
  if (!onBoard) return std::nullopt;
  if (area.mesh.freeAt(p)) return Opening{p, {}};
  for (const std::size_t i : keepOutsAt(area, p))
    if (strictlyInside(keepOuts[i], p) && !opensFor(keepOuts[i], own)) return std::nullopt;
  for (const Exit& exit : exitsAround(area.mesh, p, static_cast<double>(reach.nm))) {
    if (exit.distance > static_cast<double>(reach.nm)) break;
    const auto near = keepOutsNear(area, p, exit.at);
    if (std::any_of(near.begin(), near.end(), [&](std::size_t i) {
          return !opensFor(keepOuts[i], own) && crossesCore(keepOuts[i], p, exit.at);
        }))
      continue;
    Opening opening{exit.at, {}};
    for (const std::size_t i : near)
      opening.keepOuts.push_back(i);
    return opening;
  }
  return std::nullopt;
}

} // namespace netmend
