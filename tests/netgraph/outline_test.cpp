#include <catch2/catch.hpp>

#include <random>

#include "netgraph/outline.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::copper;

namespace {

double toSegment(Vec p, Vec a, Vec b) {
  const Vec d = b - a;
  const double whole = d.x * d.x + d.y * d.y;
  const double t = whole > 0 ? std::clamp(((p.x - a.x) * d.x + (p.y - a.y) * d.y) / whole, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - a.x - t * d.x, p.y - a.y - t * d.y);
}

bool cross(Vec a, Vec b, Vec c, Vec d) {
  const auto turn = [](Vec p, Vec q, Vec r) { return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x); };
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/// Distance of two segments, plainly.
double apart(Vec a, Vec b, Vec c, Vec d) {
  if (cross(a, b, c, d)) return 0.0;
  return std::min({toSegment(a, c, d), toSegment(b, c, d), toSegment(c, a, b), toSegment(d, a, b)});
}

using Rings = std::vector<std::vector<Vec>>;

bool evenOdd(const Rings& rings, Vec p) {
  bool in = false;
  for (const auto& ring : rings)
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec a = ring[i], b = ring[(i + 1) % ring.size()];
      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) in = !in;
    }
  return in;
}

double bordersApart(const Rings& one, Vec c, Vec d) {
  double least = 1e300;
  for (const auto& ring : one)
    for (std::size_t i = 0; i < ring.size(); ++i)
      least = std::min(least, apart(ring[i], ring[(i + 1) % ring.size()], c, d));
  return least;
}

/// A ragged ring about `centre` with this many corners.
std::vector<Vec> ragged(std::mt19937& random, Vec centre, double radius, int corners) {
  std::uniform_real_distribution<double> share(0.6, 1.0);
  std::vector<Vec> ring;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * 3.14159265358979 * i / corners, r = radius * share(random);
    ring.push_back({std::round(centre.x + r * std::cos(angle)), std::round(centre.y + r * std::sin(angle))});
  }
  return ring;
}

std::vector<Vec> square(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

/// Both points lie where they are said to, and as far apart as it is said.
void checkPlaces(const Closest& c, double onFirst, double onSecond) {
  CHECK(onFirst == Approx(0).margin(1e-3));
  CHECK(onSecond == Approx(0).margin(1e-3));
  CHECK(std::hypot(c.onFirst.x - c.onSecond.x, c.onFirst.y - c.onSecond.y) ==
        Approx(c.distance).margin(1e-3));
}

} // namespace

TEST_CASE("bounds take in points and bounds, grow by a margin, and tell how far apart they are") {
  Bounds a;
  a.include(Vec{1, 5});
  a.include(Vec{3, 2});
  CHECK(a.min.x == 1);
  CHECK(a.min.y == 2);
  CHECK(a.max.x == 3);
  CHECK(a.max.y == 5);
  const Bounds more = a.grownBy(2);
  CHECK(more.min.x == -1);
  CHECK(more.min.y == 0);
  CHECK(more.max.x == 5);
  CHECK(more.max.y == 7);
  const auto at = [](double x0, double y0, double x1, double y1) {
    Bounds out;
    out.include(Vec{x0, y0});
    out.include(Vec{x1, y1});
    return out;
  };
  for (const auto& [other, squared] : {std::pair{at(6, 9, 7, 10), 9.0 + 16.0},
                                       {at(-5, -3, -2, -2), 9.0 + 16.0},
                                       {at(2, 9, 7, 10), 16.0},
                                       {at(8, 3, 9, 4), 25.0},
                                       {at(-4, 3, -1, 4), 4.0},
                                       {at(2, -7, 2, -1), 9.0},
                                       {at(2, 3, 9, 9), 0.0},
                                       {at(3, 5, 4, 6), 0.0}}) {
    CHECK(squaredDistance(a, other) == squared);
    CHECK(squaredDistance(other, a) == squared);
  }
  Bounds both = a;
  both.include(at(-5, 3, 2, 9));
  CHECK(both.min.x == -5);
  CHECK(both.min.y == 2);
  CHECK(both.max.x == 3);
  CHECK(both.max.y == 9);
}

