#include <catch2/catch.hpp>

#include <set>

#include "jumper/funnel.h"
#include "jumper/noding.h"
#include "jumper/rings.h"
#include "jumper/triangulation.h"
#include "netmend/jumper/shortest_way.h"
#include "shapes.h"

using namespace netmend;
using namespace netmend::test;

namespace {

// Coordinates below stay small enough for exact products in 64 bits.
std::int64_t turn(Point a, Point b, Point c) {
  return (b.x.nm - a.x.nm) * (c.y.nm - a.y.nm) - (b.y.nm - a.y.nm) * (c.x.nm - a.x.nm);
}

bool between(Point a, Point b, Point p) {
  return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

bool onIt(Point a, Point b, Point p) {
  return between(a, b, p) && turn(a, b, p) == 0;
}

int signOfTurn(Point a, Point b, Point c) {
  const auto t = turn(a, b, c);
  return t > 0 ? 1 : t < 0 ? -1 : 0;
}

bool crossing(Point a, Point b, Point c, Point d) {
  return signOfTurn(a, b, c) * signOfTurn(a, b, d) < 0 && signOfTurn(c, d, a) * signOfTurn(c, d, b) < 0;
}

Point nm(std::int64_t x, std::int64_t y) {
  return {Length(x), Length(y)};
}

/// How often the loops go round p, by crossings of the ray to the right.
int winding(const std::vector<Ring>& loops, Point p) {
  int sum = 0;
  for (const Ring& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Point a = loop[i], b = loop[(i + 1) % loop.size()];
      if (a.y <= p.y && b.y > p.y && turn(a, b, p) > 0) ++sum;
      if (b.y <= p.y && a.y > p.y && turn(a, b, p) < 0) --sum;
    }
  return sum;
}

/// The same of weighted edges: `weight` more on the left.
int winding(const std::vector<WeightedEdge>& edges, Point p) {
  int sum = 0;
  for (const auto& [a, b, weight] : edges) {
    if (a.y <= p.y && b.y > p.y && turn(a, b, p) > 0) sum += weight;
    if (b.y <= p.y && a.y > p.y && turn(a, b, p) < 0) sum -= weight;
  }
  return sum;
}

std::vector<Ring> randomLoops(std::mt19937& random, int count, std::int64_t size, std::int64_t grid) {
  std::uniform_int_distribution<std::int64_t> place(0, size / grid);
  std::vector<Ring> loops;
  for (int i = 0; i < count; ++i) {
    Ring loop;
    for (std::size_t k = 0; k < 3 + random() % 4; ++k)
      loop.push_back(nm(place(random) * grid, place(random) * grid));
    loops.push_back(loop);
  }
  return loops;
}

double toSegment(Point p, Point a, Point b) {
  const double dx = (b.x - a.x).mm(), dy = (b.y - a.y).mm();
  const double t =
      std::clamp(((p.x - a.x).mm() * dx + (p.y - a.y).mm() * dy) / (dx * dx + dy * dy), 0.0, 1.0);
  return std::hypot((p.x - a.x).mm() - t * dx, (p.y - a.y).mm() - t * dy);
}

void checkTriangulation(const Triangulation& made, const Box& box) {
  const auto& points = made.points();
  const auto& triangles = made.triangles();
  std::int64_t area = 0;
  std::set<std::int32_t> used;
  for (std::size_t t = 0; t < triangles.size(); ++t) {
    const auto at = [&](std::size_t i) { return points[static_cast<std::size_t>(triangles[t].corner[i])]; };
    CHECK(turn(at(0), at(1), at(2)) > 0);
    area += turn(at(0), at(1), at(2));
    for (std::size_t i = 0; i < 3; ++i) {
      used.insert(triangles[t].corner[i]);
      const std::int32_t u = triangles[t].neighbour[i];
      const std::int32_t a = triangles[t].corner[(i + 1) % 3], b = triangles[t].corner[(i + 2) % 3];
      if (u < 0) {
        const Point p = points[static_cast<std::size_t>(a)], q = points[static_cast<std::size_t>(b)];
        CHECK(((p.x == q.x && (p.x == box.min.x || p.x == box.max.x)) ||
               (p.y == q.y && (p.y == box.min.y || p.y == box.max.y))));
        continue;
      }
      // The neighbour has the same edge the other way round, and knows this one.
      const auto& other = triangles[static_cast<std::size_t>(u)];
      bool found = false;
      for (std::size_t j = 0; j < 3; ++j)
        found = found || (other.corner[(j + 1) % 3] == b && other.corner[(j + 2) % 3] == a &&
                          other.neighbour[j] == static_cast<std::int32_t>(t));
      CHECK(found);
    }
  }
  CHECK(area == 2 * box.size().width.nm * box.size().height.nm);
  CHECK(used.size() == points.size());
}

/// Positive when d is inside the circle through a, b, c; in long double, far from its limits here.
long double inside(Point a, Point b, Point c, Point d) {
  const auto row = [&](Point p) {
    const long double x = static_cast<long double>(p.x.nm - d.x.nm),
                      y = static_cast<long double>(p.y.nm - d.y.nm);
    return std::array<long double, 3>{x, y, x * x + y * y};
  };
  const auto p = row(a), q = row(b), r = row(c);
  return p[0] * (q[1] * r[2] - r[1] * q[2]) - p[1] * (q[0] * r[2] - r[0] * q[2]) +
         p[2] * (q[0] * r[1] - r[0] * q[1]);
}

} // namespace

TEST_CASE("points are cut into triangles that fill the box, each with an empty circle (Delaunay)") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    // On a coarse grid in every other, so that points lie on edges and on circles.
    const std::int64_t grid = seed % 2 == 0 ? 100 : 1, size = 1000;
    std::uniform_int_distribution<std::int64_t> place(1, size / grid - 1);
    std::set<Point> drawn;
    for (int i = 0; i < 40; ++i)
      drawn.insert(nm(place(random) * grid, place(random) * grid));
    const std::vector<Point> points(drawn.begin(), drawn.end());
    const Box box{nm(0, 0), nm(size, size)};
    const Triangulation made(box, points, {});
    REQUIRE(made.points().size() == points.size() + 4);
    checkTriangulation(made, box);
    for (const auto& t : made.triangles()) {
      const auto at = [&](std::int32_t v) { return made.points()[static_cast<std::size_t>(v)]; };
      for (const Point p : made.points())
        CHECK(inside(at(t.corner[0]), at(t.corner[1]), at(t.corner[2]), p) <= 0);
    }
  }
}

