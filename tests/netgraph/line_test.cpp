#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

#include "netmend/netgraph/line.h"
#include "wired_board.h"

using namespace netmend;
using netmend::test::graphByNames;
using netmend::test::WiredBoard;

namespace {

Line lineFrom(WiredBoard& wired, const std::string& net, const LineOptions& options = {}) {
  return lineOf(wired.board, graphByNames(wired.board), wired.nets.at(net), options);
}

std::vector<std::string> netsOf(const WiredBoard& wired, const Line& line) {
  std::vector<std::string> names;
  for (const auto net : line.nets)
    names.push_back(wired.board.nets.find(net)->name);
  return names;
}

std::vector<CopperEdge> partEdges(const Line& line) {
  std::vector<CopperEdge> result;
  for (const auto edge : boost::make_iterator_range(boost::edges(line.graph)))
    if (line.graph[edge].kind == EdgeKind::part) result.push_back(line.graph[edge]);
  return result;
}

std::vector<LineEndReason> reasons(const Line& line) {
  std::vector<LineEndReason> result;
  for (const auto& end : line.ends)
    result.push_back(end.reason);
  return result;
}

using Names = std::vector<std::string>;
using Reasons = std::vector<LineEndReason>;

/// J1 - KEY - FB1 - KEY_F - R1 - KEY_C at chip U1, a pull-up on KEY_F, a capacitor to ground.
WiredBoard keyLine() {
  WiredBoard wired;
  wired.part("J1", PartKind::connector, "", {"KEY", "GND"});
  wired.part("FB1", PartKind::ferrite, "600R", {"KEY", "KEY_F"});
  wired.part("R1", PartKind::resistor, "22", {"KEY_F", "KEY_C"});
  wired.part("R2", PartKind::resistor, "10k", {"KEY_F", "+3V3"});
  wired.part("C1", PartKind::capacitor, "100n", {"KEY", "GND"});
  wired.part("U1", PartKind::chip, "", {"KEY_C", "GND", "+3V3"});
  return wired;
}

} // namespace

TEST_CASE("a line goes on through ferrite and low resistor and stops at pull-up, capacitor and chip") {
  auto wired = keyLine();
  const auto line = lineFrom(wired, "KEY");
  CHECK(netsOf(wired, line) == Names{"KEY", "KEY_F", "KEY_C"});
  CHECK(line.terminals().size() == 8);
  CHECK(fragments(line.graph, {}).count == 1);

  const auto parts = partEdges(line);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].object == CopperObject(wired.parts["FB1"]));
  CHECK_FALSE(parts[0].resistance.known());
  CHECK(parts[1].object == CopperObject(wired.parts["R1"]));
  CHECK(parts[1].resistance == fromFile(Ohms(22)));
  CHECK(line.ends ==
        std::vector<LineEnd>{{wired.pins["R2.1"], wired.parts["R2"], LineEndReason::resistanceTooHigh}});
}

TEST_CASE("the line is the same from whichever of its nets it is asked for") {
  auto wired = keyLine();
  for (const auto* net : {"KEY", "KEY_F", "KEY_C"}) {
    auto line = lineFrom(wired, net);
    CHECK(netsOf(wired, line).front() == net);
    CHECK(line.nets.size() == 3);
    CHECK(line.terminals().size() == 8);
    CHECK(partEdges(line).size() == 2);
  }
}

TEST_CASE("edges of a line are numbered densely, and a cut at the resistor splits it there") {
  auto wired = keyLine();
  const auto line = lineFrom(wired, "KEY");
  std::set<std::size_t> indices;
  std::size_t cutAt = 0;
  for (const auto edge : boost::make_iterator_range(boost::edges(line.graph))) {
    indices.insert(line.graph[edge].index);
    if (line.graph[edge].object == CopperObject(wired.parts["R1"])) cutAt = line.graph[edge].index;
  }
  CHECK(indices.size() == boost::num_edges(line.graph));
  CHECK(*indices.rbegin() + 1 == boost::num_edges(line.graph));
  const auto split = fragments(line.graph, {cutAt});
  CHECK(split.count == 2);
}

TEST_CASE("the series limit decides which resistors a line passes") {
  WiredBoard wired;
  wired.part("R1", PartKind::resistor, "1k", {"A", "B"});
  wired.part("R2", PartKind::resistor, "1k1", {"B", "C"});
  wired.part("R3", PartKind::resistor, "", {"B", "D"});
  CHECK(netsOf(wired, lineFrom(wired, "A")) == Names{"A", "B"});
  CHECK(reasons(lineFrom(wired, "A")) ==
        Reasons{LineEndReason::resistanceTooHigh, LineEndReason::resistanceUnknown});
  LineOptions options;
  options.mostSeriesResistance = Ohms(2000);
  CHECK(netsOf(wired, lineFrom(wired, "A", options)) == Names{"A", "B", "C"});
  options.mostSeriesResistance = Ohms(100);
  CHECK(netsOf(wired, lineFrom(wired, "A", options)) == Names{"A"});
}

TEST_CASE("a line never goes through ground and never copies it") {
  WiredBoard wired;
  wired.part("R1", PartKind::zeroOhmLink, "", {"SIG", "GND"});
  wired.part("R2", PartKind::zeroOhmLink, "", {"GND", "OTHER"});
  for (int i = 0; i < 500; ++i)
    wired.part("C" + std::to_string(i), PartKind::capacitor, "100n", {"GND", "+5V"});
  const auto line = lineFrom(wired, "SIG");
  CHECK(netsOf(wired, line) == Names{"SIG"});
  CHECK(boost::num_vertices(line.graph) == 2);
  CHECK(reasons(line) == Reasons{LineEndReason::ground});

  LineOptions through;
  through.throughSupplies = true;
  CHECK(netsOf(wired, lineFrom(wired, "SIG", through)) == Names{"SIG"});
  // Asked for itself, ground is a line of one net.
  CHECK(netsOf(wired, lineFrom(wired, "GND", through)) == Names{"GND"});
}