TEST_CASE("segments come closest where a plain formula says, and cross where they cross") {
  const Closest x = closestOnSegments({0, 0}, {10, 10}, {0, 4}, {8, 4});
  CHECK(x.distance == 0);
  CHECK(x.onFirst.x == Approx(4));
  CHECK(x.onFirst.y == Approx(4));
  CHECK(x.onSecond.x == Approx(4));
  // Ends of one on the other, beyond either end, in one line and side by side.
  for (const auto& [c, d, distance] : {std::tuple{Vec{5, 0}, Vec{5, 9}, 0.0},
                                       {Vec{5, -1}, Vec{5, -9}, 1.0},
                                       {Vec{13, 4}, Vec{20, 4}, 5.0},
                                       {Vec{-3, -4}, Vec{-20, -4}, 5.0},
                                       {Vec{12, 0}, Vec{15, 0}, 2.0},
                                       {Vec{2, 3}, Vec{8, 3}, 3.0},
                                       {Vec{10, 0}, Vec{20, 5}, 0.0},
                                       {Vec{0, -5}, Vec{0, 5}, 0.0},
                                       {Vec{11, -5}, Vec{11, 5}, 1.0},
                                       {Vec{4, 7}, Vec{4, 7}, 7.0},
                                       {Vec{3, 0}, Vec{6, 0}, 0.0}}) {
    CHECK(closestOnSegments({0, 0}, {10, 0}, c, d).distance == Approx(distance));
    CHECK(closestOnSegments({10, 0}, {0, 0}, d, c).distance == Approx(distance));
    const Closest swapped = closestOnSegments(c, d, {0, 0}, {10, 0});
    CHECK(swapped.distance == Approx(distance));
    checkPlaces(swapped, toSegment(swapped.onFirst, c, d), toSegment(swapped.onSecond, {0, 0}, {10, 0}));
  }
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> place(-1000, 1000);
  for (int i = 0; i < 500; ++i) {
    const Vec a{place(random), place(random)}, b{place(random), place(random)},
        c{place(random), place(random)}, d{place(random), place(random)};
    const Closest found = closestOnSegments(a, b, c, d);
    CHECK(found.distance == Approx(apart(a, b, c, d)).margin(1e-6));
    checkPlaces(found, toSegment(found.onFirst, a, b), toSegment(found.onSecond, c, d));
  }
}

TEST_CASE("an area holds the points that even-odd counting says, with holes and islands in them") {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  for (const int corners : {3, 7, 8, 9, 31, 32, 33, 200}) {
    const Rings rings{ragged(random, {0, 0}, 1e6, corners),
                      ragged(random, {1e5, 0}, 4e5, corners / 2 + 3),
                      {},
                      ragged(random, {1e5, 0}, 1e5, 5)};
    const AreaChain chain(rings);
    std::uniform_real_distribution<double> place(-1.1e6, 1.1e6);
    int in = 0;
    for (int i = 0; i < 400; ++i) {
      const Vec p{place(random), place(random)};
      CHECK(chain.contains(p) == evenOdd(rings, p));
      in += chain.contains(p) ? 1 : 0;
    }
    CHECK(in > 20);
    // Level with a corner.
    for (const auto& ring : rings)
      for (const Vec corner : ring)
        for (const double off : {-3e6, -1000.5, 1000.5, 3e6}) {
          const Vec p{corner.x + off, corner.y};
          CHECK(chain.contains(p) == evenOdd(rings, p));
        }
    Bounds all;
    for (const auto& ring : rings)
      for (const Vec corner : ring)
        all.include(corner);
    CHECK(chain.bounds().min.x == all.min.x);
    CHECK(chain.bounds().min.y == all.min.y);
    CHECK(chain.bounds().max.x == all.max.x);
    CHECK(chain.bounds().max.y == all.max.y);
    CHECK(chain.anyCorner().x == rings[0][0].x);
    CHECK(chain.anyCorner().y == rings[0][0].y);
  }
}

TEST_CASE("the border of an area comes as near to an edge as all its edges one by one, and no link between "
          "rings does") {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> place(-2e6, 2e6);
  for (const int corners : {3, 8, 9, 40, 150}) {
    const Rings rings{ragged(random, {0, 0}, 1e6, corners), ragged(random, {0, 0}, 3e5, corners),
                      ragged(random, {1.5e6, 0}, 2e5, corners)};
    const AreaChain chain(rings);
    for (int i = 0; i < 100; ++i) {
      const Vec a{place(random), place(random)};
      // Some of them short and inside, where links between the rings would be nearest.
      const Vec b = i % 2 == 0 ? Vec{place(random), place(random)} : Vec{a.x + 1000, a.y + 500};
      Closest best;
      chain.approach(a, b, best);
      const double truth = bordersApart(rings, a, b);
      CHECK(best.distance == Approx(truth).margin(1e-3));
      checkPlaces(best, bordersApart(rings, best.onFirst, best.onFirst), toSegment(best.onSecond, a, b));
      // What is nearer already stays.
      Closest nearer{truth / 2, {1, 2}, {3, 4}};
      chain.approach(a, b, nearer);
      CHECK(nearer.distance == truth / 2);
      CHECK(nearer.onFirst.x == 1);
    }
    // Between the middle ring and the far one only a link passes.
    Closest best;
    chain.approach({1.15e6, 0}, {1.15e6, 1}, best);
    CHECK(best.distance == Approx(bordersApart(rings, {1.15e6, 0}, {1.15e6, 1})).margin(1e-3));
    CHECK(best.distance > 1e4);
  }
}

