#include <catch2/catch.hpp>

#include "netmend/board/lookup.h"
#include "netmend/netgraph/handle.h"
#include "netmend/netgraph/place_name.h"
#include "netmend/netgraph/track_runs.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Resistor R1 on the top, capacitor C1 on the bottom, two layers.
struct TwoSides : DrawnBoard {
  LayerId top = layer("top"), bottom = layer("bottom");
  NetId key = net("KEY");
  PartId r1 = part("R1", Side::top, {}), c1 = part("C1", Side::bottom, {});
  PinId first = pin(r1, "1", key), second = pin(r1, "2", key), below = pin(c1, "1", key);

  TwoSides() {
    board.info.layerOrder = {top, bottom};
    pad(first, mm(10, 10), PadReach::top, 0.5);
    pad(second, mm(14, 10), PadReach::top, 0.5);
    pad(below, mm(30, 10), PadReach::bottom, 0.5);
  }
};

/// As it is said: pin, direction, tenths of a millimetre.
Beside said(const char* pin, std::optional<Heading> heading, int tenths) {
  return {pin, heading, tenths, {}};
}

} // namespace

TEST_CASE("a place is called by the nearest pin, its direction and how far it is") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  const auto at = [&](double x, double y) { return names.beside(mm(x, y), Side::top); };
  CHECK(at(10.299, 10) == said("R1.1", {}, 0));
  CHECK(at(10.3, 10) == said("R1.1", Heading::right, 3));
  CHECK(at(9, 10) == said("R1.1", Heading::left, 10));
  CHECK(at(10, 11) == said("R1.1", Heading::above, 10));
  CHECK(at(10, 8.8) == said("R1.1", Heading::below, 12));
  CHECK(at(10, 12.34) == said("R1.1", Heading::above, 23));
  CHECK(at(10, 12.36) == said("R1.1", Heading::above, 24));
  CHECK(at(10, 26.24) == said("R1.1", Heading::above, 162));
  // Whichever of the two directions it lies farther in.
  CHECK(at(10.5, 10.5).heading == Heading::right);
  CHECK(at(10.5, 10.501).heading == Heading::above);
  // Of equally near pins the first by name.
  CHECK(at(12, 10).pin == "R1.1");
  CHECK(at(12.001, 10).pin == "R1.2");
}

TEST_CASE("the bottom is looked at from below: right on the top is left there") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  CHECK(names.beside(mm(31, 10), Side::bottom) == said("C1.1", Heading::left, 10));
  CHECK(names.beside(mm(29, 10), Side::bottom) == said("C1.1", Heading::right, 10));
  CHECK(names.beside(mm(30, 11), Side::bottom) == said("C1.1", Heading::above, 10));
  // Nothing of the other side is in sight.
  CHECK(names.beside(mm(31, 10), Side::top).pin == "R1.2");
  CHECK(names.beside(mm(10, 10), Side::bottom).pin == "C1.1");
}

TEST_CASE("pins that nobody sees name no place, and without any it is given by where it is") {
  TwoSides drawn;
  const auto nearest = [&] {
    const Lookup lookup(drawn.board);
    return PlaceNames(lookup).beside(mm(10, 10), Side::top).pin;
  };
  CHECK(nearest() == "R1.1");
  Pad hidden = *drawn.board.pads.begin();
  for (const Access access : {Access::underLid, Access::underPart}) {
    hidden.access = fromUser(access);
    drawn.board.pads.put(hidden);
    CHECK(nearest() == "R1.2");
  }
  hidden.access = fromUser(Access::underMask);
  drawn.board.pads.put(hidden);
  CHECK(nearest() == "R1.1");
  Part gone = *drawn.board.parts.find(drawn.r1);
  gone.fitted = fromUser(false);
  drawn.board.parts.put(gone);
  const Lookup lookup(drawn.board);
  const Beside none = PlaceNames(lookup).beside(mm(10, 10), Side::top);
  CHECK(none.pin.empty());
  CHECK(none.at == mm(10, 10));
}

TEST_CASE("a through-hole pad is in sight on both sides") {
  TwoSides drawn;
  Pad hole = *drawn.board.pads.begin();
  hole.reach = fromUser(PadReach::allLayers);
  hole.drill = fromUser(Size{Length::fromMm(0.3), Length::fromMm(0.3)});
  drawn.board.pads.put(hole);
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  CHECK(names.beside(mm(10, 10), Side::top).pin == "R1.1");
  CHECK(names.beside(mm(10, 10), Side::bottom).pin == "R1.1");
}

