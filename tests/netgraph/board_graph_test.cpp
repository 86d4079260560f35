#include <algorithm>

#include <catch2/catch.hpp>

#include "copper_board.h"
#include "netmend/netgraph/resistance.h"

using namespace netmend;
using namespace netmend::test;

namespace {

Ring square(double x, double y, double halfMm) {
  return {at(x - halfMm, y - halfMm), at(x + halfMm, y - halfMm), at(x + halfMm, y + halfMm),
          at(x - halfMm, y + halfMm)};
}

double nm(Length l) {
  return static_cast<double>(l.nm);
}

} // namespace

TEST_CASE("tracks whose edges are 1 µm apart are open, and joined when they overlap by 1 µm") {
  const double apart = GENERATE(0.001, -0.001);
  CopperBoard b;
  const auto along = b.track(at(0, 0), at(10, 0));
  const auto beside = b.track(at(2, 0.2 + apart), at(8, 0.2 + apart));
  const auto ahead = b.track(at(10.2 + apart, 0), at(15, 0));
  const auto oblique = b.track(at(-0.12 - apart * 0.6, -0.16 - apart * 0.8), at(-3, -4));
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, along, beside) == (apart < 0));
  CHECK(joined(graph, along, ahead) == (apart < 0));
  CHECK(joined(graph, along, oblique) == (apart < 0));
}

TEST_CASE("an arc touches where its curve is, not where its chord is") {
  CopperBoard b;
  const auto arc = b.arc(at(-1, 0), at(0, 1), at(1, 0));
  const auto onChord = b.track(at(0, 0), at(0, 0.799), {}, 0);
  const auto onCurve = b.track(at(3, 0.801 + 1.0 / 3), at(0.30, 1.15), {}, 0);
  const auto graph = buildBoardGraph(b.board);
  CHECK_FALSE(joined(graph, arc, onChord));
  CHECK(joined(graph, arc, onCurve));
  // Below by 1 µm more than both radii: the inner edge of the arc lies at 0.9.
  CopperBoard c;
  const auto inner = c.arc(at(-1, 0), at(0, 1), at(1, 0));
  const auto gap = c.track(at(0, 0), at(0, 0.799));
  const auto other = c.track(at(0.5, -3), at(0.801 * 0.6, 0.801 * 0.8));
  const auto second = buildBoardGraph(c.board);
  CHECK_FALSE(joined(second, inner, gap));
  CHECK(joined(second, inner, other));
}

TEST_CASE("a T joint splits the track that it meets, and each piece has its own length and resistance") {
  CopperBoard b;
  const auto through = b.track(at(0, 0), at(10, 0));
  b.track(at(3, 0), at(3, 5));
  const auto graph = buildBoardGraph(b.board);
  REQUIRE(graph.islands.size() == 1);
  std::vector<double> lengths;
  for (const CopperEdge& e : edgesOf(graph.islands[0].graph, EdgeKind::track)) {
    if (e.object != CopperObject(through)) continue;
    lengths.push_back(e.length.value.mm());
    CHECK(e.layer == 0);
    CHECK(e.width.value == Length::fromMm(0.2));
    // R = ρ·L/(w·t), ρ = 1/58 Ω·mm²/m (IEC 60028:1925).
    CHECK(e.resistance.value.value ==
          Approx(e.length.value.mm() * 1e-3 / 58.0 / (0.2 * 0.035)).epsilon(1e-9));
  }
  std::sort(lengths.begin(), lengths.end());
  REQUIRE(lengths.size() == 2);
  CHECK(lengths[0] == Approx(3.0));
  CHECK(lengths[1] == Approx(7.0));
  CHECK(bridges(graph.islands[0].graph).size() == 3);
}

TEST_CASE("tracks that cross are joined on the same layer only") {
  CopperBoard b;
  const auto a = b.track(at(-5, 0), at(5, 0));
  const auto same = b.track(at(0, -5), at(0, 5));
  const auto below = b.track(at(2, -5), at(2, 5), {}, 1);
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, a, same));
  CHECK_FALSE(joined(graph, a, below));
  CHECK(edgesOf(graph.islands[islandOf(graph, a)].graph, EdgeKind::track).size() == 4);
}

