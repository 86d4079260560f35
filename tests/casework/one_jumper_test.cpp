#include <catch2/catch.hpp>

#include "suspected_line.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Pads 5 mm apart in a row, and a break between each two: a wire for each of its own. Ends at the last pad.
NodeIndex addRow(SuspectedLine& line, int breaks) {
  NodeIndex last = line.testPad("R0", 5, 5);
  for (int i = 1; i <= breaks; ++i) {
    const NodeIndex next = line.testPad("R" + std::to_string(i), 5 + 5 * i, 5);
    line.suspect({line.stretch(last, next)});
    last = next;
  }
  return last;
}

/// A wire from the pad to via 10 mm above costs 14, one past it to the other pad what that is away.
struct ViaBetween : SuspectedLine {
  NodeIndex near, between, far;
  std::size_t first, second;
  explicit ViaBetween(double away)
      : near(testPad("P1", 5, 15)), between(via(5, 25)), far(testPad("P2", 5 + away, 15)),
        first(stretch(near, between)), second(stretch(between, far)) {}
};

} // namespace

TEST_CASE("a wire that mends two breaks, whichever it is, makes them one", "[casework]") {
  SuspectedLine line;
  const NodeIndex from = line.testPad("P1", 5, 5), to = line.testPad("P2", 25, 5);
  addPair(line, from, to);
  const auto found = line.shared();
  REQUIRE(found.size() == 1);
  CHECK(found[0].classes == std::vector<std::size_t>{1, 2});
  CHECK(found[0].probability == 0.5 + 0.25);
  const JumperProposal wire = line.wire({line.isolation.classes[1].places[0].edge.value()});
  CHECK(found[0].from.point == wire.from.point);
  CHECK(found[0].to.point == wire.to.point);
  CHECK(found[0].from.point != found[0].to.point);
}

TEST_CASE("a wire is made longer while that costs no more than twice the leading break's", "[casework]") {
  SECTION("exactly twice") {
    ViaBetween line(28.0);
    line.suspect({line.first});
    line.suspect({line.second});
    CHECK(line.wire({line.first}).total.value == 14.0);
    CHECK(line.wire({line.first, line.second}).total.value == 28.0);
    CHECK(line.groups() == Groups{{1, 2}});
    // It is the longer wire that is told of.
    CHECK(line.shared()[0].to.point == line.wire({line.first, line.second}).to.point);
  }
  SECTION("a micrometre more") {
    ViaBetween line(28.001);
    line.suspect({line.first});
    line.suspect({line.second});
    CHECK(line.groups().empty());
  }
  SECTION("measured by the likelier break, here the one that costs more") {
    ViaBetween line(28.001);
    line.suspect({line.second});
    line.suspect({line.first});
    CHECK(line.groups() == Groups{{1, 2}});
  }
}

TEST_CASE("what lies between in rank does not hinder a wire from being made longer", "[casework]") {
  ViaBetween line(20.0);
  const NodeIndex beyond = line.testPad("P3", 45, 15);
  const std::size_t elsewhere = line.stretch(line.far, beyond);
  line.suspect({line.first});
  line.suspect({elsewhere}); // a pad lies between: never one wire
  line.suspect({line.second});
  const auto found = line.shared();
  REQUIRE(found.size() == 1);
  CHECK(found[0].classes == std::vector<std::size_t>{1, 3});
  CHECK(found[0].probability == 0.5 + 0.125);
}

TEST_CASE("a break that the short wire mends anyway stays mended by the longer one", "[casework]") {
  SuspectedLine line;
  const NodeIndex near = line.testPad("P1", 5, 15), bend = line.corner(5, 20), between = line.via(5, 25),
                  far = line.testPad("P2", 25, 15);
  const std::size_t a = line.stretch(near, bend), b = line.stretch(bend, between),
                    c = line.stretch(between, far);
  line.suspect({b});
  line.suspect({a});
  line.suspect({c});
  CHECK(line.groups() == Groups{{1, 2, 3}});
}

