#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "bench_board.h"
#include "jumper/current.h"

using namespace netmend;
using namespace netmend::test;

namespace {

using Piece = CopperLimit::Piece;
using Why = CurrentBasis::Why;

/// IPC-2221 for 20 K: square millimetres in square mils of 0.00064516 mm².
double ipc(double squareMm, double k = 0.048) {
  return k * std::pow(20.0, 0.44) * std::pow(squareMm / 0.00064516, 0.725);
}
double track(double widthMm, double foilMm = 0.035) {
  return ipc(widthMm * foilMm);
}
double barrel(double holeMm) {
  return ipc(std::numbers::pi * 0.02 * (holeMm + 0.02));
}

/// Two terminals and what is between them, in a row; the graph is made by hand.
struct Row : BenchBoard {
  NetId line = net("LINE");
  NodeIndex last = boost::add_vertex({NodeKind::terminal, PinId{1001}, mm(1, 1), -1}, graph);
  std::vector<std::size_t> cut;

  std::size_t go(NodeKind kind, CopperObject object, EdgeKind edgeKind, CopperObject edgeObject,
                 Fact<Length> width, int layer) {
    const auto next = boost::add_vertex({kind, object, mm(1, 1), layer}, graph);
    const std::size_t index = edge(last, next, edgeKind, edgeObject, layer);
    for (auto [e, end] = boost::edges(graph); e != end; ++e)
      if (graph[*e].index == index) graph[*e].width = width;
    last = next;
    return index;
  }
  std::size_t track(Fact<Length> width, int layer = 0, EdgeKind kind = EdgeKind::track) {
    return go(NodeKind::joint, TrackId{77}, kind, TrackId{77}, width, layer);
  }
  std::size_t via(Fact<Length> drill) {
    Via via;
    via.drill = drill;
    const ViaId id = put(board.vias, via);
    return go(NodeKind::viaLayer, id, EdgeKind::via, id, {}, -1);
  }
  void end() { go(NodeKind::terminal, PinId{1002}, EdgeKind::contact, {}, {}, -1); }
  [[nodiscard]] std::optional<CopperLimit> limit() const {
    const auto ends = breakEnds(graph, cut);
    REQUIRE(ends);
    return seriesLimit(board, graph, *ends, cut, Kelvins(20));
  }
};

Fact<Length> wide(double mm) {
  return fromFile(Length::fromMm(mm));
}

} // namespace

TEST_CASE("the weakest piece of the way limits it, whichever it is, and says what it is") {
  for (const auto& [width, drill, piece] : {std::tuple{0.3, 0.5, Piece::track}, {3.0, 0.2, Piece::via}}) {
    Row r;
    r.track(wide(2.0));
    r.cut = {r.track(wide(width))};
    r.via(wide(drill));
    r.end();
    const auto limit = r.limit();
    REQUIRE(limit);
    CHECK(limit->piece == piece);
    CHECK(limit->size == Length::fromMm(piece == Piece::track ? width : drill));
    CHECK(limit->pin.empty());
    CHECK(limit->current.value ==
          Approx(piece == Piece::track ? ::track(width) : barrel(drill)).epsilon(1e-9));
  }
}

