#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/board/shape.h"
#include "netmend/jumper/zone_rules.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Rules whose figures are all unlike each other.
ZoneRules rules() {
  ZoneRules out;
  double margin = 0.1;
  for (const ZoneKind kind : {ZoneKind::connector, ZoneKind::battery, ZoneKind::shieldWall, ZoneKind::antenna,
                              ZoneKind::tallPart, ZoneKind::fastener, ZoneKind::flex})
    out.zones.push_back({kind, ZoneEffect::forbidden, Length::fromMm(margin += 0.01), {}, "no", ""});
  out.zones.push_back({ZoneKind::heatSensitive, ZoneEffect::perLength, {}, Price(3), "warm", ""});
  out.parts = {{PartKind::connector, ZoneKind::connector, false, ""},
               {PartKind::shield, ZoneKind::shieldWall, true, ""},
               {PartKind::inductor, ZoneKind::heatSensitive, false, ""}};
  out.edgeMargin = Length(310'000);
  out.tallFrom = Length(1'200'000);
  out.lowUpTo = Length(4'000'000);
  out.holeMargin = Length(320'000);
  out.jointMargin = Length(330'000);
  out.guessedBodyMargin = Length(70'000);
  return out;
}

struct Bench : BenchBoard {
  ZoneRules r = rules();
  [[nodiscard]] Obstacles obstacles(Side side = Side::top,
                                    const std::vector<ZoneOverride>& overrides = {}) const {
    const Lookup lookup(board);
    return obstaclesOf(lookup, side, r, overrides);
  }
  template <class Change> void edit(PartId id, Change change) {
    Part part = *board.parts.find(id);
    change(part);
    board.parts.put(part);
  }
  template <class Change> void edit(ZoneId id, Change change) {
    Zone zone = *board.zones.find(id);
    change(zone);
    board.zones.put(zone);
  }
  template <class Change> void edit(PadId id, Change change) {
    Pad pad = *board.pads.find(id);
    change(pad);
    board.pads.put(pad);
  }
  [[nodiscard]] std::vector<KeepOut> holes(Side side = Side::top, const std::vector<PadId>& own = {}) const {
    return holesAndJoints(board, side, r, own);
  }
};

/// The distance of two segments by looking for the least of a smooth convex function, coarse to fine.
double apart(Point a, Point b, Point c, Point d) {
  const auto at = [](Point p, Point q, double s) {
    return std::pair{static_cast<double>(p.x.nm) + s * static_cast<double>((q.x - p.x).nm),
                     static_cast<double>(p.y.nm) + s * static_cast<double>((q.y - p.y).nm)};
  };
  double lo = 0, hi = 1;
  const auto fromSecond = [&](double s) {
    const auto [x, y] = at(a, b, s);
    const auto [cx, cy] = at(c, d, 0);
    const double dx = static_cast<double>((d.x - c.x).nm), dy = static_cast<double>((d.y - c.y).nm);
    const double whole = dx * dx + dy * dy;
    const double t = whole > 0 ? std::clamp(((x - cx) * dx + (y - cy) * dy) / whole, 0.0, 1.0) : 0.0;
    return std::hypot(x - cx - t * dx, y - cy - t * dy);
  };
  for (int i = 0; i < 200; ++i) {
    const double one = lo + (hi - lo) / 3, two = hi - (hi - lo) / 3;
    (fromSecond(one) < fromSecond(two) ? hi : lo) = fromSecond(one) < fromSecond(two) ? two : one;
  }
  return fromSecond(lo);
}

} // namespace

TEST_CASE("a drawn zone is a keep-out with its own margin, or that of its kind") {
  Bench b;
  const ZoneId id = b.zone(ZoneKind::antenna, "ANT", box(1, 1, 5, 4), 0.45);
  b.edit(id, [](Zone& z) {
    z.polygon.holes = {box(2, 2, 3, 3)};
    z.part = PartId{12};
  });
  auto k = b.obstacles().keepOuts;
  REQUIRE(k.size() == 1);
  CHECK(k[0].core == b.board.zones.find(id)->polygon);
  CHECK_FALSE(k[0].wallOnly);
  CHECK(k[0].margin == Length(450'000));
  CHECK(k[0].kind == ZoneKind::antenna);
  CHECK(k[0].zone == id);
  CHECK(k[0].part == PartId{12});
  CHECK_FALSE(k[0].pad);
  CHECK(k[0].name == KeepOutName{KeepOutName::What::zone, ZoneKind::antenna, "ANT", {}});
  CHECK_FALSE(k[0].guessed);
  CHECK_FALSE(k[0].isBoardEdge());
  for (const auto& [margin, is] : {std::pair{Fact<Length>{}, Length(140'000)},
                                   {fromUser(Length(-5)), Length(0)},
                                   {fromUser(Length(0)), Length(0)},
                                   {fromUser(Length(1)), Length(1)}}) {
    b.edit(id, [m = margin](Zone& z) { z.margin = m; });
    CHECK(b.obstacles().keepOuts[0].margin == is);
  }
  b.edit(id, [](Zone& z) { z.origin = Origin::guessed; });
  CHECK(b.obstacles().keepOuts[0].guessed);
}

TEST_CASE(
    "a zone counts on its side, or on both where that is unknown; not set aside, and not without ring") {
  Bench b;
  b.zone(ZoneKind::antenna, "first", {}, 0.1);
  const ZoneId id = b.zone(ZoneKind::antenna, "second", box(1, 1, 5, 4), 0.1);
  const ZoneId third = b.zone(ZoneKind::battery, "third", box(1, 1, 5, 4), 0.1);
  b.edit(third, [](Zone& z) { z.side = fromUser(Side::bottom); });
  const auto labels = [&](Side side, const std::vector<ZoneOverride>& overrides = {}) {
    std::string out;
    for (const KeepOut& k : b.obstacles(side, overrides).keepOuts)
      out += k.name.label + " ";
    return out;
  };
  CHECK(labels(Side::top) == "second ");
  CHECK(labels(Side::bottom) == "second third ");
  b.edit(id, [](Zone& z) { z.side = fromUser(Side::top); });
  CHECK(labels(Side::top) == "second ");
  CHECK(labels(Side::bottom) == "third ");
  b.edit(third, [](Zone& z) { z.side = {}; });
  CHECK(labels(Side::top, {{id, ""}}) == "third ");
  CHECK(labels(Side::top, {{third, ""}, {ZoneId{99}, ""}}) == "second ");
  CHECK(labels(Side::top, {{third, ""}, {id, ""}}).empty());
}

TEST_CASE("a zone or a part that only costs is no keep-out") {
  Bench b;
  const ZoneId id = b.zone(ZoneKind::heatSensitive, "film", box(1, 1, 5, 4), 0.1);
  b.zone(ZoneKind::battery, "after", box(1, 1, 5, 4), 0.1);
  b.part("L1", PartKind::inductor, box(10, 10, 12, 12));
  const Obstacles all = b.obstacles();
  REQUIRE(all.keepOuts.size() == 1);
  CHECK(all.keepOuts[0].name.label == "after");
  REQUIRE(all.softZones.size() == 2);
  CHECK(all.softZones[0].core.outer == box(1, 1, 5, 4));
  CHECK(all.softZones[0].zone == id);
  CHECK(all.softZones[0].rule.reason == "warm");
  CHECK(all.softZones[0].rule.price == Price(3));
  CHECK(all.softZones[0].name == KeepOutName{KeepOutName::What::zone, ZoneKind::heatSensitive, "film", {}});
  CHECK(all.softZones[1].core.outer == box(10, 10, 12, 12));
  CHECK_FALSE(all.softZones[1].zone);
  CHECK(all.softZones[1].rule.effect == ZoneEffect::perLength);
  CHECK(all.softZones[1].name == KeepOutName{KeepOutName::What::part, ZoneKind::heatSensitive, "L1", {}});
}

TEST_CASE("a part whose kind has a rule keeps a wire off its body") {
  Bench b;
  const PartId id = b.part("J1", PartKind::connector, box(10, 10, 14, 12));
  auto k = b.obstacles().keepOuts;
  REQUIRE(k.size() == 1);
  CHECK(k[0].core.outer == box(10, 10, 14, 12));
  CHECK_FALSE(k[0].wallOnly);
  CHECK(k[0].margin == Length(110'000));
  CHECK(k[0].kind == ZoneKind::connector);
  CHECK_FALSE(k[0].zone);
  CHECK(k[0].part == id);
  CHECK(k[0].name == KeepOutName{KeepOutName::What::part, ZoneKind::connector, "J1", {}});
  CHECK_FALSE(k[0].guessed);
  CHECK(b.obstacles(Side::bottom).keepOuts.empty());
  b.edit(id, [](Part& p) { p.kind = guessed(PartKind::connector); });
  CHECK(b.obstacles().keepOuts[0].guessed);
  b.edit(id, [](Part& p) { p.kind = fromUser(PartKind::shield); });
  k = b.obstacles().keepOuts;
  CHECK(k[0].wallOnly);
  CHECK(k[0].kind == ZoneKind::shieldWall);
  CHECK(k[0].margin == Length(130'000));
  CHECK(k[0].name.kind == ZoneKind::shieldWall);
  CHECK_FALSE(k[0].guessed);
  b.edit(id, [](Part& p) { p.fitted = fromUser(false); });
  CHECK(b.obstacles().keepOuts.empty());
  b.edit(id, [](Part& p) {
    p.fitted = {};
    p.side = {};
  });
  REQUIRE(b.obstacles(Side::bottom).keepOuts.size() == 1); // for all anybody knows
  CHECK(b.obstacles(Side::bottom).keepOuts[0].guessed);
  CHECK(b.obstacles(Side::top).keepOuts[0].guessed);
  b.edit(id, [](Part& p) {
    p.side = fromUser(Side::top);
    p.body = guessed(p.body.value);
  });
  CHECK(b.obstacles().keepOuts[0].guessed);
  CHECK(b.obstacles().keepOuts[0].margin == Length(130'000)); // a guess, but a body
}

TEST_CASE("other parts are in the way by their height, where it is known") {
  Bench b;
  const PartId id = b.part("U1", PartKind::chip, box(10, 10, 14, 12));
  const auto with = [&](Fact<Length> height) {
    b.edit(id, [&](Part& p) { p.height = height; });
    return b.obstacles().keepOuts;
  };
  CHECK(with(fromUser(Length(1'199'999))).empty());
  REQUIRE(with(fromUser(Length(1'200'000))).size() == 1);
  CHECK_FALSE(with(fromUser(Length(1'200'000)))[0].guessed);
  CHECK(with(fromUser(Length(1'200'000)))[0].kind == ZoneKind::tallPart);
  CHECK(with(fromUser(Length(1'200'000)))[0].margin == Length(150'000));
  CHECK_FALSE(with(fromUser(Length(1'200'000)))[0].wallOnly);
  CHECK(with(guessed(Length(1'200'000)))[0].guessed);
  b.edit(id, [](Part& p) { p.kind = fromUser(PartKind::testPoint); });
  CHECK(with(fromUser(Length(5'000'000))).empty());
  b.edit(id, [](Part& p) { p.kind = {}; });
  CHECK(with(fromUser(Length(5'000'000))).size() == 1);
  // "Other" where nothing is known: no rule of that kind speaks for it.
  b.r.parts.push_back({PartKind::other, ZoneKind::connector, false, ""});
  CHECK(with(fromUser(Length(5'000'000)))[0].kind == ZoneKind::tallPart);
  CHECK(with(fromUser(Length(1))).empty());
}

TEST_CASE("of unknown height, what has two pins and is short passes for low, all else is guessed tall") {
  for (const auto& [w, h] : {std::pair{4.0, 1.0}, {1.0, 4.0}})
    for (const double more : {0.0, 1e-6})
      for (const int pins : {0, 2, 3}) {
        Bench b;
        const PartId id =
            b.part("C1", PartKind::capacitor,
                   w > h ? box(10, 10, 10 + w + more, 10 + h) : box(10, 10, 10 + w, 10 + h + more));
        b.edit(id, [](Part& p) { p.height = {}; });
        const NetId net = b.net("A");
        for (int i = 0; i < pins; ++i)
          b.pin(id, std::to_string(i), net, mm(10.5, 10.5));
        const auto k = b.obstacles().keepOuts;
        CHECK(k.empty() == (more == 0.0 && pins <= 2));
        if (!k.empty()) CHECK(k[0].guessed);
        if (!k.empty()) CHECK(k[0].margin == Length(150'000));
      }
}

TEST_CASE("a body that is not known is the hull of the part's pads, with a margin for the guess") {
  Bench b;
  const PartId id = b.part("U1", PartKind::connector, {});
  CHECK(b.obstacles().keepOuts.empty()); // nothing has a place
  const NetId net = b.net("A");
  b.pin(id, "1", net, mm(10, 10), PadReach::top, 1);
  const auto two = b.pin(id, "2", net, mm(14, 10), PadReach::top, 1);
  const auto three = b.pin(id, "3", net, mm(10, 15), PadReach::top, 1);
  b.edit(two.pad, [](Pad& p) { p.shape = {}; });      // a place and no shape
  b.edit(three.pad, [](Pad& p) { p.position = {}; }); // nowhere
  auto k = b.obstacles().keepOuts;
  REQUIRE(k.size() == 1);
  CHECK(k[0].core.outer == Ring{mm(9.5, 9.5), mm(10.5, 9.5), mm(14, 10), mm(10.5, 10.5), mm(9.5, 10.5)});
  CHECK(k[0].guessed);
  CHECK(k[0].margin == Length(110'000 + 70'000));
  // Two corners are no body.
  b.edit(id, [](Part& p) { p.body = fromUser(Ring{mm(1, 1), mm(2, 2)}); });
  CHECK(b.obstacles().keepOuts[0].core.outer.size() == 5);
  CHECK(b.obstacles().keepOuts[0].guessed);
  b.edit(id, [](Part& p) { p.body = fromUser(Ring{mm(1, 1), mm(2, 2), mm(1, 2)}); });
  CHECK(b.obstacles().keepOuts[0].core.outer.size() == 3);
  CHECK_FALSE(b.obstacles().keepOuts[0].guessed);
}

TEST_CASE("of a pin's pads one without a place hides no other from its part's body") {
  Bench b;
  const PartId id = b.part("U1", PartKind::connector, {});
  const auto one = b.pin(id, "1", b.net("A"), mm(10, 10), PadReach::top, 1);
  Pad again = *b.board.pads.find(one.pad);
  b.edit(one.pad, [](Pad& p) { p.position = {}; });
  again.position = fromUser(mm(20, 10));
  b.put(b.board.pads, again);
  const auto k = b.obstacles().keepOuts;
  REQUIRE(k.size() == 1);
  CHECK(k[0].core.outer == box(19.5, 9.5, 20.5, 10.5));
}

TEST_CASE("inside, on the edge and outside of a polygon are told exactly") {
  const Polygon frame{box(0, 0, 10, 10), {box(4, 4, 6, 6)}};
  KeepOut solid;
  solid.core = frame;
  KeepOut wall = solid;
  wall.wallOnly = true;
  const auto check = [&](Point p, bool covered, bool inside) {
    INFO(p.x.nm << " " << p.y.nm);
    CHECK(covers(frame, p) == covered);
    CHECK(strictlyInside(solid, p) == inside);
    CHECK_FALSE(strictlyInside(wall, p));
  };
  check(mm(2, 2), true, true);
  check(mm(2, 4), true, true);
  check(mm(2, 10), true, false);
  check(mm(0, 5), true, false);
  check(mm(10, 10), true, false);
  check(mm(10.000001, 10), false, false);
  check(mm(5, -0.000001), false, false);
  check(mm(5, 0.000001), true, true);
  check(mm(5, 5), false, false);
  check(mm(4, 5), true, false);
  check(mm(3.999999, 5), true, true);
  check(mm(4.000001, 5), false, false);
  check(mm(6, 6), true, false);
  check(mm(-2, 10), false, false); // level with an edge, and with corners
  check(mm(-2, 4), false, false);
  check(mm(12, 6), false, false);
  // Either way round, and level with the corner of a slanting one.
  for (const Ring& ring : {Ring{mm(0, 0), mm(4, -3), mm(4, 3)}, Ring{mm(4, 3), mm(4, -3), mm(0, 0)}}) {
    CHECK(covers({ring, {}}, mm(2, 0)));
    CHECK(covers({ring, {}}, mm(2, 1.5)));
    CHECK_FALSE(covers({ring, {}}, mm(2, 1.500001)));
    CHECK_FALSE(covers({ring, {}}, mm(-1, 0)));
    CHECK_FALSE(covers({ring, {}}, mm(5, 0)));
    CHECK_FALSE(covers({ring, {}}, mm(5, 3)));
  }
}

TEST_CASE("a segment's distance from a keep-out is that from its filled core, or from its walls alone") {
  KeepOut k;
  k.core = {box(0, 0, 10, 10), {box(4, 4, 6, 6)}};
  KeepOut wall = k;
  wall.wallOnly = true;
  const auto both = [&](Point a, Point b, std::int64_t solid, std::int64_t walls) {
    CHECK(distanceTo(k, a, b) == Length(solid));
    CHECK(distanceTo(k, b, a) == Length(solid));
    CHECK(distanceTo(wall, a, b) == Length(walls));
  };
  both(mm(13, 5), mm(15, 5), 3'000'000, 3'000'000);
  both(mm(13, 14), mm(13, 20), 5'000'000, 5'000'000); // 3:4:5 from a corner
  both(mm(1, 5), mm(2, 5), 0, 1'000'000);
  both(mm(4.5, 5), mm(5, 5.25), 500'000, 500'000); // in the hole
  both(mm(-1, 5), mm(12, 5), 0, 0);
  both(mm(-1, 10), mm(12, 10), 0, 0);
  both(mm(-1, 10.000001), mm(12, 10.000001), 1, 1);
  both(mm(3, 5), mm(5, 5), 0, 0);
  both(mm(10, 3), mm(12, 3), 0, 0);
  CHECK(distanceTo(KeepOut{}, mm(0, 0), mm(1, 1)) == Length(INT64_MAX));
  KeepOut dot;
  dot.core.outer = {mm(3, 4)};
  CHECK(distanceTo(dot, mm(0, 0), mm(0, 0)) == Length(5'000'000));
}

TEST_CASE("distances from a keep-out agree with those found by trial") {
  std::mt19937 random(20);
  INFO("seed 20");
  std::uniform_int_distribution<std::int64_t> place(-2'000'000, 2'000'000);
  const auto any = [&] { return Point{Length(place(random)), Length(place(random))}; };
  for (int i = 0; i < 100; ++i) {
    KeepOut k;
    k.wallOnly = true;
    k.core.outer = {any(), any(), any()};
    k.core.holes = {{any(), any(), any()}};
    const Point a = any(), b = any();
    double least = 1e18;
    for (const Ring& ring : {k.core.outer, k.core.holes[0]})
      for (std::size_t j = 0; j < ring.size(); ++j)
        least = std::min(least, apart(a, b, ring[j], ring[(j + 1) % ring.size()]));
    CHECK(static_cast<double>(distanceTo(k, a, b).nm) == Approx(least).margin(2));
  }
}

TEST_CASE("a hull has no corner inside, on its edges or twice, and turns left") {
  CHECK(hullOf({mm(2, 2), mm(0, 0), mm(4, 0), mm(2, 0), mm(4, 4), mm(0, 4), mm(0, 0), mm(4, 2)}) ==
        box(0, 0, 4, 4));
  CHECK(hullOf({mm(4, 4), mm(0, 4), mm(0, 0), mm(4, 0)}) == box(0, 0, 4, 4));
  CHECK(hullOf({mm(1, 1), mm(0, 0), mm(1, 1)}) == Ring{mm(0, 0), mm(1, 1)});
  CHECK(hullOf({mm(1, 1), mm(1, 1)}) == Ring{mm(1, 1)});
  CHECK(hullOf({}).empty());
  CHECK(hullOf({mm(0, 0), mm(1, 1), mm(2, 2), mm(3, 3)}) == Ring{mm(0, 0), mm(3, 3)});
  CHECK(hullOf({mm(0, 0), mm(3, 1), mm(1, 3)}) == Ring{mm(0, 0), mm(3, 1), mm(1, 3)});
}

TEST_CASE("drilled holes and the joints of other nets keep a wire off, each with its margin and name") {
  Bench b;
  const NetId net = b.net("A");
  const PartId j = b.part("J1", PartKind::other, box(1, 1, 2, 2), Side::top, 0.1);
  const auto joint = b.pin(j, "4", net, mm(20, 15), PadReach::allLayers, 1.6);
  b.edit(joint.pad, [](Pad& p) { p.drill = fromUser(Size{Length(800'000), Length(800'000)}); });
  auto k = b.holes();
  REQUIRE(k.size() == 1);
  CHECK(k[0].core.outer == box(19.2, 14.2, 20.8, 15.8));
  CHECK(k[0].margin == Length(330'000));
  CHECK(k[0].pad == joint.pad);
  CHECK(k[0].kind == ZoneKind::fastener);
  CHECK_FALSE(k[0].wallOnly);
  CHECK_FALSE(k[0].guessed);
  CHECK_FALSE(k[0].part);
  CHECK_FALSE(k[0].isBoardEdge());
  CHECK(k[0].name == KeepOutName{KeepOutName::What::joint, ZoneKind::tallPart, "J1.4", {}});
  CHECK(b.holes(Side::bottom).size() == 1);
  CHECK(b.holes(Side::top, {joint.pad}).empty());
  CHECK(b.holes(Side::top, {PadId{joint.pad.value + 1}}).size() == 1);
  // Copper on the other side only: a bare hole here, even in the line's own pad.
  b.edit(joint.pad, [](Pad& p) { p.reach = fromUser(PadReach::bottom); });
  k = b.holes(Side::top, {joint.pad});
  REQUIRE(k.size() == 1);
  CHECK(k[0].margin == Length(320'000));
  CHECK(k[0].name == KeepOutName{KeepOutName::What::hole, ZoneKind::tallPart, "J1", {}});
  for (const Point p : k[0].core.outer)
    CHECK(distance(p, mm(20, 15)).mm() == Approx(0.4).margin(0.0072)); // on a grid of 10 µm
  b.edit(joint.pad, [](Pad& p) { p.drill = {}; });
  CHECK(b.holes().empty());
}

TEST_CASE("a hole of no part, or of a part without reference, is named by its place") {
  Bench b;
  const auto hole = b.pin({}, "H", b.net("A"), mm(20, 15), PadReach::bottom, 1.6);
  b.edit(hole.pad, [](Pad& p) { p.drill = fromUser(Size{Length(800'000), Length(800'000)}); });
  CHECK(b.holes()[0].name == KeepOutName{KeepOutName::What::hole, ZoneKind::tallPart, "", mm(20, 15)});
  const auto other =
      b.pin(b.part("", PartKind::other, {}), "1", b.net("B"), mm(25, 15), PadReach::bottom, 1.6);
  b.edit(other.pad, [](Pad& p) { p.drill = fromUser(Size{Length(800'000), Length(800'000)}); });
  CHECK(b.holes()[1].name == KeepOutName{KeepOutName::What::hole, ZoneKind::tallPart, "", mm(25, 15)});
}

TEST_CASE("a pad without plating whose hole takes all its copper is a hole on both sides") {
  Bench b;
  const auto pad = b.pin({}, "H", b.net("A"), mm(20, 15), PadReach::allLayers, 1);
  const auto what = [&](double w, double h, Fact<bool> plated, PadShape shape = PadShape::circle) {
    b.edit(pad.pad, [&](Pad& p) {
      p.drill = fromUser(Size{Length::fromMm(w), Length::fromMm(h)});
      p.plated = plated;
      p.shape = fromUser(shape);
      p.polygon = box(-0.5, -0.5, 0.5, 0.5);
    });
    const auto k = b.holes();
    REQUIRE(k.size() == 1);
    CHECK((k[0].margin == b.r.holeMargin) == (k[0].name.what == KeepOutName::What::hole));
    return k[0].name.what;
  };
  using What = KeepOutName::What;
  CHECK(what(1, 1, fromUser(false)) == What::hole);
  CHECK(what(1.2, 1.2, fromUser(false)) == What::hole);
  CHECK(what(0.999999, 1, fromUser(false)) == What::joint);
  CHECK(what(1, 0.999999, fromUser(false)) == What::joint);
  CHECK(what(1, 1, fromUser(true)) == What::joint);
  CHECK(what(1, 1, {}) == What::joint);
  CHECK(what(1, 1, fromUser(false), PadShape::polygon) == What::joint);
}

TEST_CASE("a slot lies along its pad's axes, a round hole is round, and a tiny one is none") {
  Bench b;
  const auto pad = b.pin({}, "H", b.net("A"), mm(20, 15), PadReach::bottom, 1);
  const auto boxOf = [&](double w, double h, double rotation) {
    b.edit(pad.pad, [&](Pad& p) {
      p.drill = fromUser(Size{Length::fromMm(w), Length::fromMm(h)});
      p.rotation = Degrees(rotation);
    });
    Box box;
    for (const KeepOut& k : b.holes())
      for (const Point p : k.core.outer)
        box.include(p);
    return box;
  };
  const auto is = [](const Box& box, double x0, double y0, double x1, double y1) {
    CHECK(box.min == mm(x0, y0));
    CHECK(box.max == mm(x1, y1));
  };
  is(boxOf(1, 1, 0), 19.5, 14.5, 20.5, 15.5);
  is(boxOf(3, 1, 0), 18.5, 14.5, 21.5, 15.5);
  is(boxOf(1, 3, 0), 19.5, 13.5, 20.5, 16.5);
  is(boxOf(3, 1, 90), 19.5, 13.5, 20.5, 16.5);
  CHECK(boxOf(0, 3, 0).empty());
  CHECK(boxOf(0.002, 0.002, 0).empty()); // smaller than the grid its corners lie on
  is(boxOf(0.04, 0.04, 0), 19.98, 14.98, 20.02, 15.02);
}

TEST_CASE("corners of holes and joints lie on the nearest places of a grid, on either side of nought") {
  for (const double sign : {1.0, -1.0}) {
    Bench b;
    const auto pad = b.pin({}, "H", b.net("A"), mm(sign * 20.004, sign * 15.006), PadReach::allLayers, 2);
    b.edit(pad.pad, [](Pad& p) { p.drill = fromUser(Size{Length(800'000), Length(800'000)}); });
    Box box;
    const auto k = b.holes();
    for (const Point p : k.at(0).core.outer)
      box.include(p);
    const Point middle = mm(sign * 20, sign * 15.01);
    CHECK(box.min == middle - mm(1, 1));
    CHECK(box.max == middle + mm(1, 1));
  }
}

TEST_CASE("which side a pad has copper on is told by its reach, or by the side of its part") {
  Pad pad;
  Part part;
  const auto on = [&](const Part* of) {
    return std::pair{reachesSide(pad, of, Side::top), reachesSide(pad, of, Side::bottom)};
  };
  using Both = std::pair<bool, bool>;
  CHECK(on(nullptr) == Both{true, true});
  CHECK(on(&part) == Both{true, true});
  part.side = fromUser(Side::bottom);
  CHECK(on(&part) == Both{false, true});
  part.side = fromUser(Side::top);
  CHECK(on(&part) == Both{true, false});
  pad.reach = fromUser(PadReach::bottom);
  CHECK(on(&part) == Both{false, true});
  pad.reach = fromUser(PadReach::top);
  CHECK(on(nullptr) == Both{true, false});
  for (const PadReach reach : {PadReach::topAndBottom, PadReach::allLayers}) {
    pad.reach = fromUser(reach);
    CHECK(on(&part) == Both{true, true});
  }
}
