#include <catch2/catch.hpp>

#include "copper_board.h"
#include "netmend/netgraph/resistance.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const CopperGraph& graphOf(const BoardGraph& graph, const CopperObject& object) {
  const std::size_t island = islandOf(graph, object);
  REQUIRE(island != SIZE_MAX);
  return graph.islands[island].graph;
}

std::vector<CopperNode> nodesOf(const CopperGraph& graph, const CopperObject& object) {
  std::vector<CopperNode> out;
  for (const auto node : boost::make_iterator_range(boost::vertices(graph)))
    if (graph[node].object == object) out.push_back(graph[node]);
  return out;
}

/// The node at a place, of one kind.
NodeIndex nodeAt(const CopperGraph& graph, NodeKind kind, Point where, int layer) {
  std::optional<NodeIndex> found;
  for (const auto node : boost::make_iterator_range(boost::vertices(graph)))
    if (graph[node].kind == kind && graph[node].at == where && graph[node].layer == layer) {
      CHECK_FALSE(found);
      found = node;
    }
  REQUIRE(found);
  return *found;
}

const CopperEdge& edgeBetween(const CopperGraph& graph, NodeIndex a, NodeIndex b) {
  const auto [edge, exists] = boost::edge(a, b, graph);
  REQUIRE(exists);
  return graph[edge];
}

/// Ohms of a stretch 0.2 mm wide of 35 µm foil: 1/58 Ω·mm²/m (IEC 60028:1925).
double foil(double mm) {
  return mm * 1e-3 / 58.0 / (0.2 * 0.035);
}

} // namespace

