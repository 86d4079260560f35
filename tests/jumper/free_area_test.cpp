#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/jumper/proposal.h"
#include "support/effort.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const std::filesystem::path dataFolder = std::filesystem::path(NETMEND_SOURCE_DIR) / "data";

ZoneRules rules() {
  auto loaded = loadZoneRules(dataFolder / "zones.json");
  REQUIRE(loaded);
  return *loaded;
}

FreeArea areaOf(const Board& board, double wire, Side side = Side::top) {
  FreeAreaOptions options;
  options.wire = Length::fromMm(wire);
  const Lookup lookup(board);
  auto area = buildFreeArea(lookup, side, rules(), options);
  REQUIRE(area);
  return *area;
}

/// Every edge of every free triangle keeps its distance from every keep-out.
void checkNothingInside(const FreeArea& area) {
  const Length half(area.wire.nm / 2);
  for (const MeshTriangle& t : area.mesh.triangles) {
    if (!t.free) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      const Point a = area.mesh.vertices[static_cast<std::size_t>(t.corner[i])];
      const Point b = area.mesh.vertices[static_cast<std::size_t>(t.corner[(i + 1) % 3])];
      for (const KeepOut& k : area.obstacles.keepOuts)
        if (distanceTo(k, a, b) < k.margin + half)
          FAIL(k.name.label << " is entered between (" << a.x.mm() << ", " << a.y.mm() << ") and ("
                            << b.x.mm() << ", " << b.y.mm() << ")");
    }
  }
}

} // namespace

TEST_CASE("free board never comes nearer to a keep-out than its margin and half the wire") {
  for (unsigned seed = 1; seed <= static_cast<unsigned>(netmend::rounds(25, 4)); ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    BenchBoard bench;
    for (const Ring& ring : randomScene(random, 12, 40, 30, 9).blocks)
      bench.zone(ZoneKind::battery, "B", ring, std::uniform_real_distribution<double>(0, 0.8)(random));
    bench.zone(ZoneKind::flex, "L", {mm(5, 5), mm(20, 5), mm(20, 8), mm(8, 8), mm(8, 20), mm(5, 20)}, 0.3);
    bench.zone(ZoneKind::fastener, "dart", {mm(25, 5), mm(30, 20), mm(25, 9), mm(20, 20)}, 0.45);
    const FreeArea area = areaOf(bench.board, 0.117);
    checkNothingInside(area);
    // And not much farther off either: what is clear of all of them by 1 % and 20 nm more is free.
    std::uniform_real_distribution<double> x(0, 40), y(0, 30);
    for (int i = 0; i < 400; ++i) {
      const Point p = mm(x(random), y(random));
      const bool clear =
          std::all_of(area.obstacles.keepOuts.begin(), area.obstacles.keepOuts.end(), [&](const KeepOut& k) {
            return static_cast<double>(distanceTo(k, p, p).nm) >
                   1.01 * static_cast<double>((k.margin + area.wire / 2).nm) + 20;
          });
      const bool inOutline = p.x.nm > 0 && p.y.nm > 0 && p.x < mm(40, 0).x && p.y < mm(0, 30).y;
      if (clear && inOutline) CHECK(area.mesh.freeAt(p));
    }
  }
}

TEST_CASE("holes in a zone stay free where the wire fits, and close where it does not") {
  BenchBoard bench;
  const ZoneId id = bench.zone(ZoneKind::shieldWall, "S", box(10, 10, 30, 25), 0.2);
  Zone zone = *bench.board.zones.find(id);
  zone.polygon.holes = {reversed(box(12, 12, 20, 20)), box(25, 12, 25.3, 12.3)};
  bench.board.zones.put(zone);
  const FreeArea area = areaOf(bench.board, 0.1);
  CHECK(area.mesh.freeAt(mm(15, 15)));
  CHECK_FALSE(area.mesh.freeAt(mm(12.1, 15)));
  CHECK_FALSE(area.mesh.freeAt(mm(25.15, 12.15)));
  CHECK_FALSE(area.mesh.freeAt(mm(22, 15)));
  checkNothingInside(area);
}

TEST_CASE("an arc of a margin is drawn round, never cut off") {
  // A corner's margin is a quarter disc: on the diagonal the free area starts between r and r/cos(45°/8).
  BenchBoard bench;
  bench.zone(ZoneKind::antenna, "A", box(0.5, 0.5, 20, 15), 2.0);
  const FreeArea area = areaOf(bench.board, 0.2);
  const double r = 2.1, d = std::numbers::sqrt2 / 2;
  CHECK_FALSE(area.mesh.freeAt(mm(20 + (r - 1e-6) * d, 15 + (r - 1e-6) * d)));
  const double outer = r / std::cos(std::numbers::pi / 4 / 8) + 3e-5;
  CHECK(area.mesh.freeAt(mm(20 + outer * d, 15 + outer * d)));
}

TEST_CASE("the wire keeps off the board's edge and out of its cut-outs") {
  BenchBoard bench;
  bench.board.info.outline.value[0].holes = {box(10, 10, 20, 20)};
  const FreeArea area = areaOf(bench.board, 0.1);
  CHECK_FALSE(area.mesh.freeAt(mm(0.3, 15)));
  CHECK(area.mesh.freeAt(mm(0.4, 15)));
  CHECK_FALSE(area.mesh.freeAt(mm(15, 15)));
  CHECK_FALSE(area.mesh.freeAt(mm(20.3, 15)));
  CHECK(area.mesh.freeAt(mm(20.4, 15)));
  CHECK_FALSE(area.mesh.freeAt(mm(-3, 15)));
}