TEST_CASE("a name says what the copper is, and the layer it is on") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  CHECK(names.of(drawn.first, {}, 0).sort == PlaceName::Sort::pin);
  CHECK(names.of(drawn.first, {}, 0).label == "R1.1");
  const PlaceName pad = names.of(drawn.board.pads.begin()->id, {}, 0);
  CHECK(pad.sort == PlaceName::Sort::pad);
  CHECK(pad.label == "R1.1");
  const PlaceName via = names.of(ViaId{9}, mm(31, 10), 1);
  CHECK(via.sort == PlaceName::Sort::via);
  CHECK(via.layer == PlaceName::Layer::bottom);
  CHECK(via.beside.pin == "C1.1");
  const PlaceName spot = names.of(TrackId{9}, mm(10, 11), 0);
  CHECK(spot.sort == PlaceName::Sort::spot);
  CHECK(spot.layer == PlaceName::Layer::top);
  CHECK(names.layerOf(-1) == PlaceName::Layer::top);
  TwoSides four = drawn;
  four.board.info.layerOrder = {four.top, four.layer("in1"), four.layer("in2"), four.bottom};
  const Lookup more(four.board);
  CHECK(PlaceNames(more).layerOf(1) == PlaceName::Layer::inner);
  CHECK(PlaceNames(more).layerOf(2) == PlaceName::Layer::inner);
  CHECK(PlaceNames(more).layerOf(3) == PlaceName::Layer::bottom);
  CHECK(PlaceNames(more).sideOf(2) == Side::top);
}

TEST_CASE("a handle says one place and is read again") {
  TwoSides drawn;
  Via via;
  via.position = mm(12, 8.5);
  const ViaId id = drawn.put(drawn.board.vias, via);
  const std::string number = std::to_string(id.value);
  CHECK(viaHandle(drawn.board, id, -1) == "via " + number);
  CHECK(viaHandle(drawn.board, id, 0) == "via " + number + " top");
  CHECK(viaHandle(drawn.board, id, 1) == "via " + number + " bottom");
  CHECK(pointHandle(drawn.board, mm(12, -8.5), 0) == "12.00,-8.50 top");
  CHECK(pointHandle(drawn.board, mm(12, 8.5), -1) == "12.00,8.50");
  for (const int layer : {-1, 0, 1}) {
    const auto whole = placeOfHandle(drawn.board, viaHandle(drawn.board, id, layer));
    REQUIRE(whole);
    CHECK(whole->object == CopperObject(id));
    CHECK(whole->at == mm(12, 8.5));
    CHECK(whole->layer == layer);
    const auto point = placeOfHandle(drawn.board, pointHandle(drawn.board, mm(3, -4.25), layer));
    REQUIRE(point);
    CHECK(point->object == CopperObject());
    CHECK(point->at == mm(3, -4.25));
    CHECK(point->layer == layer);
  }
  drawn.board.info.layerOrder.insert(drawn.board.info.layerOrder.begin() + 1, drawn.layer("in1"));
  CHECK(viaHandle(drawn.board, id, 1) == "via " + number + " layer 1");
  CHECK(placeOfHandle(drawn.board, "via " + number + " layer 1")->layer == 1);
  for (const std::string& wrong :
       {std::string("via 99999"), "via " + number + " inside", std::string("via"), std::string("R1.1"),
        std::string("12.00"), std::string("12.00,"), std::string("12.00,8.50 layer 7"), std::string()})
    CHECK_FALSE(placeOfHandle(drawn.board, wrong));
}

namespace {

/// R1.1 by a track of two pieces to a via, on the bottom to C1.1; a stub leaves it at x = 18.
struct DrawnRun : TwoSides {
  ViaId via;
  DrawnRun() {
    Via drilled;
    drilled.position = mm(22, 20);
    drilled.diameter = fromUser(Length::fromMm(0.6));
    drilled.drill = fromUser(Length::fromMm(0.3));
    drilled.net = fromUser(key);
    via = put(board.vias, drilled);
    track(mm(10, 10), mm(10, 20), top, key, 0.2);
    track(mm(10, 20), mm(22, 20), top, key, 0.2);
    track(mm(22, 20), mm(30, 10), bottom, key, 0.2);
  }
  [[nodiscard]] std::vector<TrackRun> runs() const {
    const Lookup lookup(board);
    const BoardGraph graph = buildBoardGraph(board);
    const Line line = lineOf(lookup, graph, key);
    auto found = trackRuns(PlaceNames(lookup), line).runs;
    std::sort(found.begin(), found.end(), [](const TrackRun& a, const TrackRun& b) { return a.mm < b.mm; });
    return found;
  }
};

} // namespace

