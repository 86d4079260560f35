#include <catch2/catch.hpp>

#include "bench_board.h"
#include "jumper/scoring.h"

using namespace netmend;
using namespace netmend::test;

namespace {

KeepOutName named(const std::string& label) {
  return {KeepOutName::What::part, ZoneKind::tallPart, label, {}};
}

KeepOut keepOut(const std::string& label, const Ring& ring, double margin = 0.3) {
  KeepOut out;
  out.core.outer = ring;
  out.margin = Length::fromMm(margin);
  out.name = named(label);
  return out;
}

Ring movedBy(Ring ring, Point by) {
  for (Point& p : ring)
    p = p + by;
  return ring;
}

/// A wire 0.1 mm thick over an area that is put together by hand, between landings that a test may change.
struct Sheet {
  BenchBoard bench;
  FreeArea area;
  Landing from, to;
  Candidate candidate;
  JumperRequest request;
  WireRequest load;
  OwnCopper own;
  JumperData data;

  explicit Sheet(std::vector<Point> way = {mm(10, 10), mm(30, 10)}) {
    area.wire = Length(100'000);
    candidate.points = way;
    candidate.free.points = way;
    data.wires.wires = {{"thin", Length(40'000), Length(50'000), "", "", ""},
                        {"thick", Length(80'000), Length(100'000), "", "", ""}};
    data.wires.roles = {{NetRole::signal, Amperes(0.01), {}, Volts(10), "", ""}};
    data.wires.mostRise = Kelvins(50);
    data.wires.ambient = Celsius(20);
    data.wires.slack = 0.25;
    data.wires.endAllowance = Length(2'500'000);
    data.wires.endTack = Length(1'500'000);
    data.wires.tackSpacing = Length(8'000'000);
  }
  [[nodiscard]] JumperProposal written() {
    candidate.area = &area;
    candidate.from = &from;
    candidate.to = &to;
    from.at = candidate.points.front();
    to.at = candidate.points.back();
    from.opening.exit = candidate.free.points.front();
    to.opening.exit = candidate.free.points.back();
    area.bounds.clear();
    for (const KeepOut& k : area.obstacles.keepOuts) {
      Box box;
      for (const Point p : k.core.outer)
        box.include(p);
      const Length by = k.margin + Length(50'000);
      area.bounds.push_back({{box.min.x - by, box.min.y - by}, {box.max.x + by, box.max.y + by}});
    }
    const Lookup lookup(bench.board);
    auto out = writtenUp(lookup, candidate, request, load, own, data);
    REQUIRE(out);
    return *out;
  }
  [[nodiscard]] std::vector<Point> tacks() { return written().tackPoints; }
  [[nodiscard]] const ProposalNote* note(ProposalNote::Kind kind) {
    last = written();
    for (const ProposalNote& n : last.notes)
      if (n.kind == kind) return &n;
    return nullptr;
  }
  [[nodiscard]] std::vector<CopperObject> crossed() {
    std::vector<CopperObject> out;
    if (const ProposalNote* n = note(ProposalNote::Kind::overBareCopper))
      for (const CrossedCopper& c : n->copper)
        out.push_back(c.object);
    return out;
  }
  JumperProposal last;
};

using Kind = ProposalNote::Kind;

} // namespace

TEST_CASE("the least clearance is that of the wire's edge from the nearest keep-out, to the nanometre") {
  // On the way along y = 10 mm, then up along x = 30 mm.
  const std::vector<Point> way{mm(10, 10), mm(30, 10), mm(30, 25)};
  for (const bool turned : {false, true}) {
    Sheet s(turned ? std::vector<Point>(way.rbegin(), way.rend()) : way);
    CHECK_FALSE(s.written().leastClearance.known()); // nothing near
    s.area.obstacles.keepOuts = {keepOut("far", box(12, 12, 14, 13)), keepOut("beyond", box(40, 20, 41, 21))};
    CHECK(s.written().leastClearance == fromFile(Length(2'000'000 - 50'000)));
    CHECK(s.written().clearanceTo == named("far"));
    // Beside the other stretch, 1 nm nearer than that; then 1 nm farther.
    for (const auto& [nm, label] : {std::pair{1'999'999, "near"}, {2'000'001, "far"}}) {
      s.area.obstacles.keepOuts.push_back(
          keepOut("near", movedBy(box(0, 16, 2, 17), {mm(30, 0).x + Length(nm), Length(0)})));
      CHECK(s.written().leastClearance.value == Length(std::min(nm, 2'000'000) - 50'000));
      CHECK(s.written().clearanceTo == named(label));
      s.area.obstacles.keepOuts.pop_back();
    }
    // As near: the first of them is named.
    s.area.obstacles.keepOuts.push_back(keepOut("as near", box(32, 16, 33, 17)));
    CHECK(s.written().clearanceTo == named("far"));
  }
}

TEST_CASE("a wire that touches a keep-out has no clearance, never less than none") {
  Sheet s;
  s.area.obstacles.keepOuts = {keepOut("U1", movedBy(box(12, 10, 13, 11), {Length(0), Length(50'001)}))};
  CHECK(s.written().leastClearance.value == Length(1));
  s.area.obstacles.keepOuts = {keepOut("U1", box(12, 9, 13, 11))};
  CHECK(s.written().leastClearance.value == Length(0));
  CHECK(s.written().leastClearance.known());
}

TEST_CASE("the parts that a wire ends on do not count for its clearance, others and drawn zones do") {
  for (const bool atFrom : {false, true}) {
    Sheet s;
    KeepOut own = keepOut("U1", box(12, 10.2, 13, 11));
    own.part = PartId{7};
    s.area.obstacles.keepOuts = {own, keepOut("zone", box(12, 10.5, 13, 11))};
    CHECK(s.written().clearanceTo == named("U1"));
    (atFrom ? s.from : s.to).part = PartId{7};
    CHECK(s.written().clearanceTo == named("zone"));
    CHECK(s.written().leastClearance.value == Length(450'000));
    (atFrom ? s.from : s.to).part = PartId{8};
    CHECK(s.written().clearanceTo == named("U1"));
    CHECK(s.written().leastClearance.value == Length(150'000));
  }
}

TEST_CASE("a clearance is guessed where the shape of the nearest keep-out is") {
  Sheet s;
  s.area.obstacles.keepOuts = {keepOut("near", box(12, 12, 13, 13)), keepOut("far", box(12, 14, 13, 15))};
  s.area.obstacles.keepOuts[1].guessed = true;
  CHECK(s.written().leastClearance.origin == Origin::file);
  s.area.obstacles.keepOuts[1].guessed = false;
  s.area.obstacles.keepOuts[0].guessed = true;
  CHECK(s.written().leastClearance.origin == Origin::guessed);
}

TEST_CASE("length, wire and cut are those of the whole way, from landing to landing") {
  Sheet s({mm(10, 10), mm(13, 14), mm(25, 14), mm(25, 11)}); // 5 + 12 + 3 mm
  s.area.side = Side::bottom;
  s.candidate.free.points = {mm(13, 14), mm(25, 14)};
  s.candidate.terms = {{TermKind::bends, Price(3), {}, 2}};
  s.candidate.total = Price(3);
  s.from.point = "A1";
  s.to.point = "B1";
  const JumperProposal p = s.written();
  CHECK(p.way == s.candidate.points);
  CHECK(p.length == Length(20'000'000));
  CHECK(p.wire.length == Length(20'000'000));
  // A quarter more, and 2.5 mm at each end.
  CHECK(p.wire.cutLength == Length(25'000'000 + 5'000'000));
  CHECK(p.side == Side::bottom);
  CHECK(p.from.point == "A1");
  CHECK(p.to.point == "B1");
  CHECK(p.terms == s.candidate.terms);
  CHECK(p.total == Price(3));
  CHECK_FALSE(p.difference.any());
  CHECK(p.notes.empty());
}

TEST_CASE("a wire is taken for the narrower of its landings, as far as their widths are known") {
  const Fact<Length> wide = fromFile(Length(90'000)), narrow = guessed(Length(60'000)), unknown;
  const auto chosenFor = [](const Fact<Length>& from, const Fact<Length>& to) {
    Sheet s;
    s.from.width = from;
    s.to.width = to;
    return s.written().wire;
  };
  for (const auto& [from, to, taken] : {std::tuple{wide, narrow, narrow},
                                        {narrow, wide, narrow},
                                        {unknown, narrow, narrow},
                                        {narrow, unknown, narrow},
                                        {wide, unknown, wide},
                                        {unknown, wide, wide},
                                        {unknown, unknown, unknown}})
    CHECK(chosenFor(from, to).landingWidth == taken);
  // As wide as each other: what is said of the first.
  CHECK(chosenFor(fromFile(Length(90'000)), guessed(Length(90'000))).landingWidth.origin == Origin::file);
  CHECK(chosenFor(guessed(Length(90'000)), fromFile(Length(90'000))).landingWidth.origin == Origin::guessed);
}

TEST_CASE("a wire shorter than both its end tacks is held in its middle") {
  CHECK(Sheet({mm(10, 10), mm(12, 10)}).tacks() == std::vector<Point>{mm(11, 10)});
  CHECK(Sheet({mm(13, 10), mm(10, 10)}).tacks() == std::vector<Point>{mm(11.5, 10)});
  CHECK(Sheet({mm(10, 10), mm(10, 13.000002)}).tacks() ==
        std::vector<Point>{mm(10, 11.5), mm(10, 11.500002)});
  CHECK(Sheet({mm(10, 10), mm(10, 10)}).tacks() == std::vector<Point>{mm(10, 10)});
  // Round a corner: 1.2 mm and 0.8 mm.
  CHECK(Sheet({mm(10, 10), mm(11.2, 10), mm(11.2, 9.2)}).tacks() == std::vector<Point>{mm(11, 10)});
}

TEST_CASE("spots of mask are no farther apart than the spacing, in equal steps between ends and bends") {
  // 1.5 mm from each end; 8 mm between them need none, a nanometre more needs one.
  CHECK(Sheet({mm(10, 10), mm(21, 10)}).tacks() == std::vector<Point>{mm(11.5, 10), mm(19.5, 10)});
  CHECK(Sheet({mm(10, 10), mm(21.000002, 10)}).tacks() ==
        std::vector<Point>{mm(11.5, 10), mm(15.500001, 10), mm(19.500002, 10)});
  CHECK(Sheet({mm(10, 10), mm(10, 37)}).tacks() ==
        std::vector<Point>{mm(10, 11.5), mm(10, 19.5), mm(10, 27.5), mm(10, 35.5)});
  // Slanting, as 3:4:5; down and to the left.
  CHECK(Sheet({mm(40, 30), mm(31, 18)}).tacks() ==
        std::vector<Point>{mm(39.1, 28.8), mm(35.5, 24), mm(31.9, 19.2)});
}

TEST_CASE("a spot of mask holds each bend, but for those nearer to an end than its own") {
  // 2 + 8.5 + 5 mm: tacks at 1.5, 2, halfway to 10.5, 10.5 and 14 mm.
  CHECK(Sheet({mm(10, 10), mm(12, 10), mm(12, 18.5), mm(17, 18.5)}).tacks() ==
        std::vector<Point>{mm(11.5, 10), mm(12, 10), mm(12, 14.25), mm(12, 18.5), mm(15.5, 18.5)});
  const auto count = [](double first, double last) {
    return Sheet({mm(10, 10), mm(10 + first, 10), mm(10 + first, 10 + last)}).tacks().size();
  };
  CHECK(count(1.5, 5) == 2);
  CHECK(count(1.500001, 5) == 3);
  CHECK(count(5, 1.5) == 2);
  CHECK(count(5, 1.500001) == 3);
  CHECK(count(4, 4) == 3);
}

TEST_CASE("why a way is not straight: what stands between the landings' exits, each once") {
  Sheet s({mm(10, 10), mm(20, 14), mm(30, 10)});
  s.area.obstacles.keepOuts = {keepOut("U2", box(12, 9, 13, 11)), keepOut("U1", box(18, 9, 19, 11)),
                               keepOut("U2", box(22, 9, 23, 11)), keepOut("off", box(22, 12, 23, 13))};
  const Detour bent = s.written().detour;
  CHECK_FALSE(bent.straight);
  CHECK(bent.straightLength == Length(20'000'000));
  CHECK(bent.near == std::vector<KeepOutName>{named("U1"), named("U2")});
  // A wire that bends only where it leaves a margin runs straight over free board.
  s.candidate.free.points = {mm(11, 10), mm(28, 10)};
  CHECK(s.written().detour.straight);
  CHECK(s.written().detour.near.empty());
  CHECK(s.written().detour.straightLength == Length(17'000'000));
}

TEST_CASE("a wire within half a millimetre of a guessed body's margin says so, by every stretch of it") {
  // Margin 0.3 mm and half a wire and half a millimetre: 0.85 mm from its middle.
  for (const bool second : {false, true})
    for (const auto& [nm, said] : {std::pair{849'999, true}, {850'000, false}}) {
      Sheet s({mm(10, 10), mm(30, 10), mm(30, 25)});
      const Ring ring = second ? movedBy(box(30, 16, 31, 17), {Length(nm), Length(0)})
                               : movedBy(box(16, 10, 17, 11), {Length(0), Length(nm)});
      s.area.obstacles.keepOuts = {keepOut("U9", ring), keepOut("A1", box(15, 9, 16, 9.5))};
      CHECK(s.note(Kind::guessedBodies) == nullptr);
      s.area.obstacles.keepOuts[0].part = PartId{1};
      s.area.obstacles.keepOuts[0].guessed = true;
      const ProposalNote* note = s.note(Kind::guessedBodies);
      CHECK((note != nullptr) == said);
      if (note != nullptr) CHECK(note->keepOuts == std::vector<KeepOutName>{named("U9")});
    }
}

TEST_CASE("a guessed outline is said as such, not as a guessed body") {
  Sheet s;
  KeepOut edge = keepOut("", box(9, 9.9, 31, 10.1));
  edge.guessed = true;
  edge.wallOnly = true;
  s.area.obstacles.keepOuts = {edge};
  REQUIRE(edge.isBoardEdge());
  CHECK(s.note(Kind::guessedBodies) == nullptr);
  CHECK(s.note(Kind::outlineGuessed) == nullptr);
  s.area.outlineGuessed = true;
  CHECK(s.note(Kind::outlineGuessed) != nullptr);
}

TEST_CASE("each zone that the job sets aside is named with its reason, those that are gone are not") {
  Sheet s;
  const ZoneId antenna = s.bench.zone(ZoneKind::antenna, "ANT", box(1, 1, 2, 2), 0.1);
  const ZoneId flex = s.bench.zone(ZoneKind::flex, "FLX", box(3, 1, 4, 2), 0.1);
  s.request.overrides = {{flex, "folded away"}, {ZoneId{999}, "gone"}, {antenna, "not used"}};
  const auto notes = s.written().notes;
  REQUIRE(notes.size() == 2);
  CHECK(notes[0].kind == Kind::zoneSetAside);
  CHECK(notes[0].reason == "folded away");
  CHECK(notes[0].keepOuts == std::vector<KeepOutName>{{KeepOutName::What::zone, ZoneKind::flex, "FLX", {}}});
  CHECK(notes[1].reason == "not used");
  CHECK(notes[1].keepOuts ==
        std::vector<KeepOutName>{{KeepOutName::What::zone, ZoneKind::antenna, "ANT", {}}});
}

TEST_CASE("holes that no way keeps clear of are named where the wire is inside their margin") {
  // Margin 0.3 mm and half a wire.
  for (const bool second : {false, true})
    for (const auto& [nm, said] : {std::pair{349'999, true}, {350'000, false}}) {
      Sheet s({mm(10, 10), mm(30, 10), mm(30, 25)});
      const Ring ring = second ? movedBy(box(30, 16, 31, 17), {Length(nm), Length(0)})
                               : movedBy(box(16, 10, 17, 11), {Length(0), Length(nm)});
      s.area.passable = {keepOut("H2", box(1, 1, 2, 2)), keepOut("H1", ring)};
      const ProposalNote* note = s.note(Kind::overHoles);
      CHECK((note != nullptr) == said);
      if (note != nullptr) CHECK(note->keepOuts == std::vector<KeepOutName>{named("H1")});
    }
  Sheet s;
  s.area.passable = {keepOut("H2", box(12, 9, 13, 11)), keepOut("H1", box(14, 9, 15, 11)),
                     keepOut("H2", box(16, 9, 17, 11))};
  REQUIRE(s.note(Kind::overHoles) != nullptr);
  CHECK(s.note(Kind::overHoles)->keepOuts == std::vector<KeepOutName>{named("H1"), named("H2")});
}

TEST_CASE("a wire that comes nearer to bare copper of another net than its own half shorts the two") {
  // Half a wire and 5 µm for copper drawn as a polygon: 55 µm from its middle. Pads of 1 mm.
  for (const auto& at : {mm(20, 10), mm(30, 18), mm(10, 10), mm(30, 25)}) {
    Sheet s({mm(10, 10), mm(30, 10), mm(30, 25)});
    const auto pad = s.bench.pin({}, "TP9", s.bench.net("B"), at, PadReach::top, 1);
    CHECK(s.crossed() == std::vector<CopperObject>{pad.pin});
    CHECK(s.note(Kind::overBareCopper)->copper[0].at == at);
  }
  for (const auto& [nm, shorts] : {std::pair{554'999, true}, {555'000, false}})
    for (const Point by : {Point{Length(20'000'000), Length(10'000'000 + nm)},
                           Point{Length(20'000'000), Length(10'000'000 - nm)},
                           Point{Length(30'000'000 + nm), Length(18'000'000)},
                           Point{Length(10'000'000 - nm), Length(10'000'000)}}) {
      Sheet s({mm(10, 10), mm(30, 10), mm(30, 25)});
      s.bench.pin({}, "TP9", s.bench.net("B"), by, PadReach::top, 1);
      CHECK(s.crossed().empty() != shorts);
    }
}

TEST_CASE("copper that lies under all of a wire is found though none of its corners is near") {
  Sheet s({mm(19, 14), mm(21, 15), mm(20, 16)});
  const auto pad = s.bench.pin({}, "TP9", s.bench.net("B"), mm(20, 15), PadReach::top, 20);
  CHECK(s.crossed() == std::vector<CopperObject>{pad.pin});
  // Three corners are enough.
  Pad triangle = *s.bench.board.pads.find(pad.pad);
  triangle.shape = fromUser(PadShape::polygon);
  triangle.polygon = {mm(-40, -20), mm(40, -20), mm(0, 40)};
  s.bench.board.pads.put(triangle);
  CHECK(s.crossed() == std::vector<CopperObject>{pad.pin});
}

TEST_CASE("round copper counts out to its arc") {
  // A disc of 1 mm: 0.5 mm and half a wire; what is drawn for it is at most 5 µm smaller.
  for (const auto& [nm, shorts] : {std::pair{549'999, true}, {555'001, false}})
    for (int turn = 0; turn < 16; ++turn) {
      Sheet s;
      const double angle = turn * std::numbers::pi / 8;
      const Point centre = mm(20, 15), along{Length(std::llround(1e7 * std::cos(angle))),
                                             Length(std::llround(1e7 * std::sin(angle)))};
      // A way past the disc, its middle `nm` from the centre.
      const Point off{Length(std::llround(-nm * std::sin(angle))),
                      Length(std::llround(nm * std::cos(angle)))};
      s.candidate.points = s.candidate.free.points = {centre + off - along, centre + off + along};
      const auto made = s.bench.pin({}, "TP9", s.bench.net("B"), centre, PadReach::top, 1);
      Pad pad = *s.bench.board.pads.find(made.pad);
      pad.shape = fromUser(PadShape::circle);
      s.bench.board.pads.put(pad);
      INFO(turn);
      CHECK(s.crossed().empty() != shorts);
    }
}

TEST_CASE("no short: the line's own pads, those of the other side, drilled ones and those without a shape") {
  Sheet s;
  const NetId other = s.bench.net("B");
  const PartId r1 = s.bench.part("R1", PartKind::resistor, box(12, 9, 16, 11), Side::bottom, 0.4);
  const auto own = s.bench.pin({}, "TP1", other, mm(12, 10));
  const auto second = s.bench.pin({}, "TP2", other, mm(14, 10));
  s.bench.pin({}, "TP3", other, mm(16, 10), PadReach::bottom);
  const auto drilled = s.bench.pin({}, "TP4", other, mm(18, 10), PadReach::allLayers);
  const auto shapeless = s.bench.pin({}, "TP5", other, mm(20, 10));
  const auto unknown = s.bench.pin(r1, "1", other, mm(22, 10)); // where it is known by its part's side
  const auto edit = [&](PadId id, auto change) {
    Pad pad = *s.bench.board.pads.find(id);
    change(pad);
    s.bench.board.pads.put(pad);
  };
  edit(drilled.pad, [](Pad& pad) { pad.drill = fromUser(Size{Length(1), Length(1)}); });
  edit(shapeless.pad, [](Pad& pad) { pad.shape = {}; });
  edit(unknown.pad, [](Pad& pad) { pad.reach = {}; });
  s.own.pads = {own.pad};
  CHECK(s.crossed() == std::vector<CopperObject>{second.pin});
  s.own.pads = {own.pad, second.pad};
  CHECK(s.note(Kind::overBareCopper) == nullptr);
  s.own.pads = {};
  CHECK(s.crossed() == std::vector<CopperObject>{own.pin, second.pin});
  s.area.side = Side::bottom;
  CHECK(s.crossed().size() == 2);
  CHECK(s.crossed().back() == CopperObject(unknown.pin));
}

TEST_CASE("a pin of several pads under a wire is named once") {
  Sheet s;
  const NetId other = s.bench.net("B");
  const auto one = s.bench.pin({}, "TP1", other, mm(12, 10)), two = s.bench.pin({}, "TP2", other, mm(14, 10));
  Pad again = *s.bench.board.pads.find(one.pad);
  again.position = fromUser(mm(16, 10));
  s.bench.put(s.bench.board.pads, again);
  CHECK(s.crossed() == std::vector<CopperObject>{one.pin, two.pin});
  CHECK(s.last.notes.back().copper[0].at == mm(12, 10));
}

TEST_CASE("vias under a wire are bare unless mask is known to cover them on that side, or they are its own") {
  const auto crosses = [](Side side, Fact<MaskOpening> mask, bool own = false) {
    Sheet s;
    Via via;
    via.position = mm(20, 10);
    via.diameter = fromUser(Length(600'000));
    via.maskOpening = mask;
    const ViaId id = s.bench.put(s.bench.board.vias, via);
    if (own) s.own.vias = {id};
    s.area.side = side;
    const bool found = s.crossed() == std::vector<CopperObject>{id};
    if (found) CHECK(s.last.notes.back().copper[0].at == mm(20, 10));
    return found;
  };
  for (const Side side : {Side::top, Side::bottom}) {
    const MaskOpening here = side == Side::top ? MaskOpening::top : MaskOpening::bottom;
    const MaskOpening there = side == Side::top ? MaskOpening::bottom : MaskOpening::top;
    CHECK(crosses(side, {}));
    CHECK(crosses(side, fromUser(MaskOpening::both)));
    CHECK(crosses(side, fromUser(here)));
    CHECK_FALSE(crosses(side, fromUser(there)));
    CHECK_FALSE(crosses(side, fromUser(MaskOpening::none)));
    CHECK_FALSE(crosses(side, {}, true));
  }
}

TEST_CASE("a via under a wire is found wherever on the board they are") {
  // The same picture turned and mirrored: x and y change places, and signs.
  for (const bool swapped : {false, true})
    for (const int sx : {-1, 1})
      for (const int sy : {-1, 1}) {
        const auto turned = [&](Point p) {
          if (swapped) std::swap(p.x, p.y);
          return Point{Length(sx * p.x.nm), Length(sy * p.y.nm)};
        };
        const auto crosses = [&](Point at) {
          Sheet s({turned(mm(10, 10)), turned(mm(30, 10)), turned(mm(30, 25))});
          Via via;
          via.position = turned(at);
          via.diameter = fromUser(Length(600'000));
          s.bench.put(s.bench.board.vias, via);
          return !s.crossed().empty();
        };
        // In the middle, at the bend, and beyond both ends by less and by more than the ring and half a wire.
        CHECK(crosses(mm(20, 10)));
        CHECK(crosses(mm(30, 10)));
        for (const auto& [nm, shorts] : {std::pair{349'999, true}, {355'001, false}}) {
          CHECK(crosses({Length(10'000'000 - nm), Length(10'000'000)}) == shorts);
          CHECK(crosses({Length(30'000'000), Length(25'000'000 + nm)}) == shorts);
          CHECK(crosses({Length(30'000'000 + nm), Length(20'000'000)}) == shorts);
          CHECK(crosses({Length(20'000'000), Length(10'000'000 - nm)}) == shorts);
        }
      }
}

TEST_CASE("a via reaches as far as its ring, or its hole where no ring is known") {
  const auto crosses = [](Fact<Length> diameter, Fact<Length> drill, std::int64_t off) {
    Sheet s;
    Via via;
    via.position = mm(20, 10) + Point{Length(0), Length(off)};
    via.diameter = diameter;
    via.drill = drill;
    s.bench.put(s.bench.board.vias, via);
    return !s.crossed().empty();
  };
  const auto wide = fromUser(Length(600'000)), narrow = fromUser(Length(300'000));
  for (const auto& [diameter, drill] : {std::pair{wide, narrow}, {narrow, wide}, {wide, {}}, {{}, wide}}) {
    CHECK(crosses(diameter, drill, 349'999));
    CHECK_FALSE(crosses(diameter, drill, 355'001));
  }
  CHECK_FALSE(crosses({}, {}, 0));
  CHECK(crosses(fromUser(Length(2)), {}, 0));
}
