#include <catch2/catch.hpp>

#include "bench_board.h"
#include "jumper/current.h"
#include "netmend/netgraph/line.h"
#include "netmend/words/jumper.h"

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

/// A board whose copper graph is made by the program; objects are broken by what they are.
struct BrokenBoard : BenchBoard {
  PadId point(const std::string& name, NetId net, Point at, PadReach reach = PadReach::top,
              double size = 0.6) {
    return BenchBoard::pin({}, name, net, at, reach, size).pad;
  }
  ViaId via(Point at, NetId net, double drill = 0.3) {
    Via via;
    via.position = at;
    via.diameter = fromUser(Length::fromMm(0.6));
    via.drill = fromUser(Length::fromMm(drill));
    via.maskOpening = fromUser(MaskOpening::both);
    via.net = fromUser(net);
    return put(board.vias, via);
  }
  /// A drilled pad; without copper where it is as large as its hole.
  PadId drilled(PartId part, const std::string& name, NetId net, Point at, double hole, double size) {
    const PinPad made = BenchBoard::pin(part, name, net, at, PadReach::allLayers, size);
    Pad pad = *board.pads.find(made.pad);
    pad.shape = fromUser(PadShape::circle);
    pad.drill = fromUser(Size{Length::fromMm(hole), Length::fromMm(hole)});
    pad.plated = fromUser(size > hole);
    board.pads.put(pad);
    return made.pad;
  }

  struct Found {
    Line line;
    std::vector<std::size_t> cut;
    BreakEnds ends;
    JumperProposals jumpers;
  };
  [[nodiscard]] Found broken(NetId net, const std::vector<CopperObject>& objects,
                             JumperRequest request = {}) const {
    Found out;
    const Lookup lookup(board);
    out.line = lineOf(lookup, buildBoardGraph(board), net);
    for (auto [e, end] = boost::edges(out.line.graph); e != end; ++e)
      if (std::find(objects.begin(), objects.end(), out.line.graph[*e].object) != objects.end())
        out.cut.push_back(out.line.graph[*e].index);
    const auto ends = breakEnds(out.line.graph, out.cut);
    REQUIRE(ends);
    out.ends = *ends;
    request.graph = &out.line.graph;
    request.cut = out.cut;
    request.net = net;
    auto found = proposeJumpers(lookup, request, data());
    INFO((found ? std::string() : found.error().text()));
    REQUIRE(found);
    out.jumpers = *found;
    return out;
  }
  [[nodiscard]] LandingList landings(const Found& found, std::size_t fragment, Side side) const {
    const Lookup lookup(board);
    const auto area = buildFreeArea(lookup, side, data().zones);
    REQUIRE(area);
    return landingsOf(lookup, found.line.graph, found.ends.fragments, fragment, *area, data().landings);
  }
};

bool holds(const LandingList& list, CopperObject object) {
  return std::any_of(list.landings.begin(), list.landings.end(),
                     [&](const Landing& l) { return l.object == object; });
}

/// TP1 to TP2 over one broken track of this width.
struct OneTrack : BrokenBoard {
  NetId line;
  TrackId cut;
  OneTrack(Fact<NetRole> role, double width) {
    line = DrawnBoard::net("X_LINE", [&] {
      Net more;
      more.role = role;
      return more;
    }());
    point("TP1", line, mm(5, 15), PadReach::top, 4);
    point("TP2", line, mm(35, 15), PadReach::top, 4);
    cut = DrawnBoard::track(mm(5, 15), mm(35, 15), bottom, line, width);
    for (const double x : {5.0, 35.0})
      via(mm(x, 15), line, 2.0);
  }
  [[nodiscard]] WireChoice wire(const JumperRequest& request = {}) const {
    const Found found = broken(line, {cut}, request);
    REQUIRE_FALSE(found.jumpers.proposals.empty());
    return found.jumpers.proposals.front().wire;
  }
};

/// IPC-2221, by hand: A in square mils of 0.00064516 mm².
double byHand(double widthMm, double k) {
  return k * std::pow(20.0, 0.44) * std::pow(widthMm * 0.035 / 0.00064516, 0.725);
}

