#include <cmath>
#include <numbers>
#include <random>
#include <sstream>

#include <catch2/catch.hpp>

#include "../../src/isolation/short_network.h"
#include "../isolation/short_bench.h"
#include "netmend/netgraph/area_mesh.h"
#include "netmend/netgraph/resistance.h"
#include "support/effort.h"
#include "support/ngspice.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::test;

namespace {

struct RandomCopper {
  CopperGraph graph;
  std::vector<double> ohms; ///< by edge
};

/// Hangs together, with loops; every fifth edge is a way of unknown resistance.
RandomCopper randomCopper(std::mt19937& random, const ShortPriors& priors) {
  const auto below = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  const std::size_t nodes = 2 + below(30);
  RandomCopper out{CopperGraph(nodes), {}};
  const auto add = [&](std::size_t a, std::size_t b) {
    CopperEdge edge;
    edge.index = out.ohms.size();
    const double ohms = std::pow(10.0, std::uniform_real_distribution<double>(-4.0, 0.0)(random));
    const bool known = below(5) != 0;
    edge.kind = known ? EdgeKind::track : EdgeKind::unknownWay;
    if (known)
      edge.resistance = fromUser(Ohms(ohms));
    else
      edge.length = fromUser(Length::fromMm(1.0 + 1000.0 * ohms));
    out.ohms.push_back(known ? ohms : priors.unknownWayPerMm.value * edge.length.value.mm());
    boost::add_edge(a, b, edge, out.graph);
  };
  for (std::size_t node = 1; node < nodes; ++node)
    add(node, below(node));
  for (std::size_t more = below(2 * nodes); more > 0; --more)
    if (const auto a = below(nodes), b = below(nodes); a != b) add(a, b);
  return out;
}

/// Volts against `place`, which is ground, for an ampere in at `into`.
std::map<std::string, double> inNgspice(const RandomCopper& copper, std::size_t into, std::size_t place) {
  const auto name = [&](std::size_t node) {
    return node == place ? std::string("0") : "n" + std::to_string(node);
  };
  std::ostringstream netlist;
  netlist.precision(17);
  netlist << "I1 0 " << name(into) << " 1\n";
  for (const auto edge : boost::make_iterator_range(boost::edges(copper.graph)))
    netlist << "R" << copper.graph[edge].index << ' ' << name(boost::source(edge, copper.graph)) << ' '
            << name(boost::target(edge, copper.graph)) << ' ' << copper.ohms[copper.graph[edge].index]
            << '\n';
  return ngspiceOperatingPoint(netlist.str());
}

} // namespace

TEST_CASE("what a point reads of a short elsewhere, and where the current goes in elsewhere, is ngspice's") {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const ShortPriors priors = shortPriors();
  for (int round = 0; round < rounds(200, 20); ++round) {
    const RandomCopper copper = randomCopper(random, priors);
    const std::size_t nodes = boost::num_vertices(copper.graph);
    const auto any = [&] { return std::uniform_int_distribution<std::size_t>(0, nodes - 1)(random); };
    const std::size_t at = any(), into = any();
    std::size_t place = any();
    if (place == into) place = (place + 1) % nodes;
    INFO("round " << round << ", " << nodes << " nodes");
    const ShortNetwork network(copper.graph, priors, {}, {at, into, place});
    const auto volts = inNgspice(copper, into, place);
    const double theirs = at == place ? 0.0 : volts.at("n" + std::to_string(at));
    const auto of = [&](std::size_t node) { return network.nodeOf(node); };
    const double ours = network.transfer(of(at), of(into), of(place));
    CHECK(ours == Approx(theirs).epsilon(1e-7).margin(1e-10));
    // The same as a sum over what is known and what is not.
    const CopperResponse response = network.response(of(at), of(into), of(place));
    double sum = response.copper;
    for (const auto& [wire, share] : response.unknown)
      sum += share * network.unknown()[wire].ohms;
    CHECK(sum == Approx(theirs).epsilon(1e-6).margin(1e-10));
    const auto pattern = network.pattern(of(into), of(place));
    for (std::size_t node = 0; node < nodes; ++node)
      if (node != place)
        REQUIRE(pattern[static_cast<Eigen::Index>(of(node))] ==
                Approx(volts.at("n" + std::to_string(node))).epsilon(1e-6).margin(1e-10));
  }
}

TEST_CASE("a place along a track divides its resistance in the place's share") {
  const ShortPriors priors = shortPriors();
  CopperGraph graph(2);
  CopperEdge edge;
  edge.kind = EdgeKind::track;
  edge.resistance = fromUser(Ohms(0.010));
  boost::add_edge(0, 1, edge, graph);
  const ShortNetwork network(graph, priors, {{0, 0.75}, {0, 0.25}}, {0, 1});
  const auto reads = [&](std::size_t at, std::size_t spot) {
    return network.transfer(network.nodeOf(at), network.nodeOf(at), network.nodeOfSpot(spot));
  };
  CHECK(reads(0, 0) == Approx(0.0075));
  CHECK(reads(1, 0) == Approx(0.0025));
  CHECK(reads(0, 1) == Approx(0.0025));
  CHECK(reads(1, 1) == Approx(0.0075));
}

TEST_CASE("a pour reads what the formula for contacts on a large sheet says") {
  // Two discs of radius a at distance d in a sheet without end: R = (ρ/(π·t))·acosh(d/(2a)) (two line
  // charges; the sheet is twelve times as large as the discs' distance).
  Board board;
  Area pour;
  pour.id = board.newId<AreaId>();
  pour.polygon.outer = box(-60, -60, 60, 60);
  board.areas.put(pour);
  CopperGraph graph(3);
  graph[0] = {NodeKind::area, pour.id, pour.polygon.outer.front(), 0};
  graph[1] = {NodeKind::viaLayer, ViaId(8), mm(-5, 0), 0};
  graph[2] = {NodeKind::viaLayer, ViaId(9), mm(5, 0), 0};
  constexpr double radius = 3.5;
  for (const NodeIndex contact : {NodeIndex{1}, NodeIndex{2}}) {
    CopperEdge edge;
    edge.kind = EdgeKind::contact;
    edge.index = contact - 1;
    edge.from = edge.to = graph[contact].at;
    edge.width = fromUser(Length::fromMm(2 * radius));
    boost::add_edge(contact, 0, edge, graph);
  }
  const CopperGraph resolved = withAreasResolved(board, graph);
  CHECK(boost::num_vertices(resolved) > 1000);
  const ShortNetwork network(resolved, shortPriors(), {}, {1, 2});
  const double theory =
      sheetResistance(usualCopperThickness).value / std::numbers::pi * std::acosh(10.0 / (2 * radius));
  CHECK(network.transfer(network.nodeOf(1), network.nodeOf(1), network.nodeOf(2)) ==
        Approx(theory).epsilon(0.12));
}
