#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/jumper/free_area.h"

using namespace netmend;
using namespace netmend::test;

namespace {

ZoneRules rules() {
  auto loaded = loadZoneRules(std::filesystem::path(NETMEND_SOURCE_DIR) / "data" / "zones.json");
  REQUIRE(loaded);
  return *loaded;
}

/// On the top side, for a wire of 0.1 mm.
FreeArea areaOf(const Board& board) {
  const Lookup lookup(board);
  auto area = buildFreeArea(lookup, Side::top, rules());
  REQUIRE(area);
  return *area;
}

/// Corners of a fine grid about `p` that are free and can be reached in a straight line past no core, by
/// trial.
double nearestByTrial(const FreeArea& area, Point p, double reachMm) {
  double best = reachMm;
  constexpr int directions = 720;
  for (int i = 0; i < directions; ++i) {
    const double angle = 2 * std::numbers::pi * i / directions;
    for (double r = 0.005; r < best; r += 0.005) {
      const Point q = p + mm(r * std::cos(angle), r * std::sin(angle));
      const auto blocks = [&](const KeepOut& k) {
        return !k.isBoardEdge() && (strictlyInside(k, q) || (k.wallOnly && distanceTo(k, p, q).nm == 0));
      };
      if (std::any_of(area.obstacles.keepOuts.begin(), area.obstacles.keepOuts.end(), blocks)) break;
      if (area.mesh.freeAt(q)) best = r;
    }
  }
  return best;
}

std::vector<std::string> labels(const FreeArea& area, const std::vector<std::size_t>& keepOuts) {
  std::vector<std::string> out;
  for (const std::size_t i : keepOuts)
    out.push_back(area.obstacles.keepOuts[i].name.label);
  return out;
}

} // namespace

TEST_CASE("a margin is opened the shortest way out, as trial in all directions finds it") {
  std::mt19937 random(31);
  INFO("seed 31");
  std::uniform_real_distribution<double> x(2, 38), y(2, 28);
  BenchBoard bench;
  for (const Ring& ring : randomScene(random, 10, 40, 30, 9).blocks)
    bench.zone(ZoneKind::battery, "B", ring, 0.5);
  const FreeArea area = areaOf(bench.board);
  int opened = 0;
  for (int i = 0; i < 3000 && opened < 12; ++i) {
    const Point p = mm(x(random), y(random));
    if (area.mesh.freeAt(p)) continue;
    const auto& all = area.obstacles.keepOuts;
    const bool inCore =
        std::any_of(all.begin(), all.end(), [&](const KeepOut& k) { return strictlyInside(k, p); });
    const auto opening = openingAt(area, p);
    if (inCore) {
      CHECK_FALSE(opening);
      continue;
    }
    ++opened;
    const double byTrial = nearestByTrial(area, p, 3.0);
    REQUIRE(opening.has_value() == (byTrial < 3.0));
    if (!opening) continue;
    CHECK(area.mesh.freeAt(opening->exit));
    CHECK(distance(p, opening->exit).mm() == Approx(byTrial).margin(0.01));
    CHECK_FALSE(opening->keepOuts.empty());
    CHECK(opening->keepOuts == keepOutsNear(area, p, opening->exit));
  }
  CHECK(opened == 12);
}