const ProposalNote* noteOf(const JumperProposal& p, ProposalNote::Kind kind) {
  const auto found = std::find_if(p.notes.begin(), p.notes.end(),
                                  [&](const ProposalNote& note) { return note.kind == kind; });
  return found != p.notes.end() ? &*found : nullptr;
}

const KeepOutName bareHole{KeepOutName::What::hole, ZoneKind::tallPart, "", mm(20, 15)};

} // namespace

TEST_CASE("when its barrel breaks, each ring of a via is a landing only for the piece that its layer is of") {
  BrokenBoard b;
  const NetId net = b.net("A");
  b.point("TP1", net, mm(5, 15));
  const ViaId gone = b.via(mm(15, 15), net), sound = b.via(mm(25, 15), net);
  b.point("TP2", net, mm(35, 15));
  b.DrawnBoard::track(mm(5, 15), mm(15, 15), b.top, net, 0.2);
  b.DrawnBoard::track(mm(15, 15), mm(25, 15), b.bottom, net, 0.2);
  b.DrawnBoard::track(mm(25, 15), mm(35, 15), b.top, net, 0.2);
  const auto found = b.broken(net, {gone});
  const bool topIsA = holds(b.landings(found, found.ends.a, Side::top), gone);
  const std::size_t upper = topIsA ? found.ends.a : found.ends.b,
                    lower = topIsA ? found.ends.b : found.ends.a;
  CHECK(holds(b.landings(found, upper, Side::top), gone));
  CHECK_FALSE(holds(b.landings(found, lower, Side::top), gone));
  CHECK(holds(b.landings(found, lower, Side::bottom), gone));
  CHECK_FALSE(holds(b.landings(found, upper, Side::bottom), gone));
  CHECK(holds(b.landings(found, lower, Side::top), sound));
  CHECK(holds(b.landings(found, lower, Side::bottom), sound));
  REQUIRE_FALSE(found.jumpers.proposals.empty());
  for (const JumperProposal& p : found.jumpers.proposals) {
    CHECK(p.side == Side::top); // nothing of the upper piece reaches the bottom
    CHECK(joinsBreak(found.line.graph, found.ends, p.from, p.to));
    // The same places, but on the ring below: both on copper of the lower piece.
    Landing from = p.from, to = p.to;
    (from.object == CopperObject(gone) ? from : to).layer = 1;
    if (from.object == CopperObject(gone) || to.object == CopperObject(gone))
      CHECK_FALSE(joinsBreak(found.line.graph, found.ends, from, to));
    CHECK_FALSE(joinsBreak(found.line.graph, found.ends, p.from, p.from));
  }
}

TEST_CASE("each face of a pad without plating belongs to the piece of its own layer") {
  BrokenBoard b;
  const NetId net = b.net("A");
  const PartId j = b.part("J1", PartKind::other, box(3, 13, 7, 17), Side::top, 0.1);
  const PadId faces = b.drilled(j, "1", net, mm(5, 15), 1.0, 2.0);
  Pad pad = *b.board.pads.find(faces);
  pad.plated = fromUser(false);
  pad.reach = fromUser(PadReach::topAndBottom);
  b.board.pads.put(pad);
  b.point("TP1", net, mm(20, 15));
  b.DrawnBoard::track(mm(5, 15), mm(20, 15), b.top, net, 0.2);
  b.point("TP2", net, mm(5, 25), PadReach::bottom);
  b.DrawnBoard::track(mm(5, 15), mm(5, 25), b.bottom, net, 0.2);
  const Lookup lookup(b.board);
  const Line line = lineOf(lookup, buildBoardGraph(b.board), net);
  std::vector<std::size_t> cut; // the joint of the upper face
  for (auto [e, end] = boost::edges(line.graph); e != end; ++e)
    if (line.graph[*e].kind == EdgeKind::solderJoint && line.graph[*e].layer == 0)
      cut.push_back(line.graph[*e].index);
  REQUIRE(cut.size() == 1);
  const auto ends = breakEnds(line.graph, cut);
  REQUIRE(ends);
  const auto on = [&](std::size_t fragment, Side side) {
    FreeAreaOptions options;
    options.own = {faces};
    const auto area = buildFreeArea(lookup, side, data().zones, options);
    REQUIRE(area);
    return holds(landingsOf(lookup, line.graph, ends->fragments, fragment, *area, data().landings),
                 b.board.pads.find(faces)->pin);
  };
  CHECK(on(ends->a, Side::top) != on(ends->b, Side::top));
  CHECK(on(ends->a, Side::bottom) != on(ends->b, Side::bottom));
  CHECK(on(ends->a, Side::top) != on(ends->a, Side::bottom));
}

