#include "netmend/sketch/put_nets.h"

#include <catch2/catch.hpp>

#include "after.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Parts with numbered pins that are of no net yet.
struct Pins : DrawnBoard {
  std::vector<PinId> with(const std::string& reference, std::size_t count) {
    const PartId id = part(reference, Side::top, {});
    std::vector<PinId> out;
    for (std::size_t i = 1; i <= count; ++i) {
      Pin pin;
      pin.part = id;
      pin.name = std::to_string(i);
      out.push_back(put(board.pins, pin));
    }
    return out;
  }
  PinId at(const std::string& label) const { return pinCalled(board, label).id; }
  void setNet(PinId id, NetId net, Origin origin = Origin::user) {
    Pin pin = *board.pins.find(id);
    pin.net = {net, origin};
    board.pins.put(pin);
  }
};

using Words = std::vector<std::string>;

} // namespace

TEST_CASE("pins without a net get a new one that has no name") {
  Pins drawn;
  const auto pins = drawn.with("J1", 3);
  const std::uint64_t last = drawn.board.lastId;
  const Joined joined = joinPins(Lookup(drawn.board), {pins[0], pins[2]}, Origin::user);
  CHECK(joined.net == NetId(last + 1));
  CHECK(joined.swallowed.empty());
  CHECK_FALSE(joined.groundToSupply);
  const Board board = after(drawn.board, joined.edit);
  REQUIRE(board.nets.size() == 1);
  CHECK(board.nets[0].name.empty());
  CHECK(board.nets[0].origin == Origin::user);
  CHECK_FALSE(board.nets[0].role.known());
  CHECK(board.pins[0].net == fromUser(joined.net));
  CHECK_FALSE(board.pins[1].net.known());
  CHECK(board.pins[2].net == fromUser(joined.net));
  CHECK(joined.edit.changes.size() == 3);
}

TEST_CASE("fewer than two pins that are on the board join nothing") {
  Pins drawn;
  const auto pins = drawn.with("J1", 1);
  const Lookup lookup(drawn.board);
  CHECK(joinPins(lookup, {}, Origin::user).edit.changes.empty());
  CHECK(joinPins(lookup, {pins[0]}, Origin::user).edit.changes.empty());
  CHECK(joinPins(lookup, {pins[0], pins[0]}, Origin::user).edit.changes.empty());
  CHECK(joinPins(lookup, {pins[0], PinId(999)}, Origin::user).edit.changes.empty());
  CHECK_FALSE(joinPins(lookup, {pins[0]}, Origin::user).net);
  CHECK(joinAll(lookup, {}, {NetId(), NetId(77)}, Origin::user).edit.changes.empty());
  // With joinAll a single pin gets a net.
  const Joined one = joinAll(lookup, {pins[0]}, {NetId()}, Origin::user);
  CHECK(after(drawn.board, one.edit).pins[0].net == fromUser(one.net));
}

TEST_CASE("the first pin's net stays, and takes what the others have") {
  Pins drawn;
  const auto pins = drawn.with("J1", 6);
  const NetId sda = drawn.net("SDA");
  const NetId other =
      drawn.net("OTHER", {.ratedVoltage = fromUser(Volts(3.3)), .ratedCurrent = fromUser(Amperes(2))});
  const NetId nameless = drawn.net("");
  drawn.setNet(pins[1], sda, Origin::file);
  drawn.setNet(pins[2], other, Origin::file);
  drawn.setNet(pins[3], other, Origin::measured);
  drawn.setNet(pins[4], nameless);
  const LayerId top = drawn.layer("top");
  const TrackId track = drawn.track(mm(0, 0), mm(1, 0), top, other, 0.2);
  Via through;
  through.net = guessed(other);
  const ViaId via = drawn.put(drawn.board.vias, through);
  Area area;
  area.net = fromUser(other);
  const AreaId areaId = drawn.put(drawn.board.areas, area);
  const TrackId foreign = drawn.track(mm(0, 0), mm(1, 0), top, sda, 0.2);
  const Joined joined = joinPins(Lookup(drawn.board), {pins[0], pins[1], pins[2], pins[4]}, Origin::user);
  CHECK(joined.net == sda);
  CHECK(joined.swallowed == Words{"OTHER"});
  const Board board = after(drawn.board, joined.edit);
  REQUIRE(board.nets.size() == 1);
  CHECK(board.nets[0].name == "SDA");
  CHECK(board.nets[0].ratedVoltage == fromUser(Volts(3.3)));
  CHECK(board.nets[0].ratedCurrent == fromUser(Amperes(2)));
  CHECK(board.pins[0].net == fromUser(sda));
  CHECK(board.pins[1].net == fromFile(sda)); // it was known already
  CHECK(board.pins[2].net == fromUser(sda));
  CHECK(board.pins[3].net == measured(sda)); // it came along
  CHECK(board.pins[4].net == fromUser(sda));
  CHECK_FALSE(board.pins[5].net.known());
  CHECK(board.tracks.find(track)->net == fromUser(sda));
  CHECK(board.vias.find(via)->net == guessed(sda));
  CHECK(board.areas.find(areaId)->net == fromUser(sda));
  CHECK(*board.tracks.find(foreign) == *drawn.board.tracks.find(foreign));
}