TEST_CASE("a margin is opened as far as the reach goes and no farther") {
  // 1 mm of margin and half a wire of 0.1 mm, from 0.2 mm beside the battery: 0.85 mm and 5 nm of rounding.
  BenchBoard bench;
  bench.zone(ZoneKind::battery, "B", box(10, 10, 20, 20), 1.0);
  const FreeArea area = areaOf(bench.board);
  for (const Point p : {mm(20.2, 15), mm(9.8, 15), mm(15, 9.8), mm(15, 20.2)}) {
    const auto opening = openingAt(area, p, {}, Length(850'010));
    REQUIRE(opening);
    CHECK(distance(p, opening->exit).nm == Approx(850'000).margin(10));
    CHECK(labels(area, opening->keepOuts) == std::vector<std::string>{"B"});
    CHECK_FALSE(openingAt(area, p, {}, Length(849'999)));
  }
  CHECK(openingAt(area, mm(20, 15))); // on its edge
  CHECK_FALSE(openingAt(area, mm(19.999999, 15)));
}

TEST_CASE("a place within the margin of the board's edge is opened towards the board") {
  BenchBoard bench; // 40 mm by 30 mm
  const FreeArea area = areaOf(bench.board);
  const double inset = area.obstacles.keepOuts.back().margin.mm() + 0.05;
  const auto opening = openingAt(area, mm(0.1, 15));
  REQUIRE(opening);
  CHECK(opening->exit.x.mm() == Approx(inset).margin(1e-5));
  CHECK(opening->exit.y == mm(0, 15).y);
  CHECK(opening->keepOuts.size() == 1);
  CHECK(area.obstacles.keepOuts[opening->keepOuts[0]].isBoardEdge());
  CHECK(openingAt(area, mm(0, 15)));
  CHECK_FALSE(openingAt(area, mm(-0.000001, 15)));
  const auto corner = openingAt(area, mm(0.1, 0.1));
  REQUIRE(corner);
  CHECK(corner->exit.x.mm() == Approx(inset).margin(1e-5));
  CHECK(corner->exit.y.mm() == Approx(inset).margin(1e-5));
}

TEST_CASE("a margin is not opened across a wall or a hole's edge") {
  // In a pocket of a battery, 1 mm wide; the margins of 0.6 mm close it all.
  BenchBoard bench;
  const ZoneId id = bench.zone(ZoneKind::battery, "B", box(10, 10, 20, 20), 0.6);
  Zone zone = *bench.board.zones.find(id);
  zone.polygon.holes = {box(18, 14, 19, 16)};
  bench.board.zones.put(zone);
  CHECK_FALSE(openingAt(areaOf(bench.board), mm(18.5, 15)));
  // The same as a slot that is open to the right: out along it.
  zone.polygon = {
      {mm(10, 10), mm(20, 10), mm(20, 14), mm(18, 14), mm(18, 16), mm(20, 16), mm(20, 20), mm(10, 20)}, {}};
  bench.board.zones.put(zone);
  zone.margin = fromUser(Length::fromMm(1.2));
  bench.board.zones.put(zone);
  const FreeArea slot = areaOf(bench.board);
  const auto opening = openingAt(slot, mm(18.5, 15));
  REQUIRE(opening);
  CHECK(opening->exit.x > mm(20, 0).x);
  CHECK(slot.mesh.freeAt(opening->exit));
}

TEST_CASE("a guessed body opens for its own part's pads, and for no other") {
  BenchBoard bench;
  const PartId u = bench.part("U1", PartKind::chip, {});
  Part part = *bench.board.parts.find(u);
  part.height = {};
  bench.board.parts.put(part);
  const NetId net = bench.net("A");
  for (const Point p : {mm(10, 10), mm(14, 10), mm(14, 14), mm(10, 14)})
    bench.pin(u, "1", net, p);
  const FreeArea area = areaOf(bench.board);
  const auto own = openingAt(area, mm(10, 12), u);
  REQUIRE(own);
  CHECK(own->exit.x < mm(10, 0).x);
  CHECK(labels(area, own->keepOuts) == std::vector<std::string>{"U1"});
  CHECK_FALSE(openingAt(area, mm(10, 12)));
  CHECK_FALSE(openingAt(area, mm(10, 12), PartId{999}));
  // Of a body that is known it does not.
  part.body = fromUser(box(9, 9, 15, 15));
  part.height = fromUser(Length(2'000'000));
  bench.board.parts.put(part);
  CHECK_FALSE(openingAt(areaOf(bench.board), mm(10, 12), u));
}

TEST_CASE("the keep-outs near a stretch are those within their margin and half the wire, to the nanometre") {
  BenchBoard bench;
  bench.zone(ZoneKind::battery, "B", box(10, 10, 20, 20), 0.5);
  const FreeArea area = areaOf(bench.board);
  const auto near = [&](Point a, Point b) {
    CHECK(keepOutsNear(area, a, b) == keepOutsNear(area, b, a));
    return !keepOutsNear(area, a, b).empty();
  };
  CHECK(near(mm(5, 20.549999), mm(25, 20.549999)));
  CHECK_FALSE(near(mm(5, 20.55), mm(25, 20.55)));
  CHECK(near(mm(5, 9.450001), mm(25, 9.450001)));
  CHECK_FALSE(near(mm(5, 9.45), mm(25, 9.45)));
  CHECK(near(mm(20.549999, 12), mm(30, 12)));
  CHECK_FALSE(near(mm(20.55, 12), mm(30, 12)));
  CHECK(near(mm(9.450001, 12), mm(9.450001, 12)));
  CHECK_FALSE(near(mm(9.45, 12), mm(5, 12)));
  CHECK(near(mm(15, 15), mm(16, 15)));
  CHECK(keepOutsAt(area, mm(20.5, 15)) == std::vector<std::size_t>{0});
  CHECK(keepOutsAt(area, mm(25, 15)).empty());
  // An odd wire is taken a nanometre wider.
  FreeAreaOptions odd;
  odd.wire = Length(100'001);
  const Lookup lookup(bench.board);
  const auto wider = buildFreeArea(lookup, Side::top, rules(), odd);
  REQUIRE(wider);
  CHECK_FALSE(keepOutsAt(*wider, mm(15, 20.55)).empty());
  CHECK(keepOutsAt(*wider, mm(15, 20.550001)).empty());
}

TEST_CASE("free area: sides, wire, bounds and the board's edge as they were asked for") {
  BenchBoard bench;
  bench.zone(ZoneKind::battery, "B", box(10, 10, 20, 20), 0.5);
  const auto hole = bench.pin({}, "H", bench.net("A"), mm(30, 10), PadReach::allLayers, 2);
  Pad pad = *bench.board.pads.find(hole.pad);
  pad.drill = fromUser(Size{Length(800'000), Length(800'000)});
  bench.board.pads.put(pad);
  const Lookup lookup(bench.board);
  FreeAreaOptions options;
  options.wire = Length(200'000);
  for (const bool over : {false, true}) {
    options.overHoles = over;
    const auto area = buildFreeArea(lookup, Side::bottom, rules(), options);
    REQUIRE(area);
    CHECK(area->side == Side::bottom);
    CHECK(area->wire == Length(200'000));
    CHECK_FALSE(area->outlineGuessed);
    const auto& k = area->obstacles.keepOuts;
    REQUIRE(k.size() == (over ? 2 : 3));
    CHECK(area->passable.size() == (over ? 1 : 0));
    CHECK(area->mesh.freeAt(mm(30, 10)) == over);
    CHECK(k.back().isBoardEdge());
    CHECK(k.back().wallOnly);
    CHECK(k.back().core.outer == box(0, 0, 40, 30));
    CHECK(k.back().margin == rules().edgeMargin);
    CHECK(k.back().name.what == KeepOutName::What::boardEdge);
    CHECK_FALSE(k.back().guessed);
    REQUIRE(area->bounds.size() == k.size());
    CHECK(area->bounds[0].min == mm(9.4, 9.4));
    CHECK(area->bounds[0].max == mm(20.6, 20.6));
  }
  options.overHoles = false;
  options.own = {hole.pad};
  CHECK(buildFreeArea(lookup, Side::bottom, rules(), options)->obstacles.keepOuts.size() == 2);
}

TEST_CASE("an unknown outline is guessed five millimetres off everything that has a place") {
  BenchBoard bench;
  bench.board.info.outline = {};
  const NetId net = bench.net("A");
  const auto boxIs = [&](double x0, double y0, double x1, double y1) {
    const FreeArea area = areaOf(bench.board);
    CHECK(area.outlineGuessed);
    CHECK(area.obstacles.keepOuts.back().guessed);
    CHECK(area.obstacles.keepOuts.back().core.outer == box(x0, y0, x1, y1));
  };
  bench.pin({}, "TP1", net, mm(10, 10));
  boxIs(5, 5, 15, 15);
  bench.track(boost::add_vertex({NodeKind::pad, PadId{}, mm(8, 12), -1}, bench.graph),
              boost::add_vertex({NodeKind::pad, PadId{}, mm(11, 7), -1}, bench.graph), net, bench.top);
  boxIs(3, 2, 16, 17);
  Via via;
  via.position = mm(20, 10);
  bench.put(bench.board.vias, via);
  boxIs(3, 2, 25, 17);
  bench.zone(ZoneKind::heatSensitive, "film", box(10, 10, 12, 30), 0);
  boxIs(3, 2, 25, 35);
  bench.part("C1", PartKind::capacitor, box(0, 10, 1, 11), Side::bottom, 0.1);
  boxIs(-5, 2, 25, 35);
}

TEST_CASE("a board must be wider than three times its edge's margin with half the wire") {
  // 3 * (edge margin + 0.05 mm) is not enough, a nanometre more is.
  const std::int64_t least = 3 * (rules().edgeMargin.nm + 50'000);
  for (const bool wide : {false, true})
    for (const bool upright : {false, true}) {
      BenchBoard bench;
      const Length side(least + (wide ? 1 : 0)), other(20'000'000);
      const Point corner = upright ? Point{side, other} : Point{other, side};
      bench.board.info.outline = fromUser(
          std::vector<Polygon>{{{mm(0, 0), {corner.x, Length(0)}, corner, {Length(0), corner.y}}, {}}});
      const Lookup lookup(bench.board);
      const auto area = buildFreeArea(lookup, Side::top, rules());
      CHECK(area.has_value() == wide);
      if (!area) CHECK(wordsOf(area.error().found).find("20.000") != std::string::npos);
    }
}

TEST_CASE(
    "outlines with repeated or straight corners, of several boards and with empty rings are read as meant") {
  BenchBoard bench;
  bench.board.info.outline = fromUser(std::vector<Polygon>{
      {{mm(0, 0), mm(5, 0), mm(10, 0), mm(10, 0), mm(10, 10), mm(0, 10), mm(0, 0)}, {{}, box(4, 4, 6, 6)}},
      {{}, {}},
      {box(20, 0, 30, 10), {}}});
  const FreeArea area = areaOf(bench.board);
  CHECK_FALSE(area.outlineGuessed);
  REQUIRE(area.obstacles.keepOuts.size() == 2);
  CHECK(area.obstacles.keepOuts[0].core.outer == box(0, 0, 10, 10));
  CHECK(area.obstacles.keepOuts[0].core.holes == std::vector<Ring>{box(4, 4, 6, 6)});
  CHECK(area.mesh.freeAt(mm(2, 2)));
  CHECK_FALSE(area.mesh.freeAt(mm(5, 5)));
  CHECK_FALSE(area.mesh.freeAt(mm(15, 5)));
  CHECK(area.mesh.freeAt(mm(25, 5)));
  // A place on the second of them can be opened too.
  CHECK(openingAt(area, mm(20.1, 5)));
  CHECK_FALSE(openingAt(area, mm(19.9, 5)));
}