TEST_CASE("a supply track of 3 mm asks for what it carries, and no wire of the table does") {
  const WireChoice wire = OneTrack(fromUser(NetRole::supply), 3.0).wire();
  const double carries = byHand(3.0, 0.048);
  CHECK(carries == Approx(7.196).margin(0.001)); // 162.75 square mils
  // Through the vias at its ends it is less: annulus of a 2 mm hole, 20 µm thick.
  const double barrel = byHand(std::numbers::pi * 0.02 * 2.02 / 0.035, 0.048);
  CHECK(barrel > carries);
  CHECK(wire.current.value.value == Approx(carries).epsilon(1e-9));
  CHECK(wordsOf(currentSaid(wire)) == "3 mm track carries 7.2 A (IPC-2221, 20 K): taken as 7.2 A");
  CHECK_FALSE(wire.suffices());
  REQUIRE(wireWarnings(wire).size() == 1);
  CHECK(wordsOf(wireWarnings(wire)[0]).starts_with("no wire of the table carries 7.2 A over"));
  CHECK(wire.wire.name == data().wires.wires.back().name);
}

TEST_CASE("a supply track of 0.5 mm gets a wire that carries what the track does") {
  const WireChoice wire = OneTrack(fromUser(NetRole::supply), 0.5).wire();
  CHECK(wire.current.value.value == Approx(byHand(0.5, 0.048)).epsilon(1e-9));
  CHECK(wire.suffices());
  CHECK_FALSE(wire.warned());
  CHECK(wire.heating.value >= byHand(0.5, 0.048));
}

TEST_CASE("a signal is taken for no more than 0.1 A, and for less where its copper carries less") {
  // 8.23 µm of 35 µm foil carry 0.1 A: widths of no board, to stand on both sides of the limit.
  const WireChoice less = OneTrack(fromUser(NetRole::signal), 0.008).wire();
  CHECK(less.current.value.value == Approx(byHand(0.008, 0.048)).epsilon(1e-9));
  CHECK(less.current.value.value < 0.1);
  CHECK(wordsOf(currentSaid(less)).ends_with(": taken as 0.0979 A"));
  const WireChoice more = OneTrack(fromUser(NetRole::signal), 0.009).wire();
  CHECK(byHand(0.009, 0.048) > 0.1);
  CHECK(more.current.value.value == 0.1);
  CHECK(OneTrack(fromUser(NetRole::signal), 3.0).wire().current.value.value == 0.1);
}

TEST_CASE("a net of unknown role is taken for a signal while all of its copper is narrow") {
  CHECK(OneTrack({}, 0.5).wire().current.value.value == 0.1);
  CHECK(OneTrack({}, 0.5).wire().basis.why == CurrentBasis::Why::cappedAsSignal);
  CHECK(OneTrack({}, 0.501).wire().basis.why == CurrentBasis::Why::copper);
  CHECK(OneTrack({}, 0.501).wire().current.value.value == Approx(byHand(0.501, 0.048)).epsilon(1e-9));
}

TEST_CASE("the technician's current comes first, then the net's rating") {
  OneTrack b(fromUser(NetRole::supply), 3.0);
  Net net = *b.board.nets.find(b.line);
  net.ratedCurrent = fromUser(Amperes(0.7));
  b.board.nets.put(net);
  CHECK(wordsOf(currentSaid(b.wire())) == "0.7 A as the net is rated");
  JumperRequest request;
  request.current = fromUser(Amperes(1.5));
  const WireChoice wire = b.wire(request);
  CHECK(wire.current.value.value == 1.5);
  CHECK(wordsOf(currentSaid(wire)) == "1.5 A as asked for");
  CHECK(wire.suffices());
}

