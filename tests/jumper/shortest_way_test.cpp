#include <catch2/catch.hpp>

#include "netmend/jumper/shortest_way.h"
#include "shapes.h"

using namespace netmend;
using namespace netmend::test;

namespace {

NavigationMesh meshOf(const Scene& scene) {
  auto mesh = buildMesh(scene.bounds(), scene.loops());
  REQUIRE(mesh);
  return *mesh;
}

/// Shortest way over all pairs of corners that see each other: slow, plain, and apart from the code under
/// test.
double bruteForce(const Scene& scene, Point from, Point to) {
  std::vector<Point> points{from, to};
  for (const Ring& ring : scene.blocks)
    for (const Point p : ring) {
      const bool inside = p.x.nm < 0 || p.y.nm < 0 || p.x.mm() > scene.width || p.y.mm() > scene.height;
      if (!inside) points.push_back(p);
    }
  const auto sees = [&](Point a, Point b) {
    return std::none_of(scene.blocks.begin(), scene.blocks.end(),
                        [&](const Ring& r) { return enters(r, a, b); });
  };
  std::vector<double> best(points.size(), HUGE_VAL);
  std::vector<bool> done(points.size(), false);
  best[0] = 0;
  for (;;) {
    std::size_t here = points.size();
    for (std::size_t i = 0; i < points.size(); ++i)
      if (!done[i] && best[i] < HUGE_VAL && (here == points.size() || best[i] < best[here])) here = i;
    if (here == points.size() || here == 1) return best[1];
    done[here] = true;
    for (std::size_t i = 0; i < points.size(); ++i)
      if (!done[i] && sees(points[here], points[i]))
        best[i] = std::min(best[i], best[here] + lengthMm({points[here], points[i]}));
  }
}

} // namespace

TEST_CASE("a way on free board is straight") {
  const NavigationMesh mesh = meshOf({40, 30, {}});
  const auto way = shortestWay(mesh, mm(1, 1), mm(39, 29));
  REQUIRE(way);
  CHECK(way->points == std::vector<Point>{mm(1, 1), mm(39, 29)});
}

TEST_CASE("a way round one corner bends at that corner") {
  const NavigationMesh mesh = meshOf({40, 30, {box(10, -1, 20, 20)}});
  const auto way = shortestWay(mesh, mm(5, 5), mm(25, 5));
  REQUIRE(way);
  CHECK(way->points == std::vector<Point>{mm(5, 5), mm(10, 20), mm(20, 20), mm(25, 5)});
  // Closed form: two hypotenuses and the block's width.
  CHECK(lengthMm(way->points) == Approx(2 * std::hypot(5, 15) + 10).epsilon(1e-12));
}

TEST_CASE("a way round a disc comes to 2*sqrt(d^2 - r^2) + r*theta as the polygon gets finer") {
  // Tangents from two points at distance d on opposite sides of a disc, and the arc between them.
  const double r = 5, d = 12, theta = std::numbers::pi - 2 * std::acos(r / d);
  const double closed = 2 * std::sqrt(d * d - r * r) + r * theta;
  double before = HUGE_VAL;
  for (const int corners : {16, 64, 256, 1024, 4096}) {
    const NavigationMesh mesh = meshOf({40, 30, {disc(mm(20, 15), r, corners)}});
    const auto way = shortestWay(mesh, mm(20 - d, 15), mm(20 + d, 15));
    REQUIRE(way);
    const double error = std::abs(lengthMm(way->points) - closed);
    // An inscribed polygon of n corners is short by the order of r*theta*(pi/n)^2/6.
    CHECK(error < r * (theta + 1) * std::pow(std::numbers::pi / corners, 2) + 1e-5);
    CHECK(error < before);
    before = error;
  }
}

TEST_CASE("ways among random blocks equal a brute-force visibility graph") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    const Scene scene = randomScene(random, 4 + static_cast<int>(seed % 20), 40, 30, 12);
    const NavigationMesh mesh = meshOf(scene);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int query = 0; query < 12; ++query) {
      const Point from = mm(40 * unit(random), 30 * unit(random)),
                  to = mm(40 * unit(random), 30 * unit(random));
      INFO("from " << from.x.mm() << " " << from.y.mm() << " to " << to.x.mm() << " " << to.y.mm());
      const auto way = shortestWay(mesh, from, to);
      const auto blocked = [&](Point p) {
        return std::any_of(scene.blocks.begin(), scene.blocks.end(), [&](const Ring& r) {
          return enters(r, p, p + mm(1e-6, 0)) && enters(r, p, p - mm(1e-6, 0));
        });
      };
      if (blocked(from) || blocked(to)) {
        CHECK_FALSE(way);
        continue;
      }
      const double truth = bruteForce(scene, from, to);
      CHECK(way.has_value() == (truth < HUGE_VAL));
      if (!way || truth == HUGE_VAL) continue;
      CHECK(lengthMm(way->points) == Approx(truth).epsilon(1e-9));
      CHECK(way->points.front() == from);
      CHECK(way->points.back() == to);
    }
  }
}

