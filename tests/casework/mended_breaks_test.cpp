#include <catch2/catch.hpp>

#include "suspected_line.h"

using namespace netmend;
using namespace netmend::test;

TEST_CASE("a break that cannot be bridged, or opens nothing, is mended by no wire", "[casework]") {
  SuspectedLine line;
  const NodeIndex from = line.testPad("P1", 5, 5), to = line.testPad("P2", 25, 5);
  const std::size_t stub = line.stretch(from, line.corner(5, 50)); // nothing is beyond it
  const std::size_t ring = line.stretch(from, to);
  SECTION("so that the next is looked at") {
    line.suspect({stub});
    const NodeIndex next = line.testPad("P3", 45, 5);
    addPair(line, to, next);
    CHECK(line.groups() == Groups{{2, 3}});
  }
  SECTION("nor with another") {
    const std::size_t beside = line.stretch(from, to); // the line hangs together without either
    const NodeIndex next = line.testPad("P3", 45, 5);
    line.suspect({line.stretch(to, next)});
    line.suspect({ring});
    line.suspect({beside});
    line.suspect({stub});
    CHECK(line.groups().empty());
  }
}

TEST_CASE("which end of the wire is on which side does not matter", "[casework]") {
  // The first piece of the line is that of the corner, so that it is the near end in one break and not in
  // the other.
  SuspectedLine line;
  const NodeIndex corner = line.corner(15, 10), from = line.testPad("P1", 5, 5),
                  to = line.testPad("P2", 25, 5);
  line.suspect({line.stretch(from, corner)});
  line.suspect({line.stretch(corner, to)});
  CHECK(line.groups() == Groups{{1, 2}});
}

TEST_CASE("solder at a pin joins its leg and its pad", "[casework]") {
  for (const bool turned : {false, true}) {
    SuspectedLine line;
    const NodeIndex from = line.testPad("P1", 5, 5);
    const auto at = line.pin(line.part("C1", PartKind::resistor, {}), "1", line.key, mm(25, 5));
    const auto leg = boost::add_vertex({NodeKind::terminal, at.pin, mm(25, 5), -1}, line.graph);
    const auto pad = boost::add_vertex({NodeKind::pad, at.pad, mm(25, 5), -1}, line.graph);
    const std::size_t joint = turned ? line.edge(pad, leg, EdgeKind::solderJoint, at.pin, -1)
                                     : line.edge(leg, pad, EdgeKind::solderJoint, at.pin, -1);
    const std::size_t track = line.stretch(from, pad);
    line.stretch(pad, line.testPad("P2", 60, 5)); // so that both cannot be cut at once
    line.suspect({track});
    line.suspect({joint});
    INFO(turned);
    CHECK(line.wire({track}).to.copper == CopperObject{at.pad});
    CHECK(line.groups() == Groups{{1, 2}});
    // Also where it is the leg alone that was to be soldered to.
    std::swap(line.suspects.ranked[0], line.suspects.ranked[1]);
    CHECK(line.wire({joint}).to.copper == CopperObject{at.pin});
    CHECK(line.groups() == Groups{{2, 1}});
  }
}

TEST_CASE("of a pin with two pads the one that is soldered to is joined to the leg", "[casework]") {
  for (const bool nearIsSuspected : {false, true}) {
    SuspectedLine line;
    const NodeIndex from = line.testPad("P1", 5, 5);
    const auto near = line.pin(line.part("S1", PartKind::resistor, {}), "1", line.key, mm(15, 5));
    const PadId farPad = line.pad(near.pin, mm(35, 5), PadReach::top, 0.6,
                                  *line.board.pads.find(near.pad)); // a copy, elsewhere
    const auto leg = boost::add_vertex({NodeKind::terminal, near.pin, mm(15, 5), -1}, line.graph);
    const auto here = boost::add_vertex({NodeKind::pad, near.pad, mm(15, 5), -1}, line.graph);
    const auto there = boost::add_vertex({NodeKind::pad, farPad, mm(35, 5), -1}, line.graph);
    const std::size_t hereJoint = line.edge(leg, here, EdgeKind::solderJoint, near.pin, -1);
    const std::size_t thereJoint = line.edge(leg, there, EdgeKind::solderJoint, near.pin, -1);
    const NodeIndex beyond = line.testPad("P2", 60, 5);
    // The wire from P1 ends at the nearer pad, on which the track from P1 is too, or else the track beyond.
    line.suspect({line.stretch(from, nearIsSuspected ? there : here)});
    line.stretch(nearIsSuspected ? here : there, beyond);
    line.suspect({nearIsSuspected ? hereJoint : thereJoint});
    CHECK(line.wire({line.isolation.classes[1].places[0].edge.value()}).to.at == mm(15, 5));
    INFO(nearIsSuspected);
    CHECK(line.groups() == (nearIsSuspected ? Groups{{1, 2}} : Groups{}));
  }
}

TEST_CASE("a wire scraped onto a track mends what lies before it, but not that track", "[casework]") {
  // P1 -a- corner -b- corner, then 30 mm of outer track to P2.
  SuspectedLine line;
  const NodeIndex pad = line.testPad("P1", 5, 15), one = line.corner(6, 20), other = line.corner(8, 15),
                  far = line.testPad("P2", 38, 15);
  const std::size_t a = line.stretch(pad, one), b = line.stretch(one, other),
                    outer = line.track(other, far, line.key, line.top);
  REQUIRE(std::holds_alternative<TrackId>(line.wire({a}).to.object));
  SECTION("before it") {
    line.suspect({a});
    line.suspect({b});
    CHECK(line.groups() == Groups{{1, 2}});
  }
  SECTION("itself") {
    line.suspect({a});
    line.suspect({outer});
    CHECK(line.groups().empty());
  }
}