TEST_CASE("an inner track carries half of an outer one, and a barrel what its annulus does") {
  const Length width = Length::fromMm(0.4), foil = Length::fromMm(0.035);
  CHECK(trackCurrent(width, foil, Kelvins(20), false).value == Approx(byHand(0.4, 0.048)));
  CHECK(trackCurrent(width, foil, Kelvins(20), true).value == Approx(byHand(0.4, 0.048) / 2));
  // pi * 0.02 mm * 0.32 mm is the section of a track of 0.5745 mm.
  CHECK(barrelCurrent(Length::fromMm(0.3), Length::fromMm(0.02), Kelvins(20)).value ==
        Approx(byHand(0.57446, 0.048)).epsilon(1e-4));
}

TEST_CASE("what lies beyond a branch does not limit the current, what lies before it does") {
  // TP1 - 1 mm - via - broken 3 mm - TP2, from where two tracks of 0.2 mm go on.
  BrokenBoard b;
  const NetId net = b.net("VCC", NetRole::supply);
  b.point("TP1", net, mm(3, 15), PadReach::top, 2);
  b.via(mm(10, 15), net, 3.0);
  b.DrawnBoard::track(mm(3, 15), mm(10, 15), b.top, net, 1.0);
  const TrackId cut = b.DrawnBoard::track(mm(10, 15), mm(25, 15), b.bottom, net, 3.0);
  b.via(mm(25, 15), net, 3.0);
  for (const double y : {10.0, 20.0}) {
    b.point("T" + std::to_string(y), net, mm(35, y), PadReach::top, 2);
    b.DrawnBoard::track(mm(25, 15), mm(35, y), b.top, net, 0.2);
  }
  const auto found = b.broken(net, {cut});
  REQUIRE_FALSE(found.jumpers.proposals.empty());
  CHECK(wordsOf(currentSaid(found.jumpers.proposals.front().wire)).starts_with("1 mm track carries 3.24 A"));
}

TEST_CASE("a polygon pad is taken to carry what its box's narrower side does") {
  BrokenBoard b;
  const NetId net = b.net("VCC", NetRole::supply);
  b.point("TP1", net, mm(5, 15), PadReach::top, 4);
  const auto jp =
      b.pin(b.part("JP1", PartKind::other, {}, Side::top, 0.1), "2", net, mm(30, 15), PadReach::top, 4);
  Pad pad = *b.board.pads.find(jp.pad);
  pad.shape = fromUser(PadShape::polygon);
  pad.polygon = {mm(-1, -3), mm(1, -3), mm(0.5, 0), mm(1, 3), mm(-1, 3)};
  pad.rotation = Degrees(30);
  b.board.pads.put(pad);
  b.DrawnBoard::track(mm(5, 15), mm(30, 15), b.top, net, 3.0);
  const auto found = b.broken(net, {jp.pad}).jumpers;
  REQUIRE_FALSE(found.proposals.empty());
  const WireChoice& wire = found.proposals.front().wire;
  CHECK(wordsOf(currentSaid(wire)).starts_with("pad of JP1.2 (2 mm wide) carries"));
  CHECK(wire.current.value.value == Approx(byHand(2.0, 0.048)).epsilon(1e-9));
}