TEST_CASE("edges that are given are edges of the triangulation, which still fills the box") {
  for (unsigned seed = 1; seed <= 30; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const auto noded = nodedEdges(randomLoops(random, 6, 1000, seed % 2 == 0 ? 50 : 1));
    REQUIRE(noded);
    std::set<Point> drawn;
    for (const WeightedEdge& e : *noded)
      drawn.insert({e.a, e.b});
    const std::vector<Point> points(drawn.begin(), drawn.end());
    const auto indexOf = [&](Point p) {
      return static_cast<std::int32_t>(std::distance(drawn.begin(), drawn.find(p)));
    };
    std::vector<std::pair<std::int32_t, std::int32_t>> edges;
    for (const WeightedEdge& e : *noded)
      edges.emplace_back(indexOf(e.a), indexOf(e.b));
    const Box box{nm(-10, -10), nm(1010, 1010)};
    const Triangulation made(box, points, edges);
    checkTriangulation(made, box);
    for (const auto& [a, b] : edges) {
      bool found = false;
      for (const auto& t : made.triangles())
        for (std::size_t i = 0; i < 3; ++i)
          found = found || (t.corner[i] == a && t.corner[(i + 1) % 3] == b) ||
                  (t.corner[i] == b && t.corner[(i + 1) % 3] == a);
      CHECK(found);
    }
  }
}