TEST_CASE("a longer wire that gives up a break mended by the shorter one is not taken", "[casework]") {
  // P1 -c- via -a- corner, from there -b- P3 and -d- P4. For a the wire goes from via to P3, which mends
  // b too; with c it would go from P1 to P4, which does not.
  SuspectedLine line;
  const NodeIndex one = line.testPad("P1", 10, 1), via = line.via(10, 15), fork = line.corner(15, 15),
                  three = line.testPad("P3", 20, 15), four = line.testPad("P4", 24, 4);
  const std::size_t c = line.stretch(one, via), a = line.stretch(via, fork), b = line.stretch(fork, three);
  line.stretch(fork, four);
  line.suspect({a});
  line.suspect({b});
  line.suspect({c});
  CHECK(line.wire({a}).to.at == mm(20, 15));
  CHECK(line.wire({a, c}).to.at == mm(24, 4));
  CHECK(line.wire({a, c}).total.value < 2 * line.wire({a}).total.value);
  CHECK(line.groups() == Groups{{1, 2}});
}

TEST_CASE("after one that does not pay the next is still tried", "[casework]") {
  SuspectedLine line;
  const NodeIndex pad = line.testPad("P1", 5, 15), first = line.via(5, 20), second = line.via(15, 15),
                  far = line.testPad("P2", 45, 15);
  const std::size_t x = line.stretch(pad, first), y = line.stretch(first, second),
                    z = line.stretch(second, far);
  line.suspect({x}); // 5 + 4
  line.suspect({z}); // with x: 40
  line.suspect({y}); // with x: 10 + 4
  CHECK(line.groups() == Groups{{1, 3}});
}

TEST_CASE("what is left is tried again, beginning with the likeliest", "[casework]") {
  SuspectedLine line;
  const NodeIndex a = line.testPad("P1", 5, 5), b = line.testPad("P2", 15, 5), c = line.testPad("P3", 25, 5);
  addPair(line, a, b);
  addPair(line, b, c);
  const auto found = line.shared();
  REQUIRE(found.size() == 2);
  CHECK(found[0].classes == std::vector<std::size_t>{1, 2});
  CHECK(found[1].classes == std::vector<std::size_t>{3, 4});
  CHECK(found[1].probability == 0.125 + 0.0625);
  CHECK(found[1].from.point != found[0].from.point);
}

TEST_CASE("six wires are looked for at most", "[casework]") {
  SECTION("five in vain, and the sixth mends two") {
    SuspectedLine line;
    const NodeIndex last = addRow(line, 5);
    addPair(line, last, line.testPad("P", 60, 5));
    CHECK(line.groups() == Groups{{6, 7}});
  }
  SECTION("six in vain") {
    SuspectedLine line;
    const NodeIndex last = addRow(line, 6);
    addPair(line, last, line.testPad("P", 60, 5));
    CHECK(line.groups().empty());
  }
  SECTION("what a wire mends anyway costs none more") {
    SuspectedLine line;
    const NodeIndex first = line.testPad("P1", 5, 55), second = line.testPad("P2", 25, 55);
    addPair(line, first, second);
    // Four in vain from there, each 5 mm to the next.
    NodeIndex last = second;
    for (int i = 1; i <= 4; ++i) {
      const NodeIndex next = line.testPad("R" + std::to_string(i), 25 + 5 * i, 55);
      line.suspect({line.stretch(last, next)});
      last = next;
    }
    addPair(line, last, line.testPad("P3", 70, 55));
    CHECK(line.groups() == Groups{{1, 2}, {7, 8}});
  }
  SECTION("a longer wire that does not pay is one of them") {
    for (const int others : {3, 4}) {
      ViaBetween line(28.001);
      line.suspect({line.first});
      line.suspect({line.second}); // looked at twice: as what would be mended too, and for itself
      // Joined at the far pad.
      NodeIndex last = line.far;
      for (int i = 0; i + 1 < others; ++i) {
        const NodeIndex next = line.testPad("R" + std::to_string(i), 38 + 5 * i, 20);
        line.suspect({line.stretch(last, next)});
        last = next;
      }
      addPair(line, last, line.testPad("P", 70, 5));
      INFO(others);
      CHECK(line.groups().size() == (others == 3 ? 1 : 0));
    }
  }
}