TEST_CASE("a net without a name takes the name of what it swallows, without a word") {
  Pins drawn;
  const auto pins = drawn.with("J1", 2);
  const NetId nameless = drawn.net("");
  drawn.setNet(pins[0], nameless);
  drawn.setNet(pins[1], drawn.net("CLK"));
  const Joined joined = joinPins(Lookup(drawn.board), pins, Origin::user);
  CHECK(joined.net == nameless);
  CHECK(joined.swallowed.empty());
  CHECK(after(drawn.board, joined.edit).nets[0].name == "CLK");
}

TEST_CASE("what is measured outranks what was said, and not the other way") {
  Pins drawn;
  const auto pins = drawn.with("J1", 2);
  const NetId net = drawn.net("A");
  for (const auto& [was, said, then] : {std::tuple{Origin::user, Origin::measured, Origin::measured},
                                        {Origin::measured, Origin::user, Origin::measured},
                                        {Origin::guessed, Origin::user, Origin::user},
                                        {Origin::guessed, Origin::measured, Origin::measured},
                                        {Origin::file, Origin::user, Origin::file},
                                        {Origin::guessed, Origin::guessed, Origin::guessed}}) {
    drawn.setNet(pins[0], net, was);
    const Joined joined = joinPins(Lookup(drawn.board), pins, said);
    const Board board = after(drawn.board, joined.edit);
    CHECK(board.pins[0].net == Fact<NetId>{net, then});
    CHECK(board.pins[1].net == Fact<NetId>{net, said});
  }
}

TEST_CASE("a pin that was said to be joined to nothing is joined") {
  Pins drawn;
  const auto pins = drawn.with("J1", 2);
  drawn.setNet(pins[0], {});
  const Joined joined = joinPins(Lookup(drawn.board), pins, Origin::user);
  CHECK(after(drawn.board, joined.edit).pins[0].net == fromUser(joined.net));
}

TEST_CASE("ground and supply that meet are told, by name, by role and in a third net") {
  Pins drawn;
  const auto pins = drawn.with("J1", 5);
  drawn.setNet(pins[0], drawn.net("GND"));
  drawn.setNet(pins[1], drawn.net("+3V3"));
  drawn.setNet(pins[2], drawn.net("KEY", {.role = fromUser(NetRole::supply)}));
  drawn.setNet(pins[3], drawn.net("COL1"));
  drawn.setNet(pins[4], drawn.net("AGND"));
  const Lookup lookup(drawn.board);
  const auto meets = [&](const std::vector<PinId>& group) {
    return joinPins(lookup, group, Origin::user).groundToSupply;
  };
  CHECK(meets({pins[0], pins[1]}));
  CHECK(meets({pins[1], pins[0]}));
  CHECK(meets({pins[0], pins[2]}));
  CHECK_FALSE(meets({pins[0], pins[4]}));
  CHECK_FALSE(meets({pins[1], pins[2]}));
  CHECK_FALSE(meets({pins[3], pins[0]}));
  CHECK(meets({pins[3], pins[0], pins[1]}));
}

