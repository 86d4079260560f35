#include <catch2/catch.hpp>

#include "copper_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

std::vector<Disagreement> found(const CopperBoard& b) {
  return compareWithNames(b.board, buildBoardGraph(b.board));
}

using Kind = Disagreement::Kind;
using Objects = std::vector<CopperObject>;

/// Each with its objects in ascending order.
Objects sorted(Objects objects) {
  std::sort(objects.begin(), objects.end());
  return objects;
}

} // namespace

TEST_CASE("a short of copper that overlaps is placed in the overlap, by both widths") {
  // Tracks 0.4 mm and 0.2 mm wide whose middles are 0.15 mm apart: at 0.2 / 0.3 of the way.
  CopperBoard b;
  const TrackId a = b.track(at(0, 0), at(10, 0), "A", 0, 0.4), c = b.track(at(2, 0.15), at(8, 0.15), "B");
  const auto all = found(b);
  REQUIRE(all.size() == 1);
  CHECK(all[0].kind == Kind::shorted);
  CHECK(all[0].objects == Objects{a, c});
  CHECK(all[0].nets == std::vector<NetId>{b.net("A"), b.net("B")});
  CHECK(all[0].at.y == at(0, 0.1).y);
}

TEST_CASE("each pair of foreign copper that touches is a short of its own, on two layers once") {
  CopperBoard b;
  const PadId pad = b.hole(b.pin("B"), at(0, 0), 2.0, 1.0, true);
  const TrackId top = b.track(at(0, 0), at(5, 0), "A"), bottom = b.track(at(0, 0), at(0, 5), "A", 1);
  const ViaId via = b.via(at(0.5, 0.5), 0, 1, "C");
  std::vector<Objects> pairs;
  for (const Disagreement& d : found(b)) {
    CHECK(d.kind == Kind::shorted);
    CHECK(d.nets.size() == 2);
    CHECK(d.nets[0] < d.nets[1]);
    pairs.push_back(sorted(d.objects));
  }
  CHECK(pairs.size() >= 3);
  for (const Objects& wanted : {sorted({pad, top}), sorted({pad, bottom}), sorted({pad, via})})
    CHECK(std::count(pairs.begin(), pairs.end(), wanted) == 1);
}

TEST_CASE("a short by a way nobody has seen is at that way") {
  CopperBoard b;
  const PadId a = b.pad(b.pin("A"), at(0, 0)), c = b.pad(b.pin("B"), at(20, 0));
  const TrackId way = b.unknownWay(at(0, 0), at(20, 0));
  const auto all = found(b);
  REQUIRE(all.size() == 1);
  CHECK(all[0].kind == Kind::shorted);
  CHECK(all[0].nets == std::vector<NetId>{b.net("A"), b.net("B")});
  CHECK(all[0].at == at(0, 0));
  CHECK(all[0].objects == Objects{way, way});
  CHECK(a != c);
}

TEST_CASE("copper without a name counts to the nearest that has one, in contacts") {
  CopperBoard b;
  b.track(at(0, 0), at(4, 0), "A");
  b.track(at(4, 0), at(8, 0));
  b.track(at(8, 0), at(12, 0));
  const TrackId last = b.track(at(12, 0), at(16, 0)), other = b.track(at(16, 0), at(20, 0), "B");
  const auto all = found(b);
  REQUIRE(all.size() == 1);
  // The second is one contact from A, the fourth one from B, the third two from either: A's reached it first.
  CHECK(all[0].at.x.mm() == Approx(12).margin(0.2));
  CHECK(std::count(all[0].objects.begin(), all[0].objects.end(), CopperObject(last)) == 1);
  CHECK(std::count(all[0].objects.begin(), all[0].objects.end(), CopperObject(other)) == 0);
}

TEST_CASE("a gap between layers is told of after one on the same layer") {
  CopperBoard b;
  b.track(at(0, 0), at(10, 0), "A");
  b.track(at(12, 0), at(20, 0), "A", 1); // 1.8 mm on, but below
  const TrackId far = b.track(at(0, 8), at(10, 8), "A");
  const auto all = found(b);
  REQUIRE(all.size() == 2);
  int withFar = 0;
  for (const Disagreement& d : all)
    withFar += std::count(d.objects.begin(), d.objects.end(), CopperObject(far)) > 0 ? 1 : 0;
  CHECK(withFar >= 1);
  const BoardGraph graph = buildBoardGraph(b.board);
  REQUIRE(graph.nets.size() == 1);
  CHECK(graph.nets[0].islandCount == 3);
}

TEST_CASE("the place of a gap is the middle between edges, not between middles") {
  // Tracks 2 mm and 0.2 mm wide in one line: from 11 mm to 19.9 mm.
  CopperBoard b;
  const TrackId wide = b.track(at(0, 0), at(10, 0), "A", 0, 2.0), thin = b.track(at(20, 0), at(30, 0), "A");
  const auto all = found(b);
  REQUIRE(all.size() == 1);
  CHECK(all[0].at == at(15.45, 0));
  CHECK(sorted(all[0].objects) == sorted({wide, thin}));
  CHECK(all[0].nets == std::vector<NetId>{b.net("A")});
}

