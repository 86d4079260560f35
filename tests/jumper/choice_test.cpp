#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/jumper/proposal.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const JumperData& data() {
  static const JumperData loaded = [] {
    auto d = loadJumperData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data");
    REQUIRE(d);
    return *d;
  }();
  return loaded;
}

/// Test pads on both sides of a break whose broken stretch is no landing itself.
struct Gap : BenchBoard {
  NetId line = net("LINE");
  std::vector<NodeIndex> pads;
  std::vector<PinPad> pins;
  JumperRequest request;

  std::size_t pad(const std::string& name, Point at, PadReach reach = PadReach::top, double size = 0.6) {
    pins.push_back(pin({}, name, line, at, reach, size));
    pads.push_back(joint(pins.back()).first);
    return pads.size() - 1;
  }
  /// Joined by what is no landing.
  void join(std::size_t a, std::size_t b) { edge(pads[a], pads[b], EdgeKind::contact, PadId{}, -1); }
  void breakBetween(std::size_t a, std::size_t b) {
    request.cut.push_back(edge(pads[a], pads[b], EdgeKind::track, TrackId{9999}, -1));
  }
  void hide(std::size_t i) {
    Pad pad = *board.pads.find(pins[i].pad);
    pad.access = fromUser(Access::underLid);
    board.pads.put(pad);
  }
  [[nodiscard]] JumperProposals propose(const JumperData& with = data()) {
    request.graph = &graph;
    request.net = line;
    const Lookup lookup(board);
    const auto found = proposeJumpers(lookup, request, with);
    INFO((found ? std::string() : found.error().text()));
    REQUIRE(found);
    return *found;
  }
};

/// TP1 and TP2 with nothing between them.
struct Two : Gap {
  explicit Two(Point a = mm(5, 15), Point b = mm(35, 15), PadReach first = PadReach::top,
               PadReach second = PadReach::top, double size = 0.6) {
    pad("TP1", a, first, size);
    pad("TP2", b, second, size);
    breakBetween(0, 1);
  }
};

} // namespace

TEST_CASE("why there are fewer proposals than wanted, case by case") {
  Two both, one;
  both.hide(0);
  both.hide(1);
  const auto none = both.propose();
  CHECK(none.proposals.empty());
  CHECK(none.whyFewer == WhyFewer::noLanding);
  REQUIRE(none.excluded.size() == 2);
  CHECK(none.excluded[0].why == ExcludedLanding::Why::underLid);
  for (const std::size_t hidden : {0u, 1u}) {
    Two two;
    two.hide(hidden);
    CHECK(two.propose().whyFewer == WhyFewer::oneSideWithout);
    CHECK(two.propose().excluded.size() == 1);
  }
  CHECK(Two(mm(5, 15), mm(35, 15), PadReach::top, PadReach::bottom).propose().whyFewer ==
        WhyFewer::notOnOneSide);
  CHECK(one.propose().whyFewer == WhyFewer::nothingDiffersEnough);
  CHECK(one.propose().proposals.size() == 1);
  one.request.most = 1;
  CHECK(one.propose().whyFewer == WhyFewer::asManyAsWanted);
  Two closed;
  closed.zone(ZoneKind::battery, "B2", box(20, -1, 21, 20), 0.2);
  closed.zone(ZoneKind::battery, "B1", box(20, 15, 21, 31), 0.2);
  closed.zone(ZoneKind::battery, "B0", box(1, 1, 2, 2), 0.2);
  const auto shut = closed.propose();
  CHECK(shut.whyFewer == WhyFewer::closed);
  REQUIRE_FALSE(shut.closedBy.empty());
  for (const KeepOutName& name : shut.closedBy)
    CHECK((name.label == "B1" || name.label == "B2"));
  CHECK(one.propose().closedBy.empty());
}

TEST_CASE("landings whose copper touches want no wire") {
  CHECK(Two(mm(5, 15), mm(9, 15), PadReach::top, PadReach::top, 4).propose().proposals.empty());
  const auto apart = Two(mm(5, 15), mm(9.000001, 15), PadReach::top, PadReach::top, 4).propose();
  REQUIRE(apart.proposals.size() == 1);
  CHECK(apart.proposals[0].way == std::vector<Point>{mm(5, 15), mm(9.000001, 15)});
  // Of unknown width they touch where they are one place.
  Two dots(mm(5, 15), mm(5.000001, 15));
  for (const auto& p : dots.pins) {
    Pad pad = *dots.board.pads.find(p.pad);
    pad.size = {};
    dots.board.pads.put(pad);
  }
  CHECK(dots.propose().proposals.size() == 1);
}