TEST_CASE("a role that only a swallowed name told is kept") {
  Pins drawn;
  const auto pins = drawn.with("J1", 4);
  drawn.setNet(pins[0], drawn.net("N1"));
  drawn.setNet(pins[1], drawn.net("GND"));
  drawn.setNet(pins[2], drawn.net("VCC"));
  drawn.setNet(pins[3], drawn.net("N2", {.role = fromUser(NetRole::radio)}));
  const auto roleWith = [&](std::size_t a, std::size_t b) {
    return after(drawn.board, joinPins(Lookup(drawn.board), {pins[a], pins[b]}, Origin::user).edit)
        .nets.find(drawn.board.pins.find(pins[a])->net.value)
        ->role;
  };
  CHECK(roleWith(0, 1) == guessed(NetRole::ground));
  CHECK(roleWith(0, 3) == fromUser(NetRole::radio));
  CHECK_FALSE(roleWith(2, 1).known()); // its own name tells one
  CHECK(roleWith(3, 1) == fromUser(NetRole::radio));
}

TEST_CASE("a separated pin is of no known net, and an empty net goes") {
  Pins drawn;
  const auto pins = drawn.with("J1", 3);
  const NetId net = drawn.net("A");
  drawn.setNet(pins[0], net);
  drawn.setNet(pins[1], net);
  Board board = after(drawn.board, separatePin(Lookup(drawn.board), pins[0]));
  CHECK_FALSE(board.pins[0].net.known());
  CHECK(board.nets.size() == 1);
  board = after(board, separatePin(Lookup(board), pins[1]));
  CHECK(board.nets.empty());
  CHECK(separatePin(Lookup(board), pins[1]).changes.empty());
  CHECK(separatePin(Lookup(board), PinId(999)).changes.empty());
  // Copper keeps a net.
  const auto keeps = [&](auto put) {
    Pins other;
    const auto its = other.with("J1", 1);
    const NetId kept = other.net("A");
    other.setNet(its[0], kept);
    put(other, kept);
    CHECK(after(other.board, separatePin(Lookup(other.board), its[0])).nets.size() == 1);
  };
  keeps([](Pins& b, NetId kept) { b.track(mm(0, 0), mm(1, 0), b.layer("top"), kept, 0.2); });
  keeps([](Pins& b, NetId kept) { b.board.vias.put({.id = ViaId(900), .net = fromUser(kept)}); });
  keeps([](Pins& b, NetId kept) {
    b.board.areas.put({.id = AreaId(900), .polygon = {}, .layer = {}, .net = fromUser(kept)});
  });
  // One that was said to be joined to nothing is not known any more.
  Pins nothing;
  const auto its = nothing.with("J1", 1);
  nothing.setNet(its[0], {});
  board = after(nothing.board, separatePin(Lookup(nothing.board), its[0]));
  CHECK_FALSE(board.pins[0].net.known());
}

TEST_CASE("a net is named, and joined with all that have this name") {
  Pins drawn;
  const auto pins = drawn.with("J1", 4);
  const NetId first = drawn.net("A");
  drawn.setNet(pins[0], first);
  drawn.setNet(pins[1], drawn.net("B"));
  drawn.setNet(pins[2], drawn.net("B")); // labels may repeat
  const Lookup lookup(drawn.board);
  Joined joined = nameNet(lookup, first, "CLK");
  CHECK(joined.swallowed.empty());
  CHECK(after(drawn.board, joined.edit).nets.find(first)->name == "CLK");
  CHECK(nameNet(lookup, first, "A").edit.changes.empty());
  CHECK(nameNet(lookup, first, "").edit.changes.empty());
  CHECK(nameNet(lookup, NetId(999), "X").edit.changes.empty());
  joined = nameNet(lookup, first, "B");
  CHECK(joined.swallowed == Words{"B", "B"});
  Board board = after(drawn.board, joined.edit);
  REQUIRE(board.nets.size() == 1);
  CHECK(board.nets[0].id == first);
  CHECK(board.nets[0].name == "B");
  CHECK(board.pins[2].net == fromUser(first));
  // By a pin: of its net, into the net of that name, or a new one.
  board = after(drawn.board, nameNet(lookup, pins[0], "CLK").edit);
  CHECK(netOfPin(board, "J1.1") == "CLK");
  joined = nameNet(lookup, pins[3], "A");
  CHECK(joined.net == first);
  CHECK(joined.swallowed.empty());
  CHECK(after(drawn.board, joined.edit).pins[3].net == fromUser(first));
  board = after(drawn.board, nameNet(lookup, pins[3], "NEW").edit);
  CHECK(board.nets.size() == 4);
  CHECK(netOfPin(board, "J1.4") == "NEW");
  board = after(drawn.board, nameNet(lookup, pins[3], "B").edit);
  CHECK(board.nets.size() == 2);
  CHECK(nameNet(lookup, PinId(999), "X").edit.changes.empty());
}