TEST_CASE("a drilled hole in the straight way is gone round, and named where it closes the only way") {
  OneTrack b(fromUser(NetRole::signal), 0.2);
  b.drilled({}, "H1", b.net("NONE"), mm(20, 15), 3.0, 3.0);
  const auto round = b.broken(b.line, {b.cut}).jumpers;
  REQUIRE_FALSE(round.proposals.empty());
  KeepOut hole;
  hole.core.outer = {mm(20, 15)};
  for (const JumperProposal& p : round.proposals) {
    CHECK(p.way.size() > 2);
    for (std::size_t i = 1; i < p.way.size(); ++i)
      CHECK(distanceTo(hole, p.way[i - 1], p.way[i]).mm() >= 1.5 + 0.3 + p.wire.wire.outer.mm() / 2 - 0.02);
  }
  CHECK(round.proposals.front().detour.near == std::vector<KeepOutName>{bareHole});

  // Nothing is left beside it.
  for (const auto& [from, to] : {std::pair{0.0, 13.5}, {16.5, 30.0}})
    b.zone(ZoneKind::battery, "B", box(18, from, 22, to), 0.1);
  const auto over = b.broken(b.line, {b.cut}).jumpers;
  REQUIRE_FALSE(over.proposals.empty());
  const ProposalNote* holes = noteOf(over.proposals.front(), ProposalNote::Kind::overHoles);
  REQUIRE(holes != nullptr);
  CHECK(holes->keepOuts == std::vector<KeepOutName>{bareHole});
}

TEST_CASE("through-hole joints of other nets are gone round, the line's own are not") {
  for (const bool own : {false, true}) {
    OneTrack b(fromUser(NetRole::signal), 0.2);
    const PartId j = b.part("J7", PartKind::other, box(19, 14, 21, 16), Side::top, 0.1);
    b.drilled(j, "2", own ? b.line : b.net("OTHER"), mm(20, 15), 0.8, 1.6);
    if (own) b.DrawnBoard::track(mm(20, 15), mm(35, 15), b.top, b.line, 0.2);
    const auto found = b.broken(b.line, {b.cut}).jumpers;
    REQUIRE_FALSE(found.proposals.empty());
    for (const JumperProposal& p : found.proposals)
      if (!own) CHECK(p.way.size() > 2);
    if (!own)
      CHECK(found.proposals.front().detour.near ==
            std::vector<KeepOutName>{{KeepOutName::What::joint, ZoneKind::tallPart, "J7.2", {}}});
    else
      CHECK(found.proposals.front().way.size() == 2);
  }
}

TEST_CASE("bare pads of other nets under the wire are named") {
  OneTrack b(fromUser(NetRole::signal), 0.2);
  const PartId r = b.part("R3", PartKind::resistor, box(19, 14.6, 21, 15.4), Side::top, 0.4);
  b.pin(r, "1", b.net("OTHER"), mm(20, 15));
  const auto found = b.broken(b.line, {b.cut}).jumpers;
  REQUIRE_FALSE(found.proposals.empty());
  CHECK(found.proposals.front().way.size() == 2);
  const ProposalNote* bare = noteOf(found.proposals.front(), ProposalNote::Kind::overBareCopper);
  REQUIRE(bare != nullptr);
  REQUIRE(bare->copper.size() == 1);
  const Lookup lookup(b.board);
  CHECK(bare->copper[0].object == CopperObject(lookup.pinsLabelled("R3.1").at(0)));
}

TEST_CASE("no wire leads past a sound series part") {
  BrokenBoard b;
  const NetId net = b.net("A"), beyond = b.net("B");
  b.point("TP1", net, mm(5, 15));
  const PartId r = b.part("R1", PartKind::resistor, box(20, 14, 24, 16), Side::top, 0.4);
  Part resistor = *b.board.parts.find(r);
  resistor.value = fromUser(std::string("33R"));
  b.board.parts.put(resistor);
  b.pin(r, "1", net, mm(20, 15));
  b.pin(r, "2", beyond, mm(24, 15));
  b.point("TP2", beyond, mm(35, 15));
  const TrackId cut = b.DrawnBoard::track(mm(5, 15), mm(20, 15), b.top, net, 0.2);
  b.DrawnBoard::track(mm(24, 15), mm(35, 15), b.top, beyond, 0.2);
  const auto found = b.broken(net, {cut});
  REQUIRE(found.line.nets.size() == 2);
  REQUIRE_FALSE(found.jumpers.proposals.empty());
  for (const JumperProposal& p : found.jumpers.proposals)
    for (const Landing* l : {&p.from, &p.to})
      CHECK((l->point == "TP1" || l->point == "R1.1" || l->kind == LandingKind::outerTrack));
}
