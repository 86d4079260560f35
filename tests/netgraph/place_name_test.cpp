#include <catch2/catch.hpp>

#include "netmend/board/lookup.h"
#include "netmend/netgraph/handle.h"
#include "netmend/netgraph/place_name.h"
#include "netmend/netgraph/track_runs.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

using Direction = Beside::Direction;

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

/// As it is said: pin, direction, tenths, whether tenths are said.
Beside said(const char* pin, Direction direction, int tenths, bool exact) {
  return {pin, direction, tenths, exact, {}};
}

} // namespace

TEST_CASE("a place is called by the nearest pin, its direction and how far it is") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  const auto at = [&](double x, double y) { return names.beside(mm(x, y), Side::top); };
  CHECK(at(10.299, 10) == said("R1.1", Direction::at, 0, false));
  CHECK(at(10.3, 10) == said("R1.1", Direction::right, 3, true));
  CHECK(at(9, 10) == said("R1.1", Direction::left, 10, true));
  CHECK(at(10, 11) == said("R1.1", Direction::above, 10, true));
  CHECK(at(10, 8.8) == said("R1.1", Direction::below, 12, true));
  // Tenths are said below two millimetres only.
  CHECK(at(10, 11.99) == said("R1.1", Direction::above, 20, true));
  CHECK(at(10, 12) == said("R1.1", Direction::above, 20, false));
  CHECK(at(10, 12.6) == said("R1.1", Direction::above, 30, false));
  // Whichever of the two directions it lies farther in.
  CHECK(at(10.5, 10.5).direction == Direction::right);
  CHECK(at(10.5, 10.501).direction == Direction::above);
  // Of equally near pins the first by name.
  CHECK(at(12, 10).pin == "R1.1");
  CHECK(at(12.001, 10).pin == "R1.2");
}

TEST_CASE("where two places have to be told apart, tenths are said however far it is") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  CHECK(names.beside(mm(10, 16.24), Side::top, PlaceNames::Distance::exact) ==
        said("R1.1", Direction::above, 62, true));
  CHECK(names.beside(mm(10.1, 10), Side::top, PlaceNames::Distance::exact) ==
        said("R1.1", Direction::right, 1, true));
}

TEST_CASE("the bottom is looked at from below: right on the top is left there") {
  const TwoSides drawn;
  const Lookup lookup(drawn.board);
  const PlaceNames names(lookup);
  CHECK(names.beside(mm(31, 10), Side::bottom) == said("C1.1", Direction::left, 10, true));
  CHECK(names.beside(mm(29, 10), Side::bottom) == said("C1.1", Direction::right, 10, true));
  CHECK(names.beside(mm(30, 11), Side::bottom) == said("C1.1", Direction::above, 10, true));
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
    auto found = trackRuns(PlaceNames(lookup), line, PlaceNames::Distance::rounded).runs;
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
  CHECK(runs[1].to.beside == said("R1.2", Direction::above, 130, false));
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
  CHECK(runs[3].to.beside == said("R1.2", Direction::above, 100, false));
}