TEST_CASE("an inner layer carries half, the outer ones and one that nobody knows do not") {
  for (const int layer : {-1, 0, 1, 2, 3, 4}) {
    Row r;
    for (const char* name : {"in1", "in2"})
      r.board.info.layerOrder.insert(r.board.info.layerOrder.begin() + 1, r.layer(name));
    r.cut = {r.track(wide(0.5), layer)};
    r.end();
    const bool inner = layer == 1 || layer == 2;
    const auto limit = r.limit();
    REQUIRE(limit);
    CHECK(limit->current.value == Approx(::track(0.5) * (inner ? 0.5 : 1.0)).epsilon(1e-9));
    CHECK(limit->piece == (inner ? Piece::innerTrack : Piece::track));
    CHECK(limit->size == Length(500'000));
  }
}

TEST_CASE("a layer's own foil counts where it is known and above nought") {
  for (const auto& [foil, mm] : {std::pair{Fact<Length>{}, 0.035},
                                 {fromFile(Length(70'000)), 0.07},
                                 {fromFile(Length(0)), 0.035},
                                 {fromFile(Length(1)), 1e-6}}) {
    Row r;
    Layer layer = *r.board.layers.find(r.top);
    layer.copperThickness = foil;
    r.board.layers.put(layer);
    r.cut = {r.track(wide(0.5))};
    r.end();
    CHECK(r.limit()->current.value == Approx(::track(0.5, mm)).epsilon(1e-9));
  }
}

TEST_CASE("what is not known of a piece does not limit, and nothing known is no limit") {
  Row r;
  r.via({});
  r.via(wide(0));
  r.track({});
  r.cut = {r.track(wide(0))};
  r.end();
  CHECK_FALSE(r.limit());
  Row nm;
  nm.cut = {nm.via(fromFile(Length(1)))};
  nm.end();
  REQUIRE(nm.limit());
  CHECK(nm.limit()->current.value == Approx(ipc(std::numbers::pi * 0.02 * 0.020001)).epsilon(1e-9));
  Row unknownWay;
  unknownWay.cut = {unknownWay.track(fromFile(Length(1)), 0, EdgeKind::unknownWay)};
  unknownWay.end();
  CHECK(unknownWay.limit()->size == Length(1));
}

TEST_CASE("broken pieces side by side count together") {
  const auto beside = [](Fact<Length> one, Fact<Length> other) {
    Row r;
    const NodeIndex a = r.last;
    const std::size_t first = r.track(one);
    const std::size_t second = r.edge(a, r.last, EdgeKind::track, TrackId{78}, 0);
    for (auto [e, end] = boost::edges(r.graph); e != end; ++e)
      if (r.graph[*e].index == second) r.graph[*e].width = other;
    r.end();
    r.cut = {first, second};
    return r.limit();
  };
  const auto both = beside(wide(0.3), wide(0.5));
  REQUIRE(both);
  CHECK(both->piece == Piece::together);
  CHECK(both->size == Length(0));
  CHECK(both->current.value == Approx(::track(0.3) + ::track(0.5)).epsilon(1e-9));
  CHECK(beside(wide(0.3), {})->current.value == Approx(::track(0.3)).epsilon(1e-9));
  CHECK_FALSE(beside({}, {}));
}

TEST_CASE("at a pin's joint the pad counts: its barrel, its narrower side, or not at all") {
  const auto limitOf = [](auto change, PinId* pin = nullptr) {
    BenchBoard b;
    const NetId net = b.net("LINE");
    const auto made = b.pin(b.part("J1", PartKind::connector, {}, Side::top, 0.1), "7", net, mm(10, 10));
    Pad pad = *b.board.pads.find(made.pad);
    pad.size = fromUser(Size{Length(900'000), Length(400'000)});
    change(pad);
    b.board.pads.put(pad);
    const auto [node, joint] = b.joint(made);
    const auto other = boost::add_vertex({NodeKind::terminal, PinId{1002}, mm(1, 1), -1}, b.graph);
    b.edge(node, other, EdgeKind::contact, {}, -1);
    if (pin != nullptr) *pin = made.pin;
    const std::vector<std::size_t> cut{joint};
    const auto ends = breakEnds(b.graph, cut);
    REQUIRE(ends);
    return seriesLimit(b.board, b.graph, *ends, cut, Kelvins(20));
  };
  const auto flat = limitOf([](Pad&) {});
  REQUIRE(flat);
  CHECK(flat->piece == Piece::pad);
  CHECK(flat->size == Length(400'000));
  CHECK(flat->pin == "J1.7");
  CHECK(flat->current.value == Approx(::track(0.4)).epsilon(1e-9));
  CHECK(limitOf([](Pad& p) { p.size.value = {Length(300'000), Length(400'000)}; })->size == Length(300'000));
  CHECK_FALSE(limitOf([](Pad& p) { p.size = {}; }));
  CHECK_FALSE(limitOf([](Pad& p) { p.size.value.height = Length(0); }));
  CHECK(limitOf([](Pad& p) { p.size.value.height = Length(1); }));
  const auto drilled = [&](double w, double h, Fact<bool> plated) {
    return limitOf([&](Pad& p) {
      p.drill = fromUser(Size{Length::fromMm(w), Length::fromMm(h)});
      p.plated = plated;
    });
  };
  for (const auto& [w, h] : {std::pair{0.8, 1.6}, {1.6, 0.8}}) {
    const auto hole = drilled(w, h, {});
    REQUIRE(hole);
    CHECK(hole->piece == Piece::platedHole);
    CHECK(hole->size == Length(800'000));
    CHECK(hole->pin == "J1.7");
    CHECK(hole->current.value == Approx(barrel(0.8)).epsilon(1e-9));
  }
  CHECK(drilled(0.8, 0.8, fromUser(true)));
  CHECK_FALSE(drilled(0.8, 0.8, fromUser(false)));
  CHECK(drilled(0.000001, 0.8, {})->piece == Piece::platedHole);
  CHECK(drilled(0, 0.8, {})->piece == Piece::pad);
  // Of a polygon its box; without corners nothing is known.
  CHECK(limitOf([](Pad& p) {
          p.shape = fromUser(PadShape::polygon);
          p.polygon = {mm(0, 0), mm(3, 0), mm(3, 0.7)};
        })->size == Length(700'000));
  CHECK_FALSE(limitOf([](Pad& p) { p.shape = fromUser(PadShape::polygon); }));
}

TEST_CASE("a sound part on the way ends it: what lies beyond does not count") {
  Row r;
  r.track(wide(0.2));
  r.go(NodeKind::terminal, PinId{1003}, EdgeKind::contact, {}, {}, -1);
  r.go(NodeKind::terminal, PinId{1004}, EdgeKind::part, PartId{5}, {}, -1);
  r.cut = {r.track(wide(1.0))};
  r.end();
  CHECK(r.limit()->size == Length(1'000'000));
}

TEST_CASE("through a broken part flows what came through its pins' copper") {
  Row r;
  r.track(wide(0.2));
  r.go(NodeKind::terminal, PinId{1003}, EdgeKind::contact, {}, {}, -1);
  r.cut = {r.go(NodeKind::terminal, PinId{1004}, EdgeKind::part, PartId{5}, {}, -1)};
  r.track(wide(1.0));
  r.end();
  CHECK(r.limit()->size == Length(200'000));
}

TEST_CASE("the current a wire is chosen for: asked, rated, by copper, capped, or the role's default") {
  WireTable table;
  table.copperRise = Kelvins(20);
  table.signalUpTo = Length(500'000);
  table.roles = {{NetRole::signal, Amperes(0.02), Amperes(0.1), Volts(1), "", ""},
                 {NetRole::supply, Amperes(0.5), {}, Volts(1), "", ""}};
  const auto load = [&](Fact<NetRole> role, double width, auto more) {
    Row r;
    Net net = *r.board.nets.find(r.line);
    net.role = role;
    net.name = "X";
    JumperRequest request;
    if (width > 0)
      r.cut = {r.track(wide(width))};
    else
      r.cut = {r.track({})};
    r.end();
    more(r, net, request);
    r.board.nets.put(net);
    request.graph = &r.graph;
    request.cut = r.cut;
    request.net = r.line;
    const auto ends = breakEnds(r.graph, r.cut);
    REQUIRE(ends);
    return currentFor(r.board, request, *ends, table);
  };
  const auto plain = [](Row&, Net&, JumperRequest&) {};
  const auto signal = fromUser(NetRole::signal), supply = fromUser(NetRole::supply);

  const WireRequest asked = load(supply, 0.5, [](Row&, Net& net, JumperRequest& request) {
    net.ratedCurrent = fromFile(Amperes(3));
    request.current = fromUser(Amperes(2));
  });
  CHECK(asked.current == fromUser(Amperes(2)));
  CHECK(asked.basis->why == Why::asked);
  CHECK_FALSE(asked.basis->limit);
  CHECK(asked.role == NetRole::supply);
  const WireRequest rated =
      load(supply, 0.5, [](Row&, Net& net, JumperRequest&) { net.ratedCurrent = fromFile(Amperes(3)); });
  CHECK(rated.current == fromFile(Amperes(3)));
  CHECK(rated.basis->why == Why::rated);
  const WireRequest copper = load(supply, 0.5, plain);
  CHECK(copper.current.origin == Origin::guessed);
  CHECK(copper.current.value.value == Approx(::track(0.5)).epsilon(1e-9));
  CHECK(copper.basis->why == Why::copper);
  CHECK(copper.basis->limit->size == Length(500'000));
  CHECK(copper.basis->rise == Kelvins(20));
  const WireRequest capped = load(signal, 0.5, plain);
  CHECK(capped.current == guessed(Amperes(0.1)));
  CHECK(capped.basis->why == Why::cappedByRole);
  CHECK(capped.basis->limit->current.value == Approx(::track(0.5)).epsilon(1e-9));
  CHECK(capped.basis->rise == Kelvins(20));
  CHECK(load(signal, 0.008, plain).basis->why == Why::copper); // 0.098 A
  const WireRequest unknown = load({}, 0.5, plain);
  CHECK(unknown.role == NetRole::signal);
  CHECK(unknown.current == guessed(Amperes(0.1)));
  CHECK(unknown.basis->why == Why::cappedAsSignal);
  CHECK(load({}, 0.500001, plain).basis->why == Why::copper);
  // Wide copper beside the break, or an area, makes it no signal; beyond a sound part it does not.
  for (const int kind : {0, 1, 2}) {
    const WireRequest beside = load({}, 0.3, [&](Row& r, Net&, JumperRequest&) {
      if (kind == 0) r.track(wide(0.6));
      if (kind == 1) r.go(NodeKind::area, AreaId{9}, EdgeKind::contact, {}, {}, 0);
      if (kind == 2) {
        r.go(NodeKind::terminal, PinId{1004}, EdgeKind::part, PartId{5}, {}, -1);
        r.track(wide(0.6));
      }
    });
    CHECK(beside.basis->why == (kind == 2 ? Why::cappedAsSignal : Why::copper));
  }
  const WireRequest none = load(supply, 0, plain);
  CHECK_FALSE(none.current.known());
  CHECK_FALSE(none.basis);
  CHECK(none.role == NetRole::supply);
  CHECK(none.length == Length(0));
  CHECK_FALSE(none.landingWidth.known());
}
