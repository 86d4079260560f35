#include <cmath>
#include <random>
#include <sstream>

#include <catch2/catch.hpp>

#include "netmend/netgraph/area_mesh.h"
#include "support/ngspice.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

/// One ampere from node to node, the return node being ground: its voltage is the resistance.
double resistanceInNgspice(const std::vector<Resistor>& network, std::size_t from, std::size_t to) {
  const auto name = [to](std::size_t node) {
    return node == to ? std::string("0") : "n" + std::to_string(node);
  };
  std::ostringstream netlist;
  netlist.precision(17);
  netlist << "I1 0 " << name(from) << " 1\n";
  for (std::size_t i = 0; i < network.size(); ++i)
    netlist << "R" << i << ' ' << name(network[i].a) << ' ' << name(network[i].b) << ' '
            << network[i].value.value << '\n';
  return test::ngspiceOperatingPoint(netlist.str()).at(name(from));
}

} // namespace

TEST_CASE("a track's resistance equals that of ngspice's resistor made from sheet resistance") {
  // ngspice computes R = RSH·L/W itself, with its linear temperature coefficient.
  const auto length = Length::fromMm(37.5);
  const auto width = Length::fromMm(0.127);
  for (const double celsius : {20.0, 55.0}) {
    std::ostringstream netlist;
    netlist.precision(17);
    netlist << ".model foil R(rsh=" << 1.0 / 58 / 35e-3 * 1e-3 << " tc1=0.00393 tnom=20)\n"
            << "R1 a 0 foil l=37.5m w=0.127m\nI1 0 a 1\n.options temp=" << celsius << " tnom=20\n";
    CHECK(trackResistance(length, width, Length(35'000), Celsius(celsius)).value ==
          Approx(test::ngspiceOperatingPoint(netlist.str()).at("a")).epsilon(1e-9));
  }
}

TEST_CASE("a ladder of track and via resistances equals ngspice") {
  std::vector<Resistor> ladder;
  for (std::size_t i = 0; i < 25; ++i) {
    const auto rail =
        trackResistance(Length::fromMm(2.0 + static_cast<double>(i)), Length::fromMm(0.2), Length(35'000));
    ladder.push_back({2 * i, 2 * i + 2, rail});
    ladder.push_back({2 * i + 1, 2 * i + 3, rail * 1.5});
    ladder.push_back(
        {2 * i + 2, 2 * i + 3, viaResistance(Length::fromMm(0.3), usualPlating, usualBoardThickness)});
  }
  CHECK(effectiveResistance(ladder, 0, 1).value == Approx(resistanceInNgspice(ladder, 0, 1)).epsilon(1e-9));
  CHECK(effectiveResistance(ladder, 0, 50).value == Approx(resistanceInNgspice(ladder, 0, 50)).epsilon(1e-9));
}

TEST_CASE("a hundred random networks have the resistance that ngspice finds") {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const auto upTo = [&](std::size_t most) {
    return std::uniform_int_distribution<std::size_t>(0, most)(random);
  };
  for (int round = 0; round < netmend::rounds(100); ++round) {
    const auto nodes = 2 + upTo(38);
    std::vector<Resistor> network;
    const auto add = [&](std::size_t a, std::size_t b) {
      // From a short wide track to a series resistor.
      const double exponent = std::uniform_real_distribution<double>(-4.0, 3.0)(random);
      network.push_back({a, b, Ohms(std::pow(10.0, exponent))});
    };
    for (std::size_t node = 1; node < nodes; ++node)
      add(node, upTo(node - 1)); // so that it hangs together
    for (auto more = upTo(2 * nodes); more > 0; --more) {
      const auto a = upTo(nodes - 1);
      const auto b = upTo(nodes - 1);
      if (a != b) add(a, b);
    }
    const auto from = upTo(nodes - 1);
    const auto to = (from + 1 + upTo(nodes - 2)) % nodes;
    INFO("round " << round << ", " << nodes << " nodes");
    REQUIRE(effectiveResistance(network, from, to).value ==
            Approx(resistanceInNgspice(network, from, to)).epsilon(1e-8));
  }
}

TEST_CASE("an area's mesh has in ngspice the resistance that it has here") {
  const auto mm = [](double x, double y) { return Point{Length::fromMm(x), Length::fromMm(y)}; };
  // An L with a hole.
  const Polygon area{{mm(0, 0), mm(8, 0), mm(8, 3), mm(3, 3), mm(3, 8), mm(0, 8)},
                     {{mm(1, 1), mm(2, 1), mm(2, 2), mm(1, 2)}}};
  auto mesh = meshArea(area, Length::fromMm(0.5), usualCopperThickness);
  REQUIRE(mesh);
  const auto from = mesh->nodes.size() - 1;
  CHECK(effectiveResistance(mesh->resistors, from, 0).value ==
        Approx(resistanceInNgspice(mesh->resistors, from, 0)).epsilon(1e-9));
}