TEST_CASE("every node and edge from one pin over two layers to the other, with all that is known of it") {
  CopperBoard b;
  const PinId from = b.pin("A"), to = b.pin("A");
  const PadId first = b.pad(from, at(0, 0)), last = b.pad(to, at(20, 5), 1.0, PadReach::bottom);
  const TrackId upper = b.track(at(0, 0), at(10, 0), "A"), lower = b.track(at(10, 0), at(20, 5), "A", 1);
  const ViaId via = b.via(at(10, 0), 0, 1, "A");
  const BoardGraph board = buildBoardGraph(b.board);
  const CopperGraph& g = graphOf(board, via);
  REQUIRE(boost::num_vertices(g) == 10);
  REQUIRE(boost::num_edges(g) == 9);
  const NodeIndex leg = nodeAt(g, NodeKind::terminal, at(0, 0), -1),
                  pad = nodeAt(g, NodeKind::pad, at(0, 0), 0),
                  start = nodeAt(g, NodeKind::joint, at(0, 0), 0),
                  end = nodeAt(g, NodeKind::joint, at(10, 0), 0),
                  ring = nodeAt(g, NodeKind::viaLayer, at(10, 0), 0),
                  under = nodeAt(g, NodeKind::viaLayer, at(10, 0), 1),
                  begin = nodeAt(g, NodeKind::joint, at(10, 0), 1),
                  stop = nodeAt(g, NodeKind::joint, at(20, 5), 1),
                  far = nodeAt(g, NodeKind::pad, at(20, 5), 1),
                  other = nodeAt(g, NodeKind::terminal, at(20, 5), -1);
  CHECK(g[leg].object == CopperObject(from));
  CHECK(g[other].object == CopperObject(to));
  CHECK(g[pad].object == CopperObject(first));
  CHECK(g[far].object == CopperObject(last));
  for (const NodeIndex n : {start, end})
    CHECK(g[n].object == CopperObject(upper));
  for (const NodeIndex n : {begin, stop})
    CHECK(g[n].object == CopperObject(lower));
  for (const NodeIndex n : {ring, under})
    CHECK(g[n].object == CopperObject(via));

  const auto check = [&](NodeIndex a, NodeIndex z, EdgeKind kind, CopperObject object, int layer) {
    const CopperEdge& e = edgeBetween(g, a, z);
    CHECK(e.kind == kind);
    CHECK(e.object == object);
    CHECK(e.layer == layer);
    // `from` is on the source's side, `to` on the target's.
    const auto [edge, exists] = boost::edge(a, z, g);
    CHECK(e.from == g[boost::source(edge, g)].at);
    CHECK(e.to == g[boost::target(edge, g)].at);
    return e;
  };
  for (const auto& e : {check(leg, pad, EdgeKind::solderJoint, first, 0),
                        check(far, other, EdgeKind::solderJoint, last, 1)}) {
    CHECK_FALSE(e.length.known());
    CHECK_FALSE(e.width.known());
    CHECK_FALSE(e.resistance.known());
  }
  for (const auto& e :
       {check(pad, start, EdgeKind::contact, {}, 0), check(end, ring, EdgeKind::contact, {}, 0),
        check(under, begin, EdgeKind::contact, {}, 1), check(stop, far, EdgeKind::contact, {}, 1)}) {
    CHECK(e.resistance == guessed(Ohms(0)));
    CHECK_FALSE(e.length.known());
  }
  const CopperEdge track = check(start, end, EdgeKind::track, upper, 0);
  CHECK(track.length == fromFile(Length(10'000'000)));
  CHECK(track.width == fromFile(Length(200'000)));
  CHECK(track.resistance.value.value == Approx(foil(10)).epsilon(1e-12));
  CHECK(track.resistance.origin == Origin::file);
  const CopperEdge below = check(begin, stop, EdgeKind::track, lower, 1);
  CHECK(below.length.value.mm() == Approx(std::hypot(10, 5)).margin(1e-6));
  CHECK(below.resistance.value.value == Approx(foil(std::hypot(10, 5))).epsilon(1e-6));
  const CopperEdge barrel = check(ring, under, EdgeKind::via, via, -1);
  CHECK(g[boost::source(boost::edge(ring, under, g).first, g)].layer ==
        0); // from the upper ring to the lower
  // One foil, and board of 1.6 mm where nobody says: annulus of 20 µm round 0.3 mm.
  CHECK(barrel.length == guessed(Length(1'600'000 + 35'000)));
  CHECK(barrel.resistance.value.value ==
        Approx(1e-3 / 58.0 * 1.635 / (3.14159265358979 * 0.02 * 0.32)).epsilon(1e-12));
  CHECK(barrel.resistance.origin == Origin::guessed);
}

TEST_CASE("what a via or track lacks leaves its resistance unknown, and a guess stays a guess") {
  CopperBoard b;
  const TrackId track = b.track(at(0, 0), at(10, 0), "A");
  const ViaId via = b.via(at(10, 0), 0, 1, "A");
  const auto ofTrack = [&](auto change) {
    Track t = *b.board.tracks.find(track);
    change(t);
    b.board.tracks.put(t);
    const auto edges = edgesOf(graphOf(buildBoardGraph(b.board), track), EdgeKind::track);
    REQUIRE(edges.size() == 1);
    return edges[0];
  };
  CHECK(ofTrack([](Track& t) { t.origin = Origin::unknown; }).length.origin == Origin::guessed);
  CHECK(ofTrack([](Track& t) { t.origin = Origin::user; }).length.origin == Origin::user);
  CHECK(ofTrack([](Track& t) { t.width = guessed(t.width.value); }).resistance.origin == Origin::guessed);
  CHECK(ofTrack([](Track& t) { t.width = fromFile(Length(1)); }).resistance.known());
  CHECK_FALSE(ofTrack([](Track& t) { t.width = fromFile(Length(0)); }).resistance.known());
  CHECK_FALSE(ofTrack([](Track& t) { t.width = {}; }).resistance.known());
  const auto ofVia = [&](Fact<Length> drill) {
    Via v = *b.board.vias.find(via);
    v.drill = drill;
    b.board.vias.put(v);
    const auto edges = edgesOf(graphOf(buildBoardGraph(b.board), via), EdgeKind::via);
    REQUIRE(edges.size() == 1);
    return edges[0].resistance;
  };
  CHECK_FALSE(ofVia({}).known());
  CHECK_FALSE(ofVia(fromFile(Length(0))).known());
  CHECK(ofVia(fromFile(Length(1))).known());
}

TEST_CASE("foils and cores of the board are used where they are known, layer by layer") {
  CopperBoard b(3);
  const auto layer = [&](std::size_t i, Fact<Length> copper, Fact<Length> below) {
    Layer l = *b.board.layers.find(b.layers[i]);
    l.copperThickness = copper;
    l.dielectricBelow = below;
    b.board.layers.put(l);
  };
  layer(0, fromFile(Length(70'000)), measured(Length(200'000)));
  layer(1, fromFile(Length(18'000)), fromFile(Length(900'000)));
  layer(2, fromFile(Length(0)), {});
  const TrackId top = b.track(at(0, 0), at(10, 0), "A"), inner = b.track(at(0, 0), at(0, 10), "A", 1),
                bottom = b.track(at(0, 0), at(-10, 0), "A", 2);
  b.via(at(0, 0), 0, 2, "A");
  const BoardGraph graph = buildBoardGraph(b.board);
  for (const CopperEdge& e : edgesOf(graphOf(graph, top), EdgeKind::track)) {
    const double um = e.object == CopperObject(top) ? 70 : e.object == CopperObject(inner) ? 18 : 35;
    CHECK(e.resistance.value.value == Approx(0.01 / 58.0 / (0.2 * um * 1e-3)).epsilon(1e-12));
    CHECK(e.resistance.origin == (e.object == CopperObject(bottom) ? Origin::guessed : Origin::file));
  }
  auto barrels = edgesOf(graphOf(graph, top), EdgeKind::via);
  REQUIRE(barrels.size() == 2);
  CHECK(barrels[0].length == fromFile(Length(270'000)));
  CHECK(barrels[1].length == fromFile(Length(918'000)));
  // Unknown cores share the usual board among the gaps.
  layer(0, {}, {});
  layer(1, fromFile(Length(18'000)), fromFile(Length(-1)));
  barrels = edgesOf(graphOf(buildBoardGraph(b.board), top), EdgeKind::via);
  CHECK(barrels[0].length == guessed(Length(800'000 + 35'000)));
  CHECK(barrels[1].length == guessed(Length(800'000 + 18'000)));
}

TEST_CASE("a via has a ring on its end layers and where something touches it") {
  CopperBoard b(5);
  const ViaId via = b.via(at(0, 0), 3, 0, "A"); // whichever way round its layers are given
  b.track(at(0, 0), at(5, 0), "A", 1);
  b.track(at(0, 0), at(0, 5), "A", 1);
  const BoardGraph board = buildBoardGraph(b.board);
  const CopperGraph& g = graphOf(board, via);
  std::vector<int> layers;
  for (const CopperNode& n : nodesOf(g, via)) {
    CHECK(n.kind == NodeKind::viaLayer);
    CHECK(n.at == at(0, 0));
    layers.push_back(n.layer);
  }
  CHECK(layers == std::vector<int>{0, 1, 3});
  CHECK(edgesOf(g, EdgeKind::via).size() == 2);
  // Of unknown layers it goes through all of them.
  Via unknown = *b.board.vias.find(via);
  unknown.from = unknown.to = {};
  b.board.vias.put(unknown);
  layers.clear();
  const BoardGraph through = buildBoardGraph(b.board);
  for (const CopperNode& n : nodesOf(graphOf(through, via), via))
    layers.push_back(n.layer);
  CHECK(layers == std::vector<int>{0, 1, 4});
}

TEST_CASE(
    "a test pad's point is its copper, a part's leg is soldered, a pin without copper hangs on its own") {
  CopperBoard b;
  Pin test;
  test.id = b.board.newId<PinId>();
  b.board.pins.put(test);
  const PadId bare = b.pad(test.id, at(3, 4));
  const PinId loose = b.pin("A"), nowhere = b.pin("A");
  const PadId unplaced = b.pad(nowhere, at(9, 9));
  Pad pad = *b.board.pads.find(unplaced);
  pad.position = {};
  b.board.pads.put(pad);
  const BoardGraph board = buildBoardGraph(b.board);
  const CopperEdge contact = edgesOf(graphOf(board, bare), EdgeKind::contact).at(0);
  CHECK(contact.object == CopperObject(bare));
  CHECK(contact.resistance == guessed(Ohms(0)));
  CHECK(contact.from == at(3, 4));
  CHECK(contact.to == at(3, 4));
  CHECK(contact.layer == 0);
  const auto terminal = nodesOf(graphOf(board, test.id), test.id);
  REQUIRE(terminal.size() == 1);
  CHECK(terminal[0].kind == NodeKind::terminal);
  CHECK(terminal[0].at == at(3, 4));
  CHECK(terminal[0].layer == -1);
  const CopperEdge hanging = edgesOf(graphOf(board, loose), EdgeKind::solderJoint).at(0);
  CHECK(hanging.object == CopperObject(loose));
  CHECK_FALSE(hanging.from);
  CHECK_FALSE(hanging.resistance.known());
  CHECK(hanging.layer == -1);
  const CopperEdge unknown = edgesOf(graphOf(board, nowhere), EdgeKind::solderJoint).at(0);
  CHECK(unknown.object == CopperObject(unplaced));
  CHECK_FALSE(unknown.from);
}

TEST_CASE("a pad of a pin that is gone is copper without a leg, and a bare hole is a leg without copper") {
  CopperBoard b;
  const PadId orphan = b.pad(PinId{4711}, at(0, 0));
  const TrackId track = b.track(at(0, 0), at(5, 0));
  const PinId pin = b.pin("A");
  b.hole(pin, at(20, 0), 2.0, 2.0, false);
  const BoardGraph board = buildBoardGraph(b.board);
  CHECK(joined(board, orphan, track));
  CHECK(edgesOf(graphOf(board, orphan), EdgeKind::solderJoint).empty());
  const CopperGraph& g = graphOf(board, pin);
  CHECK(boost::num_vertices(g) == 1);
  CHECK(boost::num_edges(g) == 0);
  CHECK(g[0].at == at(20, 0));
}

TEST_CASE("a pad's node is of its layer, or of all where its barrel goes through") {
  const auto layersOf = [](PadReach reach, bool drilled, bool plated) {
    CopperBoard b(3);
    const PinId pin = b.pin("A");
    const PadId id =
        drilled ? b.hole(pin, at(0, 0), 2.0, 1.0, plated, reach) : b.pad(pin, at(0, 0), 2.0, reach);
    const BoardGraph board = buildBoardGraph(b.board);
    std::vector<int> out;
    for (const CopperNode& n : nodesOf(graphOf(board, id), id)) {
      CHECK(n.kind == NodeKind::pad);
      CHECK(n.at == at(0, 0));
      out.push_back(n.layer);
    }
    CHECK(edgesOf(graphOf(board, id), EdgeKind::solderJoint).size() == out.size());
    return out;
  };
  using Layers = std::vector<int>;
  CHECK(layersOf(PadReach::top, false, false) == Layers{0});
  CHECK(layersOf(PadReach::bottom, false, false) == Layers{2});
  CHECK(layersOf(PadReach::topAndBottom, false, false) == Layers{0, 2});
  CHECK(layersOf(PadReach::allLayers, false, false) == Layers{0, 1, 2});
  CHECK(layersOf(PadReach::topAndBottom, true, false) == Layers{0, 2});
  for (const PadReach reach : {PadReach::top, PadReach::bottom, PadReach::topAndBottom, PadReach::allLayers})
    CHECK(layersOf(reach, true, true) == Layers{-1});
}

TEST_CASE("a plated hole whose ring is on one side reaches the other layers by its barrel alone") {
  for (const PadReach reach : {PadReach::top, PadReach::bottom, PadReach::topAndBottom, PadReach::allLayers})
    for (std::size_t layer = 0; layer < 4; ++layer) {
      CopperBoard b(4);
      const PadId id = b.hole(b.pin("A"), at(0, 0), 2.0, 1.0, true, reach);
      // One track to the barrel's wall, 0.5 mm from the middle, one only to the ring's, 1 mm from it.
      const TrackId wall = b.track(at(0.55, 0), at(5, 0), {}, layer),
                    ring = b.track(at(0, 1.05), at(0, 5), {}, layer);
      const bool hasRing = reach == PadReach::allLayers || (layer == 0 && reach != PadReach::bottom) ||
                           (layer == 3 && reach != PadReach::top);
      const BoardGraph board = buildBoardGraph(b.board);
      INFO(static_cast<int>(reach) << " " << layer);
      CHECK(joined(board, id, wall));
      CHECK(joined(board, id, ring) == hasRing);
    }
}

TEST_CASE("an area is one node at its first corner, on its layer") {
  CopperBoard b;
  const AreaId id = b.area({{at(1, 2), at(9, 2), at(9, 9), at(1, 9)}, {}}, "A", 1);
  const TrackId track = b.track(at(5, 5), at(20, 5), "A", 1);
  const BoardGraph board = buildBoardGraph(b.board);
  const auto nodes = nodesOf(graphOf(board, id), id);
  REQUIRE(nodes.size() == 1);
  CHECK(nodes[0].kind == NodeKind::area);
  CHECK(nodes[0].at == at(1, 2));
  CHECK(nodes[0].layer == 1);
  const auto contacts = edgesOf(graphOf(board, id), EdgeKind::contact);
  REQUIRE(contacts.size() == 1);
  CHECK(contacts[0].from == at(5, 5));
  CHECK(contacts[0].to == at(5, 5));
  CHECK(contacts[0].layer == 1);
  CHECK(joined(board, id, track));
}

TEST_CASE("joints within a micrometre of each other are one, farther apart they are two") {
  // Tracks that meet one from above and from below, `apart` nm apart along it.
  const auto pieces = [](std::int64_t apart) {
    CopperBoard b;
    const TrackId through = b.track(at(0, 0), at(10, 0));
    b.track(at(5, 0), at(5, 5));
    b.track({Length(5'000'000 + apart), Length(0)}, at(5, -5));
    std::size_t count = 0;
    for (const CopperEdge& e : edgesOf(graphOf(buildBoardGraph(b.board), through), EdgeKind::track))
      count += e.object == CopperObject(through) ? 1 : 0;
    return count;
  };
  CHECK(pieces(0) == 2);
  CHECK(pieces(1000) == 2);
  CHECK(pieces(1001) == 3);
}

TEST_CASE("what meets a track within a quarter of its width from an end meets it at the end") {
  const auto pieces = [](double x) {
    CopperBoard b;
    const TrackId through = b.track(at(0, 0), at(10, 0), {}, 0, 0.4);
    b.track(at(x, 0), at(x, 5));
    std::vector<double> lengths;
    for (const CopperEdge& e : edgesOf(graphOf(buildBoardGraph(b.board), through), EdgeKind::track))
      if (e.object == CopperObject(through)) lengths.push_back(e.length.value.mm());
    return lengths;
  };
  CHECK(pieces(0.1) == std::vector<double>{10.0});
  CHECK(pieces(9.9) == std::vector<double>{10.0});
  CHECK(pieces(0.101).size() == 2);
  CHECK(pieces(9.899).size() == 2);
  CHECK(pieces(0.101).at(0) == Approx(0.101).margin(1e-6));
}

TEST_CASE("a track that closes a circle carries nothing round it") {
  CopperBoard b;
  const TrackId circle = b.arc(at(0, 0), at(4, 0), at(0, 0));
  const BoardGraph board = buildBoardGraph(b.board);
  CHECK(edgesOf(graphOf(board, circle), EdgeKind::track).empty());
  // With a track that ends on it there are two ways round.
  b.track(at(4, 0), at(8, 0));
  const auto edges = edgesOf(graphOf(buildBoardGraph(b.board), circle), EdgeKind::track);
  REQUIRE(edges.size() == 3);
  double round = 0;
  for (const CopperEdge& e : edges)
    if (e.object == CopperObject(circle)) {
      CHECK(e.length.value.mm() == Approx(2 * 3.14159265).epsilon(1e-4));
      round += e.length.value.mm();
    }
  CHECK(round == Approx(4 * 3.14159265).epsilon(1e-4));
}

TEST_CASE("tracks that cross are joined at the crossing, each by a joint of its own") {
  CopperBoard b;
  const TrackId along = b.track(at(0, 0), at(10, 0));
  const TrackId across = b.track(at(4, -3), at(4, 3));
  const BoardGraph board = buildBoardGraph(b.board);
  const CopperGraph& g = graphOf(board, along);
  CHECK(edgesOf(g, EdgeKind::track).size() == 4);
  CHECK(boost::num_vertices(g) == 5);
  const NodeIndex middle = nodeAt(g, NodeKind::joint, at(4, 0), 0);
  CHECK(boost::degree(middle, g) == 4);
  CHECK(joined(board, along, across));
}

TEST_CASE("a way nobody knows has no length, and its layer where that is known") {
  CopperBoard b;
  const PinId one = b.pin("A"), two = b.pin("A");
  b.pad(one, at(0, 0));
  b.pad(two, at(10, 0));
  const TrackId way = b.unknownWay(at(0, 0), at(10, 0), "A");
  const BoardGraph board = buildBoardGraph(b.board);
  const CopperEdge e = edgesOf(graphOf(board, way), EdgeKind::unknownWay).at(0);
  CHECK(e.object == CopperObject(way));
  CHECK(e.from == at(0, 0));
  CHECK(e.to == at(10, 0));
  CHECK(e.layer == -1);
  CHECK_FALSE(e.width.known());
  CHECK_FALSE(e.length.known());
  CHECK_FALSE(e.resistance.known());
  for (const CopperEdge& contact : edgesOf(graphOf(board, way), EdgeKind::contact)) {
    CHECK(contact.layer == -1);
    CHECK(contact.from == contact.to);
  }
}

TEST_CASE("an end of an unknown way takes pads before vias, tracks and areas, its own net before others") {
  const auto met = [](auto draw) {
    CopperBoard b;
    const std::vector<CopperObject> there = draw(b);
    const TrackId way = b.unknownWay(at(0, 0), at(50, 0), "A");
    const BoardGraph board = buildBoardGraph(b.board);
    std::vector<bool> out;
    for (const CopperObject& object : there)
      out.push_back(joined(board, way, object));
    return out;
  };
  using Met = std::vector<bool>;
  const auto areaOn = [](CopperBoard& b, std::size_t layer) {
    return CopperObject(b.area({{at(-5, -5), at(5, -5), at(5, 5), at(-5, 5)}, {}}, "X", layer));
  };
  // On three layers, so that they do not touch each other.
  CHECK(met([&](CopperBoard& b) {
          b = CopperBoard(4);
          return std::vector<CopperObject>{areaOn(b, 3), b.track(at(-3, 0), at(3, 0), "X", 2),
                                           b.via(at(0, 0), 1, 1, "X"), b.pad(b.pin("X"), at(0, 0))};
        }) == Met{false, false, false, true});
  CHECK(met([&](CopperBoard& b) {
          b = CopperBoard(4);
          return std::vector<CopperObject>{areaOn(b, 3), b.track(at(-3, 0), at(3, 0), "X", 2),
                                           b.via(at(0, 0), 0, 1, "X")};
        }) == Met{false, false, true});
  CHECK(met([&](CopperBoard& b) {
          b = CopperBoard(4);
          return std::vector<CopperObject>{areaOn(b, 3), b.track(at(-3, 0), at(3, 0), "X", 2)};
        }) == Met{false, true});
  CHECK(met([&](CopperBoard& b) {
          return std::vector<CopperObject>{b.pad(b.pin("X"), at(0, 0)),
                                           b.pad(b.pin("A"), at(0, 0), 1.0, PadReach::bottom)};
        }) == Met{false, true});
  CHECK(met([&](CopperBoard& b) {
          return std::vector<CopperObject>{b.pad(b.pin("X"), at(0, 0), 1.0, PadReach::bottom),
                                           b.pad(b.pin("X"), at(0, 0))};
        }) == Met{false, true});
}

TEST_CASE("an area of unknown layer is met by the ends of tracks that lie on it") {
  for (const double x : {4.0, 6.0}) {
    CopperBoard b;
    const AreaId id = b.area({{at(-5, -5), at(5, -5), at(5, 5), at(-5, 5)}, {}}, "A");
    Area area = *b.board.areas.find(id);
    area.layer = {};
    b.board.areas.put(area);
    const TrackId track = b.track(at(x, 0), at(20, 0), "A");
    CHECK(joined(buildBoardGraph(b.board), id, track) == (x < 5));
  }
}

TEST_CASE("building stops between its steps too") {
  CopperBoard b;
  b.track(at(0, 0), at(1, 0));
  for (int after = 0; after < 6; ++after) {
    std::stop_source source;
    int told = 0;
    const Progress progress{[&](const Pattern&, double) {
                              if (told++ == after) source.request_stop();
                            },
                            source.get_token()};
    const BoardGraph graph = buildBoardGraph(b.board, progress);
    CHECK(graph.islands.empty() == source.stop_requested());
  }
}