TEST_CASE("with more than sixteen suspects no repair is in sight", "[casework]") {
  SuspectedLine line;
  const NodeIndex from = line.testPad("P1", 5, 5), to = line.testPad("P2", 25, 5);
  addPair(line, from, to);
  for (int i = 0; i < 14; ++i)
    line.suspect({}, FaultKind::deadPin);
  REQUIRE(line.suspects.setSize == 16);
  CHECK(line.groups() == Groups{{1, 2}});
  line.suspect({}, FaultKind::deadPin);
  CHECK(line.groups().empty());
}

TEST_CASE("only the reported set counts", "[casework]") {
  SuspectedLine line;
  const NodeIndex from = line.testPad("P1", 5, 5), to = line.testPad("P2", 25, 5);
  addPair(line, from, to);
  line.suspects.setSize = 1;
  CHECK(line.groups().empty());
  line.suspects.setSize = 0;
  CHECK(line.groups().empty());
}

TEST_CASE("what no wire mends is not looked at, and costs no search", "[casework]") {
  SuspectedLine line;
  const NodeIndex from = line.testPad("P1", 5, 35), corner = line.corner(15, 40),
                  to = line.testPad("P2", 25, 35);
  const std::size_t a = line.stretch(from, corner), b = line.stretch(corner, to);
  line.suspect({b}, FaultKind::deadPin);
  line.suspect({b}, FaultKind::shortToGround);
  line.suspect({}); // nobody knows where
  line.suspect({b, b});
  line.isolation.classes.back().places.back().edgeKind = EdgeKind::part; // or inside a part
  line.suspect({b, b});
  line.isolation.classes.back().places.back().edge.reset(); // or in copper that nobody has seen
  SECTION("none of them is mended with another") {
    line.suspect({a});
    CHECK(line.groups().empty());
  }
  SECTION("six searches are left for the others") {
    NodeIndex last = addRow(line, 5);
    addPair(line, last, line.testPad("P", 60, 5));
    CHECK(line.groups() == Groups{{11, 12}});
  }
}

TEST_CASE("a class of several stretches is mended when all of them are bridged at once", "[casework]") {
  SuspectedLine line;
  const NodeIndex from = line.testPad("P1", 5, 5), one = line.corner(10, 10), other = line.corner(15, 10),
                  to = line.testPad("P2", 25, 5);
  const std::size_t a = line.stretch(from, one), b = line.stretch(one, other), c = line.stretch(other, to);
  line.suspect({a, c});
  line.suspect({b});
  CHECK(line.groups() == Groups{{1, 2}});
}

TEST_CASE("a wire as thick as its net is rated has to find its way", "[casework]") {
  // Between two batteries a signal's wire passes and an AWG 26 one does not; round them it is much longer.
  for (const bool rated : {false, true}) {
    ViaBetween line(20.0);
    for (const auto& [name, low, high] : {std::tuple{"BT1", 16.0, 59.0}, std::tuple{"BT2", 1.0, 14.0}})
      line.zone(ZoneKind::battery, name, box(12, low, 18, high), 0.8);
    line.suspect({line.first});
    line.suspect({line.second});
    const NetId other = line.net("KEY_U");
    line.line.nets.push_back(other);
    Net net = *line.board.nets.find(rated ? line.key : other);
    net.ratedCurrent = fromUser(Amperes(3));
    line.board.nets.put(net);
    INFO(rated);
    CHECK(line.groups().size() == (rated ? 0 : 1));
  }
}

TEST_CASE("copper without a net has wires too", "[casework]") {
  SuspectedLine line;
  line.line.nets.clear();
  const NodeIndex from = line.testPad("P1", 5, 5), to = line.testPad("P2", 25, 5);
  addPair(line, from, to);
  CHECK(line.groups() == Groups{{1, 2}});
}

TEST_CASE("for the engine the classes of one wire are one group, all others each its own", "[casework]") {
  Isolation isolation;
  isolation.classes.resize(6);
  const RepairView apart = repairView(isolation, {});
  CHECK(apart.groupOf == std::vector<std::size_t>{0, 1, 2, 3, 4, 5});
  CHECK_FALSE(apart.wrongRepair);
  OneJumper first, second;
  first.classes = {4, 1};
  second.classes = {2, 5};
  CHECK(repairView(isolation, {first, second}).groupOf == std::vector<std::size_t>{0, 4, 2, 3, 4, 2});
}