TEST_CASE("noded edges meet at ends only, each is there once, and wind as the loops did") {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const std::int64_t size = 100'000,
                       grid = seed % 3 == 0 ? 10'000 : 1; // with edges on each other in a third
    const auto loops = randomLoops(random, 5, size, grid);
    const auto noded = nodedEdges(loops);
    REQUIRE(noded);
    for (std::size_t i = 0; i < noded->size(); ++i) {
      const auto& [a, b, weight] = (*noded)[i];
      CHECK(a < b);
      CHECK(weight != 0);
      for (std::size_t j = 0; j < i; ++j) {
        const auto& [c, d, other] = (*noded)[j];
        const bool apart = !crossing(a, b, c, d) && (onIt(a, b, c) ? c == a || c == b : true) &&
                           (onIt(a, b, d) ? d == a || d == b : true) &&
                           (onIt(c, d, a) ? a == c || a == d : true) &&
                           (onIt(c, d, b) ? b == c || b == d : true) && !(a == c && b == d);
        CHECK(apart);
      }
    }
    std::uniform_int_distribution<std::int64_t> place(0, size);
    for (int k = 0; k < 200; ++k) {
      const Point p = nm(place(random), place(random));
      // Rounding moves an edge by less than 2 nm.
      const bool near = std::any_of(loops.begin(), loops.end(), [&](const Ring& loop) {
        for (std::size_t i = 0; i < loop.size(); ++i)
          if (loop[i] != loop[(i + 1) % loop.size()] &&
              toSegment(p, loop[i], loop[(i + 1) % loop.size()]) < 3e-6)
            return true;
        return false;
      });
      if (!near) CHECK(winding(*noded, p) == winding(loops, p));
    }
  }
}

TEST_CASE("a crossing is rounded to the nearest nanometre, and taken at an end that is two away") {
  const auto ends = [](const std::vector<Ring>& loops) {
    std::set<Point> out;
    const auto noded = nodedEdges(loops);
    REQUIRE(noded);
    for (const WeightedEdge& e : *noded)
      out.insert({e.a, e.b});
    return out;
  };
  const auto crossesAt = [&](Ring one, Ring other) {
    const auto found = ends({one, other});
    std::vector<Point> added;
    for (const Point p : found)
      if (std::find(one.begin(), one.end(), p) == one.end() &&
          std::find(other.begin(), other.end(), p) == other.end())
        added.push_back(p);
    return added;
  };
  using Points = std::vector<Point>;
  // The line y = 0 is crossed at 1/3 and 2/3 of the way between two places 100 nm apart, on either side of
  // it.
  const Ring base{nm(-1000, 0), nm(1000, 0), nm(0, -900)};
  CHECK(crossesAt(base, {nm(0, 600), nm(100, -300), nm(201, 600)}) == Points{nm(67, 0), nm(134, 0)});
  CHECK(crossesAt(base, {nm(0, 600), nm(-100, -300), nm(-201, 600)}) == Points{nm(-134, 0), nm(-67, 0)});
  // Three and more from any end it stays; two from an end it is that end.
  CHECK(crossesAt(base, {nm(-900, 500), nm(0, -3), nm(900, 500)}).size() == 2);
  CHECK(crossesAt(base, {nm(-900, 2), nm(0, -2), nm(900, 2)}).size() == 2);
  CHECK(crossesAt(base, {nm(-4, 500), nm(0, -2), nm(4, 500)}).empty());
}

TEST_CASE("equal edges add up and those that cancel out go") {
  const Ring square{nm(0, 0), nm(10, 0), nm(10, 10), nm(0, 10)};
  const auto twice = nodedEdges({square, square});
  REQUIRE(twice);
  REQUIRE(twice->size() == 4);
  for (const auto& e : *twice)
    CHECK(std::abs(e.weight) == 2);
  CHECK(nodedEdges({square, reversed(square)})->empty());
  // Squares side by side: the edge between them goes.
  const auto beside = nodedEdges({square, {nm(10, 0), nm(20, 0), nm(20, 10), nm(10, 10)}});
  REQUIRE(beside);
  CHECK(beside->size() == 6);
  for (const auto& e : *beside)
    CHECK_FALSE((e.a == nm(10, 0) && e.b == nm(10, 10)));
  // Weights: more on the left of an edge from the lesser to the greater point.
  const auto once = nodedEdges({square});
  for (const auto& e : *once)
    CHECK(e.weight == (e.a.x == e.b.x ? (e.a.x.nm == 10 ? 1 : -1) : (e.a.y.nm == 0 ? 1 : -1)));
  CHECK(nodedEdges({})->empty());
  CHECK(nodedEdges({{nm(5, 5)}, {nm(1, 1), nm(3, 3)}})->empty());
}

