#include <catch2/catch.hpp>

#include "netmend/netgraph/line.h"
#include "simulation/board_line.h"
#include "simulation/fault.h"
#include "simulation/small_board.h"
#include "simulation/worlds.h"

using namespace netmend;
using namespace netmend::simulation;
using netmend::test::mm;
using netmend::test::Small;

namespace {

std::vector<Bond> partingOf(const BoardLine& line) {
  std::vector<Bond> out;
  for (const std::size_t bond : line.parting)
    out.push_back(line.copper.bonds[bond]);
  return out;
}

} // namespace

TEST_CASE("a line's breaks are its two joints, its tracks and its via") {
  const Small small;
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net);
  REQUIRE(line);
  CHECK(line->pins.size() == 3);
  CHECK(line->oneNode());
  double joints = 0, tracks = 0, barrels = 0;
  for (const Bond& bond : partingOf(*line)) {
    if (bond.kind == Bond::Kind::joint) joints += 1;
    if (bond.kind == Bond::Kind::track) tracks += bond.mm;
    if (bond.kind == Bond::Kind::barrel) barrels += 1;
  }
  CHECK(joints == 2); // a test pad has no joint
  CHECK(tracks == Approx(30.0));
  CHECK(barrels == 1);
}

TEST_CASE("a second way takes the tracks beside it out of the breaks") {
  Small small;
  small.addTrack(mm(0, 0), mm(10, 10), 0, small.net);
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net);
  REQUIRE(line);
  for (const Bond& bond : partingOf(*line))
    if (bond.kind == Bond::Kind::track) CHECK(bond.object == small.third.value);
}

TEST_CASE("a track that ends on another's middle meets it there") {
  Small small;
  const PinId branch = small.addPin(small.addPart("U2", PartKind::chip), "1", mm(4, 5), small.net);
  small.addTrack(mm(4, 5), mm(4, 0), 0, small.net);
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net);
  REQUIRE(line);
  const auto first =
      std::find_if(line->copper.bonds.begin(), line->copper.bonds.end(), [&](const Bond& bond) {
        return bond.kind == Bond::Kind::track && bond.object == small.first.value;
      });
  REQUIRE(first != line->copper.bonds.end());
  CHECK(first->mm == Approx(4.0));
  // Beyond the branch the connector is lost with U2, before it alone.
  const auto label = pieces(line->copper, {static_cast<std::size_t>(first - line->copper.bonds.begin())});
  CHECK(label[*line->copper.leg(branch)] == label[*line->copper.leg(small.chip)]);
  CHECK(label[*line->copper.leg(branch)] != label[*line->copper.leg(small.connector)]);
}

TEST_CASE("a lead on a broken track is on the side of the crack where it is held") {
  const Small small;
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net);
  REQUIRE(line);
  std::size_t bond = 0;
  while (line->copper.bonds[bond].object != small.third.value ||
         line->copper.bonds[bond].kind != Bond::Kind::track)
    ++bond;
  const Crack crack{bond, 4.0};
  const auto label = pieces(line->copper, {bond});
  const auto at = [&](double x) {
    return label[*spotOfTrack(line->copper, small.board, small.third, mm(x, 10), crack)];
  };
  CHECK(at(13.9) == label[*line->copper.leg(small.connector)]);
  CHECK(at(14.1) == label[*line->copper.leg(small.chip)]);
}

TEST_CASE("a line goes on through small resistors and ends at large ones") {
  Small small;
  const NetId beyond = small.addNet("BEYOND"), far = small.addNet("FAR"), ground = small.addNet("GND");
  const auto resistor = [&](const std::string& name, const std::string& value, Point at, NetId to) {
    const PartId part = small.addPart(name, PartKind::resistor, value);
    const PinId near = small.addPin(part, "1", at, small.net);
    small.addPin(part, "2", at + mm(2, 0), to);
    return near;
  };
  resistor("R1", "330", mm(10, 0), beyond);
  resistor("R2", "1k1", mm(10, 10), far);
  resistor("R3", "220", mm(20, 10), ground);
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net);
  REQUIRE(line);
  CHECK(line->nets == std::vector{small.net, beyond});
  CHECK_FALSE(line->oneNode());
  REQUIRE(line->exits.size() == 2);
  CHECK(line->exits[0].to == LineExit::To::signal);
  CHECK(line->exits[0].ohms == 1100.0);
  CHECK(line->exits[1].to == LineExit::To::ground);
  CHECK(boardLine(lookup, ground) == std::nullopt);
}

TEST_CASE("faults weigh what the shares say") {
  const Small small;
  const Lookup lookup(small.board);
  const auto line = boardLine(lookup, small.net);
  REQUIRE(line);
  Design design;
  design.behind.resize(line->pins.size());
  for (std::size_t i = 0; i < line->pins.size(); ++i)
    if (line->pins[i].pin == small.chip) design.behind[i].kind = Behind::Kind::junction;
  FaultShares shares;
  shares.solderJoint = 1.0;
  shares.connectorJoint = 3.0;
  shares.trackPerMm = 0.04;
  shares.via = 0.5;
  shares.deadPin = 0.25;
  shares.shortToGround = 0.75;
  double open = 0.0, dead = 0.0, shorted = 0.0;
  for (const auto& [fault, weight] : allFaults(*line, design, shares)) {
    if (fault.family == FaultFamily::open) open += weight;
    if (fault.family == FaultFamily::deadPin) dead += weight;
    if (fault.family == FaultFamily::shortToGround) shorted += weight;
  }
  CHECK(open == Approx(1.0 + 3.0 + 0.04 * 30 + 0.5));
  CHECK(dead == 0.25);
  CHECK(shorted == Approx(0.75));
}

TEST_CASE("what the program is told of a board falls with the grade, and ids stay") {
  const Small small;
  const Board outer = graded(small.board, Grade::outerCopper), pins = graded(small.board, Grade::pins);
  CHECK(graded(small.board, Grade::copper) == small.board);
  CHECK(outer.tracks.size() == 2); // of two layers, the bottom one is not seen
  CHECK(outer.tracks.find(small.third) == nullptr);
  CHECK(outer.vias.size() == 1);
  CHECK(pins.tracks.empty());
  CHECK(pins.vias.empty());
  CHECK(pins.pads == small.board.pads);
}
