#include "interval_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <unordered_map>

#include "exact.h"
#include "triangulation.h"

/// Any-angle search over intervals of mesh edges (Cui, Harabor, Grastien 2017). Floating point decides only
/// between rows of doors; the way through them is pulled tight exactly by the caller.
namespace netmend {
namespace {

struct Spot {
  double x = 0;
  double y = 0;
};

double length(Spot a, Spot b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}
double turn(Spot a, Spot b, Spot c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Nearer than this, in nm, a point counts as on a ray or at a vertex.
constexpr double onRay = 1e-3;

/// An end of an interval; `vertex` is -1 inside an edge.
struct Post {
  Spot at;
  std::int32_t vertex = -1;
};

/// Points of one edge that the root sees (or that are reached by turning at it), about to enter `triangle`.
struct Node {
  Post left;
  Post right;
  Spot root;
  std::int32_t rootVertex = -1; ///< -1: the start
  double g = 0;                 ///< length of the way to the root
  std::int32_t triangle = -1;   ///< -1: the end is reached
  std::size_t entry = 0;        ///< corner of `triangle` opposite the edge
  std::int32_t parent = -1;
};

class Search {
public:
  Search(const NavigationMesh& mesh, Point from, Point to, const std::vector<std::int32_t>& ends,
         const std::vector<MeshEdge>& closed)
      : mesh_(mesh), origin_(mesh.gridOrigin), from_(from), start_(spot(from)), end_(spot(to)), ends_(ends),
        closed_(closed) {}

  std::int32_t run(const std::vector<std::int32_t>& starts) {
    for (const std::int32_t t : starts)
      pushAround(t);
    while (!heap_.empty()) {
      const auto [f, index] = heap_.top();
      heap_.pop();
      const Node node = nodes_[static_cast<std::size_t>(index)];
      if (node.triangle < 0) return index;
      if (node.rootVertex >= 0 && node.g > best_[node.rootVertex] * (1 + 1e-14)) continue;
      if (std::find(ends_.begin(), ends_.end(), node.triangle) != ends_.end()) finish(node, index);
      expand(node, index);
    }
    return -1;
  }

  [[nodiscard]] std::vector<std::pair<std::int32_t, std::int32_t>> doors(std::int32_t last) const {
    std::vector<std::pair<std::int32_t, std::int32_t>> result;
    for (std::int32_t i = last; i >= 0; i = nodes_[static_cast<std::size_t>(i)].parent) {
      const Node& node = nodes_[static_cast<std::size_t>(i)];
      if (node.triangle < 0) continue;
      const auto& corner = triangle(node.triangle).corner;
      result.emplace_back(corner[next3(node.entry)], corner[previous3(node.entry)]);
    }
    std::reverse(result.begin(), result.end());
    return result;
  }

private:
  [[nodiscard]] Spot spot(Point p) const {
    return {static_cast<double>((p.x - origin_.x).nm), static_cast<double>((p.y - origin_.y).nm)};
  }
  [[nodiscard]] const MeshTriangle& triangle(std::int32_t t) const {
    return mesh_.triangles[static_cast<std::size_t>(t)];
  }
  [[nodiscard]] Post post(std::int32_t vertex) const {
    return {spot(mesh_.vertices[static_cast<std::size_t>(vertex)]), vertex};
  }
  [[nodiscard]] bool isCorner(std::int32_t vertex) const {
    return mesh_.isCorner[static_cast<std::size_t>(vertex)] != 0;
  }

  /// Length of the shortest way from the root through the interval to the end, walls aside.
  [[nodiscard]] double ahead(const Node& node) const {
    Spot target = end_;
    const Spot l = node.left.at, r = node.right.at;
    const double behind = turn(l, r, target);
    const double width2 = (r.x - l.x) * (r.x - l.x) + (r.y - l.y) * (r.y - l.y);
    if (behind < 0 && width2 > 0) { // on the root's side of the edge: its mirror image is as far
      const double k = 2 * behind / width2;
      target.x += k * (r.y - l.y);
      target.y -= k * (r.x - l.x);
    }
    if (turn(node.root, l, target) > 0) return length(node.root, l) + length(l, target);
    if (turn(node.root, r, target) < 0) return length(node.root, r) + length(r, target);
    return length(node.root, target);
  }

  void push(Node node) {
    if (node.triangle >= 0 && length(node.left.at, node.right.at) < onRay) return;
    const double f = node.g + ahead(node);
    nodes_.push_back(node);
    heap_.emplace(f, static_cast<std::int32_t>(nodes_.size()) - 1);
  }

  /// Through the edge opposite `corner` of `from`, if there is free board behind it.
  void pushThrough(std::int32_t from, std::size_t corner, Node node) {
    const MeshTriangle& here = triangle(from);
    const std::int32_t next = here.neighbour[corner];
    if (next < 0 || !triangle(next).free) return;
    if (!closed_.empty()) {
      const auto [u, v] = std::minmax(here.corner[next3(corner)], here.corner[previous3(corner)]);
      if (std::binary_search(closed_.begin(), closed_.end(), MeshEdge{u, v})) return;
    }
    node.triangle = next;
    const auto& back = triangle(next).neighbour;
    node.entry = back[0] == from ? 0 : back[1] == from ? 1 : 2;
    push(node);
  }

  void pushAround(std::int32_t t) {
    const MeshTriangle& here = triangle(t);
    for (std::size_t i = 0; i < 3; ++i) {
      // Leaving opposite corner i: its left post is the corner before i.
      const Post left = post(here.corner[previous3(i)]), right = post(here.corner[next3(i)]);
      // A start on that edge also starts in the triangle behind it, unless the edge is closed.
      if (side(mesh_.vertices[static_cast<std::size_t>(left.vertex)],
               mesh_.vertices[static_cast<std::size_t>(right.vertex)], from_) == 0)
        continue;
      pushThrough(t, i, {left, right, start_, -1, 0.0, -1, 0, -1});
    }
  }

  void finish(const Node& node, std::int32_t index) {
    Node last = node;
    last.triangle = -1;
    last.parent = index;
    push(last);
  }

  /// Where the ray from `root` through `via` meets the edge p-q.
  [[nodiscard]] static Post hit(Spot root, Spot via, const Post& p, const Post& q) {
    const double up = turn(root, via, p.at), uq = turn(root, via, q.at);
    if (up == uq) return p;
    const double share = std::clamp(up / (up - uq), 0.0, 1.0);
    const double whole = length(p.at, q.at);
    if (share * whole < onRay) return p;
    if ((1 - share) * whole < onRay) return q;
    return {{p.at.x + share * (q.at.x - p.at.x), p.at.y + share * (q.at.y - p.at.y)}, -1};
  }

  /// The node's way bends at `corner`; false when a shorter way there is known already.
  bool bend(Node& node, const Post& corner) {
    node.g += length(node.root, corner.at);
    const auto [known, isNew] = best_.try_emplace(corner.vertex, node.g);
    if (!isNew && node.g > known->second * (1 + 1e-14)) return false;
    known->second = std::min(known->second, node.g);
    node.root = corner.at;
    node.rootVertex = corner.vertex;
    return true;
  }

  void pushInterval(const Node& node, std::size_t corner, const Post& left, const Post& right) {
    Node next = node;
    next.left = left;
    next.right = right;
    pushThrough(node.triangle, corner, next);
  }

  void expand(const Node& from, std::int32_t index) {
    const MeshTriangle& here = triangle(from.triangle);
    const std::size_t leftExit = previous3(from.entry), rightExit = next3(from.entry);
    const Post a = post(here.corner[next3(from.entry)]), b = post(here.corner[previous3(from.entry)]);
    const Post c = post(here.corner[from.entry]);
    Node node = from;
    node.parent = index;
    const Spot l = from.left.at, r = from.right.at;
    const bool atLeft = from.left.vertex == a.vertex, atRight = from.right.vertex == b.vertex;
    if (turn(from.root, l, c.at) > onRay * length(from.root, l)) { // all that is seen leaves on the right
      const Post seen = hit(from.root, l, c, b);
      pushInterval(node, rightExit, seen, atRight ? b : hit(from.root, r, c, b));
      if (atLeft && isCorner(a.vertex) && bend(node, a)) {
        pushInterval(node, leftExit, a, c);
        pushInterval(node, rightExit, c, seen);
      }
    } else if (turn(from.root, r, c.at) < -onRay * length(from.root, r)) { // … on the left
      const Post seen = hit(from.root, r, a, c);
      pushInterval(node, leftExit, atLeft ? a : hit(from.root, l, a, c), seen);
      if (atRight && isCorner(b.vertex) && bend(node, b)) {
        pushInterval(node, rightExit, c, b);
        pushInterval(node, leftExit, seen, c);
      }
    } else {
      pushInterval(node, leftExit, atLeft ? a : hit(from.root, l, a, c), c);
      pushInterval(node, rightExit, c, atRight ? b : hit(from.root, r, c, b));
    }
  }

  using Entry = std::pair<double, std::int32_t>;

  const NavigationMesh& mesh_;
  Point origin_;
  Point from_;
  Spot start_;
  Spot end_;
  const std::vector<std::int32_t>& ends_;
  const std::vector<MeshEdge>& closed_;
  std::vector<Node> nodes_;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> heap_;
  std::unordered_map<std::int32_t, double> best_;
};

} // namespace

std::optional<std::vector<std::pair<std::int32_t, std::int32_t>>>
doorsOfShortestWay(const NavigationMesh& mesh, Point from, Point to, const std::vector<std::int32_t>& starts,
                   const std::vector<std::int32_t>& ends, const std::vector<MeshEdge>& closed) {
  Search search(mesh, from, to, ends, closed);
  const std::int32_t last = search.run(starts);
  if (last < 0) return std::nullopt;
  return search.doors(last);
}

} // namespace netmend