TEST_CASE("the same pads on the other side of the board are another choice") {
  const auto found = Two(mm(5, 15), mm(35, 15), PadReach::topAndBottom, PadReach::topAndBottom).propose();
  REQUIRE(found.proposals.size() == 2);
  CHECK(found.proposals[0].side == Side::top);
  CHECK(found.proposals[0].difference.best);
  CHECK_FALSE(found.proposals[0].difference.side);
  CHECK(found.proposals[1].side == Side::bottom);
  CHECK_FALSE(found.proposals[1].difference.best);
  CHECK(found.proposals[1].difference.side == Side::bottom);
  CHECK_FALSE(found.proposals[1].difference.from);
  CHECK_FALSE(found.proposals[1].difference.to);
  CHECK_FALSE(found.proposals[1].difference.wayRound);
}

TEST_CASE("another landing on either side is another choice, and says on which") {
  for (const bool first : {true, false}) {
    Gap g;
    g.pad("A1", first ? mm(5, 15) : mm(35, 15));
    g.pad("B1", first ? mm(35, 15) : mm(5, 15));
    g.pad(first ? "A2" : "B2", first ? mm(5, 20) : mm(5, 20));
    g.join(first ? 0 : 1, 2);
    g.breakBetween(0, 1);
    const auto found = g.propose();
    REQUIRE(found.proposals.size() == 2);
    CHECK(found.proposals[0].from.point == "A1");
    CHECK(found.proposals[0].to.point == "B1");
    CHECK(found.proposals[1].difference.from == first);
    CHECK(found.proposals[1].difference.to != first);
    CHECK_FALSE(found.proposals[1].difference.wayRound);
    CHECK_FALSE(found.proposals[1].difference.side);
    CHECK(found.proposals[1].from.point == (first ? "A2" : "A1"));
    CHECK(found.proposals[1].to.point == (first ? "B1" : "B2"));
    CHECK(found.proposals[0].total < found.proposals[1].total);
  }
}

TEST_CASE("places on tracks less than two millimetres from each other are one choice") {
  // TP1 is under a lid; two tracks lead from it, scraped at their ends nearest to the break: `apart` apart.
  for (const auto& [apart, choices] : {std::pair{2.0, 2u}, {1.999999, 1u}}) {
    Gap g;
    const std::size_t a = g.pad("TP1", mm(3, 20)), b = g.pad("TP2", mm(35, 15));
    g.hide(a);
    const auto corner = boost::add_vertex({NodeKind::joint, TrackId{}, mm(6, 20), 0}, g.graph);
    const auto end = boost::add_vertex({NodeKind::joint, TrackId{}, mm(6, 20 - apart), 0}, g.graph);
    g.track(g.pads[a], corner, g.line, g.top);
    g.track(corner, end, g.line, g.top);
    g.request.cut = {g.edge(end, g.pads[b], EdgeKind::track, TrackId{9999}, -1)};
    const auto found = g.propose();
    REQUIRE(found.proposals.size() == choices);
    CHECK(found.proposals[0].from.at == mm(6, 20 - apart));
    if (choices == 2) CHECK(found.proposals[1].from.at == mm(6, 20));
  }
}