TEST_CASE("a net's role is what a person says") {
  Pins drawn;
  const NetId net = drawn.net("A");
  const Board board = after(drawn.board, setRole(drawn.board, net, NetRole::supply));
  CHECK(board.nets.find(net)->role == fromUser(NetRole::supply));
  CHECK(setRole(drawn.board, NetId(999), NetRole::supply).changes.empty());
}

TEST_CASE("a pasted list is read with every separator, and over what was there") {
  Pins drawn;
  const auto pins = drawn.with("J4", 12);
  drawn.with("U1", 2);
  const PartId j4 = drawn.board.pins.find(pins[0])->part;
  const NetId gnd = drawn.net("GND");
  drawn.setNet(pins[11], gnd);
  const PinNames names = readPinNames(Lookup(drawn.board), j4,
                                      "Pin\tSignal\r\n"
                                      "1\tGND\r\n"
                                      "2,SDA\n"
                                      "3;SCL\n"
                                      "4   VCC main\n"
                                      "\n"
                                      "5\n"
                                      "6 -\n"
                                      "7\tNC\n"
                                      "8,\n"
                                      "\"9\",\"KEY_COL1\"\n"
                                      "J4.10 ; SDA\n"
                                      "U1.2 SDA\n"
                                      "13 FAR\n"
                                      "J9.1 GONE\n"
                                      "  12 -");
  CHECK(names.named == std::vector<std::pair<PinId, std::string>>{{pins[0], "GND"},
                                                                  {pins[1], "SDA"},
                                                                  {pins[2], "SCL"},
                                                                  {pins[3], "VCC main"},
                                                                  {pins[5], ""},
                                                                  {pins[6], ""},
                                                                  {pins[8], "KEY_COL1"},
                                                                  {pins[9], "SDA"},
                                                                  {drawn.at("U1.2"), "SDA"},
                                                                  {pins[11], ""}});
  CHECK(names.unknown == Words{"13 FAR", "J9.1 GONE"});
  const Board board = after(drawn.board, putPinNames(Lookup(drawn.board), names));
  CHECK(board.pins[0].net == fromUser(gnd));
  CHECK(netOfPin(board, "J4.2") == "SDA");
  CHECK(board.pins[1].net == board.pins[9].net);
  CHECK(pinCalled(board, "U1.2").net == board.pins[1].net);
  CHECK_FALSE(board.pins[4].net.known());
  CHECK(board.pins[5].net == fromUser(NetId()));
  CHECK(board.pins[6].net == fromUser(NetId()));
  CHECK(board.pins[11].net == fromUser(NetId()));
  CHECK(board.nets.size() == 5);
  CHECK(board.nets[1].origin == Origin::user);
}

TEST_CASE("headings are only in a list's first line, and have no number") {
  Pins drawn;
  const auto pins = drawn.with("J4", 2);
  const PartId j4 = drawn.board.pins.find(pins[0])->part;
  const auto unknown = [&](const char* text) { return readPinNames(Lookup(drawn.board), j4, text).unknown; };
  CHECK(unknown("contact,net\n1,A\n").empty());
  CHECK(unknown("1,A\ncontact,net\n") == Words{"contact,net"});
  CHECK(unknown("X3,net\n1,A\n") == Words{"X3,net"});
  CHECK(unknown("").empty());
  CHECK(unknown("\n \t\n").empty());
}