TEST_CASE("no way at all is said, with the blocked ground in between") {
  const NavigationMesh mesh = meshOf({40, 30, {box(15, -1, 20, 31)}});
  const auto way = shortestWay(mesh, mm(5, 5), mm(30, 25));
  REQUIRE_FALSE(way);
  CHECK(way.error().reason == NoWay::Reason::closed);
  const auto& through = way.error().through;
  CHECK(std::any_of(through.begin(), through.end(),
                    [&](std::int32_t t) { return !mesh.triangles[static_cast<std::size_t>(t)].free; }));
}

TEST_CASE("a way from inside a block is refused") {
  const NavigationMesh mesh = meshOf({40, 30, {box(10, 10, 20, 20)}});
  CHECK(shortestWay(mesh, mm(15, 15), mm(30, 5)).error().reason == NoWay::Reason::startBlocked);
  CHECK(shortestWay(mesh, mm(30, 5), mm(15, 15)).error().reason == NoWay::Reason::endBlocked);
  CHECK(shortestWay(mesh, mm(30, 5), mm(300, 15)).error().reason == NoWay::Reason::endBlocked);
}

TEST_CASE("a gap of no width is closed, one of a nanometre is open") {
  const Point gap{Length(1), Length(0)};
  Ring right = box(20, 0, 41, 20);
  const auto across = [&](const Ring& r) {
    return shortestWay(meshOf({40, 30, {box(-1, 10, 20, 20), r, box(-1, 20, 10, 31), box(30, 20, 41, 31)}}),
                       mm(5, 5), mm(15, 25));
  };
  CHECK_FALSE(across(right));
  for (Point& p : right)
    p = p + gap;
  const auto way = across(right);
  REQUIRE(way);
  CHECK(way->points.size() == 3 + 1);
}

TEST_CASE("blocks that touch at a corner let no way through between them") {
  const NavigationMesh mesh = meshOf({40, 30, {box(-1, 10, 20, 20), box(20, 20, 41, 31)}});
  const auto way = shortestWay(mesh, mm(10, 25), mm(30, 15));
  CHECK_FALSE(way);
}

TEST_CASE("a way may start and end on the edge and at the corner of a block") {
  const NavigationMesh mesh = meshOf({40, 30, {box(10, 10, 20, 20)}});
  const auto along = shortestWay(mesh, mm(10, 12), mm(10, 18));
  REQUIRE(along);
  CHECK(along->points == std::vector<Point>{mm(10, 12), mm(10, 18)});
  const auto round = shortestWay(mesh, mm(10, 19), mm(20, 19));
  REQUIRE(round);
  CHECK(round->points == std::vector<Point>{mm(10, 19), mm(10, 20), mm(20, 20), mm(20, 19)});
  const auto corner = shortestWay(mesh, mm(10, 10), mm(20, 20));
  REQUIRE(corner);
  CHECK(lengthMm(corner->points) == Approx(20).epsilon(1e-12));
  const auto nowhere = shortestWay(mesh, mm(10, 12), mm(10, 12));
  REQUIRE(nowhere);
  CHECK(nowhere->length == Length(0));
}

TEST_CASE("corners in one line do not show as bends") {
  const NavigationMesh mesh = meshOf({40, 30, {box(5, 5, 10, 15), box(15, 15, 20, 25), box(25, 5, 30, 15)}});
  const auto way = shortestWay(mesh, mm(2, 15), mm(38, 15));
  REQUIRE(way);
  CHECK(way->points == std::vector<Point>{mm(2, 15), mm(38, 15)});
}

TEST_CASE("a mesh edge that is closed on purpose sends the way round the other side") {
  const NavigationMesh mesh = meshOf({40, 30, {box(15, 10, 25, 18)}});
  const auto first = shortestWay(mesh, mm(5, 15), mm(35, 15));
  REQUIRE(first);
  CHECK(first->points[1] == mm(15, 18));
  double second = HUGE_VAL;
  for (const MeshEdge& e : first->crossed)
    if (const auto other = shortestWay(mesh, mm(5, 15), mm(35, 15), {{e}}))
      second = std::min(second, lengthMm(other->points));
  CHECK(second == Approx(2 * std::hypot(10, 5) + 10).epsilon(1e-12));
}

TEST_CASE("an area wider than a metre and places far off are refused, not searched wrongly") {
  CHECK_FALSE(buildMesh({mm(0, 0), mm(1200, 10)}, {}));
  CHECK_FALSE(buildMesh({mm(0, 0), mm(10, 10)}, {box(0, 0, 9e9, 5)}));
  CHECK_FALSE(buildMesh({}, {}));
}
