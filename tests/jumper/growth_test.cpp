#include <catch2/catch.hpp>

#include "jumper/rings.h"
#include "netmend/jumper/keep_out.h"
#include "shapes.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// How often the loops go round p, by crossings of the ray to the right.
int winding(const std::vector<Ring>& loops, Point p) {
  int sum = 0;
  const auto turn = [](Point a, Point b, Point c) {
    return static_cast<long double>((b.x - a.x).nm) * static_cast<long double>((c.y - a.y).nm) -
           static_cast<long double>((b.y - a.y).nm) * static_cast<long double>((c.x - a.x).nm);
  };
  for (const Ring& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Point a = loop[i], b = loop[(i + 1) % loop.size()];
      if (a.y <= p.y && b.y > p.y && turn(a, b, p) > 0) ++sum;
      if (b.y <= p.y && a.y > p.y && turn(a, b, p) < 0) --sum;
    }
  return sum;
}

KeepOut keepOut(const Ring& outer, const std::vector<Ring>& holes = {}, bool wallOnly = false) {
  KeepOut out;
  out.core = {outer, holes};
  out.wallOnly = wallOnly;
  return out;
}

} // namespace

TEST_CASE("a keep-out of any shape is grown as far as was asked, and by no more than its arcs' corners") {
  const Ring dart{mm(0, 0), mm(10, 0), mm(10, 10), mm(6, 3), mm(0, 10)};
  const Ring comb{mm(0, 0), mm(10, 0), mm(10, 6), mm(8, 6), mm(8, 2),
                  mm(5, 2), mm(5, 8),  mm(4, 8),  mm(4, 2), mm(0, 2)};
  const Ring bow{mm(0, 0), mm(10, 10), mm(10, 0), mm(0, 10)};
  std::mt19937 random(41);
  INFO("seed 41");
  std::uniform_real_distribution<double> place(-4, 14);
  for (const KeepOut& k :
       {keepOut(box(0, 0, 10, 6)), keepOut(reversed(box(0, 0, 10, 6))), keepOut(dart),
        keepOut(reversed(dart)), keepOut(comb), keepOut({mm(3, 4)}), keepOut({mm(1, 2), mm(8, 7)}),
        keepOut(dart, {}, true), keepOut(box(0, 0, 10, 6), {}, true),
        keepOut(box(0, 0, 10, 10), {box(2, 2, 8, 8)}),
        keepOut(box(0, 0, 10, 10), {reversed(box(2, 2, 8, 8))}, true),
        keepOut(box(0, 0, 10, 10), {box(1, 1, 4, 4), {mm(6, 6), mm(9, 6), mm(9, 9)}}), keepOut(bow)})
    for (const int segments : {1, 3, 8})
      for (const double by : {0.3, 1.5}) {
        const auto loops = grownLoops(k, Length::fromMm(by), segments);
        const double most = by / std::cos(std::numbers::pi / 4 / segments) + 20e-6;
        const bool isBow = k.core.outer == bow;
        int in = 0;
        for (int i = 0; i < 60; ++i) {
          const Point p = mm(place(random), place(random));
          const double far = distanceTo(isBow ? keepOut(box(0, 0, 10, 10)) : k, p, p).mm();
          const int wound = winding(loops, p);
          in += wound > 0 ? 1 : 0;
          if (far > most) CHECK(wound <= 0);
          if (!isBow && far <= by) CHECK(wound > 0);
          if (isBow && far == 0) CHECK(wound > 0); // all of it, out to the hull
        }
        CHECK(in < 60);
      }
}

TEST_CASE("along the axes a disc reaches 5 to 6 nm farther than asked, for what rounding takes") {
  for (const int segments : {1, 2, 3, 8, 16})
    for (std::int64_t by = 1'000; by < 3'000'000; by = by * 3 + 7) {
      Box box;
      for (const Ring& loop : grownLoops(keepOut({mm(3, 4)}), Length(by), segments))
        for (const Point p : loop)
          box.include(p);
      for (const Length reach :
           {box.max.x - mm(3, 0).x, mm(3, 0).x - box.min.x, box.max.y - mm(0, 4).y, mm(0, 4).y - box.min.y}) {
        CHECK(reach >= Length(by + 5));
        CHECK(reach <= Length(by + 6));
      }
    }
}

TEST_CASE("nothing grows to nothing") {
  CHECK(grownLoops(keepOut({}), Length(1000)).empty());
  CHECK(grownLoops(keepOut({}, {}, true), Length(1000)).empty());
  CHECK(grownLoops(keepOut({}, {{}}), Length(1000)).empty());
}

TEST_CASE("inside of an outline a wire has room where its middle keeps that far off, dents and all") {
  const Ring outline{mm(0, 0),  mm(20, 0), mm(20, 12), mm(12, 12),
                     mm(12, 6), mm(10, 6), mm(10, 12), mm(0, 12)};
  std::mt19937 random(42);
  INFO("seed 42");
  std::uniform_real_distribution<double> x(-1, 21), y(-1, 13);
  for (const Ring& ring : {outline, reversed(outline)})
    for (const double by : {0.4, 1.2}) {
      std::vector<Ring> loops{shrunkOutline(ring, Length::fromMm(by), 8), box(-5, -5, 25, 17)};
      int free = 0;
      for (int i = 0; i < 300; ++i) {
        const Point p = mm(x(random), y(random));
        const bool inside = covers({ring, {}}, p);
        const double far = distanceTo(keepOut(ring, {}, true), p, p).mm();
        if (!inside || far <= by) CHECK(winding(loops, p) > 0);
        if (inside && far > by / std::cos(std::numbers::pi / 32) + 20e-6) {
          CHECK(winding(loops, p) <= 0);
          ++free;
        }
      }
      CHECK(free > 50);
    }
}