TEST_CASE("a track goes from one thing that a person finds to the next, over its corners") {
  const DrawnRun drawn;
  const auto runs = drawn.runs();
  REQUIRE(runs.size() == 2);
  CHECK(runs[0].mm == Approx(std::hypot(8, 10)));
  CHECK(runs[0].from.sort == TrackEnd::Sort::pin);
  CHECK(runs[0].from.pin == "C1.1");
  CHECK(runs[0].to.sort == TrackEnd::Sort::via);
  CHECK(runs[0].to.beside.pin == "C1.1"); // from below
  CHECK(runs[1].mm == Approx(22));
  CHECK(runs[1].from.pin == "R1.1");
  CHECK(runs[1].to.sort == TrackEnd::Sort::via);
  CHECK(runs[1].to.beside == said("R1.2", Heading::above, 128));
}

TEST_CASE("a fork parts a track, and what leads nowhere has an end") {
  DrawnRun drawn;
  drawn.track(mm(16, 20), mm(16, 26), drawn.top, drawn.key, 0.2);
  const auto runs = drawn.runs();
  REQUIRE(runs.size() == 4);
  CHECK(runs[0].mm == Approx(6)); // fork to via, or the stub
  CHECK(runs[1].mm == Approx(6));
  const bool stubFirst = runs[0].to.sort == TrackEnd::Sort::end;
  const TrackRun &stub = runs[stubFirst ? 0 : 1], &onward = runs[stubFirst ? 1 : 0];
  CHECK(stub.from.sort == TrackEnd::Sort::fork);
  CHECK(stub.to.sort == TrackEnd::Sort::end);
  CHECK(onward.from.sort == TrackEnd::Sort::via);
  CHECK(onward.to.sort == TrackEnd::Sort::fork);
  CHECK(runs[3].mm == Approx(16));
  CHECK(runs[3].to.sort == TrackEnd::Sort::fork);
  CHECK(runs[3].to.beside == said("R1.2", Heading::above, 102));
}

TEST_CASE("of what is as near the first by label, whatever order the pads are in") {
  for (const bool turned : {false, true}) {
    DrawnBoard b;
    const NetId net = b.net("A");
    const PartId r = b.part("R1", Side::top, {});
    const PinId one = b.pin(r, turned ? "2" : "1", net), two = b.pin(r, turned ? "1" : "2", net);
    b.pad(one, mm(10, 10), PadReach::top, 0.5);
    b.pad(two, mm(14, 10), PadReach::top, 0.5);
    const Lookup lookup(b.board);
    CHECK(PlaceNames(lookup).beside(mm(12, 10), Side::top).pin == "R1.1");
  }
}

TEST_CASE("a distance is rounded to tenths of a millimetre, slanting too") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  const auto at = [&](double x, double y) { return names.beside(mm(10 + x, 10 + y), Side::top); };
  CHECK(at(0, 2.44) == said("R1.1", Heading::above, 24));
  CHECK(at(0, 2.46) == said("R1.1", Heading::above, 25));
  CHECK(at(-3, 4) == said("R1.1", Heading::above, 50));
  CHECK(at(-4, -3) == said("R1.1", Heading::left, 50));
  CHECK(at(-0.6, 0.8) == said("R1.1", Heading::above, 10));
  CHECK(at(-0.5, -0.5).heading == Heading::left);
  CHECK(at(-0.5, 0.5).heading == Heading::left);
  CHECK(at(0, 0.34) == said("R1.1", Heading::above, 3));
  CHECK(at(0, 0.36) == said("R1.1", Heading::above, 4));
  CHECK(at(0, -1.999) == said("R1.1", Heading::below, 20));
  CHECK(at(0, -2) == said("R1.1", Heading::below, 20));
  CHECK(names.beside(mm(10, 10), Side::top) == said("R1.1", {}, 0));
}