TEST_CASE("a line goes through supplies only on request") {
  WiredBoard wired;
  wired.part("FB1", PartKind::ferrite, "", {"VBAT", "VDD_RADIO"});
  wired.part("R1", PartKind::resistor, "100", {"VDD_RADIO", "ANT_SEL"});
  CHECK(netsOf(wired, lineFrom(wired, "VBAT")) == Names{"VBAT"});
  CHECK(netsOf(wired, lineFrom(wired, "ANT_SEL")) == Names{"ANT_SEL"});
  CHECK(reasons(lineFrom(wired, "ANT_SEL")) == Reasons{LineEndReason::supply});
  LineOptions options;
  options.throughSupplies = true;
  CHECK(netsOf(wired, lineFrom(wired, "VBAT", options)) == Names{"VBAT", "VDD_RADIO", "ANT_SEL"});
}

TEST_CASE("a role that the board states decides over the name") {
  WiredBoard wired;
  wired.part("R1", PartKind::zeroOhmLink, "", {"SIG", "GND"});
  auto net = *wired.board.nets.find(wired.nets["GND"]);
  net.role = fromUser(NetRole::signal);
  wired.board.nets.put(net);
  CHECK(netsOf(wired, lineFrom(wired, "SIG")) == Names{"SIG", "GND"});
}

TEST_CASE("a part that is not fitted ends the line and says so") {
  auto wired = keyLine();
  wired.change("R1").fitted = fromUser(false);
  wired.put();
  const auto line = lineFrom(wired, "KEY");
  CHECK(netsOf(wired, line) == Names{"KEY", "KEY_F"});
  CHECK(std::find(line.ends.begin(), line.ends.end(),
                  LineEnd{wired.pins["R1.1"], wired.parts["R1"], LineEndReason::notFitted}) !=
        line.ends.end());
}

TEST_CASE("a choke carries each of its two lines on, not both together") {
  WiredBoard wired;
  wired.part("J1", PartKind::connector, "", {"DP", "DM"});
  wired.part("L1", PartKind::choke, "", {"DP", "DM", "DM_C", "DP_C"});
  CHECK(netsOf(wired, lineFrom(wired, "DP")) == Names{"DP", "DP_C"});
  CHECK(netsOf(wired, lineFrom(wired, "DM")) == Names{"DM", "DM_C"});
}

TEST_CASE("a ring of links is entered once, and each of its parts is an edge") {
  WiredBoard wired;
  wired.part("R1", PartKind::zeroOhmLink, "", {"A", "B"});
  wired.part("R2", PartKind::zeroOhmLink, "", {"B", "C"});
  wired.part("R3", PartKind::zeroOhmLink, "", {"C", "A"});
  wired.part("R4", PartKind::zeroOhmLink, "", {"A", "A"});
  const auto line = lineFrom(wired, "A");
  CHECK(line.nets.size() == 3);
  CHECK(partEdges(line).size() == 4);
  CHECK(line.terminals().size() == 8);
}

TEST_CASE("on a board of a connector and a pin count, a pin's line is its one terminal") {
  WiredBoard wired;
  wired.part("J1", PartKind::connector, "", {"", "", ""});
  const Lookup lookup(wired.board);
  const auto line = lineOf(lookup, graphByNames(wired.board), wired.pins["J1.2"]);
  CHECK(line.nets.empty());
  CHECK(boost::num_vertices(line.graph) == 1);
  CHECK(boost::num_edges(line.graph) == 0);
  REQUIRE(line.terminals().size() == 1);
  CHECK(line.graph[line.terminals().front()].object == CopperObject(wired.pins["J1.2"]));
  CHECK(fragments(line.graph, {}).count == 1);
  CHECK(bridges(line.graph).empty());
}

TEST_CASE("a pin without a net goes on through its part all the same") {
  WiredBoard wired;
  wired.part("R1", PartKind::resistor, "22", {"", "B"});
  const Lookup lookup(wired.board);
  const auto line = lineOf(lookup, graphByNames(wired.board), wired.pins["R1.1"]);
  CHECK(netsOf(wired, line) == Names{"B"});
  CHECK(line.terminals().size() == 2);
  CHECK(partEdges(line).size() == 1);
}

TEST_CASE("copper without a net is followed from the pin it was found at") {
  WiredBoard wired;
  wired.part("J1", PartKind::connector, "", {"", ""});
  wired.part("J2", PartKind::connector, "", {""});
  auto graph = graphByNames(wired.board);
  Island island;
  const auto a = boost::add_vertex(test::terminalOf(wired.pins["J1.1"]), island.graph);
  const auto b = boost::add_vertex(test::terminalOf(wired.pins["J2.1"]), island.graph);
  boost::add_edge(a, b, CopperEdge{}, island.graph);
  graph.islands.push_back(island);
  const Lookup lookup(wired.board);
  CHECK(lineOf(lookup, graph, wired.pins["J2.1"]).terminals().size() == 2);
  CHECK(lineOf(lookup, graph, wired.pins["J1.2"]).terminals().size() == 1);
}

TEST_CASE("an unknown net or pin has an empty line") {
  WiredBoard wired = keyLine();
  CHECK(boost::num_vertices(lineOf(wired.board, graphByNames(wired.board), NetId(999)).graph) == 0);
  const Lookup lookup(wired.board);
  CHECK(boost::num_vertices(lineOf(lookup, graphByNames(wired.board), PinId(999)).graph) == 0);
}
