#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/handle.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Prices that are all unlike each other.
LandingPrices prices() {
  LandingPrices out;
  out.kinds = {{LandingKind::testPad, Price(1), ""},    {LandingKind::partTerminal, Price(2), ""},
               {LandingKind::via, Price(4), ""},        {LandingKind::tentedVia, Price(7), ""},
               {LandingKind::outerTrack, Price(9), ""}, {LandingKind::connectorPin, Price(20), ""}};
  out.underMask = Price(3.25);
  out.smallPart = Price(3.5);
  out.smallWidth = Length(350'000);
  out.unknownFarSide = Price(5);
  out.opened = Price(1.5);
  return out;
}

ScoreTerm landingTerm(LandingKind kind, double price, const std::string& point) {
  return {TermKind::landing, Price(price), {}, 0, kind, point};
}

/// One fragment, on a board of 40 mm by 30 mm.
struct Copper : BenchBoard {
  NetId line = net("LINE"), ground = net("GND", NetRole::ground), supply = net("VCC", NetRole::supply),
        data = net("DATA");
  LandingOptions options;

  [[nodiscard]] LandingList list(Side side = Side::top, std::size_t fragment = 0) const {
    const auto rules = loadZoneRules(std::filesystem::path(NETMEND_SOURCE_DIR) / "data" / "zones.json");
    REQUIRE(rules);
    const Lookup lookup(board);
    const auto area = buildFreeArea(lookup, side, *rules);
    REQUIRE(area);
    return landingsOf(lookup, graph, fragments(graph, options.cut), fragment, *area, prices(), options);
  }
  /// The only one.
  [[nodiscard]] Landing landing(Side side = Side::top) const {
    const auto found = list(side).landings;
    REQUIRE(found.size() == 1);
    return found[0];
  }
  [[nodiscard]] ExcludedLanding excluded(Side side = Side::top) const {
    const auto found = list(side);
    CHECK(found.landings.empty());
    REQUIRE(found.excluded.size() == 1);
    return found.excluded[0];
  }
  template <class Change> void edit(PadId id, Change change) {
    Pad pad = *board.pads.find(id);
    change(pad);
    board.pads.put(pad);
  }
  template <class Change> void edit(PartId id, Change change) {
    Part part = *board.parts.find(id);
    change(part);
    board.parts.put(part);
  }
  ViaId via(Point at, Fact<MaskOpening> mask, int layer = -1) {
    Via via;
    via.position = at;
    via.diameter = fromUser(Length(600'000));
    via.maskOpening = mask;
    const ViaId id = put(board.vias, via);
    boost::add_vertex({NodeKind::viaLayer, id, at, layer}, graph);
    return id;
  }
  NodeIndex node(Point at) { return boost::add_vertex({NodeKind::pad, PadId{9999}, at, -1}, graph); }
};

/// A capacitor of two pins on the line; its other pin's net is given.
struct Capacitor : Copper {
  PartId c = part("C1", PartKind::capacitor, box(10, 14.6, 12, 15.4), Side::top, 0.5);
  PinPad near = pin(c, "1", line, mm(10, 15)), far = pin(c, "2", ground, mm(12, 15));
  Capacitor() { joint(near); }
  void farNet(Fact<NetId> net) {
    Pin pin = *board.pins.find(far.pin);
    pin.net = net;
    board.pins.put(pin);
  }
  NetId otherNet(const std::string& name, Fact<NetRole> role) {
    Net more;
    more.role = role;
    return DrawnBoard::net(name, more);
  }
};

using Why = ExcludedLanding::Why;

} // namespace

TEST_CASE("a part's terminal: place, copper, width, price and no note") {
  Copper b;
  const PartId r = b.part("R1", PartKind::resistor, box(10, 14.6, 12, 15.4), Side::top, 0.4);
  const auto pin = b.pin(r, "2", b.line, mm(10, 15));
  b.edit(pin.pad, [](Pad& p) { p.size = measured(Size{Length(500'000), Length(400'000)}); });
  b.joint(pin);
  const Landing l = b.landing();
  CHECK(l.kind == LandingKind::partTerminal);
  CHECK(l.point == "R1.2");
  CHECK(l.at == mm(10, 15));
  CHECK(l.side == Side::top);
  CHECK(l.object == CopperObject(pin.pin));
  CHECK(l.copper == CopperObject(pin.pad));
  CHECK(l.layer == 0);
  CHECK(l.part == r);
  CHECK(l.width == measured(Length(400'000)));
  CHECK(l.opening.exit == l.at);
  CHECK(l.opening.keepOuts.empty());
  CHECK(l.terms == std::vector<ScoreTerm>{landingTerm(LandingKind::partTerminal, 2, "R1.2")});
  CHECK(l.notes.empty());
  CHECK(l.price() == Price(2));
  CHECK_FALSE(l.scraped());
  CHECK(probePointOf(l) == ProbePoint{pin.pin, "R1.2"});
  CHECK(b.list(Side::bottom).landings.empty());
  CHECK(b.list(Side::bottom).excluded.empty());
}

TEST_CASE("what a pad belongs to makes it a test pad, a connector's pin or a part's terminal") {
  const auto kindOf = [](auto makePart) {
    Copper b;
    const PartId part = makePart(b);
    b.joint(b.pin(part, "1", b.line, mm(10, 15)));
    const Landing l = b.landing();
    CHECK(l.part == part);
    CHECK(l.terms[0].landing == l.kind);
    return l.kind;
  };
  const auto of = [](PartKind kind) {
    return [kind](Copper& b) { return b.part("X1", kind, {}, Side::top, 0.1); };
  };
  CHECK(kindOf([](Copper&) { return PartId{}; }) == LandingKind::testPad);
  CHECK(kindOf(of(PartKind::testPoint)) == LandingKind::testPad);
  CHECK(kindOf(of(PartKind::resistor)) == LandingKind::partTerminal);
  CHECK(kindOf([](Copper& b) {
          const PartId id = b.part("X1", PartKind::connector, {}, Side::top, 0.1);
          b.edit(id, [](Part& p) { p.kind = {}; });
          return id;
        }) == LandingKind::partTerminal);
  // The connector's own body is guessed from its pads, and opens for them.
  Copper b;
  const PartId j = b.part("J1", PartKind::connector, {}, Side::top, 0.1);
  b.joint(b.pin(j, "1", b.line, mm(10, 15)));
  const Landing l = b.landing();
  CHECK(l.kind == LandingKind::connectorPin);
  CHECK(l.has(LandingNote::marginOpened));
  REQUIRE(l.terms.size() == 2);
  CHECK(l.terms[1].kind == TermKind::marginOpened);
  CHECK(l.terms[1].price == Price(1.5));
  CHECK(l.terms[1].length == distance(l.at, l.opening.exit));
  CHECK(l.terms[1].length > Length(300'000));
  CHECK(l.terms[1].keepOuts ==
        std::vector<KeepOutName>{{KeepOutName::What::part, ZoneKind::connector, "J1", {}}});
  CHECK(l.price() == Price(21.5));
}

TEST_CASE("a terminal narrower than the limit is small, where it belongs to a part and has no hole") {
  const auto small = [](std::int64_t narrow, bool drilled, bool ofPart, bool sized = true) {
    Copper b;
    const PartId r = ofPart ? b.part("R1", PartKind::resistor, {}, Side::top, 0.4) : PartId{};
    const auto pin = b.pin(r, "1", b.line, mm(10, 15));
    b.edit(pin.pad, [&](Pad& p) {
      p.size = fromUser(Size{Length(narrow), Length(900'000)});
      if (!sized) p.size = {};
      if (drilled) p.drill = fromUser(Size{Length(1), Length(1)});
    });
    b.joint(pin);
    const Landing l = b.landing();
    CHECK(l.width.known() == sized);
    const bool noted = l.has(LandingNote::smallPart);
    const bool priced =
        std::find(l.terms.begin(), l.terms.end(),
                  ScoreTerm{TermKind::smallPart, Price(3.5), Length(narrow)}) != l.terms.end();
    CHECK(noted == priced);
    return noted;
  };
  CHECK(small(349'999, false, true));
  CHECK_FALSE(small(350'000, false, true));
  CHECK_FALSE(small(349'999, true, true));
  CHECK_FALSE(small(349'999, false, false));
  CHECK_FALSE(small(349'999, false, true, false));
}

TEST_CASE("a pad known to be under mask costs the scraping; under a lid or a part it is none, and says so") {
  const auto with = [](Fact<Access> access) {
    Copper b;
    const auto pin = b.pin({}, "TP1", b.line, mm(10, 15));
    b.edit(pin.pad, [&](Pad& p) { p.access = access; });
    b.joint(pin);
    auto list = b.list();
    if (!list.excluded.empty()) {
      CHECK(list.landings.empty());
      CHECK(list.excluded[0].point == "TP1");
      CHECK(list.excluded[0].object == CopperObject(pin.pin));
      CHECK(list.excluded[0].layer == 0);
    }
    return list;
  };
  CHECK(with(fromUser(Access::underMask)).landings.at(0).terms ==
        std::vector<ScoreTerm>{landingTerm(LandingKind::testPad, 1, "TP1"),
                               {TermKind::underMask, Price(3.25)}});
  CHECK(with(fromUser(Access::open)).landings.at(0).terms.size() == 1);
  CHECK(with(fromUser(Access::underLid)).excluded.at(0).why == Why::underLid);
  CHECK(with(fromUser(Access::underPart)).excluded.at(0).why == Why::underPart);
}

TEST_CASE("a capacitor to ground or supply is a bypass: its live side is a landing, and says which") {
  for (const NetRole role : {NetRole::ground, NetRole::supply}) {
    Capacitor b;
    b.farNet(fromUser(role == NetRole::ground ? b.ground : b.supply));
    const Landing l = b.landing();
    CHECK(l.notes == std::vector<LandingNote>{LandingNote::bypass});
    CHECK(l.price() == Price(2));
  }
}

TEST_CASE(
    "a capacitor to any other net couples: none of its terminals is a landing unless somebody says so") {
  for (const Fact<NetRole>& role :
       {fromUser(NetRole::signal), fromUser(NetRole::fastPair), fromUser(NetRole::radio), Fact<NetRole>{}}) {
    Capacitor b;
    b.farNet(fromUser(b.otherNet("X7", role)));
    const ExcludedLanding e = b.excluded();
    CHECK(e == ExcludedLanding{"C1.1", b.near.pin, {}, 0, Why::couplingCapacitor});
    CHECK(b.excluded(Side::bottom).layer == 1);
    b.options.couplingAllowed = {PartId{77}};
    CHECK(b.excluded().why == Why::couplingCapacitor);
    b.options.couplingAllowed = {PartId{77}, b.c};
    const Landing l = b.landing();
    CHECK(l.notes == std::vector<LandingNote>{LandingNote::couplingAllowed});
    CHECK(l.terms.size() == 1);
  }
}

TEST_CASE("a capacitor whose other net is not known may couple: it costs, and says so") {
  for (const bool noSuchNet : {false, true}) {
    Capacitor b;
    b.farNet(noSuchNet ? fromUser(NetId{4711}) : Fact<NetId>{});
    const Landing l = b.landing();
    CHECK(l.notes == std::vector<LandingNote>{LandingNote::farSideUnknown});
    CHECK(l.terms == std::vector<ScoreTerm>{landingTerm(LandingKind::partTerminal, 2, "C1.1"),
                                            {TermKind::farSideUnknown, Price(5)}});
  }
}

TEST_CASE("of a capacitor with more pins every other one counts, of no other part any") {
  Capacitor b;
  const auto third = b.pin(b.c, "3", b.data, mm(11, 15.6));
  CHECK(b.excluded().why == Why::couplingCapacitor);
  b.farNet(fromUser(b.data));
  Pin pin = *b.board.pins.find(third.pin);
  pin.net = fromUser(b.ground);
  b.board.pins.put(pin);
  CHECK(b.excluded().why == Why::couplingCapacitor);
  b.farNet(fromUser(b.supply));
  CHECK(b.landing().has(LandingNote::bypass));
  b.farNet(fromUser(b.data));
  for (const Fact<PartKind>& kind :
       {fromUser(PartKind::resistor), Fact<PartKind>{PartKind::capacitor, Origin::unknown}}) {
    b.edit(b.c, [&](Part& p) { p.kind = kind; });
    CHECK(b.landing().notes.empty());
  }
}

TEST_CASE("a capacitor's net by its name: one called as ground is a bypass though nobody gave its role") {
  Capacitor b;
  b.farNet(fromUser(b.otherNet("GND_A", {})));
  CHECK(b.landing().has(LandingNote::bypass));
}

TEST_CASE("a leg whose pad lies beyond the break is soldered to as a leg, where its part is fitted") {
  Copper b;
  const PartId r = b.part("R1", PartKind::resistor, {}, Side::top, 0.4);
  const auto pin = b.pin(r, "1", b.line, mm(10, 15));
  b.options.cut = {b.joint(pin).second};
  const auto leg = b.list(Side::top, 0), pad = b.list(Side::top, 1);
  REQUIRE(leg.landings.size() == 1);
  CHECK(leg.landings[0].copper == CopperObject(pin.pin));
  CHECK(leg.landings[0].object == CopperObject(pin.pin));
  CHECK(leg.landings[0].notes == std::vector<LandingNote>{LandingNote::legOnly});
  REQUIRE(pad.landings.size() == 1);
  CHECK(pad.landings[0].copper == CopperObject(pin.pad));
  CHECK(pad.landings[0].notes.empty());
  b.edit(r, [](Part& p) { p.fitted = fromUser(false); });
  CHECK(b.list(Side::top, 0).landings.empty());
  CHECK(b.list(Side::top, 0).excluded.empty());
  CHECK(b.list(Side::top, 1).landings.size() == 1);
  b.edit(r, [](Part& p) { p.fitted = {}; });
  CHECK(b.list(Side::top, 0).landings.size() == 1);
}

TEST_CASE("a pin whose pads have no place, or that has none, is none, and says so") {
  Copper b;
  const auto pin = b.pin({}, "TP1", b.line, mm(10, 15));
  b.joint(pin);
  b.edit(pin.pad, [](Pad& p) { p.position = {}; });
  CHECK(b.excluded() == ExcludedLanding{"TP1", pin.pin, {}, 0, Why::placeUnknown});
  // One of two with a place is enough, even on the other side.
  Pad second = *b.board.pads.find(pin.pad);
  second.position = fromUser(mm(20, 15));
  second.reach = fromUser(PadReach::bottom);
  const PadId id = b.put(b.board.pads, second);
  boost::add_edge(0, boost::add_vertex({NodeKind::pad, id, mm(20, 15), -1}, b.graph), CopperEdge{}, b.graph);
  CHECK(b.list().landings.empty());
  CHECK(b.list().excluded.empty());
  const Landing l = b.landing(Side::bottom);
  CHECK(l.at == mm(20, 15));
  CHECK(l.copper == CopperObject(id));
  CHECK(l.layer == 1);
}

TEST_CASE("each pad of a pin is a landing once, though more nodes stand for it") {
  Copper b;
  const auto pin = b.pin({}, "TP1", b.line, mm(10, 15), PadReach::allLayers);
  const NodeIndex pad = b.joint(pin).first;
  Pad second = *b.board.pads.find(pin.pad);
  second.position = fromUser(mm(20, 15));
  second.reach = fromUser(PadReach::top);
  const PadId other = b.put(b.board.pads, second);
  for (const PadId id : {other, pin.pad})
    boost::add_edge(pad, boost::add_vertex({NodeKind::pad, id, mm(10, 15), 0}, b.graph), CopperEdge{},
                    b.graph);
  REQUIRE(b.list().landings.size() == 2);
  CHECK(b.list().landings[0].at == mm(10, 15));
  CHECK(b.list().landings[1].at == mm(20, 15));
  CHECK(b.landing(Side::bottom).side == Side::bottom);
}

TEST_CASE("a via is open, under mask, or not known to be either") {
  const auto check = [](Side side, Fact<MaskOpening> mask, LandingKind kind, bool unknown) {
    Copper b;
    const ViaId id = b.via(mm(10, 15), mask);
    const Landing l = b.landing(side);
    CHECK(l.kind == kind);
    CHECK(l.point == viaHandle(b.board, id, side == Side::top ? 0 : 1));
    CHECK(l.at == mm(10, 15));
    CHECK(l.side == side);
    CHECK(l.layer == (side == Side::top ? 0 : 1));
    CHECK(l.object == CopperObject(id));
    CHECK(l.copper == CopperObject(id));
    CHECK_FALSE(l.part);
    CHECK(l.width == fromUser(Length(600'000)));
    CHECK(l.terms == std::vector<ScoreTerm>{landingTerm(kind, kind == LandingKind::via ? 4 : 7, l.point)});
    CHECK(l.has(LandingNote::viaMaskUnknown) == unknown);
    CHECK(l.notes.size() == (unknown ? 1 : 0));
    CHECK(l.scraped() == (kind == LandingKind::tentedVia));
    CHECK(probePointOf(l) == ProbePoint{PinId{}, l.point});
  };
  for (const Side side : {Side::top, Side::bottom}) {
    const MaskOpening here = side == Side::top ? MaskOpening::top : MaskOpening::bottom;
    const MaskOpening there = side == Side::top ? MaskOpening::bottom : MaskOpening::top;
    check(side, {}, LandingKind::via, true);
    check(side, fromUser(MaskOpening::both), LandingKind::via, false);
    check(side, fromUser(here), LandingKind::via, false);
    check(side, fromUser(there), LandingKind::tentedVia, false);
    check(side, fromUser(MaskOpening::none), LandingKind::tentedVia, false);
  }
}

TEST_CASE("a ring that is of one layer alone is a landing on that side alone, and a via is one once") {
  Copper b;
  b.via(mm(10, 15), fromUser(MaskOpening::both), 1);
  CHECK(b.list(Side::top).landings.empty());
  CHECK(b.list(Side::bottom).landings.size() == 1);
  b.board.info.layerOrder = {b.top, LayerId{901}, LayerId{902}, b.bottom};
  CHECK(b.list(Side::bottom).landings.empty()); // the bottom is the fourth layer now
  b.board.info.layerOrder = {};                 // two at least
  CHECK(b.landing(Side::bottom).layer == 1);
}

TEST_CASE("a track is scraped nearest to the break, or in its middle") {
  Copper b;
  const NodeIndex one = b.node(mm(10, 10)), two = b.node(mm(20, 12));
  const std::size_t edge = b.track(one, two, b.line, b.top);
  Landing l = b.landing();
  CHECK(l.kind == LandingKind::outerTrack);
  CHECK(l.at == mm(15, 11));
  CHECK(l.point == pointHandle(b.board, mm(15, 11), 0));
  CHECK(std::holds_alternative<TrackId>(l.object));
  CHECK(l.copper == l.object);
  CHECK(l.edge == edge);
  CHECK(l.width == fromUser(Length(200'000)));
  CHECK(l.notes == std::vector<LandingNote>{LandingNote::scrapeTrack});
  CHECK(l.terms == std::vector<ScoreTerm>{landingTerm(LandingKind::outerTrack, 9, l.point)});
  CHECK(l.scraped());
  CHECK(b.list(Side::bottom).landings.empty());
  // The foot on the track of slope 1:5, by hand: (18, 11.6).
  b.options.near = mm(17.8, 12.6);
  CHECK(b.landing().at == mm(18, 11.6));
  b.options.near = mm(30, 15);
  CHECK(b.landing().at == mm(20, 12));
  // Where a part lies over that, in the middle.
  b.part("R9", PartKind::resistor, box(19, 11, 21, 13), Side::top, 0.4);
  CHECK(b.landing().at == mm(15, 11));
  CHECK(b.landing().point == pointHandle(b.board, mm(15, 11), 0));
  CHECK(b.landing().terms[0].point == b.landing().point);
  b.options.cut = {edge};
  CHECK(b.list(Side::top, 0).landings.empty());
  CHECK(b.list(Side::top, 1).landings.empty());
}

TEST_CASE("an arc is scraped halfway along it, a way that nobody knows is not") {
  for (const TrackWay way : {TrackWay::arc, TrackWay::unknownWay}) {
    Copper b;
    b.track(b.node(mm(10, 10)), b.node(mm(20, 10)), b.line, b.top);
    Track track = *b.board.tracks.begin();
    track.way = way;
    track.mid = mm(15, 15);
    b.board.tracks.put(track);
    b.options.near = mm(10, 10);
    if (way == TrackWay::arc)
      CHECK(distance(b.landing().at, mm(15, 15)).mm() < 0.2);
    else
      CHECK(b.list().landings.empty());
  }
}

TEST_CASE("what is soldered to has to be of the fragment, and of the copper that the break is in") {
  Copper b;
  const auto one = b.pin({}, "TP1", b.line, mm(10, 15)), two = b.pin({}, "TP2", b.line, mm(20, 15));
  const NodeIndex a = b.joint(one).first, c = b.joint(two).first;
  b.via(mm(25, 15), fromUser(MaskOpening::both));
  CHECK(b.list(Side::top, 0).landings.size() == 1);
  CHECK(b.list(Side::top, 1).landings.size() == 1);
  b.track(a, c, b.line, b.top);
  CHECK(b.list(Side::top, 0).landings.size() == 3);
  b.options.on = {true, true, false, false, true};
  REQUIRE(b.list(Side::top, 0).landings.size() == 1); // no track with one end off it
  CHECK(b.list(Side::top, 0).landings[0].point == "TP1");
  CHECK(b.list(Side::top, 1).landings.size() == 1);
}

TEST_CASE("landings come cheapest first, then by their handles") {
  Copper b;
  NodeIndex last = 0;
  const auto chain = [&](const char* name, Point at, PartId part) {
    const NodeIndex here = b.joint(b.pin(part, name, b.line, at)).first;
    if (last != 0) b.edge(last, here, EdgeKind::contact, PadId{}, 0);
    last = here;
  };
  const PartId r = b.part("R1", PartKind::resistor, {}, Side::top, 0.4);
  chain("1", mm(5, 10), r);
  chain("TP3", mm(10, 10), {});
  chain("TP2", mm(15, 10), {});
  chain("TP4", mm(20, 10), {});
  std::string order;
  for (const Landing& l : b.list().landings)
    order += l.point + " ";
  CHECK(order == "TP2 TP3 TP4 R1.1 ");
}

TEST_CASE("what a fitted part's body covers on this side is no landing, and names the part") {
  Copper b;
  const ViaId id = b.via(mm(10, 15), fromUser(MaskOpening::both));
  const PartId u = b.part("U1", PartKind::chip, box(8, 13, 12, 17), Side::top, 0.3);
  CHECK(b.excluded() ==
        ExcludedLanding{viaHandle(b.board, id, 0), id, mm(10, 15), 0, Why::coveredByPart, "U1"});
  CHECK(b.list(Side::bottom).landings.size() == 1);
  b.edit(u, [](Part& p) { p.kind = fromUser(PartKind::testPoint); });
  CHECK(b.list().landings.size() == 1);
  b.edit(u, [](Part& p) { p.kind = fromUser(PartKind::shield); });
  CHECK(b.excluded().why == Why::coveredByLid);
  b.edit(u, [](Part& p) {
    p.kind = {};
    p.side = {};
  });
  CHECK(b.excluded().why == Why::coveredByPart);
  CHECK(b.excluded(Side::bottom).why == Why::coveredByPart);
  b.edit(u, [](Part& p) { p.fitted = fromUser(false); });
  CHECK(b.list().landings.size() == 1);
  b.edit(u, [](Part& p) { p.fitted = {}; });
  CHECK(b.excluded().why == Why::coveredByPart);
}

TEST_CASE("a part that covers nothing hides no other that does") {
  Copper b;
  b.via(mm(10, 15), fromUser(MaskOpening::both));
  b.part("TP9", PartKind::testPoint, box(8, 13, 12, 17), Side::top, 0.3);
  b.part("U9", PartKind::chip, box(8, 13, 12, 17), Side::bottom, 0.3);
  const PartId gone = b.part("U8", PartKind::chip, box(8, 13, 12, 17), Side::top, 0.3);
  b.edit(gone, [](Part& p) { p.fitted = fromUser(false); });
  CHECK(b.list().landings.size() == 1);
  b.part("U1", PartKind::chip, box(8, 13, 12, 17), Side::top, 0.3);
  CHECK(b.excluded().why == Why::coveredByPart);
  CHECK(b.excluded().cover == "U1");
}

TEST_CASE("a body covers what is inside it or on its edge, not all of its box") {
  const auto covered = [](Point at) {
    Copper b;
    b.via(at, fromUser(MaskOpening::both));
    b.part("U1", PartKind::chip, {mm(10, 10), mm(20, 10), mm(10, 20)}, Side::top, 0.3);
    return b.list().landings.empty();
  };
  CHECK(covered(mm(12, 12)));
  CHECK(covered(mm(10, 15)));
  CHECK(covered(mm(15, 10)));
  CHECK(covered(mm(15, 15)));
  CHECK(covered(mm(20, 10)));
  CHECK_FALSE(covered(mm(15.000001, 15)));
  CHECK_FALSE(covered(mm(9.999999, 15)));
  CHECK_FALSE(covered(mm(15, 9.999999)));
  CHECK_FALSE(covered(mm(19, 19)));
}

TEST_CASE("a guessed body covers vias and tracks, but no pad; a guessed lid covers both") {
  for (const PartKind kind : {PartKind::chip, PartKind::shield})
    for (const bool sure : {false, true})
      for (const bool pad : {false, true}) {
        Copper b;
        if (pad)
          b.joint(b.pin({}, "TP1", b.line, mm(10, 15)));
        else
          b.via(mm(10, 15), fromUser(MaskOpening::both));
        const PartId u = b.part("U1", kind, box(8, 13, 12, 17), Side::top, 0.3);
        if (!sure) b.edit(u, [](Part& p) { p.body = guessed(p.body.value); });
        CHECK(b.list().landings.size() == (pad && !sure && kind == PartKind::chip ? 1 : 0));
      }
}

TEST_CASE("a part's own body does not cover its pads") {
  Copper b;
  const PartId u = b.part("U1", PartKind::chip, box(8, 13, 12, 17), Side::top, 0.3);
  b.joint(b.pin(u, "1", b.line, mm(12, 15)));
  CHECK(b.landing().at == mm(12, 15));
}

TEST_CASE("what lies inside a keep-out, or off the board, is none, and names what keeps it out") {
  Copper b;
  const ViaId id = b.via(mm(10, 15), fromUser(MaskOpening::both));
  b.zone(ZoneKind::battery, "BT", box(8, 13, 12, 17), 0.2);
  b.zone(ZoneKind::antenna, "ANT", box(5, 13, 11, 17), 0.2);
  const ExcludedLanding e = b.excluded();
  CHECK(e.why == Why::keptOut);
  CHECK(e.at == mm(10, 15));
  CHECK(e.object == CopperObject(id));
  CHECK(e.cover.empty());
  REQUIRE(e.keepOuts.size() == 2);
  CHECK(e.keepOuts[0].label == "BT");
  CHECK(e.keepOuts[1].label == "ANT");
  Copper off;
  off.via(mm(50, 15), fromUser(MaskOpening::both));
  CHECK(off.excluded().why == Why::keptOut);
  CHECK(off.excluded().keepOuts.empty());
}

TEST_CASE("of a pad's spots the first that needs no opening is taken") {
  // 3/8 of its 4 mm to the right, left, above and below the middle; all but the last inside a battery's
  // margin.
  Copper b;
  b.joint(b.pin({}, "TP1", b.line, mm(20, 15), PadReach::top, 4));
  b.zone(ZoneKind::battery, "BT", box(10, 17.2, 30, 20), 1.0);
  CHECK(b.landing().at == mm(20, 15));
  b.zone(ZoneKind::battery, "B2", box(10, 15.4, 30, 17.2), 1.0);
  CHECK(b.landing().at == mm(20, 13.5));
  CHECK_FALSE(b.landing().has(LandingNote::marginOpened));
  // All are inside some margin: the first, opened.
  b.zone(ZoneKind::battery, "B3", box(10, 10, 30, 12.4), 1.1);
  const Landing l = b.landing();
  CHECK(l.at == mm(20, 15));
  CHECK(l.has(LandingNote::marginOpened));
}

TEST_CASE("the fragments of a landing's copper are those of its own layer, or of both ends of its track") {
  Copper b;
  const ViaId id = b.via(mm(10, 15), {}, 0);
  boost::add_vertex({NodeKind::viaLayer, id, mm(10, 15), 1}, b.graph);
  const NodeIndex x = b.node(mm(1, 1)), y = b.node(mm(2, 1));
  const std::size_t t = b.track(x, y, b.line, b.top);
  const Fragments whole = fragments(b.graph, {}), parted = fragments(b.graph, {t});
  Landing l;
  l.copper = id;
  for (const int layer : {0, 1}) {
    l.layer = layer;
    CHECK(fragmentsAt(b.graph, whole, l) ==
          std::vector<std::size_t>{whole.ofNode[static_cast<std::size_t>(layer)]});
  }
  l.layer = 2;
  CHECK(fragmentsAt(b.graph, whole, l).empty());
  l.copper = TrackId{1};
  l.edge = t;
  CHECK(fragmentsAt(b.graph, whole, l) == std::vector<std::size_t>{whole.ofNode[x]});
  CHECK(fragmentsAt(b.graph, parted, l) == std::vector<std::size_t>{parted.ofNode[x], parted.ofNode[y]});
  l.edge = t + 1;
  CHECK(fragmentsAt(b.graph, parted, l).empty());
}