TEST_CASE("a break in one of two overlapping tracks does not split them, a break beside the overlap does") {
  CopperBoard b;
  b.track(at(0, 0), at(6, 0));
  b.track(at(4, 0), at(10, 0));
  const auto graph = buildBoardGraph(b.board);
  REQUIRE(graph.islands.size() == 1);
  const auto& copper = graph.islands[0].graph;
  const auto split = bridges(copper);
  double bridgeLength = 0.0;
  for (const CopperEdge& e : edgesOf(copper, EdgeKind::track))
    if (std::find(split.begin(), split.end(), e.index) != split.end()) bridgeLength += nm(e.length.value);
  CHECK(bridgeLength == Approx(8e6)); // 0 to 4 and 6 to 10; from 4 to 6 there are two
}

TEST_CASE("a pad joins tracks that end in it and one that only passes over its rim") {
  CopperBoard b;
  const auto pin = b.pin("A");
  const auto pad = b.pad(pin, at(0, 0), 2.0);
  const auto ends = b.track(at(0.5, 0), at(5, 0.2));
  const auto passes = b.track(at(-5, 1.05), at(5, 1.05));
  const auto misses = b.track(at(-5, -1.2), at(5, -1.2));
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, pad, ends));
  CHECK(joined(graph, pad, passes));
  CHECK(joined(graph, pad, pin));
  CHECK_FALSE(joined(graph, pad, misses));
  const auto& copper = graph.islands[islandOf(graph, pad)].graph;
  CHECK(edgesOf(copper, EdgeKind::solderJoint).size() == 1);
  // The track that passes is split at the pad.
  CHECK(edgesOf(copper, EdgeKind::track).size() == 3);
}

TEST_CASE("a via joins the layers that it spans and no others, one barrel edge between rings in use") {
  CopperBoard b(4);
  const auto top = b.track(at(0, 0), at(5, 0), {}, 0);
  const auto second = b.track(at(0, 0), at(0, 5), {}, 1);
  const auto third = b.track(at(0, 0), at(-5, 0), {}, 2);
  const auto bottom = b.track(at(0, 0), at(0, -5), {}, 3);
  const auto [from, to, barrels] = GENERATE(table<int, int, std::size_t>({{0, 1, 1}, {1, 2, 1}, {0, 3, 3}}));
  b.via(at(0, 0), static_cast<std::size_t>(from), static_cast<std::size_t>(to));
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, top, second) == (from == 0));
  CHECK(joined(graph, second, third) == (from <= 1 && to >= 2));
  CHECK(joined(graph, third, bottom) == (to == 3));
  CHECK(edgesOf(graph.islands[islandOf(graph, second)].graph, EdgeKind::via).size() == barrels);
}

TEST_CASE("a through via that only the outer layers touch has one barrel from top to bottom") {
  CopperBoard b(4);
  for (Layer layer : b.board.layers) {
    layer.dielectricBelow = fromFile(Length::fromMm(0.5));
    b.board.layers.put(layer);
  }
  b.track(at(0, 0), at(5, 0), {}, 0);
  b.track(at(0, 0), at(0, -5), {}, 3);
  b.via(at(0, 0), 0, 3);
  const auto graph = buildBoardGraph(b.board);
  REQUIRE(graph.islands.size() == 1);
  const auto barrels = edgesOf(graph.islands[0].graph, EdgeKind::via);
  REQUIRE(barrels.size() == 1);
  CHECK(barrels[0].length.value == Length::fromMm(3 * 0.5 + 3 * 0.035));
  const auto closed = viaResistance(Length::fromMm(0.3), Length(20'000), barrels[0].length.value);
  CHECK(barrels[0].resistance.value.value == Approx(closed.value));
}

TEST_CASE("a plated hole joins every layer, an unplated one only what its pin reaches by pads") {
  const bool plated = GENERATE(true, false);
  CopperBoard b(3);
  const auto pin = b.pin();
  b.hole(pin, at(0, 0), 1.5, 1.0, plated, PadReach::topAndBottom);
  const auto top = b.track(at(0, 0.6), at(5, 5), {}, 0);
  const auto inner = b.track(at(0, 0.4), at(5, 5), {}, 1);
  const auto outsideBarrel = b.track(at(0.7, 0), at(5, -5), {}, 1);
  const auto bottom = b.track(at(0, 0.6), at(-5, 5), {}, 2);
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, top, inner) == plated);
  CHECK(joined(graph, top, bottom)); // an unplated hole's two rings by the leg that is soldered to both
  CHECK_FALSE(joined(graph, top, outsideBarrel));
  const auto joints = edgesOf(graph.islands[islandOf(graph, top)].graph, EdgeKind::solderJoint);
  CHECK(joints.size() == (plated ? 1 : 2));
}