TEST_CASE("a mesh is free where its loops wind no more than nought, its regions hang together, and every "
          "place is found") {
  for (unsigned seed = 1; seed <= 12; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    auto loops = randomLoops(random, 6, 100'000, seed % 2 == 0 ? 5'000 : 1);
    for (Ring& loop : loops)
      if (random() % 4 != 0) loop = hullOf(loop);
    const auto mesh = buildMesh({nm(0, 0), nm(100'000, 100'000)}, loops);
    REQUIRE(mesh);
    std::uniform_int_distribution<std::int64_t> place(-900, 100'900);
    const auto corner = [&](const MeshTriangle& t, std::size_t i) {
      return mesh->vertices[static_cast<std::size_t>(t.corner[i % 3])];
    };
    const auto holding = [&](Point p) {
      std::vector<std::int32_t> out;
      for (std::size_t t = 0; t < mesh->triangles.size(); ++t) {
        bool in = true;
        for (std::size_t i = 0; i < 3; ++i)
          in = in && turn(corner(mesh->triangles[t], i), corner(mesh->triangles[t], i + 1), p) >= 0;
        if (in) out.push_back(static_cast<std::int32_t>(t));
      }
      return out;
    };
    std::vector<Point> places = mesh->vertices;
    for (int k = 0; k < 150; ++k)
      places.push_back(nm(place(random), place(random)));
    for (const Point p : places) {
      auto found = mesh->locate(p);
      std::sort(found.begin(), found.end());
      CHECK(found == holding(p));
      const bool free = std::any_of(found.begin(), found.end(), [&](std::int32_t t) {
        return mesh->triangles[static_cast<std::size_t>(t)].free;
      });
      CHECK(mesh->freeAt(p) == free);
    }
    for (const MeshTriangle& t : mesh->triangles) {
      const Point middle = nm((corner(t, 0).x.nm + corner(t, 1).x.nm + corner(t, 2).x.nm) / 3,
                              (corner(t, 0).y.nm + corner(t, 1).y.nm + corner(t, 2).y.nm) / 3);
      if (turn(corner(t, 0), corner(t, 1), corner(t, 2)) > 1'000'000)
        CHECK((winding(loops, middle) <= 0) == t.free);
    }
    // Regions by spreading one triangle's label at a time.
    for (std::size_t t = 0; t < mesh->triangles.size(); ++t) {
      CHECK((mesh->region[t] >= 0) == mesh->triangles[t].free);
      for (const std::int32_t u : mesh->triangles[t].neighbour)
        if (u >= 0 && mesh->triangles[t].free && mesh->triangles[static_cast<std::size_t>(u)].free)
          CHECK(mesh->region[t] == mesh->region[static_cast<std::size_t>(u)]);
    }
    std::set<std::int32_t> labels(mesh->region.begin(), mesh->region.end());
    labels.erase(-1);
    std::size_t pieces = 0;
    std::vector<bool> seen(mesh->triangles.size(), false);
    for (std::size_t first = 0; first < seen.size(); ++first) {
      if (seen[first] || !mesh->triangles[first].free) continue;
      ++pieces;
      std::vector<std::size_t> open{first};
      while (!open.empty()) {
        const std::size_t t = open.back();
        open.pop_back();
        if (seen[t]) continue;
        seen[t] = true;
        for (const std::int32_t u : mesh->triangles[t].neighbour)
          if (u >= 0 && mesh->triangles[static_cast<std::size_t>(u)].free)
            open.push_back(static_cast<std::size_t>(u));
      }
    }
    CHECK(labels.size() == pieces);
    CHECK(mesh->locate(nm(-2000, 5)).empty());
    CHECK(mesh->locate(nm(5, 200'000)).empty());
    CHECK(mesh->locate(nm(200'000, 5)).empty());
  }
}

TEST_CASE("a block's corners are places to bend at, straight places on its edge and dents are none") {
  // An L about a dent at (20, 20), with a straight corner on its lower edge.
  const Ring shape{mm(10, 10), mm(20, 10), mm(30, 10), mm(30, 20), mm(20, 20), mm(20, 30), mm(10, 30)};
  const auto mesh = buildMesh({mm(0, 0), mm(40, 40)}, {shape});
  REQUIRE(mesh);
  for (std::size_t v = 0; v < mesh->vertices.size(); ++v) {
    const Point p = mesh->vertices[v];
    if (std::find(shape.begin(), shape.end(), p) == shape.end()) continue;
    INFO(p.x.mm() << " " << p.y.mm());
    if (p == mm(20, 20))
      CHECK(mesh->isCorner[v] == 0);
    else if (p != mm(20, 10)) // straight: either will do
      CHECK(mesh->isCorner[v] == 1);
  }
}

TEST_CASE("a way says which edges it crosses, in order, each where it is") {
  for (unsigned seed = 1; seed <= 10; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const Scene scene = randomScene(random, 12, 40, 30, 8);
    const auto mesh = buildMesh(scene.bounds(), scene.loops());
    REQUIRE(mesh);
    std::uniform_real_distribution<double> x(0, 40), y(0, 30);
    for (int k = 0; k < 10; ++k) {
      const auto way = shortestWay(*mesh, mm(x(random), y(random)), mm(x(random), y(random)));
      if (!way) continue;
      CHECK(way->length == lengthOf(way->points));
      CHECK(way->length.mm() == Approx(lengthMm(way->points)).margin(1e-6));
      double before = 0;
      for (const auto& [u, v] : way->crossed) {
        CHECK(u < v);
        const Point a = mesh->vertices[static_cast<std::size_t>(u)],
                    b = mesh->vertices[static_cast<std::size_t>(v)];
        // The farthest place along the way where it meets the edge is not before that of the edge before.
        double walked = 0, farthest = -1;
        for (std::size_t i = 1; i < way->points.size(); ++i) {
          const Point p = way->points[i - 1], q = way->points[i];
          const double piece = distance(p, q).mm();
          const double ca = static_cast<double>(turn(a, b, p)), cb = static_cast<double>(turn(a, b, q));
          if (KeepOut edge{{{a, b}, {}}, true, {}, {}, {}, {}, {}, {}, false}; distanceTo(edge, p, q).nm <= 1)
            farthest = walked + (ca != cb ? std::clamp(ca / (ca - cb), 0.0, 1.0) : 1.0) * piece;
          walked += piece;
        }
        CHECK(farthest >= before - 1e-4);
        before = std::max(before, farthest);
      }
    }
  }
}

TEST_CASE("what lies in the way is told as a row of neighbours through the least blocked ground") {
  // Two walls: one thin, one thick beside it; only by the thin one leads the row.
  const Scene scene{40, 30, {box(18, -1, 22, 15), box(19.9, 15, 20.1, 31)}};
  const auto mesh = buildMesh(scene.bounds(), scene.loops());
  REQUIRE(mesh);
  const auto way = shortestWay(*mesh, mm(5, 8), mm(35, 8));
  REQUIRE_FALSE(way);
  const auto& row = way.error().through;
  REQUIRE(row.size() >= 3);
  const auto from = mesh->locate(mm(5, 8)), to = mesh->locate(mm(35, 8));
  CHECK(std::find(from.begin(), from.end(), row.front()) != from.end());
  CHECK(std::find(to.begin(), to.end(), row.back()) != to.end());
  for (std::size_t i = 0; i < row.size(); ++i) {
    const MeshTriangle& t = mesh->triangles[static_cast<std::size_t>(row[i])];
    if (i > 0) CHECK(std::find(t.neighbour.begin(), t.neighbour.end(), row[i - 1]) != t.neighbour.end());
    if (t.free) continue;
    for (const std::int32_t v : t.corner)
      CHECK(mesh->vertices[static_cast<std::size_t>(v)].y.mm() >= 14.9);
  }
  WayOptions quiet;
  quiet.explain = false;
  CHECK(shortestWay(*mesh, mm(5, 8), mm(35, 8), quiet).error().through.empty());
}

TEST_CASE("a way through doors is pulled tight round their posts, without straight points") {
  using Doors = std::vector<std::pair<Point, Point>>;
  using Points = std::vector<Point>;
  CHECK(pulledTight(mm(0, 0), {}, mm(5, 5)) == Points{mm(0, 0), mm(5, 5)});
  CHECK(pulledTight(mm(0, 0), {}, mm(0, 0)) == Points{mm(0, 0)});
  // Going right: left posts above, right posts below.
  const Doors open{{mm(2, 3), mm(2, -3)}, {mm(4, 3), mm(4, -3)}};
  CHECK(pulledTight(mm(0, 0), open, mm(6, 0)) == Points{mm(0, 0), mm(6, 0)});
  CHECK(pulledTight(mm(0, 0), {{mm(2, 5), mm(2, 1)}}, mm(4, 0)) == Points{mm(0, 0), mm(2, 1), mm(4, 0)});
  CHECK(pulledTight(mm(0, 0), {{mm(2, -1), mm(2, -5)}}, mm(4, 0)) == Points{mm(0, 0), mm(2, -1), mm(4, 0)});
  // A slalom, and one whose posts are all in one line.
  CHECK(pulledTight(mm(0, 0), {{mm(2, 5), mm(2, 1)}, {mm(4, -1), mm(4, -5)}, {mm(6, 5), mm(6, 1)}},
                    mm(8, 0)) == Points{mm(0, 0), mm(2, 1), mm(4, -1), mm(6, 1), mm(8, 0)});
  CHECK(pulledTight(mm(0, 0), {{mm(2, 5), mm(2, 0)}, {mm(4, 0), mm(4, -5)}}, mm(8, 0)) ==
        Points{mm(0, 0), mm(8, 0)});
  // Two posts of one side, the second farther in.
  CHECK(pulledTight(mm(0, 0), {{mm(2, 5), mm(2, 1)}, {mm(4, 5), mm(4, 3)}}, mm(6, 0)) ==
        Points{mm(0, 0), mm(4, 3), mm(6, 0)});
  CHECK(pulledTight(mm(0, 0), {{mm(2, 5), mm(2, 2)}, {mm(4, 5), mm(4, 3)}}, mm(6, 0)) ==
        Points{mm(0, 0), mm(2, 2), mm(4, 3), mm(6, 0)});
}

TEST_CASE("rings lose repeated and straight corners, and keep those where they turn back") {
  CHECK(cleaned({mm(0, 0), mm(0, 0), mm(5, 0), mm(10, 0), mm(10, 10), mm(0, 10), mm(0, 5), mm(0, 0)}) ==
        box(0, 0, 10, 10));
  CHECK(cleaned({}).empty());
  CHECK(cleaned({mm(1, 1), mm(1, 1), mm(1, 1)}) == Ring{mm(1, 1)});
  CHECK(cleaned({mm(0, 0), mm(5, 0), mm(9, 0)}).size() == 3);
  // A spike of no width stays as it is, for who reads on to decide.
  const Ring spike{mm(0, 0), mm(10, 0), mm(10, 10), mm(15, 15), mm(10, 10), mm(0, 10)};
  CHECK(cleaned(spike) == spike);
}

TEST_CASE("a ring is simple where no two of its edges have more in common than neighbours share") {
  CHECK(isSimple(box(0, 0, 10, 10)));
  CHECK(isSimple(reversed(box(0, 0, 10, 10))));
  CHECK_FALSE(isSimple({mm(0, 0), mm(1, 1)}));
  CHECK_FALSE(isSimple({mm(0, 0), mm(10, 10), mm(10, 0), mm(0, 10)}));
  CHECK_FALSE(isSimple({mm(0, 0), mm(10, 0), mm(10, 10), mm(15, 15), mm(10, 10), mm(0, 10)}));
  CHECK_FALSE(isSimple({mm(0, 0), mm(10, 0), mm(5, 0), mm(5, 5)})); // turns back on itself
  CHECK_FALSE(isSimple({mm(5, 5), mm(0, 0), mm(10, 0), mm(5, 0)}));
  CHECK_FALSE(isSimple({mm(0, 0), mm(10, 0), mm(10, 10), mm(5, 0), mm(0, 10)})); // touches itself
  CHECK(isSimple({mm(0, 0), mm(10, 0), mm(10, 10), {Length(5'000'000), Length(1)}, mm(0, 10)}));
  for (unsigned seed = 1; seed <= 200; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    std::uniform_int_distribution<std::int64_t> place(0, 12);
    Ring ring;
    while (ring.size() < 5) {
      const Point p = nm(place(random), place(random));
      if (std::find(ring.begin(), ring.end(), p) == ring.end()) ring.push_back(p);
    }
    bool simple = true;
    for (std::size_t i = 0; i < 5; ++i)
      for (std::size_t k = 0; k < 5; ++k) {
        const Point a = ring[i], b = ring[(i + 1) % 5], c = ring[k], d = ring[(k + 1) % 5];
        if (i == k) continue;
        if (crossing(a, b, c, d)) simple = false;
        if (k != i && k != (i + 1) % 5 && onIt(a, b, c)) simple = false;
      }
    CHECK(isSimple(ring) == simple);
  }
}

TEST_CASE("a ring is turned the way that is asked for, and stays as it is where it turns that way") {
  const Ring left = box(0, 0, 10, 10), right = reversed(left);
  CHECK(turned(left, true) == left);
  CHECK(turned(left, false) == right);
  CHECK(turned(right, true) == left);
  CHECK(turned(right, false) == right);
}