TEST_CASE("an island's members are each there once, in order, and its names too") {
  CopperBoard b;
  const PinId pin = b.pin("B");
  const PadId pad = b.pad(pin, at(0, 0)), second = b.pad(pin, at(3, 0));
  const TrackId track = b.track(at(0, 0), at(8, 0), "A"), again = b.track(at(8, 0), at(9, 5), "A");
  const ViaId via = b.via(at(8, 0), 0, 1, "B");
  const AreaId area = b.area({{at(8, -1), at(9, -1), at(9, 1), at(8, 1)}, {}}, "A", 1);
  const BoardGraph graph = buildBoardGraph(b.board);
  REQUIRE(graph.islands.size() == 1);
  CHECK(graph.islands[0].members == sorted({pin, pad, second, track, again, via, area}));
  std::vector<NetId> names{b.net("A"), b.net("B")};
  std::sort(names.begin(), names.end());
  CHECK(graph.islands[0].names == names);
  std::size_t next = 0;
  for (const auto edge : boost::make_iterator_range(boost::edges(graph.islands[0].graph)))
    CHECK(graph.islands[0].graph[edge].index == next++);
}

TEST_CASE("pieces of a net are joined by a hub, each by a pad where it has one") {
  CopperBoard b;
  const PadId pad = b.pad(b.pin("A"), at(10, 0));
  b.track(at(10, 0), at(15, 0), "A");
  const TrackId bare = b.track(at(20, 0), at(25, 0), "A");
  const BoardGraph graph = buildBoardGraph(b.board);
  REQUIRE(graph.nets.size() == 1);
  const NetGraph& net = graph.nets[0];
  CHECK(net.net == b.net("A"));
  CHECK(net.islandCount == 2);
  CHECK(fragments(net.graph, {}).count == 1);
  NodeIndex hub = 0;
  for (const auto node : boost::make_iterator_range(boost::vertices(net.graph)))
    if (net.graph[node].kind == NodeKind::unknownWay) hub = node;
  CHECK(hub + 1 == boost::num_vertices(net.graph));
  CHECK(net.graph[hub].object == CopperObject{});
  CHECK_FALSE(net.graph[hub].at);
  CHECK(net.graph[hub].layer == -1);
  std::vector<CopperObject> met;
  std::size_t last = 0;
  for (const auto edge : boost::make_iterator_range(boost::edges(net.graph))) {
    last = net.graph[edge].index;
    if (net.graph[edge].kind != EdgeKind::unknownWay) continue;
    CHECK(boost::target(edge, net.graph) == hub);
    CHECK(net.graph[edge].from == net.graph[boost::source(edge, net.graph)].at);
    CHECK_FALSE(net.graph[edge].to);
    met.push_back(net.graph[boost::source(edge, net.graph)].object);
  }
  CHECK(met == Objects{pad, bare});
  CHECK(last + 1 == boost::num_edges(net.graph));
}

TEST_CASE("a net in one piece has no hub, one without copper no piece, and copper of no net is in none") {
  CopperBoard b;
  b.pad(b.pin("A"), at(0, 0));
  b.net("EMPTY");
  b.track(at(50, 0), at(60, 0));
  const BoardGraph graph = buildBoardGraph(b.board);
  REQUIRE(graph.nets.size() == 2);
  CHECK(graph.nets[0].islandCount == 1);
  CHECK(edgesOf(graph.nets[0].graph, EdgeKind::unknownWay).empty());
  CHECK(boost::num_vertices(graph.nets[0].graph) == 2);
  CHECK(graph.nets[1].islandCount == 0);
  CHECK(boost::num_vertices(graph.nets[1].graph) == 0);
  CHECK(graph.islands.size() == 2);
}

TEST_CASE("of copper shorted to another net each has what lies nearer to its own name, edge by edge") {
  CopperBoard b;
  const TrackId a = b.track(at(0, 0), at(4, 0), "A"), first = b.track(at(4, 0), at(8, 0)),
                second = b.track(at(8, 0), at(12, 0)), c = b.track(at(12, 0), at(16, 0), "B");
  const BoardGraph graph = buildBoardGraph(b.board);
  REQUIRE(graph.nets.size() == 2);
  const auto holds = [&](const char* net, TrackId track) {
    for (const NetGraph& g : graph.nets)
      if (g.net == b.net(net))
        for (const CopperEdge& e : edgesOf(g.graph, EdgeKind::track))
          if (e.object == CopperObject(track)) return true;
    return false;
  };
  CHECK(holds("A", a));
  CHECK(holds("B", c));
  CHECK_FALSE(holds("A", c));
  CHECK_FALSE(holds("B", a));
  CHECK(holds("A", first) != holds("B", first));
  CHECK_FALSE(holds("A", second));
}