TEST_CASE("a bare hole has no copper that could join anything") {
  CopperBoard b;
  const auto pin = b.pin();
  b.hole(pin, at(0, 0), 3.0, 3.0, false);
  const auto track = b.track(at(0, 0), at(5, 0));
  const auto graph = buildBoardGraph(b.board);
  CHECK_FALSE(joined(graph, pin, track));
}

TEST_CASE("what stands in a hole of an area is not joined to it, however the hole is written down") {
  const bool keyhole = GENERATE(false, true);
  CopperBoard b;
  Polygon polygon{square(0, 0, 10), {square(0, 0, 2)}};
  if (keyhole) {
    polygon = {{at(-10, -10), at(10, -10), at(10, 10), at(-10, 10), at(-10, -2), at(-2, -2), at(-2, 2),
                at(2, 2), at(2, -2), at(-2, -2), at(-10, -2)},
               {}};
  }
  const auto area = b.area(polygon);
  const auto inHole = b.pad(b.pin(), at(0, 0), 3.998);
  const auto atRim = b.pad(b.pin(), at(0, 1.1), 1.802);
  const auto inCopper = b.pad(b.pin(), at(5, 5), 0.1);
  const auto seam = b.pad(b.pin(), at(-6, -2), 0.1);
  const auto outside = b.track(at(10.101, -20), at(10.101, 20));
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, area, inCopper));
  CHECK(joined(graph, area, seam));
  CHECK(joined(graph, area, atRim));
  CHECK_FALSE(joined(graph, area, outside));
  CHECK_FALSE(joined(graph, outside, inHole));
}

TEST_CASE("a pad alone in the hole of an area is an island") {
  CopperBoard b;
  const auto area = b.area({square(0, 0, 10), {square(0, 0, 2)}});
  const auto inHole = b.pad(b.pin(), at(0, 0), 3.998);
  const auto track = b.track(at(-1.898, -1), at(1.898, 1));
  const auto graph = buildBoardGraph(b.board);
  CHECK_FALSE(joined(graph, area, inHole));
  CHECK(joined(graph, track, inHole));
}

TEST_CASE(
    "areas are joined when they overlap or one lies in the other, not when one lies in the other's hole") {
  CopperBoard b;
  const auto ring = b.area({square(0, 0, 10), {square(0, 0, 5)}});
  const auto overlaps = b.area({square(12, 0, 3), {}});
  const auto within = b.area({square(-7, -7, 1), {}});
  const auto inHole = b.area({square(0, 0, 4.999), {}});
  const auto otherLayer = b.area({square(0, 0, 20), {}}, {}, 1);
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, ring, overlaps));
  CHECK(joined(graph, ring, within));
  CHECK_FALSE(joined(graph, ring, inHole));
  CHECK_FALSE(joined(graph, ring, otherLayer));
}

TEST_CASE("two pads of one pin hang together by its leg, two pins of one part do not") {
  CopperBoard b;
  const auto pin = b.pin();
  const auto left = b.pad(pin, at(0, 0));
  const auto right = b.pad(pin, at(5, 0));
  const auto other = b.pad(b.pin(), at(10, 0));
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, left, right));
  CHECK_FALSE(joined(graph, left, other));
}