TEST_CASE("a way that turns out to need thicker wire is looked for again with it") {
  // Straight past a battery there is room for the thin wire, which would drop too much over 30 mm.
  JumperData few = data();
  few.wires.wires = {{"thin", Length(90'000), Length(100'000), "", "", ""},
                     {"thick", Length(500'000), Length(2'000'000), "", "", ""}};
  few.wires.fusingShare = 1;
  few.wires.mostRise = Kelvins(200);
  Two two(mm(5, 15), mm(35, 15), PadReach::top, PadReach::top, 2);
  two.zone(ZoneKind::battery, "B", box(15, 15.5, 25, 20), 0.2);
  two.request.current = fromUser(Amperes(1));
  const auto drops = [&](double mm) {
    few.wires.roles[0].mostDrop = Volts(wireResistance(Length(90'000), Length::fromMm(mm)).value);
    return two.propose(few).proposals;
  };
  const auto thin = drops(30.001);
  REQUIRE_FALSE(thin.empty());
  CHECK(thin[0].wire.wire.name == "thin");
  CHECK(thin[0].way.size() == 2);
  CHECK(thin[0].leastClearance.value == Length(500'000 - 50'000));
  const auto thick = drops(29.999);
  REQUIRE_FALSE(thick.empty());
  KeepOut battery;
  battery.core.outer = box(15, 15.5, 25, 20);
  for (const JumperProposal& p : thick) {
    CHECK(p.wire.wire.name == "thick");
    CHECK(p.way.size() > 2);
    for (std::size_t i = 1; i < p.way.size(); ++i)
      CHECK(distanceTo(battery, p.way[i - 1], p.way[i]) >= Length(1'200'000));
  }
}

TEST_CASE("no more proposals than wanted, the best of them, whatever was looked at") {
  Gap g;
  const std::size_t far = g.pad("B1", mm(35, 15));
  for (int i = 0; i < 6; ++i) {
    g.pad("A" + std::to_string(i), mm(5, 3 + 4 * i));
    if (i > 0) g.join(g.pads.size() - 2, g.pads.size() - 1);
  }
  g.breakBetween(1, far);
  std::vector<double> lengths;
  for (int i = 0; i < 6; ++i)
    lengths.push_back(std::hypot(30, 15 - (3 + 4 * i)));
  std::sort(lengths.begin(), lengths.end());
  for (const std::size_t most : {1u, 2u, 4u, 6u, 9u}) {
    g.request.most = most;
    const auto found = g.propose();
    REQUIRE(found.proposals.size() == std::min<std::size_t>(most, 6));
    for (std::size_t i = 0; i < found.proposals.size(); ++i)
      CHECK(found.proposals[i].length.mm() == Approx(lengths[i]).margin(1e-6));
    CHECK(found.whyFewer == (most <= 6 ? WhyFewer::asManyAsWanted : WhyFewer::nothingDiffersEnough));
  }
}

TEST_CASE("the other way round something is a choice while it is no more than twice as long") {
  for (const auto& [top, choices] : {std::pair{21.5, 2u}, {26.0, 1u}}) {
    Two two(mm(15, 15), mm(25, 15));
    two.board.info.outline = fromUser(std::vector<Polygon>{{box(0, 0, 40, 60), {}}});
    two.zone(ZoneKind::battery, "B", box(19, 14, 21, top), 0.5);
    const auto found = two.propose();
    REQUIRE(found.proposals.size() == choices);
    CHECK(found.proposals[0].way[1].y < mm(0, 14).y);
    if (choices == 1) continue;
    CHECK(found.proposals[1].way[1].y > mm(0, top).y);
    CHECK(found.proposals[1].difference.wayRound);
    CHECK_FALSE(found.proposals[1].difference.from);
    CHECK_FALSE(found.proposals[1].difference.to);
    CHECK(found.proposals[1].length < found.proposals[0].length * 2);
    two.request.most = 1;
    CHECK(two.propose().proposals.size() == 1);
  }
}

TEST_CASE("a break of joints alone says so, one that has copper in it does not") {
  Gap g;
  const auto pin = g.pin({}, "TP1", g.line, mm(5, 15));
  const auto [pad, solder] = g.joint(pin);
  g.pad("TP2", mm(35, 15));
  const std::size_t track = g.edge(pad, g.pads[0], EdgeKind::track, TrackId{9999}, -1);
  g.request.cut = {solder};
  CHECK(g.propose().onlyJoints);
  g.request.cut = {track};
  CHECK_FALSE(g.propose().onlyJoints);
  g.request.cut = {solder, track};
  CHECK_FALSE(g.propose().onlyJoints);
}

TEST_CASE("an outline that is not known is said with the answer and with each proposal") {
  Two two;
  CHECK_FALSE(two.propose().outlineGuessed);
  two.board.info.outline = {};
  const auto found = two.propose();
  CHECK(found.outlineGuessed);
  REQUIRE(found.proposals.size() == 1);
  REQUIRE(found.proposals[0].notes.size() == 1);
  CHECK(found.proposals[0].notes[0].kind == ProposalNote::Kind::outlineGuessed);
}

TEST_CASE("what cannot be landed on is told once, for each side that it was looked at from") {
  Two two;
  const PartId c = two.part("C1", PartKind::capacitor, {}, Side::top, 0.1);
  const auto near = two.pin(c, "1", two.line, mm(8, 15));
  two.pin(c, "2", two.net("DATA"), mm(9, 15));
  two.pads.push_back(two.joint(near).first);
  two.join(0, 2);
  const auto found = two.propose();
  std::vector<int> layers;
  for (const ExcludedLanding& e : found.excluded) {
    CHECK(e.point == "C1.1");
    layers.push_back(e.layer);
  }
  CHECK(layers == std::vector<int>{0, 1});
}

TEST_CASE("holes are run over only where no way keeps clear of them") {
  for (const bool closed : {false, true}) {
    Two two;
    for (double y = 1; y < 30; y += closed ? 2 : 4) {
      const auto hole = two.pin({}, "H", two.net("N" + std::to_string(y)), mm(20, y), PadReach::bottom, 1);
      Pad pad = *two.board.pads.find(hole.pad);
      pad.shape = fromUser(PadShape::circle);
      pad.drill = fromUser(Size{Length(1'600'000), Length(1'600'000)});
      two.board.pads.put(pad);
    }
    const auto found = two.propose();
    REQUIRE_FALSE(found.proposals.empty());
    for (const JumperProposal& p : found.proposals)
      CHECK(std::any_of(p.notes.begin(), p.notes.end(), [](const ProposalNote& n) {
              return n.kind == ProposalNote::Kind::overHoles;
            }) == closed);
  }
}

TEST_CASE("without a line, or with breaks that part nothing, the question is refused in words") {
  Two two;
  const Lookup own(two.board);
  const auto refused = [&](const CopperGraph* graph, std::vector<std::size_t> cut) {
    JumperRequest request;
    request.graph = graph;
    request.cut = std::move(cut);
    const auto found = proposeJumpers(own, request, data());
    REQUIRE_FALSE(found);
    return wordsOf(found.error().message);
  };
  CHECK(refused(nullptr, {0}).find("no line") != std::string::npos);
  CHECK(refused(&two.graph, {}).find("no edge is named") != std::string::npos);
  const auto unknown = breakEnds(two.graph, {0, 3, 7});
  REQUIRE_FALSE(unknown);
  CHECK(wordsOf(unknown.error().found) == "edge 3");
  CHECK(wordsOf(unknown.error().expected) == "0 to 2");
}

TEST_CASE("the two sides of a break, its middle, and what it must not be") {
  Gap g;
  for (const Point p : {mm(2, 4), mm(12, 24), mm(30, 5)})
    g.pad("TP", p);
  g.breakBetween(0, 1);
  auto ends = breakEnds(g.graph, g.request.cut);
  // The third pad's terminal is of neither side.
  REQUIRE(ends);
  CHECK(ends->at == mm(7, 14));
  CHECK(ends->fragments.ofNode[g.pads[0]] == ends->a);
  CHECK(ends->fragments.ofNode[g.pads[1]] == ends->b);
  CHECK(ends->onBrokenCopper(g.pads[0]));
  CHECK(ends->onBrokenCopper(g.pads[1]));
  CHECK_FALSE(ends->onBrokenCopper(g.pads[2]));
  // Three pieces with terminals, or one: not one break.
  g.breakBetween(1, 2);
  const auto three = breakEnds(g.graph, g.request.cut);
  REQUIRE_FALSE(three);
  CHECK(wordsOf(three.error().found) == "3 pieces with terminals");
  const auto stub = boost::add_vertex({NodeKind::joint, TrackId{}, mm(1, 1), 0}, g.graph);
  const auto bare = breakEnds(g.graph, {g.edge(g.pads[0], stub, EdgeKind::track, TrackId{1}, 0)});
  REQUIRE_FALSE(bare);
  CHECK(wordsOf(bare.error().found) == "1 pieces with terminals");
  // Beside a second way round, a break parts nothing.
  Gap ring;
  for (const Point p : {mm(2, 4), mm(12, 24)})
    ring.pad("TP", p);
  ring.breakBetween(0, 1);
  ring.join(0, 1);
  CHECK_FALSE(breakEnds(ring.graph, ring.request.cut));
}