TEST_CASE("two borders come as near as all their edges one by one") {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> place(-3e6, 3e6);
  for (const int corners : {3, 9, 33, 100})
    for (int i = 0; i < 12; ++i) {
      const Rings one{ragged(random, {0, 0}, 1e6, corners), ragged(random, {0, 0}, 5e5, corners)};
      const Vec off{i == 0 ? 0 : place(random), i == 0 ? 0 : place(random)};
      const Rings other{ragged(random, off, i % 3 == 0 ? 2e5 : 9e5, corners + i),
                        ragged(random, off, 1e5, 4)};
      const AreaChain first(one), second(other);
      Closest best;
      first.approach(second, best);
      double truth = 1e300;
      for (const auto& ring : other)
        for (std::size_t k = 0; k < ring.size(); ++k)
          truth = std::min(truth, bordersApart(one, ring[k], ring[(k + 1) % ring.size()]));
      CHECK(best.distance == Approx(truth).margin(1e-3));
      checkPlaces(best, bordersApart(one, best.onFirst, best.onFirst),
                  bordersApart(other, best.onSecond, best.onSecond));
      Closest back;
      second.approach(first, back);
      CHECK(back.distance == Approx(truth).margin(1e-3));
    }
}

TEST_CASE("an area without corners, or of one, is no crash and holds nothing") {
  for (const Rings& rings : {Rings{}, Rings{{}}, Rings{{{5, 5}}}}) {
    const AreaChain chain(rings);
    CHECK_FALSE(chain.contains({5, 5}));
    CHECK_FALSE(chain.contains({4, 5}));
    Closest best;
    chain.approach({5, 8}, {9, 8}, best);
    CHECK(best.distance == Approx(rings.empty() || rings[0].empty() ? std::hypot(5, 8) : 3.0));
  }
}

TEST_CASE(
    "cores of any two kinds come as near as they do, overlap where they do, and give up beyond a limit") {
  const std::vector<Vec> dot{{20, 0}}, line{{15, -10}, {15, 10}, {30, 10}},
      box = square(-5, -5, 5, 5), hole = square(-3, -3, 3, 3), inBox{{0, 0}}, inside{{-1, 0}, {1, 0}},
      chord{{0, 0}, {20, 0}};
  const AreaChain ring({box, hole}), block({square(8, 0, 9, 1)}), inner({square(-1, -1, 1, 1)});
  const AreaOutline aDot{dot, 1.0, false, nullptr}, aLine{line, 1.0, false, nullptr},
      aBox{box, 0.0, true, nullptr}, open{box, 0.0, false, nullptr}, anArea{{}, 0.0, false, &ring},
      aBlock{{}, 0.0, false, &block}, innerArea{{}, 0.0, false, &inner}, inMiddle{inBox, 0.0, false, nullptr},
      insideLine{inside, 0.0, false, nullptr}, aChord{chord, 0.0, false, nullptr};
  const auto between = [](const AreaOutline& a, const AreaOutline& b, double distance) {
    const Closest there = closestBetween(a, b), back = closestBetween(b, a);
    CHECK(there.distance == Approx(distance).margin(1e-12));
    CHECK(back.distance == Approx(distance).margin(1e-12));
    CHECK(std::hypot(there.onFirst.x - there.onSecond.x, there.onFirst.y - there.onSecond.y) ==
          Approx(distance).margin(1e-9));
    CHECK(there.onFirst.x == Approx(back.onSecond.x).margin(1e-9));
    if (distance <= 0) return;
    CHECK(closestBetween(a, b, distance).distance == Approx(distance));
    CHECK(closestBetween(a, b, distance * 0.999).distance > distance * 0.999);
  };
  between(aDot, aLine, 5); // to the line at 15, not to where a closed ring would run
  between(aDot, aBox, 15);
  between(aDot, open, 15);
  between(aDot, anArea, 15);
  between(aLine, aBox, 10);
  between(aLine, anArea, 10);
  between(aLine, aBlock, 6);
  between(anArea, aBlock, 3);
  between(aBlock, aBox, 3);
  between(inMiddle, aBox, 0);
  between(inMiddle, anArea, 3); // in its hole
  between(inMiddle, open, 5);
  between(insideLine, aBox, 0);
  between(insideLine, anArea, 2);
  between(innerArea, anArea, 2);
  between(innerArea, aBox, 0);
  between(aChord, aBox, 0);
  between(aChord, anArea, 0);
  between(aChord, aBlock, 0);
}

TEST_CASE("an outline covers what is within its radius and the slack, and no more") {
  const std::vector<Vec> line{{0, 0}, {10, 0}}, box = square(0, 0, 10, 10);
  const AreaOutline thick{line, 2.0, false, nullptr}, filled{box, 0.0, true, nullptr};
  CHECK(copper::covers(thick, {5, 2.5}, 0.5));
  CHECK_FALSE(copper::covers(thick, {5, 2.5001}, 0.5));
  CHECK(copper::covers(thick, {12, 0}, 0));
  CHECK_FALSE(copper::covers(thick, {12.0001, 0}, 0));
  CHECK(copper::covers(filled, {5, 5}, 0));
  CHECK(copper::covers(filled, {5, -1}, 1));
  CHECK_FALSE(copper::covers(filled, {5, -1.0001}, 1));
  const AreaChain chain({box, square(2, 2, 8, 8)});
  const AreaOutline area{{}, 0.0, false, &chain};
  CHECK(copper::covers(area, {1, 1}, 0));
  CHECK_FALSE(copper::covers(area, {5, 5}, 2.9));
  CHECK(copper::covers(area, {5, 5}, 3));
}