TEST_CASE("a board of pins and nets without coordinates hangs together by hubs") {
  CopperBoard b;
  b.pin("A");
  b.pin("A");
  b.pin("A");
  b.pin("B");
  const auto graph = buildBoardGraph(b.board);
  CHECK(graph.islands.size() == 4);
  REQUIRE(graph.nets.size() == 2);
  CHECK(graph.nets[0].islandCount == 3);
  CHECK(graph.nets[1].islandCount == 1);
  const auto& net = graph.nets[0].graph;
  CHECK(edgesOf(net, EdgeKind::unknownWay).size() == 3);
  CHECK(edgesOf(net, EdgeKind::solderJoint).size() == 3); // each can still break at its joint
  CHECK(fragments(net, {}).count == 1);
  CHECK(compareWithNames(b.board, graph).empty());
}

TEST_CASE("the least board, a connector's pins without nets, has one island for each pin") {
  CopperBoard b;
  for (int i = 0; i < 5; ++i)
    b.pin();
  const auto graph = buildBoardGraph(b.board);
  CHECK(graph.islands.size() == 5);
  CHECK(graph.nets.empty());
}

TEST_CASE("a way nobody has seen joins what its ends lie on, and is told apart from a track") {
  CopperBoard b;
  const auto from = b.pad(b.pin("A"), at(0, 0));
  const auto to = b.pad(b.pin("A"), at(20, 0), 1.0, PadReach::bottom);
  const auto between = b.pad(b.pin("B"), at(10, 0));
  b.unknownWay(at(0, 0), at(15, 3));
  b.unknownWay(at(15, 3), at(20, 0)); // two parts of the way, meeting in nothing
  const auto graph = buildBoardGraph(b.board);
  CHECK(joined(graph, from, to));
  CHECK_FALSE(joined(graph, from, between));
  const auto ways = edgesOf(graph.islands[islandOf(graph, from)].graph, EdgeKind::unknownWay);
  REQUIRE(ways.size() == 2);
  CHECK_FALSE(ways[0].length.known());
  CHECK_FALSE(ways[0].resistance.known());
  CHECK(compareWithNames(b.board, graph).empty());
}

TEST_CASE(
    "a short is reported where foreign copper touches, with both objects, also through unnamed copper") {
  CopperBoard b;
  const auto a = b.track(at(0, 0), at(10, 0), "A");
  const auto c = b.track(at(4, -5), at(4, 5), "B");
  const auto unnamed = b.track(at(8, 0), at(8, 5));
  const auto d = b.track(at(6, 5), at(12, 5), "C");
  const auto graph = buildBoardGraph(b.board);
  const auto found = compareWithNames(b.board, graph);
  REQUIRE(found.size() == 2);
  CHECK(found[0].kind == Disagreement::Kind::shorted);
  CHECK(found[0].nets == std::vector<NetId>{b.net("A"), b.net("B")});
  CHECK(distance(found[0].at, at(4, 0)) < Length(10));
  CHECK(found[0].objects == std::vector<CopperObject>{a, c});
  CHECK(found[1].objects == std::vector<CopperObject>{unnamed, d});
  CHECK(found[1].nets == std::vector<NetId>{b.net("A"), b.net("C")});
  // Each net's own graph keeps to its own copper.
  for (const NetGraph& net : graph.nets)
    for (NodeIndex v = 0; v < boost::num_vertices(net.graph); ++v)
      CHECK(net.graph[v].object != CopperObject(net.net == b.net("A") ? c : a));
}