TEST_CASE("low parts and parts on the other side are no obstacle, tall and unknown ones are") {
  BenchBoard bench;
  const NetId net = bench.net("A");
  bench.part("C1", PartKind::capacitor, box(5, 5, 6, 6), Side::top, 0.5);
  bench.part("U1", PartKind::chip, box(10, 5, 14, 9), Side::bottom);
  bench.part("L1", PartKind::inductor, box(20, 5, 24, 9), Side::top, 2.0);
  const PartId hidden = bench.part("U2", PartKind::chip, {});
  bench.pin(hidden, "1", net, mm(30, 20));
  bench.pin(hidden, "2", net, mm(34, 20));
  bench.pin(hidden, "3", net, mm(34, 24));
  const FreeArea area = areaOf(bench.board, 0.1);
  CHECK(area.mesh.freeAt(mm(5.5, 5.5)));
  CHECK(area.mesh.freeAt(mm(12, 7)));
  CHECK_FALSE(area.mesh.freeAt(mm(22, 7)));
  CHECK_FALSE(area.mesh.freeAt(mm(33, 21))); // inside the hull of the pads
  const auto at = keepOutsAt(area, mm(33, 21));
  REQUIRE(at.size() == 1);
  CHECK(area.obstacles.keepOuts[at[0]].guessed);
}

TEST_CASE("a place inside a margin is opened the shortest way out; inside the keep-out itself it is not") {
  BenchBoard bench;
  bench.zone(ZoneKind::battery, "B", box(10, 10, 20, 20), 1.0);
  const FreeArea area = areaOf(bench.board, 0.1);
  const auto opening = openingAt(area, mm(20.2, 15));
  REQUIRE(opening);
  CHECK(opening->keepOuts.size() == 1);
  CHECK(area.mesh.freeAt(opening->exit));
  CHECK(distance(mm(20.2, 15), opening->exit).mm() == Approx(0.85).margin(1e-4));
  CHECK_FALSE(openingAt(area, mm(15, 15)));
  CHECK_FALSE(openingAt(area, mm(45, 15))); // off the board
  const auto free = openingAt(area, mm(30, 15));
  REQUIRE(free);
  CHECK(free->exit == mm(30, 15));
  CHECK(free->keepOuts.empty());
}

TEST_CASE("a margin is not opened through the keep-out next to it") {
  // The place sits in a slot 0.4 mm wide between two batteries; the way out leads along the slot.
  BenchBoard bench;
  bench.zone(ZoneKind::battery, "B1", box(10, 10, 14.8, 20), 0.5);
  bench.zone(ZoneKind::battery, "B2", box(15.2, 10, 20, 20), 0.5);
  const FreeArea area = areaOf(bench.board, 0.1);
  const auto opening = openingAt(area, mm(15, 19));
  REQUIRE(opening);
  CHECK(opening->exit.y > mm(0, 20).y);
  CHECK(opening->keepOuts.size() == 2);
}

TEST_CASE("a zone that a job sets aside is no longer in the way") {
  BenchBoard bench;
  const ZoneId id = bench.zone(ZoneKind::antenna, "A", box(10, 10, 20, 20), 0.5);
  FreeAreaOptions options;
  options.overrides = {{id, "antenna not used"}};
  const Lookup lookup(bench.board);
  const auto area = buildFreeArea(lookup, Side::top, rules(), options);
  REQUIRE(area);
  CHECK(area->mesh.freeAt(mm(15, 15)));
}

TEST_CASE("an unknown outline becomes a box round everything drawn, and says so") {
  BenchBoard bench;
  bench.board.info.outline = {};
  bench.pin({}, "TP1", bench.net("A"), mm(100, 50));
  const FreeArea area = areaOf(bench.board, 0.1);
  CHECK(area.outlineGuessed);
  CHECK(area.mesh.freeAt(mm(103, 50)));
  CHECK_FALSE(area.mesh.freeAt(mm(106, 50)));
}

TEST_CASE("outlines that make no sense are refused in words") {
  BenchBoard bench;
  const auto failsWith = [&](std::vector<Polygon> outline) {
    bench.board.info.outline = fromUser(std::move(outline));
    const Lookup lookup(bench.board);
    const auto area = buildFreeArea(lookup, Side::top, rules());
    REQUIRE_FALSE(area);
    return area.error();
  };
  const Error crossing = failsWith({{{mm(0, 0), mm(40, 30), mm(40, 0), mm(0, 30)}, {}}});
  CHECK(wordsOf(crossing.place) == "/info/outline/0");
  failsWith({{box(0, 0, 2000, 30), {}}});
  failsWith({{box(0, 0, 0.5, 30), {}}});
  Board nothing;
  const Lookup lookup(nothing);
  CHECK_FALSE(buildFreeArea(lookup, Side::top, rules()));
}

TEST_CASE("a self-crossing zone is closed out to its hull rather than guessed open") {
  BenchBoard bench;
  bench.zone(ZoneKind::flex, "bow", {mm(10, 10), mm(20, 20), mm(20, 10), mm(10, 20)}, 0.1);
  const FreeArea area = areaOf(bench.board, 0.1);
  CHECK_FALSE(area.mesh.freeAt(mm(11, 15)));
  CHECK_FALSE(area.mesh.freeAt(mm(15, 11)));
}