TEST_CASE("a pad is seen on its part's side, without one on the top, and where it is known to be fitted or "
          "not said") {
  const auto sees = [](auto change) {
    DrawnBoard b;
    const NetId net = b.net("A");
    const PartId r = b.part("R1", Side::bottom, {});
    const PinId pin = b.pin(r, "1", net);
    b.pad(pin, mm(10, 10), PadReach::bottom, 0.5);
    Part part = *b.board.parts.find(r);
    Pad pad = *b.board.pads.begin();
    Pin p = *b.board.pins.find(pin);
    change(part, pad, p);
    b.board.parts.put(part);
    b.board.pads.put(pad);
    b.board.pins.put(p);
    const Lookup lookup(b.board);
    const PlaceNames names(lookup);
    return std::pair{!names.beside(mm(10, 10), Side::top).pin.empty(),
                     !names.beside(mm(10, 10), Side::bottom).pin.empty()};
  };
  using Both = std::pair<bool, bool>;
  CHECK(sees([](Part&, Pad&, Pin&) {}) == Both{false, true});
  CHECK(sees([](Part& p, Pad&, Pin&) { p.side = {}; }) == Both{true, false});
  CHECK(sees([](Part& p, Pad&, Pin&) { p.side = fromUser(Side::top); }) == Both{true, false});
  CHECK(sees([](Part&, Pad&, Pin& p) { p.part = {}; }) == Both{true, false});
  CHECK(sees([](Part& p, Pad&, Pin&) { p.fitted = fromUser(true); }) == Both{false, true});
  CHECK(sees([](Part& p, Pad&, Pin&) { p.fitted = fromUser(false); }) == Both{false, false});
  CHECK(sees([](Part&, Pad& p, Pin&) { p.position = {}; }) == Both{false, false});
  CHECK(sees([](Part&, Pad& p, Pin&) { p.pin = PinId{999}; }) == Both{false, false});
  CHECK(sees([](Part&, Pad& p, Pin&) {
          p.drill = fromUser(Size{Length(1), Length(1)});
        }) == Both{true, true});
  CHECK(sees([](Part&, Pad& p, Pin&) {
          p.drill = fromUser(Size{Length(0), Length(1)});
        }) == Both{false, true});
  for (const Access access : {Access::open, Access::underMask, Access::underPart, Access::underLid})
    CHECK(sees([access](Part&, Pad& p, Pin&) { p.access = fromUser(access); }).second ==
          (access == Access::open || access == Access::underMask));
}

TEST_CASE("a place where no pin is in sight is given by where it is, on whichever side") {
  const DrawnBoard empty;
  const Lookup lookup(empty.board);
  const Beside none = PlaceNames(lookup).beside(mm(3, 4), Side::bottom);
  CHECK(none == Beside{"", {}, 0, mm(3, 4)});
}

TEST_CASE("a name has its layer and how far away it is, each kind by its own fields") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  using Sort = PlaceName::Sort;
  const PlaceName exact = names.of(ViaId{9}, mm(10, 16.24), 0);
  CHECK(exact.beside == said("R1.1", Heading::above, 62));
  CHECK(exact.layer == PlaceName::Layer::top);
  CHECK(exact.label.empty());
  CHECK(names.of(TrackId{9}, mm(31, 10), 1).layer == PlaceName::Layer::bottom);
  CHECK(names.of(AreaId{9}, mm(31, 10), 1).sort == Sort::spot);
  const PlaceName gone = names.of(PadId{4711}, mm(10, 10), 0);
  CHECK(gone.sort == Sort::pad);
  CHECK(gone.label.empty());
  CHECK(names.of(drawn.below, mm(10, 10), 1).layer == PlaceName::Layer::top); // a pin's is not said
  CHECK(names.of(drawn.below, mm(10, 10), 1).beside == Beside{});
  CHECK(names.sideOf(1) == Side::bottom);
  CHECK(names.sideOf(0) == Side::top);
  CHECK(names.sideOf(-1) == Side::top);
  CHECK(names.layerOf(0) == PlaceName::Layer::top);
  CHECK(names.layerOf(1) == PlaceName::Layer::bottom);
  CHECK(names.layerOf(2) == PlaceName::Layer::inner);
}

TEST_CASE("a stretch leads towards a pin; as a whole a track ends where it ends") {
  PlaceName name;
  name.sort = PlaceName::Sort::track;
  name.from = {TrackEnd::Sort::via, "", said("R1.1", Heading::above, 10)};
  name.to = {TrackEnd::Sort::fork, "", said("R1.2", Heading::left, 20)};
  CHECK(name.asSaid() == name);
  for (const auto stretch :
       {PlaceName::Stretch::first, PlaceName::Stretch::last, PlaceName::Stretch::between}) {
    name.stretch = stretch;
    PlaceName expected = name;
    expected.to = {TrackEnd::Sort::pin, "R1.2", {}};
    CHECK(name.asSaid() == expected);
  }
  name.to = {TrackEnd::Sort::end, "", Beside{"", {}, 0, mm(1, 2)}};
  CHECK(name.asSaid() == name);
}