TEST_CASE("a gap is reported in its middle, and loose ends count for more than tracks that run near") {
  CopperBoard b;
  const auto left = b.pad(b.pin("A"), at(0, 0));
  const auto stub = b.track(at(0, 0), at(4, 0), "A");
  const auto right = b.pad(b.pin("A"), at(20, 0));
  const auto other = b.track(at(20, 0), at(8, 0), "A");
  b.track(at(0, 0), at(0, 3), "A");  // from here the left piece runs 2.8 mm beside the right one,
  b.track(at(0, 3), at(20, 3), "A"); // nearer than the two ends, which are 3.8 mm apart
  b.pad(b.pin("A"), at(20, 3));
  const auto graph = buildBoardGraph(b.board);
  CHECK_FALSE(joined(graph, left, right));
  const auto found = compareWithNames(b.board, graph);
  REQUIRE(found.size() == 1);
  CHECK(found[0].kind == Disagreement::Kind::disconnected);
  CHECK(found[0].nets == std::vector<NetId>{b.net("A")});
  CHECK(distance(found[0].at, at(6, 0)) < Length::fromMm(0.01));
  CHECK(std::count(found[0].objects.begin(), found[0].objects.end(), CopperObject(stub)) == 1);
  CHECK(std::count(found[0].objects.begin(), found[0].objects.end(), CopperObject(other)) == 1);
}

TEST_CASE("a net with three pieces has two gaps") {
  CopperBoard b;
  for (int i = 0; i < 3; ++i)
    b.track(at(5.0 * i, 0), at(5.0 * i + 4, 0), "A");
  const auto found = compareWithNames(b.board, buildBoardGraph(b.board));
  REQUIRE(found.size() == 2);
  CHECK(distance(found[0].at, at(4.5, 0)) < Length::fromMm(0.01));
  CHECK(distance(found[1].at, at(9.5, 0)) < Length::fromMm(0.01));
}

TEST_CASE("a net in pieces is broken only where the board's copper is known") {
  const auto breaks = [](CopperBoard& b, Fact<DrawnCopper> copper) {
    b.board.info.copper = copper;
    return compareWithNames(b.board, buildBoardGraph(b.board)).size();
  };
  CopperBoard two;
  two.pad(two.pin("A"), at(0, 0));
  two.track(at(0, 0), at(4, 0), "A");
  two.pad(two.pin("A"), at(10, 0));
  CHECK(breaks(two, {}) == 1);
  CHECK(breaks(two, fromFile(DrawnCopper::everything)) == 1);
  CHECK(breaks(two, fromFile(DrawnCopper::tracks)) == 1);
  CHECK(breaks(two, fromFile(DrawnCopper::points)) == 0);
  // Three pads that an area joins, which nobody has drawn; what then tells is a track that is missing between
  // two.
  CopperBoard area;
  for (const double x : {0.0, 10.0, 20.0})
    area.pad(area.pin("A"), at(x, 0));
  CHECK(breaks(area, fromFile(DrawnCopper::everything)) == 2);
  CHECK(breaks(area, fromFile(DrawnCopper::tracks)) == 0);
  area.track(at(0, 0), at(4, 0), "A");
  area.track(at(6, 0), at(10, 0), "A");
  CHECK(breaks(area, fromFile(DrawnCopper::everything)) == 2);
  CHECK(breaks(area, fromFile(DrawnCopper::tracks)) == 1);
}

TEST_CASE("copper of no size, no width and no layers is taken without a crash") {
  CopperBoard b;
  b.area({});
  b.area({{at(0, 0)}, {{}}});
  b.area({{at(0, 0), at(1, 1)}, {}});
  b.track(at(0, 0), at(0, 0), "A", 0, 0.0);
  b.track({Length(INT64_MAX), Length(INT64_MIN)}, {Length(INT64_MIN), Length(INT64_MAX)}, "A", 0, -1.0);
  const auto pad = b.pad(b.pin("A"), at(0, 0), 0.0);
  b.change(pad).shape = {};
  const auto graph = buildBoardGraph(b.board);
  CHECK(compareWithNames(b.board, graph).size() < 10);
  CHECK(graph.nets.size() == 1);
}

TEST_CASE("building stops when told to") {
  CopperBoard b;
  b.track(at(0, 0), at(1, 0));
  std::stop_source source;
  source.request_stop();
  CHECK(buildBoardGraph(b.board, {{}, source.get_token()}).islands.empty());
}