TEST_CASE("a list's bare names are of its part first") {
  Pins drawn;
  const auto pins = drawn.with("J4", 2);
  drawn.with("J4", 2); // references may repeat
  Pin free;
  free.name = "2";
  const PinId point = drawn.put(drawn.board.pins, free);
  const PartId j4 = drawn.board.pins.find(pins[0])->part;
  const Lookup lookup(drawn.board);
  CHECK(readPinNames(lookup, j4, "2 A").named.front().first == pins[1]);
  CHECK(readPinNames(lookup, PartId(), "2 A").named.front().first == point);
  CHECK(readPinNames(lookup, j4, "J4.2 A").unknown == Words{"J4.2 A"}); // which of the two?
  // A pin that went meanwhile is left out.
  CHECK(putPinNames(lookup, {{{PinId(999), "A"}}, {}}).changes.empty());
}

TEST_CASE("a series goes on with parts and pins by their steps") {
  Pins drawn;
  for (int i = 21; i <= 26; ++i)
    drawn.with("R" + std::to_string(i), 2);
  const auto u1 = drawn.with("U1", 9);
  const auto at = [&](const char* label) { return drawn.at(label); };
  const auto series = seriesAfter(Lookup(drawn.board), {at("R21.2"), at("U1.5")}, {at("R22.2"), at("U1.6")});
  REQUIRE(series.size() == 3); // U1 ends at 9
  CHECK(series[0] == std::vector{at("R23.2"), at("U1.7")});
  CHECK(series[2] == std::vector{at("R25.2"), at("U1.9")});
  // Backwards, and by two.
  const auto back = seriesAfter(Lookup(drawn.board), {at("R26.1"), at("U1.1")}, {at("R25.1"), at("U1.3")});
  REQUIRE(back.size() == 3);
  CHECK(back[2] == std::vector{at("R22.1"), at("U1.9")});
  // It ends before a pin that has a net, or is said to have none.
  for (const NetId net : {drawn.net("USED"), NetId()}) {
    drawn.setNet(at("U1.8"), net);
    CHECK(seriesAfter(Lookup(drawn.board), {at("R21.2"), at("U1.5")}, {at("R22.2"), at("U1.6")}).size() == 1);
  }
}

TEST_CASE("a pin that stands still in a series may have its net") {
  Pins drawn;
  for (int i = 1; i <= 4; ++i)
    drawn.with("C" + std::to_string(i), 2);
  const auto j1 = drawn.with("J1", 1);
  drawn.setNet(j1[0], drawn.net("GND"));
  const auto at = [&](const char* label) { return drawn.at(label); };
  const auto series = seriesAfter(Lookup(drawn.board), {at("C1.2"), j1[0]}, {at("C2.2"), j1[0]});
  REQUIRE(series.size() == 2);
  CHECK(series[1] == std::vector{at("C4.2"), j1[0]});
}

TEST_CASE("a series needs steps in common") {
  Pins drawn;
  for (const char* reference : {"R1", "R2", "R3", "C2", "R"})
    drawn.with(reference, 3);
  const PartId free{};
  for (const char* name : {"TP1", "TP2", "TP3", "GND"}) {
    Pin pin;
    pin.part = free;
    pin.name = name;
    drawn.put(drawn.board.pins, pin);
  }
  const auto at = [&](const char* label) { return drawn.at(label); };
  const auto count = [&](std::vector<PinId> before, std::vector<PinId> last) {
    return seriesAfter(Lookup(drawn.board), before, last).size();
  };
  CHECK(count({at("R1.1"), at("TP1")}, {at("R2.1"), at("TP2")}) == 1);
  CHECK(count({at("R1.1"), at("TP1")}, {at("C2.1"), at("TP2")}) == 0); // other letters
  CHECK(count({at("R1.1"), at("TP1")}, {at("R2.1"), at("GND")}) == 0); // no number
  CHECK(count({at("R.1"), at("TP1")}, {at("R2.1"), at("TP2")}) == 0);  // one has none
  CHECK(count({at("R1.1"), at("TP1")}, {at("R1.1"), at("TP1")}) == 0); // nothing moves
  CHECK(count({at("R1.1")}, {at("R2.1")}) == 0);                       // one pin is no net
  CHECK(count({at("R1.1"), at("TP1")}, {at("R2.1")}) == 0);
  CHECK(count({at("R1.1"), PinId(999)}, {at("R2.1"), at("TP2")}) == 0);
  CHECK(count({at("R3.1"), at("TP1")}, {at("R1.1"), at("TP2")}) == 0); // below zero
}
